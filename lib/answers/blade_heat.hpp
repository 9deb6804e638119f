// Private to lib: how long each blade runs, and what to do about its heat.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// A blade that runs without rest through one or more blocks of a list.
struct hot_run {
    std::string blade;  ///< id
    list when = list::after_bath;
    work runs{};               ///< in all
    std::vector<work> oil_at;  ///< running minutes at which it is felt and oiled
    int in_kit = 1;            ///< how many of that size there are
};

/// Every run in working order.
[[nodiscard]] std::vector<hot_run> hot_runs(const groom& g, const plan_request& r);

/// A line for each blade; none where no blade runs long enough to be oiled.
[[nodiscard]] std::vector<line> heat(const groom& g, const plan_request& r);

/// What is said of a run of this kit: swap for the second, or what a second would save.
[[nodiscard]] std::string swap_in_words(const hot_run& h);

}  // namespace pelage::io
