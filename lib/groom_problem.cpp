#include "groom_problem.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/error.hpp>
#include <pelage/text.hpp>

#include "groom_cells.hpp"
#include "groom_jacket.hpp"
#include "groom_mats.hpp"

namespace pelage {

namespace {

/// What a mat costs that the groomer decided to comb out and that is clipped off all the same, and a
/// zone that stays matted: more than any coat lost.
constexpr work against_the_groomer = mmin(600'000);

/// Price of 0.01 mm between sides that are to match: a minute, so that nothing else outweighs it.
constexpr std::int32_t to_match = 1000;

class compiler {
  public:
    compiler(const groom_request& r, const made_ready& ready, std::vector<part> down)
        : r_(r),
          ready_(ready),
          top_(ready.top()),
          sheet_(ready.sheet()),
          wishes_(r, ready),
          coat_(coat_of(r.reference, r.patient.coat.value())) {
        out_.setups = top_.setups().size();
        out_.down = std::move(down);
        bits_.assign(2 * top_.tools().size(), worktop::none);
    }

    compiled_groom run() {
        const std::vector<place> places = wishes_.places();
        out_.zones.reserve(places.size());
        for (const place& p : places) {
            add_zone(p);
        }
        mark_beside_mats();
        take_parts_down();
        add_rows();
        add_seams();
        return std::move(out_);
    }

  private:
    [[nodiscard]] const zone& zone_of(const zone_plan& z) const {
        return r_.reference.dog_body.zones[z.at.zone];
    }

    void add_zone(const place& p);
    void decide_mat(zone_plan& z, const mat_finding* m);
    void look_at_skin(zone_plan& z) const;
    void decide_wish(zone_plan& z, const instruction& wish);
    void decide_target(zone_plan& z, const instruction& wish);
    [[nodiscard]] bool is_tidied(zone_plan z) const;
    void mark_beside_mats();
    void add_rows();
    void add_seams();
    void seam_between(std::size_t a, std::size_t b, const length& allowance);
    void take_parts_down();
    bool add_row(std::size_t index);
    [[nodiscard]] std::size_t leave_column() const;
    /// What all cells of a zone have in common.
    struct stance {
        std::size_t begin = 0;  ///< first column: 0, or that of the combed-out half
        list when = list::after_bath;
        work surcharge{};
        std::int32_t spend = 0;
        tool_set held = 0;     ///< tools held before them
        bool reasons = false;  ///< say why a setup may not be used
    };
    bool add_part_down(std::size_t index);
    bool add_under(std::size_t index);
    void find_under(std::size_t index, const zone_case& at);
    bool add_finish_after(std::size_t index, const work& off);
    bool add_combed(std::size_t index);
    bool add_cells(std::size_t index, zone_case at, stance how);
    bool add_cells_once(std::size_t index, const zone_case& at, const stance& how);
    [[nodiscard]] bool reached_by(const zone_case& at, bool combs_only) const;
    [[nodiscard]] work left_too_long(const zone_plan& z, const length& left) const;
    [[nodiscard]] bool near_enough(const zone_plan& z, std::size_t before) const;
    [[nodiscard]] work clipped_for_nothing(std::size_t index, const length& left) const;
    void add_cell(std::size_t index, std::size_t setup, const cell& c, const stance& how);
    [[nodiscard]] work edges_taken_along(const place& p, const length& left) const;
    [[nodiscard]] tool_set tools_held(std::size_t setup, list when);
    [[nodiscard]] tool_set tool_bit(std::size_t tool, list when);

    const groom_request& r_;
    const made_ready& ready_;
    const worktop& top_;
    const laid_sheet& sheet_;
    wish_list wishes_;
    const coat& coat_;
    compiled_groom out_;
    std::vector<std::size_t> bits_;  // of a tool before the bath, then after it
};

void compiler::decide_mat(zone_plan& z, const mat_finding* m) {
    out_.combing.push_back(work{});
    if (m == nullptr) {
        return;
    }
    z.mat = m->grade;
    if (m->to_skin) {
        out_.stop.push_back(title(r_.reference.dog_body, z.at));
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
    if (where.where == group::prep && !said) {
        z.how_finished = finish::clip;
        return;
    }
    z.how_finished = wish.how.value_or(said ? finish::clip : finish::leave);
    const bool clips =
        z.how_finished == finish::clip || z.how_finished == finish::comb_then_scissor;
    const bool not_signed = jacket_unsigned(r_);
    // what hangs beside a jacket that stays isn't scissored to the length the jacket was to have
    const bool beside = z.how_finished == finish::scissor && not_signed &&
                        clips_jacket(wishes_, r_.reference.dog_body);
    if ((clips || beside) && not_signed && asks_consent(where)) {
        z.withheld = true;
        z.how_finished = carded_by_default(where) ? finish::card : finish::leave;
        z.why = carded_by_default(where) ? "a double coat's jacket is carded, not clipped, unless "
                                           "the owner agrees in writing"
                                         : "a double coat's head and ears are not clipped unless "
                                           "the owner agrees in writing";
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

/// Face, feet and edges that the sheet scissors, their hair no longer than the wish: what stands out is
/// taken off all the same (common practice).
bool compiler::is_tidied(zone_plan z) const {
    const zone& w = zone_of(z);
    const bool finished_off = (w.where == group::head && !w.has(zone_use::ear_leather)) ||
                              w.where == group::feet || w.has(zone_use::scissors_only);
    const bool scissored =
        z.how_finished == finish::scissor || z.how_finished == finish::comb_then_scissor;
    if (!finished_off || !scissored || z.hurt || !z.now || !z.target ||
        *z.now > *z.target + z.tolerated || *z.now < r_.rules.prices.tidy_least.best) {
        return false;
    }
    z.tidied = true;
    const zone_case at(r_, coat_, z, true);
    return cell_for(at, by_hand(tool_kind::scissors), {}, true).allowed();
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
    zone_plan z;
    z.at = p;
    const instruction wish = wishes_.at(p);
    z.now = wishes_.hair(p);
    // dead hair is pulled from a coat that isn't slippery from the bath (from memory)
    decide_wish(z, wish);
    const bool early = zone_of(z).where == group::prep || z.how_finished == finish::hand_strip;
    z.when = early ? list::before_bath : list::after_bath;
    look_at_skin(z);
    decide_mat(z, mat_at(r_.patient, p));
    if (!r_.patient.skin.empty()) {
        z.beside_hurt = hurt_neighbours(r_, p);
    }
    z.tidied = is_tidied(z);
    z.way = r_.both_ways ? lay_choice::either : wish.way.value_or(lay_choice::with_lay);
    out_.zones.push_back(std::move(z));
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

tool_set compiler::tool_bit(std::size_t tool, list when) {
    std::size_t& bit = bits_[tool + (when == list::after_bath ? top_.tools().size() : 0)];
    if (bit == worktop::none) {
        bit = out_.choice.price.size();
        if (bit >= most_tools) {
            throw error(errc::range,
                        "a plan counts at most 64 blades and combs, before and after the bath "
                        "together; found more; leave out of the kit what this groom doesn't need");
        }
        out_.choice.price.push_back(static_cast<std::int32_t>(in_mmin(top_.tools()[tool])));
        out_.tool_of.push_back(tool);
    }
    return tool_set{1} << bit;
}

tool_set compiler::tools_held(std::size_t setup, list when) {
    const worktop::hold& h = top_.held(setup);
    return (h.blade == worktop::none ? 0 : tool_bit(h.blade, when)) |
           (h.comb == worktop::none ? 0 : tool_bit(h.comb, when));
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

void compiler::add_cell(std::size_t index, std::size_t setup, const cell& c, const stance& how) {
    zone_plan& z = out_.zones[index];
    if (!c.allowed()) {
        if (c.offered && how.reasons) {
            const char* once = how.begin > 0 ? ", the mat combed out" : "";
            z.refused.push_back({title(top_.setups()[setup]) + once, sentence(c.no, z, c.leaves)});
        }
        return;
    }
    const auto cost = std::min<std::int64_t>(in_mmin(c.price + how.surcharge), dearest);
    out_.choice.zones.back().push_back(
        {static_cast<std::uint16_t>(how.begin + setup), how.spend, static_cast<std::int32_t>(cost),
         in_hundredths(c.leaves.best), how.held | tools_held(setup, how.when)});
}

/// What it costs beyond the work that a mat is clipped off where it could have been combed out: a tangle
/// always, others where coat is lost.
work compiler::clipped_for_nothing(std::size_t index, const length& left) const {
    const zone_plan& z = out_.zones[index];
    const bool combable = in_mmin(out_.combing[index]) > 0 && zone_of(z).where != group::prep;
    const std::optional<double> weeks = weeks_lost(coat_, zone_of(z), z, left);
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
void compiler::find_under(std::size_t index, const zone_case& at) {
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
            (best == worktop::none || rank(k) > rank(best))) {
            best = k;
        }
    }
}

/// The mat is clipped off, and where the sheet wishes shorter still the place is finished after the bath.
bool compiler::add_under(std::size_t index) {
    const zone_plan& z = out_.zones[index];
    const zone_case at(r_, coat_, z, false);
    find_under(index, at);
    const std::size_t under = out_.under[index];
    stance how{0, list::before_bath, {}, 0, 0, r_.reasons};
    const bool decided = mat_at(r_.patient, z.at)->comb_out && in_mmin(out_.combing[index]) > 0;
    for (const direction d : {direction::with_lay, direction::against_lay}) {
        for (const std::size_t k : top_.clips(d)) {
            cell c = cell_for(at, top_.setups()[k], top_.leaves(k, coat_.id), false);
            if (c.allowed() && k != under) {
                c.no.what = bar::kind::not_longest;
            } else if (c.allowed()) {
                c.price += edges_taken_along(z.at, c.leaves.best) + left_too_long(z, c.leaves.best);
                how.surcharge =
                    decided ? against_the_groomer : clipped_for_nothing(index, c.leaves.best);
            }
            add_cell(index, k, c, how);
        }
    }
    if (under == worktop::none) {
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
    zone_case at(r_, coat_, cleared, true);
    stance how{0, cleared.when, off, 0, tools_held(under, list::before_bath), false};
    // by the blade under the mat alone stands already
    std::vector<allowed_setup>& row = out_.choice.zones.back();
    const std::size_t before = row.size();
    const bool any = add_cells_once(index, at, how);
    row.erase(std::remove_if(row.begin() + static_cast<std::ptrdiff_t>(before), row.end(),
                             [&](const allowed_setup& s) { return s.setup == under; }),
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
    return add_cells(index, zone_case(r_, coat_, z, true),
                     {out_.setups, z.when, cost,
                      static_cast<std::int32_t>(in_mmin(out_.combing[index])), 0, r_.reasons});
}

/// Whether something of the kit leaves a length within the tolerance.
bool compiler::reached_by(const zone_case& at, bool combs_only) const {
    const zone_plan& z = at.plan;
    for (const direction d : {direction::with_lay, direction::against_lay}) {
        const bool open = z.way == lay_choice::either ||
                          (z.way == lay_choice::with_lay) == (d == direction::with_lay);
        for (const std::size_t k : open ? top_.clips(d) : std::vector<std::size_t>{}) {
            const finished& leaves = top_.leaves(k, coat_.id);
            if ((top_.setups()[k].over || !combs_only) &&
                within(leaves.best, *z.target, z.tolerated) &&
                cell_for(at, top_.setups()[k], leaves, false).allowed()) {
                return true;
            }
        }
    }
    return false;
}

/// Whether one of the cells of the last row from `before` on leaves about what is wished.
bool compiler::near_enough(const zone_plan& z, std::size_t before) const {
    const std::vector<allowed_setup>& row = out_.choice.zones.back();
    return !z.target || std::any_of(row.begin() + static_cast<std::ptrdiff_t>(before), row.end(),
                                    [&](const allowed_setup& s) {
                                        const length off = gap(mm(s.length / 100.0), *z.target);
                                        return off <= *z.target * r_.rules.prices.far_share.best ||
                                               off <= z.tolerated;
                                    });
}

/// The cells of a zone without a mat. Where nothing leaves a length that the sheet allows, what comes
/// nearest: priced, no longer barred, and the owner's to decide.
bool compiler::add_cells(std::size_t index, zone_case at, stance how) {
    const zone_plan& z = out_.zones[index];
    const bool clips =
        z.how_finished == finish::clip || z.how_finished == finish::comb_then_scissor;
    at.today.comb_serves = clips && z.target && at.where.has(zone_use::web) && reached_by(at, true);
    std::vector<allowed_setup>& row = out_.choice.zones.back();
    const std::size_t before = row.size();
    if (add_cells_once(index, at, how) && near_enough(z, before)) {
        return true;
    }
    row.resize(before);
    at.lifted = true;
    how.reasons = false;
    if (z.target && add_cells_once(index, at, how)) {
        out_.lifted[index] = true;
        return true;
    }
    if (!z.now || !z.target || z.hurt) {
        return false;
    }
    // whatever may be used here would leave it longer than it is
    cell leave;
    leave.offered = true;
    leave.leaves = {*z.now, *z.now, *z.now};
    add_cell(index, leave_column(), leave, how);
    return true;
}

bool compiler::add_cells_once(std::size_t index, const zone_case& at, const stance& how) {
    const zone_plan& z = at.plan;
    const auto& setups = top_.setups();
    bool any = false;
    bool reached = !z.target;
    const auto add = [&](std::size_t k, bool scissors_too) {
        const cell c = cell_for(at, setups[k], top_.leaves(k, coat_.id), scissors_too);
        if (c.allowed()) {
            any = true;
            reached = reached || within(c.leaves.best, *z.target, z.tolerated);
        }
        add_cell(index, k, c, how);
    };
    const bool clips =
        z.how_finished == finish::clip || z.how_finished == finish::comb_then_scissor;
    for (const direction d : {direction::with_lay, direction::against_lay}) {
        const bool open = z.way == lay_choice::either || by_prep_list(at) ||
                          (z.way == lay_choice::with_lay) == (d == direction::with_lay);
        for (const std::size_t k : clips&& open ? top_.clips(d) : std::vector<std::size_t>{}) {
            add(k, false);
        }
    }
    for (const std::size_t k : top_.by_hand()) {
        add(k, clips && !reached && setups[k].kind == tool_kind::scissors);
    }
    return any;
}

/// Parts that come down whole: by one blade, before the bath and again after it.
void compiler::take_parts_down() {
    out_.under.assign(out_.zones.size(), worktop::none);
    out_.taken_down.assign(out_.zones.size(), false);
    out_.lifted.assign(out_.zones.size(), false);
    for (const part p : out_.down) {
        const std::size_t k = blade_for(r_, ready_, out_.zones, p);
        for (std::size_t i = 0; k != worktop::none && i < out_.zones.size(); ++i) {
            if (comes_down(r_, ready_, out_.zones[i], p, k)) {
                out_.under[i] = k;
                out_.taken_down[i] = true;
            }
        }
    }
}

bool compiler::add_part_down(std::size_t index) {
    const zone_plan& z = out_.zones[index];
    const std::size_t k = out_.under[index];
    const work once = place_cost(r_, z.at, finish::clip);
    cell c;
    c.offered = true;
    c.leaves = top_.leaves(k, coat_.id);
    c.price = once + (z.mat ? longer_by_felt(once, *z.mat, r_.rules.prices) : once);
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
    bool any = false;
    if (out_.taken_down[index]) {
        any = add_part_down(index);
    } else if (!z.mat) {
        any = add_cells(index, zone_case(r_, coat_, z, false), {0, z.when, {}, 0, 0, r_.reasons});
    } else {
        any = add_under(index);
        if (in_mmin(out_.combing[index]) > 0) {
            const bool after = add_combed(index);
            if (after && !any) {
                // all hangs on combing out, and there may be no time for it
                row.push_back({static_cast<std::uint16_t>(leave_column()), 0,
                               static_cast<std::int32_t>(in_mmin(against_the_groomer)), 0, 0});
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
    std::vector<std::vector<std::size_t>> rows(r_.reference.dog_body.zones.size());
    for (std::size_t n = 0; n < out_.rows.size(); ++n) {
        rows[out_.zones[out_.rows[n]].at.zone].push_back(n);
    }
    const std::vector<seam>& seams = r_.reference.dog_body.seams;
    for (std::size_t i = 0; i < seams.size(); ++i) {
        const seam& s = seams[i];
        for (const std::size_t a :
             sheet_.kind_of(i) == seam_kind::blend ? rows[s.a] : std::vector<std::size_t>{}) {
            for (const std::size_t b : rows[s.b]) {
                const side left = out_.zones[out_.rows[a]].at.which;
                const side right = out_.zones[out_.rows[b]].at.which;
                if (left == right || left == side::both || right == side::both) {
                    seam_between(a, b, r_.rules.prices.seam_allowance.best);
                }
            }
        }
    }
    for (const auto& pair : rows) {
        if (pair.size() == 2) {
            seam_between(pair[0], pair[1], mm(0.0));
            const zone_plan& left = out_.zones[out_.rows[pair[0]]];
            const zone_plan& right = out_.zones[out_.rows[pair[1]]];
            if (r_.match_sides && (left.beside_mat || right.beside_mat) && left.target &&
                right.target) {
                out_.choice.seams.back().per_hundredth = to_match;
            }
        }
    }
}

}  // namespace

compiled_groom compile(const groom_request& r, const made_ready& ready, std::vector<part> down) {
    if (!r.patient.coat) {
        throw error(errc::missing, "the dog's coat must be known to plan its groom");
    }
    return compiler(r, ready, std::move(down)).run();
}

compiled_groom compile(const groom_request& r) {
    return compile(r, made_ready(r));
}

chosen_groom choose_whole(const groom_request& r, const made_ready& ready) {
    chosen_groom out{compile(r, ready), {}};
    out.choice = choose(r, ready, out.compiled, out.compiled.choice);
    // taking one part down may leave time to comb out another
    for (std::vector<part> more = beyond_share(r, ready, out.compiled, out.choice);
         !more.empty() && out.compiled.down.size() < 2;
         more = beyond_share(r, ready, out.compiled, out.choice)) {
        std::vector<part> down = out.compiled.down;
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
    return out;
}

}  // namespace pelage
