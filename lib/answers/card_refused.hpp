// Private to lib: the card of a groom that its owner is asked about first.
#pragma once

#include <pelage/answers/write.hpp>

namespace pelage::io {

/// A double coat that was to be clipped: what of it, how the owner agrees, and which sheet is planned in its place.
[[nodiscard]] document refused_card(const groom& g, const plan_request& r,
                                    const mixed_coat* unseen);

}  // namespace pelage::io
