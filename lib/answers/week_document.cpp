// The week and the diary, as documents.
#include <algorithm>
#include <cmath>

#include <pelage/answers/week.hpp>
#include <pelage/base/phrase.hpp>

namespace pelage::io {

namespace {

std::string called(const dog& d) {
    return d.name.empty() ? d.id : d.name;
}

int days_to(const date& from, const date& to) {
    return static_cast<int>((to - from).count());
}

std::string weekday_words(const date& d) {
    return std::string(weekday_names[weekday_of(d)]) + ", " + in_words(d);
}

/// What has to be asked or known before the dog can be booked; empty: nothing.
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
    std::string s = one.stuck ? "some of it can't be done as asked: pelage plan says why" : "";
    if (!one.unsigned_consents.empty()) {
        s += (s.empty() ? "" : "; ") + std::string("not signed: ") + listed(one.unsigned_consents);
    }
    return s;
}

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
        s += ", when nobody works: " + (on ? weekday_words(*on) + " instead" : "no day is near");
    }
    if (const int late = days_to(one.by, on.value_or(*one.promised)); late > 0) {
        s += ", " + std::to_string(late) + (late == 1 ? " day" : " days") + " after it is due";
    }
    return s;
}

/// What stands beside a dog: alerts first, then what has to be asked or known, then what was promised.
std::string beside_words(const due_dog& one, const week_request& r, bool promised = true) {
    std::vector<std::string> parts{alert_words(r.salon.dogs[one.dog]), first_words(one)};
    if (promised) {
        parts.push_back(promise_words(one, r));
    }
    std::erase(parts, std::string{});
    return joined(parts, "; ");
}

/// The day by which it comes: that its clock sets, or the one it was promised if that is sooner.
date comes_by(const due_dog& one, const week_request& r) {
    const auto on = one.promised
                        ? day_for_promise(r.salon, r.salon.dogs[one.dog], r.today, *one.promised)
                        : std::nullopt;
    return on ? std::min(*on, one.by) : one.by;
}

/// The Sunday that ends a day's week.
date end_of_week(const date& d) {
    return d + std::chrono::days{static_cast<int>((7 - weekday_of(d)) % 7)};
}

std::string hours_words(const work& w) {
    return detail::fixed(in_minutes(w) / 60.0, 1) + " h";
}

/// Whether the full groom is due by that day after the next visit, which is less.
bool groomed_after(const due_dog& one, const date& end) {
    return one.what != visit_work::full_groom && one.full_by <= end;
}

void say_dogs(document& d, const week_matter& m, std::string heading,
              const std::vector<const due_dog*>& which, bool overdue) {
    if (which.empty()) {
        return;
    }
    typed_table t{{"dog", "visit", overdue ? "since" : "by", "days", "min", "know first"}};
    t.numbers = {false, false, false, true, true, false};
    t.whom = shown_to::people;
    for (const due_dog* one : which) {
        const dog& who = m.asked.salon.dogs[one->dog];
        const date until = comes_by(*one, m.asked);
        const auto last = last_open_day(m.asked.salon, who, m.asked.today, until);
        const date by = overdue ? one->by : last.value_or(until);
        const int days = days_to(one->by, m.asked.today);
        std::string first = beside_words(*one, m.asked);
        if (groomed_after(*one, end_of_week(m.of))) {
            first += (first.empty() ? "" : "; ") + std::string("then a full groom by ") +
                     in_words(one->full_by);
        }
        if (!overdue && !last) {
            first += (first.empty() ? "" : "; ") + std::string("no open day before");
        }
        t.rows.push_back(
            {called(who), std::string(name(one->what)),
             cell(by, std::string(weekday_names[weekday_of(by)]).substr(0, 3) + " " + in_words(by)),
             overdue ? cell(std::int64_t{days}) : cell(),
             cell(one->takes, detail::fixed(in_minutes(one->takes), 0)), first});
    }
    if (!overdue) {
        t.head.erase(t.head.begin() + 3);
        t.numbers.erase(t.numbers.begin() + 3);
        for (auto& row : t.rows) {
            row.erase(row.begin() + 3);
        }
    }
    d.open(std::move(heading));
    d.show(std::move(t));
}

void say_others(document& d, const week_matter& m) {
    std::vector<std::string> unknown;
    bool opened = false;
    for (const due_dog& one : m.due) {
        const dog& who = m.asked.salon.dogs[one.dog];
        const bool apart = one.why_not || one.stopped || one.asked_first;
        if (apart) {
            if (!opened) {
                d.open("Not to be booked yet");
                opened = true;
            }
            d.item_of(called(who) + ": ", first_words(one));
        } else if (!one.last_full) {
            unknown.push_back(called(who));
        }
    }
    if (!unknown.empty()) {
        d.open("No full groom on record");
        d.say(listed(unknown) + ": nobody knows when they are due; pelage log records a groom.");
    }
}

/// Every dog with a date, for programs.
typed_table week_rows(const week_matter& m) {
    typed_table t{
        {"dog", "name", "visit", "by", "full_groom_by", "takes", "overdue_days", "ask_first"}};
    t.whom = shown_to::programs;
    for (const due_dog& one : m.due) {
        const dog& who = m.asked.salon.dogs[one.dog];
        if (!one.last_full) {
            t.rows.push_back(
                {who.id, called(who), cell(), cell(), cell(), cell(), cell(),
                 first_words(one).empty() ? "no full groom on record" : first_words(one)});
            continue;
        }
        t.rows.push_back({who.id, called(who), std::string(name(one.what)), one.by, one.full_by,
                          one.takes, std::int64_t{std::max(0, days_to(one.by, m.asked.today))},
                          beside_words(one, m.asked)});
    }
    return t;
}

work hours_of(const week_request& r, const date& from, const date& to) {
    work sum{};
    for (date on = from; on <= to; on += std::chrono::days{1}) {
        for (const groomer& g : r.salon.groomers) {
            sum += r.salon.closed.cover(on) ? work{} : g.on(on);
        }
    }
    return sum;
}

void say_sum(document& d, const week_matter& m, const std::vector<const due_dog*>& overdue,
             const std::vector<const due_dog*>& due, const date& end) {
    work takes{};
    for (const auto* which : {&overdue, &due}) {
        for (const due_dog* one : *which) {
            takes += one->takes;
            takes += groomed_after(*one, end) ? one->first_full_takes : work{};
        }
    }
    const std::size_t n = overdue.size() + due.size();
    std::string s = n == 0 ? "Nobody is due."
                           : std::to_string(n) + (n == 1 ? " dog is" : " dogs are") +
                                 " due, about " + hours_words(takes) + " of work";
    if (n > 0) {
        const work has =
            hours_of(m.asked, std::max(m.asked.today, end - std::chrono::days{6}), end);
        s += m.asked.salon.groomers.empty()
                 ? "; salon.toml names no groomer, so nobody knows how much there is room for."
                 : "; the groomers have " + hours_words(has) + " that week.";
    }
    d.say(s);
}

std::string lapse_words(const diary_lapse& l, const diary_matter& m) {
    const diary_problem& p = m.question.problem;
    switch (l.reason) {
        case lapse_reason::no_common_day:
            return p.dogs[l.dog].groomer ? "; its owner and its groomer share no day in reach"
                                         : "; no day in reach is open when its owner can come";
        case lapse_reason::longer_than_a_day:
            return "; its full groom of " + detail::fixed(in_minutes(p.dogs[l.dog].full), 0) +
                   " min is longer than anybody works on a day in reach";
        case lapse_reason::full_book:
            break;
    }
    return "; every day up to " + std::to_string(p.most_late) + " days late is full";
}

std::string foot(const salon_files& s) {
    return std::string("Minutes and clocks are our guesses until the salon writes its own.") +
           (s.invented ? " Invented: no such salon or dog exists." : "");
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
                  weekday_words(v.on) + "; " + broken_words(v.why, m) +
                      (v.instead ? "; booked on the nearest day on which somebody does, " +
                                       weekday_words(*v.instead)
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

std::string visit_words(const due_dog& one, const diary_visit& v) {
    return v.full ? std::string(name(visit_work::full_groom)) : std::string(name(one.between));
}

}  // namespace

document document_of(const week_matter& m) {
    const date end = end_of_week(m.of);
    std::vector<const due_dog*> overdue;
    std::vector<const due_dog*> due;
    for (const due_dog& one : m.due) {
        if (one.bookable() && one.by < m.asked.today) {
            overdue.push_back(&one);
        } else if (one.bookable() && comes_by(one, m.asked) <= end) {
            due.push_back(&one);
        }
    }
    const auto sooner = [&](const due_dog* a, const due_dog* b) {
        return comes_by(*a, m.asked) < comes_by(*b, m.asked);
    };
    std::stable_sort(overdue.begin(), overdue.end(), sooner);
    std::stable_sort(due.begin(), due.end(), sooner);
    document d;
    d.title = "Due by " + weekday_words(end);
    d.titled = true;
    d.open({}, false);
    say_sum(d, m, overdue, due, end);
    say_dogs(d, m, "Overdue", overdue, true);
    say_dogs(d, m, "Due", due, false);
    say_others(d, m);
    d.show(week_rows(m));
    d.foot = foot(m.asked.salon);
    return d;
}

document document_of(const diary_matter& m) {
    const auto& p = m.question.problem;
    const auto day = [&](int n) { return m.asked.today + std::chrono::days{n}; };
    document d;
    d.title = "Diary from " + in_words(m.asked.today) + ", " + std::to_string(p.last / 7) +
              (p.last == 7 ? " week" : " weeks");
    d.titled = true;
    d.open({}, false);
    work takes{};
    int late = 0;
    int latest = 0;
    typed_table t{{"day", "groomer", "dog", "visit", "min", "late", "know first"}};
    t.numbers = {false, false, false, false, true, true, false};
    const std::vector<work> minutes_of = visit_minutes(m.found, m.question, m.due);
    for (std::size_t i = 0; i < m.found.visits.size(); ++i) {
        const diary_visit& v = m.found.visits[i];
        const due_dog& one = m.due[m.question.which[v.dog]];
        const work here = minutes_of[i];
        if (m.only.value_or(v.groomer) != v.groomer) {
            continue;
        }
        takes += here;
        late += v.late > 0 ? 1 : 0;
        latest = std::max(latest, v.late);
        const date on = day(v.on);
        t.rows.push_back(
            {cell(on, std::string(weekday_names[weekday_of(on)]).substr(0, 3) + " " + iso(on)),
             m.asked.salon.groomers[v.groomer].name, called(m.asked.salon.dogs[one.dog]),
             visit_words(one, v), cell(here, detail::fixed(in_minutes(here), 0)),
             v.late > 0 ? cell(std::int64_t{v.late}) : cell(),
             beside_words(one, m.asked, is_promised(m, v))});
    }
    const std::size_t n = t.rows.size();
    std::string s = std::to_string(n) + (n == 1 ? " visit" : " visits") + ", about " +
                    hours_words(takes) + " of work.";
    if (late > 0) {
        s += " " + std::to_string(late) + (late == 1 ? " is" : " are") + " late, at most " +
             std::to_string(latest) + (latest == 1 ? " day." : " days.");
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
    if (p.hours.empty()) {
        s = "salon.toml names no groomer ([[groomer]] with hours): no diary can be made.";
    } else if (!m.only && in_mmin(m.found.bound) > 0) {
        const double cost = in_minutes(m.found.cost);
        const double bound = in_minutes(m.found.bound);
        s += cost <= bound
                 ? " No diary of these hours costs less in minutes, trips and days late "
                   "(proven)."
                 : " Minutes, trips and days late come to at most " +
                       detail::fixed(std::ceil(1000.0 * (cost - bound) / bound) / 10.0, 1) +
                       " % more than in any diary of these hours (proven bound).";
    }
    d.say(s);
    d.open();
    d.show(std::move(t));
    if (!m.found.lapses.empty() && !p.hours.empty()) {
        d.open("Not held");
        for (const diary_lapse& l : m.found.lapses) {
            const dog& who = m.asked.salon.dogs[m.due[m.question.which[l.dog]].dog];
            d.item_of(called(who) + ": ", "due by " + in_words(day(l.due)) + lapse_words(l, m));
        }
    }
    say_broken_promises(d, m);
    say_left_out(d, m);
    d.foot = foot(m.asked.salon);
    return d;
}

}  // namespace pelage::io
