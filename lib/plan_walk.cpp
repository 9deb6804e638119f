// Depth-first search over the exact tables of a part.
//
// Zones are chosen in the opposite of the order of elimination, so that a zone's separator is chosen
// before it. Let the bound begin at the least shared cost. Choosing label l in zone z adds
//   its regret: its cell in the table of z less the least cell beside the same separator (the least
//     shared cost of all plans with these choices and l, less that without l);
//   for each tool t it is the first to hold: price[t] - shares of t in z and all later zones;
//   for each tool t held before that some label of z holds and l doesn't: share[z][t].
// At the end the bound is the plan's cost: each tool held was added whole but for the shares of zones
// from its first holder on, of which those that hold it pay theirs in the table and the others were
// added. On the way nothing added is negative, so the bound is one. With a toll, what the plan leaves
// of the budget was tolled too much and is given back at the end.
#include <algorithm>

#include "plan_parts.hpp"

namespace pelage::planning {

/// Adds to options_ what may be chosen in the zone of `b`, the least bound first.
void walk::add_options(const node& b, cost_t bound, tool_set used, std::int32_t spent) {
    const auto zone = p_->labels(b.zone);
    const auto& share = p_->share[b.zone];
    const std::size_t beside = forest_->beside(b, at_);
    const cost_t* const steps = &forest_->cells[b.steps + beside * b.labels];
    const cost_t* const below = &forest_->cells[b.below];
    bound -= forest_->cells[b.least + beside];
    each_bit(b.held & used, [&](std::size_t t) { bound += share[t]; });
    const std::size_t from = options_.size();
    for (std::uint32_t l = 0; l < b.labels; ++l) {
        cost_t with = bound + steps[l] + below[l];
        for (std::size_t i = 0; i < b.before; ++i) {
            live_seam s = b.left_out[i];
            const label& y = p_->labels(s.b)[at_[s.b]];
            with += s.price(zone[l].length - y.length) - p_->eased[p_->ease(s, zone[l])];
            std::swap(s.a, s.b);
            with -= p_->eased[p_->ease(s, y)];
        }
        each_bit(zone[l].tools & ~used, [&](std::size_t t) { with += fresh_[t]; });
        each_bit(zone[l].tools & used, [&](std::size_t t) { with -= share[t]; });
        if (with <= best_->limit && spent + zone[l].spend <= p_->budget) {
            std::size_t n = options_.size();
            for (options_.push_back({}); n > from && options_[n - 1].bound > with; --n) {
                options_[n] = options_[n - 1];
            }
            options_[n] = {with, l};
        }
    }
    best_->nodes += static_cast<std::int64_t>(b.labels);
}

/// Chooses in the zone of that node and all after it. False if there was no time to.
bool walk::visit(std::size_t n, cost_t bound, tool_set used, std::int32_t spent) {
    if (n == forest_->order.size()) {
        const cost_t cost = bound + p_->toll * (p_->budget - spent);
        if (best_->wants(cost, setup_)) {
            best_->take(cost, setup_);
        }
        return true;
    }
    if (best_->nodes >= last_) {
        return false;
    }
    const node& b = forest_->order[n];
    const auto zone = p_->labels(b.zone);
    const auto& share = p_->share[b.zone];
    const std::size_t from = options_.size();
    add_options(b, bound, used, spent);
    each_bit(b.held, [&](std::size_t t) { fresh_[t] += share[t]; });
    bool whole = true;
    for (std::size_t i = from, end = options_.size(); i < end && whole; ++i) {
        const option o = options_[i];
        const label& l = zone[o.label];
        at_[b.zone] = static_cast<std::uint16_t>(o.label);
        setup_[b.zone] = l.setup;
        whole = !best_->wants(o.bound, setup_) ||
                visit(n + 1, o.bound, used | l.tools, spent + l.spend);
    }
    each_bit(b.held, [&](std::size_t t) { fresh_[t] -= share[t]; });
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
