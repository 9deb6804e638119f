// Private to lib: the parts of the exact planner. Mathematics at the head of each file.
//
// A plan picks one label (a setup that may still be chosen) per zone. Its cost is the labels' own
// costs, the price of every tool held at least once, and a convex price for the step at every seam.
// A part of the search is an `open_plan`: the labels left, tools paid for, minutes left to spend.
#pragma once

#include <array>
#include <bit>
#include <cstdint>
#include <span>
#include <vector>

#include <pelage/plan.hpp>

namespace pelage::planning {

/// check() keeps every plan's cost below 2^28, so that three costs, one of them unreachable, add up.
using cost_t = std::int32_t;
using zone_set = std::uint64_t;
inline constexpr cost_t unreachable = cost_t{1} << 29;

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
    cost_t longest = 0;       ///< cost, with a step to the longest label of each neighbour
    cost_t shortest = 0;      ///< the same with the shortest
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
    std::int32_t per_hundredth = 0;
    std::int32_t allowance = 0;
};

/// Price of a step of `difference` hundredths; convex in it.
[[nodiscard]] inline cost_t step_price(const live_seam& s, std::int32_t difference) {
    const std::int32_t step = (difference < 0 ? -difference : difference) - s.allowance;
    return step > 0 ? step * s.per_hundredth : 0;
}

/// A part of the search.
struct open_plan {
    std::vector<label> pool;
    std::vector<zone_row> rows;                    ///< by zone
    std::vector<live_seam> seams;                  ///< between zones with a choice left
    zone_set open = 0;                             ///< zones with a choice left
    zone_set fresh = 0;                            ///< zones whose labels are worth comparing
    cost_t paid = 0;                               ///< what every plan of this part costs
    std::int32_t budget = 0;                       ///< minutes left for the labels' `spend`
    bool spends = false;                           ///< whether any label may spend
    std::array<std::int32_t, most_tools> price{};  ///< of unpaid tools; 0 otherwise
    /// How the price is shared out: what each zone pays of each tool it might hold, and what is left.
    std::vector<std::array<std::int32_t, most_tools>> share;
    std::array<std::int32_t, most_tools> rest{};
    std::int32_t stride = 0;
    bool unshared = true;
    cost_t toll = 0;  ///< charged for a minute, see plan_share.cpp

    [[nodiscard]] std::span<label> labels(std::size_t z) {
        return {pool.data() + rows[z].first, rows[z].count};
    }
    [[nodiscard]] std::span<const label> labels(std::size_t z) const {
        return {pool.data() + rows[z].first, rows[z].count};
    }
    [[nodiscard]] bool is_open(std::size_t z) const { return (open >> z & 1U) != 0; }
    [[nodiscard]] cost_t price_of(tool_set tools) const {
        cost_t sum = 0;
        each_bit(tools, [&](std::size_t t) { sum += price[t]; });
        return sum;
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

/// Reads the problem, leaving out labels that the cheapest one of their zone plainly dominates.
void read(const problem& p, open_plan& out, first_look& look);

/// Removes labels that are in no first optimum, pays tools that every plan holds, folds settled zones
/// into their neighbours, takes from the budget what every plan needs, until nothing changes. False if
/// a zone has no label left or no plan fits in the budget.
bool reduce(open_plan& p);

/// One round of sharing out.
struct sharing {
    cost_t most_rise = unreachable;  ///< that a zone's turn may raise the bound by
    cost_t limit = unreachable;      ///< plans that cost more are not sought
};

/// The table of a zone: for every choice in its separator (neighbours that are eliminated later) and
/// every label the least cost of the zone and all that was eliminated into it.
struct bucket {
    std::size_t zone = 0;
    std::size_t labels = 0;
    std::size_t places = 0;               // choices in the separator
    std::vector<std::uint8_t> separator;  // zones, the next to be eliminated first
    std::vector<std::uint32_t> stride;    // of the separator's labels
    std::vector<live_seam> seams;         // to separator zones; `b` is the separator's
    std::vector<std::uint8_t> children;   // buckets whose tables this one reads
    bool root = false;                    // nothing reads this one
    std::vector<std::uint32_t> base;      // by the parent's place: own place beside its first label
    std::size_t steps = 0;                 // by place, then label: steps to the separator
    std::size_t joint = 0;                // by place, then label; offsets into the cells
    std::size_t least = 0;                // by place
    std::size_t told = 0;                 // by place: what the parent has of `least`
    std::size_t down = 0;                 // by place: least cost of everything else

    template <class At>
    [[nodiscard]] std::size_t place(const At& at) const {
        std::size_t sum = 0;
        for (std::size_t i = 0; i < separator.size(); ++i) {
            sum += stride[i] * at[separator[i]];
        }
        return sum;
    }
};

/// Exact minima over all plans of a part by elimination of zones, tools priced by their shares.
class tables {
  public:
    /// Order and layout for the open zones and these seams of theirs. False if the tables would have
    /// more than `most_cells` cells.
    bool build(const open_plan& p, std::span<const live_seam> seams, std::size_t most_cells);
    /// Costs of `p` into the tables.
    void fill(const open_plan& p);
    /// The least shared cost of a plan.
    [[nodiscard]] cost_t bound() const { return bound_; }
    /// One round over all zones: shares prices anew so that bound() doesn't fall, marks labels as gone
    /// that are in no plan within the limit. False if no plan is.
    bool share_out(open_plan& p, const sharing& how);
    /// Shares prices anew by what the least shared plan holds, and fills the tables; bound() may fall.
    void step(open_plan& p, cost_t length, std::vector<std::uint16_t>& chosen);
    /// A plan that has the least shared cost: label by zone.
    void trace(std::vector<std::uint16_t>& chosen) const;

    [[nodiscard]] std::span<const bucket> buckets() const { return {order_.data(), used_}; }
    [[nodiscard]] const cost_t* cells() const { return cells_.data(); }

  private:
    void order(const open_plan& p, std::span<const live_seam> seams);
    bool lay_out(const open_plan& p, std::size_t most_cells);
    void link(const open_plan& p, std::size_t parent, std::size_t child);
    void add_steps(const open_plan& p, const bucket& b, const live_seam& s);
    void close(const bucket& b);
    bool visit(std::size_t n, open_plan& p, const sharing& how, bool& changed);
    cost_t marginals(const bucket& b);
    bool reprice(open_plan& p, std::size_t z, cost_t least, const sharing& how);
    void charge(open_plan& p, std::size_t z, std::size_t tool, cost_t more);
    void tell(const bucket& b, const bucket& child);
    void hear(const bucket& b, const bucket& child);

    std::vector<bucket> order_;
    std::size_t used_ = 0;  // buckets of order_ in use; the rest keeps its memory
    std::vector<cost_t> cells_;
    std::vector<cost_t> row_;
    std::vector<cost_t> slack_;
    std::vector<std::uint32_t> stride_;
    cost_t bound_ = 0;
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
    void take(cost_t found, const std::vector<std::uint16_t>& plan) {
        cost = found;
        limit = found;
        setup = plan;
    }
};

/// Depth-first search over the tables of a part.
class walk {
  public:
    /// Finds the first of the cheapest plans within the limit, if there is one. False if it took more
    /// than `most` labels.
    bool run(const open_plan& p, const tables& t, std::int64_t most, incumbent& best);

  private:
    struct level {
        const bucket* table = nullptr;
        tool_set held = 0;    // tools of the zone's labels
        tool_set below = 0;   // tools of this and all later zones
        zone_set beside = 0;  // zones chosen before that this or a later table looks at
        std::array<std::int32_t, most_tools> fresh{};  // price not covered by this and later zones
    };
    struct option {
        cost_t bound = 0;
        std::uint32_t label = 0;
    };
    struct state {
        std::size_t depth = 0;
        cost_t bound = 0;
        tool_set used = 0;
        std::int32_t spent = 0;
    };
    struct memory {
        tool_set used = 0;
        cost_t bound = 0;
        std::uint32_t run = 0;
        std::uint16_t depth = 0;
        std::uint16_t spent = 0;
    };
    static constexpr std::size_t slots = 4096;

    void prepare();
    bool visit(const state& s);
    void add_options(const state& s);
    bool seen(const state& s);

    const open_plan* p_ = nullptr;
    const tables* tables_ = nullptr;
    incumbent* best_ = nullptr;
    std::int64_t left_ = 0;
    std::uint32_t run_ = 0;
    std::size_t depth_ = 0;
    std::vector<level> levels_;
    std::vector<std::uint16_t> at_;     // label by zone
    std::vector<std::uint16_t> setup_;  // setup by zone; of zones not yet chosen the first it has
    std::vector<option> options_;
    std::vector<memory> seen_;
    std::vector<std::uint16_t> seen_setup_;
};

}  // namespace pelage::planning
