#include <algorithm>
#include <cmath>

#include "forecast/calendar_clocks.hpp"

namespace pelage {

namespace {

/// The chances a calendar is compared at.
constexpr std::array<chance, 3> compared{0.8, 0.9, 0.95};

date day_of(const calendar_request& r, int n) {
    return r.today + std::chrono::days{n};
}

/// Intervals from the last full groom to the last day of the calendar.
std::vector<kept_interval> intervals(const schedule_problem& p, const grooms_to_come& c,
                                     const std::vector<booking>& visits) {
    std::vector<kept_interval> all;
    int from = -p.full_ago;
    const auto until = [&](int to) {
        const bool first = from == -p.full_ago;
        const int clock = first ? p.first.full : p.later.full;
        // what is overdue is no forecast any more
        if (to - from <= clock) {
            all.push_back({(first ? c.first : c.later).free, day(to - from)});
        }
        from = to;
    };
    for (const booking& b : visits) {
        if (b.what == visit_work::full_groom) {
            until(b.on);
        }
    }
    until(p.last);
    return all;
}

calendar_sum sum_of(const calendar_request& r, const schedule_problem& p, const grooms_to_come& c,
                    const std::optional<std::vector<booking>>& visits, chance asked,
                    const brushing& habit) {
    calendar_sum s;
    s.asked = asked;
    s.habit = habit;
    s.possible = visits.has_value();
    if (visits) {
        for (const booking& b : *visits) {
            ++s.visits[static_cast<std::size_t>(b.what)];
        }
        s.takes = cost_of(p, *visits) - r.work.rules.prices.trip.best * std::int64_t{s.number()};
        const auto counted = intervals(p, c, *visits);
        s.by_chance = std::any_of(counted.begin(), counted.end(), [](const kept_interval& i) {
            return std::any_of(i.zones.begin(), i.zones.end(),
                               [&](const kept_zone& z) { return z.threshold && i.t > z.clock; });
        });
        s.throughout =
            all_fine_throughout(counted, c.later.law, r.work.rules.growth.visit_log_sd.best);
    }
    return s;
}

calendar_sum sum_at(const calendar_request& r, const grooms_to_come& c, chance asked,
                    const brushing& habit) {
    const schedule_problem p = problem_of(r, c, asked);
    return sum_of(r, p, c, cheapest(p), asked, habit);
}

due_clock own_clock(const calendar_request& r, const schedule_problem& p, const grooms_to_come& c,
                    const last_visits& v) {
    const bool first = v.full == -p.full_ago;
    const visit_clocks& clocks = first ? p.first : p.later;
    const parted_coat& coat = first ? c.first : c.later;
    const bool usual = clocks.full >= static_cast<int>(in_days(coat.usual));
    due_clock own{usual ? due::usual : due::matting, day_of(r, v.full + clocks.full)};
    for (const fresh_by& f : p.fresh) {
        if (f.on > v.full + f.within && day_of(r, f.on - 1) < own.by) {
            own = {due::event, day_of(r, f.on - 1)};
        }
    }
    return own;
}

/// The clocks that a visit comes before.
std::vector<due_clock> clocks_before(const calendar_request& r, const schedule_problem& p,
                                     const grooms_to_come& c, const last_visits& v,
                                     visit_work what) {
    const visit_clocks& clocks = v.full == -p.full_ago ? p.first : p.later;
    std::vector<due_clock> all;
    if (brushes(what) && clocks.brush) {
        all.push_back({due::held, day_of(r, v.brush + *clocks.brush)});
    }
    if (tidies(what) && clocks.tidy) {
        all.push_back({due::tidy, day_of(r, v.tidy + *clocks.tidy)});
    }
    if (all.size() > 1) {
        all.erase(all[0].by <= all[1].by ? all.begin() + 1 : all.begin());
    }
    if (what == visit_work::full_groom) {
        const due_clock own = own_clock(r, p, c, v);
        if (!all.empty() && all.front().by >= own.by) {
            all.clear();
        }
        all.push_back(own);
    }
    return all;
}

/// The event a full groom on that day is in time for.
std::optional<fresh_day> event_after(const dog& d, const date& on) {
    const auto at = std::find_if(d.events.begin(), d.events.end(), [&](const fresh_day& f) {
        return f.on > on && f.on - on <= std::chrono::days{f.within};
    });
    return at == d.events.end() ? std::nullopt : std::optional{*at};
}

std::vector<calendar_visit> told(const calendar_request& r, const schedule_problem& p,
                                 const grooms_to_come& c, const std::vector<booking>& visits) {
    std::vector<calendar_visit> out;
    last_visits v{-p.full_ago, -p.brush_ago, -p.tidy_ago};
    for (const booking& b : visits) {
        calendar_visit one;
        one.on = day_of(r, b.on);
        one.what = b.what;
        one.takes = p.costs[static_cast<std::size_t>(b.what)] - r.work.rules.prices.trip.best;
        one.due = clocks_before(r, p, c, v, b.what);
        if (b.what == visit_work::full_groom) {
            one.fresh = event_after(r.work.patient, one.on);
        }
        out.push_back(one);
        v.full = b.what == visit_work::full_groom ? b.on : v.full;
        v.brush = brushes(b.what) ? b.on : v.brush;
        v.tidy = tidies(b.what) ? b.on : v.tidy;
    }
    return out;
}

/// The visits all on one day of the week, if that costs nothing more: the weekday of the last visit
/// first, then the others in turn.
std::optional<std::size_t> keep_weekday(const calendar_request& r, const schedule_problem& p,
                                        std::vector<booking>& visits) {
    const int ago = std::min(p.full_ago, std::min(p.brush_ago, p.tidy_ago));
    const std::size_t start = weekday_of(day_of(r, -ago));
    for (std::size_t i = 0; i < weekday_names.size() && visits.size() > 1; ++i) {
        const std::size_t day = (start + i) % weekday_names.size();
        schedule_problem one = p;
        for (int n = 0; n <= p.last; ++n) {
            const auto at = static_cast<std::size_t>(n);
            one.open[at] = one.open[at] && weekday_of(day_of(r, n)) == day;
        }
        const auto kept = cheapest(one);
        if (kept && cost_of(p, *kept) == cost_of(p, visits) && keeps(p, *kept)) {
            visits = *kept;
            return day;
        }
    }
    return std::nullopt;
}

/// Where the coat mats first, of what isn't held.
std::vector<place> first_places(const grooms_to_come& c, chance p) {
    std::vector<double> at;
    double soonest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < c.later.free.size(); ++i) {
        const auto alike =
            std::find(c.later.free.begin(), c.later.free.begin() + static_cast<std::ptrdiff_t>(i),
                      c.later.free[i]);
        const auto twin = static_cast<std::size_t>(alike - c.later.free.begin());
        at.push_back(twin < i ? at[twin]
                              : in_days(prone_quantile(c.later.free[i], c.later.law, 1.0 - p)));
        soonest = std::min(soonest, at.back());
    }
    std::vector<place> out;
    for (std::size_t i = 0; i < at.size(); ++i) {
        if (std::isfinite(soonest) && at[i] <= soonest + 0.5) {
            out.push_back(c.steady.zones[c.later.free_index[i]].at);
        }
    }
    return out;
}

void compare(const calendar_request& r, const groom& g, const grooms_to_come& c, chance asked,
             calendar& out) {
    for (const chance p : compared) {
        out.chances.push_back(std::abs(p - asked) < 1e-9 ? out.sum
                                                         : sum_at(r, c, p, r.work.patient.brushed));
    }
    for (std::size_t h = 0; h < habit_names.size(); ++h) {
        const brushing b{static_cast<habit>(h), h != 0};
        out.habits.push_back(counted(b) == counted(r.work.patient.brushed)
                                 ? out.sum
                                 : sum_at(r, brushed_otherwise(r, g, c, b), asked, b));
    }
}

}  // namespace

int calendar_sum::number() const {
    int n = 0;
    for (const int k : visits) {
        n += k;
    }
    return n;
}

calendar calendar_of(const calendar_request& r, const groom& g) {
    const plan_request& asked_of = r.work;
    const chance asked = asked_of.asked.value_or(asked_of.rules.matting.chance.best);
    const grooms_to_come c = grooms_of(r, g);
    const schedule_problem p = problem_of(r, c, asked);
    calendar out;
    out.from = day_of(r, -p.full_ago);
    out.from_today = p.full_ago == 0;
    out.matted = !out.from_today && !asked_of.patient.mats.empty();
    out.until = day_of(r, p.last);
    out.today_takes = p.costs[static_cast<std::size_t>(visit_work::bath)] -
                      asked_of.rules.prices.trip.best + g.before + g.after;
    out.mats_by_length = mats_by_length(coat_of(asked_of.reference, asked_of.patient.coat.value()));
    out.clips = std::any_of(c.steady.zones.begin(), c.steady.zones.end(), [&](const zone_plan& z) {
        return z.how.kind == tool_kind::clip &&
               asked_of.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
    });
    for (const fresh_day& f : asked_of.patient.events) {
        if (f.on > out.until) {
            out.too_far.push_back(f.on);
        }
    }
    out.first = first_places(c, asked);
    for (const std::size_t i : c.later.held) {
        out.held.push_back(c.steady.zones[i].at);
    }
    auto visits = cheapest(p);
    if (visits) {
        out.weekday = keep_weekday(r, p, *visits);
        out.visits = told(r, p, c, *visits);
    } else if (r.compare) {
        out.blocked = blocked_of(r, g, c, asked);
    }
    out.sum = sum_of(r, p, c, visits, asked, asked_of.patient.brushed);
    if (visits && out.mats_by_length && r.compare) {
        compare(r, g, c, asked, out);
    }
    return out;
}

}  // namespace pelage
