// A kit checked.
#include <algorithm>
#include <array>
#include <map>
#include <set>
#include <tuple>

#include <pelage/drawer.hpp>
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

std::string joined(const std::vector<std::string>& words) {
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        out += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
    }
    return out;
}

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
                say(drawer_matter::two_lengths, "\"" + label + "\" on a comb is " + joined(all) +
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

    void gaps() {
        using key = std::tuple<std::size_t, std::int32_t, std::string, std::string>;
        struct gap_group {
            std::vector<std::string> zones;
            std::vector<std::string> coats;
        };
        std::vector<std::pair<key, gap_group>> groups;
        for (const judged_target& t : targets_) {
            if (!t.met_by.empty()) {
                continue;
            }
            const key k{t.what.sheet, t.what.wanted ? in_hundredths(*t.what.wanted) : 0,
                        t.what.blade.value_or(""), nearest_to(t)};
            auto at = std::find_if(groups.begin(), groups.end(),
                                   [&](const auto& g) { return g.first == k; });
            if (at == groups.end()) {
                at = groups.insert(at, {k, {}});
            }
            add_once(at->second.zones, r_.reference.dog_body.zones[t.what.zone].title);
            add_once(at->second.coats, std::string(name(t.what.coat)));
        }
        for (const auto& [k, g] : groups) {
            const auto& [sheet, wanted, blade, nearest] = k;
            const std::string what =
                wanted == 0 ? "no customary blade for "
                : !blade.empty()
                    ? "nothing for blade " + blade + " (" + show(mm(wanted / 100.0)) + ") on "
                    : "nothing for " + show(mm(wanted / 100.0)) + " on ";
            say(drawer_matter::gap, r_.sheets[sheet].id + ": " + what + joined(g.zones) + ", " +
                                        joined(g.coats) +
                                        (g.coats.size() > 1 ? " coats" : " coat") +
                                        (nearest.empty() ? "" : "; " + nearest));
        }
    }

    [[nodiscard]] std::string nearest_to(const judged_target& t) const {
        if (!t.nearest) {
            return "";
        }
        return "nearest " + title(setups_[*t.nearest]) + ", " + show(t.off) + " off";
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
                text += "; it is the one under the combs: no comb can be used until then";
            }
            say(drawer_matter::out, text + "; " + in_place_of(b));
        }
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
                   (by.size() > 1 ? " (" + joined(on) + ")" : "");
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
                joined(guessed) +
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
            if (used.count(what) == 0) {
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
            say(drawer_matter::idle, "no sheet of the salon needs " + joined(idle) +
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
            if (b.count == 1 && b.spec.shape != edge::adjustable && clips.count(b.spec.id) == 1) {
                single.push_back(b.spec.id);
            }
        }
        if (!single.empty()) {
            say(drawer_matter::remark, "no second to swap in while the first cools: blade " +
                                           joined(single) +
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
            say(drawer_matter::remark, "one letter apart, skip teeth and full: " + joined(pairs) +
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
