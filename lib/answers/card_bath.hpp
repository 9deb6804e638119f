// Private to lib: what stands on a card between its two lists.
#pragma once

#include <string>

#include <pelage/answers/write.hpp>

#include "answers/card_cautions.hpp"

namespace pelage::io {

/// The bath, or why the lists stop before it; empty where nothing stands between them. The cautions it tells are
/// told.
[[nodiscard]] std::string between_lists(const groom& g, const plan_request& r,
                                        card_cautions& cautions);

}  // namespace pelage::io
