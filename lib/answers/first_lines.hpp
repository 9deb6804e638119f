// Private to lib: what stands before and right below the heading of whatever is printed about a dog.
#pragma once

#include <cstddef>
#include <string>

#include <pelage/trade/dog.hpp>

namespace pelage::io {

/// "ALERT: bites; two people." and a newline; nothing where there is no alert.
[[nodiscard]] std::string alert_line(const dog& d, std::size_t width);

/// "Note: ..." and a newline; nothing where the dog's file has none.
[[nodiscard]] std::string note_line(const dog& d, std::size_t width);

}  // namespace pelage::io
