// The judge of small problems: every plan is priced.
#pragma once

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <vector>

#include <pelage/solver/setup_problem.hpp>

namespace generate {

/// The cheapest plan, the first in lexical order of equals, by pricing all; empty if none is allowed.
class brute_force {
  public:
    explicit brute_force(const pelage::problem& p) : p_(p) { choose(0, 0, 0, 0); }
    std::vector<std::size_t> best;
    std::int64_t cost = 0;

  private:
    /// Zones are chosen in order, so plans come in lexical order: only a cheaper one is better.
    void choose(std::int64_t sum, pelage::tool_set held, std::int32_t spent, std::size_t z) {
        if (z == p_.zones.size()) {
            if (spent <= p_.budget && (best.empty() || sum < cost)) {
                best.clear();
                for (const pelage::allowed_setup* s : plan_) {
                    best.push_back(s->setup);
                }
                cost = sum;
            }
            return;
        }
        for (const pelage::allowed_setup& s : p_.zones[z]) {
            plan_.push_back(&s);
            choose(sum + added(z, held), held | s.tools, spent + s.spend, z + 1);
            plan_.pop_back();
        }
    }
    /// What the last zone chosen adds: itself, its new tools, its seams to zones before it.
    [[nodiscard]] std::int64_t added(std::size_t z, pelage::tool_set held) const {
        std::int64_t sum = plan_[z]->cost;
        for (std::size_t t = 0; t < p_.price.size(); ++t) {
            sum += ((plan_[z]->tools & ~held) >> t & 1U) != 0 ? p_.price[t] : 0;
        }
        for (const pelage::seam_cost& s : p_.seams) {
            if (std::max(s.a, s.b) == z) {
                const std::int64_t step = std::abs(plan_[s.a]->length - plan_[s.b]->length);
                sum += std::max<std::int64_t>(0, step - s.allowance) * s.per_hundredth;
            }
        }
        return sum;
    }

    const pelage::problem& p_;
    std::vector<const pelage::allowed_setup*> plan_;
};

/// What is said where there is no plan: zones with no setup, or else those that can't but spend.
inline std::vector<std::size_t> why_none(const pelage::problem& p) {
    std::vector<std::size_t> without;
    std::vector<std::size_t> spending;
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        const auto& zone = p.zones[z];
        if (zone.empty()) {
            without.push_back(z);
        } else if (std::all_of(zone.begin(), zone.end(), [](auto& s) { return s.spend > 0; })) {
            spending.push_back(z);
        }
    }
    return without.empty() ? spending : without;
}

}  // namespace generate
