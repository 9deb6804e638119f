// Two style sheets on one dog: where they differ, and what the difference costs.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/forecast/calendar.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/trade/held_tool.hpp>

namespace pelage {

/// What one of the sheets comes to.
struct sheet_cost {
    groom plan;        ///< by that sheet
    return_date when;  ///< back then
    std::optional<calendar>
        visits;              ///< of half a year; none: today isn't known, or nothing is planned
    std::size_t setups = 0;  ///< different ones
    std::vector<held_tool> tools;  ///< blades and combs taken up, each once, in working order

    /// To clip and finish, before the bath and after.
    [[nodiscard]] work takes() const { return plan.before + plan.after; }
};

/// A place of which the sheets say something else.
struct sheet_difference {
    place at;            ///< which place
    instruction first;   ///< what the first wants there
    instruction second;  ///< what the second wants there
};

/// The comparison; both were planned for the same dog, brushed alike.
struct sheet_comparison {
    const style* first = nullptr;          ///< never none
    const style* second = nullptr;         ///< never none
    std::vector<sheet_difference> differ;  ///< in reference order
    std::size_t alike = 0;                 ///< places of which they say the same
    sheet_cost of_first;                   ///< what it comes to
    sheet_cost of_second;                  ///< what it comes to
};

/// How many weeks the visits are counted over.
inline constexpr int half_a_year = 26;

/// Compares two requests for one dog that differ in their sheets alone. `closed`: the salon's days off.
[[nodiscard]] sheet_comparison compare_sheets(const plan_request& first, const plan_request& second,
                                              const days_off& closed);

/// Whether a direction matters: the place is clipped, by a comb or without.
[[nodiscard]] bool by_clipper(const instruction& i);

/// Whether two instructions ask the same; a direction counts where one of them clips.
[[nodiscard]] bool same_wish(const instruction& a, const instruction& b);

}  // namespace pelage
