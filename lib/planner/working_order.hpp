// Private to lib: the zones of a settled plan gathered into blocks, and the blocks in working order.
#pragma once

#include <pelage/planner/plan.hpp>

namespace pelage {

/// Fills blocks, what is known of their order, and the minutes of both lists. Throws what
/// best_order() throws.
void put_in_order(const plan_request& r, groom& g);

}  // namespace pelage
