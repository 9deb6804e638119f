// What of a plan is pictured.
#include <algorithm>

#include <pelage/answers/picture.hpp>
#include <pelage/base/error.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/trade/place_words.hpp>

#include "answers/blends_alike.hpp"
#include "answers/card_today.hpp"
#include "answers/plan_parts.hpp"

namespace pelage::io {

namespace {

/// The id of the breed it is of; empty where that is unknown or it is of several.
std::string breed_of(const dog& d, const reference_data& c) {
    if (d.mix.empty()) {
        return {};
    }
    try {
        const mix m = read_mix(d.mix, c.genes);
        return m.dog.depth == 0 && m.dog.from.size() == 1 ? c.genes.breeds[m.dog.from[0].breed].id
                                                          : "";
    } catch (const bad_input&) {
        return {};
    }
}

shown_as shown_of(const zone_plan& z) {
    switch (z.came) {
        case outcome::skin_left:
            return shown_as::skin;
        case outcome::stuck:
            return shown_as::not_done;
        case outcome::left_by_sheet:
            return shown_as::left;
        case outcome::hair_shorter:
            if (!z.tidied) {
                return shown_as::left;
            }
            break;
        case outcome::as_wished:
        case outcome::off_target:
        case outcome::beyond_reach:
        case outcome::clipped_under:
        case outcome::goes_along:
        case outcome::taken_down:
            break;
    }
    return z.how.kind == tool_kind::carder    ? shown_as::carded
           : z.how.kind == tool_kind::fingers ? shown_as::stripped
           : z.leaves                         ? shown_as::cut
                                              : shown_as::left;
}

pictured_place place_of(const zone_plan& z) {
    pictured_place p;
    p.at = z.at;
    p.as = shown_of(z);
    if (p.as == shown_as::cut) {
        p.leaves = z.leaves->best;
        p.noted = !z.note.empty() && z.came != outcome::goes_along;  // "upper third", "tip left"
        if (z.how.kind == tool_kind::clip && z.around.empty() && z.beside_hurt.empty()) {
            p.stroke =
                z.how
                    .way;  // no arrow leads across what is gone around, or to an edge that is kept off
        }
    }
    if (p.as == shown_as::carded) {
        p.carded_with = z.how.called;
    }
    p.mat = z.mat;
    p.beside_sore = z.beside_hurt;
    if (!z.around.empty()) {
        p.round = z.around.front().state;
    }
    p.combed_out = z.combed_out;
    p.clipped_off = mat_clipped_off(z);
    return p;
}

/// Both sides of what is paired and said without one.
void add_sides(const pictured_place& p, const body& b, std::vector<pictured_place>& to) {
    if (b.zones[p.at.zone].paired && p.at.which == side::both) {
        for (const side s : {side::left, side::right}) {
            to.push_back(p);
            to.back().at.which = s;
        }
    } else {
        to.push_back(p);
    }
}

/// That place, drawn.
pictured_place& drawn_at(const place& at, std::vector<pictured_place>& all) {
    const auto one =
        std::find_if(all.begin(), all.end(), [&](const pictured_place& p) { return p.at == at; });
    return one != all.end() ? *one : all.emplace_back(pictured_place{at});
}

/// What was found on it, told of all its sides.
template <class Tell>
void tell_found(const place& at, const body& b, std::vector<pictured_place>& to, Tell tell) {
    if (b.zones[at.zone].paired && at.which == side::both) {
        tell(drawn_at({at.zone, side::left}, to));
        tell(drawn_at({at.zone, side::right}, to));
    } else {
        tell(drawn_at(at, to));
    }
}

/// A veterinarian's or its owner's; of the rest what was found, and nothing that would be done.
std::vector<pictured_place> unplanned(const groom& g, const dog& patient, const body& b) {
    std::vector<pictured_place> out;
    for (const place& p : g.stop) {
        add_sides({p, shown_as::vet, {}, {}, false, false, {}}, b, out);
    }
    for (const std::size_t i : g.question ? g.question->asked : std::vector<std::size_t>{}) {
        add_sides({g.zones[i].at, shown_as::ask, {}, {}, false, false, {}}, b, out);
    }
    for (const mat_finding& m : patient.mats) {
        tell_found(m.at, b, out, [&](pictured_place& p) { p.mat = m.grade; });
    }
    for (const skin_finding& f : patient.skin) {
        const bool round = f.state == skin_state::lump || f.state == skin_state::scab;
        tell_found(f.at, b, out, [&](pictured_place& p) {
            if (round) {
                p.round = f.state;
            } else if (p.as == shown_as::unsaid) {
                p.as = shown_as::skin;
            }
        });
    }
    return out;
}

const zone_plan* plan_at(const groom& g, std::size_t zone, side which) {
    const auto z = std::find_if(g.zones.begin(), g.zones.end(), [&](const zone_plan& one) {
        return one.at.zone == zone && (one.at.which == which || one.at.which == side::both);
    });
    return z == g.zones.end() ? nullptr : &*z;
}

/// That place as it is drawn on a side: what isn't paired is the same on both.
place drawn_on(const place& at, side which, const body& b) {
    return b.zones[at.zone].paired && at.which == side::both ? place{at.zone, which} : at;
}

std::vector<pictured_seam> seams_of(const groom& g, const plan_request& r) {
    const body& b = r.reference.dog_body;
    std::vector<pictured_seam> out;
    const auto add = [&](const place& one, const place& other, bool blended) {
        for (const side which : {side::left, side::right}) {
            out.push_back({drawn_on(one, which, b), drawn_on(other, which, b), blended});
        }
    };
    for (const blend& one : g.blends) {
        if (told(one, g, r)) {
            add(g.zones[one.from].at, g.zones[one.into].at, true);
        }
    }
    for (const seam& s : b.seams) {
        for (const side which : {side::left, side::right}) {
            const zone_plan* one = plan_at(g, s.a, which);
            const zone_plan* other = plan_at(g, s.b, which);
            const bool differ =
                one != nullptr && other != nullptr && one->leaves && other->leaves &&
                in_hundredths(one->leaves->best) != in_hundredths(other->leaves->best);
            if (s.kind == seam_kind::line && differ) {
                out.push_back({drawn_on(one->at, which, b), drawn_on(other->at, which, b), false});
            }
        }
    }
    return out;
}

std::size_t pads_of(const body& b) {
    const auto pads = std::find_if(b.zones.begin(), b.zones.end(),
                                   [](const zone& z) { return z.has(zone_use::pads); });
    return static_cast<std::size_t>(pads - b.zones.begin());
}

/// Places the dog hates to have touched; nothing is done at those left alone.
void add_tender(const plan_request& r, std::vector<pictured_place>& to) {
    if (r.patient.sensitive.empty()) {
        return;
    }
    std::optional<part_index> own;
    const body& b = r.reference.dog_body;
    const part_index& parts = r.top != nullptr ? r.top->parts() : own.emplace(b);
    for (const std::string& word : r.patient.sensitive) {
        const selection* meant = parts.find(word);
        for (const place& at : meant != nullptr ? meant->places : std::vector<place>{}) {
            const auto tender = [](pictured_place& p) { p.tender = true; };
            tell_found(at, b, to, tender);
            // who can't touch the feet can't scoop the pads
            if (b.zones[at.zone].where == group::feet) {
                tell_found({pads_of(b), at.which}, b, to, tender);
            }
        }
    }
}

}  // namespace

picture_request picture_of(const groom& g, const plan_request& r, const outline& o, length_unit u) {
    picture_request p;
    const zone_list later = g.planned() ? done_another_day(g) : zone_list{};
    p.when = later.empty() ? "" : "white: another day";
    p.title = (r.patient.name.empty() ? "A dog" : r.patient.name) + ": " + r.sheet.title +
              (p.when.empty() ? "" : "; " + p.when);
    p.alerts = titles(r.patient.alerts);
    const std::string breed = breed_of(r.patient, r.reference);
    p.look = look_of(o, breed);
    p.units = u;
    const body& b = r.reference.dog_body;
    p.stop = g.stopped() ? "STOP: a veterinarian sees this dog first" : "";
    if (!g.planned()) {
        p.places = unplanned(g, r.patient, b);
        return p;
    }
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        pictured_place one = place_of(g.zones[i]);
        one.later = std::find(later.begin(), later.end(), i) != later.end();
        one.stroke = one.later ? std::nullopt : one.stroke;
        add_sides(one, b, p.places);
    }
    add_tender(r, p.places);
    if (later.empty()) {
        p.seams = seams_of(g, r);  // otherwise nothing is blended today
    }
    return p;
}

}  // namespace pelage::io
