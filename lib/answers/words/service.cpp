#include "answers/words/service.hpp"

#include <string_view>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>

namespace pelage::io {

namespace {

std::string_view step_words(service_step s) {
    switch (s) {
        case service_step::look:
            return "take in, look, hand back";
        case service_step::before_bath:
            return "before the bath";
        case service_step::brush:
            return "brush to the skin";
        case service_step::bath:
            return "bath and dry";
        case service_step::deshed:
            return "undercoat out";
        case service_step::after_bath:
            return "clip and finish";
        case service_step::roll:
            return "rolling";
        case service_step::nails:
            return "nails";
        case service_step::ears:
            break;
    }
    return "ears";
}

}  // namespace

std::string appointment_words(const appointment& a, const std::string& broken_up) {
    const std::string head =
        "Whole appointment, about " + detail::whole_minutes(a.total()) + " min" + broken_up;
    if (a.by_sheet) {
        return head + ": " + detail::whole_minutes(*a.by_sheet) + " by the salon's own sheet" +
               (a.beyond > work{} ? ", today's mats beside" : "") + "; its steps add up to " +
               detail::whole_minutes(a.by_steps()) + ".";
    }
    std::vector<std::string> parts;
    for (const appointment_step& s : a.steps) {
        parts.push_back(std::string(step_words(s.what)) + " " + detail::whole_minutes(s.takes));
    }
    return head + ": " + joined(parts, "; ") + ".";
}

std::string step_work_words(service_step s) {
    switch (s) {
        case service_step::brush:
            return "brush line by line down to the skin, then comb: it slides from skin to tip";
        case service_step::bath:
            return "a mat: out first, dry, else no bath; wash and rinse until the water is clear, "
                   "dry straight down to the skin, "
                   "brush and comb through to the skin";
        case service_step::deshed:
            return "take out the undercoat that comes away by itself, with the lay, skin in sight; "
                   "stop at redness";
        case service_step::roll:
            return "what is ripe, a few hairs at a time; what holds stays; pink: stop";
        case service_step::nails:
            return "nails, short of the quick; bleeding past 5 minutes: a veterinarian";
        case service_step::ears:
            return "ears: look in, wipe what you see; pain, smell, discharge: a veterinarian";
        case service_step::look:
        case service_step::before_bath:
        case service_step::after_bath:
            break;
    }
    return {};
}

}  // namespace pelage::io
