// What is held: blades, combs, setups and the kit they lie in.
#include <optional>
#include <set>
#include <string>

#include <pelage/trade/kit.hpp>
#include <pelage/trade/setup.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::blade_of;
using on_the_table::comb_of;
using on_the_table::drawer;

TEST_CASE("teeth nobody has looked at count as skip teeth", "[blade]") {
    blade b;
    b.cut = teeth::full;
    CHECK_FALSE(skips(b));
    b.cut = teeth::skip;
    CHECK(skips(b));
    b.cut = teeth::unknown;
    CHECK(skips(b));
}

TEST_CASE("teeth of the usual blades: F and 9 or shorter are full, no letter is skip", "[blade]") {
    struct row {
        const char* id;
        bool skip;
    };
    // common practice, no source; without a letter 8.5, 3.75 and 5/8 long are not known
    const row rows[] = {{"40", false}, {"30", false}, {"15", false},      {"10", false},
                        {"9", false},  {"8.5", true}, {"8", true},        {"7", true},
                        {"7F", false}, {"6", true},   {"6F", false},      {"5", true},
                        {"5F", false}, {"4", true},   {"4F", false},      {"3.75", true},
                        {"3", true},   {"3F", false}, {"5/8 long", true}, {"10W", false}};
    for (const row& r : rows) {
        INFO(r.id);
        CHECK(skips(blade_of(r.id)) == r.skip);
    }
}

TEST_CASE("the words for teeth and shapes are the files' words", "[blade]") {
    CHECK(name(teeth::full) == "full");
    CHECK(name(teeth::skip) == "skip");
    CHECK(name(teeth::unknown) == "unknown");
    CHECK(name(edge::standard) == "standard");
    CHECK(name(edge::wide) == "wide");
    CHECK(name(edge::toe) == "toe");
    CHECK(name(edge::adjustable) == "adjustable");
}

TEST_CASE("barber guard n is n eighths of an inch", "[blade]") {
    // common practice, no source
    CHECK_THAT(in_mm(barber_guard(1)), match::WithinAbs(3.2, 0.05));
    CHECK_THAT(in_mm(barber_guard(2)), match::WithinAbs(6.4, 0.06));
    CHECK_THAT(in_mm(barber_guard(4)), match::WithinAbs(12.7, 1e-12));
    CHECK_THAT(in_mm(barber_guard(8)), match::WithinAbs(25.4, 1e-12));
}

TEST_CASE("a setup is called by what is held and how it is moved", "[blade]") {
    const setup seven = bare(blade_of("7F"), direction::with_lay);
    CHECK(held(seven) == "blade 7F");
    CHECK(title(seven) == "blade 7F, with the lay");
    CHECK(title(bare(blade_of("10"), direction::against_lay)) == "blade 10, against the lay");
    const setup thirteen = combed(comb_of("13 mm"), blade_of("30"), direction::with_lay);
    CHECK(held(thirteen) == "comb 13 mm over blade 30");
    CHECK(title(thirteen) == "comb 13 mm over blade 30, with the lay");
    std::set<std::string> hands;
    for (const tool_kind k : {tool_kind::scissors, tool_kind::thinners, tool_kind::carder,
                              tool_kind::fingers, tool_kind::none}) {
        const setup s = by_hand(k);
        CHECK(s.kind == k);
        CHECK(title(s) == held(s));  // nobody moves scissors with the lay
        CHECK(hands.insert(title(s)).second);
    }
    CHECK(held(by_hand(tool_kind::none)) == "leave");
}

TEST_CASE("the words for directions and finishes", "[blade]") {
    CHECK(name(direction::with_lay) == "with the lay");
    CHECK(name(direction::against_lay) == "against the lay");
    CHECK(name(finish::clip) == "clip");
    CHECK(name(finish::comb_then_scissor) == "comb-then-scissor");
    CHECK(name(finish::hand_strip) == "hand-strip");
    CHECK(name(finish::leave) == "leave");
}

TEST_CASE("two finished lengths are the same when all three ends are", "[blade]") {
    const finished f{mm(1), mm(2), mm(3)};
    CHECK(f == finished{mm(1), mm(2), mm(3)});
    CHECK_FALSE(f == finished{mm(0.9), mm(2), mm(3)});
    CHECK_FALSE(f == finished{mm(1), mm(2.1), mm(3)});
    CHECK_FALSE(f == finished{mm(1), mm(2), mm(3.1)});
}

TEST_CASE("a blade lies in the drawer or it doesn't", "[blade]") {
    const kit k = drawer({"30", "10", "7F"});
    REQUIRE(find_blade(k, "7F") != nullptr);
    CHECK(find_blade(k, "7F")->spec.id == "7F");
    CHECK(find_blade(k, "7") == nullptr);
    CHECK(find_blade(k, "") == nullptr);
    CHECK(find_blade(kit{}, "10") == nullptr);
}

TEST_CASE("a blade out for sharpening is back the day after the last day it is out", "[blade]") {
    const auto on = [](const char* d) { return parse_date(d); };
    kit_blade b;
    b.spec = blade_of("4F");
    CHECK(at_hand(b, on("2026-11-25")));
    CHECK(at_hand(b, {}));
    b.out = true;
    CHECK_FALSE(at_hand(b, on("2026-11-25")));
    CHECK_FALSE(at_hand(b, {}));
    b.out = false;
    b.out_until = on("2026-12-01");
    CHECK_FALSE(at_hand(b, on("2026-11-30")));
    CHECK_FALSE(at_hand(b, on("2026-12-01")));
    CHECK(at_hand(b, on("2026-12-02")));
    CHECK_FALSE(at_hand(b, {}));  // nobody says what day it is: not to be counted on
    b.out = true;                 // out, and a date says until when
    CHECK(at_hand(b, on("2026-12-02")));
    b.count = 0;
    CHECK_FALSE(at_hand(b, on("2026-12-02")));
}
