// What can go wrong, said in one way.
#include <algorithm>

#include <pelage/base/error.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("an error carries its cause and its words", "[error]") {
    const error e(errc::ambiguous, "which set is the comb of?");
    CHECK(e.code() == errc::ambiguous);
    CHECK(std::string(e.what()) == "which set is the comb of?");
    CHECK_THROWS_AS(throw error(errc::range, "x"), std::runtime_error);
}

TEST_CASE("bad input carries every fault at once and speaks with the first", "[error]") {
    const diagnostics two{{"dog.toml", 3, 7, errc::unit, "a length needs its unit"},
                          {"dog.toml", 9, 1, errc::unknown, "no such zone"}};
    const bad_input b(two);
    CHECK(b.all() == two);
    CHECK(b.code() == errc::unit);
    CHECK(std::string(b.what()) == "a length needs its unit");
    // callers that know only the wider kind still catch it
    CHECK_THROWS_AS(throw bad_input(two), error);
}

TEST_CASE("bad input without a fault is our own fault", "[error]") {
    const bad_input b({});
    CHECK(b.all().empty());
    CHECK(b.code() == errc::internal);
    CHECK_FALSE(std::string(b.what()).empty());
}

TEST_CASE("faults stand in the order of the text", "[error]") {
    const diagnostic early{"a.toml", 2, 9, errc::type, "x"};
    const diagnostic later{"a.toml", 10, 1, errc::type, "x"};
    const diagnostic right{"a.toml", 10, 4, errc::type, "x"};
    const diagnostic other{"b.toml", 1, 1, errc::type, "x"};
    diagnostics all{other, right, early, later};
    std::sort(all.begin(), all.end());
    CHECK(all == diagnostics{early, later, right, other});
    CHECK_FALSE(early < early);
    CHECK(early == early);
    CHECK_FALSE(early == later);
}
