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

namespace pelage {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
// ln of rates no hair grows at, so that nothing overflows on the way
constexpr double slowest = -30.0;
constexpr double fastest = 30.0;
// standard deviations beyond which nothing shows in ten digits, and the same as a fall of ln p
constexpr double wide = 6.5;
constexpr double negligible = 25.0;
// a panel of the quadrature, in standard deviations of what is integrated over it
constexpr double panel = 1.9;
const double half_log_two_pi = 0.5 * std::log(2.0 * std::numbers::pi);

struct quadrature_node {
    double at = 0.0;
    double weight = 0.0;
};

void add_panels(std::vector<quadrature_node>& to, double a, double b, double widest) {
    constexpr double most = 200.0;
    const int panels = static_cast<int>(std::clamp(std::ceil((b - a) / widest), 1.0, most));
    const legendre_rule& rule = legendre();
    const double half = (b - a) / (2.0 * panels);
    for (int p = 0; p < panels && b > a; ++p) {
        const double middle = a + half * (2.0 * p + 1.0);
        for (std::size_t i = 0; i < legendre_rule::size; ++i) {
            to.push_back({middle + half * rule.x[i], half * rule.w[i]});
        }
    }
}

/// Nodes over [a, b], with no panel across one of the bends (in ascending order).
std::vector<quadrature_node> nodes_over(double a, double b, const std::vector<double>& bends,
                                        double widest) {
    std::vector<quadrature_node> out;
    for (const double bend : bends) {
        if (bend > a && bend < b) {
            add_panels(out, a, bend, widest);
            a = bend;
        }
    }
    add_panels(out, a, b, widest);
    return out;
}

/// ln of the sum of exp(x_i).
double log_sum(const std::vector<double>& x) {
    const double most = *std::max_element(x.begin(), x.end());
    double sum = 0.0;
    for (const double v : x) {
        sum += v > most - 40.0 ? std::exp(v - most) : 0.0;  // nothing that a double would show
    }
    return most + std::log(sum);
}

double log_normal_density(double z, double sd) {
    return -0.5 * z * z / (sd * sd) - std::log(sd) - half_log_two_pi;
}

/// x with f(x) = p between `low` and `high`, f rising.
template <class F>
double inverse(const F& f, chance p, double low, double high) {
    for (int i = 0; i < 60 && high - low > 1e-12; ++i) {
        const double middle = 0.5 * (low + high);
        (f(middle) < p ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// Uphill from `x` in steps of `width` and less, to a tenth of it or so.
template <class F>
double climb(const F& f, double x, double width) {
    double top = f(x);
    for (double step = width; step > 0.1 * width;) {
        const double up = f(x + step);
        const double down = f(x - step);
        if (std::max(up, down) > top) {
            x += up > down ? step : -step;
            top = std::max(up, down);
        } else {
            step *= 0.5;
        }
    }
    return x;
}

/// No error (mm) and no spread that vanishes in the digits of a double beside what it is added to.
constexpr double least_error = 1e-7;
constexpr double least_log_sd = 1e-6;

void check(const regrowth_interval& readings, const learning_law& law) {
    const bool sound = std::all_of(readings.begin(), readings.end(), [](const reading& r) {
        return in_days(r.after) > 0.0 && in_mm(r.error) >= least_error &&
               std::isfinite(in_mm(r.start)) && std::isfinite(in_mm(r.is)) &&
               std::isfinite(in_days(r.after));
    });
    if (!sound || !(law.dog.log_sd >= least_log_sd) || law.visit_log_sd < 0.0) {
        throw error(errc::range,
                    "learning needs readings after a cut, each with an error, and a prior with a "
                    "spread");
    }
}

}  // namespace

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

herd_rate herd_rate_of(const std::vector<rate_estimate>& dogs, double least) {
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
    // one top: if it lies below the least that is taken, that is the best there is
    const double spread = std::max(best, least);
    const herd_fit f = fit_with(dogs, spread);
    return {{f.median, spread}, best, 1.0 / std::sqrt(f.precision)};
}

}  // namespace pelage
