// Elimination: exact minima over all plans of a part, each zone paying its shares of its tools.
//
// Zones are eliminated one after another, fewest neighbours first; the table of a zone holds, for every
// choice in its separator (its neighbours still there), the least cost of the zone and of all that was
// eliminated into it. That is dynamic programming over a tree decomposition, so the sum of the roots is
// the exact minimum. Whatever seams are left out, the minimum is no more than with them, since steps
// cost: over a spanning forest of the seams the tables are small and still bound all plans.
#include <algorithm>

#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

/// For every choice in b's separator, the sum of the labels times a stride by zone.
void spots(const bucket& b, const open_plan& p, const std::array<std::uint32_t, most_zones>& stride,
           std::vector<std::uint32_t>& out) {
    out.assign(1, 0);
    for (const std::uint8_t z : b.separator) {
        const std::size_t before = out.size();
        for (std::uint32_t l = 1; l < p.rows[z].count; ++l) {
            for (std::size_t n = 0; n < before; ++n) {
                out.push_back(out[n] + l * stride[z]);
            }
        }
    }
}

}  // namespace

/// The order, each bucket's zone, separator, seams and children.
void tables::arrange(const open_plan& p, std::span<const live_seam> seams) {
    std::array<zone_set, most_zones> near{};
    std::array<std::uint8_t, most_zones> position{};
    for (const live_seam& s : seams) {
        near[s.a] |= zone_set{1} << s.b;
        near[s.b] |= zone_set{1} << s.a;
    }
    const auto zones = static_cast<std::size_t>(std::popcount(p.open));
    buckets_.resize(std::max(buckets_.size(), zones));
    order = std::span(buckets_).first(zones);
    zone_set left = p.open;
    for (std::size_t n = 0; n < zones; ++n) {
        bucket& b = buckets_[n];
        int fewest = most_zones;
        each_bit(left, [&](std::size_t z) {
            if (const int degree = std::popcount(near[z]); degree <= fewest) {
                fewest = degree;
                b.zone = z;
            }
        });
        left &= ~(zone_set{1} << b.zone);
        position[b.zone] = static_cast<std::uint8_t>(n);
        b.labels = p.rows[b.zone].count;
        b.separator.clear();
        b.seams.clear();
        b.children.clear();
        each_bit(near[b.zone], [&](std::size_t z) {
            b.separator.push_back(static_cast<std::uint8_t>(z));
            near[z] = (near[z] | near[b.zone]) & left & ~(zone_set{1} << z);
        });
    }
    for (std::size_t n = 0; n < zones; ++n) {
        auto& separator = buckets_[n].separator;
        std::sort(separator.begin(), separator.end(),
                  [&](std::size_t a, std::size_t b) { return position[a] < position[b]; });
        if (!separator.empty()) {
            buckets_[position[separator.front()]].children.push_back(static_cast<std::uint8_t>(n));
        }
    }
    for (live_seam s : seams) {  // a seam belongs to whichever of its zones goes first
        if (position[s.a] > position[s.b]) {
            std::swap(s.a, s.b);
        }
        buckets_[position[s.a]].seams.push_back(s);
    }
}

bool tables::build(const open_plan& p, std::span<const live_seam> seams, std::size_t most_cells) {
    arrange(p, seams);
    std::size_t end = 0;
    for (bucket& b : std::span(buckets_).first(order.size())) {
        b.stride.clear();
        b.places = 1;
        for (const std::uint8_t z : b.separator) {
            b.stride.push_back(static_cast<std::uint32_t>(b.places));
            b.places = std::min(most_cells, b.places * p.rows[z].count);
        }
        b.steps = end;
        b.joint = b.steps + b.places * b.labels;
        b.least = b.joint + b.places * b.labels;
        b.down = b.least + b.places;
        end = b.down + b.places;
        if (end > 2 * most_cells) {
            return false;
        }
    }
    cells.resize(std::max(cells.size(), end));
    row_.resize(most_setups);
    for (const bucket& b : order) {
        for (const std::uint8_t c : b.children) {
            std::array<std::uint32_t, most_zones> stride{};
            for (std::size_t i = 1; i < buckets_[c].separator.size(); ++i) {
                stride[buckets_[c].separator[i]] = buckets_[c].stride[i];
            }
            spots(b, p, stride, buckets_[c].base);
        }
        std::fill_n(&cells[b.steps], b.places * b.labels, 0);
        for (const live_seam& s : b.seams) {
            add_steps(p, b, s);
        }
    }
    return true;
}

/// Steps of one seam for the table of its first zone.
void tables::add_steps(const open_plan& p, const bucket& b, const live_seam& s) {
    const auto here = p.labels(b.zone);
    const auto there = p.labels(s.b);
    std::array<std::uint32_t, most_zones> stride{};
    stride[s.b] = 1;
    spots(b, p, stride, spot_);
    steps_.clear();
    for (const label& y : there) {
        for (const label& l : here) {
            steps_.push_back(s.price(l.length - y.length));
        }
    }
    for (std::size_t n = 0; n < b.places; ++n) {
        for (std::size_t l = 0; l < b.labels; ++l) {
            cells[b.steps + n * b.labels + l] += steps_[spot_[n] * b.labels + l];
        }
    }
}

/// The least of every row.
void tables::close(const bucket& b) {
    for (std::size_t n = 0; n < b.places; ++n) {
        const cost_t* const cell = &cells[b.joint + n * b.labels];
        cells[b.least + n] = *std::min_element(cell, cell + b.labels);
    }
}

/// What a child's table says into its parent's.
void tables::hear(const bucket& b, const bucket& child) {
    for (std::size_t n = 0; n < b.places; ++n) {
        cost_t* const cell = &cells[b.joint + n * b.labels];
        const cost_t* const least = &cells[child.least + child.base[n]];
        for (std::size_t l = 0; l < b.labels; ++l) {
            cell[l] += least[l];
        }
    }
}

void tables::fill(const open_plan& p) {
    bound = p.paid - p.toll * p.budget;
    for (bucket& b : std::span(buckets_).first(order.size())) {
        const auto zone = p.labels(b.zone);
        b.held = 0;
        for (std::size_t l = 0; l < b.labels; ++l) {
            row_[l] = zone[l].cost + p.toll * zone[l].spend;
            each_bit(zone[l].tools, [&](std::size_t t) { row_[l] += p.share[b.zone][t]; });
            b.held |= zone[l].tools;
        }
        for (std::size_t n = 0; n < b.places * b.labels; n += b.labels) {
            for (std::size_t l = 0; l < b.labels; ++l) {
                cells[b.joint + n + l] = cells[b.steps + n + l] + row_[l];
            }
        }
        for (const std::uint8_t c : b.children) {
            hear(b, buckets_[c]);
        }
        close(b);
        bound += b.separator.empty() ? cells[b.least] : 0;
    }
}

const std::vector<std::uint16_t>& tables::trace() {
    at_.resize(most_zones);
    for (std::size_t n = order.size(); n-- > 0;) {
        const bucket& b = order[n];
        const cost_t* const cell = &cells[b.joint + b.place(at_) * b.labels];
        at_[b.zone] = static_cast<std::uint16_t>(std::min_element(cell, cell + b.labels) - cell);
    }
    return at_;
}

}  // namespace pelage::planning
