#include <pelage/back_in.hpp>
#include <pelage/calendar.hpp>
#include <pelage/forecast.hpp>
#include <pelage/groom.hpp>
#include <pelage/io/owner.hpp>
#include <pelage/io/write.hpp>
#include <pelage/unseen.hpp>
#include <pelage/upkeep.hpp>
#include <pelage/ways.hpp>

#include "commands.hpp"
#include "interview.hpp"
#include "judge.hpp"

namespace pelage::cli {

namespace {

/// The groom asked for. What it refers to lives in this object.
struct asked_groom {
    workplace w;
    dog patient;
    const style* sheet = nullptr;
    std::optional<chance> asked{};
    std::optional<expected_coat> by_mix{};  ///< where nobody has seen the coat

    asked_groom(const request& q, const surroundings& around, faults& f)
        : w(workplace_of(q, around, f)),
          patient(dog_of(q, w, around, f)),
          sheet(sheet_of(patient, w, f)) {
        if (!q.chance.empty()) {
            asked = chance_in(q.chance, f);
        }
        if (!q.length.empty() && sheet != nullptr && !sheet->adjustable) {
            f.say(errc::conflict, "--length: the sheet \"" + sheet->id +
                                      "\" has no length to replace; write another --style, such as "
                                      "one-length");
        }
        if (sheet != nullptr) {
            judge_season(q, *sheet, f);
        }
        f.throw_if_any();
        by_mix = coat_by_mix(patient, w);
        assume_upkeep(patient, *sheet);
    }
    [[nodiscard]] groom_request request_of() const {
        return {w.reference, w.place().rules, w.tools(), patient, *sheet, w.print.today, asked};
    }
    [[nodiscard]] std::optional<unseen_dog> unseen(const groom_request& r, const groom& g) const {
        return by_mix
                   ? std::optional{unseen_dog{*by_mix, on_other_coats(r, g, by_mix->may_be.coats)}}
                   : std::nullopt;
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
    if (a.w.ics && c.visits.empty()) {
        return {{},
                answer_is_no,
                "pelage: no visit falls in these " + std::to_string(weeks) +
                    " weeks: no calendar is written; without --format ics it says why\n"};
    }
    return {a.w.ics    ? io::ics_of(c, ask)
            : a.w.json ? io::json_of(c, ask)
                       : io::text_of(c, ask, a.w.print),
            c.blocked || !g.stuck.empty() || g.bath_waits() ? answer_is_no : done};
}

const unseen_dog* pointer(const std::optional<unseen_dog>& u) {
    return u ? &*u : nullptr;
}

/// When the dog must be back: over all coats it may have, where nobody has seen it.
back back_of(const asked_groom& a, const groom_request& r, const groom& g) {
    return a.by_mix ? pelage::back_of(r, g, a.by_mix->may_be.coats) : pelage::back_of(r, g);
}

/// The forecast's dates likewise, its tables stay those of the likeliest coat.
void over_all_coats(const asked_groom& a, const groom_request& r, const groom& g, forecast& c) {
    if (!a.by_mix || a.by_mix->may_be.coats.size() < 2) {
        return;
    }
    c.when = back_of(a, r, g);
    for (habit_forecast& h : c.habits) {
        dog other = r.patient;
        other.brushed = h.habit;
        const groom_request ask{r.reference, r.rules, r.tools, other, r.sheet, r.today, r.asked};
        h.when = back_of(a, ask, g);
    }
}

/// A clip that is a question, as text: what fits in its place is planned below it.
std::string asked_first(const asked_groom& a, const groom_request& r, const groom& g,
                        const unseen_dog* unseen) {
    std::string text = io::text_of(g, std::nullopt, r, a.w.print, {}, unseen);
    if (const auto instead = instead_of(r, g)) {
        const groom_request ask{r.reference,     r.rules, r.tools, instead->patient,
                                *instead->sheet, r.today, r.asked};
        const groom tidy = plan_groom(ask);
        beside b = beside_plan(ask, tidy, a.w.print.explain);
        if (a.w.print.trainee && !a.w.print.explain) {
            b.why = reasons_why(ask, tidy);
        }
        text += "\n" + io::text_of(tidy, pelage::back_of(ask, tidy), ask, a.w.print, b);
    }
    return text;
}

/// The page an owner takes home.
reply owners_page(const request& q, const asked_groom& a, const groom_request& r, const groom& g) {
    io::owner_matter m{g, r, std::nullopt, nullptr, nullptr, {}};
    if (a.w.own) {
        m.from = a.w.own->card;
    }
    m.from.groomer = q.groomer.empty() ? m.from.groomer : q.groomer;
    forecast ahead;
    std::vector<grow_back_way> grow_back;
    std::vector<conflict> stuck;
    if (g.planned()) {
        ahead = forecast_of(r, g, false);
        over_all_coats(a, r, g, ahead);
        grow_back = ways_to_grow_back(r, g);
        m.when = ahead.when;
        m.ahead = &ahead;
        m.grow_back = &grow_back;
        stuck = g.stuck.empty() ? stuck : conflicts(r, g);
        m.stuck = &stuck;
    }
    return {a.w.html   ? io::owner_html(m, a.w.print)
            : a.w.json ? io::owner_json(m, a.w.print)
                       : io::owner_text(m, a.w.print),
            !g.planned() || !g.stuck.empty() || g.bath_waits() ? answer_is_no : done};
}

}  // namespace

reply plan(const request& q, const surroundings& around) {
    faults f;
    if (!q.reader.empty() && !q.back_in.empty()) {
        f.say(errc::usage,
              "--back-in: answers with lengths, not with a plan for a reader; found "
              "--for " +
                  q.reader + "; leave one out");
    }
    if (!is_plain_line(q.groomer)) {
        f.say(errc::syntax,
              "--groomer: a line of plain text in UTF-8; found \"" + q.groomer + "\"");
    }
    const auto wished = q.back_in.empty() ? std::nullopt : wait_in("--back-in", q.back_in, f);
    const asked_groom a(q, around, f);
    const groom_request r = a.request_of();
    const groom g = plan_groom(r);
    if (wished && g.planned()) {
        return longest_coat(a, r, g, *wished);
    }
    const bool stopped = !g.planned();
    if (q.reader == "owner") {
        return owners_page(q, a, r, g);
    }
    if (g.question && !a.w.json) {
        const auto seen = a.unseen(r, g);
        return {asked_first(a, r, g, pointer(seen)), answer_is_no};
    }
    const std::optional<back> when = stopped ? std::nullopt : std::optional{back_of(a, r, g)};
    beside b = beside_plan(r, g, a.w.print.explain);
    for (other_way& w : b.ways) {
        w.when = back_of(a, r, w.plan);
    }
    if (a.w.print.trainee && !a.w.print.explain) {
        b.why = reasons_why(r, g);
    }
    const auto unseen = a.unseen(r, g);
    const unseen_dog* u = pointer(unseen);
    return {a.w.json ? io::json_of(g, when, r, a.w.print, b, u)
                     : io::text_of(g, when, r, a.w.print, b, u),
            stopped || !g.stuck.empty() || g.bath_waits() ? answer_is_no : done};
}

reply regrow(const request& q, const surroundings& around) {
    if (!q.learn.empty()) {
        return learn(q, around);
    }
    faults f;
    const int weeks = q.weeks.empty() ? 0 : weeks_in(q.weeks, f);
    const asked_groom a(q, around, f);
    const groom_request r = a.request_of();
    const groom g = plan_groom(r);
    const auto unseen = a.unseen(r, g);
    const unseen_dog* u = pointer(unseen);
    if (!g.planned() && a.w.ics) {
        return {{},
                answer_is_no,
                "pelage: this dog isn't groomed now: no calendar is written; pelage plan says what "
                "it needs first\n"};
    }
    if (g.question && !a.w.json) {
        return {asked_first(a, r, g, u), answer_is_no};
    }
    if (!g.planned()) {
        return {a.w.json ? io::json_of(g, std::nullopt, r, a.w.print, {}, u)
                         : io::text_of(g, std::nullopt, r, a.w.print, {}, u),
                answer_is_no};
    }
    if (weeks > 0) {
        return visits(a, r, g, weeks);
    }
    forecast c = forecast_of(r, g, a.w.json || a.w.print.zones);
    over_all_coats(a, r, g, c);
    return {a.w.json ? io::json_of(c, r, a.w.print, u) : io::text_of(c, r, a.w.print, u),
            g.stuck.empty() && !g.bath_waits() ? done : answer_is_no};
}

}  // namespace pelage::cli
