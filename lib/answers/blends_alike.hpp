// Private to lib: blends that are done alike, as plans and cards tell them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/planner/plan.hpp>

#include "answers/words/places.hpp"

namespace pelage::io {

inline constexpr std::string_view sore_edge = "short of the sore edge";

/// Zones of one length blended into zones of one length, in words: "25 mm" into "13 mm".
struct patch {
    std::string from_length;
    std::string into_length;
    zone_list from;
    zone_list into;
};

/// Blends done alike: from length to length with the same thing in hand. A working plan tells those by a hand tool
/// alone by the longer zones only: each is scissored anyway, and what is shorter beside it is plain to see.
struct blended_alike {
    std::string how;
    std::optional<setup> by;  ///< the clipper's part of it
    std::string last;         ///< what is taken to it last: "thinning scissors"; empty: nothing
    bool by_hand = false;
    std::vector<patch> patches;
    std::vector<std::pair<std::size_t, std::size_t>> pairs{};  ///< each zone and that it runs into
    bool sore = false;  ///< what of it borders on hurt skin stays
    length narrow{};
    length wide{};
};

[[nodiscard]] bool has(const zone_list& l, std::size_t zone);
/// Once each, in their order.
void add(zone_list& l, std::size_t zone);
void add(zone_list& l, const zone_list& more);

/// Whether it is told of: where neither side is clipped, scissors shape the one into the other as they go.
[[nodiscard]] bool told(const blend& b, const groom& g, const plan_request& r);

/// Those of a list that are told of, hand tools alone last.
[[nodiscard]] std::vector<blended_alike> alike_of(const groom& g, const plan_request& r, list when,
                                                  length_unit u);
/// Three places or more of a part are that part: they are blended where the two parts meet.
[[nodiscard]] std::vector<std::string> names_of(const zone_list& zones, const place_words& places);
/// The same with commas.
[[nodiscard]] std::string named(const zone_list& zones, const place_words& places);

}  // namespace pelage::io
