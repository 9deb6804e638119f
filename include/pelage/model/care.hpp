// How a dog is spared: how long it is combed out, what is done where its skin shows something, whether it is
// bathed. What no tool may do is in model/refusal.hpp.
#pragma once

#include <algorithm>
#include <string>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// The figures of the refusals (reference/refusal.toml).
struct refusal_rules {
    figure<double> under_mat_share;    ///< stated length at most this share of the free hair
    figure<length> under_mat_longest;  ///< and never longer than this under a mat
    figure<length>
        safe_blade;  ///< stated length of blade 10, the one to try where depth isn't known;
                     ///< `high`: the longest a 10 is made
    figure<length> scissor_thin;   ///< scissors leave no less than this over thin or folded skin
    figure<length> scissor_least;  ///< nor less than this elsewhere
    figure<length> scissor_body;   ///< nor less than this on the body, or in place of a blade
    figure<length>
        scissor_hand;         ///< nor less than this in place of a blade where no blade comes near
    figure<length> comb_for;  ///< for hair cut shorter than this no mat is combed out
    figure<length> bare_on_web;   ///< a longer blade is not used bare on a web or fold
    figure<length> sun_length;    ///< not below this where pink or thin skin meets the sun
    figure<work> comb_out_limit;  ///< de-matting in all, before clipping instead
    figure<work> comb_out_frail;  ///< the same on a dog that is old or thin-skinned, and ill
    figure<work> oil_after;       ///< a blade running longer than this is felt and oiled
    figure<length>
        held_mat;  ///< measured hair beneath a mat shorter than this can't be held while it
                   ///< is combed out
    figure<length> scissor_finish;  ///< what is left shorter isn't scissored over after a clipper
    figure<length> bump_longer;  ///< hair over a lump or scab is left so much longer than its zone
    figure<length> bump_least;   ///< and never shorter than this
    figure<length> finger_covers;  ///< a lump up to this across is covered with a finger
    figure<double> hurt_share;     ///< more of the dog than this hurt: a veterinarian first
    figure<work> one_go;           ///< longer appointments are broken up for a dog that bears less
    figure<length> much_off;       ///< what loses more than this is roughed down before the bath
    figure<length> soft_brush;  ///< what was clipped off under mats is brushed softly from here on
};

/// How long a dog is combed out for: the usual limit, its low end for one that bears less, and less
/// still where it is old or thin-skinned and ill as well.
[[nodiscard]] inline work comb_out_budget(const dog& d, const refusal_rules& r) {
    if (tender(d) && ails(d)) {
        return std::min(r.comb_out_frail.best, r.comb_out_limit.low);
    }
    return bears_less(d) ? r.comb_out_limit.low : r.comb_out_limit.best;
}

/// Whether a mat in that zone may be combed out at all: a pelt never is, nor what is felted to the
/// skin, nor hurt skin, nor armpit, groin, belly and under the tail (common practice, no source); nor what
/// leaves too little hair beneath to hold, unless the groomer says so: all the pull would go to the skin.
[[nodiscard]] inline bool may_comb_out(const mat_finding& m, const zone& where, bool skin_hurt,
                                       const refusal_rules& r) {
    const bool held = m.grade == mat_grade::tangle || m.comb_out || !m.free_hair ||
                      *m.free_hair >= r.held_mat.best;
    return m.grade != mat_grade::pelt && !m.to_skin && !skin_hurt && held &&
           !where.has(zone_use::never_demat);
}

/// Nobody knows how much free hair lies under the mat: a blade 10 is tried flat under its edge first.
[[nodiscard]] inline bool depth_unknown(const mat_finding& m) {
    return !m.to_skin && !m.free_hair && !m.comb_passes;
}

/// Where a double coat is carded: its jacket, and the body, legs and tail around it, since nobody
/// clips those and leaves the jacket standing.
[[nodiscard]] inline bool carded_by_default(const zone& z) {
    return z.has(zone_use::jacket) || z.where == group::body || z.where == group::legs ||
           z.where == group::tail;
}

/// The least hair that scissors leave in a zone (mm). An edge is scissored over the fingers, clear of
/// the skin: it counts as any other place.
[[nodiscard]] inline length scissors_leave_at_least(const zone& z, const refusal_rules& r) {
    // the top line and sides show every snip; a chest is shaped by scissors
    if (z.where == group::body && z.cover == skin::firm && z.has(zone_use::skip_teeth)) {
        return r.scissor_body.best;
    }
    return z.cover == skin::firm || !z.edge_of.empty() ? r.scissor_least.best : r.scissor_thin.best;
}

/// What is done where the skin shows something.
enum class skin_care {
    left_alone,    ///< nothing touches the place, nor an edge that belongs to it
    gone_around,   ///< covered, gone around, the hair over it left longer; the zone as planned
    bathed_first,  ///< the whole dog is bathed against it before anything else; the zone as planned
};

/// What is done there: inflamed, open or wet skin is left alone; a lump or a scab is gone around, but
/// under a mat it can't be; fleas leave no zone.
[[nodiscard]] constexpr skin_care care_for(skin_state s, bool matted) {
    switch (s) {
        case skin_state::lump:
        case skin_state::scab:
            return matted ? skin_care::left_alone : skin_care::gone_around;
        case skin_state::fleas:
            return skin_care::bathed_first;
        case skin_state::irritated:
        case skin_state::broken:
        case skin_state::wet:
            break;
    }
    return skin_care::left_alone;
}

/// How a dog is bathed.
enum class bath_care {
    usual,   ///< as ever
    gently,  ///< lukewarm, mild, not rubbed: the skin is red somewhere
    none  ///< not today: the skin is broken or wet somewhere, and a veterinarian looks at it first
};

/// How a dog is bathed whose skin shows that, whatever is booked: water and shampoo run everywhere, so one
/// open place keeps the whole dog dry.
[[nodiscard]] inline bath_care bath_for(const std::vector<skin_finding>& skin) {
    bath_care out = bath_care::usual;
    for (const skin_finding& f : skin) {
        if (f.state == skin_state::broken || f.state == skin_state::wet) {
            return bath_care::none;
        }
        out = f.state == skin_state::irritated ? bath_care::gently : out;
    }
    return out;
}

/// Whether the place is left for its teats: belly and groin of a bitch that is pregnant or nursing.
[[nodiscard]] inline bool left_for_teats(const dog& d, const zone& z) {
    return z.has(zone_use::teats) && with_young(d);
}

/// Whether two places of one zone have a side in common.
[[nodiscard]] inline bool same_side(const place& a, const place& b) {
    return a.which == side::both || b.which == side::both || a.which == b.which;
}

/// Whether `edge` is an edge of the zone that `inner` is in, on the same side.
[[nodiscard]] inline bool edges(const body& b, const place& edge, const place& inner) {
    const std::string& of = b.zones[edge.zone].edge_of;
    return !of.empty() && b.zones[inner.zone].id == of && same_side(edge, inner);
}

/// Whether a finding leaves the place alone: it is there, or there is what the place is the edge of.
/// `matted`: a mat is where the finding is.
[[nodiscard]] inline bool leaves_alone(const body& b, const skin_finding& f, const place& p,
                                       bool matted) {
    const bool here = f.at.zone == p.zone && same_side(f.at, p);
    return care_for(f.state, matted) == skin_care::left_alone && (here || edges(b, p, f.at));
}

/// How long the hair over a lump or scab is left where its zone is left at `zone_left`.
[[nodiscard]] inline length over_bump(const length& zone_left, const refusal_rules& r) {
    return longer(zone_left + r.bump_longer.best, r.bump_least.best);
}

/// Whether a sign of the stop list sends the dog to a veterinarian at once, and not only today.
[[nodiscard]] constexpr bool at_once(stop_sign s) {
    switch (s) {
        case stop_sign::collapse:
        case stop_sign::breath:
        case stop_sign::gums:
        case stop_sign::overheated:
        case stop_sign::bloat:
        case stop_sign::seizure:
        case stop_sign::bleeding:
            return true;
        case stop_sign::hair_band:
        case stop_sign::embedded_collar:
        case stop_sign::wounds:
        case stop_sign::swollen_ear:
        case stop_sign::painful_ear:
        case stop_sign::ringworm:
        case stop_sign::unhandled:
        case stop_sign::much_skin:
            break;
    }
    return false;
}

}  // namespace pelage
