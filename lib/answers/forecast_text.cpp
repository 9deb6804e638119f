// A forecast as a document.
#include <algorithm>
#include <cmath>

#include <pelage/answers/write.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/trade/upkeep.hpp>

#include "answers/first_lines.hpp"
#include "answers/growth_text.hpp"
#include "answers/words/chance.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/growth.hpp"
#include "answers/words/learned.hpp"
#include "answers/words/skin.hpp"
#include "answers/words/when.hpp"
#include "planner/usual_interval.hpp"

namespace pelage::io {

namespace {

std::string day_count(const days& d) {
    return is_never(d) ? "never" : detail::fixed(std::floor(in_days(d)), 0);
}

std::string short_day(const days& d, const print_options& o) {
    const std::string count = "day " + day_count(d);
    return o.today && !is_never(d) ? iso(plus(*o.today, d)) + " (" + count + ")" : count;
}

std::string heading(const plan_request& r) {
    const dog& d = r.patient;
    std::string s = d.name.empty() ? "A dog" : d.name;
    s += ": " + r.sheet.title + ", " + coat_of(r.reference, *d.coat).title + ", " + brushing_of(d);
    return s + (d.invented ? ". An invented dog for trying things out." : ".");
}

/// "12 in 100 (7 to 21; published: kalchofner-2014)".
std::string delayed(const figure<double>& share) {
    const auto percent = [](double s) { return detail::fixed(100.0 * s, 0); };
    const std::string spread =
        share.low < share.high ? percent(share.low) + " to " + percent(share.high) + "; " : "";
    evidence bare = share.why;
    bare.note.clear();
    return percent(share.best) + " in 100 (" + spread + basis_words(bare) + ")";
}

/// When a clipped jacket is back, and what of that is known.
std::string regrown_text(const forecast& f, const plan_request& r, const print_options& o) {
    const auto& [early, even, late] = f.regrown->in;
    const growth_rules& g = r.rules.growth;
    const bool studied = double_coated(*r.patient.coat);
    return "Jacket clipped near the skin: grown back after " + day_count(early) +
           " days in 1 of 10 such dogs, " + day_count(even) + " in 1 of 2, " + day_count(late) +
           " in 9 of 10. Of them " + delayed(g.delayed_share) +
           (studied ? "" : " are delayed in double coats, carried over to this one (our guess),") +
           (studied ? " are delayed, by about " : " by about ") + day_count(g.delay_median.best) +
           " days (" + std::string(in_words(g.delay_median.why.how)) +
           "); it may come back changed, too, how often nobody counted. Left at " +
           show(f.regrown->left, o.units) +
           " it covers sooner, but cut hair that rests does not grow: the next comes beneath it.";
}

/// Days to a threshold; "past" for hair that is beyond it today.
std::string days_left(const days& d) {
    return in_days(d) < 1.0 ? "past" : day_count(d);
}

/// Names one place more in the last cell of a row.
void and_also(std::vector<cell>& row, const std::string& name) {
    row.back() = std::get<std::string>(row.back().value) + ", " + name;
}

cell until(const days& d) {
    return {d, days_left(d)};
}

/// Zones kept and matting alike stand in one line.
typed_table zone_table(const forecast& f, const plan_request& r) {
    typed_table t{{"left at", "mats from", "9 in 10", "1 in 2", "1 in 10", "zones"},
                  {},
                  {true, true, true, true, true, false}};
    std::vector<const zone_forecast*> shown;  // the first zone of each row
    for (const zone_forecast& z : f.zones) {
        const std::string name = title(r.reference.dog_body, z.at);
        const auto alike = std::find_if(shown.begin(), shown.end(), [&](const zone_forecast* one) {
            return one->start == z.start && one->threshold == z.threshold;
        });
        if (alike != shown.end()) {
            and_also(t.rows[static_cast<std::size_t>(alike - shown.begin())], name);
            continue;
        }
        shown.push_back(&z);
        if (z.threshold) {
            t.rows.push_back(
                {z.start, *z.threshold, until(z.early), until(z.even), until(z.late), name});
        } else {
            t.rows.push_back({z.start, "never", {}, {}, {}, name});
        }
    }
    return t;
}

/// A few names; of very many only that they are.
std::string few(const std::vector<std::string>& names) {
    constexpr std::size_t most = 10;
    return names.size() <= most ? listed(names) : "nearly the whole coat";
}

std::string first_zones(const forecast& f, const plan_request& r) {
    std::vector<std::string> names;
    for (const zone_forecast& z : f.zones) {
        if (z.threshold && in_days(z.early) <= in_days(f.zones.front().early) + 0.5) {
            names.push_back(title(r.reference.dog_body, z.at));
        }
    }
    return few(names);
}

/// What only brushing holds on the day of the next visit.
std::vector<std::string> held_zones(const forecast& f, const plan_request& r) {
    std::vector<place> held;
    for (const zone_forecast& z : f.zones) {
        if (z.held) {
            held.push_back(z.at);
        }
    }
    return titles(r.reference.dog_body, held);
}

/// "9 in 10 by length", "brushing alone".
std::string protects(const return_date& b) {
    return b.fine ? true_odds(b.asked, *b.fine) + " by length" : "brushing alone";
}

typed_table habits_table(const forecast& f, const plan_request& r, const print_options& o) {
    typed_table t{{"", "brushed to the skin", "back by", "won", "what protects it"},
                  {},
                  {false, false, false, true, false}};
    for (const habit_forecast& h : f.habits) {
        const bool now = counted(h.habit) == counted(r.patient.brushed);
        const std::string habit = habit_words(h.habit);
        const days won = h.when.next_visit - f.habits.front().when.next_visit;
        const days by = come_by_day(h.when.next_visit, o);
        const days sooner = by - come_by_day(f.habits.front().when.next_visit, o);
        t.rows.push_back(
            {now ? "now" : "", habit, cell(h.when.next_visit, short_day(by, o)),
             in_days(won) > 0.0 ? cell(won, detail::fixed(in_days(sooner), 0) + " d") : cell{},
             protects(h.when)});
    }
    return t;
}

/// The same zone by zone: the day 9 in 10 such dogs reach under each habit. Zones alike stand together.
typed_table habits_by_zone(const forecast& f, const plan_request& r) {
    typed_table t{{"none", "weekly", "2-3 a week", "2nd day", "daily", "zones"},
                  {},
                  {true, true, true, true, true, false}};
    for (std::size_t i = 0; i < f.zones.size(); ++i) {
        if (!f.zones[i].threshold) {
            continue;
        }
        std::vector<cell> row;
        for (const habit_forecast& h : f.habits) {
            row.push_back(until(h.early[i]));
        }
        const auto alike = std::find_if(t.rows.begin(), t.rows.end(), [&](const auto& other) {
            return std::equal(row.begin(), row.end(), other.begin(),
                              [](const cell& a, const cell& b) { return a.said == b.said; });
        });
        const std::string name = title(r.reference.dog_body, f.zones[i].at);
        if (alike != t.rows.end()) {
            and_also(*alike, name);
        } else {
            row.emplace_back(name);
            t.rows.push_back(std::move(row));
        }
    }
    return t;
}

/// What falls due on its own before the full groom does it anyway; a bath and brush tidies nothing.
void say_tidies(document& d, const forecast& f, const print_options& o) {
    std::vector<std::string> due;
    if (*f.tidy_face_feet < f.when.full_groom) {
        due.push_back("face, eyes, feet and pads by " + come_by(*f.tidy_face_feet, o));
    }
    if (*f.tidy_sanitary < f.when.full_groom) {
        due.push_back("sanitary by " + come_by(*f.tidy_sanitary, o));
    }
    if (!due.empty()) {
        d.open();
        d.say("Tidy between: " + listed(due) + " (our guess).");
    }
}

/// The plot of the first part to mat, which text alone has.
void show_growth(document& d, const forecast& f, const plan_request& r, const print_options& o,
                 const growth_course* course) {
    if (course != nullptr) {
        d.open();
        d.show(drawing{{}, {}, growth_in_text(*course, f, r, o)});
    }
}

void explain(document& d, const forecast& f, const plan_request& r, const print_options& o) {
    const coat& c = coat_of(r.reference, *r.patient.coat);
    d.open("Why so");
    const auto line = [&](const std::string& first, const std::string& text) {
        d.item_of(first + ": ", text);
    };
    const rate_prior& rate = rate_of(r.reference, r.rules, c.id);
    line("growth of the coat", rate_per(in_mm_per_day(rate.median), o.units) + ", log SD " +
                                   detail::fixed(rate.log_sd, 2) + ", " + basis_words(rate.why));
    if (!f.learned.counted.empty()) {
        line("growth of this dog", learned_in_figures(f.learned, o.units));
    }
    const double season = season_factor(r.rules.growth, r.today, f.usual);
    if (season != 1.0) {
        line("season", "growth " + detail::fixed(season, 2) +
                           " times that of the whole year on the mean over the usual interval, " +
                           basis_words(r.rules.growth.season_swing.why));
    }
    if (const figure<length>* prone = prone_of(c, r.rules.matting)) {
        line(c.matting_prone ? "matting-prone length" : "matting-prone length of the feathering",
             show(prone->best, o.units) + ", " + basis_words(prone->why));
        line("brushing factor",
             detail::fixed(brush_factor(r.patient.brushed, r.rules.matting), 2) + ", " +
                 basis_words(
                     r.rules.matting.brush[static_cast<std::size_t>(counted(r.patient.brushed))]
                         .why));
        line("spread of the matting-prone length",
             f.learned.cases.empty()
                 ? detail::fixed(r.rules.matting.threshold_log_sd.best, 2) + ", " +
                       basis_words(r.rules.matting.threshold_log_sd.why)
                 : detail::fixed(f.learned.factor_sd, 2) + ", from this dog's visits");
    }
    if (mats_by_length(c)) {
        const auto habit = static_cast<std::size_t>(counted(r.patient.brushed));
        const figure<days>& clock = r.rules.matting.clock[habit];
        line("what is long is held by combing out for",
             detail::fixed(in_days(clock.best), 0) + " days, " + basis_words(clock.why));
    }
    line("usual interval", detail::fixed(in_days(usual_interval(r)), 0) + " days, " +
                               basis_words(c.usual_interval.why));
    line("rule",
         "the last day on which every zone is under its matting-prone length at the chance asked, "
         "or "
         "within the days that combing it out to the skin holds; and no later than the usual "
         "interval. Rate, spread and start error are shared by all zones of the dog: one integral "
         "with the worst zone inside");
}

}  // namespace

document document_of(const forecast& f, const plan_request& r, const print_options& o,
                     const mixed_coat* unseen, const growth_course* course) {
    document d{(r.patient.name.empty() ? "A dog" : r.patient.name) + ": when it must be back"};
    say_alert(d, r.patient);
    d.say(heading(r), 2);
    say_note(d, r.patient);
    if (unseen != nullptr) {
        say_unseen(d, *unseen, r, o);
    }
    if (ails(r.patient)) {
        d.caution(
            "It ails: a veterinarian's word first. The days below count from a whole groom "
            "today.");
    }
    if (!hurt_skin_words(r).empty()) {
        d.caution("Hurt skin is left, and done when the veterinarian says.");
    }
    d.say(when_in_words(f.when, held_zones(f, r), r, o));
    say_learned(d, f, r, o.units);
    if (f.mats_by_length && !f.zones.empty()) {
        d.say("First to mat, so brush there first: " + first_zones(f, r) + ".", 2);
        show_growth(d, f, r, o, course);
        d.open("Days under the matting-prone length, by how many such dogs");
        d.show(zone_table(f, r));
        d.open("What brushing changes (on the surface only counts as not at all)");
        d.show(habits_table(f, r, o));
        if (o.zones) {
            d.open("What brushing to the skin wins, zone by zone: days for 9 in 10 such dogs");
            d.show(habits_by_zone(f, r));
        }
        say_tidies(d, f, o);
    }
    d.open({}, false);
    if (const double season = season_factor(r.rules.growth, r.today, f.usual); season != 1.0) {
        const double by = 100.0 * (season - 1.0);
        d.say("Season: hair is taken to grow " + detail::fixed(std::fabs(by), 0) +
              (by > 0.0 ? " in 100 faster" : " in 100 slower") +
              " now than over the whole year, as the salon's file says.");
    }
    if (f.regrown) {
        d.say(regrown_text(f, r, o));
    }
    if (!f.mats_by_length || f.zones.empty()) {
        show_growth(d, f, r, o, course);
    }
    if (!f.unknown.empty()) {
        d.say("Not reckoned (not cut, and today's hair isn't known; or not to be done as asked): " +
                  listed(titles(r.reference.dog_body, f.unknown)) + ".",
              2);
    }
    if (o.explain) {
        explain(d, f, r, o);
    }
    return d;
}

}  // namespace pelage::io
