// The search: reduce, bound, walk; split where the walk is long.
//
// Only plans within a limit are sought: a tool's price above a first bound, more if there is none. A
// plan found lowers the limit to its cost. So the first of the cheapest plans within the limit, if
// there is any, is the first of the cheapest of all.
//
// A part that isn't done with is split on a tool that its least shared plan holds without paying it:
// the tool paid, and no label that holds it. Where there is none the walk goes on to its end.
#include <deque>
#include <numeric>
#include <utility>

#include "plan_parts.hpp"

namespace pelage {

using namespace planning;

namespace {

constexpr int slow_rounds = 2;             // of sharing out, at first an eighth of a tool at a time
constexpr int steps_a_round = 10;          // of exploring shares
constexpr int rounds_of_root = 4;          // of exploring and walking, before a split
constexpr int rounds_of_part = 2;          // the same further down
constexpr std::int64_t first_walk = 1000;  // labels; doubled every round

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
    bool bring_down(open_plan& p, int rounds);
    bool wander(open_plan& p, cost_t& pace);
    tool_set worst_covered(const open_plan& p);
    bool split(std::size_t depth, tool_set tool);
    void offer(const open_plan& p);

    std::deque<open_plan> parts;  // by depth; the first is the root, as it was reduced
    forest trees;
    walk walker;
    incumbent best;
    cost_t bound = 0;  // no plan costs less
    cost_t dear = 0;   // the dearest tool's price
    std::vector<std::uint16_t> plan;
    std::vector<by_tool> old_share;
};

/// Reduces a part and shares prices out until labels stop leaving. False if it is done with.
bool planner::work_space::bring_down(open_plan& p, int rounds) {
    for (bool stale = true; stale || rounds > 0; --rounds) {
        if (stale) {
            if (!reduce(p)) {
                return false;
            }
            if (p.open == 0) {
                offer(p);
                return false;
            }
            trees.plant(p);
        }
        if (!trees.share_out(p, rounds > 1 ? dear / 8 : most_cost, best.limit)) {
            return false;
        }
        stale = drop(p);
    }
    return true;
}

/// Steps that may lower the bound to raise it further. False if the part is done with.
bool planner::work_space::wander(open_plan& p, cost_t& pace) {
    const cost_t before = trees.bound;
    const cost_t toll = p.toll;
    old_share = p.share;
    for (int i = 0; i < steps_a_round; ++i) {
        trees.step(p, pace);
        if (trees.bound > best.limit) {
            return false;
        }
    }
    if (!trees.share_out(p, most_cost, best.limit)) {
        return false;
    }
    if (trees.bound <= before) {
        p.share = old_share;
        p.toll = toll;
        pace = pace * 2 / 3;
    }
    drop(p);
    return true;
}

/// The plan of a part without a choice.
void planner::work_space::offer(const open_plan& p) {
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        plan[z] = p.labels(z).front().setup;
    }
    best.offer(p.paid, plan);
}

/// Of the tools the least shared plan holds, the one whose price its shares cover worst; none if all
/// are covered.
tool_set planner::work_space::worst_covered(const open_plan& p) {
    const auto& chosen = trees.trace();
    by_tool bare{};
    each_bit(p.open, [&](std::size_t z) {
        each_bit(p.labels(z)[chosen[z]].tools, [&](std::size_t t) {
            bare[t] = (bare[t] == 0 ? p.price[t] + 1 : bare[t]) - p.share[z][t];
        });
    });
    const auto worst = std::max_element(bare.begin(), bare.end());
    return *worst > 1 ? bit(static_cast<std::size_t>(worst - bare.begin())) : 0;
}

/// With the tool paid, and without it.
bool planner::work_space::split(std::size_t depth, tool_set tool) {
    parts.resize(std::max(parts.size(), depth + 2));
    for (const bool with : {true, false}) {
        open_plan& q = parts[depth + 1];
        q = parts[depth];
        if (with) {
            q.paid += std::exchange(q.price[static_cast<std::size_t>(std::countr_zero(tool))], 0);
        }
        each_bit(q.open, [&](std::size_t z) {
            for (label& l : q.labels(z)) {
                const bool holds = (l.tools & tool) != 0;
                l.gone = holds && !with;
                l.tools &= with ? ~tool : l.tools;
                q.fresh |= holds ? bit(z) : 0;
            }
            q.drop(z);
        });
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
    cost_t pace = dear + dear / 2;
    std::int64_t patience = first_walk;
    for (int rounds = depth == 1 ? rounds_of_root : rounds_of_part;; --rounds, patience *= 2) {
        if (!bring_down(p, slow_rounds) || walker.run(p, trees, patience, best)) {
            return true;
        }
        if (const tool_set tool = rounds == 0 ? worst_covered(p) : 0; tool != 0) {
            return split(depth, tool);
        }
        if (rounds <= 0) {
            return walker.run(p, trees, best.most_nodes, best);
        }
        if (!wander(p, pace)) {
            return true;
        }
    }
}

/// Seeks within a limit that rises until a plan is found. False if that took too many nodes.
bool planner::work_space::search() {
    open_plan& root = parts.front();
    std::uint16_t seams = 0;
    for (live_seam& s : root.seams) {
        s.id = seams++;
    }
    root.share.clear();
    root.eased.assign(2 * seams * root.setups, 0);
    best.grain = grain_of(root);
    dear = *std::max_element(root.price.begin(), root.price.end());
    trees.plant(root);
    trees.share_out(root, dear / 8, unreachable);
    bound = trees.bound;
    for (cost_t more = std::max(dear, (best.cost - bound) / 16);; more *= 2) {
        const cost_t sought = best.limit = std::min(best.cost, bound + more);
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
    std::vector<std::size_t> known;
    for (std::size_t z = 0; z < p.zones; ++z) {
        const auto zone = parts.front().labels(z);
        const auto l =
            std::min_element(zone.begin(), zone.end(), [](const label& a, const label& b) {
                return std::pair(a.spend, a.cost) < std::pair(b.spend, b.cost);
            });
        known.push_back(l->setup);
        plan[z] = l->setup;
    }
    best.offer(static_cast<cost_t>(in_mmin(cost_of(p, known))), plan);
}

solution planner::work_space::solve(const problem& p, std::int64_t most_nodes) {
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
    bool proven = true;
    if (root.open == 0) {
        offer(root);
    } else {
        begin(p);
        proven = search();
    }
    out.setup.assign(best.setup.begin(), best.setup.end());
    out.cost = mmin(best.cost);
    bound = proven ? best.cost : std::min(bound, best.cost);
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
