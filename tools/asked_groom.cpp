#include "asked_groom.hpp"

#include <algorithm>

#include <pelage/base/phrase.hpp>
#include <pelage/forecast/all_coats.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/trade/upkeep.hpp>

namespace pelage::cli {

namespace {

/// What cuts nothing needs no sheet: any that fits the coat will do.
dog with_sheet(dog d, const workplace& w, const std::string& service) {
    const auto cuts_nothing = [&](const pelage::service& s) {
        return !s.whole && s.zones.empty() && !s.has(service_step::roll);
    };
    faults ignored;  // told where the booking is read
    const pelage::service* booked = d.style.empty() && !service.empty()
                                        ? service_in("", service, w.reference, ignored)
                                        : nullptr;
    if (booked == nullptr || !cuts_nothing(*booked)) {
        return d;
    }
    std::optional<coat_class> coat = d.coat;
    if (!coat && !d.mix.empty()) {
        try {
            coat = expect_coat(d.mix, w.reference.genes, w.reference.coats).may_be.likeliest();
        } catch (const error&) {  // told where the mix is read
            return d;
        }
    }
    const style* found = nullptr;
    for (const style& s : w.styles) {
        const bool fits =
            coat && !s.show && std::find(s.coats.begin(), s.coats.end(), *coat) != s.coats.end();
        if (fits && (found == nullptr || (s.adjustable && !found->adjustable))) {
            found = &s;
        }
    }
    d.style = found == nullptr ? "" : found->id;
    return d;
}

/// The dog's sheet; no complaint that none is said where the service isn't known, which would have told whether
/// one is needed. A mix that can't be read is told before the sheet.
const style* sheet_for(const dog& d, const workplace& w, const std::string& service, faults& f) {
    faults ignored;
    const bool unknown =
        !service.empty() && service_in("", service, w.reference, ignored) == nullptr;
    if (d.style.empty() && unknown) {
        return nullptr;
    }
    if (d.style.empty() && f.none() && !d.coat && !d.mix.empty()) {
        (void)expect_coat(d.mix, w.reference.genes, w.reference.coats);
    }
    return sheet_of(d, w, f);
}

bool strips(const style& s) {
    return std::any_of(s.rules.begin(), s.rules.end(),
                       [](const sheet_rule& one) { return one.what.how == finish::hand_strip; });
}

/// Who books hand-stripping doesn't get a clip: a sheet that strips nothing is another groom.
void check_stripping(const service& booked, const style& sheet, const workplace& w, faults& f) {
    if (booked.kind != service_kind::hand_strip || strips(sheet)) {
        return;
    }
    std::vector<std::string> others;
    for (const style& s : w.styles) {
        if (strips(s)) {
            others.push_back(s.id);
        }
    }
    f.say(errc::conflict,
          "--service: the sheet " + sheet.id + " strips nothing by hand; found \"hand-strip\"; " +
              (others.empty() ? ""
                              : "write a --style that does (" + joined(others, ", ") + "), or ") +
              "leave the service out");
}

/// What its record tells under the brushing that it had, where other brushing is asked about.
std::optional<learned_rate> learned_so_far(const dog& asked, const dog_options& o,
                                           const workplace& w, const surroundings& around,
                                           const style& sheet) {
    if (o.brush.empty() || o.dog.empty() || o.dog == "-") {
        return std::nullopt;
    }
    faults told_before;
    surroundings quiet = around;
    quiet.notes = nullptr;
    const dog filed = recorded_dog(o, w, quiet, told_before);
    dog had = asked;
    had.brushed = filed.brushed;
    had.brushing_said = filed.brushing_said;
    assume_upkeep(had, sheet);
    return learn_rate(had, w.reference, w.place().rules, w.print.today);
}

}  // namespace

asked_groom::asked_groom(const common_options& common, const dog_options& o,
                         const surroundings& around, faults& f, const std::string& service)
    : w(workplace_of(common, around, f, o.season)),
      patient(with_sheet(dog_of(o, w, around, f, service), w, service)),
      sheet(sheet_for(patient, w, service, f)) {
    if (!o.chance.empty()) {
        asked = chance_in(o.chance, f);
    }
    if (sheet != nullptr) {
        check_season(o.season, *sheet, f);
    }
    booked = service.empty() ? nullptr : service_in("--service", service, w.reference, f);
    if (booked != nullptr && sheet != nullptr) {
        check_stripping(*booked, *sheet, w, f);
    }
    f.throw_if_any();
    by_mix = coat_by_mix(patient, w);
    w.print.closed = w.closed();
    w.print.closed.add(patient.cannot);
    assume_upkeep(patient, *sheet);
    patient = as_by_record(std::move(patient), w.reference, w.place().rules, w.print.today);
    learned = learned_so_far(patient, o, w, around, *sheet);
}

plan_request asked_groom::request_of() const {
    plan_request r{w.reference, w.place().rules, w.tools(), patient, *sheet, w.print.today, asked};
    r.booked = booked;
    r.learned = pointer(learned);
    return r;
}

std::optional<mixed_coat> asked_groom::unseen(const plan_request& r, const groom& g) const {
    return by_mix ? std::optional{mixed_coat{*by_mix, on_other_coats(r, g, by_mix->may_be.coats)}}
                  : std::nullopt;
}

return_date back_of(const asked_groom& a, const plan_request& r, const groom& g) {
    return a.by_mix ? pelage::back_of(r, g, a.by_mix->may_be.coats) : pelage::back_of(r, g);
}

void over_all_coats(const asked_groom& a, const plan_request& r, const groom& g, forecast& c) {
    if (a.by_mix) {
        pelage::over_all_coats(c, r, g, a.by_mix->may_be.coats);
    }
}

io::document asked_first(const asked_groom& a, const plan_request& r, const groom& g,
                         const mixed_coat* unseen, io::plan_told as) {
    return io::asked_first(g, r, a.w.print, unseen, as);
}

}  // namespace pelage::cli
