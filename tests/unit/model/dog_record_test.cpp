// What the entries of a record come to: which hold, and what they add to a dog; today's hair by it.
#include <cmath>

#include <pelage/data/reference.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/model/growth_record.hpp>
#include <pelage/model/hair_by_record.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

date on(const char* day) {
    return *parse_date(day);
}

log_entry groomed(unsigned number, const char* day, double left = 13) {
    log_entry e;
    e.number = number;
    e.on = on(day);
    e.services = {service_kind::full};
    e.left = {{"all", mm(left), true}};
    e.mats.emplace();
    return e;
}

log_entry taken_back(unsigned number, unsigned which) {
    log_entry e;
    e.number = number;
    e.corrects = which;
    e.takes_back = true;
    return e;
}

std::vector<unsigned> numbers(const std::vector<log_entry>& all) {
    std::vector<unsigned> out;
    for (const log_entry& e : all) {
        out.push_back(e.number);
    }
    return out;
}

dog curly() {
    dog d;
    d.id = "rosie";
    d.coat = coat_class::curly;
    return d;
}

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

}  // namespace

TEST_CASE("an entry holds unless a later one that holds corrects it", "[record]") {
    log_entry better = groomed(2, "2026-11-04", 16);
    better.corrects = 1;
    std::vector<log_entry> all{groomed(1, "2026-11-04"), better};
    CHECK(numbers(entries_in_force(all)) == std::vector<unsigned>{2});
    all.push_back(taken_back(3, 2));  // the correction was wrong: the first holds again
    CHECK(numbers(entries_in_force(all)) == std::vector<unsigned>{1});
    CHECK(last_in_force(all)->number == 1);
    all.push_back(taken_back(4, 1));
    CHECK(entries_in_force(all).empty());
    CHECK(!last_in_force(all));
}

TEST_CASE("a record adds visits, mats and measurements to a dog", "[record]") {
    dog d = curly();
    d.visits = {{on("2026-09-01"), "full"}, {on("2026-11-04"), "full"}};
    log_entry e = groomed(1, "2026-11-04");
    e.mats->push_back({"left armpit", mat_grade::pelt});
    e.found = {{"body", mm(31), true}};
    log_entry nails = groomed(2, "2026-11-20");
    nails.services = {service_kind::nails};
    add_record(d, {e, nails});
    REQUIRE(d.visits.size() ==
            2);  // the file's own of that day is the same visit; nails are no groom
    CHECK(!d.visits[0].logged);
    CHECK(!d.visits[0].mats);
    CHECK(d.visits[1].logged);
    REQUIRE(d.visits[1].left.size() == 1);
    CHECK(d.visits[1].left[0].is == mm(13));
    REQUIRE(d.visits[1].mats);
    CHECK(*d.visits[1].mats == std::vector<std::string>{"left armpit"});
    REQUIRE(d.measured.size() == 1);
    CHECK(d.measured[0].combed_dry);
}

TEST_CASE("a bath with a tidy is both, and its mats are told once", "[record]") {
    log_entry e = groomed(1, "2026-11-02");
    e.services = {service_kind::bath, service_kind::tidy};
    dog d = curly();
    add_record(d, {e});
    CHECK(kinds_logged(d, on("2026-11-02")) == std::vector<std::string>{"tidy", "bath"});
    CHECK(kinds_logged(d, on("2026-11-03")).empty());
    CHECK(d.visits[0].mats.has_value());
    CHECK_FALSE(d.visits[1].mats.has_value());
    e.services.push_back(service_kind::full);
    dog whole = curly();
    add_record(whole, {e});
    CHECK(kinds_logged(whole, on("2026-11-02")) == std::vector<std::string>{"full"});
}

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
