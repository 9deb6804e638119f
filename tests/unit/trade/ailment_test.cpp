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
