// What mats found at visits, or none, say of the length at which a dog mats.
//
// A dog has one rate R and one factor T on all its matting-prone lengths, ln R ~ Normal(mu, s^2) and
// ln T ~ Normal(0, threshold_log_sd^2). After each cut it grows at ln r ~ Normal(ln R, visit_log_sd^2), with
// a start error e ~ Normal(0, s0^2) shared by the dog. A visit t days after the cut finds zone z, kept at
// s_z, matted if s_z + e + r t >= T M_z and hair grows as far. So it says of e, given r and T, that
//   max over matted zones of (T M_z - s_z - r t)  <=  e  <  min over clean zones of (T M_z - s_z - r t):
// each length is censored on the side on which the zone was. A share of visits are mishaps, which say
// nothing: mats from a swim or a collar, or none because somebody combed it through the day before.
// Readings taken after the same cut share its r and e. The posterior of (ln R, ln T) is integrated on a grid
// of both: sums of smooth functions that vanish at its edges, in steps a third of the narrowest of them, are
// exact to many digits; nothing is sampled.
#pragma once

#include <cstddef>
#include <vector>

#include <pelage/base/stats.hpp>
#include <pelage/base/units.hpp>
#include <pelage/model/learning.hpp>
#include <pelage/model/matting.hpp>

namespace pelage {

/// A zone as a comb found it.
struct combed_zone {
    days after{};         ///< since its last cut, > 0
    length start{};       ///< what that cut left (mm)
    length prone{};       ///< its matting-prone length, before the dog's own factor (mm, > 0)
    length terminal{};    ///< where hair stops (mm)
    bool matted = false;  ///< mats were found there
};

/// All zones of which one visit says something.
using comb_check = std::vector<combed_zone>;

/// What was seen from one cut to the next: lengths measured, and visits that looked for mats.
struct seen_since_cut {
    regrowth_interval readings;  ///< lengths measured since then
    std::vector<comb_check>
        checks;  ///< the earliest first; of more than three the last three count
};

/// What is taken of a dog before its visits.
struct comb_law {
    learning_law growth;             ///< how hair grows and is measured
    double threshold_log_sd = 0.25;  ///< of ln T, > 0
    chance mishap_share = 0.0;       ///< of visits, 0 to below 1
};

/// Takes out of a check what contradicts it whatever the dog: a clean zone that is matted before a matted
/// one at any rate and factor. Something else than length matted that one.
[[nodiscard]] comb_check consistent(comb_check c);

/// What is known of rate and factor after a dog's visits.
class comb_posterior {
  public:
    /// Throws error(range) as rate_posterior does, and unless every `after` and `prone` is over 0.
    comb_posterior(const std::vector<seen_since_cut>& seen, const comb_law& law);

    /// The factor's values with their chances and the rates that go with them, visit_log_sd in them: what a
    /// forecast takes. Chances below a millionth are left out.
    [[nodiscard]] const std::vector<factor_case>& cases() const { return cases_; }
    /// ln R of the dog, without the spread from visit to visit, and ln T: mean and standard deviation.
    [[nodiscard]] const rate_law& rate() const { return rate_; }
    [[nodiscard]] double factor_mean() const { return factor_mean_; }  ///< of ln T
    [[nodiscard]] double factor_sd() const { return factor_sd_; }      ///< of ln T
    /// P(R <= r), P(T <= f).
    [[nodiscard]] chance rate_below(const growth_rate& r) const;
    [[nodiscard]] chance factor_below(double f) const;  ///< P(T <= f)

  private:
    std::vector<double> log_rates_;    ///< middles of the grid's steps
    std::vector<double> log_factors_;  ///< likewise
    std::vector<double> by_rate_;      ///< chance of each step
    std::vector<double> by_factor_;
    double rate_step_ = 0.0;
    double factor_step_ = 0.0;
    std::vector<factor_case> cases_;
    rate_law rate_;
    double factor_mean_ = 0.0;
    double factor_sd_ = 0.0;
};

}  // namespace pelage
