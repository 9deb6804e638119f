// What measurements say of the rate at which a coat grows.
//
// ln R of a dog ~ Normal, the prior of its coat. After each cut the coat grows at a rate of that
// stretch, ln r ~ Normal(ln R, visit_log_sd). A length measured t days after a cut that left L0 is
//   y | r ~ Normal(min(L0 + r t, Lmax), diag(e^2) + s0^2 11'):
// each reading has its own error e, and all readings of a stretch share the error s0 of its start.
// The posterior of ln R is one-dimensional and is integrated numerically; nothing is sampled.
#pragma once

#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

#include <pelage/base/stats.hpp>
#include <pelage/base/units.hpp>
#include <pelage/model/growth.hpp>

namespace pelage {

/// One length measured some days after a cut.
struct reading {
    days after{};    ///< since the cut, > 0
    length start{};  ///< what the cut left there (mm)
    length is{};     ///< measured (mm)
    length error{};  ///< standard deviation of measuring (mm), > 0
};

/// What was measured between one cut and the next.
using regrowth_interval = std::vector<reading>;

/// The error of measuring hair that is expected to be so long: `measuring_error` up to
/// `measuring_share_from`, `measuring_share` of the length above (assumptions, growth.toml). Of the length
/// expected, not of that read: a slip would have an error of its own.
[[nodiscard]] inline length measuring_error(const length& expected, const growth_rules& g) {
    return expected > g.measuring_share_from.best ? g.measuring_share.best * expected
                                                  : g.measuring_error.best;
}

/// What is taken of a dog before it was measured.
struct learning_law {
    rate_law dog;               ///< of its rate, without the spread from visit to visit
    double visit_log_sd = 0.0;  ///< spread of the rate from stretch to stretch, >= 0
    length start_error{};       ///< of what a cut leaves, standard deviation (mm), >= 0
    length terminal{};          ///< where hair stops (mm); may be infinite
};

/// What the readings after one cut say of the dog's rate: the log likelihood of ln R, once prepared.
class stretch_likelihood {
  public:
    /// Throws error(range) unless every reading has `after` over 0, `error` of 1e-7 mm or more and
    /// finite lengths.
    stretch_likelihood(const regrowth_interval& readings, const learning_law& law);

    /// ln of the density of the readings, given ln R = `log_rate`.
    [[nodiscard]] double at(double log_rate) const;
    /// ln R where the readings alone put it, and about how wide.
    [[nodiscard]] double middle() const { return middle_; }
    [[nodiscard]] double width() const { return std::hypot(own_width_, visit_log_sd_); }  ///< ln R
    /// How narrow it may be where it bends: a reading of hair at its end tells the start error.
    [[nodiscard]] double finest() const { return std::hypot(0.5 * own_width_, visit_log_sd_); }
    /// ln R at which the likelihood bends, ascending: a reading's hair reaches its end there.
    [[nodiscard]] const std::vector<double>& bends() const { return bends_; }

  private:
    struct node {
        double log_rate = 0.0;  ///< of the rate in mm/day
        double rate = 0.0;
        double log_weight = 0.0;
    };
    [[nodiscard]] double of_own_rate(double rate) const;
    [[nodiscard]] double through_ends(double rate) const;
    void start_from_line();
    void find_middle(const rate_law& dog);
    [[nodiscard]] double fall_within(double step) const;
    void lay_nodes(const rate_law& dog);
    void lay_spread();
    [[nodiscard]] bool bends_near(double log_rate) const;
    [[nodiscard]] double through_bends(double log_rate) const;

    std::vector<reading> readings_;
    double visit_log_sd_ = 0.0;
    double start_precision_ = 0.0;  ///< 1 / s0^2; infinite without a start error
    double terminal_ = 0.0;
    double constant_ = 0.0;
    double ends_from_ = 0.0;  ///< rate (mm/day) from which a reading's hair has come to its end
    double line_rate_ = 0.0;  ///< below that the density is normal in the rate: its middle,
    double line_precision_ = 0.0;  ///< its precision
    double line_top_ = 0.0;        ///< and its height, as a logarithm
    double middle_ = 0.0;
    double own_width_ = 0.0;
    std::vector<double> bends_;
    // One of two quadratures, the cheaper: over the stretch's own rate, each node with its likelihood,
    // or over the spread from the dog's rate, each node a step from it with its density.
    std::vector<node> own_;
    std::vector<node> spread_;
};

/// What is known of a dog's rate after its measurements. With none it is the prior.
class rate_posterior {
  public:
    /// Throws error(range) as stretch_likelihood does, and unless law.dog.log_sd >= 1e-6. Empty stretches
    /// say nothing.
    rate_posterior(const std::vector<regrowth_interval>& stretches, const learning_law& law);

    /// Mean of f(ln R) for a smooth f.
    template <class F>
    [[nodiscard]] double mean_of(F&& f) const {
        double sum = 0.0;
        for (std::size_t i = 0; i < log_rates_.size(); ++i) {
            sum += weights_[i] * f(log_rates_[i]);
        }
        return sum;
    }
    [[nodiscard]] double mean() const { return mean_; }  ///< of ln R, R in mm/day
    [[nodiscard]] double sd() const { return sd_; }      ///< of ln R

    /// P(the dog's rate <= r).
    [[nodiscard]] chance below(const growth_rate& r) const;
    /// P(the rate of the next stretch <= r): the visit-to-visit spread is in it.
    [[nodiscard]] chance next_below(const growth_rate& r) const;
    /// Their quantiles, 0 < p < 1.
    [[nodiscard]] growth_rate quantile(chance p) const;
    [[nodiscard]] growth_rate next_quantile(chance p) const;  ///< of the next stretch

    /// The rate of the next stretch as forecasts take it: the lognormal through the points that 1 in 10
    /// and 9 in 10 lie below.
    [[nodiscard]] rate_law next() const;
    /// How much the coat's usual rate still weighs, 0 to 1: posterior over prior variance, in the
    /// conjugate case the weight of the prior's mean.
    [[nodiscard]] double prior_share() const;
    /// ln of the density of all readings under the model.
    [[nodiscard]] double log_evidence() const { return log_evidence_; }

  private:
    [[nodiscard]] double log_density(double log_rate) const;
    [[nodiscard]] double peak() const;
    [[nodiscard]] double edge(double from, double step) const;
    void find_joints(double middle);

    std::vector<stretch_likelihood> said_;
    learning_law law_;
    double scale_ = 0.0;  ///< about the standard deviation
    double top_ = 0.0;    ///< log density at the peak
    double low_ = 0.0;    ///< where the density is nothing, on either side
    double high_ = 0.0;
    std::vector<double> joints_;  ///< where it bends, and its peak, ascending
    double panel_ = 0.0;          ///< of the quadrature
    double total_ = 0.0;          ///< integral of the density relative to the peak
    std::vector<double> log_rates_;
    std::vector<double> weights_;
    double mean_ = 0.0;
    double sd_ = 0.0;
    double log_evidence_ = 0.0;
};

/// What one dog's measurements say of ln R, its prior taken out again: a normal likelihood.
struct rate_estimate {
    double log_rate = 0.0;  ///< of R in mm/day
    double error = 0.0;     ///< standard deviation, > 0
};
/// Of a posterior; exact in the conjugate case. Nothing if the readings say next to nothing.
[[nodiscard]] std::optional<rate_estimate> estimate_of(const rate_posterior& p,
                                                       const rate_law& dog);

/// How the rates of many dogs of a coat spread, by maximum likelihood: estimate_i ~ Normal(log_median,
/// log_sd^2 + error_i^2), with log_sd shrunk toward the class and not below `least`.
struct herd_rate {
    rate_law law;                ///< of the dogs measured
    double fitted_log_sd = 0.0;  ///< the likeliest spread if any may be
    double median_error = 0.0;   ///< standard error of law.log_median
};
/// The spread of the class of which these dogs are, and for how many dogs it counts beside them.
struct class_spread {
    double log_sd = 0.0;      ///< between dogs of the coat
    double counts_for = 0.0;  ///< dogs, >= 0
};
/// Needs at least two dogs; throws error(range) otherwise. A dozen dogs tell a spread within a fifth or so:
/// log_sd^2 is the mean of theirs and the class's, weighed by the dogs each counts for.
[[nodiscard]] herd_rate herd_rate_of(const std::vector<rate_estimate>& dogs, double least = 0.0,
                                     const class_spread& of_class = {});

}  // namespace pelage
