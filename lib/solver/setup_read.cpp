// From a problem to labels: without those that a zone's cheapest one removes wherever the neighbours are.
//
// Let b be a setup of least cost in a zone, k another. Exchanging k for b changes a plan's cost by at most
//   c_b - c_k + (price of 0.01 mm at all the zone's seams) * |L_b - L_k|
//             + (prices of b's tools, unless k holds them all),
// since no seam's price is steeper. Below 0, and if b spends no more, k is in no optimum.
//
// A tool that all setups of some zone hold is in every plan: it is paid from the start.
#include "solver/setup_parts.hpp"

namespace pelage::planning {

namespace {

void read_seams(const problem& p, part& out, seam_list& seams) {
    std::uint32_t end = 2;
    seams.resize(2 + 2 * p.seams.size(), boost::container::default_init);
    for (const seam_cost& s : p.seams) {
        if (s.a == s.b || s.per_hundredth == 0) {  // a zone has no step to itself
            continue;
        }
        zone_row& x = out.rows[s.a];
        zone_row& y = out.rows[s.b];
        x.steepest += s.per_hundredth;
        y.steepest += s.per_hundredth;
        if (std::max(x.high - y.low, y.high - x.low) <= s.allowance) {
            continue;  // no step there costs anything
        }
        seams[end] = {std::exchange(x.seam, end), x.seams++, static_cast<std::uint32_t>(s.b),
                      s.per_hundredth, s.allowance};
        seams[end + 1] = {std::exchange(y.seam, end + 1), y.seams++,
                          static_cast<std::uint32_t>(s.a), s.per_hundredth, s.allowance};
        end += 2;
    }
    out.seams = {seams.data(), end};
}

/// The only setup of a zone, settled: most zones of a small kit have one. Its tools are in every plan.
void read_only(const allowed_setup& only, zone_row& row, part& out) {
    label& l = out.pool[row.first];
    l.tools = 0;
    l.cost = only.cost;
    l.length = only.length;
    l.setup = only.setup;
    l.spend = only.spend;
    l.gone = false;
    row.count = 1;
    row.all = 0;
    out.budget -= only.spend;
}

/// Into the pool, from the zone's first place on; the row's lengths are those of what is left of it. Whether
/// others are as cheap as the cheapest.
bool read_zone(const std::vector<allowed_setup>& zone, tool_set always, zone_row& row, part& out) {
    const allowed_setup& best = zone[row.least];
    const cost_t tools = sum_of(best.tools, out.price);
    label* end = out.pool.data() + row.first;
    int as_cheap = 0;
    for (const allowed_setup& k : zone) {  // without branches: which one goes is hard to guess
        const cost_t apart = std::abs(best.length - k.length);
        const cost_t d =
            best.cost - k.cost + row.steepest * apart + ((best.tools & ~k.tools) != 0 ? tools : 0);
        end->tools = k.tools & ~always;
        end->cost = k.cost;
        end->length = k.length;
        end->setup = k.setup;
        end->spend = k.spend;
        end->gone = false;
        end += ((d >= 0) | (best.spend > k.spend)) ? 1 : 0;
        as_cheap += k.cost == best.cost ? 1 : 0;
    }
    row.low = longest_hair;
    row.high = 0;
    for (const label* l = out.pool.data() + row.first; l != end; ++l) {
        row.add(*l);
    }
    return as_cheap > 1;
}

}  // namespace

part read(const problem& p, seam_list& seams, solution& out) {
    part root;
    root.rows.resize(p.zones.size());
    root.budget = p.budget;
    std::copy(p.price.begin(), p.price.end(), root.price.begin());
    std::vector<std::size_t> empty;     // zones in which no setup is allowed
    std::vector<std::size_t> spending;  // zones in which every setup needs some of the budget
    tool_set always = 0;
    std::uint32_t cells = 0;
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        tool_set all = ~tool_set{0};
        std::int32_t least = dearest;  // so it stays where there is no setup
        std::uint32_t n = 0;
        cost_t best = none;  // its cost and, in the last 16 bits, which it is
        std::int32_t low = longest_hair;
        std::int32_t high = 0;
        std::int32_t most = 0;  // not 0 where any spends
        for (const allowed_setup& s : p.zones[z]) {
            low = std::min(low, s.length);
            high = std::max(high, s.length);
            all &= s.tools;
            least = std::min(least, s.spend);
            most |= s.spend;
            best = std::min(best, cost_t{s.cost} << 16 | n++);
        }
        always |= all;
        zone_row& row = root.rows[z];
        row.low = low;
        row.high = high;
        row.first = std::exchange(cells, cells + n);
        // so far an index of setups, for read_zone()
        row.least = static_cast<std::uint32_t>(best & 0xffff);
        root.spends |= most != 0;
        root.open |= bit(z);
        if (least > 0) {
            (n == 0 ? empty : spending).push_back(z);
        }
    }
    read_seams(p, root, seams);
    root.hopeless = !empty.empty();
    out.stuck = root.hopeless ? empty : spending;
    root.paid = sum_of(always, root.price);
    each_bit(always, [&](std::size_t t) { root.price[t] = 0; });
    root.pool.resize(cells, boost::container::default_init);
    root.fresh = root.apart = root.open;
    each_bit(root.hopeless ? 0 : root.open, [&](std::size_t z) {
        if (p.zones[z].size() == 1) {
            read_only(p.zones[z].front(), root.rows[z], root);
            root.open &= ~bit(z);
        } else {
            out.sure.ties += read_zone(p.zones[z], always, root.rows[z], root) ? 1 : 0;
        }
    });
    root.hopeless = root.hopeless || root.budget < 0;
    return root;
}

}  // namespace pelage::planning
