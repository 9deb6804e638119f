// Private to lib: the blends of a plan.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// Those of a list that meet what is clipped, done alike as one line each; what is only scissored is blended
/// anyway.
[[nodiscard]] std::vector<line> blends(const groom& g, const plan_request& r, list when,
                                       length_unit u);

/// The same on a card, in a line or two: by what; empty where nothing is blended. `say_way`: the step before them
/// went against the lay, and by a clipper they go with it.
[[nodiscard]] std::string blends_in_brief(const groom& g, const plan_request& r, list when,
                                          bool say_way, length_unit u);

}  // namespace pelage::io
