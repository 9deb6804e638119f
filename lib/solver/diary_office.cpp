#include "solver/diary_office.hpp"

#include <cmath>
#include <iterator>
#include <numeric>
#include <utility>

namespace pelage::planning {

namespace {

std::int64_t rounded_price(double price) {
    return static_cast<std::int64_t>(std::llround(price * static_cast<double>(price_unit)));
}

}  // namespace

template <class Fits>
void office::price_days(const diary_dog& d, const prices& at, double share, Fits fits) {
    const std::int64_t trip = in_mmin(p_.trip);
    const auto of = [&](std::size_t day, std::int64_t takes) {
        if (takes == 0 || !can(d, day) || !fits(day, takes)) {
            return no_way;
        }
        // rounded one by one, as they are paid back
        const auto whole = rounded_price(at.day[day] * share) +
                           (d.groomer ? rounded_price(at.own[*d.groomer][day] * share) : 0);
        return takes + trip + whole * takes / price_unit;
    };
    for (std::size_t day = 0; day < days_; ++day) {
        scratch_.full[day] = of(day, in_mmin(d.full));
        scratch_.between[day] = d.comes_between() ? of(day, in_mmin(d.between)) : no_way;
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
        const std::int64_t whole = rounded_price(price);
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

/// Why no day was found, the plainest reason first.
lapse_reason office::reason(const diary_dog& d, int due) const {
    bool common = false;
    bool fits_at_all = false;
    for (int n = std::max(0, due - p_.most_early);
         n <= std::min(p_.last, std::max(due, 0) + p_.most_late); ++n) {
        const auto day = static_cast<std::size_t>(n);
        for (std::size_t g = 0; g < p_.hours.size() && can(d, day); ++g) {
            const std::int64_t has = std::min(in_mmin(p_.hours[g][day]), room_[day]);
            common = common || (d.groomer.value_or(g) == g && has > 0);
            fits_at_all = fits_at_all || (d.groomer.value_or(g) == g && has >= in_mmin(d.full));
        }
    }
    return !common        ? lapse_reason::no_common_day
           : !fits_at_all ? lapse_reason::longer_than_a_day
                          : lapse_reason::full_book;
}

std::int64_t office::true_cost(const diary_dog& d, const dog_path& path) const {
    std::int64_t sum = path.lapse ? lapse_price(p_, d, *path.lapse) : 0;
    running_clocks c = clocks_before(d);
    for (const stop& s : path.stops) {
        const std::optional<int> other = due_between(d, c);
        sum += in_mmin(s.full ? d.full : d.between) + in_mmin(p_.trip) +
               late_price(p_, s.on - due_full(d, c), other ? s.on - *other : 0);
        c = clocks_after(c, s);
    }
    return path.lapse ? sum : sum + end_price(p_, d, c);
}

void office::put(left_over& left, std::size_t dog, const dog_path& path, diary& out) const {
    const diary_dog& d = p_.dogs[dog];
    running_clocks c = clocks_before(d);
    for (const stop& s : path.stops) {
        const std::int64_t takes = in_mmin(s.full ? d.full : d.between);
        const auto day = static_cast<std::size_t>(s.on);
        const std::size_t g = groomer(left, d, day, takes).value();
        left.take(g, day, takes);
        out.visits.push_back({dog, s.on, s.full, g, s.on - due_first(d, c)});
        c = clocks_after(c, s);
    }
    if (path.lapse) {
        out.lapses.push_back({dog, *path.lapse, reason(d, *path.lapse)});
    }
    out.cost += mmin(true_cost(d, path));
}

diary office::place(const prices& at) {
    std::vector<std::size_t> order(p_.dogs.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto due = [&](std::size_t i) {
        const diary_dog& d = p_.dogs[i];
        return due_first(d, clocks_before(d));
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
