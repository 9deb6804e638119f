#include "answers/words/strip.hpp"

#include <algorithm>

#include <pelage/base/length_text.hpp>

namespace pelage::io {

std::string strip_weeks(const matting_rules& m) {
    const auto weeks = [](const days& d) { return detail::fixed(in_days(d) / 7.0, 0); };
    return weeks(m.strip_again.low) + " to " + weeks(m.strip_again.high) + " weeks";
}

std::string jacket_in_brief(const groom& g, const plan_request& r) {
    const bool told = std::any_of(g.notes.begin(), g.notes.end(), [](const plan_note& n) {
        return n.what == plan_note::kind::strip_again;
    });
    return told ? "The jacket is rolled in between and stripped again in " +
                      strip_weeks(r.rules.matting) + "."
                : "";
}

std::string strip_in_brief(const groom& g, const plan_request& r) {
    std::string jacket = jacket_in_brief(g, r);
    if (!jacket.empty()) {
        jacket.front() = 't';
    }
    return jacket.empty() ? "" : " That is the rest of the coat: " + jacket;
}

}  // namespace pelage::io
