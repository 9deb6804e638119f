// What the week and the diary say alike.
#include "answers/words/week.hpp"

#include <vector>

#include <pelage/base/phrase.hpp>

#include "answers/words/dates.hpp"

namespace pelage::io {

int days_to(const date& from, const date& to) {
    return static_cast<int>((to - from).count());
}

std::string called(const dog& d) {
    return d.name.empty() ? d.id : d.name;
}

std::string first_words(const due_dog& one) {
    if (one.why_not) {
        return *one.why_not == not_plannable::no_coat    ? "its coat isn't known"
               : *one.why_not == not_plannable::no_sheet ? "it has no style sheet"
                                                         : "salon.toml doesn't name its groomer";
    }
    if (one.stopped) {
        return "a veterinarian first";
    }
    if (one.asked_first) {
        return "ask the owner before a double coat is clipped";
    }
    std::string s = one.in_visits  ? "a vet's word first; then two visits or more"
                    : one.vet_word ? "a vet's word first"
                                   : "";
    if (one.stuck) {
        s += (s.empty() ? "" : "; ") +
             std::string("some of it can't be done as asked: pelage plan says why");
    }
    if (one.undated_mats) {
        s += (s.empty() ? "" : "; ") +
             std::string("its file still names mats, without the day they were seen");
    }
    if (!one.unsigned_consents.empty()) {
        s += (s.empty() ? "" : "; ") + std::string("not signed: ") + listed(one.unsigned_consents);
    }
    return s;
}

namespace {

std::string alert_words(const dog& d) {
    return d.alerts.empty() ? "" : "ALERT: " + joined(titles(d.alerts), "; ");
}

/// "promised for 21 December 2026, when nobody works: Tuesday, 22 December 2026 instead; 3 days after it is
/// due"; empty where nothing is.
std::string promise_words(const due_dog& one, const week_request& r) {
    if (!one.promised) {
        return {};
    }
    std::string s = "promised for " + in_words(*one.promised);
    const auto on = day_for_promise(r.salon, r.salon.dogs[one.dog], r.today, *one.promised);
    if (on != one.promised) {
        s += ", when nobody works: " + (on ? with_weekday(*on) + " instead" : "no day is near");
    }
    if (const int late = days_to(one.by, on.value_or(*one.promised)); late > 0) {
        s += ", " + std::to_string(late) + (late == 1 ? " day" : " days") + " after it is due";
    }
    return s;
}

}  // namespace

std::string beside_words(const due_dog& one, const week_request& r, bool promised) {
    std::vector<std::string> parts{alert_words(r.salon.dogs[one.dog]), first_words(one)};
    if (promised) {
        parts.push_back(promise_words(one, r));
    }
    std::erase(parts, std::string{});
    return joined(parts, "; ");
}

std::string_view visit_name(const due_dog& one, const diary_visit& v) {
    return name(v.full ? visit_work::full_groom : one.between);
}

std::string hours_words(const work& w) {
    return detail::fixed(in_minutes(w) / 60.0, 1) + " h";
}

std::string week_foot(const salon_files& s) {
    return std::string("Minutes and clocks are our guesses until the salon writes its own.") +
           (s.invented ? " Invented: no such salon or dog exists." : "");
}

}  // namespace pelage::io
