// A kit checked against the sheets: what is missing in it, and what none of them needs.
#include <algorithm>
#include <cmath>
#include <set>

#include "kit/check_parts.hpp"

namespace pelage {

namespace {

/// Adds what isn't there yet.
template <class One>
void add_once(std::vector<One>& to, const One& one) {
    if (std::find(to.begin(), to.end(), one) == to.end()) {
        to.push_back(one);
    }
}

/// To a tenth under 10 mm, to whole millimetres above: what a list can tell apart.
length in_its_grain(const length& l) {
    const double grain = in_mm(l) < 10.0 ? 0.1 : 1.0;
    return mm(std::round(in_mm(l) / grain) * grain);
}

void add_gap(const judged_target& t, const checked_kit& k, std::vector<nothing_leaves>& groups) {
    // a blade's length differs from coat to coat; the blade is what is missing
    const std::optional<length> wanted =
        t.what.blade || !t.what.wanted ? std::nullopt : std::optional{in_its_grain(*t.what.wanted)};
    auto g = std::find_if(groups.begin(), groups.end(), [&](const nothing_leaves& one) {
        return one.wanted == wanted && one.blade == t.what.blade;
    });
    if (g == groups.end()) {
        g = groups.insert(g, {wanted, t.what.blade, {}, std::nullopt});
    }
    auto s = std::find_if(g->sheets.begin(), g->sheets.end(), [&](const auto& one) {
        return one.sheet == t.what.sheet && one.season == t.what.season;
    });
    if (s == g->sheets.end()) {
        s = g->sheets.insert(s, {t.what.sheet, {}, {}, t.what.season});
    }
    add_once(s->zones, t.what.zone);
    add_once(s->coats, t.what.coat);
    if (t.nearest && (!g->best || t.off < g->best->off)) {
        g->best = {k.setups[*t.nearest], t.off, t.what.coat};
    }
}

}  // namespace

void find_gaps(checked_kit& k) {
    std::vector<nothing_leaves> groups;
    for (const judged_target& t : k.targets) {
        if (t.met_by.empty()) {
            add_gap(t, k, groups);
        }
    }
    std::stable_sort(groups.begin(), groups.end(),
                     [](const auto& x, const auto& y) { return x.wanted < y.wanted; });
    for (nothing_leaves& g : groups) {
        k.say(kit_matter::gap, std::move(g));
    }
}

void find_idle(checked_kit& k) {
    std::set<std::string> blades;
    std::set<std::string> combs;
    for (const judged_target& t : k.targets) {
        for (const std::size_t s : t.met_by) {
            blades.insert(k.setups[s].tool.id);
            if (k.setups[s].over) {
                combs.insert(k.setups[s].over->id);
            }
        }
    }
    idle_tools found;
    for (const kit_blade& b : k.own().blades) {
        if (b.spec.id != k.own().under_comb && !blades.contains(b.spec.id)) {
            found.tools.push_back({{false, b.spec.id}, as_measured(b).stated.best});
        }
    }
    for (const kit_comb& c : k.own().combs) {
        if (!combs.contains(c.spec.id)) {
            found.tools.push_back({{true, c.spec.id}, as_measured(c).stated.best});
        }
    }
    if (!found.tools.empty() && !k.asked.sheets.empty()) {
        k.say(kit_matter::idle, std::move(found));
    }
}

}  // namespace pelage
