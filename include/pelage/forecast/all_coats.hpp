// A forecast for a dog whose coat nobody has seen.
#pragma once

#include <vector>

#include <pelage/forecast/forecast.hpp>
#include <pelage/model/mix.hpp>

namespace pelage {

/// Puts the dates of a forecast over all coats that a dog may have, as back_of() of mixed_coat.hpp has
/// them; its tables stay those of the coat planned on. With one coat nothing changes.
void over_all_coats(forecast& f, const plan_request& r, const groom& g,
                    const std::vector<coat_chance>& coats);

}  // namespace pelage
