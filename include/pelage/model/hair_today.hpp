// Today's hair as it is said of a dog, word by word, and what it can't be at once with its mats.
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include <pelage/trade/dog.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// Lengths that are said of places, their words looked up once for many places.
class said_hair {
  public:
    /// Words without a meaning are passed over. Borrows `parts`.
    said_hair(const part_index& parts, const std::vector<hair_now>& said);

    /// Length of the hair in a place: wider words first, later ones win; "all" means the prep zones, too.
    /// Nothing if nothing is said of it.
    [[nodiscard]] std::optional<length> at(const place& p) const;

  private:
    struct meant {
        const selection* whom;
        length is;
    };
    std::vector<meant> all_;
};

/// The same of one place.
[[nodiscard]] std::optional<length> hair_said(const part_index& parts,
                                              const std::vector<hair_now>& said, const place& p);

/// A mat under which more free hair was found than the dog has there.
struct mat_beyond_hair {
    std::size_t mat = 0;  ///< index into dog::mats
    length now{};         ///< today's hair there
};
[[nodiscard]] std::vector<mat_beyond_hair> mats_beyond_hair(const part_index& parts, const dog& d);

}  // namespace pelage
