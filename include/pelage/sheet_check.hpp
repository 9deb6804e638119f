// What a style sheet asks that can't be had, or that its owner may not have meant: judged on the sheet
// alone, for the coats it is for, before any dog stands on the table.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/catalogue.hpp>
#include <pelage/select.hpp>
#include <pelage/worktop.hpp>

namespace pelage {

/// What is doubtful about a sheet.
enum class sheet_doubt {
    limit,        ///< a standard's limit broken
    refused,      ///< a blade wished that the rules refuse there
    beyond_coat,  ///< longer than a coat of it grows
    step,         ///< a step between neighbours too high to blend on the seam there is
    too_short,    ///< below the shortest advisable length of a coat
    untold,       ///< a zone of which nothing is said
    mix_unread,   ///< a mix that can't be read
    other_coat,   ///< a mix that comes to a coat the sheet isn't for
    no_coat,      ///< neither coats nor mixes: lengths can't be judged
    not_reached,  ///< a wide line that a narrower one of the parent stops
    loose         ///< within its tolerance a length may end beyond a limit of the sheet
};
/// "limit", "refused", "beyond-coat", "step", "too-short", "untold", "mix-unread", "other-coat",
/// "no-coat", "not-reached", "loose".
[[nodiscard]] std::string_view name(sheet_doubt d);

/// Whether the sheet can't be done as it is written; the others are advice.
[[nodiscard]] constexpr bool graver(sheet_doubt d) {
    return d == sheet_doubt::limit || d == sheet_doubt::refused || d == sheet_doubt::beyond_coat;
}

/// One doubt. `text` reads: what is doubtful; what was found; what would be right.
struct sheet_warning {
    sheet_doubt what = sheet_doubt::step;
    written_at at{};  ///< in the sheet's own file
    std::string text;
};

/// The coats a sheet is for: those it names, or else those its mixes come to with a chance of at
/// least 1 in 50, in the order of coat_class. Mixes that can't be read are passed over.
[[nodiscard]] std::vector<coat_class> coats_for(const style& s, const catalogue& c);

/// Every place with what the sheet asks there: a paired zone once, or once a side where the sheet
/// speaks of one side. Prep zones only where the sheet speaks of them.
struct sheet_place {
    place at;
    instruction asked;
    std::optional<std::size_t> rule{};  ///< which of the sheet's rules says the length or blade
};
[[nodiscard]] std::vector<sheet_place> places_of(const style& s, const body& b,
                                                 const part_index& parts);

/// The length a place is left at on a coat: the target, or what the blade wished leaves; nothing where
/// the coat's own length is kept.
[[nodiscard]] std::optional<length> length_on(const instruction& i, const coat& c,
                                              const catalogue& known, const cut_rules& rules);

/// Every doubt about a sheet and its seasons, in the order of the file. Steps are judged on a medium
/// dog.
[[nodiscard]] std::vector<sheet_warning> doubts_about(const style& s, const catalogue& c,
                                                      const rule_book& rules);

/// Where the sheet and its seasons break the limits of another.
[[nodiscard]] std::vector<sheet_warning> broken_limits(const style& s, const style& standard,
                                                       const catalogue& c);

}  // namespace pelage
