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
//
// Memory. What can still be added depends only on the zone, the tools held that a later zone might
// hold, the labels of chosen zones in later separators, and the minutes spent. Of two ways to the same
// of these the dearer one, or of equals the later one, needs no second look: every end of it is an end
// of the other, as much cheaper or as much earlier (the same zones are chosen in both).
#include <algorithm>

#include "plan_parts.hpp"

namespace pelage::planning {

void walk::prepare() {
    const auto order = tables_->buckets();
    const open_plan& p = *p_;
    levels_.resize(std::max(levels_.size(), order.size()));
    zone_set later = 0;  // zones in separators of this and later tables
    tool_set below = 0;
    std::array<std::int32_t, most_tools> fresh = p.price;
    zone_set chosen = p.open;
    for (std::size_t n = 0; n < order.size(); ++n) {  // the last to be chosen first
        level& v = levels_[order.size() - 1 - n];
        v.table = &order[n];
        chosen &= ~(zone_set{1} << order[n].zone);
        for (const std::uint8_t z : order[n].separator) {
            later |= zone_set{1} << z;
        }
        v.beside = later & chosen;
        v.held = 0;
        for (const label& l : p.labels(order[n].zone)) {
            v.held |= l.tools;
        }
        below |= v.held;
        v.below = below;
        each_bit(v.held, [&](std::size_t t) { fresh[t] -= p.share[order[n].zone][t]; });
        v.fresh = fresh;
    }
    setup_.resize(p.rows.size());
    at_.assign(p.rows.size(), 0);
    for (std::size_t z = 0; z < p.rows.size(); ++z) {
        setup_[z] = p.labels(z).front().setup;
    }
}

/// Adds to options_ what may be chosen in the next zone, the least bound first.
void walk::add_options(const state& s) {
    const level& v = levels_[s.depth];
    const bucket& b = *v.table;
    const auto zone = p_->labels(b.zone);
    const auto& share = p_->share[b.zone];
    const std::size_t place = b.place(at_);
    const cost_t* const cell = tables_->cells() + b.joint + place * b.labels;
    cost_t base = s.bound - tables_->cells()[b.least + place];
    each_bit(v.held & s.used, [&](std::size_t t) { base += share[t]; });
    const std::size_t from = options_.size();
    for (std::size_t l = 0; l < zone.size(); ++l) {
        cost_t bound = base + cell[l];
        each_bit(zone[l].tools & ~s.used, [&](std::size_t t) { bound += v.fresh[t]; });
        each_bit(zone[l].tools & s.used, [&](std::size_t t) { bound -= share[t]; });
        if (bound > best_->limit || s.spent + zone[l].spend > p_->budget) {
            continue;
        }
        std::size_t n = options_.size();
        options_.emplace_back();
        for (; n > from && options_[n - 1].bound > bound; --n) {
            options_[n] = options_[n - 1];
        }
        options_[n] = {bound, static_cast<std::uint32_t>(l)};
    }
    best_->nodes += static_cast<std::int64_t>(zone.size());
    left_ -= static_cast<std::int64_t>(zone.size());
}

/// Whether this state needs no look: an earlier one was as good. Otherwise remembers it.
bool walk::seen(const state& s) {
    const level& v = levels_[s.depth];
    const tool_set used = s.used & v.below;
    std::uint64_t key = (used * 0x9e3779b97f4a7c15U) ^ (s.depth * 0xbf58476d1ce4e5b9U) ^
                        (static_cast<std::uint64_t>(s.spent) << 32U);
    each_bit(v.beside, [&](std::size_t z) { key = (key ^ at_[z]) * 0x94d049bb133111ebU; });
    const std::size_t slot = (key ^ key >> 29U) >> 8U & (slots - 1);
    memory& m = seen_[slot];
    std::uint16_t* const plan = &seen_setup_[slot * setup_.size()];
    bool same = m.run == run_ && m.depth == s.depth && m.used == used && m.spent == s.spent;
    each_bit(v.beside, [&](std::size_t z) { same = same && plan[z] == setup_[z]; });
    if (same && (m.bound < s.bound || (m.bound == s.bound && !std::lexicographical_compare(
                                                                 setup_.begin(), setup_.end(), plan,
                                                                 plan + setup_.size())))) {
        return true;
    }
    if (!same || m.bound >= s.bound) {
        m = {used, s.bound, run_, static_cast<std::uint16_t>(s.depth),
             static_cast<std::uint16_t>(s.spent)};
        std::copy(setup_.begin(), setup_.end(), plan);
    }
    return false;
}

bool walk::visit(const state& s) {
    if (s.depth == depth_) {
        const cost_t cost = s.bound + p_->toll * (p_->budget - s.spent);
        if (best_->wants(cost, setup_)) {
            best_->take(cost, setup_);
        }
        return true;
    }
    if (seen(s)) {
        return true;
    }
    if (left_ <= 0) {
        return false;
    }
    const std::size_t from = options_.size();
    add_options(s);
    const std::size_t end = options_.size();
    const std::size_t z = levels_[s.depth].table->zone;
    const auto zone = p_->labels(z);
    bool whole = true;
    for (std::size_t n = from; n < end && whole; ++n) {
        const option o = options_[n];
        const label& l = zone[o.label];
        at_[z] = static_cast<std::uint16_t>(o.label);
        setup_[z] = l.setup;
        if (best_->wants(o.bound, setup_)) {
            whole = visit({s.depth + 1, o.bound, s.used | l.tools, s.spent + l.spend});
        }
    }
    setup_[z] = zone.front().setup;
    options_.resize(from);
    return whole;
}

bool walk::run(const open_plan& p, const tables& t, std::int64_t most, incumbent& best) {
    p_ = &p;
    tables_ = &t;
    best_ = &best;
    left_ = std::min(most, best.most_nodes - best.nodes);
    depth_ = t.buckets().size();
    if (seen_.empty()) {
        seen_.resize(slots);
    }
    if (seen_setup_.size() < slots * p.rows.size()) {
        seen_setup_.resize(slots * p.rows.size());
    }
    ++run_;
    options_.clear();
    prepare();
    return visit({0, t.bound(), 0, 0});
}

}  // namespace pelage::planning
