// The plan without one of its tools: planned again with a kit that lacks it.
#include <algorithm>

#include "planner/alternatives_parts.hpp"

namespace pelage {

namespace {

/// Takes the blade or comb out of the kit; how many there were.
int take_out(kit& k, const held_tool& tool) {
    for (kit_blade& b : k.blades) {
        if (!tool.comb && b.spec.id == tool.id) {
            return std::exchange(b.count, 0);
        }
    }
    for (kit_comb& c : k.combs) {
        if (tool.comb && c.spec.id == tool.id) {
            return std::exchange(c.count, 0);
        }
    }
    return 0;
}

}  // namespace

std::vector<without_tool> without_each_tool(const plan_request& r, const groom& g) {
    std::vector<without_tool> out;
    const ready_kit ready(r);
    for (const held_tool& tool : ways::tools_in(g)) {
        ways::changed_request changed(r);
        changed.kit_changed = true;
        without_tool w;
        w.tool = tool;
        w.in_kit = take_out(changed.tools, tool);
        w.plan = ways::plan_again(changed.of(r, ready));
        w.more = ways::all_work(w.plan) - ways::all_work(g);
        w.dearer = w.plan.choice.cost - g.choice.cost;
        w.changed = ways::changes(g, w.plan);
        std::set_difference(w.plan.stuck.begin(), w.plan.stuck.end(), g.stuck.begin(),
                            g.stuck.end(), std::back_inserter(w.stuck));
        out.push_back(std::move(w));
    }
    return out;
}

}  // namespace pelage
