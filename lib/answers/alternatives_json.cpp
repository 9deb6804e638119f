// What stands beside a plan, as JSON.
#include <cmath>

#include "answers/json.hpp"
#include "answers/words/stuck.hpp"

namespace pelage::io {

namespace {

using io::json_of;  // beside those of this file

class ways_json {
  public:
    ways_json(const groom& g, const plan_request& r) : g_(g), r_(r) {}

    [[nodiscard]] json of(const other_way& w) const;
    [[nodiscard]] json of(const without_tool& w) const;
    [[nodiscard]] json of(const reason_why& w) const;
    [[nodiscard]] json of(const infeasible_zone& c) const;
    [[nodiscard]] json of(const regrowth_option& w) const;

  private:
    [[nodiscard]] json titles(const std::vector<std::size_t>& zones) const;
    [[nodiscard]] json changes(const groom& plan, const std::vector<std::size_t>& zones) const;
    /// "zone", "side", "title".
    [[nodiscard]] json place_of(std::size_t i) const {
        json j = place_json(r_.reference.dog_body, g_.zones[i].at);
        j["title"] = title_of(i);
        return j;
    }
    [[nodiscard]] std::string title_of(std::size_t i) const {
        return title(r_.reference.dog_body, g_.zones[i].at);
    }

    const groom& g_;
    const plan_request& r_;
};

json ways_json::titles(const std::vector<std::size_t>& zones) const {
    json j = json::array();
    for (const std::size_t i : zones) {
        j.push_back(title_of(i));
    }
    return j;
}

json done(const zone_plan& z) {
    json j;
    j["outcome"] = name(z.came);
    if (z.came != outcome::stuck) {
        j["setup"] = json_of(z.how);
        j["finish"] = name(z.how.kind == tool_kind::none ? finish::leave : z.how_finished);
        j["minutes"] = minutes_json(z.takes);
    }
    if (z.leaves) {
        j["leaves"] = json_of(*z.leaves);
    }
    if (z.target && z.leaves) {
        j["miss_mm"] = mm_json(z.leaves->best - *z.target);
    }
    if (z.mat) {
        j["combed_out"] = z.combed_out;
    }
    return j;
}

json ways_json::changes(const groom& plan, const std::vector<std::size_t>& zones) const {
    json all = json::array();
    for (const std::size_t i : zones) {
        json& one = all.emplace_back(place_of(i));
        one["instead_of"] = done(g_.zones[i]);
        one["done"] = done(plan.zones[i]);
    }
    return all;
}

json ways_json::of(const other_way& w) const {
    json j{{"kind", name(w.what)},
           {"minutes_more", minutes_json(w.more)},
           {"cost_minutes_more", minutes_json(w.dearer)},
           {"shorter_than_sheet", w.beyond_sheet},
           {"cheapest_of_its_kind", w.cheapest},
           {"tools_dropped", names(w.dropped)},
           {"tools_taken", names(w.taken)},
           {"about", titles(w.about)},
           {"changes", changes(w.plan, w.changed)}};
    if (w.back_in) {
        j["length_back_in_days"] = {days_json((*w.back_in)[0]), days_json((*w.back_in)[1]),
                                    days_json((*w.back_in)[2])};
    }
    if (w.when) {
        j["back_in_days"] = days_json(w.when->next_visit);
    }
    return j;
}

json ways_json::of(const without_tool& w) const {
    return {{"tool", name(w.tool)},
            {"in_kit", w.in_kit},
            {"minutes_more", minutes_json(w.more)},
            {"cost_minutes_more", minutes_json(w.dearer)},
            {"not_to_be_done", titles(w.stuck)},
            {"changes", changes(w.plan, w.changed)}};
}

json ways_json::of(const reason_why& w) const {
    json j = place_of(w.zone);
    j["why"] = name(w.why);
    if (w.alone) {
        j["alone"] = json_of(*w.alone);
    }
    if (!w.with.empty()) {
        j["together_with"] = titles(w.with);
    }
    if (w.next) {
        j["next_best"] = json_of(*w.next);
        j["next_best_combed_out"] = w.next_combed;
        j["cost_minutes_more"] = minutes_json(w.dearer);
    }
    if (w.next_leaves) {
        j["next_best_leaves"] = json_of(*w.next_leaves);
    }
    return j;
}

json json_of(const remedy_step& w) {
    json j{{"by", name(w.how)}};
    if (!w.id.empty()) {
        j["id"] = w.id;
    }
    if (w.least) {
        j["at_least_mm"] = mm_json(*w.least);
    }
    if (w.takes) {
        j["minutes"] = minutes_json(*w.takes);
    }
    return j;
}

json ways_json::of(const infeasible_zone& c) const {
    json rules = json::array();
    for (const broken_rule& rule : c.rules) {
        rules.push_back({{"id", name(rule)}, {"text", rule_words(rule)}});
    }
    json frees = json::array();
    for (const remedy_set& f : c.frees) {
        json by = json::array();
        for (const remedy_step& w : f.by) {
            by.push_back(json_of(w));
        }
        json one{{"all_of", std::move(by)}, {"text", freed_in_words(f, length_unit::mm)}};
        if (f.then) {
            one["then"] = json_of(*f.then);
        }
        frees.push_back(std::move(one));
    }
    json j = place_of(c.zone);
    j["rules"] = std::move(rules);
    j["frees"] = std::move(frees);
    j["veterinarian_decides"] = c.veterinarian;
    return j;
}

json ways_json::of(const regrowth_option& w) const {
    json j{{"kind", name(w.how)},
           {"more_minutes", minutes_json(w.more)},
           {"dearer_minutes", minutes_json(w.dearer)},
           {"taken_down", titles(w.down)},
           {"greatest_step_mm", mm_json(w.step)},
           {"back_last", title_of(w.last)},
           {"from_mm", mm_json(w.from)},
           {"to_mm", mm_json(w.to)},
           {"back_in_days",
            {days_json(w.back_in[0]), days_json(w.back_in[1]), days_json(w.back_in[2])}}};
    if (!w.down.empty()) {
        j["even_mm"] = mm_json(w.even);
    }
    return j;
}

template <class Thing>
json list_of(const ways_json& w, const std::vector<Thing>& all) {
    json j = json::array();
    for (const Thing& one : all) {
        j.push_back(w.of(one));
    }
    return j;
}

}  // namespace

void add_beside(json& j, const beside& b, const groom& g, const plan_request& r,
                const print_options& o) {
    const ways_json w(g, r);
    j["other_ways"] = list_of(w, b.ways);
    j["grow_back"] = list_of(w, b.grow_back);
    j["conflicts"] = list_of(w, b.stuck);
    if (o.explain) {
        j["why_this"] = list_of(w, b.why);
        j["without_it"] = list_of(w, b.without);
    }
}

}  // namespace pelage::io
