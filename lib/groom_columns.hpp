// Private to lib: every setup that the kit allows today.
#pragma once

#include <optional>
#include <vector>

#include <pelage/cut.hpp>
#include <pelage/date.hpp>
#include <pelage/kit.hpp>
#include <pelage/setup.hpp>

namespace pelage {

/// The blade as the kit has it: what a test patch measured wins over what is etched.
[[nodiscard]] blade as_measured(const kit_blade& b);
/// The comb as the kit has it.
[[nodiscard]] comb as_measured(const kit_comb& c);

/// Every setup of the kit on `today`, in a fixed order: bare blades and combs by length, with the
/// lay before against it, full teeth before skip; then scissors, thinning scissors, carding tool,
/// hand-stripping, leave. Adjustable blades are not planned with: their length hangs on the lever.
[[nodiscard]] std::vector<setup> setups_of(const kit& k, const std::optional<date>& today,
                                           const cut_rules& c);

}  // namespace pelage
