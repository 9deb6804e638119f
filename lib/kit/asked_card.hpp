// Private to lib: words as a card says them, asked about.
#pragma once

#include <optional>
#include <vector>

#include <pelage/kit/asked.hpp>

#include "kit/asked_pieces.hpp"

namespace pelage::asking {

/// "over the top only", "feet: over the top only": the cautions whose short form has these words in a row. None of a
/// single word, nor of what is a thing by itself; of two words only where one of them is no other thing.
[[nodiscard]] std::optional<card_asked> about_a_card(const std::vector<piece>& all,
                                                     const std::vector<token>& words,
                                                     const lookup_request& r);

/// "leaves 1.5 to 2.1 mm", "by Wed 20 Jan": how words with figures are read; none where they are no card's.
[[nodiscard]] std::optional<card_asked> about_figures(const vocabulary& known,
                                                      const lookup_request& r);

/// "body (not skirt)": the places before the bracket without those in it. None where it isn't written so.
[[nodiscard]] std::optional<place_asked> places_but(const vocabulary& known,
                                                    const lookup_request& r);

}  // namespace pelage::asking
