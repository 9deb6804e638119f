// log: a visit into the record, as planned but for what is told or asked; the last one taken back.
#include <algorithm>

#include <pelage/answers/record.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/forecast/week.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/model/mats_dealt_with.hpp>
#include <pelage/planner/planned_entry.hpp>
#include <pelage/trade/upkeep.hpp>

#include "cmd_log.hpp"
#include "printable.hpp"
#include "resolve_log.hpp"

namespace pelage::cli {

namespace {

std::string weekday_words(const date& d) {
    return std::string(weekday_names[weekday_of(d)]) + ", " + in_words(d);
}

/// What the visit comes to as planned and as options say it.
struct visit_told {
    log_entry entry;
    bool planned = false;
    std::vector<std::string> unsigned_consents{};  ///< what the plan asks and nobody has signed
    std::vector<logged_mat> found{};               ///< that the plan was made with
};

/// The entry that another is to stand in place of: what isn't said anew stays as it was.
std::optional<visit_told> corrected(log_options& o, const workplace& w, const io::dog_record& there,
                                    unsigned number, faults& f) {
    for (const log_entry& one : entries_in_force(there.entries)) {
        if (number == 0 || one.number != number) {
            continue;
        }
        visit_told out{one, true};
        log_entry& e = out.entry;
        e.number = 0;
        e.on = o.date.empty() ? e.on : day_in("--date", o.date, f).value_or(e.on);
        if (!o.services.empty()) {
            e.services = services_in("--service", o.services, w.reference, f);
        }
        const part_index parts(w.reference.dog_body);
        for (const logged_length& l : lengths_in("--left", o.left, w, f)) {
            put_told(parts, e.left, l);
        }
        apply_told(o, w, e, f);
        return out;
    }
    return std::nullopt;
}

visit_told visit_of(log_options& o, const workplace& w, dog d, faults& f) {
    visit_told out;
    log_entry& e = out.entry;
    const date today = w.print.today.value();
    e.on = o.date.empty() ? today : day_in("--date", o.date, f).value_or(today);
    if (e.on > today) {
        f.say(errc::range, "--date: lies after today, " + iso(today) + "; found \"" + o.date +
                               "\"; write the day of the visit");
    }
    const auto left = lengths_in("--left", o.left, w, f);
    const auto services = services_in("--service", o.services, w.reference, f);
    const bool full = services.empty() || std::find(services.begin(), services.end(),
                                                    service_kind::full) != services.end();
    const style* sheet = d.style.empty() ? nullptr : sheet_of(d, w, f);
    if (full && sheet != nullptr && f.none()) {
        (void)coat_by_mix(d, w);
        assume_upkeep(d, *sheet);
        d = as_by_record(std::move(d), w.reference, w.place().rules, e.on);
        const plan_request r{w.reference, w.place().rules, w.tools(), d, *sheet, e.on};
        const groom g = make_plan(r);
        out.planned = g.planned();
        for (const consent& c : g.consents) {
            if (!c.given) {
                out.unsigned_consents.push_back(c.id);
            }
        }
        // of a groom in visits the first alone, unless it is said to be done whole
        e = planned_entry(r, g, e.on, left, !services.empty());
        for (const mat_finding& m : d.mats) {
            out.found.push_back({title(w.reference.dog_body, m.at), m.grade});
        }
    }
    if (!out.planned) {
        e.services.clear();
        e.left = left;
    }
    if (!services.empty()) {
        e.services = services;
    }
    apply_told(o, w, e, f);
    return out;
}

/// Refuses what is on record already: a key pressed twice, or a call made again.
void refuse_twice(const io::dog_record& there, const log_entry& e) {
    for (const log_entry& one : entries_in_force(there.entries)) {
        const auto full = [](const log_entry& l) { return visit_kind_of(l.services) == "full"; };
        const bool same_visit = e.corrects == 0 && one.on == e.on && full(one) && full(e);
        if (say_the_same(one, e) || same_visit) {
            const std::string number = std::to_string(one.number);
            throw error(
                errc::refused,
                (same_visit ? "a full groom of that day is on record already, as entry "
                            : "the same is on record already, as entry ") +
                    number + " of " + there.file + "; nothing is written" +
                    (same_visit ? "; --correct " + number + " puts this in its place" : ""));
        }
    }
}

void check_correction(const io::dog_record& there, unsigned number) {
    const auto all = entries_in_force(there.entries);
    if (number != 0 && std::none_of(all.begin(), all.end(),
                                    [&](const log_entry& one) { return one.number == number; })) {
        throw error(errc::unknown, "--correct: no entry " + std::to_string(number) + " holds in " +
                                       there.file + "; --show has those that do");
    }
}

reply recorded(const log_options& o, const workplace& w, const dog& d, const std::string& path,
               const std::function<log_entry(const io::dog_record&)>& make,
               const surroundings& around) {
    const io::recorded_entry done = io::append_to_record(path, d.id, w.reference, make);
    if (!done.set_aside.empty()) {
        note(around,
             "the last line of " + path + " was never finished: set aside as " + done.set_aside);
    }
    io::record_of_dog of{d.id, d.name};
    of.read.file = path;
    const std::string undo = "pelage log " + as_word(o.dog.dog) +
                             (o.salon.empty() ? "" : " --salon " + as_word(o.salon)) + " --undo";
    return {w.json
                ? io::recorded_json(of, done)
                : w.written(io::recorded_document(of, done, w.reference.dog_body, undo, w.print))};
}

/// Mats of the dog's file that the entry may have dealt with, if only their day were known.
void note_mats(const workplace& w, dog d, const log_entry& e, const surroundings& around) {
    add_record(d, {e});
    const body& b = w.reference.dog_body;
    const dog after = without_mats_dealt_with(std::move(d), part_index(b), b, w.print.today);
    const std::size_t n = after.undated.size();
    if (n > 0) {
        note(around, "the file of " + after.name + " names " + std::to_string(n) +
                         (n == 1 ? " mat" : " mats") +
                         " without a day, which every plan goes on seeing: write the day there "
                         "(seen = \"" +
                         iso(e.on) + "\"), or take out what is gone");
    }
}

/// A day promised on which nobody may come: it stands in the record as it was told.
void note_promise(const workplace& w, const dog& d, const log_entry& e,
                  const surroundings& around) {
    if (!e.next || !w.own) {
        return;
    }
    const auto on = day_for_promise(*w.own, d, e.on, *e.next);
    if (on != e.next) {
        note(around, "nobody works on the day promised, " + weekday_words(*e.next) +
                         "; kept as it was told" +
                         (on ? ", but week and diary take " + weekday_words(*on) : ""));
    } else if (d.cannot.cover(*e.next)) {
        note(around, "by the dog's file its owner can't come on the day promised, " +
                         weekday_words(*e.next) + "; kept as it was told");
    }
}

}  // namespace

reply added(log_options& o, const workplace& w, const dog& d, const std::string& path,
            const surroundings& around, faults& f) {
    const auto corrects = o.correct.empty() ? std::optional{0U}
                                            : whole_in("--correct", o.correct, 1, 1'000'000,
                                                       "write the entry's number", f);
    const std::optional<visit_told> again =
        corrects.value_or(0) == 0
            ? std::nullopt
            : corrected(o, w, io::read_record(path, d.id, w.reference), *corrects, f);
    visit_told v = again ? *again : visit_of(o, w, d, f);
    if (o.yes && v.entry.services.empty() && f.none()) {
        f.say(
            errc::missing,
            "--service: nothing is planned for this dog, so what was done must be said; write one "
            "of " +
                joined(std::vector<std::string>(service_names.begin(), service_names.end()), ", "));
    }
    const entry_checks checks(w, d, v.entry.on, o.sure);
    check_told(o, w, v.entry, checks, f);
    f.throw_if_any();
    v.entry.corrects = corrects.value_or(0);
    if (!o.yes) {
        if (around.in == nullptr || around.talk == nullptr) {
            throw error(errc::usage, "log: nobody is there to answer; say it by options and --yes");
        }
        asker a(*around.in, *around.talk, around.one_key,
                around.terminal ? answers_as::keys : answers_as::lines);
        ask_what_differed(a, w, checks, d.name, v.planned, v.found, v.entry);
    }
    for (const std::string& odd : checks.odd(v.entry)) {
        note(around, odd + "; recorded all the same");
    }
    if (!v.unsigned_consents.empty()) {
        note(around,
             "the owner has not signed, by the dog's file: " + joined(v.unsigned_consents, ", ") +
                 "; write it there (consents), or see that it is signed");
    }
    note_mats(w, d, v.entry, around);
    note_promise(w, d, v.entry, around);
    return recorded(
        o, w, d, path,
        [&](const io::dog_record& there) {
            check_correction(there, v.entry.corrects);
            refuse_twice(there, v.entry);
            return v.entry;
        },
        around);
}

reply taken_back(const log_options& o, const workplace& w, const dog& d, const std::string& path,
                 const surroundings& around) {
    const auto nothing = [&] {
        throw error(errc::refused, "nothing is on record of " + d.name + " to take back");
    };
    if (!io::read_record(path, d.id, w.reference).there) {
        nothing();
    }
    return recorded(
        o, w, d, path,
        [&](const io::dog_record& there) {
            const auto last = last_in_force(there.entries);
            if (!last) {
                nothing();
            }
            log_entry e;
            e.corrects = last->number;
            e.takes_back = true;
            e.on = w.print.today.value();
            return e;
        },
        around);
}

}  // namespace pelage::cli
