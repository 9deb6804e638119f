// The parts of a dog a groomer speaks of, and how they lie beside one another.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>

namespace pelage {

/// Where a zone belongs. Groups are what a sheet or a person names for many zones at once.
enum class group { head, body, legs, tail, feet, prep };
inline constexpr std::array<std::string_view, 6> group_names{"head", "body", "legs",
                                                             "tail", "feet", "prep"};
[[nodiscard]] constexpr std::string_view name(group g) {
    return group_names[static_cast<std::size_t>(g)];
}  ///< it may be used so

/// How easily the skin of a zone is hurt.
enum class skin { firm, thin, fold };
inline constexpr std::array<std::string_view, 3> skin_names{"firm", "thin", "fold"};
[[nodiscard]] constexpr std::string_view name(skin s) {
    return skin_names[static_cast<std::size_t>(s)];
}

/// Which side of the dog. A paired zone named without a side means both.
enum class side { both, left, right };
inline constexpr std::array<std::string_view, 3> side_names{"both", "left", "right"};
[[nodiscard]] constexpr std::string_view name(side s) {
    return side_names[static_cast<std::size_t>(s)];
}

/// Special permissions and uses of a zone, as rules refer to them.
enum class zone_use : std::uint32_t {
    jacket = 1U << 0U,       ///< neck, back, ribs, loin, rump: where double coats are carded
    skip_teeth = 1U << 1U,   ///< skip teeth may go here: skin firm and flat
    clean_face = 1U << 2U,   ///< may be taken short where the style asks for a clean face
    clean_feet = 1U << 3U,   ///< may be taken short where the style asks for clean feet
    pads = 1U << 4U,         ///< scooped lightly with a short blade
    ear_leather = 1U << 5U,  ///< the flat of the ear
    tail_band = 1U << 6U,    ///< the band at the tail's base
    sanitary = 1U << 7U,
    under_tail = 1U << 8U,
    pattern_cheek = 1U << 9U,   ///< cheeks and throat of pattern breeds
    never_demat = 1U << 10U,    ///< armpit, groin, belly, under the tail: clip, never de-mat
    scissors_only = 1U << 11U,  ///< never clipped on the planner's own idea
    web = 1U << 12U,            ///< webs and folds that a long blade's gaps catch
    teats = 1U << 13U           ///< left on a bitch that is pregnant or nursing
};

/// One zone of the dog, both sides together where it is paired.
struct zone {
    std::string id;     ///< "behind-ear"
    std::string title;  ///< "behind the ears"
    std::string one;    ///< one side of a paired zone: "behind the {side} ear"; empty if not paired
    group where = group::body;  ///< which group it is of
    bool paired = false;        ///< it has a left and a right
    skin cover = skin::firm;    ///< of which kind its skin is
    std::uint32_t uses = 0;     ///< bits of zone_use
    std::string edge_of;        ///< id of the zone whose edge it is; empty: of none
    figure<double> matting;     ///< factor on the coat's matting-prone length; dimensionless, > 0
    figure<work> clip_time;     ///< to clip it on a medium dog, both sides
    int weight_tenths = 10;     ///< how much a miss shows, in tenths (head 30, legs 20, body 15)
    evidence weight_why;        ///< of the weight
    std::string sweep;          ///< which way the clipper goes with the lay, in a few body words
    std::string stroke;         ///< the same in full, for the trainee
    std::string against;        ///< the way of the clipper against the lay; empty: it is scissored
    std::string hold;           ///< how to hold the skin; may be empty
    std::string
        hold_frail;      ///< the same of a dog that isn't lifted (never_lifted); empty: as `hold`
    std::string hazard;  ///< what gets hurt here; may be empty
    std::vector<std::string> prep_blades;  ///< prep zones: the customary blades, first choice first
    evidence prep_why;                     ///< how that is known
    evidence why;                          ///< of the record's words and permissions

    [[nodiscard]] bool has(zone_use u) const { return (uses & static_cast<std::uint32_t>(u)) != 0; }
};

/// How two neighbouring zones meet.
enum class seam_kind { blend, line };
inline constexpr std::array<std::string_view, 2> seam_names{"blend", "line"};
[[nodiscard]] constexpr std::string_view name(seam_kind k) {
    return seam_names[static_cast<std::size_t>(k)];
}

/// The line where two zones of the body meet; `a` and `b` are indices into body::zones.
struct seam {
    std::size_t a = 0;                  ///< index into body::zones
    std::size_t b = 0;                  ///< index into body::zones
    figure<length> along;               ///< how long the seam is on a medium dog (mm)
    seam_kind kind = seam_kind::blend;  ///< how they meet where a sheet says nothing
};

/// What groomers call a zone besides its title, or several zones at once: "crest", "front legs".
struct place_word {
    std::vector<std::string> words;  ///< the first is what it is called
    std::vector<std::size_t> zones;  ///< indices into body::zones, in their order
    std::optional<group> whole;      ///< in place of zones: a group
    bool whole_dog = false;          ///< in place of zones: "all"
    bool sides = false;  ///< takes a side though some of its zones are one; those are meant whole
    evidence why;        ///< how it is known
};

/// A word that groomers use for several places: it is asked back, never guessed.
struct asked_place {
    std::vector<std::string> words;  ///< that mean several places
    std::vector<std::string> means;  ///< words of the table
    evidence why;                    ///< how it is known
};

/// The whole dog: zones in reference order, the seams between them, and the words for its places.
struct body {
    std::vector<zone> zones;         ///< in reference order
    std::vector<seam> seams;         ///< where they meet
    std::vector<place_word> words;   ///< for places
    std::vector<asked_place> asked;  ///< words that are asked back
};

/// A zone with a side, as a person addresses it.
struct place {
    std::size_t zone = 0;     ///< index into body::zones
    side which = side::both;  ///< of a paired zone
    friend bool operator==(const place&, const place&) = default;
};

/// "left ear", "ears", "behind the right ear": what a place is called.
[[nodiscard]] inline std::string title(const body& b, const place& p) {
    const zone& z = b.zones[p.zone];
    if (p.which == side::both || !z.paired) {
        return z.title;
    }
    std::string text = z.one;
    const std::string mark = "{side}";
    if (const auto at = text.find(mark); at != std::string::npos) {
        text.replace(at, mark.size(), name(p.which));
    }
    return text;
}

/// Their titles in order; the two sides of a pair, one after the other, are one: "ears".
[[nodiscard]] inline std::vector<std::string> titles(const body& b, const std::vector<place>& all) {
    std::vector<std::string> out;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const bool pair = i + 1 < all.size() && all[i].zone == all[i + 1].zone &&
                          all[i].which == side::left && all[i + 1].which == side::right;
        out.push_back(pair ? b.zones[all[i].zone].title : title(b, all[i]));
        i += pair ? 1 : 0;
    }
    return out;
}

}  // namespace pelage
