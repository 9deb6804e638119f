// A kit checked: what is out for sharpening, and what does its work until then.
#include <algorithm>
#include <set>

#include "kit/check_parts.hpp"

namespace pelage {

namespace {

/// The coats the sheets are for.
std::vector<coat_class> coats_of(const checked_kit& k) {
    std::set<coat_class> all;
    for (const judged_target& t : k.targets) {
        all.insert(t.what.coat);
    }
    return {all.begin(), all.end()};
}

/// What may go under the combs while their blade is out.
std::optional<comb_blade_out::beneath> beneath_instead(const checked_kit& k, const kit_blade& out) {
    const comb& any = k.own().combs.front().spec;
    for (const kit_blade& b : k.own().blades) {
        const blade under = as_measured(b);
        if (b.spec.id == out.spec.id || !at_hand(b, k.asked.today) ||
            b.spec.shape == edge::adjustable ||
            k.refused(combed(any, under, direction::with_lay))) {
            continue;
        }
        const length here = under.stated.best;
        const length before = as_measured(out).stated.best;
        return comb_blade_out::beneath{b.spec.id, gap(here, before), here < before};
    }
    return std::nullopt;
}

/// The setup at hand that leaves most nearly the same with the lay, within what a plan tolerates;
/// no skip teeth in place of full ones.
std::optional<setup> nearest_in_place(const checked_kit& k, const kit_blade& b, coat_class c) {
    const double lay = lay_of(k.asked.reference, k.asked.rules, c).best;
    const setup self = bare(as_measured(b), direction::with_lay);
    const length wanted = cut_length(self, lay, k.asked.rules.cut).best;
    const length most = tolerance(wanted, false, k.asked.rules.prices);
    std::optional<setup> best;
    length off{};
    for (const setup& s : setups_of(k.own(), k.asked.today, k.asked.rules.cut)) {
        if (s.kind != tool_kind::clip || s.way != direction::with_lay || s.tool.etched == "50" ||
            (!s.over && skips(s.tool) && !skips(b.spec))) {
            continue;
        }
        const length d = gap(cut_length(s, lay, k.asked.rules.cut).best, wanted);
        if (d <= most && (!best || d < off)) {
            best = s;
            off = d;
        }
    }
    return best;
}

std::vector<blade_out::in_place> in_place_of(const checked_kit& k, const kit_blade& b) {
    std::vector<blade_out::in_place> by;
    for (const coat_class c : coats_of(k)) {
        const std::optional<setup> other = nearest_in_place(k, b, c);
        auto at = std::find_if(by.begin(), by.end(), [&](const auto& one) {
            return one.how ? other && held(*one.how) == held(*other) : !other;
        });
        if (at == by.end()) {
            at = by.insert(at, {other, {}});
        }
        at->coats.push_back(c);
    }
    return by;
}

}  // namespace

void find_blades_out(checked_kit& k) {
    for (const kit_blade& b : k.own().blades) {
        if (at_hand(b, k.asked.today)) {
            continue;
        }
        if (b.spec.id == k.own().under_comb && !k.own().combs.empty()) {
            k.say(kit_matter::out, comb_blade_out{b.spec.id, b.out_until, beneath_instead(k, b)});
        } else {
            k.say(kit_matter::out, blade_out{b.spec.id, b.out_until, in_place_of(k, b)});
        }
    }
}

}  // namespace pelage
