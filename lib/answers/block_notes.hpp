// Private to lib: what is said below a step of a plan: strokes, how the skin is held, single places.
#pragma once

#include <vector>

#include "answers/plan_steps.hpp"

namespace pelage::io {

/// A plan and how it is told; refers to what it is made of.
struct told_plan {
    const groom& plan;
    const plan_request& request;
    const print_options& print;
    const beside& near;
};

/// The notes below one block: those of a groomer, of a trainee or of --explain, as `print` has it. `first_comb`:
/// no comb was seated before it.
[[nodiscard]] std::vector<step_note> notes_below(const block& b, bool first_comb,
                                                 const told_plan& of);

}  // namespace pelage::io
