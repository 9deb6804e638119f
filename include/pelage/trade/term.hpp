// The words of the trade, each explained for one who isn't of it.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/trade/coat_class.hpp>

namespace pelage {

/// What a word of the trade is a word for.
enum class term_kind { place, coat, tool, way, style, harm, care, desk };
inline constexpr std::array<std::string_view, 8> term_kind_names{"place", "coat", "tool", "way",
                                                                 "style", "harm", "care", "desk"};
[[nodiscard]] constexpr std::string_view name(term_kind k) {
    return term_kind_names[static_cast<std::size_t>(k)];
}

/// One word of the trade.
struct term {
    std::string id;                   ///< as files name it
    std::string title;                ///< as it is said: "against the lay"
    std::vector<std::string> words;   ///< other words for it
    term_kind kind = term_kind::way;  ///< what it is a word for
    std::string text;                 ///< what it is, in one to three plain sentences
    std::optional<std::size_t> zone;  ///< of a place: index into body::zones
    std::string plain{};      ///< of such a place: as an owner calls it; empty: by its title
    std::string plain_one{};  ///< of a paired one a side of it: "{side} knee"
    std::string skin;         ///< of such a place: why its skin is easily hurt, or isn't
    std::string
        usual;  ///< what is customary there, or with it; empty where a zone has its own blades
    bool clips = false;                ///< takes the coat off short: no for a coat that is carded
    std::vector<std::string> see;      ///< ids of terms that belong to it
    std::vector<std::string> parts{};  ///< ids of terms that are told with it: what it is made of
    std::vector<std::string> asks{};   ///< more words for it, which ask about it only where nothing
        ///< else is asked about that it doesn't belong to: "how often"
    std::vector<std::string> sheets{};  ///< of a style: ids of the sheets that come nearest to it
    evidence why{};                     ///< how it is known
};

/// A word that means several of them: asked back, never guessed.
struct asked_term {
    std::vector<std::string> words;  ///< that mean several things
    std::vector<std::string> means;  ///< ids of terms
    std::string doing{};             ///< the one meant where it is done to a dog or a place: "brush
                                     ///< my poodle"; empty: none
    std::string there{};             ///< the one meant beside a place: "wet ear"; empty: none
    evidence why{};                  ///< how it is known
};

/// What is never done: said by "never", and a no to whoever asks about all of `of` together.
struct never_rule {
    std::string text;             ///< "scissors between a mat and the skin"
    std::string instead;          ///< why, and what is done in its place
    std::vector<std::string> of;  ///< ids of terms; empty: it is only listed
    evidence why;                 ///< how it is known
};

/// What is said of a term on some coats before it is explained: whether it sheds, how often it is brushed.
struct term_on_coats {
    std::string term;               ///< its id
    std::vector<coat_class> coats;  ///< on which
    std::string text;               ///< in one or two sentences
    evidence why;                   ///< how it is known
};

/// How words of a card that hold figures or days are read: "leaves 1.5 to 2.1 mm".
struct card_line {
    std::vector<std::string> said;  ///< as it may stand there: "leaves N to N mm", with N for a
                                    ///< figure or several, D for a day and its month, P for
                                    ///< places, W for a word or more
    std::string text;               ///< how it is read, in one to three plain sentences
    evidence why{};                 ///< how that is known
};

/// All of them. Invariant, held by the reader: ids and words are unique (a word that is asked back may be
/// one of what it means: by itself it is that), every id in `see`, `means` and `of` is there.
struct glossary {
    std::vector<term> terms;                ///< each once
    std::vector<asked_term> asked;          ///< words that are asked back
    std::vector<never_rule> never{};        ///< in the order they are told
    std::vector<term_on_coats> on_coats{};  ///< a term and a coat at most once
    std::vector<card_line> lines{};         ///< each wording at most once
};

/// What is said of the term on that coat; null: nothing.
[[nodiscard]] const term_on_coats* said_of(const glossary& g, const term& t, coat_class c);

/// From a word to what it means. Case, hyphens, blanks, a plural s and "the" don't matter.
class term_index {
  public:
    /// Borrows the glossary.
    explicit term_index(const glossary& g);

    /// The term of that word, or null.
    [[nodiscard]] const term* find(std::string_view word) const;
    /// The terms that a word may mean where it is asked back, or null.
    [[nodiscard]] const asked_term* asked(std::string_view word) const;
    /// The term that explains the zone with that index, or null.
    [[nodiscard]] const term* of_zone(std::size_t zone) const;
    /// Every word there is.
    [[nodiscard]] const std::vector<std::string>& words() const { return words_; }

  private:
    const glossary& all_;
    std::unordered_map<std::string, std::size_t> terms_;
    std::unordered_map<std::string, std::size_t> asked_;
    std::vector<std::string> words_;
};

}  // namespace pelage
