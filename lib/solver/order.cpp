// The best order of at most 14 blocks by dynamic programming over (blocks done, the last of them).
//
// What a block costs when it comes next is
//   step[last][next]  pick-ups and jumps, which the last block decides
//   + the sum over blocks done of pair[done][next]  early and departures, whatever their order
// so rest(done, last), the least that all still to do can cost, depends on nothing else:
//   rest(all, .) = 0
//   rest(done, last) = min over next of step[last][next] + pairs + rest(done + next, next)
// Read forward from nothing done, the lowest next that attains the minimum gives the first of the
// best orders. Only sets that hold with each block those it must follow can come up.
//
// The four parts of a cost stand in one integer, the weightiest uppermost; none can flow over into
// the next: pairs number at most 64 * 63 / 2 = 2016 < 2^12, part pairs 28 times that < 2^16.
#include <algorithm>
#include <array>
#include <bit>
#include <limits>
#include <memory>

#include <pelage/base/error.hpp>
#include <pelage/solver/order.hpp>

namespace pelage {

namespace {

using packed = std::uint64_t;
constexpr packed one_jump = 1;
constexpr packed one_departure = packed{1} << 8U;
constexpr packed one_early = packed{1} << 24U;
constexpr packed one_mmin = packed{1} << 36U;
constexpr packed no_order = std::numeric_limits<packed>::max();

constexpr block_set block_bit(std::size_t block) {
    return block_set{1} << block;
}

order_cost unpacked(packed c) {
    return {static_cast<std::int64_t>(c / one_mmin),
            static_cast<std::int32_t>(c % one_mmin / one_early),
            static_cast<std::int32_t>(c % one_early / one_departure),
            static_cast<std::int32_t>(c % one_departure)};
}

void check_prices(const order_problem& p) {
    tool_set held = 0;
    for (const order_block& b : p.blocks) {
        held |= b.held;
    }
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        held &= ~(p.price[t] >= 0 && t < most_tools ? tool_set{1} << t : 0);
    }
    if (held != 0) {
        throw error(errc::range, "every tool a block holds needs a price of 0 or more");
    }
}

std::int64_t tools_price(const order_problem& p, tool_set tools) {
    std::int64_t sum = 0;
    for (; tools != 0; tools &= tools - 1) {
        sum += p.price[static_cast<std::size_t>(std::countr_zero(tools))];
    }
    return sum;
}

/// How many parts are in a set.
constexpr std::array<std::uint8_t, 256> parts_in = [] {
    std::array<std::uint8_t, 256> n{};
    for (unsigned set = 1; set < n.size(); ++set) {
        n[set] = static_cast<std::uint8_t>(n[set / 2] + set % 2);
    }
    return n;
}();

/// Pairs of parts of which the earlier block's should come after the later block's.
packed departures(part_set earlier, part_set later) {
    packed n = 0;
    for (unsigned left = earlier; left != 0; left &= left - 1) {
        const unsigned below = (left & -left) - 1;
        n += parts_in[later & below];
    }
    return n;
}

/// The costs of the problem as tables.
class tables {
  public:
    explicit tables(const order_problem& p)
        : n_(p.blocks.size()), step_((n_ + 1) * n_), pair_(n_ * n_), after_(n_) {
        if (n_ > most_blocks) {
            throw error(errc::range, "a list has at most 64 blocks");
        }
        check_prices(p);
        std::int64_t all = 0;
        for (std::size_t j = 0; j < n_; ++j) {
            const order_block& next = p.blocks[j];
            const std::int64_t price = tools_price(p, next.held);
            all += price;
            step_[n_ * n_ + j] = static_cast<packed>(price) * one_mmin;
            after_[j] = next.after;
            for (std::size_t i = 0; i < n_; ++i) {
                fill(p, i, j);
            }
        }
        if (all >= dearest_order) {
            throw error(errc::range, "taking up the tools of a list costs too much to be added up");
        }
        refuse_circles();
    }

    [[nodiscard]] std::size_t size() const { return n_; }
    /// `last` is size() at the start of the list.
    [[nodiscard]] const packed* steps(std::size_t last) const { return &step_[last * n_]; }
    [[nodiscard]] packed step(std::size_t last, std::size_t next) const {
        return steps(last)[next];
    }
    [[nodiscard]] packed pairs(block_set done, std::size_t next) const {
        packed sum = 0;
        for (; done != 0; done &= done - 1) {
            sum += pair_[static_cast<std::size_t>(std::countr_zero(done)) * n_ + next];
        }
        return sum;
    }
    [[nodiscard]] bool may_follow(block_set done, std::size_t next) const {
        return (done & block_bit(next)) == 0 && (after_[next] & ~done) == 0;
    }
    [[nodiscard]] packed pair(std::size_t done, std::size_t next) const {
        return pair_[done * n_ + next];
    }
    [[nodiscard]] block_set after(std::size_t block) const { return after_[block]; }

  private:
    void refuse_circles() const {
        block_set done = 0;
        for (std::size_t turn = 0; turn < n_; ++turn) {
            for (std::size_t b = 0; b < n_; ++b) {
                done |= may_follow(done, b) ? block_bit(b) : 0;
            }
        }
        if (static_cast<std::size_t>(std::popcount(done)) != n_) {
            throw error(errc::conflict,
                        "blocks must follow one another in a circle, or one that isn't there");
        }
    }

    void fill(const order_problem& p, std::size_t i, std::size_t j) {
        const order_block& last = p.blocks[i];
        const order_block& next = p.blocks[j];
        const bool jump = (last.beside & block_bit(j)) == 0;
        step_[i * n_ + j] = static_cast<packed>(tools_price(p, next.held & ~last.held)) * one_mmin +
                            (jump ? one_jump : 0);
        const bool early = (last.parts & p.last) != 0 && (next.parts & ~p.last) != 0;
        pair_[i * n_ + j] =
            (early ? one_early : 0) + departures(last.parts, next.parts) * one_departure;
    }

    std::size_t n_;
    std::vector<packed> step_;  ///< row n_: the start of the list
    std::vector<packed> pair_;
    std::vector<block_set> after_;
};

packed cost_of(const tables& t, std::span<const std::size_t> order) {
    packed sum = 0;
    block_set done = 0;
    std::size_t last = t.size();
    for (const std::size_t next : order) {
        if (!t.may_follow(done, next)) {
            return no_order;
        }
        sum += t.step(last, next) + t.pairs(done, next);
        done |= block_bit(next);
        last = next;
    }
    return sum;
}

/// Of every set of some of the blocks, what doing them means for the others: the sum of their pairs
/// with each, and what they must follow. Sets of all blocks are put together from two of these.
class some_done {
  public:
    some_done(const tables& t, std::size_t first, std::size_t count)
        : n_(t.size()), pairs_((std::size_t{1} << count) * n_), needs_(std::size_t{1} << count) {
        for (std::size_t set = 1; set < needs_.size(); ++set) {
            const std::size_t without = set & (set - 1);
            const std::size_t block = first + static_cast<std::size_t>(std::countr_zero(set));
            needs_[set] = needs_[without] | t.after(block);
            for (std::size_t next = 0; next < n_; ++next) {
                pairs_[set * n_ + next] = pairs_[without * n_ + next] + t.pair(block, next);
            }
        }
    }
    [[nodiscard]] const packed* pairs(block_set set) const { return &pairs_[set * n_]; }
    [[nodiscard]] block_set needs(block_set set) const { return needs_[set]; }

  private:
    std::size_t n_;
    std::vector<packed> pairs_;
    std::vector<block_set> needs_;
};

class proven_order {
  public:
    explicit proven_order(const tables& t)
        : t_(t),
          n_(t.size()),
          half_(n_ / 2),
          low_(t, 0, half_),
          high_(t, half_, n_ - half_),
          rest_(std::make_unique_for_overwrite<packed[]>((std::size_t{1} << n_) * n_)) {
        std::fill_n(&rest_[all() * n_], n_, packed{0});
        for (block_set done = all(); done-- > 1;) {
            if (((low_.needs(low(done)) | high_.needs(high(done))) & ~done) == 0) {
                fill(done);
            }
        }
    }

    /// The first of the best orders.
    [[nodiscard]] std::vector<std::size_t> read() const {
        std::vector<std::size_t> order;
        order.reserve(n_);
        block_set done = 0;
        std::size_t last = n_;
        while (order.size() < n_) {
            const choices may = choices_after(done);
            packed least = no_order;
            std::size_t best = 0;
            for (std::size_t k = 0; k < may.count; ++k) {
                const packed c = t_.step(last, may.next[k]) + may.then[k];
                if (c < least) {
                    least = c;
                    best = may.next[k];
                }
            }
            order.push_back(best);
            done |= block_bit(best);
            last = best;
        }
        return order;
    }

  private:
    /// What may come next, the lower numbers first, and the least that it and all after it can cost,
    /// but for the step to it.
    struct choices {
        std::size_t count = 0;
        std::array<std::size_t, most_proven> next;
        std::array<packed, most_proven> then;
    };

    [[nodiscard]] block_set all() const { return block_bit(n_) - 1; }
    [[nodiscard]] block_set low(block_set done) const { return done & (block_bit(half_) - 1); }
    [[nodiscard]] block_set high(block_set done) const { return done >> half_; }

    [[nodiscard]] choices choices_after(block_set done) const {
        choices may;
        const packed* const low_pairs = low_.pairs(low(done));
        const packed* const high_pairs = high_.pairs(high(done));
        for (block_set left = all() & ~done; left != 0; left &= left - 1) {
            const auto next = static_cast<std::size_t>(std::countr_zero(left));
            if ((t_.after(next) & ~done) == 0) {
                may.next[may.count] = next;
                may.then[may.count] = low_pairs[next] + high_pairs[next] +
                                      rest_[(done | block_bit(next)) * n_ + next];
                ++may.count;
            }
        }
        return may;
    }

    void fill(block_set done) {
        const choices may = choices_after(done);
        packed* const rest = &rest_[done * n_];
        for (block_set left = done; left != 0; left &= left - 1) {
            const auto last = static_cast<std::size_t>(std::countr_zero(left));
            const packed* const step = t_.steps(last);
            packed least = no_order;
            for (std::size_t k = 0; k < may.count; ++k) {
                least = std::min(least, step[may.next[k]] + may.then[k]);
            }
            rest[last] = least;
        }
    }

    const tables& t_;
    std::size_t n_;
    std::size_t half_;
    some_done low_;
    some_done high_;
    std::unique_ptr<packed[]> rest_;  ///< [done][last]; only what can come up is written
};

/// The cheapest next block over and over, the lowest of equals.
std::vector<std::size_t> greedy_order(const tables& t) {
    std::vector<std::size_t> order;
    block_set done = 0;
    std::size_t last = t.size();
    while (order.size() < t.size()) {
        packed least = no_order;
        std::size_t best = t.size();
        for (std::size_t next = 0; next < t.size(); ++next) {
            if (t.may_follow(done, next)) {
                const packed c = t.step(last, next) + t.pairs(done, next);
                if (c < least) {
                    least = c;
                    best = next;
                }
            }
        }
        order.push_back(best);
        done |= block_bit(best);
        last = best;
    }
    return order;
}

/// Moves single blocks as long as that helps; every move makes the order better, so it ends.
void improve(const tables& t, std::vector<std::size_t>& order) {
    packed best = cost_of(t, order);
    for (bool better = true; better;) {
        better = false;
        for (std::size_t from = 0; from < order.size(); ++from) {
            for (std::size_t to = 0; to < order.size(); ++to) {
                std::vector<std::size_t> tried = order;
                const std::size_t moved = tried[from];
                tried.erase(tried.begin() + static_cast<std::ptrdiff_t>(from));
                tried.insert(tried.begin() + static_cast<std::ptrdiff_t>(to), moved);
                if (const packed c = cost_of(t, tried); c < best) {
                    best = c;
                    order = std::move(tried);
                    better = true;
                }
            }
        }
    }
}

}  // namespace

order_cost cost_of(const order_problem& p, std::span<const std::size_t> order) {
    const tables t(p);
    block_set named = 0;
    for (const std::size_t b : order) {
        if (b >= t.size() || (named & block_bit(b)) != 0) {
            throw error(errc::range, "an order names every block once");
        }
        named |= block_bit(b);
    }
    if (order.size() != t.size()) {
        throw error(errc::range, "an order names every block once");
    }
    const packed c = cost_of(t, order);
    if (c == no_order) {
        throw error(errc::conflict, "a block stands before one that it must follow");
    }
    return unpacked(c);
}

work_order best_order(const order_problem& p) {
    const tables t(p);
    work_order out;
    if (t.size() <= most_proven) {
        out.blocks = proven_order(t).read();
    } else {
        out.blocks = greedy_order(t);
        improve(t, out.blocks);
        out.proven = false;
    }
    out.cost = unpacked(cost_of(t, out.blocks));
    return out;
}

}  // namespace pelage
