// Reading a problem: what is wrong with it, and the labels to begin with.
#include <algorithm>
#include <cstdlib>
#include <numeric>

#include <pelage/error.hpp>

#include "plan_parts.hpp"

namespace pelage::planning {

namespace {

void need(bool holds, const char* what) {
    if (!holds) {
        throw error(errc::range, what);
    }
}

bool within(std::int32_t x, std::int32_t most) {
    return x >= 0 && x <= most;
}

/// Whether eight setups beside each other are all forbidden, as most are.
bool none_allowed(const std::int32_t* cost) {
    std::int32_t other = 0;
    for (int i = 0; i < 8; ++i) {
        other |= cost[i] ^ forbidden;
    }
    return other == 0;
}

void read_zone(const problem& p, std::size_t z, open_plan& out) {
    const std::size_t end = p.at(z + 1, 0);
    out.rows[z].first = static_cast<std::uint32_t>(out.pool.size());
    for (std::size_t from = p.at(z, 0); from < end; from += 8) {
        if (from + 8 <= end && none_allowed(&p.cost[from])) {
            continue;
        }
        for (std::size_t i = from; i < std::min(from + 8, end); ++i) {
            if (p.cost[i] != forbidden) {
                out.pool.push_back({p.length[i], static_cast<std::uint16_t>(i - p.at(z, 0)),
                                    out.spends ? p.spend[i] : std::uint8_t{0}, false, p.tools[i],
                                    p.cost[i], 0, 0});
            }
        }
    }
    out.rows[z].count = static_cast<std::uint32_t>(out.pool.size()) - out.rows[z].first;
}

/// Ends of what a problem asks for.
struct extent {
    std::int64_t cost = 0;  // no plan costs more
    std::int32_t low = longest_hair;
    std::int32_t high = 0;
};

/// Checks a zone's labels and marks what the cheapest plainly dominates: wherever a neighbour is, two
/// labels' steps to it differ by at most `reach` times the difference of their lengths.
void sift(open_plan& p, std::size_t z, std::int64_t reach, tool_set priced, extent& all,
          first_look& look) {
    const auto zone = p.labels(z);
    label m = zone.front();
    std::int32_t dear = 0;
    std::uint8_t spend = 255;
    tool_set held = 0;
    for (const label& l : zone) {
        m = l.cost < m.cost ? l : m;
        dear = std::max(dear, l.cost);
        spend = std::min(spend, l.spend);
        held |= l.tools;
        all.low = std::min(all.low, l.length);
        all.high = std::max(all.high, l.length);
    }
    need(m.cost >= 0 && dear <= dearest, "a cost lies outside 0 to 1000 minutes");
    need(all.low >= 0 && all.high <= longest_hair, "a length lies outside 0 to 1000 mm");
    need((held & ~priced) == 0, "a setup holds a tool that has no price");
    all.cost += dear;
    std::size_t cheapest = 0;
    for (label& k : zone) {
        const std::int64_t d = m.cost - k.cost + reach * std::abs(m.length - k.length);
        cheapest += k.cost == m.cost ? 1 : 0;
        k.gone = d <= 0 && m.spend <= k.spend && m.setup != k.setup &&
                 d + p.price_of(m.tools & ~k.tools) < (m.setup < k.setup ? 1 : 0);
    }
    look.ties += cheapest > 1 ? 1 : 0;
    if (spend > 0) {
        look.spending.push_back(z);
    }
}

/// What doesn't depend on the setups.
void check_frame(const problem& p) {
    need(p.zones <= most_zones && p.setups <= most_setups && p.price.size() <= most_tools &&
             p.seams.size() <= most_steps,
         "too many zones, setups, tools or seams");
    const std::size_t cells = p.zones * p.setups;
    need(p.cost.size() == cells && p.length.size() == cells && p.tools.size() == cells,
         "costs, lengths and tools need one entry per zone and setup");
    need(p.spend.empty() || p.spend.size() == cells,
         "minutes of combing out need one entry per zone and setup, or none at all");
    need(p.budget >= 0, "a budget lies below 0 minutes");
    for (const std::int32_t price : p.price) {
        need(within(price, dearest), "a price lies outside 0 to 1000 minutes");
    }
    for (const seam_cost& s : p.seams) {
        need(s.a < p.zones && s.b < p.zones && s.allowance >= 0 &&
                 within(s.per_hundredth, dearest / 1000),
             "a seam names no zone of the problem or lies outside its bounds");
    }
}

}  // namespace

void read(const problem& p, open_plan& out, first_look& look) {
    check_frame(p);
    out.rows.assign(p.zones, {});
    out.pool.clear();
    out.seams.clear();
    out.open = out.fresh = 0;
    out.unsettled = p.zones < 64 ? (zone_set{1} << p.zones) - 1 : ~zone_set{0};
    out.paid = out.toll = 0;
    out.budget = p.budget;
    out.spends = !p.spend.empty();
    out.setups = p.setups;
    out.price.fill(0);
    std::copy(p.price.begin(), p.price.end(), out.price.begin());
    std::array<std::int64_t, most_zones> reach{};
    for (const seam_cost& s : p.seams) {
        reach[s.a] += s.per_hundredth;
        reach[s.b] += s.per_hundredth;
    }
    const tool_set priced = p.price.size() == most_tools ? ~tool_set{0} : bit(p.price.size()) - 1;
    extent all{std::accumulate(p.price.begin(), p.price.end(), std::int64_t{0})};
    for (std::size_t z = 0; z < p.zones; ++z) {
        read_zone(p, z, out);
        if (out.rows[z].count == 0) {
            look.without.push_back(z);
            continue;
        }
        sift(out, z, reach[z], priced, all, look);
        out.open |= bit(z);
        out.drop(z);
        out.pool.resize(out.rows[z].first + out.rows[z].count);
    }
    out.fresh = out.open;
    for (const seam_cost& s : p.seams) {
        all.cost += std::int64_t{s.per_hundredth} * std::max(0, all.high - all.low - s.allowance);
        if (s.a != s.b) {  // a zone has no step to itself
            out.seams.push_back({static_cast<std::uint8_t>(s.a), static_cast<std::uint8_t>(s.b), 0,
                                 s.per_hundredth, s.allowance});
        }
    }
    need(all.cost <= most_cost, "the dearest plan would cost more than 250000 minutes");
}

}  // namespace pelage::planning
