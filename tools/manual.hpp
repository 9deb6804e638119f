// The pages of the manual, made of the option tree that help is made of, too.
#pragma once

#include <string>
#include <vector>

namespace pelage::cli {

/// A page of the manual in mdoc: "pelage-plan.1" and its text.
struct manual_page {
    std::string file;
    std::string text;
};

/// pelage.1 and a page a subcommand; `day` as mdoc writes it, "November 29, 2026".
[[nodiscard]] std::vector<manual_page> manual(const std::string& day);

/// pelage-files.5: the files of a salon by their schemas. Throws std::runtime_error where `schemas` isn't the folder
/// they are in.
[[nodiscard]] manual_page manual_of_files(const std::string& day, const std::string& schemas);

/// Text that mdoc takes for text: no line of it begins with a request, nothing of it is an escape.
[[nodiscard]] std::string plain(const std::string& text);
/// One argument of a macro, whatever is in it: macros that it might name are text.
[[nodiscard]] std::string argument(const std::string& text);

}  // namespace pelage::cli
