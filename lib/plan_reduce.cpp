// Dominance: what can't be in the first optimum goes before any search.
//
// Exchange. Replacing label k by label i in one zone, all else equal, changes a plan's cost by at
// most
//   D(i, k) = c_i - c_k + (prices of unpaid tools i holds and k doesn't)
//             + sum over seams of max over the neighbour's length y of g(L_i - y) - g(L_k - y).
// Dropping k's own tools only saves. g is convex, so g(L_i - y) - g(L_k - y) is monotone in y: it
// rises with y if L_i < L_k and falls if L_i > L_k. Its maximum stands at the neighbour's longest
// label in the first case and at its shortest in the second, the same end for every seam.
// D < 0: k is in no optimum. D = 0 and i comes before k: the plan with i is as cheap and earlier, so
// k isn't in the first optimum. The exchange must not overspend where the plan with k didn't, so i may
// only remove k if it spends no more. Either way the first optimum survives, whatever is removed in
// which order.
//
// Whole tools. If a plan holds tool g, let every label k that holds it give way to a label i that
// doesn't, one zone after the other. That costs at most D'(i, k) a zone, D without the price of one
// tool h the same for all zones, and once the price of h; it saves the price of g. So if
//   sum over zones of max(0, largest over k of least over i of D'(i, k)) + price h < price g
// then no optimum holds g. With equality none needs to, and the first doesn't if every i comes before
// its k: in the code costs are doubled and an i that comes after its k counts 1 more.
//
// Tools that every plan holds are paid; one that only labels of one zone hold is no shared tool, its
// price is theirs. A settled zone's steps are its neighbours' own costs. A seam that can't have a step
// beyond its allowance is none.
//
// Budget. What the least spending label of a zone spends, every plan spends: it leaves the budget and
// all labels of the zone. A label that spends more than is left is in no plan. If all zones at their
// most fit in what is left, no choice overspends, and nothing needs to count as spending any more.
#include <algorithm>
#include <utility>

#include "plan_parts.hpp"

#ifndef K_TOOLS
#define K_TOOLS true
#endif
namespace pelage::planning {

namespace {

constexpr zone_set bit(std::size_t z) {
    return zone_set{1} << z;
}

bool cheaper(const label& a, const label& b) {
    return a.cost < b.cost;
}

/// D(i, k) without the tools.
cost_t swap_cost(const label& i, const label& k) {
    return i.length < k.length   ? i.longest - k.longest
           : i.length > k.length ? i.shortest - k.shortest
                                 : i.cost - k.cost;
}

bool removes(const open_plan& p, const label& i, const label& k) {
    cost_t d = swap_cost(i, k);
    if (d > 0 || i.spend > k.spend || i.gone) {
        return false;
    }
    d += p.price_of(i.tools & ~k.tools);
    return d < 0 || (d == 0 && i.setup < k.setup);
}

class reducer {
  public:
    explicit reducer(open_plan& p) : p_(p) {}

    bool run() {
        for (bool tools = true;;) {
            if (!spend()) {
                return false;
            }
            pay();
            fold();
            if ((p_.fresh & p_.open) != 0) {
                each_bit(std::exchange(p_.fresh, 0) & p_.open, [&](std::size_t z) { exchange(z); });
            } else if (!tools || !drop_tools()) {
                return true;
            } else {
                tools = K_TOOLS;
            }
        }
    }

  private:
    bool spend();
    void pay();
    void fold();
    void exchange(std::size_t z);
    void weigh(std::size_t z);
    bool drop_tools();
    bool superfluous(std::size_t g, zone_set holders, tool_set others);
    void add_detour(std::size_t z, tool_set g, tool_set others);

    open_plan& p_;
    static constexpr std::size_t no_tool = most_tools;
    static constexpr std::int64_t never = std::int64_t{1} << 40;
    std::array<std::int64_t, most_tools + 1> detour_{};
};

/// False if no plan fits in the budget. At least one label a zone stays.
bool reducer::spend() {
    if (!p_.spends) {
        return true;
    }
    std::int32_t most = 0;
    for (std::size_t z = 0; z < p_.rows.size(); ++z) {
        const auto by_spend = [](const label& a, const label& b) { return a.spend < b.spend; };
        const auto zone = p_.labels(z);
        const auto [low, high] = std::minmax_element(zone.begin(), zone.end(), by_spend);
        const std::uint8_t least = low->spend;
        most += high->spend - least;
        p_.budget -= least;
        for (label& l : zone) {
            l.spend = static_cast<std::uint8_t>(l.spend - least);
        }
    }
    if (p_.budget < 0) {
        return false;
    }
    p_.spends = most > p_.budget;
    for (std::size_t z = 0; z < p_.rows.size(); ++z) {
        for (label& l : p_.labels(z)) {
            l.gone = p_.spends && l.spend > p_.budget;
            l.spend = p_.spends ? l.spend : std::uint8_t{0};
        }
        p_.drop(z);
    }
    p_.fresh |= p_.spends ? 0 : p_.open;
    return true;
}

void reducer::pay() {
    tool_set once = 0;
    tool_set twice = 0;
    tool_set always = 0;
    for (std::size_t z = 0; z < p_.rows.size(); ++z) {
        tool_set any = 0;
        tool_set all = ~tool_set{0};
        for (const label& l : p_.labels(z)) {
            any |= l.tools;
            all &= l.tools;
        }
        twice |= once & any;
        once |= any;
        always |= all;
    }
    const tool_set own = once & ~twice & ~always;
    if ((own | always) == 0) {
        return;
    }
    p_.paid += p_.price_of(always);
    for (std::size_t z = 0; z < p_.rows.size(); ++z) {
        for (label& l : p_.labels(z)) {
            if ((l.tools & (own | always)) != 0) {
                p_.fresh |= p_.open & bit(z);
                l.cost += p_.price_of(l.tools & own);
                l.tools &= ~(own | always);
            }
        }
    }
    each_bit(own | always, [&](std::size_t t) { p_.price[t] = 0; });
}

void reducer::fold() {
    std::erase_if(p_.seams, [&](const live_seam& s) {
        const zone_row& a = p_.rows[s.a];
        const zone_row& b = p_.rows[s.b];
        if (p_.is_open(s.a) && p_.is_open(s.b)) {
            return std::max(a.high - b.low, b.high - a.low) <= s.allowance;
        }
        const bool a_settled = !p_.is_open(s.a);
        const std::int32_t there = a_settled ? a.low : b.low;
        for (label& l : p_.labels(a_settled ? s.b : s.a)) {
            l.cost += step_price(s, l.length - there);
        }
        return true;
    });
    for (std::size_t z = 0; z < p_.rows.size(); ++z) {
        if (!p_.is_open(z)) {
            p_.paid += std::exchange(p_.labels(z).front().cost, 0);
        }
    }
}

/// The labels' costs with their steps at both ends of their neighbours' lengths.
void reducer::weigh(std::size_t z) {
    const auto zone = p_.labels(z);
    for (label& l : zone) {
        l.longest = l.cost;
        l.shortest = l.cost;
    }
    for (const live_seam& s : p_.seams) {
        if (s.a == z || s.b == z) {
            const zone_row& y = p_.rows[s.a == z ? s.b : s.a];
            for (label& l : zone) {
                l.longest += step_price(s, l.length - y.high);
                l.shortest += step_price(s, l.length - y.low);
            }
        }
    }
}

void reducer::exchange(std::size_t z) {
    weigh(z);
    const auto zone = p_.labels(z);
    const label& pivot = *std::min_element(zone.begin(), zone.end(), cheaper);
    bool any = false;
    for (label& k : zone) {
        k.gone = &k != &pivot && removes(p_, pivot, k);
        any = any || k.gone;
    }
    for (label& k : zone) {
        for (auto i = zone.begin(); !k.gone && i != zone.end(); ++i) {
            k.gone = &*i != &k && removes(p_, *i, k);
            any = any || k.gone;
        }
    }
    if (any) {
        p_.drop(z);
    }
}

bool reducer::drop_tools() {
    std::array<zone_set, most_tools> holders{};
    tool_set held = 0;
    for (std::size_t z = 0; z < p_.rows.size(); ++z) {
        for (const label& l : p_.labels(z)) {
            held |= l.tools;
            each_bit(l.tools, [&](std::size_t t) { holders[t] |= bit(z); });
        }
    }
    bool any = false;
    each_bit(held, [&](std::size_t g) {
        const tool_set tool = tool_set{1} << g;
        if (superfluous(g, holders[g], held & ~tool)) {
            any = true;
            held &= ~tool;
            each_bit(holders[g], [&](std::size_t z) {
                for (label& l : p_.labels(z)) {
                    l.gone = (l.tools & tool) != 0;
                }
                p_.drop(z);
            });
        }
    });
    return any;
}

/// Whether some other tool, or none, does for all that `g` does.
bool reducer::superfluous(std::size_t g, zone_set holders, tool_set others) {
    each_bit(others, [&](std::size_t h) { detour_[h] = 2 * (std::int64_t{p_.price[h]} - p_.price[g]); });
    detour_[no_tool] = -2 * std::int64_t{p_.price[g]};
    each_bit(holders, [&](std::size_t z) {
        if (others != 0 || detour_[no_tool] <= 0) {
            add_detour(z, tool_set{1} << g, others);
            each_bit(others, [&](std::size_t h) {
                others &= detour_[h] > 0 ? ~(tool_set{1} << h) : ~tool_set{0};
            });
        }
    });
    return others != 0 || detour_[no_tool] <= 0;
}

/// What it costs zone `z` to do without tool `g`, by the tool that helps out.
void reducer::add_detour(std::size_t z, tool_set g, tool_set others) {
    std::array<std::int64_t, most_tools> least;
    std::array<std::int64_t, most_tools> worst;
    each_bit(others, [&](std::size_t h) { worst[h] = 0; });
    std::int64_t worst_alone = 0;
    for (const label& k : p_.labels(z)) {
        if ((k.tools & g) == 0) {
            continue;
        }
        each_bit(others, [&](std::size_t h) { least[h] = never; });
        std::int64_t alone = never;
        for (const label& i : p_.labels(z)) {
            if ((i.tools & g) != 0 || i.spend > k.spend) {
                continue;
            }
            const tool_set extra = i.tools & ~k.tools;
            const std::int64_t swap = 2 * std::int64_t{1} * swap_cost(i, k) + (i.setup < k.setup ? 0 : 1);
            const std::int64_t d = swap + 2 * p_.price_of(extra);
            alone = std::min(alone, d);
            each_bit(extra & others, [&](std::size_t h) {
                least[h] = std::min(least[h], d - 2 * std::int64_t{p_.price[h]});
            });
        }
        worst_alone = std::max(worst_alone, alone);
        each_bit(others, [&](std::size_t h) {
            worst[h] = std::max(worst[h], std::min(least[h], alone));
        });
    }
    detour_[no_tool] += worst_alone;
    each_bit(others, [&](std::size_t h) { detour_[h] += worst[h]; });
}

}  // namespace

bool open_plan::drop(std::size_t z) {
    const zone_row before = rows[z];
    zone_row& row = rows[z];
    label* const zone = pool.data() + row.first;
    row = {row.first, 0, 100'000, 0};
    for (std::uint32_t l = 0; l < before.count; ++l) {
        if (!zone[l].gone) {
            row.low = std::min(row.low, zone[l].length);
            row.high = std::max(row.high, zone[l].length);
            zone[row.count++] = zone[l];
        }
    }
    if (row.count <= 1) {
        open &= ~bit(z);
    }
    if (row.low != before.low || row.high != before.high) {
        for (const live_seam& s : seams) {
            fresh |= s.a == z ? bit(s.b) : s.b == z ? bit(s.a) : 0;
        }
    }
    return row.count < before.count;
}

bool reduce(open_plan& p) {
    const bool sound =
        std::all_of(p.rows.begin(), p.rows.end(), [](const zone_row& r) { return r.count > 0; });
    return sound && reducer(p).run();
}

namespace {

/// Zone `z` of the problem into the pool.
void read_zone(const problem& p, std::size_t z, tool_set dear, open_plan& out, first_look& look) {
    zone_row& row = out.rows[z];
    row.first = static_cast<std::uint32_t>(out.pool.size());
    std::int32_t least = forbidden;
    std::int32_t least_spend = 255;
    std::size_t cheapest = 0;
    for (std::size_t k = 0, at = p.at(z, 0); k < p.setups; ++k, ++at) {
        const std::int32_t cost = p.cost[at];
        if (cost == forbidden) {
            continue;
        }
        const std::uint8_t spend = out.spends ? p.spend[at] : std::uint8_t{0};
        least_spend = std::min<std::int32_t>(least_spend, spend);
        cheapest = cost < least ? 1 : cheapest + (cost == least ? 1 : 0);
        least = std::min(least, cost);
        out.pool.push_back({p.length[at], static_cast<std::uint16_t>(k), spend, false,
                            p.tools[at] & dear, cost, 0, 0});
    }
    row.count = static_cast<std::uint32_t>(out.pool.size()) - row.first;
    look.ties += cheapest > 1 ? 1 : 0;
    if (row.count == 0) {
        look.without.push_back(z);
    } else if (least_spend > 0) {
        look.spending.push_back(z);
    }
}

/// Leaves out what the cheapest label plainly dominates: wherever a neighbour is, two labels' steps to it
/// differ by at most `reach` times the difference of their lengths.
void sift(open_plan& p, std::size_t z, std::int64_t reach) {
    const auto zone = p.labels(z);
    const label m = *std::min_element(zone.begin(), zone.end(), cheaper);
    for (label& k : zone) {
        const std::int64_t d = m.cost - k.cost + reach * std::abs(m.length - k.length);
        k.gone = d <= 0 && m.spend <= k.spend && m.setup != k.setup &&
                 d + p.price_of(m.tools & ~k.tools) < (m.setup < k.setup ? 1 : 0);
    }
    p.open |= bit(z);
    p.fresh |= bit(z);
    p.drop(z);
    p.pool.resize(p.rows[z].first + p.rows[z].count);
}

}  // namespace

void read(const problem& p, open_plan& out, first_look& look) {
    out.rows.assign(p.zones, {});
    out.pool.clear();
    out.seams.clear();
    out.open = 0;
    out.fresh = 0;
    out.paid = 0;
    out.budget = p.budget;
    out.spends = !p.spend.empty();
    out.toll = 0;
    out.price.fill(0);
    std::copy(p.price.begin(), p.price.end(), out.price.begin());
    out.share.assign(p.zones, {});
    std::array<std::int64_t, most_zones> reach{};  // a step's price per hundredth, all seams of a zone
    for (const seam_cost& s : p.seams) {
        if (s.per_hundredth > 0 && s.a != s.b) {  // a zone has no step to itself
            out.seams.push_back({static_cast<std::uint8_t>(s.a), static_cast<std::uint8_t>(s.b),
                                 s.per_hundredth, s.allowance});
            reach[s.a] += s.per_hundredth;
            reach[s.b] += s.per_hundredth;
        }
    }
    tool_set dear = 0;
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        dear |= p.price[t] > 0 ? tool_set{1} << t : 0;
    }
    for (std::size_t z = 0; z < p.zones; ++z) {
        read_zone(p, z, dear, out, look);
        if (out.rows[z].count > 0) {
            sift(out, z, reach[z]);
        }
    }
}

}  // namespace pelage::planning
