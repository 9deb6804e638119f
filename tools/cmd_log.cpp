// log: what was done at a visit, appended to the record beside the dog's file; shown, taken back, audited
// and handed out.
#include "cmd_log.hpp"

#include <pelage/data/record_file.hpp>

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
    "with 3 if a record is damaged; what is sound in it is counted all the same.\n",
    "text, json; of what it shows html"};

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

reply log(log_options& o, const surroundings& around) {
    faults f;
    o.has = {o.show || o.against_sheet, o.against_sheet};
    const workplace w = workplace_of(o, around, f, o.dog.season);
    if (!o.exported.empty()) {
        (void)choice_in("--export", o.exported, {"csv", "json"}, f);
    }
    if (!o.audit.empty()) {
        f.throw_if_any();
        return audited(o, w);
    }
    if ((!o.exported.empty() || o.against_sheet) && o.dog.dog.empty()) {
        f.throw_if_any();
        std::vector<const dog*> dogs;
        if (w.own) {
            for (const dog& d : w.own->dogs) {
                dogs.push_back(&d);
            }
        }
        return o.against_sheet ? against_sheet(w, dogs, around) : exported(o, w, dogs, around);
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
    return o.show               ? shown(w, d, path, around)
           : o.against_sheet    ? against_sheet(w, {&d}, around)
           : o.undo             ? taken_back(o, w, d, path, around)
           : o.exported.empty() ? added(o, w, d, path, around, f)
                                : exported(o, w, {&d}, around);
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
