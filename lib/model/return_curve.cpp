#include "model/return_curve.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

#include <pelage/base/stats.hpp>

namespace pelage {

namespace {

constexpr double beyond = 6.0;     // beyond six standard deviations nothing shows in eight digits
constexpr double nothing = 1e-10;  // weights that don't show
constexpr double infinite = std::numeric_limits<double>::infinity();

double start_of(const counted_zone& z, double start_error) {
    return std::max(0.0, z.start + start_error);
}

/// Where hair stops: no cut makes it shrink to its terminal length.
double stop_of(const counted_zone& z, double start) {
    return std::max(start, z.terminal);
}

/// The least room; infinite if all stop before they mat.
double least_room(const std::vector<counted_zone>& zones, double factor, double start_error) {
    double room = infinite;
    for (const counted_zone& z : zones) {
        const double start = start_of(z, start_error);
        const double threshold = z.threshold * factor;
        if (threshold <= stop_of(z, start)) {
            room = std::min(room, std::max(0.0, threshold - start));
        }
    }
    return room;
}

std::vector<counted_zone> uncovered(const std::vector<counted_zone>& zones) {
    std::vector<counted_zone> out;
    for (const counted_zone& z : zones) {
        add_uncovered(out, z);
    }
    return out;
}

/// A stretch of factors on which one zone has the least room, or none ever mats.
struct regrowth_stretch {
    const counted_zone* least = nullptr;
    double to = infinite;
};

/// The stretch that begins at `factor`.
regrowth_stretch stretch_from(const std::vector<counted_zone>& zones, double start_error,
                              double factor) {
    constexpr double same = 1e-9;  // mm
    regrowth_stretch s;
    double room = infinite;
    for (const counted_zone& z : zones) {
        const double start = start_of(z, start_error);
        if (z.threshold * factor >= stop_of(z, start) * (1.0 - 1e-12)) {
            continue;  // its hair stops before
        }
        const double here = z.threshold * factor - start;
        const bool flatter = s.least == nullptr || z.threshold < s.least->threshold;
        if (here < room - same || (here < room + same && flatter)) {
            s.least = &z;
            room = here;
        }
    }
    if (s.least == nullptr) {
        return s;
    }
    const double start = start_of(*s.least, start_error);
    s.to = stop_of(*s.least, start) / s.least->threshold;
    for (const counted_zone& z : zones) {
        if (z.threshold >= s.least->threshold) {
            continue;
        }
        const double other = start_of(z, start_error);
        const double meet = (start - other) / (s.least->threshold - z.threshold);
        if (meet > factor && meet < s.to && z.threshold * meet < stop_of(z, other)) {
            s.to = meet;
        }
    }
    return s;
}

}  // namespace

void add_uncovered(std::vector<counted_zone>& to, const counted_zone& z) {
    if (std::none_of(to.begin(), to.end(), [&](const counted_zone& o) { return covers(o, z); })) {
        std::erase_if(to, [&](const counted_zone& o) { return covers(z, o); });
        to.push_back(z);
    }
}

about_chance about_fine(std::span<const counted_zone> zones, const shared_law& law, double t) {
    // of start errors three nodes do: the factor outweighs them
    constexpr std::array<std::pair<double, double>, 3> errors{
        {{-std::numbers::sqrt3, 1.0 / 6.0}, {0.0, 2.0 / 3.0}, {std::numbers::sqrt3, 1.0 / 6.0}}};
    constexpr chance smooth = 0.015;
    constexpr chance kinked = 0.06;
    const normal_table& bell = normal_row();
    const normal_rule& rule = normal_nodes();
    const double spread = in_mm(law.start_error);
    const double per_spread = 1.0 / std::max(law.threshold_log_sd, 1e-3);
    const double turns = law.rate.log_sd * per_spread;  // how quickly, where hair has grown long
    bool kinks = zones.size() > 1 || turns > 2.0;
    chance sum = 0.0;
    for (std::size_t r = 0; r < normal_rule::size; ++r) {
        const double grown = std::exp(law.rate.log_median + law.rate.log_sd * rule.x[r]) * t;
        for (const auto& [error, weight] : errors) {
            double least = 1e-9;  // the factor below which one of them mats
            for (const counted_zone& z : zones) {
                const double start = start_of(z, spread * error);
                const double stop = stop_of(z, start);
                kinks = kinks || start == 0.0 || start + grown > stop;
                least = std::max(least, std::min(start + grown, stop) / z.threshold);
            }
            sum += rule.w[r] * weight * bell.at(-std::log(least) * per_spread);
        }
    }
    return {sum, turns > 3.0 ? 1.0 : kinks ? kinked : smooth};
}

fine_curve::fine_curve(const std::vector<counted_zone>& zones, const shared_law& law, double first)
    : law_(law),
      sigma_(std::max(law.rate.log_sd, 1e-3)),
      per_sigma_(1.0 / sigma_),
      least_room_(first * std::exp(law.rate.log_median - beyond * sigma_)),
      zones_(uncovered(zones)) {
    if (zones_.empty()) {
        sure_ = 1.0;
        return;
    }
    nodes_.reserve(512);  // most curves need fewer
    const double spread = in_mm(law.start_error);
    if (!law.learned.empty()) {
        add_learned();
    } else if (law.threshold_log_sd > 0.0) {
        std::vector<start_error> errors;
        const normal_rule& rule = normal_nodes();
        for (std::size_t i = 0; spread > 0.0 && i < normal_rule::size; ++i) {
            errors.push_back({spread * rule.x[i], rule.w[i]});
        }
        if (errors.empty()) {
            errors.push_back({0.0, 1.0});
        }
        const double least = std::exp(-beyond * law.threshold_log_sd);
        const double most = std::exp(beyond * law.threshold_log_sd);
        const double alike = std::clamp(alike_from(errors), least, most);
        for (const start_error& e : errors) {
            add_factors({&e, 1}, least, alike);
        }
        add_factors(errors, alike, most);
    } else if (spread > 0.0) {
        add_errors();
    } else {
        add(least_room(zones_, 1.0, 0.0), 1.0);
    }
    sum_up();
}

/// The start errors alone. Where the least room falls by as much as the error rises, few nodes do, since Phi
/// turns slowly; else the chance may jump with the error, and a fine rule sees where.
void fine_curve::add_errors() {
    constexpr double few_from = 9.0;  // of the start error's deviations, of room; then within 1e-8
    constexpr double turns = 4.0;     // of them, in which Phi turns
    const double spread = in_mm(law_.start_error);
    const double room = least_room(zones_, 1.0, 0.0);
    const auto falls_evenly = [&](double e) {
        return std::fabs(least_room(zones_, 1.0, spread * e) - (room - spread * e)) < 1e-9;
    };
    if (room >= few_from * spread && room * sigma_ >= turns * spread && falls_evenly(-beyond) &&
        falls_evenly(beyond)) {
        const normal_rule& rule = normal_nodes();
        for (std::size_t i = 0; i < normal_rule::size; ++i) {
            add(room - spread * rule.x[i], rule.w[i]);
        }
        return;
    }
    each_node(-beyond, beyond, 60, [&](double e, double w) {
        add(least_room(zones_, 1.0, spread * e), w * normal_density(e));
    });
}

/// One node a case and start error: a mean over cases is a sum, and smooth in the start error but for a case
/// whose room is no more than the start error may use up, which gets a fine rule.
void fine_curve::add_learned() {
    constexpr double smooth_from = 3.0;  // of its deviations, left by the worst start error
    const double spread = in_mm(law_.start_error);
    std::vector<start_error> few;
    const normal_rule& rule = normal_nodes();
    for (std::size_t i = 0; i < normal_rule::size; ++i) {
        few.push_back({spread * rule.x[i], rule.w[i]});
    }
    std::vector<start_error> many;
    each_node(-beyond, beyond, 12, [&](double e, double w) {
        many.push_back({spread * e, w * normal_density(e)});
    });
    for (const factor_case& f : law_.learned) {
        const bool near = least_room(zones_, f.factor, beyond * spread) < smooth_from * spread;
        const double per_sigma = 1.0 / std::max(f.rate.log_sd, 1e-3);
        for (const start_error& e : near ? many : few) {
            const double room = least_room(zones_, f.factor, e.is);
            const double weight = f.weight * e.weight;
            if (std::isinf(room)) {
                sure_ += weight;
            } else if (room > 0.0 && weight > nothing) {
                nodes_.push_back(
                    {(std::log(room) - f.rate.log_median) * per_sigma, per_sigma, weight});
            }
        }
    }
}

/// Mean and spread of what the nodes say, for guesses.
void fine_curve::sum_up() {
    double weight = 0.0;
    double square = 0.0;
    for (const node& n : nodes_) {
        weight += n.weight;
        const double at = n.log_room / (n.per_sigma * sigma_);
        mean_ += n.weight * at;
        square += n.weight * at * at;
    }
    if (weight > 0.0) {
        mean_ /= weight;
        spread_ = std::sqrt(1.0 + std::max(0.0, square / weight - mean_ * mean_));
    }
}

void fine_curve::add(double room, double weight) {
    if (room > 0.0 && std::isinf(room)) {
        sure_ += weight;
    } else if (room > 0.0 && weight > nothing) {
        nodes_.push_back(
            {(std::log(room) - law_.rate.log_median) * per_sigma_, per_sigma_, weight});
    }
}

/// The factor from which on all start errors are handled as one: their zones follow one another alike,
/// and no room is so small that it needs nodes of its own. Infinite if there is none.
double fine_curve::alike_from(std::span<const start_error> errors) const {
    constexpr double enough = 0.15;  // of a deviation of the factor, for Phi to turn in
    const double room = enough * law_.threshold_log_sd / sigma_;
    double from = 0.0;
    for (const counted_zone& z : zones_) {
        const double longest = z.start + errors.back().is;
        if (room >= 1.0 || z.start + errors.front().is < 0.0 || longest > z.terminal) {
            return infinite;
        }
        from = std::max({from, longest / (z.threshold * (1.0 - room)), past(z, errors.back().is)});
    }
    return from;
}

/// The factor below which a zone is past its length on the first day for certain.
double fine_curve::past(const counted_zone& z, double error) const {
    const double start = start_of(z, error);
    return std::min(start + least_room_, stop_of(z, start)) / z.threshold;
}

void fine_curve::add_factors(std::span<const start_error> errors, double from, double to) {
    const double s = law_.threshold_log_sd;
    const double error = errors.back().is;
    for (const counted_zone& z : zones_) {
        from = std::max(from, past(z, error));
    }
    while (from < to) {
        const regrowth_stretch now = stretch_from(zones_, error, from);
        const double end = std::min(now.to, to);
        if (now.least != nullptr) {
            add_piece(*now.least, errors, std::log(from) / s, std::log(end) / s);
        } else {
            const double share = normal_cdf(std::log(end) / s) - normal_cdf(std::log(from) / s);
            for (const start_error& e : errors) {
                sure_ += e.weight * share;
            }
        }
        from = end;
    }
}

void fine_curve::add_piece(const counted_zone& least, std::span<const start_error> errors,
                           double from, double to) {
    constexpr double longest = 4.0;    // more, and ten nodes don't follow the bell
    constexpr double shortest = 0.05;  // less makes no difference that shows
    constexpr double turns = 8.0;      // in units of the width in which Phi turns
    const double s = law_.threshold_log_sd;
    const double most = start_of(least, errors.back().is);
    for (double at = from; at < to;) {
        const double threshold = least.threshold * std::exp(s * at);
        const double width = sigma_ * std::max(0.0, threshold - most) / (s * threshold);
        const double rest = to - at;
        double step = std::clamp(turns * width, shortest, longest);
        step = rest <= longest && rest < 1.5 * step ? rest : std::min(step, rest);
        each_node(at, at + step, 1, [&](double f, double w) {
            const double share = w * normal_density(f);
            const double mats_at = least.threshold * std::exp(s * f);
            for (const start_error& e : errors) {
                add(mats_at - start_of(least, e.is), share * e.weight);
            }
        });
        at = step < rest ? at + step : to;
    }
}

chance fine_curve::at(double t) const {
    const normal_table& bell = normal_row();
    const double log_t = std::log(std::max(t, 1e-9));
    double sum = sure_;
    for (const node& n : nodes_) {
        sum += n.weight * bell.at(n.log_room - n.per_sigma * log_t);
    }
    return std::min(sum, 1.0);
}

fine_curve::fall fine_curve::at_and_fall(double t) const {
    const normal_table& bell = normal_row();
    const double log_t = std::log(std::max(t, 1e-9));
    fall f{sure_, 0.0};
    for (const node& n : nodes_) {
        f.is += n.weight * bell.at(n.log_room - n.per_sigma * log_t);
        f.falls += n.per_sigma * n.weight * bell.density_at(n.log_room - n.per_sigma * log_t);
    }
    return f;
}

double fine_curve::first_guess(double z) const {
    return std::exp(sigma_ * (mean_ - spread_ * z));
}

double fine_curve::next_guess(double t, chance is, chance p, double z) const {
    const double off = (is - p) / std::max(normal_density(z), 0.01);
    return t * std::exp(sigma_ * spread_ * std::clamp(off, -1.0, 1.0));
}

}  // namespace pelage
