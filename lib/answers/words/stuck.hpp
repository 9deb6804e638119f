// Private to lib: what is in the way of a stuck place and what would free it, in words.
#pragma once

#include <string>

#include <pelage/base/length_text.hpp>
#include <pelage/planner/alternatives.hpp>

namespace pelage::io {

/// What bars a setup, in a sentence without its stop.
[[nodiscard]] std::string rule_words(const broken_rule& rule);
/// All that is in the way of a place.
[[nodiscard]] std::string rules_in_words(const infeasible_zone& c);

/// Things that together free a place, and with what it is done then.
[[nodiscard]] std::string freed_in_words(const remedy_set& f, length_unit u);
/// What would free a place, one thing or set of things after the other.
[[nodiscard]] std::string freed_by(const infeasible_zone& c, length_unit u);

}  // namespace pelage::io
