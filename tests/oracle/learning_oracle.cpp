// The posterior of a dog's rate against GSL, from the definition: the readings of a stretch as a
// multivariate normal density with its covariance written out, an adaptive integral over the rate of
// each stretch inside an adaptive integral over the dog's.
#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <numbers>
#include <string>
#include <vector>

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_linalg.h>
#include <gsl/gsl_randist.h>

#include <pelage/model/learning.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"

using namespace pelage;

namespace {

struct case_of {
    std::vector<regrowth_interval> stretches;
    learning_law law;
};

using workspace = std::unique_ptr<gsl_integration_workspace, void (*)(gsl_integration_workspace*)>;

double integral(const gsl_function& f, std::vector<double> at, double low, double high) {
    const workspace space(gsl_integration_workspace_alloc(1000), gsl_integration_workspace_free);
    at.push_back(low);
    at.push_back(high);
    std::sort(at.begin(), at.end());
    double sum = 0.0;
    for (std::size_t i = 1; i < at.size(); ++i) {
        double part = 0.0;
        double error = 0.0;
        if (at[i] > at[i - 1] && at[i - 1] >= low && at[i] <= high) {
            gsl_integration_qag(&f, at[i - 1], at[i], 0.0, 1e-9, 1000, GSL_INTEG_GAUSS31,
                                space.get(), &part, &error);
        }
        sum += part;
    }
    return sum;
}

/// Density of the readings of one stretch that grew at rate `rate`, by Cholesky's factor.
double density(const regrowth_interval& s, double rate, const learning_law& law) {
    const std::size_t n = s.size();
    const std::unique_ptr<gsl_matrix, void (*)(gsl_matrix*)> a(gsl_matrix_alloc(n, n),
                                                               gsl_matrix_free);
    const std::unique_ptr<gsl_vector, void (*)(gsl_vector*)> off(gsl_vector_alloc(n),
                                                                 gsl_vector_free);
    const std::unique_ptr<gsl_vector, void (*)(gsl_vector*)> half(gsl_vector_alloc(n),
                                                                  gsl_vector_free);
    const double shared = in_mm(law.start_error) * in_mm(law.start_error);
    for (std::size_t i = 0; i < n; ++i) {
        const double start = in_mm(s[i].start);
        const double full = std::max(start, in_mm(law.terminal));
        const double is = std::min(full, start + rate * in_days(s[i].after));
        gsl_vector_set(off.get(), i, in_mm(s[i].is) - is);
        for (std::size_t j = 0; j < n; ++j) {
            const double own = i == j ? in_mm(s[i].error) * in_mm(s[i].error) : 0.0;
            gsl_matrix_set(a.get(), i, j, shared + own);
        }
    }
    gsl_linalg_cholesky_decomp1(a.get());
    double log_density = 0.0;
    gsl_linalg_cholesky_solve(a.get(), off.get(), half.get());
    for (std::size_t i = 0; i < n; ++i) {
        log_density -= 0.5 * gsl_vector_get(off.get(), i) * gsl_vector_get(half.get(), i);
        log_density -= std::log(gsl_matrix_get(a.get(), i, i));
        log_density -= 0.5 * std::log(2.0 * std::numbers::pi);
    }
    return std::exp(log_density);
}

/// Places in ln r where the density of a stretch peaks or bends.
std::vector<double> places(const regrowth_interval& s, const learning_law& law) {
    std::vector<double> at;
    for (const reading& r : s) {
        for (const double l : {in_mm(r.is), in_mm(law.terminal)}) {
            const double rate = (l - in_mm(r.start)) / in_days(r.after);
            const double wide = in_mm(r.error) / std::abs(l - in_mm(r.start));
            if (rate > 0.0) {
                at.insert(at.end(), {std::log(rate) - 3.0 * wide, std::log(rate),
                                     std::log(rate) + 3.0 * wide});
            }
        }
    }
    return at;
}

struct inner {
    const case_of* c;
    const regrowth_interval* s;
    double log_rate;
};

double of_stretch(const case_of& c, const regrowth_interval& s, double log_rate) {
    const double spread = c.law.visit_log_sd;
    if (spread <= 0.0) {
        return density(s, std::exp(log_rate), c.law);
    }
    inner at{&c, &s, log_rate};
    const gsl_function f{[](double u, void* of) {
                             const inner& i = *static_cast<inner*>(of);
                             const double sd = i.c->law.visit_log_sd;
                             return gsl_ran_gaussian_pdf(u - i.log_rate, sd) *
                                    density(*i.s, std::exp(u), i.c->law);
                         },
                         &at};
    return integral(f, places(s, c.law), log_rate - 9.0 * spread, log_rate + 9.0 * spread);
}

double of_dog(double log_rate, void* of) {
    const case_of& c = *static_cast<case_of*>(of);
    double p = gsl_ran_gaussian_pdf(log_rate - c.law.dog.log_median, c.law.dog.log_sd);
    for (const regrowth_interval& s : c.stretches) {
        p *= of_stretch(c, s, log_rate);
    }
    return p;
}

/// A growing coat cut one to three times and measured one to four times after each; sometimes hair
/// stops near what was measured.
case_of any_case(oracle::draws& d) {
    case_of c;
    c.law = {{std::log(d.between(0.2, 0.5)), d.between(0.1, 0.5)},
             d.whole(0, 4) == 0 ? 0.0 : d.between(0.02, 0.3),
             d.whole(0, 4) == 0 ? mm(0) : mm(d.between(0.1, 2.0)),
             mm(d.whole(0, 3) == 0 ? d.between(25.0, 45.0) : 200.0)};
    const double dog = c.law.dog.log_median + c.law.dog.log_sd * d.normal();
    for (int cut = d.whole(1, 3); cut > 0; --cut) {
        const double rate = std::exp(dog + c.law.visit_log_sd * d.normal());
        const double off = in_mm(c.law.start_error) * d.normal();
        regrowth_interval s;
        for (int i = d.whole(1, 4); i > 0; --i) {
            const double start = d.between(3.0, 25.0);
            const double t = d.between(7.0, 70.0);
            const double e = d.between(0.3, 2.0);
            const double is = std::min(start + rate * t, in_mm(c.law.terminal)) + off;
            s.push_back({day(t), mm(start), mm(std::max(0.5, is + e * d.normal())), mm(e)});
        }
        c.stretches.push_back(s);
    }
    return c;
}

std::string shown(const case_of& c) {
    std::string s = "prior " + std::to_string(c.law.dog.log_median) + " " +
                    std::to_string(c.law.dog.log_sd) + ", visits " +
                    std::to_string(c.law.visit_log_sd) + ", start error " +
                    std::to_string(in_mm(c.law.start_error)) + ", stops at " +
                    std::to_string(in_mm(c.law.terminal));
    for (const regrowth_interval& one : c.stretches) {
        s += "\n  cut:";
        for (const reading& r : one) {
            s += " " + std::to_string(in_mm(r.start)) + " -> " + std::to_string(in_mm(r.is)) +
                 " (" + std::to_string(in_mm(r.error)) + ") in " +
                 std::to_string(in_days(r.after)) + " d;";
        }
    }
    return s;
}

void check_case(case_of c, double at) {
    INFO(shown(c));
    const rate_posterior p(c.stretches, c.law);
    // hair at its end leaves a tail as long as the prior's
    const double low =
        std::min(p.mean() - 9.0 * p.sd(), c.law.dog.log_median - 9.0 * c.law.dog.log_sd);
    const double high =
        std::max(p.mean() + 9.0 * p.sd(), c.law.dog.log_median + 9.0 * c.law.dog.log_sd);
    const double log_rate = p.mean() + at * p.sd();
    gsl_function f{of_dog, &c};
    std::vector<double> joints;
    for (const double z : {-9.0, -3.0, 0.0, 3.0, 9.0}) {
        joints.push_back(p.mean() + z * p.sd());
    }
    if (c.law.visit_log_sd <= 0.0) {
        for (const regrowth_interval& s : c.stretches) {
            for (const double x : places(s, c.law)) {
                joints.push_back(x);
            }
        }
    }
    const double below = integral(f, joints, low, log_rate);
    const double above = integral(f, joints, log_rate, high);
    CHECK_THAT(p.below(mm_per_day(std::exp(log_rate))),
               match::WithinAbs(below / (below + above), 1e-6));
    CHECK_THAT(p.log_evidence(), match::WithinAbs(std::log(below + above), 1e-6));
}

void check_cases(int n, unsigned seed) {
    gsl_set_error_handler_off();
    oracle::draws d(seed);
    for (int i = 0; i < n; ++i) {
        const case_of c = any_case(d);
        check_case(c, d.between(-2.5, 2.5));
    }
}

}  // namespace

TEST_CASE("posterior of the rate against adaptive quadrature", "[oracle][learning]") {
    check_cases(40, 31);
}

TEST_CASE("posterior of the rate against adaptive quadrature, a thousand dogs",
          "[oracle][learning][.full]") {
    check_cases(1000, 32);
}
