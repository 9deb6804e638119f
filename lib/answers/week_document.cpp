// The week as a document: who is due, and how long that takes.
#include <algorithm>

#include <pelage/answers/week.hpp>
#include <pelage/base/phrase.hpp>

#include "answers/words/dates.hpp"
#include "answers/words/week.hpp"

namespace pelage::io {

namespace {

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
        t.rows.push_back({called(who), std::string(name(one->what)),
                          cell(by, weekday_in_short(by) + " " + in_words(by)),
                          overdue ? cell(std::int64_t{days}) : cell(),
                          cell(one->takes, detail::whole_minutes(one->takes)), first});
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
    d.title = "Due by " + with_weekday(end);
    d.titled = true;
    d.open({}, false);
    say_sum(d, m, overdue, due, end);
    say_dogs(d, m, "Overdue", overdue, true);
    say_dogs(d, m, "Due", due, false);
    say_others(d, m);
    d.show(week_rows(m));
    d.foot = week_foot(m.asked.salon);
    return d;
}

}  // namespace pelage::io
