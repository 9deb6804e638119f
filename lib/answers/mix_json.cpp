// A mix of breeds as JSON.
#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/json.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

using io::json_of;  // beside those of this file

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

}  // namespace

json unseen_json(const mixed_coat& u, const plan_request& r) {
    json j = expected_json(u.expected, r.reference);
    j["on_other_coats"] = json::array();
    for (const other_coat& c : u.others) {
        json one{{"coat", name(c.what.coat)},
                 {"chance", share_json(c.what.chance)},
                 {"jacket_to_card", c.jacket_clipped},
                 {"leaves", json::array()}};
        for (const left_otherwise& l : c.leaves) {
            one["leaves"].push_back({{"setup", title(l.held)},
                                     {"planned", json_of(l.planned)},
                                     {"then", json_of(l.then)}});
        }
        j["on_other_coats"].push_back(std::move(one));
    }
    return j;
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

}  // namespace pelage::io
