// Private to lib: the blends of a plan as lines of text.
#pragma once

#include <string>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// The blends of one list, those done alike in one line; empty if there are none. A step between two
/// scissored zones is not told: whoever scissors both blends them as they go.
[[nodiscard]] std::string blend_lines(const groom& g, const plan_request& r, list when,
                                      const print_options& o);

}  // namespace pelage::io
