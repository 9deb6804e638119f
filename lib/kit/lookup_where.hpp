// Private to lib: where a setup may be used, on a dog with no findings.
#pragma once

#include <optional>
#include <vector>

#include <pelage/kit/lookup.hpp>

namespace pelage {

/// Why a setup may not be used in the zones asked about: the first reason there is. Without zones: on the
/// firm, flat parts of the coat.
[[nodiscard]] std::optional<no_go> refused_there(const lookup_request& r, const setup& s);

/// What of the request's kit, and of every blade there is, leaves `wanted` of the coat within the tolerance
/// of a plan in place of `self`: the fittest first.
[[nodiscard]] std::vector<near_setup> replacements(const lookup_request& r, const setup& self,
                                                   const length& wanted, coat_class c,
                                                   direction way);

}  // namespace pelage
