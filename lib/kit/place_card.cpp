#include <algorithm>

#include <pelage/kit/place_card.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "kit/lookup_where.hpp"

namespace pelage {

namespace {

/// The kit's blades and combs, out for sharpening or not, in that direction.
std::vector<setup> clips_of(const lookup_request& r, direction way) {
    kit whole = r.tools;
    for (kit_blade& b : whole.blades) {
        b.out = false;
        b.out_until.reset();
    }
    std::vector<setup> out;
    for (const setup& s : setups_of(whole, r.today, r.rules.cut)) {
        if (s.kind == tool_kind::clip && s.way == way) {
            out.push_back(s);
        }
    }
    return out;
}

/// Why a setup never goes there: the rules, a zone's own blades, or a comb that does better.
no_go reason_against(const lookup_request& r, const setup& s, std::size_t zone) {
    lookup_request one{r};
    one.where = {{zone, side::both}};
    if (auto no = refused_there(one, s)) {
        return *no;
    }
    no_go scissors;
    scissors.rule = refusal::scissors_only;
    return scissors;
}

void add_never(zone_card& c, const no_go& why, const setup& s) {
    const auto same = std::find_if(c.never.begin(), c.never.end(),
                                   [&](const never_there& n) { return n.why.same_cause(why); });
    if (same == c.never.end()) {
        c.never.push_back({why, {s}});
    } else {
        same->tools.push_back(s);
    }
}

void add_with_the_lay(const lookup_request& r, const zone& z, zone_card& c) {
    for (const setup& s : clips_of(r, direction::with_lay)) {
        if (!goes_on(s, z)) {
            add_never(c, reason_against(r, s, c.zone), s);
        } else if (allowed_as(r, s, z, asked_as::plain)) {
            c.with.push_back(s);
        } else if (allowed_as(r, s, z, asked_as::clean)) {
            c.clean.push_back(s);
        } else if (allowed_as(r, s, z, asked_as::show)) {
            c.in_show.push_back(s);
        } else {
            add_never(c, reason_against(r, s, c.zone), s);
        }
    }
}

/// Against it only bare blades are worth a word: a comb leaves the same either way, nearly.
void add_against(const lookup_request& r, const zone& z, zone_card& c) {
    if (z.where == group::prep || z.has(zone_use::scissors_only)) {
        return;
    }
    for (const setup& s : clips_of(r, direction::against_lay)) {
        if (s.over) {
            continue;
        }
        if (allowed_as(r, s, z, asked_as::plain)) {
            c.against.push_back(s);
        } else if (allowed_as(r, s, z, asked_as::clean)) {
            c.against_clean.push_back(s);
        } else if (allowed_as(r, s, z, asked_as::pattern)) {
            c.against_pattern.push_back(s);
        }
    }
}

bool said(const place_asked& p, std::string_view id) {
    return std::any_of(p.beside.begin(), p.beside.end(),
                       [&](const term* t) { return t->id == id; });
}

/// What was asked about and isn't done in some of the places.
template <class Done>
void add_not_there(place_card& c, not_there::of what, Done done) {
    not_there n{what, {}, false};
    for (const zone_card& z : c.zones) {
        if (done(z)) {
            n.anywhere = true;
        } else {
            n.where.push_back({z.zone, side::both});
        }
    }
    if (!n.where.empty()) {
        c.no.push_back(std::move(n));
    }
}

void say_what_isnt_done(const lookup_request& r, place_card& c) {
    const auto& zones = r.reference.dog_body.zones;
    if (said(c.asked, "skip-tooth-blade")) {
        add_not_there(c, not_there::of::skip_teeth,
                      [&](const zone_card& z) { return zones[z.zone].has(zone_use::skip_teeth); });
    }
    if (said(c.asked, "de-mat") || said(c.asked, "mat-splitter")) {
        add_not_there(c, not_there::of::de_mat, [&](const zone_card& z) {
            return !zones[z.zone].has(zone_use::never_demat);
        });
    }
    if (c.asked.against) {
        add_not_there(c, not_there::of::against, [&](const zone_card& z) {
            return zones[z.zone].has(zone_use::scissors_only) ||
                   zones[z.zone].has(zone_use::pads) ||
                   !(z.against.empty() && z.against_clean.empty() && z.against_pattern.empty());
        });
    }
}

}  // namespace

place_card card_of(const lookup_request& r, const place_asked& p) {
    const term_index terms(words_of(r));
    place_card out{p, {}};
    for (const place& at : p.places) {
        if (!out.zones.empty() && out.zones.back().zone == at.zone) {
            continue;
        }
        zone_card c;
        c.zone = at.zone;
        c.words = terms.of_zone(at.zone);
        const zone& z = r.reference.dog_body.zones[at.zone];
        add_with_the_lay(r, z, c);
        add_against(r, z, c);
        out.zones.push_back(std::move(c));
    }
    say_what_isnt_done(r, out);
    return out;
}

}  // namespace pelage
