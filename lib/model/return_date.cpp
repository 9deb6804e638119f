#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include <pelage/model/return_date.hpp>

#include "model/return_curve.hpp"

namespace pelage {

namespace {

/// Whether the zones are all fine on day `t` at a chance of `p`, where that is plain.
std::optional<bool> plainly_fine(std::span<const counted_zone> zones, const shared_law& law,
                                 double t, chance p) {
    constexpr chance clear = 1e-6;
    if (!law.learned.empty()) {
        return std::nullopt;
    }
    if (law.threshold_log_sd == 0.0) {
        // a zone kept that long is past it on the day of the groom
        const bool past = std::any_of(zones.begin(), zones.end(), [&](const counted_zone& z) {
            const double left = z.threshold - z.start;
            const double spread = in_mm(law.start_error);
            return spread > 0.0 && normal_cdf(left / spread) < p - clear;
        });
        return past ? std::optional{false} : std::nullopt;
    }
    const about_chance about = about_fine(zones, law, t);
    return std::fabs(about.is - p) > about.off ? std::optional{about.is > p} : std::nullopt;
}

/// The zones of a dog as they begin to count, one clock after the other.
class fine_days {
  public:
    /// With `clocks` false all zones count from day 0. Borrows `law`.
    fine_days(const std::vector<kept_zone>& zones, const shared_law& law, bool clocks) : law_(law) {
        for (const kept_zone& z : zones) {
            if (z.threshold) {
                add(clocks ? first_day(z.clock) : 0, counted_zone(z));
            }
        }
        for (std::size_t i = 1; i < stages_.size(); ++i) {
            counted all = stages_[i - 1].zones;
            for (const counted_zone& z : stages_[i].zones) {
                add_uncovered(all, z);
            }
            stages_[i].zones = std::move(all);
        }
    }

    /// A whole day, and the chance that those that count on it are fine then, where it was reckoned.
    struct found {
        int day = 0;
        std::optional<chance> fine;
    };
    /// The last whole day on which the chance is at least `p`, at most `cap`. `z` is the normal
    /// quantile of p.
    found last(chance p, double z, int cap) {
        found out{cap, {}};
        for (std::size_t i = 0; i < stages_.size() && stages_[i].from <= cap; ++i) {
            const int end = i + 1 < stages_.size() ? std::min(cap, stages_[i + 1].from - 1) : cap;
            const int low = std::max(stages_[i].from - 1, 0);
            const bool done = low < end && !stages_[i].curve &&
                              plainly_fine(stages_[i].zones, law_, low + 1.0, p) == false;
            out = done ? found{low, {}} : last_in(curve(i), p, z, low, end);
            if (out.day < end) {
                return out;
            }
        }
        return out;
    }

    /// The chance that those that count on that day are fine then; nothing if none counts.
    std::optional<chance> fine_at(const found& f) {
        std::optional<std::size_t> last;
        for (std::size_t i = 0; i < stages_.size() && stages_[i].from <= f.day; ++i) {
            last = i;
        }
        return !last || f.fine ? f.fine : std::optional{curve(*last).at(f.day)};
    }

    /// Whether the chance that all are fine by day `t`, whether they count by then or not, is at least `p`.
    bool all_counted(double t, chance p) {
        if (stages_.empty()) {
            return true;
        }
        const stage& s = stages_.back();
        const auto plain = s.curve ? std::nullopt : plainly_fine(s.zones, law_, t, p);
        return plain ? *plain : curve(stages_.size() - 1).at(t) >= p;
    }

  private:
    using counted = std::vector<counted_zone>;
    struct stage {
        int from = 0;   ///< the first whole day on which these zones count
        counted zones;  ///< that count from then on, but those that others cover
        std::optional<fine_curve> curve;
    };

    /// To those that begin to count on that day.
    void add(int day, const counted_zone& z) {
        const auto at = std::find_if(stages_.begin(), stages_.end(),
                                     [&](const stage& s) { return s.from >= day; });
        const bool known = at != stages_.end() && at->from == day;
        add_uncovered((known ? at : stages_.insert(at, {day, {}, {}}))->zones, z);
    }

    /// The first whole day on which a zone counts that is held until `clock`.
    static int first_day(const days& clock) {
        constexpr double far = 1e6;
        return static_cast<int>(std::floor(std::clamp(in_days(clock), -1.0, far))) + 1;
    }

    const fine_curve& curve(std::size_t i) {
        stage& s = stages_[i];
        const double first = std::max(static_cast<double>(s.from) - 1.0, 0.0);
        return s.curve ? *s.curve : s.curve.emplace(s.zones, law_, first);
    }

    /// The last day in [low, high] on which the chance is at least `p`, given that it is on `low`.
    static found last_in(const fine_curve& c, chance p, double z, int low, int high) {
        found fine{low, {}};
        int past = high + 1;
        double guess = c.first_guess(z);
        for (int tries = 0; past - fine.day > 1; ++tries) {
            // a good guess ends in two or three steps, halving ends always
            const double aim = fine.day > low ? std::ceil(guess) : std::floor(guess);
            const int day = tries < 6
                                ? static_cast<int>(std::clamp(aim, fine.day + 1.0, past - 1.0))
                                : fine.day + (past - fine.day) / 2;
            const chance is = c.at(day);
            if (is >= p) {
                fine = {day, is};
            } else {
                past = day;
            }
            guess = c.next_guess(day, is, p, z);
        }
        return fine;
    }

    const shared_law& law_;
    std::vector<stage> stages_;
};

int whole_days(const days& d) {
    return static_cast<int>(std::floor(in_days(d)));
}

/// Zones that are likely past their length on day `t`; of many kept alike, and of those that another
/// covers, one is reckoned, and only if nothing simpler tells.
class past_zones {
  public:
    past_zones(const shared_law& law, chance p, double t)
        : law_(law),
          p_(p),
          t_(t),
          rare_(-normal_quantile((1.0 - p) / 3.0)),
          common_(-normal_quantile(std::cbrt(1.0 - p))) {}

    bool past(const kept_zone& z) {
        const counted_zone c(z);
        for (const known& k : known_) {
            if (k.past ? covers(c, k.zone) : covers(k.zone, c)) {
                return k.past;
            }
        }
        known_.push_back({c, reckoned(c)});
        return known_.back().past;
    }

  private:
    [[nodiscard]] bool reckoned(const counted_zone& c) const {
        if (law_.learned.empty()) {
            // if none of rate, factor and error is as bad as that, which one in three times (1 - p) is
            if (room(c, rare_) > 0.0) {
                return false;
            }
            // all three are as bad as that at once in 1 - p of the dogs
            if (room(c, common_) < 0.0) {
                return true;
            }
        }
        const auto plain = plainly_fine({&c, 1}, law_, t_, p_);
        return !(plain ? *plain : fine_curve({c}, law_, t_).at(t_) >= p_);
    }

    /// What room is left where rate, factor and start error are `z` deviations to the bad.
    [[nodiscard]] double room(const counted_zone& c, double z) const {
        const double grown = std::exp(law_.rate.log_median + law_.rate.log_sd * z) * t_;
        const double start = std::max(0.0, c.start + in_mm(law_.start_error) * z);
        const double now = std::min(start + grown, std::max(start, c.terminal));
        return c.threshold * std::exp(-law_.threshold_log_sd * z) - now;
    }

    struct known {
        counted_zone zone;
        bool past = false;
    };
    const shared_law& law_;
    chance p_;
    double t_;
    double rare_;
    double common_;
    std::vector<known> known_;
};

}  // namespace

chance all_fine(const std::vector<kept_zone>& zones, const shared_law& law, const days& t,
                bool clocks) {
    std::vector<counted_zone> counted;
    for (const kept_zone& z : zones) {
        if (z.threshold && !(clocks && t <= z.clock)) {
            counted.emplace_back(z);
        }
    }
    return fine_curve(counted, law, in_days(t)).at(in_days(t));
}

days last_fine_day(const std::vector<kept_zone>& zones, const shared_law& law, chance p,
                   const days& cap, bool clocks) {
    return day(fine_days(zones, law, clocks).last(p, normal_quantile(p), whole_days(cap)).day);
}

namespace {

/// The day, to a thousandth, on which the curve falls to `p`.
days falls_to(const fine_curve& curve, chance p) {
    constexpr double soon = 1e-6;
    constexpr double far = 1e5;
    if (curve.at(soon) < p) {
        return day(0.0);
    }
    if (curve.at(far) > p) {
        return never();
    }
    // ln t lies between these; a step that leaves them, or doesn't end soon, halves instead
    double low = std::log(soon);
    double high = std::log(far);
    double at = std::clamp(std::log(curve.first_guess(normal_quantile(p))), low, high);
    for (int tries = 0; tries < 100; ++tries) {
        const auto [is, falls] = curve.at_and_fall(std::exp(at));
        (is > p ? low : high) = at;
        const double step = falls > 0.0 ? (is - p) / falls : 0.0;
        const bool inside = falls > 0.0 && at + step > low && at + step < high && tries < 12;
        const double next = inside ? at + step : 0.5 * (low + high);
        if (std::fabs(std::exp(next) - std::exp(at)) < 1e-4) {
            return day(std::exp(next));
        }
        at = next;
    }
    return day(std::exp(at));
}

}  // namespace

std::vector<days> prone_quantiles(const kept_zone& z, const shared_law& law,
                                  std::span<const chance> ps) {
    if (!z.threshold) {
        return std::vector<days>(ps.size(), never());
    }
    const fine_curve curve({counted_zone(z)}, law, 0.0);
    std::vector<days> out;
    out.reserve(ps.size());
    for (const chance p : ps) {
        out.push_back(falls_to(curve, 1.0 - p));
    }
    return out;
}

days prone_quantile(const kept_zone& z, const shared_law& law, chance p) {
    return prone_quantiles(z, law, {&p, 1}).front();
}

namespace {

/// The zone with the least room to grow.
std::optional<std::size_t> tightest(const std::vector<kept_zone>& zones) {
    std::optional<std::size_t> first;
    length least = mm(std::numeric_limits<double>::infinity());
    for (std::size_t i = 0; i < zones.size(); ++i) {
        if (zones[i].threshold && *zones[i].threshold - zones[i].start < least) {
            least = *zones[i].threshold - zones[i].start;
            first = i;
        }
    }
    return first;
}

/// Of the zones within their clock on the day of the next visit those that only brushing protects.
std::vector<std::size_t> only_brushed(const std::vector<kept_zone>& zones, const shared_law& law,
                                      const return_date& b) {
    std::vector<std::size_t> out;
    past_zones next_day(law, b.asked, in_days(b.next_visit) + 1.0);
    for (std::size_t i = 0; i < zones.size(); ++i) {
        if (zones[i].threshold && zones[i].clock >= b.next_visit && next_day.past(zones[i])) {
            out.push_back(i);
        }
    }
    // each by itself is as likely fine as asked, all together are not: the tightest stands for them
    for (std::size_t i = 0; i < zones.size() && out.empty() && b.first; ++i) {
        if (b.reason == visit_kind::by_brushing && zones[i] == zones[*b.first]) {
            out.push_back(i);
        }
    }
    return out;
}

}  // namespace

return_date return_date_of(const std::vector<kept_zone>& zones, const shared_law& law, chance p,
                           const days& usual) {
    return_date b;
    b.asked = p;
    b.first = tightest(zones);
    const int cap = whole_days(usual);
    fine_days all(zones, law, true);
    const fine_days::found last = all.last(p, normal_quantile(p), cap);
    const fine_days::found even = all.last(0.5, 0.0, cap);
    const int due = last.day;
    b.next_visit = day(due);
    b.even_odds = day(even.day);
    b.full_groom = day(cap);
    b.fine = all.fine_at(last);
    b.fine_even = even.day == due ? b.fine : all.fine_at(even);
    const bool clock_ends = std::any_of(zones.begin(), zones.end(), [&](const kept_zone& z) {
        return z.threshold && whole_days(z.clock) == due;
    });
    b.reason = due == cap   ? visit_kind::usual
               : clock_ends ? visit_kind::by_brushing
                            : visit_kind::by_length;
    const bool held = std::any_of(zones.begin(), zones.end(), [&](const kept_zone& z) {
        return z.threshold && z.clock >= b.next_visit;
    });
    if (held && !all.all_counted(due + 1.0, p)) {
        b.by_brushing = only_brushed(zones, law, b);
        for (const std::size_t i : b.by_brushing) {
            b.held_for = std::max(b.held_for, zones[i].clock);
        }
    }
    return b;
}

}  // namespace pelage
