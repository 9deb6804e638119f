// Test patches: what they teach and which of them can't be.
#include <algorithm>
#include <string>

#include <pelage/answers/kit.hpp>
#include <pelage/kit/test_patch.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

struct patch {
    setup tool{};
    coat_class coat = coat_class::wavy;
    length found{};
    patch_sets sets = patch_sets::by_direction;
    parameters rules = io::reference().rules;
    kit tools = io::demo_salon().tools;

    [[nodiscard]] calibration read() const {
        return read_patch({io::reference(),
                           rules,
                           tools,
                           io::demo_salon().styles,
                           tool,
                           coat,
                           {},
                           found,
                           sets,
                           {}});
    }
    [[nodiscard]] std::optional<patch_slip> refused() const {
        const calibration l = read();
        CHECK((!l.refused || (!l.lay && !l.measured)));
        return l.refused ? std::optional{l.refused->why} : std::nullopt;
    }
    [[nodiscard]] std::string why(length_unit u) const {
        const calibration l = read();
        return io::refusal_text(l,
                                {io::reference(),
                                 rules,
                                 tools,
                                 io::demo_salon().styles,
                                 tool,
                                 coat,
                                 {},
                                 found,
                                 sets,
                                 {}},
                                u);
    }
};

patch blade_patch(const std::string& id, direction d, const length& found) {
    return {bare(blade_of(id), d), coat_class::wavy, found};
}

}  // namespace

TEST_CASE("a blade that leaves double lies on hair at 30 degrees", "[patch]") {
    // facts of geometry: 1 / sin 30 = 2; a 7F shows the whole of it
    const calibration l = blade_patch("7F", direction::with_lay, mm(6.4)).read();
    REQUIRE(l.lay.has_value());
    CHECK(l.lay->best == 30.0);
    CHECK(l.lay->why.how == basis::measured);
    CHECK_FALSE(l.measured.has_value());
}

TEST_CASE("a blade that leaves what is etched finds the hair standing off", "[patch]") {
    const calibration l = blade_patch("7F", direction::with_lay, mm(3.2)).read();
    REQUIRE(l.lay.has_value());
    CHECK(l.lay->best == 90.0);
}

TEST_CASE("the angle that a patch teaches gives back what was measured", "[patch]") {
    for (const char* id : {"10", "9", "7F", "6F", "5F", "4F"}) {
        for (const double share : {1.05, 1.15, 1.3}) {
            patch p = blade_patch(id, direction::with_lay, {});
            p.found = p.tool.tool.stated.best * share;
            const calibration l = p.read();
            REQUIRE(l.lay.has_value());
            INFO(id << " times " << share << ": " << l.lay->best << " degrees");
            // a tenth of a degree is the grain of the line that is proposed
            CHECK_THAT(in_mm(cut_length(p.tool, l.lay->best, p.rules.cut).best),
                       match::WithinRel(in_mm(p.found), 0.004));
        }
    }
}

TEST_CASE("against the lay a patch tells what the blade really leaves", "[patch]") {
    const calibration l = blade_patch("10", direction::against_lay, mm(1.8)).read();
    REQUIRE(l.measured.has_value());
    CHECK(*l.measured == mm(1.8));
    CHECK_FALSE(l.lay.has_value());
    CHECK(std::all_of(l.lengths.begin(), l.lengths.end(),
                      [](const changed_length& c) { return c.how.tool.id == "10"; }));
    CHECK_FALSE(l.lengths.empty());
}

TEST_CASE("a blade's length from a patch with the lay leaves what was measured", "[patch]") {
    for (const double found : {1.9, 3.0, 4.5, 6.0, 8.0}) {
        patch p = blade_patch("5F", direction::with_lay, mm(found));
        p.sets = patch_sets::tool;
        const calibration l = p.read();
        REQUIRE(l.measured.has_value());
        setup s = p.tool;
        s.tool.stated = exactly(*l.measured, evidence{});
        const double lay = lay_of(io::reference(), p.rules, p.coat).best;
        CHECK_THAT(in_mm(cut_length(s, lay, p.rules.cut).best), match::WithinAbs(found, 0.01));
    }
}

TEST_CASE("a comb's patch sets the comb, less what the blade under it adds", "[patch]") {
    patch p;
    p.tool = combed(comb_of("13 mm"), blade_of("10"), direction::against_lay);
    p.found = mm(15);
    const calibration l = p.read();
    REQUIRE(l.measured.has_value());
    CHECK(*l.measured == mm(14));  // a 10 adds 1.0 over the 30 it is stated over
    CHECK(l.of_comb);
}

TEST_CASE("patches that can't be are refused", "[patch]") {
    CHECK(blade_patch("7F", direction::with_lay, mm(3.0)).refused() ==
          patch_slip::shorter_than_reversed);
    CHECK(blade_patch("7F", direction::with_lay, mm(20)).refused() ==
          patch_slip::longer_than_believed);
    patch far = blade_patch("10", direction::against_lay, mm(20));
    CHECK(far.refused() == patch_slip::far_from_label);
    CHECK(far.read().refused->made == mm(20));
    CHECK(far.read().refused->etched == mm(1.5));
    patch lay_of_comb;
    lay_of_comb.tool = combed(comb_of("13 mm"), blade_of("30"), direction::with_lay);
    lay_of_comb.found = mm(15);
    lay_of_comb.sets = patch_sets::lay;
    CHECK(lay_of_comb.refused() == patch_slip::comb_tells_no_lay);
    patch reversed = blade_patch("7F", direction::against_lay, mm(4));
    reversed.sets = patch_sets::lay;
    CHECK(reversed.refused() == patch_slip::reversed_tells_no_lay);
    CHECK(blade_patch("7F", direction::against_lay, mm(4)).refused() == std::nullopt);
}

TEST_CASE("a refused patch says in the units asked for what was found", "[patch]") {
    const patch short_one = blade_patch("7F", direction::with_lay, mm(3.0));
    CHECK_THAT(short_one.why(length_unit::mm),
               match::ContainsSubstring("leaves no less than against it, 3.2 mm; found 3 mm"));
    CHECK_THAT(short_one.why(length_unit::inch),
               match::ContainsSubstring("leaves no less than against it, 1/8 in; found 1/8 in"));
    CHECK_THAT(blade_patch("10", direction::against_lay, mm(20)).why(length_unit::mm),
               match::ContainsSubstring("would make blade 10 20 mm; etched is 1.5 mm"));
}

TEST_CASE("a blade that shows nothing of the lay can't tell it", "[patch]") {
    patch p = blade_patch("4F", direction::with_lay, mm(11));
    CHECK(p.read().lay.has_value());
    p.rules.cut.blade_long_share = plain(0.0);
    CHECK(p.refused() == patch_slip::blade_shows_no_lay);
}

TEST_CASE("a patch says which zones of the sheets come within tolerance", "[patch]") {
    // the salon's only comb is 13 mm; measured as 19 it no longer cuts the 13 mm sheet
    patch p;
    p.tools = drawer({"30", "10"}, {"13 mm"});
    p.tool = combed(comb_of("13 mm"), blade_of("30"), direction::against_lay);
    p.coat = coat_class::curly;
    p.found = mm(19);
    const calibration l = p.read();
    CHECK(std::any_of(l.targets.begin(), l.targets.end(), [](const changed_target& t) {
        return !t.meets && io::demo_salon().styles[t.sheet].id == "one-length";
    }));
    CHECK(std::any_of(l.targets.begin(), l.targets.end(),
                      [](const changed_target& t) { return t.meets; }));
}
