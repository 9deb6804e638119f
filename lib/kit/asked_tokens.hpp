// Private to lib: the words of a question, and the blade, comb or length that begins at one of them.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/kit/lookup.hpp>

namespace pelage::asking {

/// One word: as typed without marks at its ends, and in small letters.
struct token {
    std::string raw;
    std::string low;
};

[[nodiscard]] std::vector<token> tokens_of(std::string_view text);

/// The words from `from` to before `to`, in small letters, with blanks.
[[nodiscard]] std::string words_of(const std::vector<token>& all, std::size_t from, std::size_t to);

/// A blade, comb or length as read_question() takes it, and the word after it.
struct tool_phrase {
    std::string text;
    std::size_t next = 0;
};

/// The tool that begins at that word: "number 7", "7 fc", "half an inch", "13 mm comb over 10", "comb C".
/// Throws error where a comb is called by a mark that no comb of the kit bears, or several do.
[[nodiscard]] std::optional<tool_phrase> tool_at(const std::vector<token>& all, std::size_t at,
                                                 const lookup_request& r);

}  // namespace pelage::asking
