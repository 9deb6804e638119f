// What to buy as an integer programme, for solvers that know nothing of it.
#pragma once

#include <cstddef>

#include <pelage/kit/buy.hpp>

#include "judges/integer_programme.hpp"

namespace judges {

/// At most `most` items so that most weight is met; its least cost is less the weight met. One 0-1
/// column an item, one from 0 to 1 a target (targets that the same ways meet as one) and one a way of
/// several items; only items are whole, the others are so by themselves.
[[nodiscard]] integer_programme written(const pelage::cover_problem& p, std::size_t most);

}  // namespace judges
