#include "data/read/figures.hpp"

#include <array>
#include <type_traits>

namespace pelage::io {

namespace {

// Room for any habit of a salon, and narrow enough that a slip of the keyboard is noticed and that what
// is divided by never vanishes (assumption); told in reference/README.md.
constexpr bounds zero_to_one{0.0, 1.0, true};
constexpr bounds half{0.0, 0.5, true};
constexpr bounds factor{0.05, 20.0, true};
constexpr bounds spread{0.01, 1.0, true};
constexpr bounds size_factor{0.2, 5.0, true};
constexpr bounds at_the_table = from_zero(240.0);
constexpr bounds within_a_year{1.0, 365.0, true};
constexpr bounds any_length = any_hair;
constexpr bounds small_length{0.1, 50.0, true};
constexpr bounds odds{0.01, 0.99, true};

std::vector<figure_field> slots(cut_rules& r) {
    return {{"blade-flat-up-to", &r.blade_flat_up_to, any_length},
            {"blade-flat-from", &r.blade_flat_from, any_length},
            {"blade-long-share", &r.blade_long_share, zero_to_one},
            {"comb-share", &r.comb_share, zero_to_one},
            {"share-low", &r.share_low, zero_to_one},
            {"share-high", &r.share_high, zero_to_one},
            {"comb-stated-over", &r.comb_stated_over, small_length},
            {"scissor-spread", &r.scissor_spread, from_zero(0.5)}};
}

std::vector<figure_field> slots(growth_rules& r) {
    return {{"start-error", &r.start_error, small_length},
            {"visit-log-sd", &r.visit_log_sd, spread},
            {"delayed-share", &r.delayed_share, zero_to_one},
            {"delay-median", &r.delay_median, over_zero(3650.0)},
            {"delay-log-sd", &r.delay_log_sd, over_zero(3.0)},
            {"measuring-error", &r.measuring_error, small_length},
            {"measuring-share", &r.measuring_share, {0.005, 0.5, true}},
            {"measuring-share-from", &r.measuring_share_from, any_length},
            {"wrong-share", &r.wrong_share, zero_to_one},
            {"wrong-error", &r.wrong_error, any_length},
            {"herd", &r.herd, {2.0, 10000.0, true}},
            {"herd-log-sd", &r.herd_log_sd, spread},
            {"herd-weight", &r.herd_weight, from_zero(10000.0)},
            {"season-swing", &r.season_swing, from_zero(0.5)},
            {"season-peak", &r.season_peak, {1.0, 365.0, true}}};
}

std::vector<figure_field> slots(matting_rules& r) {
    return {{"brush-none", r.brush.data(), factor},
            {"brush-weekly", &r.brush[1], factor},
            {"brush-two-or-three", &r.brush[2], factor},
            {"brush-every-other-day", &r.brush[3], factor},
            {"brush-daily", &r.brush[4], factor},
            {"coat-change", &r.coat_change, factor},
            {"threshold-log-sd", &r.threshold_log_sd, spread},
            {"daily-only-above", &r.daily_only_above, any_length},
            {"clock-none", r.clock.data(), within_a_year},
            {"clock-weekly", &r.clock[1], within_a_year},
            {"clock-two-or-three", &r.clock[2], within_a_year},
            {"clock-every-other-day", &r.clock[3], within_a_year},
            {"clock-daily", &r.clock[4], within_a_year},
            {"tidy-face-feet", &r.tidy_face_feet, within_a_year},
            {"tidy-sanitary", &r.tidy_sanitary, within_a_year},
            {"visits-apart", &r.visits_apart, {1.0, 28.0, true}},
            {"chance", &r.chance, odds},
            {"strip-again", &r.strip_again, within_a_year},
            {"mishap-share", &r.mishap_share, {0.0, 0.5, true}}};
}

std::vector<figure_field> slots(refusal_rules& r) {
    return {{"under-mat-share", &r.under_mat_share, {0.01, 1.0, true}},
            {"under-mat-longest", &r.under_mat_longest, small_length},
            {"safe-blade", &r.safe_blade, small_length},
            {"scissor-thin", &r.scissor_thin, small_length},
            {"scissor-least", &r.scissor_least, small_length},
            {"scissor-body", &r.scissor_body, any_length},
            {"scissor-hand", &r.scissor_hand, any_length},
            {"comb-for", &r.comb_for, any_length},
            {"bare-on-web", &r.bare_on_web, any_length},
            {"sun-length", &r.sun_length, any_length},
            {"comb-out-limit", &r.comb_out_limit, at_the_table},
            {"comb-out-frail", &r.comb_out_frail, at_the_table},
            {"oil-after", &r.oil_after, at_the_table},
            {"hurt-share", &r.hurt_share, zero_to_one},
            {"one-go", &r.one_go, {1.0, 480.0, true}},
            {"much-off", &r.much_off, any_length},
            {"soft-brush", &r.soft_brush, any_length},
            {"held-mat", &r.held_mat, small_length},
            {"scissor-finish", &r.scissor_finish, any_length},
            {"bump-longer", &r.bump_longer, small_length},
            {"bump-least", &r.bump_least, small_length},
            {"finger-covers", &r.finger_covers, any_length}};
}

/// One for each of `names`: "bath-smooth", "bath-double-short".
template <class Quantity, std::size_t N>
void add_each(std::vector<figure_field>& to, const std::string& before,
              const std::array<std::string_view, N>& names, std::array<figure<Quantity>, N>& of,
              const bounds& range) {
    for (std::size_t i = 0; i < N; ++i) {
        to.push_back({before + std::string(names[i]), &of[i], range});
    }
}

void add(std::vector<figure_field>& to, const std::vector<figure_field>& more) {
    to.insert(to.end(), more.begin(), more.end());
}

std::vector<figure_field> tools_and_finishes(price_rules& r) {
    return {{"pick-up-blade", &r.pick_up_blade, at_the_table},
            {"pick-up-second-clipper", &r.pick_up_second_clipper, at_the_table},
            {"pick-up-comb", &r.pick_up_comb, at_the_table},
            {"comb-then-scissor", &r.comb_then_scissor, factor},
            {"scissor", &r.scissor, factor},
            {"thin", &r.thin, factor},
            {"card", &r.card, factor},
            {"hand-strip", &r.hand_strip, factor}};
}

std::vector<figure_field> misses_and_mats(price_rules& r) {
    return {{"miss-per-excess", &r.miss_per_excess, at_the_table},
            {"miss-floor", &r.miss_floor, small_length},
            {"tolerance-share", &r.tolerance_share, zero_to_one},
            {"tolerance-cap", &r.tolerance_cap, small_length},
            {"tolerance-cap-share", &r.tolerance_cap_share, zero_to_one},
            {"tolerance-head-share", &r.tolerance_head_share, zero_to_one},
            {"far-share", &r.far_share, factor},
            {"seam-per-mm", &r.seam_per_mm, at_the_table},
            {"seam-allowance", &r.seam_allowance, any_length},
            {"blend-slope", &r.blend_slope, factor},
            {"tidy-least", &r.tidy_least, any_length},
            {"blend-room", &r.blend_room, factor},
            {"blend-middle", &r.blend_middle, half},
            {"comb-out-tangle", &r.comb_out_tangle, at_the_table},
            {"comb-out-mat", &r.comb_out_mat, at_the_table},
            {"comb-out-area", &r.comb_out_area, at_the_table},
            {"other-blade", &r.other_blade, at_the_table},
            {"next-customary", &r.next_customary, at_the_table},
            {"skip-finish", &r.skip_finish, at_the_table},
            {"felt-mat", &r.felt_mat, factor},
            {"felt-area", &r.felt_area, factor},
            {"felt-pelt", &r.felt_pelt, factor},
            {"again", &r.again, zero_to_one},
            {"clip-combable", &r.clip_combable, at_the_table},
            {"lost-week", &r.lost_week, at_the_table},
            {"part-down", &r.part_down, zero_to_one},
            {"patch-per-mm", &r.patch_per_mm, at_the_table},
            {"patch-allowance", &r.patch_allowance, any_length}};
}

std::vector<figure_field> visit_and_bath(price_rules& r) {
    return {{"visit", &r.visit, {1.0, 240.0, true}},
            {"trip", &r.trip, at_the_table},
            {"bath", &r.bath, {1.0, 240.0, true}}};
}

std::vector<figure_field> beside_the_plan(price_rules& r) {
    return {{"late-full", &r.late_full, at_the_table},
            {"late-visit", &r.late_visit, at_the_table},
            {"nails", &r.nails, {0.0, 240.0, true}},
            {"ears", &r.ears, {0.0, 240.0, true}},
            {"brush-through", &r.brush_through, {0.0, 240.0, true}},
            {"deshed", &r.deshed, {0.0, 240.0, true}},
            {"roll", &r.roll, {0.0, 240.0, true}},
            {"tidy", &r.tidy, {1.0, 240.0, true}}};
}

std::vector<figure_field> slots(price_rules& r) {
    std::vector<figure_field> all = tools_and_finishes(r);
    add_each(all, "size-", size_names, r.size, size_factor);
    add(all, misses_and_mats(r));
    add(all, visit_and_bath(r));
    add_each(all, "bath-", coat_names, r.bath_coat, factor);
    add(all, beside_the_plan(r));
    return all;
}

}  // namespace

measure figure_field::kind() const {
    return std::visit([]<class Quantity>(const figure<Quantity>*) { return measure_of<Quantity>; },
                      to);
}

void figure_field::store(const raw_figure& f) const {
    std::visit([&]<class Quantity>(figure<Quantity>* slot) { *slot = typed<Quantity>(f); }, to);
}

std::vector<rule_set> rule_sets(parameters& b) {
    std::vector<rule_set> all;
    all.push_back({"cut", slots(b.cut)});
    all.push_back({"growth", slots(b.growth)});
    all.push_back({"matting", slots(b.matting)});
    all.push_back({"refusal", slots(b.refusal)});
    all.push_back({"prices", slots(b.prices)});
    return all;
}

namespace {

/// More brushing never mats a coat sooner: what the dates are proved from (model/return_date.hpp).
void check_habits(const matting_rules& m, const spot& at, faults& out) {
    for (std::size_t h = 1; h < habit_names.size(); ++h) {
        if (m.brush[h].best < m.brush[h - 1].best || m.clock[h].best < m.clock[h - 1].best) {
            out.add(at, errc::conflict,
                    "more brushing never mats a coat sooner; found a factor or a clock of \"" +
                        std::string(habit_names[h]) +
                        "\" below that of less brushing; write it "
                        "at or above");
        }
    }
    if (m.coat_change.best > 1.0) {
        out.add(at, errc::conflict,
                "a coat that changes mats no later; found coat-change above 1; write it at or "
                "below");
    }
}

}  // namespace

rule_set quiz_slots(quiz_rules& r) {
    return {"quiz",
            {{"box-1", r.boxes.data(), within_a_year},
             {"box-2", &r.boxes[1], within_a_year},
             {"box-3", &r.boxes[2], within_a_year},
             {"box-4", &r.boxes[3], within_a_year},
             {"box-5", &r.boxes[4], within_a_year},
             {"score-from", &r.score_from, {1.0, 100.0, true}}}};
}

void check_rules(const parameters& b, std::string_view set, const spot& at, faults& out) {
    if (set == "matting") {
        check_habits(b.matting, at, out);
    }
    if (set != "cut") {
        return;
    }
    const cut_rules& c = b.cut;
    if (c.blade_flat_up_to.best >= c.blade_flat_from.best) {
        out.add(at, errc::conflict,
                "blades pass flat up to one length and less so from a longer one; found "
                "blade-flat-up-to at or above blade-flat-from; write it below");
    }
    if (c.share_low.best > c.share_high.best) {
        out.add(at, errc::conflict,
                "the share of the lay has a low and a high end; found share-low above share-high; "
                "write it at or below");
    }
}

}  // namespace pelage::io
