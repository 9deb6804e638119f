// Laws of the plan on random problems.
#include <algorithm>
#include <numeric>
#include <vector>

#include <rapidcheck.h>

#include <pelage/plan.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

template <class T>
std::vector<T> many(std::size_t n, const rc::Gen<T>& one) {
    return *rc::gen::container<std::vector<T>>(n, one);
}

/// A sound problem of up to `zones` zones and four setups; about one setup in six is forbidden.
problem any_problem(std::size_t zones) {
    problem p;
    p.zones = *rc::gen::inRange<std::size_t>(1, zones + 1);
    p.setups = *rc::gen::inRange<std::size_t>(1, 5);
    const std::size_t cells = p.zones * p.setups;
    const auto tools = *rc::gen::inRange<std::size_t>(0, 4);
    p.price = many<std::int32_t>(tools, rc::gen::inRange(0, 800));
    p.cost = many<std::int32_t>(
        cells, rc::gen::weightedOneOf<std::int32_t>(
                   {{5, rc::gen::inRange(0, 3000)}, {1, rc::gen::just(forbidden)}}));
    p.length = many<std::int32_t>(cells, rc::gen::inRange(0, 4000));
    p.tools = many<tool_set>(cells, rc::gen::inRange<tool_set>(0, tool_set{1} << tools));
    for (std::size_t i = *rc::gen::inRange<std::size_t>(0, 5); i > 0; --i) {
        p.seams.push_back({*rc::gen::inRange<std::size_t>(0, p.zones),
                           *rc::gen::inRange<std::size_t>(0, p.zones), *rc::gen::inRange(0, 10),
                           *rc::gen::inRange(0, 500)});
    }
    if (*rc::gen::arbitrary<bool>()) {
        p.spend = many<std::uint8_t>(cells, rc::gen::weightedOneOf<std::uint8_t>(
                                                {{2, rc::gen::just<std::uint8_t>(0)},
                                                 {1, rc::gen::inRange<std::uint8_t>(0, 20)}}));
        p.budget = *rc::gen::inRange(0, 40);
    }
    return p;
}

std::int32_t minutes(const problem& p, const std::vector<std::size_t>& choice) {
    std::int32_t sum = 0;
    for (std::size_t z = 0; z < choice.size() && !p.spend.empty(); ++z) {
        sum += p.spend[z * p.setups + choice[z]];
    }
    return sum;
}

/// Any choice of allowed setups; empty if some zone has none.
std::vector<std::size_t> any_choice(const problem& p) {
    std::vector<std::size_t> out;
    for (std::size_t z = 0; z < p.zones; ++z) {
        std::vector<std::size_t> allowed;
        for (std::size_t k = 0; k < p.setups; ++k) {
            if (p.cost[z * p.setups + k] != forbidden) {
                allowed.push_back(k);
            }
        }
        if (allowed.empty()) {
            return {};
        }
        out.push_back(*rc::gen::elementOf(allowed));
    }
    return out;
}

/// What a plan costs, added up in another way: tool by tool, asking each zone.
std::int64_t added_up(const problem& p, const std::vector<std::size_t>& choice) {
    std::int64_t sum = 0;
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        bool held = false;
        for (std::size_t z = 0; z < p.zones; ++z) {
            held = held || (p.tools[z * p.setups + choice[z]] & (tool_set{1} << t)) != 0;
        }
        sum += held ? p.price[t] : 0;
    }
    for (std::size_t z = 0; z < p.zones; ++z) {
        sum += p.cost[z * p.setups + choice[z]];
    }
    for (const seam_cost& s : p.seams) {
        const std::int64_t a = p.length[s.a * p.setups + choice[s.a]];
        const std::int64_t b = p.length[s.b * p.setups + choice[s.b]];
        const std::int64_t step = a > b ? a - b : b - a;
        sum += step > s.allowance ? (step - s.allowance) * s.per_hundredth : 0;
    }
    return sum;
}

/// The least cost over all plans, -1 if there is none, and how many plans have it.
struct least {
    std::int64_t cost = -1;
    int plans = 0;
};

void try_zone(const problem& p, std::vector<std::size_t>& choice, least& out) {
    const std::size_t z = choice.size();
    if (minutes(p, choice) > p.budget) {
        return;
    }
    if (z == p.zones) {
        const std::int64_t c = added_up(p, choice);
        if (out.cost < 0 || c < out.cost) {
            out = {c, 0};
        }
        out.plans += c == out.cost ? 1 : 0;
        return;
    }
    for (std::size_t k = 0; k < p.setups; ++k) {
        if (p.cost[z * p.setups + k] != forbidden) {
            choice.push_back(k);
            try_zone(p, choice, out);
            choice.pop_back();
        }
    }
}

least by_trying_all(const problem& p) {
    least out;
    std::vector<std::size_t> none;
    try_zone(p, none, out);
    return out;
}

/// The same problem with its zones in another order: zone z of `p` is zone `to[z]` of the result.
problem in_order(const problem& p, const std::vector<std::size_t>& to) {
    problem q = p;
    for (std::size_t z = 0; z < p.zones; ++z) {
        for (std::size_t k = 0; k < p.setups; ++k) {
            q.cost[to[z] * p.setups + k] = p.cost[z * p.setups + k];
            q.length[to[z] * p.setups + k] = p.length[z * p.setups + k];
            q.tools[to[z] * p.setups + k] = p.tools[z * p.setups + k];
            if (!p.spend.empty()) {
                q.spend[to[z] * p.setups + k] = p.spend[z * p.setups + k];
            }
        }
    }
    for (seam_cost& s : q.seams) {
        s.a = to[s.a];
        s.b = to[s.b];
    }
    return q;
}

std::vector<std::size_t> any_order(std::size_t n) {
    std::vector<std::size_t> to(n);
    std::iota(to.begin(), to.end(), std::size_t{0});
    for (std::size_t i = n; i > 1; --i) {
        std::swap(to[i - 1], to[*rc::gen::inRange<std::size_t>(0, i)]);
    }
    return to;
}

/// `p` with one more setup, after all others.
problem with_one_more(const problem& p) {
    problem q = p;
    q.setups = p.setups + 1;
    q.cost.clear();
    q.length.clear();
    q.tools.clear();
    q.spend.clear();
    for (std::size_t z = 0; z < p.zones; ++z) {
        for (std::size_t k = 0; k < p.setups; ++k) {
            q.cost.push_back(p.cost[z * p.setups + k]);
            q.length.push_back(p.length[z * p.setups + k]);
            q.tools.push_back(p.tools[z * p.setups + k]);
            if (!p.spend.empty()) {
                q.spend.push_back(p.spend[z * p.setups + k]);
            }
        }
        q.cost.push_back(*rc::gen::inRange(0, 3000));
        q.length.push_back(*rc::gen::inRange(0, 4000));
        q.tools.push_back(*rc::gen::inRange<tool_set>(0, tool_set{1} << p.price.size()));
        if (!p.spend.empty()) {
            q.spend.push_back(0);
        }
    }
    return q;
}

/// The same problem with its setups in another order: setup k of `p` is setup `to[k]` of the result.
problem with_setups_in_order(const problem& p, const std::vector<std::size_t>& to) {
    problem q = p;
    for (std::size_t z = 0; z < p.zones; ++z) {
        for (std::size_t k = 0; k < p.setups; ++k) {
            const std::size_t from = z * p.setups + k;
            const std::size_t there = z * p.setups + to[k];
            q.cost[there] = p.cost[from];
            q.length[there] = p.length[from];
            q.tools[there] = p.tools[from];
            if (!p.spend.empty()) {
                q.spend[there] = p.spend[from];
            }
        }
    }
    return q;
}

/// Tools that the setups of a plan hold.
tool_set held(const problem& p, const std::vector<std::size_t>& choice) {
    tool_set all = 0;
    for (std::size_t z = 0; z < p.zones; ++z) {
        all |= p.tools[z * p.setups + choice[z]];
    }
    return all;
}

}  // namespace

TEST_CASE("the cost of any plan is its zones, its tools once and its steps", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        const auto choice = any_choice(p);
        RC_PRE(!choice.empty() && minutes(p, choice) <= p.budget);
        RC_ASSERT(in_mmin(cost_of(p, choice)) == added_up(p, choice));
    }));
}

TEST_CASE("the plan's cost is its own, its bound is below every plan, its proof is true",
          "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(5);
        const solution s = solve(p);
        const least all = by_trying_all(p);
        RC_ASSERT(s.stuck.empty() == (all.cost >= 0));
        RC_PRE(all.cost >= 0);
        RC_ASSERT(in_mmin(s.cost) == added_up(p, s.setup));
        RC_ASSERT(s.sure.bound <= all.cost);
        RC_ASSERT(in_mmin(s.cost) >= all.cost);
        RC_ASSERT(s.sure.optimal == (s.sure.bound == in_mmin(s.cost)));
        RC_CLASSIFY(s.sure.optimal, "proved");
    }));
}

TEST_CASE("zones in another order: the same cost, and the same plan where only one is best",
          "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(5);
        const auto to = any_order(p.zones);
        const solution one = solve(p);
        const solution two = solve(in_order(p, to));
        RC_ASSERT(one.stuck.size() == two.stuck.size());
        RC_PRE(one.stuck.empty());
        RC_ASSERT(one.sure.bound == two.sure.bound);
        RC_ASSERT(one.cost == two.cost);
        if (one.sure.optimal && by_trying_all(p).plans == 1) {
            for (std::size_t z = 0; z < p.zones; ++z) {
                RC_ASSERT(two.setup[to[z]] == one.setup[z]);
            }
        }
    }));
}

TEST_CASE("one more setup in the drawer never makes the day longer", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(5);
        const problem more = with_one_more(p);
        const solution before = solve(p);
        const solution after = solve(more);
        RC_ASSERT(after.stuck.empty());  // the new one is allowed everywhere
        RC_PRE(before.stuck.empty());
        RC_ASSERT(after.sure.bound <= in_mmin(before.cost));
        if (before.sure.optimal && after.sure.optimal) {
            RC_ASSERT(after.cost <= before.cost);
        }
        // no zone is worse off by itself: of what is chosen without tools and steps in view
        problem bare_before = p;
        problem bare_after = more;
        for (problem* q : {&bare_before, &bare_after}) {
            q->spend.clear();
            q->seams.clear();
            std::fill(q->tools.begin(), q->tools.end(), tool_set{0});
        }
        RC_ASSERT(solve(bare_after).cost <= solve(bare_before).cost);
        RC_ASSERT(solve(bare_after).sure.optimal);
    }));
}

TEST_CASE("setups in another order: the same cost, and the same plan where only one is best",
          "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(5);
        const auto to = any_order(p.setups);
        const solution one = solve(p);
        const solution two = solve(with_setups_in_order(p, to));
        RC_ASSERT(one.stuck == two.stuck);
        RC_PRE(one.stuck.empty());
        RC_ASSERT(one.cost == two.cost);
        if (by_trying_all(p).plans == 1) {
            for (std::size_t z = 0; z < p.zones; ++z) {
                RC_ASSERT(two.setup[z] == to[one.setup[z]]);
            }
        }
    }));
}

TEST_CASE("allowing what was forbidden never costs more", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        problem q = p;
        for (std::int32_t& c : q.cost) {
            c = c == forbidden && *rc::gen::arbitrary<bool>() ? *rc::gen::inRange(0, 3000) : c;
        }
        const solution before = solve(p);
        RC_PRE(before.stuck.empty());
        RC_ASSERT(solve(q).cost <= before.cost);
    }));
}

TEST_CASE("all costs threefold: the same plan at three times the cost", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        problem q = p;
        for (std::int32_t& c : q.cost) {
            c = c == forbidden ? forbidden : 3 * c;
        }
        for (std::int32_t& c : q.price) {
            c *= 3;
        }
        for (seam_cost& s : q.seams) {
            s.per_hundredth *= 3;
        }
        const solution one = solve(p);
        const solution three = solve(q);
        RC_ASSERT(one.setup == three.setup);
        RC_ASSERT(3 * in_mmin(one.cost) == in_mmin(three.cost));
    }));
}

TEST_CASE("a dearer tool never makes the day shorter", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        problem q = p;
        for (std::int32_t& c : q.price) {
            c += *rc::gen::weightedElement<std::int32_t>({{2, 0}, {1, 90}, {1, 700}});
        }
        const solution before = solve(p);
        const solution after = solve(q);
        RC_ASSERT(before.stuck == after.stuck);
        RC_ASSERT(before.cost <= after.cost);
    }));
}

TEST_CASE("without the tools the plan doesn't hold it is the same plan", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        const solution before = solve(p);
        RC_PRE(before.stuck.empty());
        const tool_set left = ~held(p, before.setup);
        problem q = p;
        for (std::size_t i = 0; i < q.cost.size(); ++i) {
            q.cost[i] = (q.tools[i] & left) != 0 ? forbidden : q.cost[i];
        }
        RC_ASSERT(solve(q).setup == before.setup);
    }));
}

TEST_CASE("more time for combing out never makes the rest longer", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        problem q = p;
        q.budget += *rc::gen::inRange(1, 30);
        const solution before = solve(p);
        RC_PRE(before.stuck.empty());
        RC_ASSERT(solve(q).cost <= before.cost);
    }));
}

TEST_CASE("a problem solved twice is solved alike", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        const solution one = solve(p);
        const solution two = solve(p);
        RC_ASSERT(one.setup == two.setup);
        RC_ASSERT(one.cost == two.cost);
        RC_ASSERT(one.sure.bound == two.sure.bound);
        RC_ASSERT(one.stuck == two.stuck);
    }));
}
