// What stands out in a terminal.
#include "colour.hpp"

#include "catch.hpp"

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
