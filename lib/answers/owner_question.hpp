// Private to lib: what an owner reads whose double-coated dog was to be clipped.
#pragma once

#include "answers/owner_page_parts.hpp"

namespace pelage::io {

/// Why it isn't clipped without consent, and what is done in its place: the plan of the sheet that
/// fits, made here. `g` has a question; `plain` has an
/// owner's names for the places.
void say_question(owner_page& page, const groom& g, const plan_request& r, const body& plain);

}  // namespace pelage::io
