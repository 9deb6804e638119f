// Why a place of the plan comes out as it does, why a setup may not be used there, and what the plan
// took as given: decisions and their values. The words are made where they are printed.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/model/refusal.hpp>
#include <pelage/trade/setup.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// Why a setup isn't chosen from, though the zone's finish would use such a tool.
struct barrier {
    enum class kind { none, rule, hair_shorter, too_short, too_long, not_longest };
    kind what = kind::none;              ///< none: it isn't barred
    refusal rule = refusal::skin_found;  ///< where `what` is rule
};

/// A setup that was not allowed in a zone, and why.
struct refused_setup {
    setup tool;               ///< what would be held
    barrier no;               ///< why not
    finished leaves{};        ///< what it would leave
    bool combed_out = false;  ///< judged with the mat combed out
};

/// What decided over a place.
enum class cause {
    none,             ///< it is as wished
    felted,           ///< somewhere the dog is felted to the skin: a veterinarian decides first
    veterinarian,     ///< a sign of the stop list: likewise
    owner,            ///< a double coat's owner is asked first
    by_sheet,         ///< the sheet leaves it
    no_length,        ///< the sheet gives no length to clip or scissor to
    jacket_unsigned,  ///< a double coat's jacket is carded until the owner agrees in writing
    head_unsigned,    ///< its head and ears are left until then
    skin,             ///< the skin there is hurt
    skin_within,      ///< the skin of what it is the edge of (`of`) is hurt
    hair_at_wish,     ///< today's hair is no longer than the wish
    hair_below_wish,  ///< it is shorter than the wish: there in `wait`
    missed,  ///< beyond the tolerance: the nearest that may be used, or cheaper on the whole
    may_leave_less,  ///< about as wished, but it may leave less than the sheet allows
    scissored,       ///< nothing that clips leaves about the wish
    other_blade,     ///< not by the blade that the sheet names
    mat_off,         ///< its mat is clipped off
    part_down,       ///< sound, but its part comes down
    goes_along,      ///< an edge that comes down with `of`, whose mats are clipped off
    as_its_part,     ///< the kit leaves its part at another length, and it goes with it
    no_tool,         ///< the kit has nothing at hand that may be used there
    no_ten,          ///< a mat of unknown depth, and no blade 10 to try under it
    nothing_passes,  ///< no blade of the kit that may be used passes under the mat
    teats            ///< left on a bitch that is pregnant or nursing
};
[[nodiscard]] constexpr std::string_view name(cause c) {
    constexpr std::array<std::string_view, 24> names{
        "none",         "felted",          "veterinarian",   "owner",          "by-sheet",
        "no-length",    "jacket-unsigned", "head-unsigned",  "skin",           "skin-within",
        "hair-at-wish", "hair-below-wish", "missed",         "may-leave-less", "scissored",
        "other-blade",  "mat-off",         "part-down",      "goes-along",     "as-its-part",
        "no-tool",      "no-ten",          "nothing-passes", "teats"};
    return names[static_cast<std::size_t>(c)];
}  ///< there is something to say

/// Why it isn't the blade that the sheet names.
enum class not_named { not_in_kit, out, refused, dearer };

/// What is beyond the sheet's own bounds is the owner's to decide.
enum class beyond_sheet { no, shorter, longer };

/// How long until hair is about as long as wished, 8 in 10 (days).
struct hair_wait {
    bool never = false;  ///< the coat may never get there
    days early{};        ///< at which 1 in 10 are there
    days late{};         ///< at which 9 in 10 are there
};

/// Why a place comes out as it does, and what its zone_plan doesn't hold of it.
struct zone_cause {
    cause what = cause::none;                ///< none: nothing to say
    std::optional<hair_wait> wait;           ///< hair_below_wish, on a coat that grows
    std::optional<setup> nearest;            ///< missed: what would leave nearer, zone_plan::nearer
    work more{};                             ///< and how much longer it takes there
    bool proven = false;                     ///< missed: no plan costs less on the whole
    not_named named = not_named::dearer;     ///< why not by the blade named
    beyond_sheet beyond = beyond_sheet::no;  ///< which bound of the sheet
    bool with_part = false;                  ///< mat_off: with all of its part
    bool customary = false;                  ///< mat_off: by the zone's customary blade
    std::optional<place> of;                 ///< skin_within, goes_along
    std::optional<length> wished;            ///< goes_along: what the sheet wants
    [[nodiscard]] explicit operator bool() const { return what != cause::none; }  ///< there is one
};

/// A pair that comes out visibly different on its sides.
struct uneven_pair {
    std::size_t zone = 0;           ///< index into body::zones
    std::optional<length> left{};   ///< none: as it is, nobody knows how long
    std::optional<length> right{};  ///< as `left`; one of them is known
    bool hurt = false;              ///< one side is left alone until its skin has healed
};

/// What the plan took as given, or what is to be known of it.
struct plan_note {
    enum class kind {
        other_coat,         ///< the sheet is made for other coats
        hair_unknown,       ///< today's hair isn't recorded everywhere
        hair_by_record,     ///< some of it is reckoned from the record: dog::by_record
        mats_dealt,         ///< mats of its file are gone by the record: dog::dealt
        mats_undated,       ///< or may be, if their day were known: dog::undated
        own_length,         ///< the sheet's own length is taken
        health,             ///< told of its health
        less_combing,       ///< it is combed out for less time than others
        brushing_by_sheet,  ///< nothing is said of brushing: as the sheet assumes
        brushing_none,      ///< nor does the sheet say
        strip_again,        ///< a stripped jacket is due again, which the dates don't reckon with
        daily_only,         ///< `places` are longer than any but daily brushing holds
        uneven,             ///< `pair` comes out uneven
        tracks,             ///< neighbours go opposite ways: `pairs`, first with the lay
        combing_order       ///< in which order mats are combed out
    };
    kind what = kind::hair_unknown;             ///< what it is about
    std::vector<place> places{};                ///< where
    std::vector<std::array<place, 2>> pairs{};  ///< of neighbours
    uneven_pair pair{};                         ///< of sides
};

/// What the owner's written consent is for.
enum class consent_for {
    mats_off,       ///< mats are clipped off
    other_length,   ///< some places come out beyond what the sheet allows
    double_jacket,  ///< a double coat is clipped
    strip_jacket,   ///< a jacket is clipped that is hand-stripped by custom
    frail,          ///< an old, ill or thin-skinned dog is groomed, or a pregnant or nursing one
    show_blades,    ///< very short blades on clean face and feet
    sun_short,      ///< pale or thin skin out in the sun most of the day comes out short
    by_sheet        ///< what else the sheet asks for, by its id
};

/// Something the owner must agree to, and whether the dog's record says so.
struct consent {
    std::string id;                            ///< as the dog's file writes it
    consent_for what = consent_for::by_sheet;  ///< what for
    bool given = false;                        ///< the owner has agreed
    bool shorter = false;                      ///< other_length: some places come out shorter
    bool longer = false;                       ///< and some longer
    bool withheld = false;  ///< double_jacket: until then what the sheet clips is not clipped
};

}  // namespace pelage
