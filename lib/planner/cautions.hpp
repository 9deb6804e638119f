// Private to lib: which cautions apply to a planned groom, what the owner must agree to, and what
// was assumed.
#pragma once

#include <pelage/planner/plan.hpp>

namespace pelage {

/// Fills cautions (gravest first), consents and notes of a plan whose zones are settled.
void add_cautions(const plan_request& r, groom& g);

}  // namespace pelage
