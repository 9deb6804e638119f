// How hair grows out, and when it reaches a length.
//
// One rate R for the whole dog, ln R ~ Normal. Growing coats: L(t) = min(Lmax, L0 + R t), so the
// time to a threshold is lognormal in closed form. Resting coats: only a share of the hairs grows
// at once, the rest re-enters at a constant hazard; the mean follows the two-population curve.
#pragma once

#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

#include <pelage/base/date.hpp>
#include <pelage/base/error.hpp>
#include <pelage/base/evidence.hpp>
#include <pelage/base/stats.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/coat.hpp>

namespace pelage {

/// The figures of growth that don't belong to a coat (reference/growth.toml).
struct growth_rules {
    figure<length> start_error;      ///< spread of the length just after a cut, shared by the dog
    figure<double> visit_log_sd;     ///< spread of the rate from visit to visit
    figure<double> delayed_share;    ///< share of clipped dogs with delayed regrowth
    figure<days> delay_median;       ///< how much later those are back, median ...
    figure<double> delay_log_sd;     ///< ... and spread of its logarithm
    figure<length> measuring_error;  ///< of a length measured, standard deviation
    figure<double> measuring_share;  ///< the same as a share of long lengths ...
    figure<length> measuring_share_from;  ///< ... above this
    figure<double> wrong_share;           ///< share of measurements that are wrong
    figure<length> wrong_error;           ///< how far off a wrong one is
    figure<double> herd;                  ///< dogs a salon needs before its own rate counts
    figure<double> herd_log_sd;           ///< least spread between dogs of a coat
    figure<double> herd_weight;   ///< how many dogs the reference's spread counts for beside them
    figure<double> season_swing;  ///< share by which growth swings over the year; 0: no season
    figure<double> season_peak;   ///< the day of the year on which it is fastest, 1 to 365
};

/// "Never": the coat stops before it gets there.
[[nodiscard]] inline days never() {
    return day(std::numeric_limits<double>::infinity());
}
[[nodiscard]] inline bool is_never(const days& d) {
    return std::isinf(in_days(d));
}

/// ln R ~ Normal(log_median, log_sd), R in mm/day.
struct rate_law {
    double log_median = 0.0;  ///< of R in mm/day
    double log_sd = 0.0;      ///< over 0
};

/// The law of a rate before anything is known of the dog: the prior's spread and the spread from visit
/// to visit together.
[[nodiscard]] inline rate_law prior_rate(const rate_prior& p, const growth_rules& g) {
    return {std::log(in_mm_per_day(p.median)), std::hypot(p.log_sd, g.visit_log_sd.best)};
}
[[nodiscard]] inline rate_law prior_rate(const coat& c, const growth_rules& g) {
    return prior_rate(c.rate, g);
}

/// The season's factor on the rate, 1 + swing cos(2 pi (day - peak) / year), as its mean over `wait`
/// from `from`. 1 where there is no season, or no date.
[[nodiscard]] inline double season_factor(const growth_rules& g, const std::optional<date>& from,
                                          const days& wait) {
    if (!from || g.season_swing.best == 0.0 || !(in_days(wait) > 0.0)) {
        return 1.0;
    }
    const std::chrono::year_month_day d{*from};
    const date new_year{d.year() / std::chrono::January / 1};
    const double per_day = 2.0 * std::numbers::pi / 365.2425;
    const double since_peak =
        static_cast<double>((*from - new_year).count()) + 1.0 - g.season_peak.best;
    const double swings =
        std::sin(per_day * (since_peak + in_days(wait))) - std::sin(per_day * since_peak);
    return 1.0 + g.season_swing.best * swings / (per_day * in_days(wait));
}

/// The rate at quantile `p` (mm/day), 0 < p < 1.
[[nodiscard]] inline growth_rate rate_quantile(const rate_law& r, chance p) {
    return mm_per_day(std::exp(r.log_median + r.log_sd * normal_quantile(p)));
}

/// Days in which a growing coat goes from `from` to `to` at rate `r`: 0 if it is there, never if
/// the coat stops at `terminal` before.
[[nodiscard]] inline days days_to_length(const length& from, const length& to,
                                         const length& terminal, const growth_rate& r) {
    if (to <= from) {
        return day(0.0);
    }
    return to > terminal ? never() : days{(to - from) / r};
}

/// Length of a growing coat after `t` (mm), capped at the terminal length.
[[nodiscard]] inline length grown(const length& from, const length& terminal, const growth_rate& r,
                                  const days& t) {
    return shorter(longer(from, terminal), from + r * t);
}

/// P(a growing coat has reached `to` by `t`): Phi((ln(r t) - ln D) / s), facts: lognormal time.
[[nodiscard]] inline chance reached_by(const length& from, const length& to, const length& terminal,
                                       const rate_law& r, const days& t) {
    if (to <= from) {
        return 1.0;
    }
    if (to > terminal || !(in_days(t) > 0.0)) {
        return 0.0;
    }
    const double z = (std::log(in_days(t)) + r.log_median - std::log(in_mm(to - from))) / r.log_sd;
    return normal_cdf(z);
}

/// The day by which a share `p` of such dogs has reached `to`: quantile of the time, 0 < p < 1.
[[nodiscard]] inline days reach_quantile(const length& from, const length& to,
                                         const length& terminal, const rate_law& r, chance p) {
    // the fast growers get there first: the p-quantile of the time is the (1-p)-quantile of the rate
    return days_to_length(from, to, terminal, rate_quantile(r, 1.0 - p));
}

/// A resting coat clipped near the skin: `share` of the hairs grows at once, the rest begins from
/// nothing at hazard 1/reentry.
struct resting_coat {
    double share = 0.0;  ///< growing at the clip, 0 to 1
    days reentry{};      ///< mean wait of a resting follicle, over 0
    length terminal{};   ///< each hair stops here
};

/// Mean length of the clipped patch after `t` at rate `r` (mm): share r t + (1-share) r (t -
/// (1 - e^{-kt})/k) while no hair has reached the terminal length; beyond, each hair is capped.
[[nodiscard]] inline length resting_mean(const resting_coat& c, const growth_rate& r,
                                         const days& t) {
    const double time = in_days(t);
    if (!(time > 0.0)) {
        return mm(0.0);
    }
    const double k = 1.0 / in_days(c.reentry);
    const double rate = in_mm_per_day(r);
    const double full = in_mm(c.terminal) / rate;  // days a hair needs to its terminal length
    const double at_once = rate * std::min(time, full);
    // E[min(time - W, full)+], W exponential with hazard k: the mean growing time of the rest
    const auto growing = [&](double u) { return u > 0.0 ? u - (1.0 - std::exp(-k * u)) / k : 0.0; };
    const double later = rate * (growing(time) - growing(time - full));
    return mm(c.share * at_once + (1.0 - c.share) * later);
}

/// Days until the mean of a resting coat regrows to `to` at rate `r`; never from the terminal
/// length on. Inverted by bisection to well under a minute.
[[nodiscard]] inline days resting_days_to(const resting_coat& c, const growth_rate& r,
                                          const length& to) {
    if (!(in_mm(to) > 0.0)) {
        return day(0.0);
    }
    if (to >= c.terminal) {
        return never();
    }
    double low = 0.0;
    double high = 1.0;
    while (resting_mean(c, r, day(high)) < to) {
        high *= 2.0;
        if (high > 1e9) {
            return never();
        }
    }
    for (int i = 0; i < 80; ++i) {
        const double middle = 0.5 * (low + high);
        (resting_mean(c, r, day(middle)) < to ? low : high) = middle;
    }
    return day(high);
}

/// Quantile of that time, 0 < p < 1: the time falls as the rate rises.
[[nodiscard]] inline days resting_quantile(const resting_coat& c, const rate_law& r,
                                           const length& to, chance p) {
    return resting_days_to(c, rate_quantile(r, 1.0 - p), to);
}

/// Dogs whose coat waits after a clip before it grows: their share, and how much later they are back.
struct delay_law {
    double share = 0.0;   ///< 0 to 1
    days median{};        ///< of the extra wait, over 0
    double log_sd = 0.0;  ///< over 0
};

/// The rate at which the mean is at `to`, below the terminal length, after `t` (mm/day): the mean rises
/// with the rate. By bisection of its logarithm.
[[nodiscard]] inline growth_rate resting_rate_for(const resting_coat& c, const length& to,
                                                  const days& t) {
    double low = -12.0;
    double high = 12.0;
    for (int i = 0; i < 60; ++i) {
        const double middle = 0.5 * (low + high);
        (resting_mean(c, mm_per_day(std::exp(middle)), t) < to ? low : high) = middle;
    }
    return mm_per_day(std::exp(high));
}

/// P(a resting coat clipped near the skin is back at `to` by `t`), delayed dogs among the others: with
/// F the chance without a delay and D the extra wait, (1 - s) F(t) + s E[F(t - D)], E by the midpoints
/// of 64 slices of equal chance.
[[nodiscard]] inline chance resting_back_by(const resting_coat& c, const rate_law& law,
                                            const delay_law& late, const length& to,
                                            const days& t) {
    const auto back = [&](const days& after) {
        if (!(in_days(after) > 0.0) || to >= c.terminal) {
            return 0.0;
        }
        const double rate = std::log(in_mm_per_day(resting_rate_for(c, to, after)));
        return 1.0 - normal_cdf((rate - law.log_median) / law.log_sd);
    };
    if (!(late.share > 0.0)) {
        return back(t);
    }
    constexpr int slices = 64;
    double delayed = 0.0;
    for (int i = 0; i < slices; ++i) {
        const double z = normal_quantile((i + 0.5) / slices);
        delayed += back(t - late.median * std::exp(late.log_sd * z));
    }
    return (1.0 - late.share) * back(t) + late.share * delayed / slices;
}

/// The day by which a share `p` of such dogs is back, 0 < p < 1; never from the terminal length on.
[[nodiscard]] inline days resting_quantile(const resting_coat& c, const rate_law& law,
                                           const delay_law& late, const length& to, chance p) {
    if (to >= c.terminal) {
        return never();
    }
    double low = 0.0;
    double high = 64.0;
    while (resting_back_by(c, law, late, to, day(high)) < p) {
        low = high;
        high *= 2.0;
        if (high > 1e6) {
            return never();
        }
    }
    while (high - low > 0.05) {  // told in whole days
        const double middle = 0.5 * (low + high);
        (resting_back_by(c, law, late, to, day(middle)) < p ? low : high) = middle;
    }
    return day(high);
}

}  // namespace pelage
