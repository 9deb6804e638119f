// Private to lib: a question cut into things the trade knows, longest words first.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/kit/asked.hpp>

#include "kit/asked_tokens.hpp"

namespace pelage::asking {

/// What some words of a question are.
enum class piece_kind {
    tool,
    place,
    places_asked,  ///< a word for several places
    term,
    terms_asked,  ///< a word for several things
    coat,
    breed,
    telling_apart,  ///< "vs", "longer", "difference"
    joining,        ///< "and"
    extreme,        ///< "longest"
    listing,        ///< "never", "words"
    crossing,       ///< "half", "mum", "mix"
    filler,
    stranger
};

struct piece {
    piece_kind kind = piece_kind::filler;
    std::string text;  ///< in small letters; of a tool as read_question() takes it
    std::vector<place> places{};
    const term* means = nullptr;  ///< of a place, a coat or a filler, too, where the word is both
    const asked_term* several = nullptr;
    coat_class coat{};
    std::string also_breed{};  ///< of a place, where a breed is called so too: "chin"
};

[[nodiscard]] inline bool of_kind(const piece& p, piece_kind k) {
    return p.kind == k;
}
/// How many of a question are of that kind; which.
[[nodiscard]] std::size_t count(const std::vector<piece>& all, piece_kind k);
[[nodiscard]] std::vector<const piece*> all_of(const std::vector<piece>& all, piece_kind k);

/// The words that the trade knows: places, terms, coats, breeds.
class vocabulary {
  public:
    explicit vocabulary(const lookup_request& r)
        : c_(r.reference), trade_(words_of(r)), places_(c_.dog_body), terms_(trade_) {}

    /// The things of a question in their order.
    [[nodiscard]] std::vector<piece> pieces(const std::vector<token>& all,
                                            const lookup_request& r) const;
    /// The words that were perhaps meant, all that are as near.
    [[nodiscard]] std::vector<std::string> near(std::string_view word) const;
    /// Breeds with that word in their name, if there are several: "spaniel".
    [[nodiscard]] std::vector<std::string> breeds_with(std::string_view word) const;
    [[nodiscard]] const part_index& places() const { return places_; }
    [[nodiscard]] const term_index& terms() const { return terms_; }

  private:
    /// Whether cautions or the words' own texts say it: whoever asks about it means it.
    [[nodiscard]] bool in_our_texts(std::string_view word) const;
    [[nodiscard]] std::optional<piece> known(const std::string& words) const;
    [[nodiscard]] std::optional<piece> coat_or_breed(const std::string& words) const;
    /// Whether words that end like a cross are its name, "golden doodle", and no question about one,
    /// "brush my doodle".
    [[nodiscard]] bool one_name(const std::string& words) const;
    [[nodiscard]] std::optional<piece> longest_at(const std::vector<token>& all, std::size_t at,
                                                  std::size_t& next) const;

    const reference_data& c_;
    const glossary& trade_;
    part_index places_;
    term_index terms_;
};

}  // namespace pelage::asking
