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
// only remove k if it spends no more. Either way the first optimum survives, whatever is removed in which
// order; and D(i, k) <= D(i, j) + D(j, k), so a label removed by one that is itself removed later is
// removed by the latter's killer too (spending less is transitive as well).
//
// Budget. What the least spending label of a zone spends, every plan spends: it leaves the budget and
// all labels of the zone. A label that spends more than is left is in no plan. If all zones at their
// most fit in what is left, no choice overspends, and nothing needs to count as spending any more.
#include <algorithm>
#include <bit>

#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

struct span_of_lengths {
    std::int32_t low = 0;
    std::int32_t high = 0;
};

cost_t price_of(const open_plan& p, tool_set tools) {
    cost_t sum = 0;
    for (; tools != 0; tools &= tools - 1) {
        sum += p.price[static_cast<std::size_t>(std::countr_zero(tools))];
    }
    return sum;
}

/// Seams of one zone against the ends of its neighbours' lengths.
struct ends {
    std::vector<std::pair<live_seam, span_of_lengths>> seams;

    [[nodiscard]] cost_t at_longest(std::int32_t length) const {
        cost_t sum = 0;
        for (const auto& [s, y] : seams) {
            sum += step_price(s, length - y.high);
        }
        return sum;
    }
    [[nodiscard]] cost_t at_shortest(std::int32_t length) const {
        cost_t sum = 0;
        for (const auto& [s, y] : seams) {
            sum += step_price(s, length - y.low);
        }
        return sum;
    }
};

/// A label with its seams priced at both ends.
struct weighed {
    label what;
    cost_t longest = 0;
    cost_t shortest = 0;
};

bool removes(const open_plan& p, const weighed& i, const weighed& k) {
    if (i.what.spend > k.what.spend) {
        return false;
    }
    const cost_t steps = i.what.length < k.what.length   ? i.longest - k.longest
                         : i.what.length > k.what.length ? i.shortest - k.shortest
                                                         : 0;
    const cost_t d = i.what.cost - k.what.cost + steps + price_of(p, i.what.tools & ~k.what.tools);
    return d < 0 || (d == 0 && i.what.setup < k.what.setup);
}

class reducer {
  public:
    explicit reducer(open_plan& p) : p_(p) {}

    bool run() {
        bool again = true;
        while (again) {
            if (std::any_of(p_.labels.begin(), p_.labels.end(),
                            [](const auto& zone) { return zone.empty(); })) {
                return false;
            }
            if (!spend()) {
                return false;
            }
            again = pay();
            again = fold() || again;
            for (std::size_t z = 0; z < p_.zones; ++z) {
                // a label is only ever removed by one that stays: no zone runs empty here
                again = (p_.open(z) && dominate(z)) || again;
            }
        }
        return true;
    }

  private:
    /// Tools that all labels of a zone hold are paid once and for all; a tool only one open zone can
    /// hold is no shared tool: its price joins the labels' own costs.
    bool pay() {
        std::array<std::uint8_t, most_tools> holders{};
        tool_set everywhere = 0;
        for (const auto& zone : p_.labels) {
            tool_set any = 0;
            tool_set all = ~tool_set{0};
            for (const label& l : zone) {
                any |= l.tools;
                all &= l.tools;
            }
            everywhere |= zone.empty() ? 0 : all;
            for (; any != 0; any &= any - 1) {
                ++holders[static_cast<std::size_t>(std::countr_zero(any))];
            }
        }
        bool changed = everywhere != 0;
        for (tool_set t = everywhere; t != 0; t &= t - 1) {
            settle(static_cast<std::size_t>(std::countr_zero(t)));
        }
        for (std::size_t t = 0; t < most_tools; ++t) {
            if (holders[t] == 1 && (everywhere >> t & 1U) == 0) {
                own(t);
                changed = true;
            }
        }
        return changed;
    }

    void settle(std::size_t tool) {
        p_.paid += p_.price[tool];
        forget(tool);
    }

    void own(std::size_t tool) {
        for (auto& zone : p_.labels) {
            for (label& l : zone) {
                l.cost += (l.tools >> tool & 1U) != 0 ? p_.price[tool] : 0;
            }
        }
        forget(tool);
    }

    void forget(std::size_t tool) {
        p_.price[tool] = 0;
        for (auto& zone : p_.labels) {
            for (label& l : zone) {
                l.tools &= ~(tool_set{1} << tool);
            }
        }
    }

    /// False if no plan fits in the budget. Labels it drops leave at least one a zone.
    bool spend() {
        std::int32_t most = 0;
        for (auto& zone : p_.labels) {
            const auto by_spend = [](const label& a, const label& b) { return a.spend < b.spend; };
            const auto [low, high] = std::minmax_element(zone.begin(), zone.end(), by_spend);
            most += high->spend - low->spend;
            const std::int32_t least = low->spend;
            p_.budget -= least;
            for (label& l : zone) {
                l.spend -= least;
            }
        }
        if (p_.budget < 0) {
            return false;
        }
        for (auto& zone : p_.labels) {
            std::erase_if(zone, [&](const label& l) { return l.spend > p_.budget; });
            for (label& l : zone) {
                l.spend = most <= p_.budget ? 0 : l.spend;
            }
        }
        return true;
    }

    /// A zone with one label left is settled: its steps join its neighbours' own costs.
    bool fold() {
        bool changed = false;
        for (std::size_t n = 0; n < p_.seams.size();) {
            const live_seam s = p_.seams[n];
            auto& a = p_.labels[s.a];
            auto& b = p_.labels[s.b];
            if (a.size() != 1 && b.size() != 1) {
                ++n;
                continue;
            }
            auto& rest = a.size() == 1 ? b : a;
            const label& fixed = a.size() == 1 ? a.front() : b.front();
            for (label& l : rest) {
                l.cost += step_price(s, l.length - fixed.length);
            }
            p_.seams[n] = p_.seams.back();
            p_.seams.pop_back();
            changed = true;
        }
        return changed;
    }

    bool dominate(std::size_t z) {
        near_.seams.clear();
        for (const live_seam& s : p_.seams) {
            if (s.a == z || s.b == z) {
                const auto& other = p_.labels[s.a == z ? s.b : s.a];
                near_.seams.push_back({s, {other.front().length, other.back().length}});
            }
        }
        std::vector<label>& zone = p_.labels[z];
        weighed_.clear();
        for (const label& l : zone) {
            weighed_.push_back({l, near_.at_longest(l.length), near_.at_shortest(l.length)});
        }
        const std::size_t before = zone.size();
        zone.clear();
        for (const weighed& k : weighed_) {
            const bool gone = std::any_of(weighed_.begin(), weighed_.end(), [&](const weighed& i) {
                return &i != &k && removes(p_, i, k);
            });
            if (!gone) {
                zone.push_back(k.what);
            }
        }
        return zone.size() != before;
    }

    open_plan& p_;
    ends near_;
    std::vector<weighed> weighed_;
};

}  // namespace

bool reduce(open_plan& p) {
    return reducer(p).run();
}

bool read(const problem& p, open_plan& out) {
    out.zones = p.zones;
    out.labels.resize(p.zones);
    out.share.assign(p.zones, {});
    out.price.fill(0);
    std::copy(p.price.begin(), p.price.end(), out.price.begin());
    out.paid = 0;
    out.budget = p.budget;
    std::vector<span_of_lengths> range(p.zones, {100'000, 0});
    std::vector<std::size_t> cheapest(p.zones, 0);
    for (std::size_t z = 0; z < p.zones; ++z) {
        for (std::size_t k = 0; k < p.setups; ++k) {
            if (p.cost[p.at(z, k)] == forbidden) {
                continue;
            }
            const std::int32_t l = p.length[p.at(z, k)];
            range[z] = {std::min(range[z].low, l), std::max(range[z].high, l)};
            if (p.cost[p.at(z, k)] < p.cost[p.at(z, cheapest[z])]) {
                cheapest[z] = k;
            }
        }
        if (range[z].low > range[z].high) {
            return false;
        }
    }
    out.seams.clear();
    for (const seam_cost& s : p.seams) {
        if (s.per_hundredth > 0 && s.a != s.b) {  // a zone has no step to itself
            out.seams.push_back({static_cast<std::uint8_t>(s.a), static_cast<std::uint8_t>(s.b),
                                 s.per_hundredth, s.allowance});
        }
    }
    std::vector<ends> near(p.zones);
    for (const live_seam& s : out.seams) {
        near[s.a].seams.emplace_back(s, range[s.b]);
        near[s.b].seams.emplace_back(s, range[s.a]);
    }
    tool_set free = 0;
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        free |= p.price[t] == 0 ? tool_set{1} << t : 0;
    }
    for (std::size_t z = 0; z < p.zones; ++z) {
        const auto weigh = [&](std::size_t k) {
            const std::size_t at = p.at(z, k);
            const label l{p.length[at], static_cast<std::uint32_t>(k), p.cost[at],
                          p.tools[at] & ~free, p.spend.empty() ? 0 : p.spend[at]};
            return weighed{l, near[z].at_longest(l.length), near[z].at_shortest(l.length)};
        };
        const weighed pivot = weigh(cheapest[z]);
        auto& zone = out.labels[z];
        zone.clear();
        for (std::size_t k = 0; k < p.setups; ++k) {
            if (p.cost[p.at(z, k)] == forbidden) {
                continue;
            }
            const weighed w = weigh(k);
            if (k == cheapest[z] || !removes(out, pivot, w)) {
                zone.push_back(w.what);
            }
        }
        std::sort(zone.begin(), zone.end(), [](const label& a, const label& b) {
            return a.length != b.length ? a.length < b.length : a.setup < b.setup;
        });
    }
    return true;
}

}  // namespace pelage::planning
