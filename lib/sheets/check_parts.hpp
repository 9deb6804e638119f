// Private to lib: a sheet made ready to be judged, and its judges, each by what it looks at.
#pragma once

#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <utility>
#include <vector>

#include <pelage/sheets/check.hpp>

namespace pelage::sheets {

/// What was told of lengths: the doubt, the sheet's rule (or the seam of a step), and what it is against.
using told_lengths = std::set<std::tuple<sheet_doubt, std::size_t, std::size_t, std::size_t>>;
/// What was told of limits: the sheet's rule and the standard's limit.
using told_limits = std::set<std::pair<std::size_t, std::size_t>>;

/// Whether a word means a place, or a side of it.
[[nodiscard]] bool covers(const selection& s, const place& p);

/// Whether a finish leaves the coat's own length, whatever the sheet says.
[[nodiscard]] bool keeps_length(const instruction& i);

/// The coats a mix comes to with a chance of at least 1 in 50; throws bad_input if it can't be read.
[[nodiscard]] std::vector<coat_class> coats_of_mix(const std::string& mix, const reference_data& c);

/// A sheet, plain or in a season. Borrows all it is made of.
class judged_sheet {
  public:
    /// `plain`: the sheet as it is written; `s`: the same, or in the season `of_it`.
    judged_sheet(const style& plain, const style& s, const season* of_it, const reference_data& c,
                 const parameters& by, std::vector<sheet_warning>& out);

    const style& own;
    const style& sheet;
    const season* in;  ///< null: the sheet as it is
    const reference_data& known;
    const parameters& rules;
    const part_index parts;
    const resolved_style laid;
    const std::vector<sheet_place> places;
    const std::vector<coat_class> coats;

    [[nodiscard]] const body& dog() const { return known.dog_body; }
    [[nodiscard]] std::string season_name() const { return in == nullptr ? "" : in->name; }
    [[nodiscard]] const blade* blade_of(const sheet_place& p) const;
    [[nodiscard]] sheet_says says(const sheet_place& p) const;
    [[nodiscard]] bool own_line(const sheet_place& p) const {
        return p.rule && sheet.rules[*p.rule].from.empty();
    }

    /// Notes a doubt about a place, or one that stands elsewhere.
    template <class Found>
    void say(sheet_doubt what, const sheet_place& p, Found found) {
        out_.push_back({what, where(p), std::move(found)});
    }
    template <class Found>
    void say_at(sheet_doubt what, const written_at& at, Found found) {
        out_.push_back({what, at, std::move(found)});
    }

  private:
    [[nodiscard]] written_at where(const sheet_place& p) const;

    std::vector<sheet_warning>& out_;
};

/// Lengths and blades of each place, against coats, rules and the sheet's own limits.
void judge_lengths(judged_sheet& s, told_lengths& told);
/// Steps between neighbours, on a medium dog.
void judge_steps(judged_sheet& s, told_lengths& told);
/// The limits of a standard.
void judge_limits(judged_sheet& s, const style& standard, told_limits& told);
/// Clauses of a standard that compare places of one sheet: "legs no shorter than the body".
void judge_clauses(judged_sheet& s, const style& standard, told_limits& told);
/// Zones of which nothing is said; lines that don't reach; coats and mixes it is for.
void judge_untold(judged_sheet& s);
void judge_stopped(judged_sheet& s);
void judge_mixes(judged_sheet& s);
/// A file called otherwise than the sheet in it.
void judge_name(judged_sheet& s);
/// Double coats clipped without their owner's consent.
void judge_consent(judged_sheet& s, told_lengths& told);

}  // namespace pelage::sheets
