// Private to lib: which steps of a settled plan are blended by hand, and how.
#pragma once

#include <pelage/planner/plan.hpp>

#include "planner/targets.hpp"

namespace pelage {

/// Fills blends of a plan whose zones and blocks are settled.
void add_blends(const plan_request& r, const ready_kit& ready, groom& g);

}  // namespace pelage
