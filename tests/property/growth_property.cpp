// Laws of growth and of the forecast on random coats.
#include <cmath>
#include <vector>

#include <rapidcheck.h>

#include <pelage/model/matting.hpp>
#include <pelage/model/return_date.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

/// Between two numbers, in a thousand steps.
double between(double low, double high) {
    return low + (high - low) * *rc::gen::inRange(0, 1001) / 1000.0;
}

rate_law any_rate() {
    return {std::log(between(0.05, 0.8)), between(0.05, 0.6)};
}

/// A start error comes with a spread of the threshold, as in the reference: without one the chance is
/// a staircase of the quadrature's nodes.
shared_law any_law() {
    const bool blurred = *rc::gen::arbitrary<bool>();
    return {any_rate(), blurred ? between(0.02, 0.3) : 0.0,
            blurred && *rc::gen::arbitrary<bool>() ? mm(between(0.1, 2.0)) : mm(0)};
}

kept_zone any_zone() {
    kept_zone z;
    z.start = mm(between(1, 70));
    if (*rc::gen::inRange(0, 6) > 0) {
        z.threshold = mm(between(10, 70));
    }
    z.terminal = mm(between(20, 280));
    z.clock = day(*rc::gen::inRange(0, 30));
    return z;
}

std::vector<kept_zone> any_dog() {
    std::vector<kept_zone> dog;
    for (int i = *rc::gen::inRange(1, 6); i > 0; --i) {
        dog.push_back(any_zone());
    }
    return dog;
}

}  // namespace

TEST_CASE("after the days to a length the hair has that length", "[growth]") {
    CHECK(rc::check([] {
        const length from = mm(between(0, 60));
        const length to = from + mm(between(0.01, 60));
        const length stop = to + mm(between(0, 60));
        const growth_rate r = mm_per_day(between(0.05, 0.8));
        const days d = days_to_length(from, to, stop, r);
        RC_ASSERT(std::abs(in_mm(grown(from, stop, r, d)) - in_mm(to)) < 1e-9);
        RC_ASSERT(grown(from, stop, r, d - day(0.5)) < to);
    }));
}

TEST_CASE("a longer start is there earlier, a longer way later, a faster rate earlier",
          "[growth]") {
    CHECK(rc::check([] {
        const length from = mm(between(0, 30));
        const length to = mm(between(31, 60));
        const growth_rate r = mm_per_day(between(0.05, 0.8));
        const days d = days_to_length(from, to, mm(100), r);
        RC_ASSERT(days_to_length(from + mm(0.5), to, mm(100), r) < d);
        RC_ASSERT(days_to_length(from, to + mm(0.5), mm(100), r) > d);
        RC_ASSERT(days_to_length(from, to, mm(100), r + mm_per_day(0.01)) < d);
    }));
}

TEST_CASE("quantile and chance of the day undo each other", "[growth]") {
    CHECK(rc::check([] {
        const rate_law r = any_rate();
        const length from = mm(between(0, 30));
        const length to = mm(between(31, 60));
        const double p = between(0.01, 0.99);
        const days d = reach_quantile(from, to, mm(100), r, p);
        RC_ASSERT(std::abs(reached_by(from, to, mm(100), r, d) - p) < 1e-9);
    }));
}

TEST_CASE("a resting coat grows, stops at its length, and its curve is inverted", "[growth]") {
    CHECK(rc::check([] {
        const resting_coat c{between(0, 1), day(between(1, 60)), mm(between(10, 120))};
        const growth_rate r = mm_per_day(between(0.05, 0.8));
        const double t = between(0, 600);
        const length now = resting_mean(c, r, day(t));
        RC_ASSERT(now >= mm(0));
        RC_ASSERT(in_mm(now) <= in_mm(c.terminal) + 1e-9);
        RC_ASSERT(in_mm(resting_mean(c, r, day(t + 1))) >= in_mm(now) - 1e-9);
        RC_ASSERT(in_mm(now) <= in_mm(grown(mm(0), c.terminal, r, day(t))) + 1e-9);
        const length to = c.terminal * between(0.01, 0.99);
        const days d = resting_days_to(c, r, to);
        RC_ASSERT(std::abs(in_mm(resting_mean(c, r, d)) - in_mm(to)) < 1e-6);
    }));
}

TEST_CASE("the chance that a dog is fine is a chance, and never rises with time", "[visits]") {
    CHECK(rc::check([] {
        const auto dog = any_dog();
        const shared_law law = any_law();
        chance before = 1.0;
        for (int t = 0; t <= 120; t += *rc::gen::inRange(1, 15)) {
            const chance now = all_fine(dog, law, day(t));
            RC_ASSERT(now >= 0.0);
            RC_ASSERT(now <= 1.0);
            RC_ASSERT(now <= before + 1e-7);  // each day and each dog has nodes of its own
            // held by brushing or not: counting more zones is never the better chance
            RC_ASSERT(all_fine(dog, law, day(t), false) <= now + 1e-7);
            before = now;
        }
    }));
}

TEST_CASE("one zone more never makes a dog finer", "[visits]") {
    CHECK(rc::check([] {
        auto dog = any_dog();
        const shared_law law = any_law();
        const days t = day(*rc::gen::inRange(1, 120));
        const chance before = all_fine(dog, law, t, false);
        dog.push_back(any_zone());
        RC_ASSERT(all_fine(dog, law, t, false) <= before + 1e-7);
    }));
}

TEST_CASE("the last fine day is the last on which the chance is as asked", "[visits]") {
    CHECK(rc::check([] {
        const auto dog = any_dog();
        const shared_law law = any_law();
        const double p = between(0.05, 0.95);
        const bool clocks = *rc::gen::arbitrary<bool>();
        constexpr int cap = 90;
        int last = 0;
        while (last < cap && all_fine(dog, law, day(last + 1), clocks) >= p) {
            ++last;
        }
        RC_ASSERT(last_fine_day(dog, law, p, day(cap), clocks) == day(last));
    }));
}

TEST_CASE("what only brushing holds is within its clock, and likely past its length the day after",
          "[visits]") {
    CHECK(rc::check([] {
        const auto dog = any_dog();
        const shared_law law = any_law();
        const double p = between(0.05, 0.95);
        const return_date b = return_date_of(dog, law, p, day(56));
        for (const std::size_t i : b.by_brushing) {
            RC_ASSERT(dog[i].threshold.has_value());
            RC_ASSERT(dog[i].clock >= b.next_visit);
        }
        for (std::size_t i = 0; i < dog.size(); ++i) {
            const bool named =
                std::find(b.by_brushing.begin(), b.by_brushing.end(), i) != b.by_brushing.end();
            const bool held = dog[i].threshold && dog[i].clock >= b.next_visit;
            const bool past = held && all_fine({dog[i]}, law, b.next_visit + day(1), false) < p;
            RC_ASSERT(named || !past);
        }
        // the chance told is the model's, of those whose clock has run out, or none
        const bool counts = std::any_of(dog.begin(), dog.end(), [&](const kept_zone& z) {
            return z.threshold && z.clock < b.next_visit;
        });
        RC_ASSERT(b.fine.has_value() == counts);
        if (b.fine) {
            RC_ASSERT(std::abs(*b.fine - all_fine(dog, law, b.next_visit)) < 1e-5);
        }
    }));
}

TEST_CASE("hair kept longer is due no later", "[visits]") {
    CHECK(rc::check([] {
        const shared_law law = any_law();
        kept_zone z = any_zone();
        z.threshold = mm(between(20, 60));
        z.clock = day(0);
        const double p = between(0.05, 0.95);
        const days before = last_fine_day({z}, law, p, day(365));
        const days even = prone_quantile(z, law, 0.5);
        z.start += mm(between(0.1, 10));
        RC_ASSERT(last_fine_day({z}, law, p, day(365)) <= before);
        RC_ASSERT(in_days(prone_quantile(z, law, 0.5)) <= in_days(even) + 0.01);
    }));
}

TEST_CASE("more brushing, and the whole dog is due no sooner", "[visits]") {
    CHECK(rc::check([] {
        // the factors and clocks of habits rise; any rising ones will do
        matting_rules rules;
        double factor = between(0.3, 0.8);
        double clock = *rc::gen::inRange(7, 15);
        for (std::size_t h = 0; h < 5; ++h) {
            rules.brush[h] = exactly(factor, evidence{});
            rules.clock[h] = exactly(day(clock), evidence{});
            factor += between(0, 0.2);
            clock += *rc::gen::inRange(0, 5);
        }
        rules.coat_change = exactly(0.8, evidence{});
        rules.daily_only_above = exactly(mm(51), evidence{});
        const shared_law law = any_law();
        const double p = between(0.5, 0.95);
        coat c;
        c.matting_prone = exactly(mm(between(25, 50)), evidence{});
        std::vector<kept_zone> dog = any_dog();
        std::vector<double> zone_factor;
        for (std::size_t i = 0; i < dog.size(); ++i) {
            zone_factor.push_back(between(0.7, 1.0));
        }
        days before = day(0);
        for (const habit h : {habit::none, habit::weekly, habit::two_or_three,
                              habit::every_other_day, habit::daily}) {
            for (std::size_t i = 0; i < dog.size(); ++i) {
                zone z;
                z.matting = exactly(zone_factor[i], evidence{});
                dog[i].threshold = matting_prone_length(c, z, {h, true}, false, rules);
                dog[i].clock = brush_out_clock({h, true}, rules);
            }
            const return_date b = return_date_of(dog, law, p, day(56));
            RC_ASSERT(b.next_visit >= before);
            before = b.next_visit;
        }
    }));
}

TEST_CASE("a higher chance is due no later, a longer cap no sooner", "[visits]") {
    CHECK(rc::check([] {
        const auto dog = any_dog();
        const shared_law law = any_law();
        const double p = between(0.05, 0.9);
        const double q = p + between(0.0, 0.09);
        const days usual = day(*rc::gen::inRange(1, 100));
        const return_date b = return_date_of(dog, law, p, usual);
        RC_ASSERT(return_date_of(dog, law, q, usual).next_visit <= b.next_visit);
        RC_ASSERT(b.next_visit <= usual);
        RC_ASSERT(return_date_of(dog, law, p, usual + day(10)).next_visit >= b.next_visit);
        RC_ASSERT(p > 0.5 || b.even_odds <= b.next_visit);
        RC_ASSERT(p < 0.5 || b.even_odds >= b.next_visit);
        RC_ASSERT(b.full_groom >= b.next_visit);
        RC_ASSERT(b.full_groom == usual);
    }));
}

TEST_CASE("one in ten dogs is there before one in two, and that before nine in ten", "[visits]") {
    CHECK(rc::check([] {
        const shared_law law = any_law();
        const kept_zone z = any_zone();
        const days early = prone_quantile(z, law, 0.1);
        const days even = prone_quantile(z, law, 0.5);
        const days late = prone_quantile(z, law, 0.9);
        RC_ASSERT(early <= even);
        RC_ASSERT(even <= late);
        // and the chance at that day is what was asked, where there is such a day
        if (!is_never(even) && in_days(even) > 0.1) {
            RC_ASSERT(all_fine({z}, law, even + day(0.01), false) <= 0.5 + 1e-5);
            RC_ASSERT(all_fine({z}, law, even - day(0.01), false) >= 0.5 - 1e-5);
        }
    }));
}
