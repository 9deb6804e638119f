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

namespace pelage::planning {

namespace {

bool removes(const open_plan& p, const label& i, const label& k) {
    cost_t d = i.length < k.length   ? i.at_longest - k.at_longest
               : i.length > k.length ? i.at_shortest - k.at_shortest
                                     : i.cost - k.cost;
    if (d > 0 || i.spend > k.spend || i.gone) {
        return false;
    }
    d += p.price_of(i.tools & ~k.tools);
    return d < 0 || (d == 0 && i.setup < k.setup);
}

/// The labels' costs with their steps at both ends of their neighbours' lengths.
void weigh(open_plan& p, std::size_t z) {
    for (label& l : p.labels(z)) {
        l.at_longest = l.cost;
        l.at_shortest = l.cost;
    }
    for (const live_seam& s : p.seams) {
        if (s.a == z || s.b == z) {
            const zone_row& y = p.rows[s.a == z ? s.b : s.a];
            for (label& l : p.labels(z)) {
                l.at_longest += s.price(l.length - y.high);
                l.at_shortest += s.price(l.length - y.low);
            }
        }
    }
}

void exchange(open_plan& p, std::size_t z) {
    weigh(p, z);
    const auto zone = p.labels(z);
    bool any = false;
    for (label& k : zone) {
        k.gone = std::any_of(zone.begin(), zone.end(),
                             [&](const label& i) { return &i != &k && removes(p, i, k); });
        any = any || k.gone;
    }
    if (any) {
        p.drop(z);
    }
}

/// False if no plan fits in the budget. At least one label a zone stays.
bool spend(open_plan& p) {
    std::int32_t most = 0;
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        const auto by_spend = [](const label& a, const label& b) { return a.spend < b.spend; };
        const auto zone = p.labels(z);
        const auto [low, high] = std::minmax_element(zone.begin(), zone.end(), by_spend);
        const std::uint8_t least = low->spend;
        most += high->spend - least;
        p.budget -= least;
        for (label& l : zone) {
            l.spend = static_cast<std::uint8_t>(l.spend - least);
        }
    }
    p.spends = most > p.budget;
    p.toll = p.spends ? p.toll : 0;
    p.fresh |= p.spends ? 0 : p.open;
    for (std::size_t z = 0; z < p.rows.size() && p.budget >= 0; ++z) {
        for (label& l : p.labels(z)) {
            l.gone = p.spends && l.spend > p.budget;
            l.spend = p.spends ? l.spend : std::uint8_t{0};
        }
        p.drop(z);
    }
    return p.budget >= 0;
}

void pay(open_plan& p) {
    tool_set once = 0;
    tool_set twice = 0;
    tool_set always = 0;
    each_bit(p.unsettled, [&](std::size_t z) {
        tool_set any = 0;
        tool_set all = ~tool_set{0};
        for (const label& l : p.labels(z)) {
            any |= l.tools;
            all &= l.tools;
        }
        twice |= once & any;
        once |= any;
        always |= all;
    });
    const tool_set settled = always | (once & ~twice);
    p.paid += p.price_of(always);
    each_bit(settled == 0 ? 0 : p.unsettled, [&](std::size_t z) {
        for (label& l : p.labels(z)) {
            p.fresh |= (l.tools & settled) != 0 ? bit(z) : 0;
            l.cost += p.price_of(l.tools & settled & ~always);
            l.tools &= ~settled;
        }
    });
    each_bit(settled, [&](std::size_t t) { p.price[t] = 0; });
}

void fold(open_plan& p) {
    std::erase_if(p.seams, [&](const live_seam& s) {
        const zone_row& a = p.rows[s.a];
        const zone_row& b = p.rows[s.b];
        if (a.count > 1 && b.count > 1) {
            return std::max(a.high - b.low, b.high - a.low) <= s.allowance;
        }
        for (label& l : p.labels(a.count == 1 ? s.b : s.a)) {
            l.cost += s.price(l.length - (a.count == 1 ? a : b).low);
        }
        return true;
    });
    each_bit(p.unsettled & ~p.open, [&](std::size_t z) { p.paid += p.labels(z).front().cost; });
    p.unsettled = p.open;
}

}  // namespace

bool open_plan::drop(std::size_t z) {
    const zone_row before = rows[z];
    zone_row& row = rows[z];
    label* const zone = pool.data() + row.first;
    row = {row.first, 0, longest_hair, 0};
    for (std::uint32_t l = 0; l < before.count; ++l) {
        if (!zone[l].gone) {
            row.low = std::min(row.low, zone[l].length);
            row.high = std::max(row.high, zone[l].length);
            if (row.count++ < l) {
                zone[row.count - 1] = zone[l];
            }
        }
    }
    open &= row.count > 1 ? ~zone_set{0} : ~bit(z);
    if (row.low != before.low || row.high != before.high) {  // neighbours' D may be less now
        for (const live_seam& s : seams) {
            fresh |= s.a == z ? bit(s.b) : s.b == z ? bit(s.a) : 0;
        }
    }
    return row.count < before.count;
}

bool reduce(open_plan& p) {
    if (std::any_of(p.rows.begin(), p.rows.end(), [](const zone_row& r) { return r.count == 0; })) {
        return false;
    }
    for (;;) {
        if (p.spends && !spend(p)) {
            return false;
        }
        pay(p);
        fold(p);
        p.fresh &= p.open;
        if (p.fresh == 0) {
            return true;
        }
        each_bit(std::exchange(p.fresh, 0), [&](std::size_t z) { exchange(p, z); });
    }
}

}  // namespace pelage::planning
