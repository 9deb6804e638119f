#include <algorithm>
#include <cmath>
#include <limits>

#include <pelage/model/learning_mats.hpp>

#include "model/quadrature.hpp"

namespace pelage {

namespace {

using learning_math::infinity;
using grid_row = std::vector<double>;

constexpr std::size_t most_in_a_stretch = 3;
constexpr double far_out = 6.0;  // standard deviations beyond which nothing shows
constexpr double either = 0.5;   // a mishap finds mats or none alike

/// A zone in millimetres and days.
struct zone_numbers {
    double after = 0.0;
    double start = 0.0;
    double prone = 0.0;
    double terminal = 0.0;
    bool matted = false;
    friend bool operator==(const zone_numbers&, const zone_numbers&) = default;
};

/// A visit's zones, those alike once.
std::vector<zone_numbers> numbers_of(const comb_check& c) {
    std::vector<zone_numbers> out;
    for (const combed_zone& z : c) {
        const zone_numbers n{in_days(z.after), in_mm(z.start), in_mm(z.prone), in_mm(z.terminal),
                             z.matted};
        if (!(n.after > 0.0 && n.prone > 0.0)) {
            throw error(errc::range,
                        "a comb check needs a time since the cut and a matting-prone length");
        }
        if (std::find(out.begin(), out.end(), n) == out.end()) {
            out.push_back(n);
        }
    }
    return out;
}

/// low <= start error < high.
struct error_span {
    double low = -infinity;
    double high = infinity;
};

error_span span_of(const std::vector<zone_numbers>& zones, double rate, double factor) {
    error_span s;
    for (const zone_numbers& z : zones) {
        const double mats_at = z.prone * factor;
        const bool never = mats_at > std::max(z.start, z.terminal);
        const double at = never ? infinity : mats_at - z.start - rate * z.after;
        (z.matted ? s.low : s.high) = z.matted ? std::max(s.low, at) : std::min(s.high, at);
    }
    return s;
}

/// What all is known between two cuts, ready for any rate and factor.
class stretch_of_checks {
  public:
    stretch_of_checks(const seen_since_cut& s, const comb_law& law)
        : readings_(s.readings), law_(law) {
        if (!readings_.empty()) {
            learning_math::check(readings_, law.growth);
        }
        const std::size_t n = std::min(s.checks.size(), most_in_a_stretch);
        for (std::size_t i = s.checks.size() - n; i < s.checks.size(); ++i) {
            checks_.push_back(numbers_of(s.checks[i]));
        }
    }
    [[nodiscard]] bool looked() const { return !checks_.empty(); }

    /// About how narrow readings make ln r, or a check's edge is in it.
    [[nodiscard]] double narrowest() const {
        double after = 0.0;
        for (const auto& zones : checks_) {
            for (const zone_numbers& z : zones) {
                after = std::max(after, z.after);
            }
        }
        const double grown = 1.5 * after * std::exp(law_.growth.dog.log_median);
        const double edge = 1.7 * in_mm(law_.growth.start_error) / std::max(grown, 1e-3);
        return std::min(edge, by_readings());
    }
    [[nodiscard]] double by_readings() const {
        double precision = 0.0;
        for (const reading& r : readings_) {
            const double grown = std::max(in_mm(r.is) - in_mm(r.start), 1.0);
            const double e = in_mm(r.error) / grown;
            precision += 1.0 / (e * e);
        }
        return precision > 0.0 ? 1.0 / std::sqrt(precision) : infinity;
    }

    /// The start error, given the readings and the stretch's own rate: normal; and ln of the density of
    /// the readings, but for a constant.
    void at_rate(double rate) {
        const double s0 = std::max(in_mm(law_.growth.start_error), learning_math::least_error);
        double precision = 1.0 / (s0 * s0);
        double weighed = 0.0;
        double square = 0.0;
        for (const reading& r : readings_) {
            const double e = in_mm(r.error);
            const double top = std::max(in_mm(law_.growth.terminal), in_mm(r.start));
            const double off =
                in_mm(r.is) - std::min(in_mm(r.start) + rate * in_days(r.after), top);
            precision += 1.0 / (e * e);
            weighed += off / (e * e);
            square += off * off / (e * e);
        }
        rate_ = rate;
        mean_ = weighed / precision;
        sd_ = 1.0 / std::sqrt(precision);
        log_readings_ = -0.5 * (square - mean_ * mean_ * precision);
    }
    [[nodiscard]] double log_readings() const { return log_readings_; }

    /// P(the visits found what they found), given the rate last set and a factor: over all ways in which
    /// some of them were mishaps.
    [[nodiscard]] double found(double factor) const {
        std::array<error_span, most_in_a_stretch> spans{};
        for (std::size_t i = 0; i < checks_.size(); ++i) {
            spans[i] = span_of(checks_[i], rate_, factor);
        }
        double sum = 0.0;
        for (std::size_t mishaps = 0; mishaps < (std::size_t{1} << checks_.size()); ++mishaps) {
            double weight = 1.0;
            error_span both;
            for (std::size_t i = 0; i < checks_.size(); ++i) {
                if ((mishaps >> i & 1U) != 0) {
                    weight *= law_.mishap_share * by_mishap(checks_[i]);
                } else {
                    weight *= 1.0 - law_.mishap_share;
                    both.low = std::max(both.low, spans[i].low);
                    both.high = std::min(both.high, spans[i].high);
                }
            }
            if (weight > 0.0 && both.high > both.low) {
                sum += weight * (below(both.high) - below(both.low));
            }
        }
        return sum;
    }

  private:
    /// P(a mishap finds that): none, or mats in the most exposed zones, as likely few as many.
    [[nodiscard]] static double by_mishap(const std::vector<zone_numbers>& zones) {
        const bool mats =
            std::any_of(zones.begin(), zones.end(), [](const zone_numbers& z) { return z.matted; });
        return mats ? either / static_cast<double>(zones.size()) : either;
    }
    [[nodiscard]] double below(double error) const {
        return std::isinf(error) ? (error > 0.0 ? 1.0 : 0.0)
                                 : normal_row().at((error - mean_) / sd_);
    }

    regrowth_interval readings_;
    const comb_law& law_;
    std::vector<std::vector<zone_numbers>> checks_;
    double rate_ = 0.0;
    double mean_ = 0.0;
    double sd_ = 1.0;
    double log_readings_ = 0.0;
};

/// Equal steps over both, and ln of the posterior at each pair.
class joint_grid {
  public:
    explicit joint_grid(const comb_law& law) : law_(law) {
        visit_ = std::max(law.growth.visit_log_sd, 0.02);
        step_ = std::min(visit_, law.growth.dog.log_sd) / 3.0;
        const double reach = far_out * std::hypot(law.growth.dog.log_sd, visit_);
        const auto n = static_cast<std::size_t>(std::ceil(2.0 * reach / step_)) + 1;
        for (std::size_t i = 0; i < n; ++i) {
            log_rates.push_back(law.growth.dog.log_median - reach + step_ * static_cast<double>(i));
        }
        constexpr std::size_t factors = 73;
        factor_step_ = 2.0 * far_out * law.threshold_log_sd / (factors - 1);
        for (std::size_t j = 0; j < factors; ++j) {
            log_factors.push_back(-far_out * law.threshold_log_sd +
                                  factor_step_ * static_cast<double>(j));
        }
        log_p.assign(factors, grid_row(n));
        for (std::size_t j = 0; j < factors; ++j) {
            const double f = log_factors[j] / law.threshold_log_sd;
            for (std::size_t i = 0; i < n; ++i) {
                const double z = (log_rates[i] - law.growth.dog.log_median) / law.growth.dog.log_sd;
                log_p[j][i] = -0.5 * (z * z + f * f);
            }
        }
    }

    /// A stretch of which only lengths are known.
    void add(const regrowth_interval& readings) {
        const stretch_likelihood said(readings, law_.growth);
        for (std::size_t i = 0; i < log_rates.size(); ++i) {
            const double at = said.at(log_rates[i]);
            for (grid_row& row : log_p) {
                row[i] += at;
            }
        }
    }

    /// A stretch in which somebody looked for mats. Its own rate runs over the grid in steps of `parts` to
    /// one, and a bell about the dog's rate weighs it.
    void add(stretch_of_checks s) {
        const auto parts =
            static_cast<std::size_t>(std::clamp(std::ceil(1.5 * step_ / s.narrowest()), 1.0, 40.0));
        const double fine_step = step_ / static_cast<double>(parts);
        const auto reach = static_cast<std::size_t>(std::ceil(far_out * visit_ / fine_step));
        const std::size_t n = (log_rates.size() - 1) * parts + 1 + 2 * reach;
        const double first = log_rates.front() - fine_step * static_cast<double>(reach);
        grid_row log_seen(n);
        std::vector<grid_row> found(log_factors.size(), grid_row(n));
        for (std::size_t k = 0; k < n; ++k) {
            s.at_rate(std::exp(first + fine_step * static_cast<double>(k)));
            log_seen[k] = s.log_readings();
            for (std::size_t j = 0; j < log_factors.size(); ++j) {
                found[j][k] = s.found(std::exp(log_factors[j]));
            }
        }
        const double top = *std::max_element(log_seen.begin(), log_seen.end());
        for (std::size_t k = 0; k < n; ++k) {
            const double seen = std::exp(log_seen[k] - top);
            for (grid_row& row : found) {
                row[k] *= seen;
            }
        }
        grid_row bell(2 * reach + 1);
        for (std::size_t m = 0; m < bell.size(); ++m) {
            const double z =
                fine_step * (static_cast<double>(m) - static_cast<double>(reach)) / visit_;
            bell[m] = std::exp(-0.5 * z * z);
        }
        for (std::size_t j = 0; j < log_factors.size(); ++j) {
            for (std::size_t i = 0; i < log_rates.size(); ++i) {
                double sum = 0.0;
                const double* from = found[j].data() + i * parts;
                for (std::size_t m = 0; m < bell.size(); ++m) {
                    sum += bell[m] * from[m];
                }
                log_p[j][i] += std::log(std::max(sum, 1e-300));
            }
        }
    }

    [[nodiscard]] double step() const { return step_; }
    [[nodiscard]] double factor_step() const { return factor_step_; }
    [[nodiscard]] double visit() const { return law_.growth.visit_log_sd; }

    grid_row log_rates;
    grid_row log_factors;
    std::vector<grid_row> log_p;  ///< [factor][rate]

  private:
    const comb_law& law_;
    double visit_ = 0.0;
    double step_ = 0.0;
    double factor_step_ = 0.0;
};

struct moments {
    double mean = 0.0;
    double sd = 0.0;
};

moments moments_of(const grid_row& at, const grid_row& weight) {
    double total = 0.0;
    double sum = 0.0;
    for (std::size_t i = 0; i < at.size(); ++i) {
        total += weight[i];
        sum += weight[i] * at[i];
    }
    moments m{total > 0.0 ? sum / total : 0.0, 0.0};
    double square = 0.0;
    for (std::size_t i = 0; i < at.size(); ++i) {
        square += weight[i] * (at[i] - m.mean) * (at[i] - m.mean);
    }
    m.sd = total > 0.0 ? std::sqrt(square / total) : 0.0;
    return m;
}

/// P(x <= to) of a density in equal steps, half of a step lying on either side of its middle.
chance below(const grid_row& at, const grid_row& weight, double step, double to) {
    double sum = 0.0;
    for (std::size_t i = 0; i < at.size(); ++i) {
        sum += weight[i] * std::clamp((to - at[i]) / step + 0.5, 0.0, 1.0);
    }
    return std::min(sum, 1.0);
}

}  // namespace

comb_check consistent(comb_check c) {
    const comb_check all = c;
    std::erase_if(c, [&](const combed_zone& clean) {
        return !clean.matted && std::any_of(all.begin(), all.end(), [&](const combed_zone& m) {
            return m.matted && m.after <= clean.after && m.start <= clean.start &&
                   m.prone >= clean.prone && m.terminal <= clean.terminal;
        });
    });
    return c;
}

comb_posterior::comb_posterior(const std::vector<seen_since_cut>& seen, const comb_law& law) {
    joint_grid g(law);
    for (const seen_since_cut& s : seen) {
        stretch_of_checks checks(s, law);
        if (checks.looked()) {
            g.add(std::move(checks));
        } else if (!s.readings.empty()) {
            g.add(s.readings);
        }
    }
    double top = -infinity;
    for (const grid_row& row : g.log_p) {
        top = std::max(top, *std::max_element(row.begin(), row.end()));
    }
    double total = 0.0;
    for (grid_row& row : g.log_p) {
        for (double& p : row) {
            p = std::exp(p - top);
            total += p;
        }
    }
    log_rates_ = g.log_rates;
    log_factors_ = g.log_factors;
    rate_step_ = g.step();
    factor_step_ = g.factor_step();
    by_rate_.assign(log_rates_.size(), 0.0);
    constexpr double least = 1e-6;
    for (std::size_t j = 0; j < log_factors_.size(); ++j) {
        double here = 0.0;
        for (std::size_t i = 0; i < log_rates_.size(); ++i) {
            const double p = g.log_p[j][i] / total;
            by_rate_[i] += p;
            here += p;
        }
        by_factor_.push_back(here);
        if (here > least) {
            const moments m = moments_of(log_rates_, g.log_p[j]);
            cases_.push_back(
                {std::exp(log_factors_[j]), here, {m.mean, std::hypot(m.sd, g.visit())}});
        }
    }
    double kept = 0.0;
    for (const factor_case& f : cases_) {
        kept += f.weight;
    }
    for (factor_case& f : cases_) {
        f.weight /= kept;
    }
    const moments rate = moments_of(log_rates_, by_rate_);
    rate_ = {rate.mean, rate.sd};
    const moments factor = moments_of(log_factors_, by_factor_);
    factor_mean_ = factor.mean;
    factor_sd_ = factor.sd;
}

chance comb_posterior::rate_below(const growth_rate& r) const {
    return below(log_rates_, by_rate_, rate_step_, std::log(in_mm_per_day(r)));
}

chance comb_posterior::factor_below(double f) const {
    return below(log_factors_, by_factor_, factor_step_, std::log(f));
}

}  // namespace pelage
