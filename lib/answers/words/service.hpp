// Private to lib: what is booked and how long the whole of it takes, in words.
#pragma once

#include <string>

#include <pelage/planner/appointment.hpp>

namespace pelage::io {

/// "Whole appointment, about 131 min: look 10, before the bath 6, bath and dry 45, ...".
/// `broken_up`: ", in two or three goes", or empty.
[[nodiscard]] std::string appointment_words(const appointment& a, const std::string& broken_up);

/// What is done at a step that no plan tells of; empty for the plan's own and the look.
[[nodiscard]] std::string step_work_words(service_step s);

}  // namespace pelage::io
