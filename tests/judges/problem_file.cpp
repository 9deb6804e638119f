#include "judges/problem_file.hpp"

#include <algorithm>
#include <istream>
#include <ostream>
#include <stdexcept>
#include <string>

namespace judges {

using namespace pelage;

namespace {

void write_cell(const problem& p, std::size_t i, std::ostream& out) {
    out << (p.cost[i] == forbidden ? std::string("-") : std::to_string(p.cost[i])) << ' '
        << p.length[i] << ' ' << std::hex << p.tools[i] << std::dec;
    if (!p.spend.empty()) {
        out << ' ' << int{p.spend[i]};
    }
}

void read_cell(problem& p, bool spends, std::istream& in) {
    std::string cost;
    std::int32_t length = 0;
    tool_set tools = 0;
    in >> cost >> length >> std::hex >> tools >> std::dec;
    p.cost.push_back(cost == "-" || cost.empty() ? forbidden : std::stoi(cost));
    p.length.push_back(length);
    p.tools.push_back(tools);
    if (spends) {
        int minutes = 0;
        in >> minutes;
        p.spend.push_back(static_cast<std::uint8_t>(minutes));
    }
}

}  // namespace

void write_problem(const problem& p, std::ostream& out) {
    out << "pelage problem\n"
        << p.zones << ' ' << p.setups << ' ' << p.price.size() << ' ' << p.seams.size() << ' '
        << (p.spend.empty() ? -1 : p.budget) << '\n';
    for (std::size_t z = 0; z < p.zones; ++z) {
        for (std::size_t k = 0; k < p.setups; ++k) {
            out << (k == 0 ? "" : "  ");
            write_cell(p, p.at(z, k), out);
        }
        out << '\n';
    }
    for (const std::int32_t price : p.price) {
        out << price << ' ';
    }
    out << '\n';
    for (const seam_cost& s : p.seams) {
        out << s.a << ' ' << s.b << ' ' << s.per_hundredth << ' ' << s.allowance << '\n';
    }
}

std::optional<problem> read_problem(std::istream& in) {
    std::string first;
    std::string second;
    if (!(in >> first)) {
        return std::nullopt;
    }
    problem p;
    std::size_t tools = 0;
    std::size_t seams = 0;
    std::int32_t budget = 0;
    in >> second >> p.zones >> p.setups >> tools >> seams >> budget;
    if (!in || first != "pelage" || second != "problem" || p.zones > most_zones ||
        p.setups > most_setups || tools > most_tools || seams > most_steps) {
        throw std::runtime_error("not a problem of pelage");
    }
    for (std::size_t i = 0; i < p.zones * p.setups; ++i) {
        read_cell(p, budget >= 0, in);
    }
    p.budget = std::max(budget, 0);
    p.price.resize(tools);
    for (std::int32_t& price : p.price) {
        in >> price;
    }
    p.seams.resize(seams);
    for (seam_cost& s : p.seams) {
        in >> s.a >> s.b >> s.per_hundredth >> s.allowance;
    }
    if (!in) {
        throw std::runtime_error("the problem ends early");
    }
    return p;
}

}  // namespace judges
