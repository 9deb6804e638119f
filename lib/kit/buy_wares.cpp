// What is offered, and what of it to buy.
#include <algorithm>

#include <pelage/base/error.hpp>
#include <pelage/kit/buy.hpp>
#include <pelage/planner/kit_setups.hpp>

namespace pelage {

namespace {

bool has_comb(const kit& k, const std::string& id) {
    return std::any_of(k.combs.begin(), k.combs.end(),
                       [&](const kit_comb& c) { return c.spec.id == id; });
}

/// Own kit and wares in one drawer; what is out for sharpening comes back.
kit everything(const shopping_request& r) {
    kit k = r.own;
    for (kit_blade& b : k.blades) {
        b.out = false;
        b.out_until.reset();
    }
    for (const ware& w : r.wares) {
        if (w.as_blade) {
            k.blades.push_back({*w.as_blade, 1, {}, false, {}});
        } else {
            k.combs.push_back({*w.as_comb, 1, {}, w.fits});
        }
    }
    return k;
}

/// What a setup needs that isn't there.
item_set needs(const shopping_request& r, const setup& s) {
    item_set out = 0;
    for (std::size_t i = 0; i < r.wares.size(); ++i) {
        const ware& w = r.wares[i];
        const bool blade = w.as_blade && w.as_blade->id == s.tool.id;
        const bool comb = w.as_comb && s.over && w.as_comb->id == s.over->id;
        out |= blade || comb ? item_set{1} << i : 0;
    }
    return out;
}

std::vector<std::size_t> members(item_set items) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < most_items; ++i) {
        if ((items >> i & 1U) != 0) {
            out.push_back(i);
        }
    }
    return out;
}

bool meets(const cover_target& t, item_set have) {
    return std::any_of(t.ways.begin(), t.ways.end(),
                       [&](item_set way) { return (way & ~have) == 0; });
}

std::vector<use_of> uses_in(const cover_problem& p, const purchase& bought) {
    std::vector<use_of> out;
    for (const std::size_t i : bought.bought) {
        use_of u;
        u.ware = i;
        const item_set without = bought.choice.items & ~(item_set{1} << i);
        for (std::size_t t = 0; t < p.targets.size(); ++t) {
            if (meets(p.targets[t], bought.choice.items) && !meets(p.targets[t], without)) {
                u.lost_without += p.targets[t].weight;
                u.serves.push_back(t);
            }
        }
        out.push_back(std::move(u));
    }
    return out;
}

}  // namespace

std::vector<ware> usual_wares(const reference_data& reference, const kit& own) {
    std::vector<ware> out;
    for (const blade& b : reference.blades) {
        const bool usual = b.shape == edge::standard && !b.rare && b.etched != "50";
        if (usual && find_blade(own, b.id) == nullptr) {
            out.push_back({b, {}, {}});
        }
    }
    for (const comb& c : reference.combs) {
        if (!has_comb(own, c.id)) {
            out.push_back({{}, c, {}});
        }
    }
    return out;
}

std::vector<ware> wares_of(const kit& offered, const kit& own) {
    std::vector<ware> out;
    for (const kit_blade& b : offered.blades) {
        if (find_blade(own, b.spec.id) == nullptr && b.spec.shape != edge::adjustable) {
            out.push_back({as_measured(b), {}, {}});
        }
    }
    for (const kit_comb& c : offered.combs) {
        if (!has_comb(own, c.spec.id)) {
            out.push_back({{}, as_measured(c), c.fits});
        }
    }
    return out;
}

places_at_once places_in(const kit& k, const std::vector<groomer>& all) {
    places_at_once out;
    for (const table_drawer& t : k.tables) {
        out.who.push_back(t.id);
    }
    if (!out.who.empty()) {
        out.how = places_at_once::by::tables;
        out.number = static_cast<int>(out.who.size());
        return out;
    }
    for (std::size_t day = 0; day < 7; ++day) {
        std::vector<std::string> there;
        for (const groomer& g : all) {
            if (g.hours[day] > work{}) {
                there.push_back(g.name);
            }
        }
        if (there.size() > out.who.size()) {
            out = {places_at_once::by::groomers, static_cast<int>(there.size()), there};
        }
    }
    return out;
}

shopping_cost cost_of(const purchase& p, const shopping_request& r) {
    shopping_cost out;
    std::optional<std::string> currency;
    for (const std::size_t i : p.bought) {
        const std::optional<money>& price = r.wares[i].price;
        if (!price) {
            out.unpriced.push_back(i);
            continue;
        }
        out.one_currency =
            out.one_currency && currency.value_or(price->currency) == price->currency;
        currency = price->currency;
        out.sum.hundredths += price->hundredths * r.places.number;
    }
    out.sum.currency = currency.value_or("");
    return out;
}

cover_problem problem_of(const shopping_request& r, const std::vector<judged_target>& targets,
                         const std::vector<setup>& setups) {
    std::vector<item_set> need;
    for (const setup& s : setups) {
        need.push_back(needs(r, s));
    }
    cover_problem p{r.wares.size(), {}};
    for (const judged_target& t : targets) {
        cover_target one{t.what.weight, {}};
        for (const std::size_t k : t.met_by) {
            one.ways.push_back(need[k]);
        }
        p.targets.push_back(std::move(one));
    }
    return p;
}

shopping what_to_buy(const shopping_request& r) {
    if (r.wares.size() > most_items) {
        throw error(errc::range, "at most " + std::to_string(most_items) +
                                     " blades and combs can be chosen from; found " +
                                     std::to_string(r.wares.size()) + "; offer fewer of them");
    }
    shopping out;
    const kit all = everything(r);
    out.setups = setups_of(all, r.today, r.rules.cut);
    out.targets = judge_targets(r.reference, r.rules, all, r.sheets, out.setups);
    const cover_problem p = problem_of(r, out.targets, out.setups);
    for (std::size_t t = 0; t < p.targets.size(); ++t) {
        out.whole += p.targets[t].weight;
        out.reachable += p.targets[t].ways.empty() ? 0 : p.targets[t].weight;
        if (p.targets[t].ways.empty()) {
            out.never.push_back(t);
        }
    }
    for (const cover_choice& c : best_stock(p, std::min(r.most, p.items))) {
        out.curve.push_back({c, members(c.items)});
    }
    out.uses = uses_in(p, out.curve.back());
    return out;
}

}  // namespace pelage
