// Private to lib: where a dog that bites or wears a muzzle isn't touched until all else is done.
#pragma once

#include <pelage/trade/zone.hpp>

namespace pelage {

/// What a basket muzzle covers, and the eyebrows beside it: no point comes near the eye of a dog that may turn.
/// Common practice, no source.
[[nodiscard]] inline bool at_the_teeth(const zone& z) {
    return z.has(zone_use::clean_face) || z.id == "eyebrow";
}

}  // namespace pelage
