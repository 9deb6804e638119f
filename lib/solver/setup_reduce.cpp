// Dominance: what can't be in the first optimum goes before any search.
//
// Exchange. Replacing label k by label i in one zone, all else equal, changes a plan's cost by at
// most
//   D(i, k) = c_i - c_k + (prices of unpaid tools i holds and k doesn't)
//             + sum over seams of max over the neighbour's length y of g(L_i - y) - g(L_k - y).
// Dropping k's own tools only saves. g is convex, so g(L_i - y) - g(L_k - y) is monotone in y: it
// rises with y if L_i < L_k and falls if L_i > L_k. Its maximum stands at the neighbour's longest
// label in the first case and at its shortest in the second, the same end for every seam. Wherever the
// neighbour is, it is at most |L_i - L_k| times the seam's price of a hundredth: g is no steeper.
// D < 0: k is in no optimum. D = 0 and i comes before k: the plan with i is as cheap and earlier, so
// k isn't in the first optimum. The exchange must not overspend where the plan with k didn't, so i may
// only remove k if it spends no more. Either way the first optimum survives, whatever is removed in
// which order: it can't be exchanged for a cheaper plan, nor for an earlier one as cheap. A label that
// is removed itself may remove others: D(j, k) <= D(j, i) + D(i, k), so what removed it does as well.
// So may one that is in no plan sought: if a plan with k were within the limit, so were that with i.
//
// Tools. One that all labels of some zone hold is in every plan: it is paid. One that only labels of one
// zone hold costs its price exactly where one of these is chosen: the price is their own cost.
//
// Settled zones. Where one label is left, the steps to it are its neighbours' own costs. A seam whose
// widest step is within its allowance never costs anything.
//
// Budget. What the least spending label of a zone spends, every plan spends. A label that spends more
// beyond that than all zones at their least leave of the budget is in no plan. If all zones at their
// most fit, no choice overspends, and nothing needs to count as spending any more.
//
// Overflow. A label's cost, with its steps to any ends of its neighbours, is made of terms that check() adds
// up, each at most once: it lies below 2^28, and so does a difference of two.
#include "solver/setup_parts.hpp"

namespace pelage::planning {

namespace {

/// Whether i removes k. That they are two is asked only for speed: nothing removes itself.
bool removes(const label& i, const label& k, const part& p) {
    const std::int32_t d = i.length < k.length   ? i.at_longest - k.at_longest
                           : i.length > k.length ? i.at_shortest - k.at_shortest
                                                 : i.cost - k.cost;
    return d <= 0 && (i.spend <= k.spend || !p.spends) && &i != &k &&
           d + sum_of(i.tools & ~k.tools, p.price) < (&i < &k ? 1 : 0);
}

void exchange(part& p, std::size_t z) {
    const auto zone = p.labels(z);
    for (label& k : zone) {
        k.at_longest = k.at_shortest = k.cost;
    }
    const std::int32_t low = p.rows[z].low;
    const std::int32_t high = p.rows[z].high;
    p.each_seam(z, [&](const half_seam& s, const half_seam&) {
        const half_seam seam = s;  // its own: labels are written to
        const auto costs = [&](std::int32_t end) {
            return std::max(high - end, end - low) > seam.allowance;
        };
        if (const std::int32_t end = p.rows[seam.to].high; costs(end)) {
            for (label& k : zone) {
                k.at_longest += seam.price(k.length - end);
            }
        }
        if (const std::int32_t end = p.rows[seam.to].low; costs(end)) {
            for (label& k : zone) {
                k.at_shortest += seam.price(k.length - end);
            }
        }
    });
    bool any = false;
    for (label& k : zone) {
        for (const label& i : zone) {
            if (removes(i, k, p)) {
                any = k.gone = true;
                break;
            }
        }
    }
    if (any) {
        p.drop(z);
    }
}

/// Labels that no plan can afford go; where no plan fits in the budget, all do.
void spend(part& p) {
    const auto less = [](const label& a, const label& b) { return a.spend < b.spend; };
    std::array<std::int32_t, most_zones> least{};
    std::int32_t left = p.budget;
    std::int32_t most = 0;
    each_bit(p.open, [&](std::size_t z) {
        const auto zone = p.labels(z);
        const auto [low, high] = std::minmax_element(zone.begin(), zone.end(), less);
        least[z] = low->spend;
        left -= low->spend;
        most += high->spend - low->spend;
    });
    p.spends = most > left;
    p.fresh |= p.spends ? 0 : p.open;
    each_bit(p.spends ? p.open : 0, [&](std::size_t z) {
        for (label& l : p.labels(z)) {
            l.gone |= l.spend - least[z] > left;
            p.thin |= l.gone ? bit(z) : 0;
        }
    });
}

/// A settled zone into its neighbours.
void fold(part& p, std::size_t z) {
    const label& l = p.labels(z).front();
    p.paid += l.cost;
    p.apart &= ~bit(z);
    p.each_seam(z, [&](const half_seam& s, const half_seam&) {
        for (label& k : p.labels(s.to)) {
            k.cost += s.price(k.length - l.length);
        }
    });
}

/// Settles zones without a choice, pays what every plan holds, and has the labels of a zone pay for what
/// they alone hold.
void settle(part& p) {
    tool_set always = 0;
    tool_set once = 0;
    tool_set twice = 0;
    each_bit(p.open, [&](std::size_t z) {
        always |= p.rows[z].all;
        twice |= once & p.rows[z].any;
        once |= p.rows[z].any;
        if (p.rows[z].count == 1) {
            p.open &= ~bit(z);
            p.budget -= p.labels(z).front().spend;
        }
    });
    const tool_set settled = always | (once & ~twice);
    p.paid += sum_of(always, p.price);
    each_bit(settled != 0 ? p.open : 0, [&](std::size_t z) {
        if ((p.rows[z].any & settled) != 0) {
            for (label& l : p.labels(z)) {
                l.cost += static_cast<std::int32_t>(sum_of(l.tools & settled & ~always, p.price));
                l.tools &= ~settled;
            }
            p.rows[z].any &= ~settled;
            p.rows[z].all &= ~settled;
            p.fresh |= bit(z);
        }
    });
    each_bit(settled, [&](std::size_t t) { p.price[t] = 0; });
}

}  // namespace

void part::drop(std::size_t z) {
    const auto zone = labels(z);
    zone_row& row = rows[z];
    const std::int32_t low = std::exchange(row.low, longest_hair);
    const std::int32_t high = std::exchange(row.high, 0);
    row.any = 0;
    row.all = ~tool_set{0};
    row.count = 0;
    for (const label& l : zone) {
        if (!l.gone) {
            zone[row.count] = l;
            row.add(l);
        }
    }
    hopeless = hopeless || row.count == 0;
    if (row.low != low || row.high != high) {  // neighbours' D may be less now
        for (std::uint32_t i = row.seam; i != 0; i = seams[i].next) {
            fresh |= bit(seams[i].to);
        }
    }
}

bool reduce(part& p) {
    do {
        each_bit(std::exchange(p.thin, 0), [&](std::size_t z) { p.drop(z); });
        if (p.hopeless) {
            return false;
        }
        if (p.spends) {
            spend(p);
        }
        settle(p);
        each_bit(p.apart & ~p.open, [&](std::size_t z) { fold(p, z); });
        each_bit(std::exchange(p.fresh, 0) & p.open, [&](std::size_t z) { exchange(p, z); });
    } while ((p.fresh | p.thin) != 0);
    return !p.hopeless;
}

}  // namespace pelage::planning
