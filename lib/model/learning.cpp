// The posterior of a dog's rate, by quadrature.
//
// For one stretch the likelihood of its own rate r is a normal density in the readings: with
// d_i = y_i - min(L0_i + r t_i, Lmax) and w_i = 1 / e_i^2, Sherman and Morrison's formula gives
//   -2 ln p = sum w d^2 - (sum w d)^2 / (1/s0^2 + sum w) + sum ln(2 pi e^2) + ln(1 + s0^2 sum w).
// Of the dog's rate it is the mean of that over ln r ~ Normal(ln R, visit_log_sd).
#include <algorithm>
#include <limits>
#include <numbers>
#include <utility>

#include <pelage/base/error.hpp>
#include <pelage/model/learning.hpp>

#include "model/quadrature.hpp"

namespace pelage {

using namespace learning_math;

rate_posterior::rate_posterior(const std::vector<regrowth_interval>& stretches,
                               const learning_law& law)
    : law_(law) {
    check({}, law);
    double precision = 1.0 / (law.dog.log_sd * law.dog.log_sd);
    for (const regrowth_interval& s : stretches) {
        if (!s.empty()) {
            said_.emplace_back(s, law);
            precision += 1.0 / (said_.back().width() * said_.back().width());
        }
    }
    scale_ = 1.0 / std::sqrt(precision);
    const double middle = peak();
    top_ = log_density(middle);
    low_ = edge(middle, -scale_);
    high_ = edge(middle, scale_);
    find_joints(middle);
    for (const quadrature_node& n : nodes_over(low_, high_, joints_, panel_)) {
        const double sum = log_density(n.at);
        log_rates_.push_back(n.at);
        weights_.push_back(n.weight * std::exp(sum - top_));
        total_ += weights_.back();
    }
    for (double& w : weights_) {
        w /= total_;
    }
    log_evidence_ = top_ + std::log(total_);
    mean_ = mean_of([](double u) { return u; });
    sd_ = std::sqrt(mean_of([&](double u) { return (u - mean_) * (u - mean_); }));
}

/// The spread from visit to visit rounds a bend off over a few times its own width.
void rate_posterior::find_joints(double middle) {
    double precision = 1.0 / (law_.dog.log_sd * law_.dog.log_sd);
    for (const stretch_likelihood& s : said_) {
        precision += 1.0 / (s.finest() * s.finest());
        for (const double bend : s.bends()) {
            for (const double off : {-3.0, 0.0, 3.0}) {
                const double at = bend + off * law_.visit_log_sd;
                if (at > low_ && at < high_) {
                    joints_.push_back(at);
                }
            }
        }
    }
    panel_ = panel * (joints_.empty() ? scale_ : 1.0 / std::sqrt(precision));
    // a bend at the peak: on one side the density may fall far steeper than its width tells, so panels there
    // grow from small ones
    const auto nearest = std::min_element(joints_.begin(), joints_.end(), [&](double a, double b) {
        return std::abs(a - middle) < std::abs(b - middle);
    });
    if (nearest != joints_.end()) {
        const double bend = *nearest;
        for (double off = panel_ / 32.0; off < panel_; off *= 2.0) {
            joints_.push_back(bend - off);
            joints_.push_back(bend + off);
        }
    }
    joints_.push_back(middle);
    std::sort(joints_.begin(), joints_.end());
}

double rate_posterior::log_density(double log_rate) const {
    double sum = log_normal_density(log_rate - law_.dog.log_median, law_.dog.log_sd);
    for (const stretch_likelihood& s : said_) {
        sum += s.at(log_rate);
    }
    return sum;
}

/// Where the density is highest, to a tenth of its width or so.
double rate_posterior::peak() const {
    double best = std::clamp(law_.dog.log_median, slowest, fastest);
    double weighed = 0.0;
    double weights = 0.0;
    std::vector<double> tries;
    std::vector<double> middles;
    for (const stretch_likelihood& s : said_) {
        middles.push_back(s.middle());
        weighed += s.middle() / (s.width() * s.width());
        weights += 1.0 / (s.width() * s.width());
    }
    if (weights > 0.0) {
        const double prior = 1.0 / (law_.dog.log_sd * law_.dog.log_sd);
        tries.push_back((weighed + prior * law_.dog.log_median) / (weights + prior));
    }
    // of many stretches some that stand for all, or this would be their number squared
    constexpr std::size_t most = 8;
    std::sort(middles.begin(), middles.end());
    for (std::size_t i = 0; i < std::min(most, middles.size()); ++i) {
        tries.push_back(
            middles[middles.size() <= most ? i : i * (middles.size() - 1) / (most - 1)]);
    }
    const auto density = [&](double x) {
        return x > slowest && x < fastest ? log_density(x) : -infinity;
    };
    double highest = density(best);
    for (const double x : tries) {
        const double here = density(x);
        best = here > highest ? x : best;
        highest = std::max(here, highest);
    }
    return climb(density, best, scale_);
}

/// Where the density has become negligible, going out from `from`.
double rate_posterior::edge(double from, double step) const {
    double inside = from;
    while (std::abs(inside) < fastest && log_density(inside + step) > top_ - negligible) {
        inside += step;
        step *= 1.5;
    }
    return inside + step;
}

chance rate_posterior::below(const growth_rate& r) const {
    const double to = std::log(in_mm_per_day(r));
    if (to >= high_) {
        return 1.0;
    }
    double sum = 0.0;
    for (const quadrature_node& n : nodes_over(low_, to, joints_, panel_)) {
        sum += n.weight * std::exp(log_density(n.at) - top_);
    }
    return std::min(1.0, sum / total_);
}

chance rate_posterior::next_below(const growth_rate& r) const {
    if (law_.visit_log_sd <= 0.0) {
        return below(r);
    }
    const double to = std::log(in_mm_per_day(r));
    return mean_of([&](double u) { return normal_cdf((to - u) / law_.visit_log_sd); });
}

growth_rate rate_posterior::quantile(chance p) const {
    const auto f = [&](double u) { return below(mm_per_day(std::exp(u))); };
    return mm_per_day(std::exp(inverse(f, p, low_, high_)));
}

growth_rate rate_posterior::next_quantile(chance p) const {
    const double spread = std::hypot(sd_, law_.visit_log_sd);
    const auto f = [&](double u) { return next_below(mm_per_day(std::exp(u))); };
    return mm_per_day(std::exp(inverse(f, p, mean_ - 12.0 * spread, mean_ + 12.0 * spread)));
}

rate_law rate_posterior::next() const {
    const double slow = std::log(in_mm_per_day(next_quantile(0.1)));
    const double fast = std::log(in_mm_per_day(next_quantile(0.9)));
    return {0.5 * (slow + fast), (fast - slow) / (2.0 * normal_quantile(0.9))};
}

double rate_posterior::prior_share() const {
    return std::min(1.0, sd_ * sd_ / (law_.dog.log_sd * law_.dog.log_sd));
}

std::optional<rate_estimate> estimate_of(const rate_posterior& p, const rate_law& dog) {
    const double prior = 1.0 / (dog.log_sd * dog.log_sd);
    const double told = 1.0 / (p.sd() * p.sd()) - prior;
    if (!(told > 0.01 * prior)) {
        return std::nullopt;
    }
    const double weighed = p.mean() / (p.sd() * p.sd()) - dog.log_median * prior;
    return rate_estimate{weighed / told, 1.0 / std::sqrt(told)};
}

namespace {

/// With the spread given the likeliest median is a weighted mean; ln likelihood of the spread.
struct herd_fit {
    double median = 0.0;
    double precision = 0.0;
    double log_likelihood = 0.0;
};

herd_fit fit_with(const std::vector<rate_estimate>& dogs, double spread) {
    herd_fit f;
    double sum = 0.0;
    for (const rate_estimate& d : dogs) {
        const double w = 1.0 / (spread * spread + d.error * d.error);
        f.precision += w;
        sum += w * d.log_rate;
    }
    f.median = sum / f.precision;
    for (const rate_estimate& d : dogs) {
        f.log_likelihood += log_normal_density(d.log_rate - f.median, std::hypot(spread, d.error));
    }
    return f;
}

}  // namespace

herd_rate herd_rate_of(const std::vector<rate_estimate>& dogs, double least,
                       const class_spread& of_class) {
    if (dogs.size() < 2) {
        throw error(errc::range, "the spread between dogs needs at least two of them");
    }
    // the likelihood of the spread has one top: climb from the best of a coarse row
    constexpr double widest = 2.0;
    constexpr int rungs = 40;
    const auto height = [&](double spread) { return fit_with(dogs, spread).log_likelihood; };
    double best = 0.0;
    for (int i = 1; i <= rungs; ++i) {
        const double spread = widest * i * i / (rungs * rungs);
        best = height(spread) > height(best) ? spread : best;
    }
    for (double step = widest / rungs; step > 1e-9;) {
        const double up = best + step;
        const double down = std::max(0.0, best - step);
        const double here = height(best);
        if (height(up) > here) {
            best = up;
        } else if (height(down) > here) {
            best = down;
        } else {
            step *= 0.5;
        }
    }
    const auto n = static_cast<double>(dogs.size());
    const double both =
        (n * best * best + of_class.counts_for * of_class.log_sd * of_class.log_sd) /
        (n + of_class.counts_for);
    const double spread = std::max(std::sqrt(both), least);
    const herd_fit f = fit_with(dogs, spread);
    return {{f.median, spread}, best, 1.0 / std::sqrt(f.precision)};
}

}  // namespace pelage
