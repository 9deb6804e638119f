// A clip that is a question to the owner, and what fits in its place.
#pragma once

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// The plan that asks, with the plan of what fits in its place below it; `g.question` holds.
[[nodiscard]] document asked_first(const groom& g, const plan_request& r, const print_options& o,
                                   const mixed_coat* unseen, plan_told as);

}  // namespace pelage::io
