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

std::int64_t lapse_price(const diary_problem& p, const diary_dog& d, int due) {
    const std::int64_t left = std::max(p.last - due, 0) + 1;
    const std::int64_t sooner =
        std::max(1, std::min(d.full_clock, d.between_clock.value_or(d.full_clock)));
    return (in_mmin(p.late_full) + in_mmin(p.late_between)) * (left + p.most_late) +
           (in_mmin(d.full) + in_mmin(p.trip)) * (1 + left / sooner);
}

std::int64_t end_price(const diary_problem& p, const diary_dog& d, int full, int visit) {
    const std::int64_t trip = in_mmin(p.trip);
    std::int64_t price = (in_mmin(d.full) + trip) * (p.last - full) / d.full_clock;
    if (d.between_clock && *d.between_clock < d.full_clock) {
        // of the visits in a full groom's interval the last is the full groom itself
        price += (in_mmin(d.between) + trip) * (p.last - visit) / *d.between_clock *
                 (d.full_clock - *d.between_clock) / d.full_clock;
    }
    return price;
}

int full_before(const diary_dog& d) {
    return d.full_due - d.full_clock;
}

int visit_before(const diary_dog& d) {
    return d.between_clock ? d.between_due - *d.between_clock : -d.visit_ago;
}

path_search::path_search(const diary_problem& p)
    : p_(p), from_(static_cast<std::size_t>(p.last) + 2) {}

int path_search::soonest(const state& s) const {
    const int full = s.full + dog_->full_clock;
    return dog_->between_clock ? std::min(full, s.visit + *dog_->between_clock) : full;
}

path_search::state path_search::after(const state& s, const choice& c) const {
    const int on = open_[c.at].on;
    return c.full ? state{on, on, c.at + 1, c.at + 1} : state{s.full, on, s.row, c.at + 1};
}

path_search::choice path_search::best(const state& s) {
    const int due_full = s.full + dog_->full_clock;
    const int due = soonest(s);
    choice least{lapse_price(p_, *dog_, due), 0, true, true};
    const bool between = due < due_full;
    const int last_visit = s.column == 0 ? -dog_->visit_ago : s.visit;
    const int first = std::max({last_visit + p_.gap, due - p_.most_early, 0});
    const int end = std::min(p_.last, std::max(due, 0) + p_.most_late);
    for (std::size_t i = first <= p_.last ? from_[static_cast<std::size_t>(first)] : open_.size();
         i < open_.size() && open_[i].on <= end; ++i) {
        const open_day& n = open_[i];
        const std::int64_t late = late_price(p_, n.on - due_full, between ? n.on - due : 0);
        const std::int64_t full = n.full + late;
        if (full < least.cost) {
            const std::int64_t sum = full + cost({n.on, n.on, i + 1, i + 1});
            least = sum < least.cost ? choice{sum, i, true, false} : least;
        }
        if (between && n.on < due_full && n.between + late < least.cost) {
            const std::int64_t sum = n.between + late + cost({s.full, n.on, s.row, i + 1});
            least = sum < least.cost ? choice{sum, i, false, false} : least;
        }
    }
    return least;
}

std::int64_t path_search::cost(const state& s) {
    if (soonest(s) >= p_.last) {
        return end_price(p_, *dog_, s.full, s.visit);
    }
    const std::size_t at = s.row * (open_.size() + 1) + s.column;
    if (known_[at] == not_yet) {
        const std::int64_t found = best(s).cost;
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
    state s{full_before(d), visit_before(d), 0, 0};
    dog_path out;
    out.cost = cost(s);
    while (soonest(s) < p_.last) {
        const choice next = best(s);
        if (next.lapsed) {
            out.lapse = soonest(s);
            break;
        }
        out.stops.push_back({open_[next.at].on, next.full});
        s = after(s, next);
    }
    return out;
}

}  // namespace pelage::planning
