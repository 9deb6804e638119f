// What a place's setups are and cost: sound, under its mat, after it was combed out or clipped off, or
// coming down with its part.
#include <algorithm>
#include <cmath>

#include <pelage/base/error.hpp>

#include "planner/compiler.hpp"

namespace pelage {

std::size_t compiler::next_bit(std::size_t tool) {
    const std::size_t bit = out_.choice.price.size();
    if (bit >= most_tools) {
        throw error(errc::range,
                    "a plan counts at most 64 blades and combs, before and after the bath "
                    "together; found more; leave out of the kit what this groom doesn't need");
    }
    out_.choice.price.push_back(static_cast<std::int32_t>(in_mmin(top_.tools()[tool])));
    out_.tool_of.push_back(tool);
    return bit;
}

tool_set compiler::tool_bit(std::size_t tool, list when) {
    std::size_t& bit = bits_[tool + (when == list::after_bath ? top_.tools().size() : 0)];
    if (bit == kit_setups::none) {
        bit = next_bit(tool);
    }
    return tool_set{1} << bit;
}

tool_set compiler::tools_held(std::size_t setup, list when) {
    const kit_setups::hold& h = top_.held(setup);
    return (h.blade == kit_setups::none ? 0 : tool_bit(h.blade, when)) |
           (h.comb == kit_setups::none ? 0 : tool_bit(h.comb, when));
}

/// What it costs that edges go along with a mat clipped off to that length: scissored where they could
/// have been left, and shorter than wished.
work compiler::edges_taken_along(const place& p, const length& left) const {
    const body& b = r_.reference.dog_body;
    work sum{};
    for (const zone_plan& edge : out_.zones) {
        if (!is_edge_of(b, edge.at, p) || !may_go_along(wishes_, b, edge) ||
            in_hundredths(left) >= in_hundredths(*edge.target)) {
            continue;
        }
        sum += miss_price(left, *edge.target, edge.tolerated, side_of_target::longer,
                          zone_of(edge).weight_tenths, r_.rules.prices);
        if (edge.now && !edge.tidied && *edge.now <= *edge.target + edge.tolerated &&
            left < *edge.now) {
            sum += place_cost(r_, edge.at, finish::scissor);
        }
    }
    return sum;
}

void compiler::add_cell(std::size_t index, std::size_t setup, const candidate& c,
                        const approach& how) {
    zone_plan& z = out_.zones[index];
    if (!c.allowed()) {
        if (c.offered && how.reasons) {
            z.refused.push_back({top_.setups()[setup], c.no, c.leaves, how.begin > 0});
        }
        return;
    }
    const auto cost = std::min<std::int64_t>(in_mmin(c.price + how.surcharge), dearest);
    out_.choice.zones.back().push_back(
        {static_cast<std::uint16_t>(how.begin + setup), how.spend, static_cast<std::int32_t>(cost),
         in_hundredths(c.leaves.best), how.held | tools_held(setup, how.when)});
}

/// Whether the hair is cut so short that nobody combs a mat out of it first.
bool compiler::cut_short_anyway(const zone_plan& z) const {
    return cuts(z.how_finished) && z.target &&
           in_hundredths(*z.target) < in_hundredths(r_.rules.refusal.comb_for.best);
}

/// What it costs beyond the work that a mat is clipped off where it could have been combed out: a tangle
/// always, others where coat is lost.
work compiler::clipped_for_nothing(std::size_t index, const length& left) const {
    const zone_plan& z = out_.zones[index];
    const bool combable = in_mmin(out_.combing[index]) > 0 && zone_of(z).where != group::prep;
    const std::optional<double> weeks = weeks_lost(coat_, zone_of(z), z, left);
    if (*z.mat != mat_grade::tangle && cut_short_anyway(z)) {
        return {};
    }
    const price_rules& p = r_.rules.prices;
    if (!combable || !(weeks || *z.mat == mat_grade::tangle)) {
        return {};
    }
    const work by_week = minutes(in_minutes(p.lost_week.best) * weeks.value_or(0.0));
    const work most = against_the_groomer - p.clip_combable.best - minutes(60.0);
    return p.clip_combable.best + std::min(by_week, most);
}

/// A mat clipped off by a blade that leaves more than the sheet wishes, and nothing done after it.
work compiler::left_too_long(const zone_plan& z, const length& left) const {
    const bool longer_than_wished =
        z.target && zone_of(z).where != group::prep && left > *z.target + z.tolerated;
    return longer_than_wished ? miss_price(left, *z.target, z.tolerated, z.between,
                                           zone_of(z).weight_tenths, r_.rules.prices)
                              : work{};
}

/// The blade that goes under the mat: where the zone has its customary blades the first of them that
/// passes, elsewhere and without them the longest that passes.
void compiler::find_under(std::size_t index, const zone_situation& at) {
    std::size_t& best = out_.under[index];
    const auto& customary = at.where.prep_blades;
    const auto rank = [&](std::size_t k) {
        const blade& b = top_.setups()[k].tool;
        const auto usual = std::find(customary.begin(), customary.end(), b.id);
        return std::pair{-(usual - customary.begin()), in_mm(b.stated.best)};
    };
    for (const std::size_t k : top_.clips(direction::with_lay)) {
        const bool bare_blade = !top_.setups()[k].over;
        if (bare_blade &&
            cell_for(at, top_.setups()[k], top_.leaves(k, coat_.id), false).allowed() &&
            (best == kit_setups::none || rank(k) > rank(best))) {
            best = k;
        }
    }
}

/// The mat is clipped off, and where the sheet wishes shorter still the place is finished after the bath.
bool compiler::add_under(std::size_t index) {
    const zone_plan& z = out_.zones[index];
    const zone_situation at(r_, coat_, z, false);
    find_under(index, at);
    const std::size_t under = out_.under[index];
    approach how{0, list::before_bath, {}, 0, 0, r_.reasons};
    const bool decided = mat_at(r_.patient, z.at)->comb_out && in_mmin(out_.combing[index]) > 0;
    for (const direction d : {direction::with_lay, direction::against_lay}) {
        for (const std::size_t k : top_.clips(d)) {
            candidate c = cell_for(at, top_.setups()[k], top_.leaves(k, coat_.id), false);
            if (c.allowed() && k != under) {
                c.no.what = barrier::kind::not_longest;
            } else if (c.allowed()) {
                c.price += edges_taken_along(z.at, c.leaves.best) + left_too_long(z, c.leaves.best);
                how.surcharge =
                    decided ? against_the_groomer : clipped_for_nothing(index, c.leaves.best);
            }
            add_cell(index, k, c, how);
        }
    }
    if (under == kit_setups::none) {
        return false;
    }
    const length left = top_.leaves(under, coat_.id).best;
    if (z.target && at.where.where != group::prep &&
        in_hundredths(left) > in_hundredths(*z.target + z.tolerated)) {
        add_finish_after(index, at.takes + (decided ? against_the_groomer : work{}));
    }
    return true;
}

/// Clipped down for the mat, then finished as the sheet wishes: shorter than the blade under the mat leaves.
bool compiler::add_finish_after(std::size_t index, const work& off) {
    const std::size_t under = out_.under[index];
    zone_plan cleared = out_.zones[index];
    const length left = top_.leaves(under, coat_.id).best;
    cleared.now = cleared.now ? shorter(*cleared.now, left) : left;
    zone_situation at(r_, coat_, cleared, true);
    approach how{0, cleared.when, off, 0, tools_held(under, list::before_bath), false};
    // by the blade under the mat alone, or left as that leaves it, stands already
    std::vector<allowed_setup>& row = out_.choice.zones.back();
    const std::size_t before = row.size();
    const bool any = add_cells_once(index, at, how);
    row.erase(std::remove_if(row.begin() + static_cast<std::ptrdiff_t>(before), row.end(),
                             [&](const allowed_setup& s) {
                                 return s.setup == under || s.setup == leave_column();
                             }),
              row.end());
    for (std::size_t i = before; i < row.size(); ++i) {
        const length left_at_last = mm(row[i].length / 100.0);
        row[i].cost += static_cast<std::int32_t>(in_mmin(clipped_for_nothing(index, left_at_last)));
    }
    return any;
}

bool compiler::add_combed(std::size_t index) {
    const zone_plan& z = out_.zones[index];
    const mat_finding& m = *mat_at(r_.patient, z.at);
    const work cost = combing_of(r_, z, m, dog_size::medium).value_or(work{});
    return add_cells(index, zone_situation(r_, coat_, z, true),
                     {out_.setups, z.when, cost,
                      static_cast<std::int32_t>(in_mmin(out_.combing[index])), 0, r_.reasons});
}

/// Whether one of the cells of the last row from `before` on leaves about what is wished.
bool compiler::near_enough(const zone_plan& z, std::size_t before) const {
    const std::vector<allowed_setup>& row = out_.choice.zones.back();
    return !z.target || std::any_of(row.begin() + static_cast<std::ptrdiff_t>(before), row.end(),
                                    [&](const allowed_setup& s) { return is_near(z, s); });
}

bool compiler::is_near(const zone_plan& z, const allowed_setup& s) const {
    const length off = gap(mm(s.length / 100.0), *z.target);
    return off <= *z.target * r_.rules.prices.far_share.best || off <= z.tolerated;
}

/// The cells of a zone without a mat. Where nothing leaves a length that the sheet allows, what comes
/// nearest: priced, no longer barred, and the owner's to decide.
bool compiler::add_cells(std::size_t index, zone_situation at, approach how) {
    const zone_plan& z = out_.zones[index];
    std::vector<allowed_setup>& row = out_.choice.zones.back();
    const std::size_t before = row.size();
    if (add_cells_once(index, at, how) && near_enough(z, before)) {
        return true;
    }
    row.resize(before);
    at.lifted = true;
    how.reasons = false;
    bool any = z.target && add_cells_once(index, at, how);
    if (z.target && !(any && near_enough(z, before))) {
        // by hand, then: nobody shaves a leg for want of a comb
        row.resize(before);
        at.today.nothing_near = true;
        any = add_cells_once(index, at, how);
        if (near_enough(z, before)) {
            row.erase(std::remove_if(row.begin() + static_cast<std::ptrdiff_t>(before), row.end(),
                                     [&](const allowed_setup& s) { return !is_near(z, s); }),
                      row.end());
        }
    }
    if (any) {
        out_.lifted[index] = true;
        return true;
    }
    const auto far_longer = [&] {
        const length off = *z.now - *z.target;
        return off > z.tolerated && off > *z.target * r_.rules.prices.far_share.best;
    };
    if (!z.now || !z.target || z.hurt || far_longer()) {
        return false;
    }
    // whatever may be used here would leave it longer than it is, and that is about the wish
    candidate leave;
    leave.offered = true;
    leave.leaves = {*z.now, *z.now, *z.now};
    add_cell(index, leave_column(), leave, how);
    return true;
}

bool compiler::add_cells_once(std::size_t index, const zone_situation& at, const approach& how) {
    const zone_plan& z = at.plan;
    const auto& setups = top_.setups();
    bool any = false;
    bool reached = !z.target;
    const sieve worth_a_look(at);
    const auto add = [&](std::size_t k, bool scissors_too, bool let_through) {
        if (!let_through && !worth_a_look.lets_through(setups[k], top_.leaves(k, coat_.id))) {
            return;
        }
        const candidate c = cell_for(at, setups[k], top_.leaves(k, coat_.id), scissors_too);
        if (c.allowed()) {
            any = true;
            reached = reached || within(c.leaves.best, *z.target, z.tolerated);
        }
        add_cell(index, k, c, how);
    };
    const bool by_clipper = clips(z.how_finished);
    for (const direction d : {direction::with_lay, direction::against_lay}) {
        const bool open = z.way == lay_choice::either || by_prep_list(at) ||
                          (z.way == lay_choice::with_lay) == (d == direction::with_lay);
        if (!by_clipper || !open) {
            continue;
        }
        for (const std::size_t k : top_.clips(d)) {
            if (worth_a_look.may_clip(setups[k], top_.leaves(k, coat_.id))) {
                add(k, false, worth_a_look.by_length_alone());
            }
        }
    }
    for (const std::size_t k : top_.by_hand()) {
        add(k, by_clipper && !reached && setups[k].kind == tool_kind::scissors, false);
    }
    return any;
}

bool compiler::add_part_down(std::size_t index) {
    const zone_plan& z = out_.zones[index];
    const std::size_t k = out_.under[index];
    const work once = place_cost(r_, z.at, finish::clip);
    candidate c;
    c.offered = true;
    c.leaves = top_.leaves(k, coat_.id);
    c.price = once_more(once, r_.rules.prices) +
              (z.mat ? longer_by_felt(once, *z.mat, r_.rules.prices) : once);
    add_cell(index, k, c,
             {0, list::after_bath, {}, 0, tools_held(k, list::before_bath), r_.reasons});
    return true;
}

std::size_t compiler::leave_column() const {
    const auto& setups = top_.setups();
    return static_cast<std::size_t>(
        std::find_if(setups.begin(), setups.end(),
                     [](const setup& s) { return s.kind == tool_kind::none; }) -
        setups.begin());
}

bool compiler::add_row(std::size_t index) {
    const zone_plan& z = out_.zones[index];
    std::vector<std::vector<allowed_setup>>& zones = out_.choice.zones;
    std::vector<allowed_setup>& row = zones.emplace_back();
    row.reserve(8);  // most have fewer
    bool any = false;
    const bool spared = z.mat && z.why.what == cause::teats;
    if (spared) {
        // no blade among her teats, nor a comb that pulls: left until a veterinarian says
    } else if (out_.taken_down[index]) {
        any = add_part_down(index);
    } else if (!z.mat) {
        any = add_cells(index, zone_situation(r_, coat_, z, false),
                        {0, z.when, {}, 0, 0, r_.reasons});
    } else {
        any = add_under(index);
        if (in_mmin(out_.combing[index]) > 0) {
            const bool after = add_combed(index);
            if (after && !any) {
                // all hangs on combing out, and there may be no time for it
                row.push_back({static_cast<std::uint16_t>(leave_column()), 0,
                               static_cast<std::int32_t>(in_mmin(against_the_groomer)), 0, 0});
            }
            if (!after && any && !z.hurt) {
                // combed out it stays as it is: better than clipped off for want of a tool
                const work cost =
                    combing_of(r_, z, *mat_at(r_.patient, z.at), dog_size::medium).value_or(work{});
                row.push_back({static_cast<std::uint16_t>(out_.setups + leave_column()),
                               static_cast<std::int32_t>(in_mmin(out_.combing[index])),
                               static_cast<std::int32_t>(in_mmin(cost)),
                               z.target ? in_hundredths(*z.target) : 0, 0});
                out_.undone[index] = true;
            }
            any = any || after;
        }
    }
    std::sort(row.begin(), row.end(),
              [](const allowed_setup& a, const allowed_setup& b) { return a.setup < b.setup; });
    if (!any) {
        zones.pop_back();
    }
    return any;
}

}  // namespace pelage
