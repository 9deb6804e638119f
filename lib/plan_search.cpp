// The search: reduce, bound, fix, walk; split where the walk is long.
//
// Only plans within a limit are sought: a little above the bound at first, more if there is none. The
// first plan within the limit that is cheapest is cheapest of all. A part is split on a tool that its
// cheapest shared plan holds without paying it: with the tool paid, and without it. Both are smaller.
#include <algorithm>
#ifndef K_STEPS
#define K_STEPS 10
#endif
#ifndef K_PRE
#define K_PRE 0
#endif
#ifndef K_STRIDE
#define K_STRIDE 24
#endif
#ifndef K_WALK
#define K_WALK 1000
#endif
#ifndef K_MULT
#define K_MULT 8
#endif
#ifndef K_ROUNDS
#define K_ROUNDS 4
#endif
#ifndef K_ROUNDS2
#define K_ROUNDS2 2
#endif
#ifndef K_MORE
#define K_MORE 32
#endif
#ifndef K_CELLS
#define K_CELLS 2000
#endif

#include <deque>
#include <numeric>
#include <tuple>
#include <utility>

#include <pelage/error.hpp>

#include "plan_parts.hpp"

namespace pelage {

using namespace planning;

struct planner::work_space {
    solution solve(const problem& p, std::int64_t most_nodes);
    bool search();
    void begin(const problem& p);
    bool explore(std::size_t depth, int rounds);
    bool raise(open_plan& p, int rounds);
    bool explore_shares(open_plan& p);
    bool shrink(open_plan& p, int round);
    static bool drop(open_plan& p);

    bool whole = false;
    std::vector<std::array<std::int32_t, most_tools>> old_share;
    bool split(std::size_t depth);
    [[nodiscard]] tool_set worst_covered(const open_plan& p) const;
    void offer(const open_plan& p);
    std::span<const live_seam> forest(const open_plan& p);
    open_plan& part(std::size_t depth);

    std::deque<open_plan> parts;
    tables exact;
    walk walker;
    incumbent best;
    std::vector<std::uint16_t> chosen;
    std::vector<live_seam> kept;
    std::vector<std::size_t> known;
    cost_t bound = 0;  // no plan costs less
};

namespace {

constexpr std::size_t few_cells = K_CELLS;
constexpr std::size_t most_cells = std::size_t{1} << 19;
constexpr int first_rounds = 4;

/// Shares nobody needs any more go back; what is left of each price.
void settle_shares(open_plan& p) {
    p.rest = p.price;
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

cost_t grain_of(const open_plan& p) {
    cost_t g = 0;
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        for (const label& l : p.labels(z)) {
            g = std::gcd(g, l.cost);
            each_bit(l.tools, [&](std::size_t t) { g = std::gcd(g, cost_t{p.price[t]}); });
        }
    }
    for (const live_seam& s : p.seams) {
        g = std::gcd(g, cost_t{s.per_hundredth});
    }
    return std::max<cost_t>(g, 1);
}

}  // namespace

open_plan& planner::work_space::part(std::size_t depth) {
    while (parts.size() <= depth) {
        parts.emplace_back();
    }
    return parts[depth];
}

/// A spanning forest of the part's seams, each tree with the dearest steps there may be.
std::span<const live_seam> planner::work_space::forest(const open_plan& p) {
    kept = p.seams;
    const auto worst = [&](const live_seam& s) {
        const zone_row& a = p.rows[s.a];
        const zone_row& b = p.rows[s.b];
        return step_price(s, std::max(a.high - b.low, b.high - a.low));
    };
    std::sort(kept.begin(), kept.end(), [&](const live_seam& a, const live_seam& b) {
        return std::tuple(-worst(a), a.a, a.b) < std::tuple(-worst(b), b.a, b.b);
    });
    std::array<std::uint8_t, most_zones> tree;
    std::iota(tree.begin(), tree.end(), std::uint8_t{0});
    std::erase_if(kept, [&](const live_seam& s) {
        const std::uint8_t from = tree[s.a];
        const std::uint8_t to = tree[s.b];
        std::replace(tree.begin(), tree.end(), from, to);
        return from == to;
    });
    return kept;
}

/// Fills the tables and shares the tools out, slowly at first. False if no plan of the part is within
/// the limit.
bool planner::work_space::raise(open_plan& p, int rounds) {
    exact.fill(p);
    const cost_t slow = *std::max_element(p.price.begin(), p.price.end()) / 8 + 1;
    for (int i = 1; i <= rounds && exact.bound() <= best.limit; ++i) {
        if (!exact.share_out(p, {i < rounds ? slow : unreachable, best.limit})) {
            return false;
        }
    }
    return exact.bound() <= best.limit;
}

/// Steps that may lower the bound to raise it further; taken back if they don't.
bool planner::work_space::explore_shares(open_plan& p) {
    exact.fill(p);
    if (exact.bound() > best.limit) return false;
    const cost_t before = exact.bound();
    old_share = p.share;
    const cost_t dear = *std::max_element(p.price.begin(), p.price.end());
    for (int i = 0; i < K_STEPS; ++i) {
        exact.step(p, dear * p.stride / 16, chosen);
        if (exact.bound() > best.limit) return false;
    }
    if (!exact.share_out(p, {unreachable, best.limit})) {
        return false;
    }
    if (exact.bound() <= before) {
        p.stride = p.stride*11/16;
        p.share = old_share;
        settle_shares(p);
        exact.fill(p);
    }
    return true;
}

void planner::work_space::offer(const open_plan& p) {
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        chosen[z] = p.labels(z).front().setup;
    }
    if (best.wants(p.paid, chosen)) {
        best.take(p.paid, chosen);
    }
}

/// The unpaid tool whose price the shares of its holders in the chosen plan cover worst; none if all
/// are covered.
tool_set planner::work_space::worst_covered(const open_plan& p) const {
    std::array<cost_t, most_tools> covered{};
    tool_set held = 0;
    each_bit(p.open, [&](std::size_t z) {
        const label& l = p.labels(z)[chosen[z]];
        held |= l.tools;
        each_bit(l.tools, [&](std::size_t t) { covered[t] += p.share[z][t]; });
    });
    tool_set worst = 0;
    cost_t most = 0;
    each_bit(held, [&](std::size_t t) {
        if (p.price[t] - covered[t] > most) {
            most = p.price[t] - covered[t];
            worst = tool_set{1} << t;
        }
    });
    return worst;
}

bool planner::work_space::split(std::size_t depth) {
    const open_plan& p = parts[depth];
    if (!whole) { exact.build(p, forest(p), most_cells); exact.fill(p); }
    exact.trace(chosen);
    const tool_set tool = worst_covered(p);
    std::size_t widest = 0;
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        widest = p.rows[z].count > p.rows[widest].count ? z : widest;
    }
    for (const bool first : {true, false}) {
        open_plan& q = part(depth + 1);
        q = parts[depth];
        q.unshared = true;
        if (tool != 0 && first) {
            const auto t = static_cast<std::size_t>(std::countr_zero(tool));
            q.paid += std::exchange(q.price[t], 0);
            for (std::size_t z = 0; z < q.rows.size(); ++z) {
                for (label& l : q.labels(z)) {
                    q.fresh |= (l.tools & tool) != 0 ? zone_set{1} << z : 0;
                    l.tools &= ~tool;
                }
            }
        } else if (tool != 0) {
            for (std::size_t z = 0; z < q.rows.size(); ++z) {
                for (label& l : q.labels(z)) {
                    l.gone = (l.tools & tool) != 0;
                }
                q.drop(z);
            }
        } else {
            const auto zone = q.labels(widest);
            for (std::size_t l = 0; l < zone.size(); ++l) {
                zone[l].gone = (l < zone.size() / 2) != first;
            }
            q.drop(widest);
        }
        if (!explore(depth + 1, K_ROUNDS2)) {
            return false;
        }
    }
    return true;
}

/// Reduces a part and raises its bound over small tables until labels stop leaving. False if the part
/// is done with: solved, or without a plan within the limit.
bool planner::work_space::shrink(open_plan& p, int round) {
    for (bool first = true;; first = false) {
        if (!reduce(p)) {
            return false;
        }
        if (p.open == 0) {
            offer(p);
            return false;
        }
        settle_shares(p);
        whole = exact.build(p, p.seams, few_cells);
        if (!whole) {
            exact.build(p, forest(p), most_cells);
        }
        if (first && round > 0 ? !explore_shares(p) : !raise(p, first && p.unshared ? first_rounds : 1)) {
            return false;
        }
        if (!drop(p)) break;
    }
    if (whole) return true;
    for (;;) {
    whole = exact.build(p, p.seams, most_cells);
    if (!whole) return true;
    if (!raise(p, 1)) return false;
    if (!drop(p)) return true;
        if (!reduce(p)) {
            return false;
        }
        if (p.open == 0) {
            offer(p);
            return false;
        }
        settle_shares(p);
    }
}

bool planner::work_space::drop(open_plan& p) {
    bool any = false;
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        any = p.drop(z) || any;
    }
    return any;
}

/// Finds the first of the cheapest plans of a part within the limit, if there is one. False if that
/// took too many nodes.
bool planner::work_space::explore(std::size_t depth, int rounds) {
    open_plan& p = parts[depth];
    if (++best.nodes > best.most_nodes) {
        return false;
    }
    if (p.unshared) p.stride = K_STRIDE;
    std::int64_t patience = K_WALK;
    for (int round = 0;; ++round) {
        if (!shrink(p, round)) {
            return true;
        }
        if (whole && walker.run(p, exact, patience, best)) {
            return true;
        }
        if (round == rounds) {
            return split(depth);
        }
        patience = patience * K_MULT / 4;
    }
}

/// Seeks within a limit that rises until a plan is found. False if that took too many nodes.
bool planner::work_space::search() {
    open_plan& root = parts.front();
    settle_shares(root);
    root.stride = K_STRIDE;
    best.grain = grain_of(root);
    exact.build(root, forest(root), most_cells);
    if (!raise(root, first_rounds)) {
        return true;
    }
    for (int i = 0; i < K_PRE; ++i) {
        if (i > 0) { }
        if (!explore_shares(root)) return true;
    }
    bound = exact.bound();
    cost_t more = *std::max_element(root.price.begin(), root.price.end()) * K_MORE / 16 + 1;
    for (; bound <= best.cost; more *= 2) {
        const cost_t sought = std::min(best.cost, bound + more);
        
        best.limit = sought;
        part(1) = root;
        part(1).unshared = false;
        if (!explore(1, K_ROUNDS)) {
            return false;
        }
        bound = best.cost <= sought ? best.cost : sought + 1;
        if (best.cost <= sought)
            break;
    }
    return true;
}

/// A plan to begin from: what spends least in every zone, and of that the cheapest.
void planner::work_space::begin(const problem& p) {
    const open_plan& root = parts.front();
    known.clear();
    for (std::size_t z = 0; z < root.rows.size(); ++z) {
        const auto zone = root.labels(z);
        const auto l =
            std::min_element(zone.begin(), zone.end(), [](const label& a, const label& b) {
                return std::pair(a.spend, a.cost) < std::pair(b.spend, b.cost);
            });
        known.push_back(l->setup);
        best.setup[z] = l->setup;
    }
    best.cost = static_cast<cost_t>(in_mmin(cost_of(p, known)));
    best.limit = best.cost;
}

solution planner::work_space::solve(const problem& p, std::int64_t most_nodes) {
    check(p);
    solution out;
    first_look look;
    open_plan& root = part(0);
    read(p, root, look);
    out.stuck = look.without;
    if (!out.stuck.empty()) {
        return out;
    }
    if (!reduce(root)) {
        out.stuck = look.spending;
        return out;
    }
    best = {std::move(best.setup), unreachable, unreachable, 1, 0, most_nodes};
    best.setup.assign(p.zones, 0);
    chosen.assign(p.zones, 0);
    bound = root.paid;
    if (root.open != 0) {
        begin(p);
        out.sure.optimal = search();
    } else {
        out.sure.optimal = true;
        offer(root);
    }
    out.setup.assign(best.setup.begin(), best.setup.end());
    out.cost = mmin(best.cost);
    out.sure.bound = out.sure.optimal ? best.cost : std::min(bound, best.cost);
    out.sure.optimal = out.sure.bound == best.cost;
    out.sure.nodes = best.nodes;
    out.sure.ties = look.ties;
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
