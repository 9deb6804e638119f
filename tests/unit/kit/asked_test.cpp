// What people type at the look-up, and what it is taken for.
#include <algorithm>
#include <optional>
#include <string>
#include <variant>

#include <pelage/data/glossary.hpp>
#include <pelage/kit/asked.hpp>
#include <pelage/kit/place_card.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

struct counter {
    kit tools = io::demo_salon().tools;

    [[nodiscard]] lookup_request request(std::string text) const {
        return {io::reference(),
                io::reference().rules,
                tools,
                std::move(text),
                asked_kind::any,
                false,
                {},
                {},
                {},
                {},
                &io::trade_words()};
    }
    [[nodiscard]] asked read(const std::string& text) const { return read_asked(request(text)); }
    template <class Thing>
    [[nodiscard]] Thing thing(const std::string& text) const {
        const asked a = read(text);
        INFO(text << " is of another kind: " << a.what.index());
        REQUIRE(std::holds_alternative<Thing>(a.what));
        return std::get<Thing>(a.what);
    }
    /// "7F", "13 mm over 30", "9 mm".
    [[nodiscard]] std::string tool(const std::string& text) const {
        const tools_asked t = thing<tools_asked>(text);
        REQUIRE(t.all.size() == 1);
        return named(t.all.front());
    }
    [[nodiscard]] std::vector<std::string> tools_of(const std::string& text) const {
        std::vector<std::string> out;
        for (const question& q : thing<tools_asked>(text).all) {
            out.push_back(named(q));
        }
        return out;
    }
    [[nodiscard]] std::string term(const std::string& text) const {
        const terms_asked t = thing<terms_asked>(text);
        REQUIRE(t.all.size() == 1);
        return t.all.front()->id;
    }
    static std::string named(const question& q) {
        if (q.what == question::form::of_length) {
            return show(q.wanted);
        }
        return q.tool.over ? q.tool.over->id + " over " + q.tool.tool.id : q.tool.tool.id;
    }
};

counter with_marks() {
    counter c;
    c.tools.combs[3].labels = {{"long set", "C"}};
    c.tools.combs[5].labels = {{"long set", "D"}, {"short set", "2"}};
    c.tools.combs[6].labels = {{"long set", "2"}};
    return c;
}

}  // namespace

TEST_CASE("a blade by any of its names", "[asked]") {
    const counter c;
    for (const char* text : {"7F", "7f", "7 FC", "7 f", "blade 7F", "7F blade", "number 7F", "#7F",
                             "no 7fc", "what is a 7F?", "the 7f blade", "what does a 7F leave"}) {
        INFO(text);
        CHECK(c.tool(text) == "7F");
    }
    CHECK(c.tool("10 blade") == "10");
    CHECK(c.tool("number 7") == "7");
    CHECK(c.tool("7 1/2 mm") == "7.5 mm");
}

TEST_CASE("a length in words", "[asked]") {
    const counter c;
    for (const char* text : {"half inch", "half an inch", "1/2\"", "1/2 inch", "1/2in"}) {
        INFO(text);
        CHECK(c.tool(text) == "13 mm");
    }
    CHECK(c.tool("an inch") == "25 mm");
    CHECK(c.tool("one inch") == "25 mm");
    CHECK(c.tool("three quarters of an inch") == "19 mm");
    CHECK(c.tool("inch and a half") == "38 mm");
    CHECK(c.tool("9 millimetres") == "9 mm");
    CHECK(c.tool("half inch comb") == "13 mm over 30");
    CHECK(c.tool("13mm comb over a 10") == "13 mm over 10");
}

TEST_CASE("in is an inch or a word between", "[asked]") {
    const counter c;
    CHECK(c.tool("1 in") == "25 mm");
    CHECK(c.tool("7 in reverse") == "7");
    CHECK(c.read("7 in reverse").way == direction::against_lay);
    CHECK(c.tool("10 in armpit") == "10");
    CHECK(c.read("10 in the armpit").where.size() == 1);
}

TEST_CASE("what is said beside a tool goes with it", "[asked]") {
    const counter c;
    const asked a = c.read("9mm on a poodle");
    CHECK(a.coat == coat_class::curly);
    CHECK(a.breed == "poodle");
    CHECK(c.read("7f on a curly coat").coat == coat_class::curly);
    CHECK(c.read("7f groin").where.size() == 1);
    CHECK(c.read("10 reversed").way == direction::against_lay);
    CHECK(c.read("10 with the lay").way == direction::with_lay);
    lookup_request r = c.request("9mm on a poodle");
    CHECK(with_circumstances(r, a).coat == coat_class::curly);
    r.coat = coat_class::wire;
    CHECK_THROWS_AS(with_circumstances(r, a), error);
}

TEST_CASE("which of two", "[asked]") {
    const counter c;
    using names = std::vector<std::string>;
    CHECK(c.tools_of("4F vs 5F") == names{"4F", "5F"});
    CHECK(c.tools_of("4f or 5f") == names{"4F", "5F"});
    CHECK(c.tools_of("what is longer 4 or 5") == names{"4", "5"});
    CHECK(c.tools_of("whats the difference between 7 and 7f") == names{"7", "7F"});
    CHECK(c.tools_of("is 7 shorter than 10?") == names{"7", "10"});
    CHECK(c.tools_of("7 vs 13mm comb") == names{"7", "13 mm over 30"});
    const comparison two = compare(c.request(""), c.thing<tools_asked>("4F vs 5F").all);
    CHECK(two.longest == std::size_t{0});
    CHECK(!compare(c.request(""), c.thing<tools_asked>("7 vs 7F").all).longest);
}

TEST_CASE("a place, whatever stands round it", "[asked]") {
    const counter c;
    for (const char* text : {"belly", "tummy", "which blade for belly", "how do I do the belly",
                             "blade for the belly?", "how thin is the skin on the belly",
                             "comb for belly", "belly against the lay"}) {
        INFO(text);
        const place_asked p = c.thing<place_asked>(text);
        REQUIRE(p.places.size() == 1);
        CHECK(io::reference().dog_body.zones[p.places.front().zone].id == "belly");
    }
    CHECK(c.thing<place_asked>("back legs").places.size() == 4);
    CHECK(c.thing<place_asked>("left ear").places.front().which == side::left);
    CHECK(c.thing<place_asked>("topknot").said->id == "topknot");
}

TEST_CASE("a word of the trade", "[asked]") {
    const counter c;
    CHECK(c.term("lay") == "lay");
    CHECK(c.term("what does lay mean?") == "lay");
    CHECK(c.term("reverse") == "against-the-lay");
    CHECK(c.term("skip tooth") == "skip-tooth-blade");
    CHECK(c.term("what is a skip tooth blade") == "skip-tooth-blade");
    CHECK(c.term("which way do i clip") == "with-the-lay");
    CHECK(c.thing<terms_asked>("mat vs pelt").all.size() == 2);
}

TEST_CASE("a breed, a cross and a coat", "[asked]") {
    const counter c;
    CHECK(c.thing<mix_asked>("poodle").text == "poodle");
    CHECK(c.thing<mix_asked>("half poodle half beagle").text == "poodle x beagle");
    CHECK(c.thing<mix_asked>("mum poodle dad shih tzu").text == "poodle x shih tzu");
    CHECK(c.thing<mix_asked>("poodle x beagle").text == "poodle x beagle");
    CHECK(c.thing<mix_asked>("poodel").text == "poodel");  // misspelt: read_mix says what is near
    CHECK(c.thing<coat_asked>("curly").coat == coat_class::curly);
    CHECK(c.thing<coat_asked>("double-long").coat == coat_class::double_long);
}

TEST_CASE("two readings are asked back, never guessed", "[asked]") {
    const counter c;
    CHECK(c.thing<asked_back>("bum").why == asked_back::cause::places);
    CHECK(c.thing<asked_back>("which blade for the bum").readings.size() == 3);
    CHECK(c.thing<asked_back>("comb").why == asked_back::cause::terms);
    CHECK(c.thing<asked_back>("7F 10").readings.size() == 2);
    CHECK(c.thing<asked_back>("poodle and bichon").why == asked_back::cause::cross);
    CHECK(c.thing<asked_back>("which is longest").why == asked_back::cause::ladder);
}

TEST_CASE("two things that belong together are answered together", "[asked]") {
    const counter c;
    const place_asked ears = c.thing<place_asked>("matted ears");
    REQUIRE(ears.beside.size() == 1);
    CHECK(ears.beside.front()->id == "mat");
    CHECK(c.thing<place_asked>("belly and face").places.size() > 2);
    CHECK(c.term("matted dog what blade") == "mat");
    CHECK(c.term("blade too hot") == "hot-blade");
    CHECK(c.term("yorkie puppy cut") == "puppy-cut");
    CHECK(c.read("yorkie puppy cut").coat == coat_class::drop);
    CHECK(c.thing<tools_asked>("7F on mats").beside.front()->id == "mat");
}

TEST_CASE("the teeth said beside a number belong to it", "[asked]") {
    const counter c;
    CHECK(c.tool("7 skip") == "7");
    CHECK(c.tool("7 skip tooth") == "7");
    CHECK(c.tool("5 finish") == "5F");
    CHECK(c.tool("4 full tooth") == "4F");
    CHECK(c.thing<tools_asked>("10 skip").beside.size() == 1);  // there is none: both are told
}

TEST_CASE("a word for several things means the one that belongs to what stands beside it",
          "[asked]") {
    const counter c;
    const auto ids = [](const terms_asked& t) {
        std::vector<std::string> out;
        for (const term* one : t.all) {
            out.push_back(one->id);
        }
        return out;
    };
    using names = std::vector<std::string>;
    CHECK(ids(c.thing<terms_asked>("comb vs blade")) == names{"snap-on-comb", "blade"});
    CHECK(ids(c.thing<terms_asked>("skip tooth vs finish")) ==
          names{"skip-tooth-blade", "full-tooth-blade"});
    CHECK(c.term("finish") == "finish");
    CHECK(c.term("clip") == "clip");
    CHECK(ids(c.thing<terms_asked>("hand strip vs clip")) == names{"hand-strip", "clip"});
}

TEST_CASE("what carries a comb", "[asked]") {
    const counter c;
    const auto answer = [&](const std::string& text) {
        return carrying(c.request(text), c.thing<carrying_asked>(text));
    };
    CHECK(answer("which comb over which blade").asked.empty());
    CHECK(answer("which blade under the comb").blades.front().id == c.tools.under_comb);
    CHECK(!answer("can i put a comb over a 7F").may());
    CHECK(answer("guard comb over 10").may());
    const carrying_answer both = answer("snap on over a 10 or 30");
    REQUIRE(both.asked.size() == 2);
    CHECK(both.asked.back().adds < both.asked.front().adds);
    for (const blade& b : answer("which blade under the comb").blades) {
        INFO(b.id);
        CHECK(b.cut == teeth::full);
        CHECK(in_mm(b.stated.best) < 2.1);
    }
}

TEST_CASE("what is never done is a no to whoever asks for it", "[asked]") {
    const counter c;
    const lookup_request r = c.request("");
    CHECK(never_of(r, c.thing<terms_asked>("can i cut mats out with scissors")) != nullptr);
    CHECK(never_of(r, c.thing<terms_asked>("mats")) == nullptr);
    CHECK(never_of_this_coat(r, c.thing<terms_asked>("can i shave a double coat")));
    CHECK(!never_of_this_coat(r, c.thing<terms_asked>("double coat")));
    CHECK(c.thing<list_asked>("never do").what == list_asked::of::nevers);
    CHECK(c.thing<list_asked>("words").what == list_asked::of::words);
    CHECK(c.thing<place_asked>("never on the belly").places.size() == 1);
}

TEST_CASE("which blade is longest is answered from the kit", "[asked]") {
    const counter c;
    CHECK(c.tool("longest blade") == "3F");
    CHECK(c.tool("shortest comb") == "3 mm over 30");
    const tools_asked t = c.thing<tools_asked>("what blade is 3mm");
    CHECK(t.all.front().only == asked_kind::blade);
    for (const nearest_row& row : look_up(c.request(""), t.all.front()).nearest) {
        CHECK(!row.best.front().how.over);
    }
}

TEST_CASE("a word nobody knows is told with what is near, and the rest isn't guessed at",
          "[asked]") {
    const counter c;
    const strangers s = c.thing<strangers>("witheres");
    CHECK(s.words.front().near == std::vector<std::string>{"withers"});
    const strangers t = c.thing<strangers>("10 on the bely");
    CHECK(t.words.front().word == "bely");
    CHECK(t.words.front().near == std::vector<std::string>{"belly"});
    CHECK(t.understood == std::vector<std::string>{"10"});
    CHECK(c.thing<strangers>("ley").words.front().near.front() == "lay");
    // near by sound or shape is not near: nothing is meant by these
    for (const char* word : {"corners", "zoo", "blant"}) {
        INFO(word);
        const strangers none = c.thing<strangers>(word);
        CHECK(std::none_of(none.words.front().near.begin(), none.words.front().near.end(),
                           [](const std::string& w) {
                               return w == "corded" || w == "cocker" || w == "toes" || w == "butt";
                           }));
    }
    CHECK(c.thing<strangers>("how").words.size() == 1);
    CHECK(c.thing<strangers>("7 and a half").words.front().word == "half");
}

TEST_CASE("the kit's own marks", "[asked]") {
    const counter c = with_marks();
    CHECK(c.tool("comb C") == "13 mm over 30");
    CHECK(c.tool("c comb") == "13 mm over 30");
    CHECK(c.tool("comb c over 10") == "13 mm over 10");
    CHECK(c.tool("comb D") == "19 mm over 30");
    CHECK_THROWS_AS(c.read("comb 2"), error);  // two sets have one
    CHECK_THROWS_AS(c.read("comb E"), error);
    CHECK_THROWS_AS(counter().read("comb C"), error);
}

TEST_CASE("a card of a place keeps the rules", "[asked]") {
    const counter c;
    for (const zone& z : io::reference().dog_body.zones) {
        const auto at = static_cast<std::size_t>(&z - io::reference().dog_body.zones.data());
        const place_card card = card_of(c.request(""), {z.title, {{at, side::both}}, nullptr});
        REQUIRE(card.zones.size() == 1);
        const zone_card& one = card.zones.front();
        INFO(z.id);
        REQUIRE(one.words != nullptr);
        for (const setup& s : one.with) {
            INFO(title(s));
            CHECK(!(skips(s.tool) && !z.has(zone_use::skip_teeth) && !s.over));
            CHECK((z.where == group::prep) == !z.prep_blades.empty());
            zone_today t;
            t.where = &z;
            CHECK(!refuse(s, t, io::reference().rules.refusal, io::reference().rules.cut));
        }
        std::size_t never = 0;
        for (const never_there& n : one.never) {
            never += n.tools.size();
        }
        // every blade and comb stands once, on one side or the other
        CHECK(never + one.with.size() + one.clean.size() + one.in_show.size() ==
              c.tools.blades.size() + c.tools.combs.size());
    }
}
