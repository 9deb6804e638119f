// What would free a place for which nothing is allowed. All sets of things that could be otherwise are
// tried by planning again with a changed dog or kit, the smallest first, so that what is named is least
// and is enough. A place is done with one setup: no more than a blade and a comb can be missing.
#include <algorithm>
#include <array>
#include <cmath>
#include <tuple>

#include <pelage/text.hpp>

#include "groom_cells.hpp"
#include "ways_parts.hpp"

namespace pelage {

std::string_view name(freeing f) {
    constexpr std::array<std::string_view, 9> names{"comb-out", "measure-hair", "comb-tip",
                                                    "consent",  "shorter",      "either-way",
                                                    "blade",    "comb",         "heal"};
    return names[static_cast<std::size_t>(f)];
}

namespace {

/// Tools named of those that would do.
constexpr std::size_t most_named = 3;

bool touches(const place& a, const place& b) {
    return a.zone == b.zone &&
           (a.which == side::both || b.which == side::both || a.which == b.which);
}

/// A blade or comb of the reference or the kit that isn't at hand.
struct missing_tool {
    std::optional<kit_blade> as_blade;
    std::optional<kit_comb> as_comb;

    [[nodiscard]] way_out named() const {
        return as_blade ? way_out{freeing::blade, as_blade->spec.id, {}, {}}
                        : way_out{freeing::comb, as_comb->spec.id, {}, {}};
    }
};

class conflict_search {
  public:
    conflict_search(const groom_request& r, const made_ready& ready, const zone_plan& z)
        : r_(r), ready_(ready), z_(z), where_(r.reference.dog_body.zones[z.at.zone]) {
        list_candidates();
        list_missing();
    }

    /// What is felted to the skin nothing frees.
    void search(conflict& c, bool felted) const {
        const std::size_t most = felted ? 0 : candidates_.size() + 2;
        for (std::size_t size = 1; size <= most && c.frees.empty(); ++size) {
            each_subset(size, [&](const auto& set) { try_with(set, {}, c); });
            each_subset(size - 1, [&](const auto& set) { try_tools(set, c); });
            if (size >= 2) {
                each_subset(size - 2, [&](const auto& set) { try_pairs(set, c); });
            }
        }
        add_rules(c);
    }

  private:
    using ways_out = std::vector<way_out>;

    /// The place as it would be judged after those changes, without a plan.
    class after {
      public:
        after(const conflict_search& c, const ways_out& set) : here_(c.z_.at), changed_(c.r_) {
            for (const way_out& w : set) {
                c.apply(w, changed_);
            }
            request_.emplace(changed_.of(c.r_, c.ready_));
            compiled_ = compile(*request_, c.ready_);
        }
        /// Whether the setup may be used, with the mat in or combed out.
        [[nodiscard]] bool allows(const setup& s) const;

      private:
        place here_;
        ways::changed_request changed_;
        std::optional<groom_request> request_;
        compiled_groom compiled_;
    };

    void list_candidates();
    void list_missing();
    [[nodiscard]] std::optional<length> enough_hair() const;
    void apply(const way_out& w, ways::changed_request& to) const;
    static void apply(const missing_tool& t, ways::changed_request& to);
    template <class Visit>
    void each_subset(std::size_t size, Visit visit) const;
    [[nodiscard]] std::vector<setup> setups_with(const missing_tool& t) const;
    bool try_with(const ways_out& set, const std::vector<const missing_tool*>& tools,
                  conflict& c) const;
    void try_tools(const ways_out& set, conflict& c) const;
    void try_pairs(const ways_out& set, conflict& c) const;
    void add_rules(conflict& c) const;
    [[nodiscard]] broken_rule rule_against(const freed& f) const;
    [[nodiscard]] std::optional<broken_rule> hard_rule(const setup& s) const;
    [[nodiscard]] static broken_rule hair_unknown();
    [[nodiscard]] broken_rule too_tight(std::string_view no_blade) const;
    [[nodiscard]] const mat_finding* mat() const { return mat_at(r_.patient, z_.at); }

    const groom_request& r_;
    const made_ready& ready_;
    const zone_plan& z_;
    const zone& where_;
    std::vector<way_out> candidates_;
    std::vector<missing_tool> missing_;
};

/// The least free hair, up to the next 0.1 mm, with which a blade at hand may go beneath the mat: the
/// usual safe one or longer where there is one, else a shorter one.
std::optional<length> conflict_search::enough_hair() const {
    std::vector<length> stated;
    for (const setup& s : ready_.top().setups()) {
        if (s.kind == tool_kind::clip && !s.over) {
            stated.push_back(s.tool.stated.best);
        }
    }
    std::sort(stated.begin(), stated.end());
    std::stable_partition(stated.begin(), stated.end(), [&](const length& l) {
        return in_hundredths(l) >= in_hundredths(r_.rules.refusal.safe_blade.best);
    });
    for (const length& l : stated) {
        const double room = in_mm(l) / r_.rules.refusal.under_mat_share.best;
        const way_out enough{freeing::measure_hair, {}, mm(std::ceil(room * 10.0) / 10.0), {}};
        ways_out set{enough};
        if (z_.hurt) {
            set.push_back({freeing::heal, {}, {}, {}});
        }
        conflict c;
        if (try_with(set, {}, c)) {
            return enough.least;
        }
    }
    return std::nullopt;
}

void conflict_search::list_candidates() {
    if (const mat_finding* m = mat()) {
        const auto takes = comb_out_work(m->grade, r_.patient.size, r_.rules.prices);
        if (takes && !m->to_skin && !where_.has(zone_use::never_demat)) {
            candidates_.push_back({freeing::comb_out, {}, {}, takes});
        }
        if (!m->free_hair && !m->to_skin) {
            if (const auto least = enough_hair()) {
                candidates_.push_back({freeing::measure_hair, {}, least, {}});
            }
            if (!m->comb_passes) {
                candidates_.push_back({freeing::comb_tip, {}, {}, {}});
            }
        }
    }
    // no rule asks for any other consent, or for these elsewhere
    const bool doubled = double_coated(*r_.patient.coat);
    const std::pair<const char*, bool> consents[] = {{"clip-jacket", doubled},
                                                     {"show-blades", r_.sheet.show}};
    for (const auto& [id, matters] : consents) {
        if (matters && !agreed(r_.patient, id)) {
            candidates_.push_back({freeing::consent, id, {}, {}});
        }
    }
    if (z_.target && z_.between == side_of_target::longer) {
        candidates_.push_back({freeing::shorter, {}, {}, {}});
    }
    if (z_.target && z_.way != lay_choice::either) {
        candidates_.push_back({freeing::either_way, {}, {}, {}});
    }
    if (z_.hurt) {
        candidates_.push_back({freeing::heal, {}, {}, {}});
    }
}

/// Whether a sheet or a prep zone of the reference names the blade: the usual ones.
bool usual(const catalogue& c, const std::string& id) {
    const auto in_sheet = [&](const style& s) {
        return std::any_of(s.rules.begin(), s.rules.end(),
                           [&](const sheet_rule& rule) { return rule.what.blade == id; });
    };
    const auto in_prep = [&](const zone& z) {
        return std::find(z.prep_blades.begin(), z.prep_blades.end(), id) != z.prep_blades.end();
    };
    return std::any_of(c.styles.begin(), c.styles.end(), in_sheet) ||
           std::any_of(c.dog_body.zones.begin(), c.dog_body.zones.end(), in_prep);
}

/// Missing tools, the usual before the rare: the zone's customary blades first, then those the
/// reference's sheets name, standard blades before wide and toe ones, full teeth before skip, long before
/// short; combs by length.
void conflict_search::list_missing() {
    using rank = std::tuple<std::ptrdiff_t, bool, int, int, double>;
    std::vector<std::pair<rank, missing_tool>> ranked;
    const auto& customary = where_.prep_blades;
    const auto add_blade = [&](kit_blade b) {
        const auto at = std::find(customary.begin(), customary.end(), b.spec.id);
        const rank key{at - customary.begin(), !usual(r_.reference, b.spec.id),
                       static_cast<int>(b.spec.shape), static_cast<int>(b.spec.cut),
                       -in_mm(b.spec.stated.best)};
        b.count = 1;
        b.out = false;
        b.out_until.reset();
        ranked.push_back({key, {std::move(b), {}}});
    };
    const auto add_comb = [&](kit_comb c) {
        const rank key{static_cast<std::ptrdiff_t>(customary.size()) + 1, false, 0, 0,
                       in_mm(c.spec.stated.best)};
        c.count = 1;
        ranked.push_back({key, {{}, std::move(c)}});
    };
    for (const blade& b : r_.reference.blades) {
        if (b.shape != edge::adjustable && find_blade(r_.tools, b.id) == nullptr) {
            add_blade({b, 1, {}, false, {}});
        }
    }
    for (const kit_blade& b : r_.tools.blades) {
        if (b.spec.shape != edge::adjustable && taken(r_.tools, b.spec) && !at_hand(b, r_.today)) {
            add_blade(b);
        }
    }
    for (const comb& c : r_.reference.combs) {
        const auto has = std::find_if(r_.tools.combs.begin(), r_.tools.combs.end(),
                                      [&](const kit_comb& k) { return k.spec.id == c.id; });
        if (has == r_.tools.combs.end()) {
            add_comb({c, 1, {}, {}});
        } else if (has->count < 1) {
            add_comb(*has);
        }
    }
    std::stable_sort(ranked.begin(), ranked.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    for (auto& [key, tool] : ranked) {
        missing_.push_back(std::move(tool));
    }
}

void conflict_search::apply(const way_out& w, ways::changed_request& to) const {
    dog& d = to.patient;
    instruction departure;
    switch (w.how) {
        case freeing::comb_out:
            std::erase_if(d.mats, [&](const mat_finding& m) { return touches(m.at, z_.at); });
            break;
        case freeing::measure_hair:
        case freeing::comb_tip:
            for (mat_finding& m : d.mats) {
                if (touches(m.at, z_.at) && w.how == freeing::comb_tip) {
                    m.comb_passes = true;
                } else if (touches(m.at, z_.at) && !m.free_hair) {
                    m.free_hair = w.least;
                }
            }
            break;
        case freeing::consent:
            d.consents.push_back(w.id);
            break;
        case freeing::shorter:
            departure.between = side_of_target::nearest;
            to.departs(r_, z_.at, departure);
            break;
        case freeing::either_way:
            departure.way = lay_choice::either;
            to.departs(r_, z_.at, departure);
            break;
        case freeing::heal:
            // what heals, there or in what the place is the edge of; a lump stays
            std::erase_if(d.skin, [&](const skin_finding& f) {
                return f.state != skin_state::lump &&
                       (touches(f.at, z_.at) || edges(r_.reference.dog_body, z_.at, f.at));
            });
            break;
        case freeing::blade:
        case freeing::comb:
            break;  // tools come as missing_tool
    }
}

void conflict_search::apply(const missing_tool& t, ways::changed_request& to) {
    to.kit_changed = true;
    if (t.as_blade) {
        std::erase_if(to.tools.blades,
                      [&](const kit_blade& b) { return b.spec.id == t.as_blade->spec.id; });
        to.tools.blades.push_back(*t.as_blade);
    } else {
        std::erase_if(to.tools.combs,
                      [&](const kit_comb& c) { return c.spec.id == t.as_comb->spec.id; });
        to.tools.combs.push_back(*t.as_comb);
    }
}

bool conflict_search::after::allows(const setup& s) const {
    const groom_request& r = *request_;
    const coat& c = coat_of(r.reference, *r.patient.coat);
    const finished leaves =
        rounded(cut_length(s, lay_of(r.reference, r.rules, c.id).best, r.rules.cut));
    return std::any_of(compiled_.zones.begin(), compiled_.zones.end(), [&](const zone_plan& z) {
        return touches(z.at, here_) &&
               (cell_for(zone_case(r, c, z, false), s, leaves, false).allowed() ||
                cell_for(zone_case(r, c, z, true), s, leaves, false).allowed());
    });
}

/// Subsets of the candidates of that size, in order.
template <class Visit>
void conflict_search::each_subset(std::size_t size, Visit visit) const {
    const std::size_t n = candidates_.size();
    if (size > n) {
        return;
    }
    std::vector<bool> in(n, false);
    std::fill(in.begin(), in.begin() + static_cast<std::ptrdiff_t>(size), true);
    do {
        ways_out set;
        for (std::size_t i = 0; i < n; ++i) {
            if (in[i]) {
                set.push_back(candidates_[i]);
            }
        }
        visit(set);
    } while (std::prev_permutation(in.begin(), in.end()));
}

/// Plans again with those changes; notes them if the place is free then.
bool conflict_search::try_with(const ways_out& set, const std::vector<const missing_tool*>& tools,
                               conflict& c) const {
    ways::changed_request changed(r_);
    freed f{set, {}};
    for (const way_out& w : set) {
        apply(w, changed);
    }
    for (const missing_tool* t : tools) {
        apply(*t, changed);
        f.by.push_back(t->named());
    }
    const groom g = ways::plan_again(changed.of(r_, ready_));
    bool free = true;
    for (const zone_plan& z : g.zones) {
        if (touches(z.at, z_.at)) {
            free = free && z.came != outcome::stuck && z.came != outcome::skin_left;
            if (z.how.kind != tool_kind::none) {
                f.then = z.how;
            }
        }
    }
    if (free) {
        c.frees.push_back(std::move(f));
    }
    return free;
}

/// Every setup a missing tool makes possible over or under what is at hand.
std::vector<setup> conflict_search::setups_with(const missing_tool& t) const {
    ways::changed_request changed(r_);
    apply(t, changed);
    std::vector<setup> out = setups_of(changed.tools, r_.today, r_.rules.cut);
    std::erase_if(out, [&](const setup& s) {
        const bool uses = t.as_blade ? s.tool.id == t.as_blade->spec.id
                                     : s.over && s.over->id == t.as_comb->spec.id;
        return s.kind != tool_kind::clip || !uses;
    });
    return out;
}

void conflict_search::try_tools(const ways_out& set, conflict& c) const {
    const after a(*this, set);
    std::size_t named = 0;
    for (const missing_tool& t : missing_) {
        const std::vector<setup> with = setups_with(t);
        const bool may =
            std::any_of(with.begin(), with.end(), [&](const setup& s) { return a.allows(s); });
        if (named < most_named && may && try_with(set, {&t}, c)) {
            ++named;
        }
    }
}

/// A missing comb over the missing blade that is kept under combs.
void conflict_search::try_pairs(const ways_out& set, conflict& c) const {
    const auto under = std::find_if(missing_.begin(), missing_.end(), [&](const missing_tool& t) {
        return t.as_blade && t.as_blade->spec.id == r_.tools.under_comb;
    });
    if (under == missing_.end()) {
        return;
    }
    const after a(*this, set);
    std::size_t named = 0;
    for (const missing_tool& t : missing_) {
        if (!t.as_comb || named == most_named) {
            continue;
        }
        bool may = false;
        for (const direction d : {direction::with_lay, direction::against_lay}) {
            may =
                may || a.allows(combed(as_measured(*t.as_comb), as_measured(*under->as_blade), d));
        }
        named += may && try_with(set, {&*under, &t}, c) ? 1 : 0;
    }
}

/// The hard rule against a setup as things stand.
std::optional<broken_rule> conflict_search::hard_rule(const setup& s) const {
    const zone_case at(r_, coat_of(r_.reference, *r_.patient.coat), z_, false);
    const auto no = refuse(s, at.today, r_.rules.refusal, r_.rules.cut);
    if (!no) {
        return std::nullopt;
    }
    if (*no == refusal::under_mat_too_long && !mat()->free_hair) {
        return hair_unknown();
    }
    return broken_rule{std::string(name(*no)), std::string(reason(*no))};
}

broken_rule conflict_search::hair_unknown() {
    return {"free-hair-unknown", "how much free hair lies under the mat isn't known"};
}

/// Why nothing goes under the mat.
broken_rule conflict_search::too_tight(std::string_view no_blade) const {
    return mat()->free_hair ? broken_rule{std::string(name(refusal::under_mat_too_long)),
                                          std::string(no_blade) +
                                              " short enough for the free hair under the mat"}
                            : hair_unknown();
}

/// What stands in the way of a setup that those things would free.
broken_rule conflict_search::rule_against(const freed& f) const {
    const auto combed_out = [](const way_out& w) { return w.how == freeing::comb_out; };
    if (std::any_of(f.by.begin(), f.by.end(), combed_out)) {
        return too_tight("no blade at hand is");
    }
    if (const auto hard = f.then ? hard_rule(*f.then) : std::nullopt) {
        return *hard;
    }
    for (const way_out& w : f.by) {
        switch (w.how) {
            case freeing::blade:
            case freeing::comb:
                return mat() == nullptr
                           ? broken_rule{"not-in-kit", "the kit has nothing for it at hand"}
                           : too_tight("no blade at hand is");
            case freeing::shorter:
                return {"too-short", "the sheet goes no shorter"};
            case freeing::either_way:
                return {"direction", "the sheet wants the other direction"};
            case freeing::comb_out:
            case freeing::measure_hair:
            case freeing::comb_tip:
            case freeing::consent:
            case freeing::heal:
                break;
        }
    }
    return {"mat-in", "a mat stays in"};
}

void conflict_search::add_rules(conflict& c) const {
    const auto add = [&](broken_rule rule) {
        const bool known = std::any_of(c.rules.begin(), c.rules.end(),
                                       [&](const broken_rule& one) { return one.id == rule.id; });
        if (!known) {
            c.rules.push_back(std::move(rule));
        }
    };
    for (const freed& f : c.frees) {
        add(rule_against(f));
        for (const way_out& w : f.by) {
            if (w.how == freeing::comb_out) {
                add({"comb-out-limit", "there is no time left to comb it out today"});
            }
        }
    }
    if (!c.frees.empty()) {
        return;
    }
    const mat_finding* m = mat();
    if (z_.hurt) {
        add({std::string(name(refusal::skin_found)), std::string(reason(refusal::skin_found))});
    }
    if (m != nullptr && m->to_skin) {
        add({std::string(name(refusal::mat_to_skin)), std::string(reason(refusal::mat_to_skin))});
    } else if (m != nullptr) {
        add(too_tight("no blade is"));
        add(m->grade == mat_grade::pelt
                ? broken_rule{"pelt-combed-out", "a pelt is never combed out"}
                : broken_rule{"never-combed-out", "a mat isn't combed out here"});
    }
    if (c.rules.empty()) {
        add({"not-in-kit", "no blade or comb may be used here"});
    }
}

}  // namespace

std::vector<conflict> conflicts(const groom_request& r, const groom& g) {
    std::vector<conflict> out;
    const groom_request quiet = ways::quietly(r);
    const made_ready ready(quiet);
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        const mat_finding* m = mat_at(r.patient, z.at);
        const bool felted = m != nullptr && m->to_skin;
        const bool stuck = g.planned() && z.came == outcome::stuck;
        if (stuck || felted || z.came == outcome::skin_left) {
            conflict c;
            c.zone = i;
            conflict_search(quiet, ready, z).search(c, felted);
            out.push_back(std::move(c));
        }
    }
    return out;
}

}  // namespace pelage
