// A kit checked, and the ladder of what it leaves.
#include <algorithm>
#include <string>

#include <pelage/drawer.hpp>
#include <pelage/lookup.hpp>
#include <pelage/text.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

drawer_check checked(const kit& k, const std::vector<style>& sheets = io::demo_salon().styles,
                     std::optional<date> today = {}) {
    return check_drawer({io::reference(), io::reference().rules, k, sheets, today});
}

bool says(const drawer_check& c, drawer_matter m, const std::string& part) {
    return std::any_of(c.remarks.begin(), c.remarks.end(), [&](const drawer_remark& r) {
        return r.what == m && r.text.find(part) != std::string::npos;
    });
}

bool speaks_of(const drawer_check& c, drawer_matter m) {
    return says(c, m, "");
}

std::vector<style> one_sheet(const length& l) {
    style s = sheet_of(clip_to(l));
    s.coats = {coat_class::curly};
    return {s};
}

ladder ladder_of(const kit& k, coat_class c) {
    const lookup_request r{
        io::reference(), io::reference().rules, k, "", asked_kind::any, false, c, {}, {}, {}};
    return whole_ladder(r);
}

}  // namespace

TEST_CASE("a kit that cuts its sheets has nothing amiss", "[drawer]") {
    const drawer_check c = checked(drawer({"10", "3F"}), one_sheet(mm(13)));
    CHECK_FALSE(c.amiss());
    CHECK(c.met == c.targets);
}

TEST_CASE("a comb on a skip-tooth blade is unsafe", "[drawer]") {
    kit k = drawer({"30", "10", "7"}, {"13 mm"});
    k.combs.front().fits = {"7"};
    CHECK(says(checked(k), drawer_matter::unsafe, "comb 13 mm over blade 7"));
    k.combs.front().fits = {"10", "30"};
    CHECK_FALSE(speaks_of(checked(k), drawer_matter::unsafe));
}

TEST_CASE("one label on two combs means two lengths", "[drawer]") {
    kit k = drawer({"30", "10"}, {"10 mm", "6 mm"});
    k.combs[0].labels = {{"long set", "2"}};
    CHECK_FALSE(speaks_of(checked(k), drawer_matter::two_lengths));
    k.combs[1].labels = {{"round set", "2"}};
    CHECK(says(checked(k), drawer_matter::two_lengths, "10 mm in long set and 6 mm in round set"));
}

TEST_CASE("a toe blade and a long one of the same fraction are kept apart", "[drawer]") {
    CHECK(says(checked(drawer({"5/8 toe", "5/8 long"})), drawer_matter::two_lengths, "\"5/8\""));
    CHECK_FALSE(speaks_of(checked(drawer({"7", "7F"})), drawer_matter::two_lengths));
    CHECK(says(checked(drawer({"7", "7F"})), drawer_matter::remark, "7 and 7F"));
}

TEST_CASE("a gap names the sheet, the zones and the nearest setup", "[drawer]") {
    const drawer_check c = checked(drawer({"10", "4F"}), one_sheet(mm(13)));
    CHECK(c.amiss());
    CHECK(says(c, drawer_matter::gap, "13 mm: test ("));
    CHECK(c.met < c.targets);
}

TEST_CASE("what no sheet needs is idle", "[drawer]") {
    const drawer_check c = checked(drawer({"10", "3F", "5F"}), one_sheet(mm(13)));
    CHECK(says(c, drawer_matter::idle, "blade 5F (6.3 mm)"));
    CHECK_FALSE(says(c, drawer_matter::idle, "blade 3F"));
    CHECK_FALSE(says(c, drawer_matter::idle, "blade 10"));
}

TEST_CASE("what is out says until when and what takes its place", "[drawer]") {
    kit k = drawer({"30", "10", "4F"}, {"10 mm"});
    k.blades[2].out_until = parse_date("2026-12-01");
    const drawer_check c = checked(k, one_sheet(mm(9.5)), parse_date("2026-11-25"));
    CHECK(says(c, drawer_matter::out, "until 2026-12-01; in its place comb 10 mm over blade 30"));
    CHECK_FALSE(
        speaks_of(checked(k, one_sheet(mm(9.5)), parse_date("2026-12-02")), drawer_matter::out));
}

TEST_CASE("where the blade under the combs is out, another is named or none", "[drawer]") {
    kit k = drawer({"30", "10"}, {"10 mm"});
    k.blades[0].out = true;
    CHECK(
        says(checked(k), drawer_matter::out, "under_comb = \"10\" would do, with every comb 1 mm"));
    k.blades.erase(k.blades.begin() + 1);
    CHECK(says(checked(k), drawer_matter::out, "no comb can be used until then"));
}

TEST_CASE("blades that clip a coat want a second to swap in", "[drawer]") {
    kit k = drawer({"10", "3F"});
    CHECK(says(checked(k, one_sheet(mm(13))), drawer_matter::remark,
               "while the first cools: blade 3F"));
    k.blades[1].count = 2;
    CHECK_FALSE(
        says(checked(k, one_sheet(mm(13))), drawer_matter::remark, "while the first cools"));
}

TEST_CASE("a length from memory wants a patch, a measured one doesn't", "[drawer]") {
    kit k = drawer({"10", "6F"});
    CHECK(says(checked(k), drawer_matter::no_basis, "blade 6F"));
    k.blades[1].measured = mm(4.9);
    CHECK_FALSE(speaks_of(checked(k), drawer_matter::no_basis));
}

TEST_CASE("remarks come gravest first", "[drawer]") {
    kit k = drawer({"30", "10", "7", "7F", "6F"}, {"13 mm"});
    k.combs.front().fits = {"7"};
    const drawer_check c = checked(k);
    CHECK(std::is_sorted(c.remarks.begin(), c.remarks.end(),
                         [](const auto& a, const auto& b) { return a.what < b.what; }));
}

TEST_CASE("a ladder rises, and has every blade and comb in both directions", "[ladder]") {
    const kit& k = io::demo_salon().tools;
    for (const coat& c : io::reference().coats) {
        const ladder l = ladder_of(k, c.id);
        CHECK(l.rungs.size() == 2 * (k.blades.size() + k.combs.size()));
        CHECK(std::is_sorted(l.rungs.begin(), l.rungs.end(), [](const rung& a, const rung& b) {
            return in_hundredths(a.leaves.best) < in_hundredths(b.leaves.best);
        }));
        for (const rung& g : l.rungs) {
            CHECK(g.leaves.low <= g.leaves.best);
            CHECK(g.leaves.best <= g.leaves.high);
        }
        CHECK(l.one_way == (c.id == coat_class::curly));
    }
}

TEST_CASE("a ladder says where skip teeth and short blades may go", "[ladder]") {
    const ladder l = ladder_of(drawer({"40", "10", "7", "7F"}), coat_class::curly);
    const auto places = [&](const std::string& id, direction d) {
        const auto g = std::find_if(l.rungs.begin(), l.rungs.end(), [&](const rung& one) {
            return one.how.tool.id == id && one.how.way == d;
        });
        REQUIRE(g != l.rungs.end());
        return g->whole_coat ? std::string("all") : l.places[*g->where];
    };
    CHECK(places("7F", direction::with_lay) == "all");
    CHECK(places("10", direction::with_lay) == "all");
    CHECK(places("10", direction::against_lay).find("ears") != std::string::npos);
    CHECK(places("7", direction::with_lay).find("firm, flat skin") == 0);
    CHECK(places("7", direction::with_lay).find("groin") == std::string::npos);
    CHECK(places("40", direction::with_lay).find("pads") == 0);
}

TEST_CASE("a surgical blade goes nowhere", "[ladder]") {
    const ladder l = ladder_of(drawer({"50"}), coat_class::curly);
    REQUIRE_FALSE(l.places.empty());
    CHECK(l.places.front().find("nowhere: a 50 is a surgical blade") == 0);
}
