// Private to lib: where a setup may be used, on a dog with no findings.
#pragma once

#include <string>
#include <vector>

#include <pelage/lookup.hpp>

namespace pelage {

/// Where and why a setup may not be used.
struct no_go {
    std::vector<place> where;  ///< of the zones asked about, those of which it is true
    std::string why;           ///< empty: it may be used
};

/// Why a setup may not be used in the zones asked about: the first reason there is. Without zones: on the
/// firm, flat parts of the coat.
[[nodiscard]] no_go refusal_there(const lookup_request& r, const setup& s);

/// The same in words, with the zones where it isn't true of all that are asked about.
[[nodiscard]] std::string refused_there(const lookup_request& r, const setup& s);

}  // namespace pelage
