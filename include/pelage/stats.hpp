// The few distributions the models need, by name. Boost.Math stays inside lib/stats.cpp.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>

namespace pelage {

/// A probability or share, 0 to 1. Dimensionless, so a plain double.
using chance = double;

/// P(Z <= z) for a standard normal Z; z finite or infinite.
[[nodiscard]] chance normal_cdf(double z);

/// z with P(Z <= z) = p. Throws error(range) unless 0 < p < 1.
[[nodiscard]] double normal_quantile(chance p);

/// Log standard deviation of a lognormal with coefficient of variation `cv` >= 0.
[[nodiscard]] inline double log_sd_from_cv(double cv) {
    return std::sqrt(std::log1p(cv * cv));
}

/// Gauss-Legendre nodes and weights on [-1, 1].
struct legendre_rule {
    static constexpr std::size_t size = 15;
    std::array<double, size> x{};
    std::array<double, size> w{};
};

/// The rule, computed once.
[[nodiscard]] const legendre_rule& legendre();

/// Nodes and weights of a mean over a standard normal: the sum of w[i] * f(x[i]) is the mean of
/// f(Z), exactly for polynomials up to degree 2 * size - 1 (Gauss-Hermite).
struct normal_rule {
    static constexpr std::size_t size = 12;
    std::array<double, size> x{};
    std::array<double, size> w{};
};

/// The rule, computed once.
[[nodiscard]] const normal_rule& normal_nodes();

/// Mean of `f(Z)`, Z standard normal, for a smooth f.
template <class F>
[[nodiscard]] double normal_mean(F&& f) {
    const normal_rule& rule = normal_nodes();
    double sum = 0.0;
    for (std::size_t i = 0; i < normal_rule::size; ++i) {
        sum += rule.w[i] * f(rule.x[i]);
    }
    return sum;
}

/// Integral of `f` over [a, b] in `panels` equal panels of the rule; 0 if b <= a. Exact for
/// piecewise polynomials up to degree 29 whose joints fall on panel edges.
template <class F>
[[nodiscard]] double integrate(F&& f, double a, double b, int panels) {
    if (!(b > a)) {
        return 0.0;
    }
    const legendre_rule& rule = legendre();
    const double half = (b - a) / (2.0 * panels);
    double sum = 0.0;
    for (int p = 0; p < panels; ++p) {
        const double middle = a + half * (2.0 * p + 1.0);
        for (std::size_t i = 0; i < legendre_rule::size; ++i) {
            sum += rule.w[i] * f(middle + half * rule.x[i]);
        }
    }
    return sum * half;
}

}  // namespace pelage
