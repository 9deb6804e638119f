#include "generate/made_problems.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>
#include <utility>

namespace generate {

using namespace pelage;

namespace {

constexpr int whole_body = 20;
/// Every part but the first has a neighbour before it, so that a smaller body is got by merging.
constexpr std::array<std::pair<int, int>, 25> touching{
    {{0, 1},   {0, 3},   {0, 4},   {1, 2},   {2, 3},   {2, 7},  {2, 8},  {3, 6},  {3, 4},
     {4, 5},   {5, 10},  {5, 13},  {10, 11}, {11, 12}, {8, 9},  {7, 14}, {1, 14}, {1, 15},
     {14, 16}, {15, 16}, {16, 17}, {15, 18}, {6, 10},  {6, 19}, {10, 19}}};
/// Which wish a part follows: body 0, legs 1, head 2, feet 3, ears and tail 4, underline 5.
constexpr std::array<int, whole_body> follows{0, 0, 0, 0, 0, 0, 5, 0, 1, 3,
                                              1, 1, 3, 4, 2, 2, 2, 2, 4, 5};
constexpr int wishes = 6;

int wish_of(int zone) {
    return follows[static_cast<std::size_t>(zone % whole_body)];
}

using edges = std::vector<std::pair<int, int>>;

/// Merges the parts from `zones` on into the neighbour before them.
edges merged(int zones) {
    std::array<int, whole_body> into{};
    std::iota(into.begin(), into.end(), 0);
    for (int z = zones; z < whole_body; ++z) {
        const auto* const at = std::find_if(touching.begin(), touching.end(),
                                            [&](const auto& e) { return e.second == z; });
        into[static_cast<std::size_t>(z)] = into[static_cast<std::size_t>(at->first)];
    }
    edges out;
    for (const auto& [a, b] : touching) {
        const int i = into[static_cast<std::size_t>(a)];
        const int j = into[static_cast<std::size_t>(b)];
        const std::pair e{std::min(i, j), std::max(i, j)};
        if (i != j && std::find(out.begin(), out.end(), e) == out.end()) {
            out.push_back(e);
        }
    }
    return out;
}

/// Splits one part after another into an upper and a lower half; the lower takes every other seam.
edges split(int zones) {
    edges out{touching.begin(), touching.end()};
    for (int fresh = whole_body; fresh < zones; ++fresh) {
        const int old = fresh - whole_body;
        bool lower = false;
        for (auto& [a, b] : out) {
            if (a == old || b == old) {
                (a == old ? a : b) = lower ? fresh : old;
                lower = !lower;
            }
        }
        out.emplace_back(old, fresh);
    }
    return out;
}

edges body_of(int zones) {
    return zones < whole_body ? merged(zones) : split(zones);
}

struct pool_setup {
    double stated = 0;  // mm
    bool comb = false;
    bool against = false;
    bool skip = false;
    unsigned tool = 0;
};

std::vector<pool_setup> pool() {
    constexpr std::array blades{0.25, 0.4, 0.5, 0.8, 1.2, 1.5, 2.0,  2.8,  3.2, 3.2,
                                4.8,  4.8, 6.3, 6.3, 9.5, 9.5, 13.0, 13.0, 16.0};
    constexpr std::array combs{3.0, 6.0, 8.0, 10.0, 13.0, 16.0, 19.0, 22.0, 25.0, 32.0, 45.0};
    constexpr std::array under{0.25, 0.5, 1.2, 1.5};
    std::vector<pool_setup> out;
    unsigned tool = 0;
    for (std::size_t i = 0; i < blades.size(); ++i) {
        const bool skip = i >= 9 && i % 2 == 1;
        out.push_back({blades.at(i), false, false, skip, tool});
        out.push_back({blades.at(i), false, true, skip, tool});
        ++tool;
    }
    for (const double c : combs) {
        for (const double b : under) {
            out.push_back({c + b - 0.5, true, false, false, tool});
            out.push_back({c + b - 0.5, true, true, false, tool});
            ++tool;
        }
    }
    return out;
}

/// Leaves `n` of the pool, in its order.
std::vector<pool_setup> some_of_pool(dice& d, int n) {
    std::vector<pool_setup> out = pool();
    while (out.size() > static_cast<std::size_t>(n)) {
        out.erase(out.begin() + d.roll(static_cast<int>(out.size())));
    }
    return out;
}

/// What a part forbids.
struct part {
    double target = 0;  // mm
    double within = 0;  // tolerance, in the logarithm
    double weight = 0;
    bool thin = false;
    bool matted = false;

    [[nodiscard]] bool allows(const pool_setup& s) const {
        if (matted && (s.comb || s.skip || s.against || s.stated > 6.4)) {
            return false;
        }
        return !thin || (!s.skip && !(s.against && !s.comb && s.stated < 2.0));
    }
};

std::vector<part> parts(dice& d, int zones) {
    // body, legs, head, feet, ears and tail, underline: how the six lengths of a sheet stand
    constexpr std::array<std::array<double, wishes>, 6> sheets{{{1, 1, 1, 1, 1, 1},
                                                                {1, 2, 1.5, 1, 2.5, 1},
                                                                {1, 3, 0.5, 0.5, 3, 2},
                                                                {1, 1.5, 2, 1, 1.5, 0.7},
                                                                {1, 0.7, 0.7, 0.4, 2, 0.7},
                                                                {1, 4, 2.5, 1.5, 4, 3}}};
    const double body = std::exp(d.between(std::log(3.0), std::log(20.0)));
    const auto& sheet = sheets[static_cast<std::size_t>(d.roll(static_cast<int>(sheets.size())))];
    std::vector<part> out;
    for (int z = 0; z < zones; ++z) {
        const auto wish = static_cast<std::size_t>(wish_of(z));
        part p;
        p.target = std::min(body * sheet[wish], 45.0) * d.between(0.7, 1.4);
        p.within = d.between(0.03, 0.12);
        p.weight = d.between(1.0, 4.0);
        p.thin = wish == 2 || wish == 4 || wish == 5;
        p.matted = d.luck(5);
        if (p.matted) {
            p.target = 5.0;  // what a mat comes off with is short, whatever was wished
        }
        out.push_back(p);
    }
    return out;
}

/// 50000 times the square of the logarithmic miss beyond the tolerance, threefold if too short.
std::int32_t miss(const part& p, double leaves, made kind) {
    const double off = std::max(0.0, std::abs(std::log(leaves / p.target)) - p.within);
    double cost = p.weight * 50'000.0 * off * off * (leaves < p.target ? 3.0 : 1.0);
    if (kind == made::flat) {
        cost *= 0.12;
    }
    cost = std::min(cost, 400'000.0);
    const double step = kind == made::ties ? 2000.0 : 1.0;
    return static_cast<std::int32_t>(std::lround(cost / step) * std::lround(step));
}

std::int32_t tool_price(made kind) {
    return kind == made::dear_tools ? 20'000 : kind == made::cheap_tools ? 400 : 3000;
}

void add_seams(dice& d, made kind, int zones, problem& p) {
    const bool strong = kind == made::strong_seams;
    // a step between parts of different wishes is meant, so much of it is allowed
    for (const auto& [a, b] : body_of(zones)) {
        seam_cost s{static_cast<std::size_t>(a), static_cast<std::size_t>(b)};
        s.per_hundredth = static_cast<std::int32_t>(2 + d.roll(8)) * (strong ? 12 : 1);
        s.allowance = wish_of(a) != wish_of(b) ? 800 + d.roll(2201) : 80 + d.roll(271);
        s.allowance /= strong ? 20 : 1;
        p.seams.push_back(s);
    }
}

void add_zone(const part& place, const std::vector<pool_setup>& setups, double lie, made kind,
              problem& p) {
    const bool none = std::none_of(setups.begin(), setups.end(),
                                   [&](const pool_setup& s) { return place.allows(s); });
    auto& zone = p.zones.emplace_back();
    for (std::size_t k = 0; k < setups.size(); ++k) {
        const pool_setup& s = setups[k];
        const double leaves = s.against ? s.stated : s.stated * lie;
        if (none || place.allows(s)) {
            zone.push_back({static_cast<std::uint16_t>(k), 0, miss(place, leaves, kind),
                            static_cast<std::int32_t>(std::lround(leaves * 100.0)),
                            tool_set{1} << s.tool});
        }
    }
}

/// Like a groom, in one way or another.
problem groom_like(dice& d, made kind, int zones, int setups) {
    problem p;
    const auto chosen = some_of_pool(d, setups);
    p.price.assign(pool().back().tool + 1, tool_price(kind));
    const double lie = d.between(1.1, 1.8);  // hair that lies is left longer with the lay
    for (const part& place : parts(d, zones)) {
        add_zone(place, chosen, lie, kind, p);
    }
    add_seams(d, kind, zones, p);
    return p;
}

/// No structure but the tools.
problem unlike_a_groom(dice& d, made kind, int zones, int setups) {
    problem p;
    const auto tools = std::min(static_cast<std::size_t>(setups), most_tools);
    p.price.assign(tools, tool_price(kind));
    for (int z = 0; z < zones; ++z) {
        auto& zone = p.zones.emplace_back();
        for (std::size_t k = 0; k < static_cast<std::size_t>(setups); ++k) {
            const bool suits = d.luck(20);
            const int any = d.roll(20'000);
            zone.push_back({static_cast<std::uint16_t>(k), 0,
                            kind == made::cover ? (suits ? 0 : 200'000) : any, 1000,
                            tool_set{1} << (k % tools)});
        }
    }
    return p;
}

}  // namespace

problem made_problem(dice& d, made kind, int zones, int setups) {
    const bool loose = kind == made::facility || kind == made::cover;
    return loose ? unlike_a_groom(d, kind, zones, setups) : groom_like(d, kind, zones, setups);
}

void add_combing_out(dice& d, problem& p) {
    p.budget = 15;
    for (auto& zone : p.zones) {
        const int minutes = d.luck(25) ? 2 + d.roll(9) : 0;
        for (std::size_t i = 1; i < zone.size(); ++i) {  // the first allowed setup needs none
            if (d.luck(80)) {
                zone[i].spend = minutes;
            }
        }
    }
}

std::vector<problem> made_problems(int n, std::uint64_t seed, made kind, int zones, int setups) {
    dice d(seed);
    std::vector<problem> out;
    while (out.size() < static_cast<std::size_t>(n)) {
        out.push_back(made_problem(d, kind, zones, setups));
    }
    return out;
}

}  // namespace generate
