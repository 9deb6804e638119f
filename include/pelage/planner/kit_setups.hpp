// What doesn't change from dog to dog, worked out once: the setups a kit allows on a day with what
// each leaves on each coat, and a sheet's wishes place by place. make_plan() makes them for one dog;
// who plans many dogs keeps them.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/kit.hpp>
#include <pelage/trade/place_words.hpp>
#include <pelage/trade/setup.hpp>
#include <pelage/trade/style.hpp>

namespace pelage {

/// The blade as the kit has it: what a test patch measured wins over what is etched.
[[nodiscard]] blade as_measured(const kit_blade& b);
/// The comb as the kit has it.
[[nodiscard]] comb as_measured(const kit_comb& c);

/// Every setup of the kit on `today`, in a fixed order: bare blades and combs by length, with the
/// lay before against it, full teeth before skip; then scissors, thinning scissors, carding tool,
/// hand-stripping, leave. An adjustable blade is offered on each
/// mark of its lever that the kit states; without marks it is not planned with. A blade that no clipper
/// of the kit takes is left out.
[[nodiscard]] std::vector<setup> setups_of(const kit& k, const std::optional<date>& today,
                                           const cut_rules& c);

/// A kit made ready.
class kit_setups {
  public:
    static constexpr std::size_t none = static_cast<std::size_t>(-1);  ///< no such index
    /// What a setup holds, as indices into tools(); `none` where it holds no such thing.
    struct hold {
        std::size_t blade = none;  ///< index into the tools; none
        std::size_t comb = none;   ///< index into the tools; none
    };

    /// Borrows nothing.
    kit_setups(const reference_data& reference, const parameters& rules, const kit& tools,
               const std::optional<date>& today);
    /// Everything the kit can be held as.
    [[nodiscard]] const std::vector<setup>& setups() const { return setups_; }
    /// What a blade or comb leaves on a coat, to 0.01 mm; meaningful for setups that clip.
    [[nodiscard]] const finished& leaves(std::size_t setup, coat_class c) const {
        return leaves_[static_cast<std::size_t>(c)][setup];
    }
    [[nodiscard]] const hold& held(std::size_t setup) const { return holds_[setup]; }
    /// Indices of the setups that clip in this direction, and of all that don't clip.
    [[nodiscard]] const std::vector<std::size_t>& clips(direction d) const {
        return d == direction::with_lay ? with_lay_ : against_lay_;
    }
    [[nodiscard]] const std::vector<std::size_t>& by_hand() const { return by_hand_; }
    /// Price of picking each blade and comb up.
    [[nodiscard]] const std::vector<work>& tools() const { return tools_; }
    [[nodiscard]] const part_index& parts() const { return parts_; }  ///< of this body

  private:
    std::vector<setup> setups_;
    std::array<std::vector<finished>, coat_names.size()> leaves_;
    std::vector<hold> holds_;
    std::vector<std::size_t> with_lay_;
    std::vector<std::size_t> against_lay_;
    std::vector<std::size_t> by_hand_;
    std::vector<work> tools_;
    part_index parts_;
};

/// Lays one instruction over another: what `over` says wins. A length takes the place of a blade and a
/// blade that of a length, and a tolerance that stood beside the old one goes with it.
void lay_over(instruction& under, const instruction& over);

/// A sheet with its words resolved: the instruction for every zone, whole or one side of it, and how
/// neighbours meet.
class resolved_style {
  public:
    /// Throws error(unknown) if a word names no zone, group or side.
    resolved_style(const body& b, const part_index& parts, const style& s);
    /// What the sheet wants of the place.
    [[nodiscard]] const instruction& at(const place& p) const {
        return wishes_[p.zone * side_names.size() + static_cast<std::size_t>(p.which)];
    }
    /// Whether the sheet speaks of one side of the zone.
    [[nodiscard]] bool one_sided(std::size_t zone) const { return one_sided_[zone]; }
    /// How the seam of that index in body::seams is meant on this sheet.
    [[nodiscard]] seam_kind kind_of(std::size_t seam) const { return seams_[seam]; }

  private:
    void lay_rules(const part_index& parts, const style& s);

    std::vector<instruction> wishes_;
    std::vector<bool> one_sided_;
    std::vector<seam_kind> seams_;
};

}  // namespace pelage
