#include <pelage/planner/kit_setups.hpp>
#include <pelage/planner/roughing.hpp>

namespace pelage {

namespace {

/// What the clipper leaves of the jacket where it leaves most.
std::optional<length> longest_clipped(const plan_request& r, const groom& g) {
    std::optional<length> most;
    for (const zone_plan& z : g.zones) {
        const bool jacket = r.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
        if (jacket && z.how.kind == tool_kind::clip && z.leaves && !z.mat) {
            most = most ? longer(*most, z.leaves->best) : z.leaves->best;
        }
    }
    return most;
}

}  // namespace

std::optional<setup> roughing_blade(const plan_request& r, const groom& g) {
    const auto finish = longest_clipped(r, g);
    std::optional<setup> best;
    if (!finish) {
        return best;
    }
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        const bool bare = s.kind == tool_kind::clip && !s.over && s.tool.cut == teeth::full &&
                          s.way == direction::with_lay;
        if (bare && s.tool.stated.best > *finish &&
            (!best || s.tool.stated.best < best->tool.stated.best)) {
            best = s;
        }
    }
    return best;
}

}  // namespace pelage
