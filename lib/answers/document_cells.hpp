// Private to lib: cells of a document's tables as people read them.
#pragma once

#include <string>
#include <string_view>

#include <pelage/answers/document.hpp>

namespace pelage::io {

/// A box for a pen to tick.
inline constexpr std::string_view tick_box = "[ ]";

/// "13 mm", "9 mm (8 to 10)", "34 min", "2026-11-26", "93.4 %", "9 in 10".
[[nodiscard]] std::string shown(const cell& c, length_unit u);

}  // namespace pelage::io
