// A dog whose coat isn't certain: what may be true of it, and with which chance.
//
// The chances of the cases are mixed, never their quantiles or days: half a dog that is fine until day
// 20 and half one that is fine until day 60 is no dog that is fine until day 40.
#pragma once

#include <cmath>
#include <vector>

#include <pelage/model/return_date.hpp>

namespace pelage {

/// One thing that may be true: kept zones and law as they follow from it.
struct coat_case {
    chance weight = 0.0;  ///< that it is true; >= 0, the weights of all cases sum to 1
    std::vector<kept_zone> zones;
    shared_law law;
};

/// P(every zone whose clock has run out by day `t` is under its matting-prone length), over the cases.
[[nodiscard]] inline chance all_fine(const std::vector<coat_case>& cases, const days& t,
                                     bool clocks = true) {
    chance sum = 0.0;
    for (const coat_case& c : cases) {
        sum += c.weight > 0.0 ? c.weight * all_fine(c.zones, c.law, t, clocks) : 0.0;
    }
    return sum;
}

/// The last whole day on which that chance is at least `p`, at most `cap`; `p` over 0 and below 1.
/// It never rises with time, so the day is found by bisection.
[[nodiscard]] inline days last_fine_day(const std::vector<coat_case>& cases, chance p,
                                        const days& cap, bool clocks = true) {
    int low = 0;
    int high = static_cast<int>(std::floor(in_days(cap))) + 1;
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        (all_fine(cases, day(middle), clocks) >= p ? low : high) = middle;
    }
    return day(low);
}

}  // namespace pelage
