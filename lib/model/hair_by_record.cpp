#include <algorithm>
#include <cmath>
#include <iterator>
#include <utility>

#include <pelage/base/stats.hpp>
#include <pelage/model/growth_record.hpp>
#include <pelage/model/hair_by_record.hpp>
#include <pelage/model/hair_today.hpp>
#include <pelage/model/mats_dealt_with.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

namespace {

/// Lengths known of one day; a cut that doesn't say what it left ends what is known of a place.
struct known_day {
    date on{};
    int order = 0;  ///< on one day: told, measured, cut
    std::vector<hair_now> lengths;
    const visit* cut = nullptr;
};

std::vector<known_day> days_of(const dog& d, const date& today) {
    std::vector<known_day> out;
    const auto add = [&](const measurement& m, int order) {
        if (m.on <= today && m.combed_dry) {
            out.push_back({m.on, order, {{m.whom, m.is}}});
        }
    };
    for (const measurement& m : d.told) {
        add(m, 0);
    }
    for (const measurement& m : d.measured) {
        add(m, 1);
    }
    for (const visit& v : d.visits) {
        if (v.on <= today && v.kind != "bath") {
            out.push_back({v.on, 2, v.left, &v});
        }
    }
    std::stable_sort(out.begin(), out.end(), [](const known_day& a, const known_day& b) {
        return std::pair{a.on, a.order} < std::pair{b.on, b.order};
    });
    return out;
}

/// Whether a visit that says nothing of a place may have cut there.
bool may_have_cut(const visit& v, group where) {
    const bool tidied = where == group::head || where == group::feet || where == group::prep;
    return v.kind == "full" || (v.left.empty() && tidied);
}

/// Where a place's hair is reckoned from.
struct start {
    date on{};
    length is{};
    length error{};  ///< standard deviation
};

/// What is known of one day, of one kind: the day's words together, so that of them the narrowest counts.
struct said_on_day {
    date on{};
    said_hair lengths;
    std::vector<const visit*> cuts{};
};

class reckoner {
  public:
    /// Borrows all but the days.
    reckoner(const dog& d, const std::vector<known_day>& known, const part_index& parts,
             const reference_data& c, const parameters& r, const date& today)
        : dog_(d),
          reference_(c),
          rules_(r),
          today_(today),
          now_(parts, d.now),
          rate_(learn_rate(d, c, r, today).next) {
        for (auto first = known.begin(); first != known.end();) {
            const auto end = std::find_if_not(first, known.end(), [&](const known_day& k) {
                return k.on == first->on && k.order == first->order;
            });
            std::vector<hair_now> said;
            std::vector<const visit*> cuts;
            for (; first != end; ++first) {
                said.insert(said.end(), first->lengths.begin(), first->lengths.end());
                if (first->cut != nullptr) {
                    cuts.push_back(first->cut);
                }
            }
            days_.push_back({std::prev(end)->on, {parts, said}, std::move(cuts)});
        }
    }

    /// What is known of the place; nothing where nothing is, or where today's hair is said.
    [[nodiscard]] std::optional<recorded_hair> at(const place& p) const {
        if (now_.at(p)) {
            return std::nullopt;
        }
        const std::optional<start> from = start_at(p);
        return from ? std::optional{grown_from(*from, p)} : std::nullopt;
    }

  private:
    [[nodiscard]] std::optional<start> start_at(const place& p) const {
        std::optional<start> out;
        const group where = reference_.dog_body.zones[p.zone].where;
        for (const said_on_day& day : days_) {
            if (const auto l = day.lengths.at(p)) {
                out = start{day.on, *l,
                            day.cuts.empty() ? measuring_error(*l, rules_.growth)
                                             : rules_.growth.start_error.best};
            } else if (std::any_of(day.cuts.begin(), day.cuts.end(),
                                   [&](const visit* v) { return may_have_cut(*v, where); })) {
                out.reset();
            }
        }
        return out;
    }

    [[nodiscard]] recorded_hair grown_from(const start& from, const place& p) const {
        const coat& k = coat_of(reference_, dog_.coat.value());
        const length end = terminal_at(k, reference_.dog_body.zones[p.zone].id).best;
        const days after = between(from.on, today_);
        const double season = season_factor(rules_.growth, from.on, after);
        const auto by = [&](double chance) {
            return grown(from.is, end, season * rate_quantile(rate_, chance), after);
        };
        constexpr double tenth = 0.1;
        const double error = normal_quantile(1.0 - tenth) * in_mm(from.error);
        const length best = by(0.5);
        const auto spread = [&](const length& l) {
            return mm(std::hypot(in_mm(gap(l, best)), error));
        };
        recorded_hair out{p, best, {}, {}, from.on};
        out.low = longer(mm(0.0), best - spread(by(tenth)));
        out.high = shorter(longer(from.is, end), best + spread(by(1.0 - tenth)));
        return out;
    }

    const dog& dog_;
    const reference_data& reference_;
    const parameters& rules_;
    const date& today_;
    said_hair now_;
    std::vector<said_on_day> days_;
    rate_law rate_;
};

bool alike(const std::optional<recorded_hair>& a, const std::optional<recorded_hair>& b) {
    return a.has_value() == b.has_value() && (!a || (a->is == b->is && a->since == b->since));
}

/// Hair told of this very day is said, not reckoned, unless it was cut since.
void take_told_today(dog& d, const date& today) {
    const bool cut = std::any_of(d.visits.begin(), d.visits.end(),
                                 [&](const visit& v) { return v.on == today && v.kind != "bath"; });
    for (const measurement& m : d.told) {
        if (m.on == today && !cut) {
            d.now.push_back({m.whom, m.is});
        }
    }
}

}  // namespace

dog with_hair_by_record(dog d, const reference_data& c, const parameters& r,
                        const std::optional<date>& today, const part_index* parts) {
    const bool nothing = d.visits.empty() && d.measured.empty() && d.told.empty();
    if (!today || nothing) {
        return d;
    }
    take_told_today(d, *today);
    if (coat_of(c, d.coat.value()).kind == cycle::resting) {
        return d;
    }
    const std::vector<known_day> on_days = days_of(d, *today);
    std::vector<recorded_hair> known;
    if (std::all_of(on_days.begin(), on_days.end(),
                    [](const known_day& k) { return k.lengths.empty(); })) {
        d.by_record = std::move(known);
        return d;
    }
    const body& b = c.dog_body;
    std::optional<part_index> own;
    const reckoner reckon(d, on_days, parts != nullptr ? *parts : own.emplace(b), c, r, *today);
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        auto left = reckon.at({z, side::left});
        const auto right = b.zones[z].paired ? reckon.at({z, side::right}) : left;
        if (left && alike(left, right)) {
            left->at.which = side::both;
            known.push_back(*left);
            continue;
        }
        for (const auto& one : {left, right}) {
            if (one) {
                known.push_back(*one);
            }
        }
    }
    for (const recorded_hair& h : known) {
        const bool whole = h.at.which == side::both;
        d.now.push_back({whole ? b.zones[h.at.zone].id : title(b, h.at), h.is});
    }
    d.by_record = std::move(known);
    return d;
}

dog as_by_record(dog d, const reference_data& c, const parameters& r,
                 const std::optional<date>& today, const part_index* parts) {
    const bool filed =
        std::any_of(d.mats.begin(), d.mats.end(), [](const mat_finding& m) { return m.filed; });
    if (!filed || d.visits.empty()) {
        return with_hair_by_record(std::move(d), c, r, today, parts);
    }
    std::optional<part_index> own;
    const part_index& words = parts != nullptr ? *parts : own.emplace(c.dog_body);
    return with_hair_by_record(without_mats_dealt_with(std::move(d), words, c.dog_body, today), c,
                               r, today, &words);
}

}  // namespace pelage
