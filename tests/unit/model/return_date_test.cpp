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
    const return_date b = return_date_of(dog, sharp, 0.9, day(56));
    CHECK(in_days(b.next_visit) == std::floor(closed_form(13, 0.9)));
    CHECK(in_days(b.even_odds) == std::floor(closed_form(13, 0.5)));
    CHECK(b.even_odds >= b.next_visit);
    CHECK(b.reason == visit_kind::by_length);
    CHECK(b.full_groom == day(56));
    CHECK(b.by_brushing.empty());
    REQUIRE(b.fine);
    CHECK_THAT(*b.fine, match::WithinAbs(all_fine(dog, sharp, b.next_visit), 1e-9));
    CHECK(b.asked == 0.9);
    REQUIRE(b.first);
    CHECK(*b.first == 1);
}

TEST_CASE("a coat that stays fine comes back at its usual interval", "[visits]") {
    const return_date b = return_date_of({kept(3, 38)}, sharp, 0.9, day(56));
    CHECK(b.next_visit == day(56));
    CHECK(b.even_odds == day(56));
    CHECK(b.reason == visit_kind::usual);
    const return_date smooth = return_date_of({free_of_mats(15)}, sharp, 0.9, day(56));
    CHECK(smooth.next_visit == day(56));
    CHECK(smooth.reason == visit_kind::usual);
    // six and a half weeks: the last whole day of it is as usual
    const return_date half = return_date_of({free_of_mats(15)}, sharp, 0.9, day(45.5));
    CHECK(half.next_visit == day(45));
    CHECK(half.reason == visit_kind::usual);
    CHECK_FALSE(smooth.first);
    CHECK(return_date_of({}, sharp, 0.9, day(56)).next_visit == day(56));
}

TEST_CASE("a plume above its length is held by brushing; the clock calls for a brush-out",
          "[visits]") {
    const std::vector<kept_zone> dog{kept(9.5, 38, 21), kept(60, 32, 21)};
    const return_date b = return_date_of(dog, blurred, 0.9, day(56));
    CHECK(b.by_brushing == std::vector<std::size_t>{1});
    CHECK(b.held_for == day(21));
    CHECK(b.next_visit == day(21));
    CHECK(b.reason == visit_kind::by_brushing);
    CHECK_FALSE(b.fine);  // no chance is told of what brushing holds
    CHECK(b.full_groom == day(56));
    REQUIRE(b.first);
    CHECK(*b.first == 1);
}

TEST_CASE("25 mm ears near their length are held as well", "[visits]") {
    // 32.3 mm of room 7.3: at the end of a 21-day clock fewer than 9 in 10 are under it
    const return_date b = return_date_of({kept(25, 32.3, 21)}, blurred, 0.9, day(56));
    CHECK(b.by_brushing == std::vector<std::size_t>{0});
    CHECK(b.next_visit == day(21));
}

TEST_CASE("clocks that end apart: a chance of those whose has, and brushing of the others",
          "[visits]") {
    const std::vector<kept_zone> dog{kept(20, 30, 7), kept(60, 32, 21)};
    const return_date b = return_date_of(dog, blurred, 0.9, day(56));
    CHECK(b.next_visit < day(21));
    CHECK(b.reason == visit_kind::by_length);
    REQUIRE(b.fine);
    CHECK_THAT(*b.fine, match::WithinAbs(all_fine({dog[0]}, blurred, b.next_visit, false), 1e-9));
    CHECK(b.by_brushing == std::vector<std::size_t>{1});
}

TEST_CASE("at the usual interval the chance is the model's own, not the one asked for",
          "[visits]") {
    const std::vector<kept_zone> dog{kept(6, 38, 21)};
    const return_date b = return_date_of(dog, blurred, 0.9, day(56));
    CHECK(b.reason == visit_kind::usual);
    REQUIRE(b.fine);
    CHECK(*b.fine > 0.92);
    CHECK_THAT(*b.fine, match::WithinAbs(all_fine(dog, blurred, day(56)), 1e-9));
}

TEST_CASE("what the dog's visits taught of its matting-prone length is a mixture of cases",
          "[visits]") {
    // derived: each case is a lognormal of its own, the chance their mean
    shared_law law = sharp;
    law.learned = {{0.8, 0.25, {std::log(0.30), 0.2}}, {1.1, 0.75, {std::log(0.36), 0.25}}};
    const std::vector<kept_zone> dog{kept(13, 38, 0)};
    for (const double t : {20.0, 45.0, 80.0}) {
        const double low = normal_cdf((std::log((38 * 0.8 - 13) / t) - std::log(0.30)) / 0.2);
        const double high = normal_cdf((std::log((38 * 1.1 - 13) / t) - std::log(0.36)) / 0.25);
        CHECK_THAT(all_fine(dog, law, day(t)), match::WithinAbs(0.25 * low + 0.75 * high, 1e-9));
    }
    law.grow_by(std::log(2.0));
    CHECK(law.rate.log_median == sharp.rate.log_median + std::log(2.0));
    CHECK_THAT(
        all_fine(dog, law, day(20)),
        match::WithinAbs(0.25 * normal_cdf((std::log(17.4 / 20) - std::log(0.6)) / 0.2) +
                             0.75 * normal_cdf((std::log(28.8 / 20) - std::log(0.72)) / 0.25),
                         1e-9));
}

TEST_CASE("asking for more certainty never gives a later day", "[visits]") {
    const std::vector<kept_zone> dog{kept(13, 30, 14), kept(13, 38, 14)};
    days before = day(1000);
    for (const double p : {0.05, 0.3, 0.5, 0.7, 0.9, 0.99}) {
        INFO(p);
        const return_date b = return_date_of(dog, blurred, p, day(200));
        CHECK(b.next_visit <= before);
        CHECK((p <= 0.5 || b.even_odds >= b.next_visit));
        before = b.next_visit;
    }
}

TEST_CASE("what only brushing protects is past its length on the next day by the whole curve",
          "[visits]") {
    const shared_law law{{std::log(0.34), 0.3}, 0.25, mm(0.8)};
    for (double start = 2; start < 44; start += 0.5) {
        INFO(start);
        // an ear kept between, a leg that ends sooner, a plume that is past it already
        const std::vector<kept_zone> zones{kept(start, 38), kept(start / 2, 30, 21, 34),
                                           kept(40, 38)};
        const return_date b = return_date_of(zones, law, 0.9, day(56));
        REQUIRE(in_days(b.next_visit) == 21);
        std::vector<std::size_t> past;
        for (std::size_t i = 0; i < zones.size(); ++i) {
            if (all_fine({zones[i]}, law, day(22), false) < 0.9) {
                past.push_back(i);
            }
        }
        CHECK(b.by_brushing == past);
    }
}

TEST_CASE("known to mat at one length it is due on the last day of a fine sum over start errors",
          "[visits]") {
    const shared_law law{{std::log(0.34), 0.3}, 0.0, mm(0.8)};
    for (double room = -3; room < 40; room += 0.5) {
        INFO(room);
        const std::vector<kept_zone> zones{kept(20, 20 + room, -1), kept(3, 60, -1)};
        const auto fine = [&](double t) {
            return integrate(
                [&](double e) {
                    const double left = std::max(0.0, room - 0.8 * e);
                    const double z = (std::log(left / t) - std::log(0.34)) / 0.3;
                    return normal_density(e) * normal_cdf(z);
                },
                -6, 6, 200);
        };
        int last = 0;
        while (last < 90 && fine(last + 1) >= 0.9) {
            ++last;
        }
        CHECK(last_fine_day(zones, law, 0.9, day(90)) == day(last));
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
    CHECK(return_date_of(pair, blurred, 0.9, day(56)).by_brushing ==
          std::vector<std::size_t>{0, 2});
}
