// Private to lib: the parts of a style sheet that are read on their own.
#pragma once

#include "data/read/readers.hpp"

namespace pelage::io {

/// A share written as a number ("0.8") or in words ("20 % shorter"); nothing if the key isn't there.
[[nodiscard]] std::optional<double> get_scale(record& r, std::string_view key);

/// The tables [season.NAME], laid over `inherited`: one of the same name takes its place.
[[nodiscard]] std::vector<season> get_seasons(record& r, page& p, std::vector<season> inherited);

/// The tables [[limit]]; places that mean the same are told.
[[nodiscard]] std::vector<limit> get_limits(record& r, page& p);

/// Complains of lengths and blades outside the sheet's limits, in its seasons too, where they or the
/// limit stand in this file; `here` is where what the file does to all of its parent is written.
void check_limits(const style& s, const spot& here, page& p);

/// "at most 25 mm", "15 to 18 mm".
[[nodiscard]] std::string span_of(const limit& l);

/// A way to brush; complains of anything else.
[[nodiscard]] std::string get_upkeep_words(record& r, std::string_view key);

}  // namespace pelage::io
