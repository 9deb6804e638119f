// What is tried under a mat where the blade of the plan won't pass.
#pragma once

#include <optional>

#include <pelage/planner/plan.hpp>

namespace pelage {

/// The longest bare blade at hand that is shorter than the one the plan puts under the mat of `z` and may go there
/// by every rule (refusal.hpp); nothing where none may, and a veterinarian decides. `z`: a place of a plan of `r`,
/// its mat clipped off.
[[nodiscard]] std::optional<setup> next_under_mat(const plan_request& r, const zone_plan& z);

}  // namespace pelage
