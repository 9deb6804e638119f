// The order of work against every order there is: all orders of random lists of up to 8 blocks.
#include <algorithm>
#include <array>
#include <cstdint>
#include <numeric>
#include <vector>

#include <pelage/solver/order.hpp>

#include "catch.hpp"
#include "generate/dice.hpp"

using namespace pelage;
using generate::dice;

namespace {

constexpr int tools = 5;
constexpr int parts = 5;

bool in(std::uint64_t set, std::size_t n) {
    return (set >> n & 1U) != 0;
}

/// Few tools, prices and parts, so that ties abound; rules in a third of the lists.
order_problem any_list(dice& d, std::size_t blocks) {
    order_problem p;
    for (int t = 0; t < tools; ++t) {
        p.price.push_back(d.one_in(3) ? 0 : 100 * (1 + d.roll(3)));
    }
    p.last = d.one_in(4) ? 0 : static_cast<part_set>(d.one_in(3) ? 0x18 : 0x10);
    const bool rules = d.one_in(3);
    for (std::size_t i = 0; i < blocks; ++i) {
        order_block b;
        for (int n = d.roll(3); n > 0; --n) {
            b.held |= tool_set{1} << static_cast<unsigned>(d.roll(tools));
        }
        for (int n = 1 + d.roll(3); n > 0; --n) {
            b.parts = static_cast<part_set>(b.parts | 1U << static_cast<unsigned>(d.roll(parts)));
        }
        b.beside = static_cast<block_set>(d.roll(1 << static_cast<int>(blocks)));
        for (std::size_t j = 0; rules && j < i; ++j) {
            if (d.one_in(4)) {
                b.after |= block_set{1} << j;
            }
        }
        p.blocks.push_back(b);
    }
    // rules go every way through the numbers, not only upwards
    if (rules && blocks > 1 && d.one_in(2)) {
        order_problem turned = p;
        const auto other = [&](std::size_t i) { return blocks - 1 - i; };
        for (std::size_t i = 0; i < blocks; ++i) {
            turned.blocks[other(i)] = p.blocks[i];
            turned.blocks[other(i)].after = 0;
            for (std::size_t j = 0; j < blocks; ++j) {
                if (in(p.blocks[i].after, j)) {
                    turned.blocks[other(i)].after |= block_set{1} << other(j);
                }
            }
        }
        p = turned;
    }
    return p;
}

bool keeps_rules(const order_problem& p, const std::vector<std::size_t>& order) {
    for (std::size_t i = 0; i < order.size(); ++i) {
        for (std::size_t later = i + 1; later < order.size(); ++later) {
            if (in(p.blocks[order[i]].after, order[later])) {
                return false;
            }
        }
    }
    return true;
}

/// The four wishes in the words of their definition: pick-ups, early, departures, jumps.
std::array<std::int64_t, 4> wishes(const order_problem& p, const std::vector<std::size_t>& order) {
    std::array<std::int64_t, 4> c{};
    for (std::size_t i = 0; i < order.size(); ++i) {
        const order_block& now = p.blocks[order[i]];
        for (std::size_t t = 0; t < p.price.size(); ++t) {
            const bool kept = i > 0 && in(p.blocks[order[i - 1]].held, t);
            c[0] += in(now.held, t) && !kept ? p.price[t] : 0;
        }
        c[3] += i > 0 && !in(p.blocks[order[i - 1]].beside, order[i]) ? 1 : 0;
        for (std::size_t later = i + 1; later < order.size(); ++later) {
            const order_block& then = p.blocks[order[later]];
            bool comes_last = false;
            bool other = false;
            for (std::size_t a = 0; a < 8; ++a) {
                comes_last = comes_last || (in(now.parts, a) && in(p.last, a));
                other = other || (in(then.parts, a) && !in(p.last, a));
                for (std::size_t b = 0; b < a; ++b) {
                    c[2] += in(now.parts, a) && in(then.parts, b) ? 1 : 0;
                }
            }
            c[1] += comes_last && other ? 1 : 0;
        }
    }
    return c;
}

/// The first of the best orders, from all of them.
std::vector<std::size_t> by_trying_all(const order_problem& p) {
    std::vector<std::size_t> order(p.blocks.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::vector<std::size_t> best;
    std::array<std::int64_t, 4> least{};
    do {
        if (!keeps_rules(p, order)) {
            continue;
        }
        const auto c = wishes(p, order);
        if (best.empty() || c < least) {
            least = c;
            best = order;
        }
    } while (std::next_permutation(order.begin(), order.end()));
    return best;
}

void compare(std::size_t blocks, int lists, unsigned seed) {
    dice d(seed);
    for (int n = 0; n < lists; ++n) {
        const order_problem p = any_list(d, blocks);
        INFO(blocks << " blocks, list " << n);
        const work_order made = best_order(p);
        REQUIRE(made.proven);
        REQUIRE(made.blocks == by_trying_all(p));
        const auto c = wishes(p, made.blocks);
        REQUIRE(made.cost == order_cost{c[0], static_cast<std::int32_t>(c[1]),
                                        static_cast<std::int32_t>(c[2]),
                                        static_cast<std::int32_t>(c[3])});
        REQUIRE(cost_of(p, made.blocks) == made.cost);
    }
}

}  // namespace

TEST_CASE("the order of work is the first of the best of all orders", "[oracle][order]") {
    compare(0, 1, 1);
    compare(1, 50, 2);
    compare(2, 1000, 3);
    compare(3, 2000, 4);
    compare(4, 2000, 5);
    compare(5, 1000, 6);
    compare(6, 200, 7);
    compare(7, 50, 8);
    compare(8, 12, 9);
}

TEST_CASE("the order of work is the first of the best of all orders, at length",
          "[.full][oracle][order]") {
    compare(5, 10000, 11);
    compare(6, 3000, 12);
    compare(7, 500, 13);
    compare(8, 80, 14);
}

TEST_CASE("beyond the proven size an order keeps the rules, and moving one block doesn't help",
          "[oracle][order]") {
    dice d(21);
    for (int n = 0; n < 100; ++n) {
        const order_problem p = any_list(d, most_proven + 1 + static_cast<std::size_t>(d.roll(6)));
        INFO("list " << n);
        const work_order found = best_order(p);
        REQUIRE_FALSE(found.proven);
        REQUIRE(keeps_rules(p, found.blocks));
        const auto c = wishes(p, found.blocks);
        REQUIRE(found.cost == order_cost{c[0], static_cast<std::int32_t>(c[1]),
                                         static_cast<std::int32_t>(c[2]),
                                         static_cast<std::int32_t>(c[3])});
        for (std::size_t from = 0; from < found.blocks.size(); ++from) {
            for (std::size_t to = 0; to < found.blocks.size(); ++to) {
                std::vector<std::size_t> moved = found.blocks;
                moved.erase(moved.begin() + static_cast<std::ptrdiff_t>(from));
                moved.insert(moved.begin() + static_cast<std::ptrdiff_t>(to), found.blocks[from]);
                const bool helps = keeps_rules(p, moved) && wishes(p, moved) < c;
                REQUIRE_FALSE(helps);
            }
        }
    }
}
