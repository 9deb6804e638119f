// The choice of a few items so that most weight is met, exact.
//
// A target is met by any of its ways, each one item or several together (a comb and the blade under
// it), so that meeting targets isn't submodular; the search is exact all the same (lib/solver/cover.cpp).
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

namespace pelage {

/// Items as a set: bit i is item i of the problem.
using item_set = std::uint64_t;
/// A problem has at most so many items.
inline constexpr std::size_t most_items = 64;

/// One thing to be met: a weight, and the ways to meet it, each the items it needs together. A way
/// that needs nothing is met by what is there.
struct cover_target {
    std::int64_t weight = 1;       ///< >= 0
    std::vector<item_set> ways{};  ///< any one of them meets it
};

/// Which items to take so that most weight is met.
struct cover_problem {
    std::size_t items = 0;                ///< at most most_items
    std::vector<cover_target> targets{};  ///< what is to be met
};

/// The weight met with those items.
[[nodiscard]] std::int64_t met_by(const cover_problem& p, item_set have);

/// The best choice of at most so many items.
struct cover_choice {
    item_set items = 0;      ///< those chosen
    std::int64_t met = 0;    ///< weight met with them
    std::int64_t bound = 0;  ///< no choice of so many items meets more; `met` if proven
    [[nodiscard]] bool proven() const { return met == bound; }  ///< no choice meets more
};

/// The best choice for 0, 1, ... `most` items, exact: of those that meet most the one of fewest items,
/// and of these the first by its lowest item, then its next. After `most_nodes` parts of the search for
/// one number of items the best found is given with a bound. Throws error(range) for over most_items.
[[nodiscard]] std::vector<cover_choice> best_stock(const cover_problem& p, std::size_t most,
                                                   std::int64_t most_nodes = 400'000);

}  // namespace pelage
