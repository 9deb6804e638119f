// When the dog must be back, on hand-made zones.
#include <cmath>
#include <vector>

#include <pelage/model/return_date.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

/// Median 0.34 mm a day, log SD 0.3, nothing else uncertain: then all has a closed form.
const shared_law sharp{{std::log(0.34), 0.3}, 0.0, mm(0)};
/// The same with the threshold's spread and the start error.
const shared_law blurred{{std::log(0.34), 0.3}, 0.1, mm(0.8)};

kept_zone kept(double start, double threshold, double clock = 21, double terminal = 140) {
    return {mm(start), mm(threshold), mm(terminal), day(clock)};
}

kept_zone free_of_mats(double start) {
    return {mm(start), std::nullopt, mm(140), day(21)};
}

/// The day to which a share `p` of the dogs has grown less than `room`.
double closed_form(double room, double p) {
    return room / std::exp(std::log(0.34) + 0.3 * normal_quantile(p));
}

}  // namespace

TEST_CASE("with rate alone uncertain the chance is the lognormal's", "[visits]") {
    const std::vector<kept_zone> one{kept(13, 38)};
    for (const double t : {30.0, 50.0, 73.5, 100.0}) {
        INFO(t);
        const double is = normal_cdf((std::log(25.0 / t) - std::log(0.34)) / 0.3);
        CHECK_THAT(all_fine(one, sharp, day(t)), match::WithinAbs(is, 1e-12));
    }
}

TEST_CASE("the dog is as fine as its worst zone: one rate for all", "[visits]") {
    const std::vector<kept_zone> many{kept(13, 38), kept(13, 32), kept(9.5, 38), kept(13, 32)};
    const std::vector<kept_zone> worst{kept(13, 32)};
    for (const double t : {25.0, 50.0, 80.0}) {
        INFO(t);
        CHECK(all_fine(many, sharp, day(t)) == all_fine(worst, sharp, day(t)));
        // the blur is shared too, so this still is no product
        CHECK_THAT(all_fine(many, blurred, day(t)),
                   match::WithinAbs(all_fine(worst, blurred, day(t)), 1e-9));
    }
}

TEST_CASE("inside its clock a zone is held by brushing and doesn't count", "[visits]") {
    const std::vector<kept_zone> plume{kept(60, 32, 21)};
    CHECK(all_fine(plume, sharp, day(21)) == 1.0);
    CHECK(all_fine(plume, sharp, day(21.01)) == 0.0);
    CHECK(all_fine(plume, sharp, day(1), false) == 0.0);
}

TEST_CASE("what can't be reached or doesn't mat is always fine", "[visits]") {
    CHECK(all_fine({}, sharp, day(1000)) == 1.0);
    CHECK(all_fine({free_of_mats(60)}, sharp, day(1000)) == 1.0);
    CHECK(all_fine({kept(13, 38, 0, 30)}, sharp, day(100000)) == 1.0);  // the coat stops at 30 mm
}

TEST_CASE("the chance is a chance and never rises again", "[visits]") {
    const std::vector<kept_zone> dog{kept(13, 38, 0), kept(25, 32, 21), kept(40, 32, 14)};
    for (const shared_law& law : {sharp, blurred}) {
        chance before = 1.0 + 1e-9;
        for (int t = 0; t < 200; ++t) {
            const chance now = all_fine(dog, law, day(t));
            CHECK(now >= 0.0);
            CHECK(now <= 1.0);
            CHECK(now <= before + 1e-12);
            before = now;
        }
        CHECK(before < 0.01);
    }
}

TEST_CASE("the last fine day is the closed form's, rounded down", "[visits]") {
    const std::vector<kept_zone> one{kept(13, 38, 0)};
    for (const double p : {0.5, 0.75, 0.9, 0.95}) {
        INFO(p);
        CHECK(in_days(last_fine_day(one, sharp, p, day(365))) == std::floor(closed_form(25, p)));
    }
}

TEST_CASE("the last fine day ends at the cap, and is day 0 when it is past already", "[visits]") {
    CHECK(last_fine_day({kept(3, 38)}, sharp, 0.9, day(42)) == day(42));
    CHECK(last_fine_day({}, sharp, 0.9, day(42)) == day(42));
    CHECK(last_fine_day({}, sharp, 0.9, day(42.7)) == day(42));
    CHECK(last_fine_day({kept(38, 38, 0)}, sharp, 0.9, day(56)) == day(0));
    CHECK(last_fine_day({kept(60, 38, 0)}, blurred, 0.9, day(56)) == day(0));
    CHECK(last_fine_day({kept(13, 38)}, sharp, 0.9, day(0)) == day(0));
}

TEST_CASE("the quantiles of one zone's day are the closed form's", "[visits]") {
    // 1 in 10 dogs grows fast: early
    CHECK_THAT(in_days(prone_quantile(kept(13, 38), sharp, 0.1)),
               match::WithinAbs(closed_form(25, 0.9), 0.01));
    CHECK_THAT(in_days(prone_quantile(kept(13, 38), sharp, 0.5)),
               match::WithinAbs(25 / 0.34, 0.01));
    CHECK_THAT(in_days(prone_quantile(kept(13, 38), sharp, 0.9)),
               match::WithinAbs(closed_form(25, 0.1), 0.01));
}

TEST_CASE("already past and never are answers", "[visits]") {
    CHECK(prone_quantile(kept(38, 38), sharp, 0.5) == day(0));
    CHECK(prone_quantile(kept(60, 38), blurred, 0.9) == day(0));
    CHECK(is_never(prone_quantile(free_of_mats(13), sharp, 0.5)));
    CHECK(is_never(prone_quantile(kept(13, 38, 0, 30), blurred, 0.5)));
}

TEST_CASE("a blurred threshold spreads the days to both sides", "[visits]") {
    const kept_zone z = kept(13, 38);
    CHECK(prone_quantile(z, blurred, 0.1) < prone_quantile(z, sharp, 0.1));
    CHECK(prone_quantile(z, blurred, 0.9) > prone_quantile(z, sharp, 0.9));
}

TEST_CASE("back by the last day at the chance asked, and by even odds later", "[visits]") {
    const std::vector<kept_zone> dog{kept(9.5, 28, 14), kept(13, 26, 14)};
    const back b = when_back(dog, sharp, 0.9, day(56));
    CHECK(in_days(b.in) == std::floor(closed_form(13, 0.9)));
    CHECK(in_days(b.even_odds) == std::floor(closed_form(13, 0.5)));
    CHECK(b.even_odds >= b.in);
    CHECK(b.why == visit_kind::full_groom);
    CHECK(b.full_groom == b.in);
    CHECK(b.held.empty());
    CHECK(b.asked == 0.9);
    REQUIRE(b.first);
    CHECK(*b.first == 1);
}

TEST_CASE("a coat that stays fine comes back at its usual interval", "[visits]") {
    const back b = when_back({kept(3, 38)}, sharp, 0.9, day(56));
    CHECK(b.in == day(56));
    CHECK(b.even_odds == day(56));
    CHECK(b.why == visit_kind::usual);
    const back smooth = when_back({free_of_mats(15)}, sharp, 0.9, day(56));
    CHECK(smooth.in == day(56));
    CHECK(smooth.why == visit_kind::usual);
    // six and a half weeks: the last whole day of it is as usual
    const back half = when_back({free_of_mats(15)}, sharp, 0.9, day(45.5));
    CHECK(half.in == day(45));
    CHECK(half.why == visit_kind::usual);
    CHECK_FALSE(smooth.first);
    CHECK(when_back({}, sharp, 0.9, day(56)).in == day(56));
}

TEST_CASE("a plume above its length is held by brushing; the clock calls for a brush-out",
          "[visits]") {
    const std::vector<kept_zone> dog{kept(9.5, 38, 21), kept(60, 32, 21)};
    const back b = when_back(dog, blurred, 0.9, day(56));
    CHECK(b.held == std::vector<std::size_t>{1});
    CHECK(b.in == day(21));
    CHECK(b.why == visit_kind::brush_out);
    CHECK(b.full_groom == last_fine_day({dog[0]}, blurred, 0.9, day(56)));
    CHECK(b.full_groom > b.in);
    REQUIRE(b.first);
    CHECK(*b.first == 1);
}

TEST_CASE("25 mm ears near their length are held as well", "[visits]") {
    // 32.3 mm of room 7.3: at the end of a 21-day clock fewer than 9 in 10 are under it
    const back b = when_back({kept(25, 32.3, 21)}, blurred, 0.9, day(56));
    CHECK(b.held == std::vector<std::size_t>{0});
    CHECK(b.in == day(21));
}

TEST_CASE("asking for more certainty never gives a later day", "[visits]") {
    const std::vector<kept_zone> dog{kept(13, 30, 14), kept(13, 38, 14)};
    days before = day(1000);
    for (const double p : {0.05, 0.3, 0.5, 0.7, 0.9, 0.99}) {
        INFO(p);
        const back b = when_back(dog, blurred, p, day(200));
        CHECK(b.in <= before);
        CHECK((p <= 0.5 || b.even_odds >= b.in));
        before = b.in;
    }
}

TEST_CASE("zones kept alike are reckoned alike", "[visits]") {
    CHECK(kept(13, 38) == kept(13, 38));
    CHECK_FALSE(kept(13, 38) == kept(14, 38));
    CHECK_FALSE(kept(13, 38) == kept(13, 39));
    CHECK_FALSE(kept(13, 38) == kept(13, 38, 22));
    CHECK_FALSE(kept(13, 38) == kept(13, 38, 21, 141));
    CHECK_FALSE(kept(13, 38) == free_of_mats(13));
    const std::vector<kept_zone> pair{kept(60, 32), kept(13, 38), kept(60, 32)};
    CHECK(when_back(pair, blurred, 0.9, day(56)).held == std::vector<std::size_t>{0, 2});
}
