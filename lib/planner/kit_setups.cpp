#include <algorithm>
#include <tuple>
#include <unordered_map>

#include <pelage/base/error.hpp>
#include <pelage/planner/kit_setups.hpp>

namespace pelage {

blade as_measured(const kit_blade& b) {
    blade out = b.spec;
    if (b.measured) {
        out.stated = exactly(*b.measured, {basis::measured, {}, false, "test patch"});
    }
    return out;
}

comb as_measured(const kit_comb& c) {
    comb out = c.spec;
    if (c.measured) {
        out.stated = exactly(*c.measured, {basis::measured, {}, false, "test patch"});
    }
    return out;
}

namespace {

constexpr direction both_ways[] = {direction::with_lay, direction::against_lay};

/// A blade as it is held: an adjustable one on each mark of its lever.
std::vector<blade> as_used(const kit_blade& b) {
    if (b.spec.shape != edge::adjustable) {
        return {as_measured(b)};
    }
    std::vector<blade> out;
    for (const length& mark : b.settings) {
        out.push_back(set_to(b.spec, mark));
    }
    return out;
}

void add_combs(const kit& k, const std::optional<date>& today, std::vector<setup>& out) {
    for (const kit_comb& c : k.combs) {
        const std::vector<std::string> under =
            c.fits.empty() ? std::vector<std::string>{k.under_comb} : c.fits;
        for (const std::string& id : under) {
            const kit_blade* b = find_blade(k, id);
            if (b == nullptr || !at_hand(*b, today) || !taken(k, b->spec) || c.count < 1) {
                continue;
            }
            const blade beneath = b->spec.shape == edge::adjustable
                                      ? set_to(b->spec, b->spec.stated.best)
                                      : as_measured(*b);
            for (const direction d : both_ways) {
                out.push_back(combed(as_measured(c), beneath, d));
            }
        }
    }
}

}  // namespace

std::vector<setup> setups_of(const kit& k, const std::optional<date>& today, const cut_rules& c) {
    std::vector<setup> out;
    for (const kit_blade& b : k.blades) {
        if (!at_hand(b, today) || !taken(k, b.spec)) {
            continue;
        }
        for (const blade& one : as_used(b)) {
            for (const direction d : both_ways) {
                out.push_back(bare(one, d));
            }
        }
    }
    add_combs(k, today, out);
    using key = std::tuple<bool, std::int32_t, bool, std::string, bool>;
    std::vector<std::pair<key, setup>> keyed;
    keyed.reserve(out.size() + 5);
    for (setup& s : out) {
        key order{skips(s.tool), in_hundredths(stated_length(s, c).best), !s.over.has_value(),
                  held(s), s.way == direction::against_lay};
        keyed.emplace_back(std::move(order), std::move(s));
    }
    std::stable_sort(keyed.begin(), keyed.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    out.clear();
    for (auto& [order, s] : keyed) {
        out.push_back(std::move(s));
    }
    for (const tool_kind t : {tool_kind::scissors, tool_kind::thinners, tool_kind::carder,
                              tool_kind::fingers, tool_kind::none}) {
        out.push_back(by_hand(t));
    }
    return out;
}

kit_setups::kit_setups(const reference_data& reference, const parameters& rules, const kit& tools,
                       const std::optional<date>& today)
    : setups_(setups_of(tools, today, rules.cut)), parts_(reference.dog_body) {
    const work blade_price = tools.clippers > 1 ? rules.prices.pick_up_second_clipper.best
                                                : rules.prices.pick_up_blade.best;
    std::unordered_map<std::string, std::size_t> known;
    const auto tool = [&](std::string name, const work& price) {
        const auto [at, fresh] = known.try_emplace(std::move(name), tools_.size());
        if (fresh) {
            tools_.push_back(price);
        }
        return at->second;
    };
    for (std::size_t k = 0; k < setups_.size(); ++k) {
        const setup& s = setups_[k];
        (s.kind != tool_kind::clip      ? by_hand_
         : s.way == direction::with_lay ? with_lay_
                                        : against_lay_)
            .push_back(k);
        hold h;
        if (s.kind == tool_kind::clip) {
            h.blade = tool("blade " + s.tool.id, blade_price);
            h.comb = s.over ? tool("comb " + s.over->id, rules.prices.pick_up_comb.best) : none;
        }
        holds_.push_back(h);
    }
    for (const coat& c : reference.coats) {
        auto& row = leaves_[static_cast<std::size_t>(c.id)];
        for (const setup& s : setups_) {
            row.push_back(
                s.kind == tool_kind::clip
                    ? rounded(cut_length(s, lay_of(reference, rules, c.id).best, rules.cut))
                    : finished{});
        }
    }
}

void lay_over(instruction& under, const instruction& over) {
    const bool sized = over.target || over.blade;
    if (sized && under.tolerance_goes_with_length) {
        under.tolerance.reset();
        under.tolerance_goes_with_length = false;
    }
    if (sized) {
        under.known = over.known;
    }
    if (over.target) {
        under.target = over.target;
        under.blade.reset();
    }
    if (over.blade) {
        under.blade = over.blade;
        under.target.reset();
    }
    if (over.tolerance) {
        under.tolerance = over.tolerance;
        under.tolerance_goes_with_length = sized;
    }
    if (over.way) {
        under.way = over.way;
    }
    if (over.how) {
        under.how = over.how;
    }
    if (over.between) {
        under.between = over.between;
    }
    if (!over.note.empty()) {
        under.note = over.note;
    }
    if (!over.why.empty()) {
        under.why = over.why;
    }
}

namespace {

const selection* meant_by(const part_index& parts, const std::string& word) {
    const selection* whom = parts.find(word);
    if (whom == nullptr) {
        throw error(errc::unknown, "no zone, group or side is called \"" + word + "\"");
    }
    return whom;
}

bool holds_zone(const selection& s, std::size_t zone) {
    return std::any_of(s.places.begin(), s.places.end(),
                       [&](const place& p) { return p.zone == zone; });
}

}  // namespace

resolved_style::resolved_style(const body& b, const part_index& parts, const style& s)
    : wishes_(b.zones.size() * side_names.size()), one_sided_(b.zones.size(), false) {
    lay_rules(parts, s);
    for (const seam& one : b.seams) {
        seams_.push_back(one.kind);
    }
    for (const sheet_seam& own : s.seams) {
        const selection* a = meant_by(parts, own.a);
        const selection* z = meant_by(parts, own.b);
        for (std::size_t i = 0; i < b.seams.size(); ++i) {
            const seam& one = b.seams[i];
            if ((holds_zone(*a, one.a) && holds_zone(*z, one.b)) ||
                (holds_zone(*a, one.b) && holds_zone(*z, one.a))) {
                seams_[i] = own.kind;
            }
        }
    }
}

void resolved_style::lay_rules(const part_index& parts, const style& s) {
    struct meant_rule {
        const selection* whom;
        const instruction* what;
    };
    std::vector<meant_rule> rules;
    for (const sheet_rule& rule : s.rules) {
        rules.push_back({meant_by(parts, rule.whom), &rule.what});
    }
    // wider rules first, so that the narrower one wins wherever it stands
    std::stable_sort(rules.begin(), rules.end(), [](const meant_rule& a, const meant_rule& b) {
        return wider(*a.whom, *b.whom);
    });
    for (const meant_rule& rule : rules) {
        for (const place& p : rule.whom->places) {
            one_sided_[p.zone] = one_sided_[p.zone] || p.which != side::both;
            for (const side one : {side::both, side::left, side::right}) {
                if (one == p.which || p.which == side::both || one == side::both) {
                    lay_over(wishes_[p.zone * side_names.size() + static_cast<std::size_t>(one)],
                             *rule.what);
                }
            }
        }
    }
}

}  // namespace pelage
