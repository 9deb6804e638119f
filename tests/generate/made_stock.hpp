// Sheets and catalogues for questions of what to buy, and the same questions made up from nothing.
#pragma once

#include <cstddef>
#include <vector>

#include <pelage/kit/buy.hpp>

#include "generate/dice.hpp"

namespace generate {

/// So many sheets, each with a length and a direction of its own for every zone that isn't prepared, for
/// all seven coats. `any_length`: at half a millimetre; else lengths that the trade uses.
[[nodiscard]] std::vector<pelage::style> made_sheets(dice& d, std::size_t n, bool any_length);

/// The first so many of the reference's blades in use and all its combs, for an empty drawer.
[[nodiscard]] std::vector<pelage::ware> made_catalogue(std::size_t n);

/// A small question from nothing: ways of one to three items, some of none, some targets without any.
[[nodiscard]] pelage::cover_problem made_stock(dice& d, std::size_t items, std::size_t targets);

}  // namespace generate
