#include <algorithm>
#include <numbers>
#include <utility>

#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss.hpp>

#include <pelage/base/error.hpp>
#include <pelage/base/stats.hpp>

namespace pelage {

namespace {
// long double inside costs four times as much and changes no printed digit
using policy = boost::math::policies::policy<boost::math::policies::promote_double<false>>;
using standard_normal = boost::math::normal_distribution<double, policy>;
}  // namespace

chance normal_cdf(double z) {
    if (std::isnan(z)) {
        throw error(errc::range, "the normal distribution of what is not a number");
    }
    return 0.5 * std::erfc(-z / std::numbers::sqrt2);
}

double normal_quantile(chance p) {
    if (!(p > 0.0 && p < 1.0)) {
        throw error(errc::range, "a quantile needs a chance between 0 and 1, both excluded");
    }
    return boost::math::quantile(standard_normal{}, p);
}

normal_table::normal_table() {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
        const double x = middle_of(i);
        rows_[i] = {normal_cdf(x), normal_density(x)};
    }
}

const normal_table& normal_row() {
    static const normal_table table;
    return table;
}

const legendre_rule& legendre() {
    static const legendre_rule rule = [] {
        using half_rule = boost::math::quadrature::gauss<double, legendre_rule::size>;
        legendre_rule r;
        const auto& x = half_rule::abscissa();  // the positive half, the middle first
        const auto& w = half_rule::weights();
        static_assert(legendre_rule::size % 2 == 0, "an odd rule has a node in the middle");
        const std::size_t middle = legendre_rule::size / 2;
        for (std::size_t i = 0; i < middle; ++i) {
            r.x[middle + i] = x[i];
            r.x[middle - 1 - i] = -x[i];
            r.w[middle + i] = r.w[middle - 1 - i] = w[i];
        }
        return r;
    }();
    return rule;
}

namespace {

/// The orthonormal Hermite polynomial of degree `n` for the weight of a standard normal at `x`, and
/// the one below it.
std::pair<double, double> hermite(std::size_t n, double x) {
    double below = 0.0;
    double here = 1.0;
    for (std::size_t k = 0; k < n; ++k) {
        const double next = (x * here - std::sqrt(static_cast<double>(k)) * below) /
                            std::sqrt(static_cast<double>(k + 1));
        below = here;
        here = next;
    }
    return {here, below};
}

/// A zero between `low` and `high`, where the polynomial changes sign once.
double zero_between(std::size_t n, double low, double high) {
    const bool rising = hermite(n, low).first < 0.0;
    for (int i = 0; i < 100; ++i) {
        const double middle = 0.5 * (low + high);
        ((hermite(n, middle).first < 0.0) == rising ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

}  // namespace

const normal_rule& normal_nodes() {
    static const normal_rule rule = [] {
        normal_rule r;
        std::size_t found = 0;
        constexpr double step = 0.01;  // zeros of this degree lie further apart
        for (double x = -8.0; x < 8.0 && found < normal_rule::size; x += step) {
            const bool changes = (hermite(normal_rule::size, x).first < 0.0) !=
                                 (hermite(normal_rule::size, x + step).first < 0.0);
            if (changes) {
                const double z = zero_between(normal_rule::size, x, x + step);
                const double below = hermite(normal_rule::size, z).second;
                r.x[found] = z;
                r.w[found] = 1.0 / (static_cast<double>(normal_rule::size) * below * below);
                ++found;
            }
        }
        return r;
    }();
    return rule;
}

}  // namespace pelage
