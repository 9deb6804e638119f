// What a choice means: each place with what is done there, and why it comes out so.
#include <algorithm>
#include <array>

#include "planner/blends.hpp"
#include "planner/candidates.hpp"
#include "planner/compile.hpp"
#include "planner/double_jacket.hpp"
#include "planner/mats.hpp"
#include "planner/targets.hpp"
#include "planner/working_order.hpp"

namespace pelage {

namespace {

/// When hair too short today will be about as long as wished; nothing on a coat that only sheds.
std::optional<hair_wait> wait_for(const plan_request& r, const zone_plan& z) {
    const coat& c = coat_of(r.reference, r.patient.coat.value());
    if (c.kind != cycle::growing) {
        return std::nullopt;
    }
    const rate_law law = r.learned != nullptr ? r.learned->next
                         : r.patient.measured.empty()
                             ? prior_rate(c, r.rules.growth)
                             : learn_rate(r.patient, r.reference, r.rules, r.today).next;
    const length near = *z.target - z.tolerated;
    const length most = terminal_at(c, zone_of(r, z).id).best;
    const days early = reach_quantile(*z.now, near, most, law, 0.1);
    const days late = reach_quantile(*z.now, near, most, law, 0.9);
    return hair_wait{is_never(late), early, late};
}

/// One row of the problem, its choice made.
struct chosen_row {
    const plan_request& r;
    const ready_kit& ready;
    const compiled_plan& c;
    std::size_t row;
    bool proven;  ///< no plan costs less
};

/// What may be used in a place, as far as it leaves a length.
struct usable {
    const setup* how = nullptr;
    length leaves{};
};
std::vector<usable> usable_in(const chosen_row& at, const zone_plan& z) {
    std::vector<usable> out;
    for (const allowed_setup& a : at.c.choice.zones[at.row]) {
        const setup& s = at.ready.top().setups()[at.c.setup_of(a.setup)];
        const bool known = s.kind != tool_kind::carder && (s.kind != tool_kind::none || z.now);
        if (known && at.c.combed(a.setup) == z.combed_out) {
            out.push_back({&s, mm(a.length / 100.0)});
        }
    }
    return out;
}

/// Beyond the tolerance. It is the nearest only if nothing that may be used here, scissors too, leaves
/// nearer; else it costs least on the whole, and what would be nearer is named.
void tell_miss(const chosen_row& at, zone_plan& z) {
    const std::vector<usable> here = usable_in(at, z);
    const auto off = [&](const length& l) { return in_hundredths(gap(l, *z.target)); };
    const usable* nearest = nullptr;
    for (const usable& u : here) {
        if (off(u.leaves) < off(nearest == nullptr ? z.leaves->best : nearest->leaves)) {
            nearest = &u;
        }
    }
    z.why = {};
    z.why.what = cause::missed;
    z.why.proven = at.proven;
    if (nearest != nullptr) {
        z.nearer = nearest->leaves;
        z.why.nearest = *nearest->how;
        z.why.more = place_work(at.r, z.at, finish::scissor) - z.takes;
    }
}

/// Why it isn't the blade that the sheet names.
not_named why_not_named(const chosen_row& at, const zone_plan& z) {
    const std::string& id = *z.blade_wish;
    const kit_blade* have = find_blade(at.r.tools, id);
    if (have == nullptr) {
        return not_named::not_in_kit;
    }
    if (!at_hand(*have, at.r.today)) {
        return have->count < 1 ? not_named::not_in_kit : not_named::out;
    }
    const std::vector<usable> here = usable_in(at, z);
    const bool allowed = std::any_of(here.begin(), here.end(), [&](const usable& u) {
        return u.how->kind == tool_kind::clip && !u.how->over && u.how->tool.id == id;
    });
    return allowed ? not_named::dearer : not_named::refused;
}

/// Clipped down before the bath: for its own mat, or with its part.
void tell_clipped_down(zone_plan& z, bool with_part, bool customary) {
    z.came = z.mat ? outcome::clipped_under : outcome::taken_down;
    z.why.what = z.mat ? cause::mat_off : cause::part_down;
    z.why.with_part = with_part;
    z.why.customary = customary;
}

/// What became of the wish in a place that something is chosen for.
void tell_outcome(const chosen_row& at, finish asked, zone_plan& z) {
    if (z.how.kind == tool_kind::none || z.tidied) {
        z.came = asked != finish::leave ? outcome::hair_shorter : outcome::left_by_sheet;
        if (z.came == outcome::hair_shorter) {
            const bool below =
                z.target && in_hundredths(*z.now) < in_hundredths(*z.target - z.tolerated);
            z.why.what = below ? cause::hair_below_wish : cause::hair_at_wish;
            z.why.wait = below ? wait_for(at.r, z) : std::nullopt;
        } else if (!z.why) {
            z.why.what = cause::by_sheet;
        }
        return;
    }
    if (!z.target || !z.leaves) {
        return;
    }
    if (z.how.kind == tool_kind::scissors && clips(asked)) {
        z.why.what = cause::scissored;
    } else if (!within(z.leaves->best, *z.target, z.tolerated)) {
        z.came = outcome::off_target;
        tell_miss(at, z);
    } else if (z.blade_wish && z.how.tool.id != *z.blade_wish) {
        z.why.what = cause::other_blade;
        z.why.named = why_not_named(at, z);
    }
}

/// Past which bound of the sheet a place comes out, if past any.
beyond_sheet beyond_of(const zone_plan& z) {
    const bool below = z.between == side_of_target::longer && z.leaves->best < *z.target;
    const bool above = z.between == side_of_target::shorter && z.leaves->best > *z.target;
    return below ? beyond_sheet::shorter : above ? beyond_sheet::longer : beyond_sheet::no;
}

/// No setup leaves about what is wished within the sheet's bounds: beyond them it is the owner's to decide.
void tell_beyond_reach(const chosen_row& at, zone_plan& z) {
    if (z.how.kind != tool_kind::clip) {
        return;
    }
    z.came = outcome::beyond_reach;
    if (within(z.leaves->best, *z.target, z.tolerated)) {
        z.why.what = cause::may_leave_less;
        return;
    }
    tell_miss(at, z);
    z.why.beyond = beyond_of(z);
}

/// Done at the length of its part: told against what was wished.
void tell_follower(const chosen_row& at, const part_follower& f, zone_plan& z) {
    z.why = {};
    z.target = f.wished;
    z.tolerated = tolerance(f.wished, zone_of(at.r, z).where == group::head, at.r.rules.prices);
    z.came = outcome::as_wished;
    if (!z.leaves || within(z.leaves->best, f.wished, z.tolerated)) {
        return;
    }
    z.why.what = cause::as_its_part;
    z.why.beyond = beyond_of(z);
    z.came = outcome::beyond_reach;
}

/// What is done about the mat before the place has its setup, or takes the place down with its part.
void read_mat(const plan_request& r, const ready_kit& ready, const compiled_plan& c,
              std::size_t zone, std::size_t column, groom& g) {
    zone_plan& z = g.zones[zone];
    if (c.combed(column)) {
        z.combed_out = true;
        g.combed.push_back({zone, *z.mat, c.combing[zone]});
        return;
    }
    const work once = place_work(r, z.at, finish::clip);
    const work off = z.mat ? longer_by_felt(once, *z.mat, r.rules.prices) : once;
    if (c.in_two_passes(zone, column)) {
        const std::size_t k = c.under[zone];
        z.off_by = ready.top().setups()[k];
        z.off_leaves = beneath(mat_at(r.patient, z.at), ready.top().leaves(k, *r.patient.coat));
        z.off_takes = off;
        if (c.with_part(zone)) {
            z.how_finished = finish::clip;
            z.takes = once_more(once, r.rules.prices);
            z.tidied = false;
        }
    } else if (z.mat) {
        z.when = list::before_bath;
        z.how_finished = finish::clip;
        z.takes = off;
        z.tidied = false;
    }
    z.trial = z.mat && depth_unknown(*mat_at(r.patient, z.at));
}

void read_choice(const plan_request& r, const ready_kit& ready, const compiled_plan& c, groom& g) {
    for (std::size_t row = 0; row < g.choice.setup.size(); ++row) {
        zone_plan& z = g.zones[c.rows[row]];
        const std::size_t k = g.choice.setup[row];
        z.how = ready.top().setups()[c.setup_of(k)];
        call_by_name(z.how, coat_of(r.reference, *r.patient.coat));
        const finished left = beneath(
            z.mat && !c.combed(k) ? mat_at(r.patient, z.at) : nullptr,
            left_there(
                zone_of(r, z), z.how,
                left_by(z, z.how, ready.top().leaves(c.setup_of(k), *r.patient.coat), r.rules.cut),
                r.rules.cut));
        const bool aimed =
            z.target && (z.how.kind == tool_kind::scissors || z.how.kind == tool_kind::thinners ||
                         z.how.kind == tool_kind::fingers);
        if (z.how.kind == tool_kind::clip || aimed || z.now) {
            z.leaves = left;
        }
        const finish asked = z.how_finished;
        if (z.how.kind == tool_kind::scissors) {
            z.how_finished = finish::scissor;
        } else if (z.leaves && by_blade_alone(z, zone_of(r, z), z.leaves->best, r.rules.refusal)) {
            z.how_finished = finish::clip;
        }
        if (z.mat && z.how.kind == tool_kind::none && (!c.combed(k) || c.undone[c.rows[row]])) {
            g.stuck.push_back(c.rows[row]);
            if (c.combed(k)) {
                read_mat(r, ready, c, c.rows[row], k, g);
            }
            continue;
        }
        z.takes =
            place_work(r, z.at, z.how.kind == tool_kind::none ? finish::leave : z.how_finished);
        read_mat(r, ready, c, c.rows[row], k, g);
        const bool off = z.mat && !z.combed_out;
        const bool with_part = c.with_part(c.rows[row]);
        if (with_part || (off && !z.off_by)) {
            tell_clipped_down(z, with_part, !zone_of(r, z).prep_blades.empty());
            continue;
        }
        const chosen_row at{r, ready, c, row, g.choice.sure.optimal};
        tell_outcome(at, asked, z);
        const part_follower* follows = c.follower(c.rows[row]);
        if (follows != nullptr && z.how.kind != tool_kind::none && !z.tidied) {
            tell_follower(at, *follows, z);
        } else if (c.lifted[c.rows[row]]) {
            tell_beyond_reach(at, z);
        }
    }
}

/// Edges of what is clipped short for a mat are taken down with it.
void take_edges_along(const plan_request& r, const ready_kit& ready, groom& g) {
    const body& b = r.reference.dog_body;
    const wishes_by_place wishes(r, ready);
    for (zone_plan& edge : g.zones) {
        if (!may_go_along(wishes, b, edge)) {
            continue;
        }
        const zone_plan* inner = nullptr;
        for (const zone_plan& z : g.zones) {
            const bool down = mat_clipped_off(z) || z.came == outcome::clipped_under ||
                              (r.match_sides && z.beside_mat);
            if (down && z.leaves && is_edge_of(b, edge.at, z.at) &&
                (inner == nullptr || z.leaves->best < inner->leaves->best)) {
                inner = &z;
            }
        }
        if (inner == nullptr || in_hundredths(inner->leaves->best) >= in_hundredths(*edge.target)) {
            continue;
        }
        edge.why = {};
        edge.why.what = cause::goes_along;
        edge.why.of = inner->at;
        edge.why.wished = edge.target;
        const length least = scissors_leave_at_least(zone_of(r, edge), r.rules.refusal);
        edge.target = longer(inner->leaves->best, least);
        edge.aim = edge.target;
        edge.tolerated =
            tolerance(*edge.target, zone_of(r, edge).where == group::head, r.rules.prices);
        if (edge.now && *edge.now <= *edge.target) {
            continue;  // no longer than that already
        }
        edge.how = by_hand(tool_kind::scissors);
        edge.leaves = rounded(scissored(*edge.target, r.rules.cut));
        edge.takes = place_work(r, edge.at, finish::scissor);
        edge.came = outcome::goes_along;
        edge.tidied = false;
    }
}

/// What the sheet says more of an ear ("upper third", "the tassel is left") doesn't hold of one that is pelted:
/// all of its leather is clipped. Nor does what it says of both ears elsewhere, where both are.
void drop_overtaken_notes(const plan_request& r, groom& g) {
    std::array<bool, side_names.size()> off{};
    for (zone_plan& z : g.zones) {
        if (mat_clipped_off(z) && zone_of(r, z).has(zone_use::ear_leather)) {
            z.note.clear();
            off[static_cast<std::size_t>(z.at.which)] = true;
        }
    }
    const bool both =
        off[static_cast<std::size_t>(side::both)] ||
        (off[static_cast<std::size_t>(side::left)] && off[static_cast<std::size_t>(side::right)]);
    for (zone_plan& z : g.zones) {
        const bool edge =
            zone_of(r, z).edge_of == "ear" && (off[static_cast<std::size_t>(z.at.which)] || both);
        if (edge || (both && z.note.find(" ears") != std::string::npos)) {
            z.note.clear();
        }
    }
}

void read_left(const plan_request& r, groom& g) {
    for (zone_plan& z : g.zones) {
        if (z.hurt) {
            z.how = by_hand(tool_kind::none);
            z.came = outcome::skin_left;
            z.why = {};
            z.why.what = z.edge_of_hurt ? cause::skin_within : cause::skin;
            if (z.edge_of_hurt) {
                z.why.of = hurt_at(r.reference.dog_body, r.patient, z.at)->at;
            }
            z.leaves = z.now ? std::optional{finished{*z.now, *z.now, *z.now}} : std::nullopt;
        }
    }
    std::sort(g.stuck.begin(), g.stuck.end());
    for (const std::size_t i : g.stuck) {
        zone_plan& z = g.zones[i];
        z.came = outcome::stuck;
        z.tidied = false;
        const mat_finding* m = z.combed_out ? nullptr : mat_at(r.patient, z.at);
        if (z.why.what == cause::teats) {
            continue;
        }
        z.why = {};
        z.why.what = m == nullptr        ? cause::no_tool
                     : depth_unknown(*m) ? cause::no_ten
                                         : cause::nothing_passes;
    }
}

}  // namespace

groom read_plan(const plan_request& r, const ready_kit& ready, compiled_plan c, solution choice) {
    groom g;
    g.stuck = c.stuck;
    g.choice = std::move(choice);
    g.zones = std::move(c.zones);
    g.down = c.down;
    g.follow = c.follow;
    read_choice(r, ready, c, g);
    if (!r.patient.mats.empty()) {
        take_edges_along(r, ready, g);
        drop_overtaken_notes(r, g);
    }
    read_left(r, g);
    g.fleas = fleas_on(r.patient);
    put_in_order(r, g);
    card_out_first(r, g);
    add_blends(r, ready, g);
    return g;
}

}  // namespace pelage
