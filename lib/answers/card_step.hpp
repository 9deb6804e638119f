// Private to lib: a step of a plan as a line of a card.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/write.hpp>

#include "answers/words/places.hpp"

namespace pelage::io {

/// What is held and how it goes, what it leaves, where: "comb 16 mm over 30, with the lay, leaves 18 mm: body (not
/// skirt), tail base".
struct card_step {
    std::string hold{};
    std::string leaves{};  ///< empty: what the tool is called by, or said of each place
    std::vector<std::string>
        where{};              ///< by parts; a hand tool's behind what it is aimed at: "25 mm skirt"
    std::string all_of_it{};  ///< what is said of all its places
    std::vector<std::string>
        exceptions{};  ///< what is said of some, "hocks: 1.5 mm longer than asked"

    [[nodiscard]] std::string in_a_line() const;
};

/// A block of a plan. `last` is the one before it in the same list, or null: what stays in the hand isn't
/// named twice. `said` is the way that the steps before it went, which holds until another is said.
[[nodiscard]] card_step card_step_of(const block& b, const block* last,
                                     std::optional<direction> said, const groom& g,
                                     const plan_request& r, length_unit u);

/// Whether a block goes, after the bath, over what came off before it and over nothing else.
[[nodiscard]] bool once_more(const block& b, const groom& g);
/// Whether a mat is combed out beside a lump.
[[nodiscard]] bool combs_by_a_lump(const groom& g);
/// Whether a place of that part is among its places.
[[nodiscard]] bool goes_over(const block& b, group part, const groom& g, const plan_request& r);

}  // namespace pelage::io
