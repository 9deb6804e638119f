// Depth-first search along the forest of a part.
//
// Zones are chosen in the order of the forest, so that a zone's parent is chosen before it. Let the bound
// begin at the least shared cost. Choosing label l in zone z adds
//   its regret: the least shared cost of z and all below it with l beside the parent's label, less that
//     with any label;
//   for each seam left out to a zone chosen before: its step, less what both labels pay for it;
//   for each tool t it is the first to hold: price[t] - shares of t in z and all later zones;
//   for each tool t held before that some label of z holds and l doesn't: share[z][t].
// At the end the bound is the plan's cost: each tool held was added whole but for the shares of zones
// from its first holder on, of which those that hold it pay theirs in the table and the others were
// added. On the way nothing added is negative, so the bound is one. With a toll, what the plan leaves
// of the budget was tolled too much and is given back at the end.
#include "plan_parts.hpp"

namespace pelage::planning {

/// Adds to options_ what may be chosen in a node's zone, the least bound first.
void walk::add_options(std::size_t n, cost_t bound, tool_set used, std::int32_t spent) {
    const open_plan& p = *p_;
    const node& b = forest_->order[n];
    const std::size_t beside = forest_->beside(b, at_);
    const cost_t* const steps = &forest_->cells[b.steps + beside * b.labels];
    const cost_t* const below = &forest_->cells[b.below];
    bound -= forest_->cells[b.least + beside];
    each_bit(b.held & used, [&](std::size_t t) { bound += p.share[b.zone][t]; });
    const std::size_t from = options_.size();
    for (std::uint32_t i = 0; i < b.labels; ++i) {
        const label& l = p.labels(b.zone)[i];
        cost_t with = bound + steps[i] + below[i];
        each_bit(l.tools & ~used, [&](std::size_t t) { with += fresh_[t]; });
        each_bit(l.tools & used, [&](std::size_t t) { with -= p.share[b.zone][t]; });
        for (const live_seam& s : b.left_out) {
            if (forest_->place[s.b] < n) {
                const label& y = p.labels(s.b)[at_[s.b]];
                with += s.price(l.length - y.length) - p.eased[p.ease(s, l)] -
                        p.eased[p.ease(s.turned(), y)];
            }
        }
        if (with <= best_->limit && spent + l.spend <= p.budget) {
            std::size_t at = options_.size();
            for (options_.push_back({}); at > from && options_[at - 1].bound > with; --at) {
                options_[at] = options_[at - 1];
            }
            options_[at] = {with, i};
        }
    }
    best_->nodes += static_cast<std::int64_t>(b.labels);
}

/// Chooses in the zone of node n and of all after it. False if there was no time to.
bool walk::visit(std::size_t n, cost_t bound, tool_set used, std::int32_t spent) {
    if (n == forest_->order.size()) {
        best_->offer(bound + p_->toll * (p_->budget - spent), setup_);
        return true;
    }
    if (best_->nodes >= last_) {
        return false;
    }
    const node& b = forest_->order[n];
    const auto zone = p_->labels(b.zone);
    const std::size_t from = options_.size();
    add_options(n, bound, used, spent);
    each_bit(b.held, [&](std::size_t t) { fresh_[t] += p_->share[b.zone][t]; });
    bool whole = true;
    for (std::size_t i = from, end = options_.size(); i < end && whole; ++i) {
        const option o = options_[i];
        const label& l = zone[o.label];
        at_[b.zone] = static_cast<std::uint16_t>(o.label);
        setup_[b.zone] = l.setup;
        whole = !best_->wants(o.bound, setup_) ||
                visit(n + 1, o.bound, used | l.tools, spent + l.spend);
    }
    each_bit(b.held, [&](std::size_t t) { fresh_[t] -= p_->share[b.zone][t]; });
    setup_[b.zone] = zone.front().setup;
    options_.resize(from);
    return whole;
}

bool walk::run(const open_plan& p, const forest& f, std::int64_t most, incumbent& best) {
    p_ = &p;
    forest_ = &f;
    best_ = &best;
    last_ = std::min(best.nodes + most, best.most_nodes);
    fresh_ = p.rest;
    at_.assign(p.rows.size(), 0);
    setup_.clear();
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        setup_.push_back(p.labels(z).front().setup);
    }
    options_.clear();
    return visit(0, f.bound, 0, 0);
}

}  // namespace pelage::planning
