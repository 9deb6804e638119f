// Private to lib: the parts of the exact planner. Mathematics at the head of each file.
//
// A plan picks one label (a setup that may still be chosen) per zone. Its cost is the labels' own
// costs, the price of every tool held at least once, and a convex price for the step at every seam.
#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include <pelage/plan.hpp>

namespace pelage::planning {

using cost_t = std::int64_t;
inline constexpr cost_t none = std::numeric_limits<cost_t>::max();
using by_tool = std::array<std::int32_t, most_tools>;

constexpr std::uint64_t bit(std::size_t n) {
    return std::uint64_t{1} << n;
}
template <class Visit>
void each_bit(std::uint64_t set, Visit visit) {
    for (; set != 0; set &= set - 1) {
        visit(static_cast<std::size_t>(std::countr_zero(set)));
    }
}
inline cost_t sum_of(tool_set tools, const by_tool& prices) {
    cost_t sum = 0;
    each_bit(tools, [&](std::size_t t) { sum += prices[t]; });
    return sum;
}

/// A setup that may still be chosen in a zone.
struct label {
    tool_set tools = 0;       ///< unpaid tools it holds
    cost_t cost = 0;          ///< own cost, with what is settled around it folded in
    std::int32_t length = 0;  ///< hundredths of a millimetre
    std::uint16_t setup = 0;
    std::uint8_t spend = 0;  ///< minutes beyond what every label of its zone needs
    bool gone = false;       ///< in no plan that is still sought; leaves with the next drop()
    std::uint32_t slot = 0;  ///< where part::eased has what it pays at its zone's first seam
    cost_t sum = 0;          ///< what it costs on its own, in its zone's turn
    cost_t at_longest = 0, at_shortest = 0;  ///< cost with steps to the ends of its neighbours
};

/// A zone's labels, in order of setups.
struct zone_row {
    std::uint32_t first = 0, count = 0;
    std::int32_t low = 0, high = 0;  ///< ends of their lengths
    std::uint32_t seam = 0;          ///< last of its half seams
    std::uint32_t seams = 0;         ///< how many it has
    std::uint32_t least = 0;         ///< a label that costs least on its own
    cost_t value = 0;                ///< what that costs
    tool_set payer = 0;              ///< tools of whose price it may pay a share
};

/// A seam as one of its zones sees it. The other's half stands beside it: its place with the last bit turned.
struct half_seam {
    std::uint32_t next = 0;    ///< of the same zone; 0 if there is none
    std::uint32_t number = 0;  ///< of the zone's, from 0
    std::uint32_t to = 0;      ///< the other zone
    std::int32_t per_hundredth = 0;
    std::int32_t allowance = 0;

    /// Price of a step of `difference` hundredths; convex in it.
    [[nodiscard]] cost_t price(std::int32_t difference) const {
        const std::int32_t step = (difference < 0 ? -difference : difference) - allowance;
        return step > 0 ? cost_t{step} * per_hundredth : 0;
    }
};

/// A part of the search: the labels left, what is paid, what may still have to be paid.
struct part {
    std::vector<label> pool;
    std::vector<zone_row> rows;    ///< by zone
    std::vector<half_seam> seams;  ///< from 2 on, so that 0 ends a list
    std::uint64_t open = 0;        ///< zones that aren't settled
    std::uint64_t fresh = 0;       ///< zones whose labels are worth comparing
    cost_t paid = 0;               ///< what every plan of this part costs
    by_tool price{};               ///< of unpaid tools; 0 otherwise
    std::int32_t budget = 0;       ///< minutes left for the labels' `spend`
    bool spends = false;           ///< whether the budget may matter

    cost_t bound = 0;            ///< no plan of this part costs less; see plan_share.cpp
    std::vector<by_tool> share;  ///< by zone, what it pays of the prices
    by_tool rest{};              ///< of the prices, what no zone pays
    cost_t most_rise = 0;        ///< of the bound in a zone's turn
    std::vector<cost_t> eased;   ///< by label and seam of its zone, what it pays of the step

    [[nodiscard]] std::span<label> labels(std::size_t z) {
        return {pool.data() + rows[z].first, rows[z].count};
    }
    /// Visits both halves, its own first, of a zone's seams at which a step may still cost anything.
    template <class Visit>
    void each_seam(std::size_t z, Visit visit) const {
        for (std::uint32_t i = rows[z].seam; i != 0; i = seams[i].next) {
            const zone_row& y = rows[seams[i].to];
            const std::int32_t widest = std::max(rows[z].high - y.low, y.high - rows[z].low);
            if ((open & bit(seams[i].to)) != 0 && widest > seams[i].allowance) {
                visit(seams[i], seams[i ^ 1U]);
            }
        }
    }
    /// Lets the labels of a zone that are gone leave.
    void drop(std::size_t z);
};

/// Reads a sound problem. Sets in `out` the ties, and who is stuck if there is no plan.
[[nodiscard]] part read(const problem& p, solution& out);

/// Removes labels that are in no first optimum, pays tools that every plan holds, folds settled zones
/// into their neighbours, takes from the budget what every plan needs, until nothing changes. False if
/// a zone has no label left or no plan fits in the budget.
bool reduce(part& p);

/// Shares prices and steps out among zones, so that their least labels bound all plans. Marks labels as
/// gone that are in no plan that costs `limit` or less. False if no plan does.
bool share_out(part& p, cost_t limit);

/// What a plan costs by the definition; nothing if it overspends. Throws error(range) if it isn't one.
[[nodiscard]] std::optional<cost_t> price_of(const problem& p, std::span<const std::size_t> setup);

}  // namespace pelage::planning
