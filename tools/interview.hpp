// The intake as a talk: questions in the order of a look over the dog, one key an answer. Nothing here
// knows a terminal: answers come from a stream, questions go to another, so that tests can answer.
#pragma once

#include <functional>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/dog.hpp>

namespace pelage::cli {

/// Whether a dog's file can hold that as one line: UTF-8 without control characters or changes of the
/// direction of writing, of at most 2000 bytes.
[[nodiscard]] bool is_plain_line(const std::string& s);

/// Asks on `out` and takes the answers from `in`: a key for a key, a line for a line. `one_key` tells
/// the terminal, where there is one, that a key is wanted (true) or a line (false).
class asker {
  public:
    asker(std::istream& in, std::ostream& out, std::function<void(bool)> one_key = {})
        : in_(in), out_(out), one_key_(std::move(one_key)) {}

    /// One of `keys`; other keys are refused and asked again. Enter is '\n'. Throws error(io) when the
    /// answers end, and error(refused) on q where q isn't among the keys.
    /// From now on a key that comes by a pipe may stand on a line of its own.
    void take_keys_on_lines() { keys_on_lines_ = true; }
    char key(const std::string& question, std::string_view keys);
    bool yes(const std::string& question);
    /// A line without the blanks round it; asked again while `fault` says what is wrong with it.
    std::string line(const std::string& question,
                     const std::function<std::string(const std::string&)>& fault = {});
    void say(const std::string& text);

  private:
    void wants_key(bool key);

    std::istream& in_;
    std::ostream& out_;
    std::function<void(bool)> one_key_;
    bool keys_on_lines_ = false;
    bool line_open_ = false;  ///< the last key came by a pipe, its line not read to the end
};

/// Walks through the intake and gives the dog as it was described. The same answers give the same dog.
/// With a sign of the stop list the zones aren't asked for any more.
[[nodiscard]] dog interview(asker& a, const reference_data& c, const std::vector<style>& styles,
                            const std::optional<date>& today);

}  // namespace pelage::cli
