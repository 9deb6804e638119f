#include "judges/problem_file.hpp"

#include <algorithm>
#include <istream>
#include <ostream>
#include <stdexcept>
#include <string>

namespace judges {

using namespace pelage;

namespace {

allowed_setup read_setup(std::istream& in) {
    allowed_setup s;
    in >> s.setup >> s.cost >> s.length >> std::hex >> s.tools >> std::dec >> s.spend;
    return s;
}

}  // namespace

void write_problem(const problem& p, std::ostream& out) {
    out << "pelage problem\n"
        << p.zones.size() << ' ' << p.price.size() << ' ' << p.seams.size() << ' ' << p.budget
        << '\n';
    for (const auto& zone : p.zones) {
        out << zone.size();
        for (const allowed_setup& s : zone) {
            out << "  " << s.setup << ' ' << s.cost << ' ' << s.length << ' ' << std::hex << s.tools
                << std::dec << ' ' << s.spend;
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
    std::size_t zones = 0;
    std::size_t tools = 0;
    std::size_t seams = 0;
    in >> second >> zones >> tools >> seams >> p.budget;
    if (!in || first != "pelage" || second != "problem" || zones > most_zones ||
        tools > most_tools || seams > most_steps) {
        throw std::runtime_error("not a problem of pelage");
    }
    p.zones.resize(zones);
    for (auto& zone : p.zones) {
        std::size_t setups = 0;
        for (in >> setups; setups > 0 && in; --setups) {
            zone.push_back(read_setup(in));
        }
    }
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
