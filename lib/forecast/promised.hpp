// Private to lib: days promised to owners, booked before a diary is made of the rest.
#pragma once

#include <vector>

#include <pelage/forecast/week.hpp>

namespace pelage {

/// Books what was promised to the owners of the question's dogs, in order of days, and changes its problem
/// as diary_question says. Who is promised a day after the last is taken out of it.
void book_promised(const week_request& r, const std::vector<due_dog>& due, diary_question& q);

}  // namespace pelage
