// The exact planner against general solvers, which know nothing of dogs, blades or this planner: on
// problems of real size both must name the same cost.
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include <pelage/solver/setup_solver.hpp>

#include "catch.hpp"
#include "generate/made_problems.hpp"
#include "generate/real_problems.hpp"
#include "judges/glpk_judge.hpp"
#include "judges/problem_file.hpp"
#include "judges/process_judges.hpp"

using namespace pelage;
using generate::made;
using judges::form;
using judges::verdict;

namespace {

/// Where a problem is kept on which two solvers differ.
std::string kept(const problem& p, std::int64_t cost) {
    const auto file = std::filesystem::temp_directory_path() /
                      ("pelage-differs-" + std::to_string(cost) + ".problem");
    std::ofstream out(file);
    judges::write_problem(p, out);
    return file;
}

void compare(const problem& p, const verdict& judge) {
    INFO(p.zones.size() << " zones");
    INFO(judge.trouble);
    REQUIRE(judge.trouble.empty());
    REQUIRE(judge.proven);
    const solution ours = solve(p);
    CHECK(ours.sure.optimal);
    REQUIRE(ours.setup.empty() == judge.setup.empty());
    if (!ours.setup.empty() && in_mmin(ours.cost) != judge.cost) {
        FAIL("the planner says " << in_mmin(ours.cost) << ", the judge " << judge.cost
                                 << "; the problem is kept in " << kept(p, judge.cost));
    }
}

void compare_with_glpk(const std::vector<problem>& problems, form f) {
    for (std::size_t i = 0; i < problems.size(); ++i) {
        INFO("problem " << i);
        compare(problems[i], judges::by_glpk(problems[i], f));
    }
}

/// Of every kind `each`; every other one with combing out.
std::vector<problem> of_every_kind(int each, std::uint64_t seed, int zones, int setups) {
    generate::dice d(seed);
    std::vector<problem> out;
    for (std::size_t kind = 0; kind < generate::made_names.size(); ++kind) {
        for (int i = 0; i < each; ++i) {
            out.push_back(made_problem(d, static_cast<made>(kind), zones, setups));
            if (i % 2 == 1) {
                add_combing_out(d, out.back());
            }
        }
    }
    return out;
}

}  // namespace

TEST_CASE("a plan of a dog costs what GLPK proves to be the least", "[oracle][plan]") {
    compare_with_glpk(generate::real_problems(30, 11), form::tight);
}

TEST_CASE("a made-up plan costs what GLPK proves to be the least, in both forms",
          "[oracle][plan]") {
    for (const form f : {form::tight, form::compact}) {
        compare_with_glpk(of_every_kind(4, 12, 5, 12), f);
    }
    compare_with_glpk(of_every_kind(1, 13, 12, 30), form::tight);
}

TEST_CASE("a plan of a dog costs what GLPK proves to be the least: three hundred dogs",
          "[oracle][plan][.full]") {
    compare_with_glpk(generate::real_problems(300, 14), form::tight);
}

TEST_CASE("a made-up plan costs what GLPK proves to be the least: larger ones",
          "[oracle][plan][.full]") {
    compare_with_glpk(of_every_kind(4, 15, 12, 40), form::tight);
    compare_with_glpk(generate::made_problems(10, 16, made::plain, 20, 80), form::tight);
}

TEST_CASE("a plan costs what CBC proves to be the least", "[oracle][plan][.full]") {
    std::vector<problem> problems = generate::real_problems(60, 17);
    for (problem& p : of_every_kind(5, 18, 12, 40)) {
        problems.push_back(std::move(p));
    }
    for (std::size_t i = 0; i < problems.size(); ++i) {
        INFO("problem " << i);
        compare(problems[i],
                judges::by_program(judges::program::cbc, problems[i], form::compact, 120));
    }
}
