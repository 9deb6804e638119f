#include <pelage/back_in.hpp>
#include <pelage/calendar.hpp>
#include <pelage/forecast.hpp>
#include <pelage/groom.hpp>
#include <pelage/io/write.hpp>
#include <pelage/ways.hpp>

#include "commands.hpp"
#include "judge.hpp"

namespace pelage::cli {

namespace {

/// The groom asked for. What it refers to lives in this object.
struct asked_groom {
    workplace w;
    dog patient;
    const style* sheet = nullptr;
    std::optional<chance> asked{};

    asked_groom(const request& q, const surroundings& around, faults& f)
        : w(workplace_of(q, around, f)), patient(dog_of(q, w, f)), sheet(sheet_of(patient, w, f)) {
        if (!q.chance.empty()) {
            asked = chance_in(q.chance, f);
        }
        if (!q.length.empty() && sheet != nullptr && !sheet->adjustable) {
            f.say(errc::conflict, "--length: the sheet \"" + sheet->id +
                                      "\" has no length to replace; write another --style, such as "
                                      "one-length");
        }
        f.throw_if_any();
    }
    [[nodiscard]] groom_request request_of() const {
        return {w.reference, w.place().rules, w.tools(), patient, *sheet, w.print.today, asked};
    }
};

reply longest_coat(const asked_groom& a, const groom_request& r, const groom& g,
                   const days& wished) {
    const back_in_answer b = back_in(r, g, wished);
    return {a.w.json ? io::json_of(b, r, a.w.print) : io::text_of(b, r, a.w.print),
            b.holds ? done : answer_is_no};
}

reply visits(const asked_groom& a, const groom_request& r, const groom& g, int weeks) {
    const calendar_request ask{r, a.w.print.today.value(), weeks, a.w.place().closed, &a.w.styles};
    const calendar c = calendar_of(ask, g);
    return {a.w.ics    ? io::ics_of(c, ask)
            : a.w.json ? io::json_of(c, ask)
                       : io::text_of(c, ask, a.w.print),
            c.blocked || !g.stuck.empty() ? answer_is_no : done};
}

}  // namespace

reply plan(const request& q, const surroundings& around) {
    faults f;
    const auto wished = q.back_in.empty() ? std::nullopt : wait_in("--back-in", q.back_in, f);
    const asked_groom a(q, around, f);
    const groom_request r = a.request_of();
    const groom g = plan_groom(r);
    if (wished && g.stop.empty()) {
        return longest_coat(a, r, g, *wished);
    }
    const bool stopped = !g.stop.empty();
    const std::optional<back> when = stopped ? std::nullopt : std::optional{back_of(r, g)};
    const beside b = beside_plan(r, g, a.w.print.explain);
    return {
        a.w.json ? io::json_of(g, when, r, a.w.print, b) : io::text_of(g, when, r, a.w.print, b),
        stopped || !g.stuck.empty() ? answer_is_no : done};
}

reply regrow(const request& q, const surroundings& around) {
    faults f;
    const int weeks = q.weeks.empty() ? 0 : weeks_in(q.weeks, f);
    const asked_groom a(q, around, f);
    const groom_request r = a.request_of();
    const groom g = plan_groom(r);
    if (!g.stop.empty()) {
        return {a.w.json ? io::json_of(g, std::nullopt, r, a.w.print)
                         : io::text_of(g, std::nullopt, r, a.w.print),
                answer_is_no};
    }
    if (weeks > 0) {
        return visits(a, r, g, weeks);
    }
    const forecast c = forecast_of(r, g);
    return {a.w.json ? io::json_of(c, r, a.w.print) : io::text_of(c, r, a.w.print),
            g.stuck.empty() ? done : answer_is_no};
}

}  // namespace pelage::cli
