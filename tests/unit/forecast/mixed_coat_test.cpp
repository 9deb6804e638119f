// A dog whose coat nobody has seen: mixtures of chances, and what a plan tells of it.
#include <cmath>

#include <pelage/forecast/mixed_coat.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

/// Fine until a day, then not: a certain end.
fine_if until_day(double weight, double last) {
    return {weight, [last](const days& d) { return in_days(d) <= last ? 1.0 : 0.0; }};
}

/// Time to the matting-prone length lognormal: median `median`, log SD `s`.
fine_if lognormal(double weight, double median, double s) {
    return {weight, [=](const days& d) {
                return 1.0 - normal_cdf((std::log(in_days(d)) - std::log(median)) / s);
            }};
}

}  // namespace

TEST_CASE("a mixture is of chances, not of days", "[unseen]") {
    // derived: three quarters end on day 60, one quarter on day 20
    const std::vector<fine_if> two{until_day(0.75, 60), until_day(0.25, 20)};
    CHECK(fine_until(two, day(20)) == 1.0);
    CHECK(fine_until(two, day(21)) == 0.75);
    CHECK(fine_until(two, day(61)) == 0.0);
    // nine in ten: the early kind decides; the mean of the two days, 50, would be wrong for both
    CHECK(last_fine_day(two, 0.9, day(100)) == day(20));
    CHECK(last_fine_day(two, 0.75, day(100)) == day(60));
    CHECK(last_fine_day(two, 0.5, day(100)) == day(60));
    CHECK(last_fine_day(two, 0.5, day(40)) == day(40));
}

TEST_CASE("a rare kind that mats early doesn't move the date, a common one does", "[unseen]") {
    CHECK(last_fine_day({until_day(0.95, 60), until_day(0.05, 5)}, 0.9, day(100)) == day(60));
    CHECK(last_fine_day({until_day(0.85, 60), until_day(0.15, 5)}, 0.9, day(100)) == day(5));
}

TEST_CASE("a mixture of lognormal times in closed form", "[unseen]") {
    // derived: 1 - sum of w Phi((ln t - ln m) / s); at t = 40 with m 44.285714, s 0.198042 the chance
    // to be fine is 1 - 0.3036454065 (check 16), with m 40 it is one half
    const std::vector<fine_if> mix{lognormal(0.6, 44.285714285714, 0.1980422004353),
                                   lognormal(0.4, 40.0, 0.3)};
    CHECK_THAT(fine_until(mix, day(40)),
               match::WithinAbs(0.6 * (1.0 - 0.3036454065) + 0.4 * 0.5, 1e-8));
    // the day asked for lies between those of the kinds
    const days all = last_fine_day(mix, 0.9, day(200));
    CHECK(all >= last_fine_day({lognormal(1.0, 40.0, 0.3)}, 0.9, day(200)));
    CHECK(all <= last_fine_day({lognormal(1.0, 44.285714, 0.198)}, 0.9, day(200)));
}

TEST_CASE("one kind alone is itself, and weights must make a whole", "[unseen]") {
    CHECK(last_fine_day({until_day(1.0, 33)}, 0.9, day(100)) == day(33));
    CHECK(last_fine_day({until_day(1.0, 33), until_day(0.0, 3)}, 0.9, day(100)) == day(33));
    CHECK_THROWS_AS(fine_until({until_day(0.5, 33)}, day(1)), error);
    CHECK_THROWS_AS(fine_until({until_day(1.5, 33), until_day(-0.5, 3)}, day(1)), error);
    CHECK_THROWS_AS(fine_until({}, day(1)), error);
}

TEST_CASE("a coat that is certain gives the date it gives when seen", "[unseen]") {
    const groom_table t;
    const groom g = t.plan();
    const return_date seen = back_of(t.request(), g);
    const return_date certain = back_of(t.request(), g, {{coat_class::wavy, 1.0}});
    CHECK(certain.next_visit == seen.next_visit);
    CHECK(certain.even_odds == seen.even_odds);
    CHECK(certain.full_groom == seen.full_groom);
    CHECK(certain.reason == seen.reason);
    CHECK(certain.by_brushing == seen.by_brushing);
}

TEST_CASE("two coats: the date lies between those of each", "[unseen]") {
    groom_table t;
    const groom g = t.plan();
    const return_date wavy = back_of(t.request(), g, {{coat_class::wavy, 1.0}});
    const return_date drop = back_of(t.request(), g, {{coat_class::drop, 1.0}});
    const return_date both =
        back_of(t.request(), g, {{coat_class::wavy, 0.5}, {coat_class::drop, 0.5}});
    REQUIRE(wavy.next_visit != drop.next_visit);
    CHECK(both.next_visit >= std::min(wavy.next_visit, drop.next_visit));
    CHECK(both.next_visit <= std::max(wavy.next_visit, drop.next_visit));
    CHECK(both.full_groom >= both.next_visit);
}

TEST_CASE("a coat that doesn't mat by length lets the date move out, up to the usual interval",
          "[unseen]") {
    groom_table t;
    const groom g = t.plan();
    const return_date wavy = back_of(t.request(), g, {{coat_class::wavy, 1.0}});
    const return_date some =
        back_of(t.request(), g, {{coat_class::wavy, 0.75}, {coat_class::double_long, 0.25}});
    CHECK(some.next_visit > wavy.next_visit);
    // nine in ten of three quarters fine: beyond the wavy coat's usual interval nobody of it is
    CHECK(some.next_visit <= coat_of(t.request().reference, coat_class::wavy).usual_interval.best);
    CHECK(some.reason == visit_kind::by_length);
}

TEST_CASE("what the plan would leave on another coat", "[unseen]") {
    groom_table t;
    t.tools = drawer({"30", "10", "3F"});  // bare blades: a comb leaves much the same on any coat
    const groom g = t.plan();
    const auto others = on_other_coats(t.request(), g,
                                       {{coat_class::wavy, 0.5},
                                        {coat_class::curly, 0.3},
                                        {coat_class::double_long, 0.19},
                                        {coat_class::drop, 0.01}});
    REQUIRE(others.size() == 2);  // the one planned on and the rare one are not told
    CHECK(others[0].what.coat == coat_class::curly);
    CHECK_FALSE(others[0].jacket_clipped);
    REQUIRE_FALSE(others[0].leaves.empty());
    for (const left_otherwise& l : others[0].leaves) {
        // curls stand off: the same setup leaves them shorter, by the law of the cut
        CHECK(l.then.best < l.planned.best);
    }
    // a double coat's jacket would be clipped by this plan: that must be told
    CHECK(others[1].jacket_clipped);
}

TEST_CASE("no cut makes hair longer than it is today", "[unseen]") {
    groom_table t;
    t.patient.now.push_back({"all", mm(14)});
    const groom g = t.plan();
    const auto others =
        on_other_coats(t.request(), g, {{coat_class::wavy, 0.5}, {coat_class::drop, 0.5}});
    REQUIRE(others.size() == 1);
    for (const left_otherwise& l : others[0].leaves) {
        CHECK(l.then.best <= mm(14));
    }
}
