// What the readings after one cut say of the dog's rate. Mathematics at the head of learning.cpp.
#include <algorithm>
#include <utility>

#include <pelage/model/learning.hpp>

#include "model/quadrature.hpp"

namespace pelage {

using namespace learning_math;

stretch_likelihood::stretch_likelihood(const regrowth_interval& readings, const learning_law& law)
    : readings_(readings), visit_log_sd_(law.visit_log_sd), terminal_(in_mm(law.terminal)) {
    check(readings, law);
    const double spread = in_mm(law.start_error);
    start_precision_ = spread > 0.0 ? 1.0 / (spread * spread) : infinity;
    double precision = 0.0;
    bool grows_on = true;  // none was cut no shorter than hair grows
    for (const reading& r : readings_) {
        const double e = in_mm(r.error);
        grows_on = grows_on && in_mm(r.start) < terminal_;
        precision += 1.0 / (e * e);
        constant_ -= 0.5 * std::log(2.0 * std::numbers::pi * e * e);
        const double bend = std::log((terminal_ - in_mm(r.start)) / in_days(r.after));
        if (std::isfinite(bend)) {
            bends_.push_back(bend);
        }
    }
    constant_ -= 0.5 * std::log1p(spread * spread * precision);
    std::sort(bends_.begin(), bends_.end());
    ends_from_ = grows_on ? (bends_.empty() ? infinity : std::exp(bends_.front())) : 0.0;
    find_middle(law.dog);
    if (visit_log_sd_ > 0.0) {
        lay_nodes(law.dog);
    }
}

double stretch_likelihood::of_own_rate(double rate) const {
    if (rate > ends_from_) {
        return through_ends(rate);
    }
    const double off = rate - line_rate_;
    return line_top_ - 0.5 * line_precision_ * off * off;
}

/// The same from the definition, for any rate.
double stretch_likelihood::through_ends(double rate) const {
    double squares = 0.0;
    double sum = 0.0;
    double precision = 0.0;
    for (const reading& r : readings_) {
        const double start = in_mm(r.start);
        const double grown = start + rate * in_days(r.after);
        const double off = in_mm(r.is) - std::min(grown, std::max(start, terminal_));
        const double w = 1.0 / (in_mm(r.error) * in_mm(r.error));
        squares += w * off * off;
        sum += w * off;
        precision += w;
    }
    return constant_ - 0.5 * (squares - sum * sum / (start_precision_ + precision));
}

/// The straight line through the known start, by weighted least squares: right where no hair has come
/// to its end.
void stretch_likelihood::start_from_line() {
    double w0 = 0.0;
    double wt = 0.0;
    double wtt = 0.0;
    double wg = 0.0;
    double wtg = 0.0;
    for (const reading& r : readings_) {
        const double t = in_days(r.after);
        const double w = 1.0 / (in_mm(r.error) * in_mm(r.error));
        const double growth = in_mm(r.is) - in_mm(r.start);
        w0 += w;
        wt += w * t;
        wtt += w * t * t;
        wg += w * growth;
        wtg += w * t * growth;
    }
    const double told = std::max(wtt - wt * wt / (start_precision_ + w0), 1e-12);
    const double rate = (wtg - wt * wg / (start_precision_ + w0)) / told;
    line_rate_ = rate;
    line_precision_ = told;
    // the height from the definition, without an end of the hair
    const double terminal = std::exchange(terminal_, infinity);
    line_top_ = through_ends(rate);
    terminal_ = terminal;
    // a rate lost in its own error still says that the dog doesn't grow much faster than that error
    const double error = 1.0 / std::sqrt(told);
    middle_ = std::clamp(std::log(std::max(rate, error)), slowest, fastest);
    own_width_ = error / std::max(rate, error);
}

/// From the middle in steps of `step`: how far until the likelihood has fallen by a standard deviation's
/// worth, at most the middle's own distance from the ends of what is looked at.
double stretch_likelihood::fall_within(double step) const {
    const double floor = of_own_rate(std::exp(middle_)) - 0.5;
    double at = middle_;
    while (at > slowest && at < fastest && of_own_rate(std::exp(at)) > floor) {
        at += step;
        step *= 1.1;
    }
    return std::abs(at - middle_);
}

/// Where hair has come to its end the likelihood is bent and may have several peaks: the highest is
/// looked for, and how narrow it is.
void stretch_likelihood::find_middle(const rate_law& dog) {
    start_from_line();
    const double reach = 6.0 * std::hypot(dog.log_sd, visit_log_sd_);
    const double furthest = std::max(middle_ + 3.0 * own_width_, dog.log_median + reach);
    if (std::none_of(bends_.begin(), bends_.end(), [&](double b) { return b < furthest; })) {
        return;
    }
    const auto of = [&](double log_rate) {
        return log_rate > slowest && log_rate < fastest ? of_own_rate(std::exp(log_rate))
                                                        : -infinity;
    };
    constexpr int tries = 300;
    const double step = 2.0 * reach / tries;
    for (int i = 0; i <= tries; ++i) {
        const double x = dog.log_median - reach + step * i;
        middle_ = of(x) > of(middle_) ? x : middle_;
    }
    middle_ = climb(of, middle_, step);
    own_width_ = std::min(fall_within(-0.02 * own_width_), fall_within(0.02 * own_width_));
}

void stretch_likelihood::lay_nodes(const rate_law& dog) {
    const double spread = visit_log_sd_;
    const double reach = 9.0 * std::hypot(dog.log_sd, spread);
    const double lowest = std::max(slowest, std::min(dog.log_median, middle_) - reach);
    const double highest = std::min(fastest, std::max(dog.log_median, middle_) + reach);
    const auto of = [&](double log_rate) { return of_own_rate(std::exp(log_rate)); };
    const double floor = of(middle_) - negligible;
    double low = middle_;
    double high = middle_;
    for (double step = own_width_; low > lowest && of(low) > floor; step *= 1.5) {
        low -= step;
    }
    for (double step = own_width_; high < highest && of(high) > floor; step *= 1.5) {
        high += step;
    }
    low = std::max(low, lowest);
    high = std::min(high, highest);
    if (high - low > 2.0 * wide * spread) {
        lay_spread();
        return;
    }
    const bool bent = std::any_of(bends_.begin(), bends_.end(),
                                  [&](double bend) { return bend > low && bend < high; });
    const double widest = panel * std::min(bent ? 0.5 * own_width_ : own_width_, spread);
    for (const quadrature_node& n : nodes_over(low, high, bends_, widest)) {
        own_.push_back({n.at, std::exp(n.at), std::log(n.weight / spread) - half_log_two_pi});
        own_.back().log_weight += of_own_rate(own_.back().rate);
    }
}

void stretch_likelihood::lay_spread() {
    const double widest = panel * std::min(own_width_ / visit_log_sd_, 1.0);
    for (const quadrature_node& n : nodes_over(-wide, wide, {}, widest)) {
        spread_.push_back({n.at, std::exp(n.at * visit_log_sd_),
                           std::log(n.weight) - half_log_two_pi - 0.5 * n.at * n.at});
    }
}

bool stretch_likelihood::bends_near(double log_rate) const {
    return std::any_of(bends_.begin(), bends_.end(), [&](double bend) {
        return std::abs(bend - log_rate) < wide * visit_log_sd_;
    });
}

/// The mean over the spread where a bend of the likelihood lies inside it.
double stretch_likelihood::through_bends(double log_rate) const {
    const double spread = visit_log_sd_;
    std::vector<double> terms;
    for (const quadrature_node& n : nodes_over(log_rate - wide * spread, log_rate + wide * spread,
                                               bends_, panel * std::min(own_width_, spread))) {
        terms.push_back(std::log(n.weight) + log_normal_density(n.at - log_rate, spread) +
                        of_own_rate(std::exp(n.at)));
    }
    return log_sum(terms);
}

double stretch_likelihood::at(double log_rate) const {
    const double rate = std::exp(log_rate);
    if (visit_log_sd_ <= 0.0) {
        return of_own_rate(rate);
    }
    if (own_.empty() && bends_near(log_rate)) {
        return through_bends(log_rate);
    }
    std::vector<double> terms;
    terms.reserve(own_.size() + spread_.size());
    for (const node& n : own_) {
        const double z = (n.log_rate - log_rate) / visit_log_sd_;
        terms.push_back(n.log_weight - 0.5 * z * z);
    }
    for (const node& n : spread_) {
        terms.push_back(n.log_weight + of_own_rate(rate * n.rate));
    }
    return log_sum(terms);
}

}  // namespace pelage
