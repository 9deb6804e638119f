#include <algorithm>
#include <map>
#include <utility>

#include <pelage/model/growth_record.hpp>
#include <pelage/trade/place_words.hpp>

#include "model/learning_doubts.hpp"

namespace pelage {

namespace {

/// The cut a place was last given before a measurement, as far as it is known.
struct last_cut {
    const visit* on = nullptr;   ///< null: none in the record
    std::optional<length> left;  ///< none: the record doesn't say

    friend bool operator==(const last_cut& a, const last_cut& b) {
        return a.on == b.on && a.left == b.left;
    }
};

bool looked_for_mats(const dog& d) {
    return std::any_of(d.visits.begin(), d.visits.end(),
                       [](const visit& v) { return v.mats.has_value(); });
}

/// Reads one dog's record.
class record_reader {
  public:
    record_reader(const dog& d, const reference_data& c, const parameters& r,
                  const std::optional<date>& today)
        : dog_(d), reference_(c), rules_(r), today_(today) {
        if (!d.measured.empty() || looked_for_mats(d)) {
            parts_.emplace(c.dog_body);  // nobody else asks what a word means
        }
        for (const visit& v : d.visits) {
            visits_.push_back(&v);
        }
        std::stable_sort(visits_.begin(), visits_.end(),
                         [](const visit* a, const visit* b) { return a->on < b->on; });
    }

    /// Each measurement counted or left out.
    void sort_into(learned_rate& to) const {
        for (std::size_t i = 0; i < dog_.measured.size(); ++i) {
            const measurement& m = dog_.measured[i];
            const auto places = single_places(m.whom);
            const std::optional<last_cut> cut = common_cut(places, m.on);
            const bool on_record = cut && cut->on != nullptr;
            const std::size_t index =
                on_record ? static_cast<std::size_t>(cut->on - dog_.visits.data()) : 0;
            if (const auto why = why_not(m, cut)) {
                to.left_out.push_back({i, *why, index, {}});
                continue;
            }
            to.counted.push_back({i,
                                  index,
                                  {between(cut->on->on, m.on), *cut->left, m.is,
                                   measuring_error(expected(*cut, m), rules_.growth)}});
        }
        keep_newest(to);
    }

    /// The visits that looked for mats, as far as length tells what they found; the newest.
    [[nodiscard]] std::vector<counted_check> checks() const {
        std::vector<counted_check> out;
        for (const visit* v : visits_) {
            if (auto one = v->mats && (!today_ || v->on <= *today_) ? check_at(*v) : std::nullopt) {
                out.push_back(std::move(*one));
            }
        }
        if (out.size() > most_checks) {
            out.erase(out.begin(), out.end() - static_cast<std::ptrdiff_t>(most_checks));
        }
        return out;
    }

    /// The places of a measurement that counts.
    [[nodiscard]] std::vector<place> places_of(const counted_measurement& m) const {
        return single_places(dog_.measured[m.which].whom);
    }

  private:
    /// Each measurement is doubted in turn against all others, so that a record without end would take
    /// without end; long before that a rate is as well known as it gets.
    void keep_newest(learned_rate& to) const {
        if (to.counted.size() <= most_counted) {
            return;
        }
        const auto on = [&](const counted_measurement& m) { return dog_.measured[m.which].on; };
        std::stable_sort(to.counted.begin(), to.counted.end(),
                         [&](const auto& a, const auto& b) { return on(a) > on(b); });
        for (std::size_t i = most_counted; i < to.counted.size(); ++i) {
            to.left_out.push_back({to.counted[i].which, left_out_because::newer_are_enough, 0, {}});
        }
        to.counted.resize(most_counted);
        std::sort(to.counted.begin(), to.counted.end(),
                  [](const auto& a, const auto& b) { return a.which < b.which; });
    }

    /// What a dog of that coat is expected to measure then.
    [[nodiscard]] length expected(const last_cut& cut, const measurement& m) const {
        const coat_class k = dog_.coat.value();
        return grown(*cut.left, longest_terminal(coat_of(reference_, k)).best,
                     rate_of(reference_, rules_, k).median, between(cut.on->on, m.on));
    }

    /// The last visit before that day which combed the dog out to the skin.
    [[nodiscard]] const visit* brushed_before(const date& on, bool full) const {
        for (auto v = visits_.rbegin(); v != visits_.rend(); ++v) {
            if ((*v)->on < on && ((*v)->kind == "full" || (!full && (*v)->kind == "bath"))) {
                return *v;
            }
        }
        return nullptr;
    }

    /// Within the clock that began with the last combing out, length tells nothing of mats.
    [[nodiscard]] std::optional<counted_check> check_at(const visit& v) const {
        const visit* const cut = brushed_before(v.on, true);
        const visit* const brushed = brushed_before(v.on, false);
        if (cut == nullptr ||
            between(brushed->on, v.on) <= brush_out_clock(dog_.brushed, rules_.matting)) {
            return std::nullopt;
        }
        counted_check out{static_cast<std::size_t>(&v - dog_.visits.data()),
                          static_cast<std::size_t>(cut - dog_.visits.data()),
                          !v.mats->empty(),
                          {}};
        const coat& c = coat_of(reference_, dog_.coat.value());
        for (std::size_t i = 0; i < reference_.dog_body.zones.size(); ++i) {
            const zone& z = reference_.dog_body.zones[i];
            const auto prone =
                matting_prone_length(c, z, dog_.brushed, dog_.coat_change, rules_.matting);
            const place p{i, side::both};
            const last_cut last = cut_before(p, v.on);
            if (!prone || last.on == nullptr || !last.left) {
                continue;
            }
            const bool matted =
                std::any_of(v.mats->begin(), v.mats->end(), [&](const std::string& whom) {
                    const selection& s = meant(whom);
                    return s.how == reach::all ||
                           std::any_of(s.places.begin(), s.places.end(),
                                       [&](const place& w) { return share_side(w, p); });
                });
            out.zones.push_back({between(last.on->on, v.on), *last.left, *prone,
                                 terminal_at(c, z.id).best, matted});
        }
        out.zones = consistent(std::move(out.zones));
        return out.zones.empty() ? std::nullopt : std::optional{std::move(out)};
    }

    [[nodiscard]] const selection& meant(const std::string& whom) const {
        const selection* s = parts_.value().find(whom);
        if (s == nullptr) {
            throw error(errc::unknown, "no zone, group or side is called \"" + whom + "\"");
        }
        return *s;
    }

    /// The places a word means, a paired zone as its two sides.
    [[nodiscard]] std::vector<place> single_places(const std::string& whom) const {
        std::vector<place> out;
        for (const place& p : meant(whom).places) {
            if (p.which == side::both && reference_.dog_body.zones[p.zone].paired) {
                out.push_back({p.zone, side::left});
                out.push_back({p.zone, side::right});
            } else {
                out.push_back(p);
            }
        }
        return out;
    }

    /// What the visit says it left at a place: narrower words win, then later ones. "all" means the
    /// whole coat, prep zones too.
    [[nodiscard]] std::optional<length> left_at(const visit& v, const place& p) const {
        const hair_now* out = nullptr;
        const selection* by = nullptr;
        for (const hair_now& h : v.left) {
            const selection& s = meant(h.whom);
            const bool there = s.how == reach::all ||
                               std::any_of(s.places.begin(), s.places.end(),
                                           [&](const place& w) { return share_side(w, p); });
            if (there && (by == nullptr || !wider(s, *by))) {
                out = &h;
                by = &s;
            }
        }
        return out == nullptr ? std::nullopt : std::optional{out->is};
    }

    /// Whether a visit that doesn't say so may have cut there: a full groom does, a tidy goes over face,
    /// feet and the parts that are always clipped.
    [[nodiscard]] bool may_have_cut(const visit& v, const place& p) const {
        const group where = reference_.dog_body.zones[p.zone].where;
        const bool tidied = where == group::head || where == group::feet || where == group::prep;
        return v.kind == "full" || (v.kind == "tidy" && v.left.empty() && tidied);
    }

    [[nodiscard]] last_cut cut_before(const place& p, const date& on) const {
        for (auto v = visits_.rbegin(); v != visits_.rend(); ++v) {
            if ((*v)->on >= on) {
                continue;
            }
            if (const auto left = left_at(**v, p)) {
                return {*v, left};
            }
            if (may_have_cut(**v, p)) {
                return {*v, std::nullopt};
            }
        }
        return {};
    }

    /// The cut that all those places were last given; nothing if they were not cut alike.
    [[nodiscard]] std::optional<last_cut> common_cut(const std::vector<place>& places,
                                                     const date& on) const {
        std::optional<last_cut> out;
        for (const place& p : places) {
            const last_cut one = cut_before(p, on);
            if (out && !(*out == one)) {
                return std::nullopt;
            }
            out = one;
        }
        return out;
    }

    [[nodiscard]] std::optional<left_out_because> why_not(
        const measurement& m, const std::optional<last_cut>& cut) const {
        const coat& c = coat_of(reference_, dog_.coat.value());
        if (c.kind == cycle::resting) {
            return left_out_because::coat_rests;
        }
        if (!m.combed_dry) {
            return left_out_because::not_combed_dry;
        }
        if (today_ && m.on > *today_) {
            return left_out_because::after_today;
        }
        if (!cut) {
            return left_out_because::cut_unalike;
        }
        if (cut->on == nullptr) {
            return left_out_because::no_cut;
        }
        if (!cut->left) {
            return left_out_because::cut_unsaid;
        }
        if (m.is >= longest_terminal(c).best) {
            return left_out_because::full_length;
        }
        return std::nullopt;
    }

    const dog& dog_;
    const reference_data& reference_;
    const parameters& rules_;
    const std::optional<date>& today_;
    std::optional<part_index> parts_;
    std::vector<const visit*> visits_;  ///< by date
};

/// A measurement that is left out: shorter or longer than the others let expect.
left_out_measurement odd(const counted_measurement& one, double log_rate, const learning_law& law) {
    const length expected =
        grown(one.read.start, law.terminal, mm_per_day(std::exp(log_rate)), one.read.after);
    return {one.which,
            one.read.is < expected ? left_out_because::too_short : left_out_because::too_long,
            one.cut, one.read.after};
}

/// Takes out what is likelier wrong than right.
void leave_out_wrong(learned_rate& to, const record_reader& reader, const learning_law& law,
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
    const record_reader reader(d, c, r, today);
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
