#include "kit/lookup_near.hpp"

#include <algorithm>

#include <pelage/planner/kit_setups.hpp>

#include "kit/lookup_where.hpp"

namespace pelage {

namespace {

constexpr std::size_t how_many_near = 3;

/// By distance; first what may be used in the places asked about, or else on the coat.
void keep_nearest(std::vector<near_setup>& all, std::size_t most) {
    std::stable_sort(all.begin(), all.end(), [&](const near_setup& a, const near_setup& b) {
        return std::tuple{a.why_not.has_value(), in_hundredths(a.off)} <
               std::tuple{b.why_not.has_value(), in_hundredths(b.off)};
    });
    all.resize(std::min(all.size(), most));
}

bool same_thing(const setup& a, const setup& b) {
    return a.tool.id == b.tool.id && a.tool.setting == b.tool.setting &&
           a.over.has_value() == b.over.has_value() && (!a.over || a.over->id == b.over->id);
}

/// Nobody reverses what does with the lay: against it only where nothing with it comes near enough for a
/// plan, and no tool both ways.
void with_the_lay_first(std::vector<near_setup>& all, const length& near_enough) {
    const auto with = [](const near_setup& n) { return n.how.way == direction::with_lay; };
    const auto near = [&](bool with_lay) {
        return std::any_of(all.begin(), all.end(), [&](const near_setup& n) {
            return with(n) == with_lay && n.off <= near_enough && !n.why_not;
        });
    };
    const bool found = near(true) || !near(false);
    const std::vector<near_setup> before = all;
    std::erase_if(all, [&](const near_setup& n) {
        const auto twin = std::find_if(before.begin(), before.end(), [&](const near_setup& other) {
            return same_thing(other.how, n.how) && other.how.way != n.how.way;
        });
        if (twin == before.end()) {
            return found && !with(n);
        }
        return with(n) ? !found && in_hundredths(twin->off) < in_hundredths(n.off) && !twin->why_not
                       : found || in_hundredths(n.off) >= in_hundredths(twin->off) ||
                             n.why_not.has_value();
    });
}

/// In place of another: what may be used, is at hand, has as good teeth and errs on the longer side.
void keep_fittest(std::vector<near_setup>& all, const setup& self, const length& wanted) {
    std::stable_sort(all.begin(), all.end(), [&](const near_setup& a, const near_setup& b) {
        const auto key = [&](const near_setup& n) {
            return std::tuple{
                n.why_not.has_value(), !n.at_hand, skips(n.how.tool) && !skips(self.tool),
                in_hundredths(n.leaves.best) < in_hundredths(wanted), in_hundredths(n.off)};
        };
        return key(a) < key(b);
    });
    all.resize(std::min(all.size(), how_many_near));
}

}  // namespace

double lay_asked(const lookup_request& r, coat_class c) {
    return of_pads_alone(r) ? upright : lay_of(r.reference, r.rules, c).best;
}

length stops_at(const lookup_request& r, coat_class c) {
    const coat& k = coat_of(r.reference, c);
    if (r.where.empty()) {
        return longest_terminal(k).best;
    }
    length most{};
    for (const place& p : r.where) {
        most = longer(most, terminal_at(k, r.reference.dog_body.zones[p.zone].id).best);
    }
    return most;
}

near_setup near_to(const lookup_request& r, const setup& s, const length& wanted, coat_class c,
                   bool at_hand) {
    near_setup n;
    n.how = s;
    n.leaves = cut_length(s, lay_asked(r, c), r.rules.cut);
    n.wanted = wanted;
    n.off = gap(n.leaves.best, wanted);
    n.at_hand = at_hand;
    n.why_not = refused_there(r, s);
    return n;
}

std::vector<near_setup> nearest_to(const lookup_request& r, const length& wanted, coat_class c,
                                   const std::optional<direction>& way, asked_kind only) {
    std::vector<near_setup> all;
    const auto of_kind = [&](const setup& s) {
        return only == asked_kind::any || s.over.has_value() == (only == asked_kind::comb);
    };
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        if (s.kind == tool_kind::clip && s.tool.etched != "50" && (!way || s.way == *way) &&
            of_kind(s)) {
            all.push_back(near_to(r, s, wanted, c, true));
        }
    }
    // no cut leaves more than grows
    std::erase_if(all, [&](const near_setup& n) { return n.leaves.best > stops_at(r, c); });
    if (!way) {
        with_the_lay_first(all, tolerance(wanted, false, r.rules.prices));
    }
    keep_nearest(all, how_many_near);
    return all;
}

std::optional<near_setup> nearer_but_out(const lookup_request& r, const length& wanted,
                                         coat_class c, const std::vector<near_setup>& best) {
    std::optional<near_setup> out;
    for (const kit_blade& b : r.tools.blades) {
        if (at_hand(b, r.today) || b.spec.etched == "50") {
            continue;
        }
        const near_setup n =
            near_to(r, bare(as_measured(b), direction::with_lay), wanted, c, false);
        const bool nearer = best.empty() || n.off < best.front().off;
        const bool asked = !r.way || *r.way == direction::with_lay;
        if (asked && nearer && !n.why_not && n.leaves.best <= stops_at(r, c) &&
            (!out || n.off < out->off)) {
            out = n;
        }
    }
    return out;
}

std::optional<near_setup> next_longer(const lookup_request& r, const setup& self,
                                      const length& wanted, coat_class c, direction way) {
    std::optional<near_setup> out;
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        const bool fits = s.kind == tool_kind::clip && s.way == way && !same_thing(s, self) &&
                          (!skips(s.tool) || skips(self.tool));
        if (!fits) {
            continue;
        }
        near_setup n = near_to(r, s, wanted, c, true);
        n.longer = true;
        if (!n.why_not && n.leaves.best > wanted && n.leaves.best <= stops_at(r, c) &&
            (!out || n.off < out->off)) {
            out = n;
        }
    }
    return out;
}

std::vector<near_setup> others(const lookup_request& r, const setup& self, const length& wanted,
                               coat_class c, direction way) {
    std::vector<near_setup> all;
    const length tol = tolerance(wanted, false, r.rules.prices);
    const auto add = [&](const setup& s, bool at_hand) {
        const near_setup n = near_to(r, s, wanted, c, at_hand);
        const bool known = std::any_of(all.begin(), all.end(),
                                       [&](const near_setup& a) { return same_thing(a.how, s); });
        if (!same_thing(s, self) && !known && n.off <= tol) {
            all.push_back(n);
        }
    };
    for (const setup& s : setups_of(r.tools, r.today, r.rules.cut)) {
        if (s.kind == tool_kind::clip && s.way == way) {
            add(s, true);
        }
    }
    for (const blade& b : r.reference.blades) {
        const bool common = b.shape == edge::standard && !b.rare;
        if (common && b.etched != "50" && find_blade(r.tools, b.id) == nullptr) {
            add(bare(b, way), false);
        }
    }
    if (std::any_of(all.begin(), all.end(), [](const near_setup& n) { return n.at_hand; })) {
        std::erase_if(all, [](const near_setup& n) { return !n.at_hand; });
    }
    // no 15 for a 10 on the body, no 40 for a 30
    const bool refused = refused_there(r, self).has_value();
    std::erase_if(all, [&](const near_setup& n) {
        return n.why_not && (!refused || n.leaves.best < wanted);
    });
    keep_fittest(all, self, wanted);
    return all;
}

}  // namespace pelage
