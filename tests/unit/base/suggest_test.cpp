// The name a person probably meant.
#include <string>
#include <vector>

#include <pelage/base/suggest.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("edits count letters put in, left out, changed or swapped; case is nothing",
          "[suggest]") {
    struct row {
        const char* a;
        const char* b;
        std::size_t is;
    };
    const row rows[] = {{"", "", 0},
                        {"ear", "ear", 0},
                        {"", "ear", 3},
                        {"ear", "", 3},
                        {"EAR", "ear", 0},
                        {"muzle", "muzzle", 1},
                        {"muzzzle", "muzzle", 1},
                        {"muzzel", "muzzle", 1},
                        {"nuzzle", "muzzle", 1},
                        {"groni", "groin", 1},
                        {"back", "neck", 2}};
    for (const row& r : rows) {
        INFO(r.a << " and " << r.b);
        CHECK(edits(r.a, r.b) == r.is);
        CHECK(edits(r.b, r.a) == r.is);
    }
}

TEST_CASE("the nearest name is at most two edits away, one for short words", "[suggest]") {
    const std::vector<std::string> zones{"neck", "back", "muzzle", "shoulder", "ear", "rear"};
    CHECK(nearest_name("muzle", zones) == "muzzle");
    CHECK(nearest_name("Muzzel", zones) == "muzzle");
    CHECK(nearest_name("mzzl", zones).empty());  // two away, and the word is short
    CHECK(nearest_name("mzzle", zones) == "muzzle");
    CHECK(nearest_name("bcak", zones) == "back");
    CHECK(nearest_name("elephant", zones).empty());
    CHECK(nearest_name("neck", zones) == "neck");
    CHECK(nearest_name("neck", {}).empty());
}

TEST_CASE("of two equally near names the first in order is meant", "[suggest]") {
    CHECK(nearest_name("bear", {"ear", "rear"}) == "ear");
    CHECK(nearest_name("bear", {"rear", "ear"}) == "rear");
}

TEST_CASE("the only name that begins so is meant; two of them are none", "[suggest]") {
    const std::vector<std::string> zones{"shoulder", "skull", "skirt"};
    CHECK(nearest_name("shou", zones) == "shoulder");
    CHECK(nearest_name("shoulde", zones) == "shoulder");
    CHECK(nearest_name("sk", zones).empty());  // too short to say anything
    CHECK(nearest_name("sheltered", zones).empty());
    CHECK(nearest_name("collar", {"collar-line", "collar-band"}).empty());
}

TEST_CASE("a name that stands in the list twice is still one name", "[suggest]") {
    // a zone's id and its title are often the same word
    CHECK(nearest_name("with", {"withers", "withers", "neck"}) == "withers");
}

TEST_CASE("a suggestion is a question, or nothing", "[suggest]") {
    CHECK(did_you_mean("muzle", {"muzzle"}) == "; did you mean \"muzzle\"?");
    CHECK(did_you_mean("elephant", {"muzzle"}).empty());
}
