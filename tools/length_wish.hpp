// One wish of --length as it is said in a shop: "16 mm", "7F all off", "legs 16 mm".
#pragma once

#include <optional>
#include <string>
#include <utility>

#include <pelage/kit/lookup.hpp>

#include "resolve_arguments.hpp"
#include "words_said.hpp"

namespace pelage::cli {

/// What is to be left, and where; without a place it is the sheet's own length.
struct wish {
    strings whom;  ///< "body", "all"; empty: not said
    instruction what;
    bool rest = false;  ///< of every place that no other wish names; `whom` is empty
};

/// Reads wishes for a dog. Borrows the workplace and the faults.
class wish_reader {
  public:
    /// `said_first`: what is said of the dog's coat before any length; may be empty.
    wish_reader(const workplace& w, std::string said_first, faults& f)
        : w_(w), f_(f), said_first_(std::move(said_first)), parts_(w.reference.dog_body) {}

    /// Nothing, and a fault, if it is none.
    [[nodiscard]] std::optional<wish> read(const std::string& text);

    [[nodiscard]] const part_index& parts() const { return parts_; }

  private:
    /// What is left there, or that it is left alone: the words behind a place, "the rest" or none.
    [[nodiscard]] bool what_is_left(const std::string& text, strings all, wish& out);
    /// Something stands beside the blade or the length that says nothing here: told, with what was perhaps meant.
    [[nodiscard]] bool has_strays(const std::string& text, const strings& measure);
    /// How many of the words from the first on are a blade, a comb or a length; none: 0.
    [[nodiscard]] std::size_t measured_by(const strings& words) const;
    /// Whether the two halves of these words are wishes, so that only their comma is missing: that text with it.
    [[nodiscard]] std::string with_a_comma(const strings& words) const;
    /// "7F shave off": how many words at the end mean the whole dog; none: 0.
    [[nodiscard]] std::size_t whole_dog_words(const strings& all) const;
    /// The places of "belly, sani and pads" one by one; empty where a word of it is none.
    [[nodiscard]] strings places_in(const strings& all, std::size_t from, std::size_t to) const;
    /// The longest run of words at either end that names places.
    void take_places(strings& all, strings& whom) const;
    [[nodiscard]] lookup_request asked(const std::string& text) const;
    [[nodiscard]] bool measures(const std::string& word) const;
    /// Whether the blade is customary in all of these places, so that its number can mean nothing else.
    [[nodiscard]] bool customary(const std::string& blade, const strings& whom) const;
    /// A blade, a comb or a length, as the look-up reads them.
    [[nodiscard]] bool leaves(const std::string& text, std::string measure, wish& out);
    [[nodiscard]] std::string first_of_the_coat() const;

    const workplace& w_;
    faults& f_;
    std::string said_first_;
    part_index parts_;
    bool alone_ = true;  ///< no half of another wish, tried
};

}  // namespace pelage::cli
