// Private to lib: how the first part to mat grows, in plain characters.
#pragma once

#include <string>

#include <pelage/answers/write.hpp>
#include <pelage/forecast/growth_course.hpp>

namespace pelage::io {

/// A heading, a small plot of lengths over days in at most o.width columns, and what its marks mean; nothing
/// where nothing grows, or in fewer columns than show it. Ends in a newline.
[[nodiscard]] std::string growth_in_text(const growth_course& c, const forecast& f,
                                         const plan_request& r, const print_options& o);

}  // namespace pelage::io
