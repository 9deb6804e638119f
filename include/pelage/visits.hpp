// When the dog must be back.
//
// Rate, threshold factor and start error are shared by all zones of a dog, so the chance that all
// zones are still fine is one integral with the worst zone inside, not a product over zones.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <vector>

#include <pelage/growth.hpp>
#include <pelage/matting.hpp>
#include <pelage/stats.hpp>
#include <pelage/units.hpp>

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

namespace detail {

/// A zone that counts on a day, in millimetres.
struct counted_zone {
    double start = 0.0;
    double threshold = 0.0;
    double terminal = 0.0;
    friend bool operator==(const counted_zone&, const counted_zone&) = default;
};

/// The zones that count on day `t`, each kind once.
[[nodiscard]] inline std::vector<counted_zone> counted_on(const std::vector<kept_zone>& zones,
                                                          const days& t, bool clocks) {
    std::vector<counted_zone> out;
    for (const kept_zone& z : zones) {
        if (!z.threshold || (clocks && t <= z.clock)) {
            continue;
        }
        const counted_zone c{in_mm(z.start), in_mm(*z.threshold), in_mm(z.terminal)};
        if (std::find(out.begin(), out.end(), c) == out.end()) {
            out.push_back(c);
        }
    }
    return out;
}

/// How far the worst zone has come after growing `growth` mm: its length over its matting-prone
/// length. Hair stops at its terminal length, but no cut makes it shrink to it.
[[nodiscard]] inline double worst_share(const std::vector<counted_zone>& zones, double start_error,
                                        double growth) {
    double worst = 0.0;
    for (const counted_zone& z : zones) {
        const double start = std::max(0.0, z.start + start_error);
        const double now = std::min(start + growth, std::max(start, z.terminal));
        worst = std::max(worst, now / z.threshold);
    }
    return worst;
}

/// The growth (mm) at which the worst zone comes to its unspread matting-prone length; 0 if one is
/// there, infinite if none ever is.
[[nodiscard]] inline double least_room(const std::vector<counted_zone>& zones, double start_error) {
    double room = std::numeric_limits<double>::infinity();
    for (const counted_zone& z : zones) {
        const double start = std::max(0.0, z.start + start_error);
        if (z.threshold <= std::max(start, z.terminal)) {
            room = std::min(room, std::max(0.0, z.threshold - start));
        }
    }
    return room;
}

[[nodiscard]] inline double normal_density(double z) {
    return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
}

/// The chance given the start error (mm): one integral over the rate, in which the spread of the
/// matting-prone length is a closed form: all zones are fine while factor > worst share.
[[nodiscard]] inline chance fine_given_start(const std::vector<counted_zone>& zones,
                                             const shared_law& law, double t, double start_error) {
    constexpr double wide = 6.0;  // beyond six standard deviations nothing shows in eight digits
    const double room = least_room(zones, start_error);
    const double middle = (std::log(room / t) - law.rate.log_median) / law.rate.log_sd;
    if (law.threshold_log_sd <= 0.0) {
        return room > 0.0 ? normal_cdf(middle) : 0.0;
    }
    const auto fine = [&](double z) {
        const double growth = std::exp(law.rate.log_median + law.rate.log_sd * z) * t;
        const double share = worst_share(zones, start_error, growth);
        return normal_density(z) * normal_cdf(-std::log(share) / law.threshold_log_sd);
    };
    // split where the chance turns, at the growth that fills the room
    const double split = std::clamp(middle, -wide, wide);
    return integrate(fine, -wide, split, 3) + integrate(fine, split, wide, 3);
}

}  // namespace detail

/// P(every zone whose clock has run out by day `t` is under its matting-prone length); with
/// `clocks` false every zone counts from day 0. `t` >= 0.
[[nodiscard]] inline chance all_fine(const std::vector<kept_zone>& zones, const shared_law& law,
                                     const days& t, bool clocks = true) {
    const auto counted = detail::counted_on(zones, t, clocks);
    if (counted.empty()) {
        return 1.0;
    }
    const double time = std::max(in_days(t), 1e-9);
    const double spread = in_mm(law.start_error);
    if (spread <= 0.0) {
        return detail::fine_given_start(counted, law, time, 0.0);
    }
    if (law.threshold_log_sd <= 0.0) {
        // without a spread of its own the chance jumps with the start error: a fine rule sees where
        return integrate(
            [&](double e) {
                return detail::normal_density(e) *
                       detail::fine_given_start(counted, law, time, spread * e);
            },
            -6.0, 6.0, 40);
    }
    return normal_mean(
        [&](double e) { return detail::fine_given_start(counted, law, time, spread * e); });
}

/// The last whole day on which that chance is at least `p`, at most `cap`; `p` over 0 and below 1.
/// Day 0 if a zone without a clock is already past. The chance never rises with time, so the day
/// is found by bisection.
[[nodiscard]] inline days last_fine_day(const std::vector<kept_zone>& zones, const shared_law& law,
                                        chance p, const days& cap, bool clocks = true) {
    int low = 0;
    int high = static_cast<int>(std::floor(in_days(cap))) + 1;
    while (high - low > 1) {
        const int middle = low + (high - low) / 2;
        (all_fine(zones, law, day(middle), clocks) >= p ? low : high) = middle;
    }
    return day(low);
}

/// Days until one zone reaches its matting-prone length, at quantile `p` of the time (0 < p < 1):
/// 0 if it is there already, never if the coat stops before it. To a thousandth of a day.
[[nodiscard]] inline days prone_quantile(const kept_zone& z, const shared_law& law, chance p) {
    if (!z.threshold) {
        return never();
    }
    const std::vector<kept_zone> one{z};
    // above 0 before the quantile, below 0 after it
    const auto over = [&](double t) { return all_fine(one, law, day(t), false) - (1.0 - p); };
    if (over(1e-6) < 0.0) {
        return day(0.0);
    }
    const double room = std::max(1.0, in_mm(*z.threshold - z.start));
    double high = room / in_mm_per_day(rate_quantile(law.rate, 1.0 - p));
    double at_high = over(high);
    while (at_high > 0.0) {
        high *= 1.5;
        if (high > 1e5) {
            return never();
        }
        at_high = over(high);
    }
    double low = 1e-6;
    double at_low = p;  // any positive value does: it only weighs the first step
    // false position with the Illinois halving: the kept end is drawn in, so both ends move
    for (int i = 0; i < 100 && high - low > 1e-3; ++i) {
        const double t = std::clamp((low * at_high - high * at_low) / (at_high - at_low),
                                    low + 4e-4, high - 4e-4);
        const double at = over(t);
        if (at > 0.0) {
            low = t;
            at_low = at;
            at_high *= 0.5;
        } else {
            high = t;
            at_high = at;
            at_low *= 0.5;
        }
    }
    return day(high);
}

/// What is due when.
enum class visit_kind { full_groom, brush_out, usual };

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
[[nodiscard]] inline back when_back(const std::vector<kept_zone>& zones, const shared_law& law,
                                    chance p, const days& usual) {
    back b;
    b.asked = p;
    std::vector<kept_zone> free;
    std::vector<chance> chances;
    days longest{};
    length least_room = mm(std::numeric_limits<double>::infinity());
    for (std::size_t i = 0; i < zones.size(); ++i) {
        longest = std::max(longest, zones[i].clock);
        if (zones[i].threshold && *zones[i].threshold - zones[i].start < least_room) {
            least_room = *zones[i].threshold - zones[i].start;
            b.first = i;
        }
    }
    // if all together are likely fine by then, each is
    const bool none_held = all_fine(zones, law, longest, false) >= p;
    for (std::size_t i = 0; i < zones.size() && !none_held; ++i) {
        // most zones of a dog are kept alike: reckon each kind once
        const auto alike =
            std::find(zones.begin(), zones.begin() + static_cast<std::ptrdiff_t>(i), zones[i]);
        const auto twin = static_cast<std::size_t>(alike - zones.begin());
        const std::vector<kept_zone> one{zones[i]};
        chances.push_back(twin < i             ? chances[twin]
                          : zones[i].threshold ? all_fine(one, law, zones[i].clock, false)
                                               : 1.0);
        if (chances[i] < p) {
            b.held.push_back(i);
        } else {
            free.push_back(zones[i]);
        }
    }
    b.in = last_fine_day(zones, law, p, usual);
    b.even_odds = last_fine_day(zones, law, 0.5, usual);
    b.full_groom = b.held.empty() ? b.in : last_fine_day(free, law, p, usual);
    b.why = b.in >= usual         ? visit_kind::usual
            : b.in < b.full_groom ? visit_kind::brush_out
                                  : visit_kind::full_groom;
    return b;
}

}  // namespace pelage
