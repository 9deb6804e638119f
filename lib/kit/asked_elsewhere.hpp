// Private to lib: questions that another answer has: prices, minutes, when a dog is back, what ails it.
#pragma once

#include <optional>
#include <vector>

#include <pelage/kit/asked.hpp>

#include "kit/asked_pieces.hpp"

namespace pelage::asking {

/// What is asked back of a question that the look-up doesn't answer, or answers in part: one that is denied, two
/// in one, what it costs or how long it takes, when a dog is back, a blade for no part. None of any other.
[[nodiscard]] std::optional<asked_back> asked_elsewhere(const std::vector<piece>& all,
                                                        const std::vector<token>& words,
                                                        const lookup_request& r);

/// "old dog heart murmur", "bitch in heat": where what isn't a word of the trade tells of a dog's health, and
/// of nothing else.
[[nodiscard]] std::optional<health_asked> about_health(const std::vector<piece>& all,
                                                       const std::vector<token>& words,
                                                       const vocabulary& vocab,
                                                       const lookup_request& r);

/// "matted to the skin": it is a pelt, and nothing passes beneath; these words with the mat.
void felted_to_the_skin(std::vector<piece>& all, const glossary& g);

}  // namespace pelage::asking
