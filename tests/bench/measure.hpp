// Times and counts of one row of measurements, and how people read them.
#pragma once

#include <string>
#include <vector>

namespace bench {

/// The value that a share `q` (0 to 1) of the sorted values doesn't exceed; the largest for 1. `values`
/// in any order, not empty.
[[nodiscard]] double quantile(std::vector<double> values, double q);
[[nodiscard]] inline double median(std::vector<double> values) {
    return quantile(std::move(values), 0.5);
}

/// "43 us", "1.2 ms", "6.0 s": three digits at most.
[[nodiscard]] std::string time_text(double seconds);
/// "840", "1.2 k", "635 k", "4.0 M".
[[nodiscard]] std::string count_text(double n);

}  // namespace bench
