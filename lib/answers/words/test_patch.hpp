// Private to lib: what a test patch gives to write down.
#pragma once

#include <string>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/kit/test_patch.hpp>

namespace pelage::io {

/// The lines for salon.toml that set what the patch taught, lengths in those units.
[[nodiscard]] std::vector<std::string> salon_lines(const calibration& l, const test_patch& r,
                                                   length_unit u);

}  // namespace pelage::io
