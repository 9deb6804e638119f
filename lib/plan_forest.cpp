// Elimination along a forest: exact minima over all plans of a part, each zone paying its shares of its
// tools, with the steps at some of the seams.
//
// Along a forest the least cost of a zone's label and of all below it is a sum over its children of
// minima over their labels: dynamic programming, exact, in one pass up. With one pass down the least
// cost of every label in any plan is known. Seams left out only add to a plan's cost, so the minimum
// bounds all plans; the seams kept are the dearest: each zone in turn is joined to those before it at
// the widest step that might be.
#include "plan_parts.hpp"

namespace pelage::planning {

/// The order of the zones, each node's parent and children.
void forest::grow(const open_plan& p) {
    const auto zones = static_cast<std::size_t>(std::popcount(p.open));
    nodes_.resize(std::max(nodes_.size(), zones));
    order = std::span(nodes_).first(zones);
    std::array<cost_t, most_zones> widest{};  // step to a zone chosen before
    std::array<std::uint8_t, most_zones> via{};
    zone_set left = p.open;
    for (std::size_t n = 0; n < zones; ++n) {
        auto z = static_cast<std::size_t>(std::countr_zero(left));
        each_bit(left, [&](std::size_t y) { z = widest[y] > widest[z] ? y : z; });
        left &= ~bit(z);
        node& b = nodes_[n];
        place[z] = static_cast<std::uint8_t>(n);
        b.zone = z;
        b.parent = widest[z] > 0 ? place[via[z]] : n;
        b.labels = p.rows[z].count;
        b.children.clear();
        b.left_out.clear();
        if (b.parent != n) {
            nodes_[b.parent].children.push_back(place[z]);
        }
        for (const live_seam& s : p.seams) {
            const zone_row& x = p.rows[s.a];
            const zone_row& y = p.rows[s.b];
            const std::size_t other = s.a == z ? s.b : s.a;
            const cost_t step = s.price(std::max(x.high - y.low, y.high - x.low));
            if ((s.a == z || s.b == z) && step > widest[other]) {
                widest[other] = step;
                via[other] = static_cast<std::uint8_t>(z);
            }
        }
    }
}

/// A seam's steps into its node's table, or the seam among those left out.
void forest::add_seam(const open_plan& p, live_seam s) {
    s = place[s.a] < place[s.b] ? s.turned() : s;
    node& b = nodes_[place[s.a]];
    if (b.parent != place[s.b]) {
        b.left_out.push_back(s);
        nodes_[place[s.b]].left_out.push_back(s.turned());
        return;
    }
    cost_t* step = &cells[b.steps];
    for (const label& y : p.labels(s.b)) {
        for (const label& l : p.labels(s.a)) {
            *step++ += s.price(l.length - y.length);
        }
    }
}

void forest::plant(open_plan& p) {
    grow(p);
    p.rest = p.price;
    p.share.resize(p.rows.size());
    each_bit(~p.open & (bit(p.rows.size() - 1) * 2 - 1),
             [&](std::size_t z) { p.share[z].fill(0); });
    std::size_t end = 0;
    for (node& b : std::span(nodes_).first(order.size())) {
        by_tool& share = p.share[b.zone];
        const by_tool before = share;
        b.held = 0;
        for (const label& l : p.labels(b.zone)) {
            b.held |= l.tools;
        }
        share.fill(0);
        each_bit(b.held, [&](std::size_t t) {
            share[t] = before[t];
            p.rest[t] -= before[t];
        });
        const std::size_t beside = nodes_[b.parent].zone == b.zone ? 1 : nodes_[b.parent].labels;
        b.steps = end;
        b.below = b.steps + beside * b.labels;
        b.above = b.below + b.labels;
        b.least = b.above + b.labels;
        end = b.least + beside;
    }
    cells.resize(std::max(cells.size(), end));
    std::fill_n(cells.begin(), end, 0);
    for (const live_seam& s : p.seams) {
        add_seam(p, s);
    }
    fill(p);
}

/// What a node's parent reads.
void forest::close(const node& b) {
    const cost_t* const below = &cells[b.below];
    const cost_t* steps = &cells[b.steps];
    for (std::size_t n = b.least; steps < below; ++n, steps += b.labels) {
        cost_t least = unreachable;
        for (std::size_t l = 0; l < b.labels; ++l) {
            least = std::min(least, steps[l] + below[l]);
        }
        cells[n] = least;
    }
}

/// Costs, shares and tolls into the tables.
void forest::fill(const open_plan& p) {
    bound = p.paid - p.toll * p.budget;
    for (std::size_t n = order.size(); n-- > 0;) {
        const node& b = order[n];
        cost_t* below = &cells[b.below];
        for (const label& l : p.labels(b.zone)) {
            cost_t sum = l.cost + p.toll * l.spend;
            each_bit(l.tools, [&](std::size_t t) { sum += p.share[b.zone][t]; });
            for (const live_seam& s : b.left_out) {
                sum += p.eased[p.ease(s, l)];
            }
            for (const std::uint8_t c : b.children) {
                sum += cells[nodes_[c].least + static_cast<std::size_t>(below - &cells[b.below])];
            }
            *below++ = sum;
        }
        close(b);
        bound += b.parent == n ? cells[b.least] : 0;
    }
}

const std::vector<std::uint16_t>& forest::trace() {
    at_.resize(most_zones);
    for (const node& b : order) {
        const cost_t* const steps = &cells[b.steps + beside(b, at_) * b.labels];
        const cost_t* const below = &cells[b.below];
        std::uint16_t best = 0;
        for (std::uint16_t l = 1; l < b.labels; ++l) {
            best = steps[l] + below[l] < steps[best] + below[best] ? l : best;
        }
        at_[b.zone] = best;
    }
    return at_;
}

}  // namespace pelage::planning
