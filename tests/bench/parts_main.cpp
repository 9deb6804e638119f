// The parts of a plan, by Google Benchmark: compiling a dog to a problem, solving it, and GLPK on the
// same problems in the same process as a mark to measure by. Every turn takes the next of many.
#include <vector>

#include <benchmark/benchmark.h>

#include "generate/made_problems.hpp"
#include "generate/real_problems.hpp"
#include "judges/glpk_judge.hpp"
#include "planner/compile.hpp"

namespace {

constexpr std::uint64_t seed = 5;

template <class Thing, class Work>
void over_all(benchmark::State& state, const std::vector<Thing>& things, Work work) {
    std::size_t next = 0;
    for (auto _ : state) {
        benchmark::DoNotOptimize(work(things[next]));
        next = next + 1 == things.size() ? 0 : next + 1;
    }
}

const std::vector<pelage::problem>& dogs() {
    static const auto all = generate::real_problems(1000, seed);
    return all;
}

void compile(benchmark::State& state) {
    generate::dice d(seed);
    std::vector<generate::table> tables;
    while (tables.size() < 200) {
        generate::table t = generate::any_table(d, {50, 2, 15});  // 64 tools are enough
        tables.push_back(std::move(t));
    }
    over_all(state, tables, [](const generate::table& t) {
        return pelage::compile(t.request()).choice.zones.size();
    });
}
BENCHMARK(compile)->Unit(benchmark::kMicrosecond);

void solve(benchmark::State& state) {
    over_all(state, dogs(), [](const pelage::problem& p) { return pelage::solve(p).cost; });
}
BENCHMARK(solve)->Unit(benchmark::kMicrosecond);

void solve_made_up(benchmark::State& state) {
    const auto all = generate::made_problems(200, seed, generate::made::plain, 12, 40);
    over_all(state, all, [](const pelage::problem& p) { return pelage::solve(p).cost; });
}
BENCHMARK(solve_made_up)->Unit(benchmark::kMicrosecond);

void glpk(benchmark::State& state, judges::form f) {
    over_all(state, dogs(), [f](const pelage::problem& p) { return judges::by_glpk(p, f).cost; });
}
BENCHMARK_CAPTURE(glpk, compact, judges::form::compact)->Unit(benchmark::kMicrosecond);
BENCHMARK_CAPTURE(glpk, tight, judges::form::tight)->Unit(benchmark::kMicrosecond);

}  // namespace

BENCHMARK_MAIN();
