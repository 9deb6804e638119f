// A look-up as JSON.
#include <cmath>

#include <pelage/answers/write.hpp>

#include "answers/json.hpp"
#include "answers/words/lookup.hpp"

namespace pelage::io {

namespace {

using io::json_of;  // beside those of this file

json json_of(const near_setup& n, const body& b) {
    json j{{"setup", json_of(n.how)},
           {"leaves", json_of(n.leaves)},
           {"off_mm", mm_json(n.off)},
           {"at_hand", n.at_hand}};
    if (n.why_not) {
        j["refused"] = no_go_words(*n.why_not, b, n.how.way);
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

json by_coat(const std::vector<nearest_row>& rows, const body& b) {
    json j = json::array();
    for (const nearest_row& row : rows) {
        j.push_back({{"coat", name(row.coat)}, {"setups", json_of(row.best, b)}});
    }
    return j;
}

/// What answers a length.
void add_length(json& j, const lookup_answer& a, const body& b) {
    // as asked: an inch is exact
    j["length_mm"] = std::round(in_mm(a.asked.wanted) * 1e6) / 1e6;
    j["stated_on"] = ids(a.stated_so);
    j["nearest"] = json::array();
    for (const nearest_row& row : a.nearest) {
        json one{{"coat", name(row.coat)}, {"setups", json_of(row.best, b)}};
        if (row.out) {
            one["nearer_but_out"] = json_of(*row.out, b);
        }
        j["nearest"].push_back(std::move(one));
    }
}

/// What answers a tool.
void add_tool(json& j, const lookup_answer& a, const lookup_request& r) {
    const body& b = r.reference.dog_body;
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
    if (!a.replaces_by_coat.empty()) {
        j["replaces_by_coat"] = by_coat(a.replaces_by_coat, b);
    }
    j["reverse_equivalents"] = json_of(a.reverse, b);
    if (!a.reverse_by_coat.empty()) {
        j["reverse_by_coat"] = by_coat(a.reverse_by_coat, b);
    }
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
        add_length(j, a, b);
    } else {
        add_tool(j, a, r);
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

}  // namespace pelage::io
