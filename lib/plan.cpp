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

bool within(std::int32_t x, std::int32_t most) {
    return static_cast<std::uint32_t>(x) <= static_cast<std::uint32_t>(most);
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
    need(p.zones <= most_zones && p.setups <= most_setups && p.price.size() <= most_tools &&
             p.seams.size() <= most_steps,
         "too many zones, setups, tools or seams");
    const std::size_t cells = p.zones * p.setups;
    need(p.cost.size() == cells && p.length.size() == cells && p.tools.size() == cells,
         "costs, lengths and tools need one entry per zone and setup");
    need(p.spend.empty() || p.spend.size() == cells,
         "minutes of combing out need one entry per zone and setup, or none at all");
    need(p.budget >= 0, "a budget lies below 0 minutes");
    std::int64_t sum = 0;  // no plan costs more: each zone, tool and step at its dearest
    for (const std::int32_t price : p.price) {
        need(within(price, dearest), "a price lies outside 0 to 1000 minutes");
        sum += price;
    }
    bool costs = true;
    tool_set held = 0;
    std::int32_t low = longest;
    std::int32_t high = 0;
    for (std::size_t z = 0; z < p.zones; ++z) {
        std::int32_t most = 0;
        planning::each_allowed(p, z, [&](std::size_t, std::size_t at) {
            costs = costs && within(p.cost[at], dearest);
            most = std::max(most, p.cost[at]);
            low = std::min(low, p.length[at]);
            high = std::max(high, p.length[at]);
            held |= p.tools[at];
        });
        sum += most;
    }
    need(costs, "a cost lies outside 0 to 1000 minutes");
    need(low >= 0 && high <= longest, "a length lies outside 0 to 1000 mm");
    need(p.price.size() == most_tools || held >> p.price.size() == 0,
         "a setup holds a tool that has no price");
    for (const seam_cost& s : p.seams) {
        need(s.a < p.zones && s.b < p.zones && s.allowance >= 0 &&
                 within(s.per_hundredth, dearest / 1000),
             "a seam names no zone of the problem or lies outside its bounds");
        sum += std::int64_t{s.per_hundredth} * std::max(0, high - low - s.allowance);
    }
    need(sum <= most_cost, "the dearest plan would cost more than 250000 minutes");
}

solution solve(const problem& p, std::int64_t most_nodes) {
    return planner().solve(p, most_nodes);
}

}  // namespace pelage
