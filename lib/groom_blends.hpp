// Private to lib: which steps of a settled plan are blended by hand, and how.
#pragma once

#include <vector>

#include <pelage/groom.hpp>

namespace pelage {

/// Fills blends of a plan whose zones and blocks are settled. `columns`: the kit's setups at hand.
void add_blends(const groom_request& r, const std::vector<setup>& columns, groom& g);

}  // namespace pelage
