// Arguments to a task. With options.cpp and help_page.cpp the only files that know the option parser.
#pragma once

#include <string>
#include <vector>

#include "command.hpp"

namespace CLI {
class App;
}

namespace pelage::cli {

/// How the arguments were understood.
struct parsed {
    task asked{};                      ///< empty if `text` is all there is to say
    std::vector<std::string> words{};  ///< operands and values behind options, as written
    int code = 0;                      ///< 2 if the command was called wrongly; `text` says how
    std::string text{};
};

/// Every subcommand and its options on `root`; what is parsed goes to `chosen`.
void add_all(CLI::App& root, task& chosen);

[[nodiscard]] parsed parse_arguments(const std::vector<std::string>& args);

/// The subcommand that was parsed, the innermost; `root` if none was.
[[nodiscard]] const CLI::App& innermost(const CLI::App& root);
/// How it is called, without "pelage": "sheet check".
[[nodiscard]] std::string called(const CLI::App& app);

/// All that is wrong with how `root` was called, a line each; empty if nothing is.
[[nodiscard]] std::string complaints(const CLI::App& root);

/// What `pelage` alone says.
[[nodiscard]] std::string front_page();
/// What `pelage help exit`, `pelage help files` and `pelage help intake` say; empty for any other word.
[[nodiscard]] std::string help_on(const std::string& topic);
/// Has help written as pages of our own, on `root` and what is added to it.
void use_our_pages(CLI::App& root);

}  // namespace pelage::cli
