// From a dog's record to its rate: which measurements count, which don't and why.
#include <algorithm>
#include <array>
#include <chrono>
#include <cmath>
#include <ctime>
#include <string>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/model/growth_record.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

date on(const char* day) {
    const auto d = parse_date(day);
    REQUIRE(d);
    return *d;
}

/// A wavy dog cut to 13 mm all over on 1 March 2026.
dog cut_in_march() {
    dog d;
    d.id = "test";
    d.coat = coat_class::wavy;
    d.visits.push_back({on("2026-03-01"), "full", {{"all", mm(13)}}});
    return d;
}

dog& measure(dog& d, const char* day, const char* where, double is, bool combed = true) {
    d.measured.push_back({on(day), where, mm(is), combed});
    return d;
}

learned_rate learned(const dog& d, std::optional<date> today = {}) {
    return learn_rate(d, io::reference(), io::reference().rules, today);
}

/// Why the only measurement of a dog doesn't count; nothing if it does.
std::optional<left_out_because> why(const dog& d, std::optional<date> today = {}) {
    const learned_rate l = learned(d, today);
    REQUIRE(l.counted.size() + l.left_out.size() == d.measured.size());
    return l.left_out.empty() ? std::nullopt : std::optional{l.left_out.front().why};
}

}  // namespace

TEST_CASE("a measurement counts from the cut before it", "[record]") {
    dog d = cut_in_march();
    measure(d, "2026-03-31", "back", 25);
    const learned_rate l = learned(d);
    REQUIRE(l.counted.size() == 1);
    CHECK(l.counted[0].read.after == day(30));
    CHECK(l.counted[0].read.start == mm(13));
    CHECK(l.counted[0].read.is == mm(25));
    // 5 in 100 of the 23.2 mm such a coat is expected to have by then
    CHECK_THAT(in_mm(l.counted[0].read.error), match::WithinAbs(0.05 * (13 + 0.34 * 30), 1e-9));
    CHECK(l.counted[0].cut == 0);
    CHECK(std::exp(l.dog.log_median) > 0.34);  // 0.4 mm a day was measured
    CHECK(std::exp(l.dog.log_median) < 0.4);
    CHECK(l.coat_weight < 1.0);
    CHECK(l.next.log_sd < l.usual.log_sd);
}

TEST_CASE("nothing measured, nothing learned", "[record]") {
    const learned_rate l = learned(cut_in_march());
    CHECK(l.counted.empty());
    CHECK(l.left_out.empty());
    CHECK(l.next.log_median == l.usual.log_median);
    CHECK(l.next.log_sd == l.usual.log_sd);
    CHECK(l.coat_weight == 1.0);
}

TEST_CASE("a long measurement is off by a share of it", "[record]") {
    const growth_rules& g = io::reference().rules.growth;
    CHECK(measuring_error(mm(16), g) == mm(0.8));
    CHECK_THAT(in_mm(measuring_error(mm(16.1), g)), match::WithinAbs(0.805, 1e-9));  // no step
    CHECK(measuring_error(mm(40), g) == mm(2));
}

TEST_CASE("what the visit left: narrower words win, all means all", "[record]") {
    dog d = cut_in_march();
    d.visits[0].left = {{"left ear", mm(20)}, {"ears", mm(19)}, {"all", mm(13)}, {"legs", mm(25)}};
    for (const auto& [where, left] :
         std::vector<std::pair<const char*, double>>{{"left ear", 20},
                                                     {"right ear", 19},
                                                     {"foreleg", 25},
                                                     {"back", 13},
                                                     {"sanitary", 13}}) {
        INFO(where);
        dog one = d;
        measure(one, "2026-03-31", where, left + 10);
        const learned_rate l = learned(one);
        REQUIRE(l.counted.size() == 1);
        CHECK(l.counted[0].read.start == mm(left));
    }
    dog both = d;
    measure(both, "2026-03-31", "ears", 30);
    CHECK(why(both) == left_out_because::cut_unalike);
    dog legs = d;
    measure(legs, "2026-03-31", "legs", 35);
    CHECK_FALSE(why(legs));
}

TEST_CASE("of a record without end the newest count", "[record]") {
    dog d = cut_in_march();
    d.visits[0].on = on("2015-01-01");
    const date first = on("2015-01-02");
    for (int i = 0; i < 3000; ++i) {
        d.measured.push_back({first + std::chrono::days{i}, "back", mm(14 + 0.01 * i), true});
    }
    const learned_rate l = learned(d);
    CHECK(l.counted.size() + l.left_out.size() == d.measured.size());
    REQUIRE(l.counted.size() == most_counted);
    CHECK(l.counted.front().which == 3000 - most_counted);
    CHECK(l.left_out.front().why == left_out_because::newer_are_enough);
}

TEST_CASE("on the day of a cut it was measured before it", "[record]") {
    dog d = cut_in_march();
    d.visits.push_back({on("2026-04-20"), "full", {{"all", mm(9)}}});
    measure(d, "2026-04-20", "back", 30);
    const learned_rate l = learned(d);
    REQUIRE(l.counted.size() == 1);
    CHECK(l.counted[0].cut == 0);
    CHECK(l.counted[0].read.start == mm(13));
    dog first = cut_in_march();
    measure(first, "2026-03-01", "back", 40);
    CHECK(why(first) == left_out_because::no_cut);
}

TEST_CASE("a full groom that doesn't say what it left ends what is known", "[record]") {
    dog d = cut_in_march();
    d.visits.push_back({on("2026-04-01"), "full", {}});
    measure(d, "2026-05-01", "back", 30);
    CHECK(why(d) == left_out_because::cut_unsaid);
    CHECK(learned(d).left_out.front().cut == 1);
    d.visits[1].left = {{"legs", mm(25)}};
    CHECK(why(d) == left_out_because::cut_unsaid);
    d.visits[1].left = {{"body", mm(10)}};
    CHECK_FALSE(why(d));
}

TEST_CASE("a bath cuts nothing, a tidy face and feet", "[record]") {
    for (const auto& [kind, where, counts] :
         std::vector<std::tuple<const char*, const char*, bool>>{{"bath", "muzzle", true},
                                                                 {"bath", "back", true},
                                                                 {"tidy", "back", true},
                                                                 {"tidy", "muzzle", false},
                                                                 {"tidy", "feet", false},
                                                                 {"tidy", "sanitary", false}}) {
        INFO(kind << " and " << where);
        dog d = cut_in_march();
        d.visits.push_back({on("2026-03-20"), kind, {}});
        measure(d, "2026-04-10", where, 27);
        CHECK(!why(d) == counts);
    }
    dog d = cut_in_march();
    d.visits.push_back({on("2026-03-20"), "tidy", {{"feet", mm(10)}}});
    measure(d, "2026-04-10", "feet", 17);
    measure(d, "2026-04-10", "muzzle", 27);
    const learned_rate l = learned(d);
    REQUIRE(l.counted.size() == 2);
    CHECK(l.counted[0].cut == 1);
    CHECK(l.counted[1].cut == 0);
}

TEST_CASE("visits need not stand in the order of their days", "[record]") {
    dog d = cut_in_march();
    d.visits.insert(d.visits.begin(), {on("2026-05-01"), "full", {{"all", mm(9)}}});
    measure(d, "2026-04-10", "back", 27);
    measure(d, "2026-06-01", "back", 20);
    const learned_rate l = learned(d);
    REQUIRE(l.counted.size() == 2);
    CHECK(l.counted[0].cut == 1);
    CHECK(l.counted[1].cut == 0);
    CHECK(by_cut(l.counted).size() == 2);
}

TEST_CASE("what is measured as it lies, tomorrow or on a coat that rests doesn't count",
          "[record]") {
    dog curls = cut_in_march();
    measure(curls, "2026-04-10", "back", 20, false);
    CHECK(why(curls) == left_out_because::not_combed_dry);
    dog later = cut_in_march();
    measure(later, "2026-04-10", "back", 27);
    CHECK(why(later, on("2026-04-09")) == left_out_because::after_today);
    CHECK_FALSE(why(later, on("2026-04-10")));
    dog smooth = cut_in_march();
    smooth.coat = coat_class::smooth;
    measure(smooth, "2026-04-10", "back", 20);
    CHECK(why(smooth) == left_out_because::coat_rests);
    dog lion = cut_in_march();
    measure(lion, "2026-04-10", "back", 150);
    CHECK(why(lion) == left_out_because::full_length);
    dog tail = cut_in_march();
    measure(tail, "2026-04-10", "wing", 20);
    CHECK_THROWS_AS(learned(tail), error);
}

TEST_CASE("after a trim nobody wrote down the measurement is named, not believed", "[record]") {
    dog d = cut_in_march();
    measure(d, "2026-04-10", "back", 11);  // shorter than the cut left it
    const learned_rate l = learned(d);
    CHECK(l.counted.empty());
    REQUIRE(l.left_out.size() == 1);
    CHECK(l.left_out[0].why == left_out_because::too_short);
    CHECK(l.left_out[0].after == day(40));
    CHECK(l.next.log_median == l.usual.log_median);
}

TEST_CASE("a trim between two measurements of one stretch takes the later ones with it",
          "[record]") {
    dog d = cut_in_march();
    measure(d, "2026-03-21", "back", 20);
    measure(d, "2026-04-10", "back", 27);
    measure(d, "2026-04-30", "back", 15);  // trimmed on 15 April
    measure(d, "2026-05-10", "back", 18.5);
    measure(d, "2026-05-10", "tail", 37);  // the tail wasn't
    const learned_rate l = learned(d);
    REQUIRE(l.left_out.size() == 2);
    CHECK(l.left_out[0].which == 2);
    CHECK(l.left_out[1].which == 3);
    CHECK(l.counted.size() == 3);
    CHECK_THAT(std::exp(l.dog.log_median), match::WithinAbs(0.345, 0.02));
}

TEST_CASE("a trim is over with the next cut", "[record]") {
    dog d = cut_in_march();
    measure(d, "2026-03-16", "back", 10);  // trimmed on the way
    measure(d, "2026-03-26", "back", 13.5);
    d.visits.push_back({on("2026-04-01"), "full", {{"all", mm(13)}}});
    measure(d, "2026-05-01", "back", 23.5);
    measure(d, "2026-05-21", "back", 30.5);
    const learned_rate l = learned(d);
    REQUIRE(l.left_out.size() == 2);
    CHECK(l.left_out[0].which == 0);
    CHECK(l.left_out[1].which == 1);
    CHECK_THAT(std::exp(l.dog.log_median), match::WithinAbs(0.345, 0.02));
}

TEST_CASE("a slip of the pen doesn't make a fast grower", "[record]") {
    dog d = cut_in_march();
    measure(d, "2026-03-21", "back", 20);
    measure(d, "2026-04-10", "back", 72);  // 27 was meant
    measure(d, "2026-04-20", "back", 30);
    const learned_rate l = learned(d);
    REQUIRE(l.left_out.size() == 1);
    CHECK(l.left_out[0].which == 1);
    CHECK(l.left_out[0].why == left_out_because::too_long);
    CHECK(l.left_out[0].after == day(40));
}

TEST_CASE("a dog that really grows fast or slowly is believed", "[record]") {
    for (const double rate : {0.17, 0.22, 0.5, 0.65}) {
        INFO(rate);
        dog d = cut_in_march();
        for (const auto& [day_of, after] :
             std::vector<std::pair<const char*, double>>{{"2026-03-31", 30}, {"2026-04-20", 50}}) {
            measure(d, day_of, "back", 13 + rate * after);
        }
        const learned_rate l = learned(d);
        CHECK(l.left_out.empty());
        CHECK(std::abs(std::exp(l.dog.log_median) - rate) < std::abs(0.34 - rate));
    }
}

TEST_CASE("the forecast takes the dog's own rate", "[record]") {
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    const return_date usual = back_of(t.request(), t.plan());
    const dog march = cut_in_march();
    t.patient.visits = march.visits;
    measure(t.patient, "2026-03-31", "back", 13 + 0.45 * 30);
    measure(t.patient, "2026-04-20", "back", 13 + 0.45 * 50);
    measure(t.patient, "2026-04-20", "tail", 13 + 0.44 * 50);
    const forecast f = forecast_of(t.request(), t.plan());
    CHECK(f.learned.counted.size() == 3);
    REQUIRE(f.by_coat);
    CHECK(f.by_coat->next_visit == usual.next_visit);
    CHECK(f.when.next_visit < usual.next_visit);
    CHECK(f.when.next_visit == back_of(t.request(), t.plan()).next_visit);
    for (const habit_forecast& h : f.habits) {
        if (counted(h.habit) == counted(t.patient.brushed)) {
            CHECK(h.when.next_visit == f.when.next_visit);
        }
    }
}

TEST_CASE("a slow grower may come later, and what is known better is known narrower", "[record]") {
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    const forecast usual = forecast_of(t.request(), t.plan());
    t.patient.visits = cut_in_march().visits;
    measure(t.patient, "2026-04-20", "back", 13 + 0.25 * 50);
    measure(t.patient, "2026-04-20", "tail", 13 + 0.26 * 50);
    const forecast f = forecast_of(t.request(), t.plan());
    CHECK(f.when.next_visit > usual.when.next_visit);
    const auto spread = [](const zone_forecast& z) { return z.late / z.early; };
    CHECK(spread(f.zones.front()) < spread(usual.zones.front()));
}

namespace {

/// The dog of March, combed through at a full groom after `weeks`, with those mats.
dog combed_after(int weeks, std::vector<std::string> mats) {
    dog d = cut_in_march();
    d.visits.push_back({on("2026-03-01") + std::chrono::days{7 * weeks},
                        "full",
                        {{"all", mm(13)}},
                        std::move(mats)});
    return d;
}

}  // namespace

TEST_CASE("a visit that looked for mats teaches where the dog mats", "[record]") {
    const learned_rate clean = learned(combed_after(8, {}));
    REQUIRE(clean.checks.size() == 1);
    CHECK_FALSE(clean.checks[0].matted);
    CHECK(clean.checks[0].cut == 0);
    CHECK(clean.checks[0].which == 1);
    CHECK(clean.checks[0].zones.front().after == day(56));
    CHECK(clean.factor_mean > 0.0);
    CHECK(clean.factor_sd < 0.25);
    CHECK(clean.dog.log_median < clean.usual.log_median);  // it may also grow slowly
    CHECK_FALSE(clean.cases.empty());
    const learned_rate matted = learned(combed_after(5, {"ears"}));
    REQUIRE(matted.checks.size() == 1);
    CHECK(matted.checks[0].matted);
    CHECK(matted.factor_mean < 0.0);
    // armpits mat before ears at the same length: that they were clean is no evidence
    for (const combed_zone& m : matted.checks[0].zones) {
        CHECK((!m.matted ||
               std::none_of(matted.checks[0].zones.begin(), matted.checks[0].zones.end(),
                            [&](const combed_zone& z) { return !z.matted && z.prone < m.prone; })));
    }
}

TEST_CASE("what a visit doesn't say, or can't, teaches nothing of mats", "[record]") {
    // nobody looked
    dog unsaid = combed_after(8, {});
    unsaid.visits[1].mats.reset();
    CHECK(learned(unsaid).checks.empty());
    // within the clock that began with the last combing out
    CHECK(learned(combed_after(2, {})).checks.empty());
    dog bathed = combed_after(8, {});
    bathed.visits.push_back({on("2026-04-12"), "bath"});
    CHECK(learned(bathed).checks.empty());
    // what the cut left isn't known
    dog unknown = combed_after(8, {});
    unknown.visits[0].left.clear();
    CHECK(learned(unknown).checks.empty());
    // after today
    CHECK(learned(combed_after(8, {}), on("2026-04-01")).checks.empty());
    // the coat doesn't mat by length
    dog smooth = combed_after(8, {});
    smooth.coat = coat_class::smooth;
    CHECK(learned(smooth).checks.empty());
}

TEST_CASE("a dog that came in clean may wait longer, one that came in matted must not",
          "[record]") {
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    const return_date usual = back_of(t.request(), t.plan());
    t.patient.visits = combed_after(8, {}).visits;
    const forecast once = forecast_of(t.request(), t.plan());
    CHECK(once.when.next_visit > usual.next_visit);
    REQUIRE(once.by_coat);
    CHECK(once.by_coat->next_visit == usual.next_visit);
    t.patient.visits.push_back(
        {on("2026-06-21"), "full", {{"all", mm(13)}}, std::vector<std::string>{}});
    t.patient.visits.back().mats.emplace();
    const forecast twice = forecast_of(t.request(), t.plan());
    CHECK(twice.learned.checks.size() == 2);
    CHECK(twice.when.next_visit > once.when.next_visit);
    t.patient.visits = combed_after(5, {"all"}).visits;
    CHECK(back_of(t.request(), t.plan()).next_visit < usual.next_visit);
}

TEST_CASE("a dog that is overdue by its record says so", "[record]") {
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    t.patient.visits = {{on("2026-08-01"), "full"}};
    CHECK_FALSE(back_of(t.request(), t.plan()).was_due);  // no day is known
    t.today = on("2026-11-28");
    const return_date b = back_of(t.request(), t.plan());
    REQUIRE(b.was_due);
    CHECK(*b.was_due == plus(on("2026-08-01"), b.next_visit));
    // a bath since begins the clock anew, up to the usual interval of the full groom
    t.patient.visits.push_back({on("2026-08-25"), "bath"});
    CHECK(*back_of(t.request(), t.plan()).was_due ==
          std::max(*b.was_due, std::min(plus(on("2026-08-25"), day(21)),
                                        plus(on("2026-08-01"), b.full_groom))));
    t.patient.visits = {{on("2026-11-28"), "full"}};
    CHECK_FALSE(back_of(t.request(), t.plan()).was_due);  // that is today's
}

namespace {

/// A salon of `n` wavy dogs measured at three visits each, growing at Normal(ln median, log_sd).
salon_files measured_salon(int n, double median, double log_sd, unsigned seed) {
    oracle::draws d(seed);
    salon_files s = io::demo_salon();
    s.dogs.clear();
    for (int i = 0; i < n; ++i) {
        dog one = cut_in_march();
        one.visits.push_back({on("2026-04-20"), "full", {{"all", mm(13)}}});
        one.visits.push_back({on("2026-06-10"), "full", {{"all", mm(13)}}});
        const double own = std::log(median) + log_sd * d.normal();
        for (const char* day_of : {"2026-04-10", "2026-05-30", "2026-07-20"}) {
            const double rate = std::exp(own + 0.12 * d.normal());
            measure(one, day_of, "back", 13 + rate * 40 + 0.8 * d.normal() + 0.8 * d.normal());
        }
        s.dogs.push_back(one);
    }
    return s;
}

}  // namespace

TEST_CASE("a salon's dogs give the rate and spread they were drawn from", "[record]") {
    // 60 dogs, each known to about 0.1: the median's own error is some 0.03, the spread's 0.025
    const salon_files s = measured_salon(60, 0.42, 0.2, 7);
    const auto lessons = learn_populations(s, io::reference(), {});
    REQUIRE(lessons.size() == 1);
    const population_rate& l = lessons[0];
    CHECK(l.coat == coat_class::wavy);
    CHECK(l.dogs == 60);
    CHECK(l.measurements + l.left_out == 180);
    REQUIRE(l.fit);
    CHECK_THAT(l.fit->law.log_median, match::WithinAbs(std::log(0.42), 0.08));
    CHECK_THAT(l.fit->law.log_sd, match::WithinAbs(0.2, 0.07));
    CHECK_THAT(l.fit->median_error, match::WithinAbs(0.03, 0.01));
    // shrunk toward the class's 0.30
    CHECK(l.fit->law.log_sd > l.fit->fitted_log_sd);
    CHECK(l.fit->law.log_sd < l.before.log_sd);
    CHECK(l.before.median == mm_per_day(0.34));
}

TEST_CASE("dogs alike don't make a coat certain", "[record]") {
    const auto lessons = learn_populations(measured_salon(20, 0.34, 0.0, 8), io::reference(), {});
    REQUIRE(lessons.size() == 1);
    REQUIRE(lessons[0].fit);
    CHECK(lessons[0].fit->fitted_log_sd < 0.128);
    CHECK(lessons[0].fit->law.log_sd >= io::reference().rules.growth.herd_log_sd.best);
}

TEST_CASE("too few dogs, and dogs without a coat, propose nothing", "[record]") {
    salon_files s = measured_salon(9, 0.42, 0.2, 9);
    REQUIRE(learn_populations(s, io::reference(), {}).size() == 1);
    CHECK_FALSE(learn_populations(s, io::reference(), {})[0].fit);
    s.rules.growth.herd.best = 9;
    CHECK(learn_populations(s, io::reference(), {})[0].fit);
    for (dog& d : s.dogs) {
        d.coat.reset();
    }
    CHECK(learn_populations(s, io::reference(), {}).empty());
    CHECK(learn_populations(measured_salon(0, 0.4, 0.1, 1), io::reference(), {}).empty());
}

TEST_CASE("a salon's own rate stands in place of the reference's", "[record]") {
    groom_table t;
    t.patient.now = {{"all", mm(60)}};
    const return_date usual = back_of(t.request(), t.plan());
    const auto wavy = static_cast<std::size_t>(coat_class::wavy);
    t.rules.own_rates[wavy] = rate_prior{mm_per_day(0.45), 0.2, {basis::measured, {}, false, {}}};
    CHECK(back_of(t.request(), t.plan()).next_visit < usual.next_visit);
    CHECK(rate_of(io::reference(), t.rules, coat_class::wavy).median == mm_per_day(0.45));
    CHECK(rate_of(io::reference(), t.rules, coat_class::curly).median == mm_per_day(0.35));
}

TEST_CASE("a record that contradicts itself throughout is read in no time", "[record]") {
    dog d = cut_in_march();
    d.visits.clear();
    constexpr std::array<double, 7> grew{1, 2, 4, 10, 24, 40, 60};  // mm in 20 days
    for (int i = 0; i < 100; ++i) {
        const date cut = on("2016-01-01") + std::chrono::days{28 * i};
        d.visits.push_back({cut, "full", {{"all", mm(13)}}});
        const double by = grew[static_cast<std::size_t>(i * i * 5 + i) % grew.size()];
        d.measured.push_back({cut + std::chrono::days{20}, "back", mm(13 + by), true});
    }
    const std::clock_t before = std::clock();
    const learned_rate l = learned(d);
    const double seconds = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
    CHECK(l.counted.size() + l.left_out.size() == d.measured.size());
    CHECK(l.left_out.size() > 20);
    CHECK(seconds <
          1.0);  // some hundredths here; when every doubt was a posterior of its own, a minute
}
