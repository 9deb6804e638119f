// The search: reduce, bound, split.
//
// What is left of the problem when nothing more can be removed from it is a problem of the same kind: of
// the open zones alone, whose labels cost what is folded into them, too. Its plans are those of the
// whole, in the same order, and cost what is paid less. It is the one that is searched.
//
// Only plans within a limit are sought: a tool's price above a first bound, more if there is none. A
// plan found lowers the limit to its cost. So the first of the cheapest plans within the limit, if
// there is any, is the first of the cheapest of all.
//
// A part is split on a tool that its zones' least labels hold without paying it: the tool paid, and no
// label that holds it. Where they pay all tools it is split in the zone with most labels: the least one,
// and the others. Each plan is in one of the two.
//
// A part is done with if its bound is beyond the limit; or if its bound is the best plan's cost and even
// the first labels of all its zones come no earlier than that plan.
#include "solver/setup_parts.hpp"

namespace pelage {

using namespace planning;

namespace {

/// Of the tools that zones' least labels hold the one of which these zones leave most unpaid, as a set;
/// empty if they pay all.
tool_set least_paid(part& p) {
    by_tool unpaid = p.price;
    tool_set held = 0;
    each_bit(p.open, [&](std::size_t z) {
        const tool_set tools = p.labels(z)[p.rows[z].least].tools;
        held |= tools;
        each_bit(tools, [&](std::size_t t) { unpaid[t] -= p.share[z][t]; });
    });
    std::int32_t most = 0;
    tool_set out = 0;
    each_bit(held, [&](std::size_t t) {
        out = unpaid[t] > most ? bit(t) : out;
        most = std::max(most, unpaid[t]);
    });
    return out;
}

/// Makes of two equal parts one that holds a tool, paid, or a label, and one without it.
void split(part& with, part& without) {
    const tool_set tool = least_paid(with);
    const auto fewer = [](const zone_row& a, const zone_row& b) { return a.count < b.count; };
    const auto widest = std::max_element(with.rows.begin(), with.rows.end(), fewer);
    each_bit(tool, [&](std::size_t t) { with.paid += std::exchange(with.price[t], 0); });
    each_bit(with.open, [&](std::size_t z) {
        for (std::size_t l = 0; l < with.rows[z].count; ++l) {
            label& a = with.labels(z)[l];
            label& b = without.labels(z)[l];
            const bool by_label = tool == 0 && &with.rows[z] == &*widest;
            a.gone = a.gone || (by_label && l != with.rows[z].least);
            b.gone = b.gone || (a.tools & tool) != 0 || (by_label && l == with.rows[z].least);
            with.fresh |= (a.tools & tool) != 0 ? bit(z) : 0;
            a.tools &= ~tool;
        }
        with.drop(z);
        without.drop(z);
    });
    with.thin = without.thin = 0;
}

struct search {
    const problem& given;
    std::int64_t most_nodes;
    std::int64_t nodes = 0;
    std::vector<part> parts{};        // still to be weighed, the next one last
    std::vector<std::size_t> plan{};  // the setups chosen last, by zone
    std::vector<std::size_t> best{};
    cost_t cost = none;   // of the best plan
    cost_t limit = none;  // plans that cost more are not sought; at most `cost`

    /// Into `plan`: of every zone the label of that index.
    template <class Label>
    void choose(part& p, Label label_of) {
        plan.resize(p.rows.size());
        for (std::size_t z = 0; z < plan.size(); ++z) {
            const auto at = p.rows[z].count > 1 ? static_cast<std::size_t>(label_of(z)) : 0U;
            plan[z] = p.labels(z)[at].setup;
        }
    }

    /// Takes `plan` if it is better than the best.
    void offer() {
        const cost_t price = price_of(given, plan);
        if (price < cost || (price == cost && plan < best)) {
            best = plan;
            cost = price;
            limit = std::min(limit, cost);
        }
    }

    /// Whether a part, brought down to what may be in a plan worth finding, has any such plan. Again, as
    /// long as that raises its bound by much.
    bool wants(part& p) {
        cost_t before = 0;
        do {
            before = p.bound;
            if (!reduce(p) || !share_out(p, limit)) {
                return false;
            }
            choose(p, [&](std::size_t z) { return p.rows[z].least; });
            offer();
            choose(p, [](std::size_t) { return 0; });
            if (p.open == 0 || p.bound > limit || (p.bound == cost && plan >= best)) {
                return false;
            }
        } while (p.bound - before > 8 * p.most_rise);
        return true;
    }

    /// Finds the first of the cheapest plans within the limit, if there is one. False if that took too
    /// many nodes.
    bool explore(const part& root) {
        parts.assign(1, root);
        for (; !parts.empty() && nodes < most_nodes; ++nodes) {
            if (wants(parts.back())) {
                parts.push_back(parts.back());
                split(parts.back(), *(parts.end() - 2));
            } else {
                parts.pop_back();
            }
        }
        return parts.empty();
    }

    /// The first of the cheapest plans of a reduced problem with a choice.
    void run(part& root, solution& out) {
        // to begin with, what spends least in every zone, and of that the cheapest
        choose(root, [&](std::size_t z) {
            const auto zone = root.labels(z);
            const auto less = [](const label& a, const label& b) {
                return std::pair(a.spend, a.cost) < std::pair(b.spend, b.cost);
            };
            return std::min_element(zone.begin(), zone.end(), less) - zone.begin();
        });
        offer();
        bool done = !wants(root);
        bool whole = true;
        cost_t bound = root.bound;
        for (cost_t more = 8 * root.most_rise + 1; !done && whole; more *= 2) {
            const cost_t sought = limit = std::min(cost, bound + more);
            whole = explore(root);
            done = whole && cost <= sought;
            bound = whole ? sought + 1 : bound;
        }
        bound = done ? cost : std::min(bound, cost);
        out.setup = std::move(best);
        out.cost = mmin(cost);
        out.sure = {bound, bound == cost, nodes, out.sure.ties};
    }
};

/// What is left to decide: a problem of the same kind, of the open zones alone in their order.
problem left_of(part& root) {
    problem out;
    std::array<std::size_t, most_zones> number{};
    each_bit(root.open, [&](std::size_t z) {
        number[z] = out.zones.size();
        auto& zone = out.zones.emplace_back();
        zone.reserve(root.rows[z].count);
        for (const label& l : root.labels(z)) {
            zone.push_back({l.setup, l.spend, l.cost, l.length, l.tools});
        }
        root.each_seam(z, [&](const half_seam& s, const half_seam&) {
            if (s.to < z) {
                out.seams.push_back({number[z], number[s.to], s.per_hundredth, s.allowance});
            }
        });
    });
    out.price.assign(root.price.begin(), root.price.end());
    out.budget = root.budget;
    return out;
}

}  // namespace

solution solve(const problem& p, std::int64_t most_nodes) {
    check(p);
    solution out;
    seam_list seams;
    part root = read(p, seams, out);
    if (!reduce(root)) {
        return out;
    }
    out.stuck.clear();
    out.setup.resize(p.zones.size());
    for (std::size_t z = 0; z < out.setup.size(); ++z) {
        out.setup[z] = root.labels(z).front().setup;
    }
    solution rest;
    if (root.open != 0) {
        const problem left = left_of(root);
        seam_list left_seams;
        part left_root = read(left, left_seams, rest);
        search{left, most_nodes}.run(left_root, rest);
    }
    auto next = rest.setup.begin();
    each_bit(root.open, [&](std::size_t z) { out.setup[z] = *next++; });
    out.cost = mmin(root.paid) + rest.cost;
    const cost_t bound = root.paid + rest.sure.bound;
    out.sure = {bound, bound == in_mmin(out.cost), rest.sure.nodes, out.sure.ties};
    return out;
}

}  // namespace pelage
