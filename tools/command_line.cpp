#include "command_line.hpp"

#include <algorithm>
#include <sstream>

#include <CLI/CLI.hpp>

namespace pelage::cli {

namespace {

/// "help plan" is "plan --help", "help" and "help help" are "--help".
std::vector<std::string> without_help(std::vector<std::string> words) {
    if (words.empty() || words.front() != "help") {
        return words;
    }
    std::erase(words, "help");
    words.emplace_back("--help");
    return words;
}

std::vector<std::string> words_in(const CLI::App& used) {
    std::vector<std::string> out;
    for (const CLI::Option* o : used.get_options()) {
        if (!o->check_lname("output")) {
            out.insert(out.end(), o->results().begin(), o->results().end());
        }
    }
    return out;
}

/// An option without its value, or written twice, as the parser found it.
std::string miscounted(const CLI::ParseError& e) {
    const std::string what = e.what();
    if (dynamic_cast<const CLI::ArgumentMismatch*>(&e) == nullptr) {
        return "pelage: error: " + what + "\n";
    }
    return "pelage: error: " + what.substr(0, what.find(':')) +
           (what.ends_with("missing") ? ": found no value; write one behind it, or leave it out\n"
                                      : ": found more than once; write it once\n");
}

parsed wrongly(const CLI::App& root, const std::string& text) {
    const std::string name = called(innermost(root));
    return {
        {}, {}, usage, text + "Try \"pelage " + (name.empty() ? "" : name + " ") + "--help\".\n"};
}

}  // namespace

void add_all(CLI::App& root, task& chosen) {
    use_our_pages(root);
    root.set_version_flag("--version", std::string("pelage ") + pelage_VERSION);
    root.allow_extras();            // complaints() tells them all, with what was meant
    root.require_subcommand(0, 1);  // "lookup 7F plan" is no second command
    add_lookup(root, chosen);
    add_plan(root, chosen);
    add_regrow(root, chosen);
    add_log(root, chosen);
    add_sheet(root, chosen);
    add_kit(root, chosen);
    add_quiz(root, chosen);
    add_week(root, chosen);
    add_complete(root, chosen);
}

CLI::App& add_subcommand(CLI::App& parent, const introduction& what) {
    CLI::App& app = *parent.add_subcommand(what.name, what.text);
    app.allow_extras();
    app.require_subcommand(0, 1);
    std::istringstream lines(what.examples);
    std::string footer;
    for (std::string line; std::getline(lines, line);) {
        footer += "  " + line + "\n";
    }
    app.footer(footer + what.more);
    return app;
}

void when_parsed(CLI::App& app, std::function<void()> then) {
    app.callback(std::move(then));
}

const CLI::App& innermost(const CLI::App& root) {
    const auto used = root.get_subcommands();
    return used.empty() ? root : innermost(*used.front());
}

std::string called(const CLI::App& app) {
    if (app.get_parent() == nullptr) {
        return {};
    }
    const std::string before = called(*app.get_parent());
    return before + (before.empty() ? "" : " ") + app.get_name();
}

parsed parse_arguments(const std::vector<std::string>& args) {
    if (args.empty()) {
        return {{}, {}, done, front_page()};
    }
    if (args.size() == 2 && args.front() == "help" && !help_on(args.back()).empty()) {
        return {{}, {}, done, help_on(args.back())};
    }
    CLI::App root{"Which blade leaves what on a dog's coat, and when the dog must be back.",
                  "pelage"};
    task chosen;
    add_all(root, chosen);
    std::vector<std::string> words = without_help(args);
    std::reverse(words.begin(), words.end());  // the parser takes them from the back
    std::string left;
    try {
        root.parse(words);
    } catch (const CLI::ParseError& e) {
        std::ostringstream out;
        std::ostringstream err;
        const bool asked = root.exit(e, out, err) == 0;
        // help is given for what there is only
        const bool strange = !innermost(root).remaining().empty();
        if (asked && !strange) {
            return {{}, {}, done, out.str()};
        }
        left = asked ? "" : miscounted(e);
    }
    const std::string amiss = complaints(root);
    if (!amiss.empty() || !left.empty()) {
        return wrongly(root, amiss.empty() ? left : amiss);
    }
    return {chosen, words_in(innermost(root)), done, {}};
}

}  // namespace pelage::cli
