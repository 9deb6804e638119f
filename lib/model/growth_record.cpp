#include <algorithm>
#include <map>
#include <utility>

#include <pelage/model/growth_record.hpp>

#include "model/growth_readings.hpp"
#include "model/learning_doubts.hpp"

namespace pelage {

namespace {

/// A measurement that is left out: shorter or longer than the others let expect.
left_out_measurement odd(const counted_measurement& one, double log_rate, const learning_law& law) {
    const length expected =
        grown(one.read.start, law.terminal, mm_per_day(std::exp(log_rate)), one.read.after);
    return {one.which,
            one.read.is < expected ? left_out_because::too_short : left_out_because::too_long,
            one.cut, one.read.after};
}

/// Takes out what is likelier wrong than right.
void leave_out_wrong(learned_rate& to, const growth_readings& reader, const learning_law& law,
                     const growth_rules& g) {
    std::vector<std::vector<place>> places;
    std::vector<cut_reading> readings;
    for (const counted_measurement& m : to.counted) {
        places.push_back(reader.places_of(m));
        readings.push_back({m.cut, m.read});
    }
    const auto same_place = [&](std::size_t i, std::size_t j) {
        return std::any_of(places[i].begin(), places[i].end(), [&](const place& p) {
            return std::find(places[j].begin(), places[j].end(), p) != places[j].end();
        });
    };
    std::vector<bool> wrong(to.counted.size(), false);
    for (const found_mishap& m : mishaps_in(readings, law, g, same_place)) {
        for (const std::size_t i : m.which) {
            wrong[i] = true;
            to.left_out.push_back(odd(to.counted[i], m.log_rate, law));
        }
    }
    std::vector<counted_measurement> right;
    for (std::size_t i = 0; i < to.counted.size(); ++i) {
        if (!wrong[i]) {
            right.push_back(to.counted[i]);
        }
    }
    to.counted = std::move(right);
    std::sort(to.left_out.begin(), to.left_out.end(),
              [](const auto& a, const auto& b) { return a.which < b.which; });
}

}  // namespace

learning_law learning_law_of(const reference_data& c, const parameters& r, coat_class k) {
    const rate_prior& p = rate_of(c, r, k);
    return {{std::log(in_mm_per_day(p.median)), p.log_sd},
            r.growth.visit_log_sd.best,
            r.growth.start_error.best,
            longest_terminal(coat_of(c, k)).best};
}

std::vector<regrowth_interval> by_cut(const std::vector<counted_measurement>& counted) {
    std::map<std::size_t, regrowth_interval> cuts;
    for (const counted_measurement& m : counted) {
        cuts[m.cut].push_back(m.read);
    }
    std::vector<regrowth_interval> out;
    for (auto& [cut, readings] : cuts) {
        out.push_back(std::move(readings));
    }
    return out;
}

namespace {

/// Rate and matting-prone length together, from what was measured and what a comb found.
void learn_both(learned_rate& out, const comb_law& law) {
    std::map<std::size_t, seen_since_cut> by_visit;
    for (const counted_measurement& m : out.counted) {
        by_visit[m.cut].readings.push_back(m.read);
    }
    for (const counted_check& k : out.checks) {
        by_visit[k.cut].checks.push_back(k.zones);
    }
    std::vector<seen_since_cut> seen;
    for (auto& [cut, one] : by_visit) {
        seen.push_back(std::move(one));
    }
    const comb_posterior p(seen, law);
    out.dog = p.rate();
    out.next = {p.rate().log_median, std::hypot(p.rate().log_sd, law.growth.visit_log_sd)};
    const double share = p.rate().log_sd / law.growth.dog.log_sd;
    out.coat_weight = std::min(1.0, share * share);
    out.cases = p.cases();
    out.factor_mean = p.factor_mean();
    out.factor_sd = p.factor_sd();
}

}  // namespace

learned_rate learn_rate(const dog& d, const reference_data& c, const parameters& r,
                        const std::optional<date>& today) {
    const learning_law law = learning_law_of(c, r, d.coat.value());
    learned_rate out;
    out.usual = prior_rate(rate_of(c, r, *d.coat), r.growth);
    out.dog = law.dog;
    out.next = out.usual;
    const bool looked = looked_for_mats(d) && mats_by_length(coat_of(c, *d.coat));
    if (d.measured.empty() && !looked) {
        return out;
    }
    const growth_readings reader(d, c, r, today);
    reader.sort_into(out);
    leave_out_wrong(out, reader, law, r.growth);
    if (looked) {
        out.checks = reader.checks();
    }
    if (!out.checks.empty()) {
        learn_both(out, {law, r.matting.threshold_log_sd.best, r.matting.mishap_share.best});
    } else if (!out.counted.empty()) {
        const rate_posterior p(by_cut(out.counted), law);
        out.dog = {p.mean(), p.sd()};
        out.next = p.next();
        out.coat_weight = p.prior_share();
    }
    return out;
}

namespace {

population_rate learn_herd(const salon_files& s, const reference_data& c, coat_class k,
                           const std::optional<date>& today) {
    population_rate out;
    out.coat = k;
    out.before = coat_of(c, k).rate;
    out.own = s.rules.own_rates[static_cast<std::size_t>(k)];
    const learning_law law = learning_law_of(c, s.rules, k);
    std::vector<rate_estimate> estimates;
    for (const dog& d : s.dogs) {
        if (d.coat != k || d.measured.empty()) {
            continue;
        }
        const learned_rate l = learn_rate(d, c, s.rules, today);
        out.left_out += l.left_out.size();
        const auto e = l.counted.empty()
                           ? std::nullopt
                           : estimate_of(rate_posterior(by_cut(l.counted), law), law.dog);
        if (e) {
            estimates.push_back(*e);
            ++out.dogs;
            out.measurements += l.counted.size();
        }
    }
    if (static_cast<double>(out.dogs) >= s.rules.growth.herd.best) {
        out.fit = herd_rate_of(estimates, s.rules.growth.herd_log_sd.best,
                               {out.before.log_sd, s.rules.growth.herd_weight.best});
    }
    return out;
}

}  // namespace

std::vector<population_rate> learn_populations(const salon_files& s, const reference_data& c,
                                               const std::optional<date>& today) {
    std::vector<population_rate> out;
    for (std::size_t k = 0; k < coat_names.size(); ++k) {
        population_rate one = learn_herd(s, c, static_cast<coat_class>(k), today);
        if (one.dogs + one.left_out > 0) {
            out.push_back(std::move(one));
        }
    }
    return out;
}

}  // namespace pelage
