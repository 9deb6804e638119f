// The plan of one groom: what becomes of wishes, findings, hair and kit.
#include <algorithm>
#include <set>
#include <string>

#include <pelage/planner/plan.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

bool refused_as(const zone_plan& z, const char* setup_begins, refusal why) {
    return std::any_of(z.refused.begin(), z.refused.end(), [&](const refused_setup& r) {
        return title(r.tool).rfind(setup_begins, 0) == 0 && r.no.what == barrier::kind::rule &&
               r.no.rule == why;
    });
}

std::vector<std::string> ids_of(const groom& g, const std::vector<std::size_t>& zones) {
    std::vector<std::string> out;
    for (const std::size_t i : zones) {
        out.push_back(io::reference().dog_body.zones[g.zones[i].at.zone].id);
    }
    return out;
}

dog double_coated() {
    dog d = groom_table().patient;
    d.coat = coat_class::double_long;
    return d;
}

}  // namespace

TEST_CASE("the plain case: every zone as wished, prep before the bath", "[groom]") {
    const groom g = groom_table().plan();
    CHECK(g.stuck.empty());
    CHECK(g.stop.empty());
    for (const zone_plan& z : g.zones) {
        const zone& w = io::reference().dog_body.zones[z.at.zone];
        INFO(w.id);
        CHECK(z.came == outcome::as_wished);
        CHECK((z.when == list::before_bath) == (w.where == group::prep));
        CHECK(z.takes > mmin(0));
        REQUIRE(z.leaves);
        CHECK((w.where == group::prep || within(z.leaves->best, mm(13), z.tolerated)));
    }
    // webs and folds take a comb, and then the rest does: one thing to pick up is cheaper than two
    CHECK(held(of(g, "hock").how) == "comb 13 mm over blade 30");
    CHECK(held(of(g, "back").how) == "comb 13 mm over blade 30");
}

TEST_CASE("every place of the body stands once in the plan, in reference order", "[groom]") {
    groom_table t;
    t.patient.now = {{"left ear", mm(20)}};
    const groom g = t.plan();
    std::vector<std::pair<std::size_t, side>> seen;
    for (const zone_plan& z : g.zones) {
        seen.emplace_back(z.at.zone, z.at.which);
    }
    CHECK(std::is_sorted(seen.begin(), seen.end()));
    CHECK(std::adjacent_find(seen.begin(), seen.end()) == seen.end());
    CHECK(seen.size() == io::reference().dog_body.zones.size() + 1);
}

TEST_CASE("a finding, today's hair or a word of the sheet on one side splits the pair", "[groom]") {
    const auto split = [](const groom_table& t) {
        const groom g = t.plan();
        return !stands_in(g, "ear") && stands_in(g, "left ear") && stands_in(g, "right ear");
    };
    CHECK_FALSE(split(groom_table()));
    groom_table mat;
    mat.patient.mats = {mat_in("left ear", mat_grade::mat, mm(8))};
    CHECK(split(mat));
    groom_table skin;
    skin.patient.skin = {{at("left ear"), skin_state::irritated}};
    CHECK(split(skin));
    groom_table hair;
    hair.patient.now = {{"all", mm(40)}, {"right ear", mm(20)}};
    CHECK(split(hair));
    CHECK(split(groom_table().says("left ear", clip_to(mm(16)))));
    groom_table departure;
    departure.patient.departures = {{"left ear", clip_to(mm(16))}};
    CHECK(split(departure));
    groom_table both;
    both.patient.mats = {mat_in("ear", mat_grade::mat, mm(8))};
    CHECK_FALSE(split(both));
}

TEST_CASE("two halves of a pair take the time of the pair", "[groom]") {
    groom_table whole;
    groom_table halves;
    halves.patient.now = {{"left ear", mm(60)}, {"right ear", mm(61)}};
    const groom a = whole.plan();
    const groom b = halves.plan();
    CHECK(of(b, "left ear").takes == of(b, "right ear").takes);
    CHECK(of(b, "left ear").takes + of(b, "right ear").takes == of(a, "ear").takes);
    CHECK(a.after == b.after);
}

TEST_CASE("the narrower word of the sheet wins, and the dog's departures over the sheet",
          "[groom]") {
    groom_table t;
    t.says("left ear", clip_to(mm(10)))
        .says("ear", clip_to(mm(16)))
        .says("head", clip_to(mm(19)))
        .says("all", clip_to(mm(9.5)));
    const auto wish = [&](const char* word) {
        return instruction_for(t.request(), at(word)).target;
    };
    CHECK(wish("left ear") == mm(10));
    CHECK(wish("right ear") == mm(16));
    CHECK(wish("skull") == mm(19));
    CHECK(wish("back") == mm(9.5));
    t.patient.departures = {{"all", clip_to(mm(25))}};
    CHECK(wish("back") == mm(25));
    CHECK(wish("left ear") == mm(25));
    CHECK_FALSE(wish("belly"));  // "all" leaves prep zones to their own blades
}

TEST_CASE("a length laid over a blade takes its place, and a blade that of a length", "[groom]") {
    groom_table t;
    t.says("body", clip_with("7F")).says("back", clip_to(mm(16)));
    CHECK(instruction_for(t.request(), at("ribs")).blade == "7F");
    CHECK_FALSE(instruction_for(t.request(), at("ribs")).target);
    CHECK_FALSE(instruction_for(t.request(), at("back")).blade);
    CHECK(instruction_for(t.request(), at("back")).target == mm(16));
}

TEST_CASE("a sheet's adjustable length is asked for, or the dog has its own", "[groom]") {
    groom_table t;
    t.sheet.adjustable = mm(13);
    t.says("legs", clip_to(mm(16)));
    const auto back = [&] { return instruction_for(t.request(), at("back")).target; };
    CHECK(back() == mm(13));
    t.patient.body_length = mm(19);
    CHECK(back() == mm(19));
    t.length_wish = mm(9.5);
    CHECK(back() == mm(9.5));
    CHECK(instruction_for(t.request(), at("foreleg")).target == mm(16));
    t.sheet.adjustable.reset();
    CHECK(back() == mm(13));
}

TEST_CASE("today's hair is the narrowest word of the record; all is the whole coat", "[groom]") {
    groom_table t;
    const auto hair = [&](const char* word) { return hair_today(t.request(), at(word)); };
    CHECK_FALSE(hair("back"));
    t.patient.now = {{"ear", mm(25)}, {"all", mm(40)}, {"left ear", mm(20)}, {"head", mm(30)}};
    CHECK(hair("back") == mm(40));
    CHECK(hair("belly") == mm(40));
    CHECK(hair("skull") == mm(30));
    CHECK(hair("right ear") == mm(25));
    CHECK(hair("left ear") == mm(20));
}

TEST_CASE("hair that isn't recorded is taken as long enough, and that is said", "[groom]") {
    groom_table t;
    CHECK_FALSE(t.plan().notes.empty());
    CHECK(warns(t.plan(), caution_when::unknown_hair));
    t.patient.now = {{"all", mm(40)}};
    CHECK(t.plan().notes.empty());
    CHECK_FALSE(warns(t.plan(), caution_when::unknown_hair));
}

TEST_CASE("hair shorter than the wish is left, and the plan says how long it is", "[groom]") {
    groom_table t;
    t.patient.now = {{"all", mm(8)}};
    const groom g = t.plan();
    const zone_plan& back = of(g, "back");
    CHECK(back.how.kind == tool_kind::none);
    CHECK(back.came == outcome::hair_shorter);
    CHECK(back.why.what == cause::hair_below_wish);
    CHECK(back.now == mm(8));
    CHECK(back.target == mm(13));
    REQUIRE(back.why.wait);
    CHECK(back.why.wait->early < back.why.wait->late);
    REQUIRE(back.leaves);
    CHECK(back.leaves->best == mm(8));
    CHECK(back.takes == mmin(0));
}

TEST_CASE("a tool longer than the hair does nothing and isn't planned", "[groom]") {
    groom_table t;
    t.sheet = sheet_of(clip_to(mm(9.5)));
    t.patient.now = {{"all", mm(12)}};
    const groom g = t.plan();
    const zone_plan& back = of(g, "back");
    REQUIRE(back.leaves);
    CHECK(back.leaves->best <= mm(12));
    CHECK(std::any_of(back.refused.begin(), back.refused.end(), [](const refused_setup& r) {
        return title(r.tool).rfind("comb 13 mm", 0) == 0 &&
               r.no.what == barrier::kind::hair_shorter;
    }));
}

TEST_CASE("hair within the tolerance of the wish need not be touched", "[groom]") {
    groom_table t;
    t.patient.now = {{"all", mm(14.95)}};
    CHECK(of(t.plan(), "back").how.kind == tool_kind::none);
    t.patient.now = {{"all", mm(14.96)}};
    CHECK(of(t.plan(), "back").how.kind == tool_kind::clip);
}

TEST_CASE("prep hair that is short already is left alone", "[groom]") {
    groom_table t;
    t.patient.now = {{"all", mm(40)}, {"belly", mm(1)}};
    const groom g = t.plan();
    CHECK(of(g, "belly").how.kind == tool_kind::none);
    CHECK(of(g, "belly").came == outcome::hair_shorter);
    CHECK(of(g, "belly").why.what == cause::hair_at_wish);
    CHECK(held(of(g, "groin").how) == "blade 10");
}

TEST_CASE("prep zones take their customary blades, the first that is at hand", "[groom]") {
    struct row {
        std::vector<std::string> kit;
        const char* zone;
        const char* is;
    };
    const std::vector<row> rows{{{"10", "9", "15"}, "sanitary", "blade 10"},
                                {{"9", "15"}, "sanitary", "blade 9"},
                                {{"15"}, "sanitary", "blade 15"},
                                {{"40", "30", "15"}, "pads", "blade 15"},
                                {{"40", "30"}, "pads", "blade 30"},
                                {{"40"}, "pads", "blade 40"},
                                {{"15", "10"}, "under-tail", "blade 10"},
                                {{"15"}, "under-tail", "blade 15"},
                                {{"10", "15"}, "belly", "blade 10"}};
    for (const row& r : rows) {
        INFO(r.zone << ", " << r.is);
        groom_table t;
        t.tools = drawer(r.kit);
        const zone_plan z = of(t.plan(), r.zone);
        CHECK(held(z.how) == r.is);
        CHECK(z.how.way == direction::with_lay);
    }
    groom_table none;
    none.tools = drawer({"15"});
    const groom g = none.plan();
    CHECK(of(g, "belly").came == outcome::stuck);
    CHECK(of(g, "belly").why.what == cause::no_tool);
    for (const char* zone : {"groin", "armpit", "back"}) {  // a bare 15 goes there as little
        CHECK(of(g, zone).came == outcome::stuck);
    }
}

TEST_CASE("a sheet may give a prep zone a wish of its own, or leave it", "[groom]") {
    groom_table t;
    t.says("belly", clip_to(mm(6))).says("sanitary", finish_by(finish::leave));
    const groom g = t.plan();
    REQUIRE(of(g, "belly").leaves);
    CHECK(within(of(g, "belly").leaves->best, mm(6), of(g, "belly").tolerated));
    CHECK(of(g, "sanitary").came == outcome::left_by_sheet);
}

TEST_CASE("between: longer goes no shorter, shorter no longer, nearest either way", "[groom]") {
    // only these to choose from: 9.5, 13 and 19 mm on an off-standing coat
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10", "4F"}, {"13 mm", "19 mm"});
    const auto left = [&](double wish, side_of_target s) {
        instruction i = clip_to(mm(wish));
        i.tolerance = mm(0.5);
        i.between = s;
        t.sheet = sheet_of(i);
        const zone_plan z = of(t.plan(), "back");
        return z.how.kind == tool_kind::clip ? in_mm(z.leaves->best) : 0.0;
    };
    CHECK(left(12, side_of_target::longer) == 13.0);
    CHECK(left(12, side_of_target::shorter) == 9.5);
    CHECK(left(12, side_of_target::nearest) == 13.0);
    CHECK(left(11, side_of_target::nearest) == 9.5);
    CHECK(left(15, side_of_target::longer) == 19.0);
    CHECK(left(15, side_of_target::shorter) == 13.0);
    CHECK(left(15, side_of_target::nearest) == 13.0);
}

TEST_CASE("a miss beyond the tolerance is told with its size and side", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"13 mm", "19 mm"});
    t.rules.prices.scissor = plain(1000.0);
    instruction i = clip_to(mm(15));
    i.tolerance = mm(0.5);
    t.sheet = sheet_of(i);
    const zone_plan z = of(t.plan(), "back");
    CHECK(z.came == outcome::off_target);
    CHECK(z.why.what == cause::missed);
    CHECK(z.leaves->best - *z.target == mm(4));
}

TEST_CASE("too short is judged on the low end of what a tool may leave", "[groom]") {
    // with the lay on flat hair a 7F leaves about 6.4 mm, and perhaps only 3
    groom_table t;
    t.patient.coat = coat_class::drop;
    t.tools = drawer({"10", "7F"});
    t.sheet = sheet_of(clip_to(mm(6.4)));
    const groom g = t.plan();
    // nothing else comes near: it is offered, the owner decides, and nobody scissors so short instead
    CHECK(held(of(g, "back").how) == "blade 7F");
    CHECK(of(g, "back").came == outcome::beyond_reach);
    CHECK(of(g, "back").why.what == cause::may_leave_less);
    CHECK(of(g, "back").leaves->low == mm(3));
    CHECK(std::any_of(of(g, "back").refused.begin(), of(g, "back").refused.end(),
                      [](const refused_setup& r) {
                          return title(r.tool) == "blade 7F, with the lay" &&
                                 r.no.what == barrier::kind::too_short && r.leaves.low == mm(3);
                      }));
}

TEST_CASE("a kit without combs: the nearest blade, which the owner decides; nobody scissors it all",
          "[groom]") {
    groom_table t;
    t.tools = drawer({"30", "10", "7F", "5F"});
    const groom g = t.plan();
    const zone_plan& back = of(g, "back");
    CHECK(held(back.how) == "blade 5F");
    CHECK(back.came == outcome::beyond_reach);
    CHECK(back.why.what == cause::missed);
    CHECK(back.why.beyond == beyond_sheet::shorter);
    CHECK(std::any_of(g.consents.begin(), g.consents.end(),
                      [](const consent& c) { return c.id == "other-length" && !c.given; }));
    // from 20 mm on scissors are a way
    t.sheet = sheet_of(clip_to(mm(25)));
    CHECK(of(t.plan(), "back").how.kind == tool_kind::scissors);
    CHECK(of(t.plan(), "back").leaves->best == mm(25));
}

TEST_CASE("a kit without combs and a wish for the nearest: a blade, if scissoring costs more",
          "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10", "4F"});
    instruction i = clip_to(mm(12));
    i.between = side_of_target::nearest;
    i.tolerance = mm(2);
    t.sheet = sheet_of(i);
    CHECK(held(of(t.plan(), "back").how) == "blade 4F");
    CHECK(of(t.plan(), "back").came == outcome::off_target);
}

TEST_CASE("a blade the sheet names is used, whatever else leaves as much", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_of(clip_with("10"));
    const zone_plan z = of(t.plan(), "back");
    CHECK(held(z.how) == "blade 10");
    CHECK(z.came == outcome::as_wished);
    CHECK(z.target == mm(1.5));
}

TEST_CASE("a named blade that isn't in the kit is replaced by what leaves as much", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"3 mm", "13 mm"});
    t.sheet = sheet_of(clip_with("7F"));
    const zone_plan z = of(t.plan(), "back");
    CHECK(held(z.how) == "comb 3 mm over blade 30");
    CHECK(z.came == outcome::as_wished);
    CHECK(z.why.what == cause::other_blade);
    CHECK(z.why.named == not_named::not_in_kit);
    CHECK(z.blade_wish == "7F");
}

TEST_CASE("a named blade out for sharpening is replaced until it is back", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10", "4F"}, {"10 mm", "13 mm"});
    t.tools.blades.back().out_until = parse_date("2026-12-01");
    t.sheet = sheet_of(clip_with("4F"));
    t.today = parse_date("2026-11-25");
    CHECK(held(of(t.plan(), "back").how) == "comb 10 mm over blade 30");
    t.today = parse_date("2026-12-02");
    CHECK(held(of(t.plan(), "back").how) == "blade 4F");
}

TEST_CASE("a blade nobody knows is an error, not a guess", "[groom]") {
    groom_table t;
    t.sheet = sheet_of(clip_with("7X"));
    CHECK_THROWS_AS(t.plan(), error);
}

TEST_CASE("the length a test patch measured wins over the one etched", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"13 mm", "16 mm"});
    t.tools.combs[1].measured = mm(13.2);
    t.tools.combs[0].measured = mm(15.0);
    const zone_plan z = of(t.plan(), "back");
    CHECK(z.how.over->id == "16 mm");
    CHECK(z.leaves->best == mm(13.2));
}

TEST_CASE("combs go over the blade kept under them, or over those they fit", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_of(clip_to(mm(14)));
    t.tools = drawer({"30", "10"}, {"13 mm"});
    CHECK(held(of(t.plan(), "back").how) == "comb 13 mm over blade 30");
    t.tools.combs[0].fits = {"10"};  // 1 mm longer: just what is wished
    CHECK(held(of(t.plan(), "back").how) == "comb 13 mm over blade 10");
    CHECK(of(t.plan(), "back").leaves->best == mm(14));
    t.tools.combs[0].fits = {"40"};  // not in the drawer
    CHECK(of(t.plan(), "back").came == outcome::beyond_reach);
    CHECK_FALSE(of(t.plan(), "back").how.over);
}

TEST_CASE("of two setups that cost the same the first in the drawer's order is taken", "[groom]") {
    // on an off-standing coat both ways of a comb leave the same: with the lay comes first
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.both_ways = true;
    for (const zone_plan& z : t.plan().zones) {
        CHECK((z.how.kind != tool_kind::clip || z.how.way == direction::with_lay));
    }
    CHECK(t.plan().choice.sure.ties > 0);
}

TEST_CASE("the sheet's direction is kept; only `either` leaves a choice", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::wavy;
    instruction i = clip_to(mm(13));
    i.way = lay_choice::against_lay;
    t.sheet = sheet_of(i);
    CHECK(of(t.plan(), "back").how.way == direction::against_lay);
    i.way = lay_choice::with_lay;
    t.sheet = sheet_of(i);
    const groom with = t.plan();
    CHECK(of(with, "back").how.way == direction::with_lay);
    i.way = lay_choice::either;
    t.sheet = sheet_of(i);
    CHECK(t.plan().choice.cost <= with.choice.cost);
}

TEST_CASE("what hangs beside a double jacket is scissored with it, or by a sheet that cards it",
          "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::double_long;
    t.says("skirt", finish_by(finish::scissor, mm(13)))
        .says("feet", finish_by(finish::scissor, mm(13)));
    groom g = t.plan();
    REQUIRE(g.question);
    t.patient.consents = {"clip-jacket"};
    g = t.plan();
    CHECK(of(g, "back").how.kind == tool_kind::clip);
    CHECK(of(g, "skirt").how.kind == tool_kind::scissors);
    // a sheet that cards the jacket itself may trim what hangs
    t.patient.consents.clear();
    t.sheet = sheet_of(finish_by(finish::card));
    t.says("skirt", finish_by(finish::scissor, mm(50)));
    CHECK(of(t.plan(), "skirt").how.kind == tool_kind::scissors);
}

TEST_CASE("neighbours that no one direction serves: tracks, and the plan says where", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::drop;
    t.tools = drawer({"5F"});
    instruction wide = clip_to(mm(8.8));  // with the lay; against it may leave half of 6.3 mm
    wide.tolerance = mm(3);
    wide.way = lay_choice::either;
    instruction close = clip_to(mm(6.3));  // against the lay; with it leaves too much
    close.tolerance = mm(1);
    close.between = side_of_target::shorter;
    close.way = lay_choice::either;
    const auto tracks = [](const groom& g) {
        return std::find_if(g.notes.begin(), g.notes.end(),
                            [](const plan_note& n) { return n.what == plan_note::kind::tracks; });
    };
    t.sheet = sheet_of(wide);
    groom g = t.plan();
    CHECK(of(g, "back").how.way == direction::with_lay);
    CHECK(tracks(g) == g.notes.end());
    t.says("back", close);
    g = t.plan();
    CHECK(of(g, "back").how.way == direction::against_lay);
    CHECK(of(g, "ribs").how.way == direction::with_lay);
    REQUIRE(tracks(g) != g.notes.end());
    const auto named = [&](const char* with, const char* against) {
        const auto& pairs = tracks(g)->pairs;
        return std::find(pairs.begin(), pairs.end(), std::array{at(with), at(against)}) !=
               pairs.end();
    };
    CHECK(named("ribs", "back"));
    CHECK_FALSE(named("rump", "thigh"));
}

TEST_CASE("off target, though a tool at hand comes nearer: the plan says which", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"22 mm", "25 mm"});
    t.sheet = sheet_of(clip_to(mm(25)));
    instruction i = clip_to(mm(22));
    i.tolerance = mm(2.9);
    t.says("elbow", i);
    const zone_plan z = of(t.plan(), "elbow");
    REQUIRE(z.came == outcome::off_target);  // a comb more would cost more than the miss
    REQUIRE(z.nearer);
    CHECK(*z.nearer == mm(22));
    REQUIRE(z.why.nearest);
    CHECK(held(*z.why.nearest) == "comb 22 mm over blade 30");
    t.tools = drawer({"30", "10"}, {"25 mm"});
    const zone_plan by_hand = of(t.plan(), "elbow");
    REQUIRE(by_hand.why.nearest);
    CHECK(by_hand.why.nearest->kind == tool_kind::scissors);
    CHECK(by_hand.nearer == mm(22));
    t.says("elbow", clip_to(mm(19)));  // so short nobody scissors in place of a comb
    const zone_plan only = of(t.plan(), "elbow");
    REQUIRE(only.came == outcome::off_target);
    CHECK_FALSE(only.nearer);
    CHECK(only.why.what == cause::missed);
    CHECK_FALSE(only.why.nearest);
}

TEST_CASE("skip teeth pay for their rougher finish", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"10", "5", "5F"});
    t.sheet = sheet_of(clip_to(mm(6.3)));
    CHECK(held(of(t.plan(), "back").how) == "blade 5F");
    t.tools = drawer({"10", "5"});
    CHECK(held(of(t.plan(), "back").how) == "blade 5");
    CHECK(refused_as(of(t.plan(), "foreleg"), "blade 5", refusal::skip_teeth_here));
}

TEST_CASE("what the sheet scissors, thins, cards, strips or leaves is done so", "[groom]") {
    groom_table t;
    t.says("skull", finish_by(finish::scissor, mm(25)))
        .says("chest", finish_by(finish::thin, mm(20)))
        .says("loin", finish_by(finish::card))
        .says("rump", finish_by(finish::hand_strip, mm(20)))
        .says("tail", finish_by(finish::leave))
        .says("foreleg", finish_by(finish::comb_then_scissor, mm(16)));
    for (const bool known : {false, true}) {
        INFO("today's hair known: " << known);
        t.patient.now.clear();
        if (known) {
            t.patient.now = {{"all", mm(60)}};
        }
        const groom g = t.plan();
        CHECK(of(g, "skull").how.kind == tool_kind::scissors);
        CHECK(of(g, "skull").leaves->best == mm(25));
        CHECK(of(g, "chest").how.kind == tool_kind::thinners);
        CHECK(of(g, "chest").leaves->best == mm(20));
        CHECK(of(g, "loin").how.kind == tool_kind::carder);
        CHECK(of(g, "loin").leaves.has_value() == known);
        CHECK(of(g, "rump").how.kind == tool_kind::fingers);
        CHECK(of(g, "rump").leaves->best == mm(20));
        CHECK(of(g, "tail").how.kind == tool_kind::none);
        CHECK(of(g, "tail").came == outcome::left_by_sheet);
        CHECK(held(of(g, "foreleg").how) == "comb 16 mm over blade 30");
        CHECK(of(g, "foreleg").how_finished == finish::comb_then_scissor);
        CHECK(g.stuck.empty());
    }
}

TEST_CASE("hair too short to scissor, thin or strip to is left, not given up", "[groom]") {
    for (const finish f : {finish::scissor, finish::thin, finish::hand_strip}) {
        INFO(name(f));
        groom_table t;
        t.sheet = sheet_of(finish_by(f, mm(25)));
        t.patient.now = {{"all", mm(14)}};
        const groom g = t.plan();
        CHECK(of(g, "back").came == outcome::hair_shorter);
        CHECK(of(g, "back").how.kind == tool_kind::none);
        CHECK(g.stuck.empty());
    }
}

TEST_CASE("a sheet that gives no length leaves the zone and says so", "[groom]") {
    groom_table t;
    t.sheet = sheet_of(finish_by(finish::clip));
    CHECK(of(t.plan(), "back").came == outcome::left_by_sheet);
    CHECK(of(t.plan(), "back").why.what == cause::no_length);
    t.sheet.rules.clear();
    CHECK(of(t.plan(), "back").came == outcome::left_by_sheet);
}

TEST_CASE("a double coat isn't clipped unless the owner agreed in writing", "[groom]") {
    groom_table t;
    t.patient = double_coated();
    t.sheet = sheet_of(clip_to(mm(25)));
    t.sheet.clip_jacket = true;
    const std::set<std::string> jacket{"neck", "withers", "back", "ribs", "loin", "rump"};
    const auto clipped_jacket = [&](const groom& g) {
        return std::count_if(g.zones.begin(), g.zones.end(), [&](const zone_plan& z) {
            return jacket.count(io::reference().dog_body.zones[z.at.zone].id) > 0 &&
                   z.how.kind == tool_kind::clip;
        });
    };
    const groom refused = t.plan();
    CHECK(clipped_jacket(refused) == 0);
    CHECK(refused.question);
    CHECK(of(refused, "back").why.what == cause::owner);
    REQUIRE(refused.consents.size() == 1);
    CHECK(refused.consents[0].id == "clip-jacket");
    CHECK_FALSE(refused.consents[0].given);
    CHECK_FALSE(warns(refused, caution_when::double_jacket_clipped));

    t.patient.consents = {"clip-jacket"};
    const groom agreed = t.plan();
    CHECK(clipped_jacket(agreed) == 6);
    CHECK(agreed.consents[0].given);
    CHECK(warns(agreed, caution_when::double_jacket_clipped));
}

TEST_CASE("a mat comes off a double coat's jacket without that consent", "[groom]") {
    groom_table t;
    t.patient = double_coated();
    t.sheet = sheet_of(finish_by(finish::card));
    t.patient.mats = {mat_in("loin", mat_grade::pelt, mm(9))};
    const groom g = t.plan();
    CHECK(of(g, "loin").came == outcome::clipped_under);
    CHECK(of(g, "back").how.kind == tool_kind::carder);
}

TEST_CASE("a clipped wire jacket asks and warns: clipping softens and pales it", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::wire;
    t.sheet = sheet_of(clip_with("10"));
    const groom g = t.plan();
    CHECK(warns(g, caution_when::wire_clipped));
    REQUIRE(g.consents.size() == 1);
    CHECK(g.consents[0].id == "clip-jacket");
    t.sheet = sheet_of(finish_by(finish::hand_strip, mm(25)));
    CHECK_FALSE(warns(t.plan(), caution_when::wire_clipped));
    CHECK(t.plan().consents.empty());
}

TEST_CASE("hurt skin is left alone, its neighbours are told to keep off the edge", "[groom]") {
    groom_table t;
    t.patient.skin = {{at("left flank"), skin_state::irritated}};
    const groom g = t.plan();
    const zone_plan& flank = of(g, "left flank");
    CHECK(flank.how.kind == tool_kind::none);
    CHECK(flank.came == outcome::skin_left);
    CHECK(flank.hurt == skin_state::irritated);
    CHECK(flank.why.what == cause::skin);
    CHECK(of(g, "right flank").how.kind == tool_kind::clip);
    for (const char* beside : {"ribs", "loin", "skirt", "thigh", "stifle", "belly", "groin"}) {
        INFO(beside);
        CHECK(of(g, beside).beside_hurt == std::vector<place>{at("left flank")});
        CHECK(of(g, beside).how.kind != tool_kind::none);
    }
    for (const char* away : {"back", "neck", "rump", "foreleg", "right flank"}) {
        INFO(away);
        CHECK(of(g, away).beside_hurt.empty());
    }
    CHECK(warns(g, caution_when::skin_finding));
}

TEST_CASE("the left side's skin is no matter of the right side's neighbours", "[groom]") {
    groom_table t;
    t.patient.skin = {{at("left flank"), skin_state::broken}};
    t.patient.now = {{"left thigh", mm(40)}, {"right thigh", mm(41)}};
    const groom g = t.plan();
    CHECK(of(g, "left thigh").beside_hurt == std::vector<place>{at("left flank")});
    CHECK(of(g, "right thigh").beside_hurt.empty());
}

TEST_CASE("inflamed, open or wet skin keeps tools away", "[groom]") {
    for (const skin_state s : {skin_state::irritated, skin_state::broken, skin_state::wet}) {
        INFO(name(s));
        groom_table t;
        t.patient.skin = {{at("back"), s}};
        CHECK(of(t.plan(), "back").how.kind == tool_kind::none);
    }
}

TEST_CASE("lumps, scabs and fleas leave no zone: the dog is planned as without them", "[groom]") {
    groom_table t;
    t.patient.now = {{"all", mm(40)}};
    const groom plain = t.plan();
    t.patient.skin = {{at("chest"), skin_state::lump, mm(10), true},
                      {at("back"), skin_state::lump},
                      {at("loin"), skin_state::scab},
                      {at("rump"), skin_state::fleas}};
    const groom g = t.plan();
    for (const char* z : {"chest", "back", "loin", "rump"}) {
        INFO(z);
        CHECK(title(of(g, z).how) == title(of(plain, z).how));
        CHECK(of(g, z).came == outcome::as_wished);
        CHECK_FALSE(of(g, z).hurt);
    }
    CHECK(of(g, "back").beside_hurt.empty());
    REQUIRE(of(g, "chest").around.size() == 1);
    CHECK(of(g, "chest").around[0].size == mm(10));
    CHECK(of(g, "rump").around.empty());
    CHECK(g.fleas == std::vector<place>{at("rump")});
    CHECK(warns(g, caution_when::fleas));
    CHECK(warns(g, caution_when::lump_new));  // the back's
    CHECK(warns(g, caution_when::scab));
    CHECK_FALSE(warns(g, caution_when::skin_finding));
    t.patient.skin.resize(1);
    CHECK_FALSE(warns(t.plan(), caution_when::lump_new));
}

TEST_CASE("a scab under a mat can't be gone around: left alone", "[groom]") {
    groom_table t;
    t.patient.skin = {{at("back"), skin_state::scab}};
    t.patient.mats = {mat_in("back", mat_grade::tangle, mm(10))};
    const groom g = t.plan();
    CHECK(g.combed.empty());
    CHECK(of(g, "back").came == outcome::skin_left);
    // a lump under a tangle is combed around
    t.patient.skin[0].state = skin_state::lump;
    CHECK(t.plan().combed.size() == 1);
}

TEST_CASE("the edge of a hurt ear is left with it, the other ear's is not", "[groom]") {
    groom_table t;
    t.says("ear-edge", finish_by(finish::scissor, mm(13)));
    t.patient.skin = {{at("right ear"), skin_state::broken}};
    const groom g = t.plan();
    CHECK(of(g, "edge of the right ear").came == outcome::skin_left);
    CHECK(of(g, "edge of the right ear").how.kind == tool_kind::none);
    CHECK(of(g, "edge of the right ear").why.what == cause::skin_within);
    CHECK(of(g, "edge of the right ear").why.of == at("right ear"));
    CHECK(of(g, "edge of the left ear").how.kind == tool_kind::scissors);
}

TEST_CASE("who faints or has seizures bears less, as who is ill", "[groom]") {
    dog d;
    CHECK_FALSE(bears_less(d));
    d.alerts = {{alert_kind::bites, {}}, {alert_kind::muzzle, {}}};
    CHECK_FALSE(bears_less(d));
    d.alerts = {{alert_kind::seizures, {}}};
    CHECK(bears_less(d));
    groom_table t;
    t.patient.alerts = {{alert_kind::faints, {}}};
    CHECK(warns(t.plan(), caution_when::ill));
}

TEST_CASE("a tangle on hurt skin isn't combed out", "[groom]") {
    groom_table t;
    t.patient.skin = {{at("back"), skin_state::broken}};
    t.patient.mats = {mat_in("back", mat_grade::tangle, mm(10))};
    const groom g = t.plan();
    CHECK(g.combed.empty());
    CHECK(of(g, "back").came == outcome::skin_left);
}

TEST_CASE(
    "what can't be combed out is clipped under before the bath, by the longest blade that fits",
    "[groom]") {
    struct row {
        double free;
        const char* is;
    };
    // three quarters of the free hair, at most 6.4 mm, full teeth
    const row rows[] = {{40, "blade 5F"},   {8.4, "blade 5F"}, {8.39, "blade 7F"},
                        {4.27, "blade 7F"}, {4.26, "blade 9"}, {2.67, "blade 9"},
                        {2.66, "blade 10"}, {2, "blade 10"}};
    for (const row& r : rows) {
        INFO(r.free << " mm free");
        groom_table t;
        t.patient.mats = {mat_in("back", mat_grade::pelt, mm(r.free))};
        const groom g = t.plan();
        const zone_plan& z = of(g, "back");
        CHECK(held(z.how) == r.is);
        CHECK(z.how.way == direction::with_lay);
        CHECK(z.came == outcome::clipped_under);
        CHECK(z.when == list::before_bath);
        CHECK(z.how_finished == finish::clip);
        CHECK(refused_as(z, "comb 13 mm", refusal::comb_over_mat));
        CHECK(refused_as(z, "blade 7, ", refusal::under_mat_teeth));
        CHECK(warns(g, caution_when::clip_under));
        CHECK(std::any_of(g.consents.begin(), g.consents.end(),
                          [](const consent& c) { return c.id == "clip-down" && !c.given; }));
    }
}

TEST_CASE("a pelt with too little free hair is not clipped by plan", "[groom]") {
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(1.9))};
    const groom g = t.plan();
    CHECK(of(g, "back").came == outcome::stuck);
    CHECK(of(g, "back").why.what == cause::nothing_passes);
    CHECK(ids_of(g, g.stuck) == std::vector<std::string>{"back"});
    // a comb's tip passes beneath: then the 10 always may
    t.patient.mats[0].comb_passes = true;
    CHECK(held(of(t.plan(), "back").how) == "blade 10");
}

TEST_CASE("free hair nobody measured: a 10, tried first where no comb's tip is known to pass",
          "[groom]") {
    groom_table t;
    t.patient.mats = {mat_in("left armpit", mat_grade::mat),
                      mat_in("right armpit", mat_grade::mat, mm(1))};
    groom g = t.plan();
    CHECK(held(of(g, "left armpit").how) == "blade 10");
    CHECK(of(g, "left armpit").trial);
    CHECK(g.bath_waits());
    CHECK(of(g, "right armpit").came == outcome::stuck);
    CHECK(of(g, "right armpit").why.what == cause::nothing_passes);
    t.patient.mats[0].comb_passes = true;
    g = t.plan();
    CHECK_FALSE(of(g, "left armpit").trial);
    CHECK(held(of(g, "left armpit").how) == "blade 10");
}

TEST_CASE("of two findings in one place the worse one counts", "[groom]") {
    groom_table t;
    mat_finding felted = mat_in("back", mat_grade::mat);
    felted.to_skin = true;
    t.patient.mats = {mat_in("back", mat_grade::matted_area, mm(10)), felted};
    CHECK_FALSE(t.plan().stop.empty());
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(10)),
                      mat_in("back", mat_grade::pelt, mm(3))};
    CHECK(held(of(t.plan(), "back").how) == "blade 9");
}

TEST_CASE("felted to the skin: the groom stops, nothing is planned, a veterinarian decides",
          "[groom]") {
    groom_table t;
    mat_finding m = mat_in("left ear", mat_grade::pelt);
    m.to_skin = true;
    t.patient.mats = {m, mat_in("tail", mat_grade::tangle, mm(12))};
    const groom g = t.plan();
    CHECK(g.stop == std::vector<place>{at("left ear")});
    CHECK(g.blocks.empty());
    CHECK(g.combed.empty());
    CHECK(g.before == mmin(0));
    CHECK(g.after == mmin(0));
    CHECK(warns(g, caution_when::stop));
    CHECK_FALSE(warns(g, caution_when::any_clipping));
    CHECK_FALSE(warns(g, caution_when::unknown_hair));
    for (const zone_plan& z : g.zones) {
        CHECK(z.how.kind == tool_kind::none);
        CHECK(z.came != outcome::as_wished);
        CHECK(z.why.what == cause::felted);
    }
}

TEST_CASE("a mat is combed out where that saves the style, clipped off where it saves nothing",
          "[groom]") {
    groom_table t;
    t.sheet = sheet_of(clip_to(mm(13)));
    t.patient.mats = {mat_in("tail", mat_grade::tangle, mm(12)),
                      mat_in("back", mat_grade::mat, mm(12))};
    groom g = t.plan();
    CHECK(of(g, "tail").combed_out);
    CHECK(of(g, "back").combed_out);
    CHECK(of(g, "back").came == outcome::as_wished);
    CHECK(of(g, "back").when == list::after_bath);
    REQUIRE(g.combed.size() == 2);
    CHECK(ids_of(g, {g.combed[0].zone, g.combed[1].zone}) ==
          std::vector<std::string>{"back", "tail"});
    CHECK(g.combed[0].takes == minutes(3));
    CHECK(g.combed[1].takes == minutes(1));
    // a short style comes out as wished under the mat
    t.sheet = sheet_of(clip_to(mm(6.4)));
    g = t.plan();
    CHECK_FALSE(of(g, "back").combed_out);
    CHECK(held(of(g, "back").how) == "blade 5F");
    // unless the groomer decides to comb it out
    t.patient.mats[1].comb_out = true;
    CHECK(of(t.plan(), "back").combed_out);
}

TEST_CASE("coat that the sheet leaves long is combed out, not shaved off", "[groom]") {
    groom_table t;
    instruction leave;
    leave.how = finish::leave;
    t.patient.departures = {{"ear", leave}};
    t.patient.mats = {mat_in("left ear", mat_grade::mat, mm(9))};
    const groom g = t.plan();
    CHECK(of(g, "left ear").combed_out);
    CHECK(of(g, "left ear").how.kind == tool_kind::none);
}

TEST_CASE("old and thin-skinned dogs are combed out for a shorter time", "[groom]") {
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::matted_area, mm(12)),
                      mat_in("chest", mat_grade::mat, mm(12))};
    t.patient.mats[0].comb_out = t.patient.mats[1].comb_out = true;
    CHECK(t.plan().combed.size() == 2);
    t.patient.thin_or_old = true;  // 10 minutes, the low end of common practice
    CHECK(t.plan().combed.size() == 1);
}

TEST_CASE("a mat on one side: the sound side keeps its length unless both are to match",
          "[groom]") {
    groom_table t;
    t.sheet = sheet_of(clip_to(mm(13)));
    t.patient.mats = {mat_in("left ear", mat_grade::pelt, mm(6))};
    groom g = t.plan();
    CHECK(held(of(g, "left ear").how) == "blade 10");
    CHECK(of(g, "right ear").came == outcome::as_wished);
    plan_request r = t.request();
    r.match_sides = true;
    g = make_plan(r);
    CHECK(of(g, "right ear").leaves->best == of(g, "left ear").leaves->best);
    CHECK(of(g, "back").came == outcome::as_wished);
}

TEST_CASE("combing out ends at fifteen minutes, to the minute", "[groom]") {
    // common practice: 15 usual, 10 to 20 in use; a matted area 10, a mat 3, a tangle 1 (our guess)
    groom_table t;
    const auto combed = [&](std::vector<mat_finding> mats) {
        for (mat_finding& m : mats) {
            m.comb_out = true;
        }
        t.patient.mats = std::move(mats);
        const groom g = t.plan();
        work sum{};
        for (const combing_out& c : g.combed) {
            sum += c.takes;
        }
        return in_minutes(sum);
    };
    CHECK(combed({mat_in("back", mat_grade::matted_area, mm(12)),
                  mat_in("loin", mat_grade::mat, mm(12)), mat_in("rump", mat_grade::tangle, mm(12)),
                  mat_in("tail", mat_grade::tangle, mm(12))}) == 15.0);
    CHECK(combed({mat_in("back", mat_grade::matted_area, mm(12)),
                  mat_in("loin", mat_grade::mat, mm(12)),
                  mat_in("rump", mat_grade::mat, mm(12))}) == 6.0);  // two saved, not one
    CHECK(combed({mat_in("back", mat_grade::pelt, mm(12))}) == 0.0);
    t.patient.size = dog_size::large;  // half as long again
    CHECK(combed({mat_in("back", mat_grade::matted_area, mm(12))}) == 15.0);
    t.patient.size = dog_size::giant;
    CHECK(combed({mat_in("back", mat_grade::matted_area, mm(12))}) == 0.0);
}

TEST_CASE("nobody combs out armpits, groin, belly or under the tail", "[groom]") {
    for (const char* z : {"armpit", "groin", "belly", "under-tail"}) {
        for (const mat_grade m : {mat_grade::tangle, mat_grade::mat}) {
            INFO(z << ", " << name(m));
            groom_table t;
            t.patient.mats = {mat_in(z, m, mm(12))};
            t.patient.mats[0].comb_out = true;
            const groom g = t.plan();
            CHECK(g.combed.empty());
            CHECK(of(g, z).came == outcome::clipped_under);
        }
    }
}

TEST_CASE("mats off ears or tail warn of swelling", "[groom]") {
    for (const char* z : {"ear", "left ear", "ear-edge", "tail", "tail-base"}) {
        INFO(z);
        groom_table t;
        t.patient.mats = {mat_in(z, mat_grade::pelt, mm(9))};
        CHECK(warns(t.plan(), caution_when::matted_ears_or_tail));
    }
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::mat, mm(9))};
    CHECK_FALSE(warns(t.plan(), caution_when::matted_ears_or_tail));
}

TEST_CASE("cautions stand where they apply and only there", "[groom]") {
    groom_table t;
    t.tools = drawer({"30", "10", "3F"});
    t.patient.now = {{"all", mm(40)}};
    const groom g = t.plan();
    CHECK(warns(g, caution_when::any_clipping));
    CHECK_FALSE(warns(g, caution_when::comb_used));
    CHECK(warns(g, caution_when::thin_skin));  // the belly by a bare 10
    for (const caution_when w : {caution_when::sun, caution_when::skin_finding, caution_when::stop,
                                 caution_when::old_or_thin, caution_when::against_short,
                                 caution_when::coat_change, caution_when::clip_under,
                                 caution_when::wire_clipped, caution_when::double_jacket_clipped}) {
        INFO(name(w));
        CHECK_FALSE(warns(g, w));
    }
    t.patient.thin_or_old = true;
    t.patient.coat_change = true;
    CHECK(warns(t.plan(), caution_when::old_or_thin));
    CHECK(warns(t.plan(), caution_when::coat_change));
    // the gravest first
    const groom many = t.plan();
    CHECK(std::is_sorted(many.cautions.begin(), many.cautions.end(),
                         [](const caution_line& a, const caution_line& b) {
                             return a.what.danger < b.what.danger;
                         }));
}

TEST_CASE("sun: pink skin under less than an inch of hair", "[groom]") {
    groom_table t;
    t.patient.pink_skin = true;
    CHECK(warns(t.plan(), caution_when::sun));
    t.sheet = sheet_of(clip_to(mm(38)));
    CHECK_FALSE(warns(t.plan(), caution_when::sun));
    t.sheet = sheet_of(clip_to(mm(13)));
    t.patient.pink_skin = false;
    CHECK_FALSE(warns(t.plan(), caution_when::sun));
}

TEST_CASE("a short blade against the lay warns, where the style allows it at all", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    instruction shaved = clip_with("10");
    shaved.way = lay_choice::against_lay;
    t.says("muzzle", shaved);
    const groom bearded = t.plan();
    CHECK(refused_as(of(bearded, "muzzle"), "blade 10", refusal::against_lay_here));
    t.sheet.face = "clean";
    const groom clean = t.plan();
    CHECK(title(of(clean, "muzzle").how) == "blade 10, against the lay");
    CHECK(warns(clean, caution_when::against_short));
}

TEST_CASE("show blades need show finish and the owner's word", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet.feet = "clean";
    t.says("feet", clip_with("40"));
    const auto by = [&] { return held(of(t.plan(), "feet").how); };
    CHECK(by() != "blade 40");
    t.sheet.show = true;
    CHECK(by() != "blade 40");
    CHECK_FALSE(t.plan().consents.empty());
    t.patient.consents = {"show-blades"};
    CHECK(by() == "blade 40");
    t.sheet.show = false;
    CHECK(by() != "blade 40");
}

TEST_CASE("what the sheet says the owner must sign is asked for once", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::wire;
    t.sheet = sheet_of(clip_with("10"));
    t.sheet.consent = {"clip-jacket", "photograph"};
    t.patient.consents = {"photograph"};
    const groom g = t.plan();
    REQUIRE(g.consents.size() == 2);
    CHECK(g.consents[0].id == "clip-jacket");
    CHECK_FALSE(g.consents[0].given);
    CHECK(g.consents[1].id == "photograph");
    CHECK(g.consents[1].given);
}

TEST_CASE("every worked zone stands in one block, and the minutes add up", "[groom]") {
    groom_table t;
    t.patient.mats = {mat_in("tail", mat_grade::tangle, mm(12)),
                      mat_in("left ear", mat_grade::mat, mm(8))};
    t.patient.skin = {{at("rump"), skin_state::irritated}};
    for (const int clippers : {1, 2}) {
        t.tools.clippers = clippers;
        const groom g = t.plan();
        std::multiset<std::size_t> worked;
        work sum{};
        std::set<std::pair<list, std::string>> blades;
        std::set<std::pair<list, std::string>> combs;
        for (const block& b : g.blocks) {
            work own{};
            for (const std::size_t i : b.zones) {
                worked.insert(i);
                own += g.zones[i].takes;
                CHECK(g.zones[i].when == b.when);
            }
            CHECK(own == b.takes);
            sum += own;
            if (b.how.kind == tool_kind::clip) {
                blades.emplace(b.when, b.how.tool.id);
                if (b.how.over) {
                    combs.emplace(b.when, b.how.over->id);
                }
            }
        }
        for (std::size_t i = 0; i < g.zones.size(); ++i) {
            CHECK(worked.count(i) == (g.zones[i].how.kind == tool_kind::none ? 0U : 1U));
        }
        for (const combing_out& c : g.combed) {
            sum += c.takes;
        }
        // a blade on a second clipper is taken up sooner (our guess)
        sum += minutes(clippers == 1 ? 0.5 : 0.1) * static_cast<std::int64_t>(blades.size()) +
               minutes(0.25) * static_cast<std::int64_t>(combs.size());
        CHECK(g.before + g.after == sum);
    }
}

TEST_CASE("the proof of a plan never claims what it hasn't", "[groom]") {
    for (const style& s : io::reference().styles) {
        INFO(s.id);
        groom_table t;
        t.sheet = s;
        const groom g = t.plan();
        CHECK(g.choice.sure.bound <= in_mmin(g.choice.cost));
        CHECK(g.choice.sure.optimal == (g.choice.sure.bound == in_mmin(g.choice.cost)));
    }
}

TEST_CASE("a whole reference of tools in one drawer can be planned with", "[groom]") {
    groom_table t;
    t.tools = kit{};
    for (const blade& b : io::reference().blades) {
        t.tools.blades.push_back({b, 1, {}, false, {}});
    }
    for (const comb& c : io::reference().combs) {
        t.tools.combs.push_back({c, 1, {}, {}});
    }
    t.both_ways = true;
    for (const style& s : io::reference().styles) {
        INFO(s.id);
        t.sheet = s;
        for (const coat& c : io::reference().coats) {
            t.patient.coat = c.id;
            t.patient.consents = {"clip-jacket"};
            t.patient.mats = {mat_in("back", mat_grade::mat, mm(30))};
            CHECK(t.plan().choice.sure.optimal);
            CHECK_FALSE(t.plan().blocks.empty());
        }
    }
}

TEST_CASE("a drawer beyond all bounds is refused in words", "[groom]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.both_ways = true;
    for (int i = 0; i < 80; ++i) {
        comb c = comb_of("13 mm");
        c.id += " no. " + std::to_string(i);
        t.tools.combs.push_back({c, 1, {}, {}});
    }
    CHECK_THROWS_WITH(t.plan(), match::ContainsSubstring("leave out of the kit"));
}

TEST_CASE("a dog whose coat nobody has looked at can't be planned", "[groom]") {
    groom_table t;
    t.patient.coat.reset();
    CHECK_THROWS_AS(t.plan(), error);
    groom_table unknown_place;
    unknown_place.says("wing", clip_to(mm(13)));
    CHECK_THROWS_AS(unknown_place.plan(), error);
}

TEST_CASE("what the forecast needs of a plan: lengths after the groom, what is held, the cap",
          "[groom]") {
    groom_table t;
    t.says("tail", finish_by(finish::leave)).says("ear", clip_to(mm(19)));
    const groom g = t.plan();
    const kept_coat k = after_groom(t.request(), g);
    REQUIRE(k.zones.size() == k.index.size());
    bool ear = false;
    for (std::size_t i = 0; i < k.zones.size(); ++i) {
        const zone_plan& z = g.zones[k.index[i]];
        REQUIRE(z.leaves);
        CHECK(k.zones[i].start == z.leaves->best);
        CHECK(k.zones[i].clock == day(21));  // brushed two or three times a week
        CHECK_FALSE(z.at == at("tail"));     // left, and its hair isn't known
        if (z.at == at("ear")) {
            ear = true;
            CHECK_THAT(in_mm(*k.zones[i].threshold), match::WithinAbs(38 * 0.85, 1e-9));
        }
    }
    CHECK(ear);
    CHECK(k.usual == day(56));
    t.sheet.longest_interval = day(42);
    CHECK(after_groom(t.request(), g).usual == day(42));
    t.sheet.longest_interval = day(84);
    CHECK(after_groom(t.request(), g).usual == day(56));
}

TEST_CASE("the eight outcomes have eight names", "[groom]") {
    std::set<std::string_view> names;
    for (int i = 0; i <= static_cast<int>(outcome::stuck); ++i) {
        CHECK(names.insert(name(static_cast<outcome>(i))).second);
    }
    CHECK(name(outcome::beyond_reach) == "beyond-reach");
    CHECK(names.size() == 8);
}
