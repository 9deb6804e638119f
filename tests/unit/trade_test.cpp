// What any groomer would refuse, ask back or expect. Common practice, no source.
#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/kit/lookup.hpp>
#include <pelage/model/refusal.hpp>
#include <pelage/planner/plan.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const reference_data& ref() {
    return io::reference();
}

const blade& the_blade(const std::string& id) {
    const blade* b = find(ref().blades, id);
    REQUIRE(b != nullptr);
    return *b;
}

const comb& the_comb(const std::string& id) {
    const comb* c = find(ref().combs, id);
    REQUIRE(c != nullptr);
    return *c;
}

const zone& the_zone(const std::string& id) {
    const zone* z = find(ref().dog_body.zones, id);
    REQUIRE(z != nullptr);
    return *z;
}

zone_today clean_zone(const std::string& id) {
    zone_today t;
    t.where = &the_zone(id);
    return t;
}

std::optional<refusal> refused(const setup& s, const zone_today& t) {
    return refuse(s, t, ref().rules.refusal, ref().rules.cut);
}

/// Everything there is: every standard blade of the reference, and every comb.
kit full_drawer() {
    kit k;
    for (const blade& b : ref().blades) {
        k.blades.push_back({b, 1, std::nullopt, false, std::nullopt});
    }
    for (const comb& c : ref().combs) {
        k.combs.push_back({c, 1, std::nullopt, {}});
    }
    return k;
}

question asked(const std::string& text, asked_kind kind = asked_kind::any, bool barber = false) {
    const kit drawer = full_drawer();
    lookup_request r{ref(), ref().rules, drawer, text, kind, barber, {}, {}, {}, {}};
    return read_question(r);
}

/// The error a question raises, with what it says; fails if it is answered.
error asked_back(const std::string& text, asked_kind kind = asked_kind::any) {
    try {
        static_cast<void>(asked(text, kind));
    } catch (const error& e) {
        return e;
    }
    FAIL("'" << text << "' was answered");
    return {errc::internal, {}};
}

dog wavy_dog() {
    dog d;
    d.coat = coat_class::wavy;
    d.brushed = {habit::two_or_three, true};
    return d;
}

groom groomed(const dog& d, const std::string& sheet, const kit& drawer) {
    const style* s = find(ref().styles, sheet);
    REQUIRE(s != nullptr);
    return make_plan({ref(), ref().rules, drawer, d, *s, std::nullopt});
}

const zone_plan& plan_of(const groom& g, std::string_view zone) {
    const auto at = std::find_if(g.zones.begin(), g.zones.end(), [&](const zone_plan& z) {
        return ref().dog_body.zones[z.at.zone].id == zone;
    });
    REQUIRE(at != g.zones.end());
    return *at;
}

bool warns(const groom& g, caution_when w) {
    return std::any_of(g.cautions.begin(), g.cautions.end(),
                       [&](const caution_line& c) { return c.what.when == w; });
}

}  // namespace

TEST_CASE("a bare 5/8 or 7/8 blade is asked back", "[trade]") {
    // common practice, no source: on a toe blade the fraction is its width, and it leaves 0.8 mm
    const std::string text = GENERATE("5/8", "7/8", " 5/8 ", "#7/8", "blade 5/8");
    const asked_kind kind = GENERATE(asked_kind::any, asked_kind::blade);
    const error e = asked_back(text, kind);
    CHECK(e.code() == errc::ambiguous);
    CHECK_THAT(e.what(), match::ContainsSubstring("0.8 mm"));
}

TEST_CASE("5/8 and 7/8 are answered once it is said what they are", "[trade]") {
    CHECK(asked("5/8 toe").tool.tool.stated.best == mm(0.8));
    CHECK(asked("7/8 toe").tool.tool.stated.best == mm(0.8));
    CHECK(asked("5/8 long").tool.tool.stated.best == mm(16));
    CHECK(asked("5/8in").wanted == inch(5, 8));
}

TEST_CASE("a bare comb number is asked back", "[trade]") {
    // common practice, no source: dog sets number both ways
    CHECK(asked_back("2", asked_kind::comb).code() == errc::ambiguous);
    CHECK(asked_back("comb 2").code() == errc::ambiguous);
    CHECK(asked_back("2 comb over 10").code() == errc::ambiguous);
    CHECK(asked_back("2").code() == errc::ambiguous);
}

TEST_CASE("a bare comb number is a length where the barbers' convention is named", "[trade]") {
    const question q = asked("2", asked_kind::comb, true);
    REQUIRE(q.tool.over);
    CHECK_THAT(in_mm(q.tool.over->stated.best), match::WithinAbs(6.35, 0.5));
}

TEST_CASE("a comb over a mat is refused", "[trade]") {
    // common practice, no source: it cannot go through or under a mat
    const std::string zone = GENERATE("back", "ear", "armpit", "tail");
    const std::string length = GENERATE("3 mm", "13 mm");
    const setup s = combed(the_comb(length), the_blade("30"), direction::with_lay);
    zone_today t = clean_zone(zone);
    CHECK_FALSE(refused(s, t).has_value());
    mat_finding m;
    m.free_hair = mm(20);
    m.comb_passes = true;
    t.mat = &m;
    CHECK(refused(s, t) == refusal::comb_over_mat);
}

TEST_CASE("no comb is planned over a mat that stays in", "[trade]") {
    dog d = wavy_dog();
    const auto chest = static_cast<std::size_t>(&the_zone("chest") - ref().dog_body.zones.data());
    d.mats.push_back({{chest, side::both}, mat_grade::pelt, mm(6), false, true, false});
    const kit drawer = full_drawer();
    const groom g = groomed(d, "one-length", drawer);
    const zone_plan& z = plan_of(g, "chest");
    CHECK(z.came == outcome::clipped_under);
    CHECK(z.how.kind == tool_kind::clip);
    CHECK_FALSE(z.how.over.has_value());
    // without the mat the legs of a low-upkeep sheet get their 16 mm comb
    const groom clear = groomed(wavy_dog(), "low-upkeep", drawer);
    CHECK(plan_of(clear, "foreleg").how.over.has_value());
}

TEST_CASE("skip teeth are refused where skin is thin or folds", "[trade]") {
    // common practice, no source: a fold of skin rolls in between the teeth
    const std::string id = GENERATE("8", "7", "6", "5", "4", "3");
    const bool gaps = id == "4" || id == "3";  // a long blade's gaps catch webs, whatever its teeth
    const setup skip = bare(the_blade(id), direction::with_lay);
    const setup full = bare(the_blade(id + "F"), direction::with_lay);
    for (const char* zone : {"armpit", "groin", "flank", "ear", "behind-ear", "belly", "throat",
                             "hock", "sanitary", "under-tail", "tail-base", "feet"}) {
        INFO("blade " << id << ", " << zone);
        CHECK(refused(skip, clean_zone(zone)) == refusal::skip_teeth_here);
        const auto no = refused(full, clean_zone(zone));
        CHECK((!no || (gaps && *no == refusal::long_on_web)));
    }
    for (const char* zone : {"neck", "shoulder", "back", "ribs", "loin", "rump", "thigh"}) {
        INFO("blade " << id << ", " << zone);
        CHECK_FALSE(refused(skip, clean_zone(zone)).has_value());
    }
}

TEST_CASE("skip teeth are refused everywhere on an old or thin-skinned dog", "[trade]") {
    zone_today t = clean_zone("back");
    t.thin_or_old = true;
    CHECK(refused(bare(the_blade("7"), direction::with_lay), t) == refusal::skip_teeth_here);
    CHECK_FALSE(refused(bare(the_blade("7F"), direction::with_lay), t).has_value());
}

TEST_CASE("blades whose teeth nobody knows are taken for skip teeth", "[trade]") {
    const std::string id = GENERATE("8.5", "3.75", "5/8 long");
    CHECK(refused(bare(the_blade(id), direction::with_lay), clean_zone("armpit")) ==
          refusal::skip_teeth_here);
}

TEST_CASE("sanitary is done with 10, 9 or 15, pads with 40, 30, 15 or 10", "[trade]") {
    // common practice, no source
    const auto sorted = [](std::vector<std::string> v) {
        std::sort(v.begin(), v.end());
        return v;
    };
    CHECK(sorted(the_zone("sanitary").prep_blades) == sorted({"10", "9", "15"}));
    CHECK(sorted(the_zone("pads").prep_blades) == sorted({"40", "30", "15", "10"}));
}

TEST_CASE("whatever lies in the drawer, sanitary and pads get their customary blades", "[trade]") {
    const auto [zone, customary] = GENERATE(table<std::string, std::vector<std::string>>(
        {{"sanitary", {"10", "9", "15"}}, {"pads", {"40", "30", "15", "10"}}}));
    // take away what was chosen, until nothing customary is left
    kit drawer = full_drawer();
    for (std::size_t left = customary.size(); left > 0; --left) {
        const groom g = groomed(wavy_dog(), "one-length", drawer);
        const zone_plan& z = plan_of(g, zone);
        INFO(zone << " with " << title(z.how));
        REQUIRE(z.how.kind == tool_kind::clip);
        CHECK_FALSE(z.how.over.has_value());
        CHECK(z.how.way == direction::with_lay);
        CHECK(std::count(customary.begin(), customary.end(), z.how.tool.id) == 1);
        const std::string used = z.how.tool.id;
        drawer.blades.erase(std::remove_if(drawer.blades.begin(), drawer.blades.end(),
                                           [&](const kit_blade& b) { return b.spec.id == used; }),
                            drawer.blades.end());
    }
    const groom g = groomed(wavy_dog(), "one-length", drawer);
    CHECK(plan_of(g, zone).came == outcome::stuck);
}

TEST_CASE("pink skin is warned of the sun below an inch and not above it", "[trade]") {
    // charity and veterinary advice, relayed
    dog d = wavy_dog();
    const kit drawer = full_drawer();
    CHECK_FALSE(warns(groomed(d, "one-length", drawer), caution_when::sun));
    d.pink_skin = true;
    CHECK(warns(groomed(d, "one-length", drawer), caution_when::sun));
    const style* sheet = find(ref().styles, "one-length");
    REQUIRE(sheet != nullptr);
    style long_all_over = *sheet;
    for (sheet_rule& rule : long_all_over.rules) {
        rule.what.target = mm(38);
    }
    const groom g = make_plan({ref(), ref().rules, drawer, d, long_all_over, std::nullopt});
    CHECK_FALSE(warns(g, caution_when::sun));
}
