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
        if (s.a != s.b && s.per_hundredth > 0) {  // a zone has no step to itself
            for (const auto& [a, b] : {std::pair{s.a, s.b}, std::pair{s.b, s.a}}) {
                zone_row& row = out.rows[a];
                seams[end] = {row.seam, row.seams++, static_cast<std::uint32_t>(b), s.per_hundredth,
                              s.allowance};
                row.seam = end++;
                row.steepest += s.per_hundredth;
            }
        }
    }
    out.seams = {seams.data(), end};
}

/// Into the pool, from the zone's first place on. Whether others are as cheap as the cheapest.
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
        end += (d >= 0) | (best.spend > k.spend) ? 1 : 0;
        as_cheap += k.cost == best.cost ? 1 : 0;
    }
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
    read_seams(p, root, seams);
    std::vector<std::size_t> empty;     // zones in which no setup is allowed
    std::vector<std::size_t> spending;  // zones in which every setup needs some of the budget
    tool_set always = 0;
    std::uint32_t cells = 0;
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        tool_set all = ~tool_set{0};
        std::int32_t least = dearest;  // so it stays where there is no setup
        std::uint32_t n = 0;
        cost_t best = none;  // its cost and, in the last 16 bits, which it is
        for (const allowed_setup& s : p.zones[z]) {
            all &= s.tools;
            least = std::min(least, s.spend);
            root.spends |= s.spend > 0;
            best = std::min(best, cost_t{s.cost} << 16 | n++);
        }
        always |= all;
        root.rows[z].first = std::exchange(cells, cells + n);
        // so far an index of setups, for read_zone()
        root.rows[z].least = static_cast<std::uint32_t>(best & 0xffff);
        root.open |= bit(z);
        if (least > 0) {
            (n == 0 ? empty : spending).push_back(z);
        }
    }
    root.hopeless = !empty.empty();
    out.stuck = root.hopeless ? empty : spending;
    root.paid = sum_of(always, root.price);
    each_bit(always, [&](std::size_t t) { root.price[t] = 0; });
    root.pool.resize(cells, boost::container::default_init);
    each_bit(root.hopeless ? 0 : root.open, [&](std::size_t z) {
        out.sure.ties += read_zone(p.zones[z], always, root.rows[z], root) ? 1 : 0;
    });
    root.fresh = root.apart = root.open;
    return root;
}

}  // namespace pelage::planning
