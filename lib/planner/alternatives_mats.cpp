// Mats clipped off that the plan combs out.
#include <algorithm>

#include "planner/alternatives_parts.hpp"
#include "planner/candidates.hpp"

namespace pelage::ways {

namespace {

/// When the places are back at what is wished: the last of them, the rate being that of the whole dog.
/// Nothing for a coat that rests, whose regrowth nobody can date from here.
void date_back(const plan_request& r, other_way& w) {
    const coat& c = coat_of(r.reference, *r.patient.coat);
    if (c.kind != cycle::growing) {
        return;
    }
    const rate_law law = r.learned != nullptr
                             ? r.learned->next
                             : learn_rate(r.patient, r.reference, r.rules, r.today).next;
    for (const std::size_t i : w.about) {
        const zone_plan& z = w.plan.zones[i];
        const std::optional<length> wished = z.target ? z.target : z.now;
        if (!z.leaves || !wished || z.leaves->best >= *wished - z.tolerated) {
            continue;
        }
        const auto in = [&](chance p) {
            return reach_quantile(z.leaves->best, *wished, c.terminal.best, law, p);
        };
        if (!w.back_in || in(0.5) > (*w.back_in)[1]) {
            w.back_in = {in(0.1), in(0.5), in(0.9)};
        }
    }
}

}  // namespace

std::optional<other_way> clip_mats(const same_problem& at, const groom& g) {
    if (g.combed.empty()) {
        return std::nullopt;
    }
    problem p = at.compiled().choice;
    for (std::size_t row = 0; row < p.zones.size(); ++row) {
        const bool under = at.compiled().under[at.compiled().rows[row]] != kit_setups::none;
        std::erase_if(p.zones[row], [&](const allowed_setup& s) {
            return under && at.compiled().combed(s.setup);
        });
    }
    solution s = at.choose(p);
    if (s.setup.empty()) {
        return std::nullopt;
    }
    other_way w = compared(way_kind::clip_mats, g, at.read(std::move(s)));
    for (const combing_out& c : g.combed) {
        if (mat_clipped_off(w.plan.zones[c.zone])) {
            w.about.push_back(c.zone);
        }
    }
    date_back(at.request(), w);
    return w.about.empty() ? std::nullopt : std::optional{std::move(w)};
}

}  // namespace pelage::ways
