#include "planner/candidates.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "planner/double_jacket.hpp"
#include "planner/targets.hpp"

namespace pelage {

namespace {

/// Tools whose result is what the hand aims at.
bool aims(const setup& s) {
    return s.kind == tool_kind::scissors || s.kind == tool_kind::thinners ||
           s.kind == tool_kind::fingers;
}

bool uses_tool(const zone_situation& at, const setup& s, bool scissors_too) {
    if (at.mat_in) {
        return s.kind == tool_kind::clip;
    }
    if (at.plan.tidied) {
        return s.kind == tool_kind::scissors;
    }
    const bool wished = at.plan.target.has_value();
    switch (at.plan.how_finished) {
        case finish::clip:
        case finish::comb_then_scissor:
            return s.kind == tool_kind::clip || s.kind == tool_kind::none ||
                   (scissors_too && s.kind == tool_kind::scissors);
        case finish::scissor:
            return s.kind == tool_kind::scissors || s.kind == tool_kind::none;
        case finish::thin:
            return s.kind == tool_kind::thinners || (wished && s.kind == tool_kind::none);
        case finish::card:
            return s.kind == tool_kind::carder;
        case finish::hand_strip:
            return s.kind == tool_kind::fingers || (wished && s.kind == tool_kind::none);
        case finish::leave:
            break;
    }
    return s.kind == tool_kind::none;
}

bool right_way(const zone_situation& at, const setup& s) {
    return at.mat_in || at.plan.way == lay_choice::either ||
           (at.plan.way == lay_choice::with_lay) == (s.way == direction::with_lay);
}

bool is_named(const zone_plan& z, const setup& s) {
    return z.blade_wish && !s.over && s.kind == tool_kind::clip && s.tool.id == *z.blade_wish;
}

barrier::kind too_short_or_long(const zone_situation& at, const setup& s, const finished& leaves) {
    const zone_plan& z = at.plan;
    if (at.mat_in || z.tidied) {
        return barrier::kind::none;
    }
    if (z.now && s.kind != tool_kind::none && in_hundredths(leaves.best) > in_hundredths(*z.now)) {
        return barrier::kind::hair_shorter;
    }
    if (is_named(z, s) || s.kind == tool_kind::none || at.lifted) {
        return barrier::kind::none;
    }
    // scissors stray to both sides of what they are aimed at: their aim counts
    const bool by_low = s.kind == tool_kind::clip && !at.request.by_best;
    const length low = by_low ? leaves.low : leaves.best;
    if (z.between == side_of_target::longer && at.hard_least &&
        in_hundredths(low) < in_hundredths(*z.target - z.tolerated)) {
        return barrier::kind::too_short;
    }
    if (z.between == side_of_target::shorter &&
        in_hundredths(leaves.best) > in_hundredths(*z.target + z.tolerated)) {
        return barrier::kind::too_long;
    }
    return barrier::kind::none;
}

/// What a bare blade leaves here with the lay.
finished left_by_blade(const zone_situation& at, const blade& b) {
    const setup s = bare(b, direction::with_lay);
    const cut_rules& rules = at.request.rules.cut;
    const double lay = lay_of(at.request.reference, at.request.rules, at.hair.id).best;
    return left_there(at.where, s, cut_length(s, lay, rules), rules);
}

candidate prep_cell(const zone_situation& at, const setup& s, const finished& clipped) {
    candidate c;
    const zone_plan& z = at.plan;
    const auto& customary = at.where.prep_blades;
    if (s.kind == tool_kind::none && z.now && !at.mat_in && !customary.empty()) {
        // nothing to clip where the hair is no longer than the first customary blade leaves it
        const blade* b = find(at.request.reference.blades, customary.front());
        c.leaves = {*z.now, *z.now, *z.now};
        c.offered = b != nullptr && *z.now <= left_by_blade(at, *b).best;
        return c;
    }
    if (s.kind != tool_kind::clip || s.over || s.way != direction::with_lay) {
        return c;
    }
    const auto rank = std::find(customary.begin(), customary.end(), s.tool.id);
    if (rank == customary.end() && !at.mat_in) {
        return c;
    }
    c.offered = true;
    c.leaves = left_there(at.where, s, clipped, at.request.rules.cut);
    // the customary order decides
    c.price = at.takes + at.request.rules.prices.next_customary.best *
                             static_cast<std::int64_t>(at.mat_in ? 0 : rank - customary.begin());
    if (z.now && !at.mat_in && in_hundredths(c.leaves.best) > in_hundredths(*z.now)) {
        c.no.what = barrier::kind::hair_shorter;
    }
    return c;
}

/// Leaving is a choice only where the hair is known to be no longer than the wish.
bool may_leave(const zone_plan& z) {
    if (z.how_finished == finish::leave) {
        return true;
    }
    const bool scissored = z.how_finished == finish::scissor && z.aim;
    return z.now && z.target &&
           (*z.now <= *z.target + z.tolerated || (scissored && *z.now < *z.aim));
}

/// The cell of a zone with a finish, its hard rules not yet asked.
candidate finish_cell(const zone_situation& at, const setup& s, const finished& clipped,
                      bool scissors_too) {
    candidate c;
    const zone_plan& z = at.plan;
    const price_rules& p = at.request.rules.prices;
    const bool clip = s.kind == tool_kind::clip;
    if (!uses_tool(at, s, scissors_too) || (clip && !right_way(at, s)) ||
        (s.kind == tool_kind::none && !may_leave(z))) {
        return c;
    }
    c.offered = true;
    c.leaves = left_by(z, s, clipped, at.request.rules.cut);
    if (at.mat_in) {
        c.price = at.takes;
        return c;
    }
    if (z.target && !z.tidied && (clip || aims(s) || z.how_finished != finish::leave)) {
        c.no.what = too_short_or_long(at, s, c.leaves);
        if (c.no.what != barrier::kind::none && !at.request.reasons) {
            return c;  // nobody asks what it would cost
        }
        c.price +=
            miss_price(c.leaves.best, *z.target, z.tolerated, z.between, at.where.weight_tenths, p);
    }
    c.price += s.kind == tool_kind::none       ? work{}
               : s.kind == tool_kind::scissors ? at.scissors
                                               : at.takes;
    if (clip && skips(s.tool)) {
        c.price += p.skip_finish.best;
    }
    if (z.blade_wish && !is_named(z, s)) {
        c.price += p.other_blade.best;
    }
    return c;
}

}  // namespace

bool agreed(const dog& d, std::string_view id) {
    return std::find(d.consents.begin(), d.consents.end(), id) != d.consents.end();
}

finished left_by(const zone_plan& z, const setup& s, const finished& clipped,
                 const cut_rules& rules) {
    if (s.kind == tool_kind::clip) {
        return clipped;
    }
    if (aims(s) && z.target && !z.tidied) {
        const bool scissors = s.kind == tool_kind::scissors && z.aim;
        return rounded(scissored(scissors ? *z.aim : *z.target, rules));
    }
    return z.now ? finished{*z.now, *z.now, *z.now} : finished{};
}

sieve::sieve(const zone_situation& at)
    : at_(at),
      by_list_(by_prep_list(at)),
      named_(at.plan.blade_wish.has_value()),
      by_best_(at.request.by_best),
      least_(mm(-1.0)),
      most_(mm(std::numeric_limits<double>::infinity())),
      hair_(most_) {
    const zone_plan& z = at.plan;
    const auto half_past = [](const length& l, double halves) {
        return mm((in_hundredths(l) + 0.5 * halves) / 100.0);
    };
    if (at.request.reasons || !z.target || at.mat_in || z.tidied || at.where.has(zone_use::pads)) {
        return;  // everything is looked at
    }
    if (z.now) {
        hair_ = half_past(*z.now, 1.0);
    }
    if (!at.lifted && z.between == side_of_target::longer && at.hard_least) {
        least_ = half_past(*z.target - z.tolerated, -1.0);
    }
    if (!at.lifted && z.between == side_of_target::shorter) {
        most_ = half_past(*z.target + z.tolerated, 1.0);
    }
}

bool sieve::lets_through(const setup& s, const finished& leaves) const {
    if (by_list_) {
        const auto& customary = at_.where.prep_blades;
        return s.kind == tool_kind::none ||
               (s.kind == tool_kind::clip && !s.over && s.way == direction::with_lay &&
                (at_.mat_in ||
                 std::find(customary.begin(), customary.end(), s.tool.id) != customary.end()));
    }
    if (s.kind != tool_kind::clip) {
        return uses_tool(at_, s, true);
    }
    return leaves.best < hair_ && (in_band(leaves) || is_named(at_.plan, s));
}

bool by_prep_list(const zone_situation& at) {
    return at.where.where == group::prep && !at.plan.target && at.plan.how_finished == finish::clip;
}

zone_situation::zone_situation(const plan_request& r, const coat& c, const zone_plan& z,
                               bool combed)
    : request(r), hair(c), plan(z), where(r.reference.dog_body.zones[z.at.zone]) {
    mat_in = z.mat && !combed;
    hard_least = !(r.match_sides && z.beside_mat);
    const bool face = where.has(zone_use::clean_face) && r.sheet.face == "clean";
    const bool feet = where.has(zone_use::clean_feet) && r.sheet.feet == "clean";
    today.where = &where;
    today.mat = mat_in ? mat_at(r.patient, z.at) : nullptr;
    today.skin_hurt = z.hurt.has_value();
    today.bump = !z.around.empty();
    today.clean = face || feet;
    // a sheet that names the blade of cheeks and throat has a pattern there
    today.pattern = where.has(zone_use::pattern_cheek) && z.blade_wish.has_value();
    today.show = r.sheet.show && agreed(r.patient, "show-blades");
    today.thin_or_old = tender(r.patient);
    today.thin_skin = r.patient.thin_or_old;
    today.double_jacket = jacket_unsigned(r) && asks_consent(where);
    today.sheet_clips = clips(z.how_finished);
    today.target = z.target;
    today.no_combs = r.tools.combs.empty();
    takes = mat_in ? longer_by_felt(place_cost(r, z.at, finish::clip), *z.mat, r.rules.prices)
                   : place_cost(r, z.at, z.how_finished);
    scissors = place_cost(r, z.at, finish::scissor);
}

finished beneath(const mat_finding* m, const finished& left) {
    if (m == nullptr || !m->free_hair) {
        return left;
    }
    const length most = *m->free_hair;
    return {shorter(left.low, most), shorter(left.best, most), shorter(left.high, most)};
}

candidate cell_for(const zone_situation& at, const setup& s, const finished& on_the_coat,
                   bool scissors_too) {
    const finished clipped =
        beneath(at.today.mat, left_there(at.where, s, on_the_coat, at.request.rules.cut));
    const bool prep =
        at.where.where == group::prep && !at.plan.target && at.plan.how_finished == finish::clip;
    candidate c = prep ? prep_cell(at, s, clipped) : finish_cell(at, s, clipped, scissors_too);
    if (!c.offered || (c.no.what != barrier::kind::none && !at.request.reasons)) {
        return c;
    }
    const parameters& rules = at.request.rules;
    if (const auto why = refuse(s, at.today, rules.refusal, rules.cut)) {
        c.no = {barrier::kind::rule, *why};
    } else if (at.today.mat != nullptr && s.kind == tool_kind::clip) {
        if (const auto lying = refuse_under_lying_mat(s, *at.today.mat, on_the_coat.best)) {
            c.no = {barrier::kind::rule, *lying};
        }
    }
    return c;
}

}  // namespace pelage
