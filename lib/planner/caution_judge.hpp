// Private to lib: where each condition of a caution holds on a planned groom.
#pragma once

#include <optional>
#include <vector>

#include <pelage/planner/plan.hpp>

namespace pelage {

/// Where a caution applies: not at all (nothing), to the whole dog (empty), or to these places.
using places_named = std::optional<std::vector<place>>;

/// Judges a groom whose zones are settled; refers to it and to what was asked.
class caution_judge {
  public:
    caution_judge(const plan_request& r, const groom& g);

    /// Where it applies, of the zones that it is about.
    [[nodiscard]] places_named applies(const caution& c) const;
    [[nodiscard]] places_named applies(caution_when w) const;

    [[nodiscard]] bool doubled() const { return double_coated(coat_.id); }
    [[nodiscard]] bool jacket(const zone_plan& z) const { return zone_of(z).has(zone_use::jacket); }
    [[nodiscard]] static bool clipped(const zone_plan& z) {
        return z.how.kind == tool_kind::clip && z.came != outcome::stuck;
    }
    [[nodiscard]] bool stripped_by_custom() const { return pelage::stripped_by_custom(coat_.id); }
    [[nodiscard]] bool made_for_another_coat() const;

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }
    /// Whether it holds of the whole dog; nothing: it is about places.
    [[nodiscard]] std::optional<bool> of_the_dog(caution_when w) const;
    /// Of its health and its temper, likewise.
    [[nodiscard]] std::optional<bool> of_its_health(caution_when w) const;
    /// Of mats and skin: nothing where there are none.
    [[nodiscard]] places_named of_findings(caution_when w) const;
    /// Of what is done: clipped, scissored, touched.
    [[nodiscard]] places_named of_work(caution_when w) const;
    [[nodiscard]] bool any(bool (*holds)(const zone_plan&)) const;
    template <class Holds>
    [[nodiscard]] places_named where(Holds holds) const;
    /// Where a finding of the skin is that `is`.
    template <class Is>
    [[nodiscard]] places_named skin_that(Is is) const;
    /// Where hair may have wound itself round a leg or toes: what is more than a tangle there.
    [[nodiscard]] places_named mats_on_limbs() const;
    [[nodiscard]] places_named sun() const;
    [[nodiscard]] bool frail() const;
    /// Mats that aren't combed out take much of its body or of its legs, whatever the wish is there.
    [[nodiscard]] bool much_felted() const;
    /// Most of its jacket is clipped from long to short.
    [[nodiscard]] bool much_comes_off() const;
    /// Most of its jacket is clipped shorter than any comb leaves it.
    [[nodiscard]] bool nearly_bare() const;
    template <class In, class Holds>
    [[nodiscard]] bool most_of(In in, Holds holds) const;
    template <class Holds>
    [[nodiscard]] bool most_of_jacket(Holds holds) const {
        return most_of([this](const zone_plan& z) { return jacket(z); }, holds);
    }
    /// It is booked to be bathed, and so.
    [[nodiscard]] bool bath_is(bath_care c) const;
    [[nodiscard]] bool has_alert(alert_kind k) const;
    [[nodiscard]] bool ear_or_tail(const zone_plan& z) const;
    /// Worked on, or its nails alone are cut.
    [[nodiscard]] bool touched(const zone_plan& z) const;
    /// The dog hates to have it touched.
    [[nodiscard]] bool hated(const zone_plan& z) const;
    /// The last full groom is longer ago than such a coat usually goes.
    [[nodiscard]] bool long_since() const;

    const plan_request& r_;
    const groom& g_;
    const coat& coat_;
    std::vector<place> hated_;  ///< what the dog hates to have touched
};

}  // namespace pelage
