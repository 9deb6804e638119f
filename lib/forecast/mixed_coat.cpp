#include <algorithm>
#include <cmath>

#include <pelage/base/length_text.hpp>
#include <pelage/forecast/forecast.hpp>
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

/// Chance of a coat that all its zones are protected; of one that `usual` ends, that they are so long due.
fine_if fine_on(const coat_chance& c, kept_coat k) {
    return {c.chance, [k = std::move(k)](const days& d) { return all_fine(k.zones, k.law, d); }};
}
fine_if usual_on(const coat_chance& c, const days& usual) {
    return {c.chance, [usual](const days& d) { return d > usual ? 0.0 : 1.0; }};
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

return_date back_of(const plan_request& r, const groom& g, const std::vector<coat_chance>& coats) {
    return_date b = back_of(r, g);
    const chance p = b.asked;
    days longest{};
    std::vector<fine_if> fine;
    std::vector<fine_if> usual;
    bool counts = false;
    const days clock = brush_out_clock(r.patient.brushed, r.rules.matting);
    for (const coat_chance& c : coats) {
        const recoated other(r, g, c.coat);
        const kept_coat k = other.kept(r);
        longest = std::max(longest, k.usual);
        counts = counts || std::any_of(k.zones.begin(), k.zones.end(),
                                       [](const kept_zone& z) { return z.threshold.has_value(); });
        fine.push_back(fine_on(c, k));
        usual.push_back(usual_on(c, k.usual));
    }
    b.full_groom = last_fine_day(usual, p, longest);
    b.next_visit = last_fine_day(fine, p, b.full_groom);
    b.even_odds = last_fine_day(fine, 0.5, b.full_groom);
    const auto chance_on = [&](const days& d) {
        return counts && d > clock ? std::optional{fine_until(fine, d)} : std::nullopt;
    };
    b.fine = chance_on(b.next_visit);
    b.fine_even = chance_on(b.even_odds);
    b.reason = b.next_visit >= b.full_groom ? visit_kind::usual
               : b.fine                     ? visit_kind::by_length
                                            : visit_kind::by_brushing;
    if (b.fine) {
        b.by_brushing.clear();
    }
    b.if_prone.reset();  // one end for each coat it may have
    return b;
}

}  // namespace pelage
