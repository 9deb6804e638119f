#include "asked_groom.hpp"

#include <pelage/answers/write.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/trade/upkeep.hpp>

namespace pelage::cli {

asked_groom::asked_groom(const common_options& common, const dog_options& o,
                         const surroundings& around, faults& f)
    : w(workplace_of(common, around, f, o.season)),
      patient(dog_of(o, w, around, f)),
      sheet(sheet_of(patient, w, f)) {
    if (!o.chance.empty()) {
        asked = chance_in(o.chance, f);
    }
    if (!o.length.empty() && sheet != nullptr && !sheet->adjustable) {
        f.say(errc::conflict, "--length: the sheet \"" + sheet->id +
                                  "\" has no length to replace; write another --style, such as "
                                  "one-length");
    }
    if (sheet != nullptr) {
        check_season(o.season, *sheet, f);
    }
    f.throw_if_any();
    by_mix = coat_by_mix(patient, w);
    assume_upkeep(patient, *sheet);
}

plan_request asked_groom::request_of() const {
    return {w.reference, w.place().rules, w.tools(), patient, *sheet, w.print.today, asked};
}

std::optional<mixed_coat> asked_groom::unseen(const plan_request& r, const groom& g) const {
    return by_mix ? std::optional{mixed_coat{*by_mix, on_other_coats(r, g, by_mix->may_be.coats)}}
                  : std::nullopt;
}

back back_of(const asked_groom& a, const plan_request& r, const groom& g) {
    return a.by_mix ? pelage::back_of(r, g, a.by_mix->may_be.coats) : pelage::back_of(r, g);
}

void over_all_coats(const asked_groom& a, const plan_request& r, const groom& g, forecast& c) {
    if (!a.by_mix || a.by_mix->may_be.coats.size() < 2) {
        return;
    }
    c.when = back_of(a, r, g);
    for (habit_forecast& h : c.habits) {
        dog other = r.patient;
        other.brushed = h.habit;
        const plan_request ask{r.reference, r.rules, r.tools, other, r.sheet, r.today, r.asked};
        h.when = back_of(a, ask, g);
    }
}

std::string asked_first(const asked_groom& a, const plan_request& r, const groom& g,
                        const mixed_coat* unseen) {
    std::string text = io::text_of(g, std::nullopt, r, a.w.print, {}, unseen);
    if (const auto instead = instead_of(r, g)) {
        const plan_request ask{r.reference,     r.rules, r.tools, instead->patient,
                               *instead->sheet, r.today, r.asked};
        const groom tidy = make_plan(ask);
        beside b = beside_plan(ask, tidy, a.w.print.explain);
        if (a.w.print.trainee && !a.w.print.explain) {
            b.why = reasons_why(ask, tidy);
        }
        text += "\n" + io::text_of(tidy, pelage::back_of(ask, tidy), ask, a.w.print, b);
    }
    return text;
}

}  // namespace pelage::cli
