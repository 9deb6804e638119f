// The places a person means by a word, on the body of the reference.
#include <algorithm>
#include <set>
#include <string>

#include <pelage/trade/finding.hpp>
#include <pelage/trade/place_words.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::at;

namespace {

const body& whole() {
    return io::reference().dog_body;
}

std::string id_of(const place& p) {
    return whole().zones[p.zone].id;
}

}  // namespace

TEST_CASE("a zone is called by its id, its title or another word for it", "[select]") {
    struct row {
        const char* word;
        const char* id;
    };
    const row rows[] = {{"back", "back"},
                        {"Back", "back"},
                        {" back ", "back"},
                        {"ear", "ear"},
                        {"ears", "ear"},
                        {"behind-ear", "behind-ear"},
                        {"behind_ear", "behind-ear"},
                        {"behind the ears", "behind-ear"},
                        {"crest", "neck"},
                        {"saddle", "back"},
                        {"topknot", "skull"},
                        {"beard", "muzzle"},
                        {"under-tail", "under-tail"}};
    for (const row& r : rows) {
        INFO(r.word);
        const auto s = select(whole(), r.word);
        REQUIRE(s);
        CHECK(s->how == reach::zone);
        REQUIRE(s->places.size() == 1);
        CHECK(id_of(s->places[0]) == r.id);
        CHECK(s->places[0].which == side::both);
    }
}

TEST_CASE("one side of a pair is a narrower word than the pair", "[select]") {
    for (const char* word : {"left ear", "LEFT EAR", "left-ear"}) {
        INFO(word);
        const auto s = select(whole(), word);
        REQUIRE(s);
        CHECK(s->how == reach::side);
        REQUIRE(s->places.size() == 1);
        CHECK(id_of(s->places[0]) == "ear");
        CHECK(s->places[0].which == side::left);
    }
    CHECK(at("behind the right ear").which == side::right);
    CHECK(at("right behind-ear") == at("behind the right ear"));
    CHECK_FALSE(select(whole(), "left back"));  // the back is one
    CHECK(at("both ears") == at("ears"));
    CHECK_FALSE(select(whole(), "left right ear"));
}

TEST_CASE("all is every zone but the prep zones, which have their own blades", "[select]") {
    const auto s = select(whole(), "all");
    REQUIRE(s);
    CHECK(s->how == reach::all);
    const auto prep = static_cast<std::size_t>(
        std::count_if(whole().zones.begin(), whole().zones.end(),
                      [](const zone& z) { return z.where == group::prep; }));
    CHECK(prep == 6);
    CHECK(s->places.size() == whole().zones.size() - prep);
    for (const place& p : s->places) {
        CHECK(whole().zones[p.zone].where != group::prep);
    }
}

TEST_CASE("a group is all its zones, and nothing else", "[select]") {
    for (const group g : {group::head, group::body, group::legs, group::prep}) {
        INFO(name(g));
        const auto s = select(whole(), name(g));
        REQUIRE(s);
        CHECK(s->how == reach::group);
        std::set<std::size_t> got;
        for (const place& p : s->places) {
            got.insert(p.zone);
            CHECK(p.which == side::both);
        }
        for (std::size_t i = 0; i < whole().zones.size(); ++i) {
            CHECK(got.count(i) == (whole().zones[i].where == g ? 1U : 0U));
        }
    }
}

TEST_CASE("where a group and a zone share a word, the zone is meant", "[select]") {
    for (const char* word : {"tail", "feet"}) {
        INFO(word);
        const auto s = select(whole(), word);
        REQUIRE(s);
        CHECK(s->how == reach::zone);
        REQUIRE(s->places.size() == 1);
        CHECK(id_of(s->places[0]) == word);
    }
}

TEST_CASE("what names no place is no place", "[select]") {
    for (const char* word :
         {"", " ", "elbow room", "wing", "left", "left ", "{side} ear", "alle"}) {
        INFO(word);
        CHECK_FALSE(select(whole(), word));
    }
}

TEST_CASE("every word that is offered is understood", "[select]") {
    const auto words = part_index(whole()).words();
    CHECK(words.size() > whole().zones.size());
    for (const std::string& w : words) {
        INFO(w);
        const bool asked = !part_index(whole()).asked(w).empty();
        CHECK(select(whole(), w).has_value() != asked);
    }
}

TEST_CASE("no two zones answer to one word", "[select]") {
    std::set<std::pair<std::string, std::size_t>> seen;
    for (std::size_t i = 0; i < whole().zones.size(); ++i) {
        const zone& z = whole().zones[i];
        for (const std::string& w : {z.id, z.title}) {
            INFO(w);
            const auto s = select(whole(), w);
            REQUIRE(s);
            CHECK(s->places.front().zone == i);
        }
    }
}

TEST_CASE("a place is called as people call it", "[select]") {
    CHECK(title(whole(), at("ear")) == "ears");
    CHECK(title(whole(), at("left ear")) == "left ear");
    CHECK(title(whole(), at("behind the right ear")) == "behind the right ear");
    CHECK(title(whole(), at("back")) == "back");
    // a side asked of what has none is the thing itself
    CHECK(title(whole(), {at("back").zone, side::left}) == "back");
}

namespace {

std::vector<std::string> zones_of(const std::string& word) {
    const auto s = select(whole(), word);
    std::vector<std::string> out;
    for (const place& p : s ? s->places : std::vector<place>{}) {
        out.push_back((p.which == side::both ? "" : std::string(name(p.which)) + " ") + id_of(p));
    }
    return out;
}

using words = std::vector<std::string>;

}  // namespace

TEST_CASE("a leg is all of the leg", "[select]") {
    const words hind{"thigh", "stifle", "hock", "second-thigh"};
    for (const char* word : {"back legs", "back leg", "hind legs", "hind-legs", "the rear legs"}) {
        INFO(word);
        CHECK(zones_of(word) == hind);
        CHECK(select(whole(), word)->how == reach::part);
    }
    CHECK(zones_of("front legs") == words{"foreleg", "elbow"});
    CHECK(zones_of("forelegs") == words{"foreleg"});
    CHECK(zones_of("second thigh") == words{"second-thigh"});
}

TEST_CASE("a side is said anywhere in the word", "[select]") {
    const words left{"left foreleg", "left elbow"};
    for (const char* word : {"left front leg", "front left leg", "front leg left",
                             "front leg, left", "Left-Front-Leg", "the left front legs"}) {
        INFO(word);
        CHECK(zones_of(word) == left);
    }
    CHECK(zones_of("right back leg") ==
          words{"right thigh", "right stifle", "right hock", "right second-thigh"});
    CHECK(zones_of("left legs").size() == 6);
    CHECK(zones_of("left hip") == words{"rump", "left thigh"});
    CHECK(zones_of("left ear leather") == words{"left ear"});
}

TEST_CASE("what the trade calls places", "[select][trade]") {
    // common practice, no source; the basis of each stands in reference/places.toml
    CHECK(zones_of("paws") == words{"feet"});
    CHECK(zones_of("left front paw") == words{"left feet"});
    CHECK(zones_of("paw pads") == words{"pads"});
    CHECK(zones_of("chin") == words{"muzzle"});
    CHECK(zones_of("bib") == words{"chest"});
    CHECK(zones_of("breeches") == words{"thigh"});
    CHECK(zones_of("hips") == words{"rump", "thigh"});
    CHECK(zones_of("face") == words{"cheek", "eyebrow", "muzzle"});
    CHECK(zones_of("feathers") ==
          words{"skirt", "foreleg", "elbow", "thigh", "hock", "second-thigh", "tail", "ear-edge"});
    CHECK(zones_of("furnishings") == words{"skirt", "foreleg", "elbow", "stifle", "hock",
                                           "second-thigh", "eyebrow", "muzzle"});
    CHECK(zones_of("tuck-up") == words{"flank"});
    CHECK(zones_of("whole dog") == zones_of("all"));
    CHECK(zones_of("all four legs") == zones_of("legs"));
}

TEST_CASE("every word of the table means zones that are there, once each", "[select]") {
    const part_index parts(whole());
    for (const place_word& w : whole().words) {
        for (const std::string& word : w.words) {
            INFO(word);
            const selection* s = parts.find(word);
            REQUIRE(s);
            CHECK_FALSE(s->places.empty());
            std::set<std::size_t> zones;
            for (const place& p : s->places) {
                CHECK(p.zone < whole().zones.size());
                CHECK(zones.insert(p.zone).second);
            }
            CHECK(parts.asked(word).empty());
            CHECK(zones_of(w.words.front()) == zones_of(word));
        }
    }
}

TEST_CASE("a word with several meanings is asked back with all of them", "[select]") {
    const part_index parts(whole());
    for (const asked_place& a : whole().asked) {
        CHECK(a.means.size() > 1);
        for (const std::string& word : a.words) {
            INFO(word);
            CHECK(parts.find(word) == nullptr);
            CHECK(parts.about(word).code == errc::ambiguous);
            for (const std::string& meant : parts.asked(word)) {
                CHECK(parts.find(meant) != nullptr);
            }
        }
    }
    CHECK(parts.about("bottom").right ==
          "; write \"rump\", \"under the tail\" or \"sanitary area\"");
    CHECK(parts.asked("left rear") ==
          words{"left back leg", "rump", "left hindquarter", "under the tail"});
}

TEST_CASE("a hint turns no foot into a pad and no rear into an ear", "[select]") {
    const part_index parts(whole());
    const auto hint = [&](const std::string& word) { return parts.about(word).right; };
    CHECK(hint("pawz") == "; did you mean \"paws\"?");
    CHECK(hint("pawd") == "; did you mean \"pads\" or \"paws\"?");
    CHECK(hint("gear").empty());
    CHECK(hint("left frnt leg") == "; did you mean \"left front leg\"?");
    CHECK(hint("left back") == "; write \"back\"");
    // one letter off, of every word: what is told has a meaning, and the word itself is told unless
    // another is as near
    for (const std::string& word : parts.words()) {
        if (word.size() < 5) {
            continue;
        }
        const std::string slip = word + "q";
        INFO(slip);
        CHECK(hint(slip).find(word.substr(0, 3)) != std::string::npos);
    }
}

TEST_CASE("a part stands between a group and a zone, the smaller part nearer the zone",
          "[select]") {
    const auto of = [](const char* w) { return *select(whole(), w); };
    CHECK(wider(of("all"), of("legs")));
    CHECK(wider(of("legs"), of("hindquarters")));
    CHECK(wider(of("legs"), of("left legs")));
    CHECK(wider(of("left legs"), of("back legs")));
    CHECK(wider(of("hindquarters"), of("back legs")));
    CHECK(wider(of("back legs"), of("left back leg")));
    CHECK(wider(of("left back leg"), of("hocks")));
    CHECK(wider(of("hocks"), of("left hock")));
    CHECK_FALSE(wider(of("hocks"), of("thighs")));
    CHECK(clash(of("hocks"), of("hocks")));
    CHECK_FALSE(clash(of("hocks"), of("left hock")));
    CHECK_FALSE(clash(of("hocks"), of("thighs")));
}

TEST_CASE("a finding on a part is one on each of its zones, and gives way to a narrower one",
          "[select]") {
    std::vector<mat_finding> mats;
    const auto lay = [&](const char* w, mat_grade g) {
        mat_finding m;
        m.grade = g;
        lay_finding(mats, *select(whole(), w), m, [](const mat_finding&) { return true; });
    };
    lay("back legs", mat_grade::mat);
    CHECK(mats.size() == 4);
    lay("left hock", mat_grade::pelt);
    REQUIRE(mats.size() == 5);
    CHECK(mats.back().at == at("left hock"));
    CHECK(std::any_of(mats.begin(), mats.end(), [](const mat_finding& m) {
        return m.at == at("right hock") && m.grade == mat_grade::mat;
    }));
}
