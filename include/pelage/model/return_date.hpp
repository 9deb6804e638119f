// When the dog must be back: one rule.
//
// A zone is protected on day d after the groom if its hair is still under its matting-prone length, or if
// d lies within the clock in which brushing holds it since it was combed out to the skin. With
//   P(d) = P(every zone is protected on day d)
//   V    = the last day d with P(d) >= p, the chance asked,
//   F    = the usual interval of coat or sheet, which is about shape alone,
// the dog is back by min(V, F). At V < F a full groom will do, and so will a bath and a brush to the skin,
// which begins the clocks anew; the full groom is due by F, whoever brushes.
//
// Better brushing, shorter hair, a grown-up coat or a zone less never bring V forward. With rate R,
// factor T on all matting-prone lengths and start error e, shared by the dog, let A_z(d) be the event that
// zone z, kept at s and stopping at m, is protected:
//   d <= clock_z,  or  T M_z > max(s + e, m),  or  s + e + R d < T M_z.
//   (1) A_z(d + 1) is within A_z(d): each of the three holds on d if it holds on d + 1. So the
//       intersection over zones shrinks, P never rises with d, and {d : P(d) >= p} begins at 0 and has one
//       last day.
//   (2) A_z grows as clock_z or M_z rises, and as s or m falls. Brushing enters by its clock and by its
//       factor on M_z, both of which rise with the habit (the reader of matting.toml refuses others), and
//       a minimum with daily_only_above that daily brushing is free of keeps that order; coat change
//       enters by a factor of at most 1.
//   (3) An intersection over fewer zones is no smaller.
// So none of these lowers P(d) on any day, and none brings the last day with P(d) >= p forward. F is none
// of theirs. A zone that only brushing protects never leaves the sum: it is in it with its clock. QED
//
// Rate, factor and start error being shared, P(d) is one integral with the worst zone inside, not a
// product over zones.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/stats.hpp>
#include <pelage/base/units.hpp>
#include <pelage/model/growth.hpp>
#include <pelage/model/matting.hpp>
#include <pelage/model/visit_kind.hpp>

namespace pelage {

/// A zone as the forecast sees it: kept at `start`, mats from `threshold` on (none: never by
/// length), stops growing at `terminal`, held by brushing alone until day `clock`.
struct kept_zone {
    length start{};                   ///< what the cut left
    std::optional<length> threshold;  ///< it mats from there; none: it doesn't mat by its length
    length terminal{};                ///< where its hair stops
    days clock{};                     ///< days that brushing holds it
    /// The same in all members.
    friend bool operator==(const kept_zone& a, const kept_zone& b) {
        return a.start == b.start && a.threshold == b.threshold && a.terminal == b.terminal &&
               a.clock == b.clock;
    }
};

/// What all zones of one dog share.
struct shared_law {
    rate_law rate;                  ///< of the dog, the same in all zones
    double threshold_log_sd = 0.0;  ///< >= 0
    length start_error{};           ///< standard deviation (mm), >= 0
    /// What the dog's own record says of its matting-prone lengths; then rate and threshold_log_sd only
    /// sum it up. Empty: nothing, and ln factor ~ Normal(0, threshold_log_sd).
    std::vector<factor_case> learned{};

    /// Hair grows faster by exp(`by`), whatever else is known.
    void grow_by(double by) {
        rate.log_median += by;
        for (factor_case& f : learned) {
            f.rate.log_median += by;
        }
    }
};

/// P(every zone whose clock has run out by day `t` is under its matting-prone length); with
/// `clocks` false every zone counts from day 0. `t` >= 0.
[[nodiscard]] chance all_fine(const std::vector<kept_zone>& zones, const shared_law& law,
                              const days& t, bool clocks = true);

/// The last whole day on which that chance is at least `p`, at most `cap`; `p` over 0 and below 1.
/// Day 0 if a zone without a clock is already past. The chance never rises with time.
[[nodiscard]] days last_fine_day(const std::vector<kept_zone>& zones, const shared_law& law,
                                 chance p, const days& cap, bool clocks = true);

/// Days until one zone reaches its matting-prone length, at quantile `p` of the time (0 < p < 1):
/// 0 if it is there already, never if the coat stops before it. To a thousandth of a day.
[[nodiscard]] days prone_quantile(const kept_zone& z, const shared_law& law, chance p);
/// The same at several chances, in their order: one curve serves them all.
[[nodiscard]] std::vector<days> prone_quantiles(const kept_zone& z, const shared_law& law,
                                                std::span<const chance> ps);

/// When the dog must be back if it were known to mat at one length: at either end of what that length may
/// be, of the coat (low and high as stated) or, once it was learned, of the dog (1 and 19 in 20). Lengths
/// before zones and brushing.
struct prone_ends {
    length low{};    ///< the least it may be
    length high{};   ///< the most it may be
    days if_low{};   ///< back then, if it is the least
    days if_high{};  ///< back then, if it is the most
};

/// When the dog must be back, and what protects it until then.
struct return_date {
    days next_visit{};                      ///< min(V, F), whole days
    days full_groom{};                      ///< F, whole days
    days even_odds{};                       ///< as next_visit, at 1 in 2
    chance asked = 0.9;                     ///< p
    visit_kind reason = visit_kind::usual;  ///< what ends the wait
    /// P that all zones whose clock has run out are under their length on the day of the next visit; none
    /// where brushing still holds them all, and there is no chance to tell.
    std::optional<chance> fine;
    std::optional<chance> fine_even;  ///< the same on the day of even_odds
    /// Zones by index into those given (into groom::zones where a plan was given). The one with the
    /// least room to grow; and those that only brushing protects on that day: within their clock, and
    /// likely past their length on the day after (at p).
    std::optional<std::size_t> first;
    std::vector<std::size_t> by_brushing;  ///< indices of zones that only brushing holds
    days held_for{};                       ///< the clock of those
    // what a plan's return date has besides (back_of)
    std::optional<prone_ends> if_prone;  ///< none: one date at either end
    std::optional<date>
        was_due;  ///< by the last full groom on record and the baths since, as it is left now
};

/// When the dog must be back by the rule above, at chance `p`; `usual` is F.
[[nodiscard]] return_date return_date_of(const std::vector<kept_zone>& zones, const shared_law& law,
                                         chance p, const days& usual);

}  // namespace pelage
