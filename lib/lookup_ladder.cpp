// Where setups may be used, and the whole ladder of a kit.
#include <algorithm>
#include <tuple>

#include <pelage/lookup.hpp>
#include <pelage/phrase.hpp>
#include <pelage/text.hpp>
#include <pelage/worktop.hpp>

#include "lookup_where.hpp"

namespace pelage {

namespace {

/// How a sheet may ask for a zone: as it comes, clean, clean in show finish, or of a pattern breed.
enum class asked_as { plain, clean, show, pattern };

bool allowed(const lookup_request& r, const setup& s, const zone& z, asked_as how) {
    zone_today t;
    t.where = &z;
    t.clean = how == asked_as::clean || how == asked_as::show;
    t.show = how == asked_as::show;
    t.pattern = how == asked_as::pattern;
    return !refuse(s, t, r.rules.refusal, r.rules.cut).has_value();
}

/// Whether the zone is one that a blade or comb is taken to at all: prep zones have their own list.
bool goes_on(const setup& s, const zone& z) {
    if (z.where != group::prep) {
        return !z.has(zone_use::scissors_only);
    }
    return !s.over && s.way == direction::with_lay &&
           std::find(z.prep_blades.begin(), z.prep_blades.end(), s.tool.id) != z.prep_blades.end();
}

/// The titles of the zones in which it is allowed, asked for in that way and in no earlier one.
std::vector<std::string> allowed_in(const lookup_request& r, const setup& s, asked_as how) {
    std::vector<std::string> out;
    for (const zone& z : r.reference.dog_body.zones) {
        bool before = false;
        for (int h = 0; h < static_cast<int>(how); ++h) {
            before = before || allowed(r, s, z, static_cast<asked_as>(h));
        }
        if (goes_on(s, z) && !before && allowed(r, s, z, how)) {
            out.push_back(z.title);
        }
    }
    return out;
}

/// Where a setup that may not go everywhere may go.
std::string places_of(const lookup_request& r, const setup& s) {
    if (!s.over && skips(s.tool)) {
        return "firm, flat skin: " + joined(allowed_in(r, s, asked_as::plain), ", ") +
               "; not on old or thin-skinned dogs";
    }
    std::string out = joined(allowed_in(r, s, asked_as::plain), ", ");
    const auto add = [&](asked_as how, const char* words) {
        const std::string more = joined(allowed_in(r, s, how), ", ");
        if (!more.empty()) {
            out += (out.empty() ? "" : "; ") + std::string(words) + more;
        }
    };
    add(asked_as::clean, "where the sheet asks for clean face or feet: ");
    add(asked_as::show, "in show finish with the owner's consent: ");
    add(asked_as::pattern, "of pattern breeds: ");
    if (out.empty()) {
        return "nowhere: " + refused_there(r, s);
    }
    return out;
}

bool everywhere(const lookup_request& r, const setup& s) {
    const auto& zones = r.reference.dog_body.zones;
    return std::all_of(zones.begin(), zones.end(), [&](const zone& z) {
        return z.where == group::prep || z.has(zone_use::scissors_only) ||
               allowed(r, s, z, asked_as::plain);
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
std::string refused_in(const lookup_request& r, const setup& s, const zone& z) {
    zone_today t;
    t.where = &z;
    if (const auto no = refuse(s, t, r.rules.refusal, r.rules.cut)) {
        return std::string(reason(*no));
    }
    const auto& customary = z.prep_blades;
    const bool usual =
        customary.empty() ||
        (!s.over && std::find(customary.begin(), customary.end(), s.tool.id) != customary.end());
    if (!usual) {
        return "customary there: blade " + one_of(customary);
    }
    const bool turned = !customary.empty() && s.way == direction::against_lay;
    return turned ? "customary there: with the lay" : std::string{};
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
        const std::string words = places_of(r, s);
        const auto at = std::find(to.places.begin(), to.places.end(), words);
        g.where = static_cast<std::size_t>(at - to.places.begin());
        if (at == to.places.end()) {
            to.places.push_back(words);
        }
    }
    return g;
}

}  // namespace

no_go refusal_there(const lookup_request& r, const setup& s) {
    zone firm;  // without a zone: the firm, flat parts of the coat
    firm.uses = static_cast<std::uint32_t>(zone_use::skip_teeth);
    if (r.where.empty()) {
        return {{}, refused_in(r, s, firm)};
    }
    no_go out;
    for (const place& p : r.where) {
        const std::string no = refused_in(r, s, r.reference.dog_body.zones[p.zone]);
        out.why = out.why.empty() ? no : out.why;
        if (!no.empty() && no == out.why) {
            out.where.push_back(p);
        }
    }
    return out;
}

std::string refused_there(const lookup_request& r, const setup& s) {
    const no_go no = refusal_there(r, s);
    return no.where.size() == r.where.size() ? no.why
                                             : listed(titles(r.reference.dog_body, no.where)) +
                                                   (no.why.empty() ? "" : ": ") + no.why;
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
