#include "model/learning_doubts.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <map>
#include <optional>
#include <utility>

namespace pelage {

namespace {

/// Of a stretch with many readings, how many of each kind are tried in full: those that by themselves
/// look worst.
constexpr std::size_t most_tried = 6;
/// A fall of ln p beyond which nothing counts.
constexpr double never_weighed = 40.0;

using table = std::vector<double>;

/// Equal steps in ln R over all that a record may say.
struct grid {
    double low = 0.0;
    double step = 0.0;
    std::size_t size = 0;

    [[nodiscard]] double at(double i) const { return low + step * i; }
};

/// The integral of exp(f) over the grid, as a logarithm, and the mean of ln R under it.
struct mass {
    double log_total = 0.0;
    double mean = 0.0;
};

/// f between node i and the next, by the cubic through the four nodes around.
double between_nodes(const table& f, std::size_t i, double t) {
    if (i == 0 || i + 2 >= f.size()) {
        return f[i] + t * (f[i + 1] - f[i]);
    }
    const double before = t * (t - 1.0) * (t - 2.0) / -6.0;
    const double here = (t + 1.0) * (t - 1.0) * (t - 2.0) / 2.0;
    const double next = (t + 1.0) * t * (t - 2.0) / -2.0;
    const double after = (t + 1.0) * t * (t - 1.0) / 6.0;
    return before * f[i - 1] + here * f[i] + next * f[i + 1] + after * f[i + 2];
}

/// Where the density is narrower than the steps of the grid, smaller steps between the nodes near its
/// top: the logarithm is smooth though the density isn't.
mass mass_of(const table& f, const grid& g) {
    const auto top = static_cast<std::size_t>(std::max_element(f.begin(), f.end()) - f.begin());
    const std::size_t middle = std::clamp<std::size_t>(top, 1, f.size() - 2);
    const double bend = 2.0 * f[middle] - f[middle - 1] - f[middle + 1];
    // steps of at most 0.8 standard deviations
    const int parts =
        static_cast<int>(std::clamp(std::ceil(1.25 * std::sqrt(std::max(bend, 0.0))), 1.0, 64.0));
    double sum = 0.0;
    double weighed = 0.0;
    const double most = f[top];
    for (std::size_t i = 0; i + 1 < f.size(); ++i) {
        if (std::max(f[i], f[i + 1]) < most - never_weighed) {
            continue;
        }
        for (int part = 0; part < parts; ++part) {
            const double t = static_cast<double>(part) / parts;
            const double p = std::exp((part == 0 ? f[i] : between_nodes(f, i, t)) - most);
            sum += p;
            weighed += p * g.at(static_cast<double>(i) + t);
        }
    }
    return {most + std::log(sum * g.step / parts), weighed / sum};
}

class doubt_search {
  public:
    doubt_search(const std::vector<cut_reading>& counted, const learning_law& law,
                 const growth_rules& g,
                 const std::function<bool(std::size_t, std::size_t)>& same_place)
        : counted_(counted), law_(law), rules_(g), same_place_(same_place) {
        for (std::size_t i = 0; i < counted.size(); ++i) {
            cuts_[counted[i].cut].left.push_back(i);
        }
        lay_grid();
        for (std::size_t i = 0; i < grid_.size; ++i) {
            const double z =
                (grid_.at(static_cast<double>(i)) - law.dog.log_median) / law.dog.log_sd;
            all_.push_back(-0.5 * z * z);
        }
        for (auto& [cut, one] : cuts_) {
            make(one);
        }
    }

    std::vector<found_mishap> found() {
        std::vector<found_mishap> out;
        while (const auto worst = likeliest()) {
            auto& [one, which] = *worst;
            take_out(*one, which);
            out.push_back({which, mass_of(all_, grid_).mean});
        }
        return out;
    }

  private:
    struct doubt {
        std::vector<std::size_t> which;
        table says;  ///< of the stretch with those doubted, less what it says as measured
    };
    struct stretch_of_cut {
        std::vector<std::size_t> left;
        table says;
        std::vector<doubt> doubts;
    };
    using suspect = std::pair<stretch_of_cut*, std::vector<std::size_t>>;

    /// As far as the prior or a stretch reaches, in steps that what is spread from visit to visit is
    /// smooth over.
    void lay_grid() {
        constexpr double wide = 6.5;
        constexpr double most = 96.0;
        double low = law_.dog.log_median - wide * law_.dog.log_sd;
        double high = law_.dog.log_median + wide * law_.dog.log_sd;
        for (const auto& [cut, one] : cuts_) {
            const stretch_likelihood said(readings(one.left, {}), law_);
            low = std::min(low, said.middle() - said.width());
            high = std::max(high, said.middle() + said.width());
        }
        const double steps =
            std::clamp((high - low) / std::max(0.6 * law_.visit_log_sd, 1e-3), 32.0, most);
        grid_ = {low, (high - low) / std::floor(steps), static_cast<std::size_t>(steps) + 1};
    }

    [[nodiscard]] double doubted_error(std::size_t i) const {
        return std::hypot(in_mm(counted_[i].read.error), in_mm(rules_.wrong_error.best));
    }

    [[nodiscard]] regrowth_interval readings(const std::vector<std::size_t>& those,
                                             const std::vector<std::size_t>& doubted) const {
        regrowth_interval out;
        for (const std::size_t i : those) {
            out.push_back(counted_[i].read);
            if (std::find(doubted.begin(), doubted.end(), i) != doubted.end()) {
                out.back().error = mm(doubted_error(i));
            }
        }
        return out;
    }

    [[nodiscard]] table said(const regrowth_interval& readings) const {
        return said(readings, law_);
    }
    [[nodiscard]] table said(const regrowth_interval& readings, const learning_law& law) const {
        table out(grid_.size, 0.0);
        if (!readings.empty()) {
            const stretch_likelihood likelihood(readings, law);
            for (std::size_t i = 0; i < out.size(); ++i) {
                out[i] = likelihood.at(grid_.at(static_cast<double>(i)));
            }
        }
        return out;
    }

    /// The tables of a stretch, and its part in the whole.
    void make(stretch_of_cut& one) {
        one.says = said(readings(one.left, {}));
        for (std::size_t i = 0; i < all_.size(); ++i) {
            all_[i] += one.says[i];
        }
        one.doubts.clear();
        for (std::vector<std::size_t>& which : worth_trying(one)) {
            table with = which.size() > 1 ? shifted(one, which) : said(readings(one.left, which));
            for (std::size_t i = 0; i < with.size(); ++i) {
                with[i] -= one.says[i];
            }
            one.doubts.push_back({std::move(which), std::move(with)});
        }
    }

    /// A trim nobody wrote down, or a wrong length of the cut: all those readings are off by the same. They
    /// are a stretch of their own, whose start is as uncertain as a wrong measurement.
    [[nodiscard]] table shifted(const stretch_of_cut& one,
                                const std::vector<std::size_t>& which) const {
        regrowth_interval before;
        regrowth_interval after;
        for (const std::size_t i : one.left) {
            const bool off = std::find(which.begin(), which.end(), i) != which.end();
            (off ? after : before).push_back(counted_[i].read);
        }
        learning_law trimmed = law_;
        trimmed.start_error =
            mm(std::hypot(in_mm(law_.start_error), in_mm(rules_.wrong_error.best)));
        table out = said(before);
        const table then = said(after, trimmed);
        std::transform(out.begin(), out.end(), then.begin(), out.begin(), std::plus<>());
        return out;
    }

    void take_out(stretch_of_cut& one, const std::vector<std::size_t>& which) {
        for (std::size_t i = 0; i < all_.size(); ++i) {
            all_[i] -= one.says[i];
        }
        std::erase_if(one.left, [&](std::size_t i) {
            return std::find(which.begin(), which.end(), i) != which.end();
        });
        make(one);
    }

    /// How far a reading is off what is expected of it, in its own errors, as a fall of ln p.
    [[nodiscard]] double oddness(std::size_t i, double log_rate) const {
        const reading& r = counted_[i].read;
        const double is =
            in_mm(grown(r.start, law_.terminal, mm_per_day(std::exp(log_rate)), r.after));
        const double off = in_mm(r.is) - is;
        const double e = in_mm(r.error);
        const double doubted = doubted_error(i);
        return 0.5 * off * off * (1.0 / (e * e) - 1.0 / (doubted * doubted)) -
               std::log(doubted / e);
    }

    /// The mishaps of a stretch; of a long one those whose readings fit its own rate worst.
    [[nodiscard]] std::vector<std::vector<std::size_t>> worth_trying(
        const stretch_of_cut& one) const {
        std::vector<std::vector<std::size_t>> slips;
        std::vector<std::vector<std::size_t>> trims;
        for (const std::size_t i : one.left) {
            slips.push_back({i});
            std::vector<std::size_t> later{i};
            for (const std::size_t j : one.left) {
                if (counted_[j].read.after > counted_[i].read.after && same_place_(i, j)) {
                    later.push_back(j);
                }
            }
            if (later.size() > 1) {
                trims.push_back(std::move(later));
            }
        }
        if (one.left.size() > most_tried) {
            const auto top = static_cast<double>(
                std::max_element(one.says.begin(), one.says.end()) - one.says.begin());
            keep_oddest(slips, grid_.at(top));
            keep_oddest(trims, grid_.at(top));
        }
        slips.insert(slips.end(), trims.begin(), trims.end());
        std::sort(slips.begin(), slips.end());
        return slips;
    }

    void keep_oddest(std::vector<std::vector<std::size_t>>& all, double log_rate) const {
        std::vector<std::pair<double, std::size_t>> odd;
        for (std::size_t k = 0; k < all.size(); ++k) {
            double sum = 0.0;
            for (const std::size_t i : all[k]) {
                sum += oddness(i, log_rate);
            }
            odd.emplace_back(-sum, k);
        }
        std::sort(odd.begin(), odd.end());
        std::vector<std::vector<std::size_t>> kept;
        for (std::size_t k = 0; k < std::min(most_tried, odd.size()); ++k) {
            kept.push_back(std::move(all[odd[k].second]));
        }
        all = std::move(kept);
    }

    /// The likeliest mishap, if one is likelier than none.
    std::optional<suspect> likeliest() {
        const double share = rules_.wrong_share.best;
        const double before = std::log(share / (1.0 - share));
        const double as_measured = mass_of(all_, grid_).log_total;
        double best = 0.0;
        std::optional<suspect> out;
        table with(grid_.size);
        for (auto& [cut, one] : cuts_) {
            for (const doubt& d : one.doubts) {
                std::transform(all_.begin(), all_.end(), d.says.begin(), with.begin(),
                               std::plus<>());
                const double odds = before + mass_of(with, grid_).log_total - as_measured;
                if (odds > best) {
                    best = odds;
                    out = suspect{&one, d.which};
                }
            }
        }
        return out;
    }

    const std::vector<cut_reading>& counted_;
    const learning_law& law_;
    const growth_rules& rules_;
    const std::function<bool(std::size_t, std::size_t)>& same_place_;
    std::map<std::size_t, stretch_of_cut> cuts_;
    grid grid_;
    table all_;  ///< ln of the posterior's density, up to a constant
};

}  // namespace

std::vector<found_mishap> mishaps_in(
    const std::vector<cut_reading>& counted, const learning_law& law, const growth_rules& g,
    const std::function<bool(std::size_t, std::size_t)>& same_place) {
    const double share = g.wrong_share.best;
    if (!(share > 0.0 && share < 1.0) || counted.empty()) {
        return {};
    }
    return doubt_search(counted, law, g, same_place).found();
}

}  // namespace pelage
