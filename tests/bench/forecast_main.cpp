// How fast a forecast is, by Google Benchmark, and GSL doing the same job in the same run as a mark to
// measure by: three quantiles (1 in 10, 1 in 2, 9 in 10) of the day on which a zone reaches its
// matting-prone length; a dog's 52 weeks of visits by days. Every turn takes the next of many.
#include <array>
#include <cmath>
#include <memory>
#include <optional>
#include <vector>

#include <benchmark/benchmark.h>
#include <gsl/gsl_cdf.h>
#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_randist.h>
#include <gsl/gsl_roots.h>

#include <pelage/forecast/calendar.hpp>
#include <pelage/model/growth.hpp>
#include <pelage/model/return_date.hpp>

#include "generate/real_problems.hpp"

using namespace pelage;

namespace {

constexpr std::uint64_t seed = 5;
constexpr std::array<chance, 3> chances{0.1, 0.5, 0.9};

struct one_zone {
    kept_zone zone;
    shared_law law;
};

std::vector<one_zone> zones_of(double threshold_log_sd, double start_error) {
    generate::dice d(seed);
    std::vector<one_zone> all;
    while (all.size() < 1000) {
        const double from = d.between(3, 20);
        const double to = from + d.between(5, 30);
        all.push_back({{mm(from), mm(to), mm(to + d.between(20, 150)), day(0)},
                       {{std::log(d.between(0.2, 0.5)), d.between(0.1, 0.4)},
                        threshold_log_sd,
                        mm(start_error)}});
    }
    return all;
}

/// Adaptive integrals over the start error and the threshold, and Brent's method over the day.
class by_gsl {
  public:
    by_gsl() { gsl_set_error_handler_off(); }

    double quantile(const one_zone& z, chance p) {
        now_ = z;
        p_ = p;
        gsl_function f{[](double t, void* self) { return static_cast<by_gsl*>(self)->over(t); },
                       this};
        double low = 1e-6;
        double high = 2000.0;
        gsl_root_fsolver_set(solver_.get(), &f, low, high);
        for (int i = 0; i < 100 && high - low > 1e-3; ++i) {
            gsl_root_fsolver_iterate(solver_.get());
            low = gsl_root_fsolver_x_lower(solver_.get());
            high = gsl_root_fsolver_x_upper(solver_.get());
        }
        return gsl_root_fsolver_root(solver_.get());
    }

  private:
    double over(double t) {
        t_ = t;
        return fine() - (1.0 - p_);
    }
    double fine() {
        if (in_mm(now_.law.start_error) <= 0.0) {
            return over_threshold(0.0);
        }
        return integral(*outer_, [](double e, void* self) {
            return gsl_ran_ugaussian_pdf(e) * static_cast<by_gsl*>(self)->over_threshold(e);
        });
    }
    double over_threshold(double e) {
        start_ = in_mm(now_.zone.start) + e * in_mm(now_.law.start_error);
        return integral(*inner_, [](double f, void* self) {
            return gsl_ran_ugaussian_pdf(f) * static_cast<by_gsl*>(self)->fine_at(f);
        });
    }
    double fine_at(double f) const {
        const double mats = in_mm(*now_.zone.threshold) * std::exp(f * now_.law.threshold_log_sd);
        if (mats > in_mm(now_.zone.terminal)) {
            return 1.0;
        }
        const double room = mats - start_;
        return room > 0.0
                   ? gsl_cdf_lognormal_P(room / t_, now_.law.rate.log_median, now_.law.rate.log_sd)
                   : 0.0;
    }
    double integral(gsl_integration_workspace& space, double (*f)(double, void*)) {
        gsl_function g{f, this};
        double is = 0.0;
        double error = 0.0;
        gsl_integration_qags(&g, -6.0, 6.0, 1e-6, 1e-6, 200, &space, &is, &error);
        return is;
    }

    struct free_space {
        void operator()(gsl_integration_workspace* w) const { gsl_integration_workspace_free(w); }
        void operator()(gsl_root_fsolver* s) const { gsl_root_fsolver_free(s); }
    };
    using workspace = std::unique_ptr<gsl_integration_workspace, free_space>;
    workspace outer_{gsl_integration_workspace_alloc(200)};
    workspace inner_{gsl_integration_workspace_alloc(200)};
    std::unique_ptr<gsl_root_fsolver, free_space> solver_{
        gsl_root_fsolver_alloc(gsl_root_fsolver_brent)};
    one_zone now_{};
    chance p_ = 0.5;
    double t_ = 0.0;
    double start_ = 0.0;
};

template <class Work>
void each(benchmark::State& state, const std::vector<one_zone>& all, Work work) {
    std::size_t next = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(work(all[next]));
        next = next + 1 == all.size() ? 0 : next + 1;
    }
    state.SetItemsProcessed(state.iterations());
}

void closed_form(benchmark::State& state) {
    each(state, zones_of(0.0, 0.0), [](const one_zone& z) {
        double sum = 0.0;
        for (const chance p : chances) {
            sum += in_days(
                reach_quantile(z.zone.start, *z.zone.threshold, z.zone.terminal, z.law.rate, p));
        }
        return sum;
    });
}
void closed_form_gsl(benchmark::State& state) {
    each(state, zones_of(0.0, 0.0), [](const one_zone& z) {
        double sum = 0.0;
        for (const chance p : chances) {
            const double room = in_mm(*z.zone.threshold - z.zone.start);
            sum += gsl_cdf_lognormal_Pinv(p, std::log(room) - z.law.rate.log_median,
                                          z.law.rate.log_sd);
        }
        return sum;
    });
}

void uncertain(benchmark::State& state, double threshold_log_sd, double start_error) {
    each(state, zones_of(threshold_log_sd, start_error), [](const one_zone& z) {
        const auto all = prone_quantiles(z.zone, z.law, chances);
        return in_days(all[0]) + in_days(all[1]) + in_days(all[2]);
    });
}
void uncertain_gsl(benchmark::State& state, double threshold_log_sd, double start_error) {
    by_gsl gsl;
    each(state, zones_of(threshold_log_sd, start_error), [&](const one_zone& z) {
        return gsl.quantile(z, 0.1) + gsl.quantile(z, 0.5) + gsl.quantile(z, 0.9);
    });
}

/// The cheapest 52 weeks of a whole dog, by days.
void year(benchmark::State& state) {
    generate::dice d(seed);
    std::vector<generate::table> tables;
    while (tables.size() < 50) {
        generate::table t = generate::any_table(d, {50, 2, 15});
        if (!t.request().patient.coat) {
            continue;
        }
        tables.push_back(std::move(t));
    }
    std::vector<groom> grooms;
    grooms.reserve(tables.size());
    for (const generate::table& t : tables) {
        grooms.push_back(make_plan(t.request()));
    }
    const date today{std::chrono::year{2026} / 11 / 26};
    std::size_t next = 0;
    for (auto _ : state) {
        const calendar_request ask{tables[next].request(), today, 52, {}, nullptr};
        benchmark::DoNotOptimize(calendar_of(ask, grooms[next]).visits.size());
        next = next + 1 == tables.size() ? 0 : next + 1;
    }
}

BENCHMARK(closed_form);
BENCHMARK(closed_form_gsl);
BENCHMARK_CAPTURE(uncertain, threshold, 0.1, 0.0)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(uncertain_gsl, threshold, 0.1, 0.0)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(uncertain, threshold_and_start, 0.1, 0.8)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(uncertain_gsl, threshold_and_start, 0.1, 0.8)->Unit(benchmark::kMicrosecond);
BENCHMARK(year)->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
