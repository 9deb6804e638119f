// What other ways share: planning again with something barred or changed, and one plan held against another.
#include "planner/alternatives_parts.hpp"

#include <algorithm>
#include <iterator>

#include "planner/lone_places.hpp"

namespace pelage::ways {

plan_request quietly(const plan_request& r) {
    plan_request q = r;
    q.reasons = false;
    return q;
}

groom plan_again(const plan_request& r) {
    const ready_kit ready(r);
    chosen_plan whole = choose_whole(r, ready, compile(r, ready));
    return read_plan(r, ready, std::move(whole.compiled), std::move(whole.choice));
}

groom same_problem::read(solution s) const {
    if (compiled_.follow.empty() || s.setup.empty()) {
        return read_plan(request_, ready_, compiled_, std::move(s));
    }
    compiled_plan c =
        compile(request_, ready_, compiled_.down, followed_again(request_, ready_, compiled_, s));
    // all else as chosen
    problem p = c.choice;
    for (std::size_t row = 0; row < p.zones.size() && c.rows == compiled_.rows; ++row) {
        const bool follows = c.follower(c.rows[row]) != nullptr;
        if (const allowed_setup* own = find(c.choice, row, s.setup[row]); own && !follows) {
            p.zones[row] = {*own};
        }
    }
    solution again = choose(p);
    return again.setup.empty() ? read_plan(request_, ready_, compiled_, std::move(s))
                               : read_plan(request_, ready_, std::move(c), std::move(again));
}

std::set<std::size_t> same_problem::tools_of(tool_set held) const {
    std::set<std::size_t> out;
    for (std::size_t bit = 0; bit < compiled_.tool_of.size(); ++bit) {
        if ((held >> bit & 1U) != 0) {
            out.insert(compiled_.tool_of[bit]);
        }
    }
    return out;
}

std::set<std::size_t> same_problem::tools_of(const std::vector<std::size_t>& choice) const {
    tool_set held = 0;
    for (std::size_t row = 0; row < choice.size(); ++row) {
        held |= find(compiled_.choice, row, choice[row])->tools;
    }
    return tools_of(held);
}

plan_request changed_request::of(const plan_request& r, const ready_kit& ready) const {
    return {r.reference,   r.rules,
            tools,         patient,
            r.sheet,       r.today,
            r.asked,       r.length_wish,
            r.both_ways,   r.match_sides,
            r.by_best,     r.patchwork,
            false,         kit_changed ? nullptr : &ready.top(),
            &ready.sheet()};
}

void changed_request::departs(const plan_request& r, const place& p, instruction what) {
    const body& b = r.reference.dog_body;
    patient.departures.push_back(
        {p.which == side::both ? b.zones[p.zone].id : title(b, p), std::move(what)});
}

std::vector<std::size_t> changes(const groom& a, const groom& b) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < a.zones.size(); ++i) {
        const zone_plan& x = a.zones[i];
        const zone_plan& y = b.zones[i];
        const auto finish_of = [](const zone_plan& z) {
            return z.how.kind == tool_kind::none ? finish::leave : z.how_finished;
        };
        if (title(x.how) != title(y.how) || finish_of(x) != finish_of(y) ||
            x.combed_out != y.combed_out ||
            (x.came == outcome::stuck) != (y.came == outcome::stuck)) {
            out.push_back(i);
        }
    }
    return out;
}

bool no_worse_stuck(const groom& a, const groom& b) {
    return std::includes(a.stuck.begin(), a.stuck.end(), b.stuck.begin(), b.stuck.end());
}

std::vector<held_tool> tools_in(const groom& g) {
    std::vector<held_tool> out;
    const auto add = [&](held_tool one) {
        if (std::find(out.begin(), out.end(), one) == out.end()) {
            out.push_back(std::move(one));
        }
    };
    for (const block& b : g.blocks) {
        if (b.how.kind == tool_kind::clip) {
            if (b.how.over) {
                add({true, b.how.over->id});
            }
            add({false, b.how.tool.id});
        }
    }
    return out;
}

other_way compared(way_kind what, const groom& was, groom becomes) {
    other_way w;
    w.what = what;
    w.more = all_work(becomes) - all_work(was);
    w.dearer = becomes.choice.cost - was.choice.cost;
    w.changed = changes(was, becomes);
    const std::vector<held_tool> before = tools_in(was);
    const std::vector<held_tool> after = tools_in(becomes);
    const auto lacking = [](const std::vector<held_tool>& in, const held_tool& t) {
        return std::find(in.begin(), in.end(), t) == in.end();
    };
    std::copy_if(before.begin(), before.end(), std::back_inserter(w.dropped),
                 [&](const held_tool& t) { return lacking(after, t); });
    std::copy_if(after.begin(), after.end(), std::back_inserter(w.taken),
                 [&](const held_tool& t) { return lacking(before, t); });
    w.cheapest = becomes.choice.sure.optimal;
    w.plan = std::move(becomes);
    return w;
}

}  // namespace pelage::ways
