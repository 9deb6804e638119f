// What a test patch teaches.
#include <algorithm>
#include <cmath>

#include <pelage/kit/test_patch.hpp>
#include <pelage/planner/kit_setups.hpp>

namespace pelage {

namespace {

/// A length so many times off is taken for a slip, as where a kit is read (assumption).
constexpr double far_off = 4.0;

/// What the kit's blade or comb is written as, without its measured length: the blade under a comb
/// keeps what it has.
length etched(const test_patch& r) {
    if (r.tool.over) {
        for (const kit_comb& c : r.tools.combs) {
            if (c.spec.id == r.tool.over->id) {
                return c.spec.stated.best;
            }
        }
        return r.tool.over->stated.best;
    }
    const kit_blade* b = find_blade(r.tools, r.tool.tool.id);
    return b != nullptr ? b->spec.stated.best : r.tool.tool.stated.best;
}

bool far_from(const length& h, const length& label) {
    return h < label / far_off || h > label * far_off;
}

double share_of(const test_patch& r, const length& h) {
    return r.tool.over ? r.rules.cut.comb_share.best : blade_share(h, r.rules.cut);
}

/// The height the setup cuts at if it left what was found on this coat as its lay is known. What is
/// left rises with the height, so halving finds it.
length height_cut(const test_patch& r) {
    if (r.tool.way == direction::against_lay) {
        return r.found;
    }
    const double more = lay_factor(lay_of(r.reference, r.rules, r.coat).best) - 1.0;
    double low = 0.0;
    double high = in_mm(r.found);
    for (int i = 0; i < 60; ++i) {
        const double h = (low + high) / 2.0;
        const bool under = h * (1.0 + more * share_of(r, mm(h))) < in_mm(r.found);
        (under ? low : high) = h;
    }
    return rounded(mm(high));
}

void learn_lay(const test_patch& r, calibration& out) {
    const length h = r.tool.tool.stated.best;
    const auto refused = [&](patch_slip why) { out.refused = {why, h, {}, {}}; };
    if (r.tool.over) {
        return refused(patch_slip::comb_tells_no_lay);
    }
    if (r.tool.way == direction::against_lay) {
        return refused(patch_slip::reversed_tells_no_lay);
    }
    if (!(blade_share(h, r.rules.cut) > 0.0)) {
        return refused(patch_slip::blade_shows_no_lay);
    }
    const auto angle = lay_from_patch(h, r.found, r.rules.cut);
    if (in_hundredths(r.found) < in_hundredths(h) || !angle) {
        return refused(patch_slip::shorter_than_reversed);
    }
    if (r.found > h * far_off) {
        return refused(patch_slip::longer_than_believed);
    }
    const double degrees = std::round(*angle * 10.0) / 10.0;
    out.lay = exactly(degrees, {basis::measured, r.today ? iso(*r.today) : "", false, {}});
}

void learn_tool(const test_patch& r, calibration& out) {
    const length h = height_cut(r);
    length own = h;
    if (r.tool.over) {
        own = rounded(h - (r.tool.tool.stated.best - r.rules.cut.comb_stated_over.best));
    }
    if (r.tool.tool.shape == edge::adjustable && !r.tool.over) {
        out.refused = {patch_slip::no_one_length, {}, own, {}};
        return;
    }
    if (const length label = etched(r); far_from(own, label)) {
        out.refused = {patch_slip::far_from_label, {}, own, label};
        return;
    }
    out.measured = own;
    out.of_comb = r.tool.over.has_value();
    out.stated_before = out.of_comb ? r.tool.over->stated.best : r.tool.tool.stated.best;
}

/// Kit and rules as they would be.
struct as_learned {
    parameters rules;
    kit tools;

    as_learned(const test_patch& r, const calibration& l) : rules(r.rules), tools(r.tools) {
        if (l.lay) {
            rules.own_lays[static_cast<std::size_t>(r.coat)] = l.lay;
        }
        for (kit_blade& b : tools.blades) {
            if (l.measured && !l.of_comb && b.spec.id == r.tool.tool.id) {
                b.measured = l.measured;
            }
        }
        for (kit_comb& c : tools.combs) {
            if (l.measured && l.of_comb && c.spec.id == r.tool.over->id) {
                c.measured = l.measured;
            }
        }
    }
};

bool same_setup(const setup& a, const setup& b) {
    return title(a) == title(b);
}

void compare_lengths(const test_patch& r, const as_learned& now, calibration& out) {
    const double before = lay_of(r.reference, r.rules, r.coat).best;
    const double after = lay_of(r.reference, now.rules, r.coat).best;
    const std::vector<setup> old = setups_of(r.tools, r.today, r.rules.cut);
    for (const setup& s : setups_of(now.tools, r.today, now.rules.cut)) {
        const auto was =
            std::find_if(old.begin(), old.end(), [&](const setup& o) { return same_setup(o, s); });
        if (s.kind != tool_kind::clip || was == old.end()) {
            continue;
        }
        const changed_length c{s, rounded(cut_length(*was, before, r.rules.cut)),
                               rounded(cut_length(s, after, now.rules.cut))};
        if (!(c.before == c.after)) {
            out.lengths.push_back(c);
        }
    }
}

std::vector<judged_target> judged(const test_patch& r, const parameters& rules, const kit& k) {
    return judge_targets(r.reference, rules, k, r.sheets, setups_of(k, r.today, rules.cut));
}

void compare_targets(const test_patch& r, const as_learned& now, calibration& out) {
    const auto before = judged(r, r.rules, r.tools);
    const auto after = judged(r, now.rules, now.tools);
    for (std::size_t t = 0; t < before.size(); ++t) {
        const bool met = !before[t].met_by.empty();
        const bool meets = !after[t].met_by.empty();
        if (met != meets && before[t].what.coat == r.coat) {
            out.targets.push_back(
                {before[t].what.sheet, before[t].what.zone, meets, before[t].what.season});
        }
    }
}

}  // namespace

calibration read_patch(const test_patch& r) {
    calibration out;
    out.lay_before = lay_of(r.reference, r.rules, r.coat).best;
    out.expected = cut_length(r.tool, out.lay_before, r.rules.cut);
    const bool of_tool =
        r.sets == patch_sets::tool || (r.sets == patch_sets::by_direction &&
                                       (r.tool.over || r.tool.way == direction::against_lay));
    if (of_tool) {
        learn_tool(r, out);
    } else {
        learn_lay(r, out);
    }
    if (out.refused) {
        return out;
    }
    const as_learned now(r, out);
    compare_lengths(r, now, out);
    compare_targets(r, now, out);
    return out;
}

}  // namespace pelage
