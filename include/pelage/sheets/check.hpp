// What a style sheet asks that can't be had, or that its owner may not have meant: judged on the sheet
// alone, for the coats it is for, before any dog stands on the table.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include <pelage/model/reference_data.hpp>
#include <pelage/model/refusal.hpp>
#include <pelage/planner/kit_setups.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

/// What is doubtful about a sheet.
enum class sheet_doubt {
    limit,          ///< a standard's limit broken
    refused,        ///< a blade wished that the rules refuse there
    beyond_coat,    ///< longer than a coat of it grows
    step,           ///< a step between neighbours too high to blend on the seam there is
    too_short,      ///< below the shortest advisable length of a coat
    untold,         ///< a zone of which nothing is said
    mix_unread,     ///< a mix that can't be read
    other_coat,     ///< a mix that comes to a coat the sheet isn't for
    no_coat,        ///< neither coats nor mixes: lengths can't be judged
    not_reached,    ///< a wide line that a narrower one of the parent stops
    loose,          ///< within its tolerance a length may end beyond a limit of the sheet
    unsigned_clip,  ///< a double coat's jacket clipped, and the owner's consent isn't asked for
    misnamed        ///< its file is called otherwise than its id
};
/// "limit", "refused", "beyond-coat", "step", "too-short", "untold", "mix-unread", "other-coat",
/// "no-coat", "not-reached", "loose", "unsigned", "misnamed".
[[nodiscard]] std::string_view name(sheet_doubt d);

/// Whether the sheet can't be done as it is written; the others are advice.
[[nodiscard]] constexpr bool graver(sheet_doubt d) {
    return d == sheet_doubt::limit || d == sheet_doubt::refused || d == sheet_doubt::beyond_coat;
}

/// What the sheet says of a place.
struct sheet_says {
    place at{};                      ///< of which place
    std::optional<length> target{};  ///< none: it names a blade
    std::string blade{};             ///< id; empty where a length is given
    std::string from{};              ///< id of the parent in whose line it stands; empty: its own
    std::string season{};  ///< name of the season it is said of; empty: the sheet as it is
};

/// sheet_doubt::limit: a length beyond what a standard allows.
struct broken_limit {
    sheet_says found;      ///< what the sheet says
    std::string standard;  ///< id of the sheet that states it
    limit right;           ///< what it breaks
};

/// sheet_doubt::limit: a place shorter than another of the same sheet, against a clause of a standard.
struct broken_clause {
    sheet_says found;      ///< what the sheet says
    sheet_says longest;    ///< of the places it may not be shorter than
    std::string standard;  ///< id of the sheet that has the limit
    limit right;           ///< what it breaks
};

/// sheet_doubt::refused.
struct refused_blade {
    sheet_says found;                     ///< what the sheet says
    direction way = direction::with_lay;  ///< in which direction
    refusal why = refusal::never_50;      ///< what forbids it
};

/// sheet_doubt::beyond_coat.
struct beyond_coats {
    sheet_says found;               ///< what the sheet says
    std::vector<coat_class> coats;  ///< each of which stops before: the sheet's, or those of `mix`
    length most{};                  ///< what the longest of them comes to
    std::string mix{};              ///< of the sheet's mixes the one that comes to them; empty: all
};

/// sheet_doubt::step: the seam of two zones, and what the places beside it are left at.
struct high_step {
    std::size_t a = 0;                 ///< zones of the seam, indices into body::zones
    std::size_t b = 0;                 ///< its neighbour, index into body::zones
    std::pair<place, length> longer;   ///< the one with more hair
    std::pair<place, length> shorter;  ///< the one with less
    length room{};                     ///< in which it would be blended
    std::string season;                ///< as in sheet_says
};

/// sheet_doubt::too_short.
struct under_shortest {
    sheet_says found;                  ///< what the sheet says
    coat_class on = coat_class::wavy;  ///< on which coat
};

/// sheet_doubt::untold.
struct untold_zones {
    std::vector<place> where;  ///< of which nothing is said
};

/// sheet_doubt::mix_unread.
struct unread_mix {
    std::string complaint;  ///< of who reads mixes
};

/// sheet_doubt::other_coat.
struct unfit_mix {
    std::string mix;   ///< as it is written
    std::string from;  ///< id of the parent that names it; empty: the sheet itself
    coat_class likeliest = coat_class::wavy;  ///< the coat it comes to
    std::vector<coat_class> right;            ///< the sheet's
};

/// sheet_doubt::no_coat.
struct no_coats {};

/// sheet_doubt::not_reached.
struct stopped_line {
    std::string whom;                            ///< whom the line is for, as written
    std::string parent;                          ///< id of the sheet whose narrower lines stop it
    std::vector<std::pair<place, length>> stay;  ///< and where, with what they say
};

/// sheet_doubt::loose.
struct loose_tolerance {
    sheet_says found;              ///< what the sheet says
    length tolerated{};            ///< how far off it may end
    limit right;                   ///< what it may break so
    std::optional<length> room{};  ///< a tolerance that would keep it; none: under 0.1 mm
};

/// sheet_doubt::unsigned_clip: what is clipped of a jacket that is carded unless its owner signs.
struct unsigned_jacket_clip {
    sheet_says found;                          ///< what the sheet says
    coat_class on = coat_class::double_short;  ///< on which coat
    std::string
        mix{};  ///< of the sheet's mixes the one that is likeliest such a coat; empty: it is named
};

/// sheet_doubt::misnamed.
struct other_file_name {
    std::string id;    ///< the one in the file
    std::string stem;  ///< what the file is called, without .toml
};

/// One doubt: what is doubtful, where it stands, and what was found there.
struct sheet_warning {
    sheet_doubt what = sheet_doubt::step;  ///< which doubt
    written_at at{};                       ///< in the sheet's own file
    std::variant<broken_limit, broken_clause, refused_blade, beyond_coats, high_step,
                 under_shortest, untold_zones, unread_mix, unfit_mix, no_coats, stopped_line,
                 loose_tolerance, unsigned_jacket_clip, other_file_name>
        found;  ///< of that doubt
};

/// The coats a sheet is for: those it names, or else those its mixes come to with a chance of at
/// least 1 in 50, in the order of coat_class. Mixes that can't be read are passed over.
[[nodiscard]] std::vector<coat_class> coats_for(const style& s, const reference_data& c);

/// Every place with what the sheet asks there: a paired zone once, or once a side where the sheet
/// speaks of one side. Prep zones only where the sheet speaks of them.
struct sheet_place {
    place at;                           ///< which place
    instruction asked;                  ///< what the sheet wants there
    std::optional<std::size_t> rule{};  ///< which of the sheet's rules says the length or blade
};
[[nodiscard]] std::vector<sheet_place> places_of(const style& s, const body& b,
                                                 const part_index& parts);

/// The length a place is left at on a coat: the target, or what the blade wished leaves; nothing where
/// the coat's own length is kept.
[[nodiscard]] std::optional<length> length_on(const instruction& i, const coat& c,
                                              const reference_data& known, const cut_rules& rules);

/// Every doubt about a sheet and its seasons, by line and column. Steps are judged on a medium dog.
[[nodiscard]] std::vector<sheet_warning> doubts_about(const style& s, const reference_data& c,
                                                      const parameters& rules);

/// Where the sheet and its seasons break the limits of another, by line and column.
[[nodiscard]] std::vector<sheet_warning> broken_limits(const style& s, const style& standard,
                                                       const reference_data& c);

}  // namespace pelage
