// The record of a dog as a file: what is written is read back, and whatever happens to the file, what is
// sound in it stays.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>

#include <sys/stat.h>
#include <unistd.h>

#include <pelage/data/record_file.hpp>
#include <pelage/data/reference.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

namespace fs = std::filesystem;

date on(const char* day) {
    return *parse_date(day);
}

/// An entry that says all that an entry can.
log_entry whole_entry() {
    log_entry e;
    e.on = on("2026-11-04");
    e.services = {service_kind::full, service_kind::nails};
    e.who = "Žofie \"Ž\" O'Neill";
    e.used = {{"comb 13 mm over blade 30, with the lay", {"body", "left ear"}}};
    e.found = {{"body", mm(31.25), true}};
    e.left = {{"body", mm(13), false}, {"left ear", mm(0.1), true}};
    e.mats = std::vector<logged_mat>{{"left armpit", mat_grade::pelt}, {"tail", std::nullopt}};
    e.skin = {{"left ribs", skin_state::lump, mm(10), true}};
    e.behaviour = "nervous";
    e.took = minutes(95.0);
    e.price = "60 EUR";
    e.remarks = "likes cheese; \\ \"\" and ünï";
    e.next = on("2027-01-09");
    return e;
}

log_entry bath(const char* day) {
    log_entry e;
    e.on = on(day);
    e.services = {service_kind::bath};
    return e;
}

class scratch {
  public:
    scratch() : folder_(fs::temp_directory_path() / ("pelage-record-" + std::to_string(getpid()))) {
        fs::remove_all(folder_);
        fs::create_directories(folder_);
    }
    scratch(const scratch&) = delete;
    scratch& operator=(const scratch&) = delete;
    ~scratch() { fs::remove_all(folder_); }
    [[nodiscard]] std::string path() const { return (folder_ / "rosie.record.jsonl").string(); }
    [[nodiscard]] const fs::path& folder() const { return folder_; }
    [[nodiscard]] std::string bytes() const {
        std::ifstream in(path(), std::ios::binary);
        return {std::istreambuf_iterator<char>(in), {}};
    }
    void write(const std::string& text) const { std::ofstream(path(), std::ios::binary) << text; }

  private:
    fs::path folder_;
};

io::dog_record read(const scratch& s) {
    return io::read_record(s.path(), "rosie", io::reference());
}

io::recorded_entry log(const scratch& s, const log_entry& e) {
    return io::append_to_record(s.path(), "rosie", io::reference(),
                                [&](const io::dog_record&) { return e; });
}

errc why_not(const scratch& s) {
    try {
        (void)log(s, bath("2026-11-04"));
    } catch (const error& e) {
        return e.code();
    }
    return errc::internal;
}

}  // namespace

TEST_CASE("an entry is read back as it was written", "[record]") {
    const scratch s;
    CHECK(!read(s).there);
    log_entry e = whole_entry();
    CHECK(log(s, e).entry.number == 1);
    log_entry correction = bath("2026-11-05");
    correction.corrects = 1;
    CHECK(log(s, correction).entry.number == 2);
    const io::dog_record r = read(s);
    CHECK(r.faults.empty());
    REQUIRE(r.entries.size() == 2);
    e.number = 1;
    CHECK(r.entries[0] == e);
    correction.number = 2;
    CHECK(r.entries[1] == correction);
    CHECK(r.lines == std::vector<unsigned>{1, 2});
    CHECK(r.next == 3);
}

TEST_CASE("the checksum is CRC-32 of ISO 3309 of what stands before it", "[record]") {
    log_entry e = bath("2026-11-04");
    e.number = 1;
    // by zlib
    CHECK(
        io::line_of(e, "rosie") ==
        R"({"format":1,"dog":"rosie","entry":1,"date":"2026-11-04","services":["bath"],"crc32":"0087ba61"})"
        "\n");
}

TEST_CASE("any byte of a line changed is found, and the other lines count", "[record]") {
    const scratch s;
    for (const char* day : {"2026-11-04", "2026-11-05", "2026-11-06"}) {
        (void)log(s, bath(day));
    }
    const std::string sound = s.bytes();
    const std::size_t from = sound.find('\n') + 1;
    const std::size_t to = sound.find('\n', from);
    std::mt19937 any(7);
    for (std::size_t at = from; at < to; ++at) {
        std::string other = sound;
        do {
            other[at] = static_cast<char>(any() % 256U);
        } while (other[at] == sound[at] || other[at] == '\n');
        const io::dog_record r = io::record_of(other, "r", "rosie", io::reference());
        INFO(at);
        CHECK(r.entries.size() == 2);
        CHECK(r.damaged);
        REQUIRE(!r.faults.empty());
        CHECK(r.faults[0].line == 2);
    }
}

TEST_CASE("a record cut off anywhere loses only the line it is cut in", "[record]") {
    const scratch s;
    (void)log(s, whole_entry());
    (void)log(s, bath("2026-11-05"));
    const std::string sound = s.bytes();
    const std::size_t second = sound.find('\n') + 1;
    for (std::size_t size = 0; size < sound.size(); size += 7) {
        s.write(sound.substr(0, size));
        const std::size_t whole = size + 1 >= sound.size() ? 2 : size + 1 >= second ? 1 : 0;
        INFO(size);
        CHECK(read(s).entries.size() == whole);
        const io::recorded_entry next = log(s, bath("2026-11-07"));
        CHECK(next.entry.number == whole + 1);
        const io::dog_record r = read(s);
        CHECK(r.faults.empty());
        CHECK(r.entries.size() == whole + 1);
        CHECK(r.torn == 0);
        if (!next.set_aside.empty()) {
            CHECK(fs::file_size(next.set_aside) > 0);
            fs::remove(next.set_aside);
        }
    }
}

TEST_CASE("no entry goes through a link, into a folder or into a pipe", "[record]") {
    const scratch s;
    fs::create_symlink(s.folder() / "elsewhere", s.path());
    CHECK(why_not(s) == errc::io);
    CHECK(!fs::exists(s.folder() / "elsewhere"));
    fs::remove(s.path());
    fs::create_directory(s.path());
    CHECK(why_not(s) == errc::io);
    CHECK(read(s).faults.at(0).code == errc::io);
    fs::remove(s.path());
    REQUIRE(mkfifo(s.path().c_str(), 0600) == 0);
    CHECK(why_not(s) == errc::io);
    CHECK(read(s).faults.at(0).code == errc::io);
}

TEST_CASE("what the caller throws under the lock leaves the record alone", "[record]") {
    const scratch s;
    (void)log(s, bath("2026-11-04"));
    const std::string before = s.bytes();
    CHECK_THROWS_AS(io::append_to_record(s.path(), "rosie", io::reference(),
                                         [](const io::dog_record&) -> log_entry {
                                             throw error(errc::refused, "no");
                                         }),
                    error);
    CHECK(s.bytes() == before);
    CHECK(log(s, bath("2026-11-05")).entry.number == 2);
}
