// Sharing tools out: raising the bound over the exact tables.
//
// Shares. Let b[z][t] >= 0 with sum over zones at most price[t]. Charging every zone b[z][t] for each
// tool t it holds never charges more than the price, since a plan holding t anywhere pays it whole. So
// the least shared cost bounds every plan from below, whatever the shares; they only decide how tight
// that is. A plan that holds t is charged at most price[t] - rest[t] for it, so its cost is at least
// its shared cost + rest[t].
//
// Toll. Charging toll >= 0 for every minute spent, less toll * budget, adds nothing above 0 to the cost
// of a plan within the budget: bounds with it are bounds too.
//
// One zone's turn. Let M_l be the least shared cost of a plan through label l of the zone, V the least
// of them. (1) A label with M_l + rests of its tools beyond the limit is in no plan sought: it goes.
// (2) A share that some labels pay is lowered by up to the least M_l - V of them: they stay at V or
// above, so V stays. (3) With what is left of its tools' prices label l could rise to M_l + rests; V
// can rise to the least of these, and each label below that pays just the difference. So V, exact at
// every turn since the tables are kept so, never falls. It stops short of the best shares where no
// zone can move alone.
//
// A step. The bound as a function of shares and toll is a minimum of linear ones, one a plan; that of
// the least shared plan rises by 1 for each share it pays and by its overspending for the toll. So
// shares it pays are raised alike, and where that is beyond a price all shares of it lose alike.
#include <algorithm>

#include "plan_parts.hpp"

namespace pelage::planning {

/// So high that no sum of tolls overflows: 64 zones may spend 255 minutes each.
constexpr cost_t highest_toll = 12'500;

/// Zone `z` pays that much more for the tool.
void forest::charge(open_plan& p, std::size_t z, std::size_t tool, cost_t more) {
    p.share[z][tool] += more;
    p.rest[tool] -= more;
    const auto zone = p.labels(z);
    for (std::size_t l = 0; l < zone.size(); ++l) {
        slack_[l] += (zone[l].tools >> tool & 1U) != 0 ? more : 0;
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

/// A zone's turn. False if no label stays.
bool forest::turn(const node& b, open_plan& p, cost_t most_rise, cost_t limit) {
    slack_.resize(std::max(slack_.size(), b.labels));
    const cost_t old = weigh(b);
    for (const live_seam& s : b.left_out) {
        live_seam back = s;
        std::swap(back.a, back.b);
        const auto own = p.labels(b.zone);
        for (std::size_t l = 0; l < b.labels; ++l) {
            cost_t most = unreachable;
            for (const label& y : p.labels(s.b)) {
                most = std::min(most, s.price(own[l].length - y.length) - p.eased[p.ease(back, y)]);
            }
            cells[b.below + l] += most - p.eased[p.ease(s, own[l])];
            p.eased[p.ease(s, own[l])] = most;
        }
    }
    const cost_t before = weigh(b);
    bound += before - old;
    const auto zone = p.labels(b.zone);
    cost_t v = unreachable;
    for (std::size_t l = 0; l < b.labels; ++l) {
        cost_t least = bound + slack_[l] - before;
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
            const bool pays = (zone[l].tools >> t & 1U) != 0 && !zone[l].gone;
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
    bound += top - before;
    for (const live_seam& s : b.left_out) {
        for (std::size_t l = 0; l < b.labels; ++l) {
            const cost_t give = zone[l].gone ? 0 : (slack_[l] - top) / 2;
            slack_[l] -= give;
            p.eased[p.ease(s, zone[l])] -= give;
        }
    }
    for (std::size_t l = 0; l < b.labels; ++l) {
        cost_t& below = cells[b.below + l];
        below = zone[l].gone ? unreachable : slack_[l] - cells[b.above + l];
    }
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
        const cost_t* const steps = &cells[c.steps];
        const cost_t* const least = &cells[c.least];
        cost_t* const above = &cells[c.above];
        std::fill_n(above, c.labels, unreachable);
        for (std::size_t l = 0; l < b.labels; ++l) {
            below[l] -= least[l];
            const cost_t rest = std::min(below[l] + cells[b.above + l], unreachable);
            for (std::size_t m = 0; m < c.labels; ++m) {
                above[m] = std::min(above[m], rest + steps[l * c.labels + m]);
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
    return std::all_of(order.rbegin(), order.rend(), [&](const node& b) {
               return &nodes_[b.parent] != &b || visit(b, p, most_rise, limit);
           }) &&
           bound <= limit;
}

/// All shares of a tool lose alike until they fit its price.
static void fit(open_plan& p, std::size_t tool) {
    for (;;) {
        cost_t payers = 0;
        p.rest[tool] = p.price[tool];
        for (const auto& share : p.share) {
            p.rest[tool] -= share[tool];
            payers += share[tool] > 0 ? 1 : 0;
        }
        if (p.rest[tool] >= 0) {
            return;
        }
        const cost_t cut = (payers - 1 - p.rest[tool]) / payers;
        for (auto& share : p.share) {
            share[tool] = std::max(0, share[tool] - cut);
        }
    }
}

void forest::step(open_plan& p, cost_t length) {
    trace();
    cost_t holders = 0;
    cost_t over = p.spends ? -p.budget : 0;
    each_bit(p.open, [&](std::size_t z) {
        holders += std::popcount(p.labels(z)[at_[z]].tools);
        over += p.labels(z)[at_[z]].spend;
    });
    const cost_t square = std::max(1, holders + over * over);
    tool_set held = 0;
    each_bit(p.open, [&](std::size_t z) {
        each_bit(p.labels(z)[at_[z]].tools, [&](std::size_t t) { p.share[z][t] += length / square; });
        held |= p.labels(z)[at_[z]].tools;
    });
    each_bit(held, [&](std::size_t t) { fit(p, t); });
    p.toll = std::clamp<cost_t>(p.toll + length / square * over, 0, highest_toll);
    fill(p);
}

}  // namespace pelage::planning
