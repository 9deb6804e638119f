// What is made of any bytes by their choices: a small problem against every plan priced, and what was measured of a dog
// against its posterior summed up over a grid.
#include <cmath>
#include <cstdint>
#include <exception>
#include <iostream>
#include <numbers>
#include <vector>

#include <pelage/model/learning.hpp>
#include <pelage/solver/setup_solver.hpp>

#include "fuzz/bytes.hpp"
#include "fuzz/targets.hpp"
#include "generate/brute_force.hpp"

using namespace pelage;

namespace fuzz {

namespace {

void must(bool holds, const char* what) {
    if (!holds) {
        std::cerr << what << "\n";
        std::terminate();
    }
}

/// Up to five zones and six setups, up to six tools; few distinct costs, so that ties abound.
problem problem_of(bytes& b) {
    problem p;
    p.zones.resize(1 + b.take(5));
    p.price.resize(b.take(7));
    for (std::int32_t& price : p.price) {
        price = static_cast<std::int32_t>(b.take()) * 3;
    }
    const unsigned setups = 1 + b.take(6);
    const auto tools = static_cast<unsigned>(p.price.size());
    for (auto& zone : p.zones) {
        for (unsigned k = 0; k < setups; ++k) {
            allowed_setup s{static_cast<std::uint16_t>(k), 0,
                            static_cast<std::int32_t>(b.take() * 4),
                            static_cast<std::int32_t>(b.take() * 8), 0};
            const unsigned held = b.take();
            s.tools = held & ((tool_set{1} << tools) - 1U);
            s.spend = held >= 192U ? static_cast<std::int32_t>(b.take(12)) : 0;
            if (held % 5U != 4U) {
                zone.push_back(s);
            }
        }
    }
    const auto zones = static_cast<unsigned>(p.zones.size());
    for (unsigned n = b.take(8); n > 0; --n) {
        const unsigned a = b.take(zones);
        const unsigned other = b.take(zones);
        p.seams.push_back(
            {a, other, static_cast<std::int32_t>(b.take(20)), static_cast<std::int32_t>(b.take())});
    }
    p.budget = static_cast<std::int32_t>(b.take(40));
    return p;
}

/// Cut up to three times, measured up to three times after each; no spread from visit to visit, so that one sum over
/// the dog's rate is all there is. Every figure within what a ruler and a coat can give.
struct measured {
    std::vector<regrowth_interval> stretches;
    learning_law law;
};

measured measured_of(bytes& b) {
    measured m;
    m.law = {{std::log(b.between(0.2, 0.5)), b.between(0.1, 0.5)},
             0.0,
             b.take(4) == 0 ? mm(0) : mm(b.between(0.1, 2.0)),
             mm(b.take(3) == 0 ? b.between(25.0, 45.0) : 200.0)};
    for (unsigned cut = b.take(4); cut > 0; --cut) {
        regrowth_interval& s = m.stretches.emplace_back();
        for (unsigned i = 1 + b.take(3); i > 0; --i) {
            const double start = b.between(3.0, 25.0);
            const double after = b.between(7.0, 70.0);
            const double is = start + after * b.between(0.1, 0.6);
            s.push_back({day(after), mm(start), mm(is), mm(b.between(0.3, 2.0))});
        }
    }
    return m;
}

/// ln of the density of a stretch's readings at a rate: independent errors beside one that all share, by the formula
/// of Sherman and Morrison.
double log_density(const regrowth_interval& s, double rate, const learning_law& law) {
    const double shared = in_mm(law.start_error) * in_mm(law.start_error);
    double squares = 0.0;
    double sum = 0.0;
    double weight = 0.0;
    double log_all = 0.0;
    for (const reading& r : s) {
        const double start = in_mm(r.start);
        const double end = std::max(start, in_mm(law.terminal));
        const double off = in_mm(r.is) - std::min(end, start + rate * in_days(r.after));
        const double precision = 1.0 / (in_mm(r.error) * in_mm(r.error));
        squares += precision * off * off;
        sum += precision * off;
        weight += precision;
        log_all += std::log(2.0 * std::numbers::pi / precision);
    }
    const double widened = 1.0 + shared * weight;
    return -0.5 * (squares - shared * sum * sum / widened + log_all + std::log(widened));
}

}  // namespace

void problem_solved(const std::string& text) {
    bytes b(text);
    const problem p = problem_of(b);
    const solution s = solve(p);
    const generate::brute_force all(p);
    must(s.setup == all.best, "not the first of the cheapest plans");
    must(s.stuck.empty() == !all.best.empty(),
         "stuck where there is a plan, or not where there is none");
    if (all.best.empty()) {
        must(s.stuck == generate::why_none(p), "stuck elsewhere");
        return;
    }
    must(in_mmin(s.cost) == all.cost && s.cost == cost_of(p, all.best), "priced wrongly");
    must(s.sure.optimal && s.sure.bound == all.cost, "not proven");
}

void posterior(const std::string& text) {
    bytes b(text);
    const measured m = measured_of(b);
    const double at = b.between(-2.5, 2.5);
    const rate_posterior p(m.stretches, m.law);
    const double log_rate = p.mean() + at * p.sd();
    // Ten deviations of the prior and twelve of the posterior; cells lie close where the posterior is.
    const double near = 12.0 * p.sd();
    const double low = std::min(m.law.dog.log_median - 10.0 * m.law.dog.log_sd, p.mean() - near);
    const double high = std::max(m.law.dog.log_median + 10.0 * m.law.dog.log_sd, p.mean() + near);
    constexpr int cells = 8'000;
    const auto sum = [&](double from, double to) {
        double total = 0.0;
        for (int i = 0; i < cells; ++i) {
            const double x = from + (to - from) * (i + 0.5) / cells;
            const double z = (x - m.law.dog.log_median) / m.law.dog.log_sd;
            double log_p =
                -0.5 * z * z - std::log(m.law.dog.log_sd) - 0.5 * std::log(2.0 * std::numbers::pi);
            for (const regrowth_interval& s : m.stretches) {
                log_p += log_density(s, std::exp(x), m.law);
            }
            // beside what the posterior says all of it comes to, so that nothing is lost below the smallest number
            total += std::exp(log_p - p.log_evidence());
        }
        return total * (to - from) / cells;
    };
    const double below = sum(low, p.mean() - near) + sum(p.mean() - near, log_rate);
    const double above = sum(log_rate, p.mean() + near) + sum(p.mean() + near, high);
    must(std::abs(std::log(below + above)) < 1e-4, "the density of all readings is another");
    must(std::abs(p.below(mm_per_day(std::exp(log_rate))) - below / (below + above)) < 1e-4,
         "the chance of a slower dog is another");
}

}  // namespace fuzz
