// Roughing down: a dirty coat is clipped to about its length before the bath, so that less is washed and dried.
#pragma once

#include <optional>

#include <pelage/planner/plan.hpp>

namespace pelage {

/// The blade it is done with: of the kit's bare full-toothed ones at hand the shortest that is stated longer than
/// the clipper leaves the jacket, its mats aside; no comb goes on a dirty coat. Nothing where no blade is so long,
/// or the jacket isn't clipped. Common practice, no source.
[[nodiscard]] std::optional<setup> roughing_blade(const plan_request& r, const groom& g);

}  // namespace pelage
