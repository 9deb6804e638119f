// The words of the trade: sound, and explained in words that need no explaining.
#include <algorithm>
#include <fstream>
#include <set>
#include <sstream>
#include <string>

#include <pelage/data/embedded.hpp>
#include <pelage/data/glossary.hpp>
#include <pelage/data/reference.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

std::string embedded_glossary() {
    for (const io::embedded_file& f : io::embedded_reference()) {
        if (f.path == "reference/glossary.toml") {
            return std::string(f.text);
        }
    }
    return {};
}

diagnostics faults_of(const std::string& text) {
    try {
        static_cast<void>(io::read_glossary({"glossary.toml", text}, io::reference()));
    } catch (const bad_input& wrong) {
        return wrong.all();
    }
    return {};
}

/// Words in small letters, no plural s.
std::vector<std::string> words_in(const std::string& text) {
    std::vector<std::string> out;
    std::string one;
    for (const char c : text + " ") {
        const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '\'';
        if (letter) {
            one += c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
        } else if (!one.empty()) {
            if (one.size() > 3 && one.ends_with('s') && !one.ends_with("ss")) {
                one.pop_back();
            }
            out.push_back(std::move(one));
            one.clear();
        }
    }
    return out;
}

}  // namespace

TEST_CASE("at least eighty words of the trade, each with what it is and how that is known",
          "[glossary]") {
    const glossary& g = io::trade_words();
    CHECK(g.terms.size() >= 80);
    for (const term& t : g.terms) {
        INFO(t.id);
        CHECK(t.text.size() > 20);
        CHECK(t.text.size() < 260);
        CHECK(t.text.ends_with('.'));
        CHECK(std::find(t.see.begin(), t.see.end(), t.id) == t.see.end());
    }
}

TEST_CASE("every word leads to its term, and none to two", "[glossary]") {
    const glossary& g = io::trade_words();
    const term_index index(g);
    for (const term& t : g.terms) {
        INFO(t.id);
        CHECK(index.find(t.title) == &t);
        for (const std::string& w : t.words) {
            INFO(w);
            CHECK(index.find(w) == &t);
            // a word that is asked back may be that of one of its own meanings
            const asked_term* asked = index.asked(w);
            CHECK((asked == nullptr || std::find(asked->means.begin(), asked->means.end(), t.id) !=
                                           asked->means.end()));
        }
    }
    CHECK(index.find("Skip-Tooth")->id == "skip-tooth-blade");
    CHECK(index.find("furnishing")->id == "furnishings");
    CHECK(index.asked("combs") != nullptr);
    CHECK(index.find("zebra") == nullptr);
}

TEST_CASE("what explains a word needs no explaining: plain words, or words that are explained",
          "[glossary]") {
    std::ifstream in(pelage_SOURCE_DIR "/tests/unit/data/plain_words.txt");
    std::stringstream all;
    all << in.rdbuf();
    std::set<std::string> known;
    for (const std::string& w : words_in(all.str())) {
        known.insert(w);
    }
    REQUIRE(known.size() > 100);
    for (const term& t : io::trade_words().terms) {
        for (const std::string& w : words_in(t.title)) {
            known.insert(w);
        }
        for (const std::string& also : t.words) {
            for (const std::string& w : words_in(also)) {
                known.insert(w);
            }
        }
    }
    for (const term& t : io::trade_words().terms) {
        for (const std::string& w : words_in(t.text + " " + t.skin + " " + t.usual)) {
            INFO(t.id << ": \"" << w
                      << "\": say it plainly, explain it, or add it to plain_words.txt");
            CHECK(known.count(w) == 1);
        }
    }
    for (const card_line& l : io::trade_words().lines) {
        for (const std::string& w : words_in(l.text)) {
            INFO(l.said.front() << ": \"" << w
                                << "\": say it plainly, explain it, or add it to plain_words.txt");
            CHECK(known.count(w) == 1);
        }
    }
}

TEST_CASE("each way in which a card words its figures is told, once", "[glossary]") {
    const glossary& g = io::trade_words();
    CHECK(g.lines.size() >= 20);
    for (const card_line& l : g.lines) {
        INFO(l.said.front());
        CHECK(l.text.size() > 20);
        CHECK(l.text.size() < 260);
        CHECK(l.text.ends_with('.'));
    }
    const std::string twice =
        embedded_glossary() +
        "\n[[line]]\nsaid = [\"day N\"]\ntext = \"A day.\"\nbasis = \"practice\"\n";
    const diagnostics wrong = faults_of(twice);
    REQUIRE(wrong.size() == 1);
    CHECK(wrong[0].text.find("words of a card are read in one way; found \"day N\"") !=
          std::string::npos);
}

TEST_CASE("what is never done says what is done instead, and a style's sheets are there",
          "[glossary]") {
    const glossary& g = io::trade_words();
    CHECK(g.never.size() >= 15);
    for (const never_rule& n : g.never) {
        INFO(n.text);
        CHECK(n.instead.ends_with('.'));
        CHECK(n.of.size() != 1);  // a no to one word alone would be a no to whoever asks what it is
    }
    const auto& sheets = io::reference().styles;
    for (const term& t : g.terms) {
        for (const std::string& id : t.sheets) {
            INFO(t.id << ": " << id);
            CHECK(std::any_of(sheets.begin(), sheets.end(),
                              [&](const style& s) { return s.id == id; }));
        }
    }
}

TEST_CASE("no name of a make stands in the glossary: no capital inside a sentence", "[glossary]") {
    for (const term& t : io::trade_words().terms) {
        const std::string text = t.text + " " + t.skin + ". " + t.usual;
        for (std::size_t i = 2; i < text.size(); ++i) {
            const bool capital = text[i] >= 'A' && text[i] <= 'Z';
            const bool word = capital && i + 1 < text.size() && text[i + 1] >= 'a';
            const bool begins = text[i - 1] == ' ' && (text[i - 2] == '.' || text[i - 2] == '?');
            INFO(t.id << ": " << text.substr(i, 12));
            CHECK((!word || begins));
        }
        for (const std::string& w : t.words) {
            INFO(t.id << ": " << w);
            CHECK(std::none_of(w.begin(), w.end(), [](char c) { return c >= 'A' && c <= 'Z'; }));
        }
    }
}

TEST_CASE("a slip in the glossary is told with its line", "[glossary]") {
    struct slip {
        std::string from, to, told;
    };
    const std::vector<slip> slips{
        {"see = [\"lay\", \"against", "see = [\"ley\", \"against", "did you mean \"lay\"?"},
        {"title = \"stop\"", "title = \"stifle\"", "a word has one meaning"},
        {"id = \"stop\"", "id = \"occiput\"", "an id is given once"},
        {"zone = \"belly\"", "zone = \"bely\"", "did you mean \"belly\"?"},
        {"zone = \"belly\"\n", "", "each zone has one term"},
        {"means = [\"snap-on-comb\"", "means = [\"snap-on\"", "unknown term"},
        {"words = [\"comb\"]", "words = [\"left comb\"]", "has no side"},
        {"kind = \"harm\"", "kind = \"harmful\"", "harm"},
        {"basis = \"practice\"", "basis = \"hearsay\"", "unknown basis"},
        {"source = \"umn-animal-dermatology\"", "source = \"umn\"", "source"},
        {"clips = true", "clipps = true", "did you mean \"clips\"?"},
        {"\nbasis = \"practice\"\n\n[[term]]\nid = \"with-the-lay\"",
         "\n\n[[term]]\nid = \"with-the-lay\"", "\"basis\" is missing"},
    };
    for (const slip& s : slips) {
        std::string text = embedded_glossary();
        const auto at = text.find(s.from);
        INFO(s.from << " -> " << s.to);
        REQUIRE(at != std::string::npos);
        text.replace(at, s.from.size(), s.to);
        const diagnostics wrong = faults_of(text);
        CHECK(std::any_of(wrong.begin(), wrong.end(), [&](const diagnostic& d) {
            return d.line > 0 && d.column > 0 && d.text.find(s.told) != std::string::npos;
        }));
    }
}
