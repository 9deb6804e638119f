// A dog's coat from its breed or mix: what a person writes, and which coats it may come to.
#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/model/inheritance.hpp>
#include <pelage/trade/coat.hpp>

namespace pelage {

/// The part of its ancestors that are of one breed.
struct ancestry {
    std::size_t breed = 0;  ///< index into heredity::breeds
    double share = 0.0;     ///< over 0, at most 1
};

/// A dog before anybody has seen it.
struct bred {
    genotype<double> genes;      ///< at the three loci
    std::vector<ancestry> from;  ///< shares sum to 1 or, with a dog of no breed among them, to less
    int depth = 0;               ///< crosses from here to the furthest breed
    std::string text;            ///< as one would write it: "(poodle x beagle) x poodle"
};

/// Its text as part of a longer one: in brackets unless it is a name.
[[nodiscard]] inline std::string as_part(const bred& b) {
    return b.depth > 0 || b.text.starts_with("genotype") ? "(" + b.text + ")" : b.text;
}  ///< the first of the coats

/// How many crosses deep a mix may go.
inline constexpr int deepest_mix = 16;

/// A dog of the breed with that index, called `text` (its id if empty).
[[nodiscard]] bred of_breed(const heredity& h, std::size_t index, std::string text = {});
/// A pup of two unrelated dogs. Throws error(range) beyond `deepest_mix`.
[[nodiscard]] bred cross(const bred& a, const bred& b);

/// A mix as read, and how it was understood.
struct mix {
    bred dog;                        ///< as it is bred
    std::vector<std::string> notes;  ///< whole sentences
};

/// Reads a breed or a mix:
///
///   mix   =  dog "x" dog | dog                   "x", the multiplication sign or "cross"
///   dog   =  breed | "(" mix ")" | generation | genotype
///   generation = F1 | F1b | F1bb | F2 | F2b | F3, before or after  dog "x" dog,  and of a backcross
///                also  ["back"] "to" dog        "F1b poodle x labrador to poodle"
///   genotype = "genotype" and the three loci     "genotype l/l F/f C/c"
///
/// l is the recessive variant for long hair (or Lh1 to Lh5), F furnishings, C curl; L, f, c are
/// without. Letter case of breeds and generations doesn't count. Throws bad_input with every fault
/// (file "mix", line 1, column in characters): unknown names with the nearest, names that mean several
/// coats, three dogs without brackets, a backcross that doesn't say to whom.
[[nodiscard]] mix read_mix(std::string_view text, const heredity& h);

/// Whether `s` can be the name of a breed in a mix: words of small letters with single blanks between,
/// none of them a word of the mix itself.
[[nodiscard]] bool is_mix_name(std::string_view s);

/// Whether the text means a breed or a mix rather than a blade, comb or length.
[[nodiscard]] bool sounds_like_mix(std::string_view text, const heredity& h);

/// One coat with its chance.
struct coat_chance {
    coat_class coat = coat_class::wavy;  ///< which
    double chance = 0.0;                 ///< 0 to 1
};

/// Where practice spoke instead of the model.
struct practice_hit {
    std::size_t rule = 0;  ///< index into heredity::practice
    double chance = 0.0;   ///< of such pups
    coat_type model;       ///< what the genes alone would make them
};

/// What coat a mix comes to.
struct coat_answer {
    std::array<double, 7> types{};       ///< by coat_type, the genes alone
    std::vector<coat_chance> coats;      ///< over 0, the likeliest first
    std::vector<practice_hit> practice;  ///< where practice differs from the genes
    std::vector<std::size_t> signs;      ///< what to look at; indices into heredity::signs

    [[nodiscard]] coat_class likeliest() const { return coats.front().coat; }  ///< the first
};

/// The coats of a dog with their chances. Between equal chances the coat stands first whose jacket is
/// not plainly clipped, then the one whose hair stands off more: to plan on it errs on the longer side.
/// `coats` are all classes, in the order of coat_class.
[[nodiscard]] coat_answer coats_of(const bred& dog, const heredity& h,
                                   const std::vector<coat>& coats,
                                   curl_mode curl = curl_mode::additive);

/// The coat to expect of a dog nobody has seen.
struct expected_coat {
    std::string asked;                     ///< as typed
    mix read;                              ///< as it was understood
    coat_answer may_be;                    ///< the coats with their chances
    curl_mode curl = curl_mode::additive;  ///< how two copies of curl count
};

/// Reads the mix and says what coats it comes to. Throws what read_mix throws.
[[nodiscard]] inline expected_coat expect_coat(std::string_view text, const heredity& h,
                                               const std::vector<coat>& coats,
                                               curl_mode curl = curl_mode::additive) {
    mix m = read_mix(text, h);
    coat_answer a = coats_of(m.dog, h, coats, curl);
    return {std::string(text), std::move(m), std::move(a), curl};
}

}  // namespace pelage
