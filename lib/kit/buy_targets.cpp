// What the sheets ask of blades and combs, judged setup by setup as a plan would.
#include <algorithm>
#include <array>

#include <pelage/kit/buy.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/sheets/check.hpp>

#include "planner/candidates.hpp"
#include "planner/compile.hpp"

namespace pelage {

namespace {

/// The coats a sheet is for, by its mixes where it names none; all where nothing says.
std::vector<coat_class> coats_of(const style& s, const reference_data& c) {
    if (std::vector<coat_class> named = coats_for(s, c); !named.empty()) {
        return named;
    }
    std::vector<coat_class> all;
    for (std::size_t k = 0; k < coat_names.size(); ++k) {
        all.push_back(static_cast<coat_class>(k));
    }
    return all;
}

/// A sound dog of that coat whose owner agreed to all the sheet needs.
dog sound_dog(const style& s, coat_class c) {
    dog d;
    d.coat = c;
    d.consents = s.consent;
    if (s.show) {
        d.consents.emplace_back("show-blades");
    }
    return d;
}

bool cut_by_clippers(const zone_situation& at) {
    return by_prep_list(at) || (at.plan.target && clips(at.plan.how_finished));
}

/// Whether two targets of one sheet ask the same; zones by their sides, which weigh.
bool same_wish(const sheet_target& a, const sheet_target& b) {
    return a.coat == b.coat && a.zone == b.zone && a.weight == b.weight && a.wanted == b.wanted &&
           a.tolerated == b.tolerated && a.blade == b.blade && a.way == b.way;
}

class target_judge {
  public:
    target_judge(const reference_data& reference, const parameters& rules, const kit& tools,
                 const std::vector<setup>& setups)
        : reference_(reference),
          rules_(rules),
          tools_(tools),
          setups_(setups),
          top_(reference, rules, kit{}, {}) {
        for (std::size_t c = 0; c < coat_names.size(); ++c) {
            const double lay = lay_of(reference, rules, static_cast<coat_class>(c)).best;
            for (const setup& s : setups) {
                leaves_[c].push_back(s.kind == tool_kind::clip
                                         ? rounded(cut_length(s, lay, rules.cut))
                                         : finished{});
            }
        }
    }

    void add(const style& sheet, std::size_t number) {
        const std::size_t plain = out_.size();
        add_as_it_is(sheet, number);
        const std::size_t seasons = out_.size();
        for (const season& one : sheet.seasons) {
            add_as_it_is(in_season(sheet, one), number);
        }
        const auto begin = out_.begin();
        const auto asked = [&](const judged_target& t) {
            return std::any_of(begin + offset(plain), begin + offset(seasons),
                               [&](const judged_target& p) { return same_wish(p.what, t.what); });
        };
        out_.erase(std::remove_if(begin + offset(seasons), out_.end(), asked), out_.end());
    }

    std::vector<judged_target> take() { return std::move(out_); }

  private:
    static std::ptrdiff_t offset(std::size_t n) { return static_cast<std::ptrdiff_t>(n); }

    /// A sheet that is in one of its seasons, or in none.
    void add_as_it_is(const style& sheet, std::size_t number) {
        const resolved_style laid(reference_.dog_body, top_.parts(), sheet);
        for (const coat_class c : coats_of(sheet, reference_)) {
            const dog d = sound_dog(sheet, c);
            plan_request r{reference_, rules_, tools_, d, sheet, {}};
            r.reasons = false;
            r.top = &top_;
            r.laid = &laid;
            const compiled_plan g = compile(r, ready_kit(r));
            for (const zone_plan& z : g.zones) {
                const zone_situation at(r, coat_of(reference_, c), z, false);
                if (cut_by_clippers(at)) {
                    out_.push_back(judged(at, number, c));
                }
            }
        }
    }

    [[nodiscard]] judged_target judged(const zone_situation& at, std::size_t sheet,
                                       coat_class c) const {
        const zone_plan& z = at.plan;
        judged_target t;
        const int sides = z.at.which == side::both ? 2 : 1;
        t.what = {sheet,
                  c,
                  z.at.zone,
                  z.target,
                  z.tolerated,
                  z.blade_wish,
                  z.way,
                  at.where.weight_tenths * sides,
                  at.request.sheet.in_season};
        const bool prep = by_prep_list(at);
        const auto& leaves = leaves_[static_cast<std::size_t>(c)];
        for (std::size_t k = 0; k < setups_.size(); ++k) {
            if (setups_[k].kind != tool_kind::clip ||
                !cell_for(at, setups_[k], leaves[k], false).allowed()) {
                continue;
            }
            if (prep || within(leaves[k].best, *z.target, z.tolerated)) {
                t.met_by.push_back(k);
                continue;
            }
            const length off = gap(leaves[k].best, *z.target);
            if (!t.nearest || off < t.off) {
                t.nearest = k;
                t.off = off;
            }
        }
        return t;
    }

    const reference_data& reference_;
    const parameters& rules_;
    const kit& tools_;
    const std::vector<setup>& setups_;
    kit_setups top_;  ///< no tools: only what the sheets wish is wanted of the compiled groom
    std::array<std::vector<finished>, coat_names.size()> leaves_;
    std::vector<judged_target> out_;
};

}  // namespace

std::vector<judged_target> judge_targets(const reference_data& reference, const parameters& rules,
                                         const kit& tools, const std::vector<style>& sheets,
                                         const std::vector<setup>& setups) {
    target_judge judge(reference, rules, tools, setups);
    for (std::size_t s = 0; s < sheets.size(); ++s) {
        judge.add(sheets[s], s);
    }
    return judge.take();
}

}  // namespace pelage
