#include <algorithm>
#include <cstdlib>

#include <pelage/error.hpp>
#include <pelage/plan.hpp>

#include "plan_parts.hpp"

namespace pelage {

namespace {

std::int64_t step_cost(const problem& p, const seam_cost& s, std::size_t at_a, std::size_t at_b) {
    const std::int64_t step =
        std::abs(static_cast<std::int64_t>(p.length[p.at(s.a, at_a)]) - p.length[p.at(s.b, at_b)]);
    return std::max<std::int64_t>(0, step - s.allowance) * s.per_hundredth;
}

void need(bool holds, const char* what) {
    if (!holds) {
        throw error(errc::range, what);
    }
}

}  // namespace

work cost_of(const problem& p, std::span<const std::size_t> setup) {
    need(setup.size() == p.zones, "a plan names one setup per zone");
    std::int64_t sum = 0;
    tool_set held = 0;
    std::int32_t spent = 0;
    for (std::size_t z = 0; z < p.zones; ++z) {
        need(setup[z] < p.setups && p.cost[p.at(z, setup[z])] != forbidden,
             "the plan uses a setup that is not allowed in its zone");
        sum += p.cost[p.at(z, setup[z])];
        held |= p.tools[p.at(z, setup[z])];
        spent += p.spend.empty() ? 0 : p.spend[p.at(z, setup[z])];
    }
    need(spent <= p.budget || p.spend.empty(), "the plan needs more combing out than its budget");
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        sum += (held >> t & 1U) != 0 ? p.price[t] : 0;
    }
    for (const seam_cost& s : p.seams) {
        sum += step_cost(p, s, setup[s.a], setup[s.b]);
    }
    return mmin(sum);
}

void check(const problem& p) {
    planning::open_plan plan;
    planning::first_look look;
    planning::read(p, plan, look);
}

solution solve(const problem& p, std::int64_t most_nodes) {
    return planner().solve(p, most_nodes);
}

}  // namespace pelage
