// Private to lib: what is told of the words of a question that nobody knows.
#pragma once

#include <vector>

#include <pelage/kit/asked.hpp>

#include "kit/asked_pieces.hpp"

namespace pelage::asking {

/// Something of a question isn't known: a tool told as such, a breed misspelt, or the words with what is near to
/// each, and the rest as it was taken. `words`: all of the question. Throws as read_question().
[[nodiscard]] asked about_strangers(const std::vector<piece>& all, const std::vector<token>& words,
                                    const vocabulary& known, const lookup_request& r);

/// Whether it asks to take off the jacket of a double coat, whatever else it says.
[[nodiscard]] bool clips_double(const std::vector<piece>& all, const lookup_request& r);

/// Whether a double coat is said, or a breed that most likely has one.
[[nodiscard]] bool double_coat_said(const std::vector<piece>& all, const lookup_request& r);

}  // namespace pelage::asking
