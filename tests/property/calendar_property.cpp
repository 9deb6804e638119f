// Laws of calendars on random dogs and random days.
#include <array>
#include <vector>

#include <rapidcheck.h>

#include <pelage/data/reference.hpp>
#include <pelage/forecast/calendar.hpp>
#include <pelage/solver/visit_schedule.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const date today = parse_date("2026-11-25").value();

/// A dog of a coat that mats, on one of the sheets for it, brushed somehow.
struct any_dog {
    dog patient;
    const style* sheet = nullptr;
    days_off closed;

    any_dog() {
        const salon_files& s = io::demo_salon();
        std::vector<const style*> fit;
        while (fit.empty()) {
            patient.coat = static_cast<coat_class>(*rc::gen::inRange(3, 7));
            for (const style& one : s.styles) {
                if (std::find(one.coats.begin(), one.coats.end(), *patient.coat) !=
                    one.coats.end()) {
                    fit.push_back(&one);
                }
            }
        }
        sheet = fit[static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(fit.size())))];
        patient.consents = {"clip-jacket"};
        patient.brushed = {static_cast<habit>(*rc::gen::inRange(0, 5)), true};
        patient.size = static_cast<dog_size>(*rc::gen::inRange(0, 5));
        for (bool& d : closed.weekdays) {
            d = *rc::gen::inRange(0, 4) == 0;
        }
    }
};

/// What the calendar costs with the owner's trips, which is what is made least; nothing if there is
/// none.
std::optional<work> cost(const any_dog& d, chance asked, const days_off& closed) {
    const salon_files& s = io::demo_salon();
    const plan_request work_asked{io::reference(), s.rules, s.tools, d.patient,
                                  *d.sheet,        today,   asked};
    const calendar_request r{work_asked, today, 26, closed, nullptr, false};
    const calendar_sum sum = calendar_of(r, make_plan(work_asked)).sum;
    return sum.possible
               ? std::optional{sum.takes + s.rules.prices.trip.best * std::int64_t{sum.number()}}
               : std::nullopt;
}

/// a is no cheaper than b; no calendar costs more than any.
bool no_cheaper(const std::optional<work>& a, const std::optional<work>& b) {
    return a ? b.has_value() && *a >= *b : true;
}

schedule_problem any_problem() {
    schedule_problem p;
    p.last = *rc::gen::inRange(20, 200);
    for (int n = 0; n <= p.last; ++n) {
        p.open.push_back(*rc::gen::inRange(0, 5) > 0);
    }
    p.gap = *rc::gen::inRange(1, 10);
    const int tidy = *rc::gen::inRange(1, 60);
    const int bath = *rc::gen::inRange(1, 90);
    p.costs = {minutes(tidy), minutes(bath),
               minutes(std::max(tidy, bath) + *rc::gen::inRange(0, 40)),
               minutes(*rc::gen::inRange(1, 200))};
    p.first = {*rc::gen::inRange(10, 80), *rc::gen::inRange(8, 40), *rc::gen::inRange(8, 40)};
    p.later = {*rc::gen::inRange(10, 80), *rc::gen::inRange(8, 40), *rc::gen::inRange(8, 40)};
    return p;
}

std::optional<work> cost(const schedule_problem& p) {
    const auto c = cheapest(p);
    return c ? std::optional{cost_of(p, *c)} : std::nullopt;
}

}  // namespace

TEST_CASE("asking for a better chance never costs less", "[calendar]") {
    CHECK(rc::check([] {
        const any_dog d;
        const double low = *rc::gen::inRange(50, 98) / 100.0;
        const double high = low + *rc::gen::inRange(1, 100 - static_cast<int>(low * 100.0)) / 100.0;
        RC_ASSERT(no_cheaper(cost(d, std::min(high, 0.99), d.closed), cost(d, low, d.closed)));
    }));
}

TEST_CASE("closing another weekday never costs less", "[calendar]") {
    CHECK(rc::check([] {
        const any_dog d;
        days_off more = d.closed;
        more.weekdays[static_cast<std::size_t>(*rc::gen::inRange(0, 7))] = true;
        RC_ASSERT(no_cheaper(cost(d, 0.9, more), cost(d, 0.9, d.closed)));
    }));
}

TEST_CASE("the cheapest visits keep every clock", "[calendar]") {
    CHECK(rc::check([] {
        const schedule_problem p = any_problem();
        const auto c = cheapest(p);
        if (c) {
            RC_ASSERT(keeps(p, *c));
        }
    }));
}

TEST_CASE("closing a day, a shorter clock or a longer gap never costs less", "[calendar]") {
    CHECK(rc::check([] {
        const schedule_problem p = any_problem();
        schedule_problem harder = p;
        harder.open[static_cast<std::size_t>(*rc::gen::inRange(0, p.last + 1))] = false;
        RC_ASSERT(no_cheaper(cost(harder), cost(p)));
        harder = p;
        harder.later.full -= 1;
        harder.first.tidy = *harder.first.tidy - 1;
        RC_ASSERT(no_cheaper(cost(harder), cost(p)));
        harder = p;
        harder.gap += 1;
        RC_ASSERT(no_cheaper(cost(harder), cost(p)));
    }));
}

TEST_CASE("leaving out any visit of the cheapest lets a clock run out", "[calendar]") {
    CHECK(rc::check([] {
        const schedule_problem p = any_problem();
        const auto c = cheapest(p);
        for (std::size_t i = 0; c && i < c->size(); ++i) {
            std::vector<booking> fewer = *c;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
            RC_ASSERT(!keeps(p, fewer));
        }
    }));
}
