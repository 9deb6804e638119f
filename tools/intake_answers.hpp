// The answers of an intake, kept as they come in a file of their own, so that a talk that is broken off
// goes on where it was: pelage asks its questions again, and these answer those they were given to.
//
// A text of lines: what it is, the day, the dog; then a question's name, a tab, and its answer.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>

namespace pelage::cli {

/// One answer: the name of its question, which may come again, and what was answered; a key, or nothing
/// for Enter, or a line.
struct intake_answer {
    std::string question;
    std::string text;
    friend bool operator==(const intake_answer&, const intake_answer&) = default;
};

/// What was answered, and where it is kept.
struct intake_answers {
    std::string file{};  ///< empty: kept nowhere
    std::string dog{};   ///< id of the dog; empty: a new one
    std::optional<date> begun{};
    std::vector<intake_answer> all{};
};

/// Where the answers about the dog of that file are kept: "dogs/moss.intake" of "dogs/moss.toml".
[[nodiscard]] std::string answers_path(const std::string& dog_file);

/// What is kept in `file`, or no answers where there is no such file. A last line that was never finished
/// doesn't count. Throws error(syntax) if it is something else, error(conflict) if it is of another dog,
/// error(io) if it can't be read.
[[nodiscard]] intake_answers kept_answers(const std::string& file, const std::string& dog,
                                          const std::optional<date>& today);

/// Writes them to their file. Throws error(io).
void keep(const intake_answers& a);
/// Removes the file: the intake is finished, or nothing was answered.
void forget(const intake_answers& a);

}  // namespace pelage::cli
