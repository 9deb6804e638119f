// How far a long answer is.
#include "progress.hpp"

#include <chrono>
#include <sstream>
#include <thread>

#include "catch.hpp"

using namespace pelage::cli;

TEST_CASE("lines done, how fast, and what is left") {
    CHECK(progress_words(1, 1.0, 0) == "1 line, 1 a second");
    CHECK(progress_words(12'000, 2.0, 0) == "12000 lines, 6000 a second");
    CHECK(progress_words(12'000, 2.0, 18'000) == "12000 lines, 6000 a second, 1 s left");
    CHECK(progress_words(5, 2.0, 5) == "5 lines, 3 a second");
}

TEST_CASE("what is counted passes on unchanged, and a short answer tells nothing") {
    std::ostringstream to;
    std::ostringstream err;
    {
        told_lines counted(to, err, 3);
        std::ostream out(&counted);
        out << "one\ntwo\n" << 3 << '\n' << std::flush;
        CHECK(out.good());
    }
    CHECK(to.str() == "one\ntwo\n3\n");
    CHECK(err.str().empty());
}

TEST_CASE("steps are told after half a second, and the line is taken away again") {
    std::ostringstream err;
    {
        told_steps told(err);
        told.tell("round 1 of at most 24");
        CHECK(err.str().empty());
        std::this_thread::sleep_for(std::chrono::milliseconds{520});
        told.tell("round 2 of at most 24");
        told.tell("round 3 of at most 24");
        CHECK(err.str() == "\r\x1b[Kround 2 of at most 24, 1 s so far");
    }
    CHECK(err.str().ends_with("\r\x1b[K"));
}

TEST_CASE("where nothing more can be written, the writer hears of it") {
    std::ostringstream to;
    std::ostringstream err;
    to.setstate(std::ios::badbit);
    told_lines counted(to, err, 0);
    std::ostream out(&counted);
    out << "one\n";
    CHECK(out.bad());
}
