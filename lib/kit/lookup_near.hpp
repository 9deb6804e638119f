// Private to lib: what comes nearest to a length, and what does the same as a tool.
#pragma once

#include <optional>
#include <vector>

#include <pelage/kit/lookup.hpp>

namespace pelage {

/// The angle of the lay taken of a coat (degrees).
[[nodiscard]] double lay_asked(const lookup_request& r, coat_class c);

/// Where the hair of a coat stops: in the places asked about, or wherever it grows longest.
[[nodiscard]] length stops_at(const lookup_request& r, coat_class c);

[[nodiscard]] near_setup near_to(const lookup_request& r, const setup& s, const length& wanted,
                                 coat_class c, bool at_hand);

/// Setups of the kit whose finished length comes nearest to `wanted`, first those that may go there; `way`
/// limits the direction, `only` the kind.
[[nodiscard]] std::vector<near_setup> nearest_to(const lookup_request& r, const length& wanted,
                                                 coat_class c, const std::optional<direction>& way,
                                                 asked_kind only = asked_kind::any);

/// The blade that would come nearer than all of `best` if it weren't out for sharpening.
[[nodiscard]] std::optional<near_setup> nearer_but_out(const lookup_request& r,
                                                       const length& wanted, coat_class c,
                                                       const std::vector<near_setup>& best);

/// Of the kit what leaves next more than `wanted` and may go there.
[[nodiscard]] std::optional<near_setup> next_longer(const lookup_request& r, const setup& self,
                                                    const length& wanted, coat_class c,
                                                    direction way);

/// What else gives `wanted` within the tolerance a plan would accept: from the kit, and only where
/// nothing in it does from every blade there is. What may not go there is left out, or where `self` may
/// not either what is shorter.
[[nodiscard]] std::vector<near_setup> others(const lookup_request& r, const setup& self,
                                             const length& wanted, coat_class c, direction way);

}  // namespace pelage
