// Private to lib: the rules that refuse a setup, in words.
#pragma once

#include <string_view>

#include <pelage/model/refusal.hpp>

namespace pelage::io {

/// Why, as one sentence for a person.
[[nodiscard]] std::string_view refusal_words(refusal r);

}  // namespace pelage::io
