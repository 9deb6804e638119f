// The whole ways of doing a dog between which its owner chooses where the wish can't be had.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/base/length_text.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// One of them: its whole plan, and what it is: "only the mats clipped off".
struct chosen_way {
    groom plan;        ///< the whole of it
    std::string what;  ///< in a few words, as the card lists it
};

/// In the order in which the card counts them, the plan `g` itself first; empty where there is nothing to
/// choose. `b` is what stands beside `g` for the same `r`, `when` its date; lengths in words are told in `u`.
/// Each is a plan of its own with its cautions and what is
/// to be agreed to, as make_plan gives it.
[[nodiscard]] std::vector<chosen_way> ways_to_choose(const groom& g, const beside& b,
                                                     const std::optional<return_date>& when,
                                                     const plan_request& r, length_unit u);

}  // namespace pelage::io
