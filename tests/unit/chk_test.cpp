// The reader of check vectors takes nothing on trust: what it must refuse, line by line.
#include "vectors/chk.hpp"

#include <limits>
#include <sstream>
#include <string>

#include "catch.hpp"
#include "vectors/value.hpp"

namespace {

const std::string good =
    "format 1\n"
    "source S1 worked by hand [derived]\n"
    "quantity finished-length  # of a blade\n"
    "tolerance 0.05 mm\n"
    "case a1 S1\n"
    "given blade=7F lay=30deg\n"
    "expect best=6.4mm low=3mm..3.2mm\n"
    "tolerance exact\n"
    "case a2 S1\n"
    "given blade=7F lay=0deg\n"
    "raises range\n";

chk::vectors read(const std::string& text) {
    std::istringstream in(text);
    return chk::read(in);
}

std::string swapped(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

/// The one fault of a text, as "line: text".
std::string only_fault(const std::string& text) {
    const chk::vectors v = read(text);
    REQUIRE(v.faults.size() == 1);
    return std::to_string(v.faults[0].line) + ": " + v.faults[0].text;
}

}  // namespace

TEST_CASE("a good file is read as written", "[chk]") {
    const chk::vectors v = read(good);
    CHECK(v.faults.empty());
    REQUIRE(v.cases.size() == 2);
    CHECK(v.cases[0].id == "a1");
    CHECK(v.cases[0].line == 5);
    CHECK(v.cases[0].how == chk::tag::derived);
    CHECK(v.cases[0].quantity == "finished-length");
    CHECK(v.cases[0].within.most == 0.05);
    CHECK(v.cases[0].within.unit == "mm");
    REQUIRE(v.cases[0].expect.size() == 2);
    CHECK(v.cases[0].expect[1].key == "low");
    CHECK(v.cases[0].expect[1].text == "3mm..3.2mm");
    CHECK(v.cases[1].within.exact());
    CHECK(v.cases[1].raises == "range");
}

TEST_CASE("every tag is known, and no other", "[chk]") {
    for (const auto tag : chk::tag_names) {
        CHECK(read(swapped(good, "derived", std::string(tag))).faults.empty());
    }
    CHECK_THAT(only_fault(swapped(good, "derived", "unsourced")),
               match::StartsWith("2: source S1 has no tag; found '[unsourced]'"));
}

TEST_CASE("a broken file is refused with its line", "[chk]") {
    const auto [from, to, fault] = GENERATE(table<std::string, std::string, std::string>({
        {"format 1", "format 2", "1: the first line must be: format 1"},
        {"worked by hand [derived]", "worked by hand", "2: source S1 has no tag; found 'hand'"},
        {"source S1", "source S1 twice [derived]\nsource S1", "3: source S1 declared twice"},
        {"source S1", "source S2 idle [derived]\nsource S1", "2: source S2 is cited by no case"},
        {"case a1 S1", "case a1 S9", "5: case a1 cites undeclared source 'S9'"},
        {"case a2", "case a1", "9: case id 'a1' used twice"},
        {"tolerance 0.05 mm\n", "", "4: case a1 before any tolerance"},
        {"tolerance exact", "quantity other", "9: case a2 before any tolerance"},
        {"quantity finished-length", "", "5: case a1 before any quantity"},
        {"0.05 mm", "0.05", "4: expected: tolerance exact"},
        {"0.05 mm", "0 mm", "4: expected: tolerance exact"},
        {"0.05 mm", "nan mm", "4: expected: tolerance exact"},
        {"0.05 mm", "-1 mm", "4: expected: tolerance exact"},
        {"lay=30deg", "blade=10", "6: 'blade' given twice"},
        {"lay=30deg", "blade=10\n", "6: 'blade' given twice"},
        {"lay=30deg", "lay", "6: expected key=value; found 'lay'"},
        {"lay=30deg", "lay=", "6: expected key=value; found 'lay='"},
        {"low=3mm..3.2mm", "best=6mm", "7: 'best' given twice"},
        {"raises range", "raises range unit", "11: expected once: raises <error>"},
        {"raises range", "expects range", "11: unknown word 'expects'"},
        {"raises range", "", "9: case a2 needs exactly one of expect and raises"},
        {"raises range", "raises range\nexpect best=1mm",
         "9: case a2 needs exactly one of expect and raises"},
        {"case a1 S1", "case a1", "5: expected: case <id> <source>"},
    }));
    INFO(from << " -> " << to);
    const chk::vectors v = read(swapped(good, from, to));
    REQUIRE_FALSE(v.faults.empty());
    bool told = false;
    for (const chk::fault& f : v.faults) {
        const std::string line = std::to_string(f.line) + ": " + f.text;
        told = told || line.compare(0, fault.size(), fault) == 0;
    }
    INFO(v.faults.front().line << ": " << v.faults.front().text);
    CHECK(told);
}

TEST_CASE("a part of a case outside any case is refused", "[chk]") {
    CHECK_FALSE(read("format 1\ngiven a=1\n").faults.empty());
    CHECK_FALSE(read("format 1\n").faults.empty());
    CHECK_FALSE(read("").faults.empty());
}

TEST_CASE("values agree within the tolerance and no farther", "[chk]") {
    const chk::tolerance exact{};
    const chk::tolerance tenth{0.1, "mm"};
    const chk::tolerance share{0.1, "rel"};
    const auto holds = [](const std::string& want, const chk::answer& got,
                          const chk::tolerance& within) {
        return !chk::complaint(chk::parse_wish(want), got, within).has_value();
    };
    const auto in_mm = [](double v) { return chk::answer{chk::measure{v, "mm"}}; };
    CHECK(holds("5mm", in_mm(5.0), exact));
    CHECK_FALSE(holds("5mm", in_mm(std::nextafter(5.0, 6.0)), exact));
    CHECK(holds("5mm", in_mm(5.09), tenth));
    CHECK_FALSE(holds("5mm", in_mm(5.11), tenth));
    CHECK(holds("5mm", in_mm(5.4), share));
    CHECK_FALSE(holds("5mm", in_mm(4.4), share));
    CHECK(holds("5mm..6mm", in_mm(6.0), exact));
    CHECK_FALSE(holds("5mm..6mm", in_mm(6.01), exact));
    CHECK(holds("never", std::string("never"), exact));
    CHECK_FALSE(holds("never", in_mm(5.0), exact));
    CHECK_FALSE(holds("5mm", std::string("never"), exact));
}

TEST_CASE("what is not a number agrees with nothing", "[chk]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(chk::complaint(chk::parse_wish("5mm"), chk::measure{nan, "mm"}, {1.0, "mm"}));
    CHECK(chk::complaint(chk::parse_wish("0mm..9mm"), chk::measure{nan, "mm"}, {}));
}

TEST_CASE("units must go together", "[chk]") {
    const chk::answer days = chk::measure{5.0, "d"};
    CHECK_THROWS_AS(chk::complaint(chk::parse_wish("5mm"), days, {}), chk::bad_case);
    CHECK_THROWS_AS(chk::complaint(chk::parse_wish("5d"), days, {0.1, "mm"}), chk::bad_case);
    CHECK_THROWS_AS(chk::parse_wish("5furlong"), chk::bad_case);
    CHECK_THROWS_AS(chk::parse_wish("6mm..5mm"), chk::bad_case);
    CHECK_THROWS_AS(chk::parse_wish("5mm..6d"), chk::bad_case);
}

TEST_CASE("what fulfils a wish fulfils none of its nudges", "[chk]") {
    const std::string want = GENERATE("5mm", "0mm", "5mm..6mm", "never");
    const chk::tolerance within = GENERATE(chk::tolerance{}, chk::tolerance{0.1, "mm"});
    const chk::wish w = chk::parse_wish(want);
    for (const double v : {0.0, 5.0, 5.05, 5.5, 6.0, 6.1}) {
        const chk::answer got = w.word ? chk::answer{*w.word} : chk::answer{chk::measure{v, "mm"}};
        if (chk::complaint(w, got, within)) {
            continue;
        }
        for (const chk::wish& moved : chk::nudged(w, within)) {
            INFO(want << " moved to " << chk::show(moved) << ", got " << chk::show(got));
            CHECK(chk::complaint(moved, got, within).has_value());
        }
    }
}
