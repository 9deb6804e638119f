// The visits of the weeks to come: the cheapest with which no interval between two full grooms goes
// wrong at the chance asked.
//
// Three clocks run: the usual interval from full groom to full groom; from brush to brush the clock in which
// brushing holds the coat, which doesn't count while the whole dog is under its matting-prone lengths at the
// chance asked; face, eyes, feet, pads and sanitary area from tidy to tidy. That is the rule of
// model/return_date.hpp with baths between: day d, with the last full groom on f and the last brush on b, is
// fine if d - b is within the clock or P(all under their lengths d - f days after the groom) >= p. Better
// brushing and shorter hair lengthen clocks and shorten none, so they never make a calendar dearer.
// solver/visit_schedule.hpp finds the cheapest visits under the clocks.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include <pelage/model/return_date.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/solver/visit_schedule.hpp>
#include <pelage/trade/days_off.hpp>

namespace pelage {

/// What is asked. Borrowed for the call.
struct calendar_request {
    const plan_request& work;                    ///< the groom it begins with
    date today{};                                ///< the day of that groom
    int weeks = 26;                              ///< 4 to 52
    days_off closed;                             ///< the salon's
    const std::vector<style>* sheets = nullptr;  ///< tried where the dog's own allows no calendar
    bool compare =
        true;  ///< with other chances and other brushing, and why not where there is none
};

/// Which clock a visit comes before.
enum class due { matting, held, tidy, usual, event };
inline constexpr std::array<std::string_view, 5> due_names{"matting", "held by brushing", "tidy",
                                                           "usual interval", "event"};
[[nodiscard]] constexpr std::string_view name(due d) {
    return due_names[static_cast<std::size_t>(d)];
}

/// A clock and the last day it runs.
struct due_clock {
    pelage::due what = pelage::due::usual;  ///< which of the clocks
    date by{};                              ///< its last day
};

/// A visit.
struct calendar_visit {
    date on{};                                 ///< the day
    visit_work what = visit_work::full_groom;  ///< what is done
    work takes{};                              ///< the whole appointment
    std::vector<due_clock> due;  ///< the clock that would run out first without it; then, of a full
                                 ///< groom, its own, if that is another
    std::optional<fresh_day> fresh;  ///< an event it is in time for
};

/// What a calendar comes to.
struct calendar_sum {
    chance asked = 0.9;                                 ///< in each interval
    brushing habit;                                     ///< at home
    bool possible = false;                              ///< there is one that keeps every clock
    std::array<int, visit_work_names.size()> visits{};  ///< of each kind
    work takes{};                                       ///< all visits together
    /// That nothing goes wrong from the last full groom to the end of the calendar.
    chance throughout = 0.0;
    chance least = 1.0;  ///< the least of any interval on the last day on which length counts
    /// Whether length counts on any day; else brushing holds the coat from visit to visit, and there is no
    /// chance to tell.
    bool by_chance = false;

    [[nodiscard]] int number() const;  ///< of visits, all kinds together
};

/// Why no calendar is possible, and what would make one possible; all found by trying.
struct calendar_blocked {
    date after{};  ///< the last day up to which there is one
    /// Clocks that can't be kept even if no other ran. None: each could be kept, but not all together.
    std::vector<due> clocks;
    visit_clocks runs;      ///< how long they run
    bool days_off = false;  ///< all clocks could be kept if every day were open
    // what else would do; a tidy, a usual interval or an event that can't be kept is let go for it
    std::optional<habit> brush;       ///< the least brushing to the skin that would do
    std::optional<int> percent;       ///< the most of the sheet's lengths that would do
    std::vector<std::string> styles;  ///< titles of sheets that would do
};

/// The calendar.
struct calendar {
    date from{};             ///< the last full groom: today's, or the last in the dog's file
    bool from_today = true;  ///< it is today's
    bool matted = false;     ///< mats found since then: due now
    date until{};            ///< the last day
    work today_takes{};      ///< today's groom, where it is one
    std::vector<calendar_visit> visits;  ///< in their order
    calendar_sum sum;                    ///< what they come to
    std::optional<std::size_t>
        weekday;                        ///< every visit is on this day of the week, at no more cost
    std::vector<calendar_sum> chances;  ///< the same dog at other chances
    std::vector<calendar_sum> habits;   ///< the same dog brushed otherwise, from none to daily
    std::vector<place> first;           ///< the first to mat
    std::vector<place> held;            ///< only brushing holds these between visits
    bool mats_by_length = true;         ///< false: this coat doesn't mat by its length
    bool clips = true;                  ///< the full groom clips the jacket
    std::vector<date> too_far;          ///< events that lie after the last day
    std::optional<calendar_blocked> blocked;  ///< why there is none
};

/// The calendar after the planned groom `g`, which came from make_plan(r.work). If the dog's file has
/// a full groom on a day before today, the calendar goes on from its visits and `g` only tells the
/// lengths; later grooms are taken to find no mats and no hurt skin.
[[nodiscard]] calendar calendar_of(const calendar_request& r, const groom& g);

/// Some zones that must stay under their matting-prone lengths for `t`.
struct kept_interval {
    std::vector<kept_zone> zones;  ///< that hair is kept on
    days t{};                      ///< days from the last cut
};

/// P(all zones are fine to the end of every interval). The dog's own rate and matting-prone factor are
/// shared by all intervals, the rate's spread from visit to visit (`visit_log_sd`, within law.rate) and
/// the start error are drawn anew in each: the product of the intervals' chances, given what is shared,
/// integrated over it. Of one interval it is all_fine().
[[nodiscard]] chance all_fine_throughout(const std::vector<kept_interval>& intervals,
                                         const shared_law& law, double visit_log_sd);

}  // namespace pelage
