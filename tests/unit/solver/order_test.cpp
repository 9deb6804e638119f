// The order of work: what a groomer would say of it, on lists small enough to see through.
#include <numeric>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/solver/order.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

// tools and their prices: blades half a minute, combs a quarter
enum tool : unsigned { blade_30, blade_3f, blade_10, comb_10, comb_16 };
const std::vector<std::int32_t> prices{500, 500, 500, 250, 250};
constexpr tool_set holds(std::initializer_list<tool> all) {
    tool_set s = 0;
    for (const tool t : all) {
        s |= tool_set{1} << t;
    }
    return s;
}

// parts of the dog in the order they are worked
constexpr part_set body = 1;
constexpr part_set legs = 2;
constexpr part_set tail = 4;
constexpr part_set feet = 8;
constexpr part_set head = 16;

constexpr block_set everything = ~block_set{0};

order_problem list_of(std::vector<order_block> blocks) {
    return {std::move(blocks), prices, head};
}
order_block block_of(tool_set held, unsigned parts, block_set after = 0) {
    return {held, static_cast<part_set>(parts), everything, after};
}

using order = std::vector<std::size_t>;

}  // namespace

TEST_CASE("order: body, legs, tail, feet, and the head last", "[order]") {
    const work_order o =
        best_order(list_of({block_of(0, head), block_of(0, feet), block_of(0, tail),
                            block_of(0, legs), block_of(0, body)}));
    CHECK(o.blocks == order{4, 3, 2, 1, 0});
    CHECK(o.cost == order_cost{});
    CHECK(o.proven);
}

TEST_CASE("order: no blade is put down and taken up again", "[order]") {
    // by the parts alone the 3F would go between the two blocks of the 10
    const work_order o =
        best_order(list_of({block_of(holds({blade_10}), body), block_of(holds({blade_3f}), legs),
                            block_of(holds({blade_10}), tail)}));
    CHECK(o.blocks == order{0, 2, 1});
    CHECK(o.cost.pick_ups == 1000);
    CHECK(o.cost.departures == 1);
}

TEST_CASE("order: another comb over the same blade is a comb alone", "[order]") {
    const order_problem p =
        list_of({block_of(holds({blade_30, comb_10}), body), block_of(holds({blade_3f}), legs),
                 block_of(holds({blade_30, comb_16}), tail)});
    const work_order o = best_order(p);
    CHECK(o.blocks == order{0, 2, 1});
    CHECK(o.cost.pick_ups == 500 + 250 + 250 + 500);
    CHECK(cost_of(p, order{0, 1, 2}).pick_ups == 500 + 250 + 500 + 500 + 250);
}

TEST_CASE("order: the blade under a comb is in the hand when the comb comes off", "[order]") {
    const order_problem p =
        list_of({block_of(holds({blade_10, comb_10}), body), block_of(holds({blade_10}), legs)});
    CHECK(cost_of(p, order{0, 1}).pick_ups == 750);
    CHECK(cost_of(p, order{1, 0}).pick_ups == 750);
    // but a comb put down is seated again
    const order_problem again =
        list_of({block_of(holds({blade_10, comb_10}), body), block_of(holds({blade_10}), legs),
                 block_of(holds({blade_10, comb_10}), tail)});
    CHECK(cost_of(again, order{0, 1, 2}).pick_ups == 1000);
    CHECK(best_order(again).blocks == order{0, 2, 1});
}

TEST_CASE("order: minutes decide, not how often something is taken up", "[order]") {
    // two blades under two combs: either way three blocks change one thing, but combs are quicker
    const work_order o = best_order(list_of(
        {block_of(holds({blade_30, comb_10}), body), block_of(holds({blade_10, comb_10}), body),
         block_of(holds({blade_30, comb_16}), body), block_of(holds({blade_10, comb_16}), body)}));
    CHECK(o.blocks == order{0, 2, 3, 1});
    CHECK(o.cost.pick_ups == 750 + 250 + 500 + 250);
}

TEST_CASE("order: the head waits, even if the work leaves the parts' order for it", "[order]") {
    // one setup does legs and head: with the legs in their turn the tail would come after the head
    const order_problem p =
        list_of({block_of(holds({blade_3f}), legs | head), block_of(holds({blade_10}), tail)});
    const work_order o = best_order(p);
    CHECK(o.blocks == order{1, 0});
    CHECK(o.cost.early == 0);
    CHECK(o.cost.departures == 1);
    CHECK(cost_of(p, order{0, 1}).early == 1);
}

TEST_CASE("order: dirty before clean is a rule, whatever it costs", "[order]") {
    // what is soiled goes before all else, though its blade is wanted again at the end
    const order_problem p =
        list_of({block_of(holds({blade_3f}), body, 0b100), block_of(holds({blade_10}), legs, 0b101),
                 block_of(holds({blade_10}), head)});
    const work_order o = best_order(p);
    CHECK(o.blocks == order{2, 0, 1});
    CHECK(o.cost == order_cost{1500, 2, 2, 0});
    CHECK_THROWS_AS(cost_of(p, order{0, 1, 2}), error);
}

TEST_CASE("order: of equals the work moves to a neighbour", "[order]") {
    std::vector<order_block> blocks{block_of(0, body), block_of(0, body), block_of(0, body)};
    blocks[0].beside = 0b100;
    blocks[1].beside = 0b100;
    blocks[2].beside = 0b011;
    const work_order o = best_order(list_of(blocks));
    CHECK(o.blocks == order{0, 2, 1});
    CHECK(o.cost.jumps == 0);
    // a jump is worth less than any departure
    blocks[2].parts = legs;
    CHECK(best_order(list_of(blocks)).blocks == order{0, 1, 2});
    CHECK(best_order(list_of(blocks)).cost == order_cost{0, 0, 0, 1});
}

TEST_CASE("order: where nothing decides the blocks keep their numbers", "[order]") {
    CHECK(best_order(list_of(std::vector<order_block>(6, block_of(0, body)))).blocks ==
          order{0, 1, 2, 3, 4, 5});
    CHECK(best_order(list_of({})).blocks.empty());
    CHECK(best_order(list_of({block_of(holds({blade_30, comb_16}), head)})).cost ==
          order_cost{750, 0, 0, 0});
}

TEST_CASE("order: beyond fourteen blocks it is ordered and not called proven", "[order]") {
    std::vector<order_block> blocks;
    for (std::size_t i = 0; i < most_blocks; ++i) {
        blocks.push_back(block_of(holds({i % 2 == 0 ? blade_10 : blade_3f}), 1U << (4 - i % 5)));
    }
    blocks.resize(most_proven);
    CHECK(best_order(list_of(blocks)).proven);
    CHECK(best_order(list_of(blocks)).cost.pick_ups == 1000);
    blocks.resize(most_blocks, block_of(0, head));
    const work_order o = best_order(list_of(blocks));
    CHECK_FALSE(o.proven);
    CHECK(o.blocks.size() == most_blocks);
    CHECK(o.cost.pick_ups == 1000);
}

TEST_CASE("order: what can't be ordered is refused", "[order]") {
    CHECK_THROWS_AS(best_order(list_of({block_of(0, body, 0b10), block_of(0, legs, 0b01)})), error);
    CHECK_THROWS_AS(best_order(list_of({block_of(0, body, 0b10)})), error);
    CHECK_THROWS_AS(best_order(list_of({block_of(tool_set{1} << 40U, body)})), error);
    CHECK_THROWS_AS(best_order({{block_of(1, body)}, {-1}, head}), error);
    CHECK_THROWS_AS(best_order(list_of(std::vector<order_block>(65, block_of(0, body)))), error);
    const order_problem two = list_of({block_of(0, body), block_of(0, legs)});
    CHECK_THROWS_AS(cost_of(two, order{0}), error);
    CHECK_THROWS_AS(cost_of(two, order{0, 0}), error);
    CHECK_THROWS_AS(cost_of(two, order{0, 2}), error);
    // four blocks at 2^26 each reach the bound, three don't
    order_problem dear{std::vector<order_block>(4, block_of(1, body)), {1 << 26}, head};
    CHECK_THROWS_AS(best_order(dear), error);
    dear.blocks.pop_back();
    CHECK(best_order(dear).cost.pick_ups == 1 << 26);
}
