// The net's calls on what is drawn by chance: dogs in trouble planned, problems of every kind solved, readings and
// visits learnt from. Of each group of draws one line: how many lines it wrote and their sum, so that any figure that
// changes shows. `pelage_net_calls whole` writes the lines themselves,
// `pelage_net_calls only GROUP` that group's line alone.
#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <pelage/forecast/forecast.hpp>
#include <pelage/model/growth_record.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/model/learning.hpp>
#include <pelage/model/learning_mats.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/planner/grow_back.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/solver/cover.hpp>
#include <pelage/solver/order.hpp>
#include <pelage/solver/setup_solver.hpp>

#include "generate/made_problems.hpp"
#include "generate/trouble.hpp"
#include "net/calls.hpp"

using namespace pelage;
using namespace net;
using generate::dice;

namespace {

void write_places(line& l, const std::vector<place>& all) {
    for (const place& p : all) {
        l << p;
    }
}

void write_zones(const groom& g) {
    for (const zone_plan& z : g.zones) {
        line l("  zone");
        (l << z.at << z.how << z.leaves << z.target << z.tolerated << z.takes << z.off_leaves
           << z.off_takes)
            .number(z.when)
            .number(z.came)
            .number(z.between)
            .number(z.combed_out)
            .number(z.trial)
            .number(z.why.what)
            .number(z.hurt ? static_cast<int>(*z.hurt) : -1);
        if (z.off_by) {
            l << *z.off_by;
        }
    }
}

void write_work(const groom& g) {
    for (const block& b : g.blocks) {
        line l("  block");
        l << b.how << b.takes << b.running_before << b.running;
        for (const std::size_t i : b.zones) {
            l.number(i);
        }
    }
    for (const blend& b : g.blends) {
        (line("  blend") << b.step << b.asked << b.width << b.between)
            .number(b.from)
            .number(b.into)
            .number(b.when)
            .number(b.smoothed);
    }
    for (const combing_out& one : g.combed) {
        (line("  combed") << one.takes).number(one.zone).number(one.grade);
    }
    for (const part_follower& f : g.follow) {
        (line("  follows") << f.at << f.wished).number(f.zone);
    }
    (line("  work") << g.before << g.after)
        .number(g.order_before.cost.pick_ups)
        .number(g.order_before.cost.early)
        .number(g.order_after.cost.pick_ups)
        .number(g.order_after.cost.early)
        .number(in_mmin(g.choice.cost))
        .number(g.choice.sure.nodes)
        .number(g.down.size());
}

void write_words(const groom& g) {
    for (const caution_line& c : g.cautions) {
        line l("  caution " + c.what.id);
        write_places(l, c.where);
    }
    for (const consent& c : g.consents) {
        line("  consent " + c.id).number(c.what).number(c.given);
    }
    line l("  notes");
    for (const plan_note& n : g.notes) {
        l.number(n.what);
    }
    for (const stop_sign s : g.signs) {
        l.number(s);
    }
    for (const std::size_t i : g.stuck) {
        l.number(i);
    }
    write_places(l, g.stop);
    write_places(l, g.fleas);
}

void write_other_ways(const plan_request& r, const groom& g) {
    for (const other_way& w : other_ways(r, g)) {
        (line("  way") << w.more << w.dearer).number(w.what).number(w.changed.size());
    }
    for (const without_tool& w : without_each_tool(r, g)) {
        (line("  without") << w.more << w.dearer).number(w.in_kit).number(w.changed.size());
    }
    for (const reason_why& w : reasons_why(r, g)) {
        (line("  reason") << w.next << w.dearer).number(w.zone).number(w.why);
    }
    for (const infeasible_zone& w : infeasible_zones(r, g)) {
        line("  conflict").number(w.zone).number(w.rules.size()).number(w.frees.size());
    }
    for (const regrowth_option& w : ways_to_grow_back(r, g)) {
        (line("  grows back") << w.more << w.even << w.step << w.back_in[0] << w.back_in[1]
                              << w.back_in[2])
            .number(w.how);
    }
}

void write_forecast(const plan_request& r, const groom& g) {
    const forecast f = forecast_of(r, g);
    line("  forecast") << f.when << f.usual << f.tidy_face_feet << f.tidy_sanitary;
    for (const zone_forecast& z : f.zones) {
        line("  grows") << z.at << z.start << z.threshold << z.early << z.even << z.late << z.clock;
    }
}

/// More than any_trouble finds: skin of every kind, feet it hates to have touched, a dog that bites.
void find_more(dice& d, dog& patient) {
    const auto& zones = known().dog_body.zones;
    for (int n = d.roll(4); n > 0; --n) {
        skin_finding f;
        f.at.zone = static_cast<std::size_t>(d.roll(static_cast<int>(zones.size())));
        f.state = static_cast<skin_state>(d.roll(6));
        patient.skin.push_back(f);
    }
    patient.thin_or_old = d.luck(15);
    patient.coat_change = d.luck(10);
    if (d.luck(20)) {
        patient.sensitive.emplace_back("feet");
    }
    if (d.luck(15)) {
        patient.alerts.push_back({alert_kind::bites, {}});
    }
}

void dogs_in_trouble() {
    for (unsigned group = 0; group < 24; ++group) {
        const summed all("dogs in trouble " + std::to_string(group));
        if (!all.wanted()) {
            continue;
        }
        dice d(1000 + group);
        for (int i = 0; i < 8; ++i) {
            generate::table t = generate::any_trouble(d);
            find_more(d, t.patient);
            plan_request r = t.request();
            r.today = today;
            line("dog").number(i);
            try {
                const groom g = make_plan(r);
                write_zones(g);
                write_work(g);
                write_words(g);
                if (g.planned()) {
                    if (i % 4 == 0) {
                        write_other_ways(r, g);
                    }
                    write_forecast(r, g);
                }
            } catch (const error& e) {
                line("  error").number(e.code());
            }
        }
    }
}

void problems_solved() {
    for (std::size_t kind = 0; kind < generate::made_names.size(); ++kind) {
        const summed all("problems " + std::string(generate::made_names[kind]));
        if (!all.wanted()) {
            continue;
        }
        dice d(2000 + kind);
        for (int i = 0; i < 12; ++i) {
            problem p = generate::made_problem(d, static_cast<generate::made>(kind),
                                               3 + 2 * (i % 6), 6 + 8 * (i % 5));
            if (i % 3 == 0) {
                generate::add_combing_out(d, p);
            }
            const solution s = solve(p, 2000);
            line l("  solved");
            l.number(in_mmin(s.cost))
                .number(s.sure.nodes)
                .number(s.sure.optimal)
                .number(s.sure.bound);
            for (const std::size_t k : s.setup) {
                l.number(k);
            }
        }
    }
}

regrowth_interval any_readings(dice& d, double terminal) {
    regrowth_interval out;
    const double rate = d.between(0.2, 0.5);
    for (int i = 1 + d.roll(4); i > 0; --i) {
        const double start = d.between(3.0, 25.0);
        const double after = d.between(7.0, 70.0);
        const double is = std::min(start + rate * after, terminal) + d.between(-2.0, 2.0);
        out.push_back({day(after), mm(start), mm(std::max(0.5, is)), mm(d.between(0.3, 2.0))});
    }
    return out;
}

learning_law any_law(dice& d) {
    return {{std::log(d.between(0.2, 0.5)), d.between(0.1, 0.5)},
            d.luck(20) ? 0.0 : d.between(0.02, 0.3),
            d.luck(20) ? mm(0) : mm(d.between(0.1, 2.0)),
            mm(d.luck(30) ? d.between(25.0, 45.0) : 200.0)};
}

void rates_learnt() {
    for (unsigned group = 0; group < 8; ++group) {
        const summed all("rates learnt " + std::to_string(group));
        if (!all.wanted()) {
            continue;
        }
        dice d(3000 + group);
        for (int i = 0; i < 12; ++i) {
            const learning_law law = any_law(d);
            std::vector<regrowth_interval> stretches;
            for (int n = d.roll(4); n > 0; --n) {
                stretches.push_back(any_readings(d, in_mm(law.terminal)));
            }
            const rate_posterior p(stretches, law);
            line("  rate")
                .exact(p.mean())
                .exact(p.sd())
                .exact(p.log_evidence())
                .exact(in_mm_per_day(p.quantile(0.1)))
                .exact(in_mm_per_day(p.next_quantile(0.9)))
                .exact(p.next_below(mm_per_day(0.33)))
                .exact(p.next().log_sd)
                .exact(p.prior_share());
        }
    }
}

comb_check any_check(dice& d) {
    comb_check out;
    for (int n = 1 + d.roll(4); n > 0; --n) {
        const double start = d.between(6.0, 25.0);
        const double prone = d.between(20.0, 60.0);
        out.push_back({day(d.between(10.0, 80.0)), mm(start), mm(prone), mm(200), d.luck(30)});
    }
    return out;
}

void mats_learnt() {
    const summed all("mats learnt");
    if (!all.wanted()) {
        return;
    }
    dice d(4000);
    for (int i = 0; i < 12; ++i) {
        comb_law law{any_law(d), d.between(0.1, 0.4), d.luck(40) ? 0.0 : d.between(0.02, 0.2)};
        law.growth.visit_log_sd = std::max(law.growth.visit_log_sd, 0.05);
        std::vector<seen_since_cut> seen;
        for (int n = d.roll(4); n > 0; --n) {
            seen_since_cut& s = seen.emplace_back();
            if (d.luck(50)) {
                s.readings = any_readings(d, 200.0);
            }
            for (int k = d.roll(3); k > 0; --k) {
                s.checks.push_back(consistent(any_check(d)));
            }
        }
        const comb_posterior p(seen, law);
        line("  both")
            .exact(p.rate().log_median)
            .exact(p.rate().log_sd)
            .exact(p.factor_mean())
            .exact(p.factor_sd())
            .exact(p.factor_below(1.1))
            .exact(p.rate_below(mm_per_day(0.3)))
            .number(p.cases().size());
    }
}

}  // namespace

void net::calls_by_chance() {
    dogs_in_trouble();
    problems_solved();
    rates_learnt();
    mats_learnt();
}
