// The exact planner against brute force: every plan of small random problems is priced.
#include <cstdint>
#include <random>
#include <vector>

#include <pelage/plan.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

class dice {
  public:
    explicit dice(unsigned seed) : engine_(seed) {}
    /// 0 to n - 1, the same on every machine.
    int below(int n) { return static_cast<int>(engine_() % static_cast<std::uint64_t>(n)); }
    bool one_in(int n) { return below(n) == 0; }

  private:
    std::mt19937_64 engine_;
};

/// Setups that need combing out first, in some zones or in all, and a budget that may be too small for
/// any plan, or more than enough for all.
void add_spending(dice& d, problem& p) {
    const int rarely = 1 + d.below(3);
    const int most = 1 + d.below(12);
    for (std::size_t i = 0; i < p.zones * p.setups; ++i) {
        const int minutes = d.one_in(rarely) ? d.below(most) : 0;
        p.spend.push_back(static_cast<std::uint8_t>(minutes));
    }
    p.budget = d.below(1 + static_cast<int>(p.zones) * most / 2);
}

/// Up to 6 zones and 8 setups; half of them with few distinct costs and lengths, so that ties abound.
problem any_problem(dice& d) {
    problem p;
    p.zones = static_cast<std::size_t>(1 + d.below(6));
    p.setups = static_cast<std::size_t>(2 + d.below(p.zones > 4 ? 4 : 7));
    const bool ties = d.one_in(2);
    const int tools = 1 + d.below(6);
    for (int t = 0; t < tools; ++t) {
        p.price.push_back(ties ? d.below(4) * 10 : d.below(300));
    }
    for (std::size_t i = 0; i < p.zones * p.setups; ++i) {
        p.cost.push_back(d.one_in(5) ? forbidden : ties ? d.below(4) * 10 : d.below(400));
        p.length.push_back(ties ? d.below(5) * 100 : d.below(2000));
        tool_set held = 0;
        for (int n = d.below(3); n >= 0; --n) {
            held |= tool_set{1} << static_cast<unsigned>(d.below(tools));
        }
        p.tools.push_back(held);
    }
    for (int n = d.below(9); n > 0 && p.zones > 1; --n) {
        const auto a = static_cast<std::size_t>(d.below(static_cast<int>(p.zones)));
        const auto b = static_cast<std::size_t>(d.below(static_cast<int>(p.zones)));
        if (a != b) {
            p.seams.push_back({a, b, d.below(4), d.below(300)});
        }
    }
    if (d.one_in(2)) {
        add_spending(d, p);
    }
    return p;
}

bool allowed(const problem& p, const std::vector<std::size_t>& plan) {
    std::int32_t spent = 0;
    for (std::size_t z = 0; z < p.zones; ++z) {
        if (p.cost[p.at(z, plan[z])] == forbidden) {
            return false;
        }
        spent += p.spend.empty() ? 0 : p.spend[p.at(z, plan[z])];
    }
    return spent <= p.budget;
}

/// The cheapest plan, the first in lexical order of equals, by pricing all; empty if none is allowed.
std::vector<std::size_t> by_brute_force(const problem& p) {
    std::vector<std::size_t> plan(p.zones, 0);
    std::vector<std::size_t> best;
    for (;;) {
        if (allowed(p, plan) && (best.empty() || cost_of(p, plan) < cost_of(p, best) ||
                                 (cost_of(p, plan) == cost_of(p, best) && plan < best))) {
            best = plan;
        }
        std::size_t z = 0;
        while (z < p.zones && ++plan[z] == p.setups) {
            plan[z++] = 0;
        }
        if (z == p.zones) {
            return best;
        }
    }
}

/// What is said where there is no plan: zones with no setup, or else those that can't but spend.
std::vector<std::size_t> why_none(const problem& p) {
    std::vector<std::size_t> without;
    std::vector<std::size_t> spending;
    for (std::size_t z = 0; z < p.zones; ++z) {
        bool any = false;
        bool free = false;
        for (std::size_t i = p.at(z, 0); i < p.at(z + 1, 0); ++i) {
            any = any || p.cost[i] != forbidden;
            free = free || (p.cost[i] != forbidden && (p.spend.empty() || p.spend[i] == 0));
        }
        if (!any) {
            without.push_back(z);
        } else if (!free) {
            spending.push_back(z);
        }
    }
    return without.empty() ? spending : without;
}

void check_against_brute_force(unsigned seed, int problems) {
    dice d(seed);
    int solved = 0;
    int overspent = 0;
    for (int i = 0; i < problems; ++i) {
        const problem p = any_problem(d);
        const solution s = solve(p);
        const auto best = by_brute_force(p);
        INFO("seed " << seed << ", problem " << i);
        REQUIRE(s.setup == best);
        REQUIRE(s.stuck.empty() == !best.empty());
        if (!best.empty()) {
            REQUIRE(s.cost == cost_of(p, best));
            REQUIRE(s.sure.optimal);
            REQUIRE(s.sure.bound == in_mmin(s.cost));
            ++solved;
        } else {
            REQUIRE(s.stuck == why_none(p));
            overspent += p.spend.empty() || p.cost[p.at(s.stuck[0], 0)] == forbidden ? 0 : 1;
        }
    }
    REQUIRE(solved > problems / 2);
    REQUIRE(overspent > 0);
}

}  // namespace

TEST_CASE("the plan is the first of the cheapest: brute force", "[oracle][plan]") {
    check_against_brute_force(1, 2000);
}

TEST_CASE("the plan is the first of the cheapest: brute force, many", "[oracle][plan][.full]") {
    check_against_brute_force(2, 10000);
}

TEST_CASE("with too few nodes the plan is real, the bound holds, and no proof is claimed",
          "[oracle][plan]") {
    dice d(3);
    int unproven = 0;
    for (int i = 0; i < 500; ++i) {
        const problem p = any_problem(d);
        const solution s = solve(p, 1);
        const auto best = by_brute_force(p);
        if (best.empty()) {
            continue;
        }
        INFO("problem " << i);
        CHECK(cost_of(p, s.setup) == s.cost);
        CHECK(s.sure.bound <= in_mmin(cost_of(p, best)));
        CHECK((!s.sure.optimal || s.cost == cost_of(p, best)));
        unproven += s.sure.optimal ? 0 : 1;
    }
    CHECK(unproven > 0);
}
