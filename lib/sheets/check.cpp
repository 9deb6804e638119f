#include <algorithm>
#include <array>
#include <tuple>

#include <pelage/model/cut.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/sheets/check.hpp>

#include "sheets/check_parts.hpp"

namespace pelage {

namespace sheets {

namespace {

/// Coats less likely than this aren't judged for (assumption; as where a plan tells of other coats).
constexpr double least_chance = 0.02;

}  // namespace

bool covers(const selection& s, const place& p) {
    return std::any_of(s.places.begin(), s.places.end(),
                       [&](const place& w) { return share_side(w, p); });
}

bool keeps_length(const instruction& i) {
    return i.how == finish::leave || i.how == finish::card;
}

std::vector<coat_class> coats_of_mix(const std::string& mix, const reference_data& c) {
    std::vector<coat_class> out;
    const coat_answer a = coats_of(read_mix(mix, c.genes).dog, c.genes, c.coats);
    for (const coat_chance& k : a.coats) {
        if (k.chance >= least_chance) {
            out.push_back(k.coat);
        }
    }
    return out;
}

judged_sheet::judged_sheet(const style& plain, const style& s, const season* of_it,
                           const reference_data& c, const parameters& by,
                           std::vector<sheet_warning>& out)
    : own(plain),
      sheet(s),
      in(of_it),
      known(c),
      rules(by),
      parts(c.dog_body),
      laid(c.dog_body, parts, s),
      places(places_of(s, c.dog_body, parts)),
      coats(coats_for(s, c)),
      out_(out) {}

const blade* judged_sheet::blade_of(const sheet_place& p) const {
    return p.asked.blade ? find(known.blades, *p.asked.blade) : nullptr;
}

sheet_says judged_sheet::says(const sheet_place& p) const {
    return {p.at, p.asked.target, p.asked.target ? std::string{} : p.asked.blade.value_or(""),
            p.rule ? sheet.rules[*p.rule].from : std::string{}, season_name()};
}

/// Where the sheet's own file says it: the line, the season that scales it, or its id.
written_at judged_sheet::where(const sheet_place& p) const {
    const sheet_rule* r = p.rule ? &sheet.rules[*p.rule] : nullptr;
    if (in != nullptr && in->at.file == own.at.file) {
        const bool of_season = r != nullptr && *p.rule + in->rules.size() >= sheet.rules.size();
        return of_season ? r->at : in->at;
    }
    return r != nullptr && r->from.empty() ? r->at : own.at;
}

}  // namespace sheets

using sheets::coats_of_mix;
using sheets::covers;
using sheets::judged_sheet;
using sheets::keeps_length;

namespace {

void in_order(std::vector<sheet_warning>& all) {
    std::stable_sort(all.begin(), all.end(), [](const sheet_warning& a, const sheet_warning& b) {
        return std::tie(a.at.line, a.at.column) < std::tie(b.at.line, b.at.column);
    });
}

}  // namespace

std::string_view name(sheet_doubt d) {
    constexpr std::array<std::string_view, 13> names{
        "limit",      "refused", "beyond-coat", "step",  "too-short", "untold",  "mix-unread",
        "other-coat", "no-coat", "not-reached", "loose", "unsigned",  "misnamed"};
    return names[static_cast<std::size_t>(d)];
}

std::vector<coat_class> coats_for(const style& s, const reference_data& c) {
    std::vector<coat_class> out = s.coats;
    for (const std::string& m : out.empty() ? s.mixes : std::vector<std::string>{}) {
        try {
            for (const coat_class k : coats_of_mix(m, c)) {
                out.push_back(k);
            }
        } catch (const bad_input&) {
            continue;  // no coat follows from it
        }
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

std::vector<sheet_place> places_of(const style& s, const body& b, const part_index& parts) {
    const resolved_style laid(b, parts, s);
    std::vector<const selection*> meant;
    for (const sheet_rule& r : s.rules) {
        meant.push_back(parts.find(r.whom));
    }
    // the narrowest that gives a length, the later of equals
    const auto rule_for = [&](const place& p) {
        std::optional<std::size_t> found;
        for (std::size_t i = 0; i < meant.size(); ++i) {
            const instruction& what = s.rules[i].what;
            if ((what.target || what.blade) && covers(*meant[i], p) &&
                (!found || !wider(*meant[i], *meant[*found]))) {
                found = i;
            }
        }
        return found;
    };
    std::vector<sheet_place> out;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        const bool two = b.zones[z].paired && laid.one_sided(z);
        for (const side one :
             two ? std::vector{side::left, side::right} : std::vector{side::both}) {
            sheet_place p{{z, one}, laid.at({z, one}), rule_for({z, one})};
            const bool prep = b.zones[z].where == group::prep;
            if (!prep || p.asked.target || p.asked.blade || p.asked.how) {
                out.push_back(std::move(p));
            }
        }
    }
    return out;
}

std::optional<length> length_on(const instruction& i, const coat& c, const reference_data& known,
                                const cut_rules& rules) {
    if (keeps_length(i)) {
        return std::nullopt;
    }
    if (i.target) {
        return i.target;
    }
    const blade* b = i.blade ? find(known.blades, *i.blade) : nullptr;
    if (b == nullptr) {
        return std::nullopt;
    }
    const direction way =
        i.way == lay_choice::against_lay ? direction::against_lay : direction::with_lay;
    return rounded(cut_length(bare(*b, way), c.lay_degrees.best, rules)).best;
}

std::vector<sheet_warning> doubts_about(const style& s, const reference_data& c,
                                        const parameters& rules) {
    std::vector<sheet_warning> out;
    judged_sheet plain(s, s, nullptr, c, rules, out);
    judge_name(plain);
    judge_mixes(plain);
    judge_untold(plain);
    judge_stopped(plain);
    sheets::told_lengths told;
    judge_lengths(plain, told);
    judge_steps(plain, told);
    judge_consent(plain, told);
    sheets::told_limits clauses;
    judge_clauses(plain, s, clauses);
    for (const season& one : s.seasons) {
        sheets::told_lengths also = told;
        sheets::told_limits too = clauses;
        const style then = in_season(s, one);
        judged_sheet season_of(s, then, &one, c, rules, out);
        judge_lengths(season_of, also);
        judge_steps(season_of, also);
        judge_consent(season_of, also);
        judge_clauses(season_of, s, too);
    }
    in_order(out);
    return out;
}

std::vector<sheet_warning> broken_limits(const style& s, const style& standard,
                                         const reference_data& c) {
    std::vector<sheet_warning> out;
    sheets::told_limits told;
    judged_sheet plain(s, s, nullptr, c, c.rules, out);
    judge_limits(plain, standard, told);
    // a sheet's own doubts have its inherited clauses in them
    const bool told_already =
        standard.id == s.id || std::any_of(s.limits.begin(), s.limits.end(), [&](const limit& l) {
            return !l.not_below.empty() && l.from == standard.id;
        });
    if (!told_already) {
        judge_clauses(plain, standard, told);
    }
    for (const season& one : s.seasons) {
        sheets::told_limits also = told;
        const style then = in_season(s, one);
        judged_sheet season_of(s, then, &one, c, c.rules, out);
        judge_limits(season_of, standard, also);
        if (!told_already) {
            judge_clauses(season_of, standard, also);
        }
    }
    in_order(out);
    return out;
}

}  // namespace pelage
