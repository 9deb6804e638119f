// What a dog's record says of its growth, and what the records of a salon's dogs say of a coat.
//
// A measurement counts if it was taken combed out and dry, after a cut whose length there is known, and
// before the next one. One taken on the day of a cut was taken before it. What doesn't count is named
// with the reason, and so is one that is likelier wrong than right. Of a long record the newest count.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/model/learning.hpp>
#include <pelage/model/learning_mats.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/trade/dog.hpp>

namespace pelage {

/// How many measurements of one dog count at most: the newest.
inline constexpr std::size_t most_counted = 100;

/// A measurement that counts.
struct counted_measurement {
    std::size_t which = 0;  ///< index into dog::measured
    std::size_t cut = 0;    ///< index into dog::visits: the cut it is counted from
    reading read;           ///< as learning takes it
};

/// Why a measurement doesn't count.
enum class left_out_because {
    coat_rests,        ///< length doesn't tell the rate of such a coat
    not_combed_dry,    ///< waves and curls read short
    after_today,       ///< dated later
    cut_unalike,       ///< the places it names were not cut alike
    no_cut,            ///< no cut before it is on record
    cut_unsaid,        ///< the visit `cut` doesn't say what it left there
    full_length,       ///< as long as such a coat is taken to grow
    newer_are_enough,  ///< older than the newest most_counted
    too_short,         ///< too short for `after` that cut, the others being right
    too_long           ///< too long for it
};

/// One that doesn't, and why.
struct left_out_measurement {
    std::size_t which = 0;                            ///< index into dog::measured
    left_out_because why = left_out_because::no_cut;  ///< why it doesn't count
    std::size_t cut = 0;  ///< cut_unsaid, too_short, too_long: index into dog::visits
    days after{};         ///< too_short, too_long: how long after that cut
};

/// A visit that looked for mats and counts: as long after a known cut, and after the last combing out to the
/// skin, that length tells.
struct counted_check {
    std::size_t which = 0;  ///< index into dog::visits
    std::size_t cut = 0;    ///< index into dog::visits: the full groom it is counted from
    bool matted = false;    ///< mats were found
    comb_check zones;       ///< what was combed through
};

/// What is known of one dog's rate of growth, and of the length at which it mats.
struct learned_rate {
    std::vector<counted_measurement> counted;    ///< in the order of the record
    std::vector<left_out_measurement> left_out;  ///< likewise
    rate_law usual;            ///< of its coat, with the spread from visit to visit
    rate_law dog;              ///< its own, without that spread; the coat's if nothing counts
    rate_law next;             ///< its own with it: what a forecast takes
    double coat_weight = 1.0;  ///< how much the coat's usual rate still weighs in its own, 0 to 1
    std::vector<counted_check> checks;  ///< visits that count for its matting-prone length, by date
    std::vector<factor_case> cases;     ///< what they say of it with its rate; empty if none counts
    double factor_mean = 0.0;  ///< ln of the dog's factor on its matting-prone lengths: mean ...
    double factor_sd = 0.0;    ///< ... and standard deviation; 0 if no check counts

    /// Anything of its own, measured or combed.
    [[nodiscard]] bool own() const { return !counted.empty() || !checks.empty(); }
};

/// What is taken of a dog of that coat before it was measured.
[[nodiscard]] learning_law learning_law_of(const reference_data& c, const parameters& r,
                                           coat_class k);

/// How many visits that looked for mats count at most: the newest.
inline constexpr std::size_t most_checks = 24;

/// The readings by the cut they are counted from.
[[nodiscard]] std::vector<regrowth_interval> by_cut(
    const std::vector<counted_measurement>& counted);

/// Learns from the dog's record up to `today` (without it from all of it). Its coat must be set;
/// throws error(unknown) if the record names no place of the dog.
[[nodiscard]] learned_rate learn_rate(const dog& d, const reference_data& c, const parameters& r,
                                      const std::optional<date>& today);

/// What a salon's dogs say of one coat.
struct population_rate {
    coat_class coat = coat_class::wavy;  ///< of which coat
    std::size_t dogs = 0;                ///< with measurements that count
    std::size_t measurements = 0;        ///< that count
    std::size_t left_out = 0;            ///< measurements that don't count
    rate_prior before;                   ///< the reference's
    std::optional<rate_prior> own;       ///< what the salon has in its place already
    std::optional<herd_rate> fit;        ///< none: too few dogs
};

/// For every coat of which a dog was measured, in the order of coat_class. Dogs without a coat are
/// passed over.
[[nodiscard]] std::vector<population_rate> learn_populations(const salon_files& s,
                                                             const reference_data& c,
                                                             const std::optional<date>& today);

}  // namespace pelage
