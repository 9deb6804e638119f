// The parts of a dog one sees as a whole: mats that take much of one take it all down.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include <pelage/trade/zone.hpp>

namespace pelage {

/// A part of the dog that one sees as a whole. Feet go with the legs; prep zones belong to none.
enum class part { body, legs, tail, ears, head, prep };
inline constexpr std::array<std::string_view, 6> part_names{"body", "legs", "tail",
                                                            "ears", "head", "prep"};
[[nodiscard]] constexpr std::string_view name(part p) {
    return part_names[static_cast<std::size_t>(p)];
}

/// Which part a zone belongs to. The tail's base goes with the body: nobody shaves a back and leaves a tuft behind it.
[[nodiscard]] inline part part_of(const zone& z) {
    switch (z.where) {
        case group::body:
            return part::body;
        case group::legs:
        case group::feet:
            return part::legs;
        case group::tail:
            return z.has(zone_use::tail_band) ? part::body : part::tail;
        case group::head:
            return z.has(zone_use::ear_leather) || !z.edge_of.empty() ? part::ears : part::head;
        case group::prep:
            break;
    }
    return part::prep;
}

}  // namespace pelage
