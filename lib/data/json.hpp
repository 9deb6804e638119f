// Private to lib: one line of JSON as the tree that the readers of TOML take, so that every rule and
// message is the same; the parser itself is seen by data/json.cpp alone.
#pragma once

#include <optional>
#include <string_view>

#include "data/toml.hpp"

namespace pelage::io {

/// The JSON object in `text`, line `line` of a file, as a tree. Positions are those of keys and of
/// values, columns in characters. Nothing after a fault of syntax, which is added to `out`: no JSON,
/// more than 16 levels, more than 10,000 values, anything but one object. A key that stands twice is
/// a fault, too; its first value counts.
[[nodiscard]] std::optional<node> parse_json(std::string_view text, unsigned line, faults& out);

}  // namespace pelage::io
