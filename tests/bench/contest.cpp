#include "bench/contest.hpp"

#include <algorithm>
#include <exception>

#include <pelage/solver/setup_solver.hpp>

#include "bench/measure.hpp"
#include "judges/glpk_judge.hpp"
#include "judges/process_judges.hpp"

namespace bench {

using judges::form;
using judges::program;
using judges::verdict;
using pelage::problem;

namespace {

double by_clock(clock_kind by, const judges::seconds_spent& s) {
    return by == clock_kind::wall ? s.wall : s.processor;
}

void note(record& r, double seconds, bool proven, bool plan, std::int64_t cost) {
    r.seconds.push_back(seconds);
    r.proven.push_back(proven);
    r.cost.push_back(plan ? cost : -1);
}

/// One zone, one setup.
problem next_to_nothing() {
    problem p;
    p.zones = {{{0, 0, 1, 1, 0}}};
    return p;
}

judge called(program which, form f) {
    const std::string how = which == program::toulbar2 ? ""
                            : f == form::compact       ? ", compact"
                                                       : ", tight";
    return {std::string(name(which)) + how, [which, f](const problem& p, double most) {
                return judges::by_program(which, p, f, most);
            }};
}

judge in_process(form f) {
    const std::string how = f == form::compact ? ", compact" : ", tight";
    return {"GLPK library" + how,
            [f](const problem& p, double most) { return judges::by_glpk(p, f, most); }};
}

}  // namespace

std::size_t record::proofs() const {
    return static_cast<std::size_t>(std::count(proven.begin(), proven.end(), true));
}

record ours(const std::vector<problem>& problems, clock_kind by, double most_seconds) {
    record r;
    r.who = "pelage";
    static_cast<void>(solve(next_to_nothing()));
    const judges::stopwatch all;
    for (const problem& p : problems) {
        const judges::stopwatch one;
        const pelage::solution s = solve(p);
        const double took = by_clock(by, one.read());
        if (!s.setup.empty() && cost_of(p, s.setup) != s.cost) {
            r.trouble = "a plan doesn't cost what it says";
        }
        note(r, took, s.sure.optimal || s.setup.empty(), !s.setup.empty(), pelage::in_mmin(s.cost));
        if (all.read().wall > most_seconds) {
            break;
        }
    }
    return r;
}

std::vector<judge> general_solvers(clock_kind by) {
    std::vector<judge> them{in_process(form::compact),
                            in_process(form::tight),
                            called(program::glpsol, form::compact),
                            called(program::cbc, form::compact),
                            called(program::lp_solve, form::compact),
                            called(program::toulbar2, form::compact)};
    constexpr int starts = 15;
    for (judge& j : them) {
        std::vector<double> took;
        try {
            while (took.size() < starts) {
                took.push_back(by_clock(by, j.ask(next_to_nothing(), 10).spent));
            }
            j.start = median(took);
        } catch (const std::exception&) {
            j.start = 0;  // told when it is asked for an answer
        }
    }
    return them;
}

record judged(const judge& j, const std::vector<problem>& problems, clock_kind by,
              const patience& limits) {
    record r;
    r.who = j.name;
    const judges::stopwatch all;
    for (const problem& p : problems) {
        try {
            const verdict v = j.ask(p, limits.a_problem);
            note(r, std::max(0.0, by_clock(by, v.spent) - j.start), v.proven && v.trouble.empty(),
                 !v.setup.empty(), v.cost);
            r.trouble = v.trouble.empty() ? r.trouble : v.trouble;
        } catch (const std::exception& e) {
            r.trouble = e.what();
            break;
        }
        if (all.read().wall > limits.a_class) {
            break;
        }
    }
    return r;
}

std::vector<std::size_t> dearer(const record& a, const record& b) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < std::min(a.cost.size(), b.cost.size()); ++i) {
        const bool b_is_less = b.cost[i] >= 0 && (a.cost[i] < 0 || b.cost[i] < a.cost[i]);
        if (a.proven[i] && b.proven[i] && b_is_less) {
            out.push_back(i);
        }
    }
    return out;
}

double ratio(const record& a, const record& b) {
    std::vector<double> each;
    for (std::size_t i = 0; i < std::min(a.seconds.size(), b.seconds.size()); ++i) {
        each.push_back(b.seconds[i] / a.seconds[i]);
    }
    return each.empty() ? 0 : median(each);
}

}  // namespace bench
