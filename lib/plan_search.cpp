// The search: branch on a tool, bound by elimination with shared tool prices.
//
// Shares. Let b[z][t] >= 0 with sum over zones at most price[t]. Charging every zone b[z][t] for each
// tool t it holds never charges more than the price, since a plan holding t anywhere pays it whole.
// So the exact minimum of the shared problem bounds every plan of the node from below, whatever the
// shares; they only decide how tight that is.
//
// Ties. Of the plans with least shared cost elimination returns the first, v. Every plan of the node
// that costs as little as the bound is among them, so none of them is earlier than v. A node ends when
// (bound, v) is not before the best (cost, plan) found; or when v's true cost is the bound, since then
// v is the first optimum of the node. Otherwise some unpaid tool that v holds is not covered by its
// shares, and the node splits on it: without the tool, and with it paid. Both are smaller, and with no
// unpaid tools the shared cost is the true one, so the search ends with the first optimum.
//
// Budget. Bounds leave it out: the least of more plans is no more, and the first of equals among more
// plans is no later, so all of the above holds with v a plan that may overspend. Where it does, the
// node splits on a zone in which v spends: labels that spend as much, and labels that spend less.
#include <algorithm>
#include <bit>

#include <pelage/error.hpp>

#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

constexpr int first_sweeps = 6;  // rounds of sharing at the root; half as many further down

class searcher {
  public:
    searcher(const problem& p, std::int64_t most_nodes) : p_(p), most_nodes_(most_nodes) {}

    void explore(open_plan node, int depth);

    cost_t best_cost = unreachable;
    std::vector<std::size_t> best;
    std::int64_t nodes = 0;
    cost_t open_bound = unreachable;  ///< least bound of a node given up

  private:
    /// What the marginals say about sharing a tool's price, zone by zone.
    void share(open_plan& node);
    bool bound(open_plan& node, int sweeps, cost_t& least);
    /// Drops labels through which no plan is as cheap as the best. Whether any went.
    bool fix(open_plan& node);
    void offer(const open_plan& node);
    [[nodiscard]] bool before_best(cost_t bound) const;
    [[nodiscard]] int worst_covered(const open_plan& node) const;
    void split_zone(const open_plan& node, int depth);
    void split_tool(open_plan node, int tool, int depth);
    void split_spend(const open_plan& node, int depth);
    [[nodiscard]] std::int32_t spent(const open_plan& node) const;
    [[nodiscard]] const label& taken(const open_plan& node, std::size_t z) const {
        return node.labels[z][node.open(z) ? chosen_[z] : 0];
    }
    [[nodiscard]] std::vector<std::size_t> setups(const open_plan& node) const;

    const problem& p_;
    std::int64_t most_nodes_;
    elimination tables_;
    std::vector<std::uint16_t> chosen_;
    std::vector<std::vector<cost_t>> marginal_;
    std::vector<std::size_t> plan_;
    cost_t plan_cost_ = 0;
};

std::vector<std::size_t> searcher::setups(const open_plan& node) const {
    std::vector<std::size_t> out(node.zones);
    for (std::size_t z = 0; z < node.zones; ++z) {
        out[z] = taken(node, z).setup;
    }
    return out;
}

/// Of what is left of the budget.
std::int32_t searcher::spent(const open_plan& node) const {
    std::int32_t sum = 0;
    for (std::size_t z = 0; z < node.zones; ++z) {
        sum += taken(node, z).spend;
    }
    return sum;
}

bool searcher::before_best(cost_t bound) const {
    return bound < best_cost || (bound == best_cost && plan_ < best);
}

void searcher::offer(const open_plan& node) {
    plan_ = setups(node);
    plan_cost_ = unreachable;
    if (spent(node) > node.budget) {
        return;
    }
    plan_cost_ = in_mmin(cost_of(p_, plan_));
    if (before_best(plan_cost_)) {
        best_cost = plan_cost_;
        best = plan_;
    }
}

// A zone that would lose `gain` without the tool can bear up to that much more of its price before it
// changes its mind; one that would gain without it bears its share for nothing. What the second kind
// gives up goes to the first, by what each can bear.
void searcher::share(open_plan& node) {
    tables_.marginals(node, marginal_);
    for (std::size_t t = 0; t < most_tools; ++t) {
        if (node.price[t] == 0) {
            continue;
        }
        std::array<cost_t, most_zones> gain{};
        cost_t bear = 0;
        cost_t spare = node.price[t];
        for (std::size_t z = 0; z < node.zones; ++z) {
            spare -= node.share[z][t];
            if (!node.open(z)) {
                continue;
            }
            cost_t with = unreachable;
            cost_t without = unreachable;
            for (std::size_t l = 0; l < node.labels[z].size(); ++l) {
                cost_t& side = (node.labels[z][l].tools >> t & 1U) != 0 ? with : without;
                side = std::min(side, marginal_[z][l]);
            }
            if (with == unreachable) {
                spare += node.share[z][t];
                node.share[z][t] = 0;
                continue;
            }
            gain[z] = std::min<cost_t>(without - with, node.price[t]);
            if (gain[z] < 0) {
                const auto back =
                    static_cast<std::int32_t>(std::min<cost_t>(node.share[z][t], -gain[z]));
                node.share[z][t] -= back;
                spare += back;
            }
            bear += std::max<cost_t>(0, gain[z]);
        }
        for (std::size_t z = 0; z < node.zones && bear > 0 && spare > 0; ++z) {
            if (gain[z] > 0) {
                const cost_t part = std::min(gain[z], spare * gain[z] / bear);
                node.share[z][t] += static_cast<std::int32_t>(part);
                bear -= gain[z];
                spare -= part;
            }
        }
    }
}

bool searcher::bound(open_plan& node, int sweeps, cost_t& least) {
    if (!tables_.build(node)) {
        return false;
    }
    least = node.paid + tables_.solve(node, chosen_);
    offer(node);
    for (int i = 0; i < sweeps && plan_cost_ != least && before_best(least); ++i) {
        share(node);
        least = std::max(least, node.paid + tables_.solve(node, chosen_));
        offer(node);
    }
    return true;
}

bool searcher::fix(open_plan& node) {
    tables_.marginals(node, marginal_);
    bool any = false;
    for (std::size_t z = 0; z < node.zones; ++z) {
        if (!node.open(z)) {
            continue;
        }
        auto& labels = node.labels[z];
        std::size_t kept = 0;
        for (std::size_t l = 0; l < labels.size(); ++l) {
            if (node.paid + marginal_[z][l] <= best_cost) {
                labels[kept++] = labels[l];
            }
        }
        any = any || kept < labels.size();
        labels.resize(kept);
    }
    return any;
}

/// The unpaid tool whose price the shares of its holders in the chosen plan cover worst; -1 if all
/// are covered.
int searcher::worst_covered(const open_plan& node) const {
    std::array<cost_t, most_tools> paid{};
    tool_set held = 0;
    for (std::size_t z = 0; z < node.zones; ++z) {
        for (tool_set t = taken(node, z).tools; t != 0; t &= t - 1) {
            const auto tool = static_cast<std::size_t>(std::countr_zero(t));
            held |= tool_set{1} << tool;
            paid[tool] += node.share[z][tool];
        }
    }
    int worst = -1;
    cost_t most = 0;
    for (; held != 0; held &= held - 1) {
        const auto t = static_cast<std::size_t>(std::countr_zero(held));
        if (node.price[t] - paid[t] > most) {
            most = node.price[t] - paid[t];
            worst = static_cast<int>(t);
        }
    }
    return worst;
}

/// Tables too large: halve the labels of the zone that has the most.
void searcher::split_zone(const open_plan& node, int depth) {
    std::size_t widest = 0;
    for (std::size_t z = 0; z < node.zones; ++z) {
        widest = node.labels[z].size() > node.labels[widest].size() ? z : widest;
    }
    const std::size_t half = node.labels[widest].size() / 2;
    for (const bool low : {true, false}) {
        open_plan part = node;
        auto& labels = part.labels[widest];
        const auto middle = labels.begin() + static_cast<std::ptrdiff_t>(half);
        low ? labels.erase(middle, labels.end()) : labels.erase(labels.begin(), middle);
        explore(std::move(part), depth + 1);
    }
}

void searcher::explore(open_plan node, int depth) {
    if (++nodes > most_nodes_) {
        open_bound = std::min(open_bound, node.paid);
        return;
    }
    if (!reduce(node)) {
        return;
    }
    cost_t least = 0;
    if (!bound(node, depth == 0 ? first_sweeps : first_sweeps / 2, least)) {
        split_zone(node, depth);
        return;
    }
    if (plan_cost_ == least || !before_best(least)) {
        return;
    }
    if (fix(node)) {
        explore(std::move(node), depth);  // smaller now: dominance may see more
        return;
    }
    if (spent(node) > node.budget) {
        split_spend(node, depth);
    } else {
        split_tool(std::move(node), worst_covered(node), depth);
    }
}

/// The zone in which the chosen plan spends most: as much there, or less.
void searcher::split_spend(const open_plan& node, int depth) {
    std::size_t most = 0;
    for (std::size_t z = 0; z < node.zones; ++z) {
        most = taken(node, z).spend > taken(node, most).spend ? z : most;
    }
    const std::int32_t limit = taken(node, most).spend;
    for (const bool less : {true, false}) {
        open_plan part = node;
        std::erase_if(part.labels[most], [&](const label& l) { return (l.spend < limit) != less; });
        explore(std::move(part), depth + 1);
    }
}

/// With the tool paid, and without it.
void searcher::split_tool(open_plan node, int tool, int depth) {
    const tool_set bit = tool_set{1} << static_cast<unsigned>(tool);
    open_plan with = node;
    with.paid += with.price[static_cast<std::size_t>(tool)];
    with.price[static_cast<std::size_t>(tool)] = 0;
    for (auto& zone : with.labels) {
        for (label& l : zone) {
            l.tools &= ~bit;
        }
    }
    explore(std::move(with), depth + 1);
    for (auto& zone : node.labels) {
        std::erase_if(zone, [&](const label& l) { return (l.tools & bit) != 0; });
    }
    explore(std::move(node), depth + 1);
}

}  // namespace

solution find(const problem& p, const std::vector<std::size_t>& known, std::int64_t most_nodes) {
    searcher s(p, most_nodes);
    s.best = known;
    s.best_cost = in_mmin(cost_of(p, known));
    open_plan root;
    if (read(p, root)) {
        s.explore(std::move(root), 0);
    }
    solution out;
    out.setup = s.best;
    out.cost = mmin(s.best_cost);
    out.sure.nodes = s.nodes;
    out.sure.bound = std::min(s.open_bound, s.best_cost);
    out.sure.optimal = s.open_bound >= s.best_cost;
    return out;
}

}  // namespace pelage::planning
