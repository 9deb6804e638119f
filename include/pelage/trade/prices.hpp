// What work and misses cost, in minutes. All are our own guesses until a salon puts in its own.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/coat_class.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/setup.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// The prices (reference/prices.toml; a salon overrides any of them).
struct price_rules {
    figure<work> pick_up_blade;                          ///< each time
    figure<work> pick_up_second_clipper;                 ///< a blade that stays on a second clipper
    figure<work> pick_up_comb;                           ///< each time
    figure<double> comb_then_scissor;                    ///< factors on the time to clip
    figure<double> scissor;                              ///< likewise
    figure<double> thin;                                 ///< likewise
    figure<double> card;                                 ///< likewise
    figure<double> hand_strip;                           ///< likewise
    std::array<figure<double>, size_names.size()> size;  ///< factor by dog size
    figure<work> miss_per_excess;                        ///< times weight times excess over target
    figure<length> miss_floor;            ///< targets shorter than this count as this
    figure<double> tolerance_share;       ///< tolerance, of the wished length
    figure<length> tolerance_cap;         ///< the tolerance is at least that
    figure<double> tolerance_cap_share;   ///< which is never more than this share of the wish
    figure<double> tolerance_head_share;  ///< likewise, on the head
    figure<double> far_share;       ///< a miss beyond this share of the wish counts as nothing near
    figure<work> seam_per_mm;       ///< of a step beyond the allowance
    figure<length> seam_allowance;  ///< a step that costs nothing
    figure<double> blend_slope;     ///< mm of step for each mm a blend is wide
    figure<length> tidy_least;      ///< shorter hair has no outline to tidy
    figure<double> blend_room;      ///< a blend is at most this share of its seam's length wide
    figure<double> blend_middle;    ///< how far from the middle of a step, as a share of the step
    figure<work> comb_out_tangle;   ///< on a medium dog
    figure<work> comb_out_mat;      ///< on a medium dog
    figure<work> comb_out_area;     ///< on a medium dog
    figure<double> felt_mat;        ///< times the clipping time, to clip a mat off
    figure<double> felt_area;       ///< the same of a matted area
    figure<double> felt_pelt;       ///< the same of a pelt
    figure<double> again;        ///< share of the clipping time that the same blade takes once more
    figure<work> clip_combable;  ///< what clipping off costs that could have been combed out
    figure<work> lost_week;      ///< and each week the coat needs to be back at what was wished
    figure<double> part_down;    ///< share of a part clipped for mats from which it all comes down
    figure<work> patch_per_mm;   ///< seam_per_mm between places of a part that are wished alike
    figure<length> patch_allowance;  ///< seam_allowance between them
    figure<work> visit;              ///< taking in and handing back, whatever is done
    figure<work> trip;  ///< the owner's coming and going: weighs in a calendar's choice alone
    figure<work> bath;  ///< washing, drying and combing out a medium dog
    std::array<figure<double>, coat_names.size()> bath_coat;  ///< times that, by coat class
    figure<work> late_full;       ///< a day on which a full groom is overdue, in a diary's choice
    figure<work> late_visit;      ///< and a day on which what mats or grows out is
    figure<work> nails;           ///< of any dog
    figure<work> ears;            ///< looked into and wiped, of any dog
    figure<work> brush_through;   ///< brushing a medium dog to the skin without a bath
    figure<work> deshed;          ///< the undercoat out of a medium dog, beside the bath
    figure<work> roll;            ///< a medium dog's stripped jacket
    figure<work> tidy;            ///< face, eyes, feet, pads and sanitary area of a medium dog
    figure<work> other_blade;     ///< a blade other than the one the sheet names
    figure<work> next_customary;  ///< each step down the customary blades of a prep zone
    figure<work> skip_finish;     ///< what a skip-tooth blade's rougher finish costs in a zone
};

/// How far from the target a zone may end (mm): max(15 % t, min(1.5 mm, 30 % t)); on the head 10 %
/// with the same floor.
[[nodiscard]] inline length tolerance(const length& target, bool head, const price_rules& p) {
    const double share = head ? p.tolerance_head_share.best : p.tolerance_share.best;
    return longer(target * share,
                  shorter(p.tolerance_cap.best, target * p.tolerance_cap_share.best));
}

/// Factor of a finish on the time to clip.
[[nodiscard]] inline double finish_factor(finish f, const price_rules& p) {
    switch (f) {
        case finish::clip:
            return 1.0;
        case finish::comb_then_scissor:
            return p.comb_then_scissor.best;
        case finish::scissor:
            return p.scissor.best;
        case finish::thin:
            return p.thin.best;
        case finish::card:
            return p.card.best;
        case finish::hand_strip:
            return p.hand_strip.best;
        case finish::leave:
            break;
    }
    return 0.0;
}

/// Time to do a zone (both sides) on a dog of that size.
[[nodiscard]] inline work zone_work(const zone& z, finish f, dog_size size, const price_rules& p) {
    return minutes(in_minutes(z.clip_time.best) * finish_factor(f, p) *
                   p.size[static_cast<std::size_t>(size)].best);
}

/// What ending at `got` instead of `target` costs. Within the tolerance a thousandth of a minute per
/// 0.1 mm, four on the side `between` disfavours; beyond it weight * 10 minutes * excess /
/// max(target, 6 mm) on the sides `between` prices. All lengths at 0.01 mm.
[[nodiscard]] inline work miss_price(const length& got, const length& target, const length& tol,
                                     side_of_target between, int weight_tenths,
                                     const price_rules& p) {
    const bool below = got < target;
    const bool disfavoured = (between == side_of_target::longer && below) ||
                             (between == side_of_target::shorter && !below);
    const length off = gap(got, target);
    const length inside = shorter(off, tol);
    const std::int64_t near = nearest_whole(in_mm(inside) * 10.0) * (disfavoured ? 4 : 1);
    if (within(got, target, tol)) {
        return mmin(near);
    }
    const double share = (off - tol) / longer(target, p.miss_floor.best);
    const double priced = in_minutes(p.miss_per_excess.best) * (weight_tenths / 10.0) * share;
    return mmin(near) + minutes(priced);
}

/// How much longer it takes to clip off a mat of that grade than sound coat; a tangle takes no longer.
[[nodiscard]] inline double felt_factor(mat_grade g, const price_rules& p) {
    switch (g) {
        case mat_grade::tangle:
            return 1.0;
        case mat_grade::mat:
            return p.felt_mat.best;
        case mat_grade::matted_area:
            return p.felt_area.best;
        case mat_grade::pelt:
            break;
    }
    return p.felt_pelt.best;
}

/// `w` on sound coat, where a mat of that grade is clipped off.
[[nodiscard]] inline work longer_by_felt(const work& w, mat_grade g, const price_rules& p) {
    return mmin(nearest_whole(static_cast<double>(in_mmin(w)) * felt_factor(g, p)));
}

/// `w` on sound coat, where the same blade goes once more, after the bath, over what it clipped before.
[[nodiscard]] inline work once_more(const work& w, const price_rules& p) {
    return mmin(nearest_whole(static_cast<double>(in_mmin(w)) * p.again.best));
}

/// Time to comb out a mat of that grade; nothing for a pelt, which is never combed out.
[[nodiscard]] inline std::optional<work> comb_out_work(mat_grade g, dog_size size,
                                                       const price_rules& p) {
    const auto sized = [&](const figure<work>& w) {
        return minutes(in_minutes(w.best) * p.size[static_cast<std::size_t>(size)].best);
    };
    switch (g) {
        case mat_grade::tangle:
            return sized(p.comb_out_tangle);
        case mat_grade::mat:
            return sized(p.comb_out_mat);
        case mat_grade::matted_area:
            return sized(p.comb_out_area);
        case mat_grade::pelt:
            break;
    }
    return std::nullopt;
}

}  // namespace pelage
