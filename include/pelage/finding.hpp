// What the comb check and the look at the skin found, zone by zone.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

#include <pelage/units.hpp>
#include <pelage/zone.hpp>

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
    place at;
    mat_grade grade = mat_grade::mat;
    std::optional<length> free_hair;  ///< unmatted hair between skin and mat (mm); none: not known
    bool to_skin = false;             ///< felted to the skin: nothing passes beneath
    bool comb_passes = false;         ///< a comb's tip passes beneath it
    bool comb_out = false;            ///< the groomer decides to comb it out
};

/// What the skin shows.
enum class skin_state { irritated, broken, lump, parasite, wet };
inline constexpr std::array<std::string_view, 5> skin_state_names{"irritated", "broken", "lump",
                                                                  "parasite", "wet"};
[[nodiscard]] constexpr std::string_view name(skin_state s) {
    return skin_state_names[static_cast<std::size_t>(s)];
}

/// A finding on the skin in one place.
struct skin_finding {
    place at;
    skin_state state = skin_state::irritated;
};

/// What ends a groom, gravest first: a veterinarian's before anything else is done (the stop list;
/// reference/cautions.toml has the words and what to do).
enum class stop_sign {
    collapse,
    breath,
    gums,
    seizure,
    bleeding,
    hair_band,        ///< a band of hair cuts into a leg or toes
    embedded_collar,  ///< a collar or harness grown in
    wounds,           ///< wounds, maggots, pus or a rotten smell under mats
    swollen_ear,
    painful_ear,  ///< with discharge
    ringworm,     ///< or mange, suspected
    unhandled     ///< pelted, and can't be handled awake
};
inline constexpr std::array<std::string_view, 12> stop_sign_names{
    "collapse",          "breath",          "gums",   "seizure",     "bleeding",
    "hair-band",         "embedded-collar", "wounds", "swollen-ear", "painful-ear",
    "ringworm-or-mange", "pelted-unhandled"};
[[nodiscard]] constexpr std::string_view name(stop_sign s) {
    return stop_sign_names[static_cast<std::size_t>(s)];
}

}  // namespace pelage
