// What a general solver says of a problem.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include <pelage/solver/setup_problem.hpp>

#include "judges/stopwatch.hpp"

namespace judges {

struct verdict {
    bool proven = false;             ///< it says: optimal, or that there is no plan
    std::vector<std::size_t> setup;  ///< its plan; empty if it found none
    std::int64_t cost = 0;           ///< of that plan by cost_of(), thousandths of a minute
    seconds_spent spent;
    std::string trouble;  ///< what went wrong, in words; empty: nothing
};

/// The verdict for a plan read back from a solver; says so where the plan isn't one.
[[nodiscard]] inline verdict judged(const pelage::problem& p, std::vector<std::size_t> setup,
                                    bool proven) {
    verdict v;
    v.proven = proven;
    v.cost = pelage::in_mmin(pelage::cost_of(p, setup));
    v.setup = std::move(setup);
    return v;
}

}  // namespace judges
