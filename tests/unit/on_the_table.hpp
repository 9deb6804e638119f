// A dog on the table of the invented salon: short ways for tests to say what a case is about.
#pragma once

#include <algorithm>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/place_words.hpp>

namespace on_the_table {

/// A number with no spread, basis "assumption": for rules a test writes itself.
template <class Quantity>
[[nodiscard]] pelage::figure<Quantity> plain(const Quantity& q) {
    return pelage::exactly(q, pelage::evidence{});
}

/// The place a person means by a word; the word must mean one place.
[[nodiscard]] inline pelage::place at(std::string_view word) {
    const auto s = pelage::select(pelage::io::reference().dog_body, word);
    if (!s || s->places.size() != 1) {
        throw std::logic_error("not one place: " + std::string(word));
    }
    return s->places.front();
}

/// A blade of the reference.
[[nodiscard]] inline pelage::blade blade_of(std::string_view id) {
    const pelage::blade* b = pelage::find(pelage::io::reference().blades, id);
    if (b == nullptr) {
        throw std::logic_error("no such blade: " + std::string(id));
    }
    return *b;
}

/// A comb of the reference.
[[nodiscard]] inline pelage::comb comb_of(std::string_view id) {
    const pelage::comb* c = pelage::find(pelage::io::reference().combs, id);
    if (c == nullptr) {
        throw std::logic_error("no such comb: " + std::string(id));
    }
    return *c;
}

/// A kit of those blades and combs, one clipper, a 30 kept under the combs.
[[nodiscard]] inline pelage::kit drawer(const std::vector<std::string>& blades,
                                        const std::vector<std::string>& combs = {}) {
    pelage::kit k;
    for (const std::string& id : blades) {
        k.blades.push_back({blade_of(id), 1, {}, false, {}});
    }
    for (const std::string& id : combs) {
        k.combs.push_back({comb_of(id), 1, {}, {}});
    }
    return k;
}

/// A sheet that says one thing of the whole dog.
[[nodiscard]] inline pelage::style sheet_of(pelage::instruction all) {
    pelage::style s;
    s.id = "test";
    s.title = "test";
    s.rules.push_back({"all", std::move(all)});
    return s;
}

/// "Clip all to this length, with the lay."
[[nodiscard]] inline pelage::instruction clip_to(const pelage::length& l) {
    pelage::instruction i;
    i.target = l;
    i.how = pelage::finish::clip;
    return i;
}

/// "Clip with this blade, with the lay."
[[nodiscard]] inline pelage::instruction clip_with(std::string blade) {
    pelage::instruction i;
    i.blade = std::move(blade);
    i.how = pelage::finish::clip;
    return i;
}

/// "Finish it like this", with or without a length.
[[nodiscard]] inline pelage::instruction finish_by(pelage::finish f,
                                                   std::optional<pelage::length> l = {}) {
    pelage::instruction i;
    i.how = f;
    i.target = l;
    return i;
}

/// A matting finding.
[[nodiscard]] inline pelage::mat_finding mat_in(std::string_view where, pelage::mat_grade g,
                                                std::optional<pelage::length> free_hair = {}) {
    pelage::mat_finding m;
    m.at = at(where);
    m.grade = g;
    m.free_hair = free_hair;
    return m;
}

/// One dog, its sheet and the kit, ready to be planned. Begins as a medium wavy dog, brushed two or
/// three times a week to the skin, nothing found, today's hair not recorded, 13 mm all over.
struct groom_table {
    pelage::dog patient;
    pelage::style sheet = sheet_of(clip_to(pelage::mm(13)));
    pelage::kit tools = pelage::io::demo_salon().tools;
    pelage::parameters rules = pelage::io::reference().rules;
    std::optional<pelage::date> today;
    std::optional<pelage::chance> asked;
    std::optional<pelage::length> length_wish;
    bool both_ways = false;
    bool patchwork = false;  ///< no part comes down whole for its mats

    groom_table() {
        patient.id = "test";
        patient.coat = pelage::coat_class::wavy;
        patient.brushed = {pelage::habit::two_or_three, true};
    }
    groom_table& says(std::string whom, pelage::instruction what) {
        sheet.rules.push_back({std::move(whom), std::move(what)});
        return *this;
    }
    [[nodiscard]] pelage::plan_request request() const {
        pelage::plan_request r{pelage::io::reference(), rules, tools, patient, sheet, today, asked};
        r.length_wish = length_wish;
        r.both_ways = both_ways;
        r.patchwork = patchwork;
        return r;
    }
    [[nodiscard]] pelage::groom plan() const { return pelage::make_plan(request()); }
};

/// What the plan says of one place; the place must stand in it.
[[nodiscard]] inline const pelage::zone_plan& of(const pelage::groom& g, std::string_view word) {
    const pelage::place p = at(word);
    const auto z = std::find_if(g.zones.begin(), g.zones.end(),
                                [&](const pelage::zone_plan& one) { return one.at == p; });
    if (z == g.zones.end()) {
        throw std::logic_error("not in the plan: " + std::string(word));
    }
    return *z;
}

/// Whether the plan speaks of that very place.
[[nodiscard]] inline bool stands_in(const pelage::groom& g, std::string_view word) {
    const pelage::place p = at(word);
    return std::any_of(g.zones.begin(), g.zones.end(),
                       [&](const pelage::zone_plan& one) { return one.at == p; });
}

/// Whether the plan shows the caution for that condition.
[[nodiscard]] inline bool warns(const pelage::groom& g, pelage::caution_when w) {
    return std::any_of(g.cautions.begin(), g.cautions.end(),
                       [&](const pelage::caution_line& c) { return c.what.when == w; });
}

}  // namespace on_the_table
