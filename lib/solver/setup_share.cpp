// The bound: prices and steps shared out among zones, so that each stands on its own.
//
// Shares. Let b[z][t] >= 0 with sum over zones at most price[t]. Charging every zone b[z][t] for each
// tool t it holds never charges more than the price, since a plan holding t anywhere pays it whole.
//
// Eased steps. For a seam let e(l) + f(m) <= the step's price for all labels l and m of its zones. Charging
// both never charges more than the step. They may be negative.
//
// So the sum over zones of the least label, shares and eased steps included, bounds every plan from
// below, whatever they are; they only decide how tight that is.
//
// One zone's turn. (1) At each seam e(l) is raised to the least over m of price - f(m), as far as it goes.
// The zone takes its shares back; let S_l be what label l costs without them, and R_l the rest of the
// prices of its tools, which other zones don't pay. (2) A plan through l costs at least S_l + R_l and
// the least labels of the other zones: it pays its tools whole, of which the others are charged at most
// what is no rest. Where that is beyond the limit, l is in no plan sought and goes. (3) The least of
// S_l + R_l over the labels left can become the zone's value V: each label pays of its tools what it
// lacks. V was no more before, since e(l) and the shares were such a choice. It may be raised by less, so
// that other zones come to pay their part of a tool. (4) What labels cost above V is given
// away at the seams to zones whose turn is still to come, in equal parts, for them to raise their f. So the
// bound never falls. It stops short of the best where no zone can move alone.
#include "solver/setup_parts.hpp"

namespace pelage::planning {

namespace {

/// The bound of a part with the shares it has.
void take_up(part& p) {
    p.bound = p.paid;
    p.rest = p.price;
    each_bit(p.open, [&](std::size_t z) {
        each_bit(p.rows[z].payer, [&](std::size_t t) { p.rest[t] -= p.share[z][t]; });
        p.rows[z].value = none;
        for (label& l : p.labels(z)) {
            l.sum = l.cost + sum_of(l.tools, p.share[z]);
            p.each_seam(z, [&](const half_seam& mine, const half_seam&) {
                l.sum += p.eased[l.slot + mine.number];
            });
            p.rows[z].value = std::min(p.rows[z].value, l.sum);
        }
        p.bound += p.rows[z].value;
    });
}

/// (1), into the labels' sums.
void collect(part& p, std::size_t z) {
    for (label& l : p.labels(z)) {
        l.sum = l.cost;
    }
    p.each_seam(z, [&](const half_seam& mine, const half_seam& theirs) {
        for (label& l : p.labels(z)) {
            cost_t most = none;
            for (const label& y : p.labels(mine.to)) {
                const cost_t step = mine.price(l.length - y.length);
                most = y.gone ? most : std::min(most, step - p.eased[y.slot + theirs.number]);
            }
            p.eased[l.slot + mine.number] = most;
            l.sum += most;
        }
    });
}

/// (2) and (3). False if no label is left.
bool charge(part& p, std::size_t z, cost_t limit) {
    zone_row& row = p.rows[z];
    by_tool& share = p.share[z];
    each_bit(row.payer, [&](std::size_t t) { p.rest[t] += std::exchange(share[t], 0); });
    row.payer = 0;
    cost_t top = none;
    for (label& l : p.labels(z)) {
        const cost_t could = l.sum + sum_of(l.tools, p.rest);
        if (!l.gone && p.bound - row.value + could > limit) {
            l.gone = true;
            p.thin |= bit(z);
        }
        top = l.gone ? top : std::min(top, could);
    }
    if (top == none) {
        return false;
    }
    top = std::min(top, row.value + p.most_rise);
    p.bound += top - std::exchange(row.value, top);
    for (const label& l : p.labels(z)) {
        cost_t lack = l.gone ? 0 : top - l.sum - sum_of(l.tools, share);
        each_bit(lack > 0 ? l.tools : 0, [&](std::size_t t) {
            const auto more = static_cast<std::int32_t>(std::clamp<cost_t>(lack, 0, p.rest[t]));
            share[t] += more;
            p.rest[t] -= more;
            lack -= more;
        });
        row.payer |= l.tools;
    }
    return true;
}

/// (4). Remembers a label that costs least.
void give(part& p, std::size_t z, bool upward) {
    const auto zone = p.labels(z);
    for (label& l : zone) {
        l.sum = l.gone ? none : l.sum + sum_of(l.tools, p.share[z]) - p.rows[z].value;
    }
    const auto less = [](const label& a, const label& b) { return a.sum < b.sum; };
    p.rows[z].least =
        static_cast<std::uint32_t>(std::min_element(zone.begin(), zone.end(), less) - zone.begin());
    cost_t ahead = 0;
    p.each_seam(z, [&](const half_seam& mine, const half_seam&) {
        ahead += (mine.to > z) == upward ? 1 : 0;
    });
    p.each_seam(z, [&](const half_seam& mine, const half_seam&) {
        for (const label& l : (mine.to > z) == upward ? zone : zone.first(0)) {
            p.eased[l.slot + mine.number] -= l.gone ? 0 : l.sum / ahead;
        }
    });
}

}  // namespace

bool share_out(part& p, cost_t limit) {
    if (p.share.empty()) {  // the search begins: so far nobody pays anything
        p.share.resize(p.rows.size());
        p.most_rise = *std::max_element(p.price.begin(), p.price.end()) / 8;  // 8: by trial
        std::uint32_t end = 0;
        each_bit(p.open, [&](std::size_t z) {
            for (label& l : p.labels(z)) {
                l.slot = std::exchange(end, end + p.rows[z].seams);
            }
        });
        p.eased.resize(end);
    }
    take_up(p);
    for (const bool upward : {false, true}) {
        for (std::uint64_t left = p.open; left != 0;) {
            const auto z = static_cast<std::size_t>(upward ? std::countr_zero(left)
                                                           : 63 - std::countl_zero(left));
            left &= ~bit(z);
            collect(p, z);
            if (!charge(p, z, limit) || p.bound > limit) {
                return false;
            }
            give(p, z, upward);
        }
    }
    return true;
}

}  // namespace pelage::planning
