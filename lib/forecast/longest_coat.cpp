#include <algorithm>

#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/longest_coat.hpp>

#include "planner/plan_again.hpp"

namespace pelage {

namespace {

class scale {
  public:
    scale(const plan_request& r, int percent)
        : shortest_(coat_of(r.reference, r.patient.coat.value()).shortest.best),
          percent_(percent) {}

    void lay_on(std::optional<length>& l) const {
        if (l && *l > shortest_) {
            l = longer(shortest_, rounded(*l * (percent_ / 100.0)));
        }
    }
    void lay_on(std::vector<sheet_rule>& rules) const {
        for (sheet_rule& rule : rules) {
            if (rule.what.tolerance && rule.what.target && *rule.what.target > shortest_) {
                rule.what.tolerance = *rule.what.tolerance * (percent_ / 100.0);
            }
            lay_on(rule.what.target);
        }
    }

  private:
    length shortest_;
    int percent_;
};

/// One planned percent.
struct trial {
    int percent = 100;
    scaled_wishes wishes;
    groom plan;
    kept_coat coat;
};

trial try_at(const plan_request& r, int percent) {
    trial t{percent, scaled(r, percent), {}, {}};
    const plan_request ask = request_for(r, t.wishes);
    t.plan = make_plan(ask);
    t.coat = after_groom(ask, t.plan);
    return t;
}

bool holds(const plan_request& r, const trial& t, const days& wished) {
    return t.plan.stuck.empty() && wished <= t.coat.usual &&
           all_fine(t.coat.zones, t.coat.law, wished) >= chance_asked(r);
}

days wait(const plan_request& r, const trial& t) {
    return t.plan.stuck.empty()
               ? last_fine_day(t.coat.zones, t.coat.law, chance_asked(r), t.coat.usual)
               : day(0);
}

/// The length most places of a group are wished at; the first of equals.
std::optional<std::size_t> typical(const plan_request& r, const groom& g, group where) {
    std::optional<std::size_t> best;
    long most = 0;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const auto alike = [&](const zone_plan& z) {
            return r.reference.dog_body.zones[z.at.zone].where == where && z.target &&
                   z.target == g.zones[i].target;
        };
        const long n = std::count_if(g.zones.begin(), g.zones.end(), alike);
        if (alike(g.zones[i]) && n > most) {
            most = n;
            best = i;
        }
    }
    return best;
}

void tell_lengths(const plan_request& r, const groom& before, longest_coat_answer& a) {
    for (const group where : {group::body, group::legs, group::head}) {
        const auto i = typical(r, before, where);
        if (!i) {
            continue;
        }
        const zone_plan& was = before.zones[*i];
        const auto is = std::find_if(a.plan.zones.begin(), a.plan.zones.end(),
                                     [&](const zone_plan& z) { return z.at == was.at; });
        if (is == a.plan.zones.end() || !is->target || *is->target == *was.target) {
            continue;
        }
        const std::pair lengths{*was.target, *is->target};
        if (std::none_of(a.instead.begin(), a.instead.end(),
                         [&](const auto& one) { return one.second == lengths; })) {
            a.instead.emplace_back(was.at, lengths);
        }
    }
}

}  // namespace

scaled_wishes scaled(const plan_request& r, int percent) {
    scaled_wishes w{r.sheet, r.patient, r.length_wish};
    const scale s(r, percent);
    s.lay_on(w.sheet.rules);
    s.lay_on(w.sheet.adjustable);
    s.lay_on(w.patient.departures);
    s.lay_on(w.patient.body_length);
    s.lay_on(w.length_wish);
    return w;
}

int least_percent(const plan_request& r) {
    const double shortest = in_mm(coat_of(r.reference, r.patient.coat.value()).shortest.best);
    double longest = shortest;
    const auto see = [&](const std::optional<length>& l) {
        longest = l ? std::max(longest, in_mm(*l)) : longest;
    };
    for (const auto* rules : {&r.sheet.rules, &r.patient.departures}) {
        for (const sheet_rule& rule : *rules) {
            see(rule.what.target);
        }
    }
    see(r.patient.body_length);
    see(r.length_wish);
    return std::clamp(static_cast<int>(std::floor(100.0 * shortest / longest)), 1, 100);
}

plan_request request_for(const plan_request& r, const scaled_wishes& w) {
    plan_request ask = ask_again(r, w.patient, w.sheet);
    ask.length_wish = w.length_wish;
    return ask;
}

longest_coat_answer back_in(const plan_request& r, const groom& as_is, const days& wished) {
    const kit_setups top(r.reference, r.rules, r.tools, r.today);
    plan_request ask = ask_again(r, r.patient, r.sheet);
    ask.top = r.top != nullptr ? r.top : &top;
    longest_coat_answer a;
    a.wished = wished;
    a.by_length = mats_by_length(coat_of(r.reference, r.patient.coat.value()));
    trial best{100, scaled(r, 100), as_is, after_groom(r, as_is)};
    a.holds = holds(r, best, wished);
    days longest = wait(r, best);
    const int least = a.by_length ? least_percent(r) : 100;
    const days most = best.coat.usual;
    for (int percent = 99; !a.holds && longest < most && percent >= least; --percent) {
        trial t = try_at(ask, percent);
        a.holds = holds(r, t, wished);
        const days waits = wait(r, t);
        if (a.holds || waits > longest) {
            longest = waits;
            best = std::move(t);
        }
    }
    a.percent = best.percent;
    a.wishes = std::move(best.wishes);
    a.at_wish = all_fine(best.coat.zones, best.coat.law, wished);
    a.usual = best.coat.usual;
    a.plan = std::move(best.plan);
    if (a.percent != 100) {  // what is left is no longer the sheet's own length
        auto& notes = a.plan.notes;
        notes.erase(std::remove_if(
                        notes.begin(), notes.end(),
                        [](const plan_note& n) { return n.what == plan_note::kind::own_length; }),
                    notes.end());
    }
    a.when = back_of(request_for(r, a.wishes), a.plan);
    tell_lengths(r, as_is, a);
    return a;
}

}  // namespace pelage
