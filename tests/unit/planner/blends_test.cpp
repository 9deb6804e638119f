// Which steps of a planned groom are blended, and with what: what a groomer expects to be told.
#include <algorithm>
#include <string>
#include <vector>

#include <pelage/planner/plan.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

std::string called(const groom& g, std::size_t i) {
    return title(io::reference().dog_body, g.zones[i].at);
}

/// The blend of one place into another, or null.
const blend* from_into(const groom& g, const std::string& from, const std::string& into) {
    const auto b = std::find_if(g.blends.begin(), g.blends.end(), [&](const blend& one) {
        return called(g, one.from) == from && called(g, one.into) == into;
    });
    return b == g.blends.end() ? nullptr : &*b;
}
bool blends_between(const groom& g, const std::string& a, const std::string& b) {
    return from_into(g, a, b) != nullptr || from_into(g, b, a) != nullptr;
}

/// A curly dog, on which a blade or comb leaves what is etched on it whatever its direction.
groom_table curly(instruction all, const std::vector<std::string>& blades,
                  const std::vector<std::string>& combs = {}) {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_of(std::move(all));
    t.tools = drawer(blades, combs);
    return t;
}

}  // namespace

TEST_CASE("one length all over leaves nothing to blend", "[groom][blend]") {
    CHECK(groom_table().plan().blends.empty());
}

TEST_CASE("a fuller leg is blended into the body: the longer one's edge, by what leaves the middle",
          "[groom][blend]") {
    groom_table t = curly(clip_to(mm(10)), {"30", "10"}, {"10 mm", "13 mm", "16 mm"});
    t.says("foreleg", clip_to(mm(16)));
    const groom g = t.plan();
    const blend* b = from_into(g, "forelegs", "shoulders");
    REQUIRE(b != nullptr);
    CHECK(b->step == gap(of(g, "foreleg").leaves->best, of(g, "shoulder").leaves->best));
    CHECK(b->asked == mm(6));
    REQUIRE(b->between);
    CHECK(held(*b->between) == "comb 13 mm over blade 30");
    CHECK(b->between->way == direction::with_lay);
    CHECK(b->leaves->best == mm(13));
    CHECK(b->when == list::after_bath);
    // 3 mm on either side blend by themselves
    CHECK(b->smoothed == tool_kind::none);
    CHECK(from_into(g, "shoulders", "forelegs") == nullptr);
    CHECK_FALSE(blends_between(g, "back", "ribs"));
}

TEST_CASE("scissors smooth what is left of a high step", "[groom][blend]") {
    // 13 to 6.3: the 4F leaves 9.5, which is 3.5 off the one and 3.2 off the other
    groom_table t = curly(clip_with("5F"), {"10", "5F", "4F", "3F"});
    t.says("foreleg", clip_with("3F"));
    const groom g = t.plan();
    const blend* b = from_into(g, "forelegs", "shoulders");
    REQUIRE(b != nullptr);
    REQUIRE(b->between);
    CHECK(held(*b->between) == "blade 4F");
    CHECK(b->smoothed == tool_kind::scissors);
}

TEST_CASE("a tool already in use blends before one that must be taken up", "[groom][blend]") {
    // comb 13 mm would leave the very middle, the 4F of the tail is near enough
    groom_table t = curly(clip_to(mm(10)), {"30", "10", "3F"}, {"10 mm", "13 mm", "16 mm"});
    t.tools.blades.back().measured = mm(12);
    t.says("foreleg", clip_to(mm(16))).says("tail", clip_with("3F"));
    const groom g = t.plan();
    const blend* b = from_into(g, "forelegs", "shoulders");
    REQUIRE(b != nullptr);
    REQUIRE(b->between);
    CHECK(held(*b->between) == "blade 3F");
    // 16 to 12 is still a step, 12 to 10 is none
    CHECK(b->smoothed == tool_kind::scissors);
    t.sheet.rules.pop_back();
    const groom without = t.plan();
    CHECK(held(*from_into(without, "forelegs", "shoulders")->between) ==
          "comb 13 mm over blade 30");
}

TEST_CASE("nothing near the middle in the kit: scissors", "[groom][blend]") {
    groom_table t = curly(clip_to(mm(10)), {"30", "10"}, {"10 mm", "16 mm"});
    t.says("foreleg", clip_to(mm(16)));
    const groom g = t.plan();
    const blend* b = from_into(g, "forelegs", "shoulders");
    REQUIRE(b != nullptr);
    CHECK_FALSE(b->between);
    CHECK(b->smoothed == tool_kind::scissors);
}

TEST_CASE("skip teeth don't blend", "[groom][blend]") {
    groom_table t = curly(clip_with("5F"), {"10", "5F", "4", "3F"});
    t.says("thigh", clip_with("3F"));
    const groom g = t.plan();
    REQUIRE(from_into(g, "thighs", "rump") != nullptr);
    CHECK_FALSE(from_into(g, "thighs", "rump")->between);
    t.tools = drawer({"10", "5F", "4F", "3F"});
    CHECK(from_into(t.plan(), "thighs", "rump")->between);
}

TEST_CASE("what stands between goes the way the longer one was clipped", "[groom][blend]") {
    // on hair that lies at 30 degrees a 3F leaves 18 mm with the lay and 13 against it
    groom_table t = curly(clip_to(mm(11)), {"30", "10", "3F"}, {"10 mm", "16 mm"});
    t.patient.coat = coat_class::drop;
    instruction fuller = clip_to(mm(17.5));
    t.says("rump", fuller);
    REQUIRE(from_into(t.plan(), "rump", "loin") != nullptr);
    CHECK_FALSE(from_into(t.plan(), "rump", "loin")->between);
    fuller.way = lay_choice::against_lay;
    fuller.tolerance = mm(7);
    t.says("rump", fuller);
    const groom g = t.plan();
    REQUIRE(of(g, "rump").how.way == direction::against_lay);
    REQUIRE(from_into(g, "rump", "loin") != nullptr);
    REQUIRE(from_into(g, "rump", "loin")->between);
    CHECK(title(*from_into(g, "rump", "loin")->between) == "blade 3F, against the lay");
}

TEST_CASE("what may not touch either side doesn't stand between", "[groom][blend]") {
    // a comb of 10 mm over a 5F would leave 15.8 mm, but a comb rocks on so long a blade
    groom_table t = curly(clip_to(mm(10)), {"30", "10", "5F"}, {"10 mm", "22 mm"});
    t.says("rump", clip_to(mm(22)));
    t.tools.combs.front().fits = {"30", "5F"};
    REQUIRE(from_into(t.plan(), "rump", "loin") != nullptr);
    CHECK_FALSE(from_into(t.plan(), "rump", "loin")->between);
    t.tools.combs.push_back({comb_of("16 mm"), 1, {}, {}});
    REQUIRE(from_into(t.plan(), "rump", "loin")->between);
    CHECK(held(*from_into(t.plan(), "rump", "loin")->between) == "comb 16 mm over blade 30");
}

TEST_CASE("a skirt, a beard on a longer cheek: what is scissored is blended by scissors",
          "[groom][blend]") {
    groom_table t = curly(clip_to(mm(10)), {"30", "10"}, {"10 mm", "13 mm", "16 mm"});
    t.says("skirt", finish_by(finish::scissor, mm(16)));
    const groom g = t.plan();
    const blend* b = from_into(g, "skirt", "ribs");
    REQUIRE(b != nullptr);
    CHECK_FALSE(b->between);
    CHECK(b->smoothed == tool_kind::scissors);
    CHECK(b->asked == mm(6));
}

TEST_CASE("where the sheet thins, thinning scissors blend", "[groom][blend]") {
    groom_table t = curly(clip_to(mm(10)), {"30", "10"}, {"10 mm", "13 mm", "16 mm"});
    t.says("skirt", finish_by(finish::thin, mm(25)));
    const groom g = t.plan();
    REQUIRE(from_into(g, "skirt", "ribs") != nullptr);
    CHECK(from_into(g, "skirt", "ribs")->smoothed == tool_kind::thinners);
}

TEST_CASE("a line of the pattern is worked away by thinners, where coat lies", "[groom][blend]") {
    groom_table t = curly(clip_with("10"), {"10"});
    t.patient.coat = coat_class::wire;
    t.says("skirt", finish_by(finish::scissor, mm(32)));
    t.says("foreleg", finish_by(finish::scissor, mm(32)));
    t.says("elbow", finish_by(finish::scissor, mm(25)));
    const groom g = t.plan();
    REQUIRE(from_into(g, "skirt", "ribs") != nullptr);
    CHECK(from_into(g, "skirt", "ribs")->smoothed == tool_kind::thinners);
    // scissored both: scissors
    REQUIRE(from_into(g, "forelegs", "elbows") != nullptr);
    CHECK(from_into(g, "forelegs", "elbows")->smoothed == tool_kind::scissors);
}

TEST_CASE("a clean face and clean feet end in a line, not in a blend", "[groom][blend]") {
    groom_table t = curly(clip_to(mm(25)), {"30", "10"}, {"13 mm", "16 mm", "25 mm"});
    instruction shaved = clip_with("10");
    shaved.way = lay_choice::against_lay;
    t.sheet.face = "clean";
    t.sheet.feet = "clean";
    t.says("cheek", shaved).says("feet", shaved);
    const groom g = t.plan();
    CHECK_FALSE(blends_between(g, "skull", "cheeks"));
    CHECK_FALSE(blends_between(g, "forelegs", "feet"));
    CHECK_FALSE(blends_between(g, "hocks", "feet"));
    // but a neck runs into a shaved throat
    t.says("throat", shaved);
    CHECK(blends_between(t.plan(), "neck", "throat"));
}

TEST_CASE("a step on the face that only the kit makes is blended", "[groom][blend]") {
    // 4 mm is asked beside a blade 10; the kit's next is a 5F
    groom_table t = curly(clip_to(mm(6)), {"10", "5F"});
    t.says("skull", clip_to(mm(4))).says("cheek", clip_with("10"));
    const groom g = t.plan();
    REQUIRE(held(of(g, "skull").how) == "blade 5F");
    CHECK(from_into(g, "skull", "cheeks") != nullptr);
}

TEST_CASE("nobody blends a head into an ear that was shaved for its mat", "[groom][blend]") {
    // a groomer of twenty years, asked over the card
    groom_table t = curly(clip_to(mm(16)), {"30", "10", "7F"}, {"10 mm", "16 mm", "22 mm"});
    t.patient.mats = {mat_in("left ear", mat_grade::pelt, mm(2))};
    const groom g = t.plan();
    REQUIRE(held(of(g, "left ear").how) == "blade 10");
    CHECK(from_into(g, "skull", "left ear") == nullptr);
}

TEST_CASE("a side is blended with its own side", "[groom][blend]") {
    groom_table t = curly(clip_to(mm(16)), {"30", "10", "7F"}, {"10 mm", "16 mm"});
    t.patient.mats = {mat_in("left shoulder", mat_grade::pelt, mm(5)),
                      mat_in("left foreleg", mat_grade::pelt, mm(5))};
    const groom g = t.plan();
    CHECK(blends_between(g, "left shoulder", "ribs"));
    CHECK_FALSE(blends_between(g, "right shoulder", "ribs"));
    CHECK_FALSE(blends_between(g, "left shoulder", "left foreleg"));
    CHECK_FALSE(blends_between(g, "left shoulder", "right foreleg"));
    CHECK_FALSE(blends_between(g, "right shoulder", "left foreleg"));
}

TEST_CASE("hurt skin, what is left and what is carded are not blended into", "[groom][blend]") {
    groom_table t = curly(clip_to(mm(10)), {"30", "10"}, {"10 mm", "13 mm", "16 mm"});
    t.patient.now = {{"all", mm(60)}};
    t.says("foreleg", clip_to(mm(16)));
    t.patient.skin = {{at("shoulder"), skin_state::irritated}};
    CHECK_FALSE(blends_between(t.plan(), "forelegs", "shoulders"));
    t.patient.skin.clear();
    CHECK(blends_between(t.plan(), "forelegs", "shoulders"));
    t.says("shoulder", finish_by(finish::leave));
    CHECK_FALSE(blends_between(t.plan(), "forelegs", "shoulders"));
    t.sheet.rules.pop_back();
    t.says("shoulder", finish_by(finish::card));
    CHECK_FALSE(blends_between(t.plan(), "forelegs", "shoulders"));
}

TEST_CASE("a jacket stripped by hand is graded by hand, before the bath", "[groom][blend]") {
    groom_table t = curly(finish_by(finish::hand_strip, mm(25)), {"10"});
    t.patient.coat = coat_class::wire;
    t.says("neck", finish_by(finish::hand_strip, mm(38)));
    const groom g = t.plan();
    const blend* b = from_into(g, "neck", "collar line");
    REQUIRE(b != nullptr);
    CHECK(b->smoothed == tool_kind::fingers);
    CHECK(b->when == list::before_bath);
}

TEST_CASE("a tail band and the edge of an ear are lines", "[groom][blend]") {
    groom_table t = curly(clip_to(mm(16)), {"30", "10"}, {"10 mm", "16 mm"});
    t.says("tail-base", clip_with("10")).says("ear-edge", finish_by(finish::scissor, mm(2)));
    const groom g = t.plan();
    CHECK_FALSE(blends_between(g, "rump", "tail base"));
    CHECK_FALSE(blends_between(g, "tail", "tail base"));
    CHECK_FALSE(blends_between(g, "ears", "ear edges"));
}
