// The cheapest calendar.
//
//   V(s)          = least cost from the end of a full groom on day s to the last day = W_s(s, s, s)
//   W_s(d, b, t)  = least cost after a visit on day d of the interval begun on day s, last brushed on
//                   day b and last tidied on day t:
//                   0 if no clock runs out before the last day, else the least over the days n from
//                   d + gap to the soonest deadline, n open, of
//                     cost(full) + V(n),         cost(tidy) + W_s(n, b, n),
//                     cost(bath) + W_s(n, n, t), cost(bath and tidy) + W_s(n, n, n)
//
// A bath or a tidy is tried only where its clock runs out before the full groom is due: others cost
// and change nothing. d is the later of b and t, so W_s is two tables of pairs of days.
#include <algorithm>
#include <cstdint>
#include <limits>

#include <pelage/solver/visit_schedule.hpp>

namespace pelage {

namespace {

constexpr std::int64_t no_way = std::numeric_limits<std::int64_t>::max() / 4;
constexpr std::int64_t not_yet = -1;
constexpr std::size_t all_kinds = visit_work_names.size();
constexpr int far_off = std::numeric_limits<int>::max() / 2;

std::int64_t price(const schedule_problem& p, visit_work w) {
    return in_mmin(p.costs[static_cast<std::size_t>(w)]);
}

int last_visit(const last_visits& v) {
    return std::max(v.full, std::max(v.brush, v.tidy));
}

last_visits after(last_visits v, const booking& b) {
    if (b.what == visit_work::full_groom) {
        return {b.on, b.on, b.on};
    }
    if (brushes(b.what)) {
        v.brush = b.on;
    }
    if (tidies(b.what)) {
        v.tidy = b.on;
    }
    return v;
}

/// What may come next: kinds that stop a clock which runs out before the full groom is due.
class next_kinds {
  public:
    next_kinds(const deadlines& d, int last)
        : brush_(d.brush && *d.brush < std::min(d.full, last)),
          tidy_(d.tidy && *d.tidy < std::min(d.full, last)) {}
    [[nodiscard]] bool may(visit_work w) const {
        return w == visit_work::full_groom || ((brush_ || !brushes(w)) && (tidy_ || !tidies(w)));
    }

  private:
    bool brush_;
    bool tidy_;
};

class dates_search {
  public:
    explicit dates_search(const schedule_problem& p)
        : p_(p), after_full_(static_cast<std::size_t>(p.last) + 1, no_way) {}

    std::optional<std::vector<booking>> run() {
        for (int s = p_.last; s >= 0; --s) {
            if (p_.open[static_cast<std::size_t>(s)]) {
                begin(s);
                after_full_[static_cast<std::size_t>(s)] = cost({s, s, s});
            }
        }
        last_visits v{-p_.full_ago, -p_.brush_ago, -p_.tidy_ago};
        begin(v.full);
        std::int64_t left = cost(v);
        if (left >= no_way) {
            return std::nullopt;
        }
        std::vector<booking> out;
        while (left > 0) {
            const booking b = best_next(v, left);
            left -= price(p_, b.what);
            v = after(v, b);
            out.push_back(b);
            if (b.what == visit_work::full_groom) {
                begin(b.on);
            }
        }
        return out;
    }

  private:
    /// Empties the tables for the interval begun on day `s`.
    void begin(int s) {
        base_ = std::max(s, 0);
        const int due = std::min(deadlines_after(p_, {s, s, s}).full, p_.last);
        width_ = static_cast<std::size_t>(std::max(due - base_, 0)) + 2;
        brushed_.assign(width_ * width_, not_yet);
        tidied_.assign(width_ * width_, not_yet);
    }

    /// Before the first visit booked there is one day of each kind, all the days before being one.
    [[nodiscard]] std::size_t index(int day) const {
        return day < base_ ? 0 : static_cast<std::size_t>(day - base_) + 1;
    }

    std::int64_t& slot(const last_visits& v) {
        std::vector<std::int64_t>& table = v.brush >= v.tidy ? brushed_ : tidied_;
        return table[index(std::max(v.brush, v.tidy)) * width_ + index(std::min(v.brush, v.tidy))];
    }

    std::int64_t cost_with(const last_visits& v, const booking& b) {
        const std::int64_t then = b.what == visit_work::full_groom
                                      ? after_full_[static_cast<std::size_t>(b.on)]
                                      : cost(after(v, b));
        return price(p_, b.what) + then;
    }

    std::int64_t cost(const last_visits& v) {
        if (slot(v) != not_yet) {
            return slot(v);
        }
        const deadlines due = deadlines_after(p_, v);
        std::int64_t least = due.soonest() >= p_.last ? 0 : no_way;
        const next_kinds kinds(due, p_.last);
        for (int n = std::max(last_visit(v) + p_.gap, 0); least > 0 && n <= due.soonest(); ++n) {
            for (std::size_t k = 0; p_.open[static_cast<std::size_t>(n)] && k < all_kinds; ++k) {
                const booking b{n, static_cast<visit_work>(k)};
                if (kinds.may(b.what)) {
                    least = std::min(least, cost_with(v, b));
                }
            }
        }
        return slot(v) = std::min(least, no_way);
    }

    /// The visit that a cheapest calendar of cost `left` has next: the latest such day, then the first
    /// such kind.
    booking best_next(const last_visits& v, std::int64_t left) {
        const deadlines due = deadlines_after(p_, v);
        const next_kinds kinds(due, p_.last);
        for (int n = due.soonest(); n >= std::max(last_visit(v) + p_.gap, 0); --n) {
            for (std::size_t k = 0; p_.open[static_cast<std::size_t>(n)] && k < all_kinds; ++k) {
                const booking b{n, static_cast<visit_work>(k)};
                if (kinds.may(b.what) && cost_with(v, b) == left) {
                    return b;
                }
            }
        }
        return {p_.last, visit_work::full_groom};  // not reached: `left` is what one of them costs
    }

    const schedule_problem& p_;
    std::vector<std::int64_t> after_full_;
    int base_ = 0;  ///< the interval's first day, or day 0
    std::size_t width_ = 0;
    std::vector<std::int64_t> brushed_;  ///< [day of the brush][day of the tidy before or with it]
    std::vector<std::int64_t> tidied_;   ///< [day of the tidy][day of the brush before it]
};

}  // namespace

int deadlines::soonest() const {
    return std::min(full, std::min(brush.value_or(far_off), tidy.value_or(far_off)));
}

std::optional<int> first_open(const schedule_problem& p) {
    const int ago = std::min(p.full_ago, std::min(p.brush_ago, p.tidy_ago));
    for (int n = std::max(0, p.gap - ago); n <= p.last; ++n) {
        if (p.open[static_cast<std::size_t>(n)]) {
            return n;
        }
    }
    return std::nullopt;
}

deadlines deadlines_after(const schedule_problem& p, const last_visits& v) {
    const bool first = v.full == -p.full_ago;
    const visit_clocks& c = first ? p.first : p.later;
    deadlines d;
    d.full = v.full + c.full;
    if (c.brush) {
        d.brush = std::max(v.brush + *c.brush, v.full + c.length);
    }
    if (c.tidy) {
        d.tidy = v.tidy + *c.tidy;
    }
    // what has run out before anybody could come is made good on the first day there is
    if (first && p.full_ago > 0) {
        const int grace = first_open(p).value_or(0);
        d.full = std::max(d.full, grace);
        d.brush = d.brush ? std::optional{std::max(*d.brush, grace)} : d.brush;
        d.tidy = d.tidy ? std::optional{std::max(*d.tidy, grace)} : d.tidy;
    }
    for (const fresh_by& f : p.fresh) {
        if (f.on > v.full + f.within) {
            d.full = std::min(d.full, f.on - 1);
        }
    }
    return d;
}

work cost_of(const schedule_problem& p, const std::vector<booking>& visits) {
    work sum{};
    for (const booking& b : visits) {
        sum += p.costs[static_cast<std::size_t>(b.what)];
    }
    return sum;
}

bool keeps(const schedule_problem& p, const std::vector<booking>& visits) {
    last_visits v{-p.full_ago, -p.brush_ago, -p.tidy_ago};
    for (const booking& b : visits) {
        const bool in_time = b.on >= std::max(0, last_visit(v) + p.gap) &&
                             b.on <= std::min(p.last, deadlines_after(p, v).soonest());
        if (!in_time || !p.open[static_cast<std::size_t>(b.on)]) {
            return false;
        }
        v = after(v, b);
    }
    return deadlines_after(p, v).soonest() >= p.last;
}

std::optional<std::vector<booking>> cheapest(const schedule_problem& p) {
    return dates_search(p).run();
}

}  // namespace pelage
