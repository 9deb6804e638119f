// The whole ladder of a kit.
#include <algorithm>
#include <tuple>

#include <pelage/kit/lookup.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "kit/lookup_where.hpp"

namespace pelage {

namespace {

bool everywhere(const lookup_request& r, const setup& s) {
    const auto& zones = r.reference.dog_body.zones;
    return std::all_of(zones.begin(), zones.end(), [&](const zone& z) {
        return z.where == group::prep || z.has(zone_use::scissors_only) ||
               allowed_as(r, s, z, asked_as::plain);
    });
}

/// The kit with everything in it at hand.
rung rung_of(const lookup_request& r, const setup& s, ladder& to) {
    rung g;
    g.how = s;
    g.leaves = cut_length(s, lay_of(r.reference, r.rules, to.coat).best, r.rules.cut);
    if (const kit_blade* b = find_blade(r.tools, s.tool.id); b != nullptr) {
        g.out = !at_hand(*b, r.today);
        g.out_until = b->out_until;
    }
    if (!r.where.empty()) {
        g.why_not = refused_there(r, s);
    }
    g.whole_coat = everywhere(r, s);
    if (!g.whole_coat) {
        where_it_may zones = places_of(r, s);
        const auto at =
            std::find_if(to.places.begin(), to.places.end(),
                         [&](const where_it_may& known) { return known.same_zones(zones); });
        g.where = static_cast<std::size_t>(at - to.places.begin());
        if (at == to.places.end()) {
            to.places.push_back(std::move(zones));
        }
    }
    return g;
}

}  // namespace

ladder whole_ladder(const lookup_request& r) {
    ladder out;
    out.coat = r.coat.value();
    std::vector<setup> all = setups_of(all_there(r.tools), r.today, r.rules.cut);
    std::erase_if(all, [&](const setup& s) {
        return s.kind != tool_kind::clip || (r.way && s.way != *r.way);
    });
    const double lay = lay_of(r.reference, r.rules, out.coat).best;
    const auto rank = [&](const setup& s) {
        const finished f = cut_length(s, lay, r.rules.cut);
        return std::tuple{in_hundredths(f.best), in_hundredths(f.high)};
    };
    std::stable_sort(all.begin(), all.end(),
                     [&](const setup& a, const setup& b) { return rank(a) < rank(b); });
    for (const setup& s : all) {
        out.rungs.push_back(rung_of(r, s, out));
    }
    out.one_way = lay_factor(lay) == 1.0;
    return out;
}

}  // namespace pelage
