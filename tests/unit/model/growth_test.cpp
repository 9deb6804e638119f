// How hair grows out, with the distributions it leans on.
#include <cmath>
#include <limits>
#include <numbers>

#include <pelage/model/growth.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::plain;

namespace {

/// Median 0.34 mm/day, log SD 0.3: a wavy coat as we guess it.
const rate_law law{std::log(0.34), 0.3};

/// The double short coat as calibrated: 0.35 mm/day, a mean wait of 12.6 days, 32 mm when full.
const resting_coat short_double{0.0, day(12.6), mm(32)};

}  // namespace

TEST_CASE("the normal distribution and its quantiles undo each other", "[growth]") {
    CHECK(normal_cdf(0.0) == 0.5);
    CHECK_THAT(normal_cdf(1.959963984540054), match::WithinAbs(0.975, 1e-12));
    CHECK(normal_cdf(std::numeric_limits<double>::infinity()) == 1.0);
    CHECK(normal_cdf(-std::numeric_limits<double>::infinity()) == 0.0);
    for (const double p : {1e-6, 0.1, 0.5, 0.9, 0.999}) {
        INFO(p);
        CHECK_THAT(normal_cdf(normal_quantile(p)), match::WithinAbs(p, 1e-12));
    }
    for (const double wrong : {0.0, 1.0, -0.1, 1.1, std::nan("")}) {
        INFO(wrong);
        CHECK_THROWS_AS(normal_quantile(wrong), error);
    }
    CHECK_THROWS_AS(normal_cdf(std::nan("")), error);
}

TEST_CASE("a coefficient of variation as a log spread", "[growth]") {
    CHECK(log_sd_from_cv(0.0) == 0.0);
    CHECK_THAT(log_sd_from_cv(0.3), match::WithinAbs(std::sqrt(std::log(1.09)), 1e-15));
}

TEST_CASE("the quadrature is exact for polynomials and close for the bell", "[growth]") {
    double weights = 0.0;
    for (const double w : legendre().w) {
        weights += w;
    }
    CHECK_THAT(weights, match::WithinAbs(2.0, 1e-13));
    for (int power = 0; power <= 19; ++power) {
        INFO(power);
        const double is = integrate([&](double x) { return std::pow(x, power); }, 0.0, 1.0, 1);
        CHECK_THAT(is, match::WithinAbs(1.0 / (power + 1), 1e-13));
    }
    const double bell = integrate([](double x) { return std::exp(-0.5 * x * x); }, -8.0, 8.0, 6);
    CHECK_THAT(bell, match::WithinAbs(std::sqrt(2.0 * std::numbers::pi), 1e-9));
    CHECK(integrate([](double) { return 1.0; }, 2.0, 2.0, 3) == 0.0);
    CHECK(integrate([](double) { return 1.0; }, 3.0, 2.0, 3) == 0.0);
}

TEST_CASE("never is a day that doesn't come", "[growth]") {
    CHECK(is_never(never()));
    CHECK_FALSE(is_never(day(1e9)));
    CHECK(never() > day(1e9));
}

TEST_CASE("a coat's rate before the dog is known spreads by dog and by visit", "[growth]") {
    coat c;
    c.rate = {mm_per_day(0.34), 0.3, {}};
    growth_rules g;
    g.visit_log_sd = plain(0.12);
    const rate_law prior = prior_rate(c, g);
    CHECK_THAT(prior.log_median, match::WithinAbs(std::log(0.34), 1e-15));
    CHECK_THAT(prior.log_sd, match::WithinAbs(std::sqrt(0.3 * 0.3 + 0.12 * 0.12), 1e-15));
}

TEST_CASE("half of the dogs grow faster than the median rate", "[growth]") {
    CHECK_THAT(in_mm_per_day(rate_quantile(law, 0.5)), match::WithinAbs(0.34, 1e-12));
    CHECK_THAT(in_mm_per_day(rate_quantile(law, 0.9)),
               match::WithinRel(0.34 * std::exp(0.3 * 1.2815515655446004), 1e-9));
    CHECK(rate_quantile(law, 0.1) < rate_quantile(law, 0.9));
}

TEST_CASE("9.5 mm at 0.35 mm a day is 38.1 mm in 81.7 days", "[growth]") {
    // derived
    CHECK_THAT(in_days(days_to_length(mm(9.5), mm(38.1), mm(200), mm_per_day(0.35))),
               match::WithinAbs(81.7, 0.1));
}

TEST_CASE("there already, exactly at the stop, and never", "[growth]") {
    const growth_rate r = mm_per_day(0.5);
    CHECK(days_to_length(mm(13), mm(13), mm(60), r) == day(0));
    CHECK(days_to_length(mm(14), mm(13), mm(60), r) == day(0));
    CHECK(days_to_length(mm(10), mm(60), mm(60), r) == day(100));
    CHECK(is_never(days_to_length(mm(10), mm(60.01), mm(60), r)));
    CHECK(days_to_length(mm(80), mm(70), mm(60), r) == day(0));
}

TEST_CASE("a coat grows to where it stops, and what is longer stays", "[growth]") {
    const growth_rate r = mm_per_day(0.5);
    CHECK(grown(mm(10), mm(60), r, day(20)) == mm(20));
    CHECK(grown(mm(10), mm(60), r, day(0)) == mm(10));
    CHECK(grown(mm(10), mm(60), r, day(100)) == mm(60));
    CHECK(grown(mm(10), mm(60), r, day(1000)) == mm(60));
    CHECK(grown(mm(80), mm(60), r, day(1000)) == mm(80));
}

TEST_CASE("the chance to be there by a day: half of the dogs by the median's day", "[growth]") {
    // 25 mm at 0.34 mm a day: day 73.53
    const auto by = [](double t) { return reached_by(mm(13), mm(38), mm(140), law, day(t)); };
    CHECK_THAT(by(25 / 0.34), match::WithinAbs(0.5, 1e-12));
    CHECK(by(0) == 0.0);
    CHECK(by(-5) == 0.0);
    CHECK(by(1) < 1e-6);
    CHECK(by(2000) > 0.999999);
    CHECK(by(40) < by(41));
    CHECK(reached_by(mm(38), mm(38), mm(140), law, day(0)) == 1.0);
    CHECK(reached_by(mm(13), mm(141), mm(140), law, day(1e6)) == 0.0);
}

TEST_CASE("the day by which one in ten are there comes before the day of nine in ten", "[growth]") {
    for (const double p : {0.05, 0.1, 0.5, 0.9, 0.95}) {
        INFO(p);
        const days d = reach_quantile(mm(13), mm(38), mm(140), law, p);
        CHECK_THAT(reached_by(mm(13), mm(38), mm(140), law, d), match::WithinAbs(p, 1e-9));
    }
    CHECK(reach_quantile(mm(13), mm(38), mm(140), law, 0.1) <
          reach_quantile(mm(13), mm(38), mm(140), law, 0.9));
    CHECK(is_never(reach_quantile(mm(13), mm(38), mm(30), law, 0.5)));
}

TEST_CASE("a resting coat waits before it grows", "[growth]") {
    const growth_rate r = mm_per_day(0.35);
    CHECK(resting_mean(short_double, r, day(0)) == mm(0));
    CHECK(resting_mean(short_double, r, day(-1)) == mm(0));
    // long after the wait it runs one mean wait behind a growing coat: 0.35 * (60 - 12.6)
    CHECK_THAT(in_mm(resting_mean(short_double, r, day(60))),
               match::WithinAbs(0.35 * (60 - 12.6), 0.1));
    // and it ends at the full length
    CHECK_THAT(in_mm(resting_mean(short_double, r, day(2000))), match::WithinAbs(32, 1e-6));
}

TEST_CASE("a resting coat with every hair growing is a growing coat", "[growth]") {
    const resting_coat all{1.0, day(12.6), mm(32)};
    const growth_rate r = mm_per_day(0.4);
    for (const double t : {0.0, 1.0, 30.0, 79.9, 80.0, 100.0}) {
        INFO(t);
        CHECK_THAT(in_mm(resting_mean(all, r, day(t))),
                   match::WithinAbs(in_mm(grown(mm(0), mm(32), r, day(t))), 1e-9));
    }
}

TEST_CASE("the resting curve against a plain sum over the follicles' waits", "[growth]") {
    const resting_coat c{0.1, day(30), mm(65)};
    const double rate = 0.3;
    for (const double t : {5.0, 60.0, 200.0, 300.0}) {
        double later = 0.0;
        const double step = 0.01;
        for (double wait = step / 2; wait < t; wait += step) {
            later += std::exp(-wait / 30.0) / 30.0 * step * std::min(65.0, rate * (t - wait));
        }
        const double is = 0.1 * std::min(65.0, rate * t) + 0.9 * later;
        INFO(t);
        CHECK_THAT(in_mm(resting_mean(c, mm_per_day(rate), day(t))), match::WithinAbs(is, 1e-3));
    }
}

TEST_CASE("when a resting coat is back at a length", "[growth]") {
    const growth_rate r = mm_per_day(0.35);
    CHECK(resting_days_to(short_double, r, mm(0)) == day(0));
    CHECK(is_never(resting_days_to(short_double, r, mm(32))));
    for (const double to : {0.5, 10.0, 25.0, 31.9}) {
        INFO(to);
        const days d = resting_days_to(short_double, r, mm(to));
        CHECK_THAT(in_mm(resting_mean(short_double, r, d)), match::WithinAbs(to, 1e-6));
    }
    // the same at a quantile of the rate: fast dogs are back first
    const days early = resting_quantile(short_double, law, mm(25), 0.1);
    const days even = resting_quantile(short_double, law, mm(25), 0.5);
    CHECK(early < even);
    CHECK(even == resting_days_to(short_double, rate_quantile(law, 0.5), mm(25)));
    CHECK(resting_quantile(short_double, law, mm(25), 0.9) > even);
}

TEST_CASE("a season's mean is that of its days, and nothing over a whole year", "[growth]") {
    growth_rules g;
    g.season_swing.best = 0.1;
    g.season_peak.best = 172.0;
    const auto start = parse_date("2026-04-20");
    for (const int wait : {1, 42, 180}) {
        double sum = 0.0;
        constexpr int parts = 1000;
        for (int i = 0; i < wait * parts; ++i) {
            const double since_peak = 110.0 - 172.0 + (i + 0.5) / parts;  // 20 April is day 110
            sum += 1.0 + 0.1 * std::cos(2.0 * std::numbers::pi * since_peak / 365.2425);
        }
        CHECK_THAT(season_factor(g, start, day(wait)),
                   match::WithinAbs(sum / (wait * parts), 1e-7));
    }
    CHECK_THAT(season_factor(g, start, day(365.2425)), match::WithinAbs(1.0, 1e-12));
    CHECK(season_factor(g, std::nullopt, day(42)) == 1.0);
    g.season_swing.best = 0.0;
    CHECK(season_factor(g, start, day(42)) == 1.0);
}

TEST_CASE("9 in 10 clipped jackets with the delayed ones among them", "[growth]") {
    // 144 days without them is no day for 9 in 10 dogs of which 12 in 100 are delayed; with a wait of
    // 120 days, log SD 0.5 (assumptions), it is about 192
    const resting_coat lab{0.13, day(12.6), mm(32)};
    const growth_rules& g = io::reference().rules.growth;
    const rate_law usual = prior_rate(coat_of(io::reference(), coat_class::double_short), g);
    const length to = mm(32 * 0.95);
    CHECK_THAT(in_days(resting_quantile(lab, usual, to, 0.9)), match::WithinAbs(144, 1.0));
    const delay_law late{g.delayed_share.best, g.delay_median.best, g.delay_log_sd.best};
    const days nine = resting_quantile(lab, usual, late, to, 0.9);
    CHECK_THAT(in_days(nine), match::WithinAbs(192, 2.0));
    CHECK_THAT(resting_back_by(lab, usual, late, to, nine), match::WithinAbs(0.9, 1e-3));
    // who isn't delayed is told the plain day
    const delay_law none{0.0, day(120), 0.5};
    for (const double p : {0.1, 0.5, 0.9}) {
        CHECK_THAT(in_days(resting_quantile(lab, usual, none, to, p)),
                   match::WithinAbs(in_days(resting_quantile(lab, usual, to, p)), 0.1));
        CHECK(resting_quantile(lab, usual, late, to, p) >= resting_quantile(lab, usual, to, p));
    }
    CHECK(is_never(resting_quantile(lab, usual, late, mm(32), 0.5)));
}
