// The longest coat for a wait, as text.
#include <cmath>

#include <pelage/answers/write.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/trade/upkeep.hpp>

#include "answers/first_lines.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

std::string wait_words(const days& d) {
    const auto n = static_cast<int>(std::lround(in_days(d)));
    const int weeks = n % 7 == 0 ? n / 7 : 0;
    const int shown = weeks > 0 ? weeks : n;
    return std::to_string(shown) + (weeks > 0 ? " week" : " day") + (shown == 1 ? "" : "s");
}

/// " (back 10 mm instead of 13 mm, forelegs 12 mm instead of 16 mm)"
std::string lengths(const longest_coat_answer& a, const plan_request& r, const print_options& o) {
    std::string s;
    for (const auto& [where, change] : a.instead) {
        const std::string_view whom = name(r.reference.dog_body.zones[where.zone].where);
        s += (s.empty() ? "" : ", ") + std::string(whom) + " " + show(change.second, o.units) +
             " instead of " + show(change.first, o.units);
    }
    return s.empty() ? s : " (" + s + ")";
}

std::string at_percent(const longest_coat_answer& a, const plan_request& r,
                       const print_options& o) {
    return a.percent == 100
               ? "with the sheet's own lengths"
               : "at " + std::to_string(a.percent) + " % of the sheet's lengths" + lengths(a, r, o);
}

/// Why no length holds.
std::string reason(const longest_coat_answer& a, const plan_request& r, length_unit u) {
    const coat& c = coat_of(r.reference, *r.patient.coat);
    if (a.wished > a.usual) {
        return "no length makes this dog wait longer than " + wait_words(a.usual) +
               ", the usual interval of its coat or sheet";
    }
    return "of all lengths down to " + show(c.shortest.best, u) +
           ", the shortest advisable for a " + c.title + ", none holds for so long";
}

/// "89.6 in 100 such dogs would still be fine on the day asked": never rounded up to what was asked for.
std::string at_wish(const longest_coat_answer& a, const plan_request& r) {
    const chance asked = chance_asked(r);
    const double hundredths = std::round(a.at_wish * 100.0) / 100.0;
    const double tenths = std::floor(a.at_wish * 1000.0) / 10.0;
    return (hundredths < asked ? odds(hundredths) : detail::fixed(tenths, 1) + " in 100") +
           " such dogs would still be fine on the day asked; the date wants " + odds(asked) + ".";
}

void append_plan(document& d, const longest_coat_answer& a, const plan_request& r,
                 const print_options& o, plan_told as) {
    const plan_request ask = request_for(r, a.wishes);
    d.append(as == plan_told::card ? card_of(a.plan, a.when, ask, o)
                                   : document_of(a.plan, a.when, ask, o));
}

}  // namespace

document document_of(const longest_coat_answer& a, const plan_request& r, const print_options& o,
                     plan_told as) {
    const std::string wish = "Back in " + wait_words(a.wished) + ", by " + on_day(a.wished, o);
    document d{"The longest coat for a wait"};
    say_alert(d, r.patient);
    if (!a.holds) {
        d.say(wish + ": that can't be done; " + reason(a, r, o.units) + ".", 2);
        if (!a.plan.stuck.empty()) {
            d.say("Part of the dog is not to be done as asked: see the plan.", 2);
            return d;
        }
        d.say("The best: back by " + come_by(a.when.next_visit, o) + ", " + at_percent(a, r, o) +
                  (a.percent < 100 && a.wished <= a.usual ? "; shorter gains no day" : "") +
                  (a.percent < 100 ? "; the owner decides." : "."),
              2);
        if (a.by_length && a.wished <= a.usual) {
            d.say(at_wish(a, r), 2);
        }
        return d;
    }
    const std::string fine =
        !a.by_length  ? ", which is within the usual interval"
        : a.when.fine ? ", " + true_odds(a.when.asked, *a.when.fine) + " such dogs, " +
                            brushing_of(r.patient) + ", are under their matting-prone lengths on " +
                            on_day(a.when.next_visit, o)
                      : ", held by brushing until " + on_day(a.when.next_visit, o);
    d.say(wish + ": " + at_percent(a, r, o) + fine + ".", 2);
    append_plan(d, a, r, o, as);
    return d;
}

}  // namespace pelage::io
