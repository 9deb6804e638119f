// Mats as a groomer of twenty years takes them (common practice, no source, unless said): combed out
// while there is time, else clipped off by the longest blade that passes; a part of which they take much
// comes down whole. shared faults P1, P4, P5, T3, T4, T6, T7, T8.
#include <algorithm>
#include <set>
#include <string>

#include <pelage/planner/alternatives.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

mat_finding passed_by_comb(std::string_view where, mat_grade g, const length& free_hair) {
    mat_finding m = mat_in(where, g, free_hair);
    m.comb_passes = true;
    return m;
}

const style& sheet(std::string_view id) {
    const auto& all = io::reference().styles;
    return *std::find_if(all.begin(), all.end(), [&](const style& s) { return s.id == id; });
}

const other_way* way(const std::vector<other_way>& all, way_kind what) {
    const auto at =
        std::find_if(all.begin(), all.end(), [&](const other_way& w) { return w.what == what; });
    return at == all.end() ? nullptr : &*at;
}

}  // namespace

TEST_CASE(
    "a pompon is not shaved for a tangle: it is combed out, and clipping is the owner's choice",
    "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.patient.size = dog_size::large;
    t.sheet = sheet("poodle-sporting");
    t.patient.mats = {passed_by_comb("tail", mat_grade::tangle, mm(8))};
    const groom g = t.plan();
    CHECK(of(g, "tail").combed_out);
    CHECK(of(g, "tail").leaves->best == mm(51));
    const std::vector<other_way> ways = other_ways(t.request(), g);
    const other_way* clip = way(ways, way_kind::clip_mats);
    REQUIRE(clip != nullptr);
    CHECK(mat_clipped_off(of(clip->plan, "tail")));
    // from what is left to 51 mm less its tolerance at 0.36 mm a day and its spread: months
    REQUIRE(clip->back_in);
    CHECK(in_days((*clip->back_in)[0]) > 50);
    CHECK((*clip->back_in)[2] > (*clip->back_in)[0]);
}

TEST_CASE("a plume that the sheet leaves is combed out, not clipped without a word", "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::double_long;
    t.patient.now = {{"tail", mm(90)}};
    t.sheet = sheet("double-tidy");
    t.patient.mats = {passed_by_comb("tail", mat_grade::matted_area, mm(8))};
    CHECK(of(t.plan(), "tail").combed_out);
}

TEST_CASE("where time is short, what would lose most is combed out first", "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.patient.now = {{"all", mm(60)}};
    t.sheet = sheet_of(clip_to(mm(13)));
    t.says("tail", finish_by(finish::leave));
    // ten minutes each, fifteen in all
    t.patient.mats = {passed_by_comb("loin", mat_grade::matted_area, mm(9)),
                      passed_by_comb("tail", mat_grade::matted_area, mm(9))};
    const groom g = t.plan();
    CHECK(of(g, "tail").combed_out);
    CHECK(mat_clipped_off(of(g, "loin")));
}

TEST_CASE("minutes of combing out are counted as they are, beyond half an hour too", "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.patient.now = {{"all", mm(60)}};
    t.sheet = sheet_of(finish_by(finish::leave));
    t.patchwork = true;
    t.rules.refusal.comb_out_limit = plain(minutes(26));
    t.rules.prices.comb_out_area = plain(minutes(40));
    t.patient.mats = {passed_by_comb("loin", mat_grade::matted_area, mm(9))};
    CHECK_FALSE(of(t.plan(), "loin").combed_out);
    t.rules.refusal.comb_out_limit = plain(minutes(60));
    t.rules.prices.comb_out_area = plain(minutes(7));
    t.patient.mats.clear();
    for (const char* where : {"loin", "back", "rump", "tail"}) {
        t.patient.mats.push_back(passed_by_comb(where, mat_grade::matted_area, mm(9)));
    }
    CHECK(t.plan().combed.size() == 4);
}

TEST_CASE("under a mat the longest that passes, then finished as the sheet wishes", "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::wire;
    t.sheet = sheet("schnauzer-pet");
    t.patient.consents = {"clip-down"};
    t.patient.mats = {passed_by_comb("ear", mat_grade::pelt, mm(8))};
    const zone_plan ear = of(t.plan(), "ear");
    if (ear.off_by) {
        CHECK(held(*ear.off_by) == "blade 10");
        CHECK(ear.when == list::after_bath);
    } else {
        CHECK(held(ear.how) == "blade 10");
        CHECK(ear.when == list::before_bath);
    }
    // a body by blade 10: clipped down first, and finished by the 10 on a clean coat
    t.patient.mats = {passed_by_comb("rump", mat_grade::pelt, mm(12))};
    const groom g = t.plan();
    const zone_plan rump = of(g, "rump");
    REQUIRE(rump.off_by);
    CHECK(held(*rump.off_by) == "blade 5F");
    CHECK(held(rump.how) == "blade 10");
    CHECK(rump.came == outcome::as_wished);
    CHECK(std::count_if(g.blocks.begin(), g.blocks.end(), [](const block& b) { return b.off; }) ==
          1);
}

TEST_CASE("never longer under a mat than the hair that was measured beneath it", "[mats]") {
    groom_table t;
    t.patient.mats = {passed_by_comb("armpit", mat_grade::matted_area, mm(0.4))};
    CHECK(of(t.plan(), "armpit").came == outcome::stuck);
    CHECK(t.plan().bath_waits());
}

TEST_CASE("much of a part matted: it comes down by one blade, twice; patches are the other way",
          "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.patient.now = {{"all", mm(60)}};
    for (const char* where : {"chest", "ribs", "back"}) {
        t.patient.mats.push_back(mat_in(where, mat_grade::pelt, mm(where[0] == 'b' ? 12 : 5)));
    }
    const groom g = t.plan();
    CHECK(g.down == std::vector<part>{part::body});
    std::set<std::string> blades;
    for (const zone_plan& z : g.zones) {
        const zone& w = io::reference().dog_body.zones[z.at.zone];
        if (w.where == group::body) {
            INFO(w.id);
            blades.insert(held(z.how));
            REQUIRE(z.off_by);
            CHECK(z.came == (z.mat ? outcome::clipped_under : outcome::taken_down));
        }
    }
    CHECK(blades == std::set<std::string>{"blade 7F"});
    const auto ways = ways_to_grow_back(t.request(), g);
    REQUIRE(ways.size() >= 2);
    CHECK(ways[0].how == grow_back::even_part);
    CHECK(ways[1].how == grow_back::keep_long);
    CHECK(of(ways[1].plan, "loin").leaves->best == mm(13));
    t.patient.mats.resize(1);
    CHECK(t.plan().down.empty());
}

TEST_CASE("felt takes longer to clip than a clean coat: a mat half as long again, a pelt double",
          "[mats]") {
    // figures: reference/prices.toml, practice
    groom_table clean;
    clean.patient.size = dog_size::large;
    clean.sheet = sheet("kennel");
    groom_table felted = clean;
    for (const zone& z : io::reference().dog_body.zones) {
        if (z.where != group::prep && z.edge_of.empty()) {
            felted.patient.mats.push_back(mat_in(z.id, mat_grade::pelt, mm(5)));
        }
    }
    const groom a = clean.plan();
    const groom b = felted.plan();
    CHECK(b.before + b.after > a.before + a.after);
    groom_table one;
    one.patchwork = true;
    one.patient.mats = {mat_in("back", mat_grade::pelt, mm(5))};
    CHECK(of(one.plan(), "back").takes == minutes(4));  // two minutes on a sound medium dog
}

TEST_CASE("scissors keep off thin skin, whatever the sheet wishes", "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.patient.size = dog_size::small;
    t.sheet = sheet("lamb");
    t.tools = drawer({"30", "7F"}, {"6 mm", "10 mm", "13 mm", "16 mm", "19 mm", "25 mm"});
    for (const zone_plan& z : t.plan().zones) {
        INFO(title(io::reference().dog_body, z.at));
        CHECK((z.how.kind != tool_kind::scissors || z.leaves->best >= mm(3)));
        const bool thin = io::reference().dog_body.zones[z.at.zone].cover != skin::firm &&
                          io::reference().dog_body.zones[z.at.zone].edge_of.empty();
        CHECK((z.how.kind != tool_kind::scissors || !thin || z.leaves->best >= mm(6)));
    }
}

TEST_CASE("a blade is missing: the nearest ones as whole ways, nobody scissors the dog", "[mats]") {
    groom_table t;
    t.tools = drawer({"10", "7F", "4F"});
    t.sheet = sheet("one-length");
    const groom g = t.plan();
    CHECK(of(g, "back").how.kind == tool_kind::clip);
    CHECK(of(g, "back").came == outcome::beyond_reach);
    const std::vector<other_way> ways = other_ways(t.request(), g);
    const other_way* body = way(ways, way_kind::body_length);
    REQUIRE(body != nullptr);
    CHECK(of(body->plan, "back").how.kind == tool_kind::clip);
    CHECK(of(body->plan, "back").leaves->best != of(g, "back").leaves->best);
}

TEST_CASE("blades only, 13 mm on a drop coat: the 4F should leave it, if a patch proves it",
          "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::drop;
    t.tools = drawer({"30", "10", "7F", "5F", "4F", "3F"});
    const groom g = t.plan();
    CHECK(held(of(g, "back").how) == "blade 3F");
    const std::vector<other_way> ways = other_ways(t.request(), g);
    const other_way* patch = way(ways, way_kind::test_patch);
    REQUIRE(patch != nullptr);
    CHECK(held(of(patch->plan, "back").how) == "blade 4F");
    CHECK(of(patch->plan, "back").leaves->low < mm(13) - of(g, "back").tolerated);
}

TEST_CASE("webs and folds take a comb over a short blade, and scissors where the kit has none",
          "[mats]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.patient.thin_or_old = true;
    t.sheet = sheet("one-length");
    for (const char* where : {"flank", "elbow", "stifle", "hock", "tail-base", "ear"}) {
        INFO(where);
        CHECK(of(t.plan(), where).how.over);
    }
    t.tools = drawer({"30", "10", "3F"});
    CHECK(held(of(t.plan(), "back").how) == "blade 3F");
    CHECK(held(of(t.plan(), "hock").how) == "scissors");
}
