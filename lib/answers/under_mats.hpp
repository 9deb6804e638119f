// Private to lib: what is tried next where a blade sticks at the edge of a mat, as a card says it.
#pragma once

#include <string>

#include <pelage/planner/plan.hpp>

#include "answers/grouped.hpp"

namespace pelage::io {

/// "blade 9, down to 10": what goes under that mat after the blade that is planned; empty where nothing may.
[[nodiscard]] std::string next_blade(const plan_request& r, const zone_plan& z, length_unit u);

/// The same of all mats that are clipped off before the bath, with their places.
[[nodiscard]] grouped<std::string> next_blades(const groom& g, const plan_request& r,
                                               length_unit u);

/// Ears and tails that mats came off before the bath, among the places of a block after it: as tender as they were.
[[nodiscard]] std::string freed_before(const block& b, const groom& g, const plan_request& r);

/// "won't pass: blade 9, down to 10; else it stays in: no bath, a vet"; where it differs from mat to mat it stands at
/// the step. Empty where no mat is clipped off.
[[nodiscard]] std::string wont_pass_in_brief(const groom& g, const plan_request& r, length_unit u);

}  // namespace pelage::io
