// Resting coats: the mean of the clipped patch and its inverse, against GSL's quadrature and root
// finder working from the definition.
#include <cmath>
#include <memory>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_roots.h>

#include <pelage/model/growth.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"

using namespace pelage;

namespace {

struct patch {
    resting_coat coat;
    growth_rate rate{};
    days t{};
};

/// Length of a hair that has grown for `growing` days.
double hair(const patch& p, double growing) {
    return std::min(in_mm_per_day(p.rate) * growing, in_mm(p.coat.terminal));
}

/// A resting follicle's contribution: it waits w, exponential, then grows.
double late_hair(double w, void* of) {
    const patch& p = *static_cast<const patch*>(of);
    const double k = 1.0 / in_days(p.coat.reentry);
    return k * std::exp(-k * w) * hair(p, in_days(p.t) - w);
}

double mean_by_quadrature(patch p) {
    const std::unique_ptr<gsl_integration_workspace, void (*)(gsl_integration_workspace*)> space(
        gsl_integration_workspace_alloc(200), gsl_integration_workspace_free);
    gsl_function f{late_hair, &p};
    const double t = in_days(p.t);
    const double kink = std::clamp(t - in_mm(p.coat.terminal) / in_mm_per_day(p.rate), 0.0, t);
    double sum = 0.0;
    for (const auto& [a, b] : {std::pair{0.0, kink}, std::pair{kink, t}}) {
        double part = 0.0;
        double error = 0.0;
        if (b > a) {
            gsl_integration_qag(&f, a, b, 0.0, 1e-11, 200, GSL_INTEG_GAUSS61, space.get(), &part,
                                &error);
        }
        sum += part;
    }
    return p.coat.share * hair(p, t) + (1.0 - p.coat.share) * sum;
}

struct target {
    patch of;
    double to = 0.0;
};

double short_of_it(double t, void* of) {
    const target& g = *static_cast<const target*>(of);
    patch p = g.of;
    p.t = day(t);
    return mean_by_quadrature(p) - g.to;
}

double root(target g, double high) {
    const std::unique_ptr<gsl_root_fsolver, void (*)(gsl_root_fsolver*)> solver(
        gsl_root_fsolver_alloc(gsl_root_fsolver_brent), gsl_root_fsolver_free);
    gsl_function f{short_of_it, &g};
    REQUIRE(gsl_root_fsolver_set(solver.get(), &f, 1e-9, high) == GSL_SUCCESS);
    double t = 0.0;
    for (int i = 0; i < 200; ++i) {
        gsl_root_fsolver_iterate(solver.get());
        t = gsl_root_fsolver_root(solver.get());
        if (gsl_root_test_interval(gsl_root_fsolver_x_lower(solver.get()),
                                   gsl_root_fsolver_x_upper(solver.get()), 0.0,
                                   1e-12) == GSL_SUCCESS) {
            break;
        }
    }
    return t;
}

patch any_patch(oracle::draws& d) {
    return {{d.between(0.0, 1.0), day(d.between(2.0, 120.0)), mm(d.between(10.0, 120.0))},
            mm_per_day(d.between(0.05, 0.6)),
            day(d.between(0.1, 500.0))};
}

}  // namespace

TEST_CASE("mean length of a clipped resting coat against quadrature", "[oracle][growth]") {
    gsl_set_error_handler_off();
    oracle::draws d(11);
    for (int i = 0; i < 300; ++i) {
        const patch p = any_patch(d);
        INFO("share " << p.coat.share << ", wait " << in_days(p.coat.reentry) << " d, terminal "
                      << in_mm(p.coat.terminal) << " mm, rate " << in_mm_per_day(p.rate) << ", day "
                      << in_days(p.t));
        CHECK_THAT(in_mm(resting_mean(p.coat, p.rate, p.t)),
                   match::WithinRel(mean_by_quadrature(p), 1e-9));
    }
}

TEST_CASE("days until a resting coat is regrown against a root finder", "[oracle][growth]") {
    gsl_set_error_handler_off();
    oracle::draws d(12);
    for (int i = 0; i < 100; ++i) {
        const patch p = any_patch(d);
        const length to = p.coat.terminal * d.between(0.02, 0.97);
        const days t = resting_days_to(p.coat, p.rate, to);
        INFO("share " << p.coat.share << ", wait " << in_days(p.coat.reentry) << " d, terminal "
                      << in_mm(p.coat.terminal) << " mm, rate " << in_mm_per_day(p.rate) << ", to "
                      << in_mm(to) << " mm");
        CHECK_THAT(in_days(t), match::WithinRel(root({p, in_mm(to)}, 20000.0), 1e-8));
    }
}
