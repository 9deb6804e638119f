// Style sheets that stand on one another: what a child takes over, what it changes, and what is told
// when the line is broken.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <random>

#include <pelage/answers/sheets.hpp>
#include <pelage/data/read.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/planner/plan.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::at;

namespace {

namespace fs = std::filesystem;

using io::document_text;

const reference_data& ref() {
    return io::reference();
}

/// What a sheet asks of the place called `word`.
instruction asked(const style& s, const std::string& word) {
    const part_index parts(ref().dog_body);
    return resolved_style(ref().dog_body, parts, s).at(at(word));
}

const style& sheet(const salon_files& s, std::string_view id) {
    const style* found = find(s.styles, id);
    REQUIRE(found != nullptr);
    return *found;
}

const std::string a_salon = "format = 1\ntitle = \"Corner\"\n[kit]\n[[kit.blade]]\nid = \"30\"\n";

document_text written(const std::string& id, const std::string& more) {
    return {id + ".toml", "format = 1\nid = \"" + id + "\"\ntitle = \"" + id + "\"\n" + more};
}

/// The salon in a folder of its own, read as people's files are.
salon_files corner(const std::vector<document_text>& sheets) {
    std::random_device any;
    const fs::path dir = fs::temp_directory_path() /
                         ("pelage-style-" + std::to_string(any()) + std::to_string(any()));
    fs::create_directories(dir / "styles");
    std::ofstream(dir / "salon.toml") << a_salon;
    for (const document_text& d : sheets) {
        std::ofstream(dir / "styles" / d.name) << d.text;
    }
    struct gone {
        fs::path what;
        ~gone() {
            std::error_code ignored;
            fs::remove_all(what, ignored);
        }
    } after{dir};
    return io::read_salon_folder(dir.string(), ref());
}

/// The faults of such a salon, each "a.toml:4:11: text".
std::vector<std::string> told(const std::vector<document_text>& sheets) {
    try {
        (void)corner(sheets);
    } catch (const bad_input& wrong) {
        std::vector<std::string> out;
        for (const diagnostic& d : wrong.all()) {
            out.push_back(fs::path(d.file).filename().string() + ":" + std::to_string(d.line) +
                          ":" + std::to_string(d.column) + ": " + d.text);
        }
        return out;
    }
    return {};
}

const std::string body_and_ears =
    "coats = [\"wavy\"]\nfeet = \"round\"\nupkeep = \"weekly to the skin\"\n"
    "front_desk = \"Ours.\"\napproved_by = \"the owner\"\n[zones]\n"
    "all = { length = \"20 mm\", direction = \"with\", finish = \"clip\" }\n"
    "ear = { length = \"25 mm\", tolerance = \"3 mm\", why = \"the owner likes long ears\" }\n";

}  // namespace

TEST_CASE("a sheet takes over what its parent says and changes what it says itself", "[style]") {
    const salon_files s = corner({written("long",
                                          "extends = \"house\"\n[zones]\nlegs = { length = "
                                          "\"30 mm\", finish = \"comb-then-scissor\" }\n"),
                                  written("house", body_and_ears)});
    const style& c = sheet(s, "long");
    CHECK(c.extends == "house");
    CHECK(c.line == std::vector<std::string>{"house"});
    CHECK(c.coats == std::vector{coat_class::wavy});
    CHECK(c.feet == "round");
    CHECK(c.upkeep == "weekly to the skin");
    CHECK(c.front_desk == "Ours.");
    CHECK(c.approved_by.empty());  // nobody approved the child
    CHECK(c.title == "long");
    CHECK(asked(c, "back").target == mm(20));
    CHECK(asked(c, "foreleg").target == mm(30));
    CHECK(asked(c, "foreleg").how == finish::comb_then_scissor);
    CHECK(asked(c, "foreleg").way == lay_choice::with_lay);  // the parent's
    CHECK(asked(c, "ear").target == mm(25));
    CHECK(asked(c, "ear").why == "the owner likes long ears");
}

TEST_CASE("the narrower line wins across parent and child, between equals the child's", "[style]") {
    const salon_files s = corner({written("house", body_and_ears),
                                  written("short",
                                          "extends = \"house\"\n[zones]\n"
                                          "all = { length = \"10 mm\" }\n"),
                                  written("ears",
                                          "extends = \"short\"\n[zones]\n"
                                          "ears = { length = \"12 mm\" }\n")});
    CHECK(asked(sheet(s, "short"), "back").target == mm(10));
    CHECK(asked(sheet(s, "short"), "ear").target == mm(25));
    CHECK(asked(sheet(s, "ears"), "ear").target == mm(12));
    CHECK(asked(sheet(s, "ears"), "back").target == mm(10));
    CHECK(sheet(s, "ears").line == std::vector<std::string>{"short", "house"});
}

TEST_CASE("everything a share shorter: the parent's lengths and their tolerances", "[style]") {
    const std::string scale = GENERATE("0.8", "\"20 % shorter\"", "\"20% shorter\"");
    INFO(scale);
    const salon_files s =
        corner({written("house", body_and_ears),
                written("short", "extends = \"house\"\nscale = " + scale +
                                     "\n[zones]\ntail = { length = \"20 mm\" }\n"),
                written("shorter", "extends = \"short\"\nscale = 0.5\n")});
    CHECK(asked(sheet(s, "short"), "back").target == mm(16));
    CHECK(asked(sheet(s, "short"), "ear").target == mm(20));
    CHECK(asked(sheet(s, "short"), "ear").tolerance == rounded(mm(2.4)));
    CHECK(asked(sheet(s, "short"), "tail").target == mm(20));  // as written
    CHECK(asked(sheet(s, "shorter"), "back").target == mm(8));
    CHECK(asked(sheet(s, "shorter"), "tail").target == mm(10));
    CHECK(asked(sheet(s, "house"), "back").target == mm(20));
}

TEST_CASE("a sheet of the reference can be extended, by one of its own name too", "[style]") {
    const salon_files s = corner({written("low-upkeep", "extends = \"low-upkeep\"\nscale = 0.9\n"),
                                  written("mine", "extends = \"lagotto\"\n")});
    CHECK(asked(sheet(s, "low-upkeep"), "back").target == rounded(mm(9.5 * 0.9)));
    CHECK(asked(sheet(s, "mine"), "back").target == mm(25));
    REQUIRE_FALSE(sheet(s, "mine").limits.empty());
    CHECK(sheet(s, "mine").limits.front().from == "lagotto");
    CHECK(sheet(s, "mine").limits.front().why.how == basis::published);
    CHECK(sheet(s, "mine").why.how == basis::assumption);
}

TEST_CASE("sheets that extend one another in a circle are refused, the circle named", "[style]") {
    const auto wrong = told({written("a", "extends = \"b\"\n"), written("b", "extends = \"c\"\n"),
                             written("c", "extends = \"a\"\n")});
    REQUIRE(wrong.size() == 1);
    CHECK(wrong.front() ==
          "c.toml:4:11: sheets that extend one another in a circle; found a -> b "
          "-> c -> a; take \"extends\" out of one of them");
}

TEST_CASE("an unknown parent is told where it is named, with what was meant", "[style]") {
    const auto wrong = told({written("a", "extends = \"lagoto\"\n"),
                             written("b", "extends = \"b\"\n"), written("c", "extends = 3\n"),
                             written("d", "extends = \"a\"\n[zones]\nbak = { blade = \"10\" }\n")});
    REQUIRE(wrong.size() == 4);
    CHECK(wrong[0] ==
          "a.toml:4:11: no style sheet is called so; found \"lagoto\"; did you mean "
          "\"lagotto\"?");
    CHECK(wrong[1].starts_with("b.toml:4:11: a sheet that extends itself"));
    CHECK(wrong[2].starts_with("c.toml:4:11: \"extends\" must be text; found 3"));
    // the child's own faults are told in its own file, the parent's not again
    CHECK(wrong[3] ==
          "d.toml:6:1: the dog has no such place; found \"bak\"; did you mean \"back\"?");
}

TEST_CASE("a folder of sheets, one of which extends another", "[style]") {
    const auto all = io::read_sheet_folder(pelage_SOURCE_DIR "/reference/demo/styles", ref());
    CHECK(all.size() == 8);
    const style* child = find(all, "westiepoo-round");
    REQUIRE(child != nullptr);
    CHECK(child->line == std::vector<std::string>{"schnoodle-beard", "low-upkeep"});
    CHECK_THROWS_AS(io::read_sheet_folder(pelage_SOURCE_DIR "/tests/bad", ref()), bad_input);
    CHECK_THROWS_AS(io::read_sheet_folder(pelage_SOURCE_DIR "/tests/cli", ref()), error);
    CHECK_THROWS_AS(io::read_sheet_folder(pelage_SOURCE_DIR "/no/such", ref()), error);
}

TEST_CASE("a line of sheets may be sixteen long", "[style]") {
    std::vector<document_text> line{written("s0", body_and_ears)};
    for (int i = 1; i <= 20; ++i) {
        line.push_back(
            written("s" + std::to_string(i), "extends = \"s" + std::to_string(i - 1) + "\"\n"));
    }
    const auto forwards = told(line);
    REQUIRE_FALSE(forwards.empty());
    CHECK(forwards.front().find("too long a line of sheets") != std::string::npos);
    std::reverse(line.begin(), line.end());
    CHECK_FALSE(told(line).empty());
    line.erase(line.begin(), line.begin() + 4);
    CHECK(told(line).empty());
}

TEST_CASE("a parent's limit holds for its children, unless they drop it", "[style]") {
    const auto wrong =
        told({written("a", "extends = \"lagotto\"\n[zones]\nback = { length = \"45 mm\" }\n"),
              written("b", "extends = \"lagotto\"\nscale = 1.4\n"),
              written("c",
                      "extends = \"lagotto\"\n[[limit]]\nzones = [\"back\"]\nhigh = \"20 "
                      "mm\"\n"),
              written("d", "extends = \"lagotto\"\ndrop_limits = true\nscale = 1.4\n"),
              written("e", "drop_limits = true\n[zones]\nall = { length = \"9 mm\" }\n")});
    REQUIRE(wrong.size() == 4);
    CHECK(wrong[0] ==
          "a.toml:6:8: \"back\" breaks the limit of \"lagotto\"; found 45 mm; right is "
          "at most 38.1 mm");
    CHECK(
        wrong[1].starts_with("b.toml:5:9: \"forelegs\" breaks the limit of \"lagotto\"; found "
                             "44.8 mm from \"lagotto\""));
    CHECK(wrong[2] ==
          "c.toml:5:1: \"back\" breaks the sheet's own limit; found 25 mm from "
          "\"lagotto\"; right is at most 20 mm");
    CHECK(wrong[3].starts_with("e.toml:4:15: only a parent's limits can be dropped"));
}

TEST_CASE("a tolerance beside a length goes with that length", "[style]") {
    const salon_files s =
        corner({written("a",
                        "[zones]\nall = { length = \"20 mm\", tolerance = \"5 mm\" }\n"
                        "legs = { length = \"30 mm\" }\ntail = { note = \"a plume\" }\n"
                        "head = { tolerance = \"1 mm\" }\nmuzzle = { length = \"12 mm\" }\n")});
    const style& a = sheet(s, "a");
    CHECK(asked(a, "back").tolerance == mm(5));
    CHECK(asked(a, "tail").tolerance == mm(5));
    CHECK_FALSE(asked(a, "foreleg").tolerance);
    CHECK(asked(a, "skull").tolerance == mm(1));
    CHECK(asked(a, "muzzle").tolerance == mm(1));  // given for the head, not beside a length
}

TEST_CASE("the whole tail is the tail and its base", "[style][select]") {
    const auto whole = select(ref().dog_body, "whole tail");
    REQUIRE(whole);
    CHECK(whole->how == reach::group);
    CHECK(whole->places == std::vector<place>{at("tail-base"), at("tail")});
    CHECK(select(ref().dog_body, "tail")->places == std::vector<place>{at("tail")});
}

TEST_CASE("a season is chosen by the day or by its name", "[style]") {
    const salon_files s = corner(
        {written("a",
                 "longest_interval = \"56 days\"\n[zones]\nall = { length = \"20 mm\" }\n"
                 "ear = { length = \"25 mm\" }\n[season.summer]\nmonths = [\"June\", \"July\"]\n"
                 "scale = \"20 % shorter\"\nlongest_interval = \"42 days\"\n[season.summer.zones]\n"
                 "ear = { length = \"13 mm\" }\n[season.winter]\nfrom = \"15 December\"\n"
                 "to = \"28 February\"\nscale = 1.2\n[season.show]\nscale = 1.5\n")});
    const style& a = sheet(s, "a");
    REQUIRE(a.seasons.size() == 3);
    const auto on = [&](const char* day) { return on_day(a, parse_date(day)); };
    CHECK(on("2026-05-31").in_season.empty());
    CHECK(on("2026-06-01").in_season == "summer");
    CHECK(on("2026-07-31").in_season == "summer");
    CHECK(on("2026-08-01").in_season.empty());
    CHECK(on("2026-12-15").in_season == "winter");
    CHECK(on("2027-01-01").in_season == "winter");
    CHECK(on("2027-02-28").in_season == "winter");
    CHECK(on("2027-03-01").in_season.empty());
    CHECK(on_day(a, std::nullopt).in_season.empty());
    CHECK(asked(on("2026-06-01"), "back").target == mm(16));
    CHECK(asked(on("2026-06-01"), "ear").target == mm(13));
    CHECK(on("2026-06-01").longest_interval == day(42));
    CHECK(asked(on("2027-01-01"), "ear").target == mm(30));
    CHECK(asked(in_season(a, *season_called(a, "show")), "back").target == mm(30));
    CHECK(asked(a, "back").target == mm(20));
}

TEST_CASE("a child's scale goes over its parent's seasons, its own season replaces one",
          "[style]") {
    const std::string seasons =
        "[zones]\nall = { length = \"20 mm\" }\n[season.summer]\nmonths = [\"June\"]\n"
        "[season.summer.zones]\nall = { length = \"10 mm\" }\n";
    const salon_files s = corner(
        {written("a", seasons), written("b", "extends = \"a\"\nscale = 0.5\n"),
         written("c", "extends = \"a\"\n[season.summer]\nmonths = [\"July\"]\nscale = 0.9\n")});
    const auto june = parse_date("2026-06-15");
    CHECK(asked(on_day(sheet(s, "b"), june), "back").target == mm(5));
    CHECK(on_day(sheet(s, "c"), june).in_season.empty());
    CHECK(asked(on_day(sheet(s, "c"), parse_date("2026-07-15")), "back").target == mm(18));
}

TEST_CASE("a line between two zones is not blended, whatever the body says", "[style]") {
    const std::string sized =
        "coats = [\"curly\"]\n[zones]\nall = { length = \"6 mm\", finish = \"clip\" }\n"
        "legs = { length = \"32 mm\", finish = \"scissor\" }\n";
    const salon_files s = corner(
        {written("blended", sized),
         written("lined", sized + "[[seam]]\na = \"body\"\nb = \"legs\"\nkind = \"line\"\n")});
    dog d;
    d.coat = coat_class::curly;
    const kit& tools = io::demo_salon().tools;
    const auto legs_blended = [&](const std::string& id) {
        const plan_request r{ref(), ref().rules, tools, d, sheet(s, id), std::nullopt};
        const groom g = make_plan(r);
        return std::count_if(g.blends.begin(), g.blends.end(), [&](const blend& b) {
            const auto where = [&](std::size_t i) {
                return ref().dog_body.zones[g.zones[i].at.zone].where;
            };
            return where(b.from) == group::legs && where(b.into) == group::body;
        });
    };
    CHECK(legs_blended("blended") > 0);
    CHECK(legs_blended("lined") == 0);
}

TEST_CASE("minutes by size are the salon's own", "[style]") {
    const salon_files s = corner({written(
        "a",
        "[zones]\nall = { length = \"20 mm\" }\n[minutes]\nsmall = \"60 min\"\nlarge = \"110 "
        "min\"\nbasis = \"measured\"\n")});
    const sheet_minutes& m = sheet(s, "a").takes;
    CHECK(m.by_size[1] == minutes(60));
    CHECK_FALSE(m.by_size[2]);
    CHECK(m.by_size[3] == minutes(110));
    CHECK(m.why.how == basis::measured);
}

TEST_CASE("a line of a sheet can have a basis of its own", "[style]") {
    const style* w = find(ref().styles, "west-highland");
    REQUIRE(w != nullptr);
    CHECK(w->why.how == basis::assumption);
    REQUIRE(asked(*w, "back").known);
    CHECK(asked(*w, "back").known->how == basis::published);
    CHECK_FALSE(asked(*w, "neck").known);  // our choice
}
