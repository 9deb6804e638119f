// What a groom leaves to be recorded if it went as planned.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include <pelage/planner/plan.hpp>
#include <pelage/trade/log_entry.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// Words for exactly those places, as few as groups and zones allow; the narrower ones last.
[[nodiscard]] std::vector<std::string> words_for(const part_index& parts, const body& b,
                                                 const std::vector<place>& places);

/// A full groom on that day with the tools of the plan and what they leave; of a groom in visits only what is done
/// today, which is no full one, unless `all` of it was done. What is said in `told` takes
/// the place of what the plan leaves there; "all" of everything. Where no work is planned neither tools nor
/// lengths. Its number isn't set, nor what nobody can plan: mats, skin, minutes.
[[nodiscard]] log_entry planned_entry(const plan_request& r, const groom& g, const date& on,
                                      const std::vector<logged_length>& told = {},
                                      bool all = false);

/// Puts what is told in the place of what was planned wherever it takes in all the places of that; what is
/// told of a narrower place stands beside it.
void put_told(const part_index& parts, std::vector<logged_length>& planned,
              const logged_length& told);
void put_told(const part_index& parts, std::vector<logged_tool>& planned, const logged_tool& told);

/// Takes away what the plan would have left where another tool than the planned one was used: nobody knows that,
/// unless it was measured.
void forget_left(const part_index& parts, std::vector<logged_length>& left,
                 const std::vector<logged_tool>& planned, const logged_tool& told);

}  // namespace pelage
