// The usual cautions as data: when each applies, who must act, and on what basis.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/trade/finding.hpp>

namespace pelage {

/// The closed list of conditions under which a caution is shown.
enum class caution_when {
    any_clipping,           ///< a blade is used at all
    comb_used,              ///< a comb is used
    double_jacket_clipped,  ///< a double coat's jacket is clipped
    wire_clipped,           ///< a wire or spaniel jacket is clipped
    clip_under,             ///< mats are clipped off
    matted_ears_or_tail,    ///< heavy mats come off ears or tail
    sun,                    ///< cut short where pink or thin skin meets the sun
    thin_skin,              ///< clipping over thin or folded skin
    skin_finding,           ///< hurt skin somewhere
    stop,                   ///< work ends, a veterinarian decides
    unknown_hair,           ///< today's hair isn't known
    old_or_thin,            ///< old, thin-skinned, wrinkled or dehydrated dog
    against_short,          ///< a short blade goes against the lay
    coat_change,            ///< adult coat coming in
    sun_hours,              ///< as sun, and the dog is out most of the day
    young,                  ///< a young dog
    ill,                    ///< something ails it
    sensitive,              ///< places it hates to have touched, but for the legs
    sensitive_limb,         ///< the same of legs and feet
    shedding,               ///< a double coat letting go of its undercoat
    long_since,             ///< the last full groom is longer ago than the coat's usual interval
    combing_out,            ///< mats are combed out
    mat_in_bath,            ///< mats that aren't combed out: clipped off, or still in
    fleas,                  ///< fleas were seen
    lump_new,               ///< a lump that no veterinarian has seen
    scab,                   ///< a scab that is gone around
    frail_felted,           ///< too frail for one long sitting, and much felted
    mat_on_limb,            ///< a mat on a leg or a foot: a band of hair may lie beneath
    muzzled,                ///< it bites or wears a muzzle, and its face is to be done
    bites,                  ///< it bites or wears a muzzle, whatever is done
    faints,         ///< it faints, or what was told of its health is heart, breath or unknown
    seizures,       ///< it has seizures
    joints,         ///< joints, hips or back ail it
    blind,          ///< it is blind or sees little
    deaf,           ///< it is deaf or hears little
    with_young,     ///< it is pregnant or nursing
    season,         ///< it is in heat
    diabetes,       ///< it has diabetes
    first_groom,    ///< its first groom
    fear,           ///< it is afraid
    much_off,       ///< most of its jacket is clipped from long to short
    nearly_bare,    ///< most of its jacket is clipped shorter than any comb leaves it
    bare_blade,     ///< a blade without a comb over it goes there, and no mat lies there
    feet_by_blade,  ///< a bare blade runs over feet that aren't clean ones
    open_skin,      ///< broken or wet skin
    red_skin,       ///< red skin, nowhere broken, and it is bathed
    flat_face,      ///< a flat face: told, or by its breed
    ear_trouble,    ///< its ears smell, itch or hurt
    bleeds,         ///< it bleeds easily
    nail            ///< a nail that is broken or has grown in
};
inline constexpr std::array<std::string_view, 50> caution_when_names{"any-clipping",
                                                                     "comb-used",
                                                                     "double-jacket-clipped",
                                                                     "wire-clipped",
                                                                     "clip-under",
                                                                     "matted-ears-or-tail",
                                                                     "sun",
                                                                     "thin-skin",
                                                                     "skin-finding",
                                                                     "stop",
                                                                     "unknown-hair",
                                                                     "old-or-thin",
                                                                     "against-short",
                                                                     "coat-change",
                                                                     "sun-hours",
                                                                     "young",
                                                                     "ill",
                                                                     "sensitive",
                                                                     "sensitive-limb",
                                                                     "shedding",
                                                                     "long-since",
                                                                     "combing-out",
                                                                     "mat-in-bath",
                                                                     "fleas",
                                                                     "lump-new",
                                                                     "scab",
                                                                     "frail-felted",
                                                                     "mat-on-limb",
                                                                     "muzzled",
                                                                     "bites",
                                                                     "faints",
                                                                     "seizures",
                                                                     "joints",
                                                                     "blind",
                                                                     "deaf",
                                                                     "with-young",
                                                                     "season",
                                                                     "diabetes",
                                                                     "first-groom",
                                                                     "fear",
                                                                     "much-off",
                                                                     "nearly-bare",
                                                                     "bare-blade",
                                                                     "feet-by-blade",
                                                                     "open-skin",
                                                                     "red-skin",
                                                                     "flat-face",
                                                                     "ear-trouble",
                                                                     "bleeds-easily",
                                                                     "nail"};
[[nodiscard]] constexpr std::string_view name(caution_when w) {
    return caution_when_names[static_cast<std::size_t>(w)];
}

/// One caution.
struct caution {
    std::string id;                                  ///< as files name it
    caution_when when = caution_when::any_clipping;  ///< what calls for it
    int danger = 3;                                  ///< 1 (gravest) to 5
    std::string who;                                 ///< groomer, owner, veterinarian
    std::string text;                                ///< the whole of it
    std::string brief;                               ///< the same in a few words, for a card
    std::vector<std::string> zones{};                ///< ids of the zones it is about; empty: any
    bool usual = false;  ///< nearly every dog's: a card tells all such in one line
    evidence why;        ///< how it is known
};

/// A sign of the stop list: what is seen, and what the groomer does until the dog is at a
/// veterinarian's.
struct stop_rule {
    stop_sign sign = stop_sign::collapse;  ///< which
    std::string seen;                      ///< what it looks like
    std::string act;                       ///< what is done
    evidence why;                          ///< how it is known
};

}  // namespace pelage
