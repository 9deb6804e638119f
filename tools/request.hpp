// What the person typed, sorted but not yet judged: every value of the domain is still text.
#pragma once

#include <string>
#include <vector>

namespace pelage::cli {

enum class verb { none, lookup, plan, regrow, sheet, kit };

struct request {
    verb what = verb::none;
    std::vector<std::string> operands{};
    std::vector<std::string> given{};  ///< the options that were written, as "--coat"
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
    std::string mix{};
    std::string style{};
    std::string season{};  ///< of the sheet: its name, none, or that of today if empty
    std::string size{};
    std::string length{};
    std::string brush{};
    std::string chance{};
    std::vector<std::string> now{};
    std::vector<std::string> consents{};
    bool zones = false;
    std::string reader{};  ///< whom the plan is written for: owner, trainee; empty: the groomer
    bool ask = false;      ///< the intake as a talk in the terminal
    // what the intake found
    std::vector<std::string> mats{};
    std::vector<std::string> skin{};
    std::vector<std::string> sensitive{};
    std::vector<std::string> signs{};
    std::vector<std::string> alerts{};
    std::string groomer{};  ///< who grooms today, for the owner's page
    std::string age{};
    std::string health{};
    std::string outdoors{};
    bool coat_change = false;
    bool shedding = false;
    bool thin_or_old = false;
    bool pink_skin = false;
    // a whole roster
    std::string roster{};
    std::string jobs{};
    std::string back_in{};
    // the calendar
    std::string weeks{};
    std::string groomed{};
    std::vector<std::string> cannot{};
    std::vector<std::string> events{};
    std::string learn{};  ///< a salon's folder: growth rates from its dogs instead of a dog
    // look-up
    std::string kind{};
    std::string zone{};
    std::string direction{};
    bool barber = false;
    std::string curl{};
    bool sources = false;
    // style sheets; the first operand says what
    std::string suits{};     ///< sheet list --for
    std::string against{};   ///< sheet check --against
    bool any_sheet = false;  ///< plan --any-sheet
    bool all = false;        ///< the whole ladder
    // the kit; what is done with it is the first operand
    std::string table{};
    std::string sets{};
    std::string sheets{};
    std::string most{};
    std::string catalogue{};
    bool from_nothing = false;
};

/// How the arguments were understood.
struct parsed {
    request asked{};
    bool finished = false;  ///< help or version was asked for and stands in `text`
    int code = 0;           ///< 2 if the command was called wrongly; `text` says how
    std::string text{};
};

/// An option that says nothing of what is asked, or two that fight, in words; empty if none does.
[[nodiscard]] std::string misfit(const request& q);

/// Reads the arguments. The only place that knows the option parser.
[[nodiscard]] parsed parse_arguments(const std::vector<std::string>& args);

}  // namespace pelage::cli
