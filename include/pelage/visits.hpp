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

/// The least growth that brings some counted zone to its threshold: min over zones of threshold *
/// factor - start - error (mm); +infinity if none can get there.
[[nodiscard]] inline double least_room(const std::vector<kept_zone>& zones, const days& t,
                                       bool clocks, double factor, double start_error) {
    double room = std::numeric_limits<double>::infinity();
    for (const kept_zone& z : zones) {
        if (!z.threshold || (clocks && t <= z.clock)) {
            continue;
        }
        const double to = in_mm(*z.threshold) * factor;
        if (to > in_mm(z.terminal)) {
            continue;  // the coat stops before it gets there
        }
        room = std::min(room, to - std::max(0.0, in_mm(z.start) + start_error));
    }
    return room;
}

/// P(R t < room).
[[nodiscard]] inline chance grows_less(const rate_law& r, double room, double t) {
    if (!(room > 0.0)) {
        return 0.0;
    }
    if (std::isinf(room) || !(t > 0.0)) {
        return 1.0;
    }
    return normal_cdf((std::log(room / t) - r.log_median) / r.log_sd);
}

}  // namespace detail

/// P(every zone whose clock has run out by day `t` is under its matting-prone length); with
/// `clocks` false every zone counts from day 0.
[[nodiscard]] inline chance all_fine(const std::vector<kept_zone>& zones, const shared_law& law,
                                     const days& t, bool clocks = true) {
    constexpr double wide = 5.0;  // beyond five standard deviations nothing shows in six digits
    const double density = 1.0 / std::sqrt(2.0 * std::numbers::pi);
    const auto given = [&](double f, double e) {
        const double room = detail::least_room(zones, t, clocks, std::exp(law.threshold_log_sd * f),
                                               in_mm(law.start_error) * e);
        return detail::grows_less(law.rate, room, in_days(t));
    };
    const auto over_factor = [&](double e) {
        if (law.threshold_log_sd <= 0.0) {
            return given(0.0, e);
        }
        return integrate([&](double f) { return density * std::exp(-0.5 * f * f) * given(f, e); },
                         -wide, wide, 3);
    };
    if (in_mm(law.start_error) <= 0.0) {
        return over_factor(0.0);
    }
    return integrate([&](double e) { return density * std::exp(-0.5 * e * e) * over_factor(e); },
                     -wide, wide, 1);
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
/// 0 if it is there already, never if the coat stops before it.
[[nodiscard]] inline days prone_quantile(const kept_zone& z, const shared_law& law, chance p) {
    if (!z.threshold) {
        return never();
    }
    const std::vector<kept_zone> one{z};
    const auto fine = [&](double t) { return all_fine(one, law, day(t), false); };
    if (fine(1e-6) < 1.0 - p) {
        return day(0.0);
    }
    double high = 1.0;
    while (fine(high) > 1.0 - p) {
        high *= 2.0;
        if (high > 1e6) {
            return never();
        }
    }
    double low = high / 2.0;
    for (int i = 0; i < 40 && high - low > 1e-3; ++i) {
        const double middle = 0.5 * (low + high);
        (fine(middle) > 1.0 - p ? low : high) = middle;
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
    std::optional<std::size_t> first;    ///< the zone that ends it; index into the zones given
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
    chance worst = 2.0;
    for (std::size_t i = 0; i < zones.size(); ++i) {
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
        if (zones[i].threshold && chances[i] < worst) {
            worst = chances[i];
            b.first = i;
        }
    }
    b.in = last_fine_day(zones, law, p, usual);
    b.even_odds = last_fine_day(zones, law, 0.5, usual);
    b.full_groom = last_fine_day(free, law, p, usual);
    b.why = b.in >= usual         ? visit_kind::usual
            : b.in < b.full_groom ? visit_kind::brush_out
                                  : visit_kind::full_groom;
    return b;
}

}  // namespace pelage
