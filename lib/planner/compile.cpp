#include "planner/compile.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/base/error.hpp>

#include "planner/compiler.hpp"
#include "planner/double_jacket.hpp"
#include "planner/lone_places.hpp"

namespace pelage {

void compiler::decide_mat(zone_plan& z, const mat_finding* m) {
    out_.combing.push_back(work{});
    if (m == nullptr) {
        return;
    }
    z.mat = m->grade;
    if (m->to_skin) {
        out_.stop.push_back(z.at);
        return;
    }
    out_.combing.back() = combing_of(r_, z, *m, r_.patient.size).value_or(work{});
}

void compiler::decide_target(zone_plan& z, const instruction& wish) {
    if (wish.blade) {
        z.blade_wish = wish.blade;
        const kit_blade* have = find_blade(r_.tools, *wish.blade);
        const blade* known = find(r_.reference.blades, *wish.blade);
        if (have == nullptr && known == nullptr) {
            throw error(errc::unknown, "no blade is called \"" + *wish.blade + "\"");
        }
        const blade b = have != nullptr ? as_measured(*have) : *known;
        const direction d = wish.way.value_or(lay_choice::with_lay) == lay_choice::against_lay
                                ? direction::against_lay
                                : direction::with_lay;
        z.target =
            cut_length(bare(b, d), lay_of(r_.reference, r_.rules, coat_.id).best, r_.rules.cut)
                .best;
    } else {
        z.target = wish.target;
    }
    if (z.target) {
        z.target = rounded(*z.target);
        z.tolerated = wish.tolerance.value_or(
            tolerance(*z.target, zone_of(z).where == group::head, r_.rules.prices));
        z.aim = longer(*z.target, scissors_leave_at_least(zone_of(z), r_.rules.refusal));
    }
}

void compiler::decide_wish(zone_plan& z, const instruction& wish) {
    const zone& where = zone_of(z);
    const bool said = wish.target || wish.blade || wish.how;
    z.note = wish.note;
    z.between = wish.between.value_or(side_of_target::longer);
    if (left_for_teats(r_.patient, where)) {
        z.how_finished = finish::leave;
        z.why.what = cause::teats;
        return;
    }
    if (where.where == group::prep && !said) {
        z.how_finished = finish::clip;
        return;
    }
    z.how_finished = wish.how.value_or(said ? finish::clip : finish::leave);
    const bool not_signed = jacket_unsigned(r_);
    // what hangs beside a jacket that stays isn't scissored to the length the jacket was to have
    const bool beside = z.how_finished == finish::scissor && not_signed &&
                        clips_jacket(wishes_, r_.reference.dog_body);
    if ((clips(z.how_finished) || beside) && not_signed && asks_consent(where)) {
        z.withheld = true;
        z.how_finished = carded_by_default(where) ? finish::card : finish::leave;
        z.why.what = carded_by_default(where) ? cause::jacket_unsigned : cause::head_unsigned;
    }
    if (z.how_finished != finish::leave && z.how_finished != finish::card) {
        decide_target(z, wish);
        if (z.target && by_blade_alone(z, where, *z.target, r_.rules.refusal)) {
            z.how_finished = finish::clip;
        }
        if (runs_over(z, where, r_.rules.refusal)) {
            z.how_finished = finish::clip;
            z.aim.reset();
        }
    }
    // without a length there is nothing to clip or scissor to
    if (cuts(z.how_finished) && !z.target) {
        z.how_finished = finish::leave;
        z.why.what = cause::no_length;
    }
}

/// Face, feet and edges that the sheet scissors, their hair no longer than the wish: what stands out is
/// taken off all the same (common practice).
bool compiler::is_tidied(const zone_plan& z) const {
    const zone& w = zone_of(z);
    const bool finished_off = (w.where == group::head && !w.has(zone_use::ear_leather)) ||
                              w.where == group::feet || w.has(zone_use::scissors_only);
    if (!finished_off || !scissors_last(z.how_finished) || z.hurt || !z.now || !z.target ||
        *z.now > *z.target + z.tolerated || *z.now < r_.rules.prices.tidy_least.best) {
        return false;
    }
    zone_plan tidied = z;
    tidied.tidied = true;
    const zone_situation at(r_, coat_, tidied, true);
    return cell_for(at, by_hand(tool_kind::scissors), {}, true).allowed();
}

/// A lone place isn't left standing in a part that the kit leaves at another length.
void compiler::follow_part(std::size_t index) {
    if (const part_follower* f = out_.follower(index)) {
        zone_plan& z = out_.zones[index];
        z.target = f->at;
        z.tolerated = tolerance(f->at, zone_of(z).where == group::head, r_.rules.prices);
        z.aim = longer(f->at, scissors_leave_at_least(zone_of(z), r_.rules.refusal));
    }
}

void compiler::look_at_skin(zone_plan& z) const {
    if (r_.patient.skin.empty()) {
        return;
    }
    if (const skin_finding* f = hurt_at(r_.reference.dog_body, r_.patient, z.at)) {
        z.hurt = f->state;
        z.edge_of_hurt = f->at.zone != z.at.zone;
    }
    z.around = bumps_at(r_.patient, z.at);
}

void compiler::add_zone(const place& p) {
    zone_plan& z = out_.zones.emplace_back();
    z.at = p;
    const instruction wish = wishes_.at(p);
    z.now = wishes_.hair(p);
    // dead hair is pulled from a coat that isn't slippery from the bath (from memory)
    decide_wish(z, wish);
    follow_part(out_.zones.size() - 1);
    const bool early = zone_of(z).where == group::prep || z.how_finished == finish::hand_strip;
    z.when = early ? list::before_bath : list::after_bath;
    look_at_skin(z);
    decide_mat(z, mat_at(r_.patient, p));
    if (!r_.patient.skin.empty()) {
        z.beside_hurt = hurt_neighbours(r_, p);
    }
    z.tidied = is_tidied(z);
    z.way = r_.both_ways ? lay_choice::either : wish.way.value_or(lay_choice::with_lay);
    if (tender(r_.patient) && z.way == lay_choice::against_lay) {
        z.way = lay_choice::with_lay;  // such skin tears easily
    }
    if (wish.how == finish::scissor && z.how_finished == finish::clip) {
        z.way = lay_choice::with_lay;  // a fringe or a foot that the blade runs over
    }
}

/// The sound side of a pair whose other side is matted: with match_sides it may follow it.
void compiler::mark_beside_mats() {
    for (std::size_t i = 0; i + 1 < out_.zones.size(); ++i) {
        zone_plan& left = out_.zones[i];
        zone_plan& right = out_.zones[i + 1];
        if (left.at.zone == right.at.zone && left.mat.has_value() != right.mat.has_value()) {
            (left.mat ? right : left).beside_mat = true;
        }
    }
}

/// Parts that come down whole: by one blade, before the bath and again after it.
void compiler::take_parts_down() {
    out_.under.assign(out_.zones.size(), kit_setups::none);
    out_.taken_down.assign(out_.zones.size(), false);
    out_.lifted.assign(out_.zones.size(), false);
    out_.undone.assign(out_.zones.size(), false);
    for (const part p : out_.down) {
        const std::size_t k = blade_for(r_, ready_, out_.zones, p);
        for (std::size_t i = 0; k != kit_setups::none && i < out_.zones.size(); ++i) {
            if (comes_down(r_, ready_, out_.zones[i], p, k)) {
                out_.under[i] = k;
                out_.taken_down[i] = true;
            }
        }
    }
}

void compiler::add_rows() {
    out_.choice.budget =
        static_cast<std::int32_t>(in_mmin(comb_out_budget(r_.patient, r_.rules.refusal)));
    out_.choice.zones.reserve(out_.zones.size());
    for (std::size_t i = 0; i < out_.zones.size(); ++i) {
        if (out_.zones[i].hurt) {
            continue;
        }
        if (add_row(i)) {
            out_.rows.push_back(i);
        } else {
            out_.stuck.push_back(i);
        }
    }
}

void compiler::seam_between(std::size_t a, std::size_t b, const length& allowance) {
    const zone_plan& za = out_.zones[out_.rows[a]];
    const zone_plan& zb = out_.zones[out_.rows[b]];
    // only cut zones are blended, and what the sheet itself steps is its pattern
    if (!za.target || !zb.target) {
        return;
    }
    // a part shaved for its mats pulls no other part down with it
    const bool down = out_.taken_down[out_.rows[a]] || out_.taken_down[out_.rows[b]];
    if (down && part_of(zone_of(za)) != part_of(zone_of(zb))) {
        return;
    }
    const price_rules& p = r_.rules.prices;
    const length asked = gap(*za.target, *zb.target);
    const part where = part_of(zone_of(za));
    const bool alike =
        where == part_of(zone_of(zb)) && where != part::prep && asked <= p.patch_allowance.best;
    const work per_mm = alike ? p.patch_per_mm.best : p.seam_per_mm.best;
    const length free = alike ? shorter(p.patch_allowance.best, allowance) : allowance;
    out_.choice.seams.push_back(
        {a, b,
         static_cast<std::int32_t>(std::llround(static_cast<double>(in_mmin(per_mm)) / 100.0)),
         in_hundredths(free + asked)});
}

void compiler::add_seams() {
    // rows of a zone: one, or one a side, standing together
    struct run {
        std::size_t begin = 0;
        std::size_t end = 0;
    };
    std::vector<run> rows(r_.reference.dog_body.zones.size());
    for (std::size_t n = 0; n < out_.rows.size(); ++n) {
        run& of_zone = rows[out_.zones[out_.rows[n]].at.zone];
        of_zone = {of_zone.end == 0 ? n : of_zone.begin, n + 1};
    }
    const std::vector<seam>& seams = r_.reference.dog_body.seams;
    for (std::size_t i = 0; i < seams.size(); ++i) {
        const seam& s = seams[i];
        if (sheet_.kind_of(i) != seam_kind::blend) {
            continue;
        }
        for (std::size_t a = rows[s.a].begin; a < rows[s.a].end; ++a) {
            for (std::size_t b = rows[s.b].begin; b < rows[s.b].end; ++b) {
                const side left = out_.zones[out_.rows[a]].at.which;
                const side right = out_.zones[out_.rows[b]].at.which;
                if (left == right || left == side::both || right == side::both) {
                    seam_between(a, b, r_.rules.prices.seam_allowance.best);
                }
            }
        }
    }
    for (const run& pair : rows) {
        if (pair.end - pair.begin == 2) {
            seam_between(pair.begin, pair.begin + 1, mm(0.0));
            const zone_plan& left = out_.zones[out_.rows[pair.begin]];
            const zone_plan& right = out_.zones[out_.rows[pair.begin + 1]];
            if (r_.match_sides && (left.beside_mat || right.beside_mat) && left.target &&
                right.target) {
                out_.choice.seams.back().per_hundredth = to_match;
            }
        }
    }
}

compiled_plan compile(const plan_request& r, const ready_kit& ready, std::vector<part> down,
                      std::vector<part_follower> follow) {
    if (!r.patient.coat) {
        throw error(errc::missing, "the dog's coat must be known to plan its groom");
    }
    return compiler(r, ready, std::move(down), std::move(follow)).run();
}

compiled_plan compile(const plan_request& r) {
    return compile(r, ready_kit(r));
}

chosen_plan choose_whole(const plan_request& r, const ready_kit& ready, compiled_plan first) {
    chosen_plan out{std::move(first), {}};
    out.choice = choose(r, ready, out.compiled, out.compiled.choice);
    // taking one part down may leave time to comb out another
    for (std::vector<part> more = beyond_share(r, ready, out.compiled, out.choice);
         !more.empty() && out.compiled.down.size() < 2;
         more = beyond_share(r, ready, out.compiled, out.choice)) {
        std::vector<part> down;  // copied one by one: g++ 14 warns wrongly of a copied vector
        for (const part p : out.compiled.down) {
            down.push_back(p);
        }
        const auto next = std::find_if(more.begin(), more.end(), [&](part p) {
            return std::find(down.begin(), down.end(), p) == down.end();
        });
        if (next == more.end()) {
            break;
        }
        down.push_back(*next);
        out.compiled = compile(r, ready, std::move(down));
        out.choice = choose(r, ready, out.compiled, out.compiled.choice);
    }
    std::vector<part_follower> follow = lone_places(r, ready, out.compiled, out.choice);
    if (!follow.empty()) {
        out.compiled = compile(r, ready, out.compiled.down, std::move(follow));
        out.choice = choose(r, ready, out.compiled, out.compiled.choice);
    }
    return out;
}

}  // namespace pelage
