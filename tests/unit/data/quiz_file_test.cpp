// What a trainee answered, on disk.
#include <filesystem>
#include <fstream>

#include <pelage/data/quiz_file.hpp>

#include "catch.hpp"

using namespace pelage;

TEST_CASE("answers come back as they were kept; what is torn or damaged isn't counted", "[quiz]") {
    const std::string path =
        (std::filesystem::temp_directory_path() / "pelage-quiz-file-test.quiz.jsonl").string();
    std::filesystem::remove(path);
    CHECK(io::read_quiz(path).answers.empty());
    const date day = *parse_date("2026-11-30");
    io::keep_quiz_answer(path, {day, "lengths/blade \"7F\"", quiz_topic::lengths, true});
    io::keep_quiz_answer(path, {day, "nevers/groin", quiz_topic::nevers, false});
    std::ofstream(path, std::ios::app) << R"({"format":1,"date":"2026-1)";
    CHECK(io::read_quiz(path).faults.size() == 1);
    io::keep_quiz_answer(path, {day, "sheets/body", quiz_topic::sheets, true});
    const io::quiz_record r = io::read_quiz(path);
    CHECK(r.faults.empty());
    REQUIRE(r.answers.size() == 3);
    CHECK(r.answers[0].key == "lengths/blade \"7F\"");
    CHECK(r.answers[1].topic == quiz_topic::nevers);
    CHECK_FALSE(r.answers[1].right);
    CHECK(r.answers[2].on == day);
    std::filesystem::remove(path);
}
