// The owner's page: plain words, one sheet, no harm by a name.
#include <cctype>
#include <cmath>

#include <pelage/answers/owner_page.hpp>
#include <pelage/trade/upkeep.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

// ---- reading ease ----
//
// Flesch R, A new readability yardstick, Journal of Applied Psychology 32(3):221-233, 1948 (from memory,
// not checked against a page): 206.835 - 1.015 * words per sentence - 84.6 * syllables per word.
//
// Rules of this counter: a word is a run of letters, digits, apostrophes and hyphens with a letter or
// digit in it; a sentence ends at . ! ? or : before a blank or the end, and at the end of a heading or
// line. Syllables: runs of a, e, i, o, u, y; less a silent e at the end (not "le" after a consonant),
// less the e of -ed but after d or t, and of -es but after s, x, z, c, g, h; at least one. A number
// counts one syllable for each digit, "mm" four (millimetres).

int syllables(std::string w) {
    for (char& c : w) {
        c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    }
    if (std::isdigit(static_cast<unsigned char>(w.front())) != 0) {
        return static_cast<int>(std::count_if(
            w.begin(), w.end(), [](unsigned char c) { return std::isdigit(c) != 0; }));
    }
    if (w == "mm") {
        return 4;
    }
    const auto vowel = [](char c) {
        return std::string_view("aeiouy").find(c) != std::string_view::npos;
    };
    int n = 0;
    for (std::size_t i = 0; i < w.size(); ++i) {
        n += vowel(w[i]) && (i == 0 || !vowel(w[i - 1])) ? 1 : 0;
    }
    const auto ends = [&](std::string_view e) { return w.size() > e.size() && w.ends_with(e); };
    const char before = w.size() > 2 ? w[w.size() - 3] : ' ';
    if (ends("e") && !vowel(w[w.size() - 2]) && !(ends("le") && !vowel(before))) {
        --n;
    } else if (ends("ed") && before != 'd' && before != 't' && !vowel(before)) {
        --n;
    } else if (ends("es") && std::string_view("sxzcgh").find(before) == std::string_view::npos &&
               !vowel(before)) {
        --n;
    }
    return std::max(n, 1);
}

double reading_ease(const std::string& text) {
    double words = 0;
    double parts = 0;
    double sentences = 0;
    std::string word;
    bool open = false;
    const auto end_word = [&] {
        if (std::any_of(word.begin(), word.end(),
                        [](unsigned char c) { return std::isalnum(c) != 0; })) {
            words += 1;
            parts += syllables(word);
            open = true;
        }
        word.clear();
    };
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const bool last = i + 1 == text.size() || text[i + 1] == ' ' || text[i + 1] == '\n';
        const bool stop = std::string_view(".!?:").find(c) != std::string_view::npos && last;
        if (std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '\'' || c == '-') {
            word += c;
        } else {
            end_word();
        }
        if ((stop || c == '\n') && open) {
            sentences += 1;
            open = false;
        }
    }
    end_word();
    sentences += open ? 1 : 0;
    return 206.835 - 1.015 * words / sentences - 84.6 * parts / words;
}

/// The page with each of its lines unwrapped: a heading or line of the page is one line.
std::string unwrapped(const std::string& page) {
    std::string out;
    for (std::size_t i = 0; i < page.size(); ++i) {
        const bool goes_on =
            page[i] == '\n' && page.compare(i, 3, "\n  ") == 0 &&
            page.compare(i, 5, "\n  - ") != 0 && page.compare(i, 5, "\n  [ ") != 0 &&
            !(i + 4 < page.size() && page[i + 4] == '.') && i > 0 && page[i - 1] != '\n';
        const std::size_t line = page.rfind('\n', i == 0 ? 0 : i - 1);
        const bool after_heading = page[line == std::string::npos ? 0 : line + 1] != ' ';
        out += goes_on && !after_heading ? ' ' : page[i];
    }
    return out;
}

/// Its words, a blank between them.
std::string words_of(const std::string& page) {
    std::string out;
    for (const char c : page) {
        const bool blank = c == ' ' || c == '\n';
        if (!blank || (!out.empty() && out.back() != ' ')) {
            out += blank ? ' ' : c;
        }
    }
    return out;
}

struct owners_page {
    groom plan;
    forecast ahead;
    std::vector<regrowth_option> ways;
    std::string text;
    std::string html;

    explicit owners_page(const plan_request& r) : plan(make_plan(r)) {
        io::owner_matter m{plan, r, std::nullopt, nullptr, nullptr};
        if (!plan.stopped()) {
            ahead = forecast_of(r, plan, false);
            ways = ways_to_grow_back(r, plan);
            m.when = ahead.when;
            m.ahead = &ahead;
            m.grow_back = &ways;
        }
        io::print_options o;
        o.today = r.today;
        text = io::text_of(document_of(m, o), o.units);
        html = io::html_of(document_of(m, o), o.units);
    }
};

plan_request demo_request(const dog& d) {
    const style* s = find(io::demo_salon().styles, d.style);
    if (s == nullptr) {
        s = find(io::reference().styles, d.style);
    }
    return {io::reference(),         io::demo_salon().rules, io::demo_salon().tools, d, *s,
            parse_date("2026-11-26")};
}

int lines_of(const std::string& text) {
    return static_cast<int>(std::count(text.begin(), text.end(), '\n'));
}

/// Every element that is opened is closed, in order.
bool well_formed(const std::string& html) {
    std::vector<std::string> open;
    for (std::size_t at = html.find('<'); at != std::string::npos; at = html.find('<', at + 1)) {
        const std::size_t end = html.find('>', at);
        if (end == std::string::npos) {
            return false;
        }
        std::string tag = html.substr(at + 1, end - at - 1);
        const bool closes = !tag.empty() && tag.front() == '/';
        tag = tag.substr(closes ? 1 : 0);
        tag = tag.substr(0, tag.find(' '));
        if (tag == "!DOCTYPE" || tag == "meta") {
            continue;
        }
        if (!closes) {
            open.push_back(tag);
        } else if (open.empty() || open.back() != tag) {
            return false;
        } else {
            open.pop_back();
        }
    }
    return open.empty();
}

}  // namespace

TEST_CASE("the counter of reading ease counts", "[owner]") {
    CHECK(syllables("comb") == 1);
    CHECK(syllables("table") == 2);
    CHECK(syllables("clipped") == 1);
    CHECK(syllables("matted") == 2);
    CHECK(syllables("brushes") == 2);
    CHECK(syllables("veterinarian") == 5);  // six said: ia counts one
    CHECK(syllables("14") == 2);
    CHECK(syllables("mm") == 4);
    // one sentence of six words of one syllable: 206.835 - 1.015 * 6 - 84.6
    CHECK_THAT(reading_ease("The cat sat on the mat."), match::WithinAbs(116.145, 1e-9));
    CHECK(reading_ease("Notwithstanding considerable deliberation, practitioners recommend "
                       "multidisciplinary evaluation.") < 0.0);
}

TEST_CASE("the owner's page of every dog of the salon: easy to read, one sheet", "[owner]") {
    for (const dog& d : io::demo_salon().dogs) {
        INFO(d.id);
        const owners_page p(demo_request(d));
        INFO(unwrapped(p.text));
        CHECK(reading_ease(unwrapped(p.text)) >= 65.0);
        // A4 at six lines an inch: 297 mm are 70 lines; two centimetres of margin leave 65
        CHECK(lines_of(p.text) <= 65);
        CHECK(well_formed(p.html));
        CHECK_THAT(p.text, match::ContainsSubstring("Your next visit"));
        CHECK_THAT(p.text, match::ContainsSubstring("Call a vet if"));
        // no blame
        for (const char* word : {"neglect", "should have", "fault", "failed", "you did not"}) {
            CHECK_THAT(p.text, !match::ContainsSubstring(word));
        }
    }
}

TEST_CASE("the page of a dog that goes to a vet says so, and plans nothing", "[owner]") {
    groom_table t;
    t.patient.name = "Fen";
    t.patient.signs = {stop_sign::hair_band};
    const owners_page p(t.request());
    CHECK_THAT(p.text, match::ContainsSubstring("Call a vet now"));
    CHECK_THAT(p.text, !match::ContainsSubstring("next visit"));
    CHECK_THAT(p.text, !match::ContainsSubstring("Signed"));
    CHECK(reading_ease(unwrapped(p.text)) >= 65.0);
}

TEST_CASE("a clip-down or a risk is signed for, nothing else", "[owner]") {
    groom_table t;
    CHECK_THAT(owners_page(t.request()).text, !match::ContainsSubstring("Signed"));
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(8))};
    CHECK_THAT(owners_page(t.request()).text, match::ContainsSubstring("Signed"));
    CHECK_THAT(owners_page(t.request()).text, match::ContainsSubstring("Mats may be clipped off"));
    t.patient.mats.clear();
    t.patient.age = life_stage::old;
    CHECK_THAT(owners_page(t.request()).text, match::ContainsSubstring("My dog is old"));
    t.patient.mats = {mat_in("back", mat_grade::tangle, mm(8))};
    t.patient.age.reset();
    CHECK_THAT(owners_page(t.request()).text, !match::ContainsSubstring("Signed"));
}

TEST_CASE("where to brush first: where this dog mats, and how far down", "[owner]") {
    groom_table t;
    t.patient.mats = {mat_in("left hock", mat_grade::tangle, mm(8))};
    const std::string text = owners_page(t.request()).text;
    CHECK_THAT(text, match::ContainsSubstring("heels of the back legs"));
    CHECK_THAT(text, match::ContainsSubstring("from the skin to the tip"));
    CHECK_THAT(text, match::ContainsSubstring("Mist the hair"));
    CHECK_THAT(text, match::ContainsSubstring("take a comb"));
    t.patient.sensitive = {"feet"};
    CHECK_THAT(owners_page(t.request()).text, match::ContainsSubstring("at the feet"));
    // a place it hates comes last, and by the small steps
    t.patient.sensitive = {"left hock"};
    const std::string shy = owners_page(t.request()).text;
    CHECK_THAT(shy, !match::ContainsSubstring("on this dog: heels"));
    CHECK_THAT(shy, match::ContainsSubstring("small steps: left heel"));
}

TEST_CASE("nobody is asked to brush what is sore, just clipped off or still matted", "[owner]") {
    groom_table t;
    t.patient.mats = {mat_in("back", mat_grade::pelt, mm(6)),
                      mat_in("tail", mat_grade::pelt, mm(1))};
    t.patient.skin = {{at("left flank"), skin_state::irritated}};
    const std::string text = words_of(owners_page(t.request()).text);
    const std::size_t start = text.find("Start where mats start");
    REQUIRE(start != std::string::npos);
    const std::string first = text.substr(start, text.find("Then do the rest", start) - start);
    for (const char* sore : {"back", "tail", "left flank"}) {
        INFO(sore);
        CHECK_THAT(first, !match::ContainsSubstring(sore));
    }
    CHECK_THAT(text, match::ContainsSubstring("Mats come off short here: back."));
    CHECK_THAT(text, match::ContainsSubstring("till a vet has seen them: left flank."));
    CHECK_THAT(text, match::ContainsSubstring("Leave the mats here to us: tail."));
    // what is clipped off is not what mats first, and a mat still in isn't counted as fine
    CHECK_THAT(text, !match::ContainsSubstring("starts here: back"));
    CHECK_THAT(text, match::ContainsSubstring("as soon as what stops us today is settled"));
}

TEST_CASE("what was asked is what the owner said, not what came of it", "[owner]") {
    groom_table t;
    t.patient.coat = coat_class::double_long;
    const std::string page = owners_page(t.request()).text;
    const std::string asked = words_of(page);
    CHECK_THAT(asked, match::ContainsSubstring("You asked for this: test."));
    CHECK_THAT(asked, match::ContainsSubstring("So we did not clip it."));
    CHECK_THAT(asked, match::ContainsSubstring("loose soft hair combed out: body and legs."));
    CHECK_THAT(asked, match::ContainsSubstring("You may clip the thick coat."));
    CHECK(reading_ease(unwrapped(page)) >= 65.0);
    CHECK(lines_of(page) <= 65);
    // a beard on a short head is told
    groom_table beard;
    beard.says("muzzle", finish_by(finish::scissor, mm(50)));
    CHECK_THAT(words_of(owners_page(beard.request()).text),
               match::ContainsSubstring("head and ears 13 mm; muzzle 50 mm"));
}

TEST_CASE("mats that comb out cost nothing of the look", "[owner]") {
    groom_table t;
    t.patient.mats = {mat_in("tail", mat_grade::tangle, mm(8))};
    CHECK_THAT(owners_page(t.request()).text, match::ContainsSubstring("All of it. We found mats"));
    t.patient.mats = {mat_in("tail", mat_grade::pelt, mm(8))};
    CHECK_THAT(owners_page(t.request()).text,
               match::ContainsSubstring("Most of it. We found mats"));
}

TEST_CASE("the adult coat coming in wants brushing each day", "[owner]") {
    groom_table t;
    CHECK_THAT(owners_page(t.request()).text, !match::ContainsSubstring("Brush each day"));
    t.patient.coat_change = true;
    CHECK_THAT(owners_page(t.request()).text, match::ContainsSubstring("Brush each day"));
}

TEST_CASE("what more brushing would win is a later day, told only where it is later", "[owner]") {
    groom_table t;
    t.today = parse_date("2026-11-26");
    CHECK_THAT(words_of(owners_page(t.request()).text),
               match::ContainsSubstring("down to the skin, the next visit may wait until"));
    t.patient.brushed = {habit::daily, true};
    CHECK_THAT(words_of(owners_page(t.request()).text),
               !match::ContainsSubstring("may wait until"));
}

TEST_CASE("a page to the vet tells what the vet needs, and keeps no dog warm that may be hot",
          "[owner]") {
    groom_table t;
    t.patient.health = "thin, drinks a lot";
    t.patient.skin = {{at("left foreleg"), skin_state::broken}};
    t.patient.signs = {stop_sign::collapse};
    const std::string page = owners_page(t.request()).text;
    const std::string text = words_of(page);
    CHECK_THAT(text, match::ContainsSubstring("You told us: thin, drinks a lot."));
    CHECK_THAT(text, match::ContainsSubstring("sore or odd here: left foreleg"));
    CHECK_THAT(text, match::ContainsSubstring("Then go at once"));
    CHECK_THAT(text, !match::ContainsSubstring("Felt and sores"));
    CHECK_THAT(text, !match::ContainsSubstring(" warm, quiet"));
    CHECK_THAT(text, !match::ContainsSubstring("wash the coat"));
    CHECK(reading_ease(unwrapped(page)) >= 65.0);
    t.patient.signs = {stop_sign::swollen_ear};
    CHECK_THAT(owners_page(t.request()).text, match::ContainsSubstring("Ask to be seen today"));
}

namespace {

/// A sign of the stop list as a groomer sees it: what the page names, whether the vet is called now or
/// seen today, and a word of what is done until then.
struct sign_row {
    stop_sign sign;
    const char* seen;
    bool now;
    const char* done;
};

const std::vector<sign_row>& all_signs() {
    static const std::vector<sign_row> rows{
        {stop_sign::collapse, "collapses or cannot stand", true, "airway free"},
        {stop_sign::breath, "labours for breath", true, "loosen what is round its neck"},
        {stop_sign::gums, "gums are pale, blue or brick red", true, "out of the heat"},
        {stop_sign::overheated, "drools, is hot, weak or wobbly", true, "cool, not icy, water"},
        {stop_sign::bloat, "belly swells, hard and tight", true, "give it nothing"},
        {stop_sign::seizure, "has a seizure", true, "nothing into its mouth"},
        {stop_sign::bleeding, "bled for more than five minutes", true, "Press a clean pad"},
        {stop_sign::hair_band, "band of hair cuts into a leg", false, "Do not cut it away"},
        {stop_sign::embedded_collar, "collar or harness has grown in", false,
         "Leave it where it is"},
        {stop_sign::wounds, "maggots, pus or a rotten smell", false, "Clip no further"},
        {stop_sign::swollen_ear, "ear is swollen", false, "keep the head from shaking"},
        {stop_sign::painful_ear, "ear hurts and has discharge", false, "Leave the ear alone"},
        {stop_sign::ringworm, "Something catching is suspected", false, "Keep it from other dogs"},
        {stop_sign::unhandled, "cannot be handled awake", false, "do not sedate"},
        {stop_sign::much_skin, "broken over much of the dog", false, "No clipper, no scissors"}};
    return rows;
}

}  // namespace

TEST_CASE("every sign of the stop list, on the owner's page: what was seen, and how soon",
          "[owner]") {
    CHECK(all_signs().size() == stop_sign_names.size());
    for (const sign_row& one : all_signs()) {
        INFO(name(one.sign));
        groom_table t;
        t.patient.signs = {one.sign};
        const owners_page page(t.request());
        for (const std::string& text : {words_of(page.text), page.html}) {
            CHECK_THAT(text, match::ContainsSubstring(one.seen));
            CHECK_THAT(text, match::ContainsSubstring("Call a vet now"));
            CHECK((text.find("Then go at once.") != std::string::npos) == one.now);
            CHECK((text.find("Ask to be seen today.") != std::string::npos) == !one.now);
            CHECK_THAT(text, !match::ContainsSubstring("next visit"));
        }
        // beside a lesser sign the graver one decides, in any order
        t.patient.signs = {stop_sign::ringworm, one.sign, stop_sign::painful_ear};
        const std::string both = words_of(owners_page(t.request()).text);
        CHECK((both.find("Then go at once.") != std::string::npos) == one.now);
        CHECK_THAT(both, match::ContainsSubstring(one.seen));
    }
}

TEST_CASE("every sign of the stop list, on the groomer's plan: what is seen and done", "[owner]") {
    for (const sign_row& one : all_signs()) {
        INFO(name(one.sign));
        groom_table t;
        t.patient.signs = {one.sign};
        const groom g = t.plan();
        CHECK(g.blocks.empty());
        for (const bool trainee : {false, true}) {
            io::print_options o;
            o.trainee = trainee;
            const std::string text =
                words_of(io::text_of(document_of(g, std::nullopt, t.request(), o, beside{})));
            CHECK_THAT(text, match::ContainsSubstring("STOP"));
            CHECK_THAT(text, match::ContainsSubstring(one.seen));
            CHECK_THAT(text, match::ContainsSubstring(one.done));
            CHECK((text.find("veterinarian at once") != std::string::npos) == one.now);
            CHECK_THAT(text, match::ContainsSubstring("nothing is planned"));
        }
        const std::string json = io::json_of(g, std::nullopt, t.request(), {}, beside{});
        CHECK_THAT(json, match::ContainsSubstring(std::string(name(one.sign))));
    }
}

TEST_CASE("the page speaks of the brushing that is told, and of none that isn't", "[owner]") {
    groom_table t;
    t.today = parse_date("2026-11-26");
    const auto text = [&] { return words_of(owners_page(t.request()).text); };
    CHECK_THAT(text(), match::ContainsSubstring("brushed as you do now"));
    t.patient.brushed = {habit::none, false};
    CHECK_THAT(text(), !match::ContainsSubstring("as you do now"));
    CHECK_THAT(text(), match::ContainsSubstring("only because it was combed out"));
    const auto date_of = [&] {
        const std::string all = text();
        const auto at = all.find("Please come back by");
        REQUIRE(at != std::string::npos);
        return all.substr(at, all.find("If you brush", at) - at);
    };
    const std::string unbrushed = date_of();
    // on the surface counts as none: the same date, and the same that it hangs on
    t.patient.brushed = {habit::weekly, false};
    CHECK(date_of() == unbrushed);
    t.patient.brushed = {habit::daily, false};
    CHECK(date_of() == unbrushed);
    CHECK_THAT(text(), !match::ContainsSubstring("as you do now"));
    // nobody said: as the sheet assumes, and that is what it hangs on
    t.patient.brushing_said = false;
    t.sheet.upkeep = "weekly to the skin";
    assume_upkeep(t.patient, t.sheet);
    CHECK_THAT(text(), !match::ContainsSubstring("you do now"));
    CHECK_THAT(text(), match::ContainsSubstring(", if you brush once a week down to the skin"));
}

TEST_CASE("nobody says that a comb went through where nobody looked", "[owner]") {
    groom_table t;
    CHECK_THAT(words_of(owners_page(t.request()).text),
               match::ContainsSubstring("if a fine comb goes through down to the skin"));
    t.patient.comb_checked = true;  // some day, nobody knows which
    CHECK_THAT(words_of(owners_page(t.request()).text),
               match::ContainsSubstring("if a fine comb goes through down to the skin"));
    t.today = *parse_date("2026-11-30");
    t.patient.combed_on = *parse_date("2026-11-28");
    CHECK_THAT(words_of(owners_page(t.request()).text),
               match::ContainsSubstring("if a fine comb goes through down to the skin"));
    t.patient.combed_on = t.today;
    CHECK_THAT(words_of(owners_page(t.request()).text),
               match::ContainsSubstring("A fine comb went through the coat"));
}

TEST_CASE("no study on an owner's page, and no box beside what is agreed", "[owner]") {
    groom_table t;
    t.patient.coat = coat_class::double_long;
    for (const bool agreed : {false, true}) {
        t.patient.consents =
            agreed ? std::vector<std::string>{"clip-jacket"} : std::vector<std::string>{};
        const std::string text = words_of(owners_page(t.request()).text);
        CHECK_THAT(text, !match::ContainsSubstring("study"));
        CHECK_THAT(text, !match::ContainsSubstring("2014"));
        CHECK((text.find("[ ]") != std::string::npos) == !agreed);
        CHECK((text.find("You have agreed to this") != std::string::npos) == agreed);
        CHECK((text.find("Signed") != std::string::npos) == !agreed);
    }
}

TEST_CASE("whose page it is stands on it, where it is given", "[owner]") {
    groom_table t;
    const groom g = t.plan();
    io::owner_matter m{g, t.request(), std::nullopt, nullptr, nullptr, {}};
    CHECK_THAT(io::text_of(document_of(m, {})), !match::ContainsSubstring("elephone"));
    CHECK_THAT(io::text_of(document_of(m, {})), !match::ContainsSubstring("Groomer"));
    m.from = {"The Wet Dog <invented>", "000 0000", "Ann"};
    CHECK_THAT(
        io::text_of(document_of(m, {})),
        match::ContainsSubstring("The Wet Dog <invented>, telephone 000 0000. Groomer: Ann."));
    CHECK_THAT(io::html_of(document_of(m, {})),
               match::ContainsSubstring("The Wet Dog &lt;invented&gt;"));
    m.from.name.clear();
    CHECK_THAT(io::text_of(document_of(m, {})), match::ContainsSubstring("Telephone 000 0000."));
}

TEST_CASE("lumps, scabs and fleas in the owner's words", "[owner]") {
    groom_table t;
    t.patient.skin = {{at("left ribs"), skin_state::lump, mm(10), true},
                      {at("chest"), skin_state::lump},
                      {at("rump"), skin_state::fleas}};
    const std::string page = owners_page(t.request()).text;
    const std::string text = words_of(page);
    CHECK_THAT(text, match::ContainsSubstring("All of it"));
    CHECK_THAT(text, match::ContainsSubstring("Left ribs: the lump you know of, 10 mm"));
    CHECK_THAT(text, match::ContainsSubstring("Chest: a lump. We go around it"));
    CHECK_THAT(text, match::ContainsSubstring("Please show it to a vet"));
    CHECK_THAT(text, match::ContainsSubstring("We saw fleas (rump)"));
    CHECK(reading_ease(unwrapped(page)) >= 65.0);
}

TEST_CASE("the owner's page calls no dog a biter, but tells what was told of its health",
          "[owner]") {
    groom_table t;
    t.patient.alerts = {{alert_kind::bites, {}},
                        {alert_kind::muzzle, {}},
                        {alert_kind::two_people, {}},
                        {alert_kind::faints, {}},
                        {alert_kind::allergic, "oatmeal"}};
    t.patient.note = "Bites at nails";
    const std::string text = words_of(owners_page(t.request()).text);
    for (const char* word : {"bites", "Bites", "muzzle,", "two people", "ALERT"}) {
        INFO(word);
        CHECK_THAT(text, !match::ContainsSubstring(word));
    }
    CHECK_THAT(text, match::ContainsSubstring("You told us: it faints and it can't bear oatmeal"));
}

TEST_CASE("hostile names do no harm", "[owner]") {
    groom_table t;
    t.patient.name =
        "<script>alert('x')</script>\"&\xE2\x80\xAE"
        "lleB";
    const std::string html = owners_page(t.request()).html;
    CHECK_THAT(html, !match::ContainsSubstring("<script"));
    CHECK_THAT(html, !match::ContainsSubstring("\xE2\x80\xAE"));
    CHECK_THAT(html, match::ContainsSubstring("&lt;script&gt;alert(&#39;x&#39;)"));
    CHECK(well_formed(html));
    t.patient.name = std::string(2000, 'W');
    CHECK(lines_of(owners_page(t.request()).text) <= 65);
    t.patient.name = "</title></style><img src=x onerror=y>";
    CHECK(well_formed(owners_page(t.request()).html));
}

TEST_CASE("the page needs nothing from elsewhere", "[owner]") {
    for (const dog& d : io::demo_salon().dogs) {
        const std::string html = owners_page(demo_request(d)).html;
        for (const char* odd : {"http:", "https:", "src=", "href=", "url(", "@import", "<script"}) {
            INFO(d.id << ", " << odd);
            CHECK(html.find(odd) == std::string::npos);
        }
        CHECK_THAT(html, match::ContainsSubstring("@page{size:A4"));
    }
}
