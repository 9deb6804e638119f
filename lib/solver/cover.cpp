// The exact choice of items.
//
// Targets are merged where the same ways meet them, what always or never can be met is taken out. The
// search decides one item after the other, to take or to leave; it goes on only where a bound lies over
// the best found.
//
// The bound. Relax every way to one of the items it still lacks: whoever has the whole way has that one.
// Then target t is met by any of a set R(t) of items, and for any 0 <= m(t) <= w(t)
//     met <= sum of (w(t) - m(t)) + sum over items taken of (sum of m(t) with the item in R(t)),
// since a met target gives w(t) = (w(t) - m(t)) + m(t) and some taken item is in R(t). The second sum is
// at most that of the k largest items. m = w is the bound of submodular functions; better m are found at
// the root by subgradient steps. All in integers: m is rounded, which keeps the bound one.
//
// Of equals the first: with the most that can be met known, each item in turn is taken if the rest can
// still meet as much.
#include <algorithm>
#include <array>
#include <bit>
#include <cmath>
#include <functional>
#include <map>
#include <optional>

#include <pelage/base/error.hpp>
#include <pelage/solver/cover.hpp>

namespace pelage {

namespace {

constexpr item_set item_bit(std::size_t i) {
    return item_set{1} << i;
}
constexpr bool inside(item_set part, item_set whole) {
    return (part & ~whole) == 0;
}

/// Multipliers are whole numbers of parts: so many make a weight of 1.
constexpr std::int64_t grain = 1024;

/// Targets that the same ways meet, as one.
struct target_class {
    std::int64_t weight = 0;
    std::vector<item_set> ways;
    std::int64_t multiplier = 0;  ///< m of the bound, in parts of `grain`
};

/// The ways of which no other is a part, sorted.
std::vector<item_set> least_ways(std::vector<item_set> ways) {
    std::sort(ways.begin(), ways.end());
    ways.erase(std::unique(ways.begin(), ways.end()), ways.end());
    std::vector<item_set> out;
    for (const item_set w : ways) {
        const bool needless = std::any_of(ways.begin(), ways.end(),
                                          [&](item_set v) { return v != w && inside(v, w); });
        if (!needless) {
            out.push_back(w);
        }
    }
    return out;
}

using gains = std::array<std::int64_t, most_items>;

/// The sum of the k largest gains among `items`.
std::int64_t largest(const gains& g, item_set items, std::size_t k) {
    std::array<std::int64_t, most_items> some{};
    std::size_t n = 0;
    for (item_set left = items; left != 0; left &= left - 1) {
        some[n++] = g[static_cast<std::size_t>(std::countr_zero(left))];
    }
    k = std::min(k, n);
    std::partial_sort(some.begin(), some.begin() + static_cast<std::ptrdiff_t>(k),
                      some.begin() + static_cast<std::ptrdiff_t>(n), std::greater<>{});
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < k; ++i) {
        sum += some[i];
    }
    return sum;
}

/// What a point of the search comes to.
struct standing {
    std::int64_t met = 0;
    std::int64_t bound = 0;
    std::optional<std::size_t> next{};  ///< the item to decide; none: nothing more can be gained
};

class stock_search {
  public:
    stock_search(const cover_problem& p, std::int64_t most_nodes) : most_nodes_(most_nodes) {
        std::map<std::vector<item_set>, std::int64_t> merged;
        for (const cover_target& t : p.targets) {
            std::vector<item_set> ways = least_ways(t.ways);
            if (ways.empty() || t.weight <= 0) {
                continue;
            }
            if (ways.front() == 0) {
                always_ += t.weight;
            } else {
                merged[std::move(ways)] += t.weight;
            }
        }
        for (auto& [ways, weight] : merged) {
            for (const item_set w : ways) {
                useful_ |= w;
            }
            classes_.push_back({weight, ways, weight * grain});
        }
        count_uses();
    }

    [[nodiscard]] std::int64_t always() const { return always_; }

    /// The best choice of k items that meets more than `least`; where there is none, `least` is kept.
    cover_choice best(std::size_t k, const cover_choice& least) {
        begin(least.met + 1);
        found_ = least;
        tune(k);
        search(0, useful_, k);
        found_.bound = std::max(found_.met, open_);
        return found_;
    }

    /// Of the choices of k items that meet as much as `known` the first.
    cover_choice first(std::size_t k, cover_choice known) {
        item_set taken = 0;
        item_set open = useful_;
        for (std::size_t i = 0; i < most_items && std::popcount(taken) < static_cast<int>(k); ++i) {
            if ((open & item_bit(i)) == 0) {
                continue;
            }
            open &= ~item_bit(i);
            if ((known.items & item_bit(i)) == 0) {
                begin(known.met);
                found_ = known;
                first_will_do_ = true;
                const auto left = k - static_cast<std::size_t>(std::popcount(taken)) - 1;
                search(taken | item_bit(i), open, left);
                if (enough_) {
                    known.items = found_.items;
                }
            }
            taken |= known.items & item_bit(i);
        }
        return known;
    }

  private:
    void begin(std::int64_t wanted) {
        wanted_ = wanted;
        nodes_ = 0;
        open_ = 0;
        first_will_do_ = false;
        enough_ = false;
    }

    /// How many classes an item has ways in: of a way the rarest item stands for it.
    void count_uses() {
        for (const target_class& c : classes_) {
            item_set all = 0;
            for (const item_set w : c.ways) {
                all |= w;
            }
            for (; all != 0; all &= all - 1) {
                ++uses_[static_cast<std::size_t>(std::countr_zero(all))];
            }
        }
    }

    [[nodiscard]] std::size_t rarest(item_set way) const {
        auto best = static_cast<std::size_t>(std::countr_zero(way));
        for (item_set left = way & (way - 1); left != 0; left &= left - 1) {
            const auto i = static_cast<std::size_t>(std::countr_zero(left));
            best = uses_[i] < uses_[best] ? i : best;
        }
        return best;
    }

    /// The items that stand for what a class still lacks; nothing if it is met, 0 if it can't be.
    [[nodiscard]] std::optional<item_set> lacks(const target_class& c, item_set taken,
                                                item_set open, item_set* partners) const {
        item_set out = 0;
        for (const item_set way : c.ways) {
            const item_set missing = way & ~taken;
            if (missing == 0) {
                return std::nullopt;
            }
            if (inside(missing, open)) {
                const std::size_t one = rarest(missing);
                out |= item_bit(one);
                if (partners != nullptr) {
                    *partners |= missing & ~item_bit(one);
                }
            }
        }
        return out;
    }

    [[nodiscard]] standing judge(item_set taken, item_set open, std::size_t k) const {
        standing s;
        s.met = always_;
        gains whole{};
        gains shared{};
        std::int64_t kept = 0;
        item_set partners = 0;
        for (const target_class& c : classes_) {
            const auto by = lacks(c, taken, open, &partners);
            if (!by) {
                s.met += c.weight;
                continue;
            }
            kept += *by == 0 ? 0 : c.weight * grain - c.multiplier;
            for (item_set left = *by; left != 0; left &= left - 1) {
                const auto i = static_cast<std::size_t>(std::countr_zero(left));
                whole[i] += c.weight;
                shared[i] += c.multiplier;
            }
        }
        s.bound =
            s.met + std::min(largest(whole, open, k), (kept + largest(shared, open, k)) / grain);
        // what others can't do without is decided first: then ways are single items
        const item_set among = partners != 0 ? partners : open;
        std::int64_t most = 0;
        for (item_set left = among; left != 0; left &= left - 1) {
            const auto i = static_cast<std::size_t>(std::countr_zero(left));
            const std::int64_t g = partners != 0 ? static_cast<std::int64_t>(uses_[i]) : whole[i];
            if (g > most) {
                most = g;
                s.next = i;
            }
        }
        return s;
    }

    void search(item_set taken, item_set open, std::size_t k) {
        if (enough_) {
            return;
        }
        const standing s = judge(taken, open, k);
        if (s.met >= wanted_) {
            wanted_ = s.met + 1;
            found_ = {taken, s.met, s.met};
            enough_ = first_will_do_;
        }
        if (k == 0 || !s.next || s.bound < wanted_ || enough_) {
            return;
        }
        if (++nodes_ > most_nodes_) {
            open_ = std::max(open_, s.bound);
            return;
        }
        const item_set rest = open & ~item_bit(*s.next);
        search(taken | item_bit(*s.next), rest, k - 1);
        search(taken, rest, k);
    }

    /// Better multipliers for k items at the root.
    void tune(std::size_t k) {
        constexpr int steps = 200;
        std::vector<double> m;
        std::vector<item_set> by;
        for (target_class& c : classes_) {
            c.multiplier = c.weight * grain;
            m.push_back(static_cast<double>(c.weight));
            by.push_back(lacks(c, 0, useful_, nullptr).value_or(0));
        }
        std::int64_t least = judge(0, useful_, k).bound;
        double length = 1.0;
        for (int step = 0; step < steps; ++step) {
            std::array<double, most_items> gain{};
            double kept = 0.0;
            for (std::size_t t = 0; t < m.size(); ++t) {
                kept += static_cast<double>(classes_[t].weight) - m[t];
                for (item_set left = by[t]; left != 0; left &= left - 1) {
                    gain[static_cast<std::size_t>(std::countr_zero(left))] += m[t];
                }
            }
            const item_set top = best_of(gain, k, kept);
            double norm = 0.0;
            for (std::size_t t = 0; t < m.size(); ++t) {
                const double g = std::popcount(by[t] & top) - 1.0;
                norm += g * g;
            }
            if (norm == 0.0) {
                break;
            }
            const double over = kept - static_cast<double>(found_.met - always_);
            const double stride = length * std::max(over, 1.0) / norm;
            for (std::size_t t = 0; t < m.size(); ++t) {
                const double g = std::popcount(by[t] & top) - 1.0;
                m[t] = std::clamp(m[t] - stride * g, 0.0, static_cast<double>(classes_[t].weight));
            }
            least = keep_if_better(m, k, least);
            length *= 0.98;
        }
    }

    /// The k items of the largest gains; `sum` grows by their gains.
    [[nodiscard]] item_set best_of(const std::array<double, most_items>& gain, std::size_t k,
                                   double& sum) const {
        item_set top = 0;
        for (std::size_t n = 0; n < k; ++n) {
            std::size_t at = most_items;
            for (item_set left = useful_ & ~top; left != 0; left &= left - 1) {
                const auto i = static_cast<std::size_t>(std::countr_zero(left));
                at = at == most_items || gain[i] > gain[at] ? i : at;
            }
            if (at == most_items) {
                break;
            }
            top |= item_bit(at);
            sum += gain[at];
        }
        return top;
    }

    std::int64_t keep_if_better(const std::vector<double>& m, std::size_t k, std::int64_t least) {
        std::vector<std::int64_t> before;
        for (std::size_t t = 0; t < m.size(); ++t) {
            before.push_back(classes_[t].multiplier);
            classes_[t].multiplier = std::llround(m[t] * static_cast<double>(grain));
        }
        const std::int64_t now = judge(0, useful_, k).bound;
        if (now < least) {
            return now;
        }
        for (std::size_t t = 0; t < m.size(); ++t) {
            classes_[t].multiplier = before[t];
        }
        return least;
    }

    std::int64_t most_nodes_;
    std::vector<target_class> classes_;
    std::array<std::size_t, most_items> uses_{};
    item_set useful_ = 0;
    std::int64_t always_ = 0;
    // one search
    std::int64_t wanted_ = 0;  ///< what a choice must meet to be taken
    std::int64_t nodes_ = 0;
    std::int64_t open_ = 0;  ///< largest bound that was left unsearched
    bool first_will_do_ = false;
    bool enough_ = false;
    cover_choice found_;
};

}  // namespace

std::int64_t met_by(const cover_problem& p, item_set have) {
    std::int64_t sum = 0;
    for (const cover_target& t : p.targets) {
        const bool met = std::any_of(t.ways.begin(), t.ways.end(),
                                     [&](item_set way) { return inside(way, have); });
        sum += met ? t.weight : 0;
    }
    return sum;
}

std::vector<cover_choice> best_stock(const cover_problem& p, std::size_t most,
                                     std::int64_t most_nodes) {
    if (p.items > most_items) {
        throw error(errc::range, "at most " + std::to_string(most_items) +
                                     " things can be chosen from; found " +
                                     std::to_string(p.items));
    }
    stock_search search(p, most_nodes);
    std::vector<cover_choice> out{{0, search.always(), search.always()}};
    for (std::size_t k = 1; k <= most; ++k) {
        cover_choice c = search.best(k, out.back());
        if (c.met > out.back().met) {
            c.items = search.first(k, c).items;
        }
        out.push_back(c);
    }
    return out;
}

}  // namespace pelage
