// Private to lib: what a sheet says, in words, the same in every answer.
#pragma once

#include <string>

#include <pelage/base/length_text.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/style.hpp>

namespace pelage::io {

/// "at most 25 mm", "19 mm to 51 mm".
[[nodiscard]] std::string span_words(const limit& l, length_unit u);

/// "13" or "1/2": a length whose unit stands beside it.
[[nodiscard]] inline std::string bare_number(const length& l, length_unit u) {
    return u == length_unit::mm ? number(l) : fraction_of_inch(l);
}

/// "13 mm, clip, with the lay".
[[nodiscard]] std::string wish_words(const instruction& i, length_unit u);

/// "In summer (1 June to 30 June): every length at 80 %".
[[nodiscard]] std::string season_words(const season& s, length_unit u);

/// The minutes of a full groom by its plan, look to handing back, whatever the sheet says it takes.
[[nodiscard]] work whole_by_plan(const groom& g, const plan_request& r);

}  // namespace pelage::io
