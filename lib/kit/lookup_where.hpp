// Private to lib: where a setup may be used, on a dog with no findings.
#pragma once

#include <optional>

#include <pelage/kit/lookup.hpp>

namespace pelage {

/// Why a setup may not be used in the zones asked about: the first reason there is. Without zones: on the
/// firm, flat parts of the coat.
[[nodiscard]] std::optional<no_go> refused_there(const lookup_request& r, const setup& s);

}  // namespace pelage
