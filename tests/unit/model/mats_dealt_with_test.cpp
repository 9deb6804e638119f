// Mats of a dog's file that a later visit dealt with.
#include <pelage/data/reference.hpp>
#include <pelage/model/mats_dealt_with.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

date on(const char* day) {
    return *parse_date(day);
}

std::size_t zone_of(const char* id) {
    const auto& zones = io::reference().dog_body.zones;
    for (std::size_t z = 0; z < zones.size(); ++z) {
        if (zones[z].id == id) {
            return z;
        }
    }
    FAIL("no such zone");
    return 0;
}

dog with_mat(const char* zone, side s, const char* seen) {
    dog d;
    d.id = "rosie";
    d.coat = coat_class::curly;
    mat_finding m;
    m.at = {zone_of(zone), s};
    m.filed = true;
    m.seen = parse_date(seen);
    d.mats = {m};
    return d;
}

visit came(const char* day, const char* kind, std::optional<std::vector<std::string>> mats) {
    visit v{on(day), kind};
    v.mats = std::move(mats);
    v.logged = true;
    return v;
}

dog today(const dog& d) {
    const body& b = io::reference().dog_body;
    return without_mats_dealt_with(d, part_index(b), b, on("2026-11-25"));
}

const std::vector<std::string> none{};

}  // namespace

TEST_CASE("of a pair the side where mats were found again stays", "[record][mats]") {
    dog d = with_mat("ear", side::both, "2026-11-03");
    d.visits = {came("2026-11-10", "bath", {{"left ear"}})};
    const dog now = today(d);
    REQUIRE(now.mats.size() == 1);
    CHECK(now.mats[0].at.which == side::left);
    REQUIRE(now.dealt.size() == 1);
    CHECK(now.dealt[0].what.at.which == side::right);
    CHECK(now.dealt[0].on == on("2026-11-10"));
}

TEST_CASE("a pair that went on one day is told as a pair", "[record][mats]") {
    dog d = with_mat("ear", side::both, "2026-11-03");
    d.visits = {came("2026-11-10", "full", none)};
    const dog now = today(d);
    CHECK(now.mats.empty());
    REQUIRE(now.dealt.size() == 1);
    CHECK(now.dealt[0].what.at.which == side::both);
}

TEST_CASE("mats found there again, and not said to be off, keep the finding", "[record][mats]") {
    dog d = with_mat("tail", side::both, "2026-11-03");
    d.visits = {came("2026-11-10", "full", none), came("2026-11-17", "bath", {{"tail"}})};
    CHECK(today(d).mats.size() == 1);
    d.visits.push_back(came("2026-11-24", "bath", none));
    const dog now = today(d);
    CHECK(now.mats.empty());
    CHECK(now.dealt.at(0).on == on("2026-11-24"));
}

TEST_CASE("what a visit doesn't speak of it didn't deal with", "[record][mats]") {
    dog d = with_mat("tail", side::both, "2026-11-03");
    d.visits = {came("2026-11-10", "full", std::nullopt)};
    CHECK(today(d).mats.size() == 1);
    d.visits[0].left = {{"body", mm(13)}};
    CHECK(today(d).mats.size() == 1);  // the body's length says nothing of the tail
    d.visits[0].left.push_back({"tail", mm(16)});
    CHECK(today(d).mats.empty());
    d.visits[0].kind = "tidy";
    CHECK(today(d).mats.size() == 1);  // a tidy's length may stand over it
}

TEST_CASE("a visit to come, or before the mat was seen, deals with nothing", "[record][mats]") {
    dog d = with_mat("tail", side::both, "2026-11-03");
    d.visits = {came("2026-11-02", "full", none), came("2026-11-26", "full", none)};
    CHECK(today(d).mats.size() == 1);
}

TEST_CASE("told today it isn't the file's, and counts", "[record][mats]") {
    dog d = with_mat("tail", side::both, "2026-11-03");
    d.mats[0].filed = false;
    d.visits = {came("2026-11-10", "full", none)};
    CHECK(today(d).mats.size() == 1);
    CHECK(today(d).undated.empty());
}

TEST_CASE("without its day it stays, and that is known", "[record][mats]") {
    dog d = with_mat("tail", side::both, "");
    REQUIRE(!d.mats[0].seen);
    d.visits = {came("2026-11-10", "full", none)};
    CHECK(today(d).mats.size() == 1);
    REQUIRE(today(d).undated.size() == 1);
    CHECK(today(d).undated[0].on == on("2026-11-10"));
    d.visits[0].logged = false;  // whoever wrote the visit wrote the mat
    CHECK(today(d).undated.empty());
}

TEST_CASE("a mat that may be gone makes no dog matted, one with its day or told today does",
          "[record][mats]") {
    dog d;
    mat_finding old;
    old.at = {3, side::left};
    old.filed = true;
    d.mats = {old};
    d.undated = {{old, *parse_date("2026-11-02")}};
    CHECK_FALSE(matted_since(d));
    mat_finding dated = old;
    dated.at.which = side::right;
    dated.seen = *parse_date("2026-11-09");
    d.mats.push_back(dated);
    CHECK(matted_since(d));
    mat_finding told = old;
    told.filed = false;
    d.mats = {old, told};
    CHECK(matted_since(d));
}
