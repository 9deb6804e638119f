#include <algorithm>
#include <cmath>

#include <pelage/forecast/growth_course.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

namespace {

constexpr std::array<chance, 3> shares{0.1, 0.5, 0.9};
constexpr int levels = 12;  // points of a curve besides its first

/// How the dog's factor on its matting-prone lengths spreads: 1 in 10, 1 in 2, 9 in 10 are below.
std::array<double, 3> prone_factors(const shared_law& law) {
    std::array<double, 3> out{};
    for (std::size_t i = 0; i < shares.size(); ++i) {
        out[i] = std::exp(law.threshold_log_sd * normal_quantile(shares[i]));
        double sum = 0.0;
        for (const factor_case& f : law.learned) {  // ascending
            sum += f.weight;
            if (sum >= shares[i]) {
                out[i] = f.factor;
                break;
            }
        }
    }
    return out;
}

/// A curve through the days at which it has grown to lengths one above another, and flat where it stops.
void close_curve(std::vector<grown_to>& curve, const days& shown, const length& stops) {
    if (curve.back().at < shown && curve.back().is >= stops) {
        curve.push_back({shown, curve.back().is});
    }
}

class course {
  public:
    course(const plan_request& r, const groom& g, const forecast& f)
        : r_(r), groom_(g), forecast_(f), coat_(after_groom(r, g)) {}

    growth_course run() {
        out_.shown = shown();
        for (std::size_t i = 0; i < forecast_.zones.size(); ++i) {
            add(forecast_.zones[i]);
        }
        if (forecast_.regrown) {
            add_jacket();
        }
        for (growing_part& p : out_.parts) {
            add_measured(p);
        }
        return std::move(out_);
    }

  private:
    /// Until the last of what is told has happened: the full groom, and when half such dogs mat, unless that
    /// is far off.
    [[nodiscard]] days shown() const {
        const double full = in_days(forecast_.when.full_groom);
        double last = full;
        if (!forecast_.zones.empty() && forecast_.zones.front().threshold) {
            last = std::max(last, std::min(1.5 * full, in_days(forecast_.zones.front().even)));
        }
        if (forecast_.regrown) {
            last = std::max(last, in_days(forecast_.regrown->in.back()));
        }
        return day(std::ceil(1.08 * last));
    }

    [[nodiscard]] const kept_zone& kept(const place& p) const {
        for (std::size_t i = 0; i < coat_.zones.size(); ++i) {
            const place& at = groom_.zones[coat_.index[i]].at;
            if (at.zone == p.zone && at.which == p.which) {
                return coat_.zones[i];
            }
        }
        throw error(errc::internal, "a place of the forecast isn't in its groom");
    }

    void add(const zone_forecast& z) {
        if (!z.threshold) {
            return;  // it mats by no length, and nobody asks how it grows
        }
        const auto alike =
            std::find_if(out_.parts.begin(), out_.parts.end(), [&](const growing_part& p) {
                return p.start == z.start && prone_of_part_[index_of(p)] == *z.threshold;
            });
        if (alike != out_.parts.end()) {
            alike->places.push_back(z.at);
            return;
        }
        const kept_zone& k = kept(z.at);
        const auto factor = prone_factors(coat_.law);
        growing_part p{{z.at},
                       z.start,
                       *z.threshold * factor[1],
                       *z.threshold * factor[0],
                       *z.threshold * factor[2]};
        grow(p, k);
        out_.parts.push_back(std::move(p));
        prone_of_part_.push_back(*z.threshold);
    }
    [[nodiscard]] std::size_t index_of(const growing_part& p) const {
        return static_cast<std::size_t>(&p - out_.parts.data());
    }

    void grow(growing_part& p, const kept_zone& k) const {
        const shared_law law{coat_.law.rate, 0.0, coat_.law.start_error};
        const length reach =
            rate_quantile(law.rate, shares[2]) * out_.shown + law.start_error * 2.0;
        const length top = longer(shorter(k.start + reach, k.terminal), k.start);
        for (auto& c : p.curves) {
            c.push_back({day(0.0), p.start});
        }
        for (int i = 1; i <= levels; ++i) {
            const double share = static_cast<double>(i) / levels;
            // the last a hair below the end, which nothing passes
            const length level = k.start + (top - k.start) * std::min(share, 0.9999);
            const auto at = prone_quantiles({k.start, level, k.terminal, {}}, law, shares);
            for (std::size_t c = 0; c < shares.size(); ++c) {
                if (!is_never(at[c])) {
                    p.curves[c].push_back({at[c], level});
                }
            }
        }
        for (auto& c : p.curves) {
            close_curve(c, out_.shown, k.terminal * 0.999);
        }
    }

    /// A jacket clipped near the skin, of a coat that rests.
    void add_jacket() {
        const coat& c = coat_of(r_.reference, r_.patient.coat.value());
        const resting_coat rest{c.growing_share.best, c.reentry->best, c.terminal.best};
        const rate_law law = prior_rate(rate_of(r_.reference, r_.rules, c.id), r_.rules.growth);
        const growth_rules& g = r_.rules.growth;
        const delay_law late{g.delayed_share.best, g.delay_median.best, g.delay_log_sd.best};
        growing_part p;
        for (const zone_plan& z : groom_.zones) {
            if (z.how.kind == tool_kind::clip && z.leaves &&
                r_.reference.dog_body.zones[z.at.zone].has(zone_use::jacket)) {
                p.places.push_back(z.at);
            }
        }
        for (std::size_t k = 0; k < shares.size(); ++k) {
            p.curves[k].push_back({day(0.0), mm(0.0)});
            for (int i = 1; i <= levels; ++i) {
                const length level = c.terminal.best * (0.95 * i / levels);
                p.curves[k].push_back({resting_quantile(rest, law, late, level, shares[k]), level});
            }
        }
        out_.parts.push_back(std::move(p));
    }

    void add_measured(growing_part& p) const {
        const part_index words(r_.reference.dog_body);
        for (const counted_measurement& m : forecast_.learned.counted) {
            const selection* where = words.find(r_.patient.measured[m.which].whom);
            const bool here =
                where != nullptr &&
                std::any_of(where->places.begin(), where->places.end(), [&](const place& w) {
                    return std::any_of(p.places.begin(), p.places.end(),
                                       [&](const place& mine) { return share_side(w, mine); });
                });
            if (here && m.read.after <= out_.shown) {
                p.measured.push_back({m.read.after, p.start + (m.read.is - m.read.start), m.which});
            }
        }
    }

    const plan_request& r_;
    const groom& groom_;
    const forecast& forecast_;
    kept_coat coat_;
    growth_course out_;
    std::vector<length> prone_of_part_;  ///< of each part, as the forecast has it
};

}  // namespace

growth_course course_of(const plan_request& r, const groom& g, const forecast& f) {
    const learned_rate* learned = r.learned != nullptr ? r.learned : &f.learned;
    const plan_request known{r.reference, r.rules,       r.tools,   r.patient,
                             r.sheet,     r.today,       r.asked,   r.length_wish,
                             r.both_ways, r.match_sides, r.by_best, r.patchwork,
                             r.reasons,   r.top,         r.laid,    learned};
    return course(known, g, f).run();
}

}  // namespace pelage
