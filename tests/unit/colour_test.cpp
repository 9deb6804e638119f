// What stands out in a terminal.
#include "colour.hpp"

#include <sstream>
#include <vector>

#include "catch.hpp"
#include "cli.hpp"

using pelage::cli::coloured;

TEST_CASE("an alert, a stop and a no stand out, and nothing else does") {
    CHECK(coloured("ALERT: bites.\nBiscuit: One length\n") ==
          "\x1b[1;31mALERT: bites.\x1b[0m\nBiscuit: One length\n");
    CHECK(coloured("No: a double coat") == "\x1b[1;31mNo: a double coat\x1b[0m");
    CHECK(coloured("Note: ALERT: is in its name\n STOP\n") ==
          "Note: ALERT: is in its name\n STOP\n");
    CHECK(coloured("\n\n") == "\n\n");
    CHECK(coloured("").empty());
}

TEST_CASE("only an answer in text that goes to a terminal is coloured") {
    const auto asked = [](std::vector<std::string> more, bool colour) {
        std::vector<std::string> args{"plan", "biscuit", "--alert", "bites"};
        args.insert(args.end(), more.begin(), more.end());
        pelage::cli::surroundings around;
        around.colour = colour;
        std::ostringstream out;
        std::ostringstream err;
        CHECK(pelage::cli::run(args, around, out, err) == 0);
        return out.str().find("\x1b[1;31mALERT: ") != std::string::npos;
    };
    CHECK(asked({}, true));
    CHECK(asked({"--full"}, true));
    CHECK_FALSE(asked({}, false));
    CHECK_FALSE(asked({"--format", "html"}, true));
    CHECK_FALSE(asked({"--format", "json"}, true));
}
