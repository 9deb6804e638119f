#include <algorithm>
#include <tuple>
#include <utility>

#include <pelage/base/error.hpp>
#include <pelage/solver/diary.hpp>

#include "solver/diary_office.hpp"

namespace pelage {

namespace {

using planning::office;
using planning::prices;

constexpr int farthest = 36500;  // days: a hundred years
constexpr std::int64_t most_work = 1'000'000'000;

bool is_work(const work& w) {
    return in_mmin(w) >= 0 && in_mmin(w) <= most_work;
}

bool is_days(int n, int least) {
    return n >= least && n <= farthest;
}

bool is_sound(const diary_dog& d, const diary_problem& p) {
    return is_days(d.full_clock, 1) && is_days(d.brush_clock.value_or(1), 1) &&
           is_days(d.tidy_clock.value_or(1), 1) && is_days(d.length_clock, 0) &&
           is_days(d.full_due, -farthest) && is_days(d.between_due, -farthest) &&
           is_days(d.visit_ago, 0) && in_mmin(d.full) > 0 && is_work(d.full) &&
           is_work(d.between) && (!d.comes_between() || in_mmin(d.between) > 0) &&
           d.groomer.value_or(0) < std::max<std::size_t>(p.hours.size(), 1);
}

void check(const diary_problem& p) {
    bool sound = is_days(p.last, 0) && is_days(p.gap, 1) && is_days(p.most_early, 0) &&
                 is_days(p.most_late, 0) && is_work(p.trip) && is_work(p.late_full) &&
                 is_work(p.late_between);
    const auto by_day = [&](const std::vector<work>& w) {
        return w.size() == static_cast<std::size_t>(p.last) + 1 &&
               std::all_of(w.begin(), w.end(), is_work);
    };
    sound = sound && (p.tables.empty() || by_day(p.tables)) &&
            std::all_of(p.hours.begin(), p.hours.end(), by_day) &&
            std::all_of(p.dogs.begin(), p.dogs.end(),
                        [&](const diary_dog& d) { return is_sound(d, p); });
    if (!sound) {
        throw error(errc::range, "a diary needs days, clocks from 1, minutes over 0, hours by day");
    }
}

/// Moves the prices where days run over; how far hangs on how far the bound is from the best diary.
void raise(prices& at, const office::priced& found, double far, double step) {
    double square = 0.0;
    const auto weigh = [&](double price, std::int64_t over) {
        const double o = static_cast<double>(over);
        return price > 0.0 || over > 0 ? o : 0.0;
    };
    const auto each = [&](auto&& f) {
        for (std::size_t d = 0; d < at.day.size(); ++d) {
            f(at.day[d], found.over[d]);
            for (std::size_t g = 0; g < at.own.size(); ++g) {
                f(at.own[g][d], found.own_over[g][d]);
            }
        }
    };
    each([&](double& price, std::int64_t over) {
        square += weigh(price, over) * weigh(price, over);
    });
    if (square <= 0.0) {
        return;
    }
    each([&](double& price, std::int64_t over) {
        price = std::max(0.0, price + step * far / square * weigh(price, over));
    });
}

void in_order(diary& d) {
    std::sort(d.visits.begin(), d.visits.end(), [](const diary_visit& a, const diary_visit& b) {
        return std::tie(a.on, a.groomer, a.dog) < std::tie(b.on, b.groomer, b.dog);
    });
    std::sort(d.lapses.begin(), d.lapses.end(), [](const diary_lapse& a, const diary_lapse& b) {
        return std::tie(a.due, a.dog) < std::tie(b.due, b.dog);
    });
}

}  // namespace

double diary::gap() const {
    return in_mmin(cost) > 0
               ? 1.0 - static_cast<double>(in_mmin(bound)) / static_cast<double>(in_mmin(cost))
               : 0.0;
}

namespace {

constexpr double near_enough = 0.005;  ///< a gap: the minutes themselves are not known as well
constexpr double late_enough = 0.02;   ///< what is near enough once it was sought for long
constexpr int sought_long = 8;         ///< rounds

bool far_from(std::int64_t bound, const diary& best, bool any, double near = near_enough) {
    const auto cost = static_cast<double>(in_mmin(best.cost));
    return !any || cost - static_cast<double>(bound) > near * cost;
}

/// Where more is due than the hours hold, a price on every day alike is a better beginning than none: each
/// is tried until one betters the bound no more.
void begin_evenly(office& o, prices& at, std::int64_t& bound) {
    for (const double price : {0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0}) {
        prices even = at;
        std::fill(even.day.begin(), even.day.end(), price);
        const std::int64_t found = o.price(even).bound;
        if (found <= bound) {
            return;
        }
        bound = found;
        at = std::move(even);
    }
}

}  // namespace

diary diary_of(const diary_problem& p, int rounds, const diary_listener& told) {
    check(p);
    office o(p);
    const auto n = static_cast<std::size_t>(p.last) + 1;
    const prices none{
        std::vector<double>(n, 0.0),
        std::vector<std::vector<double>>(p.hours.size(), std::vector<double>(n, 0.0))};
    prices at = none;
    diary best;
    bool any = false;
    const auto keep = [&](diary d) {
        for (const double share : {1.0, 0.5, 0.0, 0.0, 0.0}) {
            o.better(d, at, share);
            if (!any || d.cost < best.cost) {
                best = d;
                any = true;
            }
        }
    };
    std::int64_t bound = std::max<std::int64_t>(0, o.price(at).bound);
    for (int turn = 0; turn < 2 && far_from(bound, best, any); ++turn) {
        keep(o.place(at));
    }
    if (far_from(bound, best, any)) {
        begin_evenly(o, at, bound);
    }
    double reach = 0.05;  // how far above the best bound the next one is sought, as a share of it
    int stale = 0;
    const auto seek_on = [&](int round) {
        const double near = round < sought_long ? near_enough : late_enough;
        return round < rounds && far_from(bound, best, any, near);
    };
    for (int round = 0; seek_on(round); ++round) {
        if (told) {
            told(round + 1, rounds);
        }
        const office::priced found = o.price(at);
        if (found.bound > bound) {
            bound = found.bound;
            stale = 0;
        } else if (++stale == 2) {
            reach /= 2.0;
            stale = 0;
        }
        const double aim = std::min(static_cast<double>(bound) * (1.0 + reach),
                                    static_cast<double>(in_mmin(best.cost)));
        raise(at, found, aim - static_cast<double>(found.bound), 1.0);
        if (round % 8 == 7) {
            keep(o.place(at));
        }
    }
    if (far_from(bound, best, any, late_enough)) {
        keep(o.place(at));
    }
    best.bound = mmin(bound);
    in_order(best);
    return best;
}

std::vector<std::size_t> broken_dogs(const diary_problem& p, const diary& d) {
    std::vector<std::size_t> out;
    std::vector<std::vector<std::int64_t>> taken(
        p.hours.size(), std::vector<std::int64_t>(static_cast<std::size_t>(p.last) + 1));
    std::vector<std::vector<diary_visit>> mine(p.dogs.size());
    for (const diary_visit& v : d.visits) {
        const diary_dog& one = p.dogs[v.dog];
        const auto day = static_cast<std::size_t>(v.on);
        mine[v.dog].push_back(v);
        taken[v.groomer][day] += in_mmin(v.full ? one.full : one.between);
        std::int64_t all = 0;
        for (const auto& t : taken) {
            all += t[day];
        }
        const bool off = (day < one.cannot.size() && one.cannot[day]) ||
                         one.groomer.value_or(v.groomer) != v.groomer;
        if (off || taken[v.groomer][day] > in_mmin(p.hours[v.groomer][day]) ||
            (!p.tables.empty() && all > in_mmin(p.tables[day]))) {
            out.push_back(v.dog);
        }
    }
    for (std::size_t i = 0; i < p.dogs.size(); ++i) {
        const diary_dog& one = p.dogs[i];
        const bool lapsed = std::any_of(d.lapses.begin(), d.lapses.end(),
                                        [&](const diary_lapse& l) { return l.dog == i; });
        planning::running_clocks c = planning::clocks_before(one);
        for (const diary_visit& v : mine[i]) {
            if (v.on < c.visit + p.gap) {
                out.push_back(i);
            }
            c = planning::clocks_after(c, {v.on, v.full});
        }
        const int due = planning::due_first(one, c);
        if (!lapsed && due < p.last) {
            out.push_back(i);
        }
    }
    return out;
}

}  // namespace pelage
