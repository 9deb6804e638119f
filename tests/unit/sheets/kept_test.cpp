// What was left against the sheet: the interval, and when something is claimed.
#include <cmath>
#include <random>

#include <pelage/data/reference.hpp>
#include <pelage/sheets/kept.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

/// P(Binomial(n, 1/2) < k), counted over all outcomes.
double below(std::size_t n, std::size_t k) {
    std::size_t hits = 0;
    for (std::size_t outcome = 0; outcome < (std::size_t{1} << n); ++outcome) {
        std::size_t ones = 0;
        for (std::size_t i = 0; i < n; ++i) {
            ones += outcome >> i & 1U;
        }
        hits += ones < k ? 1 : 0;
    }
    return static_cast<double>(hits) / std::exp2(static_cast<double>(n));
}

dog rosie() {
    dog d;
    d.id = "rosie";
    d.coat = coat_class::curly;
    d.style = "one-length";
    d.brushed = {habit::daily, true};
    return d;
}

log_entry left(int day, double body, const std::string& who = "Ida") {
    log_entry e;
    e.on = *parse_date("2026-01-01") + std::chrono::days{day};
    e.services = {service_kind::full};
    e.who = who;
    e.left = {{"body", mm(body), true}, {"legs", mm(13), false}};
    e.used = {{"comb 13 mm over blade 30, with the lay", {"body"}}};
    return e;
}

kept_lengths asked(const std::vector<kept_dog>& all) {
    const reference_data& c = io::reference();
    return kept_lengths_of({c, c.rules, io::demo_salon().tools, c.styles, 0.9}, all);
}

const kept_row* row(const kept_lengths& k, kept_by by, const std::string& what) {
    for (const kept_row& r : k.rows) {
        if (r.by == by && r.what == what) {
            return &r;
        }
    }
    return nullptr;
}

}  // namespace

TEST_CASE("the rank is the narrowest whose interval is right often enough", "[kept]") {
    for (std::size_t n = 1; n <= 16; ++n) {
        for (const double p : {0.5, 0.8, 0.9, 0.95, 0.99}) {
            const auto k = interval_rank(n, p);
            INFO(n << " visits, " << p);
            if (k) {
                CHECK(1.0 - 2.0 * below(n, *k) >= p);
                const bool wider_only = 2 * (*k + 1) > n || 1.0 - 2.0 * below(n, *k + 1) < p;
                CHECK(wider_only);
            } else {
                CHECK(1.0 - 2.0 * below(n, 1) < p);
            }
        }
    }
    CHECK(!interval_rank(4, 0.9));
    CHECK(interval_rank(5, 0.9) == std::optional<std::size_t>{1});
    // thousands of visits: about n/2 - 1.645 sqrt(n)/2
    CHECK(interval_rank(10'000, 0.9).value() > 4915);
    CHECK(interval_rank(10'000, 0.9).value() < 4920);
}

TEST_CASE("it holds the middle at least as often as it says, whatever the spread", "[kept]") {
    std::mt19937_64 random(7);
    std::exponential_distribution<double> skewed(1.0);
    const double middle = std::log(2.0);
    int held = 0;
    constexpr int times = 4000;
    for (int t = 0; t < times; ++t) {
        std::vector<double> x(11);
        for (double& one : x) {
            one = skewed(random);
        }
        std::sort(x.begin(), x.end());
        const std::size_t k = interval_rank(x.size(), 0.9).value();
        held += x[k - 1] <= middle && middle <= x[x.size() - k] ? 1 : 0;
    }
    CHECK(held > 0.9 * times);
}

TEST_CASE("a dog left at 19 on a 13 mm sheet shows, once there are visits enough", "[kept]") {
    const dog d = rosie();
    kept_dog one{&d, {}};
    for (int v = 0; v < 4; ++v) {
        one.entries.push_back(left(30 * v, 19 + 0.1 * v));
    }
    const kept_lengths few = asked({one});
    CHECK(few.visits == 4);
    CHECK(few.enough > 4);
    REQUIRE(row(few, kept_by::groomer, "Ida") != nullptr);
    CHECK(!row(few, kept_by::groomer, "Ida")->between);
    CHECK(!row(few, kept_by::groomer, "Ida")->claimed());
    for (int v = 4; v < 12; ++v) {
        one.entries.push_back(left(30 * v, 19 + 0.1 * v));
    }
    const kept_lengths many = asked({one});
    CHECK(many.visits == 12);
    CHECK(many.dogs == 1);
    const kept_row* ida = row(many, kept_by::groomer, "Ida");
    REQUIRE(ida != nullptr);
    CHECK(ida->visits == 12);
    CHECK(ida->claimed());
    CHECK(ida->middle > mm(5));
    CHECK(ida->between->first > mm(5));
    CHECK(row(many, kept_by::tool, "comb 13 mm over blade 30") != nullptr);
    // what went as planned was measured by nobody
    CHECK(row(many, kept_by::part, "body") != nullptr);
    CHECK(row(many, kept_by::part, "legs") == nullptr);
}

TEST_CASE("where the differences lie on both sides of zero nothing is claimed", "[kept]") {
    const dog d = rosie();
    kept_dog one{&d, {}};
    for (int v = 0; v < 20; ++v) {
        one.entries.push_back(left(30 * v, v % 2 == 0 ? 11 : 16));
    }
    const kept_lengths k = asked({one});
    REQUIRE(row(k, kept_by::groomer, "Ida") != nullptr);
    CHECK(row(k, kept_by::groomer, "Ida")->between);
    CHECK(!row(k, kept_by::groomer, "Ida")->claimed());
}

TEST_CASE("visits that nobody measured are counted as such", "[kept]") {
    const dog d = rosie();
    log_entry as_planned = left(0, 13);
    as_planned.left[0].measured = false;
    log_entry nails = left(30, 19);
    nails.services = {service_kind::nails};
    const kept_lengths k = asked({{&d, {as_planned, nails}}});
    CHECK(k.visits == 0);
    CHECK(k.unsaid == 1);
    CHECK(k.rows.empty());
}
