// Other ways to groom the dog: each is the same problem with setups barred, or the plan of a changed
// request. Nothing is searched here but by choose(), so each is the best of its kind.
#include <algorithm>
#include <array>
#include <map>

#include <pelage/planner/alternatives.hpp>

#include "planner/alternatives_parts.hpp"
#include "planner/double_jacket.hpp"

namespace pelage {

std::string_view name(way_kind w) {
    constexpr std::array<std::string_view, 6> names{"body-length", "fewer-tools", "no-scissoring",
                                                    "sides-alike", "clip-mats",   "test-patch"};
    return names[static_cast<std::size_t>(w)];
}

namespace ways {

namespace {

// ---- the body at another length ----

/// Rows of the body done at the length of most of it.
std::vector<std::size_t> main_rows(const same_problem& at, const groom& g) {
    const compiled_plan& c = at.compiled();
    const auto in_question = [&](std::size_t row) {
        const zone_plan& z = g.zones[c.rows[row]];
        return at.request().reference.dog_body.zones[z.at.zone].where == group::body && z.target &&
               z.how.kind == tool_kind::clip && z.came != outcome::clipped_under;
    };
    std::map<std::int32_t, work> by_length;
    for (std::size_t row = 0; row < c.rows.size(); ++row) {
        if (in_question(row)) {
            const zone_plan& z = g.zones[c.rows[row]];
            by_length[in_hundredths(z.leaves->best)] +=
                place_work(at.request(), z.at, finish::clip);
        }
    }
    if (by_length.empty()) {
        return {};
    }
    const auto most =
        std::max_element(by_length.begin(), by_length.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    std::vector<std::size_t> out;
    for (std::size_t row = 0; row < c.rows.size(); ++row) {
        const zone_plan& z = g.zones[c.rows[row]];
        if (in_question(row) &&
            std::abs(in_hundredths(z.leaves->best) - most->first) <= in_hundredths(z.tolerated)) {
            out.push_back(row);
        }
    }
    return out;
}

/// The problem with what comes within the tolerance of today's plan barred in those rows; and all that
/// is longer, if only shorter is wanted.
problem at_another_length(const same_problem& at, const groom& g,
                          const std::vector<std::size_t>& rows, bool shorter_only) {
    const compiled_plan& c = at.compiled();
    problem p = c.choice;
    for (const std::size_t row : rows) {
        const zone_plan& z = g.zones[c.rows[row]];
        std::erase_if(p.zones[row], [&](const allowed_setup& s) {
            const std::int32_t off = s.length - in_hundredths(z.leaves->best);
            // nobody scissors a body that the plan clips
            const bool far =
                z.came != outcome::beyond_reach &&
                s.length <
                    in_hundredths(*z.target * (1.0 - at.request().rules.prices.far_share.best));
            return std::abs(off) <= in_hundredths(z.tolerated) || (shorter_only && off > 0) ||
                   far || at.setup_at(s.setup).kind != tool_kind::clip;
        });
    }
    return p;
}

std::optional<other_way> body_length(const same_problem& at, const groom& g) {
    const std::vector<std::size_t> rows = main_rows(at, g);
    if (rows.empty()) {
        return std::nullopt;
    }
    const auto finished_way = [&](const same_problem& in, bool beyond) -> std::optional<other_way> {
        solution s = in.choose(at_another_length(in, g, rows, beyond));
        if (s.setup.empty()) {
            return std::nullopt;
        }
        other_way w = compared(way_kind::body_length, g, in.read(std::move(s)));
        w.beyond_sheet = beyond;
        for (const std::size_t row : rows) {
            const std::size_t i = at.compiled().rows[row];
            const zone_plan& was = g.zones[i];
            const zone_plan& z = w.plan.zones[i];
            if (!z.leaves || in_hundredths(gap(z.leaves->best, was.leaves->best)) <=
                                 in_hundredths(was.tolerated)) {
                continue;  // a place that follows its part may have come back
            }
            w.about.push_back(i);
            w.beyond_sheet = w.beyond_sheet || (z.came == outcome::beyond_reach &&
                                                z.leaves->best < *z.target - z.tolerated);
        }
        return w.about.empty() ? std::nullopt : std::optional{std::move(w)};
    };
    if (auto w = finished_way(at, false)) {
        return w;
    }
    changed_request changed(at.request());
    for (const std::size_t row : rows) {
        instruction shorter;
        shorter.between = side_of_target::shorter;
        changed.departs(at.request(), at.compiled().zones[at.compiled().rows[row]].at, shorter);
    }
    const same_problem relaxed(changed.of(at.request(), at.ready()), g);
    // a wider departure on one side may stand over ours: then the rows are no longer the same
    return relaxed.compiled().rows == at.compiled().rows ? finished_way(relaxed, true)
                                                         : std::nullopt;
}

// ---- no scissoring ----

/// A pattern breed, whose scissored legs, chest and ears are furnishings: a wire or feathered coat, or a
/// sheet that asks whether the jacket may be clipped (common practice).
bool furnished(const plan_request& r) {
    const auto& asks = r.sheet.consent;
    return stripped_by_custom(*r.patient.coat) ||
           std::find(asks.begin(), asks.end(), "clip-jacket") != asks.end();
}

/// Scissored whatever the style: ear edges, eyebrows, muzzle and beard, topknot, round feet, skirt,
/// furnishings, plume (common practice). A sheet that combs a place before it scissors it lets the
/// clipper on it; on a beard or round feet only scissors give the shape.
bool by_scissors_only(const plan_request& r, const zone_plan& z) {
    const zone& w = r.reference.dog_body.zones[z.at.zone];
    if (w.has(zone_use::scissors_only) || (w.where == group::feet && r.sheet.feet != "clean") ||
        (w.id == "muzzle" && r.sheet.face == "bearded")) {
        return true;
    }
    const bool shaped = w.id == "muzzle" || w.id == "skull" || w.where == group::tail;
    return z.how_finished == finish::scissor && (shaped || furnished(r));
}

std::optional<other_way> no_scissoring(const same_problem& at, const groom& g) {
    const plan_request& r = at.request();
    const bool not_clipped = jacket_unsigned(r);
    changed_request changed(r);
    for (const zone_plan& z : at.compiled().zones) {
        const bool scissored = scissors_last(z.how_finished);
        const zone& w = r.reference.dog_body.zones[z.at.zone];
        const bool carded = not_clipped && asks_consent(w);
        if (scissored && z.target && !z.hurt && !carded && !by_scissors_only(r, z)) {
            instruction clip;
            clip.how = finish::clip;
            changed.departs(r, z.at, clip);
        }
    }
    if (changed.patient.departures.size() == r.patient.departures.size()) {
        return std::nullopt;
    }
    other_way w = compared(way_kind::no_scissoring, g, plan_again(changed.of(r, at.ready())));
    for (const std::size_t i : w.changed) {
        const auto with_scissors = [](const zone_plan& z) {
            return z.how.kind == tool_kind::scissors || z.how_finished == finish::comb_then_scissor;
        };
        if (with_scissors(g.zones[i]) && !with_scissors(w.plan.zones[i])) {
            w.about.push_back(i);
        }
    }
    return w.more < work{} && !w.about.empty() ? std::optional{std::move(w)} : std::nullopt;
}

// ---- left and right alike ----

/// Left and right of pairs matted on one side that come out with a step one sees.
std::vector<std::size_t> uneven(const plan_request& r, const groom& g) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i + 1 < g.zones.size(); ++i) {
        const zone_plan& left = g.zones[i];
        const zone_plan& right = g.zones[i + 1];
        const bool pair = left.at.zone == right.at.zone && left.at.which == side::left;
        if (pair && (left.beside_mat || right.beside_mat) && left.leaves && right.leaves &&
            gap(left.leaves->best, right.leaves->best) > r.rules.prices.seam_allowance.best) {
            out.push_back(i);
            out.push_back(i + 1);
        }
    }
    return out;
}

std::optional<other_way> sides_alike(const same_problem& at, const groom& g) {
    const std::vector<std::size_t> pairs = uneven(at.request(), g);
    if (pairs.empty() || at.request().match_sides) {
        return std::nullopt;
    }
    plan_request r = at.request();
    r.top = &at.top();
    r.laid = &at.ready().sheet();
    r.match_sides = true;
    other_way w = compared(way_kind::sides_alike, g, plan_again(r));
    const std::vector<std::size_t> left_over = uneven(at.request(), w.plan);
    std::set_difference(pairs.begin(), pairs.end(), left_over.begin(), left_over.end(),
                        std::back_inserter(w.about));
    return w.about.empty() ? std::nullopt : std::optional{std::move(w)};
}

// ---- nearer, if a patch proves it ----

/// A blade that should leave what is wished, but may leave less than the sheet allows.
std::optional<other_way> test_patch(const same_problem& at, const groom& g) {
    const bool misses = std::any_of(g.zones.begin(), g.zones.end(), [](const zone_plan& z) {
        return z.came == outcome::off_target || z.came == outcome::beyond_reach;
    });
    if (!misses) {
        return std::nullopt;
    }
    plan_request r = at.request();
    r.top = &at.top();
    r.laid = &at.ready().sheet();
    r.by_best = true;
    other_way w = compared(way_kind::test_patch, g, plan_again(r));
    for (const std::size_t i : w.changed) {
        const zone_plan& was = g.zones[i];
        const zone_plan& z = w.plan.zones[i];
        if (was.came != outcome::goes_along && z.target && z.leaves && was.leaves &&
            z.how.kind == tool_kind::clip &&
            in_hundredths(gap(z.leaves->best, *z.target)) <
                in_hundredths(gap(was.leaves->best, *z.target))) {
            w.about.push_back(i);
        }
    }
    return w.about.empty() ? std::nullopt : std::optional{std::move(w)};
}

/// Whether `w` comes to the same groom as one before it.
bool again(const std::vector<other_way>& before, const other_way& w) {
    return std::any_of(before.begin(), before.end(),
                       [&](const other_way& one) { return changes(one.plan, w.plan).empty(); });
}

}  // namespace

}  // namespace ways

std::vector<other_way> other_ways(const plan_request& r, const groom& g) {
    std::vector<other_way> out;
    if (!g.planned()) {
        return out;
    }
    const ways::same_problem at(r, g);
    for (auto* const make : {&ways::body_length, &ways::fewer_tools, &ways::no_scissoring,
                             &ways::sides_alike, &ways::clip_mats, &ways::test_patch}) {
        std::optional<other_way> w = make(at, g);
        if (w && !w->changed.empty() && ways::no_worse_stuck(g, w->plan) && !ways::again(out, *w)) {
            out.push_back(std::move(*w));
        }
    }
    return out;
}

beside beside_plan(const plan_request& r, const groom& g, bool explain) {
    beside b;
    b.ways = other_ways(r, g);
    b.grow_back = ways_to_grow_back(r, g);
    b.stuck = infeasible_zones(r, g);
    if (explain) {
        b.without = without_each_tool(r, g);
        b.why = reasons_why(r, g);
    }
    return b;
}

}  // namespace pelage
