// A dog whose coat isn't certain: chances are mixed, not days.
#include <cmath>
#include <vector>

#include <pelage/forecast/mixture.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

/// Nothing uncertain but the rate, so that all has a closed form.
coat_case likely(double weight, double median, double log_sd, double start, double threshold) {
    return {weight,
            {{mm(start), mm(threshold), mm(140), day(0)}},
            {{std::log(median), log_sd}, 0.0, mm(0)}};
}

double closed_form(double room, double t, double median, double log_sd) {
    return normal_cdf((std::log(room / t) - std::log(median)) / log_sd);
}

}  // namespace

TEST_CASE("the chance of an uncertain coat is the weighted mean of the chances", "[mixture]") {
    const std::vector<coat_case> either{likely(0.7, 0.34, 0.3, 13, 38),
                                        likely(0.3, 0.5, 0.1, 13, 25)};
    for (const double t : {10.0, 25.0, 40.0, 90.0}) {
        INFO(t);
        const double is = 0.7 * closed_form(25, t, 0.34, 0.3) + 0.3 * closed_form(12, t, 0.5, 0.1);
        CHECK_THAT(all_fine(either, day(t)), match::WithinAbs(is, 1e-12));
    }
}

TEST_CASE("days are not averaged: the worse case decides while it may be true", "[mixture]") {
    const coat_case soon = likely(0.5, 0.5, 0.05, 13, 23);  // about day 20
    const coat_case late = likely(0.5, 0.5, 0.05, 13, 43);  // about day 60
    const days worse = last_fine_day(soon.zones, soon.law, 0.8, day(365));
    const days better = last_fine_day(late.zones, late.law, 0.8, day(365));
    const days either = last_fine_day({soon, late}, 0.9, day(365));
    CHECK(worse < day(21));
    CHECK(better > day(50));
    // 9 in 10 of both together: 8 in 10 of those that are soon
    CHECK(either == worse);
    // at 1 in 2 any day between serves, and the last of them is given
    CHECK(last_fine_day({soon, late}, 0.45, day(365)) > day(40));
}

TEST_CASE("a certain coat is a mixture of one", "[mixture]") {
    const coat_case one = likely(1.0, 0.34, 0.3, 13, 38);
    for (const double p : {0.1, 0.5, 0.9}) {
        CHECK(last_fine_day({one}, p, day(56)) == last_fine_day(one.zones, one.law, p, day(56)));
    }
    CHECK(all_fine({one, likely(0.0, 0.34, 0.3, 60, 38)}, day(30)) ==
          all_fine(one.zones, one.law, day(30)));
}

TEST_CASE("a coat that doesn't mat by length is always fine in its share", "[mixture]") {
    const coat_case smooth{
        0.25, {{mm(13), std::nullopt, mm(22), day(0)}}, {{-1.5, 0.4}, 0.1, mm(0)}};
    const coat_case wavy = likely(0.75, 0.34, 0.3, 13, 38);
    CHECK_THAT(all_fine({smooth, wavy}, day(1e5)), match::WithinAbs(0.25, 1e-9));
    CHECK(last_fine_day({smooth, wavy}, 0.2, day(100)) == day(100));
}

TEST_CASE("clocks hold zones in every case", "[mixture]") {
    coat_case held = likely(1.0, 0.34, 0.3, 60, 38);
    held.zones[0].clock = day(21);
    CHECK(last_fine_day({held}, 0.9, day(56)) == day(21));
    CHECK(last_fine_day({held}, 0.9, day(56), false) == day(0));
}
