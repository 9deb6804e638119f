// The pages of the manual, in mdoc, made from the tree of options.
#include "manual.hpp"

#include <algorithm>
#include <sstream>

#include <CLI/CLI.hpp>

#include "command_line.hpp"

namespace pelage::cli {

namespace {

/// Lines of at most 80 bytes, broken between words.
std::string broken(const std::string& text) {
    constexpr std::size_t widest = 80;
    std::string out;
    std::size_t begun = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", at + 1), text.size());
        if (text[at] == ' ' && out.size() + end - at - begun > widest) {
            out += "\n" + text.substr(at + 1, end - at - 1);
            begun = out.rfind('\n') + 1;
        } else {
            out += text.substr(at, end - at);
            begun = text[at] == '\n' ? out.rfind('\n') + 1 : begun;
        }
        at = end;
    }
    return out;
}

}  // namespace

std::string plain(const std::string& text) {
    std::string out;
    bool first = true;
    for (const char c : broken(text)) {
        if (first && (c == '.' || c == '\'')) {
            out += "\\&";
        }
        out += c == '\\' ? "\\e" : std::string(1, c);
        first = c == '\n';
    }
    return out;
}

std::string argument(const std::string& text) {
    std::string out = "\"\\&";
    for (const char c : text) {
        out += c == '"' ? "\"\"" : c == '\\' ? "\\e" : std::string(1, c);
    }
    return out + "\"";
}

namespace {

/// A command as it is typed: its dashes are dashes in every font, and none is broken.
std::string typed(const std::string& text) {
    std::string out = "\\&";
    for (const char c : text) {
        out += c == '\\' ? "\\e" : c == '-' ? "\\-" : std::string(1, c);
    }
    return out;
}

std::string item(const CLI::Option& o) {
    std::string out = ".It";
    if (o.get_positional()) {
        return out + " Ar " + argument(o.get_type_name()) + "\n" + plain(o.get_description()) +
               "\n";
    }
    for (const std::string& s : o.get_snames()) {
        out += " Fl " + s + " ,";
    }
    out += " Fl -" + o.get_lnames().front();
    const bool valued = o.get_items_expected_max() > 0 && !o.get_type_name().empty();
    out += valued ? " Ar " + argument(o.get_type_name()) : "";
    return out + "\n" + plain(o.get_description()) + "\n";
}

std::string list_of(const std::string& heading, const std::string& items) {
    return items.empty() ? "" : ".Ss " + heading + "\n.Bl -tag -width Ds\n" + items + ".El\n";
}

std::string options_of(const CLI::App& app) {
    std::string operands;
    for (const CLI::Option* o : app.get_options()) {
        operands += o->get_positional() ? item(*o) : "";
    }
    std::string out = list_of("What you name", operands);
    for (const char* under : {heading::dog, heading::done, heading::found, heading::answer,
                              heading::place, heading::written}) {
        std::string items;
        for (const CLI::Option* o : app.get_options()) {
            items += !o->get_positional() && o->get_group() == under ? item(*o) : "";
        }
        out += list_of(under, items);
    }
    return out.empty() ? "" : ".Sh OPTIONS\n" + out;
}

/// How a subcommand is called: its options, and what it names.
std::string synopsis(const CLI::App& app) {
    std::string out = ".Sh SYNOPSIS\n.Nm \"pelage " + called(app) + "\"\n";
    if (!app.get_subcommands(nullptr).empty()) {
        return out + ".Ar command\n.Op Ar ...\n";
    }
    out += ".Op Ar options\n";
    for (const CLI::Option* o : app.get_options()) {
        if (o->get_positional()) {
            const bool several = o->get_items_expected_max() > 1;
            out += (o->get_required() ? ".Ar " : ".Op Ar ") + argument(o->get_type_name()) +
                   (several ? " ...\n" : "\n");
        }
    }
    return out;
}

/// Each sentence on a line of its own, as mdoc wants it.
std::string sentences(std::string text) {
    for (std::size_t at = text.find(". "); at != std::string::npos; at = text.find(". ", at)) {
        text[at + 1] = '\n';
    }
    return text;
}

/// The examples of a subcommand and what more is said of it, as its help ends.
std::string ends_of(const CLI::App& app) {
    std::string examples;
    std::string more;
    std::istringstream lines(app.get_footer());
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("  ")) {
            examples += ".Dl " + typed(line.substr(2)) + "\n";
        } else if (!line.empty()) {
            more += (more.empty() ? "" : " ") + line;
        }
    }
    return (more.empty() ? "" : ".Sh DESCRIPTION\n" + plain(sentences(more)) + "\n") +
           (examples.empty() ? "" : ".Sh EXAMPLES\n" + examples);
}

std::string dashed(std::string name) {
    for (char& c : name) {
        c = c == ' ' ? '-' : c;
    }
    return name;
}

std::string capital(std::string s) {
    for (char& c : s) {
        c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c;
    }
    return s;
}

std::string head(const std::string& name, const std::string& what, const std::string& day) {
    return ".Dd " + day + "\n.Dt " + capital(name) + " 1\n.Os\n.Sh NAME\n.Nm " + name + "\n.Nd " +
           plain(what) + "\n";
}

constexpr const char* how_it_ends =
    ".Sh EXIT STATUS\n0 done, 1 done and the answer is no, 2 called wrongly, 3 input is wrong,\n"
    "4 cannot read or write, 70 our own fault.\n";

void add_pages(const CLI::App& app, const std::string& day, std::vector<manual_page>& to) {
    for (const CLI::App* sub : app.get_subcommands(nullptr)) {
        const std::string name = "pelage-" + dashed(called(*sub));
        std::string text = head(name, sub->get_description(), day) + synopsis(*sub);
        const std::string ends = ends_of(*sub);
        const std::size_t examples = ends.find(".Sh EXAMPLES");
        text += ends.substr(0, std::min(examples, ends.size())) + options_of(*sub);
        if (!sub->get_subcommands(nullptr).empty()) {
            text += ".Sh COMMANDS\n.Bl -tag -width Ds\n";
            for (const CLI::App* below : sub->get_subcommands(nullptr)) {
                text += ".It Xr pelage-" + dashed(called(*below)) + " 1\n" +
                        plain(below->get_description()) + "\n";
            }
            text += ".El\n";
        }
        text += how_it_ends;
        text += examples == std::string::npos ? "" : ends.substr(examples);
        to.push_back({name + ".1", text + ".Sh SEE ALSO\n.Xr pelage 1\n"});
        add_pages(*sub, day, to);
    }
}

}  // namespace

std::vector<manual_page> manual(const std::string& day) {
    CLI::App root{"Which blade leaves what on a dog's coat, and when the dog must be back.",
                  "pelage"};
    task chosen;
    add_all(root, chosen);
    std::vector<manual_page> pages;
    std::string text =
        head("pelage", "which blade leaves what on a dog's coat, and when the dog must be back",
             day) +
        ".Sh SYNOPSIS\n.Nm\n.Ar command\n.Op Ar ...\n.Sh DESCRIPTION\n" +
        plain(
            "Plans a haircut for a dog, tells what blades and combs leave, when the dog must "
            "be back, and keeps the style sheets, the record and the diary of a salon.") +
        "\n.Bl -tag -width Ds\n";
    for (const CLI::App* sub : root.get_subcommands(nullptr)) {
        text +=
            ".It Xr pelage-" + dashed(called(*sub)) + " 1\n" + plain(sub->get_description()) + "\n";
    }
    text +=
        ".El\n.Sh ENVIRONMENT\n.Bl -tag -width Ds\n.It Ev PELAGE_SALON\n"
        "The folder of the salon where\n.Fl -salon\nis not said.\n.El\n";
    pages.push_back({"pelage.1", text + how_it_ends + ".Sh SEE ALSO\n.Xr pelage-files 5\n"});
    add_pages(root, day, pages);
    return pages;
}

}  // namespace pelage::cli
