// The groom that `plan` and `regrow` are asked for.
#pragma once

#include <optional>

#include <pelage/answers/asked_first.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/forecast/mixed_coat.hpp>
#include <pelage/planner/plan.hpp>

#include "resolve_arguments.hpp"

namespace pelage::cli {

/// What it refers to lives in this object.
struct asked_groom {
    workplace w;
    dog patient;
    const style* sheet = nullptr;
    std::optional<chance> asked{};
    std::optional<expected_coat> by_mix{};  ///< where nobody has seen the coat
    const service* booked = nullptr;        ///< null: nobody said, a full groom
    std::optional<learned_rate> learned{};  ///< where --brush asks of other brushing than it had

    /// Throws bad_input with all faults, those of `f` among them.
    asked_groom(const common_options& common, const dog_options& o, const surroundings& around,
                faults& f, const std::string& service = {});
    [[nodiscard]] plan_request request_of() const;
    [[nodiscard]] std::optional<mixed_coat> unseen(const plan_request& r, const groom& g) const;
};

/// When the dog must be back: over all coats it may have, where nobody has seen it.
[[nodiscard]] return_date back_of(const asked_groom& a, const plan_request& r, const groom& g);
/// The forecast's dates likewise; its tables stay those of the likeliest coat.
void over_all_coats(const asked_groom& a, const plan_request& r, const groom& g, forecast& c);
/// A clip that is a question: what fits in its place is planned below it.
[[nodiscard]] io::document asked_first(const asked_groom& a, const plan_request& r, const groom& g,
                                       const mixed_coat* unseen, io::plan_told as);

/// The exit code of a plan: whether all of it can be done today.
[[nodiscard]] inline int code_of(const groom& g, const plan_request& r) {
    // booked for its bath, and there is none
    const bool dry = r.booked != nullptr && r.booked->has(service_step::bath) &&
                     bath_for(r.patient.skin) == bath_care::none;
    return !g.planned() || !g.stuck.empty() || g.bath_waits() || dry ? answer_is_no : done;
}

template <class T>
[[nodiscard]] const T* pointer(const std::optional<T>& u) {
    return u ? &*u : nullptr;
}

}  // namespace pelage::cli
