// A dog whose coat nobody has seen yet: planned on the likeliest coat of its mix, forecast over all.
//
// A mixture is one of chances. The chance that such a dog is still fine on a day is the sum, over the
// coats it may have, of the coat's chance and the chance that a dog of that coat is fine. The day asked
// for is read off that sum; days of single coats, averaged, would belong to no dog.
#pragma once

#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage {

/// One of several things that may be, and the chance that all is fine until a day if it is.
struct fine_if {
    chance weight = 0.0;                       ///< 0 to 1
    std::function<chance(const days&)> until;  ///< never rises with the day
};

/// P(fine until day `d`), over all that may be. Throws error(range) unless the weights are of 0 to 1
/// and sum to 1 (to a millionth).
[[nodiscard]] inline chance fine_until(const std::vector<fine_if>& may_be, const days& d) {
    double sum = 0.0;
    chance fine = 0.0;
    for (const fine_if& f : may_be) {
        if (!(f.weight >= 0.0 && f.weight <= 1.0)) {
            throw error(errc::range, "a weight of a mixture must lie between 0 and 1");
        }
        sum += f.weight;
        fine += f.weight > 0.0 ? f.weight * f.until(d) : 0.0;
    }
    if (!(std::abs(sum - 1.0) <= 1e-6)) {
        throw error(errc::range, "the weights of a mixture must sum to 1");
    }
    return fine;
}

/// The last whole day, at most `cap`, until which that chance is at least `p` (over 0, below 1); day 0
/// if there is none.
[[nodiscard]] inline days last_fine_day(const std::vector<fine_if>& may_be, chance p,
                                        const days& cap) {
    int low = 0;
    int high = static_cast<int>(std::floor(in_days(cap))) + 1;
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        // the sum of exact chances may fall short of 1 by rounding
        (fine_until(may_be, day(middle)) >= p - 1e-12 ? low : high) = middle;
    }
    return day(low);
}

/// What a setup of the plan leaves if the dog's coat is another than planned on.
struct left_otherwise {
    setup held;          ///< which tool
    finished planned{};  ///< what it leaves on the coat planned on
    finished then{};     ///< what it leaves on the other
};

/// A coat the dog may turn out to have, other than the one planned on.
struct other_coat {
    coat_chance what;                    ///< which, and how likely
    std::vector<left_otherwise> leaves;  ///< where it differs by what can be read off a screen
    bool jacket_clipped = false;         ///< the plan clips a jacket that this coat wants carded
};

/// The other coats of at least 1 in 50 (assumption; below that a line isn't worth its room), each
/// with what the plan would leave on it.
[[nodiscard]] std::vector<other_coat> on_other_coats(const plan_request& r, const groom& g,
                                                     const std::vector<coat_chance>& coats);

/// What a plan tells of a dog whose coat was taken from its mix.
struct mixed_coat {
    expected_coat expected;          ///< what the mix comes to
    std::vector<other_coat> others;  ///< coats it may have instead
};

/// When the dog must be back, over all coats it may have. `g` was planned on the likeliest; on each
/// other coat it is taken that the same setups were used and leave there what they leave. The full groom is
/// due when fewer than `p` of such dogs have a coat whose usual interval lasts as long. The dog's own coat in
/// `r` is the one planned on.
[[nodiscard]] return_date back_of(const plan_request& r, const groom& g,
                                  const std::vector<coat_chance>& coats);

}  // namespace pelage
