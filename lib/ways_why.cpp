// Why each place has its setup. The next best plan with another setup there is found by barring the one
// it has and choosing again. The reason is read off the plan: where another setup is cheaper for the
// place alone, the plan being the cheapest means that taking it would cost more in pick-ups or steps,
// go against the direction of the neighbours, or need combing out there is no time for.
#include <algorithm>
#include <array>
#include <cstdlib>

#include "groom_cells.hpp"
#include "ways_parts.hpp"

namespace pelage {

std::string_view name(chosen_for w) {
    constexpr std::array<std::string_view, 7> names{"only-one",   "wish",      "nearest", "in-hand",
                                                    "neighbours", "direction", "no-time"};
    return names[static_cast<std::size_t>(w)];
}

namespace {

class explainer {
  public:
    explainer(const groom_request& r, const groom& g) : at_(r), g_(g) {}

    [[nodiscard]] std::vector<reason_why> all() const {
        std::vector<reason_why> out;
        for (std::size_t row = 0; row < g_.choice.setup.size(); ++row) {
            const std::size_t zone = at_.compiled().rows[row];
            const zone_plan& z = g_.zones[zone];
            if (z.how.kind != tool_kind::none && z.came != outcome::stuck) {
                out.push_back(of_row(row));
            }
        }
        return out;
    }

  private:
    [[nodiscard]] reason_why of_row(std::size_t row) const;
    void find_next(std::size_t row, reason_why& why) const;
    [[nodiscard]] chosen_for against(std::size_t row, std::size_t other) const;
    [[nodiscard]] std::int64_t steps(std::size_t row, std::size_t column) const;
    [[nodiscard]] tool_set held_elsewhere(std::size_t row) const;
    [[nodiscard]] const problem& choice() const { return at_.compiled().choice; }

    ways::same_problem at_;
    const groom& g_;
};

/// What the steps to the neighbours cost if the place is done by that column.
std::int64_t explainer::steps(std::size_t row, std::size_t column) const {
    const problem& p = choice();
    const auto length_of = [&](std::size_t n) {
        return std::int64_t{p.length[p.at(n, n == row ? column : g_.choice.setup[n])]};
    };
    std::int64_t sum = 0;
    for (const seam_cost& s : p.seams) {
        if (s.a == row || s.b == row) {
            const std::int64_t step = std::abs(length_of(s.a) - length_of(s.b));
            sum += std::max<std::int64_t>(0, step - s.allowance) * s.per_hundredth;
        }
    }
    return sum;
}

tool_set explainer::held_elsewhere(std::size_t row) const {
    tool_set held = 0;
    for (std::size_t n = 0; n < g_.choice.setup.size(); ++n) {
        held |= n == row ? 0 : choice().tools[choice().at(n, g_.choice.setup[n])];
    }
    return held;
}

/// What speaks against `other`, cheaper for this place alone.
chosen_for explainer::against(std::size_t row, std::size_t other) const {
    const problem& p = choice();
    const std::size_t chosen = g_.choice.setup[row];
    if (!p.spend.empty()) {
        std::int32_t spent = p.spend[p.at(row, other)];
        for (std::size_t n = 0; n < g_.choice.setup.size(); ++n) {
            spent += n == row ? 0 : p.spend[p.at(n, g_.choice.setup[n])];
        }
        if (spent > p.budget) {
            return chosen_for::no_time;
        }
    }
    const tool_set elsewhere = held_elsewhere(row);
    const auto pick_ups = [&](std::size_t column) {
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < p.price.size(); ++i) {
            const bool more = ((p.tools[p.at(row, column)] & ~elsewhere) >> i & 1U) != 0;
            sum += more ? p.price[i] : 0;
        }
        return sum;
    };
    const std::int64_t by_tools = pick_ups(other) - pick_ups(chosen);
    const std::int64_t by_steps = steps(row, other) - steps(row, chosen);
    const std::int64_t saved = p.cost[p.at(row, chosen)] - p.cost[p.at(row, other)];
    if (by_tools + by_steps < saved) {
        return chosen_for::direction;
    }
    return by_tools >= by_steps ? chosen_for::in_hand : chosen_for::neighbours;
}

void explainer::find_next(std::size_t row, reason_why& why) const {
    problem p = choice();
    p.cost[p.at(row, g_.choice.setup[row])] = forbidden;
    const solution s = at_.choose(p);
    if (s.setup.empty()) {
        return;
    }
    const std::size_t k = s.setup[row];
    why.next = at_.setup_at(k);
    why.next_combed = at_.compiled().combed(k);
    if (why.next->kind != tool_kind::carder && why.next->kind != tool_kind::none) {
        const groom_request& r = at_.request();
        const std::size_t setup = at_.compiled().setup_of(k);
        why.next_leaves = left_by(at_.compiled().zones[why.zone], *why.next,
                                  at_.top().leaves(setup, *r.patient.coat), r.rules.cut);
    }
    why.dearer = s.cost - g_.choice.cost;
}

reason_why explainer::of_row(std::size_t row) const {
    const problem& p = choice();
    const std::size_t chosen = g_.choice.setup[row];
    reason_why why;
    why.zone = at_.compiled().rows[row];
    find_next(row, why);
    std::size_t alone = chosen;
    bool another = false;
    for (std::size_t k = 0; k < p.setups; ++k) {
        another = another || (k != chosen && p.cost[p.at(row, k)] != forbidden);
        if (p.cost[p.at(row, k)] < p.cost[p.at(row, alone)]) {
            alone = k;
        }
    }
    if (!another) {
        why.why = chosen_for::only_one;
    } else if (alone != chosen) {
        why.alone = at_.setup_at(alone);
        why.why = against(row, alone);
    } else {
        const outcome came = g_.zones[why.zone].came;
        const bool far = came == outcome::off_target || came == outcome::beyond_reach;
        why.why = far ? chosen_for::nearest : chosen_for::wish;
    }
    return why;
}

}  // namespace

std::vector<reason_why> reasons_why(const groom_request& r, const groom& g) {
    return g.stop.empty() ? explainer(r, g).all() : std::vector<reason_why>{};
}

}  // namespace pelage
