// Help as pages of our own: what can be asked first, then what can be said with it.
#include <memory>
#include <sstream>

#include <CLI/CLI.hpp>

#include "command_line.hpp"

namespace pelage::cli {

namespace {

constexpr std::size_t text_column = 26;

constexpr const char* front =
    "Which blade leaves what on a dog's coat, and when the dog must be back.\n"
    "\n"
    "You groom: what is to be done with this dog, and when is it back?\n"
    "  pelage plan biscuit\n"
    "  pelage plan --coat wavy --style one-length --now 'body 40 mm'\n"
    "  pelage regrow biscuit\n"
    "  pelage log rosie --salon my-salon\n"
    "\n"
    "You learn: which blade leaves what, and where may it go?\n"
    "  pelage lookup 7F\n"
    "  pelage lookup 9mm --coat wavy\n"
    "  pelage lookup 7 --zone groin\n"
    "  pelage quiz\n"
    "\n"
    "The salon is yours: are its style sheets sound, and which of two is less work?\n"
    "  pelage sheet check my-salon/styles\n"
    "  pelage sheet compare one-length low-upkeep\n"
    "\n"
    "Biscuit is an invented dog of an invented salon; --salon DIR takes yours.\n"
    "All there is: pelage help. More of one: pelage help plan.\n";

std::string row(const std::string& name, const std::string& text) {
    const std::string start = "  " + name;
    const bool fits = start.size() + 2 <= text_column;
    return start +
           (fits ? std::string(text_column - start.size(), ' ')
                 : "\n" + std::string(text_column, ' ')) +
           text + "\n";
}

std::string row(const CLI::Option& o) {
    const bool valued = o.get_items_expected_max() > 0 && !o.get_type_name().empty();
    if (o.get_positional()) {
        return row(o.get_type_name(), o.get_description());
    }
    std::string names;
    for (const std::string& s : o.get_snames()) {
        names += "-" + s + ", ";
    }
    names += "--" + o.get_lnames().front();
    return row(names + (valued ? " " + o.get_type_name() : ""), o.get_description());
}

/// The examples of a subcommand, at most so many; of one that has others, one of each of these.
std::string examples_of(const CLI::App& app, std::size_t most) {
    std::string out;
    for (const CLI::App* sub : app.get_subcommands(nullptr)) {
        out += examples_of(*sub, 1);
    }
    std::istringstream lines(app.get_footer());
    for (std::string line; most > 0 && std::getline(lines, line); --most) {
        if (line.substr(0, 2) == "  ") {
            out += "  " + line + "\n";
        }
    }
    return out;
}

std::string options_of(const CLI::App& app) {
    std::string operands;
    for (const CLI::Option* o : app.get_options()) {
        operands += o->get_positional() ? row(*o) : "";
    }
    std::string out = operands.empty() ? "" : "\nWhat you name\n" + operands;
    for (const char* under : {heading::dog, heading::done, heading::found, heading::answer,
                              heading::place, heading::written}) {
        std::string rows;
        for (const CLI::Option* o : app.get_options()) {
            rows += !o->get_positional() && o->get_group() == under ? row(*o) : "";
        }
        out += rows.empty() ? "" : std::string("\n") + under + "\n" + rows;
    }
    return out;
}

class page : public CLI::FormatterBase {
  public:
    std::string make_help(const CLI::App* app, std::string /*name*/,
                          CLI::AppFormatMode /*mode*/) const override {
        const std::string name = called(*app);
        const auto subs = app->get_subcommands(nullptr);
        std::string out = "pelage" + (name.empty() ? "" : " " + name) + ": " +
                          app->get_description() + "\n\nWhat you can ask\n";
        if (subs.empty()) {
            return out + app->get_footer() + options_of(*app);
        }
        for (const CLI::App* sub : subs) {
            if (sub->get_name() == "complete") {
                continue;  // asked by shells
            }
            out += row(sub->get_name(), sub->get_description()) +
                   examples_of(*sub, name.empty() ? 1 : 9);
        }
        return out + "More of one: pelage help " + name + (name.empty() ? "" : " ") +
               subs.front()->get_name() + "\n" + app->get_footer();
    }
};

}  // namespace

std::string front_page() {
    return front;
}

void use_our_pages(CLI::App& root) {
    root.formatter(std::make_shared<page>());
    root.footer(
        "\n"
        "Exit codes: 0 done, 1 done and the answer is no, 2 called wrongly,\n"
        "3 input is wrong, 4 cannot read or write, 70 our own fault.\n"
        "Lengths are written with their unit: 13mm, '13 mm', 1/2in.\n"
        "Which files there are: pelage help files. More on exit codes: pelage help exit.\n"
        "pelage --version says which this is.\n");
}

}  // namespace pelage::cli
