// Problems as pelage itself writes them: random dogs, sheets and drawers, compiled.
//
// Dogs and drawers are made up. Zones, coats, sheets, blades, combs, rules and minutes are the
// reference's.
#pragma once

#include <vector>

#include <pelage/planner/plan.hpp>

#include "generate/dice.hpp"

namespace generate {

/// What lies on the table: all that a plan is made from but the reference.
struct table {
    pelage::dog patient;
    pelage::style sheet;
    pelage::kit tools;
    bool both_ways = false;

    /// The request, with the reference and its own rules; borrows from this table.
    [[nodiscard]] pelage::plan_request request() const;
};

/// How large the problems come out.
struct table_size {
    int drawer = 70;     ///< of 100 blades and combs of the reference, how many lie in the drawer
    int one_sided = 2;   ///< at most so many wishes for one side only; each splits a zone in two
    int left_open = 15;  ///< of 100 rules of the sheet, how many leave the direction open
};

/// A dog that may be worked on, its sheet and a drawer.
[[nodiscard]] table any_table(dice& d, const table_size& size = {});

/// The next problem: tables are laid until one compiles to a plan's worth of work (no stop for
/// felted hair, no more than 64 tools).
[[nodiscard]] pelage::problem any_real_problem(dice& d, const table_size& size = {});

/// `n` of them.
[[nodiscard]] std::vector<pelage::problem> real_problems(int n, std::uint64_t seed,
                                                         const table_size& size = {});

}  // namespace generate
