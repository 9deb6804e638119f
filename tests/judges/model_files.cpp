#include "judges/model_files.hpp"

#include <algorithm>
#include <iomanip>
#include <numeric>
#include <ostream>

namespace judges {

using namespace pelage;

namespace {

std::string called(char letter, std::size_t i) {
    return letter + std::to_string(i);
}

/// Fields begin in columns 2, 5, 15 and 25.
void line(std::ostream& out, const char* kind, const std::string& first, const std::string& second,
          const std::string& number = {}) {
    out << ' ' << std::left << std::setw(3) << kind << std::setw(10) << first;
    if (number.empty()) {
        out << second << '\n';
    } else {
        out << std::setw(10) << second << number << '\n';
    }
}

void write_columns(const integer_programme& ip, std::ostream& out) {
    std::vector<std::vector<std::pair<std::size_t, std::int64_t>>> down(ip.columns.size());
    for (std::size_t r = 0; r < ip.rows.size(); ++r) {
        for (const term& t : ip.rows[r].terms) {
            down[t.column].emplace_back(r, t.factor);
        }
    }
    out << "COLUMNS\n";
    bool whole = false;
    int marker = 0;
    const auto mark = [&](const char* which) {
        out << "    M" << std::left << std::setw(9) << marker++ << std::setw(25) << "'MARKER'"
            << which << '\n';
    };
    for (std::size_t c = 0; c < ip.columns.size(); ++c) {
        if (ip.columns[c].whole != whole) {
            whole = !whole;
            mark(whole ? "'INTORG'" : "'INTEND'");
        }
        if (ip.columns[c].cost != 0 || down[c].empty()) {
            line(out, "", called('C', c), "COST", std::to_string(ip.columns[c].cost));
        }
        for (const auto& [r, factor] : down[c]) {
            line(out, "", called('C', c), called('R', r), std::to_string(factor));
        }
    }
    if (whole) {
        mark("'INTEND'");
    }
}

/// The network's variables besides zones, whose values are their allowed setups: tools, and for every zone that may need
/// combing out the minutes needed up to it.
struct network {
    std::vector<std::size_t> tools;     // with a price
    std::vector<std::size_t> spenders;  // zones
    std::int64_t top = 1;               // above what any plan costs
    std::int32_t grain = 0;             // of combing out: everything spent is a multiple of it
};

network network_of(const problem& p) {
    network n;
    std::int32_t low = longest_hair;
    std::int32_t high = 0;
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        std::int32_t dearest_here = 0;
        bool spends = false;
        for (const allowed_setup& s : p.zones[z]) {
            dearest_here = std::max(dearest_here, s.cost);
            spends = spends || s.spend > 0;
            n.grain = std::gcd(n.grain, s.spend);
            low = std::min(low, s.length);
            high = std::max(high, s.length);
        }
        n.top += dearest_here;
        if (spends) {
            n.spenders.push_back(z);
        }
    }
    for (std::size_t t = 0; t < p.price.size(); ++t) {
        if (p.price[t] > 0) {
            n.tools.push_back(t);
            n.top += p.price[t];
        }
    }
    for (const seam_cost& s : p.seams) {
        n.top += std::int64_t{s.per_hundredth} * std::max(0, high - low);
    }
    return n;
}

std::int64_t step_cost(const problem& p, const seam_cost& s, std::size_t i, std::size_t j) {
    const std::int64_t apart =
        std::abs(std::int64_t{p.zones[s.a][i].length} - p.zones[s.b][j].length);
    return std::max<std::int64_t>(0, apart - s.allowance) * s.per_hundredth;
}

/// One function of the network: tuples with what they cost, and what all others cost.
struct cost_function {
    std::vector<std::size_t> scope;
    std::vector<std::vector<std::int64_t>> tuples;
    std::int64_t otherwise = 0;
};

void write(const cost_function& f, std::ostream& out) {
    out << f.scope.size();
    for (const std::size_t v : f.scope) {
        out << ' ' << v;
    }
    out << ' ' << f.otherwise << ' ' << f.tuples.size() << '\n';
    for (const auto& t : f.tuples) {
        for (std::size_t i = 0; i < t.size(); ++i) {
            out << (i == 0 ? "" : " ") << t[i];
        }
        out << '\n';
    }
}

cost_function seam_function(const problem& p, const seam_cost& s) {
    cost_function f{{s.a, s.b}, {}};
    for (std::size_t i = 0; i < p.zones[s.a].size(); ++i) {
        for (std::size_t j = 0; j < p.zones[s.b].size(); ++j) {
            const std::int64_t cost = step_cost(p, s, i, j);
            if (cost > 0) {
                f.tuples.push_back(
                    {static_cast<std::int64_t>(i), static_cast<std::int64_t>(j), cost});
            }
        }
    }
    return f;
}

/// No setup that holds the tool while the tool isn't held.
cost_function tool_function(const problem& p, const network& n, std::size_t z, std::size_t tool) {
    cost_function f{{z, p.zones.size() + tool}, {}};
    for (std::size_t i = 0; i < p.zones[z].size(); ++i) {
        if ((p.zones[z][i].tools >> n.tools[tool] & 1U) != 0) {
            f.tuples.push_back({static_cast<std::int64_t>(i), 0, n.top});
        }
    }
    return f;
}

/// Minutes up to the spender's zone = minutes up to the one before + what its setup needs; nothing
/// above the budget is a value.
cost_function spend_function(const problem& p, const network& n, std::size_t spender) {
    const std::size_t z = n.spenders[spender];
    const std::size_t here = p.zones.size() + n.tools.size() + spender;
    cost_function f{
        spender == 0 ? std::vector{z, here} : std::vector{here - 1, z, here}, {}, n.top};
    for (std::int64_t before = 0; before <= (spender == 0 ? 0 : p.budget / n.grain); ++before) {
        for (std::size_t i = 0; i < p.zones[z].size(); ++i) {
            const std::int64_t after = before + p.zones[z][i].spend / n.grain;
            if (after <= p.budget / n.grain && spender == 0) {
                f.tuples.push_back({static_cast<std::int64_t>(i), after, 0});
            } else if (after <= p.budget / n.grain) {
                f.tuples.push_back({before, static_cast<std::int64_t>(i), after, 0});
            }
        }
    }
    return f;
}

std::vector<cost_function> functions(const problem& p, const network& n) {
    std::vector<cost_function> out;
    for (std::size_t z = 0; z < p.zones.size(); ++z) {
        cost_function own{{z}, {}};
        for (std::size_t i = 0; i < p.zones[z].size(); ++i) {
            own.tuples.push_back({static_cast<std::int64_t>(i), p.zones[z][i].cost});
        }
        out.push_back(std::move(own));
    }
    for (std::size_t t = 0; t < n.tools.size(); ++t) {
        out.push_back({{p.zones.size() + t}, {{1, p.price[n.tools[t]]}}});
        for (std::size_t z = 0; z < p.zones.size(); ++z) {
            out.push_back(tool_function(p, n, z, t));
        }
    }
    for (const seam_cost& s : p.seams) {
        out.push_back(seam_function(p, s));
    }
    for (std::size_t i = 0; i < n.spenders.size(); ++i) {
        out.push_back(spend_function(p, n, i));
    }
    std::erase_if(out, [](const cost_function& f) { return f.tuples.empty() && f.otherwise == 0; });
    return out;
}

}  // namespace

void write_mps(const integer_programme& ip, std::ostream& out) {
    out << "NAME          PLAN\nROWS\n";
    line(out, "N", "COST", "");
    for (std::size_t r = 0; r < ip.rows.size(); ++r) {
        const relation holds = ip.rows[r].holds;
        line(out,
             holds == relation::equal      ? "E"
             : holds == relation::at_least ? "G"
                                           : "L",
             called('R', r), "");
    }
    write_columns(ip, out);
    out << "RHS\n";
    for (std::size_t r = 0; r < ip.rows.size(); ++r) {
        if (ip.rows[r].right != 0) {
            line(out, "", "RHS", called('R', r), std::to_string(ip.rows[r].right));
        }
    }
    out << "BOUNDS\n";
    for (std::size_t c = 0; c < ip.columns.size(); ++c) {
        if (ip.columns[c].most != column::no_limit) {
            line(out, "UP", "BOUND", called('C', c), std::to_string(ip.columns[c].most));
        }
    }
    out << "ENDATA\n";
}

void write_wcsp(const problem& p, std::ostream& out) {
    const network n = network_of(p);
    const auto all = functions(p, n);
    std::vector<std::size_t> domains;
    for (const auto& zone : p.zones) {
        domains.push_back(zone.size());
    }
    domains.resize(domains.size() + n.tools.size(), 2);
    domains.resize(domains.size() + n.spenders.size(),
                   static_cast<std::size_t>(p.budget / std::max(n.grain, 1)) + 1);
    out << "plan " << domains.size() << ' ' << *std::max_element(domains.begin(), domains.end())
        << ' ' << all.size() << ' ' << n.top << '\n';
    for (const std::size_t d : domains) {
        out << d << ' ';
    }
    out << '\n';
    for (const cost_function& f : all) {
        write(f, out);
    }
}

}  // namespace judges
