// Instructions a plan takes, counted by callgrind: the same on an idle machine and a busy one.
#pragma once

#include <string>
#include <vector>

#include <pelage/solver/setup_problem.hpp>

namespace bench {

/// The instructions of each plan of the program `counter` (pelage_bench_count) over those problems;
/// fewer, or none, if callgrind isn't there or `most_seconds` weren't enough.
[[nodiscard]] std::vector<double> instructions(const std::string& counter,
                                               const std::vector<pelage::problem>& problems,
                                               double most_seconds);

}  // namespace bench
