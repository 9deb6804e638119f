// What an audit of all faults found still wrong and no call of the command shows.
#include <sstream>

#include <pelage/base/version.hpp>

#include "asker.hpp"
#include "catch.hpp"
#include "cli.hpp"

using namespace pelage;

TEST_CASE("a key that sends several bytes answers no question of one key", "[intake]") {
    // up, Delete, F5, F1, a console's F1, a click of the mouse, Alt and an arrow
    const std::string sent =
        GENERATE("\x1b[A", "\x1b[3~", "\x1b[15~", "\x1bOP", "\x1b[[A", "\x1b[<0;1;1M", "\x1b[1;3A");
    std::istringstream in(sent + "4");
    std::ostringstream out;
    cli::asker a(in, out);
    a.can_be_corrected();
    CHECK(a.key("How big", "12345") == '4');
    CHECK(out.str() == "How big? 4\n");
}

TEST_CASE("the answers may end within such a key", "[intake]") {
    std::istringstream in("\x1b[3");
    std::ostringstream out;
    cli::asker a(in, out);
    a.can_be_corrected();
    CHECK_THROWS_AS(a.key("How big", "12345"), cli::break_off);
}

TEST_CASE("the header says the version that the command says", "[version]") {
    std::istringstream in;
    std::ostringstream out;
    std::ostringstream err;
    CHECK(cli::run({"--version"}, {date{}, {}, &in, 1, false, {}}, out, err) == 0);
    CHECK(out.str() == "pelage " + std::to_string(PELAGE_VERSION_MAJOR) + "." +
                           std::to_string(PELAGE_VERSION_MINOR) + "." +
                           std::to_string(PELAGE_VERSION_PATCH) + "\n");
}
