// What the comb check and the look at the skin found, zone by zone.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <pelage/base/date.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// Grades of matting in the trade's words, lightest first.
enum class mat_grade { tangle, mat, matted_area, pelt };
inline constexpr std::array<std::string_view, 4> mat_names{"tangle", "mat", "matted-area", "pelt"};
[[nodiscard]] constexpr std::string_view name(mat_grade g) {
    return mat_names[static_cast<std::size_t>(g)];
}

/// The grade as it stands in a sentence: "a matted area".
[[nodiscard]] constexpr std::string_view in_words(mat_grade g) {
    constexpr std::array<std::string_view, 4> words{"a tangle", "a mat", "a matted area", "a pelt"};
    return words[static_cast<std::size_t>(g)];
}

/// Matting in one place.
struct mat_finding {
    place at;                          ///< which place
    mat_grade grade = mat_grade::mat;  ///< how bad
    std::optional<length> free_hair;   ///< unmatted hair between skin and mat (mm); none: not known
    bool to_skin = false;              ///< felted to the skin: nothing passes beneath
    bool comb_passes = false;          ///< a comb's tip passes beneath it
    bool comb_out = false;             ///< the groomer decides to comb it out
    std::optional<date> seen{};        ///< the day it was found, where the dog's file has it
    bool filed = false;  ///< it stands in the dog's file: found that day, or nobody knows when
};

/// What the skin shows. What is done there is in model/care.hpp (care_for).
enum class skin_state {
    irritated,  ///< red, inflamed, sore
    broken,     ///< a wound
    lump,
    fleas,
    wet,  ///< weeping, or a hot spot
    scab
};
inline constexpr std::array<std::string_view, 6> skin_state_names{"irritated", "broken", "lump",
                                                                  "fleas",     "wet",    "scab"};
[[nodiscard]] constexpr std::string_view name(skin_state s) {
    return skin_state_names[static_cast<std::size_t>(s)];
}

/// Every word for them that a person writes: the names, then what else the trade says.
inline constexpr std::array<std::string_view, 16> skin_words{
    "irritated", "broken", "lump", "fleas",    "wet",      "scab",    "inflamed", "sore",
    "wound",     "open",   "rash", "stitches", "stitched", "bandage", "cast",     "burn"};
/// What the word at that index of skin_words means.
[[nodiscard]] constexpr skin_state skin_state_at(std::size_t i) {
    constexpr std::array<skin_state, 10> others{
        skin_state::irritated, skin_state::irritated, skin_state::broken, skin_state::broken,
        skin_state::irritated, skin_state::broken, skin_state::broken,
        // what a bandage covers is left as a wound is
        skin_state::broken, skin_state::broken, skin_state::broken};
    return i < skin_state_names.size() ? static_cast<skin_state>(i)
                                       : others[i - skin_state_names.size()];
}

/// A finding on the skin in one place.
struct skin_finding {
    place at;                                  ///< which place
    skin_state state = skin_state::irritated;  ///< what was found
    std::optional<length> size{};              ///< of a lump, across (mm); none: not measured
    bool known = false;                        ///< of a lump: a veterinarian has seen it
    friend bool operator==(const skin_finding&, const skin_finding&) = default;
};

/// The finding as it stands in a sentence: "a known lump of 10 mm", "a scab", "fleas". `size` is the
/// lump's in words; empty where it isn't measured.
[[nodiscard]] inline std::string in_words(const skin_finding& f, const std::string& size) {
    switch (f.state) {
        case skin_state::irritated:
            return "irritated skin";
        case skin_state::broken:
            return "broken skin";
        case skin_state::lump:
            return std::string(f.known ? "a known lump" : "a new lump") +
                   (size.empty() ? "" : " of " + size);
        case skin_state::fleas:
            return "fleas";
        case skin_state::wet:
            return "wet skin";
        case skin_state::scab:
            break;
    }
    return "a scab";
}

/// What ends a groom, gravest first: a veterinarian's before anything else is done (the stop list;
/// reference/cautions.toml has the words and what to do).
enum class stop_sign {
    collapse,
    breath,
    gums,
    overheated,
    bloat,  ///< a belly that swells
    seizure,
    bleeding,
    hair_band,        ///< a band of hair cuts into a leg or toes
    embedded_collar,  ///< a collar or harness grown in
    wounds,           ///< wounds, maggots, pus or a rotten smell under mats
    swollen_ear,
    painful_ear,  ///< with discharge
    ringworm,     ///< or mange, suspected
    unhandled,    ///< pelted, and can't be handled awake
    much_skin     ///< red, wet or broken over much of the dog
};
inline constexpr std::array<std::string_view, 15> stop_sign_names{"collapse",
                                                                  "breath",
                                                                  "gums",
                                                                  "overheated",
                                                                  "bloat",
                                                                  "seizure",
                                                                  "bleeding",
                                                                  "hair-band",
                                                                  "embedded-collar",
                                                                  "wounds",
                                                                  "swollen-ear",
                                                                  "painful-ear",
                                                                  "ringworm-or-mange",
                                                                  "pelted-unhandled",
                                                                  "much-skin-hurt"};
[[nodiscard]] constexpr std::string_view name(stop_sign s) {
    return stop_sign_names[static_cast<std::size_t>(s)];
}

}  // namespace pelage
