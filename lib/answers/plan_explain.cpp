#include "answers/plan_explain.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/base/phrase.hpp>

#include "answers/grouped.hpp"
#include "answers/lines.hpp"
#include "answers/plan_basis.hpp"
#include "answers/ways.hpp"
#include "answers/words/places.hpp"
#include "answers/words/plan.hpp"
#include "answers/words/when.hpp"

namespace pelage::io {

namespace {

/// How sure it is that no plan costs less.
std::string proof_in_words(const groom& g) {
    const proof& p = g.choice.sure;
    const double bound = static_cast<double>(p.bound) / 1000.0;
    std::string text = "the cheapest there is";
    if (!p.optimal) {
        // rounded up: "within" must hold
        const double gap = std::ceil((in_minutes(g.choice.cost) - bound) * 10.0) / 10.0;
        text = "not proven: within " + detail::fixed(gap, 1) +
               " min of the cheapest (no plan under " + detail::fixed(bound, 2) + " min)";
    }
    return text + "; parts of the search bounded: " + std::to_string(p.nodes) +
           ", zones with ties: " + std::to_string(p.ties);
}

std::string order_in_words(const groom& g) {
    const auto taking_up = [](const list_order& o) {
        return detail::fixed(static_cast<double>(o.cost.pick_ups) / 1000.0, 2) + " min";
    };
    const bool proven = g.order_before.proven && g.order_after.proven;
    return "blades and combs are taken up in " + taking_up(g.order_before) + " before and " +
           taking_up(g.order_after) + " after the bath; where that leaves it open the " +
           "head comes last, then body, legs, tail, feet, then neighbour by neighbour; " +
           (proven ? "no order is better" : "too long a list to prove it the best order");
}

std::vector<line> why_so(const groom& g, const plan_request& r, length_unit u) {
    const refusal_rules& rules = r.rules.refusal;
    const price_rules& p = r.rules.prices;
    const auto whole = [](const work& w) { return detail::whole_minutes(w) + " min: "; };
    const figure<double>& lay = lay_of(r.reference, r.rules, *r.patient.coat);
    std::vector<line> out{
        sentence("Cost " + detail::fixed(in_minutes(g.choice.cost), 2) +
                 " min (work, misses, pick-ups, steps): " + proof_in_words(g) + "."),
        item(detail::fixed(lay.best, 0) + " degrees, " + basis_words(lay.why), "lay of the coat: "),
        item(std::string(in_words(p.scissor.why.how)) +
                 ": a place's clipping, what other tools take of it, bath, nails, ears, taking in",
             "minutes: "),
        item(order_in_words(g), "order: "),
        item(basis_words(rules.oil_after.why),
             "feel and oil a blade every " + whole(rules.oil_after.best))};
    if (!r.patient.mats.empty()) {
        const work most = comb_out_budget(r.patient, rules);
        out.push_back(item(basis_words(most < rules.comb_out_limit.low ? rules.comb_out_frail.why
                                                                       : rules.comb_out_limit.why),
                           "combing out ends after " + whole(most)));
    }
    if (!g.blends.empty()) {
        out.push_back(item(show(mm(10.0), u) + " wide for each " +
                               show(mm(10.0 * p.blend_slope.best), u) + " of step, at most " +
                               detail::fixed(100.0 * p.blend_room.best, 0) +
                               " % of the seam's length, by what leaves the middle; " +
                               basis_words(p.blend_slope.why),
                           "blends: "));
    }
    return out;
}

/// "blade 40, with the lay and 2 more: so short a blade ...", one for each reason.
std::vector<std::string> refused_in(const zone_plan& z, length_unit u) {
    grouped<std::string> by_reason;
    for (std::size_t i = 0; i < z.refused.size(); ++i) {
        by_reason.add(bar_words(z.refused[i], z, u), i);
    }
    std::vector<std::string> out;
    for (const auto& [why, those] : by_reason.all()) {
        constexpr std::size_t most = 2;
        std::vector<std::string> some;
        for (std::size_t n = 0; n < std::min(those.size(), most); ++n) {
            some.push_back(refused_title(z.refused[those[n]], u));
        }
        const std::string more =
            those.size() > most ? " and " + std::to_string(those.size() - most) + " more" : "";
        out.push_back(listed(some) + more + ": " + why);
    }
    return out;
}

/// What was refused and why; places of which the same is true together.
void say_not_used(document& d, const groom& g, const plan_request& r, length_unit u) {
    grouped<std::string> all;
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        for (const std::string& text : refused_in(g.zones[i], u)) {
            all.add(text, i);
        }
    }
    const place_words places(g, r);
    d.open("Not used");
    for (const auto& [text, which] : all.all()) {
        d.item(places.in_parts(places.titles_of(which)) + ", not " + text);
    }
}

}  // namespace

void say_why(document& d, const groom& g, const std::optional<return_date>& when,
             const plan_request& r, const print_options& o, const beside& b) {
    d.tell("Why so", why_so(g, r, o.units));
    d.open("What it stands on");
    for (const stands_on& one : what_it_stands_on(g, when, r, o)) {
        d.item(one.text + ": " + basis_words(one.why));
    }
    d.tell("Why this", reasons(b, g, r, o));
    d.tell("Without it", without_tools(b, g, r, o));
    say_not_used(d, g, r, o.units);
}

}  // namespace pelage::io
