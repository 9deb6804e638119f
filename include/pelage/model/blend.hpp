// Blending: how a step between two neighbours is worked away. Hair can't be put back, so the edge of
// the longer one is taken down towards the shorter; a setup halfway breaks the step, scissors smooth
// what is left of it.
#pragma once

#include <cmath>

#include <pelage/base/units.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/prices.hpp>
#include <pelage/trade/setup.hpp>

namespace pelage {

/// Whether a step is too high to blend by itself: more than the seam allowance, at 0.01 mm.
[[nodiscard]] inline bool shows(const length& step, const price_rules& p) {
    return in_hundredths(step) > in_hundredths(p.seam_allowance.best);
}

/// How far a setup that leaves `leaves` is from the middle between two lengths. The middle is the
/// arithmetic one (assumption): an even slope is at half its height halfway.
[[nodiscard]] inline length off_middle(const length& leaves, const length& a, const length& b) {
    return gap(leaves, (a + b) / 2.0);
}

/// Whether `leaves` is near enough to the middle between `a` and `b` to break the step.
[[nodiscard]] inline bool breaks_step(const length& leaves, const length& a, const length& b,
                                      const price_rules& p) {
    return in_hundredths(off_middle(leaves, a, b)) <=
           in_hundredths(gap(a, b) * p.blend_middle.best);
}

/// Lengths on a dog of that size against a medium one's: the square root of its minutes, since
/// minutes go with the area of the coat (derived from the sizes' factors, which are assumptions).
[[nodiscard]] inline double linear_size(dog_size s, const price_rules& p) {
    return std::sqrt(p.size[static_cast<std::size_t>(s)].best);
}

/// How wide a step is blended (mm): as the slope asks, but no wider than a share of the seam's own
/// length on that dog. `along` is the seam's length on a medium dog.
[[nodiscard]] inline length blend_width(const length& step, const length& along, dog_size s,
                                        const price_rules& p) {
    return rounded(
        shorter(step / p.blend_slope.best, along * (linear_size(s, p) * p.blend_room.best)));
}

}  // namespace pelage
