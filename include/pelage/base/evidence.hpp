// How a number is known. No figure travels without it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace pelage {

/// The kinds of basis a number can have.
enum class basis {
    published,   ///< a standard, paper or university page, named by its source id
    practice,    ///< common practice, no source
    contested,   ///< educators disagree; the spread is given
    memory,      ///< from memory, not checked against a page
    assumption,  ///< our own guess, to be overridden
    derived,     ///< arithmetic on others, named
    measured     ///< by the user, with its date
};

inline constexpr std::array<std::string_view, 7> basis_names{
    "published", "practice", "contested", "memory", "assumption", "derived", "measured"};

/// The basis as files write it.
[[nodiscard]] constexpr std::string_view name(basis b) {
    return basis_names[static_cast<std::size_t>(b)];
}

/// The basis in words for the screen.
[[nodiscard]] constexpr std::string_view in_words(basis b) {
    constexpr std::array<std::string_view, 7> words{
        "published",         "common practice, no source",
        "groomers disagree", "from memory, unchecked",
        "our guess",         "worked out",
        "measured by you"};
    return words[static_cast<std::size_t>(b)];
}

/// Why a number is what it is: the basis; the source id, the date measured or what it was derived
/// from; whether the source was only seen second-hand; a note in words.
struct evidence {
    basis how = basis::assumption;  ///< the kind of basis
    std::string from{};             ///< id of a source, or from what it was worked out
    bool relayed = false;           ///< the source was only seen second-hand
    std::string note{};             ///< in words; may be empty
    friend bool operator==(const evidence&, const evidence&) = default;
};

/// A quantity with what it may lie between. low <= best <= high.
template <class Quantity>
struct figure {
    Quantity low{};   ///< the least it may be
    Quantity best{};  ///< what is reckoned with
    Quantity high{};  ///< the most it may be
    evidence why{};   ///< how it is known
};

/// A figure with no spread stated.
template <class Quantity>
[[nodiscard]] figure<Quantity> exactly(const Quantity& q, evidence why) {
    return {q, q, q, std::move(why)};
}

}  // namespace pelage
