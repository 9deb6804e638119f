#include "bench/measure.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace bench {

namespace {

/// Two digits below 10, whole above.
std::string short_number(double v) {
    char text[32];
    std::snprintf(text, sizeof text, v < 9.95 ? "%.1f" : "%.0f", v);
    return text;
}

}  // namespace

double quantile(std::vector<double> values, double q) {
    std::sort(values.begin(), values.end());
    const auto last = static_cast<double>(values.size() - 1);
    return values[static_cast<std::size_t>(std::ceil(q * last))];
}

std::string time_text(double seconds) {
    if (seconds < 0.9995e-3) {
        return short_number(seconds * 1e6) + " us";
    }
    return seconds < 0.9995 ? short_number(seconds * 1e3) + " ms" : short_number(seconds) + " s";
}

std::string count_text(double n) {
    if (n < 999.5) {
        return std::to_string(std::lround(n));
    }
    return n < 999.5e3   ? short_number(n / 1e3) + " k"
           : n < 999.5e6 ? short_number(n / 1e6) + " M"
                         : short_number(n / 1e9) + " G";
}

}  // namespace bench
