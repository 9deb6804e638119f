// Private to lib: the parts of the exact planner. Mathematics at the head of each file.
//
// A plan picks one label (a setup that may still be chosen) per zone. Its cost is the labels' own
// costs, the price of every tool held at least once, and a convex price for the step at every seam.
#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <cstdlib>
#include <span>
#include <utility>
#include <vector>

#include <boost/container/small_vector.hpp>

#include <pelage/solver/setup_solver.hpp>

#include "solver/setup_cost.hpp"

namespace pelage::planning {

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

/// A setup that may still be chosen in a zone. Filled by read_zone(): zeroing it first would cost more.
struct label {
    tool_set tools;                        ///< unpaid tools it holds
    cost_t sum;                            ///< what it costs on its own, in its zone's turn
    std::int32_t cost;                     ///< own cost, with what is settled around it folded in
    std::int32_t length;                   ///< hundredths of a millimetre
    std::int32_t at_longest, at_shortest;  ///< cost with steps to the ends of its neighbours
    std::uint32_t slot;  ///< where part::eased has what it pays at its zone's first seam
    std::int32_t spend;  ///< what it needs of the budget
    std::uint16_t setup;
    bool gone;  ///< in no plan that is still sought; leaves with the next drop()
};

/// A zone's labels, in order of setups.
struct zone_row {
    std::uint32_t first = 0, count = 0;
    std::int32_t low = longest_hair, high = 0;  ///< ends of their lengths
    tool_set any = 0, all = ~tool_set{0};       ///< tools that some, that all of them hold
    std::uint32_t seam = 0;                     ///< last of its half seams
    std::uint32_t seams = 0;                    ///< how many it has
    std::int32_t steepest = 0;                  ///< price of 0.01 mm at all of them together
    std::uint32_t least = 0;                    ///< a label of least sum in its last turn
    cost_t value = 0;                           ///< no label's sum is less
    tool_set payer = 0;                         ///< tools of whose price it may pay a share

    /// Takes a label as the next of its own.
    void add(const label& l) {
        ++count;
        low = std::min(low, l.length);
        high = std::max(high, l.length);
        any |= l.tools;
        all &= l.tools;
    }
};

/// A seam as one of its zones sees it. The other's half stands beside it: its place with the last bit turned.
struct half_seam {
    std::uint32_t next;    ///< of the same zone; 0 if there is none
    std::uint32_t number;  ///< of the zone's, from 0
    std::uint32_t to;      ///< the other zone
    std::int32_t per_hundredth;
    std::int32_t allowance;

    /// Price of a step of `difference` hundredths; convex in it.
    [[nodiscard]] std::int32_t price(std::int32_t difference) const {
        return std::max(std::abs(difference) - allowance, 0) * per_hundredth;
    }
};
using seam_list = boost::container::small_vector<half_seam, 130>;

/// A part of the search: the labels left, what is paid, what may still have to be paid.
struct part {
    boost::container::small_vector<label, 256> pool;
    boost::container::small_vector<zone_row, most_zones> rows;  ///< by zone
    std::span<const half_seam> seams;                           ///< from 2 on: 0 ends a list
    std::uint64_t open = 0;                                     ///< zones that aren't settled
    std::uint64_t apart = 0;  ///< zones that aren't folded into their neighbours
    std::uint64_t fresh = 0;  ///< zones whose labels are worth comparing
    std::uint64_t thin = 0;   ///< zones in which labels are gone
    cost_t paid = 0;          ///< what every plan of this part costs
    by_tool price{};          ///< of unpaid tools; 0 otherwise
    std::int32_t budget = 0;  ///< left for the labels' `spend`
    bool spends = false;      ///< whether the budget may matter
    bool hopeless = false;    ///< whether a zone has no label left

    cost_t bound = 0;            ///< no plan of this part costs less; see solver/setup_share.cpp
    std::vector<by_tool> share;  ///< by zone, what it pays of the prices
    by_tool rest{};              ///< of the prices, what no zone pays
    cost_t most_rise = 0;        ///< of the bound in a zone's turn: an eighth of a tool's price
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
            if ((apart & bit(seams[i].to)) != 0 && widest > seams[i].allowance) {
                visit(seams[i], seams[i ^ 1U]);
            }
        }
    }
    /// Lets the labels of a zone that are gone leave.
    void drop(std::size_t z);
};

/// Reads a sound problem; the part borrows its seams. Sets in `out` the ties, and who is stuck if there
/// is no plan.
[[nodiscard]] part read(const problem& p, seam_list& seams, solution& out);

/// Removes labels that are in no first optimum or that no plan can afford, pays tools that every plan
/// holds, takes from the budget what settled zones spend, until no zone has labels worth comparing again;
/// then folds settled zones into their neighbours. What the last comparing leaves for settling waits for
/// the next call: to settle once more costs more than it saves. False if a zone has no label left or no
/// plan fits in the budget.
bool reduce(part& p);

/// Shares prices and steps out among zones, so that their least labels bound all plans. Marks labels as
/// gone that are in no plan that costs `limit` or less. False if no plan does.
bool share_out(part& p, cost_t limit);

}  // namespace pelage::planning
