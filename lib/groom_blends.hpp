// Private to lib: which steps of a settled plan are blended by hand, and how.
#pragma once

#include <pelage/groom.hpp>

namespace pelage {

/// Fills blends of a plan whose zones and blocks are settled.
void add_blends(const groom_request& r, const worktop& top, groom& g);

}  // namespace pelage
