// Private to lib: the figures a plan stands on, in words, each with its basis.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// One figure that weighed in the plan.
struct stands_on {
    std::string id;    ///< "tolerance"
    std::string text;  ///< what it is and how much
    evidence why;
};

/// What stands behind the date, the tolerances, the weights of misses and what goes under mats: those that
/// this plan needed.
[[nodiscard]] std::vector<stands_on> what_it_stands_on(const groom& g,
                                                       const std::optional<return_date>& when,
                                                       const plan_request& r,
                                                       const print_options& o);

}  // namespace pelage::io
