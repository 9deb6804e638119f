// How the coat of a planned groom grows out, as curves: of each part the day on which it has grown to a length,
// beside the length at which it mats and what the dog's record measured.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include <pelage/forecast/forecast.hpp>

namespace pelage {

/// A point of a curve: so long so many days after the groom.
struct grown_to {
    days at{};
    length is{};
};

/// A length that was measured after an earlier groom, as it would be after this one.
struct measured_growth {
    days after{};           ///< since that groom
    length is{};            ///< what this groom leaves, and what had grown then
    std::size_t which = 0;  ///< index into dog::measured
};

/// Places that are left alike and mat alike.
struct growing_part {
    std::vector<place> places;      ///< in the order of forecast::zones
    length start{};                 ///< left by the groom; 0 of a jacket clipped near the skin
    std::optional<length> prone{};  ///< where it mats: 1 in 2 such dogs; none: it doesn't by length
    length prone_low{};             ///< 1 in 10 mat at that already
    length prone_high{};            ///< 1 in 10 not before that
    /// Ascending: the days by which 1 in 10, 1 in 2, 9 in 10 such dogs have grown so long, so the fastest
    /// first. Each begins at `start` on day 0, and ends on the day asked for or where that hair stops.
    std::array<std::vector<grown_to>, 3> curves{};
    std::vector<measured_growth> measured{};
};

/// The parts, the first to mat first; without any where nothing that is known of the coat grows.
struct growth_course {
    std::vector<growing_part> parts;
    days shown{};  ///< until when
};

/// Of a planned groom; `f` came from forecast_of(r, g). The spread of the matting-prone length is the dog's own
/// once that was learned. Reckoned as forecast_of reckons its days.
[[nodiscard]] growth_course course_of(const plan_request& r, const groom& g, const forecast& f);

}  // namespace pelage
