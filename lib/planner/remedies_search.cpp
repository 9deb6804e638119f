// What would free a place for which nothing is allowed. A few things could be otherwise (planner/remedies.hpp);
// sets of them are tried, the smallest first, each by planning the changed dog or kit again: what is named
// is enough, and no part of it is. Which missing tools are worth a plan is read off a compiled problem
// with all of them in the kit.
#include <algorithm>
#include <array>
#include <cmath>

#include <pelage/base/error.hpp>

#include "planner/candidates.hpp"
#include "planner/mats.hpp"
#include "planner/obstacles.hpp"
#include "planner/remedies.hpp"

namespace pelage {

std::string_view name(remedy_kind f) {
    constexpr std::array<std::string_view, 10> names{
        "comb-out",   "measure-hair", "comb-tip", "consent",      "shorter",
        "either-way", "blade",        "comb",     "measure-tool", "heal"};
    return names[static_cast<std::size_t>(f)];
}

namespace ways {

namespace {

/// Tools named of those that would do.
constexpr std::size_t most_named = 3;
/// Things named that only together free a place, beside the healing of its skin.
constexpr std::size_t most_together = 3;
/// Missing tools compiled into one problem: a kit and these have fewer than a problem may.
constexpr std::size_t most_at_once = 8;

using remedies = std::vector<remedy>;

bool uses(const setup& s, const remedy& tool) {
    return s.kind == tool_kind::clip &&
           (tool.add_blade ? s.tool.id == tool.says.id : s.over && s.over->id == tool.says.id);
}

class conflict_search {
  public:
    conflict_search(const plan_request& r, const ready_kit& ready, const zone_plan& z)
        : r_(r),
          ready_(ready),
          z_(z),
          mat_(z.combed_out ? nullptr : mat_at(r.patient, z.at)),
          tools_(missing_tools(r, r.reference.dog_body.zones[z.at.zone].prep_blades)) {
        if (z.hurt) {
            always_.push_back({{remedy_kind::heal, {}, {}, {}}});
        }
    }

    [[nodiscard]] infeasible_zone found(std::size_t zone) {
        infeasible_zone c;
        c.zone = zone;
        const bool spared = z_.why.what == cause::teats;  // what she carries or feeds decides
        if (!spared && (mat_ == nullptr || !mat_->to_skin)) {
            search(c);
        }
        add_obstacles(c, r_, z_);
        // combed out, a mat needs no veterinarian, though the place may stay as it is
        const bool combable =
            std::any_of(candidates_.begin(), candidates_.end(),
                        [](const remedy& one) { return one.says.how == remedy_kind::comb_out; });
        c.veterinarian = c.frees.empty() && ((mat_ != nullptr && !combable) || z_.hurt);
        return c;
    }

  private:
    void search(infeasible_zone& c);
    [[nodiscard]] std::vector<remedies> sets_of(std::size_t size) const;
    [[nodiscard]] bool try_with(const remedies& set, infeasible_zone& c) const;
    void try_tools(const remedies& set, std::size_t tools, infeasible_zone& c) const;
    [[nodiscard]] std::vector<remedies> tools_after(const remedies& set, std::size_t tools) const;
    [[nodiscard]] std::vector<remedies> blades_under(const remedies& set) const;
    void weigh(const remedies& set, const remedies& added, std::size_t tools,
               std::vector<remedies>& out) const;
    [[nodiscard]] bool free_in(const groom& g, const remedies& set, remedy_set& f) const;

    const plan_request& r_;
    const ready_kit& ready_;
    const zone_plan& z_;
    const mat_finding* mat_;
    remedies always_;  ///< without which nothing frees the place
    remedies candidates_;
    remedies tools_;
};

void conflict_search::search(infeasible_zone& c) {
    candidates_ = remedies_for(r_, z_);
    // of lengths of hair that would do, the first: the usual safe blade
    for (const remedy& enough : hair_enough(r_, ready_, z_)) {
        infeasible_zone tried;
        remedy plenty = enough;
        const refusal_rules& rules = r_.rules.refusal;
        plenty.says.least =
            mm(std::ceil(in_mm(rules.under_mat_longest.best) / rules.under_mat_share.best));
        // with more the mat may be combed out, and the place then stay as it is
        if (try_with({enough}, tried) && try_with({plenty}, tried)) {
            candidates_.insert(candidates_.begin(), enough);
            break;
        }
    }
    if (!always_.empty() && try_with({}, c)) {
        return;
    }
    for (std::size_t size = 1; size <= most_together && c.frees.empty(); ++size) {
        for (const remedies& set : sets_of(size)) {
            static_cast<void>(try_with(set, c));
        }
        for (std::size_t tools = 1; tools <= std::min<std::size_t>(size, 2); ++tools) {
            for (const remedies& set : sets_of(size - tools)) {
                try_tools(set, tools, c);
            }
        }
    }
}

/// Subsets of the candidates of that size, in order.
std::vector<remedies> conflict_search::sets_of(std::size_t size) const {
    std::vector<remedies> out;
    if (size > candidates_.size()) {
        return out;
    }
    std::vector<bool> in(candidates_.size(), false);
    std::fill(in.begin(), in.begin() + static_cast<std::ptrdiff_t>(size), true);
    do {
        remedies set;
        for (std::size_t i = 0; i < in.size(); ++i) {
            if (in[i]) {
                set.push_back(candidates_[i]);
            }
        }
        out.push_back(std::move(set));
    } while (std::prev_permutation(in.begin(), in.end()));
    return out;
}

/// Whether a plan of the changed request does something in the place, and what: with each tool that was
/// added, and with the mat combed out if that is what is named.
bool conflict_search::free_in(const groom& g, const remedies& set, remedy_set& f) const {
    bool seen = false;
    for (const zone_plan& z : g.zones) {
        if (!share_side(z.at, z_.at)) {
            continue;
        }
        seen = true;
        const bool free = z.came != outcome::stuck && z.came != outcome::skin_left;
        const bool as_said = std::all_of(set.begin(), set.end(), [&](const remedy& one) {
            const bool comb_out = one.says.how == remedy_kind::comb_out;
            const bool same_blade = one.says.how == remedy_kind::measure_tool;
            const bool used = uses(z.how, one) || (z.off_by && uses(*z.off_by, one));
            return (!comb_out || z.combed_out) && (!one.adds_tool() || used) &&
                   (!same_blade || (z.how.kind == tool_kind::clip && z.how.tool.id == one.says.id));
        });
        if (!free || !as_said) {
            return false;
        }
        if (z.how.kind != tool_kind::none) {
            f.then = z.how;
        }
    }
    return seen;
}

/// Plans again with those changes; notes them if the place is free then.
bool conflict_search::try_with(const remedies& set, infeasible_zone& c) const {
    changed_request changed(r_);
    remedy_set f;
    for (const remedies* some : {&set, &always_}) {
        for (const remedy& one : *some) {
            apply(one, r_, z_.at, changed);
            f.by.push_back(one.says);
        }
    }
    try {
        if (!free_in(plan_again(changed.of(r_, ready_)), set, f)) {
            return false;
        }
    } catch (const error& e) {
        if (e.code() != errc::range) {
            throw;
        }
        return false;  // more tools than a plan counts
    }
    c.frees.push_back(std::move(f));
    return true;
}

void conflict_search::try_tools(const remedies& set, std::size_t tools, infeasible_zone& c) const {
    std::size_t named = 0;
    for (const remedies& added : tools_after(set, tools)) {
        remedies all = set;
        all.insert(all.end(), added.begin(), added.end());
        if (named < most_named && try_with(all, c)) {
            ++named;
        }
    }
}

/// Missing tools, so many together, with which some setup would be allowed in the place once `set` is done.
std::vector<remedies> conflict_search::tools_after(const remedies& set, std::size_t tools) const {
    const bool combed_out = std::any_of(set.begin(), set.end(), [](const remedy& one) {
        return one.says.how == remedy_kind::comb_out;
    });
    std::vector<remedies> out;
    if (mat_ != nullptr && !combed_out) {
        out = tools == 1 ? blades_under(set) : std::vector<remedies>{};
        if (!may_be_combed(r_, z_.at, *mat_, false)) {
            return out;
        }
        // what serves after it is combed out today
    }
    const std::size_t under_it = out.size();
    for (std::size_t from = 0; from < tools_.size(); from += most_at_once) {
        const auto begin = tools_.begin() + static_cast<std::ptrdiff_t>(from);
        const std::size_t n = std::min(most_at_once, tools_.size() - from);
        remedies added(begin, begin + static_cast<std::ptrdiff_t>(n));
        const auto under = std::find_if(tools_.begin(), tools_.end(), [&](const remedy& one) {
            return one.add_blade && one.says.id == r_.tools.under_comb;
        });
        if (tools == 2 && under != tools_.end()) {
            added.push_back(*under);
        }
        weigh(set, added, tools, out);
    }
    const auto known = [&](const remedies& one) {
        return std::any_of(out.begin(), out.begin() + static_cast<std::ptrdiff_t>(under_it),
                           [&](const remedies& o) {
                               return one.size() == 1 &&
                                      o.front().says.how == one.front().says.how &&
                                      o.front().says.id == one.front().says.id;
                           });
    };
    out.erase(std::remove_if(out.begin() + static_cast<std::ptrdiff_t>(under_it), out.end(), known),
              out.end());
    return out;
}

/// Missing blades that pass under the mat once `set` is done. Of all that pass a plan takes one: so each is
/// asked for itself.
std::vector<remedies> conflict_search::blades_under(const remedies& set) const {
    changed_request changed(r_);
    for (const remedies* some : {&set, &always_}) {
        for (const remedy& one : *some) {
            apply(one, r_, z_.at, changed);
        }
    }
    const plan_request r = changed.of(r_, ready_);
    zone_plan healed = z_;
    healed.hurt.reset();
    const zone_situation at(r, coat_of(r.reference, *r.patient.coat), healed, false);
    std::vector<remedies> out;
    for (const remedy& one : tools_) {
        if (one.add_blade && !refuse(bare(as_measured(*one.add_blade), direction::with_lay),
                                     at.today, r.rules.refusal, r.rules.cut)) {
            out.push_back({one});
        }
    }
    return out;
}

void conflict_search::weigh(const remedies& set, const remedies& added, std::size_t tools,
                            std::vector<remedies>& out) const {
    changed_request changed(r_);
    for (const remedies* some : {&set, &always_, &added}) {
        for (const remedy& one : *some) {
            apply(one, r_, z_.at, changed);
        }
    }
    const plan_request r = changed.of(r_, ready_);
    const ready_kit ready(r);
    compiled_plan c;
    try {
        c = compile(r, ready);
    } catch (const error& e) {
        if (e.code() != errc::range) {
            throw;
        }
        if (added.size() == 1) {
            return;  // the kit has as many tools as a plan counts
        }
        const auto half = added.begin() + static_cast<std::ptrdiff_t>(added.size() / 2);
        weigh(set, {added.begin(), half}, tools, out);
        weigh(set, {half, added.end()}, tools, out);
        return;
    }
    std::vector<std::vector<bool>> wanted;
    for (std::size_t row = 0; row < c.rows.size(); ++row) {
        for (const allowed_setup& a : c.choice.zones[row]) {
            std::vector<bool> held;
            for (const remedy& one : added) {
                held.push_back(uses(ready.top().setups()[c.setup_of(a.setup)], one));
            }
            const auto n = static_cast<std::size_t>(std::count(held.begin(), held.end(), true));
            if (n == tools && share_side(c.zones[c.rows[row]].at, z_.at)) {
                wanted.push_back(std::move(held));
            }
        }
    }
    // the usual before the rare, as they stand in `added`
    std::sort(wanted.begin(), wanted.end(), std::greater<>());
    wanted.erase(std::unique(wanted.begin(), wanted.end()), wanted.end());
    for (const std::vector<bool>& held : wanted) {
        remedies one;
        for (std::size_t i = 0; i < added.size(); ++i) {
            if (held[i]) {
                one.push_back(added[i]);
            }
        }
        out.push_back(std::move(one));
    }
}

}  // namespace

}  // namespace ways

std::vector<infeasible_zone> infeasible_zones(const plan_request& r, const groom& g) {
    std::vector<infeasible_zone> out;
    const plan_request quiet = ways::quietly(r);
    const ready_kit ready(quiet);
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const zone_plan& z = g.zones[i];
        const mat_finding* m = mat_at(r.patient, z.at);
        const bool felted = m != nullptr && m->to_skin;
        const bool stuck = g.planned() && z.came == outcome::stuck;
        if (stuck || felted || z.came == outcome::skin_left) {
            out.push_back(ways::conflict_search(quiet, ready, z).found(i));
        }
    }
    return out;
}

}  // namespace pelage
