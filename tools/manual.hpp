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

}  // namespace pelage::cli
