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
};

/// Reads wishes for a dog. Borrows the workplace and the faults.
class wish_reader {
  public:
    /// `said_first`: what is said of the dog's coat before any length; may be empty.
    wish_reader(const workplace& w, std::string said_first, faults& f)
        : w_(w), f_(f), said_first_(std::move(said_first)), parts_(w.reference.dog_body) {}

    /// Nothing, and a fault, if it is none.
    [[nodiscard]] std::optional<wish> read(const std::string& text);

  private:
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
};

}  // namespace pelage::cli
