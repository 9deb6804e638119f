// The command as a function, so that tests can call it in their own process.
#pragma once

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>

namespace pelage::cli {

/// What only the process knows; main reads it, nothing below does.
struct surroundings {
    std::optional<date> today{};          ///< the local day
    std::string salon{};                  ///< PELAGE_SALON; empty if unset
    std::istream* in = nullptr;           ///< standard input; null if there is none
    unsigned cores = 1;                   ///< of the machine
    bool terminal = false;                ///< whether `in` is one: a person can be asked
    std::function<void(bool)> one_key{};  ///< has it give keys as they are pressed, or lines again
    std::size_t columns = 80;             ///< of what is printed: the terminal's, at most 80
    bool colour = false;                  ///< it goes to a terminal, and nobody said NO_COLOR
    bool watched = false;                 ///< so does what is said beside it: how far it is
    // run() sets these two
    std::vector<std::string>* notes = nullptr;  ///< what is said beside an answer
    std::ostream* talk = nullptr;               ///< where questions are asked
};

/// Exit codes: 0 done; 1 done, and the answer is no; 2 called wrongly; 3 input is wrong; 4 can't read
/// or write; 70 our own fault.
enum exit_code {
    done = 0,
    answer_is_no = 1,
    usage = 2,
    bad_data = 3,
    cannot_io = 4,
    our_fault = 70
};

/// Runs the command with `args` (without the program's name). Never throws.
[[nodiscard]] int run(const std::vector<std::string>& args, const surroundings& around,
                      std::ostream& out, std::ostream& err);

}  // namespace pelage::cli
