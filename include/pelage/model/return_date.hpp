// When the dog must be back.
//
// Rate, threshold factor and start error are shared by all zones of a dog, so the chance that all
// zones are still fine is one integral with the worst zone inside, not a product over zones.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include <pelage/base/stats.hpp>
#include <pelage/base/units.hpp>
#include <pelage/model/growth.hpp>
#include <pelage/model/matting.hpp>
#include <pelage/model/visit_kind.hpp>

namespace pelage {

/// A zone as the forecast sees it: kept at `start`, mats from `threshold` on (none: never by
/// length), stops growing at `terminal`, held by brushing alone until day `clock`.
struct kept_zone {
    length start{};
    std::optional<length> threshold;
    length terminal{};
    days clock{};

    friend bool operator==(const kept_zone& a, const kept_zone& b) {
        return a.start == b.start && a.threshold == b.threshold && a.terminal == b.terminal &&
               a.clock == b.clock;
    }
};

/// What all zones of one dog share.
struct shared_law {
    rate_law rate;
    double threshold_log_sd = 0.0;  ///< >= 0
    length start_error{};           ///< standard deviation (mm), >= 0
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

/// When the dog must be back.
struct back {
    days in{};                           ///< last whole day at the chance asked
    days even_odds{};                    ///< last whole day at 1 in 2
    visit_kind why = visit_kind::usual;  ///< what ends the wait
    std::optional<std::size_t>
        first;          ///< the zone with least room to grow; index into the zones given
    days full_groom{};  ///< last day for the full groom if held zones are brushed out between
    std::vector<std::size_t> held;  ///< zones near or above their length, held by brushing
    chance asked = 0.9;
};

/// When the dog must be back: the last day on which every zone whose clock has run out is under its
/// matting-prone length with chance `p`, capped by the coat's usual interval. A zone that is likely
/// past its length by the end of its own clock is *held by brushing*: a bath and brush resets its
/// clock, and the full groom is reckoned over the others.
[[nodiscard]] back when_back(const std::vector<kept_zone>& zones, const shared_law& law, chance p,
                             const days& usual);

}  // namespace pelage
