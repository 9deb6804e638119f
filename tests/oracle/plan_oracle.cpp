// The exact planner against brute force: every plan of small random problems is priced.
#include <algorithm>
#include <cstdint>
#include <cstdlib>
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

/// Seams anywhere, some twice, some from a zone to itself; or none.
void add_seams(dice& d, problem& p) {
    const int zones = static_cast<int>(p.zones);
    const int dear = d.one_in(4) ? 20 : 4;
    for (int n = d.below(9); n > 0; --n) {
        const auto a = static_cast<std::size_t>(d.below(zones));
        const auto b = static_cast<std::size_t>(d.below(zones));
        p.seams.push_back({a, b, d.below(dear), d.below(300)});
        if (d.one_in(6)) {
            p.seams.push_back({b, a, d.below(dear), d.below(300)});
        }
    }
}

/// Up to 6 zones and 8 setups (6 if there are more than 4 zones); half of them with few distinct costs
/// and lengths, so that ties abound. Tools may cost nothing, and a setup may hold up to three.
problem any_problem(dice& d) {
    problem p;
    p.zones = static_cast<std::size_t>(1 + d.below(6));
    p.setups = static_cast<std::size_t>(1 + d.below(p.zones > 4 ? 6 : 8));
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
    add_seams(d, p);
    if (d.one_in(2)) {
        add_spending(d, p);
    }
    return p;
}

/// Every zone holds every tool somewhere at little cost: tools shared by many, and rings of seams.
problem any_ring(dice& d) {
    problem p;
    p.zones = static_cast<std::size_t>(4 + d.below(3));
    p.setups = static_cast<std::size_t>(3 + d.below(3));
    p.price.assign(p.setups, 40 + d.below(100));
    for (std::size_t z = 0; z < p.zones; ++z) {
        for (std::size_t k = 0; k < p.setups; ++k) {
            p.cost.push_back(d.below(60));
            p.length.push_back(static_cast<std::int32_t>(k) * 100 + d.below(40));
            p.tools.push_back(tool_set{1} << k);
        }
        p.seams.push_back({z, (z + 1) % p.zones, d.below(2), d.below(80)});
        p.seams.push_back({z, (z + 2) % p.zones, d.below(2), d.below(80)});
    }
    if (d.one_in(3)) {
        add_spending(d, p);
    }
    return p;
}

std::int32_t minutes(const problem& p, std::size_t at) {
    return p.spend.empty() ? 0 : p.spend[at];
}

/// The cheapest plan, the first in lexical order of equals, by pricing all; empty if none is allowed.
class brute_force {
  public:
    explicit brute_force(const problem& p) : p_(p) { choose(0, 0, 0, 0); }
    std::vector<std::size_t> best;
    std::int64_t cost = 0;

  private:
    /// Zones are chosen in order, so plans come in lexical order: only a cheaper one is better.
    void choose(std::int64_t sum, tool_set held, std::int32_t spent, std::size_t z) {
        if (z == p_.zones) {
            if (spent <= p_.budget && (best.empty() || sum < cost)) {
                best = plan_;
                cost = sum;
            }
            return;
        }
        for (std::size_t k = 0; k < p_.setups; ++k) {
            const std::size_t at = p_.at(z, k);
            if (p_.cost[at] != forbidden) {
                plan_.push_back(k);
                choose(sum + added(z, held), held | p_.tools[at], spent + minutes(p_, at), z + 1);
                plan_.pop_back();
            }
        }
    }
    /// What the last zone chosen adds: itself, its new tools, its seams to zones before it.
    [[nodiscard]] std::int64_t added(std::size_t z, tool_set held) const {
        const std::size_t at = p_.at(z, plan_[z]);
        std::int64_t sum = p_.cost[at];
        for (std::size_t t = 0; t < p_.price.size(); ++t) {
            sum += ((p_.tools[at] & ~held) >> t & 1U) != 0 ? p_.price[t] : 0;
        }
        for (const seam_cost& s : p_.seams) {
            if (std::max(s.a, s.b) == z) {
                const std::int64_t step =
                    std::abs(p_.length[p_.at(s.a, plan_[s.a])] - p_.length[p_.at(s.b, plan_[s.b])]);
                sum += std::max<std::int64_t>(0, step - s.allowance) * s.per_hundredth;
            }
        }
        return sum;
    }

    const problem& p_;
    std::vector<std::size_t> plan_;
};

/// What is said where there is no plan: zones with no setup, or else those that can't but spend.
std::vector<std::size_t> why_none(const problem& p) {
    std::vector<std::size_t> without;
    std::vector<std::size_t> spending;
    for (std::size_t z = 0; z < p.zones; ++z) {
        bool any = false;
        bool free = false;
        for (std::size_t i = p.at(z, 0); i < p.at(z + 1, 0); ++i) {
            any = any || p.cost[i] != forbidden;
            free = free || (p.cost[i] != forbidden && minutes(p, i) == 0);
        }
        if (!any) {
            without.push_back(z);
        } else if (!free) {
            spending.push_back(z);
        }
    }
    return without.empty() ? spending : without;
}

/// What a run of problems must have met to mean anything.
struct met {
    int solved = 0;
    int overspent = 0;
    int searched = 0;
};

void check_against_brute_force(const problem& p, planner& kept, met& seen) {
    const solution s = kept.solve(p);
    const brute_force all(p);
    REQUIRE(s.setup == all.best);
    REQUIRE(s.stuck.empty() == !all.best.empty());
    if (all.best.empty()) {
        REQUIRE(s.stuck == why_none(p));
        seen.overspent += minutes(p, p.at(s.stuck[0], 0)) > 0 ? 1 : 0;
        return;
    }
    REQUIRE(in_mmin(s.cost) == all.cost);
    REQUIRE(s.cost == cost_of(p, all.best));
    REQUIRE(s.sure.optimal);
    REQUIRE(s.sure.bound == all.cost);
    ++seen.solved;
    seen.searched += s.sure.nodes > 0 ? 1 : 0;
}

void check_against_brute_force(unsigned seed, int problems) {
    dice d(seed);
    planner kept;
    met seen;
    for (int i = 0; i < problems; ++i) {
        INFO("seed " << seed << ", problem " << i);
        check_against_brute_force(d.one_in(3) ? any_ring(d) : any_problem(d), kept, seen);
    }
    CHECK(seen.solved > problems / 2);
    CHECK(seen.overspent > 0);
    CHECK(seen.searched > problems / 4);
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
        const problem p = d.one_in(2) ? any_ring(d) : any_problem(d);
        const brute_force all(p);
        if (all.best.empty()) {
            continue;
        }
        INFO("problem " << i);
        for (const std::int64_t nodes : {0, 1, 5, 40}) {
            const solution s = solve(p, nodes);
            CHECK(cost_of(p, s.setup) == s.cost);
            CHECK(s.sure.bound <= all.cost);
            CHECK(s.sure.optimal == (s.sure.bound == in_mmin(s.cost)));
            CHECK((!s.sure.optimal || s.cost == cost_of(p, all.best)));
            unproven += s.sure.optimal ? 0 : 1;
        }
    }
    CHECK(unproven > 100);
}
