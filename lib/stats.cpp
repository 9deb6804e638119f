#include <algorithm>

#include <boost/math/distributions/normal.hpp>
#include <boost/math/quadrature/gauss.hpp>

#include <pelage/error.hpp>
#include <pelage/stats.hpp>

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
    return boost::math::cdf(standard_normal{}, z);
}

double normal_quantile(chance p) {
    if (!(p > 0.0 && p < 1.0)) {
        throw error(errc::range, "a quantile needs a chance between 0 and 1, both excluded");
    }
    return boost::math::quantile(standard_normal{}, p);
}

const legendre_rule& legendre() {
    static const legendre_rule rule = [] {
        using half_rule = boost::math::quadrature::gauss<double, legendre_rule::size>;
        legendre_rule r;
        const auto& x = half_rule::abscissa();  // the non-negative half, the middle first
        const auto& w = half_rule::weights();
        const std::size_t middle = legendre_rule::size / 2;
        for (std::size_t i = 0; i < x.size(); ++i) {
            r.x[middle + i] = x[i];
            r.x[middle - i] = -x[i];
            r.w[middle + i] = r.w[middle - i] = w[i];
        }
        return r;
    }();
    return rule;
}

}  // namespace pelage
