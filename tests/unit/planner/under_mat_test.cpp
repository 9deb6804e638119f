// What is tried where a blade won't pass under a mat (common practice, no source): a shorter one where the rules let
// one go there, else nothing but a veterinarian.
#include <pelage/model/refusal.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/planner/under_mat.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

TEST_CASE("in an armpit nothing shorter than a 10 may go: a veterinarian", "[mats]") {
    groom_table t;
    t.patient.mats = {mat_in("armpits", mat_grade::mat, mm(3))};
    const groom g = t.plan();
    REQUIRE(mat_clipped_off(of(g, "armpits")));
    CHECK(shorter_under_mat(t.request(), of(g, "armpits")).empty());
}

TEST_CASE("on a back a longer blade is followed by the next shorter one that may go there",
          "[mats]") {
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(8))};
    const groom g = t.plan();
    const zone_plan& back = of(g, "back");
    REQUIRE(mat_clipped_off(back));
    const setup& held = back.off_by ? *back.off_by : back.how;
    const std::vector<setup> shorter = shorter_under_mat(t.request(), back);
    REQUIRE_FALSE(shorter.empty());
    // by brute force: those of the kit that the rules let go there, the longest first
    zone_today there;
    there.where = &t.request().reference.dog_body.zones[back.at.zone];
    there.mat = &t.patient.mats.front();
    std::size_t count = 0;
    for (const setup& s : setups_of(t.request().tools, t.request().today, t.request().rules.cut)) {
        const bool may = s.kind == tool_kind::clip && !s.over && s.way == direction::with_lay &&
                         s.tool.stated.best < held.tool.stated.best &&
                         !refuse(s, there, t.request().rules.refusal, t.request().rules.cut);
        count += may ? 1 : 0;
    }
    CHECK(shorter.size() == count);
    for (std::size_t i = 1; i < shorter.size(); ++i) {
        CHECK(shorter[i].tool.stated.best <= shorter[i - 1].tool.stated.best);
    }
}
