// A file that is written beside its place: whole or not at all, whoever else writes, whatever ends it.
#include "part_file.hpp"

#include <csignal>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <ostream>
#include <string>

#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <pelage/base/error.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

namespace fs = std::filesystem;

/// An empty folder for one test.
class folder {
  public:
    folder() : path_(fs::temp_directory_path() / ("pelage-part-" + std::to_string(getpid()))) {
        fs::create_directories(path_);
    }
    folder(const folder&) = delete;
    folder& operator=(const folder&) = delete;
    ~folder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    [[nodiscard]] std::string file(const char* name) const { return (path_ / name).string(); }
    [[nodiscard]] auto files() const {
        return std::distance(fs::directory_iterator(path_), fs::directory_iterator{});
    }

  private:
    fs::path path_;
};

std::string text_in(const std::string& path) {
    std::ifstream in(path, std::ios::binary);
    return std::string(std::istreambuf_iterator<char>(in), {});
}

}  // namespace

TEST_CASE("of two writers of one file one is read, wholly", "[part_file]") {
    const folder here;
    const std::string path = here.file("answer.txt");
    constexpr int rounds = 100;
    const auto write = [&](char letter) {
        for (int i = 0; i < rounds; ++i) {
            cli::write_file(path, [&](std::ostream& out) {
                for (int line = 0; line < 200; ++line) {
                    out << std::string(99, letter) << '\n' << std::flush;
                }
            });
        }
    };
    const pid_t other = fork();
    REQUIRE(other >= 0);
    if (other == 0) {
        write('b');
        _exit(0);
    }
    for (int i = 0; i < rounds; ++i) {
        cli::write_file(path, [&](std::ostream& out) { out << std::string(50'000, 'a'); });
        const std::string text = text_in(path);
        const bool ours = text == std::string(50'000, 'a');
        const bool theirs = text.size() == 20'000 && text.find('a') == std::string::npos;
        CHECK((ours || theirs));
    }
    int ended = 0;
    REQUIRE(waitpid(other, &ended, 0) == other);
    CHECK(ended == 0);
    CHECK(here.files() == 1);
}

TEST_CASE("a signal in the middle leaves nothing behind, and what was there stays", "[part_file]") {
    const folder here;
    const std::string path = here.file("answer.txt");
    std::ofstream(path) << "before";
    for (const int signal : {SIGINT, SIGTERM, SIGHUP}) {
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            (void)std::signal(signal, SIG_DFL);  // under nohup it comes ignored
            cli::write_file(path, [&](std::ostream& out) {
                out << "half" << std::flush;
                (void)raise(signal);
            });
            _exit(0);
        }
        int ended = 0;
        REQUIRE(waitpid(child, &ended, 0) == child);
        CHECK(WIFSIGNALED(ended));
        CHECK(WTERMSIG(ended) == signal);
        CHECK(here.files() == 1);
        CHECK(text_in(path) == "before");
    }
}

TEST_CASE("under nohup a hangup stops nothing: the file is written to its end", "[part_file]") {
    const folder here;
    const std::string path = here.file("answer.txt");
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        (void)std::signal(SIGHUP, SIG_IGN);
        cli::write_file(path, [&](std::ostream& out) {
            out << "half" << std::flush;
            (void)raise(SIGHUP);
            out << " and half";
        });
        _exit(0);
    }
    int ended = 0;
    REQUIRE(waitpid(child, &ended, 0) == child);
    CHECK(ended == 0);
    CHECK(text_in(path) == "half and half");
}

TEST_CASE("what others left behind is in nobody's way, and the mode stays", "[part_file]") {
    const folder here;
    const std::string path = here.file("answer.txt");
    std::ofstream(path) << "before";
    REQUIRE(chmod(path.c_str(), 0600) == 0);
    for (int i = 0; i < 1000; ++i) {
        std::ofstream(path + ".part" + std::to_string(i)) << "left";
    }
    cli::write_file(path, [](std::ostream& out) { out << "after"; });
    CHECK(text_in(path) == "after");
    struct stat is {};
    REQUIRE(stat(path.c_str(), &is) == 0);
    CHECK((is.st_mode & 07777U) == 0600U);
}

TEST_CASE("why a file can't be written is told", "[part_file]") {
    const folder here;
    const auto why = [](const std::string& path) {
        try {
            cli::write_file(path, [](std::ostream& out) { out << "x"; });
        } catch (const error& e) {
            return std::string(e.what());
        }
        return std::string();
    };
    CHECK_THAT(why(here.file("no/such.txt")), match::ContainsSubstring("no such folder"));
    CHECK_THAT(why(here.file(std::string(300, 'x').c_str())),
               match::ContainsSubstring("the name is too long"));
    CHECK_THAT(why("/dev/full"), match::ContainsSubstring("no ordinary file"));
}
