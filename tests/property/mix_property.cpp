// Laws of mixes on random text and random pedigrees.
#include <cmath>
#include <numeric>
#include <string>
#include <vector>

#include <rapidcheck.h>

#include <pelage/data/reference.hpp>
#include <pelage/model/mix.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const heredity& genes() {
    return io::reference().genes;
}

/// Words of a mix in any order, some of them bytes.
std::string any_mix() {
    static const std::vector<std::string> parts{
        "poodle",   "beagle",   "x",         "X",         "\u00d7", "(",       ")",
        " ",        "F1",       "F1b",       "F2b",       "F9",     "to",      "back",
        "lab",      "genotype", "l/l",       "F/f",       "C/c",    "N/N",     "/",
        "cockapoo", "cross",    "miniature", "dachshund", "\xff",   "terrier", "x x",
        "((((",     "))))",     "Lh1/Lh2",   "pooodle",   "\n",     "\u00e9"};
    std::string s;
    for (int i = *rc::gen::inRange(0, 14); i > 0; --i) {
        s += *rc::gen::elementOf(parts) + (*rc::gen::inRange(0, 4) == 0 ? "" : " ");
    }
    return s;
}

/// A mix that can be read, at most `depth` crosses deep.
std::string sound_mix(int depth) {
    if (depth == 0 || *rc::gen::inRange(0, 3) == 0) {
        static const std::vector<std::string> dogs{
            "toy poodle",    "beagle",        "labrador", "portuguese water dog", "havanese",
            "shih tzu",      "westie",        "golden",   "genotype l/L F/f C/c", "german shepherd",
            "irish terrier", "english setter"};
        return *rc::gen::elementOf(dogs);
    }
    const std::string a = "(" + sound_mix(depth - 1) + ")";
    const std::string b = "(" + sound_mix(depth - 1) + ")";
    switch (*rc::gen::inRange(0, 4)) {
        case 0:
            return "F2 " + a + " x " + b;
        case 1:
            return "F1b " + a + " x " + b + " to " + a;
        default:
            return a + " x " + b;
    }
}

double sum(const copies<double>& c) {
    return c.none + c.one + c.two;
}

}  // namespace

TEST_CASE("any text is read as a mix or refused, with a place in it", "[mix]") {
    CHECK(rc::check([] {
        const std::string text = *rc::gen::arbitrary<bool>()
                                     ? *rc::gen::container<std::string>(rc::gen::arbitrary<char>())
                                     : any_mix();
        (void)sounds_like_mix(text, genes());
        try {
            const expected_coat e = expect_coat(text, genes(), io::reference().coats);
            RC_ASSERT(!e.may_be.coats.empty());
            RC_ASSERT(e.read.dog.depth <= deepest_mix);
        } catch (const bad_input& wrong) {
            RC_ASSERT(!wrong.all().empty());
            for (const diagnostic& d : wrong.all()) {
                RC_ASSERT(d.line == 0U);
                RC_ASSERT(d.column >= 1U);
                RC_ASSERT(d.column <= text.size() + 1);
                RC_ASSERT(!d.text.empty());
            }
        }
    }));
}

TEST_CASE("chances stay chances, however deep the pedigree", "[mix]") {
    CHECK(rc::check([] {
        const std::string text = sound_mix(4);
        const expected_coat e = expect_coat(text, genes(), io::reference().coats);
        for (const copies<double>& c : e.read.dog.genes.at) {
            RC_ASSERT(std::abs(sum(c) - 1.0) < 1e-12);
            RC_ASSERT(c.none >= 0.0 && c.one >= 0.0 && c.two >= 0.0);
        }
        double coats = 0.0;
        for (const coat_chance& k : e.may_be.coats) {
            coats += k.chance;
        }
        RC_ASSERT(std::abs(coats - 1.0) < 1e-9);
        const auto& t = e.may_be.types;
        RC_ASSERT(std::abs(std::accumulate(t.begin(), t.end(), 0.0) - 1.0) < 1e-12);
        double share = 0.0;
        for (const ancestry& a : e.read.dog.from) {
            share += a.share;
        }
        RC_ASSERT(share <= 1.0 + 1e-12);
    }));
}

TEST_CASE("what a mix prints is read as the same dog", "[mix]") {
    CHECK(rc::check([] {
        const bred dog = read_mix(sound_mix(4), genes()).dog;
        const bred again = read_mix(dog.text, genes()).dog;
        RC_ASSERT(again.genes == dog.genes);
        RC_ASSERT(again.text == dog.text);
        RC_ASSERT(again.depth == dog.depth);
    }));
}

TEST_CASE("it doesn't matter which parent is the mother", "[mix]") {
    CHECK(rc::check([] {
        const bred a = read_mix(sound_mix(3), genes()).dog;
        const bred b = read_mix(sound_mix(3), genes()).dog;
        const auto coats = [](const bred& dog) {
            return coats_of(dog, genes(), io::reference().coats);
        };
        const bred ab = cross(a, b);
        const bred ba = cross(b, a);
        for (std::size_t l = 0; l < ab.genes.at.size(); ++l) {
            for (int n = 0; n <= 2; ++n) {
                RC_ASSERT(std::abs(ab.genes.at[l].of(n) - ba.genes.at[l].of(n)) < 1e-15);
            }
        }
        RC_ASSERT(coats(ab).likeliest() == coats(ba).likeliest());
    }));
}
