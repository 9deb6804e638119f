// Private to lib: the parts of the exact planner. Mathematics in the comments of each function.
//
// A plan picks one label (a setup that may still be chosen) per zone. Its cost is the labels' own
// costs, the price of every tool held at least once, and a convex price for the step at every seam.
// A node of the search is an `open_plan`: the labels left, tools already paid for, tools banned.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include <pelage/plan.hpp>

namespace pelage::planning {

using cost_t = std::int64_t;
inline constexpr cost_t unreachable = cost_t{1} << 60;

/// A setup that may still be chosen in a zone.
struct label {
    std::int32_t length = 0;  ///< hundredths of a millimetre
    std::uint32_t setup = 0;  ///< column of the problem
    cost_t cost = 0;          ///< own cost, with what is settled around it folded in
    tool_set tools = 0;       ///< unpaid tools it holds
    std::int32_t spend = 0;   ///< minutes beyond what every label of its zone needs
};

/// A seam between two zones that are both still open.
struct live_seam {
    std::uint8_t a = 0;
    std::uint8_t b = 0;
    std::int32_t per_hundredth = 0;
    std::int32_t allowance = 0;
};

/// Price of a step of `difference` hundredths; convex in it.
[[nodiscard]] inline cost_t step_price(const live_seam& s, std::int32_t difference) {
    const std::int32_t step = (difference < 0 ? -difference : difference) - s.allowance;
    return step > 0 ? cost_t{step} * s.per_hundredth : 0;
}

/// A node of the search.
struct open_plan {
    std::size_t zones = 0;
    std::vector<std::vector<label>> labels;        ///< by zone; sorted by length, then setup
    std::vector<live_seam> seams;                  ///< between zones with a choice left
    std::array<std::int32_t, most_tools> price{};  ///< of unpaid tools; 0 otherwise
    cost_t paid = 0;                               ///< what every plan of this node costs
    std::int32_t budget = 0;                       ///< minutes left for the labels' `spend`
    /// What each zone contributes to the price of each tool it might hold: shares of one tool sum to
    /// its price at most.
    std::vector<std::array<std::int32_t, most_tools>> share;

    [[nodiscard]] bool open(std::size_t z) const { return labels[z].size() > 1; }
};

/// Reads the problem, leaving out labels that the cheapest one of their zone dominates. False if a
/// zone has no allowed setup.
bool read(const problem& p, open_plan& out);

/// Removes labels that are in no first optimum, pays tools that every plan holds, folds settled zones
/// into their neighbours, takes from the budget what every plan needs, until nothing changes. False if
/// a zone has no label left or no plan fits in the budget.
bool reduce(open_plan& p);

/// Exact minima over all plans of a node by elimination of zones, tools priced by their shares.
///
/// Zones are eliminated one after another, fewest neighbours first; the table of a zone holds, for
/// every choice in its separator (its neighbours still there), the least cost of the zone and of all
/// that was eliminated into it. That is dynamic programming over a tree decomposition, so the sum of
/// the roots is the exact minimum. A second pass from the roots gives every label's own minimum.
class elimination {
  public:
    static constexpr std::size_t most_cells = std::size_t{1} << 16;

    /// Builds order and tables for the open zones. False if a table would exceed `most_cells`.
    bool build(const open_plan& p);
    /// The least shared cost without `paid`; fills `chosen` (label index by zone) with the first plan
    /// that has it: the lowest setup in the lowest zone where two such plans differ.
    cost_t solve(const open_plan& p, std::vector<std::uint16_t>& chosen);
    /// For every label of every open zone the least shared cost of a plan through it; after solve().
    void marginals(const open_plan& p, std::vector<std::vector<cost_t>>& out);

  private:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    struct bucket {
        std::size_t zone = 0;
        std::size_t parent = none;             // the bucket whose table reads this one
        std::vector<std::uint16_t> separator;  // zones, the next to be eliminated first
        std::vector<std::uint32_t> stride;     // of the separator's labels in `least`
        std::uint32_t step = 0;                // stride of the parent's own zone
        std::vector<live_seam> seams;          // to separator zones; `b` is the separator's
        std::vector<std::size_t> children;
        std::vector<cost_t> joint;        // by separator, then label of the zone
        std::vector<cost_t> least;        // by separator
        std::vector<std::uint16_t> best;  // by separator
        std::vector<cost_t> down;         // by separator: least cost of everything else
    };

    [[nodiscard]] std::uint32_t place_of(const bucket& b) const;
    template <class Visit>
    void each_separator(const open_plan& p, const bucket& b, Visit visit);
    void beside(const open_plan& p, const bucket& b);
    void fill(const open_plan& p, bucket& b);
    void send_down(const open_plan& p, const bucket& b);
    [[nodiscard]] bool earlier(const open_plan& p, const bucket& b, std::uint16_t i,
                               std::uint16_t j);
    void trace(const bucket& b);

    std::vector<bucket> order_;
    std::size_t used_ = 0;           // buckets of order_ in use; the rest keeps its memory
    std::vector<std::uint16_t> at_;  // label chosen in each zone while tables are walked
    std::vector<std::uint16_t> other_;
    std::vector<cost_t> row_;
    std::vector<std::vector<cost_t>> shared_;  // label costs with shares, by zone
};

/// The first optimum, or the best found within `most_nodes`; `known` is an allowed plan to begin from.
[[nodiscard]] solution find(const problem& p, const std::vector<std::size_t>& known,
                            std::int64_t most_nodes);

}  // namespace pelage::planning
