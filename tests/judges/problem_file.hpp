// Problems as a text of whole numbers, to be kept and looked at again.
//
//   pelage problem
//   zones setups tools seams budget       budget -1: no setup needs any combing out
//   zone by zone: setups times "cost length tools"; cost - where forbidden, tools in base 16;
//                 with a budget "cost length tools minutes"
//   the tools' prices
//   seam by seam: "a b per_hundredth allowance"
#pragma once

#include <iosfwd>
#include <optional>

#include <pelage/plan.hpp>

namespace judges {

void write_problem(const pelage::problem& p, std::ostream& out);

/// The next problem of the stream; nothing at its end. Throws std::runtime_error on anything else.
[[nodiscard]] std::optional<pelage::problem> read_problem(std::istream& in);

}  // namespace judges
