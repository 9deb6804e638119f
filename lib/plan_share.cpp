// Sharing tools out: a dual ascent over the exact tables.
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
// above, so V stays. (3) With a part of what is left of its tools' prices label l could rise to
// M_l + part; V can rise to the least of these, and each label below that pays just the difference.
// So V, exact at every turn since the tables are kept so, never falls.
#include <algorithm>

#include "plan_parts.hpp"

namespace pelage::planning {

/// Fills slack_ with each label's least cost in any plan, within the tree of its zone; the least of them.
cost_t tables::marginals(const bucket& b) {
    slack_.assign(b.labels, unreachable);
    for (std::size_t n = 0; n < b.places; ++n) {
        const cost_t* const cell = &cells_[b.joint + n * b.labels];
        const cost_t rest = cells_[b.down + n];
        for (std::size_t l = 0; l < b.labels; ++l) {
            slack_[l] = std::min(slack_[l], cell[l] + rest);
        }
    }
    return *std::min_element(slack_.begin(), slack_.end());
}

/// A zone's turn: slack_ holds the marginals and is left holding what its labels' costs change by.
bool tables::reprice(open_plan& p, std::size_t z, cost_t least, const sharing& how) {
    const auto zone = p.labels(z);
    auto& share = p.share[z];
    tool_set shared = 0;
    cost_t floor = unreachable;
    for (std::size_t l = 0; l < zone.size(); ++l) {
        cost_t rest = 0;
        each_bit(zone[l].tools, [&](std::size_t t) { rest += p.rest[t]; });
        row_[l] = slack_[l];  // as it was
        zone[l].gone = zone[l].gone || bound_ + slack_[l] - least + rest > how.limit;
        if (!zone[l].gone) {
            shared |= zone[l].tools;
            floor = std::min(floor, slack_[l]);
        }
    }
    if (floor == unreachable) {
        return false;
    }
    bound_ += floor - least;
    each_bit(shared, [&](std::size_t t) {
        cost_t back = share[t];
        for (std::size_t l = 0; l < zone.size() && back > 0; ++l) {
            if ((zone[l].tools >> t & 1U) != 0 && !zone[l].gone) {
                back = std::min(back, slack_[l] - floor);
            }
        }
        if (back > 0) {
            charge(p, z, t, -back);
        }
    });
    std::array<cost_t, most_tools> may;
    each_bit(shared, [&](std::size_t t) { may[t] = p.rest[t]; });
    cost_t rise = how.most_rise;
    for (std::size_t l = 0; l < zone.size(); ++l) {
        if (!zone[l].gone) {
            cost_t all = slack_[l] - floor;
            each_bit(zone[l].tools, [&](std::size_t t) { all += may[t]; });
            rise = std::min(rise, all);
        }
    }
    for (std::size_t l = 0; l < zone.size() && rise > 0; ++l) {
        each_bit(zone[l].gone ? 0 : zone[l].tools, [&](std::size_t t) {
            const cost_t pays = std::min(may[t], rise - (slack_[l] - floor));
            if (pays > 0) {
                may[t] -= pays;
                charge(p, z, t, pays);
            }
        });
    }
    bound_ += rise;
    for (std::size_t l = 0; l < zone.size(); ++l) {
        slack_[l] = zone[l].gone ? unreachable : slack_[l] - row_[l];
    }
    return true;
}

/// Zone `z` pays that much more for the tool.
void tables::charge(open_plan& p, std::size_t z, std::size_t tool, cost_t more) {
    p.share[z][tool] += static_cast<std::int32_t>(more);
    p.rest[tool] -= static_cast<std::int32_t>(more);
    const auto zone = p.labels(z);
    for (std::size_t l = 0; l < zone.size(); ++l) {
        slack_[l] += (zone[l].tools >> tool & 1U) != 0 ? more : 0;
    }
}

/// Tells a child what everything outside its table costs at least.
void tables::tell(const bucket& b, const bucket& child) {
    std::fill_n(&cells_[child.down], child.places, unreachable);
    std::copy_n(&cells_[child.least], child.places, &cells_[child.told]);
    for (std::size_t n = 0; n < b.places; ++n) {
        const cost_t* const cell = &cells_[b.joint + n * b.labels];
        const cost_t rest = cells_[b.down + n];
        const cost_t* const least = &cells_[child.least + child.base[n]];
        cost_t* const down = &cells_[child.down + child.base[n]];
        for (std::size_t l = 0; l < b.labels; ++l) {
            down[l] = std::min(down[l], cell[l] + rest - least[l]);
        }
    }
}

/// The turns of a zone and all below it. Sets `changed` if its table has; false if no plan is left.
bool tables::visit(std::size_t at, open_plan& p, const sharing& how, bool& changed) {
    const bucket& b = order_[at];
    const cost_t least = marginals(b);
    if (!reprice(p, b.zone, least, how)) {
        return false;
    }
    bool mine = std::any_of(slack_.begin(), slack_.end(), [](cost_t more) { return more != 0; });
    for (std::size_t n = 0; mine && n < b.places; ++n) {
        cost_t* const cell = &cells_[b.joint + n * b.labels];
        for (std::size_t l = 0; l < b.labels; ++l) {
            cell[l] = std::min(cell[l] + slack_[l], unreachable);
        }
    }
    for (const std::uint8_t c : b.children) {
        bool theirs = false;
        tell(b, order_[c]);
        if (!visit(c, p, how, theirs)) {
            return false;
        }
        if (theirs) {
            hear(b, order_[c]);
            mine = true;
        }
    }
    if (mine) {
        close(b);
        changed = true;
    }
    return true;
}

bool tables::share_out(open_plan& p, const sharing& how) {
    bool changed = false;
    for (std::size_t n = used_; n-- > 0;) {
        if (order_[n].root) {
            cells_[order_[n].down] = 0;
            if (!visit(n, p, how, changed)) {
                return false;
            }
        }
    }
    return bound_ <= how.limit;
}

/// Shares of one tool, some of them raised: all lose alike until they fit its price again.
void fit(open_plan& p, std::size_t tool) {
    for (;;) {
        cost_t excess = -cost_t{p.price[tool]};
        cost_t payers = 0;
        for (std::size_t z = 0; z < p.rows.size(); ++z) {
            excess += p.share[z][tool];
            payers += p.share[z][tool] > 0 ? 1 : 0;
        }
        p.rest[tool] = static_cast<std::int32_t>(std::max<cost_t>(0, -excess));
        if (excess <= 0) {
            return;
        }
        const auto cut = static_cast<std::int32_t>((excess + payers - 1) / payers);
        for (auto& zone : p.share) {
            zone[tool] = std::max(0, zone[tool] - cut);
        }
    }
}

void tables::step(open_plan& p, cost_t length, std::vector<std::uint16_t>& chosen) {
    trace(chosen);
    std::int32_t holders = 0;
    tool_set held = 0;
    each_bit(p.open, [&](std::size_t z) { holders += std::popcount(p.labels(z)[chosen[z]].tools); });
    each_bit(p.open, [&](std::size_t z) {
        const tool_set tools = p.labels(z)[chosen[z]].tools;
        held |= tools;
        each_bit(tools, [&](std::size_t t) {
            p.share[z][t] += static_cast<std::int32_t>(length / holders);
        });
    });
    each_bit(held, [&](std::size_t t) { fit(p, t); });
    fill(p);
}

}  // namespace pelage::planning
