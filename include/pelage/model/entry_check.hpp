// Lengths of a record's entry that the coat, or what is known of today's hair, speaks against.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/log_entry.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// A length of an entry that can't be, or is odd.
struct length_doubt {
    enum class kind {
        beyond_coat,         ///< such hair stops shorter there
        longer_than_before,  ///< left longer than what the same entry measured there before the cut
        longer_than_told,    ///< left longer than today's hair as it was told
        longer_than_record   ///< left longer than the record lets expect in 9 of 10
    };
    kind what = kind::beyond_coat;  ///< what is wrong with it
    bool before_cut = false;        ///< beyond_coat: of a length before the cut, else of one left
    bool measured = false;          ///< the length is what somebody measured, else as planned
    std::string whom;               ///< the word it was said of
    length said{};                  ///< as it was said
    length most{};                  ///< the most there may be (mm)
    place at{};                     ///< where that is
    evidence why{};                 ///< beyond_coat: how `most` is known
    std::optional<date> since{};    ///< longer_than_record: the day from which it is reckoned

    /// It can't be so, as far as the reference and the entry itself are right.
    [[nodiscard]] bool impossible() const {
        return what == kind::beyond_coat || what == kind::longer_than_before;
    }
};

/// The doubts of the entry's lengths, at most one a word and kind. `d` is the dog on the day of the visit,
/// before it, with its hair as_by_record; nothing is doubted by its coat where that isn't set. What is as
/// planned is doubted only by what was measured before the cut; lengths a measuring error apart (1 in 10)
/// are none. Words without a meaning are passed over.
[[nodiscard]] std::vector<length_doubt> length_doubts(const log_entry& e, const dog& d,
                                                      const part_index& parts,
                                                      const reference_data& c, const parameters& r);

}  // namespace pelage
