// Private to lib: the rules in the way of a stuck place.
#pragma once

#include "planner/alternatives_parts.hpp"

namespace pelage::ways {

/// Names in `c`, whose place is `z` and which says what would free it, what is in the way.
void add_obstacles(infeasible_zone& c, const plan_request& r, const zone_plan& z);

}  // namespace pelage::ways
