// The cheapest plan with fewer tools.
//
// Let n be the tools of the plan, m = n - 1, and lay a toll t on every tool. If v is the least cost with
// tolls, no plan with at most m tools costs less than v - t m. With t what the best such plan known
// costs more than the plan itself this closes the gap, unless that plan lies above the line through its
// neighbours; then branch on a tool which the tolled plan holds: it is out, or it is kept and goes free of
// toll. When m tools are kept, all others are out.
//
// A tool used before and after the bath has two prices; half the toll is on each, so that no tool pays
// more than t.
#include <algorithm>

#include "planner/alternatives_parts.hpp"

namespace pelage::ways {

namespace {

/// A plan that costs so much more than the first is no other way but a worse one (assumption).
constexpr std::int64_t most_dearer = 60'000;
/// Plans asked for, and parts of problems weighed for them, before the search ends without its proof: tolls
/// make some drawers' problems hard, and nobody waits minutes for what is said beside a plan.
constexpr int most_plans = 400;
constexpr std::int64_t most_nodes = 20'000;
constexpr std::int64_t most_nodes_once = 2'000;

enum class state { open, kept, out };

class fewer {
  public:
    fewer(const same_problem& at, const groom& g)
        : at_(at),
          used_(at.tools_of(g.choice.setup)),
          cost_(in_mmin(g.choice.cost)),
          least_(cost_ + most_dearer + 1),
          prices_(at.top().tools().size(), 0) {
        for (const std::size_t tool : at.compiled().tool_of) {
            ++prices_[tool];
        }
    }

    [[nodiscard]] std::optional<solution> best() {
        if (used_.size() < 2) {
            return std::nullopt;
        }
        most_ = used_.size() - 1;
        if (at_least() > most_) {
            return std::nullopt;
        }
        // one of its own tools laid aside and nothing else taken up: what is to be beaten
        for (const std::size_t tool : used_) {
            std::vector<state> tools(prices_.size(), state::out);
            for (const std::size_t t : used_) {
                tools[t] = t == tool ? state::out : state::open;
            }
            static_cast<void>(plan_with(tools, 0));
        }
        std::vector<state> tools(prices_.size(), state::open);
        search(tools, 0);
        return std::move(best_);
    }
    [[nodiscard]] bool proven() const { return proven_; }

  private:
    /// The best plan with those tools and that toll on open ones. Remembers it if it is the cheapest
    /// with few enough tools so far.
    [[nodiscard]] solution plan_with(const std::vector<state>& tools, std::int64_t toll);
    [[nodiscard]] problem tolled(const std::vector<state>& tools, std::int64_t toll) const;
    void search(std::vector<state>& tools, std::size_t kept);
    [[nodiscard]] std::size_t at_least() const;

    const same_problem& at_;
    std::set<std::size_t> used_;
    std::int64_t cost_;
    std::int64_t least_;       // what a plan must cost less than
    std::vector<int> prices_;  // by tool: how many it has, before and after the bath
    std::optional<solution> best_;
    std::size_t most_ = 0;
    int plans_ = 0;
    std::int64_t nodes_ = 0;
    bool proven_ = true;
};

/// No plan has fewer tools: places that share no tool each need their own. Found in passing, not the most
/// there are.
std::size_t fewer::at_least() const {
    const compiled_plan& c = at_.compiled();
    struct need {
        std::set<std::size_t> any_of;
        std::size_t least = 2;  // a comb and the blade beneath; no setup holds more
    };
    std::vector<need> needs;
    for (const std::vector<allowed_setup>& row : c.choice.zones) {
        need n;
        for (const allowed_setup& s : row) {
            const std::set<std::size_t> held = at_.tools_of(s.tools);
            n.any_of.insert(held.begin(), held.end());
            n.least = std::min(n.least, held.size());
        }
        if (n.least > 0) {
            needs.push_back(std::move(n));
        }
    }
    std::stable_sort(needs.begin(), needs.end(), [](const need& a, const need& b) {
        return a.any_of.size() < b.any_of.size();
    });
    std::set<std::size_t> taken;
    std::size_t sum = 0;
    for (const need& n : needs) {
        if (std::none_of(n.any_of.begin(), n.any_of.end(),
                         [&](std::size_t t) { return taken.contains(t); })) {
            taken.insert(n.any_of.begin(), n.any_of.end());
            sum += n.least;
        }
    }
    return sum;
}

problem fewer::tolled(const std::vector<state>& tools, std::int64_t toll) const {
    const compiled_plan& c = at_.compiled();
    problem p = c.choice;
    tool_set out = 0;
    for (std::size_t bit = 0; bit < c.tool_of.size(); ++bit) {
        out |= tools[c.tool_of[bit]] == state::out ? tool_set{1} << bit : 0;
    }
    for (std::vector<allowed_setup>& row : p.zones) {
        std::erase_if(row, [&](const allowed_setup& s) { return (s.tools & out) != 0; });
    }
    for (std::size_t i = 0; i < p.price.size(); ++i) {
        if (tools[c.tool_of[i]] == state::open) {
            const std::int64_t price = p.price[i] + toll / prices_[c.tool_of[i]];
            p.price[i] = static_cast<std::int32_t>(std::min<std::int64_t>(price, dearest));
        }
    }
    return p;
}

solution fewer::plan_with(const std::vector<state>& tools, std::int64_t toll) {
    ++plans_;
    solution s = at_.choose(tolled(tools, toll), most_nodes_once);
    nodes_ += s.sure.nodes;
    if (!s.setup.empty() && at_.tools_of(s.setup).size() <= most_) {
        const std::int64_t cost = in_mmin(cost_of(at_.compiled().choice, s.setup));
        if (cost < least_) {
            least_ = cost;
            best_ = s;
            best_->cost = mmin(cost);
        }
    }
    return s;
}

void fewer::search(std::vector<state>& tools, std::size_t kept) {
    if (plans_ >= most_plans || nodes_ >= most_nodes) {
        proven_ = false;
        return;
    }
    const auto free = static_cast<std::int64_t>(most_ - kept);
    std::int64_t toll = kept < most_ ? std::max<std::int64_t>(0, least_ - cost_) : 0;
    solution s;
    std::set<std::size_t> held;
    for (;; toll = toll < 100 ? 0 : toll / 4) {
        s = plan_with(tools, toll);
        if (s.setup.empty() || s.sure.bound - toll * free >= least_) {
            return;
        }
        held = at_.tools_of(s.setup);
        if (held.size() >= most_ || toll == 0) {
            break;  // with fewer than it may hold the toll was too high to say anything
        }
    }
    const auto branching = std::find_if(
        held.begin(), held.end(), [&](std::size_t tool) { return tools[tool] == state::open; });
    if (branching == held.end()) {
        proven_ = false;  // the plan of this branch itself came without a proof
        return;
    }
    const std::size_t branch = *branching;
    tools[branch] = state::out;
    search(tools, kept);
    tools[branch] = state::kept;
    if (kept + 1 == most_) {
        std::vector<state> last = tools;
        std::replace(last.begin(), last.end(), state::open, state::out);
        search(last, kept + 1);
    } else {
        search(tools, kept + 1);
    }
    tools[branch] = state::open;
}

/// Whether a drawer of nothing else does what was done: who lays the others aside leaves them at home.
bool those_alone_do(const same_problem& at, const groom& g, const std::vector<held_tool>& held) {
    changed_request changed(at.request());
    changed.kit_changed = true;
    const auto aside = [&](bool comb, const std::string& id) {
        return std::find(held.begin(), held.end(), held_tool{comb, id}) == held.end();
    };
    std::erase_if(changed.tools.blades,
                  [&](const kit_blade& b) { return aside(false, b.spec.id); });
    std::erase_if(changed.tools.combs, [&](const kit_comb& c) { return aside(true, c.spec.id); });
    return no_worse_stuck(g, plan_again(changed.of(at.request(), at.ready())));
}

}  // namespace

std::optional<other_way> fewer_tools(const same_problem& at, const groom& g) {
    fewer f(at, g);
    std::optional<solution> s = f.best();
    if (!s) {
        return std::nullopt;
    }
    // the tolls are off again: what is proven is that no plan with fewer tools costs less
    s->sure.optimal = f.proven();
    s->sure.bound = in_mmin(f.proven() ? s->cost : g.choice.cost);
    other_way w = compared(way_kind::fewer_tools, g, at.read(std::move(*s)));
    w.about = w.changed;
    // read whole, what places that follow their part need may cost the tool that was saved
    const std::vector<held_tool> held = tools_in(w.plan);
    const bool kept = held.size() < tools_in(g).size() && those_alone_do(at, g, held);
    return kept ? std::optional{std::move(w)} : std::nullopt;
}

}  // namespace pelage::ways
