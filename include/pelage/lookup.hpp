// What a trainee asks: which blade leaves what, what is nearest to a length, what replaces it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include <pelage/catalogue.hpp>
#include <pelage/error.hpp>

namespace pelage {

/// Of which kind the thing asked about is, where a person says it.
enum class asked_kind { any, blade, comb };

/// What is asked.
struct lookup_request {
    const catalogue& reference;
    const rule_book& rules;
    const kit& tools;  ///< whose blades and combs are offered
    std::string text;  ///< "7F", "9mm", "3/8in", "13 mm comb over 10"
    asked_kind kind = asked_kind::any;
    bool barber = false;  ///< bare comb numbers are n/8 inch
    std::optional<coat_class> coat;
    std::vector<place> where;  ///< empty: not said
    std::optional<direction> way;
    std::optional<date> today;
};

/// What a text turned out to mean.
struct question {
    enum class form { of_blade, of_comb, of_length } what = form::of_length;
    setup tool{};                    ///< for blade and comb, with the lay
    length wanted{};                 ///< for a length
    std::vector<std::string> hints;  ///< how to ask for what else it might have meant
};

/// Reads the text. Throws error(ambiguous) where it could mean two lengths, asking back with what
/// would be right; error(unknown) for a blade that isn't one, with a near miss. Bare "5/8" and "7/8"
/// are always asked back: a toe blade's fraction is its width and it leaves about 0.8 mm.
[[nodiscard]] question read_question(const lookup_request& r);

/// What a setup leaves on a coat, in both directions.
struct coat_row {
    coat_class coat = coat_class::wavy;
    finished with{};
    finished against{};
    std::optional<length> stops{};  ///< where this coat's hair stops, if that is below what is left
};

/// A setup near to what was asked.
struct near_setup {
    setup how{};
    finished leaves{};
    length off{};         ///< how far its best is from what was asked
    bool at_hand = true;  ///< in the kit and not out for sharpening
    std::string why_not;  ///< refused in the zone asked about; empty if it may be used
};

/// What a length is nearest to on one coat.
struct nearest_row {
    coat_class coat = coat_class::wavy;
    std::vector<near_setup> best;   ///< nearest first
    std::optional<length> stops{};  ///< where this coat's hair stops, if the length asked is beyond
};

/// The answer.
struct lookup_answer {
    question asked;
    std::string never;    ///< the rule it breaks or the length no such coat has; empty: none
    std::string of_coat;  ///< what to know of the coat asked about before any length; may be empty
    std::optional<figure<length>> stated;  ///< for blade and comb
    std::vector<coat_row> leaves;          ///< for blade and comb: what it leaves, by coat
    std::vector<nearest_row> nearest;      ///< for a length: by coat
    std::vector<near_setup> replaces;      ///< the same result with the lay from something else
    std::vector<near_setup> reverse;       ///< what leaves with the lay what this leaves against it
    coat_class judged_on = coat_class::smooth;  ///< coat of `replaces` and `reverse`
    std::vector<std::string> cautions;
    std::string there;  ///< of a blade or comb in a zone: whether it may be used there, in words
    std::vector<std::pair<std::string, evidence>> sure;  ///< figure in words, and how it is known
};

/// Looks it up. Throws what read_question throws.
[[nodiscard]] lookup_answer look_up(const lookup_request& r);

/// One setup of the ladder: a blade or a comb with a direction.
struct rung {
    setup how{};
    finished leaves{};
    bool out = false;                  ///< out for sharpening, or otherwise not at hand
    std::optional<date> out_until{};   ///< where that is known
    bool whole_coat = false;           ///< may go wherever the coat is clipped
    std::optional<std::size_t> where;  ///< else where it may go: index into ladder::places
    std::string why_not;               ///< refused in the zone asked about; empty if it may be used
};

/// Everything a kit can leave on one coat.
struct ladder {
    coat_class coat = coat_class::wavy;
    std::vector<rung> rungs;          ///< from shortest to longest; with the lay before against it
    std::vector<std::string> places;  ///< where setups may go that may not go everywhere, in words
    bool one_way = false;             ///< direction makes no difference on this coat
};

/// The whole ladder of the request's kit on its coat, which must be set; its text isn't read. `way`
/// limits the direction, `where` says of each setup whether it may be used there.
[[nodiscard]] ladder whole_ladder(const lookup_request& r);

}  // namespace pelage
