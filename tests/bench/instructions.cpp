#include "bench/instructions.hpp"

#include <filesystem>
#include <fstream>

#include "judges/problem_file.hpp"
#include "judges/process.hpp"

namespace bench {

namespace {

/// The line "totals: N" of a callgrind file; 0 if there is none.
double total_of(const std::filesystem::path& file) {
    std::ifstream in(file);
    std::string line;
    const std::string mark = "totals: ";
    while (std::getline(in, line)) {
        if (line.rfind(mark, 0) == 0) {
            return std::stod(line.substr(mark.size()));
        }
    }
    return 0;
}

}  // namespace

std::vector<double> instructions(const std::string& counter,
                                 const std::vector<pelage::problem>& problems,
                                 double most_seconds) {
    const judges::scratch here;
    const std::filesystem::path input = here / "problems";
    {
        std::ofstream out(input);
        for (const pelage::problem& p : problems) {
            judges::write_problem(p, out);
        }
    }
    // callgrind heeds one option for a pattern only, so the same function is named in two ways
    const std::filesystem::path files = here / "callgrind";
    const auto e =
        judges::run({"valgrind", "--tool=callgrind", "--callgrind-out-file=" + files.string(),
                     "--toggle-collect=one_pla*", "--dump-after=one_plan", counter, input.string()},
                    here / "said", most_seconds);
    std::vector<double> out;
    for (std::size_t i = 1; i <= problems.size() && e.status != 127; ++i) {
        const double n = total_of(files.string() + "." + std::to_string(i));
        if (n == 0) {
            break;
        }
        out.push_back(n);
    }
    return out;
}

}  // namespace bench
