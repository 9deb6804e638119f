// Private to lib: when a stripped jacket comes off again, in words.
#pragma once

#include <string>

#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// "13 to 26 weeks".
[[nodiscard]] std::string strip_weeks(const matting_rules& m);
/// "The jacket is rolled in between and stripped again in 13 to 26 weeks.", where it was stripped; else empty.
[[nodiscard]] std::string jacket_in_brief(const groom& g, const plan_request& r);
/// The same with that the dates are of the rest.
[[nodiscard]] std::string strip_in_brief(const groom& g, const plan_request& r);

}  // namespace pelage::io
