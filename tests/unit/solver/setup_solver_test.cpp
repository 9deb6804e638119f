// The choice of setups as a problem in integers.
#include <algorithm>
#include <limits>
#include <random>
#include <utility>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/solver/setup_solver.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

/// Two zones, three setups, two tools at 500 and 250; the last setup isn't allowed in the first zone.
problem two_zones() {
    problem p;
    p.zones = {{{0, 0, 1000, 1300, 0b01}, {1, 0, 1200, 1600, 0b10}},
               {{0, 0, 2000, 1300, 0b01}, {1, 0, 1900, 1600, 0b10}, {2, 0, 1900, 2500, 0b11}}};
    p.price = {500, 250};
    return p;
}

/// What trying every plan of a small problem finds: the least cost, -1 if there is no plan, and the
/// first plan by zone and setup that has it.
struct tried {
    std::int64_t best = -1;
    std::vector<std::size_t> first;
};

void try_zone(const problem& p, std::vector<std::size_t>& at, tried& out) {
    if (at.size() == p.zones.size()) {
        const std::int64_t c = in_mmin(cost_of(p, at));
        if (out.best < 0 || c < out.best) {
            out = {c, at};
        }
        return;
    }
    for (const allowed_setup& s : p.zones[at.size()]) {
        at.push_back(s.setup);
        try_zone(p, at, out);
        at.pop_back();
    }
}

tried by_trying_all(const problem& p) {
    tried out;
    std::vector<std::size_t> at;
    try_zone(p, at, out);
    return out;
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
    p.zones[1][1].length = 1601;
    CHECK(cost_of(p, mixed) == mmin(3653));
    // a step down costs what a step up costs
    std::swap(p.zones[0][0].length, p.zones[1][1].length);
    CHECK(cost_of(p, mixed) == mmin(3653));
}

TEST_CASE("a plan that isn't one has no cost", "[plan]") {
    const problem p = two_zones();
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{0}), error);
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{0, 3}), error);
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{2, 0}), error);  // not allowed there
    CHECK_THROWS_AS(cost_of(p, std::vector<std::size_t>{0, 0, 0}), error);
}

TEST_CASE("of equal setups the first is taken, of equal zones each", "[plan]") {
    problem p;
    p.zones = {
        {{0, 0, 700, 1300, 0}, {1, 0, 600, 1300, 0}, {2, 0, 600, 1300, 0}},
        {{0, 0, 900, 1300, 0}, {1, 0, 800, 1300, 0}, {2, 0, 900, 1300, 0}, {3, 0, 800, 1300, 0}}};
    const solution s = solve(p);
    CHECK(s.setup == std::vector<std::size_t>{1, 1});
    CHECK(s.cost == mmin(1400));
    CHECK(s.stuck.empty());
    CHECK(s.sure.ties == 2);
    CHECK(s.sure.optimal);
    p.zones[0].push_back({3, 0, 599, 1300, 0});
    CHECK(solve(p).setup == std::vector<std::size_t>{3, 1});
}

TEST_CASE("a plan is proved cheapest only where no plan can cost less", "[plan]") {
    // one setup a zone: nothing can be saved
    problem p = two_zones();
    p.zones[0].resize(1);
    p.zones[1].resize(1);
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
    p.zones[1].clear();
    const solution s = solve(p);
    CHECK(s.stuck == std::vector<std::size_t>{1});
    CHECK(s.setup.empty());
    CHECK_FALSE(s.sure.optimal);
}

TEST_CASE("combing out is planned only as far as its budget goes", "[plan]") {
    problem p = two_zones();
    p.zones = {{{0, 6, 1000, 1300, 0b01}, {1, 0, 9000, 1600, 0b10}},
               {{0, 7, 2000, 1300, 0b01}, {1, 0, 12000, 1600, 0b10}}};
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
    p.zones[0][0].spend = 3;
    p.zones[0][1].spend = 4;
    p.zones[1][1].spend = p.zones[1][2].spend = 9;
    p.budget = 2;
    const solution s = solve(p);
    CHECK(s.setup.empty());
    CHECK(s.stuck == std::vector<std::size_t>{0});
    CHECK_FALSE(s.sure.optimal);
    p.zones[1].erase(p.zones[1].begin());  // now 3 and 9 are needed
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
    p.zones.resize(2);
    CHECK(solve(p).stuck == std::vector<std::size_t>{0, 1});
}

TEST_CASE("a problem outside its bounds is refused before anything overflows", "[plan]") {
    CHECK_NOTHROW(check(two_zones()));
    struct row {
        const char* what;
        void (*spoil)(problem&);
    };
    const row rows[] = {
        {"a cost below nothing", [](problem& p) { p.zones[0][0].cost = -1; }},
        {"a cost above 1000 minutes", [](problem& p) { p.zones[0][1].cost = dearest + 1; }},
        {"a length below nothing", [](problem& p) { p.zones[1][0].length = -1; }},
        {"a length above 1000 mm", [](problem& p) { p.zones[1][2].length = longest_hair + 1; }},
        {"a price below nothing", [](problem& p) { p.price[0] = -1; }},
        {"a price above 1000 minutes", [](problem& p) { p.price[0] = dearest + 1; }},
        {"a tool without a price", [](problem& p) { p.zones[0][0].tools = 0b100; }},
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
        {"a setup twice", [](problem& p) { p.zones[1][1].setup = 0; }},
        {"setups out of order", [](problem& p) { p.zones[1][1].setup = 3; }},
        {"a budget below nothing", [](problem& p) { p.budget = -1; }},
        {"too many zones", [](problem& p) { p.zones.resize(most_zones + 1); }},
        {"too many setups", [](problem& p) { p.zones[1][2].setup = most_setups; }},
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
    for (std::size_t z = 0; z < most_zones; ++z) {
        const std::int32_t left = z % 2 == 0 ? 0 : longest_hair;
        p.zones.push_back({{0, 255, dearest, left, ~tool_set{0}},
                           {most_setups - 1, 255, dearest, left, ~tool_set{0}}});
    }
    p.price.assign(most_tools, dearest);
    const std::int64_t bare = 64LL * dearest + 64LL * dearest;
    // the dearest step is 100 minutes: so many seams come up to the limit, and one that fills it
    const std::int64_t left = (most_cost - bare) % longest_hair;
    for (std::int64_t i = (most_cost - bare) / longest_hair; i > 0;
         i -= std::min<std::int64_t>(i, 1000)) {
        p.seams.push_back({0, 1, static_cast<std::int32_t>(std::min<std::int64_t>(i, 1000)), 0});
    }
    p.seams.push_back({2, 3, 1, static_cast<std::int32_t>(longest_hair - left)});
    p.budget = std::numeric_limits<std::int32_t>::max();
    const solution s = solve(p);
    CHECK(in_mmin(s.cost) == most_cost);
    CHECK(s.sure.optimal);
    p.seams.back().allowance -= 1;
    CHECK_THROWS_AS(solve(p), error);
    CHECK_THROWS_AS(check(p), error);
}

TEST_CASE("an allowance beyond all lengths is no step, whether there are setups or none",
          "[plan]") {
    problem p = two_zones();
    p.seams.push_back({0, 1, 1000, std::numeric_limits<std::int32_t>::max()});
    CHECK(solve(p).cost == solve(two_zones()).cost);
    for (auto& zone : p.zones) {
        zone.clear();
    }
    CHECK(solve(p).stuck == std::vector<std::size_t>{0, 1});
}

TEST_CASE("on small problems: the bound is below every plan, and what is called optimal is",
          "[plan]") {
    std::mt19937 dice(20261125);
    const auto roll = [&](int n) { return static_cast<int>(dice() % static_cast<unsigned>(n)); };
    int proved = 0;
    for (int round = 0; round < 500; ++round) {
        problem p;
        p.zones.resize(static_cast<std::size_t>(1 + roll(4)));
        const int setups = 1 + roll(4);
        const int tools = 1 + roll(3);
        for (int t = 0; t < tools; ++t) {
            p.price.push_back(roll(600));
        }
        for (auto& zone : p.zones) {
            for (int k = 0; k < setups; ++k) {
                if (roll(6) > 0) {
                    const int cost = roll(3000);
                    const int left = roll(2000);
                    zone.push_back({static_cast<std::uint16_t>(k), 0, cost, left,
                                    static_cast<tool_set>(roll(1 << tools))});
                }
            }
        }
        if (p.zones.size() > 1 && roll(2) == 0) {
            p.seams.push_back({0, p.zones.size() - 1, 3, 300});
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
