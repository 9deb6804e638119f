// Mats of a dog's file that a later visit dealt with. The file is its writer's and stays as it is.
//
// A visit dealt with a place if it says where it found mats and doesn't name it (combed through, none
// there), or if it is a full groom that says what it left there: no finished length stands over a mat. A
// mat found on the day of a visit was found before it. What was told today isn't of the file and counts
// always; skin stays until its file says otherwise.
#pragma once

#include <algorithm>
#include <optional>

#include <pelage/base/date.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// The dog without the mats of its file that a visit since the day they were seen dealt with, up to
/// `today` (without it any) and none found there again; they are in `dealt`, each with the first such
/// visit. One without its day stays, and is in `undated` if a visit of the record dealt with its place.
/// Words without a meaning are passed over.
[[nodiscard]] dog without_mats_dealt_with(dog d, const part_index& parts, const body& b,
                                          const std::optional<date>& today);

/// Whether mats are known to be on it: but for those of its file of which nobody knows whether a visit since took
/// them out.
[[nodiscard]] inline bool matted_since(const dog& d) {
    return std::any_of(d.mats.begin(), d.mats.end(), [&](const mat_finding& m) {
        const bool known = !m.filed || m.seen;
        return known || std::none_of(d.undated.begin(), d.undated.end(), [&](const mat_since& u) {
                   return u.what.at.zone == m.at.zone;
               });
    });
}

}  // namespace pelage
