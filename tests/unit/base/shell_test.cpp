// A word of a command, given back by a shell as it was.
#include <array>
#include <cstdio>
#include <memory>

#include <pelage/base/shell.hpp>

#include "catch.hpp"

using pelage::shell_word;

TEST_CASE("a word is quoted where a shell would read more into it") {
    CHECK(shell_word("cockapoo") == "cockapoo");
    CHECK(shell_word("shih tzu") == "'shih tzu'");
    CHECK(shell_word("").substr() == "''");
    CHECK(shell_word("what's") == "'what'\\''s'");
}

// Outside the project: the shell itself.
TEST_CASE("the shell gives each word back as it was") {
    for (const std::string text : {"a b", "x;echo y", "$HOME", "`id`", "it's", "\"q\"", "*", "~",
                                   "a\\b", "!x", "#1", "&", "'"}) {
        const std::string command = "printf %s " + shell_word(text);
        const std::unique_ptr<FILE, int (*)(FILE*)> out(popen(command.c_str(), "r"), pclose);
        REQUIRE(out != nullptr);
        std::array<char, 64> read{};
        const std::size_t n = std::fread(read.data(), 1, read.size(), out.get());
        CHECK(std::string(read.data(), n) == text);
    }
}
