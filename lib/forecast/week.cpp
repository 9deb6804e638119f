#include <algorithm>
#include <limits>
#include <map>

#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/week.hpp>
#include <pelage/model/mats_dealt_with.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/planner/appointment.hpp>
#include <pelage/trade/upkeep.hpp>

#include "forecast/calendar_clocks.hpp"
#include "forecast/promised.hpp"

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
        const auto& all = r_.salon.groomers;
        if (!d.groomer.empty() && !all.empty() &&
            std::none_of(all.begin(), all.end(),
                         [&](const groomer& g) { return g.name == d.groomer; })) {
            out.why_not = not_plannable::no_groomer;
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
        d = without_mats_dealt_with(std::move(d), top_.parts(), r_.reference.dog_body, r_.today);
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
        out.in_visits = in_visits(g);
        out.vet_word = std::any_of(g.cautions.begin(), g.cautions.end(), [](const caution_line& c) {
            return c.what.when == caution_when::ill;
        });
        for (const consent& c : g.consents) {
            if (!c.given) {
                out.unsigned_consents.push_back(c.id);
            }
        }
    }

    void read_clocks(const plan_request& ask, const groom& g, due_dog& out) {
        const dog& d = ask.patient;
        for (const visit& v : d.visits) {
            if (v.on <= r_.today) {
                out.last_visit = std::max(out.last_visit.value_or(v.on), v.on);
                if (v.kind == "full") {
                    out.last_full = std::max(out.last_full.value_or(v.on), v.on);
                }
            }
        }
        const return_date back = back_of(ask, g);
        if (!out.last_full) {
            return;
        }
        out.full_by = plus(*out.last_full, back.full_groom);
        out.by =
            std::min(back.was_due.value_or(plus(*out.last_full, back.next_visit)), out.full_by);
        out.undated_mats = !d.undated.empty();
        if (matted_since(d)) {  // due now, as its calendar has it
            out.full_by = std::min(out.full_by, r_.today);
            out.by = std::min(out.by, r_.today);
        }
        out.promised = d.promised && *d.promised >= r_.today ? d.promised : std::nullopt;
        const calendar_request c{ask, r_.today, 4, r_.salon.closed, nullptr, false};
        const schedule_problem p = problem_of(c, grooms_of(c, g), ask.rules.matting.chance.best);
        const work trip = ask.rules.prices.trip.best;
        const auto takes = [&](visit_work w) {
            return p.costs[static_cast<std::size_t>(w)] - trip;
        };
        out.full_clock = p.later.full;
        out.full_takes = takes(visit_work::full_groom);
        out.first_full_takes =
            d.mats.empty()
                ? out.full_takes
                : appointment_of(ask, g, service_of(r_.reference, service_kind::full)).total();
        read_between(p, takes, out);
        // where the full groom is due by then as well, one visit does it all
        const bool full = out.full_by <= std::max(out.by, r_.today) || !out.between_by;
        out.what = full ? visit_work::full_groom : out.between;
        out.takes = full ? out.first_full_takes : out.between_takes;
    }

    /// The visit between full grooms stops all clocks that run there: brush, tidy, or both.
    void read_between(const schedule_problem& p, const auto& takes, due_dog& out) {
        const auto sooner = [&](const std::optional<int>& clock) {
            return clock && *clock < p.later.full ? clock : std::nullopt;
        };
        out.brush_clock = p.later.length < p.later.full ? sooner(p.later.brush) : std::nullopt;
        out.length_clock = p.later.length;
        out.tidy_clock = sooner(p.later.tidy);
        if (!out.brush_clock && !out.tidy_clock) {
            return;
        }
        out.between = !out.brush_clock  ? visit_work::tidy
                      : !out.tidy_clock ? visit_work::bath
                                        : visit_work::bath_and_tidy;
        out.between_takes = takes(out.between);
        out.between_by = out.by;
        if (out.tidy_clock) {
            const int tidy = *p.later.tidy - p.tidy_ago;
            out.between_by = std::min(*out.between_by, r_.today + std::chrono::days{tidy});
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
    out.brush_clock = one.brush_clock;
    out.length_clock = one.length_clock;
    out.tidy_clock = one.tidy_clock;
    out.between_due = one.between_by ? days_to(r.today, *one.between_by) : 0;
    out.visit_ago = one.last_visit ? std::max(0, days_to(*one.last_visit, r.today)) : 0;
    out.full = std::max(one.full_takes, one.first_full_takes);
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

std::optional<date> day_for_promise(const salon_files& s, const dog& d, const date& today,
                                    const date& on) {
    const auto works = [&](const date& day) {
        return std::any_of(s.groomers.begin(), s.groomers.end(), [&](const groomer& g) {
            return (d.groomer.empty() || g.name == d.groomer) && g.on(day) > work{};
        });
    };
    const auto open = [&](const date& day) {
        return !s.closed.cover(day) && (s.groomers.empty() || works(day));
    };
    if (open(on)) {
        return on;
    }
    constexpr int farthest = 28;
    for (int n = 1; n <= farthest; ++n) {
        for (const date& day : {on - std::chrono::days{n}, on + std::chrono::days{n}}) {
            if (day >= today && open(day) && !d.cannot.cover(day)) {
                return day;
            }
        }
    }
    return std::nullopt;
}

std::vector<work> visit_minutes(const diary& d, const diary_question& q,
                                const std::vector<due_dog>& due) {
    std::vector<bool> groomed(q.which.size(), false);
    std::vector<work> out;
    for (const diary_visit& v : d.visits) {
        const due_dog& one = due[q.which[v.dog]];
        out.push_back(!v.full          ? one.between_takes
                      : groomed[v.dog] ? one.full_takes
                                       : one.first_full_takes);
        groomed[v.dog] = groomed[v.dog] || v.full;
    }
    return out;
}

diary_question diary_question_of(const week_request& r, const std::vector<due_dog>& due,
                                 int weeks) {
    diary_question out;
    out.from = r.today;
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
    book_promised(r, due, out);
    return out;
}

}  // namespace pelage
