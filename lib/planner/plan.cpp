#include <algorithm>
#include <array>
#include <cmath>

#include <pelage/planner/plan.hpp>

#include "planner/cautions.hpp"
#include "planner/compile.hpp"
#include "planner/double_jacket.hpp"
#include "planner/mats.hpp"
#include "planner/plan_again.hpp"
#include "planner/targets.hpp"
#include "planner/usual_interval.hpp"

namespace pelage {

std::string_view name(outcome o) {
    constexpr std::array<std::string_view, 10> names{
        "as-wished", "off-target",    "beyond-reach", "hair-shorter", "left-by-sheet",
        "skin-left", "clipped-under", "stuck",        "goes-along",   "taken-down"};
    return names[static_cast<std::size_t>(o)];
}

groom make_plan(const plan_request& r) {
    if (leaves_mats(r)) {
        dog unmatted = r.patient;
        unmatted.mats.clear();
        return make_plan(ask_again(r, unmatted, r.sheet));
    }
    const ready_kit ready(r);
    compiled_plan c = compile(r, ready);
    std::vector<stop_sign> signs = signs_of(r);
    if (!c.stop.empty() || !signs.empty()) {
        groom g;
        g.stop = std::move(c.stop);
        g.signs = std::move(signs);
        g.zones = std::move(c.zones);
        // a dog felted to the skin isn't clipped by plan: everything else waits for a veterinarian
        for (zone_plan& z : g.zones) {
            z.came = outcome::stuck;
            z.tidied = false;
            z.why = {};
            z.why.what = g.signs.empty() ? cause::felted : cause::veterinarian;
        }
        add_cautions(r, g);
        return g;
    }
    if (auto question = question_of(r, ready, c.zones)) {
        groom g;
        g.zones = std::move(c.zones);
        g.question = std::move(question);
        g.fleas = fleas_on(r.patient);
        for (zone_plan& z : g.zones) {
            z.came = outcome::stuck;
            z.tidied = false;
            z.why = {};
            z.why.what = cause::owner;
        }
        add_cautions(r, g);
        return g;
    }
    chosen_plan whole = choose_whole(r, ready, std::move(c));
    groom g = read_plan(r, ready, std::move(whole.compiled), std::move(whole.choice));
    add_cautions(r, g);
    return g;
}

std::vector<std::size_t> done_another_day(const groom& g) {
    std::vector<std::size_t> out;
    for (const block& b : g.blocks) {
        if (goes_on_another_day(g) && b.when == list::after_bath) {
            std::copy_if(b.zones.begin(), b.zones.end(), std::back_inserter(out),
                         [&](std::size_t i) { return !g.zones[i].off_by; });
        }
    }
    return out;
}

kept_coat after_groom(const plan_request& r, const groom& g) {
    const coat& c = coat_of(r.reference, r.patient.coat.value());
    kept_coat k;
    k.usual = usual_interval(r);
    if (r.sheet.longest_interval) {
        k.usual = std::min(k.usual, *r.sheet.longest_interval);
    }
    const learned_rate found =
        r.learned != nullptr ? *r.learned : learn_rate(r.patient, r.reference, r.rules, r.today);
    k.law = {found.next,
             found.cases.empty() ? r.rules.matting.threshold_log_sd.best : found.factor_sd,
             r.rules.growth.start_error.best, found.cases};
    k.law.grow_by(std::log(season_factor(r.rules.growth, r.today, k.usual)));
    const days clock = brush_out_clock(r.patient.brushed, r.rules.matting);
    k.zones.reserve(g.zones.size());
    k.index.reserve(g.zones.size());
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        // when hurt skin or teats are come near again a veterinarian says, no length
        const bool spared = z.hurt || z.why.what == cause::teats;
        if (!z.leaves || spared || z.came == outcome::stuck) {
            continue;
        }
        const zone& where = r.reference.dog_body.zones[z.at.zone];
        // cords are felted already, and parted by hand: no length sets their date
        k.zones.push_back({z.leaves->best,
                           corded(r.sheet)
                               ? std::nullopt
                               : matting_prone_length(c, where, r.patient.brushed,
                                                      r.patient.coat_change, r.rules.matting),
                           terminal_at(c, where.id).best, clock});
        k.index.push_back(i);
    }
    return k;
}

}  // namespace pelage
