// Quantities as people write and read them.
#include <cmath>
#include <string>

#include <pelage/base/length_text.hpp>
#include <pelage/trade/brushing.hpp>
#include <pelage/trade/setup.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("a length is a number, plain or with the trade's fractions, and its unit", "[text]") {
    struct row {
        const char* text;
        double is;
    };
    const row rows[] = {{"13 mm", 13},          {"13mm", 13},       {" 13  mm ", 13},
                        {"9.5mm", 9.5},         {"0.2 mm", 0.2},    {".5 mm", 0.5},
                        {"1.3 cm", 13},         {"2 cm", 20},       {"1 in", 25.4},
                        {"1 inch", 25.4},       {"2 inches", 50.8}, {"1/2\"", 12.7},
                        {"3/8 in", 9.525},      {"3/8in", 9.525},   {"1 1/4 in", 31.75},
                        {"1  1/4 inch", 31.75}, {"1.5 in", 38.1},   {"1/2 mm", 0.5},
                        {"2 1/2 cm", 25},       {"1000 mm", 1000},  {"1/64 in", 0.396875}};
    for (const row& r : rows) {
        INFO(r.text);
        const parsed_length p = parse_length(r.text);
        REQUIRE(p.ok());
        CHECK_THAT(in_mm(p.value), match::WithinAbs(r.is, 1e-12));
        CHECK(complaint(p, r.text).empty());
    }
}

TEST_CASE("a half inch is exactly 12.7 mm, not what adding up binary parts would give", "[text]") {
    CHECK(parse_length("1/2 in").value == inch(1, 2));
    CHECK(parse_length("3/8 in").value == inch(3, 8));
    CHECK(parse_length("1 1/4 in").value == inch(5, 4));
}

TEST_CASE("what is no length says what is wrong with it", "[text]") {
    struct row {
        const char* text;
        length_fault is;
    };
    const row rows[] = {{"13", length_fault::no_unit},
                        {"1/2", length_fault::no_unit},
                        {"1 1/4", length_fault::no_unit},
                        {"13 m", length_fault::unknown_unit},
                        {"13 mms", length_fault::unknown_unit},
                        {"13 MM", length_fault::unknown_unit},
                        {"13 14 mm", length_fault::unknown_unit},
                        {"13,5 mm", length_fault::unknown_unit},
                        {"1e3 mm", length_fault::unknown_unit},
                        {"0x10 mm", length_fault::unknown_unit},
                        {"1.2.3 mm", length_fault::unknown_unit},
                        {"0 mm", length_fault::out_of_range},
                        {"0/2 in", length_fault::out_of_range},
                        {"1000.1 mm", length_fault::out_of_range},
                        {"40 in", length_fault::out_of_range},
                        {"", length_fault::not_a_number},
                        {"   ", length_fault::not_a_number},
                        {"mm", length_fault::not_a_number},
                        {"-3 mm", length_fault::not_a_number},
                        {"+3 mm", length_fault::not_a_number},
                        {"nan mm", length_fault::not_a_number},
                        {"inf mm", length_fault::not_a_number},
                        {".", length_fault::not_a_number},
                        {"1/0 in", length_fault::not_a_number},
                        {"1/ in", length_fault::not_a_number},
                        {"1.5/2 in", length_fault::not_a_number},
                        {"12345678901234567890 mm", length_fault::not_a_number}};
    for (const row& r : rows) {
        INFO(r.text);
        const parsed_length p = parse_length(r.text);
        CHECK(p.fault == r.is);
        CHECK_FALSE(p.ok());
        CHECK_THAT(complaint(p, r.text), match::ContainsSubstring("found \""));
    }
}

TEST_CASE("a bare number is answered with both units, ready to copy", "[text]") {
    const std::string c = complaint(parse_length("13"), "13");
    CHECK_THAT(c, match::ContainsSubstring("\"13 mm\""));
    CHECK_THAT(c, match::ContainsSubstring("\"13 in\""));
    CHECK_THAT(complaint(parse_length("13 ft"), "13 ft"), match::ContainsSubstring("\"ft\""));
}

TEST_CASE("a very long text is refused, not followed to the end of the stack", "[text]") {
    std::string ones;
    for (int i = 0; i < 400'000; ++i) {
        ones += "1 ";
    }
    CHECK_FALSE(parse_length(ones + "mm").ok());
    CHECK_FALSE(parse_length(std::string(1'000'000, '9') + " mm").ok());
    CHECK_FALSE(parse_length(std::string(1'000'000, ' ')).ok());
    CHECK_FALSE(parse_brushing(ones));
}

TEST_CASE("brushing says how often and whether it reaches the skin", "[text]") {
    struct row {
        const char* text;
        habit how;
        bool skin;
    };
    const row rows[] = {{"daily to the skin", habit::daily, true},
                        {"every day to the skin", habit::daily, true},
                        {"every 1 days to the skin", habit::daily, true},
                        {"every other day to the skin", habit::every_other_day, true},
                        {"every 2 days to the skin", habit::every_other_day, true},
                        {"every 3 days to the skin", habit::two_or_three, true},
                        {"twice a week to the skin", habit::two_or_three, true},
                        {"2-3 times a week to the skin", habit::two_or_three, true},
                        {"two or three times a week to the skin", habit::two_or_three, true},
                        {"every 4 days to the skin", habit::weekly, true},
                        {"every 7 days to the skin", habit::weekly, true},
                        {"weekly to the skin", habit::weekly, true},
                        {"once a week to the skin", habit::weekly, true},
                        {"every 8 days to the skin", habit::none, true},
                        {"every 365 days to the skin", habit::none, true},
                        {"weekly on the surface", habit::weekly, false},
                        {"daily on the surface", habit::daily, false},
                        {"none", habit::none, false},
                        {"never", habit::none, false}};
    for (const row& r : rows) {
        INFO(r.text);
        const auto b = parse_brushing(r.text);
        REQUIRE(b);
        CHECK(b->how_often == r.how);
        CHECK(b->to_skin == r.skin);
    }
}

TEST_CASE("brushing that doesn't say how deep, or how often, is asked for again", "[text]") {
    for (const char* wrong :
         {"", "daily", "weekly", "every 3 days", "to the skin", " to the skin", "often to the skin",
          "every 0 days to the skin", "every 366 days to the skin", "every 2.5 days to the skin",
          "every -1 days to the skin", "every x days to the skin", "every days to the skin",
          "every  days to the skin", "daily to the bone"}) {
        INFO(wrong);
        CHECK_FALSE(parse_brushing(wrong));
    }
}

TEST_CASE("millimetres on the screen: 0.01 under 1, 0.1 under 10, whole above", "[text]") {
    struct row {
        double v;
        const char* is;
    };
    const row rows[] = {{0.05, "0.05"},  {0.2, "0.2"},    {0.25, "0.25"}, {0.5, "0.5"},
                        {0.254, "0.25"}, {0.994, "0.99"}, {0.996, "1"},   {1.0, "1"},
                        {1.5, "1.5"},    {3.175, "3.2"},  {6.35, "6.3"},  {9.5, "9.5"},
                        {9.525, "9.5"},  {9.94, "9.9"},   {9.96, "10"},   {12.7, "13"},
                        {15.875, "16"},  {100, "100"},    {1000, "1000"}, {0, "0"}};
    for (const row& r : rows) {
        INFO(r.v);
        CHECK(number(mm(r.v)) == r.is);
        CHECK(show(mm(r.v)) == std::string(r.is) + " mm");
    }
}

TEST_CASE("inches on the screen are the trade's fractions", "[text]") {
    struct row {
        double v;
        const char* is;
    };
    // the fractions that go with the stated lengths of blades and combs (common practice, no source)
    const row rows[] = {{0.5, "1/51"}, {0.8, "1/32"}, {1.2, "3/64"}, {1.5, "1/16"}, {2.0, "5/64"},
                        {2.8, "7/64"}, {3.2, "1/8"},  {4.8, "3/16"}, {6.3, "1/4"},  {9.5, "3/8"},
                        {13, "1/2"},   {16, "5/8"},   {19, "3/4"},   {22, "7/8"},   {25, "1"},
                        {25.4, "1"},   {32, "1 1/4"}, {38, "1 1/2"}, {51, "2"}};
    for (const row& r : rows) {
        INFO(r.v);
        CHECK(fraction_of_inch(mm(r.v)) == r.is);
        CHECK(show(mm(r.v), length_unit::inch) == std::string(r.is) + " in");
    }
    CHECK(fraction_of_inch(mm(0)) == "0");
}

TEST_CASE("no fraction on the screen strays from the length by more than a quarter", "[text]") {
    for (double v = 0.05; v < 60.0; v *= 1.01) {
        const std::string s = show(mm(v), length_unit::inch);
        INFO(v << " mm as " << s);
        const parsed_length back = parse_length(s);
        REQUIRE(back.ok());
        CHECK(std::abs(in_mm(back.value) - v) <= std::max(0.25 * v, 0.02));
    }
}

TEST_CASE("a finished length shows its spread where there is one", "[text]") {
    CHECK(show(finished{mm(3.2), mm(6.4), mm(8)}) == "6.4 mm (3.2 to 8)");
    CHECK(show(finished{mm(13), mm(13), mm(13)}) == "13 mm");
    CHECK(show(finished{mm(12.8), mm(13), mm(13.2)}) == "13 mm");  // nothing to see at that grain
    CHECK(show(finished{mm(12.7), mm(13), mm(25.4)}, length_unit::inch) == "1/2 in (1/2 to 1)");
}
