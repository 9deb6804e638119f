// What measurements say of a dog's rate: closed forms and certified values as limits of the quadrature.
#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>
#include <string>
#include <vector>

#include <pelage/model/learning.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const length endless = mm(std::numeric_limits<double>::infinity());

/// A prior that says nothing of the rate near `about`: ln R ~ Normal(ln about + s^2, s^2) with s large is
/// flat in R, off by (ln(R / about) / s)^2.
learning_law flat_near(double about, const length& start_error) {
    constexpr double s = 1000.0;
    return {{std::log(about) + s * s, s}, 0.0, start_error, endless};
}

double mean_rate(const rate_posterior& p) {
    return p.mean_of([](double u) { return std::exp(u); });
}

double rate_error(const rate_posterior& p) {
    const double mean = mean_rate(p);
    return std::sqrt(
        p.mean_of([&](double u) { return (std::exp(u) - mean) * (std::exp(u) - mean); }));
}

/// "y x" a line, as a dog cut to `start` and measured y mm after x days, each off by `error`.
regrowth_interval data_of(const std::string& file, double start, double error) {
    std::ifstream in("tests/nist/" + file);
    REQUIRE(in);
    regrowth_interval out;
    std::string line;
    while (std::getline(in, line)) {
        std::istringstream words(line);
        double y = 0.0;
        double x = 0.0;
        if (words >> y >> x) {
            out.push_back({day(x), mm(start), mm(y), mm(error)});
        }
    }
    return out;
}

reading measured(double after, double start, double is, double error = 0.8) {
    return {day(after), mm(start), mm(is), mm(error)};
}

/// Median 0.34 mm a day, log SD 0.3, visits 0.12, start error 0.8 mm.
const learning_law wavy{{std::log(0.34), 0.3}, 0.12, mm(0.8), mm(140)};

}  // namespace

// NIST/ITL, Statistical Reference Datasets, linear regression: certified slope and its standard error.
// The error of a reading is taken as the certified residual standard deviation; NIST estimates it from
// the data and we are told it.
TEST_CASE("NIST NoInt1: a straight line from a known start", "[learning]") {
    const regrowth_interval s = data_of("NoInt1.txt", 0.0, 3.56753034006338);
    REQUIRE(s.size() == 11);
    const rate_posterior p({s}, flat_near(2.0, mm(0)));
    CHECK_THAT(mean_rate(p), match::WithinRel(2.07438016528926, 1e-9));
    CHECK_THAT(rate_error(p), match::WithinRel(0.0165289256198347, 1e-9));
}

TEST_CASE("NIST NoInt2: a straight line from a known start", "[learning]") {
    const regrowth_interval s = data_of("NoInt2.txt", 0.0, 0.369274472937998);
    REQUIRE(s.size() == 3);
    const rate_posterior p({s}, flat_near(0.7, mm(0)));
    CHECK_THAT(mean_rate(p), match::WithinRel(0.727272727272727, 1e-9));
    CHECK_THAT(rate_error(p),
               match::WithinRel(0.0420827318078, 1e-8));  // certified 0.420827318078E-01
}

TEST_CASE("NIST Norris: a straight line from its certified start, and from an unknown one",
          "[learning]") {
    const double residual = 0.884796396144373;
    const regrowth_interval known = data_of("Norris.dat.txt", -0.262323073774029, residual);
    REQUIRE(known.size() == 36);
    CHECK_THAT(mean_rate(rate_posterior({known}, flat_near(1.0, mm(0)))),
               match::WithinRel(1.00211681802045, 1e-9));
    // a start error without bound frees the intercept
    const rate_posterior free({data_of("Norris.dat.txt", 0.0, residual)}, flat_near(1.0, mm(1e6)));
    CHECK_THAT(mean_rate(free), match::WithinRel(1.00211681802045, 1e-9));
    CHECK_THAT(rate_error(free), match::WithinRel(0.000429796848199937, 1e-8));
}

// Conjugate normal, worked out outside this code (closed form): prior R ~ N(0.35, 0.07), cut to 9.5 mm,
// error 0.8 mm, 16.9 mm after 20 days and 22.4 mm after 35. The prior is one more reading.
TEST_CASE("a normal prior on the rate itself: the conjugate answer", "[learning]") {
    const reading prior = measured(1.0, 0.0, 0.35, 0.07);
    const rate_posterior first({{prior, measured(20, 9.5, 16.9)}}, flat_near(0.36, mm(0)));
    CHECK_THAT(mean_rate(first), match::WithinAbs(0.3650769231, 1e-9));
    CHECK_THAT(rate_error(first), match::WithinAbs(0.0347297257, 1e-9));
    const rate_posterior both({{prior, measured(20, 9.5, 16.9), measured(35, 9.5, 22.4)}},
                              flat_near(0.36, mm(0)));
    CHECK_THAT(mean_rate(both), match::WithinAbs(0.3675152572, 1e-9));
    CHECK_THAT(rate_error(both), match::WithinAbs(0.0190930666, 1e-9));
}

// Shrinkage of log rates, worked out outside this code (closed form): prior ln R ~ N(ln 0.35, 0.20),
// three visits at 0.40, 0.44 and 0.42 mm a day, visit log SD 0.15, measured without error.
TEST_CASE("visits measured without error: the closed form of log shrinkage", "[learning]") {
    std::vector<regrowth_interval> visits;
    for (const double rate : {0.40, 0.44, 0.42}) {
        visits.push_back({measured(100, 0, 100 * rate, 1e-6)});
    }
    const rate_posterior p(visits, {{std::log(0.35), 0.20}, 0.15, mm(0), endless});
    CHECK_THAT(std::exp(p.mean()), match::WithinAbs(0.4078216157, 1e-9));
    CHECK_THAT(p.sd(), match::WithinAbs(0.0794719414, 1e-9));
    CHECK_THAT(in_mm_per_day(p.quantile(0.5)), match::WithinAbs(0.4078216157, 1e-8));
    // and of the next visit the visits' spread on top
    const rate_law next = p.next();
    CHECK_THAT(next.log_median, match::WithinAbs(p.mean(), 1e-8));
    CHECK_THAT(next.log_sd, match::WithinAbs(std::hypot(0.0794719414, 0.15), 1e-8));
}

// Worked out outside this code: prior log SD 0.25, visits 0.15, three visits: sqrt(1/(16 + 133.3)), and
// the coat's usual rate weighs 16/149.3.
TEST_CASE("after three visits the coat's usual rate weighs a ninth", "[learning]") {
    const std::vector<regrowth_interval> visits(3, {measured(100, 0, 41, 1e-6)});
    const rate_posterior p(visits, {{std::log(0.35), 0.25}, 0.15, mm(0), endless});
    CHECK_THAT(p.sd(), match::WithinAbs(0.0818, 5e-5));
    CHECK_THAT(p.prior_share(), match::WithinAbs(16.0 / (16.0 + 3.0 / 0.0225), 1e-9));
}

TEST_CASE("nothing measured: the coat's usual rate, all of it", "[learning]") {
    for (const std::vector<regrowth_interval>& nothing :
         {std::vector<regrowth_interval>{}, std::vector<regrowth_interval>{{}}}) {
        const rate_posterior p(nothing, wavy);
        CHECK_THAT(p.mean(), match::WithinAbs(std::log(0.34), 1e-10));
        CHECK_THAT(p.sd(), match::WithinAbs(0.3, 1e-10));
        CHECK_THAT(p.next().log_sd, match::WithinAbs(std::hypot(0.3, 0.12), 1e-9));
        CHECK_THAT(p.prior_share(), match::WithinAbs(1.0, 1e-9));
        CHECK_THAT(p.log_evidence(), match::WithinAbs(0.0, 1e-9));
        CHECK_FALSE(estimate_of(p, wavy.dog));
    }
}

TEST_CASE("a fast grower is believed to be faster, the more the longer it was measured",
          "[learning]") {
    double before = 0.34;
    for (const std::size_t visits : {1U, 2U, 4U, 8U}) {
        const rate_posterior p(
            std::vector<regrowth_interval>(visits, {measured(40, 13, 13 + 0.45 * 40)}), wavy);
        CHECK(std::exp(p.mean()) > before);
        CHECK(std::exp(p.mean()) < 0.45);
        before = std::exp(p.mean());
    }
    CHECK(before > 0.43);
}

TEST_CASE("readings of one stretch share its start error: many don't make it certain",
          "[learning]") {
    const regrowth_interval many(200, measured(40, 13, 27));
    const learning_law steady{{std::log(0.34), 0.3}, 0.0, mm(0.8), mm(140)};
    // left is the start error over the days
    CHECK_THAT(rate_error(rate_posterior({many}, steady)), match::WithinRel(0.8 / 40, 0.02));
    const learning_law sharp{{std::log(0.34), 0.3}, 0.0, mm(0), mm(140)};
    CHECK(rate_error(rate_posterior({many}, sharp)) < 0.1 * 0.8 / 40);
    // two stretches tell more than one with as many readings
    const regrowth_interval half(100, measured(40, 13, 27));
    CHECK(rate_posterior({half, half}, steady).sd() < rate_posterior({many}, steady).sd());
}

TEST_CASE("hair at its end says that the dog grows at least so fast", "[learning]") {
    const learning_law short_coat{{std::log(0.34), 0.3}, 0.12, mm(0.8), mm(30)};
    const rate_posterior p({{measured(60, 13, 30)}}, short_coat);  // there by 0.28 mm a day
    CHECK(p.mean() > std::log(0.34));
    CHECK(p.sd() > 0.2);
    CHECK(p.below(mm_per_day(0.25)) < 0.05);
    CHECK(p.below(mm_per_day(0.5)) < 0.9);
}

TEST_CASE("shorter than the cut left it is no negative rate", "[learning]") {
    const rate_posterior p({{measured(40, 13, 11)}}, wavy);
    CHECK(std::isfinite(p.mean()));
    CHECK(p.sd() > 0.0);
    CHECK(p.mean() < std::log(0.34));
    CHECK(in_mm_per_day(p.next_quantile(0.1)) > 0.0);
}

TEST_CASE("cuts that contradict each other are averaged, not refused", "[learning]") {
    const rate_posterior p({{measured(40, 13, 17)}, {measured(40, 13, 45)}}, wavy);
    CHECK(std::isfinite(p.log_evidence()));
    CHECK(std::exp(p.mean()) > 0.1);
    CHECK(std::exp(p.mean()) < 0.8);
}

TEST_CASE("chance and quantile of the rate undo each other", "[learning]") {
    const rate_posterior p({{measured(30, 13, 25), measured(50, 13, 34)}}, wavy);
    chance before = 0.0;
    for (const double q : {0.01, 0.1, 0.5, 0.9, 0.99}) {
        INFO(q);
        CHECK_THAT(p.below(p.quantile(q)), match::WithinAbs(q, 1e-8));
        CHECK_THAT(p.next_below(p.next_quantile(q)), match::WithinAbs(q, 1e-8));
        CHECK(p.below(p.quantile(q)) > before);
        before = q;
    }
    CHECK(p.below(mm_per_day(1e-6)) == 0.0);
    CHECK(p.below(mm_per_day(100)) == 1.0);
    CHECK(p.next_quantile(0.1) < p.quantile(0.1));
    CHECK(p.next_quantile(0.9) > p.quantile(0.9));
}

TEST_CASE("the lognormal of the forecast meets what is believed at 1 in 10 and 9 in 10",
          "[learning]") {
    const rate_posterior p({{measured(20, 13, 18)}, {measured(30, 13, 26)}}, wavy);
    for (const double q : {0.1, 0.9}) {
        CHECK_THAT(in_mm_per_day(rate_quantile(p.next(), q)),
                   match::WithinRel(in_mm_per_day(p.next_quantile(q)), 1e-9));
    }
    CHECK_THAT(in_mm_per_day(rate_quantile(p.next(), 0.5)),
               match::WithinRel(in_mm_per_day(p.next_quantile(0.5)), 0.01));
}

TEST_CASE("a reading needs days, an error and a length", "[learning]") {
    const double nan = std::nan("");
    for (const reading& wrong :
         {measured(0, 13, 20), measured(-3, 13, 20), measured(20, 13, 20, 0), measured(nan, 13, 20),
          measured(20, nan, 20), measured(20, 13, nan), measured(20, 13, 20, nan),
          measured(20, 13, 20, 1e-10)}) {
        CHECK_THROWS_AS(rate_posterior({{wrong}}, wavy), error);
    }
    learning_law certain = wavy;
    certain.dog.log_sd = 0.0;
    CHECK_THROWS_AS(rate_posterior({}, certain), error);
    certain.dog.log_sd = 1e-160;  // a step of it moves nothing: it looped for ever
    CHECK_THROWS_AS(rate_posterior({}, certain), error);
    certain.dog.log_sd = 0.3;
    certain.visit_log_sd = -0.1;
    CHECK_THROWS_AS(rate_posterior({}, certain), error);
}

TEST_CASE("what a dog says by itself: the prior taken out again", "[learning]") {
    const std::vector<regrowth_interval> visits(2, {measured(100, 0, 45, 1e-6)});
    const learning_law law{{std::log(0.35), 0.25}, 0.15, mm(0), endless};
    const auto e = estimate_of(rate_posterior(visits, law), law.dog);
    REQUIRE(e);
    CHECK_THAT(e->log_rate, match::WithinAbs(std::log(0.45), 1e-8));
    CHECK_THAT(e->error, match::WithinAbs(0.15 / std::sqrt(2.0), 1e-8));
}

TEST_CASE("many dogs: the likeliest median and spread", "[learning]") {
    // known without error: mean and standard deviation (over n) of the logs, in closed form
    std::vector<rate_estimate> sharp;
    for (const double x : {-1.2, -1.0, -0.9, -0.7, -1.2}) {
        sharp.push_back({x, 1e-9});
    }
    const herd_rate h = herd_rate_of(sharp);
    CHECK_THAT(h.law.log_median, match::WithinAbs(-1.0, 1e-7));
    CHECK_THAT(h.law.log_sd, match::WithinAbs(std::sqrt(0.18 / 5), 1e-7));
    CHECK_THAT(h.median_error, match::WithinAbs(std::sqrt(0.18) / 5, 1e-7));
    // errors alike take their part of the spread: sqrt(0.036 - 0.1^2)
    for (rate_estimate& e : sharp) {
        e.error = 0.1;
    }
    CHECK_THAT(herd_rate_of(sharp).law.log_sd, match::WithinAbs(std::sqrt(0.026), 1e-7));
    // and if they can be all of it, the dogs don't differ; the median is then the weighted mean
    const herd_rate same = herd_rate_of({{-1.0, 0.1}, {-1.1, 0.2}});
    CHECK(same.law.log_sd == 0.0);
    CHECK_THAT(same.law.log_median, match::WithinAbs((-1.0 / 0.01 - 1.1 / 0.04) / 125.0, 1e-9));
    // a least spread: then all count nearly alike, and the median is as uncertain as they differ
    const herd_rate least = herd_rate_of({{-1.0, 0.1}, {-1.1, 0.2}}, 10.0);
    CHECK(least.law.log_sd == 10.0);
    CHECK(least.fitted_log_sd == 0.0);
    CHECK_THAT(least.law.log_median, match::WithinAbs(-1.05, 1e-4));
    CHECK_THAT(least.median_error, match::WithinRel(10.0 / std::sqrt(2.0), 1e-3));
    // a dozen dogs tell a spread within a fifth or so: it is shrunk toward the class's
    const herd_rate shrunk = herd_rate_of(sharp, 0.0, {0.3, static_cast<double>(sharp.size())});
    CHECK_THAT(shrunk.law.log_sd * shrunk.law.log_sd, match::WithinAbs(0.5 * (0.026 + 0.09), 1e-6));
    CHECK(shrunk.fitted_log_sd == herd_rate_of(sharp).fitted_log_sd);
    CHECK_THROWS_AS(herd_rate_of({{-1.0, 0.1}}), error);
}
