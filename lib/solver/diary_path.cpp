//   W(s, v) = least cost after a visit on day v, the last full groom on day s
//           = what has run of the clocks, if none runs out before the last day, else the least of
//             full(n) + late + W(n, n),   between(n) + late + W(s, n),   never: lapse
//   over the days n within reach of the sooner clock. Prices are no less than 0, so days so late that
//   lateness alone costs more than the best found end the search.
#include "solver/diary_path.hpp"

#include <algorithm>

namespace pelage::planning {

namespace {

constexpr std::int64_t not_yet = -1;

}  // namespace

std::int64_t late_price(const diary_problem& p, int late_full, int late_between) {
    return in_mmin(p.late_full) * std::max(late_full, 0) +
           in_mmin(p.late_between) * std::max(late_between, 0);
}

running_clocks clocks_before(const diary_dog& d) {
    return {d.full_due - d.full_clock, -d.visit_ago, false};
}

running_clocks clocks_after(const running_clocks& c, const stop& s) {
    return {s.full ? s.on : c.full, s.on, true};
}

int due_full(const diary_dog& d, const running_clocks& c) {
    return c.full + d.full_clock;
}

std::optional<int> due_between(const diary_dog& d, const running_clocks& c) {
    if (!d.comes_between()) {
        return std::nullopt;
    }
    if (!c.begun) {
        return d.between_due;
    }
    int due = std::numeric_limits<int>::max();
    due = d.brush_clock ? std::max(c.visit + *d.brush_clock, c.full + d.length_clock) : due;
    return d.tidy_clock ? std::min(due, c.visit + *d.tidy_clock) : due;
}

int due_first(const diary_dog& d, const running_clocks& c) {
    const int full = due_full(d, c);
    return std::min(full, due_between(d, c).value_or(full));
}

namespace {

/// Days from visit to visit where all clocks run from both.
int shortest_clock(const diary_dog& d) {
    int n = d.full_clock;
    n = d.brush_clock ? std::min(n, std::max(*d.brush_clock, d.length_clock)) : n;
    return d.tidy_clock ? std::min(n, *d.tidy_clock) : n;
}

}  // namespace

std::int64_t lapse_price(const diary_problem& p, const diary_dog& d, int due) {
    const std::int64_t left = std::max(p.last - due, 0) + 1;
    return (in_mmin(p.late_full) + in_mmin(p.late_between)) * (left + p.most_late) +
           (in_mmin(d.full) + in_mmin(p.trip)) * (1 + left / shortest_clock(d));
}

std::int64_t end_price(const diary_problem& p, const diary_dog& d, const running_clocks& c) {
    const std::int64_t full = in_mmin(d.full) + in_mmin(p.trip);
    const std::int64_t between = in_mmin(d.between) + in_mmin(p.trip);
    const int clock = shortest_clock(d);
    // in a full groom's interval so many visits lie between, and so many of them are done
    const int all = (d.full_clock - 1) / clock;
    const int done = std::clamp((c.visit - c.full + clock / 2) / clock, 0, all);
    const std::int64_t run =
        (full + between * all) * std::max(0, p.last - c.full) / d.full_clock - between * done;
    return std::max<std::int64_t>(0, run);
}

path_search::path_search(const diary_problem& p)
    : p_(p),
      late_full_(in_mmin(p.late_full)),
      late_between_(in_mmin(p.late_between)),
      from_(static_cast<std::size_t>(p.last) + 2) {}

path_search::state path_search::after(const state& s, const choice& c) const {
    return {clocks_after(s.clocks, {open_[c.at].on, c.full}), c.full ? c.at + 1 : s.row, c.at + 1};
}

path_search::choice path_search::best(const state& s) {
    const int full_by = due_full(*dog_, s.clocks);
    const std::optional<int> other = due_between(*dog_, s.clocks);
    const int due = std::min(full_by, other.value_or(full_by));
    choice least{lapse_price(p_, *dog_, due), 0, true, true};
    const int other_by = other.value_or(std::numeric_limits<int>::max());
    const int between_until = due < full_by ? full_by : 0;
    const int first = std::max({s.clocks.visit + p_.gap, due - p_.most_early, 0});
    const int end = std::min(p_.last, std::max(due, 0) + p_.most_late);
    // what is known is looked up before anything is reckoned: most of it is
    const std::size_t width = open_.size() + 1;
    const std::int64_t* const row = known_.data() + s.row * width;
    const auto rest = [&](std::int64_t known, std::size_t at, bool full) {
        return known != not_yet ? known : cost(after(s, {0, at, full, false}));
    };
    for (std::size_t i = first <= p_.last ? from_[static_cast<std::size_t>(first)] : open_.size();
         i < open_.size() && open_[i].on <= end; ++i) {
        const open_day& n = open_[i];
        const std::int64_t late = (n.on > full_by ? late_full_ * (n.on - full_by) : 0) +
                                  (n.on > other_by ? late_between_ * (n.on - other_by) : 0);
        if (n.full + late < least.cost) {
            const std::int64_t sum = n.full + late + rest(known_[(i + 1) * width + i + 1], i, true);
            least = sum < least.cost ? choice{sum, i, true, false} : least;
        }
        if (n.on < between_until && n.between + late < least.cost) {
            const std::int64_t sum = n.between + late + rest(row[i + 1], i, false);
            least = sum < least.cost ? choice{sum, i, false, false} : least;
        }
    }
    return least;
}

std::int64_t path_search::cost(const state& s) {
    const std::size_t at = s.row * (open_.size() + 1) + s.column;
    if (known_[at] == not_yet) {
        const std::int64_t found =
            due_first(*dog_, s.clocks) >= p_.last ? end_price(p_, *dog_, s.clocks) : best(s).cost;
        known_[at] = found;
    }
    return known_[at];
}

dog_path path_search::run(const diary_dog& d, const day_prices& prices) {
    dog_ = &d;
    open_.clear();
    for (int n = 0; n <= p_.last; ++n) {
        const auto at = static_cast<std::size_t>(n);
        from_[at] = open_.size();
        if (prices.full[at] < no_way || prices.between[at] < no_way) {
            open_.push_back({n, prices.full[at], prices.between[at]});
        }
    }
    known_.assign((open_.size() + 1) * (open_.size() + 1), not_yet);
    state s{clocks_before(d), 0, 0};
    dog_path out;
    out.cost = cost(s);
    while (due_first(d, s.clocks) < p_.last) {
        const choice next = best(s);
        if (next.lapsed) {
            out.lapse = due_first(d, s.clocks);
            break;
        }
        out.stops.push_back({open_[next.at].on, next.full});
        s = after(s, next);
    }
    return out;
}

}  // namespace pelage::planning
