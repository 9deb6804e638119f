// The cheapest plan of a problem, with its proof.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include <pelage/base/units.hpp>
#include <pelage/solver/setup_problem.hpp>

namespace pelage {

/// How sure the plan is the cheapest there is.
struct proof {
    std::int64_t bound = 0;  ///< no plan costs less (thousandths of a minute)
    bool optimal = false;    ///< bound equals the plan's cost
    std::int64_t nodes = 0;  ///< parts of the problem weighed in the search, at most `most_nodes`
    std::size_t ties = 0;    ///< zones in which several setups cost least on their own
};

/// The plan: a setup per zone, what it costs and how sure that is. If there is no plan `setup` is
/// empty and `stuck` says why: zones with no allowed setup, if there are any; otherwise no plan fits
/// in the budget, and `stuck` names the zones in which every allowed setup needs some of it (each of
/// them may well be affordable without the others).
struct solution {
    std::vector<std::size_t> setup;  ///< of each zone the one chosen
    work cost{};                     ///< of all of it
    proof sure;                      ///< that nothing costs less
    std::vector<std::size_t> stuck;  ///< zones for which nothing is allowed
};

/// Parts a search may weigh before it gives up on a proof: a second's work or so. The plan of a dog needs
/// a handful.
inline constexpr std::int64_t usual_nodes = 50'000;

/// The cheapest plan within the budget; of several, the first by zone, then setup. Proven: `bound` equals the
/// cost and `optimal` is set, unless `most_nodes` parts were not enough; then the best plan found,
/// with the bound that was proven. Where that bound equals its cost all the same, it is one of the
/// cheapest, if not the first. Throws error(range) as check() does.
[[nodiscard]] solution solve(const problem& p, std::int64_t most_nodes = usual_nodes);

}  // namespace pelage
