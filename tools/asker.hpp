// Questions on a stream, answers from another: keys and lines, with completion of names. Nothing here knows
// a terminal, so that tests can answer.
//
// Why no line library. Debian keeps readline, whose licence (GPL-3) would bind whoever hands pelage on, and
// libedit, which brings ncurses and libbsd. Both edit lines, while most answers here are one key beside a list
// that is to stay in sight: wet hands press keys. Both read a terminal of their own, so that neither a test nor a
// pipe could answer without a false one. What is wanted of them, taking a letter back and completing a name,
// is typed_line() below; keys unseen and one at a time are a few lines of termios in main.cpp.
#pragma once

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace pelage::cli {

/// Whether a dog's file can hold that as one line: UTF-8 without control characters or changes of the
/// direction of writing, of at most 2000 bytes.
[[nodiscard]] bool is_plain_line(const std::string& s);

/// How answers come: as keys of a terminal, whose lines are typed key by key as well; or as lines, an
/// answer a line, where a line may hold several keys one after another.
enum class answers_as { keys, lines };

/// Thrown by a talk that can be corrected: the question before is wanted.
struct step_back {};
/// Thrown by a talk that can be broken off: by q or an interrupt, or since the answers ended.
struct break_off {
    bool ended = false;
};

/// What a person may mean by what is typed so far: the words that begin so.
using completion = std::function<std::vector<std::string>(const std::string&)>;

/// Asks on `out` and takes the answers from `in`. `one_key` tells the terminal, where there is one, that
/// keys are wanted as they are pressed (true), or lines (false).
class asker {
  public:
    asker(std::istream& in, std::ostream& out, std::function<void(bool)> one_key = {},
          answers_as as = answers_as::keys)
        : in_(in), out_(out), one_key_(std::move(one_key)), lines_(as == answers_as::lines) {}

    /// From now on < (or the key that takes a letter back, where no letter is) goes back by step_back, and
    /// q, an interrupt or the end of the answers break off by break_off.
    void can_be_corrected() { corrected_ = true; }

    /// One of `keys`; other keys are refused and asked again. Enter is '\n'. Unless it can be corrected it
    /// throws error(io) when the answers end, and error(refused) on q where q isn't among the keys.
    /// `names` says what the keys mean, in their order: a name, or its beginning, and Enter is as good.
    char key(const std::string& question, std::string_view keys,
             const std::vector<std::string>& names = {});
    bool yes(const std::string& question);
    /// A line without the blanks round it; asked again while `fault` says what is wrong with it.
    /// `at_once` says whether what is typed is an answer without Enter; by lines it isn't asked.
    std::string line(const std::string& question,
                     const std::function<std::string(const std::string&)>& fault = {},
                     const completion& begins = {},
                     const std::function<bool(const std::string&)>& at_once = {});
    void say(const std::string& text);

  private:
    /// Whether it is the key that ends a terminal's input, or interrupts.
    bool leaves(char c);
    bool next_key(char& c);
    /// The key of the name that is typed from `c` on; nothing if it is none of them.
    std::optional<char> key_by_name(char c, std::string_view keys,
                                    const std::vector<std::string>& names);
    bool next_line(std::string& text);
    bool read_line(const std::string& question, std::string& text, const completion& begins,
                   const std::function<bool(const std::string&)>& at_once);
    bool typed_line(const std::string& question, std::string& text, const completion& begins,
                    const std::function<bool(const std::string&)>& at_once);
    bool editing_key(char c, const std::string& question, std::string& text,
                     const completion& begins);
    void complete(const std::string& question, std::string& text, const completion& begins);
    void show_fitting(const std::string& question, const std::string& text,
                      const std::vector<std::string>& fit);
    void skip_sequence();
    [[noreturn]] void ended(bool by_q);
    void wants_key(bool key);

    std::istream& in_;
    std::ostream& out_;
    std::function<void(bool)> one_key_;
    bool lines_;
    bool corrected_ = false;
    bool interrupted_ = false;
    std::string rest_;  ///< by lines: keys of the last line not taken yet
};

}  // namespace pelage::cli
