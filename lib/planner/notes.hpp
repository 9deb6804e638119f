// Private to lib: what a plan takes as given, and what the owner is asked of uneven pairs.
#pragma once

#include <pelage/planner/plan.hpp>

namespace pelage {

/// Fills notes and asks of a plan whose zones are settled.
void add_notes(const plan_request& r, bool made_for_another_coat, groom& g);

}  // namespace pelage
