#include <algorithm>
#include <sstream>

#include <CLI/CLI.hpp>

#include <pelage/suggest.hpp>

#include "request.hpp"

namespace pelage::cli {

namespace {

const std::vector<std::string> verbs{"lookup", "plan", "regrow", "sheet", "kit", "help"};

constexpr const char* general_footer =
    "Examples:\n"
    "  pelage lookup 7F\n"
    "  pelage plan biscuit\n"
    "  pelage regrow biscuit\n"
    "  pelage sheet list\n"
    "Exit codes: 0 done, 1 done and the answer is no, 2 called wrongly,\n"
    "3 input is wrong, 4 cannot read or write, 70 our own fault.\n"
    "Lengths are written with their unit: 13mm, '13 mm', 1/2in.";

constexpr const char* lookup_footer =
    "Examples:\n"
    "  pelage lookup 7F\n"
    "  pelage lookup 9mm --coat wavy\n"
    "  pelage lookup '13 mm comb over 10' --coat curly\n"
    "  pelage lookup 7 --zone groin\n"
    "  pelage lookup 'miniature poodle x english cocker spaniel'\n"
    "  pelage lookup 'F1b poodle x labrador to poodle' --explain\n"
    "  pelage lookup '(genotype l/l F/f C/c) x poodle'\n"
    "  pelage lookup --all --coat curly\n"
    "  pelage lookup --sources matting";

constexpr const char* kit_footer =
    "Examples:\n"
    "  pelage kit check\n"
    "  pelage kit buy --most 3\n"
    "  pelage kit buy --from-nothing --sheets reference/styles --most 8\n"
    "  pelage kit measure 7F --coat drop --zone back --length 5.8mm\n"
    "  pelage kit measure 10 --coat wavy --direction against --length 1.8mm\n"
    "check: labels that mean two lengths, what is unsafe together, out, idle or\n"
    "missing for the salon's sheets. buy: the best few things to buy, proven.\n"
    "measure: what a test patch teaches; it changes no file.";

constexpr const char* plan_footer =
    "Examples:\n"
    "  pelage plan biscuit --zones\n"
    "  pelage plan --coat wavy --style one-length --now 'body 40 mm'\n"
    "  pelage plan --mix 'F1b poodle x labrador to poodle' --style one-length\n"
    "  pelage plan --coat curly --style lamb --size small --format json\n"
    "  pelage plan bramble --any-sheet\n"
    "  pelage plan biscuit --back-in 6w\n"
    "  pelage plan bramble --for owner --format html -o bramble.html\n"
    "  pelage plan --ask -o dogs/moss.toml\n"
    "  pelage plan --coat curly --style lamb --mat 'left ear pelt 5 mm' --age old\n"
    "  pelage plan --roster dogs.jsonl --jobs 2 -o plans.jsonl\n"
    "DOG is a file (a name ending in .toml) or the id of a dog of the salon.\n"
    "A roster is JSON Lines: a dog a line, the keys of a dog's file; - reads standard\n"
    "input. Each line is answered by one line of JSON, a faulty one by its faults.";

constexpr const char* sheet_footer =
    "Examples:\n"
    "  pelage sheet list\n"
    "  pelage sheet list --for 'miniature poodle x cocker spaniel'\n"
    "  pelage sheet show one-length --coat curly\n"
    "  pelage sheet compare one-length low-upkeep --coat wavy\n"
    "  pelage sheet new house -o house.toml\n"
    "  pelage sheet check reference/styles --against lagotto\n"
    "ID is a sheet of the salon or of the reference, FILE ends in .toml.\n"
    "check: 0 clean or with advice only, 1 something can't be had as written (a\n"
    "limit broken, a blade not used there, hair that doesn't grow so long), 3 faulty.\n"
    "list: 1 if no sheet is for such a coat.";

constexpr const char* regrow_footer =
    "Examples:\n"
    "  pelage regrow biscuit\n"
    "  pelage regrow biscuit --weeks 26\n"
    "  pelage regrow biscuit --weeks 12 --cannot Tuesday --format ics\n"
    "  pelage regrow --coat wavy --style one-length --length 16mm --brush none\n"
    "  pelage regrow --learn reference/demo\n"
    "Brushing is written: none, 'weekly to the skin', 'every 3 days to the skin',\n"
    "'daily on the surface'. Brushing that doesn't reach the skin counts as none.\n"
    "Days off also: '2026-12-24 to 2027-01-03'. --weeks goes on from the visits in\n"
    "the dog's file; --groomed sets the last full groom.";

/// An option, or the operands, with what the help calls its value.
template <class To>
void value(CLI::App& app, const char* name, To& to, const char* text, const char* what) {
    app.add_option(name, to, text)->type_name(what);
}

/// An option that may be written again for another value.
void repeated(CLI::App& app, const char* name, std::vector<std::string>& to, const char* text,
              const char* what) {
    app.add_option(name, to, text)->type_name(what)->allow_extra_args(false);
}

void add_general(CLI::App& app, request& q) {
    value(app, "--format", q.format, "text or json; some answers also csv, html or ics", "FORMAT");
    value(app, "--units", q.units, "mm or in", "UNITS");
    value(app, "-o,--output", q.output, "write to a file instead", "FILE");
    value(app, "--today", q.today, "the day of the groom (YYYY-MM-DD)", "DATE");
    value(app, "--salon", q.salon, "folder with salon.toml, styles/ and dogs/", "DIR");
    value(app, "--kit", q.kit, "a salon file whose kit is used", "FILE");
    value(app, "--table", q.table, "one table's share of the kit", "ID");
    app.add_flag("--explain", q.explain, "with what stands behind each figure");
}

void add_dog(CLI::App& app, request& q) {
    value(app, "dog", q.operands, "a dog's file, or the id of a dog of the salon", "DOG");
    value(app, "--coat", q.coat, "as in the look-up: wavy, curly, drop, ...", "COAT");
    value(app, "--mix", q.mix, "its breeds, where nobody has seen the coat", "MIX");
    value(app, "--style", q.style, "id of a style sheet", "STYLE");
    value(app, "--season", q.season, "of the sheet: its name or none; else that of today", "NAME");
    value(app, "--size", q.size, "toy, small, medium, large, giant", "SIZE");
    value(app, "--length", q.length, "in place of the sheet's own length", "LENGTH");
    value(app, "--brush", q.brush, "brushing at home, and how far down", "HABIT");
    repeated(app, "--now", q.now, "today's hair, as in 'body 40 mm'; may be repeated",
             "'ZONE LENGTH'");
    repeated(app, "--consent", q.consents, "what the owner agreed to, by id; may be repeated",
             "ID");
    value(app, "--chance", q.chance, "for the date: 0.9, 90%, '9 in 10'", "CHANCE");
}

void add_sheet(CLI::App& app, request& q) {
    value(app, "what", q.operands, "check PATH.., show ID, list, new ID, compare A B [DOG]",
          "WHAT");
    value(app, "--for", q.suits, "list: sheets for a mix; new: the mix it is for", "MIX");
    value(app, "--against", q.against, "check: the limits of another sheet, by id or file", "ID");
    value(app, "--season", q.season, "of the sheet: its name or none; else that of today", "NAME");
    value(app, "--coat", q.coat, "show, compare, new: the coat it is for", "COAT");
    value(app, "--size", q.size, "show, compare: toy, small, medium, large, giant", "SIZE");
    value(app, "--brush", q.brush, "compare: brushing at home, and how far down", "HABIT");
    value(app, "--chance", q.chance, "compare: for the dates: 0.9, 90%, '9 in 10'", "CHANCE");
}

/// What the intake finds, for a dog without a file or beside it.
void add_intake(CLI::App& app, request& q) {
    repeated(app, "--mat", q.mats, "a mat, as in 'left ear pelt 5 mm comb passes'; repeat",
             "'ZONE GRADE ...'");
    repeated(app, "--skin", q.skin, "as in 'left ribs lump 10 mm known', 'ear wet'; repeat",
             "'ZONE STATE'");
    repeated(app, "--alert", q.alerts, "bites, faints, muzzle, 'allergic to ...'; repeat", "ALERT");
    repeated(app, "--sensitive", q.sensitive, "what it hates to have touched: feet; repeat",
             "ZONE");
    repeated(app, "--sign", q.signs, "of the stop list: hair-band, swollen-ear; repeat", "SIGN");
    value(app, "--age", q.age, "young, adult or old", "AGE");
    value(app, "--health", q.health, "what ails it, in a few words", "TEXT");
    value(app, "--outdoors", q.outdoors, "in the sun: little, some, much", "TIME");
    app.add_flag("--coat-change", q.coat_change, "the adult coat is coming in");
    app.add_flag("--shedding", q.shedding, "a double coat in shed");
    app.add_flag("--thin-skin", q.thin_or_old, "thin, wrinkled or dried-out skin");
    app.add_flag("--pink-skin", q.pink_skin, "white or pink skin that meets the sun");
}

void add_groomed(CLI::App& app, request& q) {
    value(app, "--groomed", q.groomed, "day of the last full groom; else the file's", "DATE");
}

void add_calendar(CLI::App& app, request& q) {
    value(app, "--weeks", q.weeks, "the visits of so many weeks, 4 to 52", "N");
    repeated(app, "--cannot", q.cannot, "no visit on: Monday, 2026-12-24; may be repeated", "DAYS");
    repeated(app, "--event", q.events, "fresh for: '2027-05-01 within 7 days'; likewise", "DATE");
}

void add_kit(CLI::App& app, request& q) {
    value(app, "what", q.operands, "check [FILE], measure TOOL, or buy", "WHAT");
    value(app, "--sheets", q.sheets, "a folder of style sheets, in place of the salon's", "DIR");
    value(app, "--most", q.most, "buy: at most so many things, 1 to 40; 5 if not said", "N");
    value(app, "--catalogue", q.catalogue, "buy: a salon file whose kit is what is offered",
          "FILE");
    app.add_flag("--from-nothing", q.from_nothing, "buy: for an empty drawer");
    value(app, "--coat", q.coat, "measure: the coat of the patch", "COAT");
    value(app, "--zone", q.zone, "measure: where the patch is", "ZONE");
    value(app, "--direction", q.direction, "measure: with (if not said) or against", "WAY");
    value(app, "--length", q.length, "measure: what was left, combed out and dry", "LENGTH");
    value(app, "--sets", q.sets, "measure: lay or tool, where it could set either", "WHICH");
}

struct tree {
    request q;
    CLI::App app{"Which blade leaves what on a dog's coat, and when the dog must be back.",
                 "pelage"};
    CLI::App* lookup = nullptr;
    CLI::App* plan = nullptr;
    CLI::App* regrow = nullptr;
    CLI::App* sheet = nullptr;
    CLI::App* kit = nullptr;

    tree() {
        app.get_formatter()->column_width(26);
        app.set_version_flag("--version", std::string("pelage ") + pelage_VERSION);
        app.footer(general_footer);
        lookup = app.add_subcommand("lookup", "what a blade, a comb, a length or a mix means");
        value(*lookup, "what", q.operands, "7F, 9mm, '13 mm comb over 10', 'poodle x beagle'",
              "WHAT");
        value(*lookup, "--coat", q.coat, "the coat it is for", "COAT");
        value(*lookup, "--zone", q.zone, "the zone it is for", "ZONE");
        value(*lookup, "--direction", q.direction, "with or against", "WAY");
        value(*lookup, "--kind", q.kind, "blade or comb, where a name could be either", "KIND");
        value(*lookup, "--curl", q.curl, "of a mix: additive, or dominant as some labs say", "HOW");
        lookup->add_flag("--barber", q.barber, "bare comb numbers are n/8 inch");
        lookup->add_flag("--all", q.all, "everything the kit leaves on a coat, shortest first");
        lookup->add_flag("--sources", q.sources,
                         "figures and cautions with their basis; WHAT picks some");
        plan = app.add_subcommand("plan", "what to do with a dog, in working order");
        add_dog(*plan, q);
        add_intake(*plan, q);
        add_groomed(*plan, q);
        value(*plan, "--for", q.reader, "owner: a page to take home; trainee: with the why",
              "WHOM");
        plan->add_flag("--ask", q.ask, "an intake in the terminal, a key an answer");
        value(*plan, "--groomer", q.groomer, "who grooms, on the owner's page", "NAME");
        value(*plan, "--back-in", q.back_in, "the longest coat that waits so long: 6w, 42d",
              "WAIT");
        plan->add_flag("--any-sheet", q.any_sheet, "which of the sheets the dog can carry, ranked");
        plan->add_flag("--zones", q.zones, "with the table of zones");
        value(*plan, "--roster", q.roster, "plan every dog of a file of JSON Lines", "FILE");
        value(*plan, "--jobs", q.jobs, "how many to plan at once; all cores if not said", "N");
        regrow = app.add_subcommand("regrow", "how it grows out, and when the dog must be back");
        add_dog(*regrow, q);
        regrow->add_flag("--zones", q.zones, "with what brushing wins, zone by zone");
        add_intake(*regrow, q);
        add_groomed(*regrow, q);
        add_calendar(*regrow, q);
        value(*regrow, "--learn", q.learn, "growth rates from a salon's measured dogs", "DIR");
        sheet = app.add_subcommand("sheet", "style sheets: check, show, list, new, compare");
        add_sheet(*sheet, q);
        sheet->footer(sheet_footer);
        kit = app.add_subcommand("kit", "check the kit, measure a patch, or what to buy");
        add_kit(*kit, q);
        kit->footer(kit_footer);
        lookup->footer(lookup_footer);
        plan->footer(plan_footer);
        regrow->footer(regrow_footer);
        for (CLI::App* a : {lookup, plan, regrow, sheet, kit}) {
            add_general(*a, q);
            a->allow_extras();
        }
        app.allow_extras();
        app.require_subcommand(0, 1);  // "lookup 7F plan" is no second command
    }
};

std::vector<std::string> long_names(const CLI::App& a) {
    std::vector<std::string> out;
    for (const CLI::Option* o : a.get_options()) {
        for (const std::string& n : o->get_lnames()) {
            out.push_back("--" + n);
        }
    }
    return out;
}

const CLI::App* used_of(const tree& t) {
    return t.lookup->parsed()   ? t.lookup
           : t.plan->parsed()   ? t.plan
           : t.regrow->parsed() ? t.regrow
           : t.sheet->parsed()  ? t.sheet
           : t.kit->parsed()    ? t.kit
                                : nullptr;
}

/// Words that no option or operand took: told one by one, with what was probably meant.
std::string strangers(const tree& t) {
    const CLI::App* used = used_of(t);
    std::string out;
    const auto tell = [&](const std::vector<std::string>& words, const CLI::App& a) {
        for (const std::string& w : words) {
            if (w == "--") {
                continue;
            }
            const bool option = w.size() > 1 && w.front() == '-';
            const std::string name = w.substr(0, w.find('='));
            out += "pelage: error: unknown " + std::string(option ? "option" : "command") + " \"" +
                   w + "\"" + did_you_mean(option ? name : w, option ? long_names(a) : verbs) +
                   "\n";
        }
    };
    tell(t.app.remaining(), t.app);
    if (used != nullptr) {
        tell(used->remaining(), *used);
    }
    return out;
}

verb verb_of(const tree& t) {
    return t.lookup->parsed()   ? verb::lookup
           : t.plan->parsed()   ? verb::plan
           : t.regrow->parsed() ? verb::regrow
           : t.sheet->parsed()  ? verb::sheet
           : t.kit->parsed()    ? verb::kit
                                : verb::none;
}

/// An option without its value, or written twice, as the parser found it.
std::string miscounted(const CLI::ArgumentMismatch& e) {
    const std::string what = e.what();
    const std::string name = what.substr(0, what.find(':'));
    return "pelage: error: " + name +
           (what.ends_with("missing") ? ": found no value; write one behind it, or leave it out\n"
                                      : ": found more than once; write it once\n");
}

/// The options that were written. One with nothing in it, as an empty variable of a script leaves it,
/// is told in `empty`: to pass it over would be to guess.
std::vector<std::string> given(const CLI::App& used, std::string& empty) {
    std::vector<std::string> out;
    for (const CLI::Option* o : used.get_options()) {
        if (o->count() == 0 || o->get_lnames().empty()) {
            continue;
        }
        out.push_back("--" + o->get_lnames().front());
        for (const std::string& value : o->results()) {
            if (value.find_first_not_of(" \t") == std::string::npos) {
                empty += "pelage: error: " + out.back() + ": found \"" + value +
                         "\"; write something behind it, or leave it out\n";
            }
        }
    }
    return out;
}

parsed wrongly(std::string text) {
    text += "Try \"pelage --help\".\n";
    return {{}, true, 2, std::move(text)};
}

}  // namespace

parsed parse_arguments(const std::vector<std::string>& args) {
    tree t;
    std::vector<std::string> words = args;
    if (!words.empty() && words.front() == "help") {  // "help plan" is "plan --help"
        words.erase(words.begin());
        words.emplace_back("--help");
    }
    const auto is_verb = [](const std::string& w) {
        return w != "help" && std::find(verbs.begin(), verbs.end(), w) != verbs.end();
    };
    if (!words.empty() && words.front().substr(0, 1) != "-" && !is_verb(words.front())) {
        return wrongly("pelage: error: unknown command \"" + words.front() + "\"" +
                       did_you_mean(words.front(), verbs) + "\n");
    }
    if (words.empty()) {
        return wrongly("pelage: error: nothing asked; write lookup, plan, regrow, sheet or kit\n");
    }
    std::reverse(words.begin(), words.end());  // the parser takes them from the back
    try {
        t.app.parse(words);
    } catch (const CLI::ParseError& e) {
        std::ostringstream out;
        std::ostringstream err;
        if (t.app.exit(e, out, err) == 0) {
            return {{}, true, 0, out.str()};
        }
        const std::string odd = strangers(t);  // a misspelt word explains the rest
        const auto* count = dynamic_cast<const CLI::ArgumentMismatch*>(&e);
        return wrongly(!odd.empty()       ? odd
                       : count != nullptr ? miscounted(*count)
                                          : "pelage: error: " + std::string(e.what()) + "\n");
    }
    if (const std::string odd = strangers(t); !odd.empty()) {
        return wrongly(odd);
    }
    t.q.what = verb_of(t);
    if (t.q.what == verb::none) {
        return wrongly("pelage: error: nothing asked; write lookup, plan, regrow, sheet or kit\n");
    }
    std::string amiss;
    t.q.given = given(*used_of(t), amiss);
    if (amiss.empty()) {
        amiss = misfit(t.q);
    }
    return amiss.empty() ? parsed{t.q, false, 0, {}} : wrongly(amiss);
}

}  // namespace pelage::cli
