// Problems as a text of whole numbers, to be kept and looked at again.
//
//   pelage problem
//   zones tools seams budget
//   zone by zone: how many setups are allowed, and as often "setup cost length tools minutes", tools in
//                 base 16
//   the tools' prices
//   seam by seam: "a b per_hundredth allowance"
#pragma once

#include <iosfwd>
#include <optional>

#include <pelage/solver/setup_problem.hpp>

namespace judges {

void write_problem(const pelage::problem& p, std::ostream& out);

/// The next problem of the stream; nothing at its end. Throws std::runtime_error on anything else.
[[nodiscard]] std::optional<pelage::problem> read_problem(std::istream& in);

}  // namespace judges
