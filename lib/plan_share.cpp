// Sharing prices out: raising the bound along the forest.
//
// Shares. Let b[z][t] >= 0 with sum over zones at most price[t]. Charging every zone b[z][t] for each
// tool t it holds never charges more than the price, since a plan holding t anywhere pays it whole. So
// the least shared cost bounds every plan from below, whatever the shares; they only decide how tight
// that is. A plan that holds t is charged at most price[t] - rest[t] for it, so its cost is at least
// its shared cost + rest[t].
//
// Eased steps. For a seam the forest leaves out let e(l) + f(m) <= the step's price for all labels l and
// m of its zones. Charging both never charges more than the step.
//
// Toll. Charging toll >= 0 for every minute spent, less toll * budget, adds nothing above 0 to the cost
// of a plan within the budget.
//
// One zone's turn. (1) At each seam left out e(l) is raised to the least over m of price - f(m), as far
// as it goes. Let M_l be the least shared cost of a plan through label l now, V the least of them.
// (2) A label with M_l + rests of its tools beyond the limit is in no plan sought: it goes. (3) A share
// that some labels pay is lowered by up to the least M_l - V of them: they stay at V or above, so V
// stays. (4) With what is left of its tools' prices label l could rise to M_l + rests; V can rise to the
// least of these, and each label below that pays just the difference. (5) Half of M_l - V is given back
// at each seam left out, for the other zone to raise its f. So V, exact at every turn since the tables
// are kept so, never falls. It stops short of the best where no zone can move alone.
//
// A step. The bound as a function of shares and toll is a minimum of linear ones, one a plan; that of
// the least shared plan rises by 1 for each share it pays and by its overspending for the toll. So
// shares it pays are raised alike, and where that is beyond a price all shares of it lose alike.
#include <utility>

#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

/// So high that no sum of tolls overflows: 64 zones may spend 255 minutes each.
constexpr cost_t highest_toll = 12'500;

/// All shares of a tool lose alike until they fit its price.
void fit(open_plan& p, std::size_t tool) {
    for (;;) {
        cost_t payers = 0;
        cost_t& rest = p.rest[tool] = p.price[tool];
        for (const by_tool& share : p.share) {
            rest -= share[tool];
            payers += share[tool] > 0 ? 1 : 0;
        }
        if (rest >= 0) {
            return;
        }
        const cost_t cut = (payers - 1 - rest) / payers;
        for (by_tool& share : p.share) {
            share[tool] = std::max(0, share[tool] - cut);
        }
    }
}

}  // namespace

/// Zone `z` pays that much more for the tool.
void forest::charge(open_plan& p, std::size_t z, std::size_t tool, cost_t more) {
    p.share[z][tool] += more;
    p.rest[tool] -= more;
    std::size_t n = 0;
    for (const label& l : p.labels(z)) {
        slack_[n++] += (l.tools & bit(tool)) != 0 ? more : 0;
    }
}

/// M_l into slack_, within the tree of the zone; the least of them.
cost_t forest::weigh(const node& b) {
    cost_t least = unreachable;
    for (std::size_t l = 0; l < b.labels; ++l) {
        slack_[l] = cells[b.below + l] + cells[b.above + l];
        least = std::min(least, slack_[l]);
    }
    return least;
}

/// Raises what the zone's labels pay at seams left out.
void forest::ease(const node& b, open_plan& p) {
    for (const live_seam& s : b.left_out) {
        cost_t* below = &cells[b.below];
        for (const label& l : p.labels(b.zone)) {
            cost_t most = unreachable;
            for (const label& y : p.labels(s.b)) {
                most =
                    std::min(most, s.price(l.length - y.length) - p.eased[p.ease(s.turned(), y)]);
            }
            *below++ += most - std::exchange(p.eased[p.ease(s, l)], most);
        }
    }
}

/// A zone's turn. False if no label stays.
bool forest::turn(const node& b, open_plan& p, cost_t most_rise, cost_t limit) {
    const auto zone = p.labels(b.zone);
    slack_.resize(std::max(slack_.size(), b.labels));
    bound -= weigh(b);
    ease(b, p);
    weigh(b);
    cost_t v = unreachable;
    for (std::size_t l = 0; l < b.labels; ++l) {
        cost_t least = bound + slack_[l];
        each_bit(zone[l].tools, [&](std::size_t t) { least += p.rest[t]; });
        zone[l].gone = zone[l].gone || least > limit;
        v = zone[l].gone ? v : std::min(v, slack_[l]);
    }
    if (v == unreachable) {
        return false;
    }
    each_bit(b.held, [&](std::size_t t) {
        cost_t back = p.share[b.zone][t];
        for (std::size_t l = 0; l < b.labels && back > 0; ++l) {
            const bool pays = (zone[l].tools & bit(t)) != 0 && !zone[l].gone;
            back = pays ? std::min(back, slack_[l] - v) : back;
        }
        if (back > 0) {
            charge(p, b.zone, t, -back);
        }
    });
    cost_t top = v + most_rise;
    for (std::size_t l = 0; l < b.labels; ++l) {
        cost_t could = slack_[l];
        each_bit(zone[l].tools, [&](std::size_t t) { could += p.rest[t]; });
        top = zone[l].gone ? top : std::min(top, could);
    }
    for (std::size_t l = 0; l < b.labels; ++l) {
        each_bit(zone[l].gone ? 0 : zone[l].tools, [&](std::size_t t) {
            if (const cost_t pays = std::min(p.rest[t], top - slack_[l]); pays > 0) {
                charge(p, b.zone, t, pays);
            }
        });
    }
    for (std::size_t l = 0; l < b.labels; ++l) {
        for (const live_seam& s : b.left_out) {
            const cost_t give = zone[l].gone ? 0 : (slack_[l] - top) / 2;
            slack_[l] -= give;
            p.eased[p.ease(s, zone[l])] -= give;
        }
        cells[b.below + l] = zone[l].gone ? unreachable : slack_[l] - cells[b.above + l];
    }
    bound += top;
    return true;
}

/// The turns of a zone and of all below it.
bool forest::visit(const node& b, open_plan& p, cost_t most_rise, cost_t limit) {
    if (!turn(b, p, most_rise, limit)) {
        return false;
    }
    cost_t* const below = &cells[b.below];
    for (const std::uint8_t child : b.children) {
        const node& c = nodes_[child];
        const cost_t* steps = &cells[c.steps];
        const cost_t* const least = &cells[c.least];
        cost_t* const above = &cells[c.above];
        std::fill_n(above, c.labels, unreachable);
        for (std::size_t l = 0; l < b.labels; ++l, steps += c.labels) {
            below[l] -= least[l];
            const cost_t rest = std::min(below[l] + cells[b.above + l], unreachable);
            for (std::size_t m = 0; m < c.labels; ++m) {
                above[m] = std::min(above[m], rest + steps[m]);
            }
        }
        if (!visit(c, p, most_rise, limit)) {
            return false;
        }
        for (std::size_t l = 0; l < b.labels; ++l) {
            below[l] += least[l];
        }
    }
    close(b);
    return true;
}

bool forest::share_out(open_plan& p, cost_t most_rise, cost_t limit) {
    for (const node& b : order) {
        if (&nodes_[b.parent] == &b && !visit(b, p, most_rise, limit)) {
            return false;
        }
    }
    return bound <= limit;
}

void forest::step(open_plan& p, cost_t length) {
    trace();
    cost_t holders = 0;
    cost_t over = p.spends ? -p.budget : 0;
    tool_set held = 0;
    each_bit(p.open, [&](std::size_t z) {
        const label& l = p.labels(z)[at_[z]];
        holders += std::popcount(l.tools);
        over += l.spend;
        held |= l.tools;
    });
    const cost_t pace = length / std::max(1, holders + over * over);
    each_bit(p.open, [&](std::size_t z) {
        each_bit(p.labels(z)[at_[z]].tools, [&](std::size_t t) { p.share[z][t] += pace; });
    });
    each_bit(held, [&](std::size_t t) { fit(p, t); });
    p.toll = std::clamp(p.toll + pace * over, 0, highest_toll);
    fill(p);
}

}  // namespace pelage::planning
