// Why there is no calendar, and what would make one: all by trying.
#include <algorithm>
#include <array>

#include <pelage/forecast/longest_coat.hpp>

#include "forecast/calendar_clocks.hpp"
#include "planner/plan_again.hpp"

namespace pelage {

namespace {

/// The longest wait anybody asks about.
constexpr int any_wait = 366;

bool works(const schedule_problem& p) {
    return cheapest(p).has_value();
}

/// The last day up to which there is a calendar; 0 if there is none at all.
int works_until(const schedule_problem& p) {
    int low = 0;
    int high = p.last;
    while (high - low > 1) {
        schedule_problem part = p;
        part.last = low + (high - low) / 2;
        part.open.resize(static_cast<std::size_t>(part.last) + 1);
        part.fresh.erase(std::remove_if(part.fresh.begin(), part.fresh.end(),
                                        [&](const fresh_by& f) { return f.on > part.last; }),
                         part.fresh.end());
        (works(part) ? low : high) = part.last;
    }
    return low;
}

/// Which clocks are kept.
using kept_clocks = std::array<bool, due_names.size()>;

bool has(const kept_clocks& k, due clock) {
    return k[static_cast<std::size_t>(clock)];
}

/// What a brush is due by: length, or else the clock in which brushing holds. One clock, named after
/// what lasts longer.
due brush_clock(const visit_clocks& v) {
    return v.length > v.brush.value_or(0) ? due::matting : due::held;
}

visit_clocks only(const kept_clocks& k, visit_clocks v) {
    v.full = has(k, due::usual) ? v.full : any_wait;
    v.brush = has(k, due::matting) || has(k, due::held) ? v.brush : std::nullopt;
    v.tidy = has(k, due::tidy) ? v.tidy : std::nullopt;
    return v;
}

/// The problem in which the other clocks run for ever.
schedule_problem only(const kept_clocks& k, schedule_problem b) {
    b.first = only(k, b.first);
    b.later = only(k, b.later);
    if (!has(k, due::event)) {
        b.fresh.clear();
    }
    return b;
}

/// Whether there is a calendar with other wishes from the next groom on.
bool works_with(const calendar_request& r, const grooms_to_come& now, const plan_request& ask,
                const kept_clocks& kept, chance p) {
    const calendar_request other{ask, r.today, r.weeks, r.closed, nullptr};
    const groom g = make_plan(ask);
    if (!g.planned() || !g.stuck.empty()) {
        return false;
    }
    grooms_to_come c = grooms_of(other, g);
    if (last_by_file_of(r).full > 0) {
        c.first = now.first;  // what was cut then has been cut
    }
    return works(only(kept, problem_of(other, c, p)));
}

std::optional<int> percent_that_does(const calendar_request& r, const grooms_to_come& now,
                                     const kept_clocks& kept, chance p) {
    const auto at = [&](int percent) {
        const scaled_wishes w = scaled(r.work, percent);
        return works_with(r, now, request_for(r.work, w), kept, p);
    };
    int low = least_percent(r.work);
    int high = 100;
    if (low == high || !at(low)) {
        return std::nullopt;
    }
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        (at(middle) ? low : high) = middle;
    }
    return low;
}

}  // namespace

calendar_blocked blocked_of(const calendar_request& r, const groom& g, const grooms_to_come& c,
                            chance p) {
    const schedule_problem problem = problem_of(r, c, p);
    calendar_blocked b;
    b.after = r.today + std::chrono::days{works_until(problem)};
    b.runs = problem.later;
    kept_clocks kept;
    kept.fill(true);
    for (std::size_t i = 0; i < due_names.size(); ++i) {
        const bool brush = static_cast<due>(i) == due::matting || static_cast<due>(i) == due::held;
        if (brush && static_cast<due>(i) != brush_clock(problem.later)) {
            continue;
        }
        kept_clocks alone{};
        alone[i] = true;
        if (!works(only(alone, problem))) {
            const due clock = static_cast<due>(i);
            b.clocks.push_back(clock);
            kept[i] = clock == due::matting || clock == due::held;
        }
    }
    schedule_problem open = problem;
    std::fill(open.open.begin(), open.open.end(), true);
    for (const fresh_by& f : open.fresh) {
        open.open[static_cast<std::size_t>(f.on)] = false;
    }
    b.days_off = works(open);
    for (auto h = static_cast<std::size_t>(counted(r.work.patient.brushed)) + 1;
         h < habit_names.size() && !b.brush; ++h) {
        const brushing more{static_cast<habit>(h), true};
        const grooms_to_come brushed = brushed_otherwise(r, g, c, more);
        if (works(only(kept, problem_of(r, brushed, p)))) {
            b.brush = more.how_often;
        }
    }
    b.percent = percent_that_does(r, c, kept, p);
    for (const style& s : r.sheets == nullptr ? std::vector<style>{} : *r.sheets) {
        const bool fits =
            std::find(s.coats.begin(), s.coats.end(), *r.work.patient.coat) != s.coats.end();
        dog other = r.work.patient;
        other.body_length.reset();
        if (fits && s.id != r.work.sheet.id &&
            works_with(r, c, ask_again(r.work, other, s), kept, p)) {
            b.styles.push_back(s.title);
        }
    }
    return b;
}

}  // namespace pelage
