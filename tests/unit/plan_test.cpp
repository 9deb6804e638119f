// The choice of setups as a problem in integers.
#include <algorithm>
#include <limits>
#include <random>
#include <utility>
#include <vector>

#include <pelage/error.hpp>
#include <pelage/plan.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

constexpr std::int32_t no = forbidden;

/// Two zones, three setups, two tools at 500 and 250.
problem two_zones() {
    problem p;
    p.zones = 2;
    p.setups = 3;
    p.cost = {1000, 1200, no, 2000, 1900, 1900};
    p.length = {1300, 1600, 0, 1300, 1600, 2500};
    p.tools = {0b01, 0b10, 0, 0b01, 0b10, 0b11};
    p.price = {500, 250};
    return p;
}

/// What trying every plan of a small problem finds: the least cost, -1 if there is no plan, and the
/// first plan by zone and setup that has it.
struct tried {
    std::int64_t best = -1;
    std::vector<std::size_t> first;
};

tried by_trying_all(const problem& p) {
    std::vector<std::size_t> at(p.zones, 0);
    tried out;
    while (true) {
        bool allowed = true;
        for (std::size_t z = 0; z < p.zones; ++z) {
            allowed = allowed && p.cost[p.at(z, at[z])] != forbidden;
        }
        if (allowed) {
            const std::int64_t c = in_mmin(cost_of(p, at));
            if (out.best < 0 || c < out.best) {
                out = {c, at};
            }
        }
        std::size_t z = p.zones;
        while (z > 0 && ++at[z - 1] == p.setups) {
            at[--z] = 0;
        }
        if (z == 0) {
            return out;
        }
    }
}

}  // namespace

TEST_CASE("a plan costs its zones, each tool once, and its steps", "[plan]") {
    problem p = two_zones();
    const std::vector<std::size_t> same{0, 0};
    const std::vector<std::size_t> mixed{0, 1};
    CHECK(cost_of(p, same) == mmin(1000 + 2000 + 500));
    CHECK(cost_of(p, mixed) == mmin(1000 + 1900 + 500 + 250));
    p.seams.push_back({0, 1, 3, 300});
    CHECK(cost_of(p, same) == mmin(3500));
    // 13 beside 16 mm is a step of 3 mm: the allowance, to the hundredth
    CHECK(cost_of(p, mixed) == mmin(3650));
    p.length[p.at(1, 1)] = 1601;
    CHECK(cost_of(p, mixed) == mmin(3653));
    // a step down costs what a step up costs
    std::swap(p.length[p.at(0, 0)], p.length[p.at(1, 1)]);
    CHECK(cost_of(p, mixed) == mmin(3653));
}

TEST_CASE("a plan that isn't one has no cost", "[plan]") {
    const problem p = two_zones();
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{0}), error);
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{0, 3}), error);
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{2, 0}), error);  // forbidden there
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{0, 0, 0}), error);
}

TEST_CASE("of equal setups the first is taken, of equal zones each", "[plan]") {
    problem p;
    p.zones = 2;
    p.setups = 4;
    p.cost = {700, 600, 600, no, 900, 800, 900, 800};
    p.length.assign(8, 1300);
    p.tools.assign(8, 0);
    const solution s = solve(p);
    CHECK(s.setup == std::vector<std::size_t>{1, 1});
    CHECK(s.cost == mmin(1400));
    CHECK(s.stuck.empty());
    CHECK(s.sure.ties == 2);
    CHECK(s.sure.optimal);
    p.cost[3] = 599;
    CHECK(solve(p).setup == std::vector<std::size_t>{3, 1});
}

TEST_CASE("a plan is proved cheapest only where no plan can cost less", "[plan]") {
    // one setup a zone: nothing can be saved
    problem p = two_zones();
    p.cost = {1000, no, no, 2000, no, no};
    const solution one = solve(p);
    CHECK(one.sure.bound == 3500);
    CHECK(one.sure.optimal);
    // both zones by setup 0 cost 3500; each zone's cheapest alone would hold two tools, 3650
    const solution two = solve(two_zones());
    CHECK(two.cost <= mmin(3500));
    CHECK(two.sure.bound == in_mmin(two.cost));
    CHECK(two.sure.optimal);
}

TEST_CASE("zones with nothing allowed are named, and there is no plan", "[plan]") {
    problem p = two_zones();
    p.cost = {1000, 1200, no, no, no, no};
    const solution s = solve(p);
    CHECK(s.stuck == std::vector<std::size_t>{1});
    CHECK(s.setup.empty());
    CHECK_FALSE(s.sure.optimal);
}

TEST_CASE("combing out is planned only as far as its budget goes", "[plan]") {
    problem p = two_zones();
    p.cost = {1000, 9000, no, 2000, 12000, no};
    p.spend = {6, 0, 0, 7, 0, 0};
    p.budget = 13;
    CHECK(solve(p).setup == std::vector<std::size_t>{0, 0});
    p.budget = 12;  // one zone of the two: the dearer one to leave undone
    CHECK(solve(p).setup == std::vector<std::size_t>{1, 0});
    p.budget = 6;
    CHECK(solve(p).setup == std::vector<std::size_t>{0, 1});
    p.budget = 5;
    CHECK(solve(p).setup == std::vector<std::size_t>{1, 1});
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{0, 1}), error);
    CHECK(solve(p).sure.optimal);
}

TEST_CASE("a budget too small for any plan names the zones that can't do without", "[plan]") {
    problem p = two_zones();
    p.spend = {3, 4, 0, 0, 9, 9};
    p.budget = 2;
    const solution s = solve(p);
    CHECK(s.setup.empty());
    CHECK(s.stuck == std::vector<std::size_t>{0});
    CHECK_FALSE(s.sure.optimal);
    p.cost[p.at(1, 0)] = no;  // now 3 and 9 are needed
    p.budget = 11;
    CHECK(solve(p).stuck == std::vector<std::size_t>{0, 1});
    p.budget = 12;
    CHECK(solve(p).setup == std::vector<std::size_t>{0, 1});
}

TEST_CASE("no zones cost nothing; zones without setups are stuck", "[plan]") {
    const solution none = solve(problem{});
    CHECK(none.setup.empty());
    CHECK(none.stuck.empty());
    CHECK(none.cost == mmin(0));
    CHECK(none.sure.optimal);
    problem p;
    p.zones = 2;
    CHECK(solve(p).stuck == std::vector<std::size_t>{0, 1});
}

TEST_CASE("a problem outside its bounds is refused before anything overflows", "[plan]") {
    CHECK_NOTHROW(check(two_zones()));
    struct row {
        const char* what;
        void (*spoil)(problem&);
    };
    const row rows[] = {
        {"a cost below nothing", [](problem& p) { p.cost[0] = -1; }},
        {"a cost above 1000 minutes", [](problem& p) { p.cost[0] = dearest + 1; }},
        {"a length below nothing", [](problem& p) { p.length[0] = -1; }},
        {"a length above 1000 mm", [](problem& p) { p.length[0] = longest_hair + 1; }},
        {"a price below nothing", [](problem& p) { p.price[0] = -1; }},
        {"a price above 1000 minutes", [](problem& p) { p.price[0] = dearest + 1; }},
        {"a tool without a price", [](problem& p) { p.tools[0] = 0b100; }},
        {"a seam to nowhere",
         [](problem& p) {
             p.seams.push_back({0, 2, 3, 0});
         }},
        {"a seam from nowhere",
         [](problem& p) {
             p.seams.push_back({2, 0, 3, 0});
         }},
        {"a seam that pays",
         [](problem& p) {
             p.seams.push_back({0, 1, -1, 0});
         }},
        {"an allowance below nothing",
         [](problem& p) {
             p.seams.push_back({0, 1, 3, -1});
         }},
        {"a seam too dear",
         [](problem& p) {
             p.seams.push_back({0, 1, 1001, 0});
         }},
        {"a cost missing", [](problem& p) { p.cost.pop_back(); }},
        {"a length missing", [](problem& p) { p.length.pop_back(); }},
        {"a tool set missing", [](problem& p) { p.tools.pop_back(); }},
        {"minutes of combing out missing", [](problem& p) { p.spend.assign(5, 0); }},
        {"a budget below nothing", [](problem& p) { p.budget = -1; }},
        {"too many zones", [](problem& p) { p.zones = most_zones + 1; }},
        {"too many setups", [](problem& p) { p.setups = most_setups + 1; }},
        {"too many tools", [](problem& p) { p.price.resize(most_tools + 1); }},
        {"too many seams", [](problem& p) { p.seams.resize(most_steps + 1); }},
    };
    for (const row& r : rows) {
        INFO(r.what);
        problem p = two_zones();
        r.spoil(p);
        CHECK_THROWS_AS(check(p), error);
        CHECK_THROWS_AS(solve(p), error);
    }
}

TEST_CASE("exactly at its bounds a problem is sound and sums don't overflow", "[plan]") {
    problem p;
    p.zones = most_zones;
    p.setups = 2;
    p.cost.assign(128, dearest);
    for (std::size_t i = 0; i < 128; ++i) {
        p.length.push_back(i / 2 % 2 == 0 ? 0 : longest_hair);
    }
    p.tools.assign(128, ~tool_set{0});
    p.price.assign(most_tools, dearest);
    const std::int64_t bare = 64LL * dearest + 64LL * dearest;
    // the dearest step is 100 minutes: so many seams come up to the limit, and one that fills it
    const std::int64_t left = (most_cost - bare) % longest_hair;
    for (std::int64_t i = (most_cost - bare) / longest_hair; i > 0;
         i -= std::min<std::int64_t>(i, 1000)) {
        p.seams.push_back({0, 1, static_cast<std::int32_t>(std::min<std::int64_t>(i, 1000)), 0});
    }
    p.seams.push_back({2, 3, 1, static_cast<std::int32_t>(longest_hair - left)});
    p.spend.assign(128, 255);
    p.budget = std::numeric_limits<std::int32_t>::max();
    const solution s = solve(p);
    CHECK(in_mmin(s.cost) == most_cost);
    CHECK(s.sure.optimal);
    p.seams.back().allowance -= 1;
    CHECK_THROWS_AS(solve(p), error);
    CHECK_THROWS_AS(check(p), error);
}

TEST_CASE("what is written for a forbidden setup doesn't matter", "[plan]") {
    problem p = two_zones();
    const solution before = solve(p);
    p.length[2] = -7;
    p.tools[2] = 0b1000;
    CHECK(solve(p).setup == before.setup);
    p.cost[2] = 3000;
    CHECK_THROWS_AS(solve(p), error);
}

TEST_CASE("a planner keeps nothing of one problem for the next", "[plan]") {
    problem small = two_zones();
    small.seams.push_back({0, 1, 3, 300});
    problem large;
    large.zones = 12;
    large.setups = 9;
    for (std::size_t i = 0; i < 108; ++i) {
        large.cost.push_back(static_cast<std::int32_t>(i * 7919 % 1000));
        large.length.push_back(static_cast<std::int32_t>(i * 104'729 % 3000));
        large.tools.push_back(tool_set{1} << i % 7);
        large.spend.push_back(static_cast<std::uint8_t>(i % 5));
    }
    large.price.assign(7, 400);
    large.budget = 9;
    for (std::size_t z = 1; z < 12; ++z) {
        large.seams.push_back({z / 2, z, 1, 100});
        large.seams.push_back({z / 3, z, 1, 300});
    }
    problem stuck = two_zones();
    stuck.cost = {no, no, no, 5, 5, 5};
    planner kept;
    for (const problem* p : {&small, &large, &stuck, &small, &large, &large, &small}) {
        const solution fresh = solve(*p);
        const solution again = kept.solve(*p);
        CHECK(again.setup == fresh.setup);
        CHECK(again.cost == fresh.cost);
        CHECK(again.stuck == fresh.stuck);
        CHECK(again.sure.nodes == fresh.sure.nodes);
        CHECK(again.sure.bound == fresh.sure.bound);
    }
    planner moved = std::move(kept);
    CHECK(moved.solve(small).setup == solve(small).setup);
}

TEST_CASE("on small problems: the bound is below every plan, and what is called optimal is",
          "[plan]") {
    std::mt19937 dice(20261125);
    const auto roll = [&](int n) { return static_cast<int>(dice() % static_cast<unsigned>(n)); };
    int proved = 0;
    for (int round = 0; round < 500; ++round) {
        problem p;
        p.zones = static_cast<std::size_t>(1 + roll(4));
        p.setups = static_cast<std::size_t>(1 + roll(4));
        const int tools = 1 + roll(3);
        for (int t = 0; t < tools; ++t) {
            p.price.push_back(roll(600));
        }
        for (std::size_t i = 0; i < p.zones * p.setups; ++i) {
            p.cost.push_back(roll(6) == 0 ? no : roll(3000));
            p.length.push_back(roll(2000));
            p.tools.push_back(static_cast<tool_set>(roll(1 << tools)));
        }
        if (p.zones > 1 && roll(2) == 0) {
            p.seams.push_back({0, p.zones - 1, 3, 300});
        }
        INFO("round " << round);
        const solution s = solve(p);
        const tried all = by_trying_all(p);
        CHECK(s.stuck.empty() == (all.best >= 0));
        if (all.best < 0) {
            continue;
        }
        CHECK(s.sure.bound <= all.best);
        CHECK(in_mmin(s.cost) >= all.best);
        CHECK(s.cost == cost_of(p, s.setup));
        CHECK(s.sure.optimal == (s.sure.bound == in_mmin(s.cost)));
        if (s.sure.optimal) {
            CHECK(s.setup == all.first);  // of equals the first by zone, then by setup
            ++proved;
        }
    }
    CHECK(proved > 20);
}
