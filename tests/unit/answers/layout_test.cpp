// How a text is broken into lines: never within a length.
#include "answers/layout.hpp"

#include <sstream>
#include <string>
#include <vector>

#include "catch.hpp"
#include "cli.hpp"

using namespace pelage;

namespace {

/// Whether a line ends within a length: "1" before "1/4 in", "1/4" before "in:".
bool within_a_length(const std::string& line, const std::string& next) {
    const std::string last = line.substr(line.rfind(' ') + 1);
    const std::string first = next.substr(next.find_first_not_of(' '));
    const std::string word = first.substr(0, first.find(' '));
    const bool number = last.find_first_not_of("0123456789./") == std::string::npos;
    const bool unit =
        word.starts_with("in") && word.find_first_not_of("in.,;:)") == std::string::npos;
    const bool fraction = word.find('/') != std::string::npos &&
                          word.find_first_not_of("0123456789/") == std::string::npos;
    return number && (unit || fraction);
}

std::vector<std::string> lines_of(const std::vector<std::string>& args) {
    std::ostringstream out;
    std::ostringstream err;
    cli::surroundings around;
    around.today = parse_date("2026-11-25");
    (void)cli::run(args, around, out, err);
    std::vector<std::string> all;
    std::istringstream in(out.str());
    for (std::string line; std::getline(in, line);) {
        all.push_back(line);
    }
    return all;
}

}  // namespace

TEST_CASE("no line ends within a length", "[text]") {
    std::size_t seen = 0;
    for (const char* length : {"1 1/4 in", "1 1/2 in", "7/8 in", "1 in", "5/8 in", "2 in"}) {
        for (const char* style : {"one-length"}) {
            const std::vector<std::string> lines =
                lines_of({"plan", "--coat", "curly", "--style", style, "--length", length,
                          "--units", "in", "--explain"});
            REQUIRE(lines.size() > 20);
            for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
                if (!lines[i].empty() && lines[i + 1].find_first_not_of(' ') != std::string::npos) {
                    INFO(lines[i] << "\n" << lines[i + 1]);
                    CHECK_FALSE(within_a_length(lines[i], lines[i + 1]));
                    seen += lines[i].find(" in") != std::string::npos ? 1 : 0;
                }
            }
        }
    }
    CHECK(seen > 40);
}

TEST_CASE("a word that doesn't fit behind its lead has the next line") {
    CHECK(pelage::io::wrapped("    Lead: ", "abcdefghijklmnopqrstuvwx", 4, 32) ==
          "    Lead:\n    abcdefghijklmnopqrstuvwx\n");
    CHECK(pelage::io::wrapped("    Lead: ", "abc abcdefghijklmnopqrstuvwx", 4, 32) ==
          "    Lead: abc\n    abcdefghijklmnopqrstuvwx\n");
    CHECK(pelage::io::wrapped("          ", "abcdefghijklmnopqrstuvwx", 4, 32) ==
          "    abcdefghijklmnopqrstuvwx\n");
}
