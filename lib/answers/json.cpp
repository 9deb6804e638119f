// Answers as JSON. Lengths in millimetres to 0.01, days to 0.1, minutes to 0.001; dates ISO 8601.
#include "answers/json.hpp"

#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/blade_heat.hpp"
#include "answers/plan_basis.hpp"
#include "answers/words/consent.hpp"
#include "answers/words/learned.hpp"
#include "answers/words/lookup.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

json mm_json(const length& l) {
    return std::round(in_mm(l) * 100.0) / 100.0;
}
json minutes_json(const work& w) {
    return in_minutes(w);
}

json json_of(const finished& f) {
    return {{"low_mm", mm_json(f.low)}, {"best_mm", mm_json(f.best)}, {"high_mm", mm_json(f.high)}};
}

json json_of(const setup& s) {
    json j{{"name", title(s)}};
    if (s.kind != tool_kind::clip) {
        return j;
    }
    j["blade"] = s.tool.id;
    j["blade_stated_mm"] = mm_json(s.tool.stated.best);
    if (s.over) {
        j["comb"] = s.over->id;
        j["comb_stated_mm"] = mm_json(s.over->stated.best);
    }
    j["direction"] = name(s.way);
    return j;
}

json json_of(const evidence& e) {
    json j{{"basis", name(e.how)}};
    if (!e.from.empty()) {
        j["source"] = e.from;
    }
    if (e.relayed) {
        j["second_hand"] = true;
    }
    if (!e.note.empty()) {
        j["note"] = e.note;
    }
    return j;
}

namespace {

using io::json_of;  // beside those of this file

json days_json(const days& d) {
    return is_never(d) ? json("never") : json(std::round(in_days(d) * 10.0) / 10.0);
}
json json_of(const near_setup& n, const body& b) {
    json j{{"setup", json_of(n.how)},
           {"leaves", json_of(n.leaves)},
           {"off_mm", mm_json(n.off)},
           {"at_hand", n.at_hand}};
    if (n.why_not) {
        j["refused"] = no_go_words(*n.why_not, b);
    }
    return j;
}

json json_of(const std::vector<near_setup>& all, const body& b) {
    json j = json::array();
    for (const near_setup& n : all) {
        j.push_back(json_of(n, b));
    }
    return j;
}

json share_json(double p) {
    return std::round(p * 1e6) / 1e6;
}

json names_of(const std::vector<coat_class>& coats) {
    json all = json::array();
    for (const coat_class k : coats) {
        all.push_back(name(k));
    }
    return all;
}

/// What a mix comes to: the part that a plan shows, too.
json expected_json(const expected_coat& e, const reference_data& c) {
    const heredity& h = c.genes;
    json j{{"asked", e.asked},
           {"read_as", e.read.dog.text},
           {"likeliest", name(e.may_be.likeliest())},
           {"coats", json::array()},
           {"practice", json::array()},
           {"look_at", json::array()},
           {"notes", e.read.notes}};
    for (const coat_chance& k : e.may_be.coats) {
        j["coats"].push_back({{"coat", name(k.coat)}, {"chance", share_json(k.chance)}});
    }
    for (const practice_hit& p : e.may_be.practice) {
        const practice_rule& rule = h.practice[p.rule];
        j["practice"].push_back({{"rule", rule.id},
                                 {"chance", share_json(p.chance)},
                                 {"by_the_genes", name(p.model)},
                                 {"in_practice", names_of(rule.coats)},
                                 {"text", rule.text},
                                 {"evidence", json_of(rule.why)}});
    }
    for (const std::size_t s : e.may_be.signs) {
        j["look_at"].push_back({{"sign", h.signs[s].id},
                                {"text", h.signs[s].text},
                                {"evidence", json_of(h.signs[s].why)}});
    }
    return j;
}

std::string dumped(const json& j) {
    // what isn't UTF-8 in a name is replaced rather than thrown over: the readers refuse it before
    return j.dump(2, ' ', false, json::error_handler_t::replace) + "\n";
}

json dog_json(const plan_request& r) {
    const dog& d = r.patient;
    json j{{"id", d.id},
           {"name", d.name},
           {"invented", d.invented},
           {"size", name(d.size)},
           {"coat", name(*d.coat)},
           {"style", r.sheet.id},
           {"brushing", title(d.brushed)},
           {"brushing_said", d.brushing_said}};
    if (!d.note.empty()) {
        j["note"] = d.note;
    }
    if (!r.sheet.in_season.empty()) {
        j["season"] = r.sheet.in_season;
    }
    return j;
}

const char* kind_of(visit_kind k) {
    return k == visit_kind::full_groom  ? "full groom"
           : k == visit_kind::brush_out ? "bath and brush"
                                        : "usual interval";
}

json back_json(const back& b, const print_options& o) {
    json j{{"back_in_days", days_json(b.in)},
           {"kind", kind_of(b.why)},
           {"chance", b.asked},
           {"even_odds_days", days_json(b.even_odds)},
           {"full_groom_days", days_json(b.full_groom)}};
    if (o.today) {
        j["back_by"] = iso(plus(*o.today, b.in));
        j["full_groom_by"] = iso(plus(*o.today, b.full_groom));
    }
    return j;
}

json zone_json(const zone_plan& z, const plan_request& r, const print_options& o) {
    const zone& where = r.reference.dog_body.zones[z.at.zone];
    json j{{"zone", where.id},
           {"side", name(z.at.which)},
           {"title", title(r.reference.dog_body, z.at)}};
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
        json one{{"state", name(f.state)}};
        if (f.state == skin_state::lump) {
            one["known"] = f.known;
        }
        if (f.size) {
            one["size_mm"] = mm_json(*f.size);
        }
        if (const auto over = hair_over(z, r.rules.refusal)) {
            one["hair_over_it_mm"] = mm_json(*over);
        }
        j["go_around"].push_back(std::move(one));
    }
    if (!z.beside_hurt.empty()) {
        j["keep_off_edge_of"] = titles(r.reference.dog_body, z.beside_hurt);
    }
    if (o.explain) {
        json no = json::array();
        for (const refused_setup& f : z.refused) {
            no.push_back({{"setup", refused_title(f)}, {"why", bar_words(f, z, length_unit::mm)}});
        }
        j["refused"] = std::move(no);
    }
    return j;
}

json blocks_json(const groom& g, const plan_request& r) {
    json all = json::array();
    for (const block& b : g.blocks) {
        json zones = json::array();
        for (const std::size_t i : b.zones) {
            zones.push_back(title(r.reference.dog_body, g.zones[i].at));
        }
        json one{{"list", b.when == list::before_bath ? "before bath" : "after bath"},
                 {"setup", json_of(b.how)},
                 {"finish", name(b.done)},
                 {"zones", std::move(zones)},
                 {"minutes", minutes_json(b.takes)}};
        if (b.off) {
            one["finished_after_bath"] = true;
        }
        if (b.how.kind == tool_kind::clip) {
            one["running_minutes"] = minutes_json(b.running);
        }
        all.push_back(std::move(one));
    }
    return all;
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
                 {"from", title(whole, g.zones[b.from].at)},
                 {"into", title(whole, g.zones[b.into].at)},
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

void add_cautions(json& j, const groom& g, const plan_request& r) {
    j["cautions"] = json::array();
    for (const caution_line& c : g.cautions) {
        j["cautions"].push_back({{"id", c.what.id},
                                 {"danger", c.what.danger},
                                 {"who", c.what.who},
                                 {"where", titles(r.reference.dog_body, c.where)},
                                 {"text", c.what.text},
                                 {"evidence", json_of(c.what.why)}});
    }
    j["consents"] = json::array();
    for (const consent& c : g.consents) {
        j["consents"].push_back(
            {{"id", c.id}, {"text", consent_words(c, g, r)}, {"given", c.given}});
    }
}

double thousandth(double v) {
    return std::round(v * 1000.0) / 1000.0;
}
json rate_json(double log_rate) {
    return thousandth(std::exp(log_rate));
}

/// Days won over another habit; where neither is ever there, none.
json won_json(const days& with, const days& without) {
    if (is_never(with) || is_never(without)) {
        return is_never(without) ? json(0.0) : json("never");
    }
    return days_json(with - without);
}

/// A measurement of the dog, with what is said of it.
json measurement_json(const measurement& m) {
    return {{"date", iso(m.on)}, {"zone", m.whom}, {"length_mm", mm_json(m.is)}};
}

json learning_json(const forecast& f, const plan_request& r) {
    const learned_rate& l = f.learned;
    const auto at = [](const rate_law& law, chance p) {
        return rate_json(std::log(in_mm_per_day(rate_quantile(law, p))));
    };
    json j{
        {"measurements", l.counted.size()},
        {"coat_mm_per_day", rate_json(l.usual.log_median)},
        {"dog_mm_per_day",
         {{"rate_10", at(l.dog, 0.1)}, {"rate_50", at(l.dog, 0.5)}, {"rate_90", at(l.dog, 0.9)}}},
        {"next_mm_per_day",
         {{"rate_10", at(l.next, 0.1)},
          {"rate_50", at(l.next, 0.5)},
          {"rate_90", at(l.next, 0.9)}}},
        {"coat_weight", thousandth(l.coat_weight)}};
    if (f.by_coat) {
        j["back_in_days_by_coat"] = days_json(f.by_coat->in);
        j["full_groom_days_by_coat"] = days_json(f.by_coat->full_groom);
    }
    j["counted"] = json::array();
    for (const counted_measurement& m : l.counted) {
        json one = measurement_json(r.patient.measured[m.which]);
        one["days_after_cut"] = days_json(m.read.after);
        one["cut_left_mm"] = mm_json(m.read.start);
        j["counted"].push_back(std::move(one));
    }
    j["left_out"] = json::array();
    for (const left_out_measurement& m : l.left_out) {
        json one = measurement_json(r.patient.measured[m.which]);
        one["why"] = left_out_words(m, r);
        j["left_out"].push_back(std::move(one));
    }
    return j;
}

json unseen_json(const mixed_coat& u, const plan_request& r) {
    json j = expected_json(u.expected, r.reference);
    j["on_other_coats"] = json::array();
    for (const other_coat& c : u.others) {
        json one{{"coat", name(c.what.coat)},
                 {"chance", share_json(c.what.chance)},
                 {"jacket_to_card", c.jacket_clipped},
                 {"leaves", json::array()}};
        for (const left_otherwise& l : c.leaves) {
            one["leaves"].push_back(
                {{"setup", l.setup}, {"planned", json_of(l.planned)}, {"then", json_of(l.then)}});
        }
        j["on_other_coats"].push_back(std::move(one));
    }
    return j;
}

}  // namespace

std::string json_of(const lookup_answer& a, const lookup_request& r) {
    json j{{"schema", "pelage/lookup/1"}, {"asked", r.text}};
    const body& b = r.reference.dog_body;
    if (a.never) {
        j["no"] = never_words(a, r, length_unit::mm);
    }
    if (const std::string of_coat = coat_words(r); !of_coat.empty()) {
        j["of_the_coat"] = of_coat;
    }
    if (a.asked.what == question::form::of_length) {
        // as asked: an inch is exact
        j["length_mm"] = std::round(in_mm(a.asked.wanted) * 1e6) / 1e6;
        j["nearest"] = json::array();
        for (const nearest_row& row : a.nearest) {
            j["nearest"].push_back({{"coat", name(row.coat)}, {"setups", json_of(row.best, b)}});
        }
    } else {
        json tool = json_of(a.asked.tool);
        tool["name"] = held(a.asked.tool);
        tool.erase("direction");
        tool["teeth"] = name(a.asked.tool.tool.cut);
        tool["shape"] = name(a.asked.tool.tool.shape);
        j["tool"] = std::move(tool);
        j["stated"] = {{"low_mm", mm_json(a.stated->low)},
                       {"best_mm", mm_json(a.stated->best)},
                       {"high_mm", mm_json(a.stated->high)}};
        j["leaves"] = json::array();
        for (const coat_row& row : a.leaves) {
            json one{{"coat", name(row.coat)}};
            if (!r.way || *r.way == direction::with_lay) {
                one["with_the_lay"] = json_of(row.with);
            }
            if (!r.way || *r.way == direction::against_lay) {
                one["against_the_lay"] = json_of(row.against);
            }
            j["leaves"].push_back(std::move(one));
        }
        j["judged_on"] = name(a.judged_on);
        j["replaces"] = json_of(a.replaces, b);
        j["reverse_equivalents"] = json_of(a.reverse, b);
    }
    j["hints"] = hint_words(a.asked, length_unit::mm);
    j["cautions"] = caution_words(a, r);
    if (a.there) {
        j["there"] = there_words(*a.there, r);
    }
    j["sure"] = json::array();
    for (const known_figure& f : a.sure) {
        json one = json_of(known_how(f, a));
        one["figure"] = figure_words(f, r);
        j["sure"].push_back(std::move(one));
    }
    return dumped(j);
}

std::string json_of(const expected_coat& e, const reference_data& c) {
    json j{{"schema", "pelage/mix/1"}};
    const json expected = expected_json(e, c);
    for (const auto& [key, value] : expected.items()) {
        j[key] = value;
    }
    const heredity& h = c.genes;
    j["loci"] = json::array();
    for (std::size_t l = 0; l < h.loci.size(); ++l) {
        const copies<double>& n = e.read.dog.genes.at[l];
        j["loci"].push_back({{"locus", locus_names[l]},
                             {"gene", h.loci[l].gene},
                             {"says", h.loci[l].says},
                             {"no_copy", share_json(n.none)},
                             {"one_copy", share_json(n.one)},
                             {"two_copies", share_json(n.two)},
                             {"evidence", json_of(h.loci[l].why)}});
    }
    j["curl"] = curl_mode_names[static_cast<std::size_t>(e.curl)];
    j["types"] = json::array();
    for (std::size_t t = 0; t < h.types.size(); ++t) {
        if (const double p = e.may_be.types[t]; p > 0.0) {
            j["types"].push_back({{"type", coat_type_names[t]},
                                  {"chance", share_json(p)},
                                  {"evidence", json_of(h.types[t].why)}});
        }
    }
    j["breeds"] = json::array();
    for (const ancestry& a : e.read.dog.from) {
        const breed& b = h.breeds[a.breed];
        json one{{"breed", b.id}, {"share", share_json(a.share)}, {"coat", name(b.coat)}};
        one["evidence"] = json_of(b.why);
        for (std::size_t l = 0; l < b.frequency.size(); ++l) {
            const figure<double>& f = b.frequency[l];
            one["frequency"].push_back({{"locus", locus_names[l]},
                                        {"low", f.low},
                                        {"best", f.best},
                                        {"high", f.high},
                                        {"evidence", json_of(f.why)}});
        }
        j["breeds"].push_back(std::move(one));
    }
    return dumped(j);
}

std::string json_of(const groom& g, const std::optional<back>& when, const plan_request& r,
                    const print_options& o, const beside& b, const mixed_coat* unseen) {
    json j{{"schema", "pelage/plan/1"}, {"alerts", titles(r.patient.alerts)}, {"dog", dog_json(r)}};
    if (o.today) {
        j["today"] = iso(*o.today);
    }
    if (unseen != nullptr) {
        j["coat_from_mix"] = unseen_json(*unseen, r);
    }
    j["stop"] = titles(r.reference.dog_body, g.stop);
    j["stop_signs"] = json::array();
    for (const stop_sign s : g.signs) {
        const stop_rule& rule = r.reference.stops[static_cast<std::size_t>(s)];
        j["stop_signs"].push_back({{"id", name(s)},
                                   {"seen", rule.seen},
                                   {"act", rule.act},
                                   {"evidence", json_of(rule.why)}});
    }
    if (g.question) {
        json clips = json::array();
        for (const std::size_t i : g.question->asked) {
            clips.push_back(title(r.reference.dog_body, g.zones[i].at));
        }
        j["ask_owner"] = {{"consent", "clip-jacket"},
                          {"why", "double coat: card it out, don't clip it; it may not grow back"},
                          {"clips", std::move(clips)},
                          {"instead", g.question->instead}};
    }
    if (!g.fleas.empty()) {
        j["flea_bath_first"] = titles(r.reference.dog_body, g.fleas);
    }
    j["minutes_before_bath"] = minutes_json(g.before);
    j["minutes_after_bath"] = minutes_json(g.after);
    j["comb_out"] = json::array();
    for (const combing_out& c : g.combed) {
        j["comb_out"].push_back({{"zone", title(r.reference.dog_body, g.zones[c.zone].at)},
                                 {"grade", name(c.grade)},
                                 {"minutes", minutes_json(c.takes)}});
    }
    j["blocks"] = blocks_json(g, r);
    j["order"] = order_json(g);
    j["blends"] = blends_json(g, r);
    j["blade_check"] = blade_check_json(g, r);
    j["zones"] = json::array();
    for (const zone_plan& z : g.zones) {
        j["zones"].push_back(zone_json(z, r, o));
    }
    add_cautions(j, g, r);
    if (when) {
        j["back"] = back_json(*when, o);
    }
    j["proof"] = {{"cost_minutes", in_minutes(g.choice.cost)},
                  {"bound_minutes", static_cast<double>(g.choice.sure.bound) / 1000.0},
                  {"optimal", g.choice.sure.optimal},
                  {"parts_bounded", g.choice.sure.nodes},
                  {"zones_with_ties", g.choice.sure.ties}};
    j["taken_as_given"] = json::array();
    for (const plan_note& n : g.notes) {
        j["taken_as_given"].push_back(note_words(n, r, length_unit::mm));
    }
    j["asks"] = json::array();
    for (const uneven_pair& p : g.asks) {
        j["asks"].push_back(ask_words(p, r.reference.dog_body, length_unit::mm));
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

std::string json_of(const forecast& f, const plan_request& r, const print_options& o,
                    const mixed_coat* unseen) {
    json j{
        {"schema", "pelage/regrow/1"}, {"alerts", titles(r.patient.alerts)}, {"dog", dog_json(r)}};
    if (unseen != nullptr) {
        j["coat_from_mix"] = unseen_json(*unseen, r);
    }
    if (o.today) {
        j["today"] = iso(*o.today);
    }
    const json when = back_json(f.when, o);
    for (const auto& [key, value] : when.items()) {
        j[key] = value;
    }
    j["usual_interval_days"] = days_json(f.usual);
    j["mats_by_length"] = f.mats_by_length;
    j["zones"] = json::array();
    for (const zone_forecast& z : f.zones) {
        json one{{"title", title(r.reference.dog_body, z.at)}, {"start_mm", mm_json(z.start)}};
        if (z.threshold) {
            one["matting_prone_mm"] = mm_json(*z.threshold);
            one["days_10"] = days_json(z.early);
            one["days_50"] = days_json(z.even);
            one["days_90"] = days_json(z.late);
            one["held_by_brushing"] = z.held;
        }
        j["zones"].push_back(std::move(one));
    }
    j["brushing"] = json::array();
    for (const habit_forecast& h : f.habits) {
        json one = back_json(h.when, o);
        one["habit"] = title(h.habit);
        one["days_won"] = days_json(h.when.in - f.habits.front().when.in);
        one["zones"] = json::array();
        for (std::size_t i = 0; i < h.early.size(); ++i) {
            one["zones"].push_back({{"title", title(r.reference.dog_body, f.zones[i].at)},
                                    {"days_10", days_json(h.early[i])},
                                    {"days_won", won_json(h.early[i], f.habits.front().early[i])}});
        }
        j["brushing"].push_back(std::move(one));
    }
    if (f.tidy_face_feet) {
        j["tidy_face_feet_days"] = days_json(*f.tidy_face_feet);
        j["tidy_sanitary_days"] = days_json(*f.tidy_sanitary);
    }
    if (f.regrown) {
        j["jacket_regrown_days"] = {{"days_10", days_json(f.regrown->in[0])},
                                    {"days_50", days_json(f.regrown->in[1])},
                                    {"days_90", days_json(f.regrown->in[2])}};
        const figure<double>& share = r.rules.growth.delayed_share;
        j["delayed_regrowth"] = {{"share", share.best},
                                 {"low", share.low},
                                 {"high", share.high},
                                 {"evidence", json_of(share.why)}};
    }
    const rate_prior& rate = rate_of(r.reference, r.rules, *r.patient.coat);
    j["growth"] = {{"median_mm_per_day", in_mm_per_day(rate.median)},
                   {"log_sd", rate.log_sd},
                   {"evidence", json_of(rate.why)}};
    if (!r.patient.measured.empty()) {
        j["learning"] = learning_json(f, r);
    }
    return dumped(j);
}

std::string proposal_json(const std::vector<population_rate>& lessons, const growth_rules& g) {
    json j{{"schema", "pelage/learn/1"}, {"dogs_needed", g.herd.best}, {"coats", json::array()}};
    for (const population_rate& l : lessons) {
        json one{
            {"coat", name(l.coat)},
            {"dogs", l.dogs},
            {"measurements", l.measurements},
            {"left_out", l.left_out},
            {"reference",
             {{"median_mm_per_day", in_mm_per_day(l.before.median)}, {"log_sd", l.before.log_sd}}}};
        if (l.fit) {
            one["proposed"] = {{"median_mm_per_day", rate_json(l.fit->law.log_median)},
                               {"median_log_error", thousandth(l.fit->median_error)},
                               {"log_sd", thousandth(l.fit->law.log_sd)},
                               {"log_sd_of_the_dogs", thousandth(l.fit->fitted_log_sd)},
                               {"basis", name(basis::measured)}};
        }
        j["coats"].push_back(std::move(one));
    }
    return dumped(j);
}

std::string sources_json(const reference_data& c, const std::string& key) {
    json j{{"schema", "pelage/sources/1"},
           {"figures", json::array()},
           {"cautions", json::array()},
           {"sources", json::array()}};
    for (const listed_figure& f : c.figures) {
        if (f.key.find(key) != std::string::npos) {
            json one{{"key", f.key}, {"value", f.value}};
            one.update(json_of(f.why));
            j["figures"].push_back(std::move(one));
        }
    }
    const auto caution_to = [&](const std::string& id, const std::string& text, const evidence& e) {
        if (id.find(key) != std::string::npos) {
            json one{{"key", id}, {"text", text}};
            one.update(json_of(e));
            j["cautions"].push_back(std::move(one));
        }
    };
    for (const caution& one : c.cautions) {
        caution_to("cautions/" + one.id, one.text, one.why);
    }
    for (const stop_rule& one : c.stops) {
        caution_to("cautions/stop/" + std::string(name(one.sign)), one.seen + ". " + one.act,
                   one.why);
    }
    for (const source& s : c.sources) {
        if (s.id.find(key) != std::string::npos) {
            j["sources"].push_back({{"id", s.id},
                                    {"kind", s.kind},
                                    {"title", s.title},
                                    {"author", s.author},
                                    {"publisher", s.publisher},
                                    {"year", s.year},
                                    {"address", s.address},
                                    {"seen", s.seen},
                                    {"note", s.note}});
        }
    }
    return j["figures"].empty() && j["cautions"].empty() && j["sources"].empty() ? std::string{}
                                                                                 : dumped(j);
}

}  // namespace pelage::io
