#include "kit/lookup_where.hpp"

#include <algorithm>
#include <cstdint>

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

/// Where a setup may be used in the places asked about though not as they come.
use_there::exception exception_there(const lookup_request& r, const setup& s) {
    const auto everywhere = [&](asked_as how) {
        return std::all_of(r.where.begin(), r.where.end(), [&](const place& p) {
            const zone& z = r.reference.dog_body.zones[p.zone];
            return z.where != group::prep && allowed_as(r, s, z, how);
        });
    };
    if (everywhere(asked_as::clean)) {
        return use_there::exception::clean;
    }
    if (everywhere(asked_as::show)) {
        return use_there::exception::in_show;
    }
    return everywhere(asked_as::pattern) ? use_there::exception::pattern
                                         : use_there::exception::none;
}

/// The same of a setup as it is turned: so, only where a style asks for it, or not at all.
use_there judged_one_way(const lookup_request& r, const setup& s) {
    const auto no = refused_there(r, s);
    if (!no) {
        return {use_there::may::so, {}};
    }
    const use_there::exception but = exception_there(r, s);
    return {
        but == use_there::exception::none ? use_there::may::not_at_all : use_there::may::by_style,
        no, but};
}

/// Whether it may be used in the places of `r`, either way over the coat.
use_there judged_in(const lookup_request& r, const setup& s) {
    use_there out = judged_one_way(r, turned(s, r.way.value_or(direction::with_lay)));
    if (r.way || out.use == use_there::may::not_at_all) {
        return out;
    }
    const setup against = turned(s, direction::against_lay);
    const use_there::exception but = exception_there(r, against);
    if (out.use == use_there::may::by_style) {
        out.against = but != use_there::exception::none;
        return out;
    }
    const auto no = refused_there(r, against);
    return {no ? use_there::may::with_lay_only : use_there::may::both_ways, no, but};
}

}  // namespace

setup turned(setup s, direction d) {
    s.way = d;
    return s;
}

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

std::optional<use_there> judged_there(const lookup_request& r, const setup& s) {
    if (r.where.empty()) {
        return std::nullopt;
    }
    lookup_request clipped{r};
    std::vector<place> scissored;
    std::erase_if(clipped.where, [&](const place& p) {
        const bool no = r.reference.dog_body.zones[p.zone].has(zone_use::scissors_only);
        if (no) {
            scissored.push_back(p);
        }
        return no;
    });
    if (clipped.where.empty()) {
        no_go no;
        no.rule = refusal::scissors_only;
        no.where = scissored;
        return use_there{use_there::may::not_at_all, no};
    }
    use_there out = judged_in(clipped, s);
    out.scissored = std::move(scissored);
    return out;
}

}  // namespace pelage
