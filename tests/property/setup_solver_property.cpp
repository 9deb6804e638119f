// Laws of the plan on random problems.
#include <algorithm>
#include <numeric>
#include <vector>

#include <rapidcheck.h>

#include <pelage/solver/setup_solver.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

template <class T>
std::vector<T> many(std::size_t n, const rc::Gen<T>& one) {
    return *rc::gen::container<std::vector<T>>(n, one);
}

allowed_setup any_setup(std::uint16_t number, std::size_t tools) {
    return {number, 0, *rc::gen::inRange(0, 3000), *rc::gen::inRange(0, 4000),
            *rc::gen::inRange<tool_set>(0, tool_set{1} << tools)};
}

/// A sound problem of up to `zones` zones and four setups; about one setup in six is forbidden.
problem any_problem(std::size_t zones) {
    problem p;
    p.zones.resize(*rc::gen::inRange<std::size_t>(1, zones + 1));
    const auto setups = *rc::gen::inRange<std::uint16_t>(1, 5);
    const auto tools = *rc::gen::inRange<std::size_t>(0, 4);
    p.price = many<std::int32_t>(tools, rc::gen::inRange(0, 800));
    const bool combs = *rc::gen::arbitrary<bool>();
    const auto minutes =
        rc::gen::weightedOneOf<std::int32_t>({{2, rc::gen::just(0)}, {1, rc::gen::inRange(0, 20)}});
    for (auto& zone : p.zones) {
        for (std::uint16_t k = 0; k < setups; ++k) {
            if (*rc::gen::inRange(0, 6) > 0) {
                zone.push_back(any_setup(k, tools));
                zone.back().spend = combs ? *minutes : 0;
            }
        }
    }
    for (std::size_t i = *rc::gen::inRange<std::size_t>(0, 5); i > 0; --i) {
        p.seams.push_back({*rc::gen::inRange<std::size_t>(0, p.zones.size()),
                           *rc::gen::inRange<std::size_t>(0, p.zones.size()),
                           *rc::gen::inRange(0, 10), *rc::gen::inRange(0, 500)});
    }
    p.budget = *rc::gen::inRange(0, 40);
    return p;
}

/// The setups of a choice; it may be short of zones at the end.
std::vector<allowed_setup> chosen(const problem& p, const std::vector<std::size_t>& choice) {
    std::vector<allowed_setup> out;
    for (std::size_t z = 0; z < choice.size(); ++z) {
        out.push_back(*find(p, z, choice[z]));
    }
    return out;
}

std::int32_t minutes(const problem& p, const std::vector<std::size_t>& choice) {
    std::int32_t sum = 0;
    for (const allowed_setup& s : chosen(p, choice)) {
        sum += s.spend;
    }
    return sum;
}

/// Any choice of allowed setups; empty if some zone has none.
std::vector<std::size_t> any_choice(const problem& p) {
    std::vector<std::size_t> out;
    for (const auto& zone : p.zones) {
        if (zone.empty()) {
            return {};
        }
        out.push_back(zone[*rc::gen::inRange<std::size_t>(0, zone.size())].setup);
    }
    return out;
}

/// What a plan costs, added up in another way: tool by tool, asking each zone.
std::int64_t added_up(const problem& p, const std::vector<std::size_t>& choice) {
    const auto plan = chosen(p, choice);
    std::int64_t sum = 0;
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        const bool held = std::any_of(plan.begin(), plan.end(), [&](const allowed_setup& s) {
            return (s.tools & (tool_set{1} << t)) != 0;
        });
        sum += held ? p.price[t] : 0;
    }
    for (const allowed_setup& s : plan) {
        sum += s.cost;
    }
    for (const seam_cost& s : p.seams) {
        const std::int64_t a = plan[s.a].length;
        const std::int64_t b = plan[s.b].length;
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
    if (z == p.zones.size()) {
        const std::int64_t c = added_up(p, choice);
        if (out.cost < 0 || c < out.cost) {
            out = {c, 0};
        }
        out.plans += c == out.cost ? 1 : 0;
        return;
    }
    for (const allowed_setup& s : p.zones[z]) {
        choice.push_back(s.setup);
        try_zone(p, choice, out);
        choice.pop_back();
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
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        q.zones[to[z]] = p.zones[z];
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

/// Above the numbers of all setups.
constexpr std::uint16_t setups = 4;

/// `p` with one more setup, after all others.
problem with_one_more(const problem& p) {
    problem q = p;
    for (auto& zone : q.zones) {
        zone.push_back(any_setup(setups, p.price.size()));
    }
    return q;
}

/// The same problem with its setups in another order: setup k of `p` is setup `to[k]` of the result.
problem with_setups_in_order(const problem& p, const std::vector<std::size_t>& to) {
    problem q = p;
    for (auto& zone : q.zones) {
        for (allowed_setup& s : zone) {
            s.setup = static_cast<std::uint16_t>(to[s.setup]);
        }
        std::sort(zone.begin(), zone.end(), [](auto& a, auto& b) { return a.setup < b.setup; });
    }
    return q;
}

/// Tools that the setups of a plan hold.
tool_set held(const problem& p, const std::vector<std::size_t>& choice) {
    tool_set all = 0;
    for (const allowed_setup& s : chosen(p, choice)) {
        all |= s.tools;
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
        const auto to = any_order(p.zones.size());
        const solution one = solve(p);
        const solution two = solve(in_order(p, to));
        RC_ASSERT(one.stuck.size() == two.stuck.size());
        RC_PRE(one.stuck.empty());
        RC_ASSERT(one.sure.bound == two.sure.bound);
        RC_ASSERT(one.cost == two.cost);
        if (one.sure.optimal && by_trying_all(p).plans == 1) {
            for (std::size_t z = 0; z < p.zones.size(); ++z) {
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
            q->seams.clear();
            for (auto& zone : q->zones) {
                for (allowed_setup& s : zone) {
                    s.tools = 0;
                    s.spend = 0;
                }
            }
        }
        RC_ASSERT(solve(bare_after).cost <= solve(bare_before).cost);
        RC_ASSERT(solve(bare_after).sure.optimal);
    }));
}

TEST_CASE("setups in another order: the same cost, and the same plan where only one is best",
          "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(5);
        const auto to = any_order(setups);
        const solution one = solve(p);
        const solution two = solve(with_setups_in_order(p, to));
        RC_ASSERT(one.stuck == two.stuck);
        RC_PRE(one.stuck.empty());
        RC_ASSERT(one.cost == two.cost);
        if (by_trying_all(p).plans == 1) {
            for (std::size_t z = 0; z < p.zones.size(); ++z) {
                RC_ASSERT(two.setup[z] == to[one.setup[z]]);
            }
        }
    }));
}

TEST_CASE("allowing what was forbidden never costs more", "[plan]") {
    CHECK(rc::check([] {
        const problem p = any_problem(8);
        problem q = p;
        for (std::size_t z = 0; z < q.zones.size(); ++z) {
            for (std::uint16_t k = 0; k < setups; ++k) {
                if (find(p, z, k) == nullptr && *rc::gen::arbitrary<bool>()) {
                    q.zones[z].push_back(any_setup(k, p.price.size()));
                }
            }
            std::sort(q.zones[z].begin(), q.zones[z].end(),
                      [](auto& a, auto& b) { return a.setup < b.setup; });
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
        for (auto& zone : q.zones) {
            for (allowed_setup& s : zone) {
                s.cost *= 3;
            }
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
        for (auto& zone : q.zones) {
            std::erase_if(zone, [&](const allowed_setup& s) { return (s.tools & left) != 0; });
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
