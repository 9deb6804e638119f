// Private to lib: what stands beside a plan, as lines of a document; none where there is nothing to say.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/planner/alternatives.hpp>

#include "answers/words/places.hpp"

namespace pelage::io {

/// Other ways, a line each; `when` is the plan's own date.
[[nodiscard]] std::vector<line> other_ways(const beside& b, const groom& g, const plan_request& r,
                                           const print_options& o,
                                           const std::optional<return_date>& when);
/// How it grows back after mats.
[[nodiscard]] std::vector<line> growing_back(const beside& b, const groom& g, const plan_request& r,
                                             const print_options& o);
/// The plan without each tool.
[[nodiscard]] std::vector<line> without_tools(const beside& b, const groom& g,
                                              const plan_request& r, const print_options& o);
/// Why each setup, and what the next best one costs.
[[nodiscard]] std::vector<line> reasons(const beside& b, const groom& g, const plan_request& r,
                                        const print_options& o);
/// Why those places have their setup, a text for each reason; none without reasons at hand.
[[nodiscard]] std::vector<std::string> reasons_in_words(const beside& b, const zone_list& zones,
                                                        const groom& g, const plan_request& r,
                                                        const print_options& o);
/// What isn't to be done as asked, what is in the way and what would free it.
[[nodiscard]] std::vector<line> stuck_places(const beside& b, const groom& g, const plan_request& r,
                                             const print_options& o);
/// The same in brief: what is in the way once, behind it the places, each with what would help.
[[nodiscard]] std::vector<std::string> stuck_in_brief(const beside& b, const groom& g,
                                                      const plan_request& r,
                                                      const print_options& o);

/// A few places by name, many by the parts of the dog they are on; all by name under --explain.
[[nodiscard]] std::string in_short(const place_words& places, const zone_list& which,
                                   const print_options& o);

/// "in 6 to 13 weeks", "in about 1 week", "perhaps never".
[[nodiscard]] std::string weeks_in_words(const days& early, const days& late);
/// What a way to grow back leaves where it takes coat down: "3.2 mm", "2 to 3.2 mm".
[[nodiscard]] std::string even_in_words(const regrowth_option& w, length_unit u);
/// "back at 25 mm in 6 to 13 weeks".
[[nodiscard]] std::string back_in_words(const regrowth_option& w, length_unit u);

}  // namespace pelage::io
