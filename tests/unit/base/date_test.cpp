// Calendar days as ISO 8601 writes them.
#include <string>

#include <pelage/base/date.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

date on(const char* text) {
    return parse_date(text).value();
}

}  // namespace

TEST_CASE("a day is written YYYY-MM-DD and in no other way", "[date]") {
    for (const char* right :
         {"2026-11-25", "2027-01-14", "2028-02-29", "2000-02-29", "0001-01-01", "9999-12-31"}) {
        INFO(right);
        REQUIRE(parse_date(right));
        CHECK(iso(on(right)) == right);
    }
    for (const char* wrong :
         {"", "2026", "2026-11", "2026-1-5", "26-11-25", "2026/11/25", "25-11-2026", "2026-11-25 ",
          " 2026-11-25", "2026-11-2x", "+026-11-25", "2026-11--5", "20261125", "2026-11-255"}) {
        INFO(wrong);
        CHECK_FALSE(parse_date(wrong));
    }
}

TEST_CASE("a day that is in no calendar is no day", "[date]") {
    for (const char* wrong : {"2026-02-29", "2026-02-30", "2100-02-29", "2026-04-31", "2026-00-10",
                              "2026-13-01", "2026-01-00", "2026-01-32"}) {
        INFO(wrong);
        CHECK_FALSE(parse_date(wrong));
    }
}

TEST_CASE("every day of forty years reads back as it was written", "[date]") {
    std::string before;
    for (date d = on("2000-01-01"); d < on("2040-01-01"); d += std::chrono::days{1}) {
        const std::string text = iso(d);
        if (parse_date(text) != d || text <= before) {
            FAIL("lost or out of order: " << text);
        }
        before = text;
    }
    CHECK(before == "2039-12-31");
}

TEST_CASE("a day in words", "[date]") {
    CHECK(in_words(on("2027-01-14")) == "14 January 2027");
    CHECK(in_words(on("2026-12-01")) == "1 December 2026");
    CHECK(in_words(on("2028-02-29")) == "29 February 2028");
}

TEST_CASE("a coat due on day 33.8 is due by day 33", "[date]") {
    const date groom = on("2026-11-25");
    CHECK(plus(groom, day(33.8)) == on("2026-12-28"));
    CHECK(plus(groom, day(33)) == on("2026-12-28"));
    CHECK(plus(groom, day(0)) == groom);
    CHECK(plus(groom, day(56)) == on("2027-01-20"));
    CHECK(plus(on("2028-02-28"), day(2)) == on("2028-03-01"));
}

TEST_CASE("days between two visits, negative when told backwards", "[date]") {
    CHECK(between(on("2026-10-05"), on("2026-10-26")) == day(21));
    CHECK(between(on("2026-10-26"), on("2026-10-05")) == day(-21));
    CHECK(between(on("2027-12-31"), on("2028-12-31")) == day(366));
    CHECK(between(on("2026-01-01"), on("2026-01-01")) == day(0));
}
