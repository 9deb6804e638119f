// The length beyond which a coat is likely to mat.
#include <pelage/model/matting.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::plain;

namespace {

/// Factors and clocks by habit, all our guesses but the 1 of the habit they are stated for.
matting_rules rules() {
    matting_rules r;
    r.brush = {plain(0.75), plain(0.9), plain(1.0), plain(1.1), plain(1.25)};
    r.clock = {plain(day(14)), plain(day(18)), plain(day(21)), plain(day(24)), plain(day(28))};
    r.coat_change = plain(0.8);
    r.threshold_log_sd = plain(0.1);
    r.daily_only_above = plain(mm(51));
    r.chance = plain(0.9);
    return r;
}

coat coat_of_length(double m) {
    coat c;
    c.matting_prone = plain(mm(m));
    return c;
}

zone zone_of_factor(double f) {
    zone z;
    z.matting = plain(f);
    return z;
}

double prone(double coat_mm, double zone_factor, const brushing& b, bool change = false) {
    return in_mm(matting_prone_length(coat_of_length(coat_mm), zone_of_factor(zone_factor), b,
                                      change, rules())
                     .value());
}

}  // namespace

TEST_CASE("two or three times a week to the skin is the habit lengths are stated for",
          "[matting]") {
    CHECK(brush_factor({habit::two_or_three, true}, rules()) == 1.0);
    CHECK(prone(38, 1.0, {habit::two_or_three, true}) == 38.0);
}

TEST_CASE("surface brushing equals none", "[matting]") {
    for (const habit h :
         {habit::weekly, habit::two_or_three, habit::every_other_day, habit::daily}) {
        INFO(name(h));
        CHECK(brush_factor({h, false}, rules()) == brush_factor({habit::none, true}, rules()));
        CHECK(brush_out_clock({h, false}, rules()) ==
              brush_out_clock({habit::none, true}, rules()));
    }
}

TEST_CASE("every step of brushing buys length and time", "[matting]") {
    const habit up[] = {habit::none, habit::weekly, habit::two_or_three, habit::every_other_day,
                        habit::daily};
    for (std::size_t i = 1; i < 5; ++i) {
        INFO(name(up[i]));
        CHECK(brush_factor({up[i], true}, rules()) > brush_factor({up[i - 1], true}, rules()));
        CHECK(brush_out_clock({up[i], true}, rules()) >
              brush_out_clock({up[i - 1], true}, rules()));
    }
    CHECK(brush_out_clock({habit::none, true}, rules()) == day(14));
    CHECK(brush_out_clock({habit::daily, true}, rules()) == day(28));
}

TEST_CASE("the zone, the habit and a coat change multiply", "[matting]") {
    CHECK_THAT(prone(38, 0.85, {habit::two_or_three, true}), match::WithinAbs(32.3, 1e-9));
    CHECK_THAT(prone(38, 0.8, {habit::none, true}), match::WithinAbs(22.8, 1e-9));
    CHECK_THAT(prone(38, 1.0, {habit::two_or_three, true}, true), match::WithinAbs(30.4, 1e-9));
    CHECK_THAT(prone(38, 0.85, {habit::weekly, true}, true),
               match::WithinAbs(38 * 0.85 * 0.9 * 0.8, 1e-9));
}

TEST_CASE("above 51 mm only daily brushing holds a coat", "[matting]") {
    CHECK(prone(50, 1.0, {habit::every_other_day, true}) == 51.0);  // 55 otherwise
    CHECK(prone(50, 1.0, {habit::daily, true}) == 62.5);
    CHECK(prone(50, 1.0, {habit::daily, false}) == 37.5);
    CHECK(prone(51, 1.0, {habit::two_or_three, true}) == 51.0);
}

TEST_CASE("a coat that doesn't mat by length has no such length", "[matting]") {
    coat c;
    c.matting_prone.reset();
    CHECK_FALSE(matting_prone_length(c, zone_of_factor(0.8), {habit::none, true}, true, rules()));
    // smooth and double coats nowhere, a feathered one not on its jacket (common practice, no source)
    for (const coat& k : io::reference().coats) {
        INFO(k.title);
        const bool by_length = k.id == coat_class::wire || k.id == coat_class::drop ||
                               k.id == coat_class::shaggy || k.id == coat_class::wavy ||
                               k.id == coat_class::curly;
        CHECK(k.matting_prone.has_value() == by_length);
        CHECK(mats_by_length(k) == (by_length || k.id == coat_class::feathered));
    }
}
