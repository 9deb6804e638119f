// What can go wrong, said in one way: an exception where a caller broke a contract of the core,
// collected diagnostics where a person's file or option is at fault.
#pragma once

#include <stdexcept>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

namespace pelage {

/// The closed list of causes. The command maps them to exit codes: usage 2; io 4; internal 70; a
/// refused answer 1; all others 3.
enum class errc {
    syntax,     ///< the text can't be read at all
    type,       ///< another kind of value was expected
    range,      ///< outside what is possible, or not finite
    unit,       ///< a bare number where a length needs its unit
    unknown,    ///< no such name or key
    missing,    ///< something required isn't there
    duplicate,  ///< the same id or key twice
    ambiguous,  ///< could mean two things: ask back, never guess
    conflict,   ///< two statements that can't both hold
    refused,    ///< done, and the answer is no
    usage,      ///< the command was called wrongly
    io,         ///< can't read or write
    internal    ///< our own fault
};

/// The one exception of the core: a caller's argument breaks what the declaration states.
class error : public std::runtime_error {
  public:
    error(errc code, const std::string& text) : std::runtime_error(text), code_(code) {}
    [[nodiscard]] errc code() const noexcept { return code_; }  ///< of what kind

  private:
    errc code_;
};

/// One fault in something a person wrote. `line` and `column` count from 1 (columns in
/// characters); 0 where there is no position. `text` reads: what is wrong; what was found; what
/// would be right.
struct diagnostic {
    std::string file;          ///< as it was named; empty: none
    unsigned line = 0;         ///< from 1; 0: none
    unsigned column = 0;       ///< in characters, from 1; 0: none
    errc code = errc::syntax;  ///< what kind of fault
    std::string text;          ///< what is wrong, what was found, what would be right

    friend bool operator==(const diagnostic&, const diagnostic&) = default;
    friend bool operator<(const diagnostic& a, const diagnostic& b) {
        return std::tie(a.file, a.line, a.column, a.text) <
               std::tie(b.file, b.line, b.column, b.text);
    }
};

/// Every fault found in one reading, in the order of the text.
using diagnostics = std::vector<diagnostic>;

/// Thrown by readers that can't give a value: carries every fault at once.
class bad_input : public error {
  public:
    explicit bad_input(diagnostics all)
        : error(all.empty() ? errc::internal : all.front().code,
                all.empty() ? "no fault named" : all.front().text),
          all_(std::move(all)) {}
    [[nodiscard]] const diagnostics& all() const noexcept { return all_; }  ///< at least one

  private:
    diagnostics all_;
};

}  // namespace pelage
