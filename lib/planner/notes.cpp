#include "planner/notes.hpp"

#include <algorithm>

#include "planner/candidates.hpp"
#include "planner/targets.hpp"

namespace pelage {

namespace {

void note(groom& g, plan_note::kind what) {
    g.notes.push_back({what, {}, {}, {}});
}

/// What is kept longer than any but daily brushing holds.
void add_long_note(const plan_request& r, groom& g) {
    const coat& c = coat_of(r.reference, r.patient.coat.value());
    const length most = r.rules.matting.daily_only_above.best;
    if (!mats_by_length(c) || counted(r.patient.brushed) == habit::daily) {
        return;
    }
    plan_note n{plan_note::kind::daily_only, {}, {}, {}};
    for (const zone_plan& z : g.zones) {
        if (z.leaves && z.leaves->best > most) {
            n.places.push_back(z.at);
        }
    }
    if (!n.places.empty()) {
        g.notes.push_back(std::move(n));
    }
}

/// Whether scissors may take a place down to that length today.
bool may_scissor_to(const plan_request& r, zone_plan z, const length& to) {
    z.target = to;
    z.aim =
        longer(to, scissors_leave_at_least(r.reference.dog_body.zones[z.at.zone], r.rules.refusal));
    z.tolerated =
        tolerance(to, r.reference.dog_body.zones[z.at.zone].where == group::head, r.rules.prices);
    z.how_finished = finish::scissor;
    z.tidied = false;
    const zone_situation at(r, coat_of(r.reference, r.patient.coat.value()), z, z.combed_out);
    return cell_for(at, by_hand(tool_kind::scissors), {}, true).allowed();
}

/// Left alone since it belongs to a place that hurts: that one is asked about.
bool goes_with_another(const zone_plan& left, const zone_plan& right) {
    return left.edge_of_hurt || right.edge_of_hurt;
}

std::optional<length> best(const zone_plan& z) {
    return z.leaves ? std::optional{z.leaves->best} : std::nullopt;
}

/// One side is cut, and of the other, sore one nobody knows how long it stays.
bool one_stays_for_its_skin(const zone_plan& left, const zone_plan& right) {
    const auto stays = [](const zone_plan& z) { return z.hurt && !z.edge_of_hurt && !z.leaves; };
    const auto cut = [](const zone_plan& z) { return !z.hurt && z.leaves && z.target; };
    return (stays(left) && cut(right)) || (stays(right) && cut(left));
}

/// Left and right of a pair that come out visibly different; for a mat only once its clipping is agreed
/// to: until then that choice stands among the other ways.
void add_uneven_note(const plan_request& r, groom& g) {
    const bool mats_agreed =
        std::any_of(g.consents.begin(), g.consents.end(),
                    [](const consent& c) { return c.what == consent_for::mats_off && c.given; });
    for (std::size_t i = 0; i + 1 < g.zones.size(); ++i) {
        const zone_plan& left = g.zones[i];
        const zone_plan& right = g.zones[i + 1];
        const std::string& inner = r.reference.dog_body.zones[left.at.zone].edge_of;
        const bool with_inner =
            std::any_of(g.asks.begin(), g.asks.end(), [&](const uneven_pair& a) {
                return !inner.empty() && r.reference.dog_body.zones[a.zone].id == inner;
            });
        const bool pair =
            left.at.zone == right.at.zone && left.at.which == side::left && !with_inner;
        const bool by_mat = left.beside_mat || right.beside_mat ||
                            left.came == outcome::goes_along || right.came == outcome::goes_along;
        if (pair && one_stays_for_its_skin(left, right)) {
            g.asks.push_back({left.at.zone, best(left), best(right), true});
        } else if (pair && (!by_mat || mats_agreed) && left.leaves && right.leaves &&
                   gap(left.leaves->best, right.leaves->best) >
                       r.rules.prices.seam_allowance.best) {
            const bool hurt = left.hurt.has_value() || right.hurt.has_value();
            const uneven_pair both{left.at.zone, left.leaves->best, right.leaves->best, hurt};
            const bool left_longer = left.leaves->best > right.leaves->best;
            const bool alike = may_scissor_to(r, left_longer ? left : right,
                                              shorter(left.leaves->best, right.leaves->best));
            if (hurt ? !goes_with_another(left, right) : alike) {
                g.asks.push_back(both);
            } else if (!hurt) {
                g.notes.push_back({plan_note::kind::uneven, {}, {}, both});
            }
        }
    }
}

/// Neighbours whose direction the sheet leaves open and that still go opposite ways: no one way may be
/// used on both.
void add_tracks_note(const plan_request& r, groom& g) {
    const body& b = r.reference.dog_body;
    std::vector<const zone_plan*> with;
    std::vector<const zone_plan*> against;
    for (const zone_plan& z : g.zones) {
        if (z.way == lay_choice::either && z.how.kind == tool_kind::clip && z.target &&
            (!z.mat || z.combed_out) && z.came != outcome::stuck) {
            (z.how.way == direction::with_lay ? with : against).push_back(&z);
        }
    }
    plan_note n{plan_note::kind::tracks, {}, {}, {}};
    const auto meet = [&](const zone_plan& x, const zone_plan& y, const seam& s) {
        const bool here =
            (x.at.zone == s.a && y.at.zone == s.b) || (x.at.zone == s.b && y.at.zone == s.a);
        return here && b.zones[s.a].where == b.zones[s.b].where &&
               share_side({y.at.zone, x.at.which}, y.at);
    };
    for (const seam& s : with.empty() || against.empty() ? std::vector<seam>{} : b.seams) {
        for (const zone_plan* x : with) {
            for (const zone_plan* y : against) {
                if (meet(*x, *y, s)) {
                    n.pairs.push_back({x->at, y->at});
                }
            }
        }
    }
    if (!n.pairs.empty()) {
        g.notes.push_back(std::move(n));
    }
}

/// When a stripped jacket is due again, which no date of the plan reckons with.
void add_strip_note(groom& g) {
    const bool stripped = std::any_of(g.zones.begin(), g.zones.end(), [](const zone_plan& z) {
        return z.how.kind == tool_kind::fingers;
    });
    if (stripped && !g.stopped()) {
        note(g, plan_note::kind::strip_again);
    }
}

}  // namespace

void add_notes(const plan_request& r, bool made_for_another_coat, groom& g) {
    using kind = plan_note::kind;
    if (made_for_another_coat) {
        note(g, kind::other_coat);
    }
    const bool unknown = std::any_of(g.zones.begin(), g.zones.end(), [](const zone_plan& z) {
        return !z.now && z.target && !z.hurt && z.came != outcome::stuck;
    });
    if (unknown) {
        note(g, kind::hair_unknown);
    }
    if (!r.patient.by_record.empty()) {
        note(g, kind::hair_by_record);
    }
    if (!r.patient.dealt.empty()) {
        note(g, kind::mats_dealt);
    }
    if (!r.patient.undated.empty()) {
        note(g, kind::mats_undated);
    }
    if (r.sheet.adjustable && !r.length_wish && !r.patient.body_length) {
        note(g, kind::own_length);
    }
    if (!r.patient.health.empty()) {
        note(g, kind::health);
    }
    if (bears_less(r.patient) && !r.patient.mats.empty()) {
        note(g, kind::less_combing);
    }
    if (!r.patient.brushing_said) {
        note(g, r.patient.upkeep_assumed ? kind::brushing_by_sheet : kind::brushing_none);
    }
    add_strip_note(g);
    add_long_note(r, g);
    add_uneven_note(r, g);
    add_tracks_note(r, g);
    if (std::any_of(g.zones.begin(), g.zones.end(), mat_clipped_off)) {
        note(g, kind::combing_order);
    }
}

}  // namespace pelage
