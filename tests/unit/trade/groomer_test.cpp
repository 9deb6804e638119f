// Who works when: days on which nobody does are days without a visit.
#include <pelage/trade/groomer.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

groomer works(std::initializer_list<unsigned> weekdays) {
    groomer g;
    for (const unsigned day : weekdays) {
        g.hours[day] = minutes(300.0);
    }
    return g;
}

constexpr date day_of(int y, unsigned m, unsigned d) {
    return std::chrono::year{y} / std::chrono::month{m} / std::chrono::day{d};
}

}  // namespace

TEST_CASE("a weekday on which nobody has hours is off; nothing where nobody is named",
          "[groomer]") {
    CHECK_FALSE(nobody_there({}).cover(day_of(2026, 12, 1)));
    const days_off off = nobody_there({works({2, 3}), works({6})});
    CHECK_FALSE(off.cover(day_of(2026, 12, 1)));  // a Tuesday
    CHECK_FALSE(off.cover(day_of(2026, 12, 5)));  // a Saturday
    CHECK(off.cover(day_of(2026, 12, 4)));        // a Friday
}

TEST_CASE("a holiday of one closes the days on which no other works", "[groomer]") {
    groomer ida = works({2, 3, 4, 5});
    ida.away.spans.push_back({day_of(2026, 12, 24), day_of(2026, 12, 31)});
    const days_off off = nobody_there({ida, works({3, 4, 6})});
    CHECK_FALSE(off.cover(day_of(2026, 12, 24)));  // Thursday: the other works
    CHECK(off.cover(day_of(2026, 12, 25)));        // Friday: nobody
    CHECK(off.cover(day_of(2026, 12, 29)));        // Tuesday: nobody
    CHECK_FALSE(off.cover(day_of(2026, 12, 30)));
    CHECK_FALSE(off.cover(day_of(2027, 1, 1)));
}

TEST_CASE("a holiday without end takes no time without end", "[groomer]") {
    groomer ida = works({2});
    ida.away.spans.push_back({day_of(1900, 1, 1), day_of(9999, 12, 31)});
    CHECK(nobody_there({ida}).spans.size() <= 5 * 366);
}
