#include "answers/card_today.hpp"

#include <algorithm>
#include <iterator>

#include <pelage/base/phrase.hpp>

#include "answers/plan_parts.hpp"
#include "answers/words/places.hpp"

namespace pelage::io {

std::string today_only(const std::vector<plan_step>& steps, const groom& g, const plan_request& r) {
    const auto today = std::count_if(
        steps.begin(), steps.end(), [](const plan_step& s) { return s.when == list::before_bath; });
    if (!goes_on_another_day(g) || today == 0) {
        return {};
    }
    const zone_list rest = done_another_day(g);
    const place_words places(g, r);
    return "today only " +
           (today == 1 ? std::string("step 1") : "steps 1 to " + std::to_string(today)) +
           (g.bath_waits() ? ": no bath while a mat is in" : "") +
           (rest.empty() ? "" : "; another day: " + joined(places.by_part(rest), ", "));
}

std::string steps_later(const std::vector<plan_step>& steps) {
    const auto first = std::find_if(steps.begin(), steps.end(),
                                    [](const plan_step& s) { return s.when == list::after_bath; });
    const auto n = std::distance(first, steps.end());
    if (n == 0) {
        return {};
    }
    return (n == 1 ? " step " + std::to_string(first->number)
                   : " steps " + std::to_string(first->number) + " to " +
                         std::to_string(steps.back().number)) +
           " of the whole plan (--full)";
}

}  // namespace pelage::io
