// What must not be done to a dog's skin and coat, each with its reason. Hard rules: the planner
// masks a setup in a zone where any of them holds.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/model/cut.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/kit.hpp>
#include <pelage/trade/setup.hpp>
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

/// Why a setup is refused in a zone.
enum class refusal {
    comb_over_mat,        ///< a comb jams in a mat
    comb_on_wrong_blade,  ///< over a skip-tooth or long blade
    comb_on_clean,        ///< clean face and feet are taken to the skin by a bare blade
    mat_to_skin,          ///< felted to the skin: a veterinarian's
    under_mat_too_long,   ///< longer than the free hair allows
    under_mat_teeth,      ///< only full teeth under a mat
    hand_tool_at_mat,     ///< no scissors between mat and skin
    skip_teeth_here,      ///< skip teeth where skin folds or is thin
    skip_teeth_at_bump,   ///< skip teeth in a zone with a lump or a scab
    never_50,             ///< surgical
    bare_short,           ///< 40, 30 and toe blades bare, outside pads and agreed show finish
    bare_15,              ///< 15 outside its places
    against_lay_here,     ///< short blade against the lay outside its places
    skin_found,           ///< anything on broken or irritated skin
    skin_beside,     ///< the zone touches one with a skin finding (its edge is left; not a mask)
    jacket_consent,  ///< clipping a double coat's jacket without the owner's consent
    scissors_only,   ///< never clipped on the planner's own idea
    no_substitute,   ///< scissors in place of a blade, shorter than anybody scissors
    long_on_web,     ///< a long blade bare on a web or fold
    mat_over_lump,   ///< a mat clipped off where a lump lies beneath
    thin_plucked     ///< thin skin plucked
};

/// The name of a refusal in JSON: "comb-over-mat".
[[nodiscard]] constexpr std::string_view name(refusal r) {
    constexpr std::array<std::string_view, 21> names{
        "comb-over-mat",    "comb-on-wrong-blade", "comb-on-clean",
        "mat-to-skin",      "under-mat-too-long",  "under-mat-teeth",
        "hand-tool-at-mat", "skip-teeth-here",     "skip-teeth-at-bump",
        "never-50",         "bare-short",          "bare-15",
        "against-lay-here", "skin-found",          "skin-beside",
        "jacket-consent",   "scissors-only",       "no-substitute",
        "long-on-web",      "mat-over-lump",       "thin-plucked"};
    return names[static_cast<std::size_t>(r)];
}

/// What is asked of a zone today, as far as the hard rules care.
struct zone_today {
    const zone* where = nullptr;       ///< the zone
    const mat_finding* mat = nullptr;  ///< a mat still in; null when none, or combed out first
    bool skin_hurt = false;            ///< what is left alone: irritated, broken, wet
    bool bump = false;                 ///< a lump or a scab, gone around
    bool clean = false;                ///< the sheet asks for a clean face or clean feet here
    bool pattern = false;              ///< cheeks and throat of a pattern breed
    bool show = false;                 ///< show finish, with the owner's consent to it
    bool thin_or_old = false;          ///< the whole dog: thin-skinned, old, wrinkled, dehydrated
    bool thin_skin = false;            ///< its skin is thin or tears, whatever its age
    bool double_jacket = false;        ///< a double-coated jacket without consent to clip it
    bool sheet_clips = true;           ///< the sheet itself asks to clip here
    std::optional<length> target{};    ///< the finished length wished
    bool no_combs = false;             ///< the kit has no comb
    bool nothing_near = false;         ///< no blade or comb of the kit comes near the wish
};

/// Eyelids and the edges of ears: under a mat there only a blade 10 or a shorter one goes.
[[nodiscard]] inline bool ten_at_most(const zone& z) {
    return z.where == group::head && z.has(zone_use::scissors_only);
}

namespace detail {

/// The bare blades by how short they are: by what is etched or what a patch measured, whichever is
/// shorter, with a hair's grain of slack against rounding.
enum class shortness { surgical_50, short_30_40, fifteen, ten, longer };
[[nodiscard]] inline shortness how_short(const blade& b) {
    const double h = in_mm(b.stated.best);
    if (b.etched == "50" || h < 0.225) {
        return shortness::surgical_50;
    }
    if (h < 1.15 || b.etched == "30" || b.etched == "40") {
        return shortness::short_30_40;
    }
    if (h < 1.45 || b.etched == "15") {
        return shortness::fifteen;
    }
    return h < 1.75 || b.etched == "10" ? shortness::ten : shortness::longer;
}

[[nodiscard]] inline bool clean_here(const zone_today& t) {
    return t.clean && (t.where->has(zone_use::clean_face) || t.where->has(zone_use::clean_feet));
}

[[nodiscard]] inline std::optional<refusal> refuse_comb(const setup& s, const zone_today& t,
                                                        const cut_rules& c) {
    if (t.mat != nullptr) {
        return refusal::comb_over_mat;
    }
    if (s.tool.etched == "50") {
        return refusal::never_50;
    }
    if (clean_here(t)) {
        return refusal::comb_on_clean;
    }
    // a 10 adds about a millimetre and is used; a 9 or longer, or skip teeth, lets the comb rock
    const bool short_enough =
        s.tool.etched == "10" || s.tool.stated.best <= c.comb_stated_over.best + mm(1.05);
    if (skips(s.tool) || !short_enough || s.tool.shape == edge::toe) {
        return refusal::comb_on_wrong_blade;
    }
    return std::nullopt;
}

[[nodiscard]] inline std::optional<refusal> refuse_under_mat(const setup& s, const mat_finding& m,
                                                             const zone& where,
                                                             const refusal_rules& r) {
    if (m.to_skin) {
        return refusal::mat_to_skin;
    }
    if (s.tool.cut != teeth::full) {
        return refusal::under_mat_teeth;
    }
    // the stated length counts, not the longest a blade of that name is made
    const length stated = s.tool.stated.best;
    // the usual safe blade where the tip of a comb passes beneath, and the one to try where nobody
    // knows (common practice, no source); hair that was measured wins over both
    const bool ten = s.tool.etched == "10" && stated <= r.safe_blade.high;
    const bool safe = ten || (m.comb_passes && stated <= r.safe_blade.best);
    if (safe && (m.free_hair ? m.comb_passes && stated < *m.free_hair : true)) {
        return std::nullopt;
    }
    const length room = m.free_hair ? *m.free_hair * r.under_mat_share.best : mm(0.0);
    const bool wide = ten_at_most(where) && how_short(s.tool) == shortness::longer;
    if (wide || stated > r.under_mat_longest.best || stated > room) {
        return refusal::under_mat_too_long;
    }
    return std::nullopt;
}

[[nodiscard]] inline std::optional<refusal> refuse_short(const setup& s, const zone_today& t) {
    const zone& z = *t.where;
    switch (how_short(s.tool)) {
        case shortness::surgical_50:
            return refusal::never_50;
        case shortness::short_30_40:
            if (z.has(zone_use::pads) || (clean_here(t) && t.show)) {
                return std::nullopt;
            }
            return refusal::bare_short;
        case shortness::fifteen:
            if (clean_here(t) || z.has(zone_use::pads) || z.has(zone_use::ear_leather) ||
                z.has(zone_use::tail_band) || z.has(zone_use::sanitary) ||
                z.has(zone_use::under_tail)) {
                return std::nullopt;
            }
            return refusal::bare_15;
        case shortness::ten:
        case shortness::longer:
            break;
    }
    return std::nullopt;
}

[[nodiscard]] inline std::optional<refusal> refuse_against(const setup& s, const zone_today& t) {
    if (s.way != direction::against_lay || s.over) {
        return std::nullopt;
    }
    if (t.mat != nullptr) {
        return refusal::against_lay_here;  // it digs into the mat
    }
    const zone& z = *t.where;
    const shortness how = how_short(s.tool);
    if (how == shortness::longer) {
        // its gaps take a lip, a fold of the throat, the web between toes
        return z.has(zone_use::clean_face) || z.has(zone_use::clean_feet)
                   ? std::optional{refusal::against_lay_here}
                   : std::nullopt;
    }
    if (t.thin_or_old) {
        return refusal::against_lay_here;  // it tears easily
    }
    if (how == shortness::short_30_40) {
        const bool feet = t.clean && z.has(zone_use::clean_feet);
        return z.has(zone_use::pads) || feet ? std::nullopt
                                             : std::optional{refusal::against_lay_here};
    }
    const bool pattern = t.pattern && z.has(zone_use::pattern_cheek);
    return clean_here(t) || pattern || z.has(zone_use::ear_leather) || z.has(zone_use::tail_band)
               ? std::nullopt
               : std::optional{refusal::against_lay_here};
}

}  // namespace detail

/// The first reason why `s` must not be used in the zone today; nothing if it may. Hand tools are
/// refused on hurt skin only, `leave` never.
[[nodiscard]] inline std::optional<refusal> refuse(const setup& s, const zone_today& t,
                                                   const refusal_rules& r, const cut_rules& c) {
    if (s.kind == tool_kind::none) {
        return std::nullopt;
    }
    if (t.skin_hurt) {
        return refusal::skin_found;
    }
    if (t.mat != nullptr && t.mat->to_skin) {
        return refusal::mat_to_skin;
    }
    if (s.kind != tool_kind::clip) {
        // no scissors between mat and skin; brushing tools tear at one
        if (t.mat != nullptr) {
            return refusal::hand_tool_at_mat;
        }
        if (s.kind == tool_kind::fingers && t.thin_skin) {
            return refusal::thin_plucked;
        }
        // no comb lies in the kit, and its long blades may not go to webs and folds: they are scissored
        const bool web = t.no_combs && t.where->has(zone_use::web);
        const bool by_hand = t.nothing_near && !t.where->has(zone_use::skip_teeth);
        const length least = by_hand ? r.scissor_hand.best : r.scissor_body.best;
        const bool substitute =
            s.kind == tool_kind::scissors && t.sheet_clips && t.target && !web && *t.target < least;
        return substitute ? std::optional{refusal::no_substitute} : std::nullopt;
    }
    if (t.double_jacket && t.mat == nullptr) {
        return refusal::jacket_consent;
    }
    if (t.where->has(zone_use::scissors_only) && !t.sheet_clips && t.mat == nullptr) {
        return refusal::scissors_only;
    }
    if (s.over) {
        return detail::refuse_comb(s, t, c);
    }
    if (t.mat != nullptr && t.bump) {
        return refusal::mat_over_lump;
    }
    if (t.mat != nullptr) {
        if (const auto no = detail::refuse_under_mat(s, *t.mat, *t.where, r)) {
            return no;
        }
    } else if (skips(s.tool) && (!t.where->has(zone_use::skip_teeth) || t.thin_or_old)) {
        return refusal::skip_teeth_here;
    } else if (skips(s.tool) && t.bump) {
        return refusal::skip_teeth_at_bump;
    }
    if (const auto no = detail::refuse_short(s, t)) {
        return no;
    }
    // between bare toes the gaps of a longer blade take the web
    const bool toes = t.clean && t.where->has(zone_use::clean_feet);
    const bool too_long = s.tool.stated.best > r.bare_on_web.best ||
                          (toes && detail::how_short(s.tool) == detail::shortness::longer);
    if (t.mat == nullptr && t.where->has(zone_use::web) && too_long) {
        return refusal::long_on_web;
    }
    return detail::refuse_against(s, t);
}

}  // namespace pelage
