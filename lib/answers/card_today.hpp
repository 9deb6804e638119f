// Private to lib: what of a plan is today's and what another day's, as a card says it.
#pragma once

#include <string>
#include <vector>

#include "answers/plan_steps.hpp"

namespace pelage::io {

/// "today only steps 1 to 5; another day: legs, head": how far it goes, before anything is taken up; empty where all
/// is done today.
[[nodiscard]] std::string today_only(const std::vector<plan_step>& steps, const groom& g,
                                     const plan_request& r);

/// " steps 6 to 9 of the whole plan (--full)": those of another day; empty where there are none.
[[nodiscard]] std::string steps_later(const std::vector<plan_step>& steps);

}  // namespace pelage::io
