// The order in which the blocks of one list are worked, as a problem in small integers.
//
// A rule is kept whatever it costs: a block stands after those it must follow. All else is a wish,
// and an earlier wish outweighs any amount of a later one:
//   1. the least time for taking up tools: what the block before held stays in the hand, everything
//      else is taken up and paid for, and what was put down is paid for again
//   2. the last part last: the fewest pairs of blocks of which the earlier touches a part that comes
//      last and the later one any other
//   3. the fewest departures from the order of the parts: pairs of parts, worked in two blocks, of
//      which the later block's should have come first
//   4. the fewest jumps: a block that touches nothing the block before it touched or lies beside
//   5. the first order there is, by the numbers of the blocks, so that ties are ties everywhere
// Wishes 2 and 3 count pairs rather than neighbours in the order, so that one block in the wrong
// place costs by how many it stands before. Nothing here knows what a dog is: planner/plan.hpp does.
#pragma once

#include <compare>
#include <cstdint>
#include <span>
#include <vector>

#include <pelage/solver/setup_problem.hpp>

namespace pelage {

/// A set of blocks, one bit each.
using block_set = std::uint64_t;
/// A set of parts, one bit each; a lower bit is worked earlier.
using part_set = std::uint8_t;

/// More blocks than a list can have; beyond `most_proven` the order isn't proven.
inline constexpr std::size_t most_blocks = 64;
inline constexpr std::size_t most_proven = 14;
/// The time for taking up everything every block holds must stay below this (thousandths of a
/// minute: 4473 hours), so that an order's cost fits one integer.
inline constexpr std::int64_t dearest_order = std::int64_t{1} << 28U;

/// One block: what it holds, what it touches, and how it stands to the others.
struct order_block {
    tool_set held = 0;     ///< what is in the hand for it
    part_set parts = 0;    ///< of the body it works on
    block_set beside = 0;  ///< blocks that touch something it touches or lies beside
    block_set after = 0;   ///< rule: blocks done before it
};

/// The blocks of one list.
struct order_problem {
    std::vector<order_block> blocks;  ///< to be put in order
    std::vector<std::int32_t> price;  ///< per tool, thousandths of a minute, >= 0
    part_set last = 0;                ///< parts that come last
};

/// How far an order is from what is wished, the weightier first.
struct order_cost {
    std::int64_t pick_ups = 0;    ///< thousandths of a minute
    std::int32_t early = 0;       ///< wish 2: pairs of blocks
    std::int32_t departures = 0;  ///< wish 3: pairs of parts
    std::int32_t jumps = 0;       ///< wish 4: blocks
    friend auto operator<=>(const order_cost&, const order_cost&) = default;
};

/// An order: the numbers of the blocks as they are done.
struct work_order {
    std::vector<std::size_t> blocks;  ///< indices, in working order
    order_cost cost;                  ///< of that order
    bool proven = true;               ///< no order is better; false: the best that was found
};

/// What doing the blocks in that order costs, from the definition above. Throws error(range) unless
/// `order` names every block once, and error(conflict) if it breaks a rule.
[[nodiscard]] order_cost cost_of(const order_problem& p, std::span<const std::size_t> order);

/// The best order there is, proven for up to `most_proven` blocks; beyond that a good one, with
/// `proven` false. Throws error(range) if there are more than `most_blocks` blocks, a price is
/// missing or negative, or pick-ups reach `dearest_order`; error(conflict) if the rules go in a
/// circle.
[[nodiscard]] work_order best_order(const order_problem& p);

}  // namespace pelage
