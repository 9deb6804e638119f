// Mats. What may be combed out is combed out while time remains: clipping it off shorter than wished is
// priced so that nothing else outweighs it, and by the weeks it costs where there isn't time for all.
// Under a mat goes the longest blade that passes; where much of a part is matted, one blade for all of it.
#include "planner/mats.hpp"

#include <algorithm>

#include "planner/candidates.hpp"

namespace pelage {

namespace {

bool cut_by_sheet(const zone_plan& z) {
    return z.target && cuts(z.how_finished);
}

bool in_part(const plan_request& r, const zone_plan& z, part p) {
    return part_of(zone_of(r, z)) == p;
}

}  // namespace

bool leaves_mats(const plan_request& r) {
    return r.booked != nullptr && !r.booked->has(service_step::before_bath) &&
           !r.patient.mats.empty();
}

bool may_be_combed(const plan_request& r, const place& p, const mat_finding& m, bool hurt) {
    const zone& where = r.reference.dog_body.zones[p.zone];
    const bool feet = where.where == group::feet && m.grade != mat_grade::tangle;
    const bool bitten = may_bite(r.patient) && (where.has(zone_use::clean_face) || feet);
    return !bitten && may_comb_out(m, where, hurt, r.rules.refusal);
}

std::optional<work> combing_of(const plan_request& r, const zone_plan& z, const mat_finding& m,
                               dog_size size) {
    if (!may_be_combed(r, z.at, m, z.hurt.has_value())) {
        return std::nullopt;
    }
    const auto takes = comb_out_work(m.grade, size, r.rules.prices);
    const bool half = z.at.which != side::both && m.at.which == side::both;
    return takes && half ? std::optional{mmin((in_mmin(*takes) + 1) / 2)} : takes;
}

std::optional<double> weeks_lost(const coat& c, const zone& where, const zone_plan& z,
                                 const length& left) {
    std::optional<length> wished = z.target;
    if (!wished) {
        // coat that is to stay counts as long as it is known to be, or as long as it may get before it
        // mats, or at all (assumption)
        const figure<length>* prone = matting_prone_at(c, where.id);
        wished = z.now              ? z.now
                 : prone != nullptr ? std::optional{prone->best}
                                    : std::optional{c.terminal.best};
    }
    if (wished && z.now) {
        wished = shorter(*wished, *z.now);
    }
    if (!wished || in_hundredths(left) >= in_hundredths(*wished - z.tolerated)) {
        return std::nullopt;
    }
    return in_mm(*wished - left) / in_mm_per_day(c.rate.median) / 7.0;
}

bool comes_down(const plan_request& r, const ready_kit& ready, const zone_plan& z, part p,
                std::size_t blade) {
    const length leaves = ready.top().leaves(blade, *r.patient.coat).best;
    const bool longer_now = !z.now || in_hundredths(*z.now) > in_hundredths(leaves);
    return in_part(r, z, p) && !z.hurt && (z.mat || (cut_by_sheet(z) && leaves < *z.target)) &&
           longer_now;
}

std::size_t blade_for(const plan_request& r, const ready_kit& ready,
                      const std::vector<zone_plan>& zones, part p) {
    const kit_setups& top = ready.top();
    const coat& c = coat_of(r.reference, *r.patient.coat);
    std::size_t best = kit_setups::none;
    for (const std::size_t k : top.clips(direction::with_lay)) {
        const setup& s = top.setups()[k];
        const bool longer_one =
            best == kit_setups::none || s.tool.stated.best > top.setups()[best].tool.stated.best;
        if (s.over || s.tool.cut != teeth::full || !longer_one) {
            continue;
        }
        const bool passes = std::all_of(zones.begin(), zones.end(), [&](const zone_plan& z) {
            if (!comes_down(r, ready, z, p, k)) {
                return true;
            }
            zone_situation at(r, c, z, false);
            at.today.sheet_clips = true;
            const bool into_it =
                at.today.mat != nullptr &&
                refuse_under_lying_mat(s, *at.today.mat, top.leaves(k, *r.patient.coat).best);
            return !into_it && !refuse(s, at.today, r.rules.refusal, r.rules.cut);
        });
        best = passes ? k : best;
    }
    return best;
}

std::vector<part> beyond_share(const plan_request& r, const ready_kit& ready,
                               const compiled_plan& c, const solution& s) {
    const coat& hair = coat_of(r.reference, *r.patient.coat);
    std::vector<part> out;
    if (r.patient.mats.empty() || r.patchwork || s.setup.empty() || hair.kind != cycle::growing) {
        return out;
    }
    for (const part p : {part::body, part::legs}) {
        work all{};
        work clipped{};
        for (std::size_t row = 0; row < s.setup.size(); ++row) {
            const zone_plan& z = c.zones[c.rows[row]];
            if (!in_part(r, z, p)) {
                continue;
            }
            const work here = place_cost(r, z.at, finish::clip);
            all += here;
            const bool off = z.mat && !c.combed(s.setup[row]);
            const length left = mm(find(c.choice, row, s.setup[row])->length / 100.0);
            clipped += off && weeks_lost(hair, zone_of(r, z), z, left) ? here : work{};
        }
        const bool much = static_cast<double>(in_mmin(clipped)) >
                          r.rules.prices.part_down.best * static_cast<double>(in_mmin(all));
        if (much && blade_for(r, ready, c.zones, p) != kit_setups::none) {
            out.push_back(p);
        }
    }
    return out;
}

}  // namespace pelage
