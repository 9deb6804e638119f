// Private to lib: the steps of a plan in words, before they stand on a page: what is held, how it goes, what
// it leaves, where, and what more is said of it. Plans for groomers and trainees are made of them.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/write.hpp>
#include <pelage/planner/alternatives.hpp>

#include "answers/words/places.hpp"

namespace pelage::io {

/// What a note below a step is about.
enum class note_about { comb_seat, stroke, skin, heat, reason, places };

/// A line below a step.
struct step_note {
    note_about what = note_about::places;
    std::string lead{};  ///< "skin: "
    std::string text{};
};

/// A step of a plan. One without a tool is said in `does` alone.
struct plan_step {
    int number = 0;  ///< from 1, through both lists
    list when = list::after_bath;
    const block* of = nullptr;  ///< what is done with a tool over the coat; null: anything else
    zone_list combs{};          ///< where mats are combed out; indices into groom::zones
    std::string does{};         ///< "comb 13 mm over blade 30, with the lay, then scissor"
    std::string leaves{};       ///< "16 mm (15 to 17)", where all its places are left alike
    std::string where{};        ///< "neck, back"; a hand tool's with what it is aimed at
    std::vector<step_note> notes{};

    /// "blade 7F, with the lay, leaves 3.2 mm: neck, back".
    [[nodiscard]] std::string in_a_line() const;
};

/// Whether the basket is off for it: all else, blends too, is done before.
[[nodiscard]] bool basket_off(const plan_step& s, const groom& g, const plan_request& r);

/// Every step in working order. Notes are those of a groomer, of a trainee or of --explain, as `o` has it.
/// What is borrowed must live as long as the steps.
[[nodiscard]] std::vector<plan_step> steps_of(const groom& g, const plan_request& r,
                                              const print_options& o, const beside& b);

}  // namespace pelage::io
