// Private to lib: the parts of the exact planner. Mathematics at the head of each file.
//
// A plan picks one label (a setup that may still be chosen) per zone. Its cost is the labels' own
// costs, the price of every tool held at least once, and a convex price for the step at every seam.
// A part of the search is an `open_plan`: the labels left, tools not yet paid for, minutes left.
#pragma once

#include <algorithm>
#include <array>
#include <bit>
#include <cstdint>
#include <span>
#include <vector>

#include <pelage/plan.hpp>

namespace pelage::planning {

/// check() keeps every plan's cost below 2^28, so that three costs, one of them unreachable, add up.
using cost_t = std::int32_t;
inline constexpr cost_t unreachable = cost_t{1} << 29;
using zone_set = std::uint64_t;

constexpr std::uint64_t bit(std::size_t n) {
    return std::uint64_t{1} << n;
}
template <class Visit>
void each_bit(std::uint64_t set, Visit visit) {
    for (; set != 0; set &= set - 1) {
        visit(static_cast<std::size_t>(std::countr_zero(set)));
    }
}

/// A setup that may still be chosen in a zone.
struct label {
    std::int32_t length = 0;  ///< hundredths of a millimetre
    std::uint16_t setup = 0;  ///< column of the problem
    std::uint8_t spend = 0;   ///< minutes beyond what every label of its zone needs
    bool gone = false;        ///< in no plan that is still sought; leaves with the next drop()
    tool_set tools = 0;       ///< unpaid tools it holds
    cost_t cost = 0;          ///< own cost, with what is settled around it folded in
    cost_t at_longest = 0;    ///< cost, with a step to the longest label of each neighbour
    cost_t at_shortest = 0;   ///< the same with the shortest
};

/// The labels of a zone, by setup, and the ends of their lengths.
struct zone_row {
    std::uint32_t first = 0;
    std::uint32_t count = 0;
    std::int32_t low = 0;
    std::int32_t high = 0;
};

/// A seam between two zones that are both still open.
struct live_seam {
    std::uint8_t a = 0;
    std::uint8_t b = 0;
    std::uint16_t id = 0;  ///< the same in all parts
    std::int32_t per_hundredth = 0;
    std::int32_t allowance = 0;

    /// Price of a step of `difference` hundredths; convex in it.
    [[nodiscard]] cost_t price(std::int32_t difference) const {
        const std::int32_t step = (difference < 0 ? -difference : difference) - allowance;
        return step > 0 ? step * per_hundredth : 0;
    }
    [[nodiscard]] live_seam turned() const { return {b, a, id, per_hundredth, allowance}; }
};

using by_tool = std::array<cost_t, most_tools>;

/// A part of the search.
struct open_plan {
    std::vector<label> pool;
    std::vector<zone_row> rows;    ///< by zone
    std::vector<live_seam> seams;  ///< between open zones
    zone_set open = 0;             ///< zones with a choice left
    zone_set unsettled = 0;        ///< and those whose one label isn't paid yet
    zone_set fresh = 0;            ///< zones whose labels are worth comparing
    cost_t paid = 0;               ///< what every plan of this part costs
    std::int32_t budget = 0;       ///< minutes left for the labels' `spend`
    bool spends = false;           ///< whether the budget may matter
    by_tool price{};               ///< of unpaid tools; 0 otherwise

    std::vector<by_tool> share;  ///< what each zone pays of the prices, see plan_share.cpp
    by_tool rest{};              ///< of the prices, what no zone pays
    cost_t toll = 0;             ///< what is charged for a minute spent
    std::vector<cost_t> eased;   ///< what labels pay for steps at seams that the forest leaves out
    std::size_t setups = 0;

    [[nodiscard]] std::span<label> labels(std::size_t z) {
        return {pool.data() + rows[z].first, rows[z].count};
    }
    [[nodiscard]] std::span<const label> labels(std::size_t z) const {
        return {pool.data() + rows[z].first, rows[z].count};
    }
    [[nodiscard]] cost_t price_of(tool_set tools) const {
        cost_t sum = 0;
        each_bit(tools, [&](std::size_t t) { sum += price[t]; });
        return sum;
    }
    /// Where `eased` has what label `l` of zone s.a pays at the seam.
    [[nodiscard]] std::size_t ease(const live_seam& s, const label& l) const {
        return (2 * std::size_t{s.id} + (s.a > s.b ? 1 : 0)) * setups + l.setup;
    }
    /// Lets the labels of a zone that are gone leave. Whether there were any. Its neighbours' labels are
    /// worth comparing anew if its lengths end elsewhere now.
    bool drop(std::size_t z);
};

/// What reading a problem shows at once.
struct first_look {
    std::vector<std::size_t> without;   ///< zones with no allowed setup
    std::vector<std::size_t> spending;  ///< other zones in which every allowed setup spends
    std::size_t ties = 0;               ///< zones in which several setups share the least cost
};

/// Reads a problem, leaving out labels that the cheapest one of their zone plainly dominates. Throws as
/// check() does.
void read(const problem& p, open_plan& out, first_look& look);

/// Removes labels that are in no first optimum, pays tools that every plan holds, folds settled zones
/// into their neighbours, takes from the budget what every plan needs, until nothing changes. False if
/// a zone has no label left or no plan fits in the budget.
bool reduce(open_plan& p);

/// A zone in a spanning forest of the seams. Offsets into the forest's cells.
struct node {
    std::size_t zone = 0;
    std::size_t parent = 0;  // index of the node; its own if it is a root
    std::size_t labels = 0;
    tool_set held = 0;  // tools of the labels
    std::vector<std::uint8_t> children;
    std::vector<live_seam> left_out;  // seams of the zone, `a`, that aren't in the forest
    std::size_t steps = 0;            // by label of the parent, then label
    std::size_t below = 0;            // by label: least cost of it and all below it
    std::size_t above = 0;            // by label: least cost of all else in the tree
    std::size_t least = 0;            // by label of the parent: least cost of this and all below
};

/// Exact minima over all plans of a part along a spanning forest of its seams, tools priced by shares.
class forest {
  public:
    std::span<const node> order;                   ///< parents before children
    std::array<std::uint8_t, most_zones> place{};  ///< by zone: index of its node
    std::vector<cost_t> cells;
    cost_t bound = 0;  ///< the least shared cost of a plan

    /// Chooses the forest, hands back shares that are of no use and fills the tables.
    void plant(open_plan& p);
    /// One round over all zones: shares prices anew so that no zone's turn lowers the bound nor raises
    /// it by more than `most_rise`; marks labels as gone that are in no plan that costs `limit` or
    /// less. False if no plan does.
    bool share_out(open_plan& p, cost_t most_rise, cost_t limit);
    /// Shares prices anew by what the least shared plan holds and fills the tables; the bound may fall.
    void step(open_plan& p, cost_t length);
    /// The label of every open zone in a plan that has the least shared cost.
    const std::vector<std::uint16_t>& trace();
    /// The label chosen in a node's parent; 0 for a root.
    [[nodiscard]] std::size_t beside(const node& b, const std::vector<std::uint16_t>& at) const {
        return order[b.parent].zone == b.zone ? 0 : at[order[b.parent].zone];
    }

  private:
    void grow(const open_plan& p);
    void add_seam(const open_plan& p, live_seam s);
    void fill(const open_plan& p);
    void close(const node& b);
    bool visit(const node& b, open_plan& p, cost_t most_rise, cost_t limit);
    bool turn(const node& b, open_plan& p, cost_t most_rise, cost_t limit);
    void ease(const node& b, open_plan& p);
    cost_t weigh(const node& b);
    void charge(open_plan& p, std::size_t z, std::size_t tool, cost_t more);

    std::vector<node> nodes_;
    std::vector<cost_t> slack_;
    std::vector<std::uint16_t> at_;
};

/// The best plan known, and what is sought beyond it.
struct incumbent {
    std::vector<std::uint16_t> setup;
    cost_t cost = unreachable;
    cost_t limit = unreachable;  ///< plans that cost more are not sought; at most `cost`
    cost_t grain = 1;            ///< all plans' costs differ by multiples of it
    std::int64_t nodes = 0;      ///< labels and parts weighed so far
    std::int64_t most_nodes = 0;

    /// Whether a plan of that cost, or whose setups are no earlier, is worth finding.
    [[nodiscard]] bool wants(cost_t bound, const std::vector<std::uint16_t>& earliest) const {
        return bound <= limit && (bound <= cost - grain || earliest < setup);
    }
    void offer(cost_t found, const std::vector<std::uint16_t>& plan) {
        if (wants(found, plan)) {
            cost = limit = found;
            setup = plan;
        }
    }
};

/// Depth-first search along the forest of a part.
class walk {
  public:
    /// Finds the first of the cheapest plans within the limit, if there is one. False if it took more
    /// than `most` labels.
    bool run(const open_plan& p, const forest& f, std::int64_t most, incumbent& best);

  private:
    struct option {
        cost_t bound = 0;
        std::uint32_t label = 0;
    };
    bool visit(std::size_t n, cost_t bound, tool_set used, std::int32_t spent);
    void add_options(std::size_t n, cost_t bound, tool_set used, std::int32_t spent);

    const open_plan* p_ = nullptr;
    const forest* forest_ = nullptr;
    incumbent* best_ = nullptr;
    std::int64_t last_ = 0;             // node at which to give up
    by_tool fresh_{};                   // price less the shares of zones not yet chosen
    std::vector<std::uint16_t> at_;     // label by zone
    std::vector<std::uint16_t> setup_;  // setup by zone; of zones not yet chosen the first it has
    std::vector<option> options_;
};

}  // namespace pelage::planning
