// Help on what belongs to no subcommand: how it ends, and which files there are.
#include "command_line.hpp"

namespace pelage::cli {

namespace {

constexpr const char* exit_page =
    "pelage ends with\n"
    "\n"
    "  0   done\n"
    "  1   done, and the answer is no: never there, nothing fits, some of the dog\n"
    "      can't be done as asked, a double coat whose owner is asked first, a\n"
    "      veterinarian first, a sheet or a kit has a fault. What is only to be\n"
    "      signed (\"Sign first\") is a plan all the same and ends with 0\n"
    "  2   called wrongly: no such command or option, or two that don't go together\n"
    "  3   input is wrong: a file, a line of a roster, a value behind an option, a\n"
    "      word that lookup doesn't know\n"
    "  4   cannot read or write\n"
    "  70  our own fault; please report it\n"
    "\n"
    "Of several the highest. An answer goes to standard output, whatever is wrong and\n"
    "all questions to standard error; faults of a file are FILE:LINE:COLUMN. With 1\n"
    "what there is to say is written all the same.\n"
    "\n"
    "Lines are as wide as the terminal, 32 to 80 columns; where there is none, as\n"
    "COLUMNS says, else 80. Alerts and refusals are bold red in a terminal, unless\n"
    "NO_COLOR is set. How far a roster is, and how fast, is told on standard error\n"
    "where that is a terminal and the answers go elsewhere.\n";

constexpr const char* files_page =
    "A salon is a folder, named by --salon DIR or by PELAGE_SALON\n"
    "\n"
    "  salon.toml                the kit, days closed, groomers and their hours, and\n"
    "                            figures of your own in place of ours\n"
    "  styles/house.toml         a style sheet, called by its id\n"
    "  dogs/rosie.toml           a dog, called by its id\n"
    "  dogs/rosie.record.jsonl   its record: written by log, and by nobody else\n"
    "  dogs/rosie.intake         answers of an intake that isn't finished\n"
    "  mia.quiz.jsonl            what a trainee answered in the quiz\n"
    "\n"
    "Without a salon an invented one is there, with its dogs and sheets, for trying\n"
    "things out. A name that ends in .toml is a file, any other an id of the salon;\n"
    "- is standard input for a dog or a roster, and standard output behind -o. What\n"
    "somebody wrote is never written over: a .toml that is there, a record, a quiz,\n"
    "an intake, whatever link leads to it.\n"
    "\n"
    "Every JSON begins with its schema, such as pelage/plan/1; schemas of all answers\n"
    "and files are in share/pelage/schema, or in reference/schema of the source. What\n"
    "every key means is told in reference/README.md.\n";

constexpr const char* intake_page =
    "The intake is what is asked of a dog before its plan\n"
    "\n"
    "  pelage plan --ask -o moss.toml    a new dog: its file is written at the end\n"
    "  pelage plan moss --ask            a dog of the salon: only what is new\n"
    "\n"
    "One key an answer, or the word for it and Enter; < goes back, q breaks off and\n"
    "keeps what was answered (moss.intake), and the same call goes on. By a pipe each\n"
    "line is an answer. Nothing that is there is written over. Without questions the\n"
    "same is said by options (--mat, --skin, --age, ...): pelage help plan.\n";

}  // namespace

std::string help_on(const std::string& topic) {
    return topic == "exit"     ? exit_page
           : topic == "files"  ? files_page
           : topic == "intake" ? intake_page
                               : "";
}

}  // namespace pelage::cli
