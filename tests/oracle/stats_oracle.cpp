// The distributions of pelage/base/stats.hpp and pelage/model/growth.hpp against the GNU Scientific Library.
#include <cmath>
#include <limits>
#include <memory>
#include <numbers>

#include <gsl/gsl_cdf.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_randist.h>

#include <pelage/base/stats.hpp>
#include <pelage/model/growth.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"

using namespace pelage;

namespace {

constexpr int cases = 1000;
constexpr double relative = 1e-9;

}  // namespace

TEST_CASE("normal distribution function against GSL", "[oracle][stats]") {
    oracle::draws d(1);
    for (int i = 0; i < cases; ++i) {
        const double z = d.between(-8.0, 8.0);
        INFO("z = " << z);
        CHECK_THAT(normal_cdf(z), match::WithinRel(gsl_cdf_ugaussian_P(z), relative));
    }
}

TEST_CASE("normal quantile against GSL", "[oracle][stats]") {
    oracle::draws d(2);
    for (int i = 0; i < cases; ++i) {
        // half of them far out in a tail
        const double p =
            i % 2 == 0 ? d.between(1e-6, 1.0 - 1e-6) : std::pow(10.0, d.between(-12.0, -1.0));
        INFO("p = " << p);
        CHECK_THAT(normal_quantile(p), match::WithinRel(gsl_cdf_ugaussian_Pinv(p), relative));
    }
}

TEST_CASE("day by which a share of dogs has grown to a length, against GSL's lognormal",
          "[oracle][growth]") {
    oracle::draws d(3);
    const length terminal = mm(500);
    for (int i = 0; i < cases; ++i) {
        const length from = mm(d.between(0.5, 40.0));
        const length room = mm(d.between(0.5, 60.0));
        const rate_law law{std::log(d.between(0.05, 0.6)), d.between(0.02, 0.6)};
        const chance p = d.between(0.001, 0.999);
        // ln T ~ Normal(ln D - m, s)
        const double log_median = std::log(in_mm(room)) - law.log_median;
        const days t = reach_quantile(from, from + room, terminal, law, p);
        INFO("from " << in_mm(from) << " by " << in_mm(room) << " mm, chance " << p);
        CHECK_THAT(in_days(t),
                   match::WithinRel(gsl_cdf_lognormal_Pinv(p, log_median, law.log_sd), relative));
        const days other = day(in_days(t) * d.between(0.5, 2.0));
        CHECK_THAT(reached_by(from, from + room, terminal, law, other),
                   match::WithinRel(gsl_cdf_lognormal_P(in_days(other), log_median, law.log_sd),
                                    relative));
    }
}

TEST_CASE("growth rate at a quantile against GSL's lognormal", "[oracle][growth]") {
    oracle::draws d(4);
    for (int i = 0; i < cases; ++i) {
        const rate_law law{std::log(d.between(0.05, 0.6)), d.between(0.02, 0.6)};
        const chance p = d.between(0.001, 0.999);
        CHECK_THAT(
            in_mm_per_day(rate_quantile(law, p)),
            match::WithinRel(gsl_cdf_lognormal_Pinv(p, law.log_median, law.log_sd), relative));
    }
}

TEST_CASE("nodes and weights of the quadrature rules against GSL", "[oracle][stats]") {
    constexpr std::size_t n = legendre_rule::size;
    const std::unique_ptr<gsl_integration_glfixed_table, void (*)(gsl_integration_glfixed_table*)>
        table(gsl_integration_glfixed_table_alloc(n), gsl_integration_glfixed_table_free);
    for (std::size_t i = 0; i < n; ++i) {
        double x = 0.0;
        double w = 0.0;
        gsl_integration_glfixed_point(-1.0, 1.0, i, &x, &w, table.get());
        CHECK_THAT(legendre().x[i], match::WithinAbs(x, 1e-14));
        CHECK_THAT(legendre().w[i], match::WithinAbs(w, 1e-14));
    }
    // exp(-x^2 / 2), of which the normal density is 1 / sqrt(2 pi)
    constexpr std::size_t m = normal_rule::size;
    const std::unique_ptr<gsl_integration_fixed_workspace,
                          void (*)(gsl_integration_fixed_workspace*)>
        hermite(gsl_integration_fixed_alloc(gsl_integration_fixed_hermite, m, 0.0, 0.5, 0.0, 0.0),
                gsl_integration_fixed_free);
    for (std::size_t i = 0; i < m; ++i) {
        const double w = gsl_integration_fixed_weights(hermite.get())[i];
        CHECK_THAT(normal_nodes().x[i],
                   match::WithinAbs(gsl_integration_fixed_nodes(hermite.get())[i], 1e-12));
        CHECK_THAT(normal_nodes().w[i],
                   match::WithinRel(w / std::sqrt(2.0 * std::numbers::pi), 1e-10));
    }
}

TEST_CASE("the row of normal probabilities against GSL", "[oracle][stats]") {
    oracle::draws d(5);
    for (int i = 0; i < 2000; ++i) {
        const double z = d.between(-9.0, 9.0);
        INFO(z);
        CHECK_THAT(normal_row().at(z), match::WithinAbs(gsl_cdf_ugaussian_P(z), 1e-12));
        const double density = std::abs(z) < 8.0 ? gsl_ran_ugaussian_pdf(z) : 0.0;
        CHECK_THAT(normal_row().density_at(z), match::WithinRel(density, 0.01));
    }
    for (const double z : {-8.0, 8.0, 0.0, 1.0 / 64.0, -7.999999999999999, 7.999999999999999}) {
        CHECK_THAT(normal_row().at(z), match::WithinAbs(gsl_cdf_ugaussian_P(z), 1e-12));
    }
    CHECK(normal_row().at(-std::numeric_limits<double>::infinity()) == 0.0);
    CHECK(normal_row().at(std::numeric_limits<double>::infinity()) == 1.0);
}
