// The chance that every interval of a calendar goes well.
//
//   P = E over z, f of the product over intervals k of P_k(z, f)^n_k
//   P_k(z, f) = E over e of Phi((ln(room_k(f, e) / t_k) - mu - s z) / v)
//
// with the dog's own rate exp(mu + s z), its factor f on every matting-prone length, the rate's spread
// v from visit to visit and the start error e of a groom; room is the growth at which the first zone
// mats, as in model/return_date.hpp.
#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include <pelage/forecast/calendar.hpp>

namespace pelage {

namespace {

/// A zone that counts at the end of an interval, in millimetres.
struct counted {
    double start = 0.0;
    double threshold = 0.0;
    double terminal = 0.0;
    friend bool operator==(const counted&, const counted&) = default;
};

/// Intervals alike are reckoned once.
struct repeated {
    std::vector<counted> zones;
    double t = 0.0;
    int times = 1;
};

repeated once(const kept_interval& i) {
    repeated r{{}, in_days(i.t), 1};
    for (const kept_zone& z : i.zones) {
        if (!z.threshold || i.t <= z.clock) {
            continue;
        }
        const counted c{in_mm(z.start), in_mm(*z.threshold), in_mm(z.terminal)};
        if (std::find(r.zones.begin(), r.zones.end(), c) == r.zones.end()) {
            r.zones.push_back(c);
        }
    }
    return r;
}

std::vector<repeated> distinct(const std::vector<kept_interval>& intervals) {
    std::vector<repeated> out;
    for (const kept_interval& i : intervals) {
        repeated one = once(i);
        const auto same = std::find_if(out.begin(), out.end(), [&](const repeated& r) {
            return r.t == one.t && r.zones == one.zones;
        });
        if (same != out.end()) {
            ++same->times;
        } else if (!one.zones.empty() && one.t > 0.0) {
            out.push_back(std::move(one));
        }
    }
    return out;
}

double room(const std::vector<counted>& zones, double factor, double error) {
    double least = std::numeric_limits<double>::infinity();
    for (const counted& z : zones) {
        const double start = std::max(0.0, z.start + error);
        if (z.threshold * factor <= std::max(start, z.terminal)) {
            least = std::min(least, z.threshold * factor - start);
        }
    }
    return least;
}

constexpr double wide = 6.0;  // standard deviations; beyond lies nothing that shows

double density(double z) {
    return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi);
}

/// Where the chance jumps with the factor, between the ends of its range: from some factor on a zone's
/// hair stops before it mats.
std::vector<double> jumps(const std::vector<repeated>& all, double log_sd) {
    std::vector<double> at{-wide, wide};
    for (const repeated& r : all) {
        for (const counted& z : r.zones) {
            const double f = std::log(std::max(z.start, z.terminal) / z.threshold) / log_sd;
            if (f > -wide && f < wide) {
                at.push_back(f);
            }
        }
    }
    std::sort(at.begin(), at.end());
    at.erase(std::unique(at.begin(), at.end()), at.end());
    return at;
}

/// ln(room / t) at every node of the start error; -inf where the room is used up.
using rooms = std::array<double, normal_rule::size>;

rooms rooms_of(const repeated& r, double factor, double start_error) {
    rooms out{};
    for (std::size_t i = 0; i < normal_rule::size; ++i) {
        const double left = room(r.zones, factor, start_error * normal_nodes().x[i]);
        out[i] = left > 0.0 ? std::log(left / r.t) : -std::numeric_limits<double>::infinity();
    }
    return out;
}

}  // namespace

chance all_fine_throughout(const std::vector<kept_interval>& intervals, const shared_law& law,
                           double visit_log_sd) {
    const std::vector<repeated> all = distinct(intervals);
    if (all.empty()) {
        return 1.0;
    }
    // with no spread from visit to visit the chance would be a step, which no fixed rule follows
    const double visit = std::clamp(visit_log_sd, 0.01, std::max(0.01, law.rate.log_sd));
    const normal_table& bell = normal_row();
    std::vector<rooms> left(all.size());
    /// All fine, given the factor, over the dog's own rate.
    const auto given_factor = [&](double factor, const rate_law& rate) {
        const double own = std::sqrt(std::max(0.0, rate.log_sd * rate.log_sd - visit * visit));
        for (std::size_t k = 0; k < all.size(); ++k) {
            left[k] = rooms_of(all[k], factor, in_mm(law.start_error));
        }
        const auto given_rate = [&](double z) {
            double product = 1.0;
            for (std::size_t k = 0; k < all.size(); ++k) {
                double fine = 0.0;
                for (std::size_t i = 0; i < normal_rule::size; ++i) {
                    fine += normal_nodes().w[i] *
                            bell.at((left[k][i] - rate.log_median - own * z) / visit);
                }
                product *= std::pow(fine, all[k].times);
            }
            return product * density(z);
        };
        return integrate(given_rate, -wide, wide, 6);
    };
    double sum = 0.0;
    for (const factor_case& f : law.learned) {
        sum += f.weight * given_factor(f.factor, f.rate);
    }
    if (!law.learned.empty()) {
        return sum;
    }
    const std::vector<double> at = jumps(all, law.threshold_log_sd);
    for (std::size_t i = 1; i < at.size(); ++i) {
        const int panels = static_cast<int>(std::ceil((at[i] - at[i - 1]) / 2.0));
        sum += integrate(
            [&](double f) {
                return density(f) * given_factor(std::exp(law.threshold_log_sd * f), law.rate);
            },
            at[i - 1], at[i], panels);
    }
    return sum;
}

}  // namespace pelage
