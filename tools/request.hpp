// What the person typed, sorted but not yet judged: every value of the domain is still text.
#pragma once

#include <string>
#include <vector>

namespace pelage::cli {

enum class verb { none, lookup, plan, regrow };

struct request {
    verb what = verb::none;
    std::vector<std::string> operands{};
    // for every verb
    std::string format = "text";
    std::string units = "mm";
    std::string output{};
    std::string today{};
    std::string salon{};
    std::string kit{};
    bool explain = false;
    // the dog
    std::string coat{};
    std::string style{};
    std::string size{};
    std::string length{};
    std::string brush{};
    std::string chance{};
    std::vector<std::string> now{};
    std::vector<std::string> consents{};
    bool zones = false;
    // a whole roster
    std::string roster{};
    std::string jobs{};
    std::string back_in{};
    // the calendar
    std::string weeks{};
    std::string groomed{};
    std::vector<std::string> cannot{};
    std::vector<std::string> events{};
    // look-up
    std::string kind{};
    std::string zone{};
    std::string direction{};
    bool barber = false;
    bool sources = false;
};

/// How the arguments were understood.
struct parsed {
    request asked{};
    bool finished = false;  ///< help or version was asked for and stands in `text`
    int code = 0;           ///< 2 if the command was called wrongly; `text` says how
    std::string text{};
};

/// Reads the arguments. The only place that knows the option parser.
[[nodiscard]] parsed parse_arguments(const std::vector<std::string>& args);

}  // namespace pelage::cli
