// A kit checked: how well its lengths are known, and what else is remarked on its blades and combs.
#include <algorithm>
#include <set>

#include "kit/check_parts.hpp"

namespace pelage {

namespace {

/// Blades that clip more than the prep zones and have no second to swap in.
void no_second(checked_kit& k) {
    std::set<std::string> clips;
    for (const judged_target& t : k.targets) {
        const bool prep = k.asked.reference.dog_body.zones[t.what.zone].where == group::prep;
        for (const std::size_t s : t.met_by) {
            if (!prep && !skips(k.setups[s].tool)) {
                clips.insert(k.setups[s].tool.id);
            }
        }
    }
    single_blades found;
    for (const kit_blade& b : k.own().blades) {
        if (b.count == 1 && b.spec.shape != edge::adjustable && clips.contains(b.spec.id)) {
            found.blades.push_back(b.spec.id);
        }
    }
    if (!found.blades.empty()) {
        k.say(kit_matter::remark, std::move(found));
    }
}

void too_many_at_tables(checked_kit& k) {
    const auto look = [&](const kit_tool& tool, int count,
                          std::vector<std::string> table_drawer::*list) {
        int lying = 0;
        for (const table_drawer& t : k.own().tables) {
            const auto& all = t.*list;
            lying += static_cast<int>(std::count(all.begin(), all.end(), tool.id));
        }
        if (lying > count) {
            k.say(kit_matter::remark, more_than_there_are{tool, lying, count});
        }
    };
    for (const kit_blade& b : k.own().blades) {
        look({false, b.spec.id}, b.count, &table_drawer::blades);
    }
    for (const kit_comb& c : k.own().combs) {
        look({true, c.spec.id}, c.count, &table_drawer::combs);
    }
}

}  // namespace

void find_guessed(checked_kit& k) {
    guessed_lengths found;
    const auto look = [&](kit_tool tool, const figure<length>& stated, bool measured) {
        const basis how = stated.why.how;
        if (!measured && (how == basis::memory || how == basis::assumption)) {
            found.tools.push_back({std::move(tool), how});
        }
    };
    for (const kit_blade& b : k.own().blades) {
        look({false, b.spec.id}, b.spec.stated, b.measured || !b.settings.empty());
    }
    for (const kit_comb& c : k.own().combs) {
        look({true, c.spec.id}, c.spec.stated, c.measured.has_value());
    }
    if (!found.tools.empty()) {
        k.say(kit_matter::no_basis, std::move(found));
    }
}

void find_remarks(checked_kit& k) {
    for (const kit_blade& b : k.own().blades) {
        if (b.measured && (*b.measured < b.spec.stated.low || *b.measured > b.spec.stated.high)) {
            k.say(kit_matter::remark,
                  measured_elsewhere{b.spec.id, *b.measured, b.spec.stated.best});
        }
        if (b.spec.shape == edge::adjustable && b.settings.empty()) {
            k.say(kit_matter::remark, lever_without_marks{b.spec.id});
        }
    }
    find_look_alikes(k);
    no_second(k);
    too_many_at_tables(k);
}

}  // namespace pelage
