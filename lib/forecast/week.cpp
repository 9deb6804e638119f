#include <algorithm>
#include <limits>
#include <map>

#include <pelage/forecast/week.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/trade/upkeep.hpp>

#include "forecast/calendar_clocks.hpp"

namespace pelage {

namespace {

/// What all dogs of the salon share, made once.
class front_desk {
  public:
    explicit front_desk(const week_request& r)
        : r_(r), top_(r.reference, r.salon.rules, r.salon.tools, r.today) {}

    due_dog look_at(std::size_t n) {
        due_dog out;
        out.dog = n;
        dog d = r_.salon.dogs[n];
        const style* sheet = find(r_.styles, d.style);
        if (sheet == nullptr) {
            out.why_not = not_plannable::no_sheet;
            return out;
        }
        if (!d.coat && !d.mix.empty()) {
            const heredity& h = r_.reference.genes;
            d.coat = coats_of(read_mix(d.mix, h).dog, h, r_.reference.coats).likeliest();
        }
        if (!d.coat) {
            out.why_not = not_plannable::no_coat;
            return out;
        }
        assume_upkeep(d, *sheet);
        plan_request ask{r_.reference, r_.salon.rules, r_.salon.tools, d, *sheet, r_.today};
        ask.reasons = false;
        ask.top = &top_;
        ask.laid = &laid(*sheet);
        const groom g = make_plan(ask);
        read_plan(g, out);
        if (g.planned()) {
            read_clocks(ask, g, out);
        }
        return out;
    }

  private:
    const resolved_style& laid(const style& s) {
        return sheets_.try_emplace(&s, r_.reference.dog_body, top_.parts(), s).first->second;
    }

    static void read_plan(const groom& g, due_dog& out) {
        out.stopped = g.stopped();
        out.asked_first = g.question.has_value();
        out.stuck = !g.stuck.empty() || g.bath_waits();
        for (const consent& c : g.consents) {
            if (!c.given) {
                out.unsigned_consents.push_back(c.id);
            }
        }
    }

    void read_clocks(const plan_request& ask, const groom& g, due_dog& out) {
        const calendar_request c{ask, r_.today, 4, r_.salon.closed, nullptr, false};
        const grooms_to_come to_come = grooms_of(c, g);
        const schedule_problem p = problem_of(c, to_come, ask.rules.matting.chance.best);
        const auto day = [&](int n) { return r_.today + std::chrono::days{n}; };
        if (p.full_ago > 0) {
            out.last_full = day(-p.full_ago);
            out.last_visit = day(-std::min(p.full_ago, std::min(p.brush_ago, p.tidy_ago)));
        }
        const work trip = ask.rules.prices.trip.best;
        const auto takes = [&](visit_work w) {
            return p.costs[static_cast<std::size_t>(w)] - trip;
        };
        out.full_clock = p.later.full;
        out.full_takes = takes(visit_work::full_groom);
        out.full_by = day(p.first.full - p.full_ago);
        read_between(p, takes, day, out);
        const bool between = out.between_by && *out.between_by < out.full_by;
        out.by = between ? *out.between_by : out.full_by;
        out.takes = between ? out.between_takes : out.full_takes;
        out.what = !between ? visit_work::full_groom : out.between;
    }

    /// The visit between full grooms stops all clocks that run there: brush, tidy, or both.
    void read_between(const schedule_problem& p, const auto& takes, const auto& day, due_dog& out) {
        if (!p.later.brush && !p.later.tidy) {
            return;
        }
        out.between = !p.later.brush  ? visit_work::tidy
                      : !p.later.tidy ? visit_work::bath
                                      : visit_work::bath_and_tidy;
        int due = std::numeric_limits<int>::max();
        int clock = due;
        if (p.later.brush) {
            clock = *p.later.brush;
            due = p.first.brush.value_or(clock) - p.brush_ago;
        }
        if (p.later.tidy) {
            clock = std::min(clock, *p.later.tidy);
            due = std::min(due, p.first.tidy.value_or(*p.later.tidy) - p.tidy_ago);
        }
        out.between_takes = takes(out.between);
        if (clock < p.later.full) {
            out.between_clock = clock;
            out.between_by = day(due);
        }
    }

    const week_request& r_;
    kit_setups top_;
    std::map<const style*, resolved_style> sheets_;
};

int days_to(const date& from, const date& to) {
    return static_cast<int>((to - from).count());
}

diary_dog in_diary(const week_request& r, const due_dog& one, int last) {
    const dog& d = r.salon.dogs[one.dog];
    diary_dog out;
    out.full_clock = one.full_clock;
    out.full_due = days_to(r.today, one.full_by);
    out.between_clock = one.between_clock;
    out.between_due = one.between_by ? days_to(r.today, *one.between_by) : 0;
    out.visit_ago = one.last_visit ? std::max(0, days_to(*one.last_visit, r.today)) : 0;
    out.full = one.full_takes;
    out.between = one.between_takes;
    const auto& all = r.salon.groomers;
    const auto own =
        std::find_if(all.begin(), all.end(), [&](const groomer& g) { return g.name == d.groomer; });
    if (own != all.end()) {
        out.groomer = static_cast<std::size_t>(own - all.begin());
    }
    for (int n = 0; n <= last; ++n) {
        out.cannot.push_back(d.cannot.cover(r.today + std::chrono::days{n}));
    }
    return out;
}

}  // namespace

std::vector<due_dog> due_dogs(const week_request& r) {
    front_desk desk(r);
    std::vector<due_dog> out;
    out.reserve(r.salon.dogs.size());
    for (std::size_t n = 0; n < r.salon.dogs.size(); ++n) {
        out.push_back(desk.look_at(n));
    }
    return out;
}

std::optional<date> last_open_day(const salon_files& s, const dog& d, const date& today,
                                  const date& by) {
    for (date on = by; on >= today; on -= std::chrono::days{1}) {
        if (!s.closed.cover(on) && !d.cannot.cover(on)) {
            return on;
        }
    }
    return std::nullopt;
}

diary_question diary_question_of(const week_request& r, const std::vector<due_dog>& due,
                                 int weeks) {
    diary_question out;
    diary_problem& p = out.problem;
    p.last = 7 * weeks;
    const parameters& rules = r.salon.rules;
    p.gap = std::max(1, static_cast<int>(in_days(rules.matting.visits_apart.best)));
    p.trip = rules.prices.trip.best;
    p.late_full = rules.prices.late_full.best;
    p.late_between = rules.prices.late_visit.best;
    for (const groomer& g : r.salon.groomers) {
        auto& hours = p.hours.emplace_back();
        for (int n = 0; n <= p.last; ++n) {
            const date on = r.today + std::chrono::days{n};
            hours.push_back(r.salon.closed.cover(on) ? work{} : g.on(on));
        }
    }
    for (std::size_t i = 0; i < due.size(); ++i) {
        if (due[i].bookable()) {
            p.dogs.push_back(in_diary(r, due[i], p.last));
            out.which.push_back(i);
        }
    }
    return out;
}

}  // namespace pelage
