#include "judges/integer_programme.hpp"

#include <algorithm>
#include <map>

namespace judges {

using namespace pelage;

namespace {

class writer {
  public:
    explicit writer(const problem& p) : p_(p) {}

    integer_programme run(form f) {
        choices();
        tools();
        budget();
        if (f == form::compact) {
            for (const seam_cost& s : p_.seams) {
                step(s);
            }
        } else {
            for (std::size_t z = 0; z < p_.zones.size(); ++z) {
                cumulate(z);
            }
            for (const seam_cost& s : p_.seams) {
                steps_down(s.a, s.b, s);
                steps_down(s.b, s.a, s);
            }
        }
        return std::move(out_);
    }

  private:
    std::size_t add(const column& c) {
        out_.columns.push_back(c);
        return out_.columns.size() - 1;
    }

    /// A zone's allowed setups with their columns.
    template <class Visit>
    void each(std::size_t z, Visit visit) const {
        for (std::size_t i = 0; i < p_.zones[z].size(); ++i) {
            visit(p_.zones[z][i], out_.choice[z][i]);
        }
    }

    /// Every zone has one of its allowed setups.
    void choices() {
        for (std::size_t z = 0; z < p_.zones.size(); ++z) {
            row one{{}, relation::equal, 1};
            out_.choice.emplace_back();
            for (const allowed_setup& s : p_.zones[z]) {
                out_.choice[z].push_back(add({s.cost, 1, true}));
                one.terms.push_back({out_.choice[z].back(), 1});
            }
            out_.rows.push_back(std::move(one));
        }
    }

    /// held >= sum of what holds it, zone by zone: at most one of a zone is chosen.
    void tools() {
        for (std::size_t t = 0; t < p_.price.size(); ++t) {
            if (p_.price[t] == 0) {
                continue;
            }
            const std::size_t held = add({p_.price[t], 1, true});
            for (std::size_t z = 0; z < p_.zones.size(); ++z) {
                row r{{}, relation::at_least, 0};
                each(z, [&](const allowed_setup& s, std::size_t chosen) {
                    if ((s.tools >> t & 1U) != 0) {
                        r.terms.push_back({chosen, -1});
                    }
                });
                if (!r.terms.empty()) {
                    r.terms.push_back({held, 1});
                    out_.rows.push_back(std::move(r));
                }
            }
        }
    }

    void budget() {
        row r{{}, relation::at_most, p_.budget};
        for (std::size_t z = 0; z < p_.zones.size(); ++z) {
            each(z, [&](const allowed_setup& s, std::size_t chosen) {
                if (s.spend != 0) {
                    r.terms.push_back({chosen, s.spend});
                }
            });
        }
        if (!r.terms.empty()) {
            out_.rows.push_back(std::move(r));
        }
    }

    void add_lengths(row& r, std::size_t z, int sign) const {
        each(z, [&](const allowed_setup& s, std::size_t chosen) {
            if (s.length != 0) {
                r.terms.push_back({chosen, std::int64_t{sign} * s.length});
            }
        });
    }

    /// beyond >= length - length - allowance, both ways round.
    void step(const seam_cost& s) {
        if (s.per_hundredth == 0) {
            return;
        }
        const std::size_t beyond = add({s.per_hundredth, column::no_limit, false});
        for (const int sign : {-1, 1}) {
            row r{{{beyond, 1}}, relation::at_least, -std::int64_t{s.allowance}};
            add_lengths(r, s.a, sign);
            add_lengths(r, s.b, -sign);
            out_.rows.push_back(std::move(r));
        }
    }

    /// up_to[z][l]: 1 if the zone is left at l or below, for every length it may have.
    void cumulate(std::size_t z) {
        std::map<std::int32_t, std::vector<std::size_t>> by_length;
        each(z, [&](const allowed_setup& s, std::size_t chosen) {
            by_length[s.length].push_back(chosen);
        });
        up_to_.emplace_back();
        std::size_t before = integer_programme::none;
        for (const auto& [length, columns] : by_length) {
            const std::size_t here = add({0, 1, false});
            row r{{{here, 1}}, relation::equal, 0};
            for (const std::size_t c : columns) {
                r.terms.push_back({c, -1});
            }
            if (before != integer_programme::none) {
                r.terms.push_back({before, -1});
            }
            out_.rows.push_back(std::move(r));
            up_to_.back()[length] = here;
            before = here;
        }
    }

    /// The column that says the zone is left at l or below; none if it can't be.
    [[nodiscard]] std::size_t at_most(std::size_t z, std::int32_t l) const {
        const auto at = up_to_[z].upper_bound(l);
        return at == up_to_[z].begin() ? integer_programme::none : std::prev(at)->second;
    }

    /// How far `high` stands above `low` beyond the allowance: the measure of all l with low <= l and
    /// high - allowance > l. Between two breakpoints neither changes; one column says both hold.
    void steps_down(std::size_t high, std::size_t low, const seam_cost& s) {
        std::vector<std::int32_t> breaks;
        for (const auto& [length, unused] : up_to_[low]) {
            breaks.push_back(length);
        }
        for (const auto& [length, unused] : up_to_[high]) {
            breaks.push_back(length - s.allowance);
        }
        std::sort(breaks.begin(), breaks.end());
        for (std::size_t i = 0; i + 1 < breaks.size(); ++i) {
            const std::int64_t width = std::int64_t{breaks[i + 1]} - breaks[i];
            const std::size_t low_is = at_most(low, breaks[i]);
            const std::size_t high_is = at_most(high, breaks[i] + s.allowance);
            const bool always_below = high_is == up_to_[high].rbegin()->second;
            if (width == 0 || low_is == integer_programme::none || always_below ||
                s.per_hundredth == 0) {
                continue;
            }
            const std::size_t both = add({width * s.per_hundredth, 1, false});
            row r{{{both, 1}, {low_is, -1}}, relation::at_least, 0};
            if (high_is != integer_programme::none) {
                r.terms.push_back({high_is, 1});
            }
            out_.rows.push_back(std::move(r));
        }
    }

    const problem& p_;
    integer_programme out_;
    std::vector<std::map<std::int32_t, std::size_t>> up_to_;
};

}  // namespace

integer_programme written(const problem& p, form f) {
    return writer(p).run(f);
}

std::optional<std::vector<std::size_t>> chosen(const problem& p, const integer_programme& ip,
                                               std::span<const double> value) {
    std::vector<std::size_t> plan;
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        std::size_t found = 0;
        for (std::size_t i = 0; i < p.zones[z].size(); ++i) {
            if (value[ip.choice[z][i]] > 0.5) {
                plan.push_back(p.zones[z][i].setup);
                ++found;
            }
        }
        if (found != 1) {
            return std::nullopt;
        }
    }
    return plan;
}

}  // namespace judges
