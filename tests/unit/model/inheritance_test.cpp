// Inheritance as Mendel has it, in rational numbers, and what breeders are told of it.
#include <algorithm>
#include <numeric>

#include <boost/rational.hpp>

#include <pelage/model/inheritance.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

// compare with ratio(1), never with 1: in C++20 Boost 1.74 then calls itself for ever
using ratio = boost::rational<long long>;
using dog_genes = genotype<ratio>;

dog_genes dog_with(int long_hair, int furnishings, int curl) {
    return {{surely<ratio>(long_hair), surely<ratio>(furnishings), surely<ratio>(curl)}};
}

// as the tables take them: fixed breeds, poodle ll FF CC, golden retriever ll ff cc, Labrador LL ff cc
const dog_genes poodle = dog_with(2, 2, 2);
const dog_genes golden = dog_with(2, 0, 0);
const dog_genes labrador = dog_with(0, 0, 0);

ratio furnished(const dog_genes& g) {
    return g[locus::furnishings].one + g[locus::furnishings].two;
}

/// Chance of furnished or not with that many copies of curl, whatever the length.
ratio joint(const dog_genes& g, bool with_furnishings, int curl) {
    ratio sum = 0;
    for (int l = 0; l <= 2; ++l) {
        sum += chance_of({l, with_furnishings, curl}, g);
    }
    return sum;
}

/// A row of the table of poodle x golden retriever: F-, ff, CC, Cc, cc.
void check_row(const dog_genes& g, ratio f, ratio cc2, ratio cc1, ratio cc0) {
    CHECK(furnished(g) == f);
    CHECK(g[locus::furnishings].none == 1 - f);
    CHECK(g[locus::curl].two == cc2);
    CHECK(g[locus::curl].one == cc1);
    CHECK(g[locus::curl].none == cc0);
    CHECK(g[locus::long_hair] == surely<ratio>(2));
}

/// A row of the table of poodle x Labrador: short, long, furnished long curly and wavy, bare straight.
void check_lab(const dog_genes& g, ratio short_hair, ratio curly, ratio wavy, ratio straight) {
    const ratio long_hair = g[locus::long_hair].two;
    CHECK(long_hair == 1 - short_hair);
    CHECK(chance_of({2, true, 2}, g) == curly);
    CHECK(chance_of({2, true, 1}, g) == wavy);
    CHECK(chance_of({2, false, 0}, g) == straight);
}

coat_type type(int long_hair, int furnishings, int curl) {
    return type_of({long_hair, furnishings > 0, curl});
}

ratio sum(const copies<ratio>& c) {
    return c.none + c.one + c.two;
}

}  // namespace

TEST_CASE("seven types of coat from three loci", "[inheritance]") {
    // Cadieu et al. 2009, Science 326:150-153: the table of coat types, seen second-hand. FGF5 is
    // recessive, furnishings and curl show with one copy.
    CHECK(type(0, 0, 0) == coat_type::short_hair);       // Basset hound
    CHECK(type(0, 2, 0) == coat_type::wire);             // Australian terrier
    CHECK(type(0, 2, 2) == coat_type::wire_curly);       // Airedale
    CHECK(type(2, 0, 0) == coat_type::long_hair);        // Golden retriever
    CHECK(type(2, 2, 0) == coat_type::long_furnished);   // Bearded collie
    CHECK(type(2, 0, 2) == coat_type::curly);            // Irish water spaniel
    CHECK(type(2, 2, 2) == coat_type::curly_furnished);  // Bichon frise
    // one copy: as none for long hair, as two for the others
    for (const int f : {0, 1, 2}) {
        for (const int c : {0, 1, 2}) {
            CHECK(type(1, f, c) == type(0, f, c));
            CHECK(type(f, 1, c) == type(f, 2, c));
            CHECK(type(f, c, 1) == type(f, c, 2));
        }
    }
}

TEST_CASE("poodle x golden retriever, generation by generation", "[inheritance]") {
    // Mendel's laws, worked out by hand 2026-11-25: checks 29 and 30, and the whole table
    const dog_genes f1 = child_of(poodle, golden);
    const dog_genes f1b = child_of(f1, poodle);
    check_row(f1, {1}, {0}, {1}, {0});
    check_row(f1b, {1}, {1, 2}, {1, 2}, {0});
    check_row(child_of(f1, golden), {1, 2}, {0}, {1, 2}, {1, 2});
    check_row(child_of(f1, f1), {3, 4}, {1, 4}, {1, 2}, {1, 4});
    check_row(child_of(f1b, f1), {7, 8}, {3, 8}, {1, 2}, {1, 8});
    check_row(child_of(f1b, f1b), {15, 16}, {9, 16}, {3, 8}, {1, 16});
}

TEST_CASE("furnishings and curl together in poodle x golden retriever", "[inheritance]") {
    // the same, joint phenotypes: sixteenths in the F2, sixty-fourths and 256ths after the backcross
    const dog_genes f1 = child_of(poodle, golden);
    const dog_genes f1b = child_of(f1, poodle);
    const dog_genes f2 = child_of(f1, f1);
    CHECK(joint(f2, true, 1) == ratio(6, 16));
    CHECK(joint(f2, true, 0) == ratio(3, 16));
    CHECK(joint(f2, true, 2) == ratio(3, 16));
    CHECK(joint(f2, false, 1) == ratio(2, 16));
    CHECK(joint(f2, false, 0) == ratio(1, 16));
    CHECK(joint(f2, false, 2) == ratio(1, 16));
    const dog_genes mixed = child_of(f1b, f1);
    const std::array<ratio, 3> with{ratio(7, 64), ratio(28, 64), ratio(21, 64)};
    const std::array<ratio, 3> without{ratio(1, 64), ratio(4, 64), ratio(3, 64)};
    const dog_genes later = child_of(f1b, f1b);
    const std::array<ratio, 3> later_with{ratio(15, 256), ratio(90, 256), ratio(135, 256)};
    const std::array<ratio, 3> later_without{ratio(1, 256), ratio(6, 256), ratio(9, 256)};
    for (int c = 0; c <= 2; ++c) {
        const auto i = static_cast<std::size_t>(c);
        CHECK(joint(mixed, true, c) == with[i]);
        CHECK(joint(mixed, false, c) == without[i]);
        CHECK(joint(later, true, c) == later_with[i]);
        CHECK(joint(later, false, c) == later_without[i]);
    }
    // read as dominant: 9 : 3 : 3 : 1
    CHECK(joint(f2, true, 1) + joint(f2, true, 2) == ratio(9, 16));
    CHECK(joint(f2, false, 1) + joint(f2, false, 2) == ratio(3, 16));
}

TEST_CASE("poodle x Labrador, generation by generation", "[inheritance]") {
    // the same: check 31 and the whole table
    const dog_genes f1 = child_of(poodle, labrador);
    const dog_genes f1b = child_of(f1, poodle);
    check_lab(f1, {1}, {0}, {0}, {0});
    check_lab(f1b, {1, 2}, {1, 4}, {1, 4}, {0});
    check_lab(child_of(f1, labrador), {1}, {0}, {0}, {0});
    check_lab(child_of(f1, f1), {3, 4}, {3, 64}, {6, 64}, {1, 64});
    check_lab(child_of(f1b, f1), {5, 8}, {63, 512}, {84, 512}, {3, 512});
    check_lab(child_of(f1b, f1b), {7, 16}, {1215, 4096}, {810, 4096}, {9, 4096});
    // an F1 is short with a beard and one copy of curl, every pup
    CHECK(types_of(f1)[static_cast<std::size_t>(coat_type::wire_curly)] == ratio(1));
}

TEST_CASE("a breed bred to itself stays as it is", "[inheritance]") {
    // Hardy 1908 and Weinberg 1908: random mating keeps p^2, 2pq, q^2
    for (const ratio q : {ratio(0), ratio(1, 7), ratio(1, 2), ratio(9, 10), ratio(1)}) {
        const copies<ratio> b = in_breed(q);
        CHECK(b.two == q * q);
        CHECK(b.one == 2 * q * (1 - q));
        CHECK(b.none == (1 - q) * (1 - q));
        CHECK(child_of(b, b) == b);
        CHECK(passed_on(b) == q);
    }
    // and one generation is enough to get there, from any start
    const copies<ratio> odd{ratio(1, 2), ratio(0), ratio(1, 2)};
    const copies<ratio> next = child_of(odd, odd);
    CHECK_FALSE(next == odd);
    CHECK(child_of(next, next) == next);
}

TEST_CASE("a furnishing the poodle lacks, the F1 lacks as often", "[inheritance]") {
    // derived: to a breed without it, F1 pups go bare with the chance that the poodle passes f on
    const ratio q(9, 10);
    const copies<ratio> f1 = child_of(in_breed(q), surely<ratio>(0));
    CHECK(f1.none == 1 - q);
    CHECK(f1.one == q);
}

TEST_CASE("chances sum to one and it doesn't matter which parent is the mother", "[inheritance]") {
    const copies<ratio> a = in_breed(ratio(2, 7));
    const copies<ratio> b{ratio(1, 3), ratio(1, 6), ratio(1, 2)};
    CHECK(sum(child_of(a, b)) == ratio(1));
    CHECK(child_of(a, b) == child_of(b, a));
    const dog_genes g{{a, b, child_of(a, b)}};
    const auto types = types_of(g);
    CHECK(std::accumulate(types.begin(), types.end(), ratio(0)) == ratio(1));
}

namespace {

/// One locus of a small pedigree, by every combination of founders' alleles and of coins. A dog is
/// two alleles; an allele is a founder's, numbered.
struct by_hand {
    std::vector<ratio> variant;                ///< of each founder allele: chance that it is one
    std::vector<std::pair<int, int>> parents;  ///< of each dog that isn't a founder
    int founders = 0;                          ///< dogs 0 ... founders-1, alleles 2d and 2d+1

    /// Chances of the last dog.
    [[nodiscard]] copies<ratio> last() const {
        copies<ratio> out{0, 0, 0};
        const auto coins = static_cast<unsigned>(2 * parents.size());
        for (unsigned toss = 0; toss < 1U << coins; ++toss) {
            std::vector<std::pair<std::size_t, std::size_t>> dogs;
            for (int d = 0; d < founders; ++d) {
                const auto first = static_cast<std::size_t>(2 * d);
                dogs.emplace_back(first, first + 1);
            }
            unsigned coin = 0;
            for (const auto& [mother, father] : parents) {
                const auto pick = [&](int parent) {
                    const auto& p = dogs[static_cast<std::size_t>(parent)];
                    return (toss >> coin++ & 1U) != 0 ? p.first : p.second;
                };
                const std::size_t a = pick(mother);
                const std::size_t b = pick(father);
                dogs.emplace_back(a, b);
            }
            add(dogs.back(), ratio(1, 1LL << coins), out);
        }
        return out;
    }

  private:
    void add(const std::pair<std::size_t, std::size_t>& dog, ratio weight,
             copies<ratio>& to) const {
        const auto& [a, b] = dog;
        const ratio p = variant[a];
        const ratio q = variant[b];
        if (a == b) {  // the same allele twice
            to.two += weight * p;
            to.none += weight * (1 - p);
            return;
        }
        to.two += weight * p * q;
        to.one += weight * (p * (1 - q) + q * (1 - p));
        to.none += weight * (1 - p) * (1 - q);
    }
};

std::vector<ratio> alleles(std::initializer_list<ratio> frequencies) {
    std::vector<ratio> out;
    for (const ratio& q : frequencies) {
        out.insert(out.end(), {q, q});
    }
    return out;
}

}  // namespace

TEST_CASE("unrelated dogs: exact, whatever the frequencies", "[inheritance]") {
    // judged by every combination of alleles and coins
    const ratio p(1, 3);
    const ratio q(3, 4);
    const ratio r(9, 10);
    const ratio s(1, 10);
    // (p x q) x (r x s)
    const by_hand four{alleles({p, q, r, s}), {{0, 1}, {2, 3}, {4, 5}}, 4};
    CHECK(four.last() ==
          child_of(child_of(in_breed(p), in_breed(q)), child_of(in_breed(r), in_breed(s))));
    // ((p x q) x r) x s
    const by_hand line{alleles({p, q, r, s}), {{0, 1}, {4, 2}, {5, 3}}, 4};
    CHECK(line.last() ==
          child_of(child_of(child_of(in_breed(p), in_breed(q)), in_breed(r)), in_breed(s)));
}

TEST_CASE("relatives of fixed breeds: exact as well", "[inheritance]") {
    // brother and sister of the first cross, and a dog bred back to its own fixed mother
    const by_hand f2{alleles({1, 0}), {{0, 1}, {0, 1}, {2, 3}}, 2};
    const auto f1 = child_of(surely<ratio>(2), surely<ratio>(0));
    CHECK(f2.last() == child_of(f1, f1));
    const by_hand back{alleles({1, 0}), {{0, 1}, {0, 2}}, 2};
    CHECK(back.last() == child_of(surely<ratio>(2), f1));
    // littermates of the backcross
    const by_hand f1bs{alleles({1, 0}), {{0, 1}, {0, 2}, {0, 2}, {3, 4}}, 2};
    const auto f1b = child_of(surely<ratio>(2), f1);
    CHECK(f1bs.last() == child_of(f1b, f1b));
}

TEST_CASE("relatives where the breed isn't fixed: not exact, by what the header says",
          "[inheritance]") {
    // brother to sister of unrelated parents: q (1 - q) / 4 more of two copies (Wright's F = 1/4)
    const ratio q(3, 10);
    const by_hand sibs{alleles({q, q}), {{0, 1}, {0, 1}, {2, 3}}, 2};
    const copies<ratio> taken = in_breed(q);
    const copies<ratio> truly = sibs.last();
    CHECK(truly.two - taken.two == q * (1 - q) / 4);
    CHECK(truly.none - taken.none == q * (1 - q) / 4);
    // a dog bred back to its own mother
    const by_hand back{alleles({q, q}), {{0, 1}, {0, 2}}, 2};
    CHECK(back.last().two > taken.two);
    // frequencies of what is passed on stay right all the same
    CHECK(passed_on(truly) == passed_on(taken));
    CHECK(passed_on(back.last()) == passed_on(taken));
}
