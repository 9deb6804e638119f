// What of a salon's file only some questions need: what things cost, and which figures are its own.
#pragma once

#include <vector>

#include <pelage/data/read.hpp>
#include <pelage/kit/buy.hpp>

namespace pelage::io {

/// The prices under [[kit.blade]] and [[kit.comb]] of a salon file, laid on the wares of the same id; what has
/// none keeps none. Throws bad_input with the file's faults.
void add_prices(std::vector<ware>& wares, const document_text& d, const reference_data& c);

/// The figures under [override] of a salon file by the keys that the reference has for them. Throws
/// bad_input with the file's faults.
[[nodiscard]] std::vector<listed_figure> own_figures(const document_text& d,
                                                     const reference_data& c);

}  // namespace pelage::io
