#include "forecast/promised.hpp"

#include <algorithm>
#include <tuple>

#include "solver/diary_path.hpp"

namespace pelage {

namespace {

using planning::running_clocks;

class booker {
  public:
    booker(const week_request& r, const std::vector<due_dog>& due, diary_question& q)
        : r_(r), due_(due), q_(q) {}

    void all() {
        for (std::size_t i = 0; i < q_.which.size(); ++i) {
            if (due_[q_.which[i]].promised) {
                q_.promised.push_back({q_.which[i], i, *due_[q_.which[i]].promised});
            }
        }
        std::stable_sort(q_.promised.begin(), q_.promised.end(),
                         [](const auto& a, const auto& b) { return a.on < b.on; });
        for (promised_visit& v : q_.promised) {
            book(v);
        }
        leave_out_later();
    }

  private:
    [[nodiscard]] diary_problem& p() { return q_.problem; }

    [[nodiscard]] int day_of(const date& on) const {
        return static_cast<int>((on - r_.today).count());
    }

    void book(promised_visit& v) {
        diary_dog& d = p().dogs[v.dog];
        int on = day_of(v.on);
        v.why = try_on(d, v, on);
        if (v.why == promise_broken::closed || v.why == promise_broken::away) {
            const auto other =
                day_for_promise(r_.salon, r_.salon.dogs[due_[v.due].dog], r_.today, v.on);
            if (other && try_on(d, v, day_of(*other)) == promise_broken::no) {
                v.instead = other;
                on = day_of(*other);
            }
        }
        if (!v.booked()) {
            return;
        }
        const running_clocks now = planning::clocks_before(d);
        const std::optional<int> other = planning::due_between(d, now);
        q_.promised_cost += v.takes + p().trip +
                            mmin(planning::late_price(p(), on - planning::due_full(d, now),
                                                      other ? on - *other : 0));
        stand_after(d, {v.full ? on : now.full, on, true}, on);
    }

    /// What the visit is on that day, and its minutes of a groomer where it can be had.
    promise_broken try_on(const diary_dog& d, promised_visit& v, int on) {
        v.full = full_then(d, on);
        v.takes = v.full ? due_[v.due].first_full_takes : d.between;
        v.late = on - planning::due_first(d, planning::clocks_before(d));
        return on > p().last ? promise_broken::after_diary : put(d, v, on);
    }

    /// Whether the visit of that day is a full groom: it is due, or would be before a visit between has
    /// run its clock.
    [[nodiscard]] static bool full_then(const diary_dog& d, int on) {
        const running_clocks after{d.full_due - d.full_clock, on, true};
        const std::optional<int> next = planning::due_between(d, after);
        return !next || d.full_due < *next;
    }

    /// Takes its minutes from the groomer who has least left beside it.
    promise_broken put(const diary_dog& d, promised_visit& v, int on) {
        const auto day = static_cast<std::size_t>(on);
        if (r_.salon.closed.cover(r_.today + std::chrono::days{on})) {
            return promise_broken::closed;
        }
        if (day < d.cannot.size() && d.cannot[day]) {
            return promise_broken::owner_cannot;
        }
        std::optional<std::size_t> best;
        bool there = false;
        for (std::size_t g = 0; g < p().hours.size(); ++g) {
            if (d.groomer.value_or(g) != g) {
                continue;
            }
            const work has = p().hours[g][day];
            there = there || has > work{};
            if (has >= v.takes && (!best || has < p().hours[*best][day])) {
                best = g;
            }
        }
        if (!best) {
            return there ? promise_broken::no_room : promise_broken::away;
        }
        v.groomer = *best;
        p().hours[*best][day] -= v.takes;
        return promise_broken::no;
    }

    /// The dog as it is after the visit: nothing before the day is open to it.
    void stand_after(diary_dog& d, const running_clocks& c, int on) {
        d.full_due = planning::due_full(d, c);
        d.between_due = planning::due_between(d, c).value_or(0);
        d.visit_ago = 0;
        const auto free = static_cast<std::size_t>(std::min(on + p().gap, p().last + 1));
        d.cannot.resize(std::max(d.cannot.size(), free), false);
        std::fill_n(d.cannot.begin(), free, true);
    }

    /// Who was told a day after the diary's last isn't asked to come before it.
    void leave_out_later() {
        std::vector<std::size_t> gone;
        for (const promised_visit& v : q_.promised) {
            if (v.why == promise_broken::after_diary) {
                gone.push_back(v.dog);
            }
        }
        std::sort(gone.begin(), gone.end());
        for (auto at = gone.rbegin(); at != gone.rend(); ++at) {
            const auto n = static_cast<std::ptrdiff_t>(*at);
            p().dogs.erase(p().dogs.begin() + n);
            q_.which.erase(q_.which.begin() + n);
            for (promised_visit& v : q_.promised) {
                v.dog -= v.dog > *at ? 1 : 0;
            }
        }
    }

    const week_request& r_;
    const std::vector<due_dog>& due_;
    diary_question& q_;
};

}  // namespace

void book_promised(const week_request& r, const std::vector<due_dog>& due, diary_question& q) {
    if (!q.problem.hours.empty()) {
        booker(r, due, q).all();
    }
}

diary with_promised(diary found, const diary_question& q) {
    const date day0 = q.from;
    for (const promised_visit& v : q.promised) {
        if (const auto on = v.booked()) {
            found.visits.push_back(
                {v.dog, static_cast<int>((*on - day0).count()), v.full, v.groomer, v.late});
        }
    }
    std::sort(found.visits.begin(), found.visits.end(),
              [](const diary_visit& a, const diary_visit& b) {
                  return std::tie(a.on, a.groomer, a.dog) < std::tie(b.on, b.groomer, b.dog);
              });
    found.cost += q.promised_cost;
    found.bound += q.promised_cost;
    return found;
}

}  // namespace pelage
