// The salon's week and its diary.
#include <algorithm>

#include <pelage/answers/week.hpp>
#include <pelage/base/phrase.hpp>

#include "command.hpp"
#include "progress.hpp"
#include "resolve_arguments.hpp"

namespace pelage::cli {

namespace {

struct week_options : common_options {
    using common_options::common_options;
    text_option of{app, "of", "DATE", "any day of the week; this week if it isn't said"};
};

constexpr introduction about_week{
    "week", "who is due, overdue, or has to be asked first",
    "pelage week\n"
    "pelage week 2026-12-07 --salon my-salon --format csv\n",
    "What a dog's file and its record tell of its visits decides; a dog without a\n"
    "full groom on record is told apart.\n"};

reply week(week_options& o, const surroundings& around) {
    faults f;
    const workplace w = workplace_of(o, around, f);
    const auto of = o.of.empty() ? w.print.today : day_in("DATE", o.of, f);
    f.throw_if_any();
    const week_request r{w.reference, w.place(), w.styles, w.print.today.value()};
    if (*of < r.today) {
        f.say(errc::range, "week: a week that is over; found " + iso(*of) + "; write " +
                               iso(r.today) + " or a later day");
    }
    if (*of > r.today + std::chrono::days{56}) {
        f.say(errc::range, "week: more than eight weeks ahead; found " + iso(*of) +
                               "; pelage diary --weeks plans so far");
    }
    f.throw_if_any();
    const auto due = due_dogs(r);
    const io::week_matter m{r, due, *of};
    return {w.json ? io::json_of(m) : w.written(io::document_of(m))};
}

struct diary_options : common_options {
    using common_options::common_options;
    text_option weeks{app, "--weeks", "N", "how many, 1 to 52; 4 if it isn't said"};
    text_option groomer{app, "--groomer", "NAME", "the visits of one groomer"};
};

constexpr introduction about_diary{
    "diary", "every dog's visits on days and groomers, at least cost",
    "pelage diary\n"
    "pelage diary --weeks 26 --groomer Ida --format ics -o ida.ics\n",
    "Groomers and their hours stand in salon.toml; no groomer is booked beyond them.\n"
    "Events that dogs should be fresh for aren't reckoned with here: regrow --weeks.\n",
    "text, json, html, csv; visits ics"};

std::optional<std::size_t> groomer_in(const std::string& text, const salon_files& s, faults& f) {
    std::vector<std::string> names;
    for (std::size_t g = 0; g < s.groomers.size(); ++g) {
        if (s.groomers[g].name == text) {
            return g;
        }
        names.push_back(s.groomers[g].name);
    }
    f.say(errc::unknown,
          "--groomer: the salon has no such groomer; found \"" + text + "\"" +
              (names.empty() ? "; name them in salon.toml" : "; write " + one_of(names)));
    return std::nullopt;
}

/// The diary; a terminal is told how far it is.
pelage::diary searched(const diary_problem& p, const surroundings& around) {
    constexpr int rounds = 24;
    if (!around.watched || around.talk == nullptr) {
        return diary_of(p, rounds);
    }
    told_steps told(*around.talk);
    const std::string dogs =
        std::to_string(p.dogs.size()) + (p.dogs.size() == 1 ? " dog" : " dogs");
    return diary_of(p, rounds, [&](int round, int most) {
        told.tell(dogs + ", round " + std::to_string(round) + " of at most " +
                  std::to_string(most));
    });
}

reply diary(diary_options& o, const surroundings& around) {
    o.has.ics = true;
    faults f;
    const workplace w = workplace_of(o, around, f);
    const auto weeks = o.weeks.empty()
                           ? std::optional<unsigned>{4}
                           : whole_in("--weeks", o.weeks, 1, 52, "write it like --weeks 26", f);
    const auto only = o.groomer.empty() ? std::nullopt : groomer_in(o.groomer, w.place(), f);
    f.throw_if_any();
    const week_request r{w.reference, w.place(), w.styles, w.print.today.value()};
    const auto due = due_dogs(r);
    const diary_question q = diary_question_of(r, due, static_cast<int>(*weeks));
    const pelage::diary found = with_promised(searched(q.problem, around), q);
    const io::diary_matter m{r, due, q, found, only};
    const bool kept = std::all_of(q.promised.begin(), q.promised.end(), [](const auto& v) {
        return v.why == promise_broken::no || v.why == promise_broken::after_diary;
    });
    const bool held = kept && found.lapses.empty() && !q.problem.hours.empty();
    return {w.ics    ? io::ics_of(m)
            : w.json ? io::json_of(m)
                     : w.written(io::document_of(m)),
            held ? done : answer_is_no};
}

}  // namespace

void add_week(CLI::App& root, task& chosen) {
    add_command<week_options>(root, chosen, about_week, week);
    add_command<diary_options>(root, chosen, about_diary, diary);
}

}  // namespace pelage::cli
