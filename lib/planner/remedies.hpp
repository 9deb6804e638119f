// Private to lib: what could be otherwise so that something may be done in a stuck place.
#pragma once

#include <optional>
#include <vector>

#include "planner/alternatives_parts.hpp"

namespace pelage::ways {

/// One thing that could be otherwise, and the tool it adds to the kit if it does.
struct remedy {
    remedy_step says;
    std::optional<kit_blade> add_blade{};
    std::optional<kit_comb> add_comb{};

    [[nodiscard]] bool adds_tool() const { return add_blade || add_comb; }
};

/// What may help in `z`, but for missing tools and free hair to be measured: whether any does is for a plan
/// to say.
[[nodiscard]] std::vector<remedy> remedies_for(const plan_request& r, const zone_plan& z);

/// The free hair with which each blade at hand would go beneath the mat of `z`, the usual safe blade or
/// longer first, each up to the next 0.1 mm; nothing where it needs no measuring.
[[nodiscard]] std::vector<remedy> hair_enough(const plan_request& r, const ready_kit& ready,
                                              const zone_plan& z);

/// Blades and combs of the reference or the kit that aren't at hand, the usual before the rare: those of
/// `customary` first, then those that sheets name, standard before wide and toe blades, full teeth before
/// skip, long before short; combs by length.
[[nodiscard]] std::vector<remedy> missing_tools(const plan_request& r,
                                                const std::vector<std::string>& customary);

/// Changes `to`, made of `r`, as the remedy says.
void apply(const remedy& one, const plan_request& r, const place& at, changed_request& to);

}  // namespace pelage::ways
