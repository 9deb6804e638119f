#include <algorithm>
#include <set>

#include <pelage/forecast/forecast.hpp>
#include <pelage/sheets/compare.hpp>

namespace pelage {

namespace {

void take_up(sheet_cost& c, held_tool tool) {
    if (std::find(c.tools.begin(), c.tools.end(), tool) == c.tools.end()) {
        c.tools.push_back(std::move(tool));
    }
}

sheet_cost cost_of(const plan_request& r, const days_off& closed) {
    sheet_cost c;
    c.plan = make_plan(r);
    if (!c.plan.planned()) {
        return c;
    }
    c.when = back_of(r, c.plan);
    std::set<std::string> setups;
    for (const block& b : c.plan.blocks) {
        if (b.how.kind != tool_kind::none) {
            setups.insert(title(b.how));
        }
        if (b.how.kind != tool_kind::clip) {
            continue;
        }
        take_up(c, {false, b.how.tool.id});
        if (b.how.over) {
            take_up(c, {true, b.how.over->id});
        }
    }
    c.setups = setups.size();
    if (r.today) {
        calendar_request ask{r, *r.today, half_a_year, closed, nullptr};
        ask.compare = false;
        c.visits = calendar_of(ask, c.plan);
    }
    return c;
}

}  // namespace

bool by_clipper(const instruction& i) {
    return !i.how || *i.how == finish::clip || *i.how == finish::comb_then_scissor;
}

bool same_wish(const instruction& a, const instruction& b) {
    const bool way = a.way == b.way || !(by_clipper(a) || by_clipper(b));
    return a.target == b.target && a.blade == b.blade && a.tolerance == b.tolerance && way &&
           a.how == b.how && a.between == b.between;
}

sheet_comparison compare_sheets(const plan_request& first, const plan_request& second,
                                const days_off& closed) {
    sheet_comparison c;
    c.first = &first.sheet;
    c.second = &second.sheet;
    const body& b = first.reference.dog_body;
    const part_index parts(b);
    const resolved_style one(b, parts, first.sheet);
    const resolved_style two(b, parts, second.sheet);
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        const bool sided = b.zones[z].paired && (one.one_sided(z) || two.one_sided(z));
        for (const side s :
             sided ? std::vector{side::left, side::right} : std::vector{side::both}) {
            const instruction& x = one.at({z, s});
            const instruction& y = two.at({z, s});
            if (same_wish(x, y)) {
                ++c.alike;
            } else {
                c.differ.push_back({{z, s}, x, y});
            }
        }
    }
    c.of_first = cost_of(first, closed);
    c.of_second = cost_of(second, closed);
    return c;
}

}  // namespace pelage
