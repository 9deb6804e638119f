// Private to lib: what is done about a mat in a place, and when a whole part comes down for its mats.
#pragma once

#include <optional>
#include <vector>

#include <pelage/model/refusal.hpp>
#include <pelage/planner/plan.hpp>

#include "planner/compile.hpp"
#include "planner/targets.hpp"

namespace pelage {

/// Mats wait where what is booked has no time for them.
[[nodiscard]] bool leaves_mats(const plan_request& r);

/// Whether a mat there may be combed out on this dog: what may_comb_out() says, and one that may bite isn't
/// combed at the mouth, nor its feet but for a tangle.
[[nodiscard]] bool may_be_combed(const plan_request& r, const place& p, const mat_finding& m,
                                 bool hurt);
/// Time to comb out the mat of a place on a dog of that size; nothing where it may not be combed out. A
/// mat on both sides of a pair that is planned side by side is combed out by halves.
[[nodiscard]] std::optional<work> combing_of(const plan_request& r, const zone_plan& z,
                                             const mat_finding& m, dog_size size);

/// What clipping off loses against what would be there else: nothing within the tolerance, otherwise
/// the weeks such a coat needs to be back, by its usual rate.
[[nodiscard]] std::optional<double> weeks_lost(const coat& c, const zone& where, const zone_plan& z,
                                               const length& left);

/// The parts of which mats take more than their share in that choice and that one blade can take down.
/// Body and legs alone, and only of coats that keep growing.
[[nodiscard]] std::vector<part> beyond_share(const plan_request& r, const ready_kit& ready,
                                             const compiled_plan& c, const solution& s);

/// Whether a place comes down with its part, `blade` (an index into the worktop's setups) leaving it
/// shorter than it is.
[[nodiscard]] bool comes_down(const plan_request& r, const ready_kit& ready, const zone_plan& z,
                              part p, std::size_t blade);

/// The longest blade that passes bare, with the lay, everywhere in the part; worktop::none if there is none.
[[nodiscard]] std::size_t blade_for(const plan_request& r, const ready_kit& ready,
                                    const std::vector<zone_plan>& zones, part p);

}  // namespace pelage
