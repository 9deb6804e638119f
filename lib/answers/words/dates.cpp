#include "answers/words/dates.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/base/length_text.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/trade/upkeep.hpp>

#include "answers/words/when.hpp"
#include "planner/usual_interval.hpp"

namespace pelage::io {

std::string with_weekday(const date& d) {
    return std::string(weekday_names[weekday_of(d)]) + ", " + in_words(d);
}

std::string weekday_in_short(const date& d) {
    return std::string(weekday_names[weekday_of(d)].substr(0, 3));
}

namespace {

bool any_off(const days_off& d) {
    return !d.spans.empty() ||
           std::any_of(d.weekdays.begin(), d.weekdays.end(), [](bool off) { return off; });
}

/// The last open day on which to come; the day itself where all before are closed, too.
std::optional<date> open_by(const days& d, const print_options& o) {
    if (!o.today || is_never(d) || !any_off(o.closed)) {
        return std::nullopt;
    }
    const date by = plus(*o.today, d);
    return last_open(o.closed, *o.today + std::chrono::days{1}, by);
}

std::string day_number(const days& d) {
    return "day " + detail::fixed(std::floor(in_days(d)), 0);
}

/// "Wed 23 Dec 2026": as on a card.
std::string in_short(const date& d) {
    const std::string whole = in_words(d);
    return weekday_in_short(d) + " " + day_and_month(d) + whole.substr(whole.rfind(' '));
}

bool never_brushed(const plan_request& r) {
    return counted(r.patient.brushed) == habit::none;
}

/// How it is taken where neither owner nor sheet says, and of what came felted.
constexpr std::string_view unbrushed = " if not brushed at home (nothing is said of it)";
constexpr std::string_view unbrushed_in_brief = ", not brushed (nothing said)";

/// What nobody told is said once, with the date that hangs on it.
std::string assumed(const plan_request& r) {
    const dog& d = r.patient;
    return d.brushing_said    ? std::string{}
           : d.upkeep_assumed ? " if " + title(d.brushed) + ", as the sheet assumes"
                              : std::string(unbrushed);
}

/// What the last groom is known by: a day that was only said is no record.
std::string by_what(const plan_request& r) {
    const auto& all = r.patient.visits;
    const bool logged =
        std::any_of(all.begin(), all.end(), [](const visit& v) { return v.logged; });
    return logged || !r.patient.id.empty() ? " by the record" : " by its last groom";
}

std::string opening(const return_date& b, const plan_request& r, const print_options& o) {
    std::string s = "Back by ";
    if (b.was_due && o.today) {
        s = (*b.was_due < *o.today ? "Overdue since " : "Due by ") + in_words(*b.was_due) +
            by_what(r) + "; if groomed today, back by ";
    }
    return s + come_by(b.next_visit, o) +
           (mats_by_length(coat_of(r.reference, *r.patient.coat)) ? assumed(r) : "");
}

/// "9 in 10 such dogs, brushed weekly to the skin, are under their matting-prone lengths then".
std::string fine_then(const return_date& b, const plan_request& r, const print_options& o) {
    const std::string brushing =
        r.patient.brushing_said ? ", " + title(r.patient.brushed) + "," : "";
    return true_odds(b.asked, *b.fine) + " such dogs" + brushing +
           " are under their matting-prone lengths " +
           (moved_to_open(b.next_visit, o) ? "until " + day_number(b.next_visit) : "then");
}

std::string even_odds(const return_date& b, const print_options& o) {
    if (!b.fine_even || b.even_odds <= b.next_visit) {
        return {};
    }
    return "; " + true_odds(0.5, *b.fine_even) + " until " + on_day(b.even_odds, o);
}

/// Places in a sentence; of very many only that they are.
std::string some_names(const std::vector<std::string>& names) {
    constexpr std::size_t most = 8;
    return names.empty()          ? "what is kept long"
           : names.size() <= most ? listed(names)
                                  : "nearly the whole coat";
}

std::string held_back_words(const return_date& b, const std::vector<std::string>& held,
                            const plan_request& r) {
    const days clock = brush_out_clock(r.patient.brushed, r.rules.matting);
    return "only brushing protects " + some_names(held) + ": combed to the skin that holds " +
           detail::fixed(std::floor(in_days(b.held_for > days{} ? b.held_for : clock)), 0) +
           " days" + (r.patient.brushing_said ? ", " + title(r.patient.brushed) : std::string{}) +
           " (our guess)";
}

/// What will do at the visit, and the full groom.
std::string what_then(const return_date& b, const print_options& o) {
    return " A full groom then, or a bath and a brush to the skin and the full groom by " +
           come_by(b.full_groom, o) + ".";
}

/// " Promised for Wed 16 Dec 2026.", where a day was told to the owner; that it lies behind the visit's.
std::string promised_words(const return_date& b, const plan_request& r, const print_options& o,
                           bool brief) {
    const auto on = promised_day(r, o);
    if (!on) {
        return {};
    }
    return " Promised for " + (brief ? in_short(*on) : with_weekday(*on)) +
           (is_too_late(*on, b, o) ? ", which is later." : ".");
}

std::string by_prone(const return_date& b, const print_options& o) {
    if (!b.if_prone) {
        return {};
    }
    const prone_ends& e = *b.if_prone;
    return " If it mats from " + show(e.low, o.units) + ": " + day_number(e.if_low) + "; from " +
           show(e.high, o.units) + ": " + day_number(e.if_high) + ".";
}

}  // namespace

std::string true_odds(chance asked, chance is) {
    if (std::abs(asked - is) <= 0.018) {
        return odds(asked);
    }
    if (is >= 0.995) {
        return "over 99 in 100";
    }
    return odds(std::round(is * 100.0) / 100.0);
}

std::optional<date> promised_day(const plan_request& r, const print_options& o) {
    const std::optional<date>& on = r.patient.promised;
    return on && o.today && *on > *o.today ? on : std::nullopt;
}

bool is_too_late(const date& promised, const return_date& b, const print_options& o) {
    return o.today && !is_never(b.next_visit) && promised > plus(*o.today, b.next_visit);
}

days come_by_day(const days& d, const print_options& o) {
    const auto open = open_by(d, o);
    return open ? between(*o.today, *open) : d;
}

bool moved_to_open(const days& d, const print_options& o) {
    const auto open = open_by(d, o);
    return open && *open != plus(*o.today, d);
}

std::string day_and_month(const date& d) {
    const std::string whole = in_words(d);
    return whole.substr(0, whole.find(' ') + 4);
}

std::string day_in_short(const days& d, const print_options& o) {
    if (!o.today || is_never(d)) {
        return is_never(d) ? "never" : day_number(d);
    }
    const auto open = open_by(d, o);
    return in_short(open ? *open : plus(*o.today, d));
}

std::string come_by(const days& d, const print_options& o) {
    const auto open = open_by(d, o);
    return open ? with_weekday(*open) + " (" + day_number(between(*o.today, *open)) + ")"
                : on_day(d, o);
}

std::string come_by_date(const days& d, const print_options& o) {
    const auto open = open_by(d, o);
    return open ? with_weekday(*open) : o.today ? in_words(plus(*o.today, d)) : day_number(d);
}

std::vector<std::string> held_names(const return_date& b, const groom& g, const plan_request& r) {
    std::vector<place> places;
    for (const std::size_t i : b.by_brushing) {
        places.push_back(g.zones[i].at);
    }
    return titles(r.reference.dog_body, places);
}

namespace {

/// Not brushed, or it came matted: a double coat is back by the short end.
std::string end_of_usual(const plan_request& r) {
    return neglected(r) ? "the short end of " : "";
}

std::string date_and_reason(const return_date& b, const std::vector<std::string>& held,
                            const plan_request& r, const print_options& o) {
    const coat& c = coat_of(r.reference, *r.patient.coat);
    const std::string first = opening(b, r, o);
    // short of the usual interval only a coat that mats, too, among those it may have, sets a date
    if (!mats_by_length(c) && b.reason == visit_kind::usual) {
        return first + ", " + end_of_usual(r) + "the usual interval of a " + c.title +
               ". Its length sets no date" +
               (double_coated(c.id) ? ", but loose undercoat packs where it isn't combed out."
                                    : ".");
    }
    if (b.reason == visit_kind::usual) {
        const std::string usual = first + ", the usual interval of this coat; ";
        return usual + (b.fine ? fine_then(b, r, o) : held_back_words(b, held, r)) + "." +
               by_prone(b, o);
    }
    if (b.reason == visit_kind::by_brushing) {
        return first + ": " + held_back_words(b, held, r) + "." + what_then(b, o) + by_prone(b, o);
    }
    return first + ": " + fine_then(b, r, o) + even_odds(b, o) + "." + what_then(b, o) +
           by_prone(b, o);
}

}  // namespace

std::string when_in_words(const return_date& b, const std::vector<std::string>& held,
                          const plan_request& r, const print_options& o) {
    return date_and_reason(b, held, r, o) + promised_words(b, r, o, false);
}

std::string when_in_words(const return_date& b, const groom& g, const plan_request& r,
                          const print_options& o) {
    return when_in_words(b, held_names(b, g, r), r, o);
}

namespace {

/// "Overdue since Mon 26 Oct 2026"; b.was_due and o.today are there.
std::string due_in_short(const return_date& b, const print_options& o) {
    return *b.was_due == *o.today
               ? "Due today"
               : (*b.was_due < *o.today ? "Overdue since " : "Due by ") + in_short(*b.was_due);
}

/// Without its year where the other stands with its own less than a year before.
std::string beside(const days& d, const days& other, const print_options& o) {
    std::string text = day_in_short(d, o);
    const std::size_t year = text.rfind(' ');
    const bool plain = year != std::string::npos && o.today && !is_never(d) && !is_never(other) &&
                       other <= d && d - other < day(360.0);
    return plain ? text.substr(0, year) : text;
}

/// "every other day to the skin (sheet's guess)"; empty where it was said, or isn't brushed.
std::string guessed_brushing(const plan_request& r) {
    const dog& d = r.patient;
    if (d.brushing_said || !d.upkeep_assumed || never_brushed(r) ||
        !mats_by_length(coat_of(r.reference, *d.coat))) {
        return {};
    }
    constexpr std::string_view lead = "brushed ";
    const std::string how = title(d.brushed);
    return how.substr(how.starts_with(lead) ? lead.size() : 0) + " (sheet's guess)";
}

/// Why the dog isn't back later, and on what that hangs.
std::string held_in_brief(const return_date& b, const groom& g, const plan_request& r) {
    const std::string guess = guessed_brushing(r);
    if (b.reason == visit_kind::by_brushing) {
        const std::vector<std::string> held = held_names(b, g, r);
        constexpr std::size_t few = 3;
        if (!guess.empty()) {
            return "; if brushed " + guess + ".";
        }
        const std::string long_hair = held.size() > few ? "what is long" : some_names(held);
        return never_brushed(r) ? " (our guess)." : ". Only brushing protects " + long_hair + ".";
    }
    return (guess.empty() ? ". " : ". Brushed " + guess + ", ") + true_odds(b.asked, *b.fine) +
           " such dogs stay too short to mat until " + day_number(b.next_visit) + " (our guess).";
}

std::string date_in_brief(const return_date& b, const groom& g, const plan_request& r,
                          const print_options& o) {
    const auto open = open_by(b.next_visit, o);
    std::string first =
        "Back by " + day_in_short(b.next_visit, o) +
        (o.today ? " (" + day_number(open ? between(*o.today, *open) : b.next_visit) + ")" : "");
    const dog& d = r.patient;
    if (!d.brushing_said && guessed_brushing(r).empty() &&
        mats_by_length(coat_of(r.reference, *d.coat))) {
        first += unbrushed_in_brief;
    }
    if (b.reason == visit_kind::usual) {
        const std::string guess = guessed_brushing(r);
        return first + (guess.empty() ? "" : " if brushed " + guess) +
               (neglected(r) ? ", the short end of this coat's usual interval."
                : open       ? ", the last open day of this coat's usual interval."
                             : ", the usual interval of this coat.");
    }
    return first + ": at least bath and brush; full groom by " +
           beside(b.full_groom, b.next_visit, o) + held_in_brief(b, g, r);
}

}  // namespace

namespace {

std::optional<date> last_full(const plan_request& r) {
    std::optional<date> last;
    for (const visit& v : r.patient.visits) {
        if (v.kind == "full" && (!r.today || v.on <= *r.today)) {
            last = last ? std::max(*last, v.on) : v.on;
        }
    }
    return last;
}

}  // namespace

std::string full_groom_in_brief(const std::optional<return_date>& b, const plan_request& r,
                                const print_options& o) {
    if (!b || !b->was_due || !o.today) {
        return "Back: no full groom on record that a day could be reckoned from.";
    }
    const bool brushed = r.booked != nullptr &&
                         (r.booked->has(service_step::bath) || r.booked->has(service_step::brush));
    return_date due = *b;
    if (const auto last = last_full(r); brushed && last) {
        due.was_due = plus(*last, b->full_groom);  // what of it brushing holds is done today
    }
    if (!brushed) {
        return "This visit is no full groom. " + due_in_short(due, o) + by_what(r) + ".";
    }
    const bool late = *due.was_due < *o.today;
    return "This visit is no full groom; that is " +
           (*due.was_due == *o.today
                ? "due today"
                : (late ? "overdue since " : "due by ") + in_short(*due.was_due)) +
           by_what(r) + ".";
}

std::string when_in_brief(const return_date& b, const groom& g, const plan_request& r,
                          const print_options& o) {
    return date_in_brief(b, g, r, o) + promised_words(b, r, o, true);
}

std::vector<std::string> owner_dates(const return_date& b, const std::vector<std::string>& held,
                                     const std::vector<std::string>& first, const plan_request& r,
                                     const print_options& o) {
    std::vector<std::string> out;
    // a dog that came with mats is promised nothing of being brushed as it was
    const bool matted = !r.patient.mats.empty();
    const std::string on = moved_to_open(b.next_visit, o) && o.today
                               ? "on " + in_words(plus(*o.today, b.next_visit))
                               : "then";
    const std::string brushing =
        !r.patient.brushing_said ? ""
        : never_brushed(r)
            ? (r.patient.brushed.how_often == habit::none ? ", with no brushing at home,"
                                                          : ", brushed on top only, as you do now,")
            : ", brushed as you do now,";
    if (b.fine && !matted) {
        out.push_back(true_odds(b.asked, *b.fine) + " dogs like yours" + brushing +
                      " have hair short enough not to mat " + on + ".");
    }
    if (b.reason == visit_kind::usual) {
        out.emplace_back("A coat of this kind should not go longer.");
        return out;
    }
    if (b.reason == visit_kind::by_brushing) {
        const std::string what =
            held.empty() || held.size() > 3 ? "The long hair" : "The hair on " + listed(held);
        out.push_back(what + " holds so long only" +
                      (never_brushed(r) ? " because it was combed out down to the skin today."
                                        : " if you brush it down to the skin."));
    } else if (!first.empty()) {
        out.push_back("It mats first here: " + listed(first) + ".");
    }
    out.push_back(
        "Then it needs a full groom, or a bath and a brush down to the skin. The full "
        "groom is due by " +
        come_by_date(b.full_groom, o) + ".");
    return out;
}

}  // namespace pelage::io
