// How long the coat may stay if the dog is to be back after a wait that is asked for.
#pragma once

#include <optional>
#include <vector>

#include <pelage/model/return_date.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage {

/// What is wished of a dog, with its lengths at a share of the sheet's.
struct scaled_wishes {
    style sheet;                        ///< with its lengths changed
    dog patient;                        ///< with its own wishes changed
    std::optional<length> length_wish;  ///< what was asked for this time, changed
};

/// Every length the sheet, the dog's departures or the request wish, at `percent` hundredths, to 0.01
/// mm; none goes below the shortest advisable length of the coat, and none that lies below it already
/// is changed. Blades wished by name, and what the sheet leaves, stay. `percent` from 1 to 100.
[[nodiscard]] scaled_wishes scaled(const plan_request& r, int percent);

/// The least percent worth trying: at it every length is as short as advisable.
[[nodiscard]] int least_percent(const plan_request& r);

/// The request for scaled wishes, which it borrows.
[[nodiscard]] plan_request request_for(const plan_request& r, const scaled_wishes& w);

/// The answer.
struct longest_coat_answer {
    days wished{};       ///< for so long it should wait
    bool holds = false;  ///< it can wait so long
    int percent = 100;   ///< of the sheet's lengths: the most that holds, or else the best there is
    scaled_wishes wishes;   ///< at that percent
    groom plan;             ///< of that coat
    return_date when;       ///< after that plan
    chance at_wish = 0;     ///< that the dog is fine for as long as wished
    days usual{};           ///< no wait is longer, whatever the length
    bool by_length = true;  ///< false: this coat doesn't mat by length, and shorter is no longer
    std::vector<std::pair<place, std::pair<length, length>>>
        instead;  ///< places, each with the sheet's length and this one; one a group, where they differ
};

/// The longest coat with which the dog is fine for `wished` days at the chance asked: every percent
/// from 100 down is planned and reckoned, the first that holds is it. Where none holds, the percent
/// with the longest wait. `as_is` came from make_plan(r).
[[nodiscard]] longest_coat_answer back_in(const plan_request& r, const groom& as_is,
                                          const days& wished);

}  // namespace pelage
