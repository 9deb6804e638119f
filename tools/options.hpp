// Options, each stated once: where it is declared it tells the parser its name and what help says of it.
// What several subcommands take alike stands here, the rest in the file of its subcommand. Every value of
// the domain is still text: resolve_arguments.hpp makes values of it.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace CLI {
class App;
}

namespace pelage::cli {

/// The headings under which help shows options, in this order.
namespace heading {
inline constexpr const char* dog = "The dog";
inline constexpr const char* found = "What was found on it";
inline constexpr const char* done = "What was done";
inline constexpr const char* answer = "What is asked";
inline constexpr const char* place = "Whose sheets and tools";
inline constexpr const char* written = "How it is written";
}  // namespace heading

/// An option with a value, or the operand if `name` has no dash; `what` is what help calls its value.
struct text_option : std::string {
    text_option(CLI::App& app, const char* name, const char* what, const char* says,
                const char* under = heading::answer, const char* unsaid = "");
    text_option(const text_option&) = delete;  // the parser writes to where it is
    using std::string::operator=;
};

/// An option that may be written again for another value, or an operand of several words.
struct list_option : std::vector<std::string> {
    list_option(CLI::App& app, const char* name, const char* what, const char* says,
                const char* under = heading::answer);
    list_option(const list_option&) = delete;
};

struct flag_option {
    flag_option(CLI::App& app, const char* name, const char* says,
                const char* under = heading::answer);
    flag_option(const flag_option&) = delete;
    operator bool() const { return on; }  // NOLINT: it is one
    bool on = false;
};

/// How an answer can be written besides text and JSON; what --format calls them is in workplace.cpp.
struct forms {
    bool html = true;
    bool csv = true;          ///< of its tables
    bool ics = false;         ///< of its visits
    bool svg = false;         ///< of its picture
    const char* no_ics = "";  ///< why there is none today; empty: there never is
};

/// What every subcommand takes.
struct common_options {
    explicit common_options(CLI::App& a) : app(a) {}
    CLI::App& app;
    text_option salon{app, "--salon", "DIR", "folder with salon.toml, styles/ and dogs/",
                      heading::place};
    text_option kit{app, "--kit", "FILE", "a salon file whose kit is used", heading::place};
    text_option table{app, "--table", "ID", "one table's share of the kit", heading::place};
    text_option today{app, "--today", "DATE", "the day of the groom (YYYY-MM-DD)", heading::place};
    text_option format{app, "--format", "FORMAT", "text, json, html", heading::written, "text"};
    forms has{};
    text_option units{app, "--units", "UNITS", "mm or in", heading::written, "mm"};
    text_option output{app, "-o,--output", "FILE", "write to a file instead", heading::written};
    flag_option explain{app, "--explain", "with what stands behind each figure", heading::written};
};

/// What was found on the dog today.
struct intake_options {
    explicit intake_options(CLI::App& a) : app(a) {}
    CLI::App& app;
    list_option mats{app, "--mat", "'ZONE GRADE'",
                     "a mat: 'left ear pelt 5 mm comb passes'; repeat", heading::found};
    list_option skin{app, "--skin", "'ZONE STATE'",
                     "as in 'left ribs lump 10 mm known', 'ear wet'; repeat", heading::found};
    list_option alerts{app, "--alert", "ALERT", "bites, faints, muzzle, 'allergic to ...'; repeat",
                       heading::found};
    list_option sensitive{app, "--sensitive", "ZONE", "what it hates to have touched: feet; repeat",
                          heading::found};
    list_option signs{app, "--sign", "SIGN", "of the stop list: hair-band, swollen-ear; repeat",
                      heading::found};
    text_option age{app, "--age", "AGE", "young, adult or old", heading::found};
    text_option health{app, "--health", "TEXT", "what ails it, in a few words", heading::found};
    text_option outdoors{app, "--outdoors", "TIME", "in the sun: little, some, much",
                         heading::found};
    flag_option coat_change{app, "--coat-change", "the adult coat is coming in", heading::found};
    flag_option shedding{app, "--shedding", "a double coat in shed", heading::found};
    flag_option thin_skin{app, "--thin-skin", "thin, wrinkled or dried-out skin", heading::found};
    flag_option pink_skin{app, "--pink-skin", "white or pink skin that meets the sun",
                          heading::found};
};

/// A dog: its file or id, and what is put in place of what that says.
struct dog_options {
    explicit dog_options(CLI::App& a) : app(a) {}
    CLI::App& app;
    text_option dog{app, "dog", "DOG", "a dog's file (- reads one), or an id of the salon"};
    text_option coat{app, "--coat", "COAT", "as in the look-up: wavy, curly, drop, ...",
                     heading::dog};
    text_option mix{app, "--mix", "MIX", "its breeds, where nobody has seen the coat",
                    heading::dog};
    text_option style{app, "--style", "STYLE", "id of a style sheet", heading::dog};
    text_option season{app, "--season", "NAME",
                       "of the sheet: its name or none; else that of today", heading::dog};
    text_option size{app, "--size", "SIZE", "toy, small, medium, large, giant", heading::dog};
    text_option length{app, "--length", "LENGTH",
                       "left: '16 mm', '7F all off', 'body 7F, legs 1 in'", heading::dog};
    text_option brush{app, "--brush", "HABIT", "brushing at home, and how far down", heading::dog};
    list_option now{app, "--now", "'ZONE LENGTH'", "today's hair, as in 'body 40 mm'; repeat",
                    heading::dog};
    text_option groomed{app, "--groomed", "DATE", "day of the last full groom; else the file's",
                        heading::dog};
    list_option consents{app, "--consent", "ID", "what the owner agreed to, by id; repeat",
                         heading::dog};
    list_option cannot{app, "--cannot", "DAYS", "no visit on: Monday, 2026-12-24; repeat",
                       heading::dog};
    list_option events{app, "--event", "DATE", "fresh for: '2027-05-01 within 7 days'; repeat",
                       heading::dog};
    intake_options found{app};
    text_option chance{app, "--chance", "CHANCE", "for the date: 0.9, 90%, '9 in 10'"};
};

using option_names = std::initializer_list<std::string_view>;

/// These can't be written beside `option`; a heading stands for all that is under it.
void excludes(CLI::App& app, const char* option, option_names others);
/// What help says of --format, where the subcommand has it.
void say_formats(CLI::App& app, const char* formats);
/// `option` says something only beside `other`.
void needs(CLI::App& app, const char* option, const char* other);
/// Takes options away again that say nothing to this subcommand.
void drop(CLI::App& app, option_names names);
/// Takes those away that say something of a dog, but for these.
void keep_of_dog(CLI::App& app, option_names kept);

}  // namespace pelage::cli
