// The visits of the weeks to come.
#include <algorithm>
#include <chrono>
#include <cmath>

#include <pelage/forecast/calendar.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/longest_coat.hpp>
#include <pelage/planner/appointment.hpp>
#include <pelage/solver/visit_schedule.hpp>
#include <pelage/trade/days_off.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

const date today = parse_date("2026-11-25").value();  // a Wednesday

date on(const char* iso_day) {
    return parse_date(iso_day).value();
}

days_off off(std::initializer_list<const char*> all) {
    days_off d;
    for (const char* one : all) {
        d.add(parse_days_off(one).value());
    }
    return d;
}

calendar calendar_for(const groom_table& t, int weeks = 26, const days_off& closed = {}) {
    const plan_request work = t.request();
    return calendar_of({work, today, weeks, closed, nullptr}, make_plan(work));
}

groom_table demo(const char* id) {
    groom_table t;
    t.patient = *find(io::demo_salon().dogs, id);
    t.sheet = *find(io::demo_salon().styles, t.patient.style);
    t.patient.visits.clear();
    return t;
}

int ends(const calendar& c, std::size_t i) {
    return static_cast<int>((c.visits[i].on - today).count());
}

/// Half a year by days, all open, visits a week apart.
schedule_problem half_a_year(visit_clocks clocks) {
    schedule_problem p;
    p.last = 182;
    p.open.assign(183, true);
    p.gap = 7;
    p.costs = {minutes(30), minutes(60), minutes(80), minutes(140)};
    p.first = clocks;
    p.later = clocks;
    return p;
}

int of_kind(const std::vector<booking>& all, visit_work w) {
    return static_cast<int>(
        std::count_if(all.begin(), all.end(), [&](const booking& b) { return b.what == w; }));
}

}  // namespace

TEST_CASE("days off are weekdays, days and spans", "[calendar]") {
    const days_off d = off({"Monday", "2026-12-24 to 2027-01-03", "2027-02-01"});
    CHECK(d.cover(on("2026-11-30")));
    CHECK_FALSE(d.cover(on("2026-12-23")));
    CHECK(d.cover(on("2026-12-24")));
    CHECK(d.cover(on("2027-01-03")));
    CHECK_FALSE(d.cover(on("2027-01-05")));
    CHECK(d.cover(on("2027-02-01")));
    CHECK(parse_days_off("Mondays") == parse_days_off("Monday"));
    for (const char* wrong : {"", "Mon", "monday", "2026-02-30", "2027-01-03 to 2026-12-24",
                              "2026-12-24 to", "2026-12-24 until 2026-12-26"}) {
        INFO(wrong);
        CHECK_FALSE(parse_days_off(wrong).has_value());
    }
}

TEST_CASE("waits are written in days or weeks", "[calendar]") {
    for (const char* same : {"6w", "42d", "6 weeks", "42 days", " 6 w "}) {
        INFO(same);
        CHECK(parse_wait(same) == 42);
    }
    CHECK(parse_wait("1 week") == 7);
    CHECK(parse_wait("1 day") == 1);
    CHECK(parse_wait("52w") == 364);
    for (const char* wrong : {"", "6", "w", "0d", "-1d", "1.5w", "53w", "6 months", "6 w 2 d"}) {
        INFO(wrong);
        CHECK_FALSE(parse_wait(wrong).has_value());
    }
}

TEST_CASE("full grooms alone: as few as the clock allows, each as late as it may be",
          "[calendar]") {
    const auto c = cheapest(half_a_year({28, {}, {}, 0}));
    REQUIRE(c);
    REQUIRE(c->size() == 6);
    for (std::size_t i = 0; i < c->size(); ++i) {
        CHECK((*c)[i] == booking{28 * (static_cast<int>(i) + 1), visit_work::full_groom});
    }
}

TEST_CASE("a bath between is cheaper than a full groom, and a tidy than a bath", "[calendar]") {
    const auto brushed = cheapest(half_a_year({56, 28, {}, 0}));
    REQUIRE(brushed);
    CHECK(of_kind(*brushed, visit_work::full_groom) == 3);
    CHECK(of_kind(*brushed, visit_work::bath) == 3);
    const auto tidied = cheapest(half_a_year({56, {}, 28, 0}));
    REQUIRE(tidied);
    CHECK(of_kind(*tidied, visit_work::tidy) == 3);
    const auto both = cheapest(half_a_year({56, 28, 28, 0}));
    REQUIRE(both);
    CHECK(of_kind(*both, visit_work::bath_and_tidy) == 3);
    CHECK(both->size() == 6);
}

TEST_CASE("what stops no clock isn't booked", "[calendar]") {
    const auto c = cheapest(half_a_year({28, 28, 35, 0}));
    REQUIRE(c);
    CHECK(of_kind(*c, visit_work::full_groom) == static_cast<int>(c->size()));
}

TEST_CASE("no calendar where the clock is shorter than the days off", "[calendar]") {
    schedule_problem p = half_a_year({28, {}, {}, 0});
    std::fill(p.open.begin() + 40, p.open.begin() + 67, false);
    CHECK(cheapest(p).has_value());  // from the 39th day to the 67th
    p.open[67] = false;
    CHECK_FALSE(cheapest(p).has_value());
}

TEST_CASE("an overdue dog comes on the first day there is", "[calendar]") {
    schedule_problem p = half_a_year({28, {}, {}, 0});
    p.full_ago = 40;
    p.brush_ago = 40;
    p.tidy_ago = 40;
    p.open[0] = false;
    p.open[1] = false;
    const auto c = cheapest(p);
    REQUIRE(c);
    CHECK(c->front() == booking{2, visit_work::full_groom});
}

TEST_CASE("for an event the full groom falls in the days before, not on the day", "[calendar]") {
    schedule_problem p = half_a_year({56, {}, {}, 0});
    p.fresh = {{100, 7}};
    p.open[100] = false;
    const auto c = cheapest(p);
    REQUIRE(c);
    CHECK(std::any_of(c->begin(), c->end(), [](const booking& b) {
        return b.what == visit_work::full_groom && b.on >= 93 && b.on <= 99;
    }));
    CHECK(keeps(p, *c));
}

TEST_CASE("keeps() sees every broken rule", "[calendar]") {
    schedule_problem p = half_a_year({56, {}, 28, 0});
    const std::vector<booking> good = cheapest(p).value();
    REQUIRE(keeps(p, good));
    std::vector<booking> late = good;
    late.front().on += 1;
    CHECK_FALSE(keeps(p, late));
    std::vector<booking> short_of_one = good;
    short_of_one.pop_back();
    CHECK_FALSE(keeps(p, short_of_one));
    std::vector<booking> too_near = good;
    too_near.insert(too_near.begin() + 1, {too_near.front().on + 6, visit_work::tidy});
    CHECK_FALSE(keeps(p, too_near));
    p.open[static_cast<std::size_t>(good.front().on)] = false;
    CHECK_FALSE(keeps(p, good));
}

TEST_CASE("the first full groom is never later than the forecast's day", "[calendar]") {
    for (const char* id : {"biscuit", "bramble", "tansy", "thistle", "acorn", "aspen"}) {
        INFO(id);
        const groom_table t = demo(id);
        const return_date b = back_of(t.request(), t.plan());
        const calendar c = calendar_for(t, 52);
        REQUIRE(c.sum.possible);
        const auto first = std::find_if(c.visits.begin(), c.visits.end(), [](const auto& v) {
            return v.what == visit_work::full_groom;
        });
        REQUIRE(first != c.visits.end());
        CHECK(between(today, first->on) <= b.full_groom);
        CHECK(between(today, c.visits.front().on) <= b.next_visit);
    }
}

TEST_CASE("one weekday is kept where it costs nothing", "[calendar]") {
    const calendar c = calendar_for(demo("biscuit"));
    REQUIRE(c.weekday);
    CHECK(*c.weekday == weekday_of(today));
    for (const calendar_visit& v : c.visits) {
        CHECK(weekday_of(v.on) == *c.weekday);
    }
}

TEST_CASE("nobody comes on days off", "[calendar]") {
    groom_table t = demo("tansy");
    t.patient.cannot = off({"Tuesday", "2027-01-01 to 2027-01-10"});
    const calendar c = calendar_for(t, 26, off({"Sunday", "Monday"}));
    REQUIRE_FALSE(c.visits.empty());
    for (const calendar_visit& v : c.visits) {
        INFO(iso(v.on));
        CHECK_FALSE(t.patient.cannot.cover(v.on));
        CHECK(weekday_of(v.on) > 1);
    }
}

TEST_CASE("a calendar goes on from the visits in the file", "[calendar]") {
    groom_table t = demo("tansy");
    const calendar from_today = calendar_for(t);
    CHECK(from_today.from_today);
    t.patient.visits = {{on("2026-09-01"), "full"},
                        {on("2026-11-10"), "full"},
                        {on("2026-11-20"), "bath"},
                        {on("2026-12-20"), "full"}};  // to come: doesn't count
    const calendar c = calendar_for(t);
    CHECK_FALSE(c.from_today);
    CHECK(c.from == on("2026-11-10"));
    // the bath of the 20th holds the plume for 24 days from then, the tidy runs from the full groom
    CHECK(c.visits.front().on <= on("2026-12-08"));
    CHECK(c.visits.front().due.front().what == due::tidy);
    CHECK(c.visits.front().due.front().by == on("2026-12-08"));
}

TEST_CASE("what the sheet leaves long is brushed out, and a sheet that trims nothing is not tidied",
          "[calendar]") {
    groom_table t;
    t.patient.now = {{"all", mm(45)}};
    t.says("tail", finish_by(finish::leave));
    const calendar c = calendar_for(t);
    CHECK(c.held == std::vector<place>{at("tail")});
    CHECK(std::any_of(c.visits.begin(), c.visits.end(),
                      [](const auto& v) { return brushes(v.what) && tidies(v.what); }));
    const calendar smooth = calendar_for(demo("acorn"));
    CHECK(std::all_of(smooth.visits.begin(), smooth.visits.end(), [](const calendar_visit& v) {
        return v.what == visit_work::full_groom && v.due.front().what == due::usual;
    }));
}

TEST_CASE("a double coat keeps to its interval and its tidies and is not clipped", "[calendar]") {
    const calendar c = calendar_for(demo("aspen"), 52);
    CHECK_FALSE(c.mats_by_length);
    CHECK_FALSE(c.clips);
    CHECK(c.chances.empty());
    CHECK(c.habits.empty());
    for (const calendar_visit& v : c.visits) {
        CHECK((v.what == visit_work::full_groom || v.what == visit_work::tidy));
        CHECK(v.due.front().what != due::matting);
        CHECK(v.due.front().what != due::held);
    }
    // and no length is tried to make it wait longer
    const groom_table t = demo("aspen");
    const longest_coat_answer a = back_in(t.request(), t.plan(), day(91));
    CHECK_FALSE(a.holds);
    CHECK(a.percent == 100);
    CHECK(a.instead.empty());
}

TEST_CASE("a curly cross at half an inch, brushed twice a week, is asked back in 3 to 8 weeks",
          "[calendar]") {
    // common practice, no source
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_of(clip_to(inch(1, 2)));
    const calendar c = calendar_for(t, 52);
    int groomed = 0;
    for (std::size_t i = 0; i < c.visits.size(); ++i) {
        INFO(iso(c.visits[i].on));
        const int waited = ends(c, i) - (i == 0 ? 0 : ends(c, i - 1));
        // a full groom ends the usual interval, however long ago the bath before it was
        CHECK(waited >= (c.visits[i].what == visit_work::full_groom ? 7 : 14));
        CHECK(waited <= 28);  // brushed out between
        if (c.visits[i].what == visit_work::full_groom) {
            CHECK(ends(c, i) - groomed >= 35);
            CHECK(ends(c, i) - groomed <= 56);
            groomed = ends(c, i);
        }
    }
    CHECK(c.visits.size() >= 6);
}

TEST_CASE("unbrushed and over 13 mm: never beyond six weeks", "[calendar]") {
    // common practice, no source
    for (const coat_class k : {coat_class::wavy, coat_class::curly}) {
        for (const double l : {13.5, 16.0, 25.0, 38.0}) {
            INFO(name(k) << " at " << l);
            groom_table t;
            t.patient.coat = k;
            t.patient.brushed = {habit::none, false};
            t.sheet = sheet_of(clip_to(mm(l)));
            const calendar c = calendar_for(t, 52);
            int before = 0;
            for (std::size_t i = 0; i < c.visits.size(); ++i) {
                CHECK(ends(c, i) - before <= 42);
                before = ends(c, i);
            }
            CHECK(364 - before <= 42);
        }
    }
}

TEST_CASE("minutes add up, and the owner's trip is in none of them", "[calendar]") {
    groom_table t = demo("tansy");
    const calendar c = calendar_for(t);
    work sum{};
    for (const calendar_visit& v : c.visits) {
        sum += v.takes;
    }
    CHECK(sum == c.sum.takes);
    const price_rules& p = t.rules.prices;
    const auto tidy = std::find_if(c.visits.begin(), c.visits.end(), [](const auto& v) {
        return v.what == visit_work::bath_and_tidy;
    });
    REQUIRE(tidy != c.visits.end());
    // the service of that name, as a plan of it counts
    const service& booked = service_of(io::reference(), service_kind::tidy);
    plan_request ask = t.request();
    ask.booked = &booked;
    const groom g = make_plan(ask);
    CHECK(tidy->takes == appointment_of(ask, g, booked).total());
    const double size = p.size[static_cast<std::size_t>(dog_size::small)].best;
    CHECK_THAT(in_minutes(tidy->takes - g.before - g.after),
               match::WithinAbs(in_minutes(p.visit.best) + in_minutes(p.nails.best) +
                                    in_minutes(p.ears.best) + size * in_minutes(p.bath.best),
                                0.01));
}

TEST_CASE("of one interval the chance throughout is the forecast's", "[calendar]") {
    const shared_law law{{std::log(0.34), 0.32}, 0.1, mm(0.8)};
    const std::vector<kept_zone> dog{{mm(14), mm(30), mm(140), day(21)},
                                     {mm(13), mm(38), mm(140), day(21)},
                                     {mm(30), mm(45), mm(60), day(0)}};
    for (const double t : {15.0, 25.0, 32.0, 45.0, 60.0}) {
        INFO(t);
        CHECK_THAT(all_fine_throughout({{dog, day(t)}}, law, 0.12),
                   match::WithinAbs(all_fine(dog, law, day(t)), 2e-4));
    }
}

TEST_CASE("several intervals: more than if each dog were drawn anew, no more than the worst one",
          "[calendar]") {
    const shared_law law{{std::log(0.34), 0.32}, 0.1, mm(0.8)};
    const std::vector<kept_zone> dog{{mm(14), mm(30), mm(140), day(0)}};
    const kept_interval one{dog, day(29)};
    const double once = all_fine_throughout({one}, law, 0.12);
    const double six = all_fine_throughout({one, one, one, one, one, one}, law, 0.12);
    CHECK(six > std::pow(once, 6));
    CHECK(six < once);
    // in a dog that never changes all intervals go as the first does, but for the start error
    const shared_law still{{std::log(0.34), 0.32}, 0.1, mm(0)};
    CHECK(all_fine_throughout({one, one, one}, still, 0.0) > once - 0.01);
}

TEST_CASE("the longest coat for a wait holds, and one percent more does not", "[calendar]") {
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    const longest_coat_answer a = back_in(t.request(), t.plan(), day(42));
    REQUIRE(a.holds);
    CHECK(a.percent < 100);
    CHECK(a.when.next_visit >= day(42));
    const scaled_wishes longer_by_one = scaled(t.request(), a.percent + 1);
    const plan_request ask = request_for(t.request(), longer_by_one);
    CHECK(back_of(ask, make_plan(ask)).next_visit < day(42));
}

TEST_CASE("scaling goes no shorter than is advisable, and leaves what is shorter already",
          "[calendar]") {
    groom_table t;
    t.says("ear", clip_to(mm(25))).says("feet", clip_to(mm(2)));
    t.sheet.adjustable = mm(13);
    const scaled_wishes w = scaled(t.request(), 10);
    const length shortest = coat_of(io::reference(), coat_class::wavy).shortest.best;
    CHECK(w.sheet.rules[0].what.target == shortest);
    CHECK(w.sheet.rules[1].what.target == shortest);
    CHECK(w.sheet.rules[2].what.target == mm(2));
    CHECK(w.sheet.adjustable == shortest);
    CHECK(scaled(t.request(), 100).sheet.rules[1].what.target == mm(25));
    CHECK(scaled(t.request(), 50).sheet.rules[1].what.target == mm(12.5));
    CHECK(least_percent(t.request()) == 12);  // 3 mm of 25
}

TEST_CASE("no calendar: the clocks in the way, and what would do, does", "[calendar]") {
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    t.patient.cannot = off({"2026-12-10 to 2027-01-12"});
    const calendar c = calendar_for(t);
    REQUIRE(c.blocked);
    CHECK(c.blocked->days_off);
    CHECK(std::count(c.blocked->clocks.begin(), c.blocked->clocks.end(), due::matting) == 1);
    CHECK(std::count(c.blocked->clocks.begin(), c.blocked->clocks.end(), due::usual) == 0);
    // with the tidy let go, the brushing and the lengths named do
    t.rules.matting.tidy_face_feet = plain(day(60));
    t.rules.matting.tidy_sanitary = plain(day(60));
    REQUIRE_FALSE(calendar_for(t).sum.possible);
    REQUIRE(c.blocked->brush);
    groom_table brushed = t;
    brushed.patient.brushed = {*c.blocked->brush, true};
    CHECK(calendar_for(brushed).sum.possible);
    REQUIRE(c.blocked->percent);
    groom_table shorter_hair = t;
    shorter_hair.sheet = scaled(t.request(), *c.blocked->percent).sheet;
    CHECK(calendar_for(shorter_hair).sum.possible);
    shorter_hair.sheet = scaled(t.request(), *c.blocked->percent + 1).sheet;
    CHECK_FALSE(calendar_for(shorter_hair).sum.possible);
}
