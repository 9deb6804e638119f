// Elimination along a forest: exact minima over all plans of a part, each zone paying its shares of its
// tools, with the steps at some of the seams.
//
// Along a forest the least cost of a zone's label and of all below it is a sum over its children of
// minima over their labels: dynamic programming, exact, in one pass up. With one pass down the least
// cost of every label in any plan is known. Seams left out only add to a plan's cost, so the minimum
// bounds all plans; the seams kept are the dearest: each zone in turn is joined to those before it at
// the widest step that might be.
#include <algorithm>

#include "plan_parts.hpp"

namespace pelage::planning {

/// The order of the zones, each node's parent, children and seams left out.
void forest::grow(const open_plan& p) {
    const auto zones = static_cast<std::size_t>(std::popcount(p.open));
    nodes_.resize(std::max(nodes_.size(), zones));
    order = std::span(nodes_).first(zones);
    std::array<std::int64_t, most_zones> dearest_step{};
    std::array<std::size_t, most_zones> via{};  // zone with that step
    std::array<std::size_t, most_zones> place{};
    zone_set left = p.open;
    for (std::size_t n = 0; n < zones; ++n) {
        auto z = static_cast<std::size_t>(std::countr_zero(left));
        each_bit(left, [&](std::size_t y) { z = dearest_step[y] > dearest_step[z] ? y : z; });
        left &= ~(zone_set{1} << z);
        place[z] = n;
        node& b = nodes_[n];
        b.zone = z;
        b.parent = dearest_step[z] > 0 ? place[via[z]] : n;
        b.children.clear();
        b.left_out.clear();
        if (b.parent != n) {
            nodes_[b.parent].children.push_back(static_cast<std::uint8_t>(n));
        }
        for (live_seam s : p.seams) {
            if (s.b == z) {
                std::swap(s.a, s.b);
            }
            if (s.a != z) {
                continue;
            }
            if ((left >> s.b & 1U) == 0) {
                if (place[s.b] != b.parent) {
                    b.left_out.push_back(s);
                }
                continue;
            }
            const zone_row& y = p.rows[s.b];
            const cost_t step = s.price(std::max(p.rows[z].high - y.low, y.high - p.rows[z].low));
            if (step > dearest_step[s.b]) {
                dearest_step[s.b] = step;
                via[s.b] = z;
            }
        }
    }
}

void forest::plant(const open_plan& p) {
    grow(p);
    for (node& b : std::span(nodes_).first(order.size())) {
        b.before = b.left_out.size();
    }
    for (node& b : std::span(nodes_).first(order.size())) {
        for (std::size_t i = 0; i < b.before; ++i) {
            live_seam s = b.left_out[i];
            std::swap(s.a, s.b);
            for (node& c : std::span(nodes_).first(order.size())) if (c.zone == s.a) c.left_out.push_back(s);
        }
    }
    std::size_t end = 0;
    for (node& b : std::span(nodes_).first(order.size())) {
        b.labels = p.rows[b.zone].count;
        b.held = 0;
        for (const label& l : p.labels(b.zone)) {
            b.held |= l.tools;
        }
        const std::size_t beside = nodes_[b.parent].zone == b.zone ? 1 : nodes_[b.parent].labels;
        b.steps = end;
        b.below = b.steps + beside * b.labels;
        b.above = b.below + b.labels;
        b.least = b.above + b.labels;
        end = b.least + beside;
    }
    cells.resize(std::max(cells.size(), end));
    for (const node& b : order) {
        const node& parent = nodes_[b.parent];
        std::fill_n(&cells[b.steps], b.below - b.steps, 0);
        std::fill_n(&cells[b.above], b.labels, 0);
        for (const live_seam& s : p.seams) {
            if (&parent != &b && ((s.a == b.zone && s.b == parent.zone) || (s.b == b.zone && s.a == parent.zone))) {
                cost_t* step = &cells[b.steps];
                for (const label& y : p.labels(parent.zone)) {
                    for (const label& l : p.labels(b.zone)) {
                        *step++ += s.price(l.length - y.length);
                    }
                }
            }
        }
    }
    fill(p);
}

/// What a node's parent reads.
void forest::close(const node& b) {
    const cost_t* const below = &cells[b.below];
    for (std::size_t n = b.least, at = b.steps; at < b.below; ++n, at += b.labels) {
        cost_t least = unreachable;
        for (std::size_t l = 0; l < b.labels; ++l) {
            least = std::min(least, cells[at + l] + below[l]);
        }
        cells[n] = least;
    }
}

void forest::fill(const open_plan& p) {
    bound = p.paid - p.toll * p.budget;
    for (std::size_t n = order.size(); n-- > 0;) {
        const node& b = order[n];
        cost_t* below = &cells[b.below];
        for (const label& l : p.labels(b.zone)) {
            *below = l.cost + p.toll * l.spend;
            each_bit(l.tools, [&](std::size_t t) { *below += p.share[b.zone][t]; });
            for (const live_seam& s : b.left_out) *below += p.eased[p.ease(s, l)];
            ++below;
        }
        for (const std::uint8_t c : b.children) {
            for (std::size_t l = 0; l < b.labels; ++l) {
                cells[b.below + l] += cells[nodes_[c].least + l];
            }
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
