// Private to lib: what stands beside a plan, as text.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/planner/alternatives.hpp>

namespace pelage::io {

/// The lines of each section, without its heading; empty if there is nothing to say.
[[nodiscard]] std::string other_ways_text(const beside& b, const groom& g, const plan_request& r,
                                          const print_options& o,
                                          const std::optional<return_date>& when = std::nullopt);
[[nodiscard]] std::string grow_back_text(const beside& b, const groom& g, const plan_request& r,
                                         const print_options& o);
[[nodiscard]] std::string without_text(const beside& b, const groom& g, const plan_request& r,
                                       const print_options& o);
[[nodiscard]] std::string why_text(const beside& b, const groom& g, const plan_request& r,
                                   const print_options& o);
/// Why those places have their setup, a line for each reason; empty without reasons at hand.
[[nodiscard]] std::vector<std::string> why_lines(const beside& b,
                                                 const std::vector<std::size_t>& zones,
                                                 const groom& g, const plan_request& r,
                                                 const print_options& o);
[[nodiscard]] std::string stuck_text(const beside& b, const groom& g, const plan_request& r,
                                     const print_options& o);

/// "in 6 to 13 weeks", "in about 1 week", "perhaps never".
[[nodiscard]] std::string weeks_in_words(const days& early, const days& late);

/// What a way to grow back leaves where it takes coat down: "3.2 mm", "2 to 3.2 mm".
[[nodiscard]] std::string even_in_words(const regrowth_option& w, length_unit u);

}  // namespace pelage::io
