// Private to lib: the rows of a ladder: what is held, and what it leaves either way.
#pragma once

#include <string>
#include <vector>

#include <pelage/kit/lookup.hpp>

namespace pelage::io {

/// Something held, once: with the lay, or the one direction that was asked about, and against it beside.
struct ladder_row {
    std::string what;               ///< "blade 7F", "comb 13 mm"
    const rung* one = nullptr;      ///< not null; borrows the ladder
    const rung* against = nullptr;  ///< null where one direction was asked about
};
[[nodiscard]] std::vector<ladder_row> ladder_rows_of(const ladder& l, const lookup_request& r,
                                                     length_unit u);

/// The one blade under all combs of the ladder; empty if they are several.
[[nodiscard]] std::string one_beneath(const ladder& l);

/// Whether one length is told of each thing: one direction was asked about, or it makes no difference.
[[nodiscard]] bool asks_one_way(const lookup_request& r, const ladder& l);

/// "The sheets ask on this coat: 6.4, 13 and 51 mm; nothing here leaves 51 mm." Empty where none ask.
[[nodiscard]] std::string targets_words(const ladder& l, length_unit u);

}  // namespace pelage::io
