// What --length may say that is no length: each is asked back.
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "resolve_arguments.hpp"
#include "words_said.hpp"

namespace pelage::cli {

/// What asks for no length at all: the last groom's, what comes off, "short", a word of a style, a service.
/// `words`: those of `text`.
[[nodiscard]] bool asks_no_length(const std::string& text, const strings& words,
                                  const reference_data& c, const part_index& parts, faults& f);

/// "keep tail long": whether it stays, or how long it is left. `words`, `whom` as of asks_for_scissors().
[[nodiscard]] bool asks_how_long(const std::string& text, const strings& words, const strings& whom,
                                 faults& f);

/// What is told in brackets of a word that says nothing beside a length: a style, places without an "and";
/// may be empty.
[[nodiscard]] std::string what_of(const std::string& stray, const part_index& parts);

/// Places of which nothing is said, where no sheet is named: asked back. `missing`: their titles, `text`: all
/// wishes, `first`: what is said before any length.
void ask_for_the_rest(const std::string& text, const std::vector<std::string>& missing,
                      const std::string& first, faults& f);

/// "10mm body legs 3/4": the two halves where the comma is missing, if two lengths stand there.
[[nodiscard]] std::optional<std::pair<std::string, std::string>> two_wishes(
    const strings& words, const part_index& parts);

/// "scissor legs": how long is asked back. `words`: those that name no place; `whom`: those that do.
[[nodiscard]] bool asks_for_scissors(const std::string& text, const strings& words,
                                     const strings& whom, faults& f);

/// "legs longer": by how much.
void ask_by_how_much(const std::string& text, const std::string& whom, const part_index& parts,
                     faults& f);

}  // namespace pelage::cli
