// The problem in the file formats of general solvers.
#pragma once

#include <iosfwd>

#include "judges/integer_programme.hpp"

namespace judges {

/// Columns are called C0, C1, ..., rows R0, R1, ...: MPS in fixed columns, which a reader of free MPS
/// takes as well.
void write_mps(const integer_programme& ip, std::ostream& out);

/// As a weighted network of variables (wcsp). First one per zone, whose values are its allowed setups in
/// their order; then one per tool with a price, 1 if it is held; with a budget, one per zone that may
/// need combing out, the minutes needed in it and the zones before it.
void write_wcsp(const pelage::problem& p, std::ostream& out);

}  // namespace judges
