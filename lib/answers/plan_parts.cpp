#include "answers/plan_parts.hpp"

#include <algorithm>

#include <pelage/answers/owner_page.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/planner/appointment.hpp>
#include <pelage/sheets/check.hpp>

#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/words/places.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/service.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/when.hpp"
#include "planner/targets.hpp"

namespace pelage::io {

std::string because(const evidence& e, const print_options& o) {
    return o.explain ? " [" + basis_words(e) + "]" : std::string{};
}

std::vector<line> stop_lines(const groom& g, const plan_request& r, const print_options& o) {
    std::vector<line> out;
    const auto say = [&](std::string text) {
        out.push_back({line_as::caution, std::move(text), {}, 2, 2});
    };
    say("A vet sees this dog first, nothing is planned; tell the owner.");
    if (const std::string hurt = hurt_skin_words(r); !hurt.empty()) {
        say("No tool goes there: " + hurt + ".");
    }
    if (!g.stop.empty()) {
        say("felted to the skin: " + listed(titles(r.reference.dog_body, g.stop)) +
            ". A veterinarian decides how this coat comes off.");
    }
    for (const stop_sign s : g.signs) {
        const stop_rule& rule = r.reference.stops[static_cast<std::size_t>(s)];
        say(rule.seen + ". " + rule.act + because(rule.why, o));
    }
    if (!r.patient.health.empty()) {
        say("Told of its health: " + r.patient.health + ".");
    }
    return out;
}

namespace {

bool strips_by_hand(const style& s) {
    return std::any_of(s.rules.begin(), s.rules.end(),
                       [](const sheet_rule& one) { return one.what.how == finish::hand_strip; });
}

}  // namespace

namespace {

/// What isn't done at it; all of it where that isn't said. The steps below say the rest.
std::string booked_in_brief(const service& s) {
    const auto end = s.text.find(';');
    return end == std::string::npos ? ": " + s.text : s.text.substr(end);
}

}  // namespace

std::vector<line> booking_lines(const groom& g, const plan_request& r, bool brief) {
    std::vector<line> out;
    if (r.booked == nullptr) {
        return out;
    }
    const service& s = *r.booked;
    const auto say = [&](std::string text, std::string lead = {}) {
        out.push_back({line_as::paragraph, std::move(text), std::move(lead), 0, 2});
    };
    say(s.title + (brief ? booked_in_brief(s) : ": " + s.text) + ".", "Booked: ");
    const bool strips = std::any_of(g.zones.begin(), g.zones.end(), [](const zone_plan& z) {
        return z.how_finished == finish::hand_strip;
    });
    if (s.kind == service_kind::hand_strip && !strips) {
        say("The sheet strips nothing by hand: below is what it does say. Sheets for wire coats "
            "strip: pelage sheet list.");
    }
    if (s.kind == service_kind::rolling && !strips_by_hand(r.sheet)) {
        say("The sheet strips nothing by hand, and only a stripped jacket is rolled: book "
            "something "
            "else, or name the sheet that was stripped by.");
    }
    const coat& k = coat_of(r.reference, *r.patient.coat);
    if (s.has(service_step::deshed) && k.kind == cycle::growing && !stripped_by_custom(k.id)) {
        say("A " + k.title +
            " keeps growing: no undercoat comes away by itself. Bath and brush "
            "(--service bath) does what there is to do.");
    }
    if (!s.has(service_step::before_bath) && !r.patient.mats.empty()) {
        say("It carries mats, which this booking doesn't touch: offer a full groom, or a bath and "
            "brush, soon.");
    }
    return out;
}

bool sore_ear(const groom& g, const plan_request& r) {
    const auto leather = [&](const place& p) {
        return r.reference.dog_body.zones[p.zone].has(zone_use::ear_leather);
    };
    // nothing is dripped into an ear that heavy mats come off
    return told_of(r.patient, ailment_kind::ears) ||
           std::any_of(g.zones.begin(), g.zones.end(),
                       [&](const zone_plan& z) { return z.hurt && leather(z.at); }) ||
           std::any_of(g.cautions.begin(), g.cautions.end(), [&](const caution_line& c) {
               return c.what.when == caution_when::matted_ears_or_tail &&
                      std::any_of(c.where.begin(), c.where.end(), leather);
           });
}

std::string sore_limbs(const groom& g, const plan_request& r) {
    const auto hurt = [&](auto there) {
        return std::any_of(g.zones.begin(), g.zones.end(), [&](const zone_plan& z) {
            return z.hurt && there(r.reference.dog_body.zones[z.at.zone]);
        });
    };
    const bool foot =
        hurt([](const zone& z) { return z.where == group::feet || z.has(zone_use::pads); });
    const bool leg = hurt([](const zone& z) { return z.where == group::legs; });
    return foot && leg ? " on the sore feet and leg"
           : foot      ? " on the sore feet"
           : leg       ? " on the sore leg"
                       : "";
}

std::string nails_today(const groom& g, const plan_request& r) {
    if (no_foot_sound(r, g)) {
        return "no nails today: the feet are sore";
    }
    const auto foot = [&](const place& p) {
        return r.reference.dog_body.zones[p.zone].where == group::feet;
    };
    const bool hated =
        std::any_of(g.cautions.begin(), g.cautions.end(), [&](const caution_line& c) {
            return c.what.when == caution_when::sensitive_limb &&
                   std::any_of(c.where.begin(), c.where.end(), foot);
        });
    const std::string sore = sore_limbs(g, r);
    const std::string_view how =
        told_of(r.patient, ailment_kind::bleeds) ? ": only the tips, by file or grinder"
        : told_of(r.patient, ailment_kind::nail) ? ", not the broken or grown-in one: a vet's"
                                                 : "";
    return "nails" + std::string(how) + (sore.empty() ? "" : ", not" + sore) +
           (hated ? ", as far as it lets you" : "");
}

namespace {

/// Where the sheet has it done so, hurt places aside.
std::string places_of_work(finish how, const groom& g, const plan_request& r) {
    const body& b = r.reference.dog_body;
    const std::vector<sheet_place> asked = places_of(r.sheet, b, part_index(b));
    zone_list where;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        // of a visit that cuts nothing the sheet says it, not the plan
        const bool there = std::any_of(asked.begin(), asked.end(), [&](const sheet_place& p) {
            return p.at.zone == z.at.zone && p.asked.how == how;
        });
        if (there && !z.hurt) {
            where.push_back(i);
        }
    }
    return listed(place_words(g, r).by_part(where));
}

/// Where undercoat is taken out.
std::string carded_places(const groom& g, const plan_request& r) {
    return places_of_work(finish::card, g, r);
}

/// Felt on feet hides nails, webs and what lies round the toes.
bool felted_feet(const plan_request& r) {
    return std::any_of(r.patient.mats.begin(), r.patient.mats.end(), [&](const mat_finding& m) {
        const zone& z = r.reference.dog_body.zones[m.at.zone];
        return m.grade != mat_grade::tangle && (z.where == group::feet || z.has(zone_use::pads));
    });
}

std::string over_places(const std::string& where) {
    return where.empty() ? "" : " over " + where;
}

}  // namespace

std::vector<line> booked_steps(const groom& g, const plan_request& r) {
    std::vector<line> out;
    if (!booked_in_part(r)) {
        return out;
    }
    const bool bath_told = g.after > work{};
    for (const auto& [booked, done] : steps_today(r, *r.booked)) {
        if ((booked == service_step::bath && bath_told) ||
            (booked == service_step::ears && sore_ear(g, r))) {
            continue;
        }
        if (done != booked) {
            out.push_back(item(no_bath_in_brief(r)));
        }
        std::string text = step_work_words(done);
        const std::string& rake = coat_of(r.reference, *r.patient.coat).carded_with;
        if (done == service_step::deshed && !rake.empty()) {
            const std::string where = carded_places(g, r);
            text = rake + over_places(where) + ": " + text;
        }
        if (done == service_step::roll) {
            const std::string where = places_of_work(finish::hand_strip, g, r);
            text = "by hand: " + (where.empty() ? "the jacket" : where) + ": " + text;
        }
        if (done == service_step::nails && !sore_limbs(g, r).empty()) {
            text = no_foot_sound(r, g) ? nails_today(g, r) : text + "; not" + sore_limbs(g, r);
        } else if (done == service_step::nails && felted_feet(r)) {
            text =
                "nails: only those seen and felt free of the mat; a grown-in one, a hair band: "
                "leave it, a veterinarian today";
        }
        if (done == service_step::bath) {
            text += gently_words(r);
        }
        if (!text.empty()) {
            out.push_back(item(std::move(text)));
        }
        if (done == service_step::bath && r.patient.shedding && !rake.empty() &&
            !r.booked->has(service_step::deshed)) {
            out.push_back(item(rake + over_places(carded_places(g, r)) + ": loose hair out"));
        }
    }
    return out;
}

bool left_for_its_length(const zone_plan& z) {
    return z.came == outcome::hair_shorter && !z.tidied;
}

std::string_view no_day_yet(const groom& g) {
    return g.bath_waits() ? "once what stopped it is mended; the day is worked out then"
           : in_visits(g) ? "the next visit when the vet agrees; the day after that is "
                            "worked out then"
                          : "";
}

std::vector<line> left_lines(const groom& g, const plan_request& r, length_unit u, bool by_length) {
    const place_words places(g, r);
    grouped<std::string> by_reason;
    zone_list by_sheet;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        const bool sheet = z.came == outcome::left_by_sheet;
        if (z.came == outcome::skin_left || (by_length && left_for_its_length(z)) ||
            (sheet && (z.withheld || z.why.what == cause::teats))) {
            by_reason.add(cause_words(r, z, u), i);
        } else if (sheet && booked_does(r, z.at.zone)) {
            by_sheet.push_back(i);
        }
    }
    std::vector<line> out;
    for (const auto& [why, which] : by_reason.all()) {
        out.push_back(item(places.listed_of(which) + ": " + why));
        const bool hurt = g.zones[which.front()].came == outcome::skin_left;
        out.back().as = hurt ? line_as::caution : line_as::item;
    }
    if (!by_sheet.empty()) {
        out.push_back(item(places.listed_of(by_sheet), "as the sheet says: "));
    }
    if (booked_in_part(r)) {
        out.push_back(item(std::string(not_booked)));
    }
    return out;
}

std::string broken_up(const groom& g, const plan_request& r, const work& whole) {
    if (in_visits(g)) {
        return " in two visits or more";
    }
    if (whole <= r.rules.refusal.one_go.best) {
        return "";
    }
    constexpr std::ptrdiff_t much =
        5;  // places: our choice; that so long a pull at the skin needs rests is common practice
    const auto felted = std::count_if(g.zones.begin(), g.zones.end(), [](const zone_plan& z) {
        return z.mat && *z.mat == mat_grade::pelt && !z.combed_out;
    });
    // twice as long as a dog that bears less goes on for: our choice, too
    const bool long_one = whole > r.rules.refusal.one_go.best + r.rules.refusal.one_go.best;
    return bears_less(r.patient)        ? ", in two or three goes"
           : felted >= much || long_one ? ", with rests"
                                        : "";
}

namespace {

bool longer_than_asked(const zone_plan& z) {
    return z.came == outcome::off_target && z.leaves && z.target &&
           z.leaves->best > *z.target + z.tolerated;
}

/// "body and legs 4.6 mm longer than asked: agreed?", of a jacket most of which is; nothing where it is signed for.
std::string longer_words(const groom& g, const plan_request& r, length_unit u) {
    std::size_t jacket = 0;
    std::size_t so = 0;
    grouped<std::string> by;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        const bool of_jacket = r.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
        jacket += of_jacket ? 1 : 0;
        so += of_jacket && longer_than_asked(z) ? 1 : 0;
        if (longer_than_asked(z)) {
            by.add(missed_in_brief(z, u), i);
        }
    }
    if (2 * so <= jacket || owner_chooses(g)) {
        return {};
    }
    std::vector<std::string> all;
    const place_words places(g, r);
    for (const auto& [missed, where] : by.all()) {
        all.push_back(listed(places.by_part(where)) + " " + missed);
    }
    return joined(all, "; ") + ": agreed?";
}

}  // namespace

std::vector<line> ask_lines(const groom& g, const plan_request& r, length_unit u,
                            bool choices_told) {
    std::vector<line> out;
    for (const uneven_pair& one : g.asks) {
        if (one.hurt || !choices_told) {
            out.push_back(item(
                ask_words(one, r.reference.dog_body, coat_of(r.reference, *r.patient.coat), u)));
        }
    }
    if (std::string longer = longer_words(g, r, u); !longer.empty()) {
        out.push_back(item(std::move(longer)));
    }
    return out;
}

std::string not_clipped_as_a_rule(const groom& g, const plan_request& r) {
    const coat& c = coat_of(r.reference, *r.patient.coat);
    const bool clipped = std::any_of(g.zones.begin(), g.zones.end(), [&](const zone_plan& z) {
        return z.how.kind == tool_kind::clip && !z.mat &&
               r.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
    });
    const bool told = clipped && c.jacket == jacket_finish::card && !double_coated(c.id);
    return told ? c.said_first : std::string{};
}

}  // namespace pelage::io
