// Private to lib: one line of a record, from its bytes.
#pragma once

#include <optional>
#include <string_view>

#include <pelage/trade/log_entry.hpp>

#include "data/read/parts.hpp"

namespace pelage::io {

/// The entry in a line without its end, of the dog `dog`; nothing, and why in the page's faults, where it
/// can't be counted. Places that nobody knows are faults, too, and left out of the entry, which counts.
[[nodiscard]] std::optional<log_entry> entry_in(std::string_view line, unsigned number,
                                                std::string_view dog, page& p);

/// add_record_beside for many dogs.
diagnostics add_record_beside(dog& d, const reference_data& c, place_finder& places);

/// Whether that line is as it was written.
[[nodiscard]] bool sum_agrees(std::string_view line);

}  // namespace pelage::io
