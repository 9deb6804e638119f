#include <algorithm>
#include <sstream>

#include <CLI/CLI.hpp>

#include <pelage/suggest.hpp>

#include "request.hpp"

namespace pelage::cli {

namespace {

constexpr const char* general_footer =
    "Examples:\n"
    "  pelage lookup 7F\n"
    "  pelage plan biscuit\n"
    "  pelage regrow biscuit\n"
    "Exit codes: 0 done, 1 done and the answer is no, 2 called wrongly,\n"
    "3 input is wrong, 4 cannot read or write, 70 our own fault.\n"
    "Lengths are written with their unit: 13mm, '13 mm', 1/2in.";

constexpr const char* lookup_footer =
    "Examples:\n"
    "  pelage lookup 7F\n"
    "  pelage lookup 9mm --coat wavy\n"
    "  pelage lookup '13 mm comb over 10' --coat curly\n"
    "  pelage lookup 7 --zone groin\n"
    "  pelage lookup --sources matting";

constexpr const char* plan_footer =
    "Examples:\n"
    "  pelage plan biscuit --zones\n"
    "  pelage plan --coat wavy --style one-length --now 'body 40 mm'\n"
    "  pelage plan --coat curly --style lamb --size small --format json\n"
    "  pelage plan biscuit --back-in 6w\n"
    "  pelage plan --roster dogs.jsonl --jobs 2 -o plans.jsonl\n"
    "DOG is a file (a name ending in .toml) or the id of a dog of the salon.\n"
    "A roster is JSON Lines: a dog a line, the keys of a dog's file; - reads standard\n"
    "input. Each line is answered by one line of JSON, a faulty one by its faults.";

constexpr const char* regrow_footer =
    "Examples:\n"
    "  pelage regrow biscuit\n"
    "  pelage regrow biscuit --weeks 26\n"
    "  pelage regrow biscuit --weeks 12 --cannot Tuesday --format ics\n"
    "  pelage regrow --coat wavy --style one-length --length 16mm --brush none\n"
    "Brushing is written: none, 'weekly to the skin', 'every 3 days to the skin',\n"
    "'daily on the surface'. Brushing that doesn't reach the skin counts as none.";

void add_general(CLI::App& app, request& q) {
    app.add_option("--format", q.format, "text or json; ics with --weeks")->type_name("FORMAT");
    app.add_option("--units", q.units, "mm or in")->type_name("UNITS");
    app.add_option("-o,--output", q.output, "write to a file instead")->type_name("FILE");
    app.add_option("--today", q.today, "the day of the groom (YYYY-MM-DD)")->type_name("DATE");
    app.add_option("--salon", q.salon, "folder with salon.toml, styles/ and dogs/")
        ->type_name("DIR");
    app.add_option("--kit", q.kit, "a salon file whose kit is used")->type_name("FILE");
    app.add_flag("--explain", q.explain, "with what stands behind each figure");
}

void add_dog(CLI::App& app, request& q) {
    app.add_option("dog", q.operands, "a dog's file, or the id of a dog of the salon")
        ->type_name("DOG");
    app.add_option("--coat", q.coat, "as in the look-up: wavy, curly, drop, ...")
        ->type_name("COAT");
    app.add_option("--style", q.style, "id of a style sheet")->type_name("STYLE");
    app.add_option("--size", q.size, "toy, small, medium, large, giant")->type_name("SIZE");
    app.add_option("--length", q.length, "in place of the sheet's own length")->type_name("LENGTH");
    app.add_option("--brush", q.brush, "brushing at home, and how far down")->type_name("HABIT");
    app.add_option("--now", q.now, "today's hair, as in 'body 40 mm'; may be repeated")
        ->type_name("'ZONE LENGTH'")
        ->allow_extra_args(false);
    app.add_option("--consent", q.consents, "what the owner agreed to, by id; may be repeated")
        ->type_name("ID")
        ->allow_extra_args(false);
    app.add_option("--chance", q.chance, "for the date: 0.9, 90%, '9 in 10'")->type_name("CHANCE");
}

void add_calendar(CLI::App& app, request& q) {
    app.add_option("--weeks", q.weeks, "the visits of so many weeks, 4 to 52")->type_name("N");
    app.add_option("--groomed", q.groomed, "day of the last full groom; else the file's, or today")
        ->type_name("DATE");
    app.add_option("--cannot", q.cannot, "days off: Monday, or '2026-12-24 to 2027-01-03'")
        ->type_name("DAYS")
        ->allow_extra_args(false);
    app.add_option("--event", q.events, "to be fresh for: '2027-05-01 within 7 days'")
        ->type_name("DATE")
        ->allow_extra_args(false);
}

struct tree {
    request q;
    CLI::App app{"Which blade leaves what on a dog's coat, and when the dog must be back.",
                 "pelage"};
    CLI::App* lookup = nullptr;
    CLI::App* plan = nullptr;
    CLI::App* regrow = nullptr;

    tree() {
        app.get_formatter()->column_width(26);
        app.set_version_flag("--version", std::string("pelage ") + pelage_VERSION);
        app.footer(general_footer);
        lookup = app.add_subcommand("lookup", "what a blade, a comb or a length means");
        lookup->add_option("what", q.operands, "7F, 9mm, 3/8in, '13 mm comb over 10'")
            ->type_name("WHAT");
        lookup->add_option("--coat", q.coat, "the coat it is for")->type_name("COAT");
        lookup->add_option("--zone", q.zone, "the zone it is for")->type_name("ZONE");
        lookup->add_option("--direction", q.direction, "with or against")->type_name("WAY");
        lookup->add_option("--kind", q.kind, "blade or comb, where a name could be either")
            ->type_name("KIND");
        lookup->add_flag("--barber", q.barber, "bare comb numbers are n/8 inch");
        lookup->add_flag("--sources", q.sources, "list figures with their basis; WHAT picks some");
        plan = app.add_subcommand("plan", "what to do with a dog, in working order");
        add_dog(*plan, q);
        plan->add_option("--back-in", q.back_in, "the longest coat that waits so long: 6w, 42d")
            ->type_name("WAIT");
        plan->add_flag("--zones", q.zones, "with the table of zones");
        plan->add_option("--roster", q.roster, "plan every dog of a file of JSON Lines")
            ->type_name("FILE");
        plan->add_option("--jobs", q.jobs, "how many to plan at once; all cores if not said")
            ->type_name("N");
        regrow = app.add_subcommand("regrow", "how it grows out, and when the dog must be back");
        add_dog(*regrow, q);
        add_calendar(*regrow, q);
        lookup->footer(lookup_footer);
        plan->footer(plan_footer);
        regrow->footer(regrow_footer);
        for (CLI::App* a : {lookup, plan, regrow}) {
            add_general(*a, q);
            a->allow_extras();
        }
        app.allow_extras();
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

/// Words that no option or operand took: told one by one, with what was probably meant.
std::string strangers(const tree& t) {
    const CLI::App* used = t.lookup->parsed()   ? t.lookup
                           : t.plan->parsed()   ? t.plan
                           : t.regrow->parsed() ? t.regrow
                                                : nullptr;
    std::string out;
    const auto tell = [&](const std::vector<std::string>& words, const CLI::App& a) {
        for (const std::string& w : words) {
            if (w == "--") {
                continue;
            }
            const bool option = w.size() > 1 && w.front() == '-';
            const std::string name = w.substr(0, w.find('='));
            out += "pelage: error: unknown " + std::string(option ? "option" : "command") + " \"" +
                   w + "\"" +
                   did_you_mean(
                       option ? name : w,
                       option ? long_names(a)
                              : std::vector<std::string>{"lookup", "plan", "regrow", "help"}) +
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
                                : verb::none;
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
        return w == "lookup" || w == "plan" || w == "regrow";
    };
    if (!words.empty() && words.front().substr(0, 1) != "-" && !is_verb(words.front())) {
        return wrongly("pelage: error: unknown command \"" + words.front() + "\"" +
                       did_you_mean(words.front(), {"lookup", "plan", "regrow", "help"}) + "\n");
    }
    if (words.empty()) {
        return wrongly("pelage: error: nothing asked; write lookup, plan or regrow\n");
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
        return wrongly(odd.empty() ? "pelage: error: " + std::string(e.what()) + "\n" : odd);
    }
    if (const std::string odd = strangers(t); !odd.empty()) {
        return wrongly(odd);
    }
    t.q.what = verb_of(t);
    if (t.q.what == verb::none) {
        return wrongly("pelage: error: nothing asked; write lookup, plan or regrow\n");
    }
    return {t.q, false, 0, {}};
}

}  // namespace pelage::cli
