// The intake as a talk: what is asked and of whom, back, broken off and gone on with, keys counted, and the
// file of a dog one knows, of which only that is changed that is new.
#include <filesystem>
#include <fstream>
#include <iterator>
#include <sstream>

#include <unistd.h>

#include <pelage/base/error.hpp>
#include <pelage/data/read.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/data/write_dog.hpp>

#include "catch.hpp"
#include "cli.hpp"
#include "interview.hpp"

using namespace pelage;

namespace {

namespace fs = std::filesystem;

const date the_day = *parse_date("2026-11-26");

dog read_text(const std::string& text) {
    return io::read_dog({"dog.toml", text}, io::reference(), io::reference().styles);
}

struct talked {
    dog patient;
    std::string said;
    std::optional<weight> weighed;
    std::size_t left = 0;  ///< keys that nobody asked for
};

talked talk_through(const std::string& answers, const dog* known = nullptr) {
    std::istringstream in(answers);
    std::ostringstream out;
    cli::asker a(in, out);
    const auto& ref = io::reference();
    cli::intake_answers kept;
    cli::intake_matter about{ref, ref.styles, the_day};
    about.on_file = about.by_record = known;
    talked t;
    cli::interview(a, kept, about, [&](const cli::intake_result& r) {
        t.patient = r.patient;
        t.weighed = r.weighed;
    });
    t.said = out.str();
    in.clear();
    t.left = static_cast<std::size_t>(in.rdbuf()->in_avail());
    return t;
}

/// Name, no breed, curly, medium, lamb, adult, not weighed, no ailment, no stop sign, no thin or pink skin,
/// brushed weekly on the surface, last groom not known, hates nothing, no alert.
const std::string common = "Moss, the Brave\n\n93lamb\n2\n\n\nnn2n\n\n\n";
/// Hair not measured, no note.
const std::string no_more = "\n\n";

/// A folder of its own, gone at the end.
struct folder {
    fs::path at;
    explicit folder(const char* name)
        : at(fs::temp_directory_path() / (std::string(name) + std::to_string(getpid()))) {
        fs::create_directories(at);
    }
    folder(const folder&) = delete;
    ~folder() {
        std::error_code ignored;
        fs::remove_all(at, ignored);
    }
    [[nodiscard]] std::string file(const std::string& name) const { return (at / name).string(); }
    void write(const std::string& name, const std::string& text) const {
        std::ofstream(at / name) << text;
    }
    [[nodiscard]] std::string text_of(const std::string& name) const {
        std::ifstream in(at / name);
        return std::string(std::istreambuf_iterator<char>(in), {});
    }
    [[nodiscard]] bool has(const std::string& name) const { return fs::exists(at / name); }
};

struct ran {
    int code = 0;
    std::string said;
    std::size_t left = 0;
};

ran run(const std::vector<std::string>& args, const std::string& answers, bool terminal = true) {
    std::istringstream in(answers);
    std::ostringstream out;
    std::ostringstream err;
    const int code = cli::run(args, {the_day, {}, &in, 1, terminal, {}}, out, err);
    in.clear();
    return {code, out.str() + err.str(), static_cast<std::size_t>(in.rdbuf()->in_avail())};
}

const std::string rosie =
    "# Rosie, the one with the ear\nformat = 1\nid = \"rosie\"\nname = \"Rosie\"  # not Rosa\n"
    "size = \"small\"\ncoat = \"curly\"\nstyle = \"one-length\"\n"
    "brushing = \"every 3 days to the skin\"\nage = \"adult\"\nweight = \"6.1 kg\"\n"
    "departures = { tail = { length = \"30 mm\" } }  # as ever\n"
    "\n# how it came in\n[[mat]]  # last time\nzone = \"tail\"\ngrade = \"mat\"\nfree_hair = \"6 "
    "mm\"\n"
    "\n# the vet knows it\n[[skin]]\nzone = \"left ribs\"\nstate = \"lump\"\nsize = \"10 mm\"\n"
    "known = true\n\n[[visit]]\ndate = \"2026-10-14\"\nkind = \"full\"\n";

std::string without(std::string text, const std::string& part) {
    const auto at = text.find(part);
    REQUIRE(at != std::string::npos);
    return text.erase(at, part.size());
}

}  // namespace

TEST_CASE("the talk: combs clean, everything fine", "[intake]") {
    const talked t = talk_through(common + "." + no_more);
    const dog& d = t.patient;
    CHECK(t.left == 0);
    CHECK(d.name == "Moss, the Brave");
    CHECK(d.id == "moss-the-brave");
    CHECK(d.size == dog_size::medium);
    CHECK(d.coat == coat_class::curly);
    CHECK(d.style == "lamb");
    CHECK(d.age == life_stage::adult);
    CHECK(d.brushed == brushing{habit::weekly, false});
    CHECK(d.comb_checked);
    CHECK(d.mats.empty());
    CHECK(d.skin.empty());
    CHECK(d.now.empty());
    CHECK(d.mix.empty());
    CHECK_FALSE(t.weighed);
}

TEST_CASE("the talk: a part in which the comb finds nothing is one key", "[intake]") {
    const talked t = talk_through(common + "\n\n\n\n\n\n" + no_more);
    CHECK(t.left == 0);
    CHECK(t.patient.comb_checked);
    for (const char* part : {"  body?", "  legs and feet?", "  tail?", "  ears?", "  head?"}) {
        CHECK_THAT(t.said, match::ContainsSubstring(part));
    }
}

TEST_CASE("the talk: only sheets that fit the coat, the breed's own first", "[intake]") {
    std::string answers = common;
    const std::string said = talk_through(answers + "." + no_more).said;
    CHECK_THAT(said, match::ContainsSubstring("lamb: Lamb"));
    CHECK_THAT(said, !match::ContainsSubstring("schnauzer"));
    CHECK_THAT(said, !match::ContainsSubstring("double-tidy"));
    // a Lagotto is curly, and has a sheet
    answers.replace(answers.find("\n\n93lamb\n"), 9, "\nlagotto\n\n31\n");
    const talked t = talk_through(answers + "." + no_more);
    CHECK(t.patient.coat == coat_class::curly);
    CHECK(t.patient.style == "lagotto");
    CHECK_THAT(t.said, match::ContainsSubstring("1  lagotto"));
}

TEST_CASE("the talk: names by their beginning, near misses, Tab", "[intake]") {
    const auto style_by = [&](const std::string& typed) {
        std::string answers = common;
        answers.replace(answers.find("lamb\n"), 5, typed);
        return talk_through(answers + "." + no_more);
    };
    CHECK(style_by("low\n").patient.style == "low-upkeep");
    CHECK(style_by("upk\n").patient.style == "low-upkeep");
    CHECK(style_by("lo\t\n").patient.style == "low-upkeep");
    CHECK(style_by("lq\x7fow\n").patient.style == "low-upkeep");
    talked t = style_by("poodle\npoodle-m\n");
    CHECK(t.patient.style == "poodle-modern");
    CHECK_THAT(t.said, match::ContainsSubstring("several begin so: poodle-corded, poodle-modern"));
    t = style_by("lamv\nlamb\n");
    CHECK_THAT(t.said, match::ContainsSubstring("did you mean \"lamb\"?"));
    t = style_by("schnauzer-pet\nlamb\n");  // a wire sheet
    CHECK_THAT(t.said, match::ContainsSubstring("no sheet for such a coat of the list"));
}

TEST_CASE("the talk: mats and skin, the later word on a place stands", "[intake]") {
    // neck: a mat of 6 mm, comb passes; skin irritated. withers a pelt, felted. left shoulder a tangle, not
    // measured, combed out; then both shoulders a mat. all of the ears a matted area
    const talked t = talk_through(common +
                                  "mneck\n6y"
                                  "s1neck\n"
                                  "p30"
                                  "tleft shoulder\n\nnc"
                                  "mshould\nb3n"
                                  "\n\n\n\n"
                                  "a02n." +
                                  no_more);
    const dog& d = t.patient;
    const body& b = io::reference().dog_body;
    INFO(t.said);
    CHECK(t.left == 0);
    REQUIRE(d.mats.size() == 5);
    CHECK(title(b, d.mats[0].at) == "neck");
    CHECK(d.mats[0].grade == mat_grade::mat);
    CHECK(d.mats[0].free_hair == mm(6));
    CHECK(d.mats[0].comb_passes);
    CHECK_FALSE(d.mats[0].comb_out);
    CHECK(title(b, d.mats[1].at) == "withers");
    CHECK(d.mats[1].to_skin);
    CHECK(title(b, d.mats[2].at) == "shoulders");
    CHECK(d.mats[2].grade == mat_grade::mat);
    CHECK(d.mats[2].free_hair == mm(3));
    CHECK(title(b, d.mats[3].at) == "ears");
    CHECK(title(b, d.mats[4].at) == "ear edges");
    REQUIRE(d.skin.size() == 1);
    CHECK(title(b, d.skin[0].at) == "neck");
    CHECK(d.skin[0].state == skin_state::irritated);
}

TEST_CASE("the talk: combed out whatever the plan says, if that may be", "[intake]") {
    dog d = talk_through(common + "tneck\n\nnc." + no_more).patient;
    REQUIRE(d.mats.size() == 1);
    CHECK(d.mats[0].comb_out);
    // never in an armpit, never a pelt
    talked t = talk_through(common + "\n\n\nmarmpit\nb3yc." + no_more);
    CHECK_FALSE(t.patient.mats.at(0).comb_out);
    CHECK_THAT(t.said, match::ContainsSubstring("one of: Enter t m a p s ."));
    t = talk_through(common + "pneck\n3yc." + no_more);
    CHECK_FALSE(t.patient.mats.at(0).comb_out);
}

TEST_CASE("the talk: a stop sign ends it, the comb isn't asked for", "[intake]") {
    const talked t = talk_through("Fen\n\n93lamb\n3\n\nhh\n");
    CHECK(t.left == 0);
    CHECK(t.patient.signs == std::vector<stop_sign>{stop_sign::hair_band});
    CHECK_THAT(t.said, match::ContainsSubstring("STOP"));
    CHECK_THAT(t.said, match::ContainsSubstring("Do not cut it away yourself"));
    CHECK_THAT(t.said, !match::ContainsSubstring("body?"));
}

TEST_CASE("the talk: an itch isn't an illness that its owner signs for", "[intake]") {
    std::string answers = common;
    answers.replace(answers.find("2\n\n\nnn"), 6, "2\nitchy ears\nn\nnn");
    dog d = talk_through(answers + "." + no_more).patient;
    CHECK(d.health.empty());
    CHECK(d.note == "told: itchy ears");
    CHECK_FALSE(ails(d));
    answers = common;
    answers.replace(answers.find("2\n\n\nnn"), 6, "2\nheart murmur\ny\nnn");
    d = talk_through(answers + "." + no_more).patient;
    CHECK(d.health == "heart murmur");
    CHECK(d.note.empty());
}

TEST_CASE("the talk: weight, breed, hair, touch, alerts, note, each if one likes", "[intake]") {
    const talked t = talk_through(
        "Bo\npoodle x beagle\n93lamb\n2"
        "27 stone\n27 lb\n\n\nnn2n2026-09-30\n"
        "feet, frnt legs\nfeet, front legs\n"
        "baoatmeal shampoo\n\n.body forty\nbody 40 mm, lef 3\nbody 40 mm, legs 1 1/4 in\n"
        "likes the dryer\n");
    CHECK(t.left == 0);
    CHECK(t.patient.mix == "poodle x beagle");
    REQUIRE(t.weighed);
    CHECK(title(*t.weighed) == "12.247 kg");  // 27 x 0.45359237
    CHECK(t.patient.sensitive == std::vector<std::string>{"feet", "front legs"});
    CHECK(titles(t.patient.alerts) ==
          std::vector<std::string>{"bites", "allergic to oatmeal shampoo"});
    REQUIRE(t.patient.told.size() == 2);  // of the day it was told on
    CHECK(t.patient.now.empty());
    CHECK(t.patient.told[0].is == mm(40));
    CHECK(t.patient.told[1].is == mm(31.75));
    CHECK(t.patient.note == "likes the dryer");
    CHECK(t.patient.visits.at(0).on == *parse_date("2026-09-30"));
    CHECK_THAT(t.said, match::ContainsSubstring("write it with its unit, as 12.5 kg or 27 lb"));
    CHECK_THAT(t.said, match::ContainsSubstring("did you mean \"front leg"));
    // all that is wrong with a line is said at once
    CHECK_THAT(t.said, match::ContainsSubstring("found \"lef\""));
    CHECK_THAT(t.said, match::ContainsSubstring("write \"3 mm\""));
}

TEST_CASE("the talk: hair shorter than the free hair under a mat is measured again", "[intake]") {
    const talked t = talk_through(common + "mneck\n9n.body 5 mm\nbody 30 mm\n\n");
    CHECK(t.patient.told.at(0).is == mm(30));
    CHECK_THAT(t.said, match::ContainsSubstring("more free hair under a mat than hair"));
}

TEST_CASE("the talk: a day no file can hold, a name it can't, are asked again", "[intake]") {
    std::string answers = common;
    answers.replace(answers.find("2n\n\n"), 4, "2n0226-09-30\n2026-09-30\n\n");
    const talked t = talk_through("J\xfcrgen\n\n" + answers + "." + no_more);
    CHECK(t.patient.name == "Moss, the Brave");
    CHECK(t.patient.visits.at(0).on == *parse_date("2026-09-30"));
    CHECK_THAT(t.said, match::ContainsSubstring("a line of plain text in UTF-8 is needed"));
    CHECK_THAT(t.said, match::ContainsSubstring("a day from 1990 on is needed"));
}

TEST_CASE("the talk: wrong keys are asked again, an end or a q breaks off", "[intake]") {
    std::string answers = common;
    answers.replace(answers.find("93"), 2, "9x3");
    CHECK(talk_through(answers + "." + no_more).patient.size == dog_size::medium);
    const auto ended = [](const std::string& said) {
        try {
            (void)talk_through(said);
        } catch (const cli::break_off& b) {
            return b.ended ? "ended" : "by hand";
        }
        return "not";
    };
    CHECK(ended("Moss\n\n9q") == std::string("by hand"));
    CHECK(ended("Moss\nq\n") == std::string("by hand"));
    CHECK(ended("Moss\n\n9\x03") == std::string("by hand"));
    CHECK(ended("Moss\n\x03") == std::string("by hand"));
    CHECK(ended("Moss\n") == std::string("ended"));
    CHECK(ended("Moss\n\x04") == std::string("ended"));
    CHECK(ended("") == std::string("ended"));
}

namespace {

const std::vector<std::string> one_by_one{"Moss\n",   "poodle\n",
                                          "\n",       "3",
                                          "lamb\n",   "3",
                                          "7.5 kg\n", "heart murmur\n",
                                          "y",        "\n",
                                          "y",        "y",
                                          "3",        "4",
                                          "y",        "2026-09-30\n",
                                          "feet\n",   "a",
                                          "oats\n",   "\n",
                                          "s",        "3",
                                          "back\n",   "10 mm\n",
                                          "y",        "m",
                                          "back\n",   "6",
                                          "y",        "\n",
                                          "\n",       "\n",
                                          "a",        "armpit\n",
                                          "l",        "0",
                                          ".",        "body 40 mm\n",
                                          "a note\n"};

std::string joined_from(std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t i = from; i < to; ++i) {
        out += one_by_one[i];
    }
    return out;
}

}  // namespace

TEST_CASE("one key back from every question: the same dog comes out", "[intake]") {
    const talked t = talk_through(joined_from(0, one_by_one.size()));
    const std::string straight = io::dog_file(t.patient, io::reference().dog_body);
    CHECK(t.left == 0);
    std::string answers;
    for (std::size_t i = 0; i < one_by_one.size(); ++i) {
        const bool last = i + 1 == one_by_one.size();
        answers += one_by_one[i] + (last ? "" : "<" + one_by_one[i]);
    }
    const talked u = talk_through("<" + answers);
    CHECK(io::dog_file(u.patient, io::reference().dog_body) == straight);
    CHECK_THAT(u.said, match::ContainsSubstring("This is the first question."));
    // all the way back, and another dog
    const talked v =
        talk_through(joined_from(0, 12) + std::string(12, '<') + common + "." + no_more);
    CHECK(v.patient.name == "Moss, the Brave");
    CHECK(v.patient.health.empty());
}

TEST_CASE("broken off after every answer and gone on with: nothing is lost", "[intake]") {
    const folder f("pelage-broken-");
    const std::vector<std::string> args{"plan", "--ask", "-o", f.file("moss.toml")};
    CHECK(run(args, joined_from(0, one_by_one.size())).code < 2);
    const std::string straight = f.text_of("moss.toml");
    CHECK_THAT(straight, match::ContainsSubstring("weight = \"7.5 kg\""));
    CHECK_FALSE(f.has("moss.intake"));
    for (std::size_t i = 1; i < one_by_one.size(); ++i) {
        INFO("after " << i);
        fs::remove(f.at / "moss.toml");
        const char* const ends[] = {"", "\x03", "\x04"};
        const ran first = run(args, joined_from(0, i) + ends[i % 3]);
        CHECK(first.code == 1);
        CHECK_THAT(first.said, match::ContainsSubstring(std::to_string(i) + " answer"));
        CHECK_THAT(first.said, match::ContainsSubstring("go on with: pelage plan --ask -o "));
        CHECK(f.has("moss.intake"));
        CHECK_FALSE(f.has("moss.toml"));
        const ran second = run(args, joined_from(i, one_by_one.size()));
        CHECK(second.code < 2);
        CHECK(second.left == 0);
        CHECK(f.text_of("moss.toml") == straight);
        CHECK_FALSE(f.has("moss.intake"));
    }
}

TEST_CASE("a line of answers that was never finished doesn't count; another's file is left alone",
          "[intake]") {
    const folder f("pelage-torn-");
    const std::vector<std::string> args{"plan", "--ask", "-o", f.file("moss.toml")};
    CHECK(run(args, joined_from(0, 3)).code == 1);
    f.write("moss.intake", f.text_of("moss.intake") + "size\t");
    CHECK(run(args, joined_from(3, one_by_one.size())).code < 2);
    // a dog's file that is there is never written over; gone, what doesn't fit any more is asked again
    CHECK(run(args, "poodle\n").code == 4);
    std::filesystem::remove(f.file("moss.toml"));
    f.write("moss.intake",
            "pelage intake 1, not finished\nday\t2026-11-20\ndog\t-\nname\tMoss\nbreed\tunicorn\n");
    const ran r = run(args, "poodle\n");
    CHECK(r.code == 1);
    CHECK_THAT(r.said, match::ContainsSubstring("begun on 2026-11-20"));
    CHECK_THAT(r.said, match::ContainsSubstring("doesn't fit any more"));
    f.write("moss.intake", "a shopping list\n");
    const ran wrong = run(args, "poodle\n");
    CHECK(wrong.code == 3);
    CHECK(f.text_of("moss.intake") == "a shopping list\n");
    f.write("moss.intake", "pelage intake 1, not finished\nday\t2026-11-20\ndog\trosie\n");
    CHECK(run(args, "").code == 3);
}

TEST_CASE("by a pipe each line is an answer, several keys may share one", "[intake]") {
    const folder f("pelage-pipe-");
    const std::vector<std::string> args{"plan", "--ask", "-o", f.file("moss.toml")};
    CHECK(run(args, joined_from(0, one_by_one.size())).code < 2);
    const std::string straight = f.text_of("moss.toml");
    fs::remove(f.at / "moss.toml");
    std::string lines;
    for (const std::string& one : one_by_one) {
        lines += one.ends_with('\n') ? one : one + "\n";
    }
    ran r = run(args, lines, false);
    CHECK(r.code < 2);
    CHECK(f.text_of("moss.toml") == straight);
    // the end of the lines is a pause
    fs::remove(f.at / "moss.toml");
    r = run(args, "Moss\npoodle\n\n", false);
    CHECK(r.code == 1);
    CHECK_THAT(r.said, match::ContainsSubstring("The answers ended before the last question"));
    CHECK(f.has("moss.intake"));
    // yes is no row of keys
    r = run(args, "3\nlamb\n2\n\n\n\nyes\nno\n", false);
    CHECK_THAT(f.text_of("moss.intake"), match::ContainsSubstring("thin\ty\npink\tn\n"));
    CHECK(run(args, "<\n<\n", false).code == 1);
    CHECK_THAT(f.text_of("moss.intake"), !match::ContainsSubstring("thin"));
}

TEST_CASE("the talk writes a file, never over another without a yes, and plans it", "[intake]") {
    const folder f("pelage-talk-");
    const std::vector<std::string> args{"plan", "--ask", "-o", f.file("moss.toml")};
    ran r = run(args, common + "." + no_more);
    CHECK(r.code == 0);
    CHECK_THAT(r.said, match::ContainsSubstring("Wrote " + f.file("moss.toml")));
    CHECK_THAT(r.said, match::ContainsSubstring("Moss, the Brave: "));
    const std::string first = f.text_of("moss.toml");
    CHECK_THAT(first, match::ContainsSubstring("name = \"Moss, the Brave\""));
    // a file that is there is never written over, and that is said before the first question
    r = run(args, common + "mneck\n6y." + no_more);
    CHECK(r.code == 4);
    CHECK_THAT(r.said, match::ContainsSubstring("it is there already"));
    CHECK(f.text_of("moss.toml") == first);
    CHECK_FALSE(f.has("moss.intake"));
}

TEST_CASE("a second dog of a name gets an id of its own, and the salon stays open", "[intake]") {
    const folder f("pelage-twins-");
    fs::create_directories(f.at / "dogs");
    f.write("salon.toml", "format = 1\ntitle = \"Mill Lane\"\n[kit]\n[[kit.blade]]\nid = \"10\"\n");
    const auto here = [&](std::vector<std::string> args, const std::string& answers) {
        args.insert(args.end(), {"--salon", f.at.string()});
        return run(args, answers);
    };
    for (const char* name : {"dogs/one.toml", "dogs/two.toml", "dogs/one-two.toml"}) {
        CHECK(here({"plan", "--ask", "-o", f.file(name)}, common + "." + no_more).code < 2);
    }
    CHECK_THAT(here({"lookup", "10"}, "").said, !match::ContainsSubstring("note:"));
    CHECK(here({"plan", "two"}, "").code < 2);
    CHECK(here({"plan", "moss-the-brave"}, "").code < 2);
    CHECK(here({"plan", "--ask", "-o", f.file("dogs/two.toml")}, common + "." + no_more).code == 4);
    CHECK_THAT(here({"lookup", "10"}, "").said, !match::ContainsSubstring("note:"));
    // a dog one knows, written elsewhere: it is another dog there
    CHECK(here({"plan", "two", "--ask", "-o", f.file("dogs/new.toml")}, "\n\n.\n\n").code < 2);
    CHECK_THAT(f.text_of("dogs/new.toml"), match::ContainsSubstring("id = \"new\""));
    CHECK_THAT(here({"lookup", "10"}, "").said, !match::ContainsSubstring("note:"));
}

TEST_CASE("what the talk found, written and read again, is the same", "[intake]") {
    const dog d =
        talk_through("A \"B\" \\ \xC3\xA9" + joined_from(0, one_by_one.size()).substr(4)).patient;
    const std::string text = io::dog_file(d, io::reference().dog_body);
    INFO(text);
    const dog back = read_text(text);
    CHECK(io::dog_file(back, io::reference().dog_body) == text);
    CHECK(back.name == "A \"B\" \\ \xC3\xA9");
    CHECK(back.health == "heart murmur");
    CHECK(back.age == life_stage::old);
    CHECK(back.out == outdoors::much);
    CHECK(back.brushed == brushing{habit::every_other_day, true});
    CHECK(back.sensitive == std::vector<std::string>{"feet"});
    CHECK(back.told.size() == 1);
    CHECK(back.combed_on.has_value());
    CHECK(back.mats.size() == 2);
    CHECK(back.visits.size() == 1);
    CHECK(titles(back.alerts) == std::vector<std::string>{"allergic to oats"});
    CHECK(back.comb_checked);
    REQUIRE(back.skin.size() == 1);
    CHECK(back.skin[0].size == mm(10));
    CHECK(back.skin[0].known);
    CHECK(back.note == "a note");
}

// ---- a dog one knows ----

TEST_CASE("a clean dog one knows is at most eight keys, a matted one at most twenty-five",
          "[intake]") {
    const std::string clean_file = without(
        without(rosie,
                "[[mat]]  # last time\nzone = \"tail\"\ngrade = \"mat\"\nfree_hair = \"6 mm\"\n"),
        "[[skin]]\nzone = \"left ribs\"\nstate = \"lump\"\nsize = \"10 mm\"\nknown = true\n");
    const dog known = read_text(clean_file);
    // no stop sign, not weighed, combs clean all over, hair not measured, nothing else new
    const std::string clean = "\n\n.\n\n";
    talked t = talk_through(clean, &known);
    CHECK(clean.size() <= 8);
    CHECK(t.left == 0);
    CHECK(t.patient.mats.empty());
    CHECK(t.patient.comb_checked);
    // ... part by part instead of all at once
    const std::string by_part = "\n\n\n\n\n\n\n\n\n\n";
    CHECK(talk_through(by_part, &known).left == 0);
    // body and legs clean; the tail's mat of 6 mm, a comb passes; armpits a matted area of 2 mm, none; the
    // left ear a pelt of 5 mm, none; nothing more
    const std::string matted = "\n\n\n\nm26y\na3b2n\np1l5n.\n\n";
    t = talk_through(matted, &known);
    INFO(t.said);
    CHECK(matted.size() <= 25);
    CHECK(t.left == 0);
    const body& b = io::reference().dog_body;
    REQUIRE(t.patient.mats.size() == 3);
    CHECK(title(b, t.patient.mats[0].at) == "tail");
    CHECK(title(b, t.patient.mats[1].at) == "armpits");
    CHECK(title(b, t.patient.mats[2].at) == "left ear");
    CHECK(t.patient.mats[2].grade == mat_grade::pelt);
    CHECK(t.patient.mats[2].free_hair == mm(5));
}

TEST_CASE("of a dog one knows only what is new is changed in its file", "[intake]") {
    const folder f("pelage-known-");
    const std::vector<std::string> args{"plan", f.file("rosie.toml"), "--ask"};
    // all as it was: a mat and a lump are still there, nothing weighed
    f.write("rosie.toml", rosie);
    ran r = run(args, "\n\ny.\n\n");
    CHECK(r.code < 2);
    CHECK(r.left == 0);
    CHECK_THAT(r.said,
               match::ContainsSubstring("Found before, by its file: a mat, tail; a known lump "
                                        "of 10 mm, left ribs."));
    const std::string checked = f.text_of("rosie.toml");
    CHECK(without(without(checked, "comb_checked = true\n"), "combed_on = \"2026-11-26\"\n") ==
          rosie);
    // again: nothing is new
    r = run(args, "\n\ny.\n\n");
    CHECK(f.text_of("rosie.toml") == checked);
    CHECK_THAT(r.said, match::ContainsSubstring("stays as it is: nothing is new"));
    // the mat is gone, the lump isn't; weighed; one measurement; bites now
    r = run(args, "\n6.4 kg\nony.body 31 mm\nlb\n\n");
    CHECK(r.code < 2);
    const std::string text = f.text_of("rosie.toml");
    CHECK_THAT(text, match::ContainsSubstring("weight = \"6.4 kg\"\n"));
    CHECK_THAT(text, match::ContainsSubstring("now_on = \"2026-11-26\""));
    CHECK_THAT(text, match::ContainsSubstring("[now]\nbody = \"31 mm\""));
    CHECK_THAT(text, match::ContainsSubstring("alerts = [\"bites\"]"));
    CHECK_THAT(text, !match::ContainsSubstring("[[mat]]"));
    for (const char* stays :
         {"# Rosie, the one with the ear\n", "name = \"Rosie\"  # not Rosa\n",
          "departures = { tail = { length = \"30 mm\" } }  # as ever\n", "# how it came in\n",
          "# the vet knows it\n[[skin]]\nzone = \"left ribs\"\n",
          "[[visit]]\ndate = \"2026-10-14\"\n"}) {
        CHECK_THAT(text, match::ContainsSubstring(stays));
    }
    CHECK_THAT(r.said, match::ContainsSubstring("Changed in"));
    CHECK_THAT(r.said, match::ContainsSubstring("ALERT: bites."));
    CHECK_FALSE(f.has("rosie.intake"));
}

TEST_CASE("a dog one knows, written elsewhere: its own file stays", "[intake]") {
    const folder f("pelage-elsewhere-");
    f.write("rosie.toml", rosie);
    const ran r =
        run({"plan", f.file("rosie.toml"), "--ask", "-o", f.file("today.toml")}, "\n\nn.\n\n");
    CHECK(r.code < 2);
    CHECK(f.text_of("rosie.toml") == rosie);
    CHECK_THAT(f.text_of("today.toml"), match::ContainsSubstring("# as ever"));
    CHECK_THAT(f.text_of("today.toml"), !match::ContainsSubstring("[[mat]]"));
    CHECK_THAT(r.said, match::ContainsSubstring("rosie.toml is as it was"));
}

TEST_CASE("an intake of a dog one knows is broken off beside its file and gone on with",
          "[intake]") {
    const folder f("pelage-known-off-");
    f.write("rosie.toml", rosie);
    const std::vector<std::string> args{"plan", f.file("rosie.toml"), "--ask"};
    CHECK(run(args, "\n6.4 kg\n").code == 1);
    CHECK(f.text_of("rosie.toml") == rosie);
    CHECK(f.has("rosie.intake"));
    CHECK(run(args, "n.\n\n").code < 2);
    CHECK_THAT(f.text_of("rosie.toml"), match::ContainsSubstring("weight = \"6.4 kg\""));
    CHECK_FALSE(f.has("rosie.intake"));
}

TEST_CASE("a file that can't be changed line by line stays, and that is said", "[intake]") {
    const folder f("pelage-odd-");
    std::string odd = rosie;
    odd.replace(odd.find("size ="), 6, "\"size\" =");
    f.write("rosie.toml", odd);
    const std::vector<std::string> args{"plan", f.file("rosie.toml"), "--ask"};
    // another size: the quoted key isn't found, and a second one is no file any more
    ran r = run(args, "\n\nn.\nz4\n");
    CHECK(r.code == 3);
    CHECK(f.text_of("rosie.toml") == odd);
    CHECK(f.has("rosie.intake"));
    CHECK_THAT(r.said, match::ContainsSubstring("-o NEW.toml"));
    r = run({"plan", f.file("rosie.toml"), "--ask", "-o", f.file("new.toml")}, "");
    CHECK(r.code < 2);
    CHECK_THAT(f.text_of("new.toml"), match::ContainsSubstring("size = \"large\""));
    CHECK_THAT(r.said, match::ContainsSubstring("departures, measurements, days off and events"));
    CHECK_FALSE(f.has("rosie.intake"));
}

TEST_CASE("the text of a dog's file is changed in few lines", "[intake]") {
    const body& b = io::reference().dog_body;
    // findings in one line each, line ends of another machine, no line end at the last
    const std::string text =
        "format = 1\r\nid = \"a\"\r\nname = \"A\"\r\nsize = \"toy\"\r\ncoat = \"curly\"\r\n"
        "skin = [ # two\r\n  { zone = \"back\", state = \"scab\" }, # ] not the end\r\n"
        "  { zone = \"loin\", state = \"scab\" } ]\r\nnow = { all = \"30 mm\" }\r\n"
        "note = \"it's # no comment\" # a comment\r\n[[event]]\r\ndate = \"2027-05-01\"";
    const dog before = read_text(text);
    CHECK(io::updated_dog_file(text, before, before, b) == text + "\r\n");
    dog after = before;
    after.skin.pop_back();
    after.now = {{"body", mm(20)}};
    after.note = "calm";
    const std::string now = io::updated_dog_file(text, before, after, b);
    INFO(now);
    CHECK(io::dog_file(read_text(now), b) == io::dog_file(after, b));
    CHECK_THAT(now, match::ContainsSubstring("note = \"calm\" # a comment\r\n"));
    CHECK_THAT(now, match::ContainsSubstring("[[event]]\r\ndate = \"2027-05-01\"\r\n"));
    CHECK(read_text(now).events.size() == 1);
    // what is there is taken away
    after.note.clear();
    after.skin.clear();
    after.now.clear();
    CHECK(io::dog_file(read_text(io::updated_dog_file(text, before, after, b)), b) ==
          io::dog_file(after, b));
    CHECK(io::weight_in_file(io::with_weight(text, {6100})) == weight{6100});
}

TEST_CASE("a weight as people write it", "[intake]") {
    CHECK(parse_weight("12.5 kg") == weight{12500});
    CHECK(parse_weight("12.5kg") == weight{12500});
    CHECK(parse_weight("900 g") == weight{900});
    CHECK(parse_weight("27 lbs") == weight{12247});
    CHECK_FALSE(parse_weight("12.5"));
    CHECK_FALSE(parse_weight("12,5 kg"));
    CHECK_FALSE(parse_weight("1250 kg"));
    CHECK_FALSE(parse_weight("heavy"));
    CHECK(title(weight{12500}) == "12.5 kg");
    CHECK(title(weight{10000}) == "10 kg");
    CHECK(title(weight{905}) == "0.905 kg");
    CHECK_THROWS_AS(read_text(without(rosie, " kg")), bad_input);
}
