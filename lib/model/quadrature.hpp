// Private to lib: what the learning of rates integrates and climbs with.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/base/stats.hpp>
#include <pelage/model/learning.hpp>

namespace pelage::learning_math {

inline constexpr double infinity = std::numeric_limits<double>::infinity();
// ln of rates no hair grows at, so that nothing overflows on the way
constexpr double slowest = -30.0;
constexpr double fastest = 30.0;
// standard deviations beyond which nothing shows in ten digits, and the same as a fall of ln p
constexpr double wide = 6.5;
constexpr double negligible = 25.0;
// a panel of the quadrature, in standard deviations of what is integrated over it
constexpr double panel = 1.9;
inline const double half_log_two_pi = 0.5 * std::log(2.0 * std::numbers::pi);

struct quadrature_node {
    double at = 0.0;
    double weight = 0.0;
};

inline void add_panels(std::vector<quadrature_node>& to, double a, double b, double widest) {
    constexpr double most = 200.0;
    const int panels = static_cast<int>(std::clamp(std::ceil((b - a) / widest), 1.0, most));
    const legendre_rule& rule = legendre();
    const double half = (b - a) / (2.0 * panels);
    for (int p = 0; p < panels && b > a; ++p) {
        const double middle = a + half * (2.0 * p + 1.0);
        for (std::size_t i = 0; i < legendre_rule::size; ++i) {
            to.push_back({middle + half * rule.x[i], half * rule.w[i]});
        }
    }
}

/// Nodes over [a, b], with no panel across one of the bends (in ascending order).
inline std::vector<quadrature_node> nodes_over(double a, double b, const std::vector<double>& bends,
                                               double widest) {
    std::vector<quadrature_node> out;
    for (const double bend : bends) {
        if (bend > a && bend < b) {
            add_panels(out, a, bend, widest);
            a = bend;
        }
    }
    add_panels(out, a, b, widest);
    return out;
}

/// ln of the sum of exp(x_i).
inline double log_sum(const std::vector<double>& x) {
    const double most = *std::max_element(x.begin(), x.end());
    double sum = 0.0;
    for (const double v : x) {
        sum += v > most - 40.0 ? std::exp(v - most) : 0.0;  // nothing that a double would show
    }
    return most + std::log(sum);
}

inline double log_normal_density(double z, double sd) {
    return -0.5 * z * z / (sd * sd) - std::log(sd) - half_log_two_pi;
}

/// x with f(x) = p between `low` and `high`, f rising.
template <class F>
double inverse(const F& f, chance p, double low, double high) {
    for (int i = 0; i < 60 && high - low > 1e-12; ++i) {
        const double middle = 0.5 * (low + high);
        (f(middle) < p ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// Uphill from `x` in steps of `width` and less, to a tenth of it or so.
template <class F>
double climb(const F& f, double x, double width) {
    double top = f(x);
    for (double step = width; step > 0.1 * width;) {
        const double up = f(x + step);
        const double down = f(x - step);
        if (std::max(up, down) > top) {
            x += up > down ? step : -step;
            top = std::max(up, down);
        } else {
            step *= 0.5;
        }
    }
    return x;
}

/// No error (mm) and no spread that vanishes in the digits of a double beside what it is added to.
constexpr double least_error = 1e-7;
constexpr double least_log_sd = 1e-6;

inline void check(const regrowth_interval& readings, const learning_law& law) {
    const bool sound = std::all_of(readings.begin(), readings.end(), [](const reading& r) {
        return in_days(r.after) > 0.0 && in_mm(r.error) >= least_error &&
               std::isfinite(in_mm(r.start)) && std::isfinite(in_mm(r.is)) &&
               std::isfinite(in_days(r.after));
    });
    if (!sound || !(law.dog.log_sd >= least_log_sd) || law.visit_log_sd < 0.0) {
        throw error(errc::range,
                    "learning needs readings after a cut, each with an error, and a prior with a "
                    "spread");
    }
}

}  // namespace pelage::learning_math
