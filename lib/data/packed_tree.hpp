// Private to lib: the embedded reference as trees already parsed, made when the library is built.
// Parsing is most of the work of a short command, and the embedded texts never change.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "data/toml.hpp"

namespace pelage::io {

/// The tree as text that unpacked() reads back to an equal tree.
[[nodiscard]] std::string packed(const node& n);

/// The tree of a packed text; only texts that packed() made.
[[nodiscard]] node unpacked(std::string_view text);

/// An embedded file's tree, packed, by its path.
struct packed_file {
    std::string_view path;
    std::string_view tree;
};
[[nodiscard]] const std::vector<packed_file>& packed_reference();

}  // namespace pelage::io
