// The places a person means by a word, on the body of the reference.
#include <algorithm>
#include <set>
#include <string>

#include <pelage/select.hpp>

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
    CHECK_FALSE(select(whole(), "both ears"));
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
    const auto words = selectors(whole());
    CHECK(words.size() > whole().zones.size());
    for (const std::string& w : words) {
        INFO(w);
        CHECK(select(whole(), w));
    }
}

TEST_CASE("no two zones answer to one word", "[select]") {
    std::set<std::pair<std::string, std::size_t>> seen;
    for (std::size_t i = 0; i < whole().zones.size(); ++i) {
        const zone& z = whole().zones[i];
        std::vector<std::string> words{z.id, z.title};
        words.insert(words.end(), z.also.begin(), z.also.end());
        for (const std::string& w : words) {
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
