#include <pelage/answers/illustrated.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/forecast/calendar.hpp>
#include <pelage/model/growth_record.hpp>

#include "asked_groom.hpp"
#include "command.hpp"

namespace pelage::cli {

namespace {

struct regrow_options : common_options {
    explicit regrow_options(CLI::App& a) : common_options(a) {
        excludes(app, "--learn",
                 {"dog", heading::dog, heading::found, "--chance", "--weeks", "--cannot", "--event",
                  "--zones"});
        excludes(app, "--weeks", {"--zones"});
        needs(app, "--cannot", "--weeks");
        needs(app, "--event", "--weeks");
    }
    dog_options dog{app};
    text_option weeks{app, "--weeks", "N", "the visits of so many weeks, 4 to 52"};
    text_option learn{app, "--learn", "DIR", "growth rates from a salon's measured dogs"};
    flag_option zones{app, "--zones", "with what brushing wins, zone by zone"};
};

constexpr introduction about{
    "regrow", "how it grows out, and when the dog must be back",
    "pelage regrow biscuit\n"
    "pelage regrow biscuit --weeks 26\n"
    "pelage regrow biscuit --weeks 12 --cannot Tuesday --format ics\n"
    "pelage regrow --coat wavy --style one-length --length 16mm --brush none\n"
    "pelage regrow --learn reference/demo\n",
    "Brushing is written: none, 'weekly to the skin', 'every 3 days to the skin',\n"
    "'daily on the surface'. Brushing that doesn't reach the skin counts as none.\n"
    "Days off also: '2026-12-24 to 2027-01-03'. --weeks goes on from the visits in\n"
    "the dog's file; --groomed sets the last full groom.\n",
    "text, json, html, csv, svg; with --weeks ics"};

/// Growth rates proposed from a salon's measured dogs.
reply learn(regrow_options& o, const surroundings& around) {
    o.has.csv = false;
    faults f;
    const workplace w = workplace_of(o, around, f);
    f.throw_if_any();
    std::vector<io::unsound_file> unsound;
    const salon_files s = salon_at(o.learn, w.reference, around, unsound);
    const auto lessons = learn_populations(s, w.reference, w.print.today);
    return {w.json ? io::proposal_json(lessons, s.rules.growth)
                   : w.written(io::proposal(lessons, s.rules.growth, o.learn, w.print))};
}

reply visits(const asked_groom& a, const plan_request& r, const groom& g, int weeks) {
    const calendar_request ask{r, a.w.print.today.value(), weeks, a.w.closed(), &a.w.styles};
    const calendar c = calendar_of(ask, g);
    if (a.w.ics && c.visits.empty()) {
        return {{},
                answer_is_no,
                "pelage: no visit falls in these " + std::to_string(weeks) +
                    " weeks: no calendar is written; without --format ics it says why\n"};
    }
    return {a.w.ics    ? io::ics_of(c, ask)
            : a.w.json ? io::json_of(c, ask)
                       : a.w.written(io::document_of(c, ask)),
            c.blocked ? answer_is_no : code_of(g, r)};
}

/// The forecast, with its picture if it is a page, or that picture alone.
std::string grown_out(const asked_groom& a, const plan_request& r, const forecast& f,
                      const growth_course& course, const mixed_coat* unseen) {
    const auto drawn =
        a.w.html || a.w.svg ? picture_of(course, f, r, io::dog_outline(), a.w.print) : std::nullopt;
    if (a.w.svg) {
        if (!drawn) {
            throw_no_picture("nothing that is known of this coat grows out");
        }
        return svg_of(*drawn);
    }
    io::document page = document_of(f, r, a.w.print, unseen, &course);
    return a.w.written(drawn ? illustrated(std::move(page), *drawn) : std::move(page));
}

reply regrow(regrow_options& o, const surroundings& around) {
    if (!o.learn.empty()) {
        return learn(o, around);
    }
    faults f;
    const auto weeks = o.weeks.empty()
                           ? std::nullopt
                           : whole_in("--weeks", o.weeks, 4, 52, "write it like --weeks 26", f);
    o.has.ics = !o.weeks.empty();
    o.has.no_ics =
        "ics is for a calendar; found no --weeks; write regrow DOG --weeks 26 --format ics";
    o.has.svg = o.weeks.empty();
    asked_groom a(o, o.dog, around, f);
    a.w.print.zones = o.zones;
    const plan_request r = a.request_of();
    const groom g = make_plan(r);
    const auto unseen = a.unseen(r, g);
    const mixed_coat* u = pointer(unseen);
    if (!g.planned() && a.w.ics) {
        return {{},
                answer_is_no,
                "pelage: this dog isn't groomed now: no calendar is written; pelage plan says what "
                "it needs first\n"};
    }
    if (!g.planned() && a.w.svg) {
        throw_no_picture("this dog isn't groomed now");
    }
    if (g.question && !a.w.json) {
        return {a.w.written(asked_first(a, r, g, u, io::plan_told::card)), answer_is_no};
    }
    if (!g.planned()) {
        return {a.w.json ? io::json_of(g, std::nullopt, r, a.w.print, {}, u)
                         : a.w.written(io::document_of(g, std::nullopt, r, a.w.print, {}, u)),
                answer_is_no};
    }
    if (weeks) {
        return visits(a, r, g, static_cast<int>(*weeks));
    }
    forecast c = forecast_of(r, g, a.w.json || a.w.print.zones);
    over_all_coats(a, r, g, c);
    if (a.w.json) {
        return {io::json_of(c, r, a.w.print, u), code_of(g, r)};
    }
    return {grown_out(a, r, c, course_of(r, g, c), u), code_of(g, r)};
}

}  // namespace

void add_regrow(CLI::App& root, task& chosen) {
    add_command<regrow_options>(root, chosen, about, regrow);
}

}  // namespace pelage::cli
