// The options of `pelage plan`, for the files of its modes.
#pragma once

#include <optional>
#include <string>

#include "command.hpp"

namespace pelage::cli {

struct plan_options : common_options {
    explicit plan_options(CLI::App& a);
    dog_options dog{app};
    text_option service{app, "--service", "SERVICE",
                        "what it is booked for: tidy, bath, nails, ...", heading::dog};
    text_option reader{app, "--for", "WHOM",
                       "owner, or its parts consent and home; trainee: the why"};
    text_option groomer{app, "--groomer", "NAME", "who grooms, on the owner's page"};
    text_option back_in{app, "--back-in", "WAIT", "the longest coat that waits so long: 6w, 42d"};
    text_option way{app, "--way", "N", "of the ways to choose of on the card, the N-th"};
    flag_option any_sheet{app, "--any-sheet", "which of the sheets the dog can carry, ranked"};
    flag_option full{app, "--full", "all of it, not the card: strokes, holds, other ways"};
    flag_option zones{app, "--zones", "with the table of zones"};
    flag_option ask{app, "--ask", "an intake, a key an answer; of a DOG, what is new"};
    text_option roster{app, "--roster", "FILE", "every dog of a file of JSON Lines"};
    text_option from{app, "--from", "LINE", "of the roster: goes on at that line, from 1"};
    text_option jobs{app, "--jobs", "N", "how many to plan at once; all cores if not said"};
};

/// plan --any-sheet: which of the salon's sheets a dog can carry.
[[nodiscard]] reply any_sheet(const plan_options& o, const surroundings& around);
/// plan --roster: every dog of a file, a line each.
[[nodiscard]] reply roster(const plan_options& o, const surroundings& around);
/// plan --ask: asks for a dog, writes its file and gives the dog to plan; nothing where the talk was broken
/// off, which is said.
[[nodiscard]] std::optional<std::string> ask_for_dog(const plan_options& o,
                                                     const surroundings& around);

}  // namespace pelage::cli
