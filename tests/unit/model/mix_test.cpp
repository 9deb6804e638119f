// Mixes as people write them, and the coats they come to.
#include <algorithm>
#include <cmath>
#include <numeric>

#include <pelage/base/suggest.hpp>
#include <pelage/data/reference.hpp>
#include <pelage/model/mix.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const heredity& genes() {
    return io::reference().genes;
}

mix read(const std::string& text) {
    return read_mix(text, genes());
}

coat_answer coats(const std::string& text, curl_mode curl = curl_mode::additive) {
    return coats_of(read(text).dog, genes(), io::reference().coats, curl);
}

double chance_of_coat(const coat_answer& a, coat_class c) {
    for (const coat_chance& k : a.coats) {
        if (k.coat == c) {
            return k.chance;
        }
    }
    return 0.0;
}

/// The faults of a mix; fails the test if it can be read.
diagnostics wrong_in(const std::string& text) {
    try {
        (void)read(text);
    } catch (const bad_input& e) {
        return e.all();
    }
    FAIL("read: " << text);
    return {};
}

void check_wrong(const std::string& text, unsigned column, errc code, const std::string& told) {
    INFO(text);
    const diagnostics all = wrong_in(text);
    INFO(all.front().text);
    CHECK(all.size() == 1);
    CHECK(all.front().column == column);
    CHECK(all.front().code == code);
    CHECK(all.front().text.find(told) != std::string::npos);
}

bool noted(const mix& m, const std::string& part) {
    return std::any_of(m.notes.begin(), m.notes.end(),
                       [&](const std::string& n) { return n.find(part) != std::string::npos; });
}

/// Same chances of everything, and the same ancestors.
void check_same(const std::string& a, const std::string& b) {
    INFO(a << " and " << b);
    const bred x = read(a).dog;
    const bred y = read(b).dog;
    for (std::size_t l = 0; l < x.genes.at.size(); ++l) {
        for (int n = 0; n <= 2; ++n) {
            CHECK(std::abs(x.genes.at[l].of(n) - y.genes.at[l].of(n)) < 1e-15);
        }
    }
    REQUIRE(x.from.size() == y.from.size());
    for (const ancestry& p : x.from) {
        CHECK(std::any_of(y.from.begin(), y.from.end(), [&](const ancestry& q) {
            return p.breed == q.breed && std::abs(p.share - q.share) < 1e-15;
        }));
    }
}

}  // namespace

TEST_CASE("every breed comes to its own coat", "[mix]") {
    // the model against the look of each breed: what the reference says of both
    REQUIRE(genes().breeds.size() >= 60);
    for (const breed& b : genes().breeds) {
        INFO(b.id);
        const coat_answer a = coats(b.id);
        CHECK(a.likeliest() == b.coat);
        CHECK(a.practice.empty());
    }
}

TEST_CASE("every name of a breed finds it or is asked back", "[mix]") {
    for (const breed& b : genes().breeds) {
        for (const std::string& n : b.also) {
            INFO(n);
            try {
                const bred dog = read(n).dog;
                CHECK(genes().breeds[dog.from.front().breed].coat == b.coat);
            } catch (const bad_input& e) {
                CHECK(e.code() == errc::ambiguous);
                CHECK(std::string(e.what()).find(b.id) != std::string::npos);
            }
        }
        for (const std::string& s : b.sizes) {
            CHECK(read(s + " " + b.id).dog.text == s + " " + b.id);
        }
    }
    for (const named_cross& c : genes().crosses) {
        check_same(c.id, c.mix);
    }
}

TEST_CASE("the size of a poodle doesn't change its coat", "[mix]") {
    const mix plain = read("poodle");
    CHECK(noted(plain, "the coat is the same"));
    CHECK(read("toy poodle").notes.empty());
    check_same("poodle", "Miniature Poodle");
    check_same("poodle x maltese", "standard poodle X MALTESE");
}

TEST_CASE("generations are what salons call them", "[mix]") {
    check_same("F1 poodle x beagle", "poodle x beagle");
    check_same("F1b poodle x beagle to poodle", "(poodle x beagle) x poodle");
    check_same("f1B poodle x beagle back to beagle", "beagle x (poodle x beagle)");
    check_same("F1bb poodle x beagle to poodle", "((poodle x beagle) x poodle) x poodle");
    check_same("F2 poodle x beagle", "(poodle x beagle) x (poodle x beagle)");
    check_same("F2b poodle x beagle to poodle",
               "(poodle x beagle) x (F1b poodle x beagle to poodle)");
    check_same("F3 poodle x beagle", "(F2 poodle x beagle) x (F2 poodle x beagle)");
    check_same("poodle x beagle F1b to poodle", "F1b poodle x beagle to poodle");
    check_same("F1b cockapoo to poodle", "(poodle x cocker spaniel) x poodle");
    check_same("F1b miniature poodle x labrador to poodle", "(poodle x lab) x poodle");
    check_same("poodle \u00d7 beagle", "poodle cross beagle");
    CHECK(noted(read("F2b poodle x beagle to poodle"), "who means F2 x poodle writes"));
    CHECK(noted(read("F1b poodle x beagle to poodle"), "is read as (poodle x beagle) x poodle"));
    CHECK(noted(read("cockapoo"), "taken as a first cross"));
}

TEST_CASE("a mix prints as it can be read again", "[mix]") {
    for (const std::string text :
         {"poodle", "miniature poodle x english cocker spaniel", "(poodle x beagle) x poodle",
          "F2 (poodle x beagle) x (boxer x pug)", "F1b poodle x beagle to beagle",
          "(genotype l/l F/f C/c) x poodle", "genotype Lh1/Lh2 f/f N/C"}) {
        INFO(text);
        const std::string printed = read(text).dog.text;
        INFO(printed);
        check_same(text, printed);
        CHECK(read(printed).dog.text == printed);
    }
}

TEST_CASE("a genotype by hand", "[mix]") {
    // Dierks et al. 2013, Animal Genetics 44:425-431: any two of the five variants make long hair
    // (check 32); one of them beside the normal allele does not
    for (int i = 1; i <= 5; ++i) {
        const std::string a = "Lh" + std::to_string(i);
        for (int j = 1; j <= 5; ++j) {
            const std::string b = "Lh" + std::to_string(j);
            const auto t = coats("genotype " + a + "/" + b + " f/f c/c").types;
            CHECK(t[static_cast<std::size_t>(coat_type::long_hair)] == 1.0);
        }
        for (const std::string normal : {"N", "L"}) {
            const auto t = coats("genotype " + a + "/" + normal + " f/f c/c").types;
            CHECK(t[static_cast<std::size_t>(coat_type::short_hair)] == 1.0);
        }
    }
    check_same("genotype C/c F/f l/l", "genotype l/l F/f C/c");
    check_same("genotype l/L N/F C/N", "genotype L/l f/F c/C");
    CHECK(coats("genotype l/l F/f C/c").likeliest() == coat_class::wavy);
    CHECK(coats("genotype l/l F/f C/C").likeliest() == coat_class::curly);
    CHECK(coats("genotype l/l F/f C/c", curl_mode::dominant).likeliest() == coat_class::curly);
    CHECK(coats("genotype L/L F/F c/c").likeliest() == coat_class::wire);
}

TEST_CASE("one dose of curl waves, and curls where it is read as dominant", "[mix]") {
    const auto f2 = coats("F2 poodle x cocker spaniel");
    CHECK(chance_of_coat(f2, coat_class::wavy) == 0.5);
    CHECK(chance_of_coat(f2, coat_class::curly) == 0.25);
    const auto read_so = coats("F2 poodle x cocker spaniel", curl_mode::dominant);
    CHECK(chance_of_coat(read_so, coat_class::curly) == 0.75);
    CHECK(chance_of_coat(read_so, coat_class::wavy) == 0.0);
}

TEST_CASE("practice speaks where it parts from the genes", "[mix]") {
    // common practice, no source: a first cross of poodle and Labrador is wavy; the genes say short
    // with furnishings
    const coat_answer a = coats("poodle x labrador retriever");
    CHECK(a.likeliest() == coat_class::wavy);
    CHECK(a.types[static_cast<std::size_t>(coat_type::wire_curly)] == 1.0);
    REQUIRE(a.practice.size() == 1);
    CHECK(a.practice.front().model == coat_type::wire_curly);
    CHECK(genes().practice[a.practice.front().rule].why.how == basis::practice);
    // a terrier is as wiry in practice as by its genes
    CHECK(coats("airedale terrier x cairn terrier").practice.empty());
}

TEST_CASE("no curl and one long parent: silky or scruffy, and nobody knows which", "[mix]") {
    for (const char* text :
         {"shih tzu x beagle", "maltese x beagle", "yorkshire terrier x smooth chihuahua"}) {
        INFO(text);
        const coat_answer a = coats(text);
        CHECK(a.types[static_cast<std::size_t>(coat_type::wire)] > 0.7);  // by the genes alone
        CHECK(chance_of_coat(a, coat_class::wire) == 0.0);
        CHECK(std::abs(chance_of_coat(a, coat_class::drop) -
                       chance_of_coat(a, coat_class::shaggy)) < 0.3);
        const practice_rule& rule = genes().practice[a.practice.front().rule];
        CHECK(rule.coats.size() == 2);
        CHECK(rule.why.how == basis::assumption);
    }
    // a furnished long coat without curl is nobody's double coat
    CHECK(chance_of_coat(coats("havanese"), coat_class::double_long) < 0.01);
    CHECK(chance_of_coat(coats("havanese"), coat_class::shaggy) > 0.2);
}

TEST_CASE("undercoat and drop are taken from the breeds that have them", "[mix]") {
    CHECK(coats("labrador x golden retriever").likeliest() == coat_class::double_short);
    CHECK(coats("boxer x whippet").likeliest() == coat_class::smooth);
    CHECK(coats("maltese x shih tzu").likeliest() == coat_class::drop);
    CHECK(coats("collie x samoyed").likeliest() == coat_class::double_long);
    const coat_answer both = coats("boxer x labrador");
    CHECK(chance_of_coat(both, coat_class::smooth) == 0.5);
    CHECK(chance_of_coat(both, coat_class::double_short) == 0.5);
    // a dog of no breed: the first that the type stands for, and a look at the undercoat
    const coat_answer none = coats("genotype L/L f/f c/c");
    CHECK(none.likeliest() == coat_class::double_short);
    CHECK(none.signs == std::vector<std::size_t>{3});
}

TEST_CASE("chances of coats sum to one, the likeliest first", "[mix]") {
    for (const std::string text : {"portuguese water dog x havanese", "F3 poodle x german shepherd",
                                   "(shih tzu x corgi) x (spanish water dog x irish terrier)",
                                   "F2 bichon frise x smooth chihuahua"}) {
        INFO(text);
        const coat_answer a = coats(text);
        double sum = 0.0;
        for (std::size_t i = 0; i < a.coats.size(); ++i) {
            sum += a.coats[i].chance;
            CHECK((i == 0 || a.coats[i - 1].chance >= a.coats[i].chance - 1e-9));
        }
        CHECK(std::abs(sum - 1.0) < 1e-9);
        CHECK(std::abs(std::accumulate(a.types.begin(), a.types.end(), 0.0) - 1.0) < 1e-12);
    }
}

TEST_CASE("between equal chances the plan errs on the longer side", "[mix]") {
    // F1b: curly or wavy alike; curls stand off, so what is set for them leaves waves longer
    CHECK(coats("F1b poodle x golden retriever to poodle").likeliest() == coat_class::curly);
    // smooth or double short alike: neither jacket is clipped, the greater angle of the lay decides
    CHECK(coats("boxer x labrador").likeliest() == coat_class::double_short);
}

TEST_CASE("what is asked back, and where", "[mix]") {
    check_wrong("F1b poodle x labrador", 1, errc::ambiguous,
                "\"F1b poodle x labrador retriever to poodle\" or");
    check_wrong("poodle x lab x beagle", 14, errc::ambiguous, "which two first?");
    check_wrong("dachshund", 1, errc::ambiguous, "\"smooth dachshund\"");
    check_wrong("poodle x miniature dachshund", 10, errc::ambiguous,
                "\"miniature smooth dachshund\"");
    check_wrong("terrier", 1, errc::unknown, "which? there is \"bedlington terrier\"");
    check_wrong("F2 cockapoo x beagle", 1, errc::ambiguous, "put brackets");
    check_wrong("genotype N/N F/f C/c", 10, errc::ambiguous, "N/N could be any locus");
}

TEST_CASE("what is wrong in a mix, and where", "[mix]") {
    check_wrong("", 1, errc::missing, "no breed is named");
    check_wrong("  ", 3, errc::missing, "no breed is named");
    check_wrong("poodle x", 9, errc::missing, "found the end");
    check_wrong("x poodle", 1, errc::missing, "found \"x\"");
    check_wrong("pooodle x beagle", 1, errc::unknown, "did you mean \"poodle\"?");
    check_wrong("beagle x labardor", 10, errc::unknown, "did you mean \"labrador\"?");
    check_wrong("big poodle", 1, errc::unknown, "did you mean \"poodle\"?");
    check_wrong("(poodle x beagle", 1, errc::syntax, "write \")\"");
    check_wrong("poodle x beagle)", 16, errc::syntax, "leave it out");
    check_wrong("(poodle x beagle) pug", 19, errc::syntax, "write \"x\" between");
    check_wrong("F7 poodle x beagle", 1, errc::unknown, "known are F1, F1b");
    check_wrong("F1b poodle", 1, errc::missing, "is of a cross");
    check_wrong("F1b", 4, errc::missing, "a dog is missing");
    check_wrong("F1b poodle x beagle to pug", 21, errc::unknown, "one of the two parents");
    check_wrong("F2 poodle x beagle to poodle", 20, errc::conflict, "no backcross");
    check_wrong("pug x F1 poodle x beagle", 7, errc::syntax, "put brackets around it");
    check_wrong("genotype l/l F/f", 1, errc::missing, "found none for curl");
    check_wrong("genotype l/l l/L F/f C/c", 14, errc::duplicate, "the same locus twice");
    check_wrong("genotype l/F F/f C/c", 10, errc::unknown, "not two alleles of one locus");
    check_wrong("genotype q/l F/f C/c", 10, errc::unknown, "not two alleles of one locus");
    // columns count characters, not bytes
    check_wrong("löwchen x beegle", 11, errc::unknown, "did you mean \"beagle\"?");
    check_wrong(std::string(3000, 'a'), 1, errc::range, "right are at most 2000");
}

TEST_CASE("every stranger of a mix is told at once", "[mix]") {
    const diagnostics all = wrong_in("pooodle x (beegle x pgu)");
    REQUIRE(all.size() == 3);
    CHECK(all[0].column == 1);
    CHECK(all[1].column == 12);
    CHECK(all[2].column == 21);
}

TEST_CASE("a mix goes sixteen crosses deep and no deeper", "[mix]") {
    std::string text = "poodle";
    for (int i = 0; i < deepest_mix; ++i) {
        text = "(" + text + ") x beagle";
    }
    const bred dog = read(text).dog;
    CHECK(dog.depth == deepest_mix);
    // derived: half of the poodle is lost with each cross
    CHECK(dog.from.front().share == std::ldexp(1.0, -deepest_mix));
    const diagnostics all = wrong_in("(" + text + ") x beagle");
    CHECK(all.front().code == errc::range);
    CHECK(wrong_in(std::string(500, '(')).front().code == errc::range);
    CHECK_THROWS_AS(cross(dog, dog), error);
}

TEST_CASE("a breed, a mix or a tool", "[mix]") {
    const auto mixes = {"poodle",   "poodle x beagle", "labrador",  "F1b poodle",
                        "cockapoo", "genotype l/l",    "terrier",   "pooodle",
                        "X",        "(poodle)",        "big poodle"};
    for (const std::string text : mixes) {
        INFO(text);
        CHECK(sounds_like_mix(text, genes()));
    }
    for (const std::string text : {"7F", "9mm", "3/8in", "13 mm comb over 10", "5/8 long", "comb",
                                   "adjustable", "#7f", "zebra", "", "nan", "8 1/2", "blade 2"}) {
        INFO(text);
        CHECK_FALSE(sounds_like_mix(text, genes()));
    }
    for (const blade& b : io::reference().blades) {
        INFO(b.id);
        CHECK_FALSE(sounds_like_mix(b.id, genes()));
    }
}

TEST_CASE("what can be a name in a mix", "[mix]") {
    for (const std::string name : {"poodle", "coton de tul\u00e9ar", "old english sheepdog"}) {
        CHECK(is_mix_name(name));
    }
    for (const std::string name :
         {"", " ", "Poodle", "poodle ", " poodle", "old  english", "f1", "long-haired",
          "st. bernard", "x", "back to poodle", "a \u00d7 b", "genotype"}) {
        INFO(name);
        CHECK_FALSE(is_mix_name(name));
    }
}
