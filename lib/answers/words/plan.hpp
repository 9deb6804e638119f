// Private to lib: what a plan decided, in words: why a place comes out as it does, why a setup may not be
// used there, what was taken as given.
#pragma once

#include <string>

#include <pelage/planner/plan.hpp>

namespace pelage::io {

/// Why a place comes out as it does; empty where it is as wished.
[[nodiscard]] std::string cause_words(const plan_request& r, const zone_plan& z, length_unit u);

/// What is done in a block besides moving the tool: ", then scissor"; mostly nothing.
[[nodiscard]] std::string then_words(const block& b, const plan_request& r);

/// "35 mm (42 mm wanted, in 10 to 20 days)": today's hair, and the wish it has still to grow to.
[[nodiscard]] std::string hair_in_brief(const zone_plan& z, length_unit u);
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
