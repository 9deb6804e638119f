// Private to lib: a dog's clocks, and its calendar as a problem of whole numbers.
#pragma once

#include <optional>
#include <vector>

#include <pelage/forecast/calendar.hpp>

namespace pelage {

/// What is left of the coat after a full groom.
struct coat_to_keep {
    std::vector<kept_zone> zones;
    std::vector<std::size_t> index;  ///< into groom::zones
    shared_law law;
    days usual{};
    std::optional<days> clock;  ///< in which brushing holds it; none: nothing of it mats by length
};

/// The grooms a calendar is made of: today's or the last, and those to come, which find no mats and no
/// hurt skin. With their coats under one brushing habit.
struct grooms_to_come {
    groom steady;
    coat_to_keep first;
    coat_to_keep later;
    work bath_and_tidy{};  ///< the appointment of the service "tidy", as a plan counts it
    work mats{};           ///< what mats found since the last full groom add to the next one
};

/// Where a dog stands today by its file: days since the last of each; 0 for today's groom.
struct last_by_file {
    int full = 0;
    int brush = 0;
    int tidy = 0;
};
[[nodiscard]] last_by_file last_by_file_of(const calendar_request& r);

/// Plans the groom to come. `g` came from make_plan(r.work).
[[nodiscard]] grooms_to_come grooms_of(const calendar_request& r, const groom& g);
/// The same grooms under another habit.
[[nodiscard]] grooms_to_come brushed_otherwise(const calendar_request& r, const groom& g,
                                               const grooms_to_come& now, const brushing& b);

/// The problem at chance `p`; nothing of it needs the dog any more. Its costs are the salon's minutes
/// and the owner's trip.
[[nodiscard]] schedule_problem problem_of(const calendar_request& r, const grooms_to_come& c,
                                          chance p);

/// The last day after a full groom on which the whole dog is under its lengths at chance `p`, at most
/// `cap`, brushed or not.
[[nodiscard]] int length_clock(const coat_to_keep& c, chance p, const days& cap);

/// Why there is no calendar for `p`, found by trying. `c` holds the grooms of `g`.
[[nodiscard]] calendar_blocked blocked_of(const calendar_request& r, const groom& g,
                                          const grooms_to_come& c, chance p);

}  // namespace pelage
