// Private to lib: where a setup may be used, on a dog with no findings.
#pragma once

#include <string>

#include <pelage/lookup.hpp>

namespace pelage {

/// Why a setup may not be used in the zone asked about, or without one on the firm, flat parts of the
/// coat; empty if it may.
[[nodiscard]] std::string refused_there(const lookup_request& r, const setup& s);

}  // namespace pelage
