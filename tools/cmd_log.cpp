// log: what was done at a visit, appended to the record beside the dog's file; shown, taken back, audited
// and handed out.
#include <algorithm>

#include <pelage/answers/record.hpp>
#include <pelage/base/phrase.hpp>
#include <pelage/forecast/week.hpp>
#include <pelage/model/dog_record.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/model/mats_dealt_with.hpp>
#include <pelage/planner/planned_entry.hpp>
#include <pelage/trade/upkeep.hpp>

#include "printable.hpp"
#include "record_audit.hpp"
#include "resolve_log.hpp"

namespace pelage::cli {

namespace {

constexpr introduction about{
    "log", "what was done at a visit, into the dog's record",
    "pelage log rosie --salon my-salon\n"
    "pelage log rosie --salon my-salon --yes --mats none --minutes 95\n"
    "pelage log rosie --salon my-salon --left 'body 19 mm' --mats 'ears, tail'\n"
    "pelage log rosie --salon my-salon --show\n"
    "pelage log rosie --salon my-salon --undo\n"
    "pelage log --check my-salon\n"
    "pelage log --export csv --salon my-salon -o visits.csv\n"
    "pelage log --against-sheet --salon my-salon\n",
    "The plan is what is taken as done; you are asked what differed, for mats and for\n"
    "minutes: Enter, Enter, Enter. Questions go to standard error, answers come from\n"
    "standard input. The record is a file beside the dog's own (rosie.record.jsonl),\n"
    "which nothing but log writes: entries are added and never changed, and --undo\n"
    "adds one that takes the last back. In CSV a cell that begins with = + - @ or a\n"
    "tab has a ' before it, so that no spreadsheet takes it for a formula.\n"
    "It ends with 1 if the same is on record already, or --check has only doubts, and\n"
    "with 3 if a record is damaged; what is sound in it is counted all the same.\n"};

constexpr std::size_t shown_at_once = 5;

std::string weekday_words(const date& d) {
    return std::string(weekday_names[weekday_of(d)]) + ", " + in_words(d);
}

/// What is wrong in a record, beside the answer.
void note_faults(const io::dog_record& r, const surroundings& around) {
    for (const diagnostic& one : r.faults) {
        const std::string text = io::text_of({one});
        note(around, text.substr(0, text.size() - 1));
    }
    if (r.torn > 0) {
        note(around, r.file +
                         ": its last line was never finished and isn't counted; the next "
                         "entry sets it aside");
    }
}

/// The path of the record of a dog that was read from a file; an embedded one has none.
std::string path_of(const dog& d, const std::string& asked, const workplace& w) {
    const bool by_file = asked.find('/') != std::string::npos || asked.ends_with(".toml");
    if (!w.own && !by_file) {
        throw error(
            errc::usage,
            "log: the dogs of the invented demo salon have no files to write beside; name a "
            "dog's file, or your salon behind --salon");
    }
    return io::record_path(d.file);
}

/// What the visit comes to as planned and as options say it.
struct visit_told {
    log_entry entry;
    bool planned = false;
    std::vector<std::string> unsigned_consents{};  ///< what the plan asks and nobody has signed
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
        e = planned_entry(r, g, e.on, left);
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
                "the same is on record already, as entry " + number + " of " + there.file +
                    "; nothing is written" +
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

reply add_visit(log_options& o, const workplace& w, const dog& d, const std::string& path,
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
        ask_what_differed(a, w, checks, d.name, v.planned, v.entry);
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

reply undo(const log_options& o, const workplace& w, const dog& d, const std::string& path,
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

reply show(const workplace& w, const dog& d, const std::string& path, const surroundings& around) {
    const io::record_of_dog of{d.id, d.name, io::read_record(path, d.id, w.reference)};
    note_faults(of.read, around);
    return {w.json
                ? io::export_json({of})
                : w.written(io::record_document(of, shown_at_once, w.reference.dog_body, w.print)),
            of.read.damaged ? bad_data : done};
}

reply export_all(const log_options& o, const workplace& w, const std::vector<const dog*>& dogs,
                 const surroundings& around) {
    std::vector<io::record_of_dog> all;
    bool damaged = false;
    for (const dog* d : dogs) {
        io::dog_record r = io::read_record(io::record_path(d->file), d->id, w.reference);
        if (r.there) {
            note_faults(r, around);
            damaged = damaged || r.damaged;
            all.push_back({d->id, d->name, std::move(r)});
        }
    }
    return {o.exported == "json" ? io::export_json(all)
                                 : io::csv_of(io::export_document(all), w.print.units),
            damaged ? bad_data : done};
}

reply against_sheet(const workplace& w, const std::vector<const dog*>& asked,
                    const surroundings& around) {
    std::vector<dog> dogs;
    std::vector<kept_dog> all;
    dogs.reserve(asked.size());  // they are pointed at
    bool damaged = false;
    for (const dog* d : asked) {
        const io::dog_record r = io::read_record(io::record_path(d->file), d->id, w.reference);
        note_faults(r, around);
        damaged = damaged || r.damaged;
        if (r.there) {
            (void)coat_by_mix(dogs.emplace_back(*d), w);
            all.push_back({&dogs.back(), entries_in_force(r.entries)});
        }
    }
    const parameters& rules = w.place().rules;
    const kept_lengths k =
        kept_lengths_of({w.reference, rules, w.tools(), w.styles, rules.matting.chance.best}, all);
    return {w.json ? io::json_of(k) : w.written(io::document_of(k, w.print)),
            damaged ? bad_data : done};
}

reply audit(const log_options& o, const workplace& w) {
    const io::record_audit a = audit_records(o.audit, w.reference, w.print.today);
    reply r{w.json ? io::json_of(a) : w.written(io::document_of(a)), !a.damaged.empty() ? bad_data
                                                                     : !a.doubtful.empty()
                                                                         ? answer_is_no
                                                                         : done};
    if (r.code == bad_data) {
        r.said = "pelage: error: not every record is sound\n";
    }
    return r;
}

reply log(log_options& o, const surroundings& around) {
    faults f;
    o.has = {o.show || o.against_sheet, o.against_sheet};
    const workplace w = workplace_of(o, around, f, o.dog.season);
    if (!o.exported.empty()) {
        (void)choice_in("--export", o.exported, {"csv", "json"}, f);
    }
    if (!o.audit.empty()) {
        f.throw_if_any();
        return audit(o, w);
    }
    if ((!o.exported.empty() || o.against_sheet) && o.dog.dog.empty()) {
        f.throw_if_any();
        std::vector<const dog*> dogs;
        if (w.own) {
            for (const dog& d : w.own->dogs) {
                dogs.push_back(&d);
            }
        }
        return o.against_sheet ? against_sheet(w, dogs, around) : export_all(o, w, dogs, around);
    }
    if (o.dog.dog.empty()) {
        f.say(errc::usage,
              "log: found no dog; write its id or its file, as in log rosie --salon "
              "my-salon, or log --check my-salon");
        f.throw_if_any();
    }
    const dog d = dog_of(o.dog, w, around, f);
    f.throw_if_any();
    const std::string path = path_of(d, o.dog.dog, w);
    if (!w.print.today) {
        throw error(errc::usage, "log: today isn't known; write --today");
    }
    return o.show               ? show(w, d, path, around)
           : o.against_sheet    ? against_sheet(w, {&d}, around)
           : o.undo             ? undo(o, w, d, path, around)
           : o.exported.empty() ? add_visit(o, w, d, path, around, f)
                                : export_all(o, w, {&d}, around);
}

}  // namespace

log_options::dog_of_plan::dog_of_plan(CLI::App& a) : dog_options(a) {
    keep_of_dog(a, {"dog", "--style", "--season", "--length", "--now", "--consent", "--skin"});
}

log_options::log_options(CLI::App& a) : common_options(a) {
    for (const char* alone : {"--show", "--undo", "--check", "--export", "--against-sheet"}) {
        excludes(app, alone,
                 {heading::done, heading::found, heading::dog, "--yes", "--sure", "--correct",
                  "--show", "--undo", "--check", "--export", "--against-sheet"});
    }
    excludes(app, "--check", {"dog", "--salon"});
}

void add_log(CLI::App& root, task& chosen) {
    add_command<log_options>(root, chosen, about, log);
}

}  // namespace pelage::cli
