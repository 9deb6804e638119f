// Private to lib: how long a coat usually waits for its next groom.
#pragma once

#include <algorithm>

#include <pelage/planner/plan.hpp>

namespace pelage {

/// A double coat that nobody brushes, or that came matted: only brushing lets it wait for the long end of what is
/// usual (common practice: 8 to 12 weeks with proper brushing).
[[nodiscard]] inline bool neglected(const plan_request& r) {
    const bool unbrushed = r.patient.brushing_said && counted(r.patient.brushed) == habit::none;
    return double_coated(r.patient.coat.value()) &&
           (unbrushed ||
            std::any_of(r.patient.mats.begin(), r.patient.mats.end(),
                        [](const mat_finding& m) { return m.grade != mat_grade::tangle; }));
}

/// Between two grooms of its coat (days); of a neglected one the short end.
[[nodiscard]] inline days usual_interval(const plan_request& r) {
    const figure<days>& usual = coat_of(r.reference, r.patient.coat.value()).usual_interval;
    return neglected(r) ? usual.low : usual.best;
}

}  // namespace pelage
