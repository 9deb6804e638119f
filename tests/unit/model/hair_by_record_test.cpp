// Today's hair by the record: what was last left or seen in a place, grown since.
#include <cmath>

#include <pelage/data/reference.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/model/growth_record.hpp>
#include <pelage/model/hair_by_record.hpp>

#include "catch.hpp"
#include "unit/model/logged_grooms.hpp"

using namespace pelage;
using logged::curly;
using logged::groomed;
using logged::on;

namespace {

dog today(const dog& d, const char* day) {
    return with_hair_by_record(d, io::reference(), io::reference().rules, on(day));
}

const recorded_hair* at(const dog& d, const char* zone) {
    const auto& zones = io::reference().dog_body.zones;
    for (const recorded_hair& h : d.by_record) {
        if (zones[h.at.zone].id == zone) {
            return &h;
        }
    }
    return nullptr;
}

/// A full groom that left all at 13 mm, and a later visit of that kind that left so much.
dog then(const char* kind, std::vector<hair_now> left = {}) {
    dog d = curly();
    d.visits = {{on("2026-10-01"), "full", {{"all", mm(13)}}},
                {on("2026-11-01"), kind, std::move(left)}};
    return today(d, "2026-11-15");
}

}  // namespace

TEST_CASE("today's hair is what was left, grown by the dog's own rate", "[record]") {
    dog d = curly();
    add_record(d, {groomed(1, "2026-11-04")});
    const dog now = today(d, "2026-11-25");
    const recorded_hair* neck = at(now, "neck");
    REQUIRE(neck != nullptr);
    const rate_law rate = learn_rate(d, io::reference(), io::reference().rules, {}).next;
    CHECK(std::abs(in_mm(neck->is) - (13 + 21 * std::exp(rate.log_median))) < 1e-9);
    CHECK(neck->low < neck->is);
    CHECK(neck->is < neck->high);
    CHECK(neck->since == on("2026-11-04"));
    // the same day: as it was left, but for what a cut is off
    CHECK(at(today(d, "2026-11-04"), "neck")->is == mm(13));
    // before it: nothing is known
    CHECK(today(d, "2026-11-03").by_record.empty());
}

TEST_CASE("of several days the last says what hair there is", "[record]") {
    dog d = curly();
    d.told = {{on("2026-11-20"), "tail", mm(60), true}, {on("2026-11-01"), "neck", mm(90), true}};
    add_record(d, {groomed(1, "2026-11-04")});
    const dog now = today(d, "2026-11-25");
    CHECK(at(now, "neck")->since == on("2026-11-04"));  // the file's is older
    CHECK(at(now, "tail")->since == on("2026-11-20"));  // and here it is later
    CHECK(at(now, "tail")->is > mm(60));
}

TEST_CASE("a groom that doesn't say what it left ends what is known", "[record]") {
    dog d = curly();
    log_entry silent = groomed(2, "2026-11-18");
    silent.left = {{"left ear", mm(25), true}};
    add_record(d, {groomed(1, "2026-11-04"), silent});
    const dog now = today(d, "2026-11-25");
    CHECK(at(now, "neck") == nullptr);
    REQUIRE(at(now, "ear") != nullptr);
    CHECK(at(now, "ear")->at.which == side::left);
    CHECK(now.by_record.size() == 1);
}

TEST_CASE("what is said today is never laid over by the record", "[record]") {
    dog d = curly();
    add_record(d, {groomed(1, "2026-11-04")});
    d.now.push_back({"body", mm(40)});
    const dog now = today(d, "2026-11-25");
    CHECK(at(now, "neck") == nullptr);
    CHECK(at(now, "muzzle") != nullptr);
}

TEST_CASE("lengths without a day give way to a record, and it is known that they did", "[record]") {
    dog d = curly();
    d.now.push_back({"all", mm(60)});
    add_record(d, {});
    CHECK(d.now.size() == 1);
    add_record(d, {groomed(1, "2026-11-04")});
    CHECK(d.now.empty());
    CHECK(d.now_gave_way);
}

TEST_CASE("a tidy that says nothing may have cut face, feet and what is prepared, and nothing else",
          "[record]") {
    const dog d = then("tidy");
    for (const char* cut : {"skull", "muzzle", "feet", "belly", "pads"}) {
        INFO(cut);
        CHECK(at(d, cut) == nullptr);
    }
    for (const char* as_it_was : {"back", "foreleg", "tail"}) {
        INFO(as_it_was);
        REQUIRE(at(d, as_it_was) != nullptr);
        CHECK(at(d, as_it_was)->since == on("2026-10-01"));
    }
}

TEST_CASE("a tidy that says what it left cut that, and nothing else", "[record]") {
    const dog d = then("tidy", {{"feet", mm(10)}});
    REQUIRE(at(d, "feet") != nullptr);
    CHECK(at(d, "feet")->since == on("2026-11-01"));
    REQUIRE(at(d, "skull") != nullptr);
    CHECK(at(d, "skull")->since == on("2026-10-01"));
    REQUIRE(at(d, "back") != nullptr);
    CHECK(at(d, "back")->since == on("2026-10-01"));
}

TEST_CASE("a full groom may have cut all, whatever it says of some places", "[record]") {
    const dog d = then("full", {{"feet", mm(10)}});
    REQUIRE(at(d, "feet") != nullptr);
    CHECK(at(d, "back") == nullptr);
}

TEST_CASE("a bath cuts nothing", "[record]") {
    const dog d = then("bath");
    REQUIRE(at(d, "feet") != nullptr);
    CHECK(at(d, "feet")->since == on("2026-10-01"));
}

TEST_CASE("a mat of the dog's file goes once a later visit dealt with it, beside one found today",
          "[record]") {
    dog d = curly();
    d.visits = {{on("2026-11-04"), "full", {{"all", mm(13)}}}};
    mat_finding filed;
    filed.filed = true;
    filed.seen = on("2026-10-20");
    const auto zone = [](const char* id) {
        const auto& zones = io::reference().dog_body.zones;
        std::size_t k = 0;
        while (zones[k].id != id) {
            ++k;
        }
        return k;
    };
    filed.at.zone = zone("back");
    mat_finding fresh;
    fresh.at.zone = zone("rump");
    d.mats = {filed, fresh};
    const dog seen = as_by_record(d, io::reference(), io::reference().rules, on("2026-11-15"));
    REQUIRE(seen.mats.size() == 1);
    CHECK(seen.mats.front().at.zone == zone("rump"));
}
