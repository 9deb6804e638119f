// A kit checked.
#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <tuple>

#include <pelage/drawer.hpp>
#include <pelage/phrase.hpp>
#include <pelage/text.hpp>
#include <pelage/worktop.hpp>

namespace pelage {

std::string_view name(drawer_matter m) {
    constexpr std::array<std::string_view, 7> names{"unsafe",   "two-lengths", "gap",   "out",
                                                    "no-basis", "idle",        "remark"};
    return names[static_cast<std::size_t>(m)];
}

bool drawer_check::amiss() const {
    return std::any_of(remarks.begin(), remarks.end(),
                       [](const drawer_remark& r) { return r.what <= drawer_matter::gap; });
}

namespace {

/// Adds a word that isn't there yet.
void add_once(std::vector<std::string>& to, std::string word) {
    if (std::find(to.begin(), to.end(), word) == to.end()) {
        to.push_back(std::move(word));
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
    explicit checker(const drawer_request& r)
        : r_(r),
          whole_(all_there(r.own)),
          setups_(setups_of(whole_, r.today, r.rules.cut)),
          targets_(judge_targets(r.reference, r.rules, whole_, r.sheets, setups_)) {}

    drawer_check run() {
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
    void say(drawer_matter m, std::string text) { out_.remarks.push_back({m, std::move(text)}); }

    void combs_on_wrong_blades() {
        zone_today t;
        t.where = &r_.reference.dog_body.zones.front();
        for (const kit_comb& c : r_.own.combs) {
            for (const std::string& id : c.fits) {
                const kit_blade* b = find_blade(r_.own, id);
                if (b == nullptr) {
                    say(drawer_matter::remark, "comb " + c.spec.id + " is said to fit blade " + id +
                                                   ", which is not in the kit");
                } else if (const auto no =
                               refuse(combed(as_measured(c), as_measured(*b), direction::with_lay),
                                      t, r_.rules.refusal, r_.rules.cut)) {
                    say(drawer_matter::unsafe, "comb " + c.spec.id + " over blade " + id + ": " +
                                                   std::string(reason(*no)));
                }
            }
        }
    }

    void surgical_blades() {
        for (const kit_blade& b : r_.own.blades) {
            if (b.spec.etched == "50") {
                say(drawer_matter::unsafe, "blade " + b.spec.id + ": " +
                                               std::string(reason(refusal::never_50)) +
                                               "; take it out of the drawer");
            }
        }
    }

    void labels_of_two_combs() {
        std::map<std::string, std::vector<std::string>> meanings;
        for (const kit_comb& c : r_.own.combs) {
            for (const comb_label& l : c.labels) {
                if (!l.label.empty()) {
                    meanings[l.label].push_back(c.spec.id + " in " + l.set);
                }
            }
        }
        for (const auto& [label, all] : meanings) {
            if (all.size() > 1) {
                say(drawer_matter::two_lengths, "\"" + label + "\" on a comb is " + listed(all) +
                                                    ": go by the length, and mark them");
            }
        }
    }

    void labels_of_comb_and_blade() {
        for (const kit_comb& c : r_.own.combs) {
            for (const comb_label& l : c.labels) {
                const kit_blade* b = l.label.empty() ? nullptr : find_blade(r_.own, l.label);
                if (b != nullptr) {
                    say(drawer_matter::two_lengths,
                        "\"" + l.label + "\" is a blade of " + show(as_measured(*b).stated.best) +
                            " and, in " + l.set + ", a comb of " + c.spec.id + ": say \"blade " +
                            l.label + "\" or the comb's length");
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
                    say(drawer_matter::two_lengths,
                        "\"" + all[i].spec.etched + "\" is on blade " + all[i].spec.id + " (" +
                            show(a) + ") and on blade " + all[j].spec.id + " (" + show(b) +
                            "): keep them apart and say the whole name");
                }
            }
        }
    }

    /// What one sheet asks of one length that nothing leaves.
    struct gap_of_sheet {
        std::size_t sheet = 0;
        std::vector<std::string> zones;
        std::vector<std::string> coats;
    };
    /// A length, or a blade's, that nothing leaves.
    struct gap_group {
        std::int32_t wanted = 0;  ///< 0: a customary blade of a prep zone
        std::string blade;
        std::vector<gap_of_sheet> sheets;
        const judged_target* nearest = nullptr;  ///< the one least off
    };

    void gaps() {
        std::vector<gap_group> groups;
        for (const judged_target& t : targets_) {
            if (t.met_by.empty()) {
                add_gap(t, groups);
            }
        }
        std::stable_sort(groups.begin(), groups.end(),
                         [](const auto& x, const auto& y) { return x.wanted < y.wanted; });
        for (const gap_group& g : groups) {
            say(drawer_matter::gap, gap_text(g));
        }
    }

    void add_gap(const judged_target& t, std::vector<gap_group>& groups) const {
        // a blade's length differs from coat to coat; the blade is what is missing
        const std::string blade = t.what.blade.value_or("");
        const std::int32_t wanted =
            !t.what.wanted || t.what.blade ? 0 : in_hundredths(*t.what.wanted);
        auto g = std::find_if(groups.begin(), groups.end(), [&](const gap_group& one) {
            return one.wanted == wanted && one.blade == blade;
        });
        if (g == groups.end()) {
            g = groups.insert(g, {wanted, blade, {}, nullptr});
        }
        auto s = std::find_if(g->sheets.begin(), g->sheets.end(),
                              [&](const gap_of_sheet& one) { return one.sheet == t.what.sheet; });
        if (s == g->sheets.end()) {
            s = g->sheets.insert(s, {t.what.sheet, {}, {}});
        }
        add_once(s->zones, r_.reference.dog_body.zones[t.what.zone].title);
        add_once(s->coats, std::string(name(t.what.coat)));
        if (t.nearest && (g->nearest == nullptr || t.off < g->nearest->off)) {
            g->nearest = &t;
        }
    }

    [[nodiscard]] std::string gap_text(const gap_group& g) const {
        std::string out = !g.blade.empty() ? "blade " + g.blade
                          : g.wanted == 0  ? "a customary blade"
                                           : show(mm(g.wanted / 100.0));
        const char* between = ": ";
        for (const gap_of_sheet& s : g.sheets) {
            std::vector<std::string> some = s.zones;
            if (some.size() > 3) {
                some.resize(2);
                some.push_back(std::to_string(s.zones.size() - 2) + " more");
            }
            out += between + r_.sheets[s.sheet].id + " (" + listed(some) + "; " + listed(s.coats) +
                   ")";
            between = ", ";
        }
        if (g.nearest != nullptr) {
            out += "; nearest " + title(setups_[*g.nearest->nearest]) + ", " +
                   show(g.nearest->off) + " off (" + std::string(name(g.nearest->what.coat)) + ")";
        }
        return out;
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
            std::string text = "blade " + b.spec.id + " is out";
            text += b.out_until ? " until " + iso(*b.out_until) : ", no date said";
            if (b.spec.id == r_.own.under_comb && !r_.own.combs.empty()) {
                say(drawer_matter::out,
                    text + "; it is the one under the combs: " + beneath_instead(b));
                continue;
            }
            say(drawer_matter::out, text + "; " + in_place_of(b));
        }
    }

    /// What may go under the combs while their blade is out.
    [[nodiscard]] std::string beneath_instead(const kit_blade& out) const {
        zone_today t;
        t.where = &r_.reference.dog_body.zones.front();
        const comb& any = r_.own.combs.front().spec;
        for (const kit_blade& b : r_.own.blades) {
            const blade under = as_measured(b);
            if (b.spec.id == out.spec.id || !at_hand(b, r_.today) ||
                b.spec.shape == edge::adjustable ||
                refuse(combed(any, under, direction::with_lay), t, r_.rules.refusal,
                       r_.rules.cut)) {
                continue;
            }
            const length here = under.stated.best;
            const length before = as_measured(out).stated.best;
            return "until then under_comb = \"" + b.spec.id + "\" would do, with every comb " +
                   show(gap(here, before)) + (here < before ? " shorter" : " longer");
        }
        return "no comb can be used until then";
    }

    [[nodiscard]] std::string in_place_of(const kit_blade& b) const {
        std::vector<std::pair<std::string, std::vector<std::string>>> by;
        for (const coat_class c : coats()) {
            const std::string other = nearest_in_place(b, c);
            auto at = std::find_if(by.begin(), by.end(),
                                   [&](const auto& one) { return one.first == other; });
            if (at == by.end()) {
                at = by.insert(at, {other, {}});
            }
            at->second.emplace_back(name(c));
        }
        std::string out;
        for (const auto& [other, on] : by) {
            out += (out.empty() ? "" : "; ") +
                   (other.empty() ? std::string("nothing at hand replaces it")
                                  : "in its place " + other) +
                   (by.size() > 1 ? " (" + listed(on) + ")" : "");
        }
        return out;
    }

    /// The setup at hand that leaves most nearly the same with the lay, within what a plan tolerates;
    /// no skip teeth in place of full ones.
    [[nodiscard]] std::string nearest_in_place(const kit_blade& b, coat_class c) const {
        const double lay = lay_of(r_.reference, r_.rules, c).best;
        const setup self = bare(as_measured(b), direction::with_lay);
        const length wanted = cut_length(self, lay, r_.rules.cut).best;
        const length most = tolerance(wanted, false, r_.rules.prices);
        std::string best;
        length off{};
        for (const setup& s : setups_of(r_.own, r_.today, r_.rules.cut)) {
            const bool fit = s.kind == tool_kind::clip && s.way == direction::with_lay &&
                             s.tool.etched != "50" && (s.over || !skips(s.tool) || skips(b.spec));
            if (!fit) {
                continue;
            }
            const length d = gap(cut_length(s, lay, r_.rules.cut).best, wanted);
            if (d <= most && (best.empty() || d < off)) {
                best = held(s);
                off = d;
            }
        }
        return best;
    }

    void poorly_known() {
        std::vector<std::string> guessed;
        const auto look = [&](const std::string& what, const figure<length>& stated,
                              bool measured) {
            const basis how = stated.why.how;
            if (!measured && (how == basis::memory || how == basis::assumption)) {
                guessed.push_back(what + " (" + std::string(in_words(how)) + ")");
            }
        };
        for (const kit_blade& b : r_.own.blades) {
            look("blade " + b.spec.id, b.spec.stated, b.measured || !b.settings.empty());
        }
        for (const kit_comb& c : r_.own.combs) {
            look("comb " + c.spec.id, c.spec.stated, c.measured.has_value());
        }
        if (!guessed.empty()) {
            say(drawer_matter::no_basis,
                listed(guessed) +
                    ": nobody stands behind the length; measure a patch (kit measure)");
        }
    }

    void idle_things() {
        std::set<std::string> used;
        for (const judged_target& t : targets_) {
            for (const std::size_t k : t.met_by) {
                used.insert("blade " + setups_[k].tool.id);
                if (setups_[k].over) {
                    used.insert("comb " + setups_[k].over->id);
                }
            }
        }
        std::vector<std::string> idle;
        const auto look = [&](const std::string& what, const length& is) {
            if (!used.contains(what)) {
                idle.push_back(what.starts_with("blade") ? what + " (" + show(is) + ")" : what);
            }
        };
        for (const kit_blade& b : r_.own.blades) {
            if (b.spec.id != r_.own.under_comb) {
                look("blade " + b.spec.id, as_measured(b).stated.best);
            }
        }
        for (const kit_comb& c : r_.own.combs) {
            look("comb " + c.spec.id, as_measured(c).stated.best);
        }
        if (!idle.empty() && !r_.sheets.empty()) {
            say(drawer_matter::idle, "no sheet of the salon needs " + listed(idle) +
                                         "; they may still serve under mats, to blend or to spare");
        }
    }

    void remarks() {
        for (const kit_blade& b : r_.own.blades) {
            if (b.measured &&
                (*b.measured < b.spec.stated.low || *b.measured > b.spec.stated.high)) {
                say(drawer_matter::remark, "blade " + b.spec.id + " leaves " + show(*b.measured) +
                                               " by your patch, etched is " +
                                               show(b.spec.stated.best) + ": mark it");
            }
            if (b.spec.shape == edge::adjustable && b.settings.empty()) {
                say(drawer_matter::remark,
                    "the adjustable blade is not planned with: write the marks of its lever as "
                    "settings = [\"1.5 mm\", \"3 mm\"]");
            }
        }
        look_alikes();
        single_blades();
        more_than_there_are();
    }

    /// Blades that clip more than the prep zones and have no second to swap in.
    void single_blades() {
        std::set<std::string> clips;
        for (const judged_target& t : targets_) {
            const bool prep = r_.reference.dog_body.zones[t.what.zone].where == group::prep;
            for (const std::size_t k : t.met_by) {
                if (!prep && !skips(setups_[k].tool)) {
                    clips.insert(setups_[k].tool.id);
                }
            }
        }
        std::vector<std::string> single;
        for (const kit_blade& b : r_.own.blades) {
            if (b.count == 1 && b.spec.shape != edge::adjustable && clips.contains(b.spec.id)) {
                single.push_back(b.spec.id);
            }
        }
        if (!single.empty()) {
            say(drawer_matter::remark, "no second to swap in while the first cools: blade " +
                                           listed(single) +
                                           "; two of each size are common practice, no source");
        }
    }

    void look_alikes() {
        std::vector<std::string> pairs;
        for (const kit_blade& a : r_.own.blades) {
            for (const kit_blade& b : r_.own.blades) {
                if (a.spec.etched == b.spec.etched && a.spec.cut == teeth::skip &&
                    b.spec.cut == teeth::full) {
                    pairs.push_back(a.spec.id + " and " + b.spec.id);
                }
            }
        }
        if (!pairs.empty()) {
            say(drawer_matter::remark, "one letter apart, skip teeth and full: " + listed(pairs) +
                                           "; skip teeth go on firm, flat skin only");
        }
    }

    void more_than_there_are() {
        const auto look = [&](const std::string& what, const std::string& id, int count,
                              std::vector<std::string> table_drawer::*list) {
            int listed = 0;
            for (const table_drawer& t : r_.own.tables) {
                listed += static_cast<int>(std::count((t.*list).begin(), (t.*list).end(), id));
            }
            if (listed > count) {
                say(drawer_matter::remark, what + " " + id + " lies at " + std::to_string(listed) +
                                               " tables, and the kit has " + std::to_string(count));
            }
        };
        for (const kit_blade& b : r_.own.blades) {
            look("blade", b.spec.id, b.count, &table_drawer::blades);
        }
        for (const kit_comb& c : r_.own.combs) {
            look("comb", c.spec.id, c.count, &table_drawer::combs);
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
    }

    const drawer_request& r_;
    kit whole_;
    std::vector<setup> setups_;
    std::vector<judged_target> targets_;
    drawer_check out_;
};

}  // namespace

drawer_check check_drawer(const drawer_request& r) {
    return checker(r).run();
}

}  // namespace pelage
