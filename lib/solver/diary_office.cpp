#include "solver/diary_office.hpp"

#include <cmath>
#include <iterator>
#include <numeric>
#include <utility>

namespace pelage::planning {

template <class Fits>
void office::price_days(const diary_dog& d, const prices& at, double share, Fits fits) {
    const std::int64_t trip = in_mmin(p_.trip);
    const auto of = [&](std::size_t day, std::int64_t takes) {
        if (takes == 0 || !can(d, day) || !fits(day, takes)) {
            return no_way;
        }
        const double price = at.day[day] + (d.groomer ? at.own[*d.groomer][day] : 0.0);
        const auto whole = static_cast<std::int64_t>(std::llround(price * share * price_unit));
        return takes + trip + whole * takes / price_unit;
    };
    for (std::size_t day = 0; day < days_; ++day) {
        scratch_.full[day] = of(day, in_mmin(d.full));
        scratch_.between[day] = d.between_clock ? of(day, in_mmin(d.between)) : no_way;
    }
}

office::priced office::price(const prices& at) {
    priced out;
    out.over.resize(days_);
    out.own_over.assign(p_.hours.size(), minutes_by_day(days_, 0));
    for (const diary_dog& d : p_.dogs) {
        price_days(d, at, 1.0,
                   [&](std::size_t day, std::int64_t takes) { return fits(free_, d, day, takes); });
        const dog_path path = path_.run(d, scratch_);
        out.bound += path.cost;
        if (alone_.size() < p_.dogs.size()) {
            alone_.push_back(path.cost);  // the first prices are none
        }
        for (const stop& s : path.stops) {
            const std::int64_t takes = in_mmin(s.full ? d.full : d.between);
            out.over[static_cast<std::size_t>(s.on)] += takes;
            if (d.groomer) {
                out.own_over[*d.groomer][static_cast<std::size_t>(s.on)] += takes;
            }
        }
    }
    const auto pay_back = [&](double price, std::int64_t room, std::int64_t& over) {
        const auto whole = static_cast<std::int64_t>(std::llround(price * price_unit));
        out.bound -= (whole * room + price_unit - 1) / price_unit;
        over -= room;
    };
    for (std::size_t day = 0; day < days_; ++day) {
        pay_back(at.day[day], room_[day], out.over[day]);
        for (std::size_t g = 0; g < p_.hours.size(); ++g) {
            pay_back(at.own[g][day], in_mmin(p_.hours[g][day]), out.own_over[g][day]);
        }
    }
    return out;
}

office::left_over office::all_room() const {
    left_over left;
    for (const auto& one : p_.hours) {
        minutes_by_day& mine = left.hours.emplace_back();
        std::transform(one.begin(), one.end(), std::back_inserter(mine), in_mmin);
    }
    left.tables = room_;
    left.most.resize(days_);
    for (const minutes_by_day& one : left.hours) {
        std::transform(one.begin(), one.end(), left.most.begin(), left.most.begin(),
                       [](std::int64_t a, std::int64_t b) { return std::max(a, b); });
    }
    return left;
}

/// Who has room for it, the fullest first, so that long appointments still find a place.
std::optional<std::size_t> office::groomer(const left_over& left, const diary_dog& d,
                                           std::size_t day, std::int64_t takes) const {
    std::optional<std::size_t> best;
    if (left.tables[day] < takes) {
        return best;
    }
    for (std::size_t g = 0; g < left.hours.size(); ++g) {
        if (d.groomer.value_or(g) == g && left.hours[g][day] >= takes &&
            (!best || left.hours[g][day] < left.hours[*best][day])) {
            best = g;
        }
    }
    return best;
}

/// Whether the dog's owner and a groomer share a day on which it might have come, had there been room.
bool office::in_reach(const diary_dog& d, int due) const {
    const std::int64_t least = in_mmin(d.between_clock ? std::min(d.full, d.between) : d.full);
    for (int n = std::max(0, due - p_.most_early);
         n <= std::min(p_.last, std::max(due, 0) + p_.most_late); ++n) {
        const auto day = static_cast<std::size_t>(n);
        for (std::size_t g = 0; g < p_.hours.size() && can(d, day); ++g) {
            if (d.groomer.value_or(g) == g && in_mmin(p_.hours[g][day]) >= least &&
                room_[day] >= least) {
                return true;
            }
        }
    }
    return false;
}

std::int64_t office::true_cost(const diary_dog& d, const dog_path& path) const {
    std::int64_t sum = path.lapse ? lapse_price(p_, d, *path.lapse) : 0;
    int full = full_before(d);
    int visit = visit_before(d);
    for (const stop& s : path.stops) {
        const int due_full = full + d.full_clock;
        const int due = d.between_clock ? std::min(due_full, visit + *d.between_clock) : due_full;
        sum += in_mmin(s.full ? d.full : d.between) + in_mmin(p_.trip) +
               late_price(p_, s.on - due_full, due < due_full ? s.on - due : 0);
        full = s.full ? s.on : full;
        visit = s.on;
    }
    return path.lapse ? sum : sum + end_price(p_, d, full, visit);
}

void office::put(left_over& left, std::size_t dog, const dog_path& path, diary& out) const {
    const diary_dog& d = p_.dogs[dog];
    int full = full_before(d);
    int visit = visit_before(d);
    for (const stop& s : path.stops) {
        const std::int64_t takes = in_mmin(s.full ? d.full : d.between);
        const auto day = static_cast<std::size_t>(s.on);
        const std::size_t g = groomer(left, d, day, takes).value();
        left.take(g, day, takes);
        const int due = std::min(full + d.full_clock,
                                 d.between_clock ? visit + *d.between_clock : full + d.full_clock);
        out.visits.push_back({dog, s.on, s.full, g, s.on - due});
        full = s.full ? s.on : full;
        visit = s.on;
    }
    if (path.lapse) {
        out.lapses.push_back({dog, *path.lapse, !in_reach(d, *path.lapse)});
    }
    out.cost += mmin(true_cost(d, path));
}

diary office::place(const prices& at) {
    std::vector<std::size_t> order(p_.dogs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto due = [&](std::size_t i) {
        const diary_dog& d = p_.dogs[i];
        return d.between_clock ? std::min(d.full_due, d.between_due) : d.full_due;
    };
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return due(a) < due(b); });
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return blame_[a] > blame_[b]; });
    diary out;
    left_over left = free_;
    for (const std::size_t i : order) {
        const diary_dog& d = p_.dogs[i];
        price_days(d, at, 1.0,
                   [&](std::size_t day, std::int64_t takes) { return fits(left, d, day, takes); });
        const dog_path path = path_.run(d, scratch_);
        put(left, i, path, out);
        blame_[i] = blame_[i] / 2 + true_cost(d, path) - alone_[i];
    }
    return out;
}

/// Takes each dog out in turn and puts it anew, where that costs no more.
void office::better(diary& d, const prices& at, double share) {
    std::vector<std::vector<diary_visit>> mine(p_.dogs.size());
    std::vector<std::optional<diary_lapse>> lapsed(p_.dogs.size());
    left_over left = free_;
    const auto take = [&](const diary_visit& v, std::int64_t sign) {
        const diary_dog& one = p_.dogs[v.dog];
        const std::int64_t takes = sign * in_mmin(v.full ? one.full : one.between);
        left.take(v.groomer, static_cast<std::size_t>(v.on), takes);
    };
    for (const diary_visit& v : d.visits) {
        mine[v.dog].push_back(v);
        take(v, 1);
    }
    for (const diary_lapse& l : d.lapses) {
        lapsed[l.dog] = l;
    }
    diary out;
    for (std::size_t i = 0; i < p_.dogs.size(); ++i) {
        const diary_dog& one = p_.dogs[i];
        auto& visits = mine[i];
        std::sort(visits.begin(), visits.end(),
                  [](const diary_visit& a, const diary_visit& b) { return a.on < b.on; });
        dog_path old;
        for (const diary_visit& v : visits) {
            old.stops.push_back({v.on, v.full});
            take(v, -1);
        }
        old.lapse = lapsed[i] ? std::optional{lapsed[i]->due} : std::nullopt;
        price_days(one, at, share, [&](std::size_t day, std::int64_t takes) {
            return fits(left, one, day, takes);
        });
        const dog_path anew = path_.run(one, scratch_);
        if (share > 0.0 || true_cost(one, anew) < true_cost(one, old)) {
            put(left, i, anew, out);
            continue;
        }
        for (const diary_visit& v : visits) {
            take(v, 1);
            out.visits.push_back(v);
        }
        if (lapsed[i]) {
            out.lapses.push_back(*lapsed[i]);
        }
        out.cost += mmin(true_cost(one, old));
    }
    d = std::move(out);
}

}  // namespace pelage::planning
