// Private to lib: what a plan decided, in words: why a place comes out as it does, why a setup may not be
// used there, what was taken as given.
#pragma once

#include <string>
#include <vector>

#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// Why a place comes out as it does; empty where it is as wished.
[[nodiscard]] std::string cause_words(const plan_request& r, const zone_plan& z, length_unit u);

/// What is done in a block besides moving the tool: ", then scissor"; mostly nothing.
[[nodiscard]] std::string then_words(const block& b, const plan_request& r);

/// What is said of hair that is left for its length: places of which it is alike are told together.
struct hair_told {
    std::string now;     ///< today's hair as it is shown
    bool wished;         ///< another length is wanted
    bool waits = false;  ///< and how long it takes to grow to it is known
    bool never = false;  ///< or that it may never get there
    [[nodiscard]] bool operator==(const hair_told&) const = default;
};
[[nodiscard]] hair_told hair_told_of(const zone_plan& z, length_unit u);

/// "35 mm (42 to 51 mm wanted, near enough in 10 to 44 days)": today's hair, and the wishes it has still to grow
/// to, from the first place that gets there to the last. `all`: alike by hair_told_of, at least one.
[[nodiscard]] std::string hair_in_brief(const std::vector<const zone_plan*>& all, length_unit u);
/// How far a place comes out from what was asked; for cause::missed.
[[nodiscard]] std::string missed_in_brief(const zone_plan& z, length_unit u);

/// The setup as it was refused: "blade 7, with the lay, the mat combed out".
[[nodiscard]] std::string refused_title(const refused_setup& s, length_unit u);

/// Why it was refused in `z`.
[[nodiscard]] std::string bar_words(const refused_setup& s, const zone_plan& z, length_unit u);

/// What was taken as given.
[[nodiscard]] std::string note_words(const plan_note& n, const plan_request& r, length_unit u);

/// The question whether a pair is cut alike.
[[nodiscard]] std::string ask_words(const uneven_pair& p, const body& b, const coat& c,
                                    length_unit u);

}  // namespace pelage::io
