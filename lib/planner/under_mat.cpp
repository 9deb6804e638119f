#include <algorithm>

#include <pelage/model/refusal.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/planner/under_mat.hpp>

#include "planner/targets.hpp"

namespace pelage {

std::vector<setup> shorter_under_mat(const plan_request& r, const zone_plan& z) {
    zone_today t;
    t.where = &r.reference.dog_body.zones[z.at.zone];
    t.mat = mat_at(r.patient, z.at);
    t.bump = !z.around.empty();
    t.thin_or_old = tender(r.patient);
    t.thin_skin = r.patient.thin_or_old;
    const setup& in_hand = z.off_by ? *z.off_by : z.how;
    std::vector<setup> out;
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        const bool bare = s.kind == tool_kind::clip && !s.over && s.way == direction::with_lay;
        const bool shorter_one = bare && s.tool.stated.best < in_hand.tool.stated.best;
        if (shorter_one && !refuse(s, t, r.rules.refusal, r.rules.cut)) {
            out.push_back(s);
        }
    }
    std::stable_sort(out.begin(), out.end(), [](const setup& a, const setup& b) {
        return a.tool.stated.best > b.tool.stated.best;
    });
    return out;
}

}  // namespace pelage
