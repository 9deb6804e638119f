// A sheet's lengths and blades, place by place.
#include <pelage/model/blend.hpp>
#include <pelage/model/cut.hpp>
#include <pelage/model/mix.hpp>

#include "sheets/check_parts.hpp"

namespace pelage::sheets {

namespace {

class length_judge {
  public:
    length_judge(judged_sheet& s, told_lengths& told) : s_(s), told_(told) {}

    void judge(const sheet_place& p) {
        beyond(p);
        short_of(p);
        refusals(p);
        loose(p);
    }

  private:
    /// Whether it is the first time; of a scaled season only what the sheet itself doesn't have.
    bool first(sheet_doubt what, const sheet_place& p, std::size_t other) {
        return told_.emplace(what, p.rule.value_or(0), other, 0).second;
    }

    [[nodiscard]] length longest_of(const std::vector<coat_class>& coats) const {
        length most{};
        for (const coat_class k : coats) {
            most = longer(most, longest_terminal(coat_of(s_.known, k)).best);
        }
        return most;
    }
    [[nodiscard]] bool none_reaches(const std::vector<coat_class>& coats, const length& l) const {
        return !coats.empty() && l > longest_of(coats);
    }

    void beyond(const sheet_place& p) {
        if (!p.asked.target || keeps_length(p.asked)) {
            return;
        }
        if (!none_reaches(s_.coats, *p.asked.target)) {
            for (std::size_t i = 0; i < s_.sheet.mixes.size(); ++i) {
                no_coat_of_mix(p, i);
            }
        } else if (first(sheet_doubt::beyond_coat, p, 0)) {
            s_.say(sheet_doubt::beyond_coat, p,
                   beyond_coats{s_.says(p), s_.coats, longest_of(s_.coats)});
        }
    }

    void no_coat_of_mix(const sheet_place& p, std::size_t i) {
        std::vector<coat_class> may;
        try {
            may = coats_of_mix(s_.sheet.mixes[i], s_.known);
        } catch (const bad_input&) {
            return;  // told elsewhere
        }
        if (none_reaches(may, *p.asked.target) && first(sheet_doubt::beyond_coat, p, 100 + i)) {
            const length most = longest_of(may);
            s_.say(sheet_doubt::beyond_coat, p,
                   beyond_coats{s_.says(p), std::move(may), most, s_.sheet.mixes[i]});
        }
    }

    void short_of(const sheet_place& p) {
        if (!s_.dog().zones[p.at.zone].has(zone_use::jacket) || keeps_length(p.asked)) {
            return;
        }
        for (const coat_class k : s_.coats) {
            const coat& c = coat_of(s_.known, k);
            const auto l = length_on(p.asked, c, s_.known, s_.rules.cut);
            if (l && in_hundredths(*l) < in_hundredths(c.shortest.best) &&
                first(sheet_doubt::too_short, p, static_cast<std::size_t>(k))) {
                s_.say(sheet_doubt::too_short, p, under_shortest{s_.says(p), k});
            }
        }
    }

    void refusals(const sheet_place& p) {
        const blade* b = s_.blade_of(p);
        if (b == nullptr) {
            return;
        }
        const zone& z = s_.dog().zones[p.at.zone];
        zone_today t;
        t.where = &z;
        t.clean = (z.has(zone_use::clean_face) && s_.sheet.face == "clean") ||
                  (z.has(zone_use::clean_feet) && s_.sheet.feet == "clean");
        t.pattern = z.has(zone_use::pattern_cheek);
        t.show = s_.sheet.show;
        const direction way =
            p.asked.way == lay_choice::against_lay ? direction::against_lay : direction::with_lay;
        const auto no = refuse(bare(*b, way), t, s_.rules.refusal, s_.rules.cut);
        if (no && first(sheet_doubt::refused, p, p.at.zone)) {
            s_.say(sheet_doubt::refused, p, refused_blade{s_.says(p), way, *no});
        }
    }

    void loose(const sheet_place& p) {
        if (!p.asked.target || keeps_length(p.asked)) {
            return;
        }
        const length& target = *p.asked.target;
        const bool head = s_.dog().zones[p.at.zone].where == group::head;
        const length tol = p.asked.tolerance.value_or(tolerance(target, head, s_.rules.prices));
        for (std::size_t n = 0; n < s_.sheet.limits.size(); ++n) {
            const limit& l = s_.sheet.limits[n];
            const selection* whom = s_.parts.find(l.whom);
            const bool low = l.low && in_hundredths(target - tol) < in_hundredths(*l.low);
            const bool high = l.high && in_hundredths(target + tol) > in_hundredths(*l.high);
            if (whom == nullptr || !covers(*whom, p.at) || !(low || high) ||
                !first(sheet_doubt::loose, p, n)) {
                continue;
            }
            const length room =
                shorter(l.low ? target - *l.low : tol, l.high ? *l.high - target : tol);
            s_.say(sheet_doubt::loose, p,
                   loose_tolerance{s_.says(p), tol, l,
                                   in_mm(room) >= 0.1 ? std::optional{room} : std::nullopt});
        }
    }

    judged_sheet& s_;
    told_lengths& told_;
};

}  // namespace

void judge_lengths(judged_sheet& s, told_lengths& told) {
    length_judge judge(s, told);
    for (const sheet_place& p : s.places) {
        judge.judge(p);
    }
}

}  // namespace pelage::sheets
