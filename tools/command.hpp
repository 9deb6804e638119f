// A subcommand: a struct of its options, what declares them, and what answers them. Each stands in the
// cmd_ file of its name.
#pragma once

#include <functional>
#include <iosfwd>
#include <memory>
#include <string>

#include "cli.hpp"
#include "options.hpp"

namespace pelage::cli {

/// An answer and its exit code (0, or 1 where the answer is no).
struct reply {
    std::string text{};
    int code = done;
    std::string said{};  ///< on standard error, beside the answer
    /// Writes an answer too long to be held, in place of `text`; gives what is said beside it.
    std::function<reply(std::ostream&)> lines{};
};

/// What the arguments ask for.
struct task {
    std::shared_ptr<common_options> options{};
    std::function<reply(const surroundings&)> answer{};
};

/// How a subcommand is called and explained.
struct introduction {
    const char* name;
    const char* text;      ///< what it answers, in one line
    const char* examples;  ///< each a line that begins with "pelage"
    const char* more = "";
    const char* formats = "text, json, html, csv";  ///< that it has, as help says them
};

/// Adds a subcommand without a task.
CLI::App& add_subcommand(CLI::App& parent, const introduction& what);
/// What is done once a subcommand was parsed without a fault.
void when_parsed(CLI::App& app, std::function<void()> then);

/// Adds a subcommand whose options are `Options`, which is a common_options.
template <class Options>
void add_command(CLI::App& parent, task& chosen, const introduction& what,
                 reply (*answer)(Options&, const surroundings&)) {
    CLI::App& app = add_subcommand(parent, what);
    auto options = std::make_shared<Options>(app);
    say_formats(app, what.formats);
    when_parsed(app, [options, answer, &chosen] {
        chosen.options = options;
        chosen.answer = [&options = *options, answer](const surroundings& around) {
            return answer(options, around);
        };
    });
}

void add_lookup(CLI::App& root, task& chosen);
void add_plan(CLI::App& root, task& chosen);
void add_regrow(CLI::App& root, task& chosen);
void add_log(CLI::App& root, task& chosen);
void add_sheet(CLI::App& root, task& chosen);  ///< check, show, list, new, compare
void add_kit(CLI::App& root, task& chosen);    ///< check, measure, buy
void add_quiz(CLI::App& root, task& chosen);
void add_week(CLI::App& root, task& chosen);  ///< week, diary
void add_complete(CLI::App& root, task& chosen);

}  // namespace pelage::cli
