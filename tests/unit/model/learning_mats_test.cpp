// What mats found at visits, or none, say of the length at which a dog mats.
#include <cmath>
#include <vector>

#include <pelage/model/learning_mats.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

constexpr double mu = -1.0788;  // ln 0.34
constexpr double rate_sd = 0.32;
constexpr double visit_sd = 0.12;
constexpr double factor_sd = 0.25;

comb_law law_with(double start_error, double mishaps = 0.0) {
    return {{{mu, rate_sd}, visit_sd, mm(start_error), mm(140)}, factor_sd, mishaps};
}

combed_zone zone_after(double days_after, double start, double prone, bool matted) {
    return {day(days_after), mm(start), mm(prone), mm(140), matted};
}

seen_since_cut one_check(const combed_zone& z) {
    return {{}, {{z}}};
}

}  // namespace

TEST_CASE("hair cut to the skin and found clean or matted: the closed form in two dimensions",
          "[record]") {
    // derived: from nothing, clean at t says ln r < ln T + ln(M/t). The difference of the two is normal,
    // so ln T and ln R are skew normal: with tau^2 = s^2 + sigma^2 + v^2, a = (ln(M/t) - mu)/tau and
    // l = phi(a)/Phi(a), E ln T = sigma^2/tau l, E ln R = mu - s^2/tau l, var ln T = sigma^2 -
    // (sigma^2/tau)^2 l (l + a). Matted: the same with -a and -l.
    const double tau = std::sqrt(rate_sd * rate_sd + visit_sd * visit_sd + factor_sd * factor_sd);
    for (const double t : {60.0, 112.0, 180.0}) {
        for (const bool matted : {false, true}) {
            INFO(t << (matted ? " matted" : " clean"));
            const double sign = matted ? -1.0 : 1.0;
            const double a = sign * (std::log(38.0 / t) - mu) / tau;
            const double l = normal_density(a) / normal_cdf(a);
            const comb_posterior p({one_check(zone_after(t, 0.0, 38.0, matted))}, law_with(0.3));
            CHECK_THAT(p.factor_mean(),
                       match::WithinAbs(sign * factor_sd * factor_sd / tau * l, 2e-3));
            CHECK_THAT(p.rate().log_median,
                       match::WithinAbs(mu - sign * rate_sd * rate_sd / tau * l, 2e-3));
            const double part = factor_sd * factor_sd / tau;
            CHECK_THAT(p.factor_sd(),
                       match::WithinAbs(
                           std::sqrt(factor_sd * factor_sd - part * part * l * (l + a)), 2e-3));
        }
    }
}

TEST_CASE("nobody looked: the prior", "[record]") {
    const comb_posterior p({}, law_with(0.8));
    CHECK_THAT(p.factor_mean(), match::WithinAbs(0.0, 1e-9));
    CHECK_THAT(p.factor_sd(), match::WithinAbs(factor_sd, 1e-4));
    CHECK_THAT(p.rate().log_median, match::WithinAbs(mu, 1e-9));
    CHECK_THAT(p.rate().log_sd, match::WithinAbs(rate_sd, 1e-4));
    CHECK_THAT(p.factor_below(1.0), match::WithinAbs(0.5, 1e-9));
}

TEST_CASE("lengths alone: what the posterior of the rate says by itself", "[record]") {
    const comb_law law = law_with(0.8);
    const regrowth_interval readings{{day(30), mm(13), mm(26), mm(0.8)},
                                     {day(45), mm(13), mm(31), mm(1.5)}};
    const rate_posterior alone({readings}, law.growth);
    const comb_posterior both({{readings, {}}}, law);
    CHECK_THAT(both.rate().log_median, match::WithinAbs(alone.mean(), 1e-3));
    CHECK_THAT(both.rate().log_sd, match::WithinAbs(alone.sd(), 1e-3));
    CHECK_THAT(both.factor_sd(), match::WithinAbs(factor_sd, 1e-4));
    // with a check that says nothing (found clean the day after) they come the other way, to the same
    const comb_posterior checked({{readings, {{zone_after(1, 13, 38, false)}}}}, law);
    CHECK_THAT(checked.rate().log_median, match::WithinAbs(alone.mean(), 2e-3));
    CHECK_THAT(checked.rate().log_sd, match::WithinAbs(alone.sd(), 2e-3));
}

TEST_CASE(
    "clean visits move the length up, mats down, and each the less the more mishaps there are",
    "[record]") {
    const seen_since_cut clean = one_check(zone_after(42, 13, 30, false));
    const seen_since_cut matted = one_check(zone_after(28, 13, 30, true));
    const comb_posterior two({clean, clean}, law_with(0.8));
    const comb_posterior one({clean}, law_with(0.8));
    CHECK(one.factor_mean() > 0.0);
    CHECK(two.factor_mean() > one.factor_mean());
    CHECK(two.factor_sd() < factor_sd);
    const comb_posterior bad({matted}, law_with(0.8));
    CHECK(bad.factor_mean() < 0.0);
    CHECK(bad.rate().log_median > mu);
    const comb_posterior doubted({matted}, law_with(0.8, 0.2));
    CHECK(doubted.factor_mean() > bad.factor_mean());
    CHECK(doubted.factor_mean() < 0.0);
    // what nothing explains is a mishap: mats on hair cut to the skin the day before
    const comb_posterior odd({one_check(zone_after(1, 1, 38, true))}, law_with(0.8, 0.05));
    CHECK_THAT(odd.factor_mean(), match::WithinAbs(0.0, 0.02));
}

TEST_CASE("the cases of a forecast are chances and keep the spread from visit to visit",
          "[record]") {
    const comb_posterior p({one_check(zone_after(42, 13, 30, false))}, law_with(0.8, 0.05));
    double sum = 0.0;
    double mean = 0.0;
    for (const factor_case& f : p.cases()) {
        sum += f.weight;
        mean += f.weight * std::log(f.factor);
        CHECK(f.rate.log_sd > visit_sd);
    }
    CHECK_THAT(sum, match::WithinAbs(1.0, 1e-9));
    CHECK_THAT(mean, match::WithinAbs(p.factor_mean(), 1e-4));
}

TEST_CASE("a clean zone that mats before a matted one, whatever the dog, is no evidence",
          "[record]") {
    const combed_zone armpit = zone_after(40, 13, 30, false);
    const combed_zone back = zone_after(40, 13, 38, false);
    combed_zone tail = zone_after(40, 13, 32, true);
    const comb_check kept = consistent({armpit, back, tail});
    REQUIRE(kept.size() == 2);
    CHECK(kept[0].prone == mm(38));
    CHECK(kept[1].matted);
    CHECK(consistent({armpit, back}).size() == 2);
}

TEST_CASE("a check without a time or a length is refused", "[record]") {
    CHECK_THROWS_AS(comb_posterior({one_check(zone_after(0, 13, 38, false))}, law_with(0.8)),
                    error);
    CHECK_THROWS_AS(comb_posterior({one_check(zone_after(30, 13, 0, false))}, law_with(0.8)),
                    error);
}
