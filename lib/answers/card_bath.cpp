// A card between its two lists: bath and dry, or where the visit ends.
#include "answers/card_bath.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>
#include <pelage/planner/appointment.hpp>

#include "answers/plan_parts.hpp"
#include "answers/words/skin.hpp"

namespace pelage::io {

namespace {

bool any_zone(const groom& g, bool (*holds)(const zone_plan&)) {
    return std::any_of(g.zones.begin(), g.zones.end(), holds);
}

/// ", combed-out coat": a smooth one isn't combed.
std::string combed_out(const plan_request& r) {
    return r.patient.coat == coat_class::smooth ? " coat" : ", combed-out coat";
}

/// How it is bathed, and on what the second list goes on.
std::string bath_words_of(const groom& g, const plan_request& r, const appointment& a) {
    const bool stripped =
        any_zone(g, [](const zone_plan& z) { return z.how.kind == tool_kind::fingers; });
    std::string text = stripped          ? "wash and dry legs, belly and beard only"
                       : g.fleas.empty() ? "bath and dry"
                                         : "flea bath and dry";
    for (const appointment_step& s : a.steps) {
        if (s.what == service_step::bath && !a.by_sheet) {
            text += ", " + detail::whole_minutes(s.takes) + " min";
        }
    }
    const bool ear_shaved = std::any_of(g.cautions.begin(), g.cautions.end(), [&](const auto& c) {
        return c.what.when == caution_when::matted_ears_or_tail &&
               std::any_of(c.where.begin(), c.where.end(), [&](const place& p) {
                   return r.reference.dog_body.zones[p.zone].where == group::head;
               });
    });
    return text + (ear_shaved ? ", the head by towel and low, cool air" : "") + gently_words(r) +
           (stripped            ? "; the stripped coat another day"
            : g.after == work{} ? ""
            : in_visits(g)      ? "; then"  // its steps are told of by the card
            : corded(r.sheet) ? "; the cords pressed out, dry to the core (hours, not counted here)"
                              : "; then on a clean, dry" + combed_out(r));
}

}  // namespace

between_visits between_lists(const groom& g, const plan_request& r, card_cautions& cautions) {
    const std::string dry = stays_dry(r) ? no_bath_in_brief(r) : std::string{};
    if (g.bath_waits()) {
        return dry.empty()
                   ? between_visits{"Stop here today: no bath while a mat is in",
                                    any_zone(g, [](const zone_plan& z) { return z.mat && z.hurt; })
                                        ? "another day, once a vet has had it off: "
                                          "bath, dry, comb out, then"
                                        : "another day, once it is out: bath, dry, comb out, "
                                          "then"}
                   : between_visits{
                         "Stop here today: no bath while a mat is in or the "
                         "skin is hurt",
                         "once a vet has seen it: bath, dry, comb "
                         "out, then"};
    }
    if (!bathed_between(r)) {
        return {};
    }
    cautions.told(caution_when::red_skin);
    if (booked_in_part(r) && g.after == work{}) {
        return {};  // told below
    }
    if (!dry.empty()) {
        return {{}, dry + (g.after == work{} ? "" : "; then on a dry" + combed_out(r))};
    }
    const bool frail = in_visits(g);
    const bool matted = any_zone(g, [](const zone_plan& z) { return z.mat.has_value(); });
    if (!g.fleas.empty() && !matted && !frail) {
        return {};  // bathed already
    }
    return {frail ? "The first visit ends here, or sooner if it tires: no full bath" : "",
            (frail ? "another day: " : "") +
                bath_words_of(g, r, appointment_of(r, g, booked_service(r)))};
}

}  // namespace pelage::io
