// What is printed of dates, parsed again: every chance is the model's own on the day named, within two points.
#include <algorithm>
#include <array>
#include <cmath>
#include <regex>
#include <string>

#include <pelage/answers/owner_page.hpp>
#include <pelage/answers/write.hpp>
#include <pelage/forecast/calendar.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/sheets/check.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

std::string plan_text(const groom& g, const return_date& when, const plan_request& r,
                      const io::print_options& o) {
    return io::text_of(io::document_of(g, when, r, o), o.units, o.width);
}

const date today = parse_date("2026-11-28").value();  // a Saturday

/// On one line.
std::string flat(const std::string& text) {
    return std::regex_replace(text, std::regex("\\s+"), " ");
}

groom_table any_dog(oracle::draws& d) {
    constexpr std::array coats{coat_class::wavy, coat_class::curly, coat_class::drop,
                               coat_class::wire, coat_class::feathered};
    groom_table t;
    t.today = today;
    t.patient.coat = coats[static_cast<std::size_t>(d.whole(0, 4))];
    t.patient.now = {{"all", mm(80)}};
    t.patient.consents = {"clip-jacket"};
    t.patient.brushed = {static_cast<habit>(d.whole(0, 4)), d.whole(0, 3) > 0};
    t.patient.coat_change = d.whole(0, 3) == 0;
    const int most = d.whole(0, 2) == 0 ? 60 : 14;
    t.sheet = sheet_of(clip_to(mm(d.whole(4, most))));
    t.says("legs", clip_to(mm(d.whole(4, most))));
    t.says("ears", clip_to(mm(d.whole(4, most))));
    if (d.whole(0, 2) == 0) {
        t.asked = d.whole(50, 98) / 100.0;
    }
    return t;
}

/// The chances printed with a day, each against the chance of those that count on that day.
int check_chances(const std::string& text, const groom_table& t, const days& due) {
    const plan_request r = t.request();
    const kept_coat k = after_groom(r, make_plan(r));
    const auto at = [&](const days& d) {
        // brushing holds all of them: no chance may be told
        REQUIRE(std::any_of(k.zones.begin(), k.zones.end(),
                            [&](const kept_zone& z) { return z.threshold && z.clock < d; }));
        return all_fine(k.zones, k.law, d);
    };
    int seen = 0;
    const std::regex printed(
        "(over )?(\\d+) in (\\d+)( such dogs| dogs like yours| until)[^;.]*?"
        "(then|not to mat|until day (\\d+)|\\(day (\\d+)\\))");
    for (std::sregex_iterator i(text.begin(), text.end(), printed), end; i != end; ++i) {
        const std::smatch& m = *i;
        const double told = std::stod(m[2]) / std::stod(m[3]);
        const days on = m[6].matched   ? day(std::stod(m[6]))
                        : m[7].matched ? day(std::stod(m[7]))
                                       : due;
        INFO(m.str());
        CHECK_THAT(told, match::WithinAbs(at(on), 0.02));
        ++seen;
    }
    return seen;
}

}  // namespace

TEST_CASE("every chance printed is the model's on the day it is printed for", "[dates]") {
    oracle::draws d(91);
    int seen = 0;
    for (int i = 0; i < 60; ++i) {
        const groom_table t = any_dog(d);
        const plan_request r = t.request();
        const groom g = make_plan(r);
        const forecast f = forecast_of(r, g, false);
        io::print_options o{.today = today};
        if (d.whole(0, 1) == 0) {
            o.closed.weekdays[0] = true;
            o.closed.weekdays[1] = true;
        }
        const std::string text = flat(plan_text(g, f.when, r, o));
        const auto from = text.find("Back by");
        REQUIRE(from != std::string::npos);
        const std::string dates = text.substr(from, text.find(" If it mats", from) - from);
        INFO(dates);
        const int here = check_chances(dates, t, f.when.next_visit);
        CHECK((here > 0) == f.when.fine.has_value());
        seen += here;
        // places that only brushing holds are named, with no chance
        CHECK((dates.find("only brushing protects") != std::string::npos) ==
              (!f.when.fine && mats_by_length(coat_of(r.reference, *t.patient.coat))));
    }
    CHECK(seen > 30);
}

TEST_CASE("a closed day: the last open day before it, with its weekday, never a later one",
          "[dates]") {
    groom_table t;
    t.today = today;
    t.patient.now = {{"all", mm(60)}};
    const plan_request r = t.request();
    const groom g = make_plan(r);
    const return_date b = back_of(r, g);
    io::print_options o{.today = today};
    CHECK(plan_text(g, b, r, o).find("day, ") == std::string::npos);  // no weekday asked for
    const date by = plus(today, b.next_visit);
    for (std::size_t shut = 0; shut < 7; ++shut) {
        o.closed = {};
        o.closed.weekdays[shut] = true;
        o.closed.weekdays[(shut + 6) % 7] = true;
        const date open = last_open(o.closed, today, by).value();
        INFO(weekday_names[shut]);
        CHECK(open <= by);
        const std::string text = flat(plan_text(g, b, r, o));
        CHECK(text.find("Back by " + std::string(weekday_names[weekday_of(open)]) + ", " +
                        in_words(open)) != std::string::npos);
    }
}

TEST_CASE("the matting-prone length and what it does to the date are told in one sentence",
          "[dates]") {
    // a wavy coat mats from 25 to 51 mm, as the reference states
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    const plan_request r = t.request();
    const groom g = make_plan(r);
    const return_date b = back_of(r, g);
    REQUIRE(b.if_prone);
    CHECK(b.if_prone->low == mm(25));
    CHECK(b.if_prone->high == mm(51));
    CHECK(b.if_prone->if_low < b.next_visit);
    CHECK(b.if_prone->if_high > b.next_visit);
    const std::string text = flat(plan_text(g, b, r, io::print_options{}));
    const auto at = [](const days& n) { return std::to_string(std::lround(in_days(n))); };
    CHECK_THAT(text,
               match::ContainsSubstring("If it mats from 25 mm: day " + at(b.if_prone->if_low) +
                                        "; from 51 mm: day " + at(b.if_prone->if_high) + "."));
    // in a salon that knows better the ends are its own
    t.rules.matting.own_prone[static_cast<std::size_t>(coat_class::wavy)] =
        figure<length>{mm(40), mm(45), mm(50), {}};
    const return_date own = back_of(t.request(), t.plan());
    CHECK(own.next_visit > b.next_visit);
    REQUIRE(own.if_prone);
    CHECK(own.if_prone->low == mm(40));
}

TEST_CASE("an owner's page tells the model's chances, and none of a dog that came with mats",
          "[dates]") {
    oracle::draws d(92);
    int seen = 0;
    for (int i = 0; i < 40; ++i) {
        groom_table t = any_dog(d);
        const bool matted = d.whole(0, 2) == 0;
        if (matted) {
            t.patient.mats = {mat_in("back", mat_grade::mat)};
        }
        const plan_request r = t.request();
        const groom g = make_plan(r);
        const forecast f = forecast_of(r, g, false);
        const io::owner_matter m{g, r, f.when, &f};
        const std::string text = flat(io::text_of(io::document_of(m, {.today = today})));
        const auto from = text.find("Your next visit");
        REQUIRE(from != std::string::npos);
        const std::string dates = text.substr(from, 700);
        INFO(dates);
        const int here =
            check_chances(dates.substr(0, dates.find("full groom is due")), t, f.when.next_visit);
        CHECK(here == (f.when.fine && !matted ? 1 : 0));
        seen += here;
    }
    CHECK(seen > 5);
}

TEST_CASE("a calendar's minutes, trips weighed, never rise with better brushing", "[calendar]") {
    // every sheet of the demo salon, on its coats, coat change or none: the dog is asked back under the same
    // plan, brushed from not at all to daily
    const salon_files& salon = io::demo_salon();
    int calendars = 0;
    for (const style& s : salon.styles) {
        for (const coat_class k : coats_for(s, io::reference())) {
            if (!mats_by_length(coat_of(io::reference(), k))) {
                continue;
            }
            for (const bool change : {false, true}) {
                groom_table t;
                t.sheet = s;
                t.patient.coat = k;
                t.patient.coat_change = change;
                t.patient.consents = {"clip-jacket"};
                t.patient.brushed = {habit::none, true};
                const plan_request r = t.request();
                const groom g = make_plan(r);
                const calendar c = calendar_of({r, today, 26, {}, nullptr}, g);
                INFO(s.id << ", " << name(k) << (change ? ", coat change" : ""));
                for (std::size_t h = 1; h < c.habits.size(); ++h) {
                    const calendar_sum& less = c.habits[h - 1];
                    const calendar_sum& more = c.habits[h];
                    INFO(name(static_cast<habit>(h)));
                    CHECK((more.possible || !less.possible));
                    if (less.possible) {
                        // what is made least: minutes with the owner's trips weighed; minutes alone may
                        // rise where a trip is saved for them
                        const work trip = t.rules.prices.trip.best;
                        CHECK(more.takes + trip * std::int64_t{more.number()} <=
                              less.takes + trip * std::int64_t{less.number()});
                        ++calendars;
                    }
                }
            }
        }
    }
    CHECK(calendars > 100);
}
