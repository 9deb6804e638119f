// Laws of what to buy, on random questions and random sheets.
#include <algorithm>
#include <numeric>
#include <vector>

#include <rapidcheck.h>

#include <pelage/kit/buy.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

cover_problem any_question() {
    cover_problem p{*rc::gen::inRange<std::size_t>(1, 11), {}};
    const auto any_way = rc::gen::inRange<item_set>(0, item_set{1} << p.items);
    for (std::size_t t = *rc::gen::inRange<std::size_t>(0, 15); t > 0; --t) {
        cover_target one{*rc::gen::inRange<std::int64_t>(0, 50), {}};
        for (int w = *rc::gen::inRange(0, 4); w > 0; --w) {
            one.ways.push_back(*any_way & *any_way);  // of few items
        }
        p.targets.push_back(std::move(one));
    }
    return p;
}

std::vector<std::int64_t> curve(const cover_problem& p) {
    std::vector<std::int64_t> out;
    for (const cover_choice& c : best_stock(p, p.items)) {
        RC_ASSERT(c.proven());
        RC_ASSERT(c.met == met_by(p, c.items));
        out.push_back(c.met);
    }
    return out;
}

item_set moved(item_set s, const std::vector<std::size_t>& to) {
    item_set out = 0;
    for (std::size_t i = 0; i < to.size(); ++i) {
        out |= (s >> i & 1U) << to[i];
    }
    return out;
}

}  // namespace

TEST_CASE("the curve of what is bought never falls and ends where all is bought",
          "[property][stock]") {
    CHECK(rc::check([] {
        const cover_problem p = any_question();
        const auto c = curve(p);
        RC_ASSERT(std::is_sorted(c.begin(), c.end()));
        RC_ASSERT(c.back() == met_by(p, (item_set{1} << p.items) - 1));
        RC_ASSERT(c.front() == met_by(p, 0));
    }));
}

TEST_CASE("one more thing on offer never lowers the share", "[property][stock]") {
    CHECK(rc::check([] {
        cover_problem p = any_question();
        const auto before = curve(p);
        const item_set fresh = item_set{1} << p.items++;
        for (cover_target& t : p.targets) {
            if (*rc::gen::inRange(0, 3) == 0) {
                t.ways.push_back(fresh);
            }
        }
        const auto after = curve(p);
        for (std::size_t n = 0; n < before.size(); ++n) {
            RC_ASSERT(after[n] >= before[n]);
        }
    }));
}

TEST_CASE("the order of the catalogue changes no share", "[property][stock]") {
    CHECK(rc::check([] {
        const cover_problem p = any_question();
        std::vector<std::size_t> to(p.items);
        std::iota(to.begin(), to.end(), std::size_t{0});
        for (std::size_t i = to.size(); i > 1; --i) {
            std::swap(to[i - 1], to[*rc::gen::inRange<std::size_t>(0, i)]);
        }
        cover_problem q = p;
        for (cover_target& t : q.targets) {
            for (item_set& w : t.ways) {
                w = moved(w, to);
            }
        }
        RC_ASSERT(curve(p) == curve(q));
    }));
}

TEST_CASE("what is owned already is worth at least what it would be bought for",
          "[property][stock]") {
    CHECK(rc::check([] {
        const cover_problem p = any_question();
        const auto bought = curve(p);
        cover_problem q = p;  // the first item lies in the drawer
        for (cover_target& t : q.targets) {
            for (item_set& w : t.ways) {
                w &= ~item_set{1};
            }
        }
        const auto owned = curve(q);
        for (std::size_t n = 0; n + 1 < bought.size(); ++n) {
            RC_ASSERT(owned[n] >= bought[n]);
            RC_ASSERT(owned[n] <= bought[n + 1]);
        }
    }));
}
