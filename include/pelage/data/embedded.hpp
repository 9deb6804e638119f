// The reference data as it stood when the library was built.
#pragma once

#include <string_view>
#include <vector>

namespace pelage::io {

/// One file of the folder reference/: its path with that folder, such as "reference/blades.toml", so
/// that a message can name it, and its whole text, byte for byte.
struct embedded_file {
    std::string_view path;  ///< "reference/coats.toml"
    std::string_view text;  ///< to the byte
};

/// Every *.toml under reference/, the styles and the demo salon included, sorted by path. The text
/// lives as long as the program.
[[nodiscard]] const std::vector<embedded_file>& embedded_reference();

}  // namespace pelage::io
