// A kit checked, and the ladder of what it leaves.
#include <algorithm>
#include <string>

#include <pelage/answers/kit.hpp>
#include <pelage/base/length_text.hpp>
#include <pelage/kit/check.hpp>
#include <pelage/kit/lookup.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

kit_check checked(const kit& k, const std::vector<style>& sheets = io::demo_salon().styles,
                  std::optional<date> today = {}) {
    return check_kit({io::reference(), io::reference().rules, k, sheets, today});
}

bool speaks_of(const kit_check& c, kit_matter m) {
    return std::any_of(c.remarks.begin(), c.remarks.end(),
                       [&](const kit_remark& r) { return r.what == m; });
}

/// The first finding of a kind, if there is one of that matter.
template <class Finding>
std::optional<Finding> found(const kit_check& c, kit_matter m) {
    for (const kit_remark& r : c.remarks) {
        if (const auto* f = std::get_if<Finding>(&r.found)) {
            CHECK(r.what == m);
            return *f;
        }
    }
    return std::nullopt;
}

bool idle(const kit_check& c, const kit_tool& tool) {
    const auto all = found<idle_tools>(c, kit_matter::idle).value_or(idle_tools{}).tools;
    return std::any_of(all.begin(), all.end(), [&](const auto& one) { return one.tool == tool; });
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
    const kit_check c = checked(drawer({"30", "10"}, {"13 mm"}), one_sheet(mm(13)));
    CHECK_FALSE(c.amiss());
    CHECK(c.met == c.targets);
}

TEST_CASE("a comb on a skip-tooth blade is unsafe", "[drawer]") {
    kit k = drawer({"30", "10", "7"}, {"13 mm"});
    k.combs.front().fits = {"7"};
    const auto unsafe = found<comb_on_wrong_blade>(checked(k), kit_matter::unsafe);
    REQUIRE(unsafe.has_value());
    CHECK(unsafe->comb == "13 mm");
    CHECK(unsafe->blade == "7");
    CHECK(unsafe->why == refusal::comb_on_wrong_blade);
    k.combs.front().fits = {"10", "30"};
    CHECK_FALSE(speaks_of(checked(k), kit_matter::unsafe));
}

TEST_CASE("one label on two combs means two lengths", "[drawer]") {
    kit k = drawer({"30", "10"}, {"10 mm", "6 mm"});
    k.combs[0].labels = {{"long set", "2"}};
    CHECK_FALSE(speaks_of(checked(k), kit_matter::two_lengths));
    k.combs[1].labels = {{"round set", "2"}};
    const auto two = found<label_on_combs>(checked(k), kit_matter::two_lengths);
    REQUIRE(two.has_value());
    CHECK(two->label == "2");
    REQUIRE(two->combs.size() == 2);
    CHECK(two->combs[0].comb == "10 mm");
    CHECK(two->combs[0].set == "long set");
    CHECK(two->combs[1].comb == "6 mm");
}

TEST_CASE("a toe blade and a long one of the same fraction are kept apart", "[drawer]") {
    const auto two =
        found<number_on_blades>(checked(drawer({"5/8 toe", "5/8 long"})), kit_matter::two_lengths);
    REQUIRE(two.has_value());
    CHECK(two->number == "5/8");
    CHECK(two->first.leaves == mm(0.8));
    CHECK(two->second.leaves == mm(16));
    CHECK_FALSE(speaks_of(checked(drawer({"7", "7F"})), kit_matter::two_lengths));
    const auto alike = found<look_alikes>(checked(drawer({"7", "7F"})), kit_matter::remark);
    REQUIRE(alike.has_value());
    CHECK(alike->pairs.front().skip == "7");
    CHECK(alike->pairs.front().full == "7F");
}

TEST_CASE("a gap names the sheet, the zones and the nearest setup", "[drawer]") {
    const kit_check c = checked(drawer({"30", "10", "4F"}, {"19 mm"}), one_sheet(mm(13)));
    CHECK(c.amiss());
    const auto gap = found<nothing_leaves>(c, kit_matter::gap);
    REQUIRE(gap.has_value());
    CHECK(gap->wanted == mm(13));
    CHECK_FALSE(gap->blade.has_value());
    CHECK(gap->sheets.front().coats == std::vector{coat_class::curly});
    REQUIRE(gap->best.has_value());
    CHECK(held(gap->best->how) == "comb 19 mm over blade 30");
    CHECK(gap->best->off == mm(6));
    CHECK(c.met < c.targets);
}

TEST_CASE("what no sheet needs is idle", "[drawer]") {
    const kit_check c = checked(drawer({"10", "3F", "5F"}), one_sheet(mm(13)));
    CHECK(idle(c, {false, "5F"}));
    CHECK_FALSE(idle(c, {false, "3F"}));
    CHECK_FALSE(idle(c, {false, "10"}));
}

TEST_CASE("what is out says until when and what takes its place", "[drawer]") {
    kit k = drawer({"30", "10", "4F"}, {"10 mm"});
    k.blades[2].out_until = parse_date("2026-12-01");
    const kit_check c = checked(k, one_sheet(mm(9.5)), parse_date("2026-11-25"));
    const auto out = found<blade_out>(c, kit_matter::out);
    REQUIRE(out.has_value());
    CHECK(out->blade == "4F");
    CHECK(out->until == parse_date("2026-12-01"));
    REQUIRE(out->instead.size() == 1);
    REQUIRE(out->instead.front().how.has_value());
    CHECK(held(*out->instead.front().how) == "comb 10 mm over blade 30");
    CHECK_FALSE(
        speaks_of(checked(k, one_sheet(mm(9.5)), parse_date("2026-12-02")), kit_matter::out));
}

TEST_CASE("where the blade under the combs is out, another is named or none", "[drawer]") {
    kit k = drawer({"30", "10"}, {"10 mm"});
    k.blades[0].out = true;
    const auto other = found<comb_blade_out>(checked(k), kit_matter::out);
    REQUIRE(other.has_value());
    REQUIRE(other->instead.has_value());
    CHECK(other->instead->blade == "10");
    CHECK(rounded(other->instead->change) == mm(1));
    CHECK_FALSE(other->instead->shorter);
    k.blades.erase(k.blades.begin() + 1);
    const auto none = found<comb_blade_out>(checked(k), kit_matter::out);
    REQUIRE(none.has_value());
    CHECK_FALSE(none->instead.has_value());
}

TEST_CASE("blades that clip a coat want a second to swap in", "[drawer]") {
    kit k = drawer({"10", "3F"});
    const auto single = found<single_blades>(checked(k, one_sheet(mm(13))), kit_matter::remark);
    REQUIRE(single.has_value());
    CHECK(single->blades == std::vector<std::string>{"3F"});
    k.blades[1].count = 2;
    CHECK_FALSE(found<single_blades>(checked(k, one_sheet(mm(13))), kit_matter::remark));
}

TEST_CASE("a length from memory wants a patch, a measured one doesn't", "[drawer]") {
    kit k = drawer({"10", "6F"});
    const auto guessed = found<guessed_lengths>(checked(k), kit_matter::no_basis);
    REQUIRE(guessed.has_value());
    CHECK(guessed->tools.front().tool == kit_tool{false, "6F"});
    CHECK(guessed->tools.front().how == basis::memory);
    k.blades[1].measured = mm(4.9);
    CHECK_FALSE(speaks_of(checked(k), kit_matter::no_basis));
}

TEST_CASE("remarks come gravest first", "[drawer]") {
    kit k = drawer({"30", "10", "7", "7F", "6F"}, {"13 mm"});
    k.combs.front().fits = {"7"};
    const kit_check c = checked(k);
    CHECK(std::is_sorted(c.remarks.begin(), c.remarks.end(),
                         [](const auto& a, const auto& b) { return a.what < b.what; }));
}

TEST_CASE("a checked kit is told in the units asked for", "[drawer]") {
    kit k = drawer({"30", "10", "4F"}, {"10 mm", "6 mm"});
    k.combs[0].labels = {{"long set", "2"}};
    k.combs[1].labels = {{"round set", "2"}};
    k.blades[2].out = true;
    const std::vector<style> sheets = one_sheet(mm(9.5));
    const kit_check_request r{io::reference(), io::reference().rules, k, sheets, {}};
    io::print_options o;
    o.width = 1000;
    const std::string in_mm = text_of(document_of(check_kit(r), r, o), o.units);
    CHECK_THAT(in_mm, match::ContainsSubstring(
                          "\"2\" on a comb is 10 mm in long set and 6 mm in round set: go by "));
    CHECK_THAT(in_mm, match::ContainsSubstring("is out, no date said; in its place comb 10 mm over "
                                               "blade 30\n"));
    o.units = length_unit::inch;
    const std::string in_inches = text_of(document_of(check_kit(r), r, o), o.units);
    CHECK_THAT(in_inches, match::ContainsSubstring("is 3/8 in in long set and 1/4 in in round"));
    CHECK_THAT(in_inches, match::ContainsSubstring("in its place comb 3/8 in over blade 30\n"));
    CHECK_THAT(in_inches, !match::ContainsSubstring(" mm"));
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
        return g->whole_coat ? std::nullopt : std::optional{l.places[*g->where]};
    };
    const auto among = [](const std::vector<std::size_t>& zones, const char* id) {
        return std::any_of(zones.begin(), zones.end(), [&](std::size_t z) {
            return io::reference().dog_body.zones[z].id == id;
        });
    };
    CHECK_FALSE(places("7F", direction::with_lay).has_value());
    CHECK_FALSE(places("10", direction::with_lay).has_value());
    const auto reversed = places("10", direction::against_lay).value();
    CHECK(among(reversed.always, "ear"));
    CHECK(among(reversed.clean, "feet"));
    const auto skip = places("7", direction::with_lay).value();
    CHECK(skip.firm_skin_only);
    CHECK(among(skip.always, "back"));
    CHECK_FALSE(among(skip.always, "groin"));
    const auto shortest = places("40", direction::with_lay).value();
    CHECK(among(shortest.always, "pads"));
    CHECK(among(shortest.in_show, "feet"));
}

TEST_CASE("a surgical blade goes nowhere", "[ladder]") {
    const ladder l = ladder_of(drawer({"50"}), coat_class::curly);
    REQUIRE_FALSE(l.places.empty());
    REQUIRE(l.places.front().nowhere.has_value());
    CHECK(l.places.front().nowhere->rule == refusal::never_50);
}
