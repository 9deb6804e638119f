// Private to lib: what the kinds of visits are called as keys of JSON, in the order of visit_work.
#pragma once

#include <array>
#include <string_view>

#include <pelage/solver/visit_schedule.hpp>

namespace pelage::io {

inline constexpr std::array<std::string_view, visit_work_names.size()> visit_keys{
    "tidy", "bath_and_brush", "bath_brush_and_tidy", "full_groom"};

}  // namespace pelage::io
