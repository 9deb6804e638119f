// Directions a sheet leaves open, one for each connected group of zones.
#include <algorithm>
#include <numeric>

#include <pelage/base/error.hpp>

#include "planner/compile.hpp"

namespace pelage {

namespace {

/// Rows of the problem by connected group with an open direction.
class open_directions {
  public:
    open_directions(const plan_request& r, const compiled_plan& c) : r_(r), c_(c) {
        std::vector<std::size_t> root(c.rows.size());
        std::iota(root.begin(), root.end(), std::size_t{0});
        const auto find_root = [&](std::size_t n) {
            while (root[n] != n) {
                n = root[n];
            }
            return n;
        };
        for (std::size_t a = 0; a < c.rows.size(); ++a) {
            for (std::size_t b = a + 1; open(a) && b < c.rows.size(); ++b) {
                if (open(b) && together(a, b)) {
                    const std::size_t x = find_root(a);
                    const std::size_t y = find_root(b);
                    root[std::max(x, y)] = std::min(x, y);
                }
            }
        }
        for (std::size_t n = 0; n < c.rows.size(); ++n) {
            if (open(n) && root[n] == n) {
                groups_.emplace_back();
                for (std::size_t m = n; m < c.rows.size(); ++m) {
                    if (open(m) && find_root(m) == n) {
                        groups_.back().push_back(m);
                    }
                }
            }
        }
    }

    [[nodiscard]] const std::vector<std::vector<std::size_t>>& groups() const { return groups_; }

  private:
    [[nodiscard]] const zone_plan& plan(std::size_t row) const { return c_.zones[c_.rows[row]]; }
    [[nodiscard]] bool open(std::size_t row) const {
        const zone_plan& z = plan(row);
        return z.way == lay_choice::either && clips(z.how_finished) && z.target.has_value();
    }
    [[nodiscard]] bool together(std::size_t a, std::size_t b) const {
        const body& dog = r_.reference.dog_body;
        const std::size_t x = plan(a).at.zone;
        const std::size_t y = plan(b).at.zone;
        return x == y || (dog.zones[x].where == dog.zones[y].where &&
                          std::any_of(dog.seams.begin(), dog.seams.end(), [&](const seam& s) {
                              return (s.a == x && s.b == y) || (s.a == y && s.b == x);
                          }));
    }

    const plan_request& r_;
    const compiled_plan& c_;
    std::vector<std::vector<std::size_t>> groups_;
};

/// Bars in `rows` what goes the other way than `way`; a mat is clipped off with the lay whatever way the
/// coat around it is clipped later.
void keep_way(const ready_kit& ready, const compiled_plan& c, const std::vector<std::size_t>& rows,
              direction way, problem& p) {
    const auto& setups = ready.top().setups();
    for (const std::size_t row : rows) {
        std::erase_if(p.zones[row], [&](const allowed_setup& a) {
            const setup& s = setups[c.setup_of(a.setup)];
            const bool under_mat =
                !c.combed(a.setup) && c.setup_of(a.setup) == c.under[c.rows[row]];
            return s.kind == tool_kind::clip && s.way != way && !under_mat;
        });
    }
}

bool better(const solution& a, const solution& b) {
    if (a.setup.empty() || b.setup.empty()) {
        return !a.setup.empty();
    }
    return a.cost < b.cost || (a.cost == b.cost && a.setup < b.setup);
}

}  // namespace

solution choose(const plan_request& r, const ready_kit& ready, const compiled_plan& c,
                const problem& of, std::int64_t most_nodes) {
    const open_directions open(r, c);
    const auto& groups = open.groups();
    if (groups.empty()) {
        return solve(of, most_nodes);
    }
    constexpr std::size_t most_groups = 10;  // of 34 zones in six groups there are fewer
    if (groups.size() > most_groups) {
        throw error(errc::range, "too many groups of zones with an open direction");
    }
    solution best;
    std::int64_t bound = 0;
    std::int64_t nodes = 0;
    bool proven = true;
    for (std::uint32_t ways = 0; ways < 1U << groups.size(); ++ways) {
        problem p = of;
        for (std::size_t g = 0; g < groups.size(); ++g) {
            const bool against = (ways >> g & 1U) != 0;
            keep_way(ready, c, groups[g], against ? direction::against_lay : direction::with_lay,
                     p);
        }
        // hard in one way is mostly hard in all: together they weigh little more than one may
        solution s = solve(p, std::max(most_nodes - nodes, most_nodes / 100));
        nodes += s.sure.nodes;
        if (!s.setup.empty()) {
            bound = best.setup.empty() ? s.sure.bound : std::min(bound, s.sure.bound);
            proven = proven && s.sure.optimal;
        }
        if (ways == 0 || better(s, best)) {
            best = std::move(s);
        }
    }
    if (best.setup.empty()) {
        // one place can be done one way only and its neighbour the other: tracks are no reason to do nothing
        best = solve(of, most_nodes);
        bound = best.sure.bound;
        proven = best.sure.optimal;
        nodes += best.sure.nodes;
    }
    best.sure.nodes = nodes;
    if (!best.setup.empty()) {
        best.sure.bound = bound;
        best.sure.optimal = proven || bound >= in_mmin(best.cost);
    }
    return best;
}

}  // namespace pelage
