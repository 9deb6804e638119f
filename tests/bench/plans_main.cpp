// The table of tests/bench/run: the planner and general solvers on the same problems.
#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "bench/contest.hpp"
#include "bench/instructions.hpp"
#include "bench/measure.hpp"
#include "generate/made_problems.hpp"
#include "generate/real_problems.hpp"
#include "judges/problem_file.hpp"

using generate::made;
using pelage::problem;

namespace {

/// A class of problems and how much of it is looked at.
struct group {
    std::string title;
    std::vector<problem> problems;
    std::size_t for_judges = 5;  ///< the general solvers see the first so many
    double class_seconds = 8;    ///< what one of them may take for all of them
};

struct size_of_problems {
    double zones = 0, setups = 0, cells = 0, tools = 0;
};

size_of_problems mean_size(const std::vector<problem>& all) {
    size_of_problems s;
    const auto n = static_cast<double>(all.size());
    for (const problem& p : all) {
        pelage::tool_set held = 0;
        std::size_t cells = 0;
        std::size_t setups = 0;
        for (const auto& zone : p.zones) {
            for (const pelage::allowed_setup& allowed : zone) {
                held |= allowed.tools;
                setups = std::max<std::size_t>(setups, allowed.setup + 1U);
            }
            cells += zone.size();
        }
        s.zones += static_cast<double>(p.zones.size()) / n;
        s.setups += static_cast<double>(setups) / n;
        s.cells += static_cast<double>(cells) / n;
        s.tools += static_cast<double>(std::popcount(held)) / n;
    }
    return s;
}

/// "41", "0.52".
std::string ratio_text(double r) {
    char text[32];
    std::snprintf(text, sizeof text, r < 0.995 ? "%.2f" : r < 9.95 ? "%.1f" : "%.0f", r);
    return text;
}

void print_row(const std::string& who, const std::string& proved, const std::string& median,
               const std::string& p99, const std::string& worst, const std::string& last) {
    std::printf("  %-22s %12s %9s %9s %9s %10s\n", who.c_str(), proved.c_str(), median.c_str(),
                p99.c_str(), worst.c_str(), last.c_str());
}

std::string proved(const bench::record& r) {
    return std::to_string(r.proofs()) + " of " + std::to_string(r.seconds.size());
}

class table {
  public:
    table(bench::clock_kind by, double most_seconds) : by_(by), most_seconds_(most_seconds) {
        std::printf(
            "Times are %s. The planner's\n"
            "are taken in process, every problem once. From the others' the time of their start "
            "is\n"
            "taken off: what they take for one zone with one setup. Reading the model stays in "
            "for\n"
            "programs, writing it is left out. times ours: the median over problems of their time\n"
            "by the planner's; what they didn't prove counts with the time it took to give up.\n"
            "All dogs, drawers and other problems are made up.\n\n",
            by == bench::clock_kind::wall
                ? "wall times of this machine under what else it was doing"
                : "processor times, so that other work on the machine counts less");
        for (bench::judge& j : judges_) {
            std::printf("  start of %-24s %s\n", j.name.c_str(), bench::time_text(j.start).c_str());
        }
        std::printf("  time given to a problem           %s\n",
                    bench::time_text(most_seconds_).c_str());
    }

    /// Measures and prints a class; returns the planner's median in seconds.
    double add(const group& g) {
        const size_of_problems s = mean_size(g.problems);
        std::printf(
            "\n%s\n  in the mean %.0f zones, %.0f setups, %.0f allowed pairs of them, "
            "%.0f tools\n",
            g.title.c_str(), s.zones, s.setups, s.cells, s.tools);
        print_row("", "proved", "median", "p99", "worst", "times ours");
        const bench::record us = bench::ours(g.problems, by_, 10);
        print_row(us.who, proved(us), bench::time_text(bench::median(us.seconds)),
                  bench::time_text(bench::quantile(us.seconds, 0.99)),
                  bench::time_text(bench::quantile(us.seconds, 1)), "");
        print_instructions(g);
        std::fflush(stdout);
        const std::size_t n = std::min({g.for_judges, g.problems.size(), us.seconds.size()});
        const std::vector<problem> few(g.problems.begin(),
                                       g.problems.begin() + static_cast<std::ptrdiff_t>(n));
        for (const bench::judge& j : judges_) {
            against(few, us, bench::judged(j, few, by_, {most_seconds_, g.class_seconds}));
        }
        return bench::median(us.seconds);
    }

    [[nodiscard]] int wrong() const { return wrong_; }

  private:
    static void print_instructions(const group& g) {
        constexpr std::size_t most = 60;
        std::vector<problem> some(
            g.problems.begin(),
            g.problems.begin() + static_cast<std::ptrdiff_t>(std::min(most, g.problems.size())));
        const auto counts = bench::instructions(pelage_COUNTER, some, 15);
        const std::string title = "  instructions of " + std::to_string(counts.size());
        if (counts.empty()) {
            print_row("  instructions", "", "not", "counted", "", "");
            return;
        }
        print_row(title, "", bench::count_text(bench::median(counts)), "",
                  bench::count_text(bench::quantile(counts, 1)), "");
    }

    void against(const std::vector<problem>& problems, const bench::record& us,
                 const bench::record& them) {
        if (!them.seconds.empty()) {
            print_row(them.who, proved(them), bench::time_text(bench::median(them.seconds)), "",
                      bench::time_text(bench::quantile(them.seconds, 1)),
                      ratio_text(bench::ratio(us, them)));
        }
        if (!them.trouble.empty()) {
            std::printf("  %s: %s\n", them.who.c_str(), them.trouble.c_str());
        }
        if (const auto wrong = bench::dearer(them, us); !wrong.empty()) {
            std::printf("  %s is wrong on %zu: it calls a plan the cheapest that isn't\n",
                        them.who.c_str(), wrong.size());
        }
        for (const std::size_t i : bench::dearer(us, them)) {
            ++wrong_;
            const auto file = std::filesystem::temp_directory_path() /
                              ("pelage-differs-" + std::to_string(wrong_) + ".problem");
            std::ofstream out(file);
            judges::write_problem(problems[i], out);
            std::printf("  THE PLANNER IS WRONG on problem %zu: %lld, %s %lld; kept in %s\n", i,
                        static_cast<long long>(us.cost[i]), them.who.c_str(),
                        static_cast<long long>(them.cost[i]), file.c_str());
        }
        std::fflush(stdout);
    }

    bench::clock_kind by_;
    double most_seconds_;
    std::vector<bench::judge> judges_ = bench::general_solvers(by_);
    int wrong_ = 0;
};

/// "x^1.5" between the ends of a row of sizes.
void print_growth(const char* what, double small, double large, double fast, double slow) {
    std::printf("\nFrom %.0f to %.0f %s the planner's median grows with the power %.1f.\n", small,
                large, what, std::log(slow / fast) / std::log(large / small));
}

group dogs(int n, std::size_t for_judges, const char* title, const generate::table_size& size) {
    return {std::to_string(n) + " dogs, " + title,
            generate::real_problems(n, 2026 + static_cast<std::uint64_t>(size.drawer), size),
            for_judges, 20};
}

group made_up(int n, std::size_t for_judges, made kind, int zones, int setups) {
    return {std::to_string(n) + " made-up problems, " + std::string(name(kind)) + ", " +
                std::to_string(zones) + " x " + std::to_string(setups),
            generate::made_problems(n, 7, kind, zones, setups), for_judges, 6};
}

void dogs_of_all_sizes(table& t) {
    const group usual = dogs(4000, 100, "seven of ten blades and combs in the drawer", {});
    const double fast = t.add(dogs(400, 20, "three of ten in the drawer", {30, 0, 15}));
    t.add(usual);
    const double slow =
        t.add(dogs(400, 20, "all in the drawer, up to eight wishes for one side", {100, 8, 50}));
    std::printf("\nFrom the small drawer to the full one the planner's median grows %.1f-fold.\n",
                slow / fast);
}

void made_up_of_all_sizes(table& t) {
    const double z12 = t.add(made_up(200, 5, made::plain, 12, 80));
    group usual = made_up(400, 20, made::plain, 20, 80);
    usual.class_seconds = 20;
    t.add(usual);
    const double z40 = t.add(made_up(200, 4, made::plain, 40, 80));
    print_growth("zones", 12, 40, z12, z40);
    const double k40 = t.add(made_up(200, 5, made::plain, 20, 40));
    const double k120 = t.add(made_up(200, 4, made::plain, 20, 120));
    print_growth("setups", 40, 120, k40, k120);
}

void hard_ones(table& t) {
    for (const made kind : {made::flat, made::strong_seams, made::dear_tools, made::cheap_tools,
                            made::ties, made::facility, made::cover}) {
        t.add(made_up(30, 5, kind, 20, kind == made::facility || kind == made::cover ? 64 : 80));
    }
}

/// What was asked for: all of the table on the wall clock, unless said otherwise.
struct wishes {
    double most_seconds = 10;
    std::string only = "all";
    std::string clock = "wall";

    /// False if the words aren't understood.
    bool read(int count, char** words) {
        for (int i = 1; i + 1 < count; i += 2) {
            const std::string option = words[i];
            const std::string value = words[i + 1];
            if (option == "--limit") {
                most_seconds = std::atof(value.c_str());
            } else if (option == "--only") {
                only = value;
            } else if (option == "--clock") {
                clock = value;
            } else {
                return false;
            }
        }
        const std::vector<std::string> parts{"all", "dogs", "sizes", "hard"};
        return count % 2 == 1 && most_seconds > 0 && (clock == "wall" || clock == "processor") &&
               std::find(parts.begin(), parts.end(), only) != parts.end();
    }
    [[nodiscard]] bool wants(const char* part) const { return only == "all" || only == part; }
};

}  // namespace

int main(int count, char** words) {
    wishes w;
    if (!w.read(count, words)) {
        std::fputs(
            "usage: pelage_bench_plans [--only dogs|sizes|hard] [--limit SECONDS]\n"
            "                          [--clock wall|processor]\n",
            stderr);
        return 2;
    }
    table t(w.clock == "wall" ? bench::clock_kind::wall : bench::clock_kind::processor,
            w.most_seconds);
    if (w.wants("dogs")) {
        dogs_of_all_sizes(t);
    }
    if (w.wants("sizes")) {
        made_up_of_all_sizes(t);
    }
    if (w.wants("hard")) {
        hard_ones(t);
    }
    std::printf("\n%s\n",
                t.wrong() == 0
                    ? "Nobody had a cheaper plan than the one the planner proved the cheapest."
                    : "THE PLANNER WAS WRONG; see above.");
    return t.wrong() == 0 ? 0 : 1;
}
