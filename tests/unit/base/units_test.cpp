// Lengths, days, rates and minutes of work.
#include <limits>

#include <pelage/base/units.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("an inch is 25.4 mm, and its fractions are what the trade rounds from", "[units]") {
    struct row {
        int n;
        int d;
        double is;
    };
    // NIST SP 811: the international inch is 25.4 mm exactly; the rest is arithmetic
    const row rows[] = {{1, 1, 25.4},   {1, 2, 12.7},    {3, 8, 9.525},    {1, 4, 6.35},
                        {1, 8, 3.175},  {1, 16, 1.5875}, {1, 32, 0.79375}, {3, 64, 1.190625},
                        {5, 8, 15.875}, {1, 100, 0.254}};
    for (const row& r : rows) {
        INFO(r.n << "/" << r.d << " in");
        CHECK(in_mm(inch(r.n, r.d)) == r.is);
    }
    CHECK(inch(2) == mm(50.8));
}

TEST_CASE("what goes in comes out", "[units]") {
    CHECK(in_mm(mm(9.5)) == 9.5);
    CHECK(in_days(day(33.5)) == 33.5);
    CHECK(in_mm_per_day(mm_per_day(0.34)) == 0.34);
    CHECK(in_mmin(mmin(1500)) == 1500);
    CHECK(in_minutes(mmin(1500)) == 1.5);
    CHECK(13_mm == mm(13));
    CHECK(9.5_mm == mm(9.5));
    CHECK(28_d == day(28));
}

TEST_CASE("minutes of work are rounded to a thousandth, halves away from nothing", "[units]") {
    CHECK(minutes(2) == mmin(2000));
    CHECK(minutes(0.25) == mmin(250));
    CHECK(minutes(0.0004) == mmin(0));
    CHECK(minutes(0.0006) == mmin(1));
    CHECK(minutes(0.0) == mmin(0));
    CHECK(minutes(1.5) + minutes(2.5) == minutes(4));
}

TEST_CASE("growth is rate times days, and a length over a rate is days", "[units]") {
    CHECK(in_mm(mm_per_day(0.5) * day(14)) == 7.0);
    CHECK(in_days(mm(7) / mm_per_day(0.5)) == 14.0);
    CHECK(in_mm_per_day(mm(7) / day(14)) == 0.5);
}

TEST_CASE("shorter, longer and the gap between two lengths", "[units]") {
    CHECK(shorter(9.5_mm, 13_mm) == 9.5_mm);
    CHECK(shorter(13_mm, 9.5_mm) == 9.5_mm);
    CHECK(longer(9.5_mm, 13_mm) == 13_mm);
    CHECK(longer(13_mm, 9.5_mm) == 13_mm);
    CHECK(gap(13_mm, 9.5_mm) == 3.5_mm);
    CHECK(gap(9.5_mm, 13_mm) == 3.5_mm);
    CHECK(gap(13_mm, 13_mm) == 0_mm);
}

TEST_CASE("plans compare in whole hundredths of a millimetre", "[units]") {
    CHECK(in_hundredths(13_mm) == 1300);
    CHECK(in_hundredths(0.25_mm) == 25);
    CHECK(in_hundredths(0_mm) == 0);
    CHECK(in_hundredths(mm(1.234)) == 123);
    CHECK(in_hundredths(mm(1.236)) == 124);
    // what a sum of doubles leaves over is below the grain
    CHECK(in_hundredths(mm(0.1 + 0.2)) == in_hundredths(mm(0.3)));
}

TEST_CASE("at the grain of plans: rounded, and within a tolerance to the hundredth", "[units]") {
    CHECK(rounded(mm(1.234)) == mm(1.23));
    CHECK(rounded(mm(1.2351)) == mm(1.24));
    CHECK(rounded(13_mm) == 13_mm);
    CHECK(within(mm(14.95), 13_mm, mm(1.95)));
    CHECK(within(mm(11.05), 13_mm, mm(1.95)));
    CHECK_FALSE(within(mm(14.96), 13_mm, mm(1.95)));
    CHECK_FALSE(within(mm(11.04), 13_mm, mm(1.95)));
    CHECK(within(13_mm, 13_mm, 0_mm));
    // 19 give or take 2.85: the sum of doubles lies a hair outside, the hundredth doesn't
    CHECK(within(mm(19.0 + 2.85), 19_mm, mm(2.85)));
}

TEST_CASE("endless is endless, not nothing", "[units]") {
    CHECK(std::numeric_limits<length>::infinity() > mm(1e9));
    CHECK(std::numeric_limits<days>::infinity() > day(1e9));
}
