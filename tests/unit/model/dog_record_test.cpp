// What the entries of a record come to: which hold, and what they add to a dog.
#include <cmath>

#include <pelage/data/reference.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/model/growth_record.hpp>

#include "catch.hpp"
#include "unit/model/logged_grooms.hpp"

using namespace pelage;
using logged::curly;
using logged::groomed;
using logged::on;

namespace {

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
