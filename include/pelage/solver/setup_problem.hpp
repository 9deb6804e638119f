// The choice of setups as a problem in integers.
//
// One variable per place (a zone, or one side of it); its values are the setups allowed there. The cost
// of a plan is
//   sum over zones of the cost of the setup chosen there
//   + price of every tool that is held at least once
//   + for every step between neighbours: per_hundredth * max(0, |length - length| - allowance)
// and the minutes of combing out that the chosen setups need must fit in a budget. Costs are
// thousandths of a minute, lengths hundredths of a millimetre. Nothing here knows what a dog is:
// planner/plan.hpp makes the problem, solver/setup_solver.hpp solves it.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include <pelage/base/units.hpp>

namespace pelage {

/// The most a single zone's setup or a tool may cost (thousandths of a minute: 1000 minutes).
inline constexpr std::int32_t dearest = 1'000'000;
/// The longest hair (hundredths of a millimetre: 1 m).
inline constexpr std::int32_t longest_hair = 100'000;
/// The most that every zone and tool at its dearest and every seam at the widest step may cost together
/// (250000 minutes). It lies below 2^28, so that sums of plans don't overflow; check() holds it.
inline constexpr std::int32_t most_cost = 250'000'000;
inline constexpr std::size_t most_zones = 64;
inline constexpr std::size_t most_tools = 64;
inline constexpr std::size_t most_steps = 256;
inline constexpr std::size_t most_setups = 512;

/// A set of tools, one bit each.
using tool_set = std::uint64_t;

/// A seam between two places where a visible step costs.
struct seam_cost {
    std::size_t a = 0;               ///< index of a zone
    std::size_t b = 0;               ///< index of its neighbour
    std::int32_t per_hundredth = 0;  ///< thousandths of a minute per 0.01 mm beyond the allowance
    std::int32_t allowance = 0;      ///< hundredths of a millimetre, >= 0
};

/// A setup that may be chosen in a zone.
struct allowed_setup {
    std::uint16_t setup = 0;  ///< which, below most_setups
    std::int32_t spend = 0;  ///< combing out it needs first (thousandths of a minute), 0 to dearest
    std::int32_t cost = 0;   ///< 0 to dearest
    std::int32_t length = 0;  ///< finished length in hundredths of a millimetre, 0 to longest_hair
    tool_set tools = 0;       ///< tools it holds (list decides the bit)
};

/// The problem.
struct problem {
    std::vector<std::vector<allowed_setup>>
        zones;                        ///< by zone: what is allowed, in order of setups
    std::vector<std::int32_t> price;  ///< per tool, 0 to dearest
    std::vector<seam_cost> seams;     ///< what steps between neighbours cost
    std::int32_t budget =
        0;  ///< combing out the chosen setups may need together (thousandths of a minute), >= 0
};

/// The setup of that number in a zone; nothing where it isn't allowed there.
[[nodiscard]] const allowed_setup* find(const problem& p, std::size_t zone, std::size_t setup);

/// Cost of choosing `setup[z]` in every zone, from the definition above. Throws error(range) if a
/// choice isn't allowed, or if the choices together overspend the budget.
[[nodiscard]] work cost_of(const problem& p, std::span<const std::size_t> setup);

/// Throws error(range) unless every count, cost, length, price and the budget of the problem lies in
/// the bounds that make overflow impossible, and the setups of each zone stand in their order.
void check(const problem& p);

}  // namespace pelage
