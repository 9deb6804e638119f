// The plan as JSON (pelage/plan/1).
#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/blade_heat.hpp"
#include "answers/json.hpp"
#include "answers/plan_basis.hpp"
#include "answers/plan_values.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

using io::json_of;  // beside those of this file

/// A lump or scab that is gone around.
json around_json(const zone_plan& z, const skin_finding& f, const refusal_rules& by) {
    json one{{"state", name(f.state)}};
    if (f.state == skin_state::lump) {
        one["known"] = f.known;
    }
    if (f.size) {
        one["size_mm"] = mm_json(*f.size);
    }
    if (const auto over = hair_over(z, by)) {
        one["hair_over_it_mm"] = mm_json(*over);
    }
    return one;
}

json zone_json(const zone_plan& z, const plan_request& r, const print_options& o) {
    json j = place_json(r.reference.dog_body, z.at);
    j["title"] = title(r.reference.dog_body, z.at);
    j["list"] = z.when == list::before_bath ? "before bath" : "after bath";
    if (z.target) {
        j["target_mm"] = mm_json(*z.target);
        j["tolerance_mm"] = mm_json(z.tolerated);
    }
    if (z.now) {
        j["now_mm"] = mm_json(*z.now);
    }
    j["finish"] = name(z.how_finished);
    if (z.came != outcome::stuck) {
        j["setup"] = json_of(z.how);
        j["minutes"] = minutes_json(z.takes);
    }
    if (z.leaves) {
        j["leaves"] = json_of(*z.leaves);
    }
    if (z.target && z.leaves) {
        j["miss_mm"] = mm_json(z.leaves->best - *z.target);
    }
    j["outcome"] = name(z.came);
    if (z.tidied) {
        j["tidied"] = true;
    }
    if (z.why) {
        j["why"] = cause_words(r, z, length_unit::mm);
    }
    if (z.mat) {
        j["mat"] = name(*z.mat);
        j["combed_out"] = z.combed_out;
        if (z.trial) {
            j["trial"] = true;
        }
    }
    if (z.hurt) {
        j["skin"] = name(*z.hurt);
    }
    for (const skin_finding& f : z.around) {
        j["go_around"].push_back(around_json(z, f, r.rules.refusal));
    }
    if (!z.beside_hurt.empty()) {
        j["keep_off_edge_of"] = titles(r.reference.dog_body, z.beside_hurt);
    }
    if (o.explain) {
        json no = json::array();
        for (const refused_setup& f : z.refused) {
            no.push_back({{"setup", refused_title(f, length_unit::mm)},
                          {"why", bar_words(f, z, length_unit::mm)}});
        }
        j["refused"] = std::move(no);
    }
    return j;
}

json order_json(const groom& g) {
    json j;
    const auto add = [&](const char* key, const list_order& o) {
        j[key] = {{"pick_up_minutes", static_cast<double>(o.cost.pick_ups) / 1000.0},
                  {"head_early", o.cost.early},
                  {"departures", o.cost.departures},
                  {"jumps", o.cost.jumps},
                  {"proven", o.proven}};
    };
    add("before_bath", g.order_before);
    add("after_bath", g.order_after);
    return j;
}

json blends_json(const groom& g, const plan_request& r) {
    json all = json::array();
    for (const blend& b : g.blends) {
        const body& whole = r.reference.dog_body;
        json one{{"list", b.when == list::before_bath ? "before bath" : "after bath"},
                 {"from", place_json(whole, g.zones[b.from].at)},
                 {"into", place_json(whole, g.zones[b.into].at)},
                 {"step_mm", mm_json(b.step)},
                 {"asked_step_mm", mm_json(b.asked)},
                 {"width_mm", mm_json(b.width)},
                 {"width_basis", name(r.rules.prices.blend_slope.why.how)}};
        if (b.between) {
            one["between"] = json_of(*b.between);
            one["leaves"] = json_of(*b.leaves);
        }
        if (b.smoothed != tool_kind::none) {
            one["smoothed_by"] = held(by_hand(b.smoothed));
        }
        all.push_back(std::move(one));
    }
    return all;
}

json blade_check_json(const groom& g, const plan_request& r) {
    const figure<work>& after = r.rules.refusal.oil_after;
    json runs = json::array();
    for (const hot_run& h : hot_runs(g, r)) {
        json at = json::array();
        for (const work& w : h.oil_at) {
            at.push_back(minutes_json(w));
        }
        runs.push_back({{"blade", h.blade},
                        {"list", h.when == list::before_bath ? "before bath" : "after bath"},
                        {"running_minutes", minutes_json(h.runs)},
                        {"feel_and_oil_at", std::move(at)},
                        {"in_kit", h.in_kit}});
    }
    return {{"feel_and_oil_after_minutes", minutes_json(after.best)},
            {"evidence", json_of(after.why)},
            {"runs", std::move(runs)}};
}

json proof_json(const groom& g) {
    return {{"cost_minutes", in_minutes(g.choice.cost)},
            {"bound_minutes", static_cast<double>(g.choice.sure.bound) / 1000.0},
            {"optimal", g.choice.sure.optimal},
            {"parts_bounded", g.choice.sure.nodes},
            {"zones_with_ties", g.choice.sure.ties}};
}

}  // namespace

std::string json_of(const groom& g, const std::optional<return_date>& when, const plan_request& r,
                    const print_options& o, const beside& b, const mixed_coat* unseen) {
    json j{{"schema", "pelage/plan/1"}, {"alerts", titles(r.patient.alerts)}, {"dog", dog_json(r)}};
    if (o.today) {
        j["today"] = iso(*o.today);
    }
    if (unseen != nullptr) {
        j["coat_from_mix"] = unseen_json(*unseen, r);
    }
    j.update(parsed([&](json_line& l) {
        l.begin('{');
        add_plan(l, g, when, r, plan_detail::whole, o.closed);
        l.end('}');
    }));
    j["order"] = order_json(g);
    j["blends"] = blends_json(g, r);
    j["blade_check"] = blade_check_json(g, r);
    j["zones"] = json::array();
    for (const zone_plan& z : g.zones) {
        j["zones"].push_back(zone_json(z, r, o));
    }
    j["proof"] = proof_json(g);
    j["taken_as_given"] = json::array();
    for (const plan_note& n : g.notes) {
        j["taken_as_given"].push_back(note_words(n, r, length_unit::mm));
    }
    j["asks"] = json::array();
    for (const uneven_pair& p : g.asks) {
        j["asks"].push_back(ask_words(p, r.reference.dog_body,
                                      coat_of(r.reference, *r.patient.coat), length_unit::mm));
    }
    add_beside(j, b, g, r, o);
    if (o.explain && !g.stopped()) {
        j["stands_on"] = json::array();
        for (const stands_on& s : what_it_stands_on(g, when, r, o)) {
            j["stands_on"].push_back(
                {{"id", s.id}, {"text", s.text}, {"evidence", json_of(s.why)}});
        }
    }
    return dumped(j);
}

}  // namespace pelage::io
