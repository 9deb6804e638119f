// What stands beside a plan: other ways, the plan without a tool, why a setup, and what frees a place.
#include <algorithm>
#include <set>
#include <string>

#include <pelage/planner/alternatives.hpp>

#include "catch.hpp"
#include "generate/dice.hpp"
#include "planner/compile.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

using words = std::set<std::string>;

const zone& zone_of(const groom& g, std::size_t i) {
    return io::reference().dog_body.zones[g.zones[i].at.zone];
}

words ids_of(const groom& g, const std::vector<std::size_t>& zones) {
    words out;
    for (const std::size_t i : zones) {
        out.insert(zone_of(g, i).id);
    }
    return out;
}

style sheet_named(std::string_view id) {
    const auto& all = io::reference().styles;
    const auto s =
        std::find_if(all.begin(), all.end(), [&](const style& one) { return one.id == id; });
    REQUIRE(s != all.end());
    return *s;
}

const other_way* way(const std::vector<other_way>& all, way_kind what) {
    const auto w = std::find_if(all.begin(), all.end(),
                                [&](const other_way& one) { return one.what == what; });
    return w == all.end() ? nullptr : &*w;
}

/// The way of that kind beside the table's own plan, if there is one.
std::optional<other_way> way_of(const groom_table& t, way_kind what) {
    const std::vector<other_way> all = other_ways(t.request(), t.plan());
    const other_way* w = way(all, what);
    return w == nullptr ? std::nullopt : std::optional{*w};
}

work minutes_of(const groom& g) {
    return g.before + g.after;
}

std::size_t tools_held(const groom& g) {
    words out;
    for (const zone_plan& z : g.zones) {
        if (z.how.kind == tool_kind::clip && z.came != outcome::stuck) {
            out.insert("blade " + z.how.tool.id);
            if (z.how.over) {
                out.insert("comb " + z.how.over->id);
            }
        }
        if (z.off_by) {
            out.insert("blade " + z.off_by->tool.id);
        }
    }
    return out.size();
}

// ---- the plan's own problem, for brute force ----

struct own_problem {
    plan_request r;
    ready_kit ready;
    compiled_plan c;

    explicit own_problem(const groom_table& t) : r(t.request()), ready(r), c(compile(r, ready)) {}

    [[nodiscard]] words held(std::size_t column) const {
        const setup& s = ready.top().setups()[c.setup_of(column)];
        if (s.kind != tool_kind::clip) {
            return {};
        }
        return s.over ? words{"blade " + s.tool.id, "comb " + s.over->id}
                      : words{"blade " + s.tool.id};
    }
    /// With the blade that clips the place down first.
    [[nodiscard]] words held_in(std::size_t row, std::size_t column) const {
        words out = held(column);
        if (const std::size_t zone = c.rows[row]; c.in_two_passes(zone, column)) {
            out.insert("blade " + ready.top().setups()[c.under[zone]].tool.id);
        }
        return out;
    }
    [[nodiscard]] std::vector<std::string> tools() const {
        words out;
        for (std::size_t k = 0; k < c.setups; ++k) {
            const words h = held(k);
            out.insert(h.begin(), h.end());
        }
        return {out.begin(), out.end()};
    }
};

/// The least cost of any plan with at most `most` tools, every set of tools tried; nothing if none.
std::optional<work> cheapest_with(const own_problem& own, std::size_t most) {
    const std::vector<std::string> tools = own.tools();
    std::optional<work> best;
    for (std::uint32_t set = 0; set < 1U << tools.size(); ++set) {
        words in;
        for (std::size_t i = 0; i < tools.size(); ++i) {
            if ((set >> i & 1U) != 0) {
                in.insert(tools[i]);
            }
        }
        if (in.size() != most) {
            continue;  // fewer are among these
        }
        problem p = own.c.choice;
        for (std::size_t row = 0; row < p.zones.size(); ++row) {
            std::erase_if(p.zones[row], [&](const allowed_setup& s) {
                const words h = own.held_in(row, s.setup);
                return !std::includes(in.begin(), in.end(), h.begin(), h.end());
            });
        }
        const solution s = choose(own.r, own.ready, own.c, p);
        if (!s.setup.empty() && (!best || s.cost < *best)) {
            best = s.cost;
        }
    }
    return best;
}

struct tally {
    int offered = 0;
    int none = 0;
};

/// The way with fewer tools beside the table's plan against every set of tools.
void try_every_set(const groom_table& t, tally& seen) {
    const groom g = t.plan();
    const std::vector<other_way> all = other_ways(t.request(), g);
    const other_way* w = way(all, way_kind::fewer_tools);
    const std::size_t held = tools_held(g);
    const auto brute = held < 2 ? std::nullopt : cheapest_with(own_problem(t), held - 1);
    if (w == nullptr) {
        // nothing within an hour's cost, or the same as another body length
        const other_way* body = way(all, way_kind::body_length);
        const bool same = body != nullptr && brute && body->plan.choice.cost == *brute;
        ++seen.none;
        CHECK((!brute || same || *brute > g.choice.cost + minutes(60)));
        return;
    }
    ++seen.offered;
    REQUIRE(brute);
    CHECK(w->plan.choice.cost == *brute);
    CHECK(w->cheapest);
    CHECK(tools_held(w->plan) < held);
    CHECK(w->dropped.size() > w->taken.size());
    CHECK(w->dearer == *brute - g.choice.cost);
    CHECK(w->more == minutes_of(w->plan) - minutes_of(g));
}

}  // namespace

// ---- the body at another length ----

TEST_CASE("another body length lies beyond the tolerance from today's, the rest stays exact",
          "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    const groom g = t.plan();
    const auto w = way_of(t, way_kind::body_length);
    REQUIRE(w);
    CHECK_FALSE(w->beyond_sheet);
    REQUIRE_FALSE(w->about.empty());
    for (const std::size_t i : w->about) {
        INFO(zone_of(g, i).id);
        CHECK(zone_of(g, i).where == group::body);
        CHECK_FALSE(
            within(w->plan.zones[i].leaves->best, g.zones[i].leaves->best, g.zones[i].tolerated));
        CHECK(w->plan.zones[i].leaves->best == mm(16));  // the next comb up; shorter isn't allowed
    }
    CHECK(w->more == minutes_of(w->plan) - minutes_of(g));
    CHECK(w->dearer > work{});
}

TEST_CASE("a comb a millimetre longer is no other length: nobody sees it", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"13 mm", "16 mm", "19 mm"});
    t.tools.combs[1].measured = mm(14);
    const auto w = way_of(t, way_kind::body_length);
    REQUIRE(w);
    CHECK(w->plan.zones[w->about.front()].leaves->best == mm(19));
    t.tools.combs[1].measured = mm(15);  // beyond the tolerance of 1.95 mm it would be: 2 mm
    CHECK(way_of(t, way_kind::body_length)->plan.zones[w->about.front()].leaves->best == mm(15));
}

TEST_CASE("a sheet that takes the nearest is offered the cheaper side", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"10 mm", "13 mm", "19 mm"});
    instruction i = clip_to(mm(13));
    i.between = side_of_target::nearest;
    t.sheet = sheet_of(i);
    const auto w = way_of(t, way_kind::body_length);
    REQUIRE(w);
    CHECK(w->plan.zones[w->about.front()].leaves->best == mm(10));  // 3 mm off, not 6
    CHECK_FALSE(w->beyond_sheet);
}

TEST_CASE("where no longer is to be had the body goes shorter than the sheet, and that is said",
          "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"6 mm", "10 mm", "13 mm"});
    auto w = way_of(t, way_kind::body_length);
    REQUIRE(w);
    CHECK(w->beyond_sheet);
    for (const std::size_t i : w->about) {
        CHECK(w->plan.zones[i].leaves->best == mm(10));  // the nearest shorter
    }
    // longer combs lie in the drawer, but today's hair is no longer
    t.tools = drawer({"30", "10"}, {"6 mm", "10 mm", "13 mm", "19 mm"});
    CHECK_FALSE(way_of(t, way_kind::body_length)->beyond_sheet);
    t.patient.now = {{"all", mm(18)}};
    w = way_of(t, way_kind::body_length);
    REQUIRE(w);
    CHECK(w->beyond_sheet);
    CHECK(w->plan.zones[w->about.front()].leaves->best == mm(10));
}

TEST_CASE("a body that isn't clipped, or that only one comb fits, has no other length", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"13 mm"});
    t.says("body", clip_to(mm(13)));
    const auto w = way_of(t, way_kind::body_length);
    CHECK((!w || w->plan.zones[w->about.front()].how.tool.id == "10"));
    groom_table carded;
    carded.sheet = sheet_of(finish_by(finish::card));
    CHECK(other_ways(carded.request(), carded.plan()).empty());
}

TEST_CASE("a body clipped off under mats is no choice of length", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_of(finish_by(finish::leave));
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(9))};
    CHECK_FALSE(way_of(t, way_kind::body_length));
}

// ---- one tool fewer ----

TEST_CASE("one tool fewer is the cheapest plan with fewer tools: every set of tools tried",
          "[ways]") {
    // what a groomer might wish: several lengths, so that several tools are held
    const std::vector<std::vector<std::pair<std::string, instruction>>> sheets{
        {{"legs", clip_to(mm(16))}},
        {{"legs", clip_to(mm(16))}, {"ear", clip_to(mm(10))}},
        {{"legs", clip_to(mm(16))}, {"head", clip_to(mm(19))}, {"ear", clip_to(mm(10))}},
        {{"body", clip_with("7F")}, {"legs", clip_to(mm(13))}, {"tail", clip_to(mm(10))}},
        {{"body", clip_with("5F")}, {"ear", clip_with("10")}, {"behind-ear", clip_with("7F")}},
        {{"chest", clip_to(mm(10))}, {"ear", clip_to(mm(10))}, {"tail", clip_to(mm(16))}}};
    tally seen;
    for (const coat_class coat : {coat_class::curly, coat_class::wavy, coat_class::drop}) {
        for (const auto& sheet : sheets) {
            for (const side_of_target between : {side_of_target::longer, side_of_target::nearest}) {
                INFO(name(coat) << ", sheet " << &sheet - sheets.data() << ", " << name(between));
                groom_table t;
                t.patient.coat = coat;
                t.patient.mats = {mat_in("left ear", mat_grade::mat, mm(6))};
                t.tools = drawer({"30", "10", "7F", "5F"}, {"10 mm", "13 mm", "16 mm", "19 mm"});
                for (auto [whom, what] : sheet) {
                    what.between = between;
                    t.says(whom, what);
                }
                try_every_set(t, seen);
            }
        }
    }
    CHECK(seen.offered > 10);
    CHECK(seen.none > 0);
}

TEST_CASE("one tool fewer, on drawers and sheets drawn by lot", "[ways]") {
    generate::dice lot(20261125);
    tally seen;
    for (int n = 0; n < 80; ++n) {
        INFO("dog " << n);
        groom_table t;
        t.patient.coat = lot.roll(2) == 0 ? coat_class::curly : coat_class::drop;
        t.tools = drawer({"30", "15", "10", "9", "7F", "5F"}, {"6 mm", "13 mm"});
        t.tools.clippers = 1 + lot.roll(2);
        for (kit_comb& c : t.tools.combs) {
            c.measured = mm(3.0 + lot.roll(120) / 10.0);
        }
        for (const char* whom : {"all", "legs", "tail", "ear", "behind-ear"}) {
            instruction i = clip_to(mm(1.5 + lot.roll(90) / 10.0));
            i.between = side_of_target::nearest;
            i.tolerance = mm(0.2 + lot.roll(10) / 10.0);
            t.says(whom, i);
        }
        for (const char* where : {"chest", "left thigh", "right ear", "armpit"}) {
            if (lot.roll(2) == 0) {
                t.patient.mats.push_back(
                    mat_in(where, mat_grade::pelt, mm(2 + lot.roll(80) / 10.0)));
            }
        }
        try_every_set(t, seen);
    }
    CHECK(seen.offered > 40);
}

TEST_CASE("two combs may give way to one between them", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"10 mm", "13 mm", "16 mm"});
    t.tools.combs[2].measured = mm(11.5);
    const auto about = [](double wish) {
        instruction i = clip_to(mm(wish));
        i.between = side_of_target::nearest;
        i.tolerance = mm(1);
        return i;
    };
    t.sheet = sheet_of(about(13));
    t.says("legs", about(10)).says("tail", about(10)).says("head", about(10));
    CHECK(tools_held(t.plan()) == 4);  // 30, 10, and two combs
    const auto w = way_of(t, way_kind::fewer_tools);
    REQUIRE(w);
    const std::vector<std::string> dropped = names(w->dropped);
    CHECK(words(dropped.begin(), dropped.end()) == words{"comb 10 mm", "comb 13 mm"});
    CHECK(w->taken == std::vector<held_tool>{{true, "16 mm"}});
}

TEST_CASE("nothing is scissored to save a tool", "[ways]") {
    // blade 10 for the prep, a comb over the 30 for the rest: without them it would be scissored
    groom_table t;
    t.tools = drawer({"30", "10"}, {"13 mm"});
    CHECK(tools_held(t.plan()) == 3);
    CHECK_FALSE(way_of(t, way_kind::fewer_tools));
}

// ---- no scissoring ----

TEST_CASE(
    "no scissoring: clipped where the comb went before, never edges, brows, skirt, round feet",
    "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_named("low-upkeep");
    const groom g = t.plan();
    const auto w = way_of(t, way_kind::no_scissoring);
    REQUIRE(w);
    CHECK(ids_of(g, w->about) == words{"foreleg", "elbow", "thigh", "stifle", "hock",
                                       "second-thigh", "skull", "cheek", "muzzle", "throat"});
    work saved{};
    for (const std::size_t i : w->about) {
        CHECK(w->plan.zones[i].how_finished == finish::clip);
        CHECK(g.zones[i].how_finished == finish::comb_then_scissor);
        saved += g.zones[i].takes - w->plan.zones[i].takes;
    }
    CHECK(saved > work{});
    CHECK(w->more == work{} - saved);  // the tools are the same
}

TEST_CASE("no scissoring on any sheet touches what is scissored whatever the style", "[ways]") {
    for (const style& s : io::reference().styles) {
        for (const coat& c : io::reference().coats) {
            INFO(s.id << ", " << c.title);
            groom_table t;
            t.sheet = s;
            t.patient.coat = c.id;
            t.patient.consents = {"clip-jacket"};
            const groom g = t.plan();
            const auto w = way_of(t, way_kind::no_scissoring);
            if (!w) {
                continue;
            }
            CHECK(w->more < work{});
            for (std::size_t i = 0; i < g.zones.size(); ++i) {
                const std::string& id = zone_of(g, i).id;
                const bool scissored = g.zones[i].how_finished == finish::scissor;
                const bool furnishings =
                    scissored && (c.id == coat_class::wire || s.id == "spaniel-pattern");
                const bool shape = scissored && words{"skull", "muzzle", "tail"}.count(id) > 0;
                const bool beard = id == "muzzle" && s.face == "bearded";
                const bool round_feet = id == "feet" && s.feet != "clean";
                if (words{"skirt", "ear-edge", "eyebrow"}.count(id) > 0 || furnishings || shape ||
                    beard || round_feet) {
                    INFO(id);
                    CHECK(w->plan.zones[i].how_finished == g.zones[i].how_finished);
                }
            }
        }
    }
}

TEST_CASE("a beard and a topknot keep their scissors, whatever went before them", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.says("muzzle", finish_by(finish::comb_then_scissor, mm(16)))
        .says("cheek", finish_by(finish::comb_then_scissor, mm(16)))
        .says("skull", finish_by(finish::scissor, mm(16)));
    const auto about = [&] {
        const auto w = way_of(t, way_kind::no_scissoring);
        REQUIRE(w);
        return ids_of(t.plan(), w->about);
    };
    CHECK(about() == words{"muzzle", "cheek"});
    t.sheet.face = "bearded";
    CHECK(about() == words{"cheek"});
}

TEST_CASE("scissored legs of a companion coat may be combed to length instead", "[ways]") {
    groom_table t;
    t.sheet = sheet_named("scissored-legs");
    const groom g = t.plan();
    const auto w = way_of(t, way_kind::no_scissoring);
    REQUIRE(w);
    CHECK(ids_of(g, w->about).count("foreleg") == 1);
    CHECK(of(w->plan, "foreleg").how.over.has_value());
    t.patient.coat = coat_class::wire;  // there they are furnishings
    const auto wire = way_of(t, way_kind::no_scissoring);
    CHECK((!wire || ids_of(g, wire->about).count("foreleg") == 0));
}

TEST_CASE("a double coat's legs aren't clipped to save scissoring, unless the owner agreed",
          "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::double_long;
    t.sheet = sheet_named("double-tidy");
    CHECK_FALSE(way_of(t, way_kind::no_scissoring));
    t.patient.consents = {"clip-jacket"};
    const auto w = way_of(t, way_kind::no_scissoring);
    REQUIRE(w);
    CHECK(ids_of(t.plan(), w->about) == words{"hock"});
}

// ---- left and right alike ----

TEST_CASE("a mat on one ear: both lengths as planned, or both ears as the matted one", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.patient.mats = {mat_in("left ear", mat_grade::pelt, mm(6))};
    const groom g = t.plan();
    const auto w = way_of(t, way_kind::sides_alike);
    REQUIRE(w);
    REQUIRE(w->about.size() == 2);
    CHECK(g.zones[w->about[0]].leaves->best < g.zones[w->about[1]].leaves->best);
    CHECK(w->plan.zones[w->about[0]].leaves->best == w->plan.zones[w->about[1]].leaves->best);
    CHECK(of(w->plan, "left ear").leaves->best == of(g, "left ear").leaves->best);
    plan_request r = t.request();
    r.match_sides = true;
    CHECK(w->plan.choice.cost == make_plan(r).choice.cost);
    CHECK(way(other_ways(r, make_plan(r)), way_kind::sides_alike) == nullptr);
}

TEST_CASE("alike isn't offered where sides differ by hair, skin or sheet, or don't differ",
          "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    CHECK_FALSE(way_of(t, way_kind::sides_alike));
    t.patient.now = {{"left ear", mm(8)}};
    CHECK_FALSE(way_of(t, way_kind::sides_alike));
    t.patient.now.clear();
    t.patient.skin = {{at("left flank"), skin_state::irritated}};
    CHECK_FALSE(way_of(t, way_kind::sides_alike));
    t.patient.skin.clear();
    t.says("left ear", clip_to(mm(19)));
    CHECK_FALSE(way_of(t, way_kind::sides_alike));
    groom_table combed;  // the mat comes out, both ears as wished
    combed.patient.mats = {mat_in("left ear", mat_grade::tangle, mm(12))};
    CHECK_FALSE(way_of(combed, way_kind::sides_alike));
}

// ---- all of them ----

TEST_CASE("no other way is the plan itself or another way again, and none hurts more", "[ways]") {
    for (const style& s : io::reference().styles) {
        for (const coat_class c : {coat_class::curly, coat_class::drop, coat_class::wire}) {
            INFO(s.id << ", " << name(c));
            groom_table t;
            t.sheet = s;
            t.patient.coat = c;
            t.patient.mats = {mat_in("left ear", mat_grade::pelt, mm(6)),
                              mat_in("right armpit", mat_grade::mat)};
            const groom g = t.plan();
            std::set<std::vector<std::string>> seen;
            const auto all = other_ways(t.request(), g);
            for (const other_way& w : all) {
                INFO(name(w.what));
                std::vector<std::string> done;
                bool differs = false;
                for (std::size_t i = 0; i < g.zones.size(); ++i) {
                    const auto told = [](const zone_plan& z) {
                        return title(z.how) + std::string(name(z.how_finished)) +
                               (z.combed_out ? " combed" : "");
                    };
                    done.push_back(told(w.plan.zones[i]));
                    differs = differs || told(g.zones[i]) != done.back();
                }
                CHECK(differs);
                CHECK(seen.insert(done).second);
                CHECK(w.plan.stuck == g.stuck);
                CHECK_FALSE(w.changed.empty());
            }
        }
    }
}

TEST_CASE("a longer body that also spares a comb is told once", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"30", "10"}, {"13 mm", "16 mm"});
    t.sheet = sheet_of(clip_to(mm(16)));
    t.says("body", clip_to(mm(13)));
    const auto all = other_ways(t.request(), t.plan());
    REQUIRE(all.size() == 1);
    CHECK(all[0].what == way_kind::body_length);
    CHECK(all[0].dropped == std::vector<held_tool>{{true, "13 mm"}});
}

TEST_CASE("felted to the skin: no other way is offered", "[ways]") {
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::pelt)};
    t.patient.mats[0].to_skin = true;
    const beside b = beside_plan(t.request(), t.plan(), true);
    CHECK(b.ways.empty());
    CHECK(b.without.empty());
    CHECK(b.why.empty());
    REQUIRE(b.stuck.size() == 1);
    CHECK(b.stuck[0].frees.empty());
    REQUIRE(b.stuck[0].rules.size() == 1);
    CHECK(name(b.stuck[0].rules[0]) == "mat-to-skin");
}

// ---- without it ----

TEST_CASE("without each tool: the plan of a kit that lacks it", "[ways]") {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_named("low-upkeep");
    const groom g = t.plan();
    const auto all = without_each_tool(t.request(), g);
    CHECK(all.size() == tools_held(g));
    for (const without_tool& w : all) {
        INFO(name(w.tool));
        groom_table lacking = t;
        std::erase_if(lacking.tools.blades, [&](const kit_blade& b) {
            return w.tool == held_tool{false, b.spec.id};
        });
        std::erase_if(lacking.tools.combs, [&](const kit_comb& c) {
            return w.tool == held_tool{true, c.spec.id};
        });
        CHECK(lacking.tools.blades.size() + lacking.tools.combs.size() + 1 ==
              t.tools.blades.size() + t.tools.combs.size());
        const groom plan = lacking.plan();
        CHECK(w.plan.choice.cost == plan.choice.cost);
        CHECK(w.plan.stuck == plan.stuck);
        CHECK(w.stuck == plan.stuck);  // nothing was stuck before
        CHECK(w.more == minutes_of(plan) - minutes_of(g));
        CHECK_FALSE(w.changed.empty());
    }
    const auto ten = std::find_if(all.begin(), all.end(), [](const without_tool& w) {
        return w.tool == held_tool{false, "10"};
    });
    REQUIRE(ten != all.end());
    CHECK(ten->in_kit == 2);
    CHECK(ids_of(g, ten->stuck) == words{"belly", "groin", "armpit"});
}

// ---- why this ----

TEST_CASE("the next best plan with another setup in a place: every other setup tried", "[ways]") {
    for (const coat_class coat : {coat_class::curly, coat_class::drop}) {
        groom_table t;
        t.patient.coat = coat;
        t.tools = drawer({"30", "15", "10", "9"}, {"10 mm", "13 mm", "16 mm"});
        t.sheet = sheet_of(clip_to(mm(13)));
        t.says("legs", clip_to(mm(16))).says("ear", clip_to(mm(10)));
        t.patient.mats = {mat_in("back", mat_grade::mat, mm(8))};
        const groom g = t.plan();
        const own_problem own(t);
        const auto why = reasons_why(t.request(), g);
        REQUIRE_FALSE(why.empty());
        for (const reason_why& one : why) {
            INFO(name(coat) << ", " << zone_of(g, one.zone).id);
            const auto at_row = std::find(own.c.rows.begin(), own.c.rows.end(), one.zone);
            const auto row = static_cast<std::size_t>(at_row - own.c.rows.begin());
            std::optional<work> best;
            for (const allowed_setup& other : own.c.choice.zones[row]) {
                problem p = own.c.choice;
                p.zones[row] = {other};
                const solution s = other.setup == g.choice.setup[row] ? solution{} : solve(p);
                if (!s.setup.empty() && (!best || s.cost < *best)) {
                    best = s.cost;
                }
            }
            CHECK(one.next.has_value() == best.has_value());
            if (best) {
                CHECK(one.dearer == *best - g.choice.cost);
                CHECK(title(*one.next) + (one.next_combed ? "c" : "") !=
                      title(g.zones[one.zone].how) + (g.zones[one.zone].combed_out ? "c" : ""));
            }
        }
    }
}

TEST_CASE("why: nothing else, the wish, what is in the hand, the step, the time", "[ways]") {
    const auto why_at = [](const groom_table& t, const char* word) {
        const groom g = t.plan();
        for (const reason_why& one : reasons_why(t.request(), g)) {
            if (g.zones[one.zone].at == at(word)) {
                return one;
            }
        }
        throw std::logic_error("no reason given");
    };
    groom_table t;
    t.patient.coat = coat_class::curly;
    CHECK(why_at(t, "belly").why == chosen_for::only_one);
    CHECK_FALSE(why_at(t, "belly").next);
    t.says("legs", clip_to(mm(16)));
    CHECK(why_at(t, "foreleg").why == chosen_for::wish);
    instruction legs = clip_to(mm(16));
    legs.tolerance = mm(0.5);
    t.says("legs", legs);

    // 15 mm would suit the tail, but the 16 is in the hand for the legs
    t.tools = drawer({"30", "10"}, {"13 mm", "16 mm", "19 mm"});
    t.tools.combs[2].measured = mm(15);
    instruction tail = clip_to(mm(15));
    tail.tolerance = mm(2);
    t.says("tail", tail);
    const reason_why held_anyway = why_at(t, "tail");
    CHECK(held_anyway.why == chosen_for::in_hand);
    REQUIRE(held_anyway.alone);
    CHECK(held(*held_anyway.alone) == "comb 19 mm over blade 30");

    // neighbours longer than a lone place would be: the step decides, both combs being in the hand
    groom_table step;
    step.patient.coat = coat_class::curly;
    step.tools = drawer({"30", "10"}, {"10 mm", "19 mm"});
    instruction nearest = clip_to(mm(14));
    nearest.between = side_of_target::nearest;
    nearest.tolerance = mm(5);
    step.sheet = sheet_of(clip_to(mm(19)));
    instruction loin = nearest;
    step.says("loin", loin).says("ear", clip_to(mm(10)));
    step.rules.prices.seam_per_mm = plain(minutes(5.0));
    CHECK(why_at(step, "loin").why == chosen_for::neighbours);

    groom_table late;  // two mats of ten minutes each: there is time for one
    late.sheet = sheet_of(clip_to(mm(25)));
    late.patient.mats = {mat_in("skull", mat_grade::matted_area, mm(9)),
                         mat_in("throat", mat_grade::matted_area, mm(9))};
    const groom g = late.plan();
    const char* clipped = of(g, "skull").combed_out ? "throat" : "skull";
    CHECK(why_at(late, clipped).why == chosen_for::no_time);
}

// ---- nothing feasible ----

namespace {

infeasible_zone conflict_at(const groom_table& t, std::string_view word) {
    const groom g = t.plan();
    for (const infeasible_zone& c : infeasible_zones(t.request(), g)) {
        if (g.zones[c.zone].at == at(word)) {
            return c;
        }
    }
    throw std::logic_error("no conflict at " + std::string(word));
}

std::vector<std::string> told(const infeasible_zone& c) {
    std::vector<std::string> out;
    for (const remedy_set& f : c.frees) {
        std::string text;
        for (const remedy_step& w : f.by) {
            text += (text.empty() ? "" : " + ") + std::string(name(w.how)) +
                    (w.id.empty() ? "" : " " + w.id);
        }
        out.push_back(text);
    }
    return out;
}

using texts = std::vector<std::string>;

}  // namespace

TEST_CASE("free hair nobody measured, and no 10 to try: measure it, or get one", "[ways]") {
    groom_table t;
    t.tools = drawer({"30", "9", "7F"}, {"13 mm"});
    t.patient.mats = {mat_in("left armpit", mat_grade::mat)};
    const infeasible_zone c = conflict_at(t, "left armpit");
    CHECK(told(c) == texts{"measure-hair", "blade 10", "blade 10W"});
    CHECK(name(c.rules.front()) == "free-hair-unknown");
    // a 9 is 2 mm, three quarters of 2.7 mm; enough is enough, and no less would do
    t.tools = drawer({"30", "10", "9", "7F"}, {"13 mm"});
    t.patient.mats[0].free_hair = mm(2);
    CHECK_FALSE(of(t.plan(), "left armpit").came == outcome::stuck);
    t.patient.mats[0].free_hair = mm(1.9);
    CHECK(of(t.plan(), "left armpit").came == outcome::stuck);
}

TEST_CASE("too little free hair under a pelt: nothing frees it, a veterinarian decides", "[ways]") {
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(1.9))};
    const infeasible_zone c = conflict_at(t, "back");
    CHECK(c.frees.empty());
    CHECK(c.veterinarian);
    REQUIRE(c.rules.size() == 2);
    CHECK(name(c.rules[0]) == "under-mat-too-long");
    CHECK(name(c.rules[1]) == "pelt-combed-out");
    t.patient.mats = {mat_in("armpit", mat_grade::mat, mm(1.9))};
    CHECK(conflict_at(t, "armpit").frees.empty());
    CHECK(name(conflict_at(t, "armpit").rules[1]) == "never-combed-out");
}

TEST_CASE("more mats than there is time for: the one left over is combed out another day",
          "[ways]") {
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::matted_area, mm(1)),
                      mat_in("rump", mat_grade::matted_area, mm(1))};
    for (mat_finding& m : t.patient.mats) {
        m.comb_out = true;  // so little hair is held by the groomer's own decision
    }
    const groom g = t.plan();
    const char* left = of(g, "back").combed_out ? "rump" : "back";
    REQUIRE(of(g, left).came == outcome::stuck);
    const infeasible_zone c = conflict_at(t, left);
    CHECK(told(c) == texts{"comb-out"});
    CHECK(c.frees[0].by[0].takes == minutes(10));
    CHECK_FALSE(c.veterinarian);
    CHECK(name(c.rules.back()) == "comb-out-limit");
}

TEST_CASE("combing out that takes longer than the dog may bear is no hint", "[ways]") {
    groom_table t;
    t.patient.size = dog_size::giant;  // 20 minutes, and 15 are the limit
    t.patient.mats = {mat_in("back", mat_grade::matted_area, mm(1))};
    t.patient.mats.front().comb_out = true;
    const infeasible_zone c = conflict_at(t, "back");
    CHECK(c.frees.empty());
    CHECK(c.veterinarian);
    CHECK(name(c.rules.back()) == "comb-out-limit");
}

TEST_CASE("a blade named for a mat goes under that very mat", "[ways]") {
    // a 7F would do the ear, so that the muzzle could be combed out: it goes under no 0.7 mm
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.tools = drawer({"5F", "4F"});
    t.patient.mats = {mat_in("right ear", mat_grade::mat, mm(7.2)),
                      mat_in("muzzle", mat_grade::mat, mm(0.7))};
    for (const infeasible_zone& c : infeasible_zones(t.request(), t.plan())) {
        const place& where = t.plan().zones[c.zone].at;
        for (const remedy_set& f : where == at("muzzle") ? c.frees : std::vector<remedy_set>{}) {
            CHECK(f.by.front().how != remedy_kind::blade);
        }
    }
}

TEST_CASE("a blade measured at another length than it is made for is measured again", "[ways]") {
    groom_table t;
    t.tools = drawer({"10"});
    t.tools.blades[0].measured = mm(0.91);
    t.sheet = sheet_of(finish_by(finish::leave));
    const infeasible_zone c = conflict_at(t, "belly");
    CHECK_FALSE(c.veterinarian);
    CHECK(told(c) == texts{"measure-tool 10"});
    CHECK(c.frees[0].by[0].least == mm(1.5));
    t.tools.blades[0].measured = mm(1.6);  // as they are made
    CHECK(infeasible_zones(t.request(), t.plan()).empty());
}

TEST_CASE("a drawer without the customary blade: it is named, the usual before the rare",
          "[ways]") {
    groom_table t;
    t.tools = drawer({"40", "30"}, {"13 mm"});
    CHECK(told(conflict_at(t, "belly")) == texts{"blade 10"});
    CHECK(told(conflict_at(t, "sanitary")) == texts{"blade 10", "blade 9", "blade 15"});
    CHECK(name(conflict_at(t, "belly").rules[0]) == "not-in-kit");
    // out for sharpening is as good as not there
    t.tools = drawer({"30", "10"}, {"13 mm"});
    t.tools.blades[1].out = true;
    CHECK(told(conflict_at(t, "belly")) == texts{"blade 10"});
    // under a mat the longest that fits first, as the plan would take it
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(5))};
    t.tools = drawer({"40"}, {});
    CHECK(told(conflict_at(t, "back")) == texts{"blade 7F", "blade 9", "blade 10"});
}

TEST_CASE("show blades under a mat on clean feet: the owner's consent frees it", "[ways]") {
    groom_table t;
    t.tools = drawer({"40", "10"}, {"13 mm"});
    t.sheet.feet = "clean";
    t.sheet.show = true;
    t.patient.mats = {mat_in("feet", mat_grade::pelt, mm(0.4))};
    const infeasible_zone c = conflict_at(t, "feet");
    CHECK(told(c) == texts{"consent show-blades"});
    CHECK(name(c.rules[0]) == "bare-short");
    t.sheet.show = false;  // the sheet doesn't ask for it: consent alone is nothing
    CHECK(conflict_at(t, "feet").frees.empty());
}

TEST_CASE("hurt skin is left to heal; with a mat on it both stand in the way", "[ways]") {
    groom_table t;
    t.patient.skin = {{at("left flank"), skin_state::irritated}};
    CHECK(told(conflict_at(t, "left flank")) == texts{"heal"});
    CHECK(name(conflict_at(t, "left flank").rules[0]) == "skin-found");
    t.patient.mats = {mat_in("left flank", mat_grade::pelt)};
    CHECK(told(conflict_at(t, "left flank")) == texts{"heal"});  // a 10 is tried then
    t.patient.mats[0].free_hair = mm(1);
    CHECK(conflict_at(t, "left flank").frees.empty());
}

TEST_CASE("what frees a place does, and no part of it would", "[ways]") {
    // each named set applied by hand, whole and short of one
    groom_table t;
    t.tools = drawer({"40"}, {"13 mm"});
    t.patient.skin = {{at("left ear"), skin_state::irritated}};
    t.patient.mats = {mat_in("left ear", mat_grade::pelt)};
    const infeasible_zone c = conflict_at(t, "left ear");
    REQUIRE_FALSE(c.frees.empty());
    const auto free_with = [&](const remedy_set& f, std::size_t without) {
        groom_table u = t;
        for (std::size_t i = 0; i < f.by.size(); ++i) {
            const remedy_step& w = f.by[i];
            if (i == without) {
                continue;
            }
            if (w.how == remedy_kind::heal) {
                u.patient.skin.clear();
            } else if (w.how == remedy_kind::comb_tip) {
                u.patient.mats[0].comb_passes = true;
            } else if (w.how == remedy_kind::measure_hair) {
                u.patient.mats[0].free_hair = w.least;
            } else {
                REQUIRE(w.how == remedy_kind::blade);
                u.tools.blades.push_back({blade_of(w.id), 1, {}, false, {}});
            }
        }
        const outcome came = of(u.plan(), "left ear").came;
        return came != outcome::stuck && came != outcome::skin_left;
    };
    for (const remedy_set& f : c.frees) {
        CHECK(f.by.size() == c.frees.front().by.size());
        CHECK(free_with(f, f.by.size()));
        for (std::size_t i = 0; i < f.by.size(); ++i) {
            CHECK_FALSE(free_with(f, i));
        }
    }
}

TEST_CASE("a dog without trouble has no conflicts", "[ways]") {
    groom_table t;
    CHECK(infeasible_zones(t.request(), t.plan()).empty());
    t.patient.now = {{"all", mm(8)}};  // hair too short is no conflict
    CHECK(infeasible_zones(t.request(), t.plan()).empty());
}
