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
    /// All steps together, minutes.
    [[nodiscard]] work by_steps() const;
    /// What is booked, minutes: the sheet's own with what is beyond them, where it has some, or all steps.
    [[nodiscard]] work total() const;
};

/// A step as it is booked, and as it is done today.
struct step_today {
    service_step booked = service_step::look;  ///< what was booked
    service_step done = service_step::look;    ///< the same, or what is done in its place
};
/// The steps of a service as the dog's skin lets them be done: where it allows no bath (bath_for) the coat is
/// brushed through in its place, and the undercoat isn't washed out.
[[nodiscard]] std::vector<step_today> steps_today(const plan_request& r, const service& booked);

/// The appointment of a planned groom. Where the skin allows no bath (bath_for) the coat is brushed through
/// in its place, and no undercoat is washed out; nails and ears that are all hurt take no time. `beyond` counts
/// combing out, the passes that mats cost before the bath, and what felt slows the clipper: a sheet's own minutes
/// are of a dog without.
[[nodiscard]] appointment appointment_of(const plan_request& r, const groom& g,
                                         const service& booked);

/// Whether the skin of all its feet is hurt: no nail is shortened.
[[nodiscard]] bool no_foot_sound(const plan_request& r, const groom& g);

/// Minutes of a service's steps but the plan's own, for a dog of that size and coat with sound skin.
[[nodiscard]] work minutes_beside_plan(const service& booked, dog_size size, coat_class coat,
                                       const price_rules& p);

}  // namespace pelage
