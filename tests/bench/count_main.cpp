// Solves the problems of a file, and nothing else: callgrind counts the instructions.
#include <cstdio>
#include <fstream>

#include <pelage/solver/setup_solver.hpp>

#include "judges/problem_file.hpp"

namespace {
std::size_t zones = 0;
}

/// What is counted: callgrind knows it by this name.
extern "C" [[gnu::noinline]] void one_plan(const pelage::problem& p) {
    zones += pelage::solve(p).setup.size();
}

int main(int count, char** words) {
    if (count != 2) {
        std::fputs("usage: pelage_bench_count FILE\n", stderr);
        return 2;
    }
    std::ifstream in(words[1]);
    while (const auto p = judges::read_problem(in)) {
        one_plan(*p);
    }
    return zones > 0 ? 0 : 1;
}
