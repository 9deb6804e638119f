// The search: reduce, bound, walk; split where the walk is long.
//
// Only plans within a limit are sought: a tool's price above a first bound, more if there is none. A
// plan found lowers the limit to its cost. So the first of the cheapest plans within the limit, if
// there is any, is the first of the cheapest of all.
//
// A part that isn't done with is split in two. If its least shared plan holds a tool without paying it:
// the tool paid, and no label that holds it. If it overspends: a zone in which it spends as much, and
// less. Otherwise the labels of the widest zone are halved.
#include <algorithm>
#include <deque>
#include <numeric>
#include <tuple>
#include <utility>

#include "plan_parts.hpp"

#ifndef K_WALK
#define K_WALK 1000
#endif
#ifndef K_MULT
#define K_MULT 2
#endif
#ifndef K_ROUNDS
#define K_ROUNDS 4
#endif
#ifndef K_CELLS
#define K_CELLS 10000
#endif
#ifndef K_STEPS
#define K_STEPS 10
#endif
#ifndef K_STRIDE
#define K_STRIDE 24
#endif
#ifndef K_SLOW
#define K_SLOW 8
#endif
#ifndef K_TURNS
#define K_TURNS 3
#endif

namespace pelage {

using namespace planning;

namespace {


/// Shares of tools that a zone can't hold any more go back.
void settle_shares(open_plan& p) {
    p.rest = p.price;
    p.share.resize(p.rows.size());
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        tool_set held = 0;
        for (const label& l : p.labels(z)) {
            held |= l.tools;
        }
        const auto before = std::exchange(p.share[z], {});
        each_bit(held, [&](std::size_t t) {
            p.share[z][t] = before[t];
            p.rest[t] -= before[t];
        });
    }
}

bool drop(open_plan& p) {
    bool any = false;
    each_bit(p.open, [&](std::size_t z) { any = p.drop(z) || any; });
    return any;
}

/// All costs of plans of the part differ by multiples of it.
cost_t grain_of(const open_plan& p) {
    cost_t grain = 0;
    each_bit(p.open, [&](std::size_t z) {
        for (const label& l : p.labels(z)) {
            grain = std::gcd(grain, l.cost);
            each_bit(l.tools, [&](std::size_t t) { grain = std::gcd(grain, p.price[t]); });
        }
    });
    for (const live_seam& s : p.seams) {
        grain = std::gcd(grain, s.per_hundredth);
    }
    return std::max(grain, 1);
}

}  // namespace

struct planner::work_space {
    solution solve(const problem& p, std::int64_t most_nodes);
    void begin(const problem& p);
    bool search();
    bool explore(std::size_t depth);
    bool bring_down(open_plan& p, int turns);
    bool wander(open_plan& p, cost_t& stride);
    bool split(std::size_t depth);
    tool_set worst_covered(const open_plan& p);
    void offer(const open_plan& p);

    std::deque<open_plan> parts;
    forest trees;
    walk walker;
    incumbent best;
    cost_t bound = 0;     // no plan costs less
    cost_t dear = 0;      // the dearest tool
    std::vector<std::size_t> known;
    std::vector<std::uint16_t> plan;
    std::vector<std::array<cost_t, most_tools>> old_share;
};

/// Reduces a part and shares tools out until labels stop leaving. False if it is done with.
bool planner::work_space::bring_down(open_plan& p, int turns) {
    for (bool stale = true; stale || turns > 0; --turns) {
        if (stale) {
            if (!reduce(p)) {
                return false;
            }
            if (p.open == 0) {
                offer(p);
                return false;
            }
            settle_shares(p);
            trees.plant(p);
        }
        if (trees.bound > best.limit ||
            !trees.share_out(p, turns > 1 ? dear / K_SLOW : unreachable / 2, best.limit)) {
            return false;
        }
        stale = drop(p);
    }
    return true;
}

/// Steps that may lower the bound to raise it further. False if the part is done with.
bool planner::work_space::wander(open_plan& p, cost_t& stride) {
    const cost_t before = trees.bound;
    const cost_t toll = p.toll;
    old_share = p.share;
    for (int i = 0; i < K_STEPS; ++i) {
        trees.step(p, dear / 16 * stride);
        if (trees.bound > best.limit) {
            return false;
        }
    }
    if (!trees.share_out(p, unreachable / 2, best.limit)) {
        return false;
    }
    if (trees.bound <= before) {
        p.share = old_share;
        p.toll = toll;
        stride = stride * 2 / 3;
    }
    drop(p);
    return true;
}

/// The plan of a part without a choice.
void planner::work_space::offer(const open_plan& p) {
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        plan[z] = p.labels(z).front().setup;
    }
    if (best.wants(p.paid, plan)) {
        best.take(p.paid, plan);
    }
}

/// Of the tools the least shared plan holds, the one whose price its shares cover worst; none if all
/// are covered.
tool_set planner::work_space::worst_covered(const open_plan& p) {
    const auto& chosen = trees.trace();
    std::array<cost_t, most_tools> open = p.price;
    tool_set held = 0;
    each_bit(p.open, [&](std::size_t z) {
        held |= p.labels(z)[chosen[z]].tools;
        each_bit(p.labels(z)[chosen[z]].tools, [&](std::size_t t) { open[t] -= p.share[z][t]; });
    });
    tool_set worst = 0;
    cost_t most = 0;
    each_bit(held, [&](std::size_t t) {
        if (open[t] > most) {
            most = open[t];
            worst = tool_set{1} << t;
        }
    });
    return worst;
}

bool planner::work_space::split(std::size_t depth) {
    const tool_set tool = worst_covered(parts[depth]);
    if (parts.size() == depth + 1) {
        parts.emplace_back();
    }
    std::size_t widest = 0;
    for (std::size_t z = 0; z < parts[depth].rows.size(); ++z) {
        widest = parts[depth].rows[z].count > parts[depth].rows[widest].count ? z : widest;
    }
    for (const bool first : {true, false}) {
        open_plan& q = parts[depth + 1];
        q = parts[depth];
        if (tool == 0) {
            const auto zone = q.labels(widest);
            for (std::size_t l = 0; l < zone.size(); ++l) {
                zone[l].gone = (l < zone.size() / 2) != first;
            }
        }
        each_bit(tool == 0 ? 0 : q.open, [&](std::size_t z) {
            for (label& l : q.labels(z)) {
                l.gone = !first && (l.tools & tool) != 0;
                q.fresh |= zone_set{(l.tools & tool) != 0} << z;
                l.tools &= first ? ~tool : l.tools;
            }
        });
        if (first && tool != 0) {
            q.paid += std::exchange(q.price[static_cast<std::size_t>(std::countr_zero(tool))], 0);
        }
        drop(q);
        if (!explore(depth + 1)) {
            return false;
        }
    }
    return true;
}

/// Finds the first of the cheapest plans of a part within the limit, if there is one. False if that
/// took too many nodes.
bool planner::work_space::explore(std::size_t depth) {
    open_plan& p = parts[depth];
    if (++best.nodes > best.most_nodes) {
        return false;
    }
    cost_t stride = K_STRIDE;
    std::int64_t patience = K_WALK;
    for (int round = 0;; ++round, patience *= K_MULT) {
        if (round > 0 && !wander(p, stride)) {
            return true;
        }
        if (!bring_down(p, round == 0 ? K_TURNS : 1) || walker.run(p, trees, patience, best)) {
            return true;
        }
        if (round == (depth == 1 ? K_ROUNDS : K_ROUNDS / 2)) {
            return split(depth);
        }
    }
}

/// Seeks within a limit that rises until a plan is found. False if that took too many nodes.
bool planner::work_space::search() {
    open_plan& root = parts.front();
    best.grain = grain_of(root);
    dear = *std::max_element(root.price.begin(), root.price.end());
    root.share.clear();
    for (std::size_t n = 0; n < root.seams.size(); ++n) {
        root.seams[n].id = static_cast<std::uint16_t>(n);
    }
    root.eased.assign(2 * root.seams.size() * root.setups, 0);
    settle_shares(root);
    trees.plant(root);
    trees.share_out(root, dear / K_SLOW, unreachable);
    bound = trees.bound;
    for (cost_t more = std::max(dear, (best.cost - bound) / 16);; more *= 2) {
        const cost_t sought = std::min(best.cost, bound + more);
        best.limit = sought;
        parts[1] = root;
        if (!explore(1)) {
            return false;
        }
        if (best.cost <= sought) {
            return true;
        }
        bound = sought + 1;
    }
}

/// A plan to begin from: what spends least in every zone, and of that the cheapest.
void planner::work_space::begin(const problem& p) {
    const open_plan& root = parts.front();
    known.clear();
    for (std::size_t z = 0; z < root.rows.size(); ++z) {
        const auto zone = root.labels(z);
        const auto l = std::min_element(zone.begin(), zone.end(), [](const label& a, const label& b) {
            return std::pair(a.spend, a.cost) < std::pair(b.spend, b.cost);
        });
        known.push_back(l->setup);
        plan[z] = l->setup;
    }
    best.take(static_cast<cost_t>(in_mmin(cost_of(p, known))), plan);
}

solution planner::work_space::solve(const problem& p, std::int64_t most_nodes) {
    check(p);
    solution out;
    first_look look;
    parts.resize(std::max<std::size_t>(parts.size(), 2));
    open_plan& root = parts.front();
    read(p, root, look);
    if (!look.without.empty() || !reduce(root)) {
        out.stuck = look.without.empty() ? look.spending : look.without;
        return out;
    }
    best = {std::move(best.setup), unreachable, unreachable, 1, 0, most_nodes};
    best.setup.assign(p.zones, 0);
    plan.assign(p.zones, 0);
    bound = root.paid;
    if (root.open == 0) {
        offer(root);
        bound = best.cost;
    } else {
        begin(p);
        bound = search() ? best.cost : std::min(bound, best.cost);
    }
    out.setup.assign(best.setup.begin(), best.setup.end());
    out.cost = mmin(best.cost);
    out.sure = {bound, bound == best.cost, best.nodes, look.ties};
    return out;
}

planner::planner() : own_(std::make_unique<work_space>()) {}
planner::planner(planner&&) noexcept = default;
planner& planner::operator=(planner&&) noexcept = default;
planner::~planner() = default;

solution planner::solve(const problem& p, std::int64_t most_nodes) {
    return own_->solve(p, most_nodes);
}

}  // namespace pelage
