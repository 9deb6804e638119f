// Private to lib: the blades and combs of a kit.
#pragma once

#include <pelage/base/money.hpp>

#include "data/read/parts.hpp"

namespace pelage::io {

/// A blade: one of the reference, or the salon's own; with what it measures and whether it is out.
[[nodiscard]] kit_blade get_blade(record& r, page& p);

/// A comb, by the length or the fraction on it; nothing where it has none.
[[nodiscard]] std::optional<kit_comb> get_comb(record& r, page& p);

/// What one costs; none where the file doesn't say.
std::optional<money> get_price(record& r);

/// A set of combs: each once, into the kit.
void get_set(record& r, page& p, kit& k);

/// What a comb's own entry says of one that is in a set; whether it is in one.
[[nodiscard]] bool say_of_set(kit& k, const kit_comb& c, bool count_said);

}  // namespace pelage::io
