// What a trainee answered: a file of JSON Lines that the quiz only appends to, a line an answer. A line ends
// with its checksum and is on disk before the next question is asked, as in a dog's record
// (data/record_file.hpp).
#pragma once

#include <string>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/kit/quiz.hpp>

namespace pelage::io {

/// The figures of the quiz that are embedded. A fault in them is our own: throws error(internal).
[[nodiscard]] const quiz_rules& quiz_figures();

/// A trainee's answers as read.
struct quiz_record {
    std::vector<quiz_answer> answers;  ///< those that are sound, in the order of the file
    diagnostics faults;                ///< of lines that can't be counted
};

/// Reads the answers in `path`; a file that isn't there has none. Throws error(io) where it can't be read
/// or is no ordinary file.
[[nodiscard]] quiz_record read_quiz(const std::string& path);

/// Appends one answer; it is on disk when this returns. A last line that was never finished is taken out
/// before. Throws error(io), with nothing kept, where that can't be had.
void keep_quiz_answer(const std::string& path, const quiz_answer& a);

}  // namespace pelage::io
