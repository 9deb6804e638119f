// Private to lib: the same groom asked for with another dog or sheet.
#pragma once

#include <pelage/planner/plan.hpp>

namespace pelage {

/// `r` for `patient` and `sheet`, which it borrows, without the reasons for refusals. The sheet is laid
/// out anew; the kit made ready is kept.
[[nodiscard]] inline plan_request ask_again(const plan_request& r, const dog& patient,
                                            const style& sheet) {
    plan_request ask{r.reference, r.rules, r.tools, patient,     sheet,
                     r.today,     r.asked, {},      r.both_ways, r.match_sides};
    ask.length_wish = r.length_wish;
    ask.reasons = false;
    ask.top = r.top;
    ask.booked = r.booked;
    ask.learned = r.learned;
    return ask;
}

}  // namespace pelage
