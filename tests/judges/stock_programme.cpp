#include "judges/stock_programme.hpp"

#include <algorithm>
#include <bit>
#include <map>

namespace judges {

using pelage::item_set;

namespace {

/// The column that says whether the whole way is there; adds one for a way of several items.
std::size_t column_of(item_set way, integer_programme& ip, std::map<item_set, std::size_t>& known) {
    if (std::popcount(way) == 1) {
        return static_cast<std::size_t>(std::countr_zero(way));
    }
    const auto [at, fresh] = known.try_emplace(way, ip.columns.size());
    if (fresh) {
        ip.columns.push_back({0, 1, false});
        for (item_set left = way; left != 0; left &= left - 1) {
            const auto item = static_cast<std::size_t>(std::countr_zero(left));
            ip.rows.push_back({{{at->second, 1}, {item, -1}}, relation::at_most, 0});
        }
    }
    return at->second;
}

}  // namespace

integer_programme written(const pelage::cover_problem& p, std::size_t most) {
    integer_programme ip;
    std::vector<term> all;
    for (std::size_t i = 0; i < p.items; ++i) {
        ip.columns.push_back({0, 1, true});
        all.push_back({i, 1});
    }
    std::map<std::vector<item_set>, std::int64_t> merged;
    for (const pelage::cover_target& t : p.targets) {
        std::vector<item_set> ways = t.ways;
        std::sort(ways.begin(), ways.end());
        ways.erase(std::unique(ways.begin(), ways.end()), ways.end());
        if (!ways.empty()) {
            merged[ways] += t.weight;
        }
    }
    std::map<item_set, std::size_t> known;
    for (const auto& [ways, weight] : merged) {
        const std::size_t met = ip.columns.size();
        ip.columns.push_back({-weight, 1, false});
        if (ways.front() == 0) {
            continue;  // met by what is there
        }
        row r{{{met, 1}}, relation::at_most, 0};
        for (const item_set way : ways) {
            r.terms.push_back({column_of(way, ip, known), -1});
        }
        ip.rows.push_back(std::move(r));
    }
    ip.rows.push_back({all, relation::at_most, static_cast<std::int64_t>(most)});
    return ip;
}

}  // namespace judges
