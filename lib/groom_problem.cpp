#include "groom_problem.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include <pelage/error.hpp>
#include <pelage/text.hpp>

#include "groom_columns.hpp"
#include "groom_wish.hpp"

namespace pelage {

namespace {

/// What one setup would do in one zone: nothing if it isn't among the finish's tools at all.
struct cell {
    bool offered = false;
    std::string no;  ///< why not; empty if allowed
    finished leaves{};
    work takes{};
    work price{};  ///< work and miss
};

/// Tools whose result is what the hand aims at.
bool aims(const setup& s) {
    return s.kind == tool_kind::scissors || s.kind == tool_kind::thinners ||
           s.kind == tool_kind::fingers;
}

/// Where a double coat is carded: its jacket, and the body, legs and tail around it, since nobody
/// clips those and leaves the jacket standing.
bool carded_by_default(const zone& z) {
    return z.has(zone_use::jacket) || z.where == group::body || z.where == group::legs ||
           z.where == group::tail;
}

bool agreed(const groom_request& r, std::string_view id) {
    const auto& c = r.patient.consents;
    return std::find(c.begin(), c.end(), id) != c.end();
}

bool double_coat(const groom_request& r) {
    return r.patient.coat == coat_class::double_short || r.patient.coat == coat_class::double_long;
}

class compiler {
  public:
    explicit compiler(const groom_request& r)
        : r_(r), wishes_(r), coat_(coat_of(r.reference, r.patient.coat.value())) {
        out_.columns = setups_of(r.tools, r.today, r.rules.cut);
    }

    compiled_groom run() {
        work combing{};
        for (const place& p : wishes_.places()) {
            add_zone(p, combing);
        }
        add_rows();
        add_seams();
        return std::move(out_);
    }

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }

    void add_zone(const place& p, work& combing);
    void decide_mat(zone_plan& z, const mat_finding* m, work& combing);
    void decide_wish(zone_plan& z, const instruction& wish);
    void decide_target(zone_plan& z, const instruction& wish);
    void add_rows();
    void add_seams();
    bool add_row(std::size_t index);

    [[nodiscard]] static bool uses_tool(const zone_plan& z, const setup& s, bool scissors_too);
    [[nodiscard]] static bool right_way(const zone_plan& z, const setup& s);
    [[nodiscard]] cell cell_for(const zone_plan& z, const setup& s, bool scissors_too) const;
    [[nodiscard]] cell prep_cell(const zone_plan& z, const setup& s) const;
    [[nodiscard]] static std::string too_short_or_long(const zone_plan& z, const setup& s,
                                                       const finished& leaves);
    [[nodiscard]] static bool reached(const zone_plan& z, const std::vector<cell>& cells);
    [[nodiscard]] static bool is_named(const zone_plan& z, const setup& s) {
        return z.blade_wish && !s.over && s.kind == tool_kind::clip && s.tool.id == *z.blade_wish;
    }
    [[nodiscard]] tool_set tools_held(const setup& s, list when);
    std::size_t tool_index(const std::string& id, list when, const work& price);

    const groom_request& r_;
    wish_list wishes_;
    const coat& coat_;
    compiled_groom out_;
    std::map<std::pair<std::string, list>, std::size_t> tool_;
};

void compiler::decide_mat(zone_plan& z, const mat_finding* m, work& combing) {
    if (m == nullptr) {
        return;
    }
    z.mat = m->grade;
    const std::string where = title(r_.reference.dog_body, z.at);
    if (m->to_skin) {
        out_.stop.push_back(where);
        return;
    }
    const auto takes = comb_out_work(m->grade, r_.patient.size, r_.rules.prices);
    const bool wanted = m->grade == mat_grade::tangle || m->comb_out;
    const bool never = zone_of(z).has(zone_use::never_demat) || z.hurt;
    if (!wanted || never || !takes || combing + *takes > r_.rules.refusal.comb_out_limit.best) {
        return;
    }
    combing += *takes;
    z.combed_out = true;
    out_.combed.push_back({out_.zones.size(), m->grade, *takes});
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
        z.target = cut_length(bare(b, d), coat_.lay_degrees.best, r_.rules.cut).best;
    } else {
        z.target = wish.target;
    }
    if (z.target) {
        z.target = rounded(*z.target);
        z.tolerated = wish.tolerance.value_or(
            tolerance(*z.target, zone_of(z).where == group::head, r_.rules.prices));
    }
}

void compiler::decide_wish(zone_plan& z, const instruction& wish) {
    const zone& where = zone_of(z);
    const bool said = wish.target || wish.blade || wish.how;
    z.note = wish.note;
    z.between = wish.between.value_or(side_of_target::longer);
    if (where.where == group::prep && !said) {
        z.how_finished = finish::clip;
        return;
    }
    z.how_finished = wish.how.value_or(said ? finish::clip : finish::leave);
    const bool clips =
        z.how_finished == finish::clip || z.how_finished == finish::comb_then_scissor;
    if (clips && double_coat(r_) && carded_by_default(where) && !agreed(r_, "clip-jacket")) {
        z.how_finished = finish::card;
        z.why = "a double coat's jacket is carded, not clipped, unless the owner agrees in writing";
    }
    if (z.how_finished != finish::leave && z.how_finished != finish::card) {
        decide_target(z, wish);
    }
    // without a length there is nothing to clip or scissor to
    const bool needs_length = z.how_finished == finish::clip ||
                              z.how_finished == finish::comb_then_scissor ||
                              z.how_finished == finish::scissor;
    if (needs_length && !z.target) {
        z.how_finished = finish::leave;
        z.why = "the sheet gives no length here";
    }
}

void compiler::add_zone(const place& p, work& combing) {
    zone_plan z;
    z.at = p;
    const instruction wish = wishes_.at(p);
    z.now = wishes_.hair(p);
    z.when = zone_of(z).where == group::prep ? list::before_bath : list::after_bath;
    decide_wish(z, wish);
    if (const skin_finding* f = hurt_at(r_.patient, p)) {
        z.hurt = f->state;
    }
    decide_mat(z, mat_at(r_.patient, p), combing);
    // dead hair is pulled from a coat that isn't slippery from the bath (from memory)
    if ((z.mat && !z.combed_out) || z.how_finished == finish::hand_strip) {
        z.when = list::before_bath;
    }
    z.beside_hurt = hurt_neighbours(r_, p);
    z.way = r_.both_ways ? lay_choice::either : wish.way.value_or(lay_choice::with_lay);
    out_.zones.push_back(std::move(z));
}

bool compiler::uses_tool(const zone_plan& z, const setup& s, bool scissors_too) {
    if (z.mat && !z.combed_out) {
        return s.kind == tool_kind::clip;
    }
    switch (z.how_finished) {
        case finish::clip:
        case finish::comb_then_scissor:
            return s.kind == tool_kind::clip || s.kind == tool_kind::none ||
                   (scissors_too && s.kind == tool_kind::scissors);
        case finish::scissor:
            return s.kind == tool_kind::scissors || s.kind == tool_kind::none;
        case finish::thin:
            return s.kind == tool_kind::thinners || (z.target && s.kind == tool_kind::none);
        case finish::card:
            return s.kind == tool_kind::carder;
        case finish::hand_strip:
            return s.kind == tool_kind::fingers || (z.target && s.kind == tool_kind::none);
        case finish::leave:
            break;
    }
    return s.kind == tool_kind::none;
}

bool compiler::right_way(const zone_plan& z, const setup& s) {
    if (z.mat && !z.combed_out) {
        return s.way == direction::with_lay;  // against the lay a blade digs into a mat
    }
    return z.way == lay_choice::either ||
           (z.way == lay_choice::with_lay) == (s.way == direction::with_lay);
}

std::string compiler::too_short_or_long(const zone_plan& z, const setup& s,
                                        const finished& leaves) {
    if (z.mat && !z.combed_out) {
        return {};
    }
    if (z.now && s.kind != tool_kind::none && in_hundredths(leaves.best) > in_hundredths(*z.now)) {
        return "longer than today's hair (" + show(*z.now) + "): it would do nothing";
    }
    if (is_named(z, s) || s.kind == tool_kind::none) {
        return {};
    }
    const length least = *z.target - z.tolerated;
    const length most = *z.target + z.tolerated;
    // scissors stray to both sides of what they are aimed at: their aim counts
    const length low = s.kind == tool_kind::clip ? leaves.low : leaves.best;
    if (z.between == side_of_target::longer && in_hundredths(low) < in_hundredths(least)) {
        return "may leave as little as " + show(low) + "; the sheet goes no shorter than " +
               show(least);
    }
    if (z.between == side_of_target::shorter && in_hundredths(leaves.best) > in_hundredths(most)) {
        return "leaves " + show(leaves.best) + "; the sheet goes no longer than " + show(most);
    }
    return {};
}

cell compiler::prep_cell(const zone_plan& z, const setup& s) const {
    cell c;
    const zone& where = zone_of(z);
    const auto rank = std::find(where.prep_blades.begin(), where.prep_blades.end(), s.tool.id);
    const bool under_mat = z.mat && !z.combed_out;
    if (s.kind == tool_kind::none && z.now && !under_mat && !where.prep_blades.empty()) {
        // nothing to clip where the hair is no longer than the first customary blade leaves it
        const blade* b = find(r_.reference.blades, where.prep_blades.front());
        c.leaves = {*z.now, *z.now, *z.now};
        c.offered = b != nullptr && *z.now <= cut_length(bare(*b, direction::with_lay),
                                                         coat_.lay_degrees.best, r_.rules.cut)
                                                  .best;
        return c;
    }
    if (s.kind != tool_kind::clip || s.over || s.way != direction::with_lay ||
        (rank == where.prep_blades.end() && !under_mat)) {
        return c;
    }
    c.offered = true;
    c.leaves = rounded(cut_length(s, coat_.lay_degrees.best, r_.rules.cut));
    c.takes = place_work(r_, z.at, finish::clip);
    // the customary order decides: a step down the list costs a minute (assumption)
    c.price = c.takes + minutes(1.0) * static_cast<std::int64_t>(rank - where.prep_blades.begin());
    if (z.now && !under_mat && in_hundredths(c.leaves.best) > in_hundredths(*z.now)) {
        c.no = "longer than today's hair (" + show(*z.now) + "): it would do nothing";
    }
    return c;
}

cell compiler::cell_for(const zone_plan& z, const setup& s, bool scissors_too) const {
    const zone& where = zone_of(z);
    cell c;
    if (where.where == group::prep && !z.target && z.how_finished == finish::clip) {
        c = prep_cell(z, s);
    } else if (uses_tool(z, s, scissors_too)) {
        const bool clip = s.kind == tool_kind::clip;
        if (clip && !right_way(z, s)) {
            return c;
        }
        if (s.kind == tool_kind::none && z.how_finished != finish::leave) {
            // leaving is a choice only where the hair is known to be no longer than the wish
            if (!z.now || !z.target || *z.now > *z.target + z.tolerated) {
                return c;
            }
        }
        c.offered = true;
        const bool aimed = aims(s) && z.target.has_value();
        c.leaves = clip    ? rounded(cut_length(s, coat_.lay_degrees.best, r_.rules.cut))
                   : aimed ? rounded(scissored(*z.target, r_.rules.cut))
                   : z.now ? finished{*z.now, *z.now, *z.now}
                           : finished{};
        const finish how = s.kind == tool_kind::none       ? finish::leave
                           : s.kind == tool_kind::scissors ? finish::scissor
                           : z.mat && !z.combed_out        ? finish::clip
                                                           : z.how_finished;
        c.takes = place_work(r_, z.at, how);
        c.price = c.takes;
        if (z.target && (clip || aimed || z.how_finished != finish::leave)) {
            c.price += miss_price(c.leaves.best, *z.target, z.tolerated, z.between,
                                  where.weight_tenths, r_.rules.prices);
            c.no = too_short_or_long(z, s, c.leaves);
        }
        if (clip && !z.target && z.mat) {
            // nothing is wished here but that the mat comes off: the longest blade that fits
            c.price += mmin(std::llround(
                std::max(0.0, in_mm(r_.rules.refusal.under_mat_longest.best - c.leaves.best)) *
                10));
        }
        if (clip && skips(s.tool)) {
            c.price += r_.rules.prices.skip_finish.best;
        }
        if (z.blade_wish && !is_named(z, s)) {
            c.price += minutes(1.0);  // the sheet means the blade it names (assumption)
        }
    }
    if (c.offered) {
        if (const auto why = refuse(s, today_in(r_, z), r_.rules.refusal, r_.rules.cut)) {
            c.no = reason(*why);
        }
    }
    return c;
}

bool compiler::reached(const zone_plan& z, const std::vector<cell>& cells) {
    return std::any_of(cells.begin(), cells.end(), [&](const cell& c) {
        return c.offered && c.no.empty() && within(c.leaves.best, *z.target, z.tolerated);
    });
}

std::size_t compiler::tool_index(const std::string& id, list when, const work& price) {
    const auto [at, fresh] = tool_.try_emplace({id, when}, out_.choice.price.size());
    if (fresh) {
        if (at->second >= most_tools) {
            throw error(errc::range,
                        "a plan counts at most 64 blades and combs, before and after the bath "
                        "together; found more; leave out of the kit what this groom doesn't need");
        }
        out_.choice.price.push_back(static_cast<std::int32_t>(in_mmin(price)));
    }
    return at->second;
}

tool_set compiler::tools_held(const setup& s, list when) {
    tool_set held = 0;
    if (s.kind != tool_kind::clip) {
        return held;
    }
    const price_rules& p = r_.rules.prices;
    const work& blade_price =
        r_.tools.clippers > 1 ? p.pick_up_second_clipper.best : p.pick_up_blade.best;
    held |= tool_set{1} << tool_index("blade " + s.tool.id, when, blade_price);
    if (s.over) {
        held |= tool_set{1} << tool_index("comb " + s.over->id, when, p.pick_up_comb.best);
    }
    return held;
}

bool compiler::add_row(std::size_t index) {
    zone_plan& z = out_.zones[index];
    std::vector<cell> cells;
    const auto fill = [&](bool scissors_too) {
        cells.clear();
        for (const setup& s : out_.columns) {
            cells.push_back(cell_for(z, s, scissors_too));
        }
    };
    fill(false);
    const bool may_scissor =
        z.target && !(z.mat && !z.combed_out) &&
        (z.how_finished == finish::clip || z.how_finished == finish::comb_then_scissor);
    if (may_scissor && !reached(z, cells)) {
        fill(true);
    }
    z.refused.clear();
    bool any = false;
    for (std::size_t k = 0; k < cells.size(); ++k) {
        const cell& c = cells[k];
        const bool allowed = c.offered && c.no.empty();
        any = any || allowed;
        if (c.offered && !allowed) {
            z.refused.push_back({title(out_.columns[k]), c.no});
        }
        out_.choice.cost.push_back(
            allowed ? static_cast<std::int32_t>(std::min<std::int64_t>(in_mmin(c.price), dearest))
                    : forbidden);
        out_.choice.length.push_back(in_hundredths(c.leaves.best));
        out_.choice.tools.push_back(allowed ? tools_held(out_.columns[k], z.when) : 0);
        out_.leaves.push_back(c.leaves);
    }
    if (!any) {
        const auto keep = out_.choice.cost.size() - cells.size();
        out_.choice.cost.resize(keep);
        out_.choice.length.resize(keep);
        out_.choice.tools.resize(keep);
        out_.leaves.resize(keep);
    }
    return any;
}

void compiler::add_rows() {
    out_.choice.setups = out_.columns.size();
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
    out_.choice.zones = out_.rows.size();
}

void compiler::add_seams() {
    const price_rules& p = r_.rules.prices;
    const auto per_hundredth = static_cast<std::int32_t>(
        std::llround(static_cast<double>(in_mmin(p.seam_per_mm.best)) / 100.0));
    for (const seam& s : r_.reference.dog_body.seams) {
        if (s.kind == seam_kind::line) {
            continue;
        }
        for (std::size_t a = 0; a < out_.rows.size(); ++a) {
            for (std::size_t b = 0; b < out_.rows.size(); ++b) {
                const zone_plan& za = out_.zones[out_.rows[a]];
                const zone_plan& zb = out_.zones[out_.rows[b]];
                const bool same_side = za.at.which == zb.at.which || za.at.which == side::both ||
                                       zb.at.which == side::both;
                // only cut zones are blended, and what the sheet itself steps is its pattern
                if (za.at.zone == s.a && zb.at.zone == s.b && same_side && za.target && zb.target) {
                    const length asked = gap(*za.target, *zb.target);
                    out_.choice.seams.push_back(
                        {a, b, per_hundredth, in_hundredths(p.seam_allowance.best + asked)});
                }
            }
        }
    }
}

}  // namespace

zone_today today_in(const groom_request& r, const zone_plan& z) {
    const zone& where = r.reference.dog_body.zones[z.at.zone];
    zone_today t;
    t.where = &where;
    t.mat = z.mat && !z.combed_out ? mat_at(r.patient, z.at) : nullptr;
    t.skin_hurt = z.hurt.has_value();
    const bool face = where.has(zone_use::clean_face) && r.sheet.face == "clean";
    const bool feet = where.has(zone_use::clean_feet) && r.sheet.feet == "clean";
    t.clean = face || feet;
    t.pattern = where.has(zone_use::pattern_cheek);
    t.show = r.sheet.show && agreed(r, "show-blades");
    t.thin_or_old = r.patient.thin_or_old;
    t.double_jacket = double_coat(r) && carded_by_default(where) && !agreed(r, "clip-jacket");
    t.sheet_clips = z.how_finished == finish::clip || z.how_finished == finish::comb_then_scissor;
    return t;
}

compiled_groom compile(const groom_request& r) {
    if (!r.patient.coat) {
        throw error(errc::missing, "the dog's coat must be known to plan its groom");
    }
    return compiler(r).run();
}

}  // namespace pelage
