// Which measurements of a record are likelier wrong than right.
//
// A mishap explains some readings of one stretch: a slip spoils one, a trim or a wrong length of the cut
// shifts that one and all later ones there by the same. It is believed if the readings go together so much better with those
// doubted that the odds are for it (Bayes' factor against the share of wrong ones); the likeliest is taken
// out, and the rest looked at again.
//
// Cost: what each stretch says of ln R is tabled at n <= 97 nodes, once as measured and once for each
// mishap, at most 2 * most_tried of a long stretch. Taking readings out makes only that stretch's tables
// anew, and an evidence is a sum over nodes. For N readings O(N n) likelihoods and, for each mishap found,
// O(N n) additions: a record of 100, all of them contradicting each other, takes some milliseconds.
#pragma once

#include <functional>
#include <vector>

#include <pelage/model/learning.hpp>

namespace pelage {

/// A reading and the cut it is counted from.
struct cut_reading {
    std::size_t cut = 0;
    reading read;
};

/// Readings found wrong together, in the order found.
struct found_mishap {
    std::vector<std::size_t> which;  ///< indices into the readings given
    double log_rate = 0.0;           ///< mean of ln R from all that are left then
};

/// What to leave out of `counted`, the likeliest first. `same_place(i, j)`: whether readings i and j have
/// a place in common.
[[nodiscard]] std::vector<found_mishap> mishaps_in(
    const std::vector<cut_reading>& counted, const learning_law& law, const growth_rules& g,
    const std::function<bool(std::size_t, std::size_t)>& same_place);

}  // namespace pelage
