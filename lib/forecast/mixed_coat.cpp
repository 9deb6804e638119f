#include <algorithm>
#include <cmath>

#include <pelage/base/length_text.hpp>
#include <pelage/forecast/mixed_coat.hpp>

namespace pelage {

namespace {

constexpr double worth_telling = 0.02;

/// The same dog with another coat.
struct recoated {
    dog patient;
    groom done;

    recoated(const plan_request& r, const groom& g, coat_class c) : patient(r.patient), done(g) {
        patient.coat = c;
        const double lay = lay_of(r.reference, r.rules, c).best;
        for (zone_plan& z : done.zones) {
            if (z.leaves && z.how.kind == tool_kind::clip) {
                finished left = cut_length(z.how, lay, r.rules.cut);
                if (z.now) {  // no cut makes hair longer than it is
                    left = {shorter(left.low, *z.now), shorter(left.best, *z.now),
                            shorter(left.high, *z.now)};
                }
                z.leaves = left;
            }
        }
    }
    [[nodiscard]] kept_coat kept(const plan_request& r) const {
        const plan_request ask{r.reference, r.rules, r.tools, patient, r.sheet, r.today, r.asked};
        return after_groom(ask, done);
    }
};

bool clips_a_jacket(const plan_request& r, const groom& g) {
    return std::any_of(g.zones.begin(), g.zones.end(), [&](const zone_plan& z) {
        return z.how.kind == tool_kind::clip && z.came != outcome::stuck &&
               r.reference.dog_body.zones[z.at.zone].has(zone_use::jacket);
    });
}

/// Chance of a coat that all its zones are fine, at most until its usual interval.
fine_if fine_on(const coat_chance& c, kept_coat k, bool free_only, const back& alone) {
    if (free_only) {
        std::vector<kept_zone> free;
        for (std::size_t i = 0; i < k.zones.size(); ++i) {
            if (std::find(alone.held.begin(), alone.held.end(), i) == alone.held.end()) {
                free.push_back(k.zones[i]);
            }
        }
        k.zones = std::move(free);
    }
    return {c.chance, [k = std::move(k)](const days& d) {
                return d > k.usual ? 0.0 : all_fine(k.zones, k.law, d);
            }};
}

}  // namespace

std::vector<other_coat> on_other_coats(const plan_request& r, const groom& g,
                                       const std::vector<coat_chance>& coats) {
    std::vector<other_coat> out;
    for (const coat_chance& c : coats) {
        if (c.coat == r.patient.coat || c.chance < worth_telling) {
            continue;
        }
        other_coat o;
        o.what = c;
        o.jacket_clipped = double_coated(c.coat) && clips_a_jacket(r, g);
        const recoated other(r, g, c.coat);
        for (const block& b : g.blocks) {
            if (!g.zones[b.zones.front()].target || b.how.kind == tool_kind::carder) {
                continue;  // prep: its blades are customary, whatever they leave
            }
            const auto& planned = g.zones[b.zones.front()].leaves;
            const auto& then = other.done.zones[b.zones.front()].leaves;
            const bool told =
                std::any_of(o.leaves.begin(), o.leaves.end(),
                            [&](const left_otherwise& l) { return title(l.held) == title(b.how); });
            if (planned && then && !told && number(planned->best) != number(then->best)) {
                o.leaves.push_back({b.how, *planned, *then});
            }
        }
        out.push_back(std::move(o));
    }
    return out;
}

back back_of(const plan_request& r, const groom& g, const std::vector<coat_chance>& coats) {
    const chance p = r.asked.value_or(r.rules.matting.chance.best);
    back b;
    days usual{};
    days longest{};
    std::vector<fine_if> all;
    std::vector<fine_if> free;
    for (const coat_chance& c : coats) {
        const recoated other(r, g, c.coat);
        const kept_coat k = other.kept(r);
        const back alone = when_back(k.zones, k.law, p, k.usual);
        if (c.coat == r.patient.coat) {
            b = alone;
            usual = k.usual;
        }
        longest = std::max(longest, k.usual);
        all.push_back(fine_on(c, k, false, alone));
        free.push_back(fine_on(c, k, true, alone));
    }
    b.in = last_fine_day(all, p, longest);
    b.even_odds = last_fine_day(all, 0.5, longest);
    b.full_groom = std::max(b.in, last_fine_day(free, p, longest));
    b.why = b.in >= day(std::floor(in_days(usual))) ? visit_kind::usual
            : b.in < b.full_groom                   ? visit_kind::brush_out
                                                    : visit_kind::full_groom;
    return b;
}

}  // namespace pelage
