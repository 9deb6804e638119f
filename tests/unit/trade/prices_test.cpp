// What work and misses cost. Every price here is a guess of ours that a salon may replace.
#include <pelage/trade/prices.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::plain;

namespace {

price_rules rules() {
    price_rules p;
    p.comb_then_scissor = plain(2.5);
    p.scissor = plain(4.0);
    p.thin = plain(2.0);
    p.card = plain(3.0);
    p.hand_strip = plain(8.0);
    p.size = {plain(0.6), plain(0.8), plain(1.0), plain(1.5), plain(2.0)};
    p.miss_per_excess = plain(minutes(10));
    p.miss_floor = plain(mm(6));
    p.tolerance_share = plain(0.15);
    p.tolerance_cap = plain(mm(1.5));
    p.tolerance_cap_share = plain(0.3);
    p.tolerance_head_share = plain(0.1);
    p.comb_out_tangle = plain(minutes(1));
    p.comb_out_mat = plain(minutes(3));
    p.comb_out_area = plain(minutes(10));
    return p;
}

zone clipped_in(double min) {
    zone z;
    z.clip_time = plain(minutes(min));
    return z;
}

std::int64_t miss(double got, double target, side_of_target s, int weight_tenths = 10) {
    const length tol = tolerance(mm(target), false, rules());
    return in_mmin(miss_price(mm(got), mm(target), tol, s, weight_tenths, rules()));
}

}  // namespace

TEST_CASE("how far from the wish a zone may end", "[prices]") {
    struct row {
        double target;
        bool head;
        double is;
    };
    const row rows[] = {
        {1.5, false, 0.45},                 // 30 % of so short a wish
        {5, false, 1.5},                    // where 30 % reaches 1.5 mm
        {9.5, false, 1.5},                  // 15 % would be less than 1.5 mm
        {10, false, 1.5},                   // where they meet
        {13, false, 1.95},                  // 15 %
        {40, false, 6},     {40, true, 4},  // the head is looked at: 10 %
        {13, true, 1.5},    {1.5, true, 0.45},
    };
    for (const row& r : rows) {
        INFO(r.target << (r.head ? " on the head" : ""));
        CHECK_THAT(in_mm(tolerance(mm(r.target), r.head, rules())), match::WithinAbs(r.is, 1e-9));
    }
}

TEST_CASE("a finish takes so many times the clipping time", "[prices]") {
    CHECK(finish_factor(finish::clip, rules()) == 1.0);
    CHECK(finish_factor(finish::comb_then_scissor, rules()) == 2.5);
    CHECK(finish_factor(finish::scissor, rules()) == 4.0);
    CHECK(finish_factor(finish::thin, rules()) == 2.0);
    CHECK(finish_factor(finish::card, rules()) == 3.0);
    CHECK(finish_factor(finish::hand_strip, rules()) == 8.0);
    CHECK(finish_factor(finish::leave, rules()) == 0.0);
}

TEST_CASE("a larger dog takes longer in every finish", "[prices]") {
    const zone leg = clipped_in(3);
    CHECK(zone_work(leg, finish::clip, dog_size::medium, rules()) == minutes(3));
    CHECK(zone_work(leg, finish::clip, dog_size::toy, rules()) == minutes(1.8));
    CHECK(zone_work(leg, finish::scissor, dog_size::giant, rules()) == minutes(24));
    CHECK(zone_work(leg, finish::comb_then_scissor, dog_size::small, rules()) == minutes(6));
    CHECK(zone_work(leg, finish::leave, dog_size::large, rules()) == minutes(0));
    work before{};
    for (const dog_size s :
         {dog_size::toy, dog_size::small, dog_size::medium, dog_size::large, dog_size::giant}) {
        INFO(name(s));
        CHECK(zone_work(leg, finish::clip, s, rules()) > before);
        before = zone_work(leg, finish::clip, s, rules());
    }
}

TEST_CASE(
    "inside the tolerance a tenth of a millimetre is a thousandth of a minute, four times "
    "that on the wrong side",
    "[prices]") {
    CHECK(miss(13, 13, side_of_target::longer) == 0);
    CHECK(miss(14, 13, side_of_target::longer) == 10);
    CHECK(miss(12, 13, side_of_target::longer) == 40);
    CHECK(miss(14, 13, side_of_target::shorter) == 40);
    CHECK(miss(12, 13, side_of_target::shorter) == 10);
    CHECK(miss(14, 13, side_of_target::nearest) == 10);
    CHECK(miss(12, 13, side_of_target::nearest) == 10);
}

TEST_CASE("exactly at the tolerance nothing is missed; a hundredth beyond it is", "[prices]") {
    for (const double target :
         {1.5, 3.2, 5.0, 6.4, 9.5, 13.0, 16.0, 19.0, 22.0, 25.0, 32.0, 38.0, 51.0}) {
        const double tol = in_mm(tolerance(mm(target), false, rules()));
        INFO(target << " give or take " << tol);
        const auto inside = [&](double got) {
            return in_mmin(miss_price(mm(got), mm(target), mm(tol), side_of_target::nearest,
                                      1'000'000, rules()));
        };
        // so heavy a weight shows the smallest excess
        CHECK(inside(target + tol) < 1000);
        CHECK(inside(target - tol) < 1000);
        CHECK(inside(target + tol + 0.01) > 1000);
        CHECK(inside(target - tol - 0.01) > 1000);
    }
}

TEST_CASE("beyond it: weight times ten minutes times the excess over the wish", "[prices]") {
    // 22.95 mm for 13: 8 mm beyond the 1.95; inside part 1.95 mm in tenths, 20
    CHECK(miss(22.95, 13, side_of_target::longer) == 20 + 6154);
    CHECK(miss(22.95, 13, side_of_target::longer, 30) == 20 + 18462);
    // a wish under 6 mm counts as 6: 5.45 for 1.5 is 3.5 beyond 0.45
    CHECK(miss(5.45, 1.5, side_of_target::longer) == 5 + 5833);
}

TEST_CASE("a miss grows with its distance", "[prices]") {
    std::int64_t before = -1;
    for (int tenths = 0; tenths < 300; ++tenths) {
        const std::int64_t now = miss(13 + tenths / 10.0, 13, side_of_target::longer);
        CHECK(now > before);
        before = now;
    }
}

TEST_CASE("combing out takes its time by grade; a pelt is never combed out", "[prices]") {
    const auto takes = [](mat_grade g, dog_size s) { return comb_out_work(g, s, rules()); };
    CHECK(takes(mat_grade::tangle, dog_size::medium) == minutes(1));
    CHECK(takes(mat_grade::mat, dog_size::medium) == minutes(3));
    CHECK(takes(mat_grade::matted_area, dog_size::medium) == minutes(10));
    CHECK(takes(mat_grade::matted_area, dog_size::large) == minutes(15));
    CHECK(takes(mat_grade::mat, dog_size::toy) == minutes(1.8));
    CHECK_FALSE(takes(mat_grade::pelt, dog_size::toy));
}
