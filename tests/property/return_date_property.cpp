// What no dog may pay for: better brushing, shorter hair, a zone less, a grown-up coat never bring a visit
// forward, and a calendar never costs more minutes with better brushing. On random dogs of the reference:
// what is stated and proved at the head of model/return_date.hpp.
#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/solver/visit_schedule.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"

using namespace pelage;

namespace {

const reference_data& ref() {
    return io::reference();
}

constexpr std::array all_habits{habit::none, habit::weekly, habit::two_or_three,
                                habit::every_other_day, habit::daily};

/// A dog of a coat that mats, kept at lengths of its own in each group of zones.
struct random_dog {
    coat_class coat = coat_class::wavy;
    bool coat_change = false;
    std::array<length, group_names.size()> lengths{};
    length ears{};
    chance asked = 0.9;
    rate_law rate;
    std::vector<factor_case> learned;

    explicit random_dog(oracle::draws& d) {
        constexpr std::array coats{coat_class::feathered, coat_class::wire, coat_class::drop,
                                   coat_class::wavy, coat_class::curly};
        coat = coats[static_cast<std::size_t>(d.whole(0, 4))];
        coat_change = d.whole(0, 3) == 0;
        for (length& l : lengths) {
            l = mm(d.between(2.0, 60.0));
        }
        ears = mm(d.between(2.0, 80.0));
        asked = d.between(0.5, 0.98);
        rate = prior_rate(coat_of(ref(), coat), ref().rules.growth);
        rate.log_median += 0.2 * d.normal();
        if (d.whole(0, 3) == 0) {
            const double share = d.between(0.2, 0.8);
            learned = {{d.between(0.7, 1.0), share, {rate.log_median - 0.1, 0.2}},
                       {d.between(1.0, 1.5), 1.0 - share, {rate.log_median, 0.18}}};
        }
    }

    [[nodiscard]] shared_law law() const {
        return {rate, ref().rules.matting.threshold_log_sd.best,
                ref().rules.growth.start_error.best, learned};
    }
    [[nodiscard]] days usual() const { return coat_of(ref(), coat).usual_interval.best; }
    [[nodiscard]] std::vector<kept_zone> zones(habit h) const {
        const pelage::coat& c = coat_of(ref(), coat);
        const matting_rules& m = ref().rules.matting;
        std::vector<kept_zone> out;
        for (const zone& z : ref().dog_body.zones) {
            const length at =
                z.has(zone_use::ear_leather) ? ears : lengths[static_cast<std::size_t>(z.where)];
            const kept_zone one{at, matting_prone_length(c, z, {h, true}, coat_change, m),
                                terminal_at(c, z.id).best, brush_out_clock({h, true}, m)};
            if (std::find(out.begin(), out.end(), one) == out.end()) {
                out.push_back(one);
            }
        }
        return out;
    }
    [[nodiscard]] return_date when(habit h) const {
        return return_date_of(zones(h), law(), asked, usual());
    }
};

/// The least minutes of half a year, after a groom today; nothing if there is no calendar.
std::optional<work> minutes_of(const random_dog& one, habit h, const std::vector<bool>& open) {
    schedule_problem p;
    p.last = 182;
    p.open = open;
    p.gap = 7;
    p.costs = {minutes(45), minutes(75), minutes(90), minutes(150)};
    visit_clocks c;
    c.full = static_cast<int>(in_days(one.usual()));
    c.brush = static_cast<int>(in_days(brush_out_clock({h, true}, ref().rules.matting)));
    c.tidy = 28;
    c.length = static_cast<int>(
        in_days(last_fine_day(one.zones(h), one.law(), one.asked, one.usual(), false)));
    p.first = c;
    p.later = c;
    const auto visits = cheapest(p);
    return visits ? std::optional{cost_of(p, *visits)} : std::nullopt;
}

void check_dates(oracle::draws& d, const random_dog& one) {
    days before{};
    for (const habit h : all_habits) {
        const return_date b = one.when(h);
        INFO(name(h));
        REQUIRE(b.next_visit >= before);
        REQUIRE(b.full_groom == one.usual());
        before = b.next_visit;
        random_dog grown = one;
        grown.coat_change = false;
        REQUIRE(grown.when(h).next_visit >= b.next_visit);
        random_dog surer = one;
        surer.asked = one.asked + d.between(0.0, 0.015);
        REQUIRE(surer.when(h).next_visit <= b.next_visit);
        random_dog shorter_hair = one;
        for (length& l : shorter_hair.lengths) {
            l = l * (d.whole(0, 1) == 0 ? 1.0 : d.between(0.3, 1.0));
        }
        shorter_hair.ears = one.ears * d.between(0.3, 1.0);
        REQUIRE(shorter_hair.when(h).next_visit >= b.next_visit);
        std::vector<kept_zone> fewer = one.zones(h);
        fewer.erase(fewer.begin() + d.whole(0, static_cast<int>(fewer.size()) - 1));
        REQUIRE(return_date_of(fewer, one.law(), one.asked, one.usual()).next_visit >=
                b.next_visit);
    }
}

/// No calendar costs more than any.
bool no_dearer(const std::optional<work>& a, const std::optional<work>& b) {
    return !b || (a && *a <= *b);
}

void check_dogs(unsigned seed, int dogs, int calendar_of_each) {
    oracle::draws d(seed);
    for (int i = 0; i < dogs; ++i) {
        const random_dog one(d);
        INFO("dog " << i << ", " << name(one.coat) << (one.coat_change ? ", coat change" : ""));
        check_dates(d, one);
        if (i % calendar_of_each != 0) {
            continue;
        }
        std::vector<bool> open;
        const int shut = d.whole(0, 7);
        for (int n = 0; n <= 182; ++n) {
            open.push_back(n % 7 != shut);
        }
        std::optional<work> before = minutes_of(one, habit::none, open);
        for (const habit h : all_habits) {
            const auto now = minutes_of(one, h, open);
            INFO("calendar, " << name(h));
            REQUIRE(no_dearer(now, before));
            before = now;
        }
        random_dog grown = one;
        grown.coat_change = false;
        REQUIRE(no_dearer(minutes_of(grown, habit::weekly, open),
                          minutes_of(one, habit::weekly, open)));
    }
}

}  // namespace

TEST_CASE("better brushing, shorter hair, a zone less never bring a visit forward", "[visits]") {
    check_dogs(81, 1000, 25);
}

TEST_CASE("better brushing, shorter hair, a zone less never bring a visit forward: many dogs",
          "[visits][.full]") {
    check_dogs(82, 100'000, 100);
}
