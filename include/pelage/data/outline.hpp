// The outline of a dog that is embedded in the library.
#pragma once

#include <pelage/data/read.hpp>
#include <pelage/trade/outline.hpp>

namespace pelage::io {

/// The embedded outline, read on first use. A fault in it is our own: throws error(internal).
[[nodiscard]] const outline& dog_outline();

/// An outline, its zones and breeds those of `c`. Throws bad_input with every fault: names that lead
/// nowhere, rings that no line closes, places that are drawn in no view or in two.
[[nodiscard]] outline read_outline(const document_text& d, const reference_data& c);

}  // namespace pelage::io
