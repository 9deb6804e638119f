// How often the owner brushes, and whether it counts.
#include <set>
#include <string>

#include <pelage/trade/brushing.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("brushing that doesn't reach the skin counts as none", "[brushing]") {
    // common practice, no source
    for (const habit h :
         {habit::none, habit::weekly, habit::two_or_three, habit::every_other_day, habit::daily}) {
        INFO(name(h));
        CHECK(counted({h, true}) == h);
        CHECK(counted({h, false}) == habit::none);
    }
}

TEST_CASE("every so many days is one of five habits", "[brushing]") {
    CHECK(every(1) == habit::daily);
    CHECK(every(2) == habit::every_other_day);
    CHECK(every(3) == habit::two_or_three);
    CHECK(every(4) == habit::weekly);
    CHECK(every(7) == habit::weekly);
    CHECK(every(8) == habit::none);
    CHECK(every(365) == habit::none);
}

TEST_CASE("brushing less often is never the better habit", "[brushing]") {
    for (int n = 1; n < 30; ++n) {
        CHECK(every(n + 1) <= every(n));
    }
}

TEST_CASE("a habit in words", "[brushing]") {
    CHECK(title({habit::two_or_three, true}) == "brushed two or three times a week to the skin");
    CHECK(title({habit::weekly, false}) == "brushed weekly on the surface only");
    CHECK(title({habit::none, true}) == title({habit::none, false}));
    std::set<std::string> words;
    for (const habit h :
         {habit::none, habit::weekly, habit::two_or_three, habit::every_other_day, habit::daily}) {
        CHECK(words.insert(title({h, true})).second);
    }
}

TEST_CASE("two habits are the same only when they reach as deep", "[brushing]") {
    CHECK(brushing{habit::daily, true} == brushing{habit::daily, true});
    CHECK_FALSE(brushing{habit::daily, true} == brushing{habit::daily, false});
    CHECK_FALSE(brushing{habit::daily, true} == brushing{habit::weekly, true});
}
