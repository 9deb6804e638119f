// What is tried under a mat where the blade of the plan won't pass.
#pragma once

#include <vector>

#include <pelage/planner/plan.hpp>

namespace pelage {

/// The bare blades at hand that are shorter than the one the plan puts under the mat of `z` and may go there by
/// every rule (refusal.hpp), the longest first; none where none may, and a veterinarian decides. `z`: a place of a
/// plan of `r`, its mat clipped off.
[[nodiscard]] std::vector<setup> shorter_under_mat(const plan_request& r, const zone_plan& z);

}  // namespace pelage
