// What must not be done to a dog's skin and coat, each with its reason. Hard rules: the planner
// masks a setup in a zone where any of them holds.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include <pelage/model/care.hpp>
#include <pelage/model/cut.hpp>
#include <pelage/trade/finding.hpp>
#include <pelage/trade/kit.hpp>
#include <pelage/trade/setup.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

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
    long_on_web,  ///< a blade whose gaps catch the web or fold: bare and long, or longer than a 10 against the lay
    mat_over_lump,  ///< a mat clipped off where a lump lies beneath
    thin_plucked    ///< thin skin plucked
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
/// Whether a blade bears that name of two characters: asked of every blade in every zone.
[[nodiscard]] inline bool bears(const blade& b, const char (&two)[3]) {
    return b.etched.size() == 2 && b.etched[0] == two[0] && b.etched[1] == two[1];
}

[[nodiscard]] inline shortness how_short(const blade& b) {
    const double h = in_mm(b.stated.best);
    if (bears(b, "50") || h < 0.225) {
        return shortness::surgical_50;
    }
    if (h < 1.15 || bears(b, "30") || bears(b, "40")) {
        return shortness::short_30_40;
    }
    if (h < 1.45 || bears(b, "15")) {
        return shortness::fifteen;
    }
    return h < 1.75 || bears(b, "10") ? shortness::ten : shortness::longer;
}

[[nodiscard]] inline bool clean_here(const zone_today& t) {
    return t.clean && (t.where->has(zone_use::clean_face) || t.where->has(zone_use::clean_feet));
}

[[nodiscard]] inline std::optional<refusal> refuse_comb(const setup& s, const zone_today& t,
                                                        const cut_rules& c) {
    if (t.mat != nullptr) {
        return refusal::comb_over_mat;
    }
    if (bears(s.tool, "50")) {
        return refusal::never_50;
    }
    if (clean_here(t)) {
        return refusal::comb_on_clean;
    }
    // a 10 adds about a millimetre and is used; a 9 or longer, or skip teeth, lets the comb rock
    const bool short_enough =
        bears(s.tool, "10") || s.tool.stated.best <= c.comb_stated_over.best + mm(1.05);
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
    const bool ten = bears(s.tool, "10") && stated <= r.safe_blade.high;
    const bool safe = ten || (m.comb_passes && stated <= r.safe_blade.best);
    if (safe && (m.free_hair ? m.comb_passes && stated < *m.free_hair : true)) {
        return std::nullopt;
    }
    const length room = m.free_hair ? *m.free_hair * r.under_mat_share.best : mm(0.0);
    // between wide teeth the thin edge of a felted ear is taken in (common practice, no source)
    const bool thin_edge =
        ten_at_most(where) || (where.has(zone_use::ear_leather) && m.grade == mat_grade::pelt);
    const bool wide = thin_edge && how_short(s.tool) == shortness::longer;
    if (wide || stated > r.under_mat_longest.best || stated > room) {
        return refusal::under_mat_too_long;
    }
    return std::nullopt;
}

/// On hair that lies a blade leaves more than it states, and hair that long reaches into the mat: `leaves`, by that
/// setup on that coat, is more than the free hair. A 10 and shorter are tried all the same: where they don't pass,
/// nothing does.
[[nodiscard]] inline std::optional<refusal> refuse_under_lying_mat(const setup& s,
                                                                   const mat_finding& m,
                                                                   const length& leaves) {
    const bool into_it = m.free_hair && leaves > *m.free_hair;
    return into_it && how_short(s.tool) == shortness::longer
               ? std::optional{refusal::under_mat_too_long}
               : std::nullopt;
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
        // its gaps take a lip, a fold of the throat, the web between toes, a teat in the fringe; pushed against
        // the lay the skin of a flank, a stifle, a hock or an ear rolls into them
        return z.has(zone_use::clean_face) || z.has(zone_use::clean_feet) ||
                       z.has(zone_use::scissors_only) || z.has(zone_use::web) ||
                       z.has(zone_use::teats)
                   ? std::optional{refusal::long_on_web}
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
