// How a coat is inherited: three loci that lie on different chromosomes.
//
// What is exact. A dog is a breed or a cross of two dogs. Of each locus the chances of carrying none,
// one and two copies of its variant are kept, for all loci each by itself.
//
// Within a locus. A parent passes on one of its two copies by a fair coin, so the child gets the
// variant from it with the chance p = P(two) + P(one) / 2, whatever else is known of the parent. Where
// no dog stands on both sides of the pedigree, the two sides share neither founders nor coins, the two
// gametes are independent, and the child carries two copies with p p', one with p (1 - p') + p' (1 - p),
// none with (1 - p)(1 - p'). By induction every dog of the pedigree is exact. Three chances have to be
// kept and not p alone: an F1 of two fixed breeds is surely one copy, not one half by Hardy-Weinberg.
// Its children see nothing of it but p.
//
// Between loci. What a dog carries at a locus is a function of the founders' alleles and of the coins
// at that locus. Coins at loci on different chromosomes are independent, and a founder's loci are
// taken to be (linkage equilibrium within the breed). So the loci of every dog of a given pedigree are
// independent, related parents or not, and chances of combinations are products.
//
// Where it is not exact. If a dog stands on both sides (brother to sister, a dog bred back to its own
// mother) the gametes hang together through what that dog carries. That does no harm where it is
// certain what it carries: given it, its meioses are independent coins again. So F1, F2 and backcrosses
// of breeds that are fixed at the locus are exact even among relatives of the first cross. Where a
// breed's frequency q lies between 0 and 1 and relatives are mated, two copies are likelier than said
// here (by q (1 - q) / 4 for brother and sister of unrelated parents). Dogs named in a mix are taken
// as unrelated.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/base/stats.hpp>
#include <pelage/trade/coat.hpp>

namespace pelage {

/// The loci, each with the variant that is counted: long hair (FGF5, recessive; any two of its known
/// variants act as two copies, Dierks 2013), furnishings (RSPO2, dominant, Parker 2010), curl (KRT71,
/// additive; labs disagree).
enum class locus { long_hair, furnishings, curl };
inline constexpr std::array<std::string_view, 3> locus_names{"long-hair", "furnishings", "curl"};
[[nodiscard]] constexpr std::string_view name(locus l) {
    return locus_names[static_cast<std::size_t>(l)];
}

/// Chances of carrying none, one and two copies of a variant; they sum to 1. `Number` is double, or a
/// rational where a test compares exactly.
template <class Number>
struct copies {
    Number none{1};  ///< chance of no copy
    Number one{0};   ///< chance of one
    Number two{0};   ///< chance of two
    /// The same chances.
    friend bool operator==(const copies& a, const copies& b) {
        return a.none == b.none && a.one == b.one && a.two == b.two;
    }
    /// The chance of `n` copies, 0 to 2.
    [[nodiscard]] const Number& of(int n) const { return n == 0 ? none : n == 1 ? one : two; }
};

/// Surely `n` copies, 0 to 2.
template <class Number>
[[nodiscard]] copies<Number> surely(int n) {
    return {Number(n == 0 ? 1 : 0), Number(n == 1 ? 1 : 0), Number(n == 2 ? 1 : 0)};
}

/// The chance that a dog passes the variant on.
template <class Number>
[[nodiscard]] Number passed_on(const copies<Number>& c) {
    return c.two + c.one / Number(2);
}

/// What two independent gametes make that carry the variant with these chances.
template <class Number>
[[nodiscard]] copies<Number> united(const Number& a, const Number& b) {
    const Number not_a = Number(1) - a;
    const Number not_b = Number(1) - b;
    return {not_a * not_b, a * not_b + not_a * b, a * b};
}

/// A dog of a breed in which the variant has frequency `q`, 0 to 1: Hardy and Weinberg's law.
template <class Number>
[[nodiscard]] copies<Number> in_breed(const Number& q) {
    return united(q, q);
}

/// The child of two dogs that share no ancestor (or only such as are certain at the locus).
template <class Number>
[[nodiscard]] copies<Number> child_of(const copies<Number>& a, const copies<Number>& b) {
    return united(passed_on(a), passed_on(b));
}

/// All three loci of a dog, in the order of `locus`; independent of each other.
template <class Number>
struct genotype {
    std::array<copies<Number>, 3> at{};  ///< by locus

    friend bool operator==(const genotype&, const genotype&) = default;
    [[nodiscard]] const copies<Number>& operator[](locus l) const {
        return at[static_cast<std::size_t>(l)];
    }
    [[nodiscard]] copies<Number>& operator[](locus l) { return at[static_cast<std::size_t>(l)]; }
};

template <class Number>
[[nodiscard]] genotype<Number> child_of(const genotype<Number>& a, const genotype<Number>& b) {
    genotype<Number> child;
    for (std::size_t l = 0; l < child.at.size(); ++l) {
        child.at[l] = child_of(a.at[l], b.at[l]);
    }
    return child;
}

/// The seven types of coat that the three loci tell apart (Cadieu 2009).
enum class coat_type {
    short_hair,
    wire,
    wire_curly,
    long_hair,
    long_furnished,
    curly,
    curly_furnished
};
inline constexpr std::array<std::string_view, 7> coat_type_names{
    "short", "wire", "wire-curly", "long", "long-furnished", "curly", "curly-furnished"};
[[nodiscard]] constexpr std::string_view name(coat_type t) {
    return coat_type_names[static_cast<std::size_t>(t)];
}

/// One combination of what counts: copies of long hair and of curl, 0 to 2, and whether furnished.
struct coat_cell {
    int long_hair = 0;       ///< copies, 0 to 2
    bool furnished = false;  ///< beard and brows
    int curl = 0;            ///< copies, 0 to 2
};

/// The type of a combination. Long hair needs two copies, furnishings and curl show with one. The
/// eighth combination, short and curly without furnishings, is none of the paper's types: such a dog
/// may look straight (second-hand), so it counts as short.
[[nodiscard]] constexpr coat_type type_of(const coat_cell& c) {
    const bool curl = c.curl > 0;
    if (c.long_hair < 2) {
        return !c.furnished ? coat_type::short_hair
               : curl       ? coat_type::wire_curly
                            : coat_type::wire;
    }
    if (c.furnished) {
        return curl ? coat_type::curly_furnished : coat_type::long_furnished;
    }
    return curl ? coat_type::curly : coat_type::long_hair;
}

/// The chance of a combination.
template <class Number>
[[nodiscard]] Number chance_of(const coat_cell& c, const genotype<Number>& g) {
    const copies<Number>& f = g[locus::furnishings];
    return g[locus::long_hair].of(c.long_hair) * (c.furnished ? f.one + f.two : f.none) *
           g[locus::curl].of(c.curl);
}

/// All 18 combinations.
[[nodiscard]] constexpr std::array<coat_cell, 18> coat_cells() {
    std::array<coat_cell, 18> all{};
    for (std::size_t i = 0; i < all.size(); ++i) {
        const int n = static_cast<int>(i);
        all[i] = {n / 6, n / 3 % 2 == 1, n % 3};
    }
    return all;
}

/// Chances of the seven types, in the order of `coat_type`.
template <class Number>
[[nodiscard]] std::array<Number, 7> types_of(const genotype<Number>& g) {
    std::array<Number, 7> out{};
    for (const coat_cell& c : coat_cells()) {
        out[static_cast<std::size_t>(type_of(c))] += chance_of(c, g);
    }
    return out;
}

/// How curl shows: one copy makes waves and two make curls, or one copy does as much as two.
enum class curl_mode { additive, dominant };
inline constexpr std::array<std::string_view, 2> curl_mode_names{"additive", "dominant"};

/// A breed as the reference holds it.
struct breed {
    std::string id;                           ///< its name in lower case, "labrador retriever"
    coat_class coat = coat_class::wavy;       ///< which it has
    std::array<figure<double>, 3> frequency;  ///< of the variant at each locus, 0 to 1
    std::vector<std::string> also;            ///< other names; may be shared with other breeds
    std::vector<std::string> sizes;           ///< words before the name that don't change the coat
    evidence why;                             ///< of its coat, and of what has no basis of its own
};

/// A dog of that breed.
[[nodiscard]] inline genotype<double> genes_of(const breed& b) {
    genotype<double> g;
    for (std::size_t l = 0; l < g.at.size(); ++l) {
        g.at[l] = in_breed(b.frequency[l].best);
    }
    return g;
}

/// A name for a cross: "cockapoo".
struct named_cross {
    std::string id;   ///< as it is written
    std::string mix;  ///< "poodle x cocker spaniel"
    evidence why;     ///< how it is known
};

/// What people write that names no breed: no dog at all, or a cross of which the parents are asked.
struct asked_breed {
    std::vector<std::string> words;    ///< as people write them
    std::vector<std::string> endings;  ///< of a name that nobody knows: "doodle"
    std::string wrong;                 ///< "dogs only"
    std::string right;                 ///< what to write; may be empty
    evidence why;                      ///< how it is known
};

/// A short word within a name: "mini" for "miniature".
struct short_word {
    std::string word;   ///< as people shorten it
    std::string means;  ///< what it stands for
    evidence why;       ///< how it is known
};

/// What is known of a locus.
struct locus_facts {
    std::string gene;  ///< "FGF5"
    std::string says;  ///< what the copies do, in a sentence
    evidence why;      ///< how it is known
};

/// Which of our classes a type stands for. Undercoat and how hair lies don't follow from three loci:
/// where there are several classes, those that dogs of the pedigree have count, by their shares; the
/// first alone where none has any.
struct type_facts {
    std::string title;                 ///< "curly with furnishings"
    std::vector<coat_class> classes;   ///< not empty
    std::vector<coat_class> one_copy;  ///< with one copy of an additive curl; empty: as with two
    evidence why;                      ///< how it is known
};

/// Where practice parts from the model: what such dogs turn out to have.
struct practice_rule {
    std::string id;  ///< as files name it
    coat_cell cell;  ///< of which it is true
    /// Not empty. Several: it isn't known which, and each is taken as likely as the others.
    std::vector<coat_class> coats;
    std::string text;  ///< in a sentence or two
    evidence why;      ///< how it is known
};

/// What settles a question on the table.
struct coat_sign {
    std::string id;    ///< "long-hair", "furnishings", "curl", "undercoat"
    std::string text;  ///< in a sentence or two
    evidence why;      ///< how it is known
};
inline constexpr std::array<std::string_view, 4> sign_names{"long-hair", "furnishings", "curl",
                                                            "undercoat"};

/// All that is known of inheritance (reference/inheritance.toml, reference/breeds.toml).
struct heredity {
    std::array<locus_facts, 3> loci;      ///< in the order of `locus`
    std::array<type_facts, 7> types;      ///< in the order of `coat_type`
    std::vector<practice_rule> practice;  ///< in the order of the file
    std::array<coat_sign, 4> signs;       ///< in the order of `sign_names`
    std::vector<breed> breeds;            ///< those known
    std::vector<named_cross> crosses;     ///< names for them
    std::vector<short_word> shorts;       ///< words that breeds are called in short
    std::vector<asked_breed> asked;       ///< words that are asked back
};

}  // namespace pelage
