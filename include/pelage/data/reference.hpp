// The embedded reference and the embedded, invented demo salon, read once on first use.
#pragma once

#include <string_view>

#include <pelage/data/read.hpp>
#include <pelage/model/reference_data.hpp>

namespace pelage::io {

/// The reference embedded in the library. A fault in it is our own: throws error(internal).
[[nodiscard]] const reference_data& reference();

/// The invented salon embedded in the library, with its sheets and dogs.
[[nodiscard]] const salon_files& demo_salon();

/// A whole reference read from texts (path as in the tree, "reference/blades.toml"), for tests and
/// for the check of the data. Throws bad_input with every fault.
[[nodiscard]] reference_data read_reference(const std::vector<document_text>& files);

}  // namespace pelage::io
