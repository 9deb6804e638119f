// Inheritance against pups bred one by one: founders' alleles drawn by their frequency, a coin at every
// meiosis and locus. All 27 genotypes are counted, so independence of the loci is judged too; Pearson's
// chi-square, its tail from the GNU Scientific Library.
#include <array>
#include <memory>
#include <string>
#include <vector>

#include <gsl/gsl_cdf.h>

#include <pelage/model/mix.hpp>

#include "catch.hpp"
#include "oracle/draws.hpp"

using namespace pelage;

namespace {

// a true model falls below once in ten thousand seeds, a false one by dozens of orders of magnitude
constexpr double least_tail = 1e-4;

/// A pedigree: a breed, or a cross of two.
struct tree {
    std::size_t breed = 0;
    std::shared_ptr<tree> mother{};
    std::shared_ptr<tree> father{};
};
using pedigree = std::shared_ptr<tree>;

pedigree of(std::size_t breed) {
    return std::make_shared<tree>(tree{breed});
}
pedigree cross_of(pedigree a, pedigree b) {
    return std::make_shared<tree>(tree{0, std::move(a), std::move(b)});
}

std::string letters(std::size_t breed) {
    return std::string("breed ") + static_cast<char>('a' + breed);
}
std::string text_of(const pedigree& p) {
    return p->mother ? "(" + text_of(p->mother) + ") x (" + text_of(p->father) + ")"
                     : letters(p->breed);
}

/// Four breeds; one of them fixed at every locus.
heredity four_breeds(oracle::draws& d) {
    heredity h;
    for (std::size_t b = 0; b < 4; ++b) {
        breed one;
        one.id = letters(b);
        for (figure<double>& f : one.frequency) {
            f = exactly(b == 0 ? 1.0 : d.between(0.05, 0.95), {});
        }
        h.breeds.push_back(std::move(one));
    }
    return h;
}

/// Two alleles at each of three loci.
using alleles = std::array<std::array<bool, 2>, 3>;

alleles bred(const pedigree& p, const heredity& h, oracle::draws& d) {
    alleles pup{};
    if (!p->mother) {
        for (std::size_t l = 0; l < pup.size(); ++l) {
            for (bool& a : pup[l]) {
                a = d.between(0.0, 1.0) < h.breeds[p->breed].frequency[l].best;
            }
        }
        return pup;
    }
    const alleles mother = bred(p->mother, h, d);
    const alleles father = bred(p->father, h, d);
    for (std::size_t l = 0; l < pup.size(); ++l) {
        pup[l] = {mother[l][d.between(0.0, 1.0) < 0.5 ? 0 : 1],
                  father[l][d.between(0.0, 1.0) < 0.5 ? 0 : 1]};
    }
    return pup;
}

using counts = std::array<double, 27>;

counts counted(const pedigree& p, const heredity& h, int pups, oracle::draws& d) {
    counts n{};
    for (int i = 0; i < pups; ++i) {
        std::size_t at = 0;
        for (const auto& [a, b] : bred(p, h, d)) {
            at = 3 * at + (a ? 1U : 0U) + (b ? 1U : 0U);
        }
        n[at] += 1.0;
    }
    return n;
}

counts expected(const genotype<double>& g, int pups) {
    counts n{};
    for (int i = 0; i < 27; ++i) {
        n[static_cast<std::size_t>(i)] =
            pups * g.at[0].of(i / 9) * g.at[1].of(i / 3 % 3) * g.at[2].of(i % 3);
    }
    return n;
}

/// P(a chi-square as large or larger); rare genotypes are put together, impossible ones must be none.
double tail(const counts& seen, const counts& wanted) {
    double chi = 0.0;
    double rare_seen = 0.0;
    double rare_wanted = 0.0;
    int cells = 0;
    const auto add = [&](double s, double w) {
        chi += (s - w) * (s - w) / w;
        ++cells;
    };
    for (std::size_t i = 0; i < seen.size(); ++i) {
        if (wanted[i] <= 0.0 && seen[i] > 0.0) {
            return 0.0;
        }
        if (wanted[i] >= 10.0) {
            add(seen[i], wanted[i]);
        } else {
            rare_seen += seen[i];
            rare_wanted += wanted[i];
        }
    }
    if (rare_wanted >= 1.0) {
        add(rare_seen, rare_wanted);
    }
    return cells > 1 ? gsl_cdf_chisq_Q(chi, cells - 1) : 1.0;
}

std::vector<pedigree> pedigrees() {
    const auto a = of(0);
    const auto b = of(1);
    const auto c = of(2);
    const auto e = of(3);
    const auto f1 = cross_of(a, b);
    const auto four = cross_of(cross_of(b, c), cross_of(e, a));
    return {b,
            f1,
            cross_of(f1, a),                // F1b
            cross_of(f1, f1),               // F2, of unrelated F1s
            cross_of(cross_of(f1, a), f1),  // F1b x F1
            four,
            cross_of(four, cross_of(four, e))};  // four generations
}

void judge(int pups) {
    oracle::draws d(20261125);
    for (const pedigree& p : pedigrees()) {
        const heredity h = four_breeds(d);
        INFO(text_of(p));
        const genotype<double> g = read_mix(text_of(p), h).dog.genes;
        CHECK(tail(counted(p, h, pups, d), expected(g, pups)) > least_tail);
    }
}

}  // namespace

TEST_CASE("a hundred thousand pups of each pedigree", "[oracle][inheritance]") {
    judge(100000);
}

TEST_CASE("a million pups of each pedigree", "[oracle][inheritance][.full]") {
    judge(1000000);
}

TEST_CASE("the judge sees a wrong model", "[oracle][inheritance]") {
    oracle::draws d(7);
    const heredity h = four_breeds(d);
    const auto f1 = cross_of(of(0), of(1));
    const int pups = 100000;
    const counts seen = counted(f1, h, pups, d);
    const genotype<double> right = read_mix(text_of(f1), h).dog.genes;
    // an F1 taken for a breed of its mean frequency: Hardy-Weinberg where it doesn't hold
    genotype<double> wrong = right;
    for (copies<double>& c : wrong.at) {
        c = in_breed(passed_on(c));
    }
    CHECK(tail(seen, expected(right, pups)) > least_tail);
    CHECK(tail(seen, expected(wrong, pups)) < 1e-12);
    // one in a hundred more at one locus
    genotype<double> near = right;
    near.at[2] = {right.at[2].none, right.at[2].one - 0.01, right.at[2].two + 0.01};
    CHECK(tail(seen, expected(near, pups)) < 1e-8);
}
