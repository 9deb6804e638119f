#include "planner/remedies.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "planner/candidates.hpp"
#include "planner/mats.hpp"

namespace pelage::ways {

namespace {

/// A measured blade that lies outside what its makers make.
bool oddly_measured(const kit_blade& b) {
    return b.measured && b.spec.shape != edge::adjustable &&
           (*b.measured < b.spec.stated.low || *b.measured > b.spec.stated.high);
}

void add_for_mat(const plan_request& r, const zone_plan& z, std::vector<remedy>& out) {
    const mat_finding* m = mat_at(r.patient, z.at);
    if (m == nullptr || m->to_skin) {
        return;
    }
    const auto takes = comb_out_work(m->grade, r.patient.size, r.rules.prices);
    if (takes && may_be_combed(r, z.at, *m, false) &&
        *takes <= comb_out_budget(r.patient, r.rules.refusal)) {
        out.push_back({{remedy_kind::comb_out, {}, {}, takes}});
    }
    if (!m->free_hair && !m->comb_passes) {
        out.push_back({{remedy_kind::comb_tip, {}, {}, {}}});
    }
}

void add_consents(const plan_request& r, std::vector<remedy>& out) {
    const bool doubled = double_coated(*r.patient.coat);
    // no rule asks for any other consent, or for these elsewhere
    const std::pair<const char*, bool> consents[] = {{"clip-jacket", doubled},
                                                     {"show-blades", r.sheet.show}};
    for (const auto& [id, matters] : consents) {
        if (matters && !agreed(r.patient, id)) {
            out.push_back({{remedy_kind::consent, id, {}, {}}});
        }
    }
}

/// Whether a sheet or a prep zone of the reference names the blade: the usual ones.
bool usual(const reference_data& c, const std::string& id) {
    const auto in_sheet = [&](const style& s) {
        return std::any_of(s.rules.begin(), s.rules.end(),
                           [&](const sheet_rule& rule) { return rule.what.blade == id; });
    };
    const auto in_prep = [&](const zone& z) {
        return std::find(z.prep_blades.begin(), z.prep_blades.end(), id) != z.prep_blades.end();
    };
    return std::any_of(c.styles.begin(), c.styles.end(), in_sheet) ||
           std::any_of(c.dog_body.zones.begin(), c.dog_body.zones.end(), in_prep);
}

void put_in(kit& tools, const kit_blade& b) {
    std::erase_if(tools.blades, [&](const kit_blade& k) { return k.spec.id == b.spec.id; });
    tools.blades.push_back(b);
}
void put_in(kit& tools, const kit_comb& c) {
    std::erase_if(tools.combs, [&](const kit_comb& k) { return k.spec.id == c.spec.id; });
    tools.combs.push_back(c);
}

}  // namespace

std::vector<remedy> remedies_for(const plan_request& r, const zone_plan& z) {
    std::vector<remedy> out;
    add_for_mat(r, z, out);
    for (const kit_blade& b : r.tools.blades) {
        if (oddly_measured(b) && taken(r.tools, b.spec) && at_hand(b, r.today)) {
            out.push_back({{remedy_kind::measure_tool, b.spec.id, b.spec.stated.best, {}}});
        }
    }
    add_consents(r, out);
    if (z.target && z.between == side_of_target::longer) {
        out.push_back({{remedy_kind::shorter, {}, {}, {}}});
    }
    if (z.target && z.way != lay_choice::either) {
        out.push_back({{remedy_kind::either_way, {}, {}, {}}});
    }
    return out;
}

std::vector<remedy> hair_enough(const plan_request& r, const ready_kit& ready, const zone_plan& z) {
    std::vector<remedy> out;
    const mat_finding* m = mat_at(r.patient, z.at);
    if (m == nullptr || m->to_skin || m->free_hair) {
        return out;
    }
    std::vector<length> stated;
    for (const setup& s : ready.top().setups()) {
        const length l = s.tool.stated.best;
        if (s.kind == tool_kind::clip && !s.over &&
            std::find(stated.begin(), stated.end(), l) == stated.end()) {
            stated.push_back(l);
        }
    }
    std::sort(stated.begin(), stated.end());
    std::stable_partition(stated.begin(), stated.end(), [&](const length& l) {
        return in_hundredths(l) >= in_hundredths(r.rules.refusal.safe_blade.best);
    });
    for (const length& l : stated) {
        const double room = in_mm(l) / r.rules.refusal.under_mat_share.best;
        out.push_back({{remedy_kind::measure_hair, {}, mm(std::ceil(room * 10.0) / 10.0), {}}});
    }
    return out;
}

std::vector<remedy> missing_tools(const plan_request& r,
                                  const std::vector<std::string>& customary) {
    using rank = std::tuple<std::ptrdiff_t, bool, int, int, double>;
    std::vector<std::pair<rank, remedy>> ranked;
    const auto add_blade = [&](kit_blade b) {
        const auto at = std::find(customary.begin(), customary.end(), b.spec.id);
        const rank key{at - customary.begin(), !usual(r.reference, b.spec.id),
                       static_cast<int>(b.spec.shape), static_cast<int>(b.spec.cut),
                       -in_mm(b.spec.stated.best)};
        b.count = 1;
        b.out = false;
        b.out_until.reset();
        const remedy_step says{remedy_kind::blade, b.spec.id, {}, {}};
        ranked.push_back({key, {says, std::move(b), {}}});
    };
    const auto add_comb = [&](kit_comb c) {
        const rank key{static_cast<std::ptrdiff_t>(customary.size()) + 1, false, 0, 0,
                       in_mm(c.spec.stated.best)};
        c.count = 1;
        const remedy_step says{remedy_kind::comb, c.spec.id, {}, {}};
        ranked.push_back({key, {says, {}, std::move(c)}});
    };
    for (const blade& b : r.reference.blades) {
        if (b.shape != edge::adjustable && find_blade(r.tools, b.id) == nullptr &&
            taken(r.tools, b)) {
            add_blade({b, 1, {}, false, {}});
        }
    }
    for (const kit_blade& b : r.tools.blades) {
        if (b.spec.shape != edge::adjustable && taken(r.tools, b.spec) && !at_hand(b, r.today)) {
            add_blade(b);
        }
    }
    for (const comb& c : r.reference.combs) {
        const auto has = std::find_if(r.tools.combs.begin(), r.tools.combs.end(),
                                      [&](const kit_comb& k) { return k.spec.id == c.id; });
        if (has == r.tools.combs.end()) {
            add_comb({c, 1, {}, {}});
        } else if (has->count < 1) {
            add_comb(*has);
        }
    }
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<remedy> out;
    for (auto& [key, tool] : ranked) {
        out.push_back(std::move(tool));
    }
    return out;
}

void apply(const remedy& one, const plan_request& r, const place& at, changed_request& to) {
    dog& d = to.patient;
    instruction departure;
    switch (one.says.how) {
        case remedy_kind::comb_out:
            // at a visit of its own: all else was dealt with before
            std::erase_if(d.mats, [&](const mat_finding& m) { return !share_side(m.at, at); });
            for (mat_finding& m : d.mats) {
                m.at = at.which == side::both ? m.at : at;
                m.comb_out = true;
            }
            break;
        case remedy_kind::measure_hair:
        case remedy_kind::comb_tip:
            for (mat_finding& m : d.mats) {
                if (share_side(m.at, at) && one.says.how == remedy_kind::comb_tip) {
                    m.comb_passes = true;
                } else if (share_side(m.at, at) && !m.free_hair) {
                    m.free_hair = one.says.least;
                }
            }
            break;
        case remedy_kind::consent:
            d.consents.push_back(one.says.id);
            break;
        case remedy_kind::shorter:
            departure.between = side_of_target::nearest;
            to.departs(r, at, departure);
            break;
        case remedy_kind::either_way:
            departure.way = lay_choice::either;
            to.departs(r, at, departure);
            break;
        case remedy_kind::blade:
            to.kit_changed = true;
            put_in(to.tools, *one.add_blade);
            break;
        case remedy_kind::comb:
            to.kit_changed = true;
            put_in(to.tools, *one.add_comb);
            break;
        case remedy_kind::measure_tool:
            to.kit_changed = true;
            for (kit_blade& b : to.tools.blades) {
                if (b.spec.id == one.says.id) {
                    b.measured.reset();
                }
            }
            break;
        case remedy_kind::heal:
            // what heals, there or in what the place is the edge of; a lump stays
            std::erase_if(d.skin, [&](const skin_finding& f) {
                return f.state != skin_state::lump &&
                       (share_side(f.at, at) || edges(r.reference.dog_body, at, f.at));
            });
            break;
    }
}

}  // namespace pelage::ways
