// The planner and general solvers on the same problems, timed.
#pragma once

#include <cstdint>
#include <functional>
#include <string>
#include <vector>

#include "judges/verdict.hpp"

namespace bench {

/// Which time is meant: on the wall, or spent on a processor, which others on the machine disturb less.
enum class clock_kind { wall, processor };

/// What one solver did with the first so many problems of a class.
struct record {
    std::string who;
    std::vector<double> seconds;     ///< one per problem it was given; the limit where it ran out
    std::vector<bool> proven;        ///< one per problem
    std::vector<std::int64_t> cost;  ///< one per problem, where proven; -1: there is no plan
    std::string trouble;             ///< why it wasn't run, or not to the end

    [[nodiscard]] std::size_t proofs() const;
};

/// The planner on every problem in turn, each once, until `most_seconds` are used up.
[[nodiscard]] record ours(const std::vector<pelage::problem>& problems, clock_kind by,
                          double most_seconds);

/// A general solver: what it says of a problem within so many seconds.
struct judge {
    std::string name;
    std::function<judges::verdict(const pelage::problem&, double)> ask;
    double start =
        0;  ///< seconds it takes for next to nothing; taken off what it takes for a problem
};

/// The general solvers, each with its start measured now.
[[nodiscard]] std::vector<judge> general_solvers(clock_kind by);

/// How long a judge may take.
struct patience {
    double a_problem = 10;  ///< seconds
    double a_class = 30;    ///< no further problem is begun after that
};

/// One judge on the problems in turn, without its start.
[[nodiscard]] record judged(const judge& j, const std::vector<pelage::problem>& problems,
                            clock_kind by, const patience& limits);

/// Problems for which b has a plan that costs less than what a calls the least: a is wrong there.
[[nodiscard]] std::vector<std::size_t> dearer(const record& a, const record& b);

/// Median over the problems both were given of b's time by a's. A problem that b did not prove counts
/// with the time it was allowed.
[[nodiscard]] double ratio(const record& a, const record& b);

}  // namespace bench
