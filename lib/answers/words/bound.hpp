// Private to lib: lengths that are told as a bound, so that whoever keeps to what is printed keeps to it.
#pragma once

#include <cmath>

#include <pelage/base/length_text.hpp>

namespace pelage::io {

/// The fraction that inches of that size are printed in.
[[nodiscard]] inline length printed_grain(const length& l) {
    return inch(1, l < inch(1, 8) ? 64 : 16);
}

/// In inches, down to what is printed; in millimetres as it is.
[[nodiscard]] inline length printed_no_more(const length& l, length_unit u) {
    constexpr double slack = 1e-6;  // against rounding
    const length grain = printed_grain(l);
    return u == length_unit::mm ? l : grain * std::floor(l / grain + slack);
}

/// In inches, up to what is printed; in millimetres as it is.
[[nodiscard]] inline length printed_no_less(const length& l, length_unit u) {
    constexpr double slack = 1e-6;
    const length grain = printed_grain(l);
    return u == length_unit::mm ? l : grain * std::ceil(l / grain - slack);
}

}  // namespace pelage::io
