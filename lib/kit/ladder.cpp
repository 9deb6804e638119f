// Where setups may be used, and the whole ladder of a kit.
#include <algorithm>
#include <tuple>

#include <pelage/kit/lookup.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "kit/lookup_where.hpp"

namespace pelage {

namespace {

/// The zones in which it is allowed, asked for in that way and in no earlier one.
std::vector<std::size_t> allowed_in(const lookup_request& r, const setup& s, asked_as how) {
    std::vector<std::size_t> out;
    const auto& zones = r.reference.dog_body.zones;
    for (std::size_t i = 0; i < zones.size(); ++i) {
        bool before = false;
        for (int h = 0; h < static_cast<int>(how); ++h) {
            before = before || allowed_as(r, s, zones[i], static_cast<asked_as>(h));
        }
        if (goes_on(s, zones[i]) && !before && allowed_as(r, s, zones[i], how)) {
            out.push_back(i);
        }
    }
    return out;
}

bool everywhere(const lookup_request& r, const setup& s) {
    const auto& zones = r.reference.dog_body.zones;
    return std::all_of(zones.begin(), zones.end(), [&](const zone& z) {
        return z.where == group::prep || z.has(zone_use::scissors_only) ||
               allowed_as(r, s, z, asked_as::plain);
    });
}

/// The kit with everything in it at hand.
kit all_there(kit k) {
    for (kit_blade& b : k.blades) {
        b.out = false;
        b.out_until.reset();
    }
    return k;
}

/// Why a setup may not be used in a zone, on a dog with no findings.
std::optional<no_go> refused_in(const lookup_request& r, const setup& s, const zone& z) {
    zone_today t;
    t.where = &z;
    if (const auto no = refuse(s, t, r.rules.refusal, r.rules.cut)) {
        return no_go{no_go::cause::rule, *no, {}, {}, true};
    }
    const auto& customary = z.prep_blades;
    const bool usual =
        customary.empty() ||
        (!s.over && std::find(customary.begin(), customary.end(), s.tool.id) != customary.end());
    if (!usual) {
        return no_go{no_go::cause::not_customary, {}, customary, {}, true};
    }
    const bool turned = !customary.empty() && s.way == direction::against_lay;
    return turned ? std::optional{no_go{no_go::cause::only_with_lay, {}, {}, {}, true}}
                  : std::nullopt;
}

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

bool allowed_as(const lookup_request& r, const setup& s, const zone& z, asked_as how) {
    zone_today t;
    t.where = &z;
    t.clean = how == asked_as::clean || how == asked_as::show;
    t.show = how == asked_as::show;
    t.pattern = how == asked_as::pattern;
    return !refuse(s, t, r.rules.refusal, r.rules.cut).has_value();
}

where_it_may places_of(const lookup_request& r, const setup& s) {
    where_it_may out;
    out.firm_skin_only = !s.over && skips(s.tool);
    out.always = allowed_in(r, s, asked_as::plain);
    if (out.firm_skin_only) {
        return out;
    }
    out.clean = allowed_in(r, s, asked_as::clean);
    out.in_show = allowed_in(r, s, asked_as::show);
    out.pattern = allowed_in(r, s, asked_as::pattern);
    if (out.always.empty() && out.clean.empty() && out.in_show.empty() && out.pattern.empty()) {
        out.nowhere = refused_there(r, s);
    }
    return out;
}

bool goes_on(const setup& s, const zone& z) {
    if (z.where != group::prep) {
        return !z.has(zone_use::scissors_only);
    }
    return !s.over && s.way == direction::with_lay &&
           std::find(z.prep_blades.begin(), z.prep_blades.end(), s.tool.id) != z.prep_blades.end();
}

std::optional<no_go> refused_there(const lookup_request& r, const setup& s) {
    zone firm;  // without a zone: the firm, flat parts of the coat
    firm.uses = static_cast<std::uint32_t>(zone_use::skip_teeth);
    if (r.where.empty()) {
        return refused_in(r, s, firm);
    }
    std::optional<no_go> out;
    for (const place& p : r.where) {
        const auto no = refused_in(r, s, r.reference.dog_body.zones[p.zone]);
        if (!out) {
            out = no;
        }
        if (no && no->same_cause(*out)) {
            out->where.push_back(p);
        }
    }
    if (out) {
        out->everywhere = out->where.size() == r.where.size();
    }
    return out;
}

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
