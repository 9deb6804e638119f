// Answers about a kit as JSON.
#include <pelage/answers/kit.hpp>
#include <pelage/base/length_text.hpp>

#include "answers/json.hpp"
#include "answers/words/kit_check.hpp"
#include "answers/words/lookup.hpp"
#include "answers/words/test_patch.hpp"

namespace pelage::io {

namespace {

json target_json(const sheet_target& t, const reference_data& c, const std::vector<style>& sheets) {
    json j{{"sheet", sheets[t.sheet].id},
           {"coat", name(t.coat)},
           {"zone", c.dog_body.zones[t.zone].id}};
    if (t.wanted) {
        j["target_mm"] = mm_json(*t.wanted);
        j["tolerance_mm"] = mm_json(t.tolerated);
    }
    if (t.blade) {
        j["blade"] = *t.blade;
    }
    j["direction"] = name(t.way);
    j["weight"] = t.weight;
    if (!t.season.empty()) {
        j["season"] = t.season;
    }
    return j;
}

/// The last purchase as things to order: how many of each, and the price where one is known.
json list_json(const purchase& last, const shopping_request& r) {
    json j = json::array();
    for (const std::size_t i : last.bought) {
        json one{{"item", r.wares[i].title()}, {"number", r.places.number}};
        if (const auto& price = r.wares[i].price) {
            one["price"] = static_cast<double>(price->hundredths) / 100.0;
            one["currency"] = price->currency;
        }
        j.push_back(std::move(one));
    }
    return j;
}

json share(std::int64_t part, std::int64_t whole) {
    return whole == 0
               ? json(0.0)
               : json(std::round(1e6 * static_cast<double>(part) / static_cast<double>(whole)) /
                      1e6);
}

}  // namespace

std::string json_of(const ladder& l, const lookup_request& r) {
    json j{{"schema", "pelage/ladder/1"}, {"coat", name(l.coat)}, {"kit", r.tools.title}};
    const figure<double>& lay = lay_of(r.reference, r.rules, l.coat);
    j["lay_degrees"] = lay.best;
    j["lay_basis"] = name(lay.why.how);
    j["rungs"] = json::array();
    for (const rung& g : l.rungs) {
        const figure<length> stated = stated_length(g.how, r.rules.cut);
        json one{{"setup", json_of(g.how)}, {"leaves", json_of(g.leaves)}};
        one["stated_mm"] = mm_json(stated.best);
        one["basis"] = name(stated.why.how);
        one["at_hand"] = !g.out;
        if (g.out_until) {
            one["out_until"] = iso(*g.out_until);
        }
        one["where"] = g.whole_coat ? whole_coat_words(g.how, r.reference.dog_body)
                                    : places_words(l.places[*g.where], r.reference.dog_body);
        if (!r.where.empty()) {
            one["allowed"] = !g.why_not;
            if (g.why_not) {
                one["refused"] = no_go_words(*g.why_not, r.reference.dog_body, g.how.way);
            }
        }
        j["rungs"].push_back(std::move(one));
    }
    j["asked"] = json::array();
    for (const ladder_target& t : l.targets) {
        j["asked"].push_back({{"wanted_mm", mm_json(t.wanted)},
                              {"sheets", t.sheets.size()},
                              {"left_everywhere", t.met}});
    }
    return dumped(j);
}

std::string json_of(const kit_check& c, const kit_check_request& r) {
    json j{{"schema", "pelage/kit-check/1"}, {"kit", r.own.title}, {"amiss", c.amiss()}};
    j["targets"] = c.targets;
    j["met"] = c.met;
    j["met_today"] = c.met_today;
    j["remarks"] = json::array();
    for (const kit_remark& one : c.remarks) {
        j["remarks"].push_back(
            {{"what", name(one.what)}, {"text", finding_words(one.found, r, length_unit::mm)}});
    }
    return dumped(j);
}

std::string json_of(const calibration& l, const test_patch& r) {
    json j{{"schema", "pelage/patch/1"},
           {"setup", json_of(r.tool)},
           {"coat", name(r.coat)},
           {"found_mm", mm_json(r.found)},
           {"expected", json_of(l.expected)}};
    if (l.lay) {
        j["lay_degrees"] = l.lay->best;
        j["lay_degrees_before"] = l.lay_before;
    }
    if (l.measured) {
        j["measured_mm"] = mm_json(*l.measured);
        j["length_before_mm"] = mm_json(l.stated_before);
    }
    j["lines"] = salon_lines(l, r, length_unit::mm);
    j["lengths"] = json::array();
    for (const changed_length& c : l.lengths) {
        j["lengths"].push_back({{"setup", json_of(c.how)},
                                {"before", json_of(c.before)},
                                {"after", json_of(c.after)}});
    }
    j["zones"] = json::array();
    for (const changed_target& t : l.targets) {
        j["zones"].push_back({{"sheet", r.sheets[t.sheet].id},
                              {"zone", r.reference.dog_body.zones[t.zone].id},
                              {"season", t.season},
                              {"meets", t.meets}});
    }
    return dumped(j);
}

std::string json_of(const shopping& s, const shopping_request& r) {
    json j{{"schema", "pelage/kit-buy/1"}, {"kit", r.own.title}};
    j["sheets"] = json::array();
    for (const style& one : r.sheets) {
        j["sheets"].push_back(one.id);
    }
    j["targets"] = s.targets.size();
    j["weight"] = s.whole;
    j["reachable"] = share(s.reachable, s.whole);
    j["catalogue"] = json::array();
    for (const ware& w : r.wares) {
        j["catalogue"].push_back(w.title());
    }
    j["curve"] = json::array();
    for (std::size_t n = 0; n < s.curve.size(); ++n) {
        const purchase& p = s.curve[n];
        json one{{"most", n},
                 {"share", share(p.choice.met, s.whole)},
                 {"proven", p.choice.proven()},
                 {"bound", share(p.choice.bound, s.whole)},
                 {"buy", json::array()}};
        for (const std::size_t i : p.bought) {
            one["buy"].push_back(r.wares[i].title());
        }
        j["curve"].push_back(std::move(one));
    }
    j["uses"] = json::array();
    for (const use_of& u : s.uses) {
        j["uses"].push_back({{"item", r.wares[u.ware].title()},
                             {"lost_without", share(u.lost_without, s.whole)},
                             {"targets", u.serves.size()}});
    }
    j["list"] = list_json(s.curve.back(), r);
    j["never"] = json::array();
    for (const std::size_t t : s.never) {
        j["never"].push_back(target_json(s.targets[t].what, r.reference, r.sheets));
    }
    return dumped(j);
}

}  // namespace pelage::io
