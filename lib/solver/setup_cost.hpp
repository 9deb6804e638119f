// Private to lib: what a plan costs, as a whole number.
#pragma once

#include <cstdint>
#include <limits>
#include <span>

#include <pelage/solver/setup_problem.hpp>

namespace pelage::planning {

using cost_t = std::int64_t;  ///< thousandths of a minute
inline constexpr cost_t none = std::numeric_limits<cost_t>::max();

/// What a plan costs by the definition; none if it overspends. Throws error(range) if it isn't one.
[[nodiscard]] cost_t price_of(const problem& p, std::span<const std::size_t> setup);

}  // namespace pelage::planning
