// A document as text, HTML and CSV.
#include <sstream>
#include <string>
#include <vector>

#include <pelage/answers/document.hpp>

#include "answers/layout.hpp"
#include "catch.hpp"

using namespace pelage;
using io::csv_of;
using io::document;
using io::html_of;
using io::text_of;
using io::typed_table;

namespace {

document of_table(typed_table t) {
    document d{"Lengths"};
    d.show(std::move(t));
    return d;
}

/// One zone left at 13 mm, of a blade and a comb, back in 42 days.
document one_row() {
    return of_table(
        {{"zone", "left at", "leaves", "takes", "back", "on", "met", "chance"},
         {{"back", mm(12.7), finished{mm(6.35), mm(12.7), mm(25.4)}, minutes(4.5), day(42.0),
           *parse_date("2026-12-24"), io::percentage{999, 1000}, io::likelihood{0.9}}}});
}

}  // namespace

TEST_CASE("a cell is written in the unit asked for, wherever it goes") {
    const document d = one_row();
    CHECK_THAT(text_of(d), match::ContainsSubstring("13 mm"));
    CHECK_THAT(text_of(d, length_unit::inch), match::ContainsSubstring("1/2 in"));
    CHECK_THAT(text_of(d, length_unit::inch), !match::ContainsSubstring("mm"));
    CHECK_THAT(html_of(d, length_unit::inch), match::ContainsSubstring(">1/2 in</td>"));
    CHECK(csv_of(d) ==
          "zone,left_at_mm,leaves_low_mm,leaves_best_mm,leaves_high_mm,takes_min,back_days,on,"
          "met_percent,chance\r\n"
          "back,12.70,6.35,12.70,25.40,4.5,42.0,2026-12-24,99.9,0.900\r\n");
    CHECK(csv_of(d, length_unit::inch) ==
          "zone,left_at_in,leaves_low_in,leaves_best_in,leaves_high_in,takes_min,back_days,on,"
          "met_percent,chance\r\n"
          "back,0.5000,0.2500,0.5000,1.0000,4.5,42.0,2026-12-24,99.9,0.900\r\n");
}

TEST_CASE("a share never says 100 where something is missing") {
    CHECK_THAT(text_of(of_table({{"met"}, {{io::percentage{99999, 100000}}}})),
               match::ContainsSubstring("99.9 %"));
    CHECK_THAT(text_of(of_table({{"met"}, {{io::percentage{1, 0}}}})),
               match::ContainsSubstring("0.0 %"));
}

TEST_CASE("what people read in place of a number isn't what programs read") {
    const document d = of_table({{"back"}, {{io::cell(day(0.5), "past")}, {day(31.9)}}});
    CHECK_THAT(text_of(d), match::ContainsSubstring("past"));
    CHECK_THAT(text_of(d), match::ContainsSubstring("31 days"));
    CHECK(csv_of(d) == "back_days\r\n0.5\r\n31.9\r\n");
}

TEST_CASE("a word among lengths stays a word, and a range without it empty") {
    const document d =
        of_table({{"leaves"}, {{"longer than it grows"}, {finished{mm(1.0), mm(2.0), mm(3.0)}}}});
    CHECK(csv_of(d) ==
          "leaves_low_mm,leaves_best_mm,leaves_high_mm\r\n,longer than it grows,\r\n"
          "1.00,2.00,3.00\r\n");
}

TEST_CASE("CSV is quoted as RFC 4180 says") {
    const document d = of_table({{"a, b", "c"}, {{"say \"no\"", "two\nlines"}}});
    CHECK(csv_of(d) == "\"a,_b\",c\r\n\"say \"\"no\"\"\",\"two\nlines\"\r\n");
}

TEST_CASE("a text that a spreadsheet would take for a formula stands behind an apostrophe") {
    for (const char* evil : {"=1+1", "=1", "+1+1", "-1-cmd", "-", "@sum(a1)", "\tx", "\rx"}) {
        const std::string text = csv_of(of_table({{"dog"}, {{std::string(evil)}}}));
        INFO(text);
        CHECK_THAT(text, match::ContainsSubstring("'" + std::string(evil)));
    }
    // what is no formula stays as it is, and so does a number below zero
    CHECK(csv_of(of_table({{"dog", "off", "more"}, {{"a=b", mm(-1.0), "+2.5"}}})) ==
          "dog,off_mm,more\r\na=b,-1.00,+2.5\r\n");
    // people see no apostrophe
    CHECK_THAT(text_of(of_table({{"dog"}, {{"=1+1"}}})), !match::ContainsSubstring("'"));
}

TEST_CASE("what more is said of a step stands in its item, and a step keeps its number") {
    document d{"A plan"};
    d.add({io::line_as::step, "blade 10: groin", "  3  ", 0, 5});
    d.add({io::line_as::detail, "forwards", "stroke: ", 5, 7});
    d.add({io::line_as::step, "scissors: feet", "  4  ", 0, 5});
    CHECK(text_of(d) == "  3  blade 10: groin\n     stroke: forwards\n  4  scissors: feet\n");
    CHECK_THAT(html_of(d),
               match::ContainsSubstring(
                   "<ol>\n<li value=\"3\">blade 10: groin<br><span class=\"under\"><b>stroke:</b> "
                   "forwards</span></li>\n"
                   "<li value=\"4\">scissors: feet</li>\n</ol>"));
}

TEST_CASE("boxes to tick stand beside one another where they fit") {
    document d;
    d.add({io::line_as::box, "1 one", "[ ] ", 2, 8});
    d.add({io::line_as::box, "2 two", "[ ] ", 2, 8});
    CHECK(text_of(d) == "  [ ] 1 one   [ ] 2 two\n");
    CHECK(text_of(d, length_unit::mm, 22) == "  [ ] 1 one\n  [ ] 2 two\n");
}

TEST_CASE("two tables of one answer have an empty line between them") {
    document d = of_table({{"a"}, {{"1"}}});
    d.open("More");
    d.show(io::typed_table{{"b"}, {{"2"}}});
    CHECK(csv_of(d) == "a\r\n1\r\n\r\nb\r\n2\r\n");
}

TEST_CASE("a table for programs is not on the page, one for people not in the spreadsheet") {
    document d = of_table({{"all of it"}, {{"x"}}, {}, io::shown_to::programs});
    d.show(io::typed_table{{"in short"}, {{"y"}}, {}, io::shown_to::people});
    CHECK_THAT(text_of(d), !match::ContainsSubstring("all of it"));
    CHECK_THAT(html_of(d), !match::ContainsSubstring("all of it"));
    CHECK(csv_of(d) == "all_of_it\r\nx\r\n");
}

TEST_CASE("an empty table is nowhere") {
    const document d = of_table({{"zone", "left at"}, {}});
    CHECK(text_of(d).empty());
    CHECK(csv_of(d).empty());
    CHECK_THAT(html_of(d), !match::ContainsSubstring("<table>"));
}

TEST_CASE("columns stand under one another whatever the width of a character") {
    const document d =
        of_table({{"dog", "coat"}, {{"\u72ac\u72ac", "wavy"}, {"Zo\u00eb", "curly"}}});
    CHECK(text_of(d) == "  dog   coat\n  \u72ac\u72ac  wavy\n  Zo\u00eb   curly\n");
}

TEST_CASE("nothing that somebody wrote is markup") {
    const std::string evil = "<script>alert('x' & \"y\")</script>\u202e";
    document d{evil + ": a page", evil};
    d.open(evil);
    d.say_of(evil + ": ", evil);
    d.item(evil);
    d.caution(evil);
    d.copied(evil);
    d.show(io::typed_table{{evil}, {{evil}}});
    d.foot = evil;
    const std::string page = html_of(d);
    CHECK_THAT(page, !match::ContainsSubstring("<script"));
    CHECK_THAT(page, !match::ContainsSubstring("\u202e"));
    CHECK_THAT(page, !match::ContainsSubstring("'x'"));
    CHECK_THAT(page,
               match::ContainsSubstring("&lt;script&gt;alert(&#39;x&#39; &amp; &quot;y&quot;)"));
}

TEST_CASE("a line is of its list in HTML, and has its mark in text") {
    document d{"Steps"};
    d.open("Do");
    for (const char* what : {"brush", "bathe"}) {
        d.add({io::line_as::step, what, {}, 2, 5});
    }
    d.caution("never over a mat");
    d.add({io::line_as::box, "agreed", "[ ] ", 2, 6});
    CHECK(text_of(d) == "Do\n  1. brush\n  2. bathe\n! never over a mat\n  [ ] agreed\n");
    CHECK_THAT(html_of(d),
               match::ContainsSubstring("<ol>\n<li>brush</li>\n<li>bathe</li>\n</ol>\n"
                                        "<p class=\"caution\">never over a mat</p>\n"
                                        "<ul class=\"boxes\">\n<li>agreed</li>\n</ul>"));
}

TEST_CASE("what is done between steps is no step's, and text has it like a word to one") {
    document d{"A plan"};
    d.add({io::line_as::step, "blade 10: groin", " 1  ", 0, 4});
    d.add({io::line_as::between, "bath and dry", {}, 4, 6});
    d.add({io::line_as::step, "scissors: feet", " 2  ", 0, 4});
    CHECK(text_of(d) == " 1  blade 10: groin\n    bath and dry\n 2  scissors: feet\n");
    CHECK_THAT(html_of(d),
               match::ContainsSubstring("</ol>\n<p class=\"between\">bath and dry</p>\n<ol>\n"
                                        "<li value=\"2\">scissors: feet</li>"));
}

TEST_CASE("what hurts nobody at once isn't in bold; what heads the page isn't said twice") {
    document d{"Rex: Lamb", "Rex"};
    d.add({io::line_as::headed, "curly coat", "Rex: Lamb, ", 0, 2});
    d.add({io::line_as::notice, "local rules", "As ever: ", 0, 2});
    CHECK(text_of(d) == "Rex: Lamb, curly coat\nAs ever: local rules\n");
    const std::string page = html_of(d);
    CHECK_THAT(page, match::ContainsSubstring("<main>\n<h1><bdi>Rex</bdi>: Lamb</h1>"));
    CHECK_THAT(page, match::ContainsSubstring("<p>curly coat</p>"));
    CHECK_THAT(page, match::ContainsSubstring("<p class=\"caution mild\"><b>As ever:</b> local"));
}

TEST_CASE("paper has no word of the command in brackets, and keeps other brackets") {
    document d{"A card"};
    d.add({io::line_as::box,
           "clipped (all of it) (--consent clip); frail (once signed: --consent x)", "Agree: ", 0,
           2});
    d.copied("pelage plan rex (--style lamb)");
    CHECK(text_of(on_paper(d)) ==
          "Agree: clipped (all of it); frail\n  pelage plan rex (--style lamb)\n");
}

TEST_CASE("a date in a table isn't broken, and a column without a head has one to be heard") {
    const std::string page = html_of(of_table({{"", "due"}, {{"now", "by 2026-12-15, or 2-3"}}}));
    CHECK_THAT(page, match::ContainsSubstring("<th><span class=\"hid\">mark</span></th>"));
    CHECK_THAT(page,
               match::ContainsSubstring("by <span class=\"d\">2026-12-15</span>, or 2-3</td>"));
}

TEST_CASE("a blank line stands before a section, and none where nothing is said") {
    document d{"Parts"};
    d.open();
    d.say("first");
    d.open();
    d.open("Then");
    d.say("second");
    d.open({}, false);
    d.say("third");
    CHECK(text_of(d) == "first\n\nThen\nsecond\nthird\n");
}

TEST_CASE("a table too wide for a narrow screen is told row by row, each cell behind its head") {
    io::document d;
    d.show(
        io::typed_table{{"zone", "leaves", "why"},
                        {{"behind the ears", "13 mm", "nearest the wish"}, {"back", "10 mm", ""}}});
    CHECK(io::text_of(d, length_unit::mm, 34) ==
          "  behind the ears; leaves 13 mm;\n    why nearest the wish\n  back; leaves 10 mm\n");
    CHECK(io::text_of(d).find("zone") != std::string::npos);
}

TEST_CASE("bars stand to one scale beside their rows, as long as there is room") {
    document d{"A"};
    typed_table t{{"hold", "leaves", "where"}};
    t.rows = {{"blade 10", mm(1.5), "all"}, {"comb 13 mm", mm(13.0), "all"}};
    t.bars = {{0.1, 0.2}, {0.5, 1.0}};
    t.bars_head = "to scale";
    d.show(t);
    const std::string text = text_of(d);
    CHECK(text.find("where") > text.find("to scale"));
    // 34 columns are a whole bar
    CHECK(text.find("  ===----") != std::string::npos);
    CHECK(text.find("  " + std::string(17, '=') + std::string(17, '-') + "  all\n") !=
          std::string::npos);
    CHECK(text_of(d, length_unit::mm, 44).find("  ========-------  all\n") != std::string::npos);
    for (std::size_t width = 20; width <= 90; ++width) {
        std::istringstream lines(text_of(d, length_unit::mm, width));
        for (std::string line; std::getline(lines, line);) {
            CHECK(io::columns(line) <= width);
        }
    }
    CHECK(html_of(d).find("===") == std::string::npos);
    CHECK(csv_of(d).find("===") == std::string::npos);
}

TEST_CASE("a table of bars stays right beside wide characters") {
    document d{"A"};
    typed_table t{{"hold", "where"}};
    t.rows = {{"\xe7\x8a\xac", "all"}, {"dog", "all"}};  // a character of two columns
    t.bars = {{1.0, 1.0}, {1.0, 1.0}};
    d.show(t);
    std::istringstream lines(text_of(d));
    std::vector<std::size_t> begins;
    for (std::string line; std::getline(lines, line);) {
        if (const auto at = line.find('='); at != std::string::npos) {
            begins.push_back(io::columns(line.substr(0, at)));
        }
    }
    REQUIRE(begins.size() == 2);
    CHECK(begins[0] == begins[1]);
}

TEST_CASE("a picture is on the page, and in text what stands in its place") {
    document d{"A"};
    d.say("first");
    d.show(io::drawing{"<svg></svg>", {}, {}, true});
    d.show(io::drawing{{}, {}, "o o o\n"});
    CHECK(text_of(d) == "first\no o o\n");
    const std::string page = html_of(d);
    CHECK(page.find("<figure class=\"chart\"><svg></svg></figure>") != std::string::npos);
    CHECK(page.find("o o o") == std::string::npos);
    CHECK(page.find("<figcaption>") == std::string::npos);
}

TEST_CASE("a long name before a line and lines to sign stay within a telephone's columns") {
    document d{"A dog"};
    d.titled = false;
    d.sign = true;
    d.add(
        {io::line_as::headed, "drop coat, small.", "A dog: Maltese shih tzu, bob, winter, ", 0, 2});
    d.add({io::line_as::item, io::kept_together("3 mm ear edges"), "scissors: ", 0, 2});
    for (const std::size_t width : {40UL, 80UL}) {
        const std::string text = text_of(d, length_unit::mm, width);
        std::istringstream lines(text);
        for (std::string line; std::getline(lines, line);) {
            INFO(line);
            CHECK(io::columns(line) <= width);
        }
        CHECK_THAT(text, match::ContainsSubstring("3 mm ear edges"));  // blanks as any other
    }
}

TEST_CASE("a length isn't broken from its place") {
    document d{"A dog"};
    d.titled = false;
    d.add(
        {io::line_as::item, "one two three four " + io::kept_together("3 mm ear edges"), {}, 0, 0});
    CHECK(text_of(d, length_unit::mm, 26) == "one two three four\n3 mm ear edges\n");
}
