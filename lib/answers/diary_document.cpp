// The diary as a document: who comes when, and what could not be kept.
#include <algorithm>
#include <cmath>

#include <pelage/answers/week.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/dates.hpp"
#include "answers/words/week.hpp"

namespace pelage::io {

namespace {

std::string lapse_words(const diary_lapse& l, const diary_matter& m) {
    const diary_problem& p = m.question.problem;
    switch (l.reason) {
        case lapse_reason::no_common_day:
            return p.dogs[l.dog].groomer ? "; its owner and its groomer share no day in reach"
                                         : "; no day in reach is open when its owner can come";
        case lapse_reason::longer_than_a_day:
            return "; its full groom of " + detail::whole_minutes(p.dogs[l.dog].full) +
                   " min is longer than anybody works on a day in reach";
        case lapse_reason::full_book:
            break;
    }
    return "; every day up to " + std::to_string(p.most_late) + " days late is full";
}

std::string broken_words(promise_broken why, const diary_matter& m) {
    switch (why) {
        case promise_broken::after_diary:
            return "after this diary; nothing is booked before it";
        case promise_broken::closed:
            return "the salon is closed that day";
        case promise_broken::owner_cannot:
            return "its owner can't come that day";
        case promise_broken::away:
            return m.asked.salon.groomers.size() == 1 ? "nobody works that day"
                                                      : "whoever may groom it is away that day";
        case promise_broken::no_room:
        case promise_broken::no:
            break;
    }
    return "nobody who may groom it has as much time left that day";
}

/// Whether that visit is the one that was promised.
bool is_promised(const diary_matter& m, const diary_visit& v) {
    return std::any_of(
        m.question.promised.begin(), m.question.promised.end(), [&](const promised_visit& p) {
            return p.dog == v.dog && p.booked() == m.asked.today + std::chrono::days{v.on};
        });
}

/// How many dogs were promised a day behind the diary that their coat doesn't wait for.
std::size_t promised_late(const diary_matter& m) {
    return static_cast<std::size_t>(std::count_if(
        m.question.promised.begin(), m.question.promised.end(), [](const promised_visit& v) {
            return v.why == promise_broken::after_diary && v.late > 0;
        }));
}

/// Days told to owners that the diary can't keep.
void say_broken_promises(document& d, const diary_matter& m) {
    bool opened = false;
    for (const promised_visit& v : m.question.promised) {
        if (v.why == promise_broken::no) {
            continue;
        }
        if (!opened) {
            d.open("Promised, and not in it on that day");
            opened = true;
        }
        d.item_of(called(m.asked.salon.dogs[m.due[v.due].dog]) + ": ",
                  with_weekday(v.on) + "; " + broken_words(v.why, m) +
                      (v.instead ? "; booked on the nearest day on which somebody does, " +
                                       with_weekday(*v.instead)
                       : v.why == promise_broken::after_diary && v.late > 0
                           ? "; that is " + std::to_string(v.late) +
                                 (v.late == 1 ? " day" : " days") + " after it is due"
                           : ""));
    }
}

/// Who isn't in a diary, and why.
void say_left_out(document& d, const diary_matter& m) {
    std::vector<std::string> unknown;
    std::vector<std::string> asked;
    for (const due_dog& one : m.due) {
        if (!one.bookable()) {
            const bool apart = one.why_not || one.stopped || one.asked_first;
            (apart ? asked : unknown).push_back(called(m.asked.salon.dogs[one.dog]));
        }
    }
    if (unknown.empty() && asked.empty()) {
        return;
    }
    d.open("Not in it");
    if (!unknown.empty()) {
        d.item_of("no full groom on record: ", listed(unknown));
    }
    if (!asked.empty()) {
        d.item_of("to be asked or known first, pelage week says what: ", listed(asked));
    }
}

/// The visits as rows, and what they come to.
struct diary_rows {
    typed_table visits;
    work takes{};
    int late = 0;    ///< visits
    int latest = 0;  ///< days
};

diary_rows diary_rows_of(const diary_matter& m) {
    diary_rows out{{{"day", "groomer", "dog", "visit", "min", "late", "know first"}}};
    out.visits.numbers = {false, false, false, false, true, true, false};
    const std::vector<work> minutes_of = visit_minutes(m.found, m.question, m.due);
    for (std::size_t i = 0; i < m.found.visits.size(); ++i) {
        const diary_visit& v = m.found.visits[i];
        const due_dog& one = m.due[m.question.which[v.dog]];
        const work here = minutes_of[i];
        if (m.only.value_or(v.groomer) != v.groomer) {
            continue;
        }
        out.takes += here;
        out.late += v.late > 0 ? 1 : 0;
        out.latest = std::max(out.latest, v.late);
        const date on = m.asked.today + std::chrono::days{v.on};
        out.visits.rows.push_back(
            {cell(on, weekday_in_short(on) + " " + iso(on)), m.asked.salon.groomers[v.groomer].name,
             called(m.asked.salon.dogs[one.dog]), std::string(visit_name(one, v)),
             cell(here, detail::whole_minutes(here)),
             v.late > 0 ? cell(std::int64_t{v.late}) : cell(),
             beside_words(one, m.asked, is_promised(m, v))});
    }
    return out;
}

/// How near the diary is to the best of its hours; empty where that isn't told.
std::string proven_words(const diary_matter& m) {
    if (m.only || in_mmin(m.found.bound) <= 0) {
        return {};
    }
    const double cost = in_minutes(m.found.cost);
    const double bound = in_minutes(m.found.bound);
    return cost <= bound ? " No diary of these hours costs less in minutes, trips and days late "
                           "(proven)."
                         : " Minutes, trips and days late come to at most " +
                               detail::fixed(std::ceil(1000.0 * (cost - bound) / bound) / 10.0, 1) +
                               " % more than in any diary of these hours (proven bound).";
}

std::string sum_words(const diary_matter& m, const diary_rows& all) {
    if (m.question.problem.hours.empty()) {
        return "salon.toml names no groomer ([[groomer]] with hours): no diary can be made.";
    }
    const std::size_t n = all.visits.rows.size();
    std::string s = std::to_string(n) + (n == 1 ? " visit" : " visits") + ", about " +
                    hours_words(all.takes) + " of work.";
    if (all.late > 0) {
        s += " " + std::to_string(all.late) + (all.late == 1 ? " is" : " are") + " late, at most " +
             std::to_string(all.latest) + (all.latest == 1 ? " day." : " days.");
    } else if (m.found.lapses.empty() && promised_late(m) == 0) {
        s += " Nobody is late.";
    }
    if (const std::size_t n_late = promised_late(m); n_late > 0) {
        s += " " + std::to_string(n_late) + (n_late == 1 ? " is" : " are") +
             " promised a day after this diary that is later than due, see below.";
    }
    if (!m.found.lapses.empty()) {
        s += " " + std::to_string(m.found.lapses.size()) + " not held, see below.";
    }
    return s + " But for promised days a dog's visits lie at least " +
           std::to_string(m.question.problem.gap) + " days apart, late or not." + proven_words(m);
}

/// Dogs for which there is no day.
void say_lapses(document& d, const diary_matter& m) {
    if (m.found.lapses.empty() || m.question.problem.hours.empty()) {
        return;
    }
    d.open("Not held");
    for (const diary_lapse& l : m.found.lapses) {
        const dog& who = m.asked.salon.dogs[m.due[m.question.which[l.dog]].dog];
        d.item_of(
            called(who) + ": ",
            "due by " + in_words(m.asked.today + std::chrono::days{l.due}) + lapse_words(l, m));
    }
}

}  // namespace

document document_of(const diary_matter& m) {
    const int last = m.question.problem.last;
    document d;
    d.title = "Diary from " + in_words(m.asked.today) + ", " + std::to_string(last / 7) +
              (last == 7 ? " week" : " weeks");
    d.titled = true;
    d.open({}, false);
    diary_rows all = diary_rows_of(m);
    d.say(sum_words(m, all));
    d.open();
    d.show(std::move(all.visits));
    say_lapses(d, m);
    say_broken_promises(d, m);
    say_left_out(d, m);
    d.foot = week_foot(m.asked.salon);
    return d;
}

}  // namespace pelage::io
