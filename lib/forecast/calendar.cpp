#include <algorithm>
#include <cmath>
#include <limits>

#include <pelage/model/mats_dealt_with.hpp>
#include <pelage/planner/appointment.hpp>

#include "forecast/calendar_clocks.hpp"

namespace pelage {

namespace {

/// The chances a calendar is compared at.
constexpr std::array<chance, 3> compared{0.8, 0.9, 0.95};

date day_of(const calendar_request& r, int n) {
    return r.today + std::chrono::days{n};
}

/// The days of an interval on which brushing holds the coat end with each brush's clock; the last on which
/// length must, counted from the full groom. Hair only grows: who is fine then was fine before.
class length_days {
  public:
    length_days(int full, int brush, const coat_to_keep& c)
        : full_(full), brush_(brush), clock_(c.clock ? std::floor(in_days(*c.clock)) : 1e9) {}
    void until(int on) { last_ = on - brush_ > clock_ ? on - full_ : last_; }
    void brush(int on) {
        until(on);
        brush_ = on;
    }
    [[nodiscard]] int last() const { return last_; }

  private:
    int full_;
    int brush_;
    double clock_;
    int last_ = 0;
};

/// Intervals from the last full groom to the last day of the calendar on which length counts, each up to
/// the last day it does.
std::vector<kept_interval> intervals(const schedule_problem& p, const grooms_to_come& c,
                                     const std::vector<booking>& visits) {
    std::vector<kept_interval> all;
    int from = -p.full_ago;
    length_days days_of(from, -p.brush_ago, c.first);
    const auto end = [&](int to) {
        const bool first = from == -p.full_ago;
        const visit_clocks& clocks = first ? p.first : p.later;
        days_of.until(to);
        // what is overdue is no forecast any more
        if (const int last = days_of.last(); last > 0 && last <= std::max(clocks.length, 0)) {
            kept_interval one{(first ? c.first : c.later).zones, day(last)};
            for (kept_zone& z : one.zones) {
                z.clock = day(0.0);
            }
            all.push_back(std::move(one));
        }
        from = to;
        days_of = length_days(to, to, c.later);
    };
    for (const booking& b : visits) {
        if (b.what == visit_work::full_groom) {
            end(b.on);
        } else if (brushes(b.what)) {
            days_of.brush(b.on);
        }
    }
    end(p.last);
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
        if (s.visits[static_cast<std::size_t>(visit_work::full_groom)] > 0) {
            s.takes += c.mats;
        }
        const auto counted = intervals(p, c, *visits);
        s.by_chance = !counted.empty();
        for (const kept_interval& i : counted) {
            s.least = std::min(s.least, all_fine(i.zones, c.later.law, i.t, false));
        }
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

/// The end of the interval by the usual interval or an event.
due_clock own_clock(const calendar_request& r, const schedule_problem& p, const last_visits& v) {
    const visit_clocks& clocks = v.full == -p.full_ago ? p.first : p.later;
    due_clock own{due::usual, day_of(r, v.full + clocks.full)};
    for (const fresh_by& f : p.fresh) {
        if (f.on > v.full + f.within && day_of(r, f.on - 1) < own.by) {
            own = {due::event, day_of(r, f.on - 1)};
        }
    }
    return own;
}

/// The clocks that a visit comes before.
std::vector<due_clock> clocks_before(const calendar_request& r, const schedule_problem& p,
                                     const last_visits& v, visit_work what) {
    const visit_clocks& clocks = v.full == -p.full_ago ? p.first : p.later;
    std::vector<due_clock> all;
    if (brushes(what) && clocks.brush) {
        const int held = v.brush + *clocks.brush;
        const int fine = v.full + clocks.length;
        all.push_back({fine > held ? due::matting : due::held, day_of(r, std::max(held, fine))});
    }
    if (tidies(what) && clocks.tidy) {
        all.push_back({due::tidy, day_of(r, v.tidy + *clocks.tidy)});
    }
    if (all.size() > 1) {
        all.erase(all[0].by <= all[1].by ? all.begin() + 1 : all.begin());
    }
    if (what == visit_work::full_groom) {
        const due_clock own = own_clock(r, p, v);
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
                                 const std::vector<booking>& visits, const work& mats) {
    std::vector<calendar_visit> out;
    last_visits v{-p.full_ago, -p.brush_ago, -p.tidy_ago};
    for (const booking& b : visits) {
        calendar_visit one;
        one.on = day_of(r, b.on);
        one.what = b.what;
        one.takes = p.costs[static_cast<std::size_t>(b.what)] - r.work.rules.prices.trip.best;
        one.due = clocks_before(r, p, v, b.what);
        if (b.what == visit_work::full_groom) {
            one.fresh = event_after(r.work.patient, one.on);
            one.takes += v.full == -p.full_ago ? mats : work{};
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

/// Where the coat mats first.
std::vector<place> first_places(const grooms_to_come& c, chance p) {
    const std::vector<kept_zone>& zones = c.later.zones;
    std::vector<double> at;
    double soonest = std::numeric_limits<double>::infinity();
    for (auto z = zones.begin(); z != zones.end(); ++z) {
        const auto alike = std::find(zones.begin(), z, *z);
        at.push_back(alike != z ? at[static_cast<std::size_t>(alike - zones.begin())]
                                : in_days(prone_quantile(*z, c.later.law, 1.0 - p)));
        soonest = std::min(soonest, at.back());
    }
    std::vector<place> out;
    for (std::size_t i = 0; i < at.size(); ++i) {
        if (std::isfinite(soonest) && at[i] <= soonest + 0.5) {
            out.push_back(c.steady.zones[c.later.index[i]].at);
        }
    }
    return out;
}

/// What only brushing holds between visits, where it must.
std::vector<place> held_places(const grooms_to_come& c, chance p) {
    std::vector<place> out;
    const return_date b = return_date_of(c.later.zones, c.later.law, p, c.later.usual);
    for (const std::size_t i : b.by_brushing) {
        out.push_back(c.steady.zones[c.later.index[i]].at);
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
    if (r.work.learned == nullptr) {
        // once, from what its record says of the brushing it had: more brushing must not undo it
        const learned_rate known =
            learn_rate(r.work.patient, r.work.reference, r.work.rules, r.work.today);
        plan_request knowing = r.work;
        knowing.learned = &known;
        return calendar_of({knowing, r.today, r.weeks, r.closed, r.sheets, r.compare}, g);
    }
    const plan_request& asked_of = r.work;
    const chance asked = chance_asked(asked_of);
    const grooms_to_come c = grooms_of(r, g);
    const schedule_problem p = problem_of(r, c, asked);
    calendar out;
    out.from = day_of(r, -p.full_ago);
    out.from_today = p.full_ago == 0;
    out.matted = !out.from_today && matted_since(asked_of.patient);
    out.until = day_of(r, p.last);
    out.today_takes =
        appointment_of(asked_of, g, service_of(asked_of.reference, service_kind::full)).total();
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
    out.held = held_places(c, asked);
    auto visits = cheapest(p);
    if (visits) {
        out.weekday = keep_weekday(r, p, *visits);
        out.visits = told(r, p, *visits, c.mats);
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
