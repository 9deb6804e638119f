// What to buy against exhaustive search on small questions, and against GLPK on real ones.
#include <algorithm>
#include <bit>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/kit/buy.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "catch.hpp"
#include "generate/made_stock.hpp"
#include "judges/glpk_judge.hpp"
#include "judges/stock_programme.hpp"

using namespace pelage;

namespace {

/// Whether a comes before b of equals: fewer items; then the one with the lower lowest item, and so on.
bool comes_first(item_set a, item_set b) {
    if (std::popcount(a) != std::popcount(b)) {
        return std::popcount(a) < std::popcount(b);
    }
    const item_set differ = a ^ b;
    return differ != 0 && (a & differ & (~differ + 1)) != 0;
}

/// The best of all choices of at most `most` items.
cover_choice by_trying_all(const cover_problem& p, std::size_t most) {
    cover_choice best{0, met_by(p, 0), 0};
    for (item_set s = 0; s < item_set{1} << p.items; ++s) {
        if (static_cast<std::size_t>(std::popcount(s)) > most) {
            continue;
        }
        const std::int64_t met = met_by(p, s);
        if (met > best.met || (met == best.met && comes_first(s, best.items))) {
            best = {s, met, met};
        }
    }
    return best;
}

void compare_with_all(std::uint64_t seed, int questions, int most_items_of_one) {
    generate::dice d(seed);
    for (int q = 0; q < questions; ++q) {
        const auto items = static_cast<std::size_t>(1 + d.roll(most_items_of_one));
        const cover_problem p =
            generate::made_stock(d, items, static_cast<std::size_t>(d.roll(25)));
        const auto ours = best_stock(p, items);
        REQUIRE(ours.size() == items + 1);
        for (std::size_t n = 0; n <= items; ++n) {
            const cover_choice best = by_trying_all(p, n);
            INFO("question " << q << ", " << items << " items, at most " << n);
            CHECK(ours[n].proven());
            CHECK(ours[n].met == best.met);
            CHECK(ours[n].items == best.items);
        }
    }
}

/// A question as the sheets of a salon put it.
cover_problem of_sheets(generate::dice& d, std::size_t sheets, std::size_t wares, bool any_length,
                        const kit& own) {
    const auto made = generate::made_sheets(d, sheets, any_length);
    shopping_request r{io::reference(), io::reference().rules, own, made, {}, 0, {}};
    r.wares = generate::made_catalogue(wares);
    std::erase_if(r.wares, [&](const ware& w) {
        return w.as_blade && find_blade(own, w.as_blade->id) != nullptr;
    });
    const shopping s = what_to_buy(r);
    return problem_of(r, s.targets, s.setups);
}

void compare_with_glpk(const cover_problem& p, const std::vector<std::size_t>& sizes) {
    const auto ours = best_stock(p, sizes.back());
    for (const std::size_t n : sizes) {
        const auto least = judges::least_by_glpk(judges::written(p, n), 120);
        INFO("at most " << n << " of " << p.items);
        REQUIRE(least.has_value());
        CHECK(ours[n].proven());
        CHECK(ours[n].met == -*least);
    }
}

kit with_a_thirty() {
    kit k;
    k.blades.push_back({*find(io::reference().blades, "30"), 1, {}, false, {}});
    return k;
}

}  // namespace

TEST_CASE("what to buy equals trying all, ties included", "[oracle][stock]") {
    compare_with_all(1, 1500, 9);
}

TEST_CASE("what to buy for made-up sheets is what GLPK proves best", "[oracle][stock]") {
    generate::dice d(2);
    compare_with_glpk(of_sheets(d, 4, 24, false, kit{}), {1, 2, 3, 5, 8});
    compare_with_glpk(of_sheets(d, 3, 24, true, with_a_thirty()), {1, 3, 6});
}

TEST_CASE("what to buy for the reference's own sheets is what GLPK proves best",
          "[oracle][stock]") {
    const kit none;
    shopping_request r{
        io::reference(), io::reference().rules, none, io::reference().styles, {}, 0, {}};
    r.wares = usual_wares(io::reference(), none);
    const shopping s = what_to_buy(r);
    compare_with_glpk(problem_of(r, s.targets, s.setups), {1, 2, 3, 4, 5, 6, 8, 10});
}

TEST_CASE("a thousand small questions more", "[.full][oracle][stock]") {
    compare_with_all(3, 1000, 13);
}

TEST_CASE("twenty sheets, all zones, seven coats, forty wares: what GLPK proves best",
          "[.full][oracle][stock]") {
    generate::dice d(4);
    for (const bool any_length : {false, true}) {
        compare_with_glpk(of_sheets(d, 20, 40, any_length, kit{}), {1, 2, 3, 5, 8, 12, 20});
        compare_with_glpk(of_sheets(d, 20, 40, any_length, with_a_thirty()), {2, 5, 10});
    }
}
