// Detachable clipper blades: what is etched on them and what that means.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>

namespace pelage {

/// How a blade's teeth are cut. Unknown counts as skip wherever skin is at stake.
enum class teeth { full, skip, unknown };
/// What shape of blade it is. `toe` blades are narrow: the fraction on them is their width.
enum class edge { standard, wide, toe, adjustable };

inline constexpr std::array<std::string_view, 3> teeth_names{"full", "skip", "unknown"};
inline constexpr std::array<std::string_view, 4> edge_names{"standard", "wide", "toe",
                                                            "adjustable"};
[[nodiscard]] constexpr std::string_view name(teeth t) {
    return teeth_names[static_cast<std::size_t>(t)];
}
[[nodiscard]] constexpr std::string_view name(edge e) {
    return edge_names[static_cast<std::size_t>(e)];
}

/// One blade of the reference or of a kit.
struct blade {
    std::string id;               ///< as the trade writes it: "10", "7F", "5/8 long", "5/8 toe"
    std::string etched;           ///< the number without tooth or edge letters: "10", "7", "5/8"
    std::string in_inch;          ///< the trade's fraction, "1/8"; may be empty
    figure<length> stated;        ///< etched length with the spread over makers (mm, > 0)
    teeth cut = teeth::unknown;   ///< of its teeth
    edge shape = edge::standard;  ///< of its edge
    bool rare = false;            ///< made, but seldom seen
    std::optional<length> reach;  ///< longest setting of an adjustable blade (mm)
    std::string note;             ///< may be empty
    std::string setting{};        ///< adjustable: the mark its lever stands on, "1.5 mm"
};

/// Whether the teeth must be taken as skip teeth: they are, or nobody knows.
[[nodiscard]] inline bool skips(const blade& b) {
    return b.cut != teeth::full;
}

}  // namespace pelage
