// GLPK, called as a library in the same process.
#pragma once

#include "judges/integer_programme.hpp"
#include "judges/verdict.hpp"

namespace judges {

/// Solves the problem written in that form. The time is that of the search alone, without writing the
/// model. `most_seconds` limits it.
[[nodiscard]] verdict by_glpk(const pelage::problem& p, form f, double most_seconds = 60);

}  // namespace judges
