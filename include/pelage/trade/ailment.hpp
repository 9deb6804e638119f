// What is told of a dog's health, read by words that the reference knows.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/trade/finding.hpp>

namespace pelage {

/// What there is advice for; reference/cautions.toml has the words, the cautions the advice.
enum class ailment_kind {
    heart,     ///< heart, breath, windpipe: what faints or can't be held by the neck
    joints,    ///< joints, hips, back
    blind,     ///< blind, or sees little
    deaf,      ///< deaf, or hears little
    young,     ///< pregnant or nursing
    season,    ///< in heat
    diabetes,  ///< its meals and insulin
    seizures,
    first,      ///< its first groom
    fear,       ///< afraid, nervous: of the table, the dryer, strangers
    flat_face,  ///< a short muzzle: told, or by its breed
    ears,       ///< they smell, itch or hurt
    bleeds,     ///< it bleeds easily, or takes what makes it so
    nail        ///< one that is broken or has grown in
};
inline constexpr std::array<std::string_view, 14> ailment_names{
    "heart",    "joints",      "blind", "deaf",      "with-young",  "season",        "diabetes",
    "seizures", "first-groom", "fear",  "flat-face", "ear-trouble", "bleeds-easily", "nail"};
[[nodiscard]] constexpr std::string_view name(ailment_kind k) {
    return ailment_names[static_cast<std::size_t>(k)];
}

/// A kind of ailment, and how people tell of it.
struct ailment {
    ailment_kind kind = ailment_kind::heart;  ///< which
    /// What is written of it, lower case: words in a row; one that ends in "*" begins so.
    std::vector<std::string> words;
    bool unwell = true;  ///< the rules of a dog that ails hold
    evidence why;        ///< how it is known
};

/// How people tell of a sign of the stop list; words as of an ailment.
struct sign_words {
    stop_sign sign = stop_sign::collapse;  ///< which
    std::vector<std::string> told;         ///< of a dog's health: the sign holds
    std::vector<std::string> seen;         ///< what is asked of a dog at the table
};

/// What a veterinarian did lately, which leaves a wound somewhere: "spayed ten days ago".
struct operation_words {
    std::vector<std::string> what;      ///< "spay*", "surgery"
    std::vector<std::string> lately;    ///< "ago", "healing"
    std::vector<std::string> long_ago;  ///< "years": healed by now
};

/// All of them, and the words that say nothing of their own beside one of them: "in", "one", "weeks".
struct ailments {
    std::vector<ailment> all;         ///< in the order of ailment_kind
    std::vector<std::string> beside;  ///< lower case
    /// The same beside one of which the dog is unwell: how bad it is, when, what it takes for it.
    std::vector<std::string> how_bad;
    /// What is a finding of the skin and has a place: fresh stitches, fleas.
    std::vector<std::string> of_skin;
    operation_words operations;     ///< likewise of the skin, where it was lately
    std::vector<sign_words> signs;  ///< those of the stop list that have words
};

/// What was told of a dog's health.
struct health_told {
    std::vector<ailment_kind> known;  ///< for which there is advice, each once
    bool unwell = false;              ///< one of them is such that the dog ails
    bool more = false;     ///< and something that no word covers: what it is, nobody knows here
    bool denied = false;   ///< all of it denies what is known: "not pregnant"
    bool of_skin = false;  ///< and a finding of the skin, whose place decides what is done
    std::vector<stop_sign>
        signs;  ///< of the stop list, each once: a veterinarian sees the dog first
    std::vector<stop_sign> seen;  ///< the same of what is asked at the table
    bool in_note = false;  ///< the note seems to tell of its health, which is not reckoned with
    [[nodiscard]] bool has(ailment_kind k) const {
        return std::find(known.begin(), known.end(), k) != known.end();
    }
};

/// Reads what was told of the health (`text`; may be empty), and of the note whether it is pregnant or
/// nursing. What is denied ("no heart trouble") counts as not understood. `mix`: its breed as said, by which its
/// face may be flat; a cross tells nothing of it.
[[nodiscard]] health_told read_health(std::string_view text, std::string_view note,
                                      const ailments& by, std::string_view mix = {});

}  // namespace pelage
