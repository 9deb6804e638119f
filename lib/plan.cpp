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

/// In every zone on its own: the setup that needs the least combing out, the cheapest of these, the
/// first of equals. A plan to begin from, and if it doesn't fit in the budget none does.
struct own_choice {
    std::vector<std::size_t> setup;
    std::vector<std::size_t> stuck;
    std::size_t ties = 0;  // zones in which several setups share the least cost
};

own_choice each_alone(const problem& p) {
    own_choice out;
    std::vector<std::size_t> spending;
    std::int32_t spent = 0;
    const auto spend = [&](std::size_t at) { return p.spend.empty() ? 0 : p.spend[at]; };
    for (std::size_t z = 0; z < p.zones; ++z) {
        const auto row = std::span(p.cost).subspan(p.at(z, 0), p.setups);
        const auto cheapest = std::min_element(row.begin(), row.end());
        if (cheapest == row.end() || *cheapest == forbidden) {
            out.stuck.push_back(z);
            continue;
        }
        out.ties += std::count(row.begin(), row.end(), *cheapest) > 1 ? 1 : 0;
        std::size_t best = p.at(z, static_cast<std::size_t>(cheapest - row.begin()));
        for (std::size_t i = p.at(z, 0); i < p.at(z + 1, 0); ++i) {
            if (p.cost[i] != forbidden && spend(i) < spend(best)) {
                best = i;
            }
        }
        for (std::size_t i = p.at(z + 1, 0); i-- > p.at(z, 0);) {
            if (spend(i) == spend(best) && p.cost[i] <= p.cost[best]) {
                best = i;
            }
        }
        out.setup.push_back(best - p.at(z, 0));
        spent += spend(best);
        if (spend(best) > 0) {
            spending.push_back(z);
        }
    }
    if (out.stuck.empty() && spent > p.budget) {
        out.stuck = spending;
    }
    return out;
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
    for (std::size_t i = 0; i < cells; ++i) {
        need(p.cost[i] == forbidden || (p.cost[i] >= 0 && p.cost[i] <= dearest),
             "a cost lies outside 0 to 1000 minutes");
        need(p.length[i] >= 0 && p.length[i] <= 100'000, "a length lies outside 0 to 1000 mm");
        need(p.price.size() == most_tools || p.tools[i] >> p.price.size() == 0,
             "a setup holds a tool that has no price");
    }
    for (const std::int32_t price : p.price) {
        need(price >= 0 && price <= dearest, "a price lies outside 0 to 1000 minutes");
    }
    for (const seam_cost& s : p.seams) {
        need(s.a < p.zones && s.b < p.zones && s.allowance >= 0 && s.per_hundredth >= 0 &&
                 s.per_hundredth <= dearest / 1000,
             "a seam names no zone of the problem or lies outside its bounds");
    }
}

solution solve(const problem& p, std::int64_t most_nodes) {
    check(p);
    const own_choice alone = each_alone(p);
    solution out;
    out.stuck = alone.stuck;
    if (!out.stuck.empty()) {
        return out;
    }
    out = planning::find(p, alone.setup, most_nodes);
    out.sure.ties = alone.ties;
    return out;
}

}  // namespace pelage
