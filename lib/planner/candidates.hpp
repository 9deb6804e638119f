// Private to lib: what a setup would do in a zone, what that costs, and why not where it may not.
#pragma once

#include <pelage/model/refusal.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage {

/// What one setup would do in one zone: nothing if it isn't among the finish's tools at all.
struct candidate {
    bool offered = false;
    barrier no;
    finished leaves{};
    work price{};  ///< work and miss

    [[nodiscard]] bool allowed() const { return offered && no.what == barrier::kind::none; }
};

/// One zone of one dog as the setups meet it.
struct zone_situation {
    const plan_request& request;
    const coat& hair;
    const zone_plan& plan;
    const zone& where;
    zone_today today;        ///< with the mat in it, if it is still in
    bool mat_in = false;     ///< a mat not combed out
    bool hard_least = true;  ///< shorter than the tolerance is barred, not only priced
    bool lifted = false;  ///< nothing within the sheet's bounds: beyond them is priced, not barred
    work takes{};     ///< on a medium dog: to do it as the sheet finishes it, or to clip a mat off
    work scissors{};  ///< on a medium dog: to scissor it

    /// `combed`: the mat, if there is one, is combed out before.
    zone_situation(const plan_request& r, const coat& c, const zone_plan& z, bool combed);
};

/// What `s` would do; `clipped` is what it leaves on this coat if it clips. Scissors in place of
/// clippers only if `scissors_too`. Without reasons asked for, a barred setup has no price.
[[nodiscard]] candidate cell_for(const zone_situation& at, const setup& s, const finished& clipped,
                                 bool scissors_too);

/// What needn't be looked at in a zone without a mat in it: what its finish doesn't offer, and, where nobody
/// asks for reasons, clippers that leave it too short or too long. cell_for() bars all of that, too.
class sieve {
  public:
    explicit sieve(const zone_situation& at);
    /// `leaves` stands at 0.01 mm, as kit_setups has it.
    [[nodiscard]] bool lets_through(const setup& s, const finished& leaves) const;
    /// False only for a blade or comb that it doesn't let through: asked of all, before the rest.
    [[nodiscard]] bool may_clip(const setup& s, const finished& leaves) const {
        return by_list_ ? !s.over && s.way == direction::with_lay
                        : leaves.best < hair_ && (named_ || in_band(leaves));
    }

    /// Whether may_clip says all of a blade or comb that lets_through would.
    [[nodiscard]] bool by_length_alone() const { return !by_list_ && !named_; }

  private:
    [[nodiscard]] bool in_band(const finished& leaves) const {
        return (by_best_ ? leaves.best : leaves.low) > least_ && leaves.best < most_;
    }

    const zone_situation& at_;
    bool by_list_;
    bool named_;  // the sheet names a blade
    bool by_best_;
    // halfway to the next hundredth, so that nothing has to be rounded
    length least_;
    length most_;
    length hair_;
};

/// Whether the zone is one of those with an ordered list of blades, and is done by it.
[[nodiscard]] bool by_prep_list(const zone_situation& at);

/// What is left of the hair: by a blade or comb what it leaves on the coat, by scissors what they aim
/// at, otherwise today's hair (0 where it isn't known).
[[nodiscard]] finished left_by(const zone_plan& z, const setup& s, const finished& clipped,
                               const cut_rules& rules);

/// The same under a mat that comes off, null if there is none: nothing longer than the hair measured there.
[[nodiscard]] finished beneath(const mat_finding* m, const finished& left);

/// Whether the dog's owner agreed to `id`.
[[nodiscard]] bool agreed(const dog& d, std::string_view id);

}  // namespace pelage
