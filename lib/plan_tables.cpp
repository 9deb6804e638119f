// Elimination: exact minima over all plans of a part, each zone paying its shares of its tools.
//
// Zones are eliminated one after another, fewest neighbours first; the table of a zone holds, for every
// choice in its separator (its neighbours still there), the least cost of the zone and of all that was
// eliminated into it. That is dynamic programming over a tree decomposition, so the sum of the roots is
// the exact minimum. Whatever seams are left out, the minimum is no more than with them, since steps
// don't pay: over a spanning forest of the seams the tables are small and still bound all plans.
#include <algorithm>

#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

/// For every choice of labels in b's separator, the sum of `stride` times the label.
void places(const bucket& b, const open_plan& p, const std::vector<std::uint32_t>& stride,
            std::vector<std::uint32_t>& out) {
    out.assign(1, 0);
    for (std::size_t i = 0; i < b.separator.size(); ++i) {
        const std::size_t before = out.size();
        for (std::uint32_t l = 1; l < p.rows[b.separator[i]].count; ++l) {
            for (std::size_t n = 0; n < before; ++n) {
                out.push_back(out[n] + l * stride[i]);
            }
        }
    }
}

}  // namespace

/// The order, and each bucket's zone and separator.
void tables::order(const open_plan& p, std::span<const live_seam> seams) {
    std::array<zone_set, most_zones> near{};
    for (const live_seam& s : seams) {
        near[s.a] |= zone_set{1} << s.b;
        near[s.b] |= zone_set{1} << s.a;
    }
    std::array<int, most_zones> degree{};
    each_bit(p.open, [&](std::size_t z) { degree[z] = std::popcount(near[z]); });
    std::array<std::uint8_t, most_zones> position{};
    used_ = 0;
    for (zone_set left = p.open; left != 0;) {
        std::size_t next = most_zones;
        each_bit(left, [&](std::size_t z) {
            if (next == most_zones || degree[z] <= degree[next]) {
                next = z;
            }
        });
        if (used_ == order_.size()) {
            order_.emplace_back();
        }
        bucket& b = order_[used_];
        b.zone = next;
        b.labels = p.rows[next].count;
        b.separator.clear();
        b.seams.clear();
        b.children.clear();
        each_bit(near[next], [&](std::size_t z) {
            b.separator.push_back(static_cast<std::uint8_t>(z));
            near[z] = (near[z] | near[next]) & ~(zone_set{1} << z) & ~(zone_set{1} << next);
            degree[z] = std::popcount(near[z]);
        });
        left &= ~(zone_set{1} << next);
        position[next] = static_cast<std::uint8_t>(used_++);
    }
    for (std::size_t n = 0; n < used_; ++n) {
        auto& separator = order_[n].separator;
        std::sort(separator.begin(), separator.end(),
                  [&](std::size_t a, std::size_t b) { return position[a] < position[b]; });
        order_[n].root = separator.empty();
        if (!separator.empty()) {
            order_[position[separator.front()]].children.push_back(static_cast<std::uint8_t>(n));
        }
    }
    // a seam belongs to whichever of its zones goes first
    for (live_seam s : seams) {
        if (position[s.a] > position[s.b]) {
            std::swap(s.a, s.b);
        }
        order_[position[s.a]].seams.push_back(s);
    }
}

bool tables::lay_out(const open_plan& p, std::size_t most_cells) {
    std::size_t cells = 0;
    for (std::size_t n = 0; n < used_; ++n) {
        bucket& b = order_[n];
        b.stride.clear();
        b.places = 1;
        for (const std::uint8_t z : b.separator) {
            b.stride.push_back(static_cast<std::uint32_t>(b.places));
            b.places *= p.rows[z].count;
            if (b.places * b.labels > most_cells) {
                return false;
            }
        }
        b.steps = cells;
        b.joint = b.steps + b.places * b.labels;
        b.least = b.joint + b.places * b.labels;
        b.told = b.least + b.places;
        b.down = b.told + b.places;
        cells = b.down + b.places;
        if (cells > most_cells) {
            return false;
        }
    }
    if (cells_.size() < cells) {
        cells_.resize(cells);
    }
    return true;
}

void tables::link(const open_plan& p, std::size_t parent, std::size_t child) {
    const bucket& b = order_[parent];
    bucket& c = order_[child];
    std::array<std::uint32_t, most_zones> by_zone{};
    for (std::size_t i = 1; i < c.separator.size(); ++i) {
        by_zone[c.separator[i]] = c.stride[i];
    }
    stride_.clear();
    for (const std::uint8_t z : b.separator) {
        stride_.push_back(by_zone[z]);
    }
    places(b, p, stride_, c.base);
}

bool tables::build(const open_plan& p, std::span<const live_seam> seams, std::size_t most_cells) {
    order(p, seams);
    if (!lay_out(p, most_cells)) {
        return false;
    }
    for (std::size_t n = 0; n < used_; ++n) {
        const bucket& b = order_[n];
        for (const std::uint8_t c : b.children) {
            link(p, n, c);
        }
        row_.resize(std::max(row_.size(), b.labels));
        std::fill_n(&cells_[b.steps], b.places * b.labels, 0);
        for (const live_seam& s : b.seams) {
            add_steps(p, b, s);
        }
    }
    return true;
}

/// Steps of one seam for the table of its first zone.
void tables::add_steps(const open_plan& p, const bucket& b, const live_seam& s) {
    const auto at = std::find(b.separator.begin(), b.separator.end(), s.b);
    const std::size_t stride = b.stride[static_cast<std::size_t>(at - b.separator.begin())];
    const auto here = p.labels(b.zone);
    const auto there = p.labels(s.b);
    for (std::size_t j = 0; j < there.size(); ++j) {
        for (std::size_t l = 0; l < b.labels; ++l) {
            row_[l] = step_price(s, here[l].length - there[j].length);
        }
        for (std::size_t from = j * stride; from < b.places; from += stride * there.size()) {
            for (std::size_t n = from; n < from + stride; ++n) {
                cost_t* const cell = &cells_[b.steps + n * b.labels];
                for (std::size_t l = 0; l < b.labels; ++l) {
                    cell[l] += row_[l];
                }
            }
        }
    }
}

void tables::close(const bucket& b) {
    for (std::size_t n = 0; n < b.places; ++n) {
        const cost_t* const cell = &cells_[b.joint + n * b.labels];
        cells_[b.least + n] = *std::min_element(cell, cell + b.labels);
    }
}

/// What a child's table says now, into its parent's.
void tables::hear(const bucket& b, const bucket& child) {
    for (std::size_t n = 0; n < b.places; ++n) {
        cost_t* const cell = &cells_[b.joint + n * b.labels];
        const cost_t* const least = &cells_[child.least + child.base[n]];
        cost_t* const told = &cells_[child.told + child.base[n]];
        for (std::size_t l = 0; l < b.labels; ++l) {
            cell[l] += least[l] - told[l];
        }
    }
}

void tables::fill(const open_plan& p) {
    bound_ = p.paid - p.toll * p.budget;
    for (std::size_t n = 0; n < used_; ++n) {
        const bucket& b = order_[n];
        const auto zone = p.labels(b.zone);
        for (std::size_t l = 0; l < zone.size(); ++l) {
            row_[l] = zone[l].cost + p.toll * zone[l].spend;
            each_bit(zone[l].tools, [&](std::size_t t) { row_[l] += p.share[b.zone][t]; });
        }
        for (std::size_t m = 0; m < b.places * b.labels; m += b.labels) {
            for (std::size_t l = 0; l < b.labels; ++l) {
                cells_[b.joint + m + l] = cells_[b.steps + m + l] + row_[l];
            }
        }
        for (const std::uint8_t c : b.children) {
            std::fill_n(&cells_[order_[c].told], order_[c].places, 0);
            hear(b, order_[c]);
        }
        close(b);
        bound_ += b.root ? cells_[b.least] : 0;
    }
}

void tables::trace(std::vector<std::uint16_t>& chosen) const {
    for (std::size_t n = used_; n-- > 0;) {
        const bucket& b = order_[n];
        const cost_t* const cell = &cells_[b.joint + b.place(chosen) * b.labels];
        chosen[b.zone] = static_cast<std::uint16_t>(std::min_element(cell, cell + b.labels) - cell);
    }
}

}  // namespace pelage::planning
