#include "answers/words/sheet.hpp"

#include <array>

#include <pelage/base/phrase.hpp>
#include <pelage/planner/appointment.hpp>

namespace pelage::io {

namespace {

std::string day_words(const day_of_year& d) {
    constexpr std::array<const char*, 12> months{"January",   "February", "March",    "April",
                                                 "May",       "June",     "July",     "August",
                                                 "September", "October",  "November", "December"};
    return std::to_string(d.day) + " " + months[d.month - 1];
}

/// Whether a month begins the day after another ends.
bool follows(const day_of_year& end, const day_of_year& next) {
    return next.day == 1 && next.month == end.month % 12 + 1 && end.day >= 28;
}

}  // namespace

std::string span_words(const limit& l, length_unit u) {
    if (l.low && l.high) {
        return show(*l.low, u) + " to " + show(*l.high, u);
    }
    return l.low                 ? "at least " + show(*l.low, u)
           : l.high              ? "at most " + show(*l.high, u)
           : l.not_below.empty() ? ""
                                 : "no shorter than the " + l.not_below;
}

std::string wish_words(const instruction& i, length_unit u) {
    std::vector<std::string> parts;
    if (i.target) {
        parts.push_back(show(*i.target, u));
    }
    if (i.blade) {
        parts.push_back("blade " + *i.blade);
    }
    if (i.tolerance) {
        parts.push_back("give or take " + show(*i.tolerance, u));
    }
    if (i.how) {
        parts.emplace_back(*i.how == finish::comb_then_scissor ? "comb then scissor"
                                                               : name(*i.how));
    }
    // scissors have no direction
    if (i.way && i.how != finish::scissor && i.how != finish::thin) {
        parts.push_back(*i.way == lay_choice::either ? "either way"
                                                     : std::string(name(*i.way)) + " the lay");
    }
    if (i.between) {
        parts.push_back("rather " + std::string(name(*i.between)));
    }
    std::string text;
    for (const std::string& p : parts) {
        text += (text.empty() ? "" : ", ") + p;
    }
    return text.empty() ? "nothing said" : text;
}

std::string season_words(const season& s, length_unit u) {
    std::vector<span_of_year> when;
    for (const span_of_year& one : s.when) {
        if (!when.empty() && follows(when.back().to, one.from)) {
            when.back().to = one.to;
        } else {
            when.push_back(one);
        }
    }
    std::string text = "In " + s.name + " (";
    for (std::size_t i = 0; i < when.size(); ++i) {
        text += (i == 0 ? "" : ", ") + day_words(when[i].from) + " to " + day_words(when[i].to);
    }
    text += when.empty() ? "when asked for by name): " : "): ";
    std::vector<std::string> parts;
    if (s.scale != 1.0) {
        parts.push_back("every length at " + detail::fixed(s.scale * 100.0, 0) + " %");
    }
    for (const sheet_rule& r : s.rules) {
        parts.push_back(r.whom + " " + wish_words(r.what, u));
    }
    if (!s.upkeep.empty()) {
        parts.push_back("brushed " + s.upkeep);
    }
    if (s.longest_interval) {
        parts.push_back("back after at most " + detail::fixed(in_days(*s.longest_interval), 0) +
                        " days");
    }
    for (std::size_t i = 0; i < parts.size(); ++i) {
        text += (i == 0 ? "" : "; ") + parts[i];
    }
    return text + (s.why.empty() ? "" : ". Why: " + s.why);
}

work whole_by_plan(const groom& g, const plan_request& r) {
    return g.before + g.after +
           minutes_beside_plan(service_of(r.reference, service_kind::full), r.patient.size,
                               *r.patient.coat, r.rules.prices);
}

}  // namespace pelage::io
