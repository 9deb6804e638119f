// The search: reduce, bound, fix, walk; split where the walk is long.
//
// Only plans within a limit are sought: a little above the bound at first, more if there is none. The
// first plan within the limit that is cheapest is cheapest of all. A part is split on a tool that its
// cheapest shared plan holds without paying it: with the tool paid, and without it. Both are smaller.
#include <algorithm>
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
    bool tighten(open_plan& p, int rounds);
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

constexpr std::size_t few_cells = 2000;
constexpr std::size_t most_cells = std::size_t{1} << 19;
constexpr int first_rounds = 5;
constexpr std::int64_t first_walk = 2000;
constexpr std::int64_t later_walk = 20000;

/// Shares nobody needs any more go back; what is left of each price.
void settle_shares(open_plan& p) {
    p.rest = p.price;
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        tool_set held = 0;
        for (const label& l : p.labels(z)) {
            held |= l.tools;
        }
        for (std::size_t t = 0; t < most_tools; ++t) {
            p.share[z][t] = (held >> t & 1U) != 0 ? p.share[z][t] : 0;
            p.rest[t] -= p.share[z][t];
        }
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

/// Shares the tools out and drops labels. False if no plan of the part is within the limit.
bool planner::work_space::tighten(open_plan& p, int rounds) {
    exact.fill(p);
    if (exact.bound() > best.limit) {
        return false;
    }
    for (int i = rounds; i-- > 0;) {
        const int part = i > 3 ? 5 : i > 2 ? 7 : i > 1 ? 9 : i > 0 ? 12 : 16;
        if (!exact.share_out(p, {part, best.limit})) {
            return false;
        }
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
    exact.trace(chosen);
    const tool_set tool = worst_covered(p);
    std::size_t widest = 0;
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        widest = p.rows[z].count > p.rows[widest].count ? z : widest;
    }
    for (const bool first : {true, false}) {
        open_plan& q = part(depth + 1);
        q = parts[depth];
        if (tool != 0 && first) {
            const auto t = static_cast<std::size_t>(std::countr_zero(tool));
            q.paid += std::exchange(q.price[t], 0);
            for (label& l : q.pool) {
                l.tools &= ~tool;
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
        if (!explore(depth + 1, first_rounds)) {
            return false;
        }
    }
    return true;
}

/// Finds the first of the cheapest plans of a part within the limit, if there is one. False if that
/// took too many nodes.
bool planner::work_space::explore(std::size_t depth, int rounds) {
    open_plan& p = parts[depth];
    if (++best.nodes > best.most_nodes) {
        return false;
    }
    bool whole = false;
    for (bool again = true; again;) {
        if (!reduce(p)) {
            return true;
        }
        if (p.open == 0) {
            offer(p);
            return true;
        }
        settle_shares(p);
        const bool was_whole = whole;
        whole = exact.build(p, p.seams, was_whole || rounds == 0 ? most_cells : few_cells);
        if (!whole && (was_whole || rounds == 0)) {
            return split(depth);
        }
        if (!whole) {
            exact.build(p, forest(p), most_cells);
        }
        if (!tighten(p, whole ? 2 : rounds)) {
            return true;
        }
        again = !whole;
        rounds = 0;
        for (std::size_t z = 0; z < p.rows.size(); ++z) {
            again = p.drop(z) || again;
        }
    }
    return walker.run(p, exact, depth == 1 ? first_walk : later_walk, best) || split(depth);
}

/// Seeks within a limit that rises until a plan is found. False if that took too many nodes.
bool planner::work_space::search() {
    open_plan& root = parts.front();
    settle_shares(root);
    best.grain = grain_of(root);
    exact.build(root, forest(root), most_cells);
    if (!tighten(root, first_rounds)) {
        return true;
    }
    bound = exact.bound();
    cost_t more = 2 * *std::max_element(root.price.begin(), root.price.end()) + 1;
    for (; bound <= best.cost; more *= 2) {
        const cost_t sought = std::min(best.cost, bound + more);
        best.limit = sought;
        part(1) = root;
        if (!explore(1, first_rounds)) {
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
    best.cost = in_mmin(cost_of(p, known));
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
