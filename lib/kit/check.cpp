// A kit checked.
#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <set>

#include <pelage/kit/check.hpp>
#include <pelage/planner/kit_setups.hpp>

namespace pelage {

std::string_view name(kit_matter m) {
    constexpr std::array<std::string_view, 7> names{"unsafe",   "two-lengths", "gap",   "out",
                                                    "no-basis", "idle",        "remark"};
    return names[static_cast<std::size_t>(m)];
}

bool kit_check::amiss() const {
    return std::any_of(remarks.begin(), remarks.end(),
                       [](const kit_remark& r) { return r.what <= kit_matter::gap; });
}

namespace {

/// Adds what isn't there yet.
template <class One>
void add_once(std::vector<One>& to, const One& one) {
    if (std::find(to.begin(), to.end(), one) == to.end()) {
        to.push_back(one);
    }
}

kit all_there(kit k) {
    for (kit_blade& b : k.blades) {
        b.out = false;
        b.out_until.reset();
    }
    return k;
}

class checker {
  public:
    explicit checker(const kit_check_request& r)
        : r_(r),
          whole_(all_there(r.own)),
          setups_(setups_of(whole_, r.today, r.rules.cut)),
          targets_(judge_targets(r.reference, r.rules, whole_, r.sheets, setups_)) {}

    kit_check run() {
        combs_on_wrong_blades();
        surgical_blades();
        labels_of_two_combs();
        labels_of_comb_and_blade();
        numbers_of_two_blades();
        gaps();
        blades_out();
        poorly_known();
        idle_things();
        remarks();
        count();
        std::stable_sort(out_.remarks.begin(), out_.remarks.end(),
                         [](const auto& a, const auto& b) { return a.what < b.what; });
        return std::move(out_);
    }

  private:
    void say(kit_matter m, drawer_finding found) { out_.remarks.push_back({m, std::move(found)}); }

    void combs_on_wrong_blades() {
        for (const kit_comb& c : r_.own.combs) {
            for (const std::string& id : c.fits) {
                const kit_blade* b = find_blade(r_.own, id);
                if (b == nullptr) {
                    say(kit_matter::remark, comb_on_no_blade{c.spec.id, id});
                } else if (const auto no =
                               refuse(combed(as_measured(c), as_measured(*b), direction::with_lay),
                                      anywhere_, r_.rules.refusal, r_.rules.cut)) {
                    say(kit_matter::unsafe, comb_on_wrong_blade{c.spec.id, id, *no});
                }
            }
        }
    }

    void surgical_blades() {
        for (const kit_blade& b : r_.own.blades) {
            if (b.spec.etched == "50") {
                say(kit_matter::unsafe, surgical_blade{b.spec.id});
            }
        }
    }

    void labels_of_two_combs() {
        std::map<std::string, std::vector<label_on_combs::labelled>> meanings;
        for (const kit_comb& c : r_.own.combs) {
            for (const comb_label& l : c.labels) {
                if (!l.label.empty()) {
                    meanings[l.label].push_back({c.spec.id, l.set});
                }
            }
        }
        for (const auto& [label, all] : meanings) {
            if (all.size() > 1) {
                say(kit_matter::two_lengths, label_on_combs{label, all});
            }
        }
    }

    void labels_of_comb_and_blade() {
        for (const kit_comb& c : r_.own.combs) {
            for (const comb_label& l : c.labels) {
                const kit_blade* b = l.label.empty() ? nullptr : find_blade(r_.own, l.label);
                if (b != nullptr) {
                    say(kit_matter::two_lengths,
                        label_on_comb_and_blade{l.label, as_measured(*b).stated.best, c.spec.id,
                                                l.set});
                }
            }
        }
    }

    /// Blades with one number on them and unlike lengths, such as a long 5/8 and a 5/8 toe.
    void numbers_of_two_blades() {
        const auto& all = r_.own.blades;
        for (std::size_t i = 0; i < all.size(); ++i) {
            for (std::size_t j = i + 1; j < all.size(); ++j) {
                const length a = as_measured(all[i]).stated.best;
                const length b = as_measured(all[j]).stated.best;
                if (all[i].spec.etched == all[j].spec.etched &&
                    longer(a, b) > shorter(a, b) * 1.5) {
                    say(kit_matter::two_lengths,
                        number_on_blades{
                            all[i].spec.etched, {all[i].spec.id, a}, {all[j].spec.id, b}});
                }
            }
        }
    }

    void gaps() {
        std::vector<nothing_leaves> groups;
        for (const judged_target& t : targets_) {
            if (t.met_by.empty()) {
                add_gap(t, groups);
            }
        }
        std::stable_sort(groups.begin(), groups.end(),
                         [](const auto& x, const auto& y) { return x.wanted < y.wanted; });
        for (nothing_leaves& g : groups) {
            say(kit_matter::gap, std::move(g));
        }
    }

    /// To a tenth under 10 mm, to whole millimetres above: what a list can tell apart.
    static length in_its_grain(const length& l) {
        const double grain = in_mm(l) < 10.0 ? 0.1 : 1.0;
        return mm(std::round(in_mm(l) / grain) * grain);
    }

    void add_gap(const judged_target& t, std::vector<nothing_leaves>& groups) const {
        // a blade's length differs from coat to coat; the blade is what is missing
        const std::optional<length> wanted = t.what.blade || !t.what.wanted
                                                 ? std::nullopt
                                                 : std::optional{in_its_grain(*t.what.wanted)};
        auto g = std::find_if(groups.begin(), groups.end(), [&](const nothing_leaves& one) {
            return one.wanted == wanted && one.blade == t.what.blade;
        });
        if (g == groups.end()) {
            g = groups.insert(g, {wanted, t.what.blade, {}, std::nullopt});
        }
        auto s = std::find_if(g->sheets.begin(), g->sheets.end(), [&](const auto& one) {
            return one.sheet == t.what.sheet && one.season == t.what.season;
        });
        if (s == g->sheets.end()) {
            s = g->sheets.insert(s, {t.what.sheet, {}, {}, t.what.season});
        }
        add_once(s->zones, t.what.zone);
        add_once(s->coats, t.what.coat);
        if (t.nearest && (!g->best || t.off < g->best->off)) {
            g->best = {setups_[*t.nearest], t.off, t.what.coat};
        }
    }

    /// The coats the sheets are for.
    [[nodiscard]] std::vector<coat_class> coats() const {
        std::set<coat_class> all;
        for (const judged_target& t : targets_) {
            all.insert(t.what.coat);
        }
        return {all.begin(), all.end()};
    }

    void blades_out() {
        for (const kit_blade& b : r_.own.blades) {
            if (at_hand(b, r_.today)) {
                continue;
            }
            if (b.spec.id == r_.own.under_comb && !r_.own.combs.empty()) {
                say(kit_matter::out, comb_blade_out{b.spec.id, b.out_until, beneath_instead(b)});
            } else {
                say(kit_matter::out, blade_out{b.spec.id, b.out_until, in_place_of(b)});
            }
        }
    }

    /// What may go under the combs while their blade is out.
    [[nodiscard]] std::optional<comb_blade_out::beneath> beneath_instead(
        const kit_blade& out) const {
        const comb& any = r_.own.combs.front().spec;
        for (const kit_blade& b : r_.own.blades) {
            const blade under = as_measured(b);
            if (b.spec.id == out.spec.id || !at_hand(b, r_.today) ||
                b.spec.shape == edge::adjustable ||
                refuse(combed(any, under, direction::with_lay), anywhere_, r_.rules.refusal,
                       r_.rules.cut)) {
                continue;
            }
            const length here = under.stated.best;
            const length before = as_measured(out).stated.best;
            return comb_blade_out::beneath{b.spec.id, gap(here, before), here < before};
        }
        return std::nullopt;
    }

    [[nodiscard]] std::vector<blade_out::in_place> in_place_of(const kit_blade& b) const {
        std::vector<blade_out::in_place> by;
        for (const coat_class c : coats()) {
            const std::optional<setup> other = nearest_in_place(b, c);
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

    /// The setup at hand that leaves most nearly the same with the lay, within what a plan tolerates;
    /// no skip teeth in place of full ones.
    [[nodiscard]] std::optional<setup> nearest_in_place(const kit_blade& b, coat_class c) const {
        const double lay = lay_of(r_.reference, r_.rules, c).best;
        const setup self = bare(as_measured(b), direction::with_lay);
        const length wanted = cut_length(self, lay, r_.rules.cut).best;
        const length most = tolerance(wanted, false, r_.rules.prices);
        std::optional<setup> best;
        length off{};
        for (const setup& s : setups_of(r_.own, r_.today, r_.rules.cut)) {
            if (s.kind != tool_kind::clip || s.way != direction::with_lay ||
                s.tool.etched == "50" || (!s.over && skips(s.tool) && !skips(b.spec))) {
                continue;
            }
            const length d = gap(cut_length(s, lay, r_.rules.cut).best, wanted);
            if (d <= most && (!best || d < off)) {
                best = s;
                off = d;
            }
        }
        return best;
    }

    void poorly_known() {
        guessed_lengths found;
        const auto look = [&](kit_tool tool, const figure<length>& stated, bool measured) {
            const basis how = stated.why.how;
            if (!measured && (how == basis::memory || how == basis::assumption)) {
                found.tools.push_back({std::move(tool), how});
            }
        };
        for (const kit_blade& b : r_.own.blades) {
            look({false, b.spec.id}, b.spec.stated, b.measured || !b.settings.empty());
        }
        for (const kit_comb& c : r_.own.combs) {
            look({true, c.spec.id}, c.spec.stated, c.measured.has_value());
        }
        if (!found.tools.empty()) {
            say(kit_matter::no_basis, std::move(found));
        }
    }

    void idle_things() {
        std::set<std::string> blades;
        std::set<std::string> combs;
        for (const judged_target& t : targets_) {
            for (const std::size_t k : t.met_by) {
                blades.insert(setups_[k].tool.id);
                if (setups_[k].over) {
                    combs.insert(setups_[k].over->id);
                }
            }
        }
        idle_tools found;
        for (const kit_blade& b : r_.own.blades) {
            if (b.spec.id != r_.own.under_comb && !blades.contains(b.spec.id)) {
                found.tools.push_back({{false, b.spec.id}, as_measured(b).stated.best});
            }
        }
        for (const kit_comb& c : r_.own.combs) {
            if (!combs.contains(c.spec.id)) {
                found.tools.push_back({{true, c.spec.id}, as_measured(c).stated.best});
            }
        }
        if (!found.tools.empty() && !r_.sheets.empty()) {
            say(kit_matter::idle, std::move(found));
        }
    }

    void remarks() {
        for (const kit_blade& b : r_.own.blades) {
            if (b.measured &&
                (*b.measured < b.spec.stated.low || *b.measured > b.spec.stated.high)) {
                say(kit_matter::remark,
                    measured_elsewhere{b.spec.id, *b.measured, b.spec.stated.best});
            }
            if (b.spec.shape == edge::adjustable && b.settings.empty()) {
                say(kit_matter::remark, lever_without_marks{b.spec.id});
            }
        }
        blades_alike();
        no_second();
        too_many_at_tables();
    }

    /// Blades that clip more than the prep zones and have no second to swap in.
    void no_second() {
        std::set<std::string> clips;
        for (const judged_target& t : targets_) {
            const bool prep = r_.reference.dog_body.zones[t.what.zone].where == group::prep;
            for (const std::size_t k : t.met_by) {
                if (!prep && !skips(setups_[k].tool)) {
                    clips.insert(setups_[k].tool.id);
                }
            }
        }
        single_blades found;
        for (const kit_blade& b : r_.own.blades) {
            if (b.count == 1 && b.spec.shape != edge::adjustable && clips.contains(b.spec.id)) {
                found.blades.push_back(b.spec.id);
            }
        }
        if (!found.blades.empty()) {
            say(kit_matter::remark, std::move(found));
        }
    }

    void blades_alike() {
        look_alikes found;
        for (const kit_blade& a : r_.own.blades) {
            for (const kit_blade& b : r_.own.blades) {
                if (a.spec.etched == b.spec.etched && a.spec.cut == teeth::skip &&
                    b.spec.cut == teeth::full) {
                    found.pairs.push_back({a.spec.id, b.spec.id});
                }
            }
        }
        if (!found.pairs.empty()) {
            say(kit_matter::remark, std::move(found));
        }
    }

    void too_many_at_tables() {
        const auto look = [&](const kit_tool& tool, int count,
                              std::vector<std::string> table_drawer::*list) {
            int lying = 0;
            for (const table_drawer& t : r_.own.tables) {
                const auto& all = t.*list;
                lying += static_cast<int>(std::count(all.begin(), all.end(), tool.id));
            }
            if (lying > count) {
                say(kit_matter::remark, more_than_there_are{tool, lying, count});
            }
        };
        for (const kit_blade& b : r_.own.blades) {
            look({false, b.spec.id}, b.count, &table_drawer::blades);
        }
        for (const kit_comb& c : r_.own.combs) {
            look({true, c.spec.id}, c.count, &table_drawer::combs);
        }
    }

    void count() {
        out_.targets = targets_.size();
        const auto met = [](const std::vector<judged_target>& all) {
            return static_cast<std::size_t>(std::count_if(
                all.begin(), all.end(), [](const judged_target& t) { return !t.met_by.empty(); }));
        };
        out_.met = met(targets_);
        out_.met_today = met(judge_targets(r_.reference, r_.rules, r_.own, r_.sheets,
                                           setups_of(r_.own, r_.today, r_.rules.cut)));
        if (out_.met < out_.targets) {
            const shopping all = what_to_buy({r_.reference, r_.rules, r_.own, r_.sheets,
                                              usual_wares(r_.reference, r_.own), 0, r_.today});
            out_.more_to_buy = all.reachable > all.curve.front().choice.met;
        }
    }

    const kit_check_request& r_;
    zone_today anywhere_{.where = &r_.reference.dog_body.zones.front()};
    kit whole_;
    std::vector<setup> setups_;
    std::vector<judged_target> targets_;
    kit_check out_;
};

}  // namespace

kit_check check_kit(const kit_check_request& r) {
    return checker(r).run();
}

}  // namespace pelage
