// Private to lib: a dog's clocks, and its calendar as a problem of whole numbers.
#pragma once

#include <optional>
#include <vector>

#include <pelage/forecast/calendar.hpp>

namespace pelage {

/// What is left of the coat after a full groom, parted into what counts by its length and what is held
/// by brushing.
struct parted_coat {
    std::vector<kept_zone> free;
    std::vector<std::size_t> free_index;  ///< into groom::zones
    std::vector<std::size_t> held;        ///< likewise
    shared_law law;
    days usual{};
    days clock{};  ///< of what is held
};

/// The grooms a calendar is made of: today's or the last, and those to come, which find no mats and no
/// hurt skin. With their coats under one brushing habit.
struct grooms_to_come {
    groom steady;
    parted_coat first;
    parted_coat later;
};

/// Where a dog stands today by its file: days since the last of each; 0 for today's groom.
struct last_by_file {
    int full = 0;
    int brush = 0;
    int tidy = 0;
};
[[nodiscard]] last_by_file last_by_file_of(const calendar_request& r);

/// Plans the groom to come and parts the coats. `g` came from make_plan(r.work).
[[nodiscard]] grooms_to_come grooms_of(const calendar_request& r, const groom& g);
/// The same grooms under another habit.
[[nodiscard]] grooms_to_come brushed_otherwise(const calendar_request& r, const groom& g,
                                               const grooms_to_come& now, const brushing& b);

/// The problem at chance `p`; nothing of it needs the dog any more. Its costs are the salon's minutes
/// and the owner's trip.
[[nodiscard]] schedule_problem problem_of(const calendar_request& r, const grooms_to_come& c,
                                          chance p);

/// The last day of an interval at chance `p`, at most `cap`; at least 1.
[[nodiscard]] int full_clock(const parted_coat& c, chance p, const days& cap);

/// Why there is no calendar for `p`, found by trying. `c` holds the grooms of `g`.
[[nodiscard]] calendar_blocked blocked_of(const calendar_request& r, const groom& g,
                                          const grooms_to_come& c, chance p);

}  // namespace pelage
