#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include <pelage/planner/plan.hpp>
#include <pelage/sheets/kept.hpp>
#include <pelage/trade/place_words.hpp>
#include <pelage/trade/upkeep.hpp>

namespace pelage {

namespace {

/// A tool as it is held: "blade 10, with the lay" is "blade 10".
std::string held_of(const std::string& tool) {
    for (const direction d : {direction::with_lay, direction::against_lay}) {
        const std::string way = ", " + std::string(name(d));
        if (tool.ends_with(way)) {
            return tool.substr(0, tool.size() - way.size());
        }
    }
    return tool;
}

length middle_of(std::vector<length> all) {
    std::sort(all.begin(), all.end());
    const std::size_t n = all.size();
    return 0.5 * (all[(n - 1) / 2] + all[n / 2]);
}

/// Whether the word takes in all of the place; "all" is the whole coat.
bool takes_in(const selection& s, const place& p) {
    return s.how == reach::all ||
           std::any_of(s.places.begin(), s.places.end(), [&](const place& w) {
               return w.zone == p.zone && (w.which == side::both || w.which == p.which);
           });
}

class sheet_keeper {
  public:
    explicit sheet_keeper(const kept_request& r) : r_(r), parts_(r.reference.dog_body) {}

    void add(const kept_dog& one) {
        const style* sheet = find(r_.styles, one.who->style);
        if (sheet == nullptr || !one.who->coat) {
            return;
        }
        for (const log_entry& e : one.entries) {
            if (!visit_kind_of(e.services).empty() && visit_kind_of(e.services) != "bath") {
                visit(*one.who, *sheet, e);
            }
        }
    }

    kept_lengths all() && {
        out_.asked = r_.asked;
        out_.dogs = dogs_.size();
        const auto rows = static_cast<double>(std::max<std::size_t>(1, by_.size()));
        const chance each = 1.0 - (1.0 - r_.asked) / rows;
        while (!interval_rank(++out_.enough, each)) {
        }
        for (auto& [what, seen] : by_) {
            out_.rows.push_back(row(what, seen, each));
        }
        std::stable_sort(out_.rows.begin(), out_.rows.end(), [](const auto& a, const auto& b) {
            return a.by != b.by ? a.by < b.by : a.visits > b.visits;
        });
        return std::move(out_);
    }

  private:
    struct seen_visits {
        std::vector<length> off;  ///< one a visit
        std::set<const dog*> dogs;
    };
    using key = std::pair<kept_by, std::string>;

    void visit(const dog& d, const style& raw, const log_entry& e) {
        std::map<key, std::vector<length>> off;
        bool any = false;
        const bool measured = std::any_of(e.left.begin(), e.left.end(),
                                          [](const logged_length& l) { return l.measured; });
        for (const auto& [at, wished] : measured ? wishes(d, on_day(raw, e.on), e.on) : targets{}) {
            const logged_length* left = left_at(e, at);
            if (left == nullptr || !left->measured) {
                continue;
            }
            const length more = left->is - wished;
            any = true;
            off[{kept_by::part, std::string(name(r_.reference.dog_body.zones[at.zone].where))}]
                .push_back(more);
            if (!e.who.empty()) {
                off[{kept_by::groomer, e.who}].push_back(more);
            }
            if (const std::string tool = tool_at(e, at); !tool.empty()) {
                off[{kept_by::tool, tool}].push_back(more);
            }
        }
        (any ? out_.visits : out_.unsaid) += 1;
        if (any) {
            dogs_.insert(&d);
        }
        for (const auto& [what, all] : off) {
            by_[what].off.push_back(middle_of(all));
            by_[what].dogs.insert(&d);
        }
    }

    using targets = std::vector<std::pair<place, length>>;

    /// What the sheet and the dog's departures wish that day, place by place.
    [[nodiscard]] targets wishes(dog d, const style& sheet, const date& on) const {
        d.mats.clear();
        d.skin.clear();
        d.now.clear();
        assume_upkeep(d, sheet);
        plan_request ask{r_.reference, r_.rules, r_.tools, d, sheet, on};
        ask.reasons = false;
        targets out;
        for (const zone_plan& z : make_plan(ask).zones) {
            if (!z.target) {
                continue;
            }
            if (z.at.which == side::both && r_.reference.dog_body.zones[z.at.zone].paired) {
                out.push_back({{z.at.zone, side::left}, *z.target});
                out.push_back({{z.at.zone, side::right}, *z.target});
            } else {
                out.push_back({z.at, *z.target});
            }
        }
        return out;
    }

    [[nodiscard]] const logged_length* left_at(const log_entry& e, const place& p) const {
        const logged_length* out = nullptr;
        const selection* by = nullptr;
        for (const logged_length& l : e.left) {
            const selection* s = parts_.find(l.whom);
            if (s != nullptr && takes_in(*s, p) && (by == nullptr || !wider(*s, *by))) {
                out = &l;
                by = s;
            }
        }
        return out;
    }

    /// The tool last told of the place.
    [[nodiscard]] std::string tool_at(const log_entry& e, const place& p) const {
        for (auto t = e.used.rbegin(); t != e.used.rend(); ++t) {
            for (const std::string& word : t->places) {
                const selection* s = parts_.find(word);
                if (s != nullptr && takes_in(*s, p)) {
                    return held_of(t->tool);
                }
            }
        }
        return {};
    }

    [[nodiscard]] static kept_row row(const key& what, seen_visits& seen, chance each) {
        kept_row out{what.first,       what.second,         seen.off.size(),
                     seen.dogs.size(), middle_of(seen.off), {}};
        std::sort(seen.off.begin(), seen.off.end());
        if (const auto k = interval_rank(seen.off.size(), each)) {
            out.between = {seen.off[*k - 1], seen.off[seen.off.size() - *k]};
        }
        return out;
    }

    const kept_request& r_;
    part_index parts_;
    std::map<key, seen_visits> by_;
    std::set<const dog*> dogs_;
    kept_lengths out_;
};

}  // namespace

std::optional<std::size_t> interval_rank(std::size_t n, chance asked) {
    std::optional<std::size_t> out;
    double below = 0.0;  // P(Binomial(n, 1/2) < k)
    double log_term = -static_cast<double>(n) * std::log(2.0);
    for (std::size_t k = 1; 2 * k <= n; ++k) {
        below += std::exp(log_term);
        if (1.0 - 2.0 * below < asked) {
            break;
        }
        out = k;
        log_term += std::log(static_cast<double>(n - k + 1) / static_cast<double>(k));
    }
    return out;
}

kept_lengths kept_lengths_of(const kept_request& r, const std::vector<kept_dog>& all) {
    sheet_keeper k(r);
    for (const kept_dog& one : all) {
        k.add(one);
    }
    return std::move(k).all();
}

}  // namespace pelage
