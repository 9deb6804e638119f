// Private to lib: what --explain adds to a plan.
#pragma once

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// Why so, what it stands on, why each setup, the plan without each tool, and what was not used.
void say_why(document& d, const groom& g, const std::optional<return_date>& when,
             const plan_request& r, const print_options& o, const beside& b);

}  // namespace pelage::io
