// Private to lib: a kit made ready to be checked, and its finders, each by what it looks at.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include <pelage/kit/check.hpp>
#include <pelage/planner/kit_setups.hpp>

namespace pelage {

/// A kit that is checked. Borrows what was asked.
class checked_kit {
  public:
    explicit checked_kit(const kit_check_request& r);

    const kit_check_request& asked;
    const kit whole;                           ///< with everything at hand
    const std::vector<setup> setups;           ///< of the whole kit
    const std::vector<judged_target> targets;  ///< judged on them

    [[nodiscard]] const kit& own() const { return asked.own; }
    /// Why that may be done nowhere on a dog; nothing if it may.
    [[nodiscard]] std::optional<refusal> refused(const setup& s) const;

    void say(kit_matter m, drawer_finding found) { found_.push_back({m, std::move(found)}); }
    /// What was said, gravest first, and else as it was said.
    [[nodiscard]] std::vector<kit_remark> remarks() &&;

  private:
    std::vector<kit_remark> found_;
};

/// Combs on blades that bear none, or that aren't there; blades that no groom uses.
void find_unsafe(checked_kit& k);
/// Labels and numbers that mean two lengths.
void find_two_lengths(checked_kit& k);
/// What sheets ask for and nothing leaves.
void find_gaps(checked_kit& k);
/// Blades out for sharpening.
void find_blades_out(checked_kit& k);
/// Lengths from memory, or guessed.
void find_guessed(checked_kit& k);
/// What no sheet needs.
void find_idle(checked_kit& k);
/// What is measured elsewhere than stated, has no marks, no second, or lies at more tables than there is of it;
/// look-alikes.
void find_remarks(checked_kit& k);
/// Blades with skip teeth and with full ones under one number.
void find_look_alikes(checked_kit& k);

}  // namespace pelage
