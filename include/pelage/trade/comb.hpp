// Snap-on combs. A comb is known by its length; a bare comb number is a name in somebody's set.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>

namespace pelage {

/// One snap-on comb.
struct comb {
    std::string id;         ///< "13 mm"
    figure<length> stated;  ///< its length over the blade it is stated over (mm, > 0)
    std::string in_inch;    ///< the trade's fraction, may be empty
};

/// The barber convention, used only where a person names it: guard n is n/8 inch, so 2 is 6.35 mm.
/// `n` from 1 to 16; common practice, no source.
[[nodiscard]] constexpr length barber_guard(int n) {
    return inch(n, 8);
}

}  // namespace pelage
