#include "judges/process_judges.hpp"

#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "judges/model_files.hpp"
#include "judges/process.hpp"

namespace judges {

using pelage::problem;

namespace {

constexpr std::array<std::string_view, 4> packages{"coinor-cbc", "glpk-utils", "lp-solve",
                                                   "toulbar2"};

std::string read(const std::filesystem::path& file) {
    std::ostringstream all;
    all << std::ifstream(file).rdbuf();
    return all.str();
}

bool says(const std::string& text, std::string_view words) {
    return text.find(words) != std::string::npos;
}

/// What the program wrote: whether it claims a proof, and its answer.
struct answer {
    bool optimal = false;
    bool no_plan = false;
    std::string text;
};

/// "C12 1" anywhere in a line of words: columns at a value. The rest are 0.
std::vector<double> named_values(const std::string& text, std::size_t columns) {
    std::vector<double> value(columns, 0.0);
    std::istringstream lines(text);
    std::string one;
    while (std::getline(lines, one)) {
        std::istringstream words(one);
        std::string word;
        while (words >> word && word.front() != 'C') {
        }
        double at = 0;
        if (word.size() > 1 && word.find_first_not_of("0123456789", 1) == std::string::npos &&
            words >> at) {
            value.at(std::stoul(word.substr(1))) = at;
        }
    }
    return value;
}

/// "j 13 1" as a line: columns, counted from 1, at a value.
std::vector<double> numbered_values(const std::string& text, std::size_t columns) {
    std::vector<double> value(columns, 0.0);
    std::istringstream lines(text);
    std::string one;
    while (std::getline(lines, one)) {
        std::istringstream words(one);
        std::string mark;
        std::size_t column = 0;
        double at = 0;
        if (words >> mark >> column >> at && mark == "j") {
            value.at(column - 1) = at;
        }
    }
    return value;
}

class asked {
  public:
    asked(program which, const problem& p, form f, double most_seconds)
        : which_(which), p_(p), most_(most_seconds) {
        std::ofstream model(here_ / model_name());
        if (which_ == program::toulbar2) {
            write_wcsp(p, model);
        } else {
            ip_ = written(p, f);
            write_mps(ip_, model);
        }
    }

    verdict run() {
        const std::filesystem::path said = here_ / "said";
        const ended e = judges::run(words(), said, most_);
        if (e.status == 127) {
            const auto which = static_cast<std::size_t>(which_);
            throw std::runtime_error("there is no program " + std::string(name(which_)) +
                                     ": install the Debian package " +
                                     std::string(packages[which]));
        }
        verdict v;
        if (e.in_time) {
            v = judge(read(said));
        }
        v.spent = e.spent;
        return v;
    }

  private:
    [[nodiscard]] const char* model_name() const {
        return which_ == program::toulbar2 ? "plan.wcsp" : "plan.mps";
    }

    [[nodiscard]] std::vector<std::string> words() const {
        const std::string model = here_ / model_name();
        const std::string found = here_ / "found";
        switch (which_) {
            case program::cbc:
                return {"cbc", model, "ratio", "0", "allow", "0", "solve", "solution", found};
            case program::glpsol:
                return {"glpsol", "--freemps", model, "-w", found};
            case program::lp_solve:
                // without a number of better plans to look for it calls one in eighty optimal that isn't
                return {"lp_solve", "-mps", model, "-S3", "-n", "1000000"};
            case program::toulbar2:
                break;
        }
        return {"toulbar2", model, "-s=0", "-w=" + found};
    }

    [[nodiscard]] answer heard(const std::string& said) const {
        switch (which_) {
            case program::cbc: {
                const std::string found = read(here_ / "found");
                return {
                    found.rfind("Optimal", 0) == 0,
                    found.rfind("Infeasible", 0) == 0 || found.rfind("Integer infeasible", 0) == 0,
                    found};
            }
            case program::glpsol: {
                const std::string found = read(here_ / "found");
                return {says(found, "INTEGER OPTIMAL"),
                        says(said, "PROBLEM HAS NO PRIMAL FEASIBLE SOLUTION") ||
                            says(said, "PROBLEM HAS NO INTEGER FEASIBLE SOLUTION"),
                        found};
            }
            case program::lp_solve:
                return {says(said, "Value of objective function") && !says(said, "sub-optimal"),
                        says(said, "This problem is infeasible"), said};
            case program::toulbar2:
                break;
        }
        return {says(said, "Optimum: "), says(said, "No solution"), read(here_ / "found")};
    }

    [[nodiscard]] verdict judge(const std::string& said) const {
        const answer a = heard(said);
        if (a.no_plan) {
            verdict v;
            v.proven = true;
            return v;
        }
        const auto plan = which_ == program::toulbar2 ? by_value(a.text) : by_column(a.text);
        if (!plan) {
            verdict v;
            v.trouble = std::string(name(which_)) + " gave no plan; it said: " +
                        said.substr(said.size() > 300 ? said.size() - 300 : 0);
            return v;
        }
        return judged(p_, *plan, a.optimal);
    }

    [[nodiscard]] std::optional<std::vector<std::size_t>> by_column(const std::string& text) const {
        const std::size_t columns = ip_.columns.size();
        return chosen(p_, ip_,
                      which_ == program::glpsol ? numbered_values(text, columns)
                                                : named_values(text, columns));
    }

    /// A value per zone: its allowed setups in their order.
    [[nodiscard]] std::optional<std::vector<std::size_t>> by_value(const std::string& text) const {
        std::istringstream values(text);
        std::vector<std::size_t> plan;
        for (const auto& zone : p_.zones) {
            std::size_t which = 0;
            if (!(values >> which) || which >= zone.size()) {
                return std::nullopt;
            }
            plan.push_back(zone[which].setup);
        }
        return plan;
    }

    program which_;
    const problem& p_;
    double most_;
    integer_programme ip_;
    scratch here_;
};

}  // namespace

verdict by_program(program which, const problem& p, form f, double most_seconds) {
    return asked(which, p, f, most_seconds).run();
}

}  // namespace judges
