// What the intake finds and what comes of it: budgets, the stop list, edges, growing back.
#include <set>

#include <pelage/data/read.hpp>
#include <pelage/data/write_dog.hpp>
#include <pelage/planner/grow_back.hpp>

#include "catch.hpp"
#include "generate/dice.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

work combing_minutes(const groom& g) {
    work sum{};
    for (const combing_out& c : g.combed) {
        sum += c.takes;
    }
    return sum;
}

dog read_text(const std::string& text) {
    return io::read_dog({"dog.toml", text}, io::reference(), io::reference().styles);
}

bool warns_at(const groom& g, caution_when w, const std::string& where) {
    return std::any_of(g.cautions.begin(), g.cautions.end(), [&](const caution_line& c) {
        const auto there = titles(io::reference().dog_body, c.where);
        return c.what.when == w && std::find(there.begin(), there.end(), where) != there.end();
    });
}

}  // namespace

TEST_CASE("a dog's file says what the intake found", "[intake]") {
    const dog d = read_text(
        "format = 1\nid = \"moss\"\nname = \"Moss\"\nsize = \"small\"\ncoat = \"curly\"\n"
        "age = \"old\"\noutdoors = \"much\"\nshedding = true\nhealth = \"a heart murmur\"\n"
        "sensitive = [\"feet\", \"left ear\"]\nsigns = [\"hair-band\"]\n");
    CHECK(d.age == life_stage::old);
    CHECK(d.out == outdoors::much);
    CHECK(d.shedding);
    CHECK(d.health == "a heart murmur");
    CHECK(d.sensitive == std::vector<std::string>{"feet", "left ear"});
    CHECK(d.signs == std::vector<stop_sign>{stop_sign::hair_band});
    CHECK(tender(d));
    CHECK(bears_less(d));
}

TEST_CASE("combing out: fifteen minutes, ten for the old, the ill, the young and the thin-skinned",
          "[intake]") {
    // common practice, no source: 15 usual, 10 to 20 in use, less for such dogs; the 10 is its low end
    groom_table t;
    for (const char* z : {"back", "loin", "rump", "chest", "neck"}) {
        t.patient.mats.push_back(mat_in(z, mat_grade::mat, mm(12)));
        t.patient.mats.back().comb_out = true;
    }
    const dog sound = t.patient;
    CHECK(combing_minutes(t.plan()) == minutes(15));
    t.patient.age = life_stage::adult;
    CHECK(combing_minutes(t.plan()) == minutes(15));
    t.patchwork = true;
    const auto bears = [&](auto change) {
        t.patient = sound;
        change(t.patient);
        return combing_minutes(t.plan());
    };
    CHECK(bears([](dog& d) { d.age = life_stage::old; }) == minutes(9));  // three of five mats
    CHECK(bears([](dog& d) { d.age = life_stage::young; }) == minutes(9));
    CHECK(bears([](dog& d) { d.health = "a heart murmur"; }) == minutes(9));
    CHECK(bears([](dog& d) { d.thin_or_old = true; }) == minutes(9));
    // old and ill as well: five, our guess; a mat takes three
    CHECK(bears([](dog& d) {
              d.age = life_stage::old;
              d.health = "a heart murmur";
          }) == minutes(3));
    const auto& limit = io::reference().rules.refusal.comb_out_limit;
    CHECK(limit.why.how == basis::practice);
    CHECK(limit.low == minutes(10));
    CHECK(limit.high == minutes(20));
}

TEST_CASE("hardly any time in armpit, groin, belly and under the tail: none", "[intake]") {
    std::set<std::string> none;
    for (const zone& z : io::reference().dog_body.zones) {
        if (z.has(zone_use::never_demat)) {
            none.insert(z.id);
        }
    }
    CHECK(none == std::set<std::string>{"armpit", "groin", "belly", "under-tail"});
}

TEST_CASE("an old dog gets no skip teeth, whatever its skin is said to be", "[intake]") {
    groom_table t;
    t.sheet = sheet_of(clip_with("7"));
    CHECK(held(of(t.plan(), "back").how) == "blade 7");
    t.patient.age = life_stage::old;
    CHECK(of(t.plan(), "back").how.tool.cut == teeth::full);
}

TEST_CASE("a sign of the stop list ends the groom", "[intake]") {
    const auto& stops = io::reference().stops;
    REQUIRE(stops.size() == stop_sign_names.size());
    for (const stop_rule& rule : stops) {
        INFO(name(rule.sign));
        groom_table t;
        t.patient.signs = {rule.sign};
        const groom g = t.plan();
        CHECK(g.stopped());
        CHECK(g.signs == std::vector<stop_sign>{rule.sign});
        CHECK(g.blocks.empty());
        CHECK_FALSE(warns(g, caution_when::any_clipping));
        CHECK_FALSE(rule.seen.empty());
        CHECK_THAT(rule.act, !match::ContainsSubstring("sedate the"));
    }
}

TEST_CASE("a wound under a mat is on the stop list; beside one, or under a tangle, it isn't",
          "[intake]") {
    groom_table t;
    t.patient.skin = {{at("back"), skin_state::broken}};
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(6))};
    CHECK(t.plan().signs == std::vector<stop_sign>{stop_sign::wounds});
    t.patient.mats = {mat_in("loin", mat_grade::pelt, mm(6))};
    CHECK_FALSE(t.plan().stopped());
    t.patient.mats = {mat_in("back", mat_grade::tangle, mm(6))};
    CHECK_FALSE(t.plan().stopped());
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(6))};
    t.patient.skin = {{at("back"), skin_state::irritated}};
    CHECK_FALSE(t.plan().stopped());
}

TEST_CASE("each new caution where it applies and only there", "[intake]") {
    groom_table t;
    t.today = parse_date("2026-11-25");
    t.patient.now = {{"all", mm(40)}};
    const groom plain = t.plan();
    for (const caution_when w :
         {caution_when::sun_hours, caution_when::young, caution_when::ill, caution_when::sensitive,
          caution_when::shedding, caution_when::long_since, caution_when::combing_out,
          caution_when::fleas}) {
        INFO(name(w));
        CHECK_FALSE(warns(plain, w));
    }
    t.patient.age = life_stage::young;
    t.patient.health = "one kidney";
    t.patient.sensitive = {"left ear"};
    t.patient.shedding = true;  // said of a wavy coat: it has no undercoat to shed
    t.patient.visits = {{*parse_date("2026-09-29"), "full", {}}};
    t.patient.mats = {mat_in("tail", mat_grade::tangle, mm(9))};
    t.patient.skin = {{at("belly"), skin_state::fleas}};
    t.patient.pink_skin = true;
    t.patient.out = outdoors::much;
    groom g = t.plan();
    CHECK(warns(g, caution_when::young));
    CHECK(warns(g, caution_when::ill));
    CHECK(warns_at(g, caution_when::sensitive, "ears"));
    CHECK_FALSE(warns_at(g, caution_when::sensitive, "back"));
    CHECK_FALSE(warns(g, caution_when::shedding));
    CHECK(warns(g, caution_when::long_since));  // 57 days, the coat's usual interval is 56
    CHECK(warns_at(g, caution_when::combing_out, "tail"));
    CHECK(warns_at(g, caution_when::fleas, "belly"));
    CHECK(warns(g, caution_when::sun_hours));
    t.patient.visits[0].on = *parse_date("2026-09-30");
    t.patient.out = outdoors::little;  // who is hardly out needs no telling
    g = t.plan();
    CHECK_FALSE(warns(g, caution_when::long_since));
    CHECK_FALSE(warns(g, caution_when::sun));
    CHECK_FALSE(warns(g, caution_when::sun_hours));
    // gravest first
    CHECK(std::is_sorted(g.cautions.begin(), g.cautions.end(),
                         [](const caution_line& a, const caution_line& b) {
                             return a.what.danger < b.what.danger;
                         }));
}

TEST_CASE("the double coat's caution carries its study: 11 of 90", "[intake]") {
    // Kalchofner Guerrero et al. 2014, doi 10.1055/s-0038-1623752
    const auto& all = io::reference().cautions;
    const auto c = std::find_if(all.begin(), all.end(),
                                [](const caution& one) { return one.id == "double-clipped"; });
    REQUIRE(c != all.end());
    CHECK_THAT(c->text, match::ContainsSubstring("11 of 90"));
    CHECK(c->why.how == basis::published);
    CHECK(c->why.from == "kalchofner-2014");
    CHECK_THAT(io::reference().rules.growth.delayed_share.best,
               match::WithinAbs(11.0 / 90.0, 5e-5));
}

TEST_CASE("an ear's edge goes with the ear whose mats are clipped off", "[intake]") {
    groom_table t;
    t.sheet = sheet_of(clip_to(mm(13)));
    t.says("ear-edge", finish_by(finish::scissor, mm(25)));
    t.patient.mats = {mat_in("left ear", mat_grade::pelt, mm(6))};
    groom g = t.plan();
    const zone_plan& left = of(g, "edge of the left ear");
    CHECK(left.came == outcome::goes_along);
    CHECK(of(g, "left ear").how.tool.id == "10");  // it is a pelt
    CHECK(left.leaves->best == mm(3.0));           // the shortest that is scissored
    CHECK(of(g, "edge of the right ear").came == outcome::as_wished);
    CHECK(of(g, "edge of the right ear").leaves->best == mm(25));
    // unless the groomer says otherwise of that edge
    t.patient.departures = {{"left ear-edge", finish_by(finish::scissor, mm(25))}};
    g = t.plan();
    CHECK(of(g, "edge of the left ear").came == outcome::as_wished);
    // what is said of the whole head is not said of the edge
    instruction shorter_head;
    shorter_head.target = mm(16);
    t.patient.departures = {{"head", shorter_head}};
    g = t.plan();
    CHECK(of(g, "edge of the left ear").came == outcome::goes_along);
    // combed out, the ear keeps its length and so does its edge
    t.patient.departures.clear();
    t.patient.mats = {mat_in("left ear", mat_grade::tangle, mm(6))};
    g = t.plan();
    CHECK(of(g, "left ear").combed_out);
    CHECK(of(g, "edge of the left ear").came == outcome::as_wished);
}

namespace {

/// What it costs beyond the work that a mat is clipped off which could be combed out, in the words of
/// reference/prices.toml: an hour, and five minutes for each week the coat needs to be back.
work lost_by(const groom_table& t, const zone_plan& z) {
    const coat& c = coat_of(io::reference(), *t.patient.coat);
    const length wished = z.target ? std::min(*z.target, *z.now) : *z.now;
    const bool lost =
        in_hundredths(z.leaves->best) < in_hundredths(wished - (z.target ? z.tolerated : mm(0)));
    const bool cut = z.how_finished == finish::clip || z.how_finished == finish::scissor ||
                     z.how_finished == finish::comb_then_scissor;
    const bool short_anyway = cut && z.target && in_hundredths(*z.target) < 700;
    if (z.mat != mat_grade::tangle && (!lost || short_anyway)) {
        return {};
    }
    const double weeks =
        lost ? in_mm(wished - z.leaves->best) / in_mm_per_day(c.rate.median) / 7.0 : 0.0;
    return minutes(60) + minutes(5.0 * weeks);
}

}  // namespace

TEST_CASE("which mats are combed out: as good as the best of all sets of them", "[intake]") {
    // every set of mats that fits the budget, planned as if combed out before; the rest as pelts of the
    // same stiffness, which never are. No plan may be cheaper than the planner's own, and none that clips
    // off a mat for which there was time. Plans are compared as on a medium dog.
    generate::dice lot(20261126);
    const std::vector<std::string> zones{
        "neck",  "chest",    "back",  "loin",         "rump",  "tail", "foreleg",
        "thigh", "shoulder", "skull", "second-thigh", "muzzle"};  // a pelt on an ear is another thing
    int chosen = 0;
    int refused = 0;
    for (int n = 0; n < 60; ++n) {
        groom_table t;
        t.patchwork = true;
        t.rules.prices.felt_pelt = t.rules.prices.felt_area = t.rules.prices.felt_mat = plain(1.0);
        t.sheet = io::reference().styles[static_cast<std::size_t>(
            lot.roll(static_cast<int>(io::reference().styles.size())))];
        t.patient.coat = lot.roll(2) == 0 ? coat_class::curly : coat_class::drop;
        t.patient.size = static_cast<dog_size>(lot.roll(5));
        t.patient.now = {{"all", mm(30 + lot.roll(30))}};
        t.patient.age = lot.roll(3) == 0 ? life_stage::old : life_stage::adult;
        std::vector<mat_finding> mats;
        for (const std::string& z : zones) {
            if (mats.size() < 5 && lot.roll(2) == 0) {
                mats.push_back(mat_in(z, static_cast<mat_grade>(lot.roll(3)), mm(4 + lot.roll(8))));
            }
        }
        t.patient.mats = mats;
        plan_request r = t.request();
        r.reasons = false;
        const groom g = make_plan(r);
        chosen += static_cast<int>(g.combed.size());
        refused += static_cast<int>(mats.size() - g.combed.size());
        const work budget = t.patient.age == life_stage::old ? minutes(10) : minutes(15);
        work spent{};
        for (const combing_out& c : g.combed) {
            spent += c.takes;
        }
        work best = minutes(10'000);
        for (unsigned set = 0; set < (1U << mats.size()); ++set) {
            work combing{};
            work cost{};
            t.patient.mats.clear();
            for (std::size_t i = 0; i < mats.size(); ++i) {
                if ((set >> i & 1U) != 0) {
                    combing += *comb_out_work(mats[i].grade, t.patient.size, t.rules.prices);
                    cost += *comb_out_work(mats[i].grade, dog_size::medium, t.rules.prices);
                } else {
                    t.patient.mats.push_back(mats[i]);
                    t.patient.mats.back().grade = mat_grade::pelt;
                }
            }
            if (combing <= budget) {
                plan_request other = t.request();
                other.reasons = false;
                const groom p = make_plan(other);
                for (const zone_plan& z : p.zones) {
                    if (z.mat) {
                        zone_plan as_found = z;
                        const auto m = std::find_if(mats.begin(), mats.end(), [&](const auto& one) {
                            return one.at.zone == z.at.zone;
                        });
                        as_found.mat = m->grade;
                        cost += lost_by(t, as_found);
                    }
                }
                best = std::min(best, p.choice.cost + cost);
            }
        }
        INFO("dog " << n << ", sheet " << t.sheet.id);
        CHECK(g.choice.sure.optimal);
        CHECK(std::abs(in_mmin(g.choice.cost) - in_mmin(best)) <=
              5);  // weeks are rounded mat by mat
        for (const zone_plan& z : g.zones) {
            if (z.mat && !z.combed_out && lost_by(t, z) > work{}) {
                CHECK(spent + *comb_out_work(*z.mat, t.patient.size, t.rules.prices) > budget);
            }
        }
    }
    CHECK(chosen > 30);
    CHECK(refused > 10);
}

TEST_CASE("growing back: what is kept long, and what is taken down evenly", "[intake]") {
    groom_table t;
    t.sheet = sheet_of(clip_to(mm(25)));
    t.patient.coat = coat_class::curly;
    t.patient.now = {{"all", mm(50)}};
    t.patient.mats = {mat_in("left foreleg", mat_grade::pelt, mm(9))};
    const plan_request r = t.request();
    const groom g = make_plan(r);
    const auto ways = ways_to_grow_back(r, g);
    REQUIRE(ways.size() == 3);
    CHECK(ways[0].how == grow_back::keep_long);
    CHECK(ways[0].down.empty());
    CHECK(ways[0].more == work{});
    const length left = of(g, "left foreleg").leaves->best;
    CHECK(ways[0].from == left);
    CHECK(ways[0].to == mm(25));
    // closed form: the time from there to the wish, 1 in 10, 1 in 2, 9 in 10
    const coat& c = coat_of(io::reference(), coat_class::curly);
    const rate_law law = prior_rate(c, t.rules.growth);
    const length to = mm(25);
    for (const auto& [i, p] : {std::pair{0U, 0.1}, {1U, 0.5}, {2U, 0.9}}) {
        CHECK_THAT(in_days(ways[0].back_in[i]),
                   match::WithinAbs(std::exp(std::log(in_mm(to - left)) - law.log_median -
                                             law.log_sd * normal_quantile(1.0 - p)),
                                    1e-6));
    }
    // the legs evenly, then body and legs
    CHECK(ways[1].how == grow_back::even_part);
    CHECK(ways[2].how == grow_back::even_all);
    CHECK(of(ways[1].plan, "back").leaves->best > mm(20));
    CHECK(of(ways[2].plan, "back").leaves->best < mm(10));
    CHECK(of(ways[2].plan, "skull").leaves->best > mm(20));  // no mats there
    CHECK(ways[2].down.size() > ways[1].down.size());
}

TEST_CASE("growing back: nothing to tell where nothing was clipped off in coat that grows",
          "[intake]") {
    groom_table t;
    CHECK(ways_to_grow_back(t.request(), t.plan()).empty());
    t.patient.mats = {mat_in("armpit", mat_grade::mat, mm(6))};  // short each time anyway
    CHECK(ways_to_grow_back(t.request(), t.plan()).empty());
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(8))};
    CHECK_FALSE(ways_to_grow_back(t.request(), t.plan()).empty());
    t.patient.coat = coat_class::double_long;
    t.patient.consents = {"clip-jacket"};
    CHECK(ways_to_grow_back(t.request(), t.plan()).empty());
    t.patient.coat = coat_class::curly;
    t.patient.signs = {stop_sign::collapse};
    CHECK(ways_to_grow_back(t.request(), t.plan()).empty());
}

TEST_CASE("a mat beside a place that is clipped against the lay: both are done", "[intake]") {
    // the skull's mat comes off with the lay, the cheeks' length is there against it alone
    groom_table t;
    t.both_ways = true;
    t.patient.coat = coat_class::double_short;
    t.patient.consents = {"clip-jacket"};
    t.tools = drawer({"30", "10", "7F", "5F"});
    t.sheet = sheet_of(finish_by(finish::leave));
    instruction comb = clip_to(mm(9));
    comb.between = side_of_target::nearest;
    t.says("skull", comb);
    instruction close = clip_to(mm(3.2));
    close.between = side_of_target::shorter;
    t.says("cheek", close).says("muzzle", close);
    t.patient.mats = {mat_in("skull", mat_grade::pelt, mm(5))};
    const groom g = t.plan();
    CHECK_FALSE(g.choice.setup.empty());
    CHECK(of(g, "skull").came == outcome::clipped_under);
    CHECK(of(g, "skull").how.way == direction::with_lay);
    CHECK(of(g, "cheek").how.kind == tool_kind::clip);
    CHECK(g.choice.sure.optimal);
}

TEST_CASE("a name in another script has an id of no dog in particular", "[intake]") {
    CHECK(io::dog_id("Bella Miller") == "bella-miller");
    CHECK(io::dog_id("Белла") == "dog");
    CHECK(io::dog_id("小白") == "dog");
}
