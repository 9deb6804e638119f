// The cheapest visits on a calendar of days, as a problem of whole numbers.
//
// Every kind of visit stops some clocks: a full groom all of them, a bath and brush that of what brushing
// holds, a tidy that of face, feet and sanitary area. Brushing need not hold what is short enough: until
// so many days after a full groom its clock doesn't count. No clock may run out. What lies
// between two full grooms doesn't depend on what lay before the first, so the cheapest calendar is a
// shortest path over full grooms, with a small shortest path inside each interval.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <vector>

#include <pelage/base/units.hpp>

namespace pelage {

/// What is done at a visit. A full groom holds a bath, a brush to the skin and a tidy. A tidy is no
/// bath and doesn't brush to the skin; both may be done at one visit.
enum class visit_work { tidy, bath, bath_and_tidy, full_groom };
inline constexpr std::array<std::string_view, 4> visit_work_names{
    "tidy", "bath and brush", "bath, brush and tidy", "full groom"};
[[nodiscard]] constexpr std::string_view name(visit_work w) {
    return visit_work_names[static_cast<std::size_t>(w)];
}
[[nodiscard]] constexpr bool brushes(visit_work w) {
    return w != visit_work::tidy;
}
[[nodiscard]] constexpr bool tidies(visit_work w) {
    return w != visit_work::bath;
}

/// How many days each clock runs; each at least 1.
struct visit_clocks {
    int full = 1;              ///< from one full groom to the next
    std::optional<int> brush;  ///< from brush to brush; none: nothing that brushing must hold
    std::optional<int> tidy;   ///< none: nothing to tidy
    int length = 0;  ///< up to so many days after the full groom no brush is due, at least 0
    friend bool operator==(const visit_clocks&, const visit_clocks&) = default;
};

/// On day `on` the last full groom lies 1 to `within` days back.
struct fresh_by {
    int on = 0;      ///< the day, from today as 0
    int within = 1;  ///< at least 1
};

/// A visit: a day, counted from today as day 0, and what is done.
struct booking {
    int on = 0;                          ///< the day, from 0
    visit_work what = visit_work::tidy;  ///< what is done
    friend bool operator==(const booking&, const booking&) = default;
};

/// The problem. A visit on a day comes before its end: a clock of 28 days allows the 28th.
struct schedule_problem {
    int last = 0;            ///< nothing may run out up to this day, included; at least 1
    std::vector<bool> open;  ///< last + 1 days from day 0: whether a visit can be
    int gap = 1;             ///< visits lie at least so many days apart; at least 1
    /// Each over 0; a bath with a tidy costs no less than either alone.
    std::array<work, visit_work_names.size()> costs{};
    visit_clocks first;           ///< until the first full groom booked
    visit_clocks later;           ///< after it
    int full_ago = 0;             ///< the last full groom, in days before day 0; 0: that very day
    int brush_ago = 0;            ///< the last of either, at most full_ago
    int tidy_ago = 0;             ///< the last tidy, in days before day 0
    std::vector<fresh_by> fresh;  ///< each on a day that isn't open, from day 1 to `last`
};

/// The first day on which a visit can be at all; nothing if there is none.
[[nodiscard]] std::optional<int> first_open(const schedule_problem& p);

/// When each clock of a dog runs out that had its last visits on those days.
struct deadlines {
    int full = 0;                       ///< last day for the full groom
    std::optional<int> brush;           ///< none: that clock doesn't run
    std::optional<int> tidy;            ///< none: that clock doesn't run
    [[nodiscard]] int soonest() const;  ///< of those that run
};
/// The last full groom, the last brush and the last tidy by day; days before day 0 are negative.
struct last_visits {
    int full = 0;   ///< the day
    int brush = 0;  ///< the day
    int tidy = 0;   ///< the day
};
[[nodiscard]] deadlines deadlines_after(const schedule_problem& p, const last_visits& v);

/// What the visits cost together.
[[nodiscard]] work cost_of(const schedule_problem& p, const std::vector<booking>& visits);

/// Whether these visits, in the order of days, let no clock run out and fall on days on which a visit
/// can be.
[[nodiscard]] bool keeps(const schedule_problem& p, const std::vector<booking>& visits);

/// The cheapest visits that let no clock run out; of several the one whose first difference is the
/// later day, then the earlier in visit_work. Nothing if there are none. Where the last full groom lies
/// before day 0, a clock that runs out before the first day on which a visit can be may run until then.
[[nodiscard]] std::optional<std::vector<booking>> cheapest(const schedule_problem& p);

}  // namespace pelage
