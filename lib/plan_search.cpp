// The search: reduce, bound, split.
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
#include <deque>

#include "plan_parts.hpp"

namespace pelage {

using namespace planning;

namespace {

/// Of two equal parts, keeps in each what is its own.
void split(part& with, part& without) {
    by_tool bare{};  // of a tool that some least label holds: what shares don't cover, plus 1
    std::size_t widest = 0;
    each_bit(with.open, [&](std::size_t z) {
        widest = with.rows[z].count > with.rows[widest].count ? z : widest;
        each_bit(with.labels(z)[with.rows[z].least].tools, [&](std::size_t t) {
            bare[t] = (bare[t] == 0 ? with.price[t] + 1 : bare[t]) - with.share[z][t];
        });
    });
    const auto worst = std::max_element(bare.begin(), bare.end());
    const tool_set tool = *worst > 1 ? bit(static_cast<std::size_t>(worst - bare.begin())) : 0;
    each_bit(tool, [&](std::size_t t) { with.paid += std::exchange(with.price[t], 0); });
    each_bit(with.open, [&](std::size_t z) {
        for (std::size_t l = 0; l < with.rows[z].count; ++l) {
            label& a = with.labels(z)[l];
            label& b = without.labels(z)[l];
            const bool by_label = tool == 0 && z == widest;
            a.gone = a.gone || (by_label && l != with.rows[z].least);
            b.gone = b.gone || (a.tools & tool) != 0 || (by_label && l == with.rows[z].least);
            with.fresh |= (a.tools & tool) != 0 ? bit(z) : 0;
            a.tools &= ~tool;
        }
        with.drop(z);
        without.drop(z);
    });
}

struct search {
    const problem& given;
    std::int64_t most_nodes;
    std::int64_t nodes = 0;
    std::deque<part> parts{};         // by depth
    std::vector<std::size_t> plan{};  // the setups chosen last, by zone
    std::vector<std::size_t> best{};
    cost_t cost = none;   // of the best plan
    cost_t limit = none;  // plans that cost more are not sought; at most `cost`
    cost_t bound = 0;     // no plan costs less

    /// Into `plan`: of every zone the label of that index.
    template <class Label>
    void choose(part& p, Label label_of) {
        plan.resize(p.rows.size());
        for (std::size_t z = 0; z < plan.size(); ++z) {
            plan[z] = p.labels(z)[p.rows[z].count > 1 ? label_of(z) : 0].setup;
        }
    }

    /// Takes `plan` if it is better than the best.
    void offer() {
        const auto price = price_of(given, plan);
        if (price && (*price < cost || (*price == cost && plan < best))) {
            best = plan;
            cost = *price;
            limit = std::min(limit, cost);
        }
    }

    /// Whether a part, brought down to what may be in a plan worth finding, has any such plan.
    bool wants(part& p) {
        if (!reduce(p) || !share_out(p, limit)) {
            return false;
        }
        choose(p, [&](std::size_t z) { return p.rows[z].least; });
        offer();
        choose(p, [](std::size_t) { return 0; });
        return p.open != 0 && p.bound <= limit && (p.bound < cost || plan < best);
    }

    /// Finds the first of the cheapest plans of a part within the limit, if there is one. False if that
    /// took too many nodes.
    bool explore(std::size_t depth) {
        while (nodes++ < most_nodes) {
            if (!wants(parts[depth])) {
                return true;
            }
            parts.resize(std::max(parts.size(), depth + 2));
            parts[depth + 1] = parts[depth];
            split(parts[depth + 1], parts[depth]);
            if (!explore(depth + 1)) {
                return false;
            }
        }
        return false;
    }

    /// Seeks within a limit that rises until a plan is found. False if that took too many nodes.
    bool seek(part root) {
        share_out(root, none);
        bound = root.bound;
        parts.resize(1);
        for (cost_t more = 8 * root.most_rise + 1;; more *= 2) {
            const cost_t sought = limit = std::min(cost, bound + more);
            parts[0] = root;
            if (const bool whole = explore(0); !whole || cost <= sought) {
                return whole;
            }
            bound = sought + 1;
        }
    }

    /// The first of the cheapest plans of a reduced problem.
    void run(part root, solution& out) {
        // to begin with, what spends least in every zone, and of that the cheapest
        choose(root, [&](std::size_t z) {
            const auto zone = root.labels(z);
            const auto first = std::min_element(zone.begin(), zone.end(), [](auto& a, auto& b) {
                return std::pair(a.spend, a.cost) < std::pair(b.spend, b.cost);
            });
            return first - zone.begin();
        });
        offer();
        bound = root.open == 0 || seek(std::move(root)) ? cost : std::min(bound, cost);
        out = {std::move(best), mmin(cost), {bound, bound == cost, nodes, out.sure.ties}, {}};
    }
};

}  // namespace

solution solve(const problem& p, std::int64_t most_nodes) {
    check(p);
    solution out;
    part root = read(p, out);
    if (reduce(root)) {
        search{p, most_nodes}.run(std::move(root), out);
    }
    return out;
}

}  // namespace pelage
