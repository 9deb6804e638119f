// What people write, read back: sound files give what they say, and every fault in a file is told at
// once, where it stands, with what would be right.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <functional>
#include <random>
#include <sstream>

#include <pelage/answers/sheets.hpp>
#include <pelage/data/embedded.hpp>
#include <pelage/data/reference.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

namespace fs = std::filesystem;

using io::document_text;

/// Reads a sheet and judges it if it is sound: what is doubtful counts as a fault.
void check_sheet(const document_text& d) {
    const reference_data& c = io::reference();
    const auto read = io::read_sheet_files({d}, {}, c, c.styles);
    diagnostics wrong = read.front().faults;
    if (read.front().sheet) {
        for (const sheet_warning& w : doubts_about(*read.front().sheet, c, c.rules)) {
            wrong.push_back(
                {d.name, w.at.line, w.at.column, errc::conflict, io::doubt_words(w, c)});
        }
    }
    if (!wrong.empty()) {
        std::sort(wrong.begin(), wrong.end());
        throw bad_input(wrong);
    }
}

/// Reads a document of a kind for the sake of its faults.
void read_kind(const std::string& kind, const document_text& d) {
    if (kind == "dog") {
        (void)io::read_dog(d, io::reference(), io::reference().styles);
    } else if (kind == "style") {
        (void)io::read_style(d, io::reference());
    } else if (kind == "sheet") {
        check_sheet(d);
    } else {
        (void)io::read_salon(d, io::reference());
    }
}

/// The faults of a text, in order; none if it is sound.
diagnostics faults_of(const std::string& kind, const std::string& text) {
    try {
        read_kind(kind, {(kind == "sheet" ? "x" : kind) + ".toml", text});
    } catch (const bad_input& wrong) {
        return wrong.all();
    }
    return {};
}

std::string in_one_line(const diagnostics& all) {
    std::ostringstream out;
    for (const diagnostic& d : all) {
        out << d.line << ':' << d.column << ": " << d.text << '\n';
    }
    return out.str();
}

/// Whether `wrong` is the fault named by a line "LINE:COLUMN: part of the text"; column * is any,
/// for faults of syntax, whose column is the parser's own.
bool is_expected(const diagnostic& wrong, const std::string& line) {
    const std::string where =
        std::to_string(wrong.line) + ":" + std::to_string(wrong.column) + ": ";
    const std::string any = std::to_string(wrong.line) + ":*: ";
    for (const std::string& start : {where, any}) {
        if (line.rfind(start, 0) == 0) {
            return wrong.text.find(line.substr(start.size())) != std::string::npos;
        }
    }
    return false;
}

struct bad_file {
    std::string kind;
    std::vector<std::string> expected;
};

/// The first lines of a bad file: "# kind: dog", then "# expect: ..." once for each fault.
bad_file head_of(const std::string& text) {
    const std::string kind_mark = "# kind: ";
    const std::string mark = "# expect: ";
    bad_file head;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.rfind(kind_mark, 0) == 0) {
            head.kind = line.substr(kind_mark.size());
        } else if (line.rfind(mark, 0) == 0) {
            head.expected.push_back(line.substr(mark.size()));
        } else {
            break;
        }
    }
    return head;
}

std::vector<std::string> bad_files() {
    std::vector<std::string> paths;
    for (const auto& at : fs::directory_iterator(pelage_SOURCE_DIR "/tests/bad")) {
        if (at.path().extension() == ".toml") {
            paths.push_back(at.path().string());
        }
    }
    std::sort(paths.begin(), paths.end());
    return paths;
}

const std::string bella =
    "format = 1\nid = \"bella\"\nname = \"Bella\"\nsize = \"small\"\ncoat = \"wavy\"\n";
const std::string plain_sheet = "format = 1\nid = \"plain\"\ntitle = \"Plain\"\n";
const std::string corner = "format = 1\ntitle = \"Corner salon\"\n[kit]\n";

dog read_bella(const std::string& more) {
    return io::read_dog({"bella.toml", bella + more}, io::reference(), io::reference().styles);
}
style read_plain(const std::string& more) {
    return io::read_style({"plain.toml", plain_sheet + more}, io::reference());
}
salon_files read_corner(const std::string& more) {
    return io::read_salon({"salon.toml", corner + more}, io::reference());
}

/// A folder that is gone when the test is over.
class scratch_folder {
  public:
    scratch_folder() : path_(fs::temp_directory_path() / name()) { fs::create_directories(path_); }
    ~scratch_folder() {
        std::error_code ignored;
        fs::remove_all(path_, ignored);
    }
    scratch_folder(const scratch_folder&) = delete;
    scratch_folder& operator=(const scratch_folder&) = delete;

    [[nodiscard]] std::string path() const { return path_.string(); }
    void write(const std::string& file, const std::string& text) const {
        fs::create_directories((path_ / file).parent_path());
        std::ofstream(path_ / file, std::ios::binary) << text;
    }

  private:
    static std::string name() {
        std::random_device any;
        return "pelage-read-test-" + std::to_string(any()) + std::to_string(any());
    }
    fs::path path_;
};

}  // namespace

TEST_CASE("bad files: every fault is told, in order, and nothing else", "[read]") {
    const auto paths = bad_files();
    CHECK(paths.size() >= 30);
    for (const std::string& path : paths) {
        const document_text d = io::read_text(path);
        const bad_file head = head_of(d.text);
        const diagnostics found = faults_of(head.kind, d.text);
        INFO(path << " gave\n" << in_one_line(found));
        REQUIRE(found.size() == head.expected.size());
        REQUIRE_FALSE(found.empty());
        for (std::size_t i = 0; i < found.size(); ++i) {
            INFO("expected " << head.expected[i]);
            CHECK(is_expected(found[i], head.expected[i]));
        }
        CHECK(std::is_sorted(found.begin(), found.end()));
    }
}

TEST_CASE("a fault names its file", "[read]") {
    try {
        (void)io::read_style({"styles/mine.toml", "format = 1\n"}, io::reference());
        FAIL("a sheet without id, title and zones was taken");
    } catch (const bad_input& wrong) {
        CHECK(wrong.all().size() == 3);
        for (const diagnostic& d : wrong.all()) {
            CHECK(d.file == "styles/mine.toml");
        }
        CHECK(wrong.code() == errc::missing);
    }
}

TEST_CASE("an empty file lacks what every file needs", "[read]") {
    CHECK(faults_of("dog", "").size() == 5);  // format, id, name, size and a coat
    CHECK(faults_of("style", "").size() == 4);
    CHECK(faults_of("salon", "").size() == 3);
    CHECK(faults_of("salon", "\xEF\xBB\xBF").size() == 3);
}

TEST_CASE("strangers' texts are shortened and made harmless in messages", "[read]") {
    const auto found = faults_of(
        "dog", bella + "brushing = \"\\u001b]0;title\\u0007" + std::string(500, 'x') + "\"\n");
    REQUIRE(found.size() == 1);
    CHECK(found[0].text.size() < 200);
    CHECK(found[0].text.find('\x1b') == std::string::npos);
    const auto key = faults_of("dog", bella + "\"a\\u001b" + std::string(500, 'k') + "\" = 1\n");
    REQUIRE(key.size() == 1);
    CHECK(key[0].text.size() < 200);
    CHECK(key[0].text.find('\x1b') == std::string::npos);
}

TEST_CASE("columns count characters, not bytes", "[read]") {
    const auto found =
        faults_of("dog", bella + "note = \"öäü\"\n[now]\n\"tête\" = 3\nback = \"ä\"\n");
    REQUIRE(found.size() == 3);
    CHECK(found[0].column == 1);
    CHECK(found[1].line == 8);
    CHECK(found[1].column == 10);
    CHECK(found[2].column == 8);
}

TEST_CASE("a file full of faults is read in good time and cut short", "[read]") {
    std::string text = bella + "[now]\n";
    for (int i = 0; i < 20000; ++i) {
        text += "place-" + std::to_string(i) + " = 3\n";
    }
    const auto found = faults_of("dog", text);
    CHECK(found.size() == 1001);
}

TEST_CASE("a dog says what its file says", "[read]") {
    const dog d = read_bella(
        "style = \"one-length\"\nbody_length = \"5/8 in\"\nbrushing = \"every 3 days to the "
        "skin\"\n"
        "mix = \"poodle x spaniel\"\nconsents = [\"clip-down\"]\npink_skin = true\n"
        "[now]\nall = \"40 mm\"\n\"left ear\" = \"30 mm\"\n"
        "[departures]\ntopknot = { length = \"25 mm\", finish = \"scissor\" }\n"
        "[[mat]]\nzone = \"right armpit\"\ngrade = \"matted-area\"\nfree_hair = \"6 mm\"\n"
        "comb_passes = true\n"
        "[[skin]]\nzone = \"throat\"\nstate = \"irritated\"\n"
        "[[measured]]\ndate = 2026-03-01\nzone = \"body\"\nlength = \"2 cm\"\nstate = \"combed "
        "dry\"\n"
        "[[visit]]\ndate = \"2026-01-04\"\nkind = \"full\"\n");
    CHECK(d.id == "bella");
    CHECK(d.size == dog_size::small);
    CHECK(d.coat == coat_class::wavy);
    CHECK(d.body_length == inch(5, 8));
    CHECK(d.brushed == brushing{habit::two_or_three, true});
    CHECK(d.pink_skin);
    CHECK_FALSE(d.thin_or_old);
    REQUIRE(d.now.size() == 2);
    CHECK(d.now[1].whom == "left ear");
    CHECK(d.now[1].is == mm(30));
    REQUIRE(d.departures.size() == 1);
    CHECK(d.departures[0].what.how == finish::scissor);
    REQUIRE(d.mats.size() == 1);
    const body& b = io::reference().dog_body;
    CHECK(title(b, d.mats[0].at) == "right armpit");
    CHECK(d.mats[0].grade == mat_grade::matted_area);
    CHECK(d.mats[0].free_hair == mm(6));
    CHECK(d.mats[0].comb_passes);
    REQUIRE(d.skin.size() == 1);
    CHECK(d.skin[0].state == skin_state::irritated);
    REQUIRE(d.measured.size() == 1);
    CHECK(d.measured[0].combed_dry);
    CHECK(d.measured[0].is == mm(20));
    REQUIRE(d.visits.size() == 1);
    CHECK(iso(d.visits[0].on) == "2026-01-04");
}

TEST_CASE("a sheet keeps its rules in the order of the file", "[read]") {
    const style s = read_plain(
        "coats = [\"curly\"]\nlongest_interval = \"42 days\"\nadjustable_length = \"13 mm\"\n"
        "[zones]\nrump = { length = \"1/2 in\" }\nall = { length = \"13 mm\", direction = "
        "\"either\" }\n"
        "back = { blade = \"7F\", tolerance = \"1 mm\", between = \"nearest\" }\n"
        "ear-edge = { length = \"13 mm\", finish = \"scissor\", note = \"over the fingers\" }\n");
    REQUIRE(s.rules.size() == 4);
    CHECK(s.rules[0].whom == "rump");
    CHECK(s.rules[0].what.target == mm(12.7));
    CHECK(s.rules[1].whom == "all");
    CHECK(s.rules[1].what.way == lay_choice::either);
    CHECK(s.rules[2].what.blade == "7F");
    CHECK(s.rules[2].what.between == side_of_target::nearest);
    CHECK_FALSE(s.rules[2].what.target.has_value());
    CHECK(s.rules[3].what.note == "over the fingers");
    CHECK(s.coats == std::vector{coat_class::curly});
    CHECK(s.longest_interval == day(42));
    CHECK(s.adjustable == mm(13));
    CHECK(s.why.how == basis::assumption);
}

TEST_CASE("a limit for several zones is a limit for each", "[read]") {
    const style s = read_plain(
        "[zones]\nall = { length = \"20 mm\" }\n[[limit]]\nzones = [\"back\", \"legs\"]\n"
        "low = \"3/4 in\"\nhigh = \"2 in\"\nbasis = \"published\"\n"
        "source = \"akc-standard-schnauzer\"\n");
    REQUIRE(s.limits.size() == 2);
    CHECK(s.limits[0].whom == "back");
    CHECK(s.limits[1].whom == "legs");
    CHECK(s.limits[0].low == mm(19.05));
    CHECK(s.limits[0].high == mm(50.8));
    CHECK(s.limits[0].why.from == "akc-standard-schnauzer");
}

TEST_CASE("a narrower rule of a sheet decides what its limit judges", "[read]") {
    const std::string limit =
        "[[limit]]\nzones = [\"all\"]\nhigh = \"25.4 mm\"\nbasis = \"practice\"\n";
    CHECK_NOTHROW(
        read_plain("[zones]\nall = { length = \"30 mm\" }\nhead = { length = \"20 mm\" }\n"
                   "body = { length = \"20 mm\" }\nlegs = { length = \"20 mm\" }\n"
                   "tail = { length = \"20 mm\" }\ntail-base = { length = \"20 mm\" }\n"
                   "feet = { length = \"25.4 mm\" }\n" +
                   limit));
    CHECK_THROWS_AS(read_plain("[zones]\nall = { length = \"20 mm\" }\n"
                               "\"right ear\" = { length = \"25.5 mm\" }\n" +
                               limit),
                    bad_input);
}

TEST_CASE("a kit says what its file says", "[read]") {
    const kit k = io::read_kit(
        {"salon.toml",
         corner + "clippers = 2\nunder_comb = \"40\"\n"
                  "[[kit.blade]]\nid = \"40\"\n"
                  "[[kit.blade]]\nid = \"blade 10\"\ncount = 2\nmeasured = \"1.8 mm\"\n"
                  "[[kit.blade]]\nid = \"4F\"\nout_until = 2026-12-01\n"
                  "[[kit.blade]]\nid = \"blade 2\"\n"
                  "[[kit.blade]]\nid = \"8.5\"\nteeth = \"full\"\n"
                  "[[kit.blade]]\nid = \"Vet 1.2\"\nstated = \"1.2 mm\"\nteeth = \"full\"\n"
                  "[[kit.comb]]\nid = \"13mm\"\nmeasured = \"14 mm\"\n"
                  "[[kit.comb]]\nid = \"1 1/4 in\"\nfits = [\"Vet 1.2\", \"10\"]\n"
                  "[[kit.comb]]\nid = \"14 mm\"\nstated = \"14 mm\"\n"},
        io::reference());
    CHECK(k.clippers == 2);
    CHECK(k.under_comb == "40");
    REQUIRE(k.blades.size() == 6);
    CHECK(k.blades[1].spec.id == "10");
    CHECK(k.blades[1].count == 2);
    CHECK(k.blades[1].measured == mm(1.8));
    CHECK(k.blades[1].spec.stated.best == mm(1.5));
    REQUIRE(k.blades[2].out_until.has_value());
    CHECK(k.blades[3].spec.id == "2");
    CHECK(k.blades[4].spec.cut == teeth::full);
    CHECK(k.blades[5].spec.stated.why.how == basis::measured);
    REQUIRE(k.combs.size() == 3);
    CHECK(k.combs[0].spec.id == "13 mm");
    CHECK(k.combs[1].spec.id == "32 mm");
    CHECK(k.combs[1].fits == std::vector<std::string>{"Vet 1.2", "10"});
    CHECK(k.combs[2].spec.stated.best == mm(14));
}

TEST_CASE("a salon's own figures replace the reference's and say so", "[read]") {
    const salon_files s = read_corner(
        "[[kit.blade]]\nid = \"10\"\n"
        "[override.prices]\nscissor = 3.5\npick-up-blade = \"0.7 min\"\nsize-giant = 3\n"
        "[override.matting]\nclock-weekly = \"16 days\"\n"
        "chance = { best = 0.8, low = 0.75, high = 0.85, basis = \"measured\", note = \"two "
        "years\" }\n");
    CHECK(s.rules.prices.scissor.best == 3.5);
    CHECK(s.rules.prices.scissor.why.how == basis::assumption);
    CHECK(s.rules.prices.scissor.why.note == "the salon's own");
    CHECK(s.rules.prices.pick_up_blade.best == minutes(0.7));
    CHECK(s.rules.prices.size[4].best == 3.0);
    CHECK(s.rules.matting.clock[1].best == day(16));
    CHECK(s.rules.matting.chance.low == 0.75);
    CHECK(s.rules.matting.chance.why.how == basis::measured);
    CHECK(s.rules.matting.chance.why.note == "the salon's own: two years");
    const price_rules& ours = io::reference().rules.prices;
    CHECK(s.rules.prices.thin.best == ours.thin.best);
    CHECK(ours.scissor.best != 3.5);
}

TEST_CASE("slurp takes ordinary files of up to a megabyte", "[read]") {
    const scratch_folder f;
    f.write("dog.toml", "a\r\nb\xff");
    f.write("big.toml", std::string(1'000'001, ' '));
    CHECK(io::read_text(f.path() + "/dog.toml").text == "a\r\nb\xff");
    CHECK(io::read_text(f.path() + "/dog.toml").name == f.path() + "/dog.toml");
    for (const std::string& path :
         {f.path(), f.path() + "/none.toml", f.path() + "/big.toml", f.path() + "/dog.toml/x",
          std::string("/dev/zero"), std::string()}) {
        INFO(path);
        try {
            (void)io::read_text(path);
            FAIL("read it");
        } catch (const error& e) {
            CHECK(e.code() == errc::io);
        }
    }
}

TEST_CASE("a salon's folder holds its kit, sheets and dogs", "[read]") {
    const scratch_folder f;
    f.write("salon.toml", corner +
                              "[[kit.blade]]\nid = \"Vet 1.2\"\nstated = \"1.2 mm\"\n"
                              "teeth = \"full\"\n");
    f.write("styles/b.toml", plain_sheet + "[zones]\nall = { blade = \"Vet 1.2\" }\n");
    f.write("styles/a.toml",
            "format = 1\nid = \"one-length\"\ntitle = \"Ours\"\n[zones]\nall = { length = \"9 mm\" "
            "}\n");
    f.write("styles/.hidden.toml", "not = [toml");
    f.write("styles/read.me", "not = [toml");
    f.write("dogs/z.toml", bella + "style = \"plain\"\n");
    f.write("dogs/a.toml",
            "format = 1\nid = \"ada\"\nname = \"Ada\"\nsize = \"toy\"\nmix = \"maltese\"\n");
    const salon_files s = io::read_salon_folder(f.path(), io::reference());
    const reference_data& c = io::reference();
    CHECK(s.title == "Corner salon");
    CHECK(s.styles.size() == c.styles.size() + 1);
    REQUIRE(find(s.styles, "one-length") != nullptr);
    CHECK(find(s.styles, "one-length")->title == "Ours");
    CHECK(s.styles.back().id == "plain");
    REQUIRE(s.dogs.size() == 2);
    CHECK(s.dogs[0].id == "ada");
    CHECK(s.dogs[1].style == "plain");
}

TEST_CASE("a salon's folder tells the faults of every file at once", "[read]") {
    const scratch_folder f;
    f.write("salon.toml", corner + "clippers = 0\n[[kit.blade]]\nid = \"10\"\n");
    f.write("styles/a.toml", plain_sheet + "[zones]\nall = { length = 3 }\n");
    f.write("styles/b.toml", "format = [\n");
    f.write("dogs/a.toml", bella + "style = \"plain\"\n");  // its sheet is there, only faulty
    f.write("dogs/b.toml", bella);
    f.write("dogs/c.toml/x", "");
    try {
        (void)io::read_salon_folder(f.path(), io::reference());
        FAIL("took it");
    } catch (const bad_input& wrong) {
        INFO(in_one_line(wrong.all()));
        std::vector<std::string> files;
        for (const diagnostic& d : wrong.all()) {
            files.push_back(d.file.substr(f.path().size() + 1));
        }
        CHECK(files == std::vector<std::string>{"dogs/b.toml", "dogs/c.toml", "salon.toml",
                                                "styles/a.toml", "styles/b.toml"});
        CHECK(wrong.all()[0].code == errc::duplicate);
        CHECK(wrong.all()[1].code == errc::io);
        CHECK(wrong.all()[4].code == errc::syntax);
    }
}

TEST_CASE("a folder without salon.toml can't be read", "[read]") {
    const scratch_folder f;
    for (const std::string& path : {f.path(), f.path() + "/none"}) {
        try {
            (void)io::read_salon_folder(path, io::reference());
            FAIL("read it");
        } catch (const error& e) {
            CHECK(e.code() == errc::io);
        }
    }
}
