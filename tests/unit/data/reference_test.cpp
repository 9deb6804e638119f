// The embedded reference: that it reads clean, that it says what the trade and the standards say, and
// that a slip in it would be noticed.
#include <algorithm>
#include <set>
#include <sstream>

#include <pelage/data/embedded.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/place_words.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

using io::document_text;

std::vector<document_text> embedded_texts() {
    std::vector<document_text> out;
    for (const io::embedded_file& f : io::embedded_reference()) {
        out.push_back({std::string(f.path), std::string(f.text)});
    }
    return out;
}

std::string in_lines(const diagnostics& all) {
    std::ostringstream out;
    for (const diagnostic& d : all) {
        out << d.file << ':' << d.line << ':' << d.column << ": " << d.text << '\n';
    }
    return out.str();
}

diagnostics faults_of(const std::vector<document_text>& files) {
    try {
        (void)io::read_reference(files);
    } catch (const bad_input& wrong) {
        return wrong.all();
    }
    return {};
}

/// The reference with the first `from` in a file replaced; fails the test if it isn't in it.
std::vector<document_text> edited(const std::string& file, const std::string& from,
                                  const std::string& to) {
    auto files = embedded_texts();
    for (document_text& d : files) {
        if (d.name == "reference/" + file) {
            const auto at = d.text.find(from);
            REQUIRE(at != std::string::npos);
            d.text.replace(at, from.size(), to);
        }
    }
    return files;
}

const blade& blade_of(std::string_view id) {
    const blade* b = find(io::reference().blades, id);
    INFO("blade " << id);
    REQUIRE(b != nullptr);
    return *b;
}

void check_stated(const std::string& id, double best, double low, double high) {
    INFO("blade " << id);
    const blade& b = blade_of(id);
    CHECK(b.stated.best == mm(best));
    CHECK(b.stated.low == mm(low));
    CHECK(b.stated.high == mm(high));
}

/// What a reference sheet asks of a place: its length, or what is etched on its blade.
std::optional<length> asked(const std::string& sheet, const place& p) {
    const reference_data& c = io::reference();
    const style* s = find(c.styles, sheet);
    INFO("sheet " << sheet);
    REQUIRE(s != nullptr);
    const kit no_tools;
    const dog any_dog;
    const plan_request r{c, c.rules, no_tools, any_dog, *s, std::nullopt};
    const instruction i = instruction_for(r, p);
    return i.blade ? std::optional{blade_of(*i.blade).stated.best} : i.target;
}

/// What it asks of every zone of the groups, both sides; zones left as they are don't count.
std::vector<std::pair<std::string, length>> asked_of(const std::string& sheet,
                                                     const std::set<group>& groups) {
    std::vector<std::pair<std::string, length>> out;
    const body& b = io::reference().dog_body;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        for (const side s : {side::left, side::right}) {
            const auto l = asked(sheet, {z, b.zones[z].paired ? s : side::both});
            if (groups.count(b.zones[z].where) != 0 && l) {
                out.emplace_back(b.zones[z].id, *l);
            }
        }
    }
    REQUIRE_FALSE(out.empty());
    return out;
}

const std::set<group> coat_groups{group::head, group::body, group::legs, group::tail, group::feet};

std::set<std::string> prep_blades(const std::string& id) {
    const zone* z = find(io::reference().dog_body.zones, id);
    REQUIRE(z != nullptr);
    return {z->prep_blades.begin(), z->prep_blades.end()};
}

}  // namespace

TEST_CASE("the embedded reference reads clean", "[reference]") {
    const diagnostics wrong = faults_of(embedded_texts());
    INFO(in_lines(wrong));
    CHECK(wrong.empty());
    CHECK(io::reference().dog_body.zones.size() >= 24);
    CHECK(io::reference().styles.size() >= 10);
}

TEST_CASE("the demo salon reads clean and is marked as invented", "[reference]") {
    const salon_files& s = io::demo_salon();
    CHECK(s.invented);
    CHECK_FALSE(s.dogs.empty());
    for (const dog& d : s.dogs) {
        INFO(d.id);
        CHECK(d.invented);
        CHECK(find(s.styles, d.style) != nullptr);
    }
    CHECK(&io::demo_salon() == &io::demo_salon());
    CHECK(&io::reference() == &io::reference());
}

TEST_CASE("every word of a zone finds that zone", "[reference]") {
    const body& b = io::reference().dog_body;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        const std::vector<std::string> words{b.zones[z].id, b.zones[z].title};
        for (const std::string& w : words) {
            INFO(w);
            const auto s = select(b, w);
            REQUIRE(s.has_value());
            CHECK(s->places == std::vector<place>{{z, side::both}});
        }
    }
}

TEST_CASE("blades state what the trade says they state", "[reference][trade]") {
    // trade check T6; common practice, no source
    check_stated("7F", 3.2, 3.0, 4.0);
    check_stated("5F", 6.3, 6.0, 6.4);
    check_stated("4F", 9.5, 8.0, 9.6);
    check_stated("3F", 13.0, 12.7, 13.0);
    check_stated("10", 1.5, 1.5, 2.0);
    CHECK(blade_of("15").stated.best == mm(1.2));
    CHECK(blade_of("30").stated.best == mm(0.5));
    CHECK(blade_of("40").stated.best == mm(0.25));
    CHECK(blade_of("9").stated.best == mm(2.0));
}

TEST_CASE("the higher the number of a blade, the shorter the hair", "[reference][trade]") {
    // trade check T7; common practice, no source
    const std::vector<std::string> strict{"40", "30", "15", "10", "9", "8", "7", "5", "4", "3"};
    for (std::size_t i = 1; i < strict.size(); ++i) {
        INFO(strict[i - 1] << " and " << strict[i]);
        CHECK(blade_of(strict[i - 1]).stated.best < blade_of(strict[i]).stated.best);
    }
    const std::vector<std::string> never_falling{"50", "40", "30", "15", "10",   "9", "8.5", "8",
                                                 "7",  "6",  "5",  "4",  "3.75", "3", "2",   "1"};
    for (std::size_t i = 1; i < never_falling.size(); ++i) {
        INFO(never_falling[i - 1] << " and " << never_falling[i]);
        CHECK(blade_of(never_falling[i - 1]).stated.best <= blade_of(never_falling[i]).stated.best);
    }
    CHECK(blade_of("8.5").stated.best == blade_of("8").stated.best);
    CHECK(blade_of("3.75").stated.best == blade_of("3").stated.best);
    CHECK(blade_of("2").stated.best == blade_of("5/8 long").stated.best);
}

TEST_CASE("F leaves the length of the plain number", "[reference][trade]") {
    // trade check T8; common practice, no source
    for (const std::string plain : {"8", "7", "6", "5", "4", "3"}) {
        INFO(plain);
        const blade& p = blade_of(plain);
        const blade& f = blade_of(plain + "F");
        CHECK(f.stated.best == p.stated.best);
        CHECK(f.stated.low == p.stated.low);
        CHECK(f.stated.high == p.stated.high);
        CHECK(f.cut == teeth::full);
        CHECK(skips(p));
    }
}

TEST_CASE("a toe blade's fraction is its width", "[reference][trade]") {
    // common practice, no source: about 0.8 mm are left, a twentieth of the long blade's 16 mm
    CHECK(blade_of("5/8 toe").stated.best == mm(0.8));
    CHECK(blade_of("7/8 toe").stated.best == mm(0.8));
    CHECK(blade_of("5/8 long").stated.best == mm(16));
    CHECK(find(io::reference().blades, "5/8") == nullptr);
}

TEST_CASE("prep zones have the customary blades", "[reference][trade]") {
    // trade check T15; common practice, no source. A 30 on the sanitary area is for show only.
    CHECK(prep_blades("sanitary") == std::set<std::string>{"10", "9", "15"});
    CHECK(prep_blades("pads") == std::set<std::string>{"40", "30", "15", "10"});
    for (const zone& z : io::reference().dog_body.zones) {
        if (z.where == group::prep) {
            INFO(z.id);
            REQUIRE_FALSE(z.prep_blades.empty());
            CHECK(z.prep_blades.front() == "10");
        }
    }
}

TEST_CASE("skip teeth go only where the skin is firm", "[reference][trade]") {
    // common practice, no source
    const std::set<std::string> firm{"neck", "collar-line", "withers", "shoulder", "back",
                                     "ribs", "loin",        "rump",    "thigh"};
    for (const zone& z : io::reference().dog_body.zones) {
        INFO(z.id);
        CHECK(z.has(zone_use::skip_teeth) == (firm.count(z.id) != 0));
        CHECK((!z.has(zone_use::skip_teeth) || z.cover == skin::firm));
    }
}

TEST_CASE("the retriever clip is nowhere over an inch", "[reference][trade]") {
    // trade check T2: AKC breed standard, Portuguese Water Dog
    for (const auto& [id, l] : asked_of("retriever-clip", coat_groups)) {
        INFO(id);
        CHECK(l <= inch(1));
    }
}

TEST_CASE("a Lagotto is nowhere over an inch and a half but on the head", "[reference][trade]") {
    // trade check T3: AKC breed standard, Lagotto Romagnolo
    for (const auto& [id, l] :
         asked_of("lagotto", {group::body, group::legs, group::tail, group::feet})) {
        INFO(id);
        CHECK(l <= inch(3, 2));
    }
}

TEST_CASE("a Standard Schnauzer's back is three quarters to two inches", "[reference][trade]") {
    // trade check T4: AKC breed standard, Standard Schnauzer
    const auto back = select(io::reference().dog_body, "back");
    REQUIRE(back.has_value());
    const auto l = asked("standard-schnauzer", back->places.front());
    REQUIRE(l.has_value());
    CHECK(*l >= inch(3, 4));
    CHECK(*l <= inch(2));
}

TEST_CASE("a poodle's sporting clip is short on the body, its legs no shorter",
          "[reference][trade]") {
    // trade check T5: AKC breed standard, Poodle (from memory)
    length longest_body{};
    for (const auto& [id, l] : asked_of("poodle-sporting", {group::body})) {
        INFO(id);
        CHECK(l <= inch(1));
        longest_body = longer(longest_body, l);
    }
    for (const auto& [id, l] : asked_of("poodle-sporting", {group::legs})) {
        INFO(id);
        CHECK(l >= longest_body);
    }
}

TEST_CASE("every published figure names a source that is there", "[reference]") {
    const reference_data& c = io::reference();
    CHECK(c.figures.size() > 200);
    std::size_t published = 0;
    std::set<std::string> keys;
    const auto check = [&](const std::string& what, const evidence& e) {
        INFO(what);
        if (e.how == basis::published) {
            ++published;
            CHECK(find(c.sources, e.from) != nullptr);
        }
    };
    for (const listed_figure& f : c.figures) {
        check(f.key, f.why);
        CHECK(keys.insert(f.key).second);
        CHECK_FALSE(f.value.empty());
    }
    for (const caution& w : c.cautions) {
        check("caution " + w.id, w.why);
    }
    for (const style& s : c.styles) {
        check("sheet " + s.id, s.why);
    }
    CHECK(published > 0);
    CHECK(keys.count("blades/7F/stated") == 1);
    CHECK(keys.count("zones/ear/matting") == 1);
    CHECK(keys.count("prices/scissor") == 1);
}

TEST_CASE("a figure is listed with its unit, spread and basis", "[reference]") {
    const auto& all = io::reference().figures;
    const auto at = std::find_if(
        all.begin(), all.end(), [](const listed_figure& f) { return f.key == "blades/7F/stated"; });
    REQUIRE(at != all.end());
    CHECK(at->value == "3.2 mm (3 to 4)");
    CHECK(at->why.how == basis::practice);
}

TEST_CASE("a slip in the reference is noticed", "[reference]") {
    struct slip {
        std::string file, from, to, told;
    };
    const std::vector<slip> slips{
        {"growth.toml", "source = \"kalchofner-2014\"", "source = \"kalchofner-2041\"",
         "did you mean \"kalchofner-2014\"?"},
        {"growth.toml", "source = \"kalchofner-2014\"\n", "",
         "a published figure needs its source"},
        {"sources.toml", "id = \"nist-strd\"", "id = \"nist-sp811\"", "the same source twice"},
        {"blades.toml", "id = \"40\"", "id = \"50\"", "the same blade twice"},
        {"blades.toml", "low = \"0.05 mm\"", "low = \"0.5 mm\"", "write them in rising order"},
        {"blades.toml", "best = \"0.2 mm\"", "best = 0.2", "write best = \"0.2 mm\""},
        {"combs.toml", "id = \"13 mm\"", "id = \"12 mm\"", "write both alike"},
        {"coats.toml", "id = \"drop\"", "id = \"wavy\"", "right is drop"},
        {"coats.toml", "lay = { best = \"30 deg\"", "lay = { best = \"0 deg\"", "right is over 0"},
        {"coats.toml", "median = \"0.22 mm/day\"", "median = 0.22",
         "write median = \"0.22 mm/day\""},
        {"cut.toml", "id = \"comb-share\"", "id = \"comb-shore\"", "did you mean \"comb-share\"?"},
        {"cut.toml", "id = \"comb-share\"", "id = \"comb-shore\"", "found no \"comb-share\""},
        {"cut.toml", "best = \"6.3 mm\"", "best = \"3.1 mm\"", "write it below"},
        {"prices.toml", "best = \"0.5 min\"", "best = \"0.5 mm\"", "not a time at the table"},
        {"matting.toml", "basis = \"assumption\"", "basis = \"hunch\"", "unknown basis"},
        {"zones.toml", "a = \"neck\"", "a = \"nekc\"", "did you mean \"neck\"?"},
        {"zones.toml", "a = \"neck\"\nb = \"collar-line\"", "a = \"neck\"\nb = \"neck\"",
         "named once"},
        {"zones.toml", "title = \"loin\"", "title = \"back\"", "a word that means two zones"},
        {"places.toml", "words = [\"crest\"", "words = [\"saddle\"", "a word that stands for"},
        {"places.toml", "words = [\"crest\"", "words = [\"left crest\"", "without a side"},
        {"places.toml", "zones = [\"withers\"]", "zones = [\"wither\"]", "unknown zone"},
        {"places.toml", "means = [\"rump\"", "means = [\"rumpp\"", "the dog has no such place"},
        {"breeds.toml", "words = [\"cat\"", "words = [\"pug\"", "names a breed as well"},
        {"zones.toml", "prep_blades = [\"10\"]", "prep_blades = [\"5/8\"]", "\"5/8 long\""},
        {"zones.toml", "one = \"{side} ear\"", "one = \"an ear\"", "what one side is called"},
        {"zones.toml", "uses = [\"jacket\"", "uses = [\"jackett\"", "did you mean \"jacket\"?"},
        {"inheritance.toml", "id = \"furnishings\"\ngene", "id = \"curl\"\ngene",
         "each locus stands once, in one order"},
        {"inheritance.toml", "classes = [\"wire\"]", "classes = [\"wirey\"]",
         "did you mean \"wire\"?"},
        {"inheritance.toml", "one_copy = [\"wavy\"]", "one_copie = [\"wavy\"]",
         "did you mean \"one_copy\"?"},
        {"inheritance.toml", "long_hair = 1", "long_hair = 3", "right is 0 to 2"},
        {"inheritance.toml", "source = \"dierks-2013\"", "source = \"dierks-2031\"",
         "did you mean \"dierks-2013\"?"},
        {"breeds.toml", "id = \"bichon frise\"", "id = \"poodle\"", "the same breed twice"},
        {"breeds.toml", "id = \"poodle\"", "id = \"Poodle\"", "write it in lower case"},
        {"breeds.toml", "id = \"poodle\"", "id = \"noodle\"", "no breed is called so"},
        {"breeds.toml", "curl = 1\nalso", "curl = 1.5\nalso", "right is from 0 to 1"},
        {"breeds.toml", "curl = 1\nalso", "also", "\"curl\" is missing"},
        {"breeds.toml", "mix = \"poodle x cocker spaniel\"", "mix = \"poodle\"",
         "a named cross is of two breeds"},
        {"cautions.toml", "danger = ", "danger = 1", "right is 1 to 5"},
        {"styles/lagotto.toml", "all = { length = \"25 mm\"", "all = { length = \"2 in\"",
         "breaks the sheet's own limit"},
        {"styles/one-length.toml", "all = {", "neck = {", "must say something of every zone"},
        {"styles/one-length.toml", "id = \"one-length\"", "id = \"two-length\"",
         "a sheet's file bears its id"},
    };
    for (const slip& s : slips) {
        INFO(s.file << ": " << s.from << " -> " << s.to);
        const diagnostics wrong = faults_of(edited(s.file, s.from, s.to));
        INFO(in_lines(wrong));
        CHECK(std::any_of(wrong.begin(), wrong.end(), [&](const diagnostic& d) {
            return d.file == "reference/" + s.file && d.line > 0 &&
                   d.text.find(s.told) != std::string::npos;
        }));
    }
}

TEST_CASE("a zone without a seam hangs in the air", "[reference]") {
    auto files = embedded_texts();
    for (document_text& d : files) {
        if (d.name == "reference/zones.toml") {
            d.text +=
                "\n[[zone]]\nid = \"wing\"\ntitle = \"wing\"\ngroup = \"body\"\nskin = \"thin\"\n"
                "uses = []\nmatting = 1\nclip_time = \"1 min\"\nweight = 1\nstroke = "
                "\"out\"\nsweep = \"out\"\nagainst = \"in\"\n"
                "basis = \"assumption\"\n";
        }
    }
    diagnostics wrong = faults_of(files);
    INFO(in_lines(wrong));
    REQUIRE(wrong.size() == 2);
    CHECK(wrong[0].text.find("every zone is drawn by one kind of piece") == 0);
    wrong.erase(wrong.begin());
    CHECK(wrong[0].text.find("a zone that hangs in the air; found no way over seams") == 0);
}

TEST_CASE("files of the reference are all there and no others", "[reference]") {
    auto files = embedded_texts();
    std::erase_if(files, [](const document_text& d) { return d.name == "reference/cut.toml"; });
    files.push_back({"reference/cuts.toml", "format = 1\n"});
    const diagnostics wrong = faults_of(files);
    INFO(in_lines(wrong));
    REQUIRE(wrong.size() == 2);
    CHECK(wrong[0].file == "reference/cut.toml");
    CHECK(wrong[0].code == errc::missing);
    CHECK(wrong[1].file == "reference/cuts.toml");
    CHECK(wrong[1].code == errc::unknown);
}
