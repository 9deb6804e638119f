#include <algorithm>
#include <bit>

#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

using zone_set = std::uint64_t;

std::vector<zone_set> neighbours(const open_plan& p) {
    std::vector<zone_set> near(p.zones, 0);
    for (const live_seam& s : p.seams) {
        near[s.a] |= zone_set{1} << s.b;
        near[s.b] |= zone_set{1} << s.a;
    }
    return near;
}

}  // namespace

bool elimination::build(const open_plan& p) {
    std::vector<zone_set> near = neighbours(p);
    std::vector<std::size_t> position(p.zones, none);
    zone_set left = 0;
    for (std::size_t z = 0; z < p.zones; ++z) {
        left |= p.open(z) ? zone_set{1} << z : 0;
    }
    used_ = 0;
    while (left != 0) {
        std::size_t next = none;
        for (zone_set s = left; s != 0; s &= s - 1) {
            const auto z = static_cast<std::size_t>(std::countr_zero(s));
            if (next == none || std::popcount(near[z]) < std::popcount(near[next])) {
                next = z;
            }
        }
        if (used_ == order_.size()) {
            order_.emplace_back();
        }
        bucket& b = order_[used_];
        b.zone = next;
        b.parent = none;
        b.separator.clear();
        b.stride.clear();
        b.seams.clear();
        b.children.clear();
        std::size_t cells = 1;
        for (zone_set s = near[next]; s != 0; s &= s - 1) {
            const auto z = static_cast<std::size_t>(std::countr_zero(s));
            b.separator.push_back(static_cast<std::uint16_t>(z));
            b.stride.push_back(static_cast<std::uint32_t>(cells));
            cells *= p.labels[z].size();
            if (cells * p.labels[next].size() > most_cells) {
                return false;
            }
            near[z] = (near[z] | near[next]) & ~(zone_set{1} << z) & ~(zone_set{1} << next);
        }
        b.least.resize(cells);
        b.best.resize(cells);
        b.down.resize(cells);
        b.joint.resize(cells * p.labels[next].size());
        position[next] = used_++;
        left &= ~(zone_set{1} << next);
    }
    for (std::size_t n = 0; n < used_; ++n) {
        bucket& b = order_[n];
        for (const std::uint16_t z : b.separator) {
            b.parent = std::min(b.parent, position[z]);
        }
        if (b.parent != none) {
            order_[b.parent].children.push_back(n);
            const auto at = std::find(b.separator.begin(), b.separator.end(),
                                      static_cast<std::uint16_t>(order_[b.parent].zone));
            b.step = b.stride[static_cast<std::size_t>(at - b.separator.begin())];
        }
    }
    // a seam belongs to whichever of its zones goes first
    for (live_seam s : p.seams) {
        if (position[s.a] > position[s.b]) {
            std::swap(s.a, s.b);
        }
        order_[position[s.a]].seams.push_back(s);
    }
    at_.assign(p.zones, 0);
    return true;
}

std::uint32_t elimination::place_of(const bucket& b) const {
    std::uint32_t place = 0;
    for (std::size_t i = 0; i < b.separator.size(); ++i) {
        place += b.stride[i] * at_[b.separator[i]];
    }
    return place;
}

/// Visits every choice of labels in the separator of `b`, written into at_, with its place.
template <class Visit>
void elimination::each_separator(const open_plan& p, const bucket& b, Visit visit) {
    for (const std::uint16_t z : b.separator) {
        at_[z] = 0;
    }
    for (std::uint32_t place = 0; place < b.least.size(); ++place) {
        visit(place);
        for (const std::uint16_t z : b.separator) {
            if (++at_[z] < p.labels[z].size()) {
                break;
            }
            at_[z] = 0;
        }
    }
}

void elimination::trace(const bucket& b) {
    at_[b.zone] = b.best[place_of(b)];
    for (const std::size_t c : b.children) {
        trace(order_[c]);
    }
}

/// Whether label `i` of b's zone, with the best of all below it, is the earlier plan than `j`; the
/// separator's labels stand in at_.
bool elimination::earlier(const open_plan& p, const bucket& b, std::uint16_t i, std::uint16_t j) {
    const auto spread = [&](std::uint16_t label) {
        at_[b.zone] = label;
        for (const std::size_t c : b.children) {
            trace(order_[c]);
        }
    };
    spread(j);
    other_ = at_;
    spread(i);
    for (std::size_t z = 0; z < p.zones; ++z) {
        if (at_[z] != other_[z]) {
            return p.labels[z][at_[z]].setup < p.labels[z][other_[z]].setup;
        }
    }
    return false;
}

/// Own costs and steps of every label of b's zone beside the separator's labels in at_.
void elimination::beside(const open_plan& p, const bucket& b) {
    const auto& labels = p.labels[b.zone];
    row_ = shared_[b.zone];
    for (const live_seam& s : b.seams) {
        const std::int32_t there = p.labels[s.b][at_[s.b]].length;
        for (std::size_t l = 0; l < labels.size(); ++l) {
            row_[l] += step_price(s, labels[l].length - there);
        }
    }
    at_[b.zone] = 0;
    for (const std::size_t c : b.children) {
        const bucket& child = order_[c];
        const cost_t* least = &child.least[place_of(child)];
        for (std::size_t l = 0; l < labels.size(); ++l) {
            row_[l] += least[l * child.step];
        }
    }
}

void elimination::fill(const open_plan& p, bucket& b) {
    const auto n = static_cast<std::uint16_t>(p.labels[b.zone].size());
    each_separator(p, b, [&](std::uint32_t place) {
        beside(p, b);
        std::uint16_t best = 0;
        for (std::uint16_t l = 1; l < n; ++l) {
            if (row_[l] < row_[best] || (row_[l] == row_[best] && earlier(p, b, l, best))) {
                best = l;
            }
        }
        std::copy(row_.begin(), row_.end(), &b.joint[std::size_t{place} * n]);
        b.least[place] = row_[best];
        b.best[place] = best;
    });
}

cost_t elimination::solve(const open_plan& p, std::vector<std::uint16_t>& chosen) {
    shared_.resize(p.zones);
    for (std::size_t n = 0; n < used_; ++n) {
        const std::size_t z = order_[n].zone;
        shared_[z].clear();
        for (const label& l : p.labels[z]) {
            cost_t sum = l.cost;
            for (tool_set t = l.tools; t != 0; t &= t - 1) {
                sum += p.share[z][static_cast<std::size_t>(std::countr_zero(t))];
            }
            shared_[z].push_back(sum);
        }
    }
    std::fill(at_.begin(), at_.end(), std::uint16_t{0});
    cost_t total = 0;
    for (std::size_t n = 0; n < used_; ++n) {
        fill(p, order_[n]);
    }
    for (std::size_t n = used_; n-- > 0;) {
        if (order_[n].parent == none) {
            total += order_[n].least.front();
            trace(order_[n]);
        }
    }
    for (std::size_t z = 0; z < p.zones; ++z) {
        total += p.open(z) ? 0 : p.labels[z].front().cost;
    }
    chosen = at_;
    return total;
}

/// Tells the children of `b` what everything outside them costs at least.
void elimination::send_down(const open_plan& p, const bucket& b) {
    for (const std::size_t c : b.children) {
        std::fill(order_[c].down.begin(), order_[c].down.end(), unreachable);
    }
    const std::size_t n = p.labels[b.zone].size();
    each_separator(p, b, [&](std::uint32_t place) {
        at_[b.zone] = 0;
        for (const std::size_t c : b.children) {
            bucket& child = order_[c];
            const std::uint32_t there = place_of(child);
            for (std::size_t l = 0; l < n; ++l) {
                const std::size_t cell = there + l * child.step;
                const cost_t whole = b.joint[place * n + l] + b.down[place];
                child.down[cell] = std::min(child.down[cell], whole - child.least[cell]);
            }
        }
    });
}

void elimination::marginals(const open_plan& p, std::vector<std::vector<cost_t>>& out) {
    out.resize(p.zones);
    cost_t roots = 0;
    for (std::size_t z = 0; z < p.zones; ++z) {
        roots += p.open(z) ? 0 : p.labels[z].front().cost;
    }
    for (std::size_t n = 0; n < used_; ++n) {
        roots += order_[n].parent == none ? order_[n].least.front() : 0;
    }
    for (std::size_t n = used_; n-- > 0;) {
        bucket& b = order_[n];
        if (b.parent == none) {  // the other trees cost what they cost
            b.down.front() = roots - b.least.front();
        }
        send_down(p, b);
        const std::size_t count = p.labels[b.zone].size();
        out[b.zone].assign(count, unreachable);
        for (std::size_t place = 0; place < b.least.size(); ++place) {
            for (std::size_t l = 0; l < count; ++l) {
                out[b.zone][l] =
                    std::min(out[b.zone][l], b.joint[place * count + l] + b.down[place]);
            }
        }
    }
}

}  // namespace pelage::planning
