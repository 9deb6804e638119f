// DOG where it is no dog: a dog told in words, "cockapoo 7F all off".
#pragma once

#include <string>

#include "resolve_arguments.hpp"

namespace pelage::cli {

/// Whether DOG names a file: it ends in .toml, or has a slash and is no sentence with a fraction in it.
[[nodiscard]] bool is_file_name(const std::string& dog);

/// That no dog of the salon is called so, and what to write: of a sentence the options that its words come to.
[[nodiscard]] std::string no_dog_called(const std::string& text, const workplace& w);

}  // namespace pelage::cli
