// What a setup leaves standing: the only place where the geometry of a cut lives.
//
// Hair that lies at an angle to the skin and is cut at a height keeps height / sin(angle). Against
// the lay it is raised first and keeps the height itself. How much of that geometry a blade shows
// falls with its length, and a comb's teeth lift most of the hair: the share g below.
#pragma once

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include <pelage/base/error.hpp>
#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/coat.hpp>
#include <pelage/trade/setup.hpp>

namespace pelage {

/// The figures of the cut (reference/cut.toml).
struct cut_rules {
    figure<length> blade_flat_up_to;  ///< up to here a blade shows the whole geometry
    figure<length> blade_flat_from;   ///< from here on only blade_long_share of it
    figure<double> blade_long_share;  ///< 0 to 1
    figure<double> comb_share;        ///< 0 to 1
    figure<double> share_low;         ///< the least anybody finds, 0
    figure<double> share_high;        ///< the most, 1
    figure<length> comb_stated_over;  ///< stated length of the blade a comb is stated over
    figure<double> scissor_spread;    ///< how far scissored hair strays from its target, a share
};

/// 1 / sin(angle of the lay): how much longer hair is than the height it is cut at. `degrees` over
/// 0 and up to 90; throws error(range) otherwise. facts: 30 degrees gives 2, 90 gives 1.
[[nodiscard]] inline double lay_factor(double degrees) {
    if (!(degrees > 0.0 && degrees <= 90.0)) {
        throw error(errc::range, "the angle of the lay must be over 0 and at most 90 degrees");
    }
    // sin(90 degrees) is not exactly 1 in every library; an off-standing coat is exactly 1
    return degrees == 90.0 ? 1.0 : 1.0 / std::sin(degrees * std::numbers::pi / 180.0);
}

/// Share of the lay's geometry that a bare blade of stated length `h` shows, 0 to 1: 1 up to 3.2 mm,
/// falling linearly to 0.4 at 6.3 mm and beyond (assumption, from educators who disagree).
[[nodiscard]] inline double blade_share(const length& h, const cut_rules& r) {
    const double from = in_mm(r.blade_flat_up_to.best);
    const double to = in_mm(r.blade_flat_from.best);
    const double way = std::clamp((in_mm(h) - from) / (to - from), 0.0, 1.0);
    return 1.0 + way * (r.blade_long_share.best - 1.0);
}

/// The lay (degrees) of hair that stands up or has no lay, as between the pads: it keeps what a blade is
/// stated to leave.
inline constexpr double upright = 90.0;

/// Stated length of a clipping setup with the makers' spread: a blade's own; a comb's plus the
/// blade under it less the one it is stated over. The setup is of kind clip.
[[nodiscard]] inline figure<length> stated_length(const setup& s, const cut_rules& r) {
    if (!s.over) {
        return s.tool.stated;
    }
    const length under = s.tool.stated.best - r.comb_stated_over.best;
    return {s.over->stated.low + under, s.over->stated.best + under, s.over->stated.high + under,
            s.over->stated.why};
}

/// What `s` leaves on hair that lies at `lay` degrees. Only for setups of kind clip; throws
/// error(range) for others and for an impossible angle.
///
/// With the lay: h (1 + (1/sin lay - 1) g); a blade may lie anywhere from g = 0 to g = 1, a comb up
/// to the share of a long blade, since its teeth lift hair at least as well (assumption). Against the
/// lay: h, but no less than the h that gives h with the lay, since some read the etched figure so.
/// The makers' spread comes on top.
[[nodiscard]] inline finished cut_length(const setup& s, double lay_degrees, const cut_rules& r) {
    if (s.kind != tool_kind::clip) {
        throw error(errc::range, "only a blade or a comb over a blade leaves a length of its own");
    }
    const double factor = lay_factor(lay_degrees);
    const figure<length> h = stated_length(s, r);
    const auto with = [&](double share) { return 1.0 + (factor - 1.0) * share; };
    const double most = s.over ? r.comb_share.high : r.share_high.best;
    if (s.way == direction::against_lay) {
        return {h.low / with(most), h.best, h.high};
    }
    const double g = s.over ? r.comb_share.best : blade_share(h.best, r);
    return {h.low * with(r.share_low.best), h.best * with(g), h.high * with(most)};
}

/// The same at the grain of plans, 0.01 mm.
[[nodiscard]] inline finished rounded(const finished& f) {
    return {rounded(f.low), rounded(f.best), rounded(f.high)};
}

/// What scissors leave at a target: the target, give or take the hand.
[[nodiscard]] inline finished scissored(const length& target, const cut_rules& r) {
    const double s = r.scissor_spread.best;
    return {target * (1.0 - s), target, target * (1.0 + s)};
}

/// The angle of the lay (degrees) that a test patch shows: a blade of stated length `h` left `l`
/// with the lay. Inverse of cut_length for bare blades; nothing if the patch can't come from any
/// angle between 0 and 90 (shorter than stated).
[[nodiscard]] inline std::optional<double> lay_from_patch(const length& h, const length& l,
                                                          const cut_rules& r) {
    const double inverse_sine = 1.0 + (l / h - 1.0) / blade_share(h, r);
    if (!(inverse_sine >= 1.0)) {
        return std::nullopt;
    }
    return std::asin(1.0 / inverse_sine) * 180.0 / std::numbers::pi;
}

}  // namespace pelage
