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
//
// Tools. One that all labels of some zone hold is in every plan: it is paid. One that only labels of one
// zone hold costs its price exactly where one of these is chosen: the price is their own cost.
//
// Settled zones. Where one label is left, the steps to it are its neighbours' own costs. A seam whose
// widest step is within its allowance never costs anything.
//
// Budget. What the least spending label of a zone spends, every plan spends: it leaves the budget and
// all labels of the zone. A label that spends more than is left is in no plan. If all zones at their
// most fit in what is left, no choice overspends, and nothing needs to count as spending any more.
#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

void exchange(part& p, std::size_t z) {
    const auto zone = p.labels(z);
    for (label& k : zone) {
        k.at_longest = k.at_shortest = k.cost;
    }
    p.each_seam(z, [&](const half_seam& s, const half_seam&) {
        for (label& k : zone) {
            k.at_longest += s.price(k.length - p.rows[s.to].high);
            k.at_shortest += s.price(k.length - p.rows[s.to].low);
        }
    });
    const auto removes = [&](const label& i, const label& k) {
        const cost_t d = i.length < k.length   ? i.at_longest - k.at_longest
                         : i.length > k.length ? i.at_shortest - k.at_shortest
                                               : i.cost - k.cost;
        return d <= 0 && i.spend <= k.spend && &i != &k &&
               d + sum_of(i.tools & ~k.tools, p.price) < (&i < &k ? 1 : 0);
    };
    for (label& k : zone) {
        k.gone = std::any_of(zone.begin(), zone.end(), [&](auto& i) { return removes(i, k); });
    }
    p.drop(z);
}

/// False if no plan fits in the budget.
bool spend(part& p) {
    std::int32_t most = 0;
    each_bit(p.open, [&](std::size_t z) {
        const auto zone = p.labels(z);
        const auto [low, high] = std::minmax_element(
            zone.begin(), zone.end(), [](auto& a, auto& b) { return a.spend < b.spend; });
        const std::uint8_t least = low->spend;
        most += high->spend - least;
        p.budget -= least;
        for (label& l : zone) {
            l.spend = static_cast<std::uint8_t>(l.spend - least);
        }
    });
    p.spends = most > p.budget;
    p.fresh |= p.spends ? 0 : p.open;
    each_bit(p.open, [&](std::size_t z) {
        for (label& l : p.labels(z)) {
            l.gone = p.spends && l.spend > p.budget;
            l.spend = p.spends ? l.spend : std::uint8_t{0};
        }
        p.drop(z);
    });
    return p.budget >= 0;
}

/// Pays what every plan holds, and has the labels of a zone pay for what they alone hold.
void pay(part& p) {
    tool_set once = 0;
    tool_set twice = 0;
    tool_set always = 0;
    each_bit(p.open, [&](std::size_t z) {
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
    p.paid += sum_of(always, p.price);
    each_bit(settled == 0 ? 0 : p.open, [&](std::size_t z) {
        for (label& l : p.labels(z)) {
            p.fresh |= (l.tools & settled) != 0 ? bit(z) : 0;
            l.cost += sum_of(l.tools & settled & ~always, p.price);
            l.tools &= ~settled;
        }
    });
    each_bit(settled, [&](std::size_t t) { p.price[t] = 0; });
}

/// Folds zones without a choice into their neighbours.
void settle(part& p) {
    each_bit(p.open, [&](std::size_t z) {
        if (p.rows[z].count == 1) {
            const label& l = p.labels(z).front();
            p.paid += l.cost;
            p.open &= ~bit(z);
            p.each_seam(z, [&](const half_seam& s, const half_seam&) {
                for (label& k : p.labels(s.to)) {
                    k.cost += s.price(k.length - l.length);
                }
            });
        }
    });
}

void read_seams(const problem& p, part& out) {
    out.seams.reserve(2 * p.seams.size() + 2);
    out.seams.resize(2);
    for (const seam_cost& s : p.seams) {
        if (s.a != s.b && s.per_hundredth > 0) {  // a zone has no step to itself
            for (const auto& [a, b] : {std::pair{s.a, s.b}, std::pair{s.b, s.a}}) {
                zone_row& row = out.rows[a];
                out.seams.push_back({row.seam, row.seams++, static_cast<std::uint32_t>(b),
                                     s.per_hundredth, s.allowance});
                row.seam = static_cast<std::uint32_t>(out.seams.size() - 1);
            }
        }
    }
}

/// A zone without what its cheapest setup removes wherever the neighbours are. Whether others are as cheap.
bool read_zone(const std::vector<allowed_setup>& zone, std::size_t z, tool_set always, part& out) {
    const auto cheaper = [](auto& a, auto& b) { return a.cost < b.cost; };
    const allowed_setup best =
        zone.empty() ? allowed_setup{} : *std::min_element(zone.begin(), zone.end(), cheaper);
    cost_t steepest = 0;
    for (std::uint32_t i = out.rows[z].seam; i != 0; i = out.seams[i].next) {
        steepest += out.seams[i].per_hundredth;
    }
    bool tie = false;
    out.rows[z].first = static_cast<std::uint32_t>(out.pool.size());
    for (const allowed_setup& k : zone) {
        const std::int32_t apart = std::max(best.length - k.length, k.length - best.length);
        const cost_t d = best.cost - k.cost + steepest * apart;
        if (d > 0 || best.spend > k.spend || best.setup == k.setup ||
            d + sum_of(best.tools & ~k.tools, out.price) >= (best.setup < k.setup ? 1 : 0)) {
            out.pool.push_back({k.tools & ~always, k.cost, k.length, k.setup, k.spend});
        }
        tie = tie || (k.cost == best.cost && best.setup < k.setup);
    }
    out.rows[z].count = static_cast<std::uint32_t>(out.pool.size()) - out.rows[z].first;
    out.drop(z);
    return tie;
}

}  // namespace

void part::drop(std::size_t z) {
    zone_row& row = rows[z];
    const zone_row before = row;
    const auto zone = labels(z);
    const auto end = std::remove_if(zone.begin(), zone.end(), [](auto& l) { return l.gone; });
    row.count = static_cast<std::uint32_t>(end - zone.begin());
    row.low = longest_hair;
    row.high = 0;
    for (const label& l : labels(z)) {
        row.low = std::min(row.low, l.length);
        row.high = std::max(row.high, l.length);
    }
    if (row.low != before.low || row.high != before.high) {  // neighbours' D may be less now
        for (std::uint32_t i = row.seam; i != 0; i = seams[i].next) {
            fresh |= bit(seams[i].to);
        }
    }
}

bool reduce(part& p) {
    const auto empty = [](const zone_row& row) { return row.count == 0; };
    do {
        if (std::any_of(p.rows.begin(), p.rows.end(), empty) || (p.spends && !spend(p))) {
            return false;
        }
        pay(p);
        settle(p);
        each_bit(std::exchange(p.fresh, 0) & p.open, [&](std::size_t z) { exchange(p, z); });
    } while (p.fresh != 0);
    return true;
}

part read(const problem& p, solution& out) {
    part root;
    root.rows.resize(p.zones.size());
    root.pool.reserve(most_setups);
    root.budget = p.budget;
    std::copy(p.price.begin(), p.price.end(), root.price.begin());
    read_seams(p, root);
    std::vector<std::size_t> spending;
    tool_set always = 0;
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        tool_set all = ~tool_set{0};
        bool spends = true;
        for (const allowed_setup& s : p.zones[z]) {
            all &= s.tools;
            spends = spends && s.spend > 0;
            root.spends = root.spends || s.spend > 0;
        }
        always |= all;
        root.open |= bit(z);
        if (spends) {
            (p.zones[z].empty() ? out.stuck : spending).push_back(z);
        }
    }
    out.stuck = out.stuck.empty() ? spending : out.stuck;
    root.paid = sum_of(always, root.price);
    each_bit(always, [&](std::size_t t) { root.price[t] = 0; });
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        out.sure.ties += read_zone(p.zones[z], z, always, root) ? 1 : 0;
    }
    root.fresh = root.open;
    return root;
}

}  // namespace pelage::planning
