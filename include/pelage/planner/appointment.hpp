// The whole appointment, from look to handing back: what plans, calendars and diaries count alike.
#pragma once

#include <vector>

#include <pelage/planner/plan.hpp>
#include <pelage/trade/service.hpp>

namespace pelage {

/// A step of an appointment and how long it takes this dog.
struct appointment_step {
    service_step what = service_step::look;  ///< which step
    work takes{};                            ///< on this dog
};

/// The appointment.
struct appointment {
    std::vector<appointment_step> steps;  ///< in their order; none that takes no time
    /// The sheet's own minutes for a dog of that size, look to handing back, in place of the steps' sum;
    /// of a full groom alone.
    std::optional<work> by_sheet;
    work beyond{};  ///< what mats and hurt skin of today add to the sheet's own minutes
    [[nodiscard]] work total() const;  ///< all steps together
};

/// The appointment of a planned groom. Where the skin allows no bath (bath_for) the coat is brushed through
/// in its place, and no undercoat is washed out. `beyond` counts combing out; what felt costs the clipper isn't
/// told apart from clipping, so a sheet's own minutes leave it out.
[[nodiscard]] appointment appointment_of(const plan_request& r, const groom& g,
                                         const service& booked);

/// Minutes of a service's steps but the plan's own, for a dog of that size and coat with sound skin.
[[nodiscard]] work minutes_beside_plan(const service& booked, dog_size size, coat_class coat,
                                       const price_rules& p);

}  // namespace pelage
