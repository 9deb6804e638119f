// Why each place has its setup. The next best plan with another setup there is found by barring the one
// it has and choosing again. The reason is read off the plan: where another setup is cheaper for the
// place alone, the plan being the cheapest means that taking it would cost more in pick-ups or steps,
// go against the direction of the neighbours, or need combing out there is no time for. That a tool is in the
// hand anyway is tried: the place does without it, and the plan must take it up elsewhere all the same.
#include <algorithm>
#include <array>
#include <cstdlib>
#include <utility>
#include <vector>

#include <pelage/solver/setup_solver.hpp>

#include "planner/alternatives_parts.hpp"
#include "planner/candidates.hpp"

namespace pelage {

std::string_view name(chosen_for w) {
    constexpr std::array<std::string_view, 13> names{
        "only-one",  "customary", "clipped-off", "wish",           "near-enough",
        "nearest",   "cheapest",  "in-hand",     "spares-pick-up", "neighbours",
        "direction", "no-time",   "as-its-part"};
    return names[static_cast<std::size_t>(w)];
}

namespace {

class explainer {
  public:
    explainer(const plan_request& r, const groom& g) : at_(r, g), g_(g) {}

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
    /// With that setup of a row's list and no other the whole costs at least so much (mmin).
    struct barred {
        std::int64_t at_least;
        std::size_t setup;
        friend auto operator<=>(const barred&, const barred&) = default;
    };
    [[nodiscard]] std::vector<barred> others_of(std::size_t row) const;
    [[nodiscard]] reason_why of_row(std::size_t row) const;
    void find_next(std::size_t row, reason_why& why) const;
    [[nodiscard]] chosen_for alone_best(std::size_t row) const;
    void against(std::size_t row, const allowed_setup& other, reason_why& why) const;
    [[nodiscard]] bool taken_up_anyway(std::size_t row, tool_set tools) const;
    [[nodiscard]] std::int32_t off(std::size_t row, std::int32_t left) const;
    [[nodiscard]] std::int64_t steps(std::size_t row, std::int32_t left) const;
    [[nodiscard]] tool_set held_elsewhere(std::size_t row) const;
    [[nodiscard]] const problem& choice() const { return at_.compiled().choice; }
    [[nodiscard]] const allowed_setup& chosen(std::size_t row) const {
        return *find(choice(), row, g_.choice.setup[row]);
    }

    ways::same_problem at_;
    const groom& g_;
};

/// What the steps to the neighbours cost if the place is left at that length.
std::int64_t explainer::steps(std::size_t row, std::int32_t left) const {
    const auto length_of = [&](std::size_t n) {
        return std::int64_t{n == row ? left : chosen(n).length};
    };
    std::int64_t sum = 0;
    for (const seam_cost& s : choice().seams) {
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
        held |= n == row ? 0 : chosen(n).tools;
    }
    return held;
}

/// Whether the plan would hold all those tools in other places if this one did without them.
bool explainer::taken_up_anyway(std::size_t row, tool_set tools) const {
    problem p = choice();
    std::erase_if(p.zones[row], [&](const allowed_setup& s) { return (s.tools & tools) != 0; });
    const solution s = p.zones[row].empty() ? solution{} : at_.choose(p);
    tool_set held = 0;
    for (std::size_t n = 0; n < s.setup.size(); ++n) {
        held |= find(p, n, s.setup[n])->tools;
    }
    return (tools & ~held) == 0;
}

/// What speaks against `other`, cheaper for this place alone.
void explainer::against(std::size_t row, const allowed_setup& other, reason_why& why) const {
    const problem& p = choice();
    const allowed_setup& own = chosen(row);
    std::int64_t spent = other.spend;
    for (std::size_t n = 0; n < g_.choice.setup.size(); ++n) {
        spent += n == row ? 0 : chosen(n).spend;
    }
    if (spent > p.budget) {
        why.why = chosen_for::no_time;
        return;
    }
    const tool_set elsewhere = held_elsewhere(row);
    const auto pick_ups = [&](tool_set held) {
        std::int64_t sum = 0;
        for (std::size_t i = 0; i < p.price.size(); ++i) {
            sum += ((held & ~elsewhere) >> i & 1U) != 0 ? p.price[i] : 0;
        }
        return sum;
    };
    const std::int64_t by_tools = pick_ups(other.tools) - pick_ups(own.tools);
    const std::int64_t by_steps = steps(row, other.length) - steps(row, own.length);
    if (by_tools + by_steps < own.cost - other.cost) {
        why.why = chosen_for::direction;
    } else if (by_tools < by_steps) {
        why.why = chosen_for::neighbours;
    } else if (const tool_set extra = own.tools & ~other.tools;
               extra != 0 && taken_up_anyway(row, extra)) {
        why.why = chosen_for::in_hand;
    } else {
        why.why = chosen_for::spares;
        for (std::size_t n = 0; n < g_.choice.setup.size(); ++n) {
            if (n != row && (chosen(n).tools & extra) != 0) {
                why.with.push_back(at_.compiled().rows[n]);
            }
        }
    }
}

/// How far a length is from the wish, in hundredths.
std::int32_t explainer::off(std::size_t row, std::int32_t left) const {
    const zone_plan& z = at_.compiled().zones[at_.compiled().rows[row]];
    return std::abs(left - in_hundredths(*z.target));
}

/// Why, where nothing is cheaper in this place alone.
chosen_for explainer::alone_best(std::size_t row) const {
    const compiled_plan& c = at_.compiled();
    const zone_plan& z = g_.zones[c.rows[row]];
    const allowed_setup& own = chosen(row);
    const auto none_is = [&](auto better) {
        return std::none_of(choice().zones[row].begin(), choice().zones[row].end(),
                            [&](const allowed_setup& s) {
                                return c.combed(s.setup) == c.combed(own.setup) && better(s);
                            });
    };
    if (!z.target || !z.leaves) {
        const auto& customary = at_.request().reference.dog_body.zones[z.at.zone].prep_blades;
        const bool by_list =
            z.how.kind == tool_kind::clip && !z.how.over &&
            std::find(customary.begin(), customary.end(), z.how.tool.id) != customary.end();
        return by_list ? chosen_for::customary : chosen_for::cheapest;
    }
    const bool nearest = none_is([&](const allowed_setup& s) {
        const tool_kind kind = at_.setup_at(s.setup).kind;
        const bool measured = kind != tool_kind::carder && (kind != tool_kind::none || z.now);
        return measured && off(row, s.length) < off(row, own.length);
    });
    if (within(z.leaves->best, *z.target, z.tolerated)) {
        return nearest ? chosen_for::wish : chosen_for::enough;
    }
    return nearest ? chosen_for::nearest : chosen_for::cheapest;
}

/// The plans with every other setup of the row, by what each costs at least: the cost with the directions of all
/// places left open, which no plan without tracks undercuts.
std::vector<explainer::barred> explainer::others_of(std::size_t row) const {
    std::vector<barred> out;
    for (std::size_t i = 0; i < choice().zones[row].size(); ++i) {
        const allowed_setup& a = choice().zones[row][i];
        if (a.setup == g_.choice.setup[row]) {
            continue;
        }
        problem p = choice();
        p.zones[row] = {a};
        const solution s = solve(p);
        if (!s.setup.empty()) {
            out.push_back({s.sure.bound, i});
        }
    }
    std::sort(out.begin(), out.end());
    return out;
}

void explainer::find_next(std::size_t row, reason_why& why) const {
    // each by itself: directions are chosen after lengths, so the best of all but one need not be found at once
    std::optional<solution> best;
    std::size_t best_at = 0;
    for (const auto& [at_least, i] : others_of(row)) {
        if (best && at_least > in_mmin(best->cost)) {
            break;
        }
        problem p = choice();
        p.zones[row] = {choice().zones[row][i]};
        solution s = at_.choose(p);
        // what costs less than the plan goes both ways on neighbours and would leave tracks
        const bool comparable = !s.setup.empty() && s.cost >= g_.choice.cost;
        if (comparable && (!best || std::pair{s.cost, i} < std::pair{best->cost, best_at})) {
            best = std::move(s);
            best_at = i;
        }
    }
    if (!best) {
        return;
    }
    const solution& s = *best;
    const std::size_t k = s.setup[row];
    why.next = at_.setup_at(k);
    why.next_combed = at_.compiled().combed(k);
    if (why.next->kind != tool_kind::carder && why.next->kind != tool_kind::none) {
        const plan_request& r = at_.request();
        const std::size_t setup = at_.compiled().setup_of(k);
        why.next_leaves = left_by(at_.compiled().zones[why.zone], *why.next,
                                  at_.top().leaves(setup, *r.patient.coat), r.rules.cut);
    }
    why.dearer = s.cost - g_.choice.cost;
}

reason_why explainer::of_row(std::size_t row) const {
    const std::vector<allowed_setup>& allowed = choice().zones[row];
    const allowed_setup& own = chosen(row);
    reason_why why;
    why.zone = at_.compiled().rows[row];
    const outcome came = g_.zones[why.zone].came;
    if (came == outcome::goes_along) {
        why.why = chosen_for::only_one;
        return why;
    }
    find_next(row, why);
    const bool combable = came == outcome::clipped_under && !at_.compiled().with_part(why.zone) &&
                          std::any_of(allowed.begin(), allowed.end(), [&](const allowed_setup& s) {
                              return at_.compiled().combed(s.setup) && s.cost < own.cost;
                          });
    if (!combable && (came == outcome::clipped_under || came == outcome::taken_down)) {
        why.why = chosen_for::under_mat;
        return why;
    }
    if (at_.compiled().follower(why.zone) != nullptr) {
        why.why = chosen_for::with_part;
        return why;
    }
    const allowed_setup* alone = &own;
    for (const allowed_setup& s : allowed) {
        alone = s.cost < alone->cost ? &s : alone;
    }
    if (allowed.size() == 1) {
        why.why = chosen_for::only_one;
    } else if (alone != &own) {
        why.alone = at_.setup_at(alone->setup);
        against(row, *alone, why);
    } else {
        why.why = alone_best(row);
    }
    return why;
}

}  // namespace

std::vector<reason_why> reasons_why(const plan_request& r, const groom& g) {
    // every reason hangs on the plan's being the cheapest: of one that isn't proven none can be told, and
    // what is hard to plan once isn't planned again for each of its places
    return g.planned() && g.choice.sure.optimal ? explainer(r, g).all() : std::vector<reason_why>{};
}

}  // namespace pelage
