// What to buy for twenty sheets with a length of its own in every zone, on seven coats, from forty wares:
// ours and GLPK on the same questions.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <vector>

#include <pelage/data/reference.hpp>
#include <pelage/kit/buy.hpp>

#include "bench/measure.hpp"
#include "generate/made_stock.hpp"
#include "judges/glpk_judge.hpp"
#include "judges/stock_programme.hpp"
#include "judges/stopwatch.hpp"

using namespace pelage;

namespace {

struct times {
    std::vector<double> whole;  ///< judging every setup in every zone, and the curve from 0 to n
    std::vector<double> curve;  ///< the curve alone
    std::vector<double> glpk;   ///< the choice of n alone
    int wrong = 0;
    int unproven = 0;  ///< by GLPK within the limit
};

double spent(const judges::stopwatch& clock, bool processor) {
    const judges::seconds_spent s = clock.read();
    return processor ? s.processor : s.wall;
}

void measure(generate::dice& d, std::size_t n, bool any_length, double limit, bool processor,
             times& to) {
    const kit none;
    const auto sheets = generate::made_sheets(d, 20, any_length);
    const shopping_request r{
        io::reference(), io::reference().rules, none, sheets, generate::made_catalogue(40), n, {}};
    const judges::stopwatch all;
    const shopping s = what_to_buy(r);
    to.whole.push_back(spent(all, processor));
    const cover_problem p = problem_of(r, s.targets, s.setups);
    const judges::stopwatch search;
    const auto ours = best_stock(p, n);
    to.curve.push_back(spent(search, processor));
    const judges::integer_programme ip = judges::written(p, n);
    const judges::stopwatch other;
    const auto least = judges::least_by_glpk(ip, limit);
    to.glpk.push_back(spent(other, processor));
    to.unproven += least ? 0 : 1;
    to.wrong += !ours.back().proven() || (least && -*least != ours.back().met) ? 1 : 0;
}

std::string text(const std::vector<double>& t) {
    return bench::time_text(bench::median(t)) + ", most " + bench::time_text(bench::quantile(t, 1));
}

}  // namespace

int main(int argc, char** argv) {
    const std::vector<std::string> args(argv + 1, argv + argc);
    const bool processor = std::find(args.begin(), args.end(), "processor") != args.end();
    constexpr int questions = 5;
    constexpr double limit = 30;
    std::printf(
        "20 sheets, every zone, 7 coats, 40 wares, an empty drawer; %d questions a row;\n"
        "median and most. GLPK is given the choice of n alone, targets merged, %.0f s.\n",
        questions, limit);
    int wrong = 0;
    for (const bool any_length : {false, true}) {
        for (const std::size_t n : {5U, 10U, 20U}) {
            times t;
            generate::dice d(n + (any_length ? 100 : 0));
            for (int q = 0; q < questions; ++q) {
                measure(d, n, any_length, limit, processor, t);
            }
            std::printf(
                "  %s lengths, 0 to %2zu:  all of it %s;  the curve %s;  GLPK %s%s\n",
                any_length ? "any  " : "trade", n, text(t.whole).c_str(), text(t.curve).c_str(),
                text(t.glpk).c_str(),
                t.unproven > 0 ? (", " + std::to_string(t.unproven) + " unproven").c_str() : "");
            wrong += t.wrong;
        }
    }
    std::printf(wrong == 0 ? "Both always name the same share.\n" : "They differ %d times.\n",
                wrong);
    return wrong == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
