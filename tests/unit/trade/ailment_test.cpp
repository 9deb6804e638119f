// What is told of a dog's health, in people's own words.
#include <pelage/data/reference.hpp>
#include <pelage/trade/ailment.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

health_told heard(std::string_view text, std::string_view note = {}) {
    return read_health(text, note, io::reference().told_health);
}

}  // namespace

TEST_CASE("a word that is known is known in any dress", "[ailment]") {
    CHECK(heard("Heart murmur").has(ailment_kind::heart));
    CHECK(heard("arthritic hips").has(ailment_kind::joints));
    CHECK(heard("can't see").has(ailment_kind::blind));
    CHECK(heard("hip-dysplasia").has(ailment_kind::joints));
    const health_told two = heard("weak heart, and blind in one eye");
    CHECK(two.has(ailment_kind::heart));
    CHECK(two.has(ailment_kind::blind));
    CHECK_FALSE(two.has(ailment_kind::deaf));
    CHECK(two.unwell);
    CHECK_FALSE(two.more);
}

TEST_CASE("a dog that is blind, in heat or new isn't unwell", "[ailment]") {
    for (const char* text : {"blind", "deaf in the left ear", "in heat since 3 days",
                             "first groom, 14 weeks", "pregnant", "blind and deaf"}) {
        INFO(text);
        CHECK_FALSE(heard(text).unwell);
        CHECK_FALSE(heard(text).more);
    }
}

TEST_CASE("what the skin shows has a place and is asked back", "[ailment]") {
    for (const char* text : {"deaf, ear infection", "just spayed, stitches", "fleas"}) {
        INFO(text);
        CHECK(heard(text).of_skin);
        CHECK_FALSE(heard(text).has(ailment_kind::heart));
    }
    CHECK_FALSE(heard("no stitches, weak heart").of_skin);
    CHECK_FALSE(heard("spayed, weak heart").of_skin);
}

TEST_CASE("what ends a groom is told of as its sign", "[ailment]") {
    const auto signs = [](std::string_view text) { return heard(text).signs; };
    const auto only = [](stop_sign s) { return std::vector<stop_sign>{s}; };
    for (const char* text :
         {"ringworm", "mange on the back", "lice", "ear mites", "kennel cough"}) {
        INFO(text);
        CHECK(signs(text) == only(stop_sign::ringworm));
    }
    CHECK(signs("swollen belly, panting") == only(stop_sign::bloat));
    CHECK(signs("left ear swollen") == only(stop_sign::swollen_ear));
    CHECK(signs("swollen ear") == only(stop_sign::swollen_ear));
    CHECK(signs("maggots, ringworm").size() == 2);
    CHECK(signs("no ringworm").empty());
    CHECK_FALSE(heard("ringworm").more);
    // what is seen at the table is no word of a dog's health: it faints now and then
    CHECK(signs("collapses when excited").empty());
    CHECK(heard("collapses when excited").seen == only(stop_sign::collapse));
}

TEST_CASE("what was operated lately has a place, what healed long ago hasn't", "[ailment]") {
    for (const char* text : {"spayed ten days ago", "castrated on Monday", "surgery a week ago",
                             "neutered last week, healing", "caesarean two weeks ago",
                             "left front leg bandaged", "wound on the belly", "catheter"}) {
        INFO(text);
        CHECK(heard(text).of_skin);
    }
    for (const char* text : {"spayed", "operation two years ago", "neutered, heart murmur",
                             "castrated months ago", "no wounds"}) {
        INFO(text);
        CHECK_FALSE(heard(text).of_skin);
    }
}

TEST_CASE("ears, nails and blood are kinds of their own", "[ailment]") {
    CHECK(heard("ears smell, head shaking").has(ailment_kind::ears));
    CHECK_FALSE(heard("ears smell").unwell);
    CHECK(heard("blood thinner").has(ailment_kind::bleeds));
    CHECK(heard("blood thinner").unwell);
    CHECK(heard("one broken nail").has(ailment_kind::nail));
    CHECK_FALSE(heard("broken nail").unwell);
}

TEST_CASE("what no word covers is told as not understood", "[ailment]") {
    for (const char* text : {"one kidney", "arthritis from a tumour", "heart trouble after cancer",
                             "blind, one kidney", "deaf, ear growth", "blind from a tumour",
                             "not pregnant", "no heart trouble", "14 weeks"}) {
        INFO(text);
        CHECK(heard(text).more);
    }
    CHECK(heard("not pregnant").known.empty());
    CHECK_FALSE(heard("").more);
    CHECK(heard("").known.empty());
}

TEST_CASE("how bad it is and what it takes is no ailment more", "[ailment]") {
    for (const char* text :
         {"weak heart", "heart murmur grade 3 of 6", "mild arthritis in both hind legs",
          "early heart failure", "epilepsy controlled by tablets"}) {
        INFO(text);
        CHECK_FALSE(heard(text).known.empty());
        CHECK_FALSE(heard(text).more);
    }
    CHECK(heard("blind, bad leg").more);  // a leg is no part of being blind
    CHECK(heard("deaf poor condition").more);
}

TEST_CASE("of a note only that she is pregnant or nursing counts", "[ailment]") {
    CHECK(heard("", "she is nursing five").has(ailment_kind::young));
    CHECK(heard("", "a heart of gold, deaf to her name").known.empty());
    CHECK_FALSE(heard("", "likes cheese").more);
}

TEST_CASE("what only denies an ailment that is known is told from what ails", "[ailment]") {
    for (const char* text : {"not pregnant", "no seizures, not blind", "no longer pregnant"}) {
        INFO(text);
        CHECK(heard(text).denied);
    }
    for (const char* text : {"isn't well", "not eating", "not pregnant, a tumour", "can not see",
                             "no heart trouble; vomiting since yesterday",
                             "not blind since surgery", "not in weeks", "pregnant", ""}) {
        INFO(text);
        CHECK_FALSE(heard(text).denied);
    }
}
