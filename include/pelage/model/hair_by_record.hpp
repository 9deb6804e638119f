// Today's hair, where nobody says it today: what was last left or seen in a place, grown since by the
// dog's own rate.
//
// Of each place the latest day counts: a cut whose length there is known, a length measured combed out
// and dry, or hair told in the dog's file with its day; on one day the cut comes last. A full groom
// that doesn't say what it left ends what is known, and so does a tidy for head, feet and prep zones. From
// a length L of that day, t days ago, the hair is min(L + R t, terminal), R the dog's rate; the ends of its
// range take R at 1 in 10 and 9 in 10 and add the error of L there in quadrature.
#pragma once

#include <optional>

#include <pelage/base/date.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/dog.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// The dog with today's hair reckoned where `now` says nothing: added to `now`, and with its range to
/// `by_record`. Hair told of that very day is taken as said, unless it was cut since. Its coat must be set.
/// Nothing is reckoned without a day, nor of a coat that rests: its length says little of its growth. Throws
/// error(unknown) if a word names no place of the dog. `parts`: the dog's words made ready; null: made for
/// this call.
[[nodiscard]] dog with_hair_by_record(dog d, const reference_data& c, const parameters& r,
                                      const std::optional<date>& today,
                                      const part_index* parts = nullptr);

/// The dog as its file and record let it stand today: mats that are gone set apart (mats_dealt_with.hpp),
/// then its hair reckoned.
[[nodiscard]] dog as_by_record(dog d, const reference_data& c, const parameters& r,
                               const std::optional<date>& today, const part_index* parts = nullptr);

}  // namespace pelage
