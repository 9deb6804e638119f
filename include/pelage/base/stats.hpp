// The few distributions the models need, by name. Boost.Math stays inside lib/base/stats.cpp.
#pragma once

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace pelage {

/// A probability or share, 0 to 1. Dimensionless, so a plain double.
using chance = double;

/// P(Z <= z) for a standard normal Z; z finite or infinite.
[[nodiscard]] chance normal_cdf(double z);

/// The density of a standard normal.
[[nodiscard]] inline double normal_density(double z) {
    return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
}

/// The same distribution, within 1e-12, for sums over many values: a row of cells a 32nd wide, and
/// five terms of the series about the middle of one. Beyond eight it is 0 or 1.
class normal_table {
  public:
    normal_table();
    [[nodiscard]] chance at(double z) const {
        if (!(z > -reach)) {
            return 0.0;
        }
        if (z >= reach) {
            return 1.0;
        }
        const auto cell = static_cast<std::size_t>((z + reach) * per_unit);
        const row& r = rows_[cell];
        const double x = middle_of(cell);
        const double d = z - x;
        const double x2 = x * x;
        double series = ((x2 - 6.0) * x2 + 3.0) * (1.0 / 120.0);
        series = (x2 - 3.0) * x * (-1.0 / 24.0) + d * series;
        series = (x2 - 1.0) * (1.0 / 6.0) + d * series;
        series = x * -0.5 + d * series;
        return r.cdf + r.density * d * (1.0 + d * series);
    }

    /// The density, within a hundredth of itself: enough to step by.
    [[nodiscard]] double density_at(double z) const {
        if (!(z > -reach) || z >= reach) {
            return 0.0;
        }
        const auto cell = static_cast<std::size_t>((z + reach) * per_unit);
        const double x = middle_of(cell);
        return rows_[cell].density * (1.0 - x * (z - x));
    }

  private:
    struct row {
        double cdf = 0.0;
        double density = 0.0;
    };
    static constexpr double reach = 8.0;
    static constexpr double per_unit = 32.0;
    [[nodiscard]] static double middle_of(std::size_t cell) {
        return (static_cast<double>(cell) + 0.5) * (1.0 / per_unit) - reach;
    }
    // one more than there are: just below the end, z + reach may be rounded up
    std::array<row, static_cast<std::size_t>(2.0 * reach * per_unit) + 1> rows_;
};

/// The table, computed once.
[[nodiscard]] const normal_table& normal_row();

/// z with P(Z <= z) = p. Throws error(range) unless 0 < p < 1.
[[nodiscard]] double normal_quantile(chance p);

/// Log standard deviation of a lognormal with coefficient of variation `cv` >= 0.
[[nodiscard]] inline double log_sd_from_cv(double cv) {
    return std::sqrt(std::log1p(cv * cv));
}

/// Gauss-Legendre nodes and weights on [-1, 1].
struct legendre_rule {
    static constexpr std::size_t size = 10;  ///< of nodes
    std::array<double, size> x{};            ///< nodes, from -1 to 1
    std::array<double, size> w{};            ///< their weights
};

/// The rule, computed once.
[[nodiscard]] const legendre_rule& legendre();

/// Nodes and weights of a mean over a standard normal: the sum of w[i] * f(x[i]) is the mean of
/// f(Z), exactly for polynomials up to degree 2 * size - 1 (Gauss-Hermite).
struct normal_rule {
    static constexpr std::size_t size = 6;  ///< of nodes
    std::array<double, size> x{};           ///< nodes, in standard deviations
    std::array<double, size> w{};           ///< their weights
};

/// The rule, computed once.
[[nodiscard]] const normal_rule& normal_nodes();

/// Visits the nodes of `panels` equal panels of the rule over [a, b], none if b <= a: the sum of
/// weight * f(node) is the integral of f.
template <class Visit>
void each_node(double a, double b, int panels, Visit&& visit) {
    if (!(b > a)) {
        return;
    }
    const legendre_rule& rule = legendre();
    const double half = (b - a) / (2.0 * panels);
    for (int p = 0; p < panels; ++p) {
        const double middle = a + half * (2.0 * p + 1.0);
        for (std::size_t i = 0; i < legendre_rule::size; ++i) {
            visit(middle + half * rule.x[i], half * rule.w[i]);
        }
    }
}

/// Integral of `f` over [a, b] in `panels` equal panels of the rule; 0 if b <= a. Exact for
/// piecewise polynomials up to degree 19 whose joints fall on panel edges.
template <class F>
[[nodiscard]] double integrate(F&& f, double a, double b, int panels) {
    double sum = 0.0;
    each_node(a, b, panels, [&](double x, double w) { sum += w * f(x); });
    return sum;
}

}  // namespace pelage
