#include <pelage/model/refusal.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/planner/under_mat.hpp>

#include "planner/targets.hpp"

namespace pelage {

std::optional<setup> next_under_mat(const plan_request& r, const zone_plan& z) {
    zone_today t;
    t.where = &r.reference.dog_body.zones[z.at.zone];
    t.mat = mat_at(r.patient, z.at);
    t.bump = !z.around.empty();
    t.thin_or_old = tender(r.patient);
    t.thin_skin = r.patient.thin_or_old;
    const setup& in_hand = z.off_by ? *z.off_by : z.how;
    std::optional<setup> best;
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        const bool bare = s.kind == tool_kind::clip && !s.over && s.way == direction::with_lay;
        const bool shorter_one = bare && s.tool.stated.best < in_hand.tool.stated.best;
        if (shorter_one && !refuse(s, t, r.rules.refusal, r.rules.cut) &&
            (!best || best->tool.stated.best < s.tool.stated.best)) {
            best = s;
        }
    }
    return best;
}

}  // namespace pelage
