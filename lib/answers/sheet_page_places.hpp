// Private to lib: the places on a sheet's page.
#pragma once

#include <vector>

#include <pelage/answers/sheets.hpp>

namespace pelage::io {

/// What the sheet leaves in each of its places and with what of the kit, those alike together; a table of them for
/// programs; and the customary blades of prep zones it says nothing of. `g`: a plan of the sheet.
void say_places(document& to, const std::vector<sheet_place>& places, const groom& g,
                const plan_request& r, const print_options& o);

}  // namespace pelage::io
