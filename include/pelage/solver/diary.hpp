// The salon's diary: every dog's visits of the weeks to come on days and groomers, at least cost, no
// groomer over hours.
//
// A dog's clocks run from full groom to full groom, and, where something doesn't last as long as that, from
// visit to visit (what brushing holds, but for the days on which the coat is short enough; face and feet).
// A visit between brushes and tidies. Coming after a clock has run out costs so
// much a day; coming early costs the visits that follow sooner. What has run of the clocks by the last day
// counts as its share of the visits that will stop them. Groomers' hours and tables are hard.
//
// The bound: with a price on each day's minutes in place of the hours (what they hold is paid back), the
// dogs part, and each one's cheapest visits are a shortest path; what all cost together, less the hours at
// their prices, is no more than any diary costs, whatever the prices (>= 0). The prices are raised where
// days run over. The diary itself puts dogs one by one, then takes out each in turn and puts it anew.
#pragma once

#include <cstddef>
#include <functional>
#include <optional>
#include <vector>

#include <pelage/base/units.hpp>

namespace pelage {

/// A dog as the diary sees it; days count from day 0.
struct diary_dog {
    int full_clock = 1;  ///< days from full groom to full groom, at least 1
    std::optional<int>
        brush_clock;       ///< days from visit to visit; none: nothing that has to be brushed
    int length_clock = 0;  ///< up to so many days after a full groom no such visit is due
    std::optional<int>
        tidy_clock;       ///< days from visit to visit, whatever the length; none: no tidies
    int full_due = 0;     ///< the day on which the first of these runs out; before day 0: overdue
    int between_due = 0;  ///< likewise the sooner of the others, where there is one
    int visit_ago = 0;    ///< the last visit, in days before day 0
    work full{};          ///< minutes of the salon at a full groom, over 0
    work between{};       ///< and at a visit between, over 0 where there is one
    std::vector<bool> cannot;  ///< days on which its owner can't come; short: all others can
    std::optional<std::size_t> groomer;  ///< it goes to this one alone

    /// Whether visits between full grooms may be due.
    [[nodiscard]] bool comes_between() const { return brush_clock || tidy_clock; }
};

/// The problem.
struct diary_problem {
    int last = 0;                          ///< the last day, at least 0
    int gap = 1;                           ///< visits of a dog lie at least so many days apart
    std::vector<std::vector<work>> hours;  ///< by groomer, then by day from 0 to `last`; 0: away
    std::vector<work> tables;              ///< what the tables hold by day; empty: enough
    std::vector<diary_dog> dogs;           ///< each with its clocks and days
    work trip{};                           ///< what a visit costs its owner, >= 0
    work late_full{};                      ///< a day of a full groom after its clock, >= 0
    work late_between{};                   ///< a day of any visit after the other clock, >= 0
    int most_early = 14;  ///< nobody is asked to come so many days before the sooner clock ends
    int most_late = 28;   ///< nor after it; later means: not held
};

/// One visit of the diary.
struct diary_visit {
    std::size_t dog = 0;      ///< index into the problem's dogs
    int on = 0;               ///< the day, from 0
    bool full = true;         ///< a full groom, else what comes between
    std::size_t groomer = 0;  ///< index into the problem's hours
    int late = 0;             ///< days after the clock that ended first; 0 or less: in time
};

/// Why a visit could not be held.
enum class lapse_reason {
    full_book,         ///< every day in reach is full
    no_common_day,     ///< its owner and whoever may groom it share no day in reach
    longer_than_a_day  ///< on none of these days anybody works as long as its full groom takes
};

/// A visit that could not be held from `due` on.
struct diary_lapse {
    std::size_t dog = 0;                            ///< index into the problem's dogs
    int due = 0;                                    ///< the day its clock runs out
    lapse_reason reason = lapse_reason::full_book;  ///< why nothing was found
};

/// The diary found, and how good it is.
struct diary {
    std::vector<diary_visit> visits;  ///< by day, then groomer, then dog
    std::vector<diary_lapse> lapses;  ///< by day, then dog
    work cost{};   ///< minutes, trips, days late, the clocks' run; a lapse as if it came too late
    work bound{};  ///< no diary of this problem costs less; proven
    /// (cost - bound) / cost; 0 where nothing has to be done.
    [[nodiscard]] double gap() const;
};

/// Hears how far the search is: before each round its number, from 1, and how many there are at most.
using diary_listener = std::function<void(int round, int most)>;

/// The diary. `rounds` times at most the prices of the days are bettered: until the gap is half a hundredth, or
/// after eight of them two. The same problem gives the same diary, whoever hears of it. Throws error(errc::range)
/// where a number is out of the ranges above, and what `told` throws.
[[nodiscard]] diary diary_of(const diary_problem& p, int rounds = 24,
                             const diary_listener& told = {});

/// Every fault of a diary against its problem: a groomer over hours, a table too few, two visits too near,
/// a day on which somebody can't, a clock forgotten. Empty: it holds. For tests and for trust.
[[nodiscard]] std::vector<std::size_t> broken_dogs(const diary_problem& p, const diary& d);

}  // namespace pelage
