// How a number is known.
#include <set>
#include <string_view>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("the seven bases are written by their names and said in words, each its own",
          "[evidence]") {
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < basis_names.size(); ++i) {
        const auto b = static_cast<basis>(i);
        INFO(basis_names[i]);
        CHECK(name(b) == basis_names[i]);
        CHECK(seen.insert(in_words(b)).second);
        CHECK_FALSE(in_words(b).empty());
    }
    CHECK(seen.size() == 7);
}

TEST_CASE("the words for the screen say how much to trust a figure", "[evidence]") {
    CHECK(in_words(basis::practice) == "common practice, no source");
    CHECK(in_words(basis::contested) == "groomers disagree");
    CHECK(in_words(basis::assumption) == "our guess");
    CHECK(in_words(basis::measured) == "measured by you");
}

TEST_CASE("a figure with no spread is itself at both ends and keeps its evidence", "[evidence]") {
    const evidence why{basis::published, "nist-sp-811", false, "exact"};
    const figure<length> f = exactly(mm(25.4), why);
    CHECK(f.low == mm(25.4));
    CHECK(f.best == mm(25.4));
    CHECK(f.high == mm(25.4));
    CHECK(f.why == why);
    CHECK_FALSE(f.why == evidence{});
}
