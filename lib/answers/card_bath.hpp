// Private to lib: what stands on a card between its two lists.
#pragma once

#include <string>

#include <pelage/answers/write.hpp>

#include "answers/card_cautions.hpp"

namespace pelage::io {

/// What stands between the lists.
struct between_visits {
    std::string ends_here;  ///< why the day ends before the second list; empty: it doesn't
    std::string text;  ///< the bath, or what is done in its place; empty where nothing stands there
};

/// The cautions it tells are told.
[[nodiscard]] between_visits between_lists(const groom& g, const plan_request& r,
                                           card_cautions& cautions);

}  // namespace pelage::io
