// The front door: what a salon is asked and what it answers.
#include <cstdio>
#include <string>

#include <pelage/pelage.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const auto today = parse_date("2026-11-25");

errc code_of_plan(const salon& s, const plan_options& o) {
    try {
        (void)s.plan(s.dog("biscuit"), o);
    } catch (const error& e) {
        return e.code();
    }
    return errc::internal;
}

/// What the command prints.
std::string printed(const std::string& arguments) {
    std::string out;
    std::FILE* pipe = popen((std::string(pelage_COMMAND) + " " + arguments).c_str(), "r");
    char part[4096];
    for (std::size_t n = 0; (n = std::fread(part, 1, sizeof part, pipe)) > 0;) {
        out.append(part, n);
    }
    pclose(pipe);
    return out;
}

}  // namespace

TEST_CASE("the front door says what the command says") {
    const auto s = salon::embedded();
    const auto p = s.plan(s.dog("biscuit"), {.today = today});
    CHECK(text(p) == printed("plan biscuit --today 2026-11-25"));
    CHECK(text(p, length_unit::inch) == printed("plan biscuit --today 2026-11-25 --units in"));
    CHECK(json(p) == printed("plan biscuit --today 2026-11-25 --format json"));
    CHECK(html(p) == printed("plan biscuit --today 2026-11-25 --for owner --format html"));
    CHECK(text(s.lookup("7F", coat_class::wavy)) == printed("lookup 7F --coat wavy"));
    CHECK(csv(s.ladder(coat_class::curly)) == printed("lookup --all --coat curly --format csv"));
    CHECK(ics(s.calendar(s.dog("biscuit"), *today)) ==
          printed("regrow biscuit --today 2026-11-25 --weeks 26 --format ics"));
}

TEST_CASE("a dog, a sheet or a tool that isn't there is told with a near miss") {
    const auto s = salon::embedded();
    CHECK_THROWS_WITH(s.dog("biscit"), match::ContainsSubstring("did you mean \"biscuit\"?"));
    CHECK_THROWS_WITH(s.plan(s.dog("biscuit"), {.sheet = "lam"}),
                      match::ContainsSubstring("did you mean \"lamb\"?"));
    CHECK_THROWS_AS(s.lookup("7Q"), error);
    CHECK_THROWS_AS(salon::open("/nowhere"), error);
    CHECK_THROWS_AS(s.read_dog("id = 7"), bad_input);
}

TEST_CASE("options that can't hold are refused") {
    const auto s = salon::embedded();
    CHECK(code_of_plan(s, {.chance = 1.0}) == errc::range);
    CHECK(code_of_plan(s, {.sheet = "one-length", .body_length = mm(0.0)}) == errc::range);
    CHECK(code_of_plan(s, {.sheet = "lamb", .body_length = mm(9.0)}) == errc::conflict);
    CHECK_THROWS_AS(s.calendar(s.dog("biscuit"), *today, 3), error);
}

TEST_CASE("without a day nothing is dated") {
    const auto s = salon::embedded();
    const auto p = s.plan(s.dog("biscuit"));
    CHECK_FALSE(p.return_date().on());
    CHECK(p.return_date().in() > day(0.0));
    CHECK(s.return_date(s.dog("biscuit"), {.today = today}).on() > *today);
}

TEST_CASE("a dog felted to the skin goes to a veterinarian and has no return date") {
    const auto s = salon::embedded();
    const auto p =
        s.plan(s.read_dog("format = 1\nid = \"x\"\nname = \"X\"\nsize = \"small\"\n"
                          "coat = \"curly\"\nstyle = \"lamb\"\nbrushing = \"none\"\n"
                          "signs = [\"collapse\"]\n"));
    CHECK(p.needs_veterinarian());
    CHECK(p.steps().empty());
    CHECK_THROWS_AS(p.return_date(), error);
}

TEST_CASE("a step is values") {
    const auto s = salon::embedded();
    work sum{};
    for (const auto& one : s.plan(s.dog("biscuit")).steps()) {
        sum += one.takes;
        CHECK_FALSE(one.places.empty());
        if (one.tool.kind == tool_kind::clip && one.done == finish::clip) {
            CHECK(one.places.front().leaves_length->best > mm(0.0));
            CHECK_FALSE(one.tool.blade.empty());
        }
    }
    CHECK(sum > minutes(0.0));
    CHECK(sum <= s.plan(s.dog("biscuit")).takes());
}
