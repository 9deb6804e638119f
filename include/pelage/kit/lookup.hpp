// What a trainee asks: which blade leaves what, what is nearest to a length, what replaces it.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/model/reference_data.hpp>
#include <pelage/model/refusal.hpp>

namespace pelage {

struct glossary;  // trade/term.hpp

/// Of which kind the thing asked about is, where a person says it.
enum class asked_kind { any, blade, comb };

/// What is asked.
struct lookup_request {
    const reference_data& reference;    ///< what the library knows
    const parameters& rules;            ///< figures, the salon's own among them
    const kit& tools;                   ///< whose blades and combs are offered
    std::string text;                   ///< "7F", "9mm", "3/8in", "13 mm comb over 10"
    asked_kind kind = asked_kind::any;  ///< what the text is taken for
    bool barber = false;                ///< bare comb numbers are n/8 inch
    std::optional<coat_class> coat;     ///< none: on all coats
    std::vector<place> where;           ///< empty: not said
    std::optional<direction> way;       ///< none: both
    std::optional<date> today;          ///< none: nothing is out for sharpening
    const glossary* words = nullptr;    ///< of the trade; null: none are known
    std::string breed{};    ///< the breed that `coat` was taken from; empty: the coat was said
    bool invented = false;  ///< the kit is the demo salon's
};

/// Whether it asks about nothing but pads, where hair has no lay.
[[nodiscard]] bool of_pads_alone(const lookup_request& r);

/// The glossary of a request, empty where it has none.
[[nodiscard]] const glossary& words_of(const lookup_request& r);

/// What else a text might have meant, or how it was taken.
enum class question_hint {
    as_millimetres,  ///< the number of a blade may have been meant as a length
    comb_as_typed    ///< no such comb among the usual lengths or in the kit
};

/// What a text turned out to mean.
struct question {
    /// What it asks about.
    enum class form { of_blade, of_comb, of_length } what = form::of_length;  ///< which of them
    setup tool{};                       ///< for blade and comb, with the lay
    length wanted{};                    ///< for a length
    std::vector<question_hint> hints;   ///< what more may be said
    std::string said{};                 ///< as it was typed: "1/2 inch"
    asked_kind only = asked_kind::any;  ///< of a length: what is looked for, "which blade is 3 mm"
};

/// Reads the text. Throws error(ambiguous) where it could mean two lengths, asking back with what
/// would be right; error(unknown) for a blade that isn't one, with a near miss. Bare "5/8" and "7/8"
/// are always asked back: a toe blade's fraction is its width and it leaves about 0.8 mm.
[[nodiscard]] question read_question(const lookup_request& r);

/// What a setup leaves on a coat, in both directions.
struct coat_row {
    coat_class coat = coat_class::wavy;  ///< on which
    finished with{};                     ///< moved with the lay
    finished against{};                  ///< moved against it
    std::optional<length> stops{};  ///< where this coat's hair stops, if that is below what is left
};

/// Why a setup may not be used, on a dog with no findings.
struct no_go {
    /// What forbids it.
    enum class cause {
        rule,                            ///< `rule` refuses it
        not_customary,                   ///< a prep zone has blades of its own
        only_with_lay                    ///< customary there, but not reversed
    } why = cause::rule;                 ///< what forbids it
    refusal rule{};                      ///< for cause::rule
    std::vector<std::string> customary;  ///< for cause::not_customary: ids of the blades that are
    std::vector<place> where;            ///< of the places asked about, those of which it is true
    bool everywhere = true;              ///< it is true of all that were asked about, or none was
    /// Whether the reason is the same, wherever it holds.
    [[nodiscard]] bool same_cause(const no_go& o) const {
        return why == o.why && rule == o.rule && customary == o.customary;
    }
};

/// Whether a blade or comb may be used in the places asked about.
struct use_there {
    /// Whether, and in which direction.
    enum class may {
        so,
        both_ways,
        with_lay_only,
        by_style,  ///< only where a style asks for it, as `but` says
        not_at_all
    } use = may::so;          ///< which of them
    std::optional<no_go> no;  ///< why not: against the lay, as it comes, or at all
    /// Of with_lay_only: where against the lay it may be used after all; of by_style: where at all.
    enum class exception {
        none,                        ///< nowhere
        clean,                       ///< where the style asks for clean face or feet
        in_show,                     ///< in show finish with the owner's consent
        pattern                      ///< on pattern breeds
    } but = exception::none;         ///< which of them
    bool against = true;             ///< of by_style, both ways asked about: against the lay, too
    std::vector<place> scissored{};  ///< of the places asked about, those that no blade goes on
};

/// Why what is asked about is never done.
struct answered_no {
    /// What forbids it.
    enum class cause {
        outgrown,         ///< the coat's hair stops short of the length asked for
        rule,             ///< `rule` refuses it everywhere
        there             ///< not in the places asked about, as lookup_answer::there says
    } why = cause::rule;  ///< what forbids it
    refusal rule{};       ///< for cause::rule
    length stops{};       ///< for cause::outgrown (mm)
};

/// What is to be minded with what is named.
enum class lookup_caution {
    nearest_comb,     ///< of a comb that comes nearest: a clean coat; the blade beneath cuts
    nearest_skip,     ///< of skip teeth that come nearest: firm, flat skin
    comb_in_tangles,  ///< a comb jams in them
    comb_drops_off,   ///< the blade beneath cuts to the skin
    fold_of_skin,     ///< skip teeth let it roll in
    teeth_unknown,    ///< from the number
    fraction_is_width,
    short_irritates,  ///< against the lay; and grows hot
    top_of_feet,      ///< a longer blade's gaps take the web: over the top only
    refused,          ///< as lookup_answer::on_firm_skin says
    carded_coats      ///< where no coat is named: some aren't clipped
};

/// What an answer's figures are of.
enum class lookup_figure { stated_length, lay_of_blades, lay_of_combs, lay_angle };
/// One of them, and how it is known.
struct known_figure {
    lookup_figure what{};  ///< which figure
    evidence why;          ///< how it is known
};

/// A setup near to what was asked.
struct near_setup {
    setup how{};                   ///< what is held
    finished leaves{};             ///< on the coat asked about
    length wanted{};               ///< what was asked
    length off{};                  ///< how far its best is from that
    bool at_hand = true;           ///< in the kit and not out for sharpening
    std::optional<no_go> why_not;  ///< why it may not be used in the places asked about
    bool longer = false;  ///< nothing comes near enough that may go there: the next longer that may
};

/// Where a setup may go that may not go everywhere: zones, as indices into body::zones, each in the
/// first list it belongs to.
struct where_it_may {
    bool firm_skin_only = false;       ///< skip teeth; then only `always` is told
    std::vector<std::size_t> always;   ///< however the sheet asks for them
    std::vector<std::size_t> clean;    ///< where the sheet asks for clean face or feet
    std::vector<std::size_t> in_show;  ///< in show finish with the owner's consent
    std::vector<std::size_t> pattern;  ///< of pattern breeds
    std::optional<no_go> nowhere;      ///< where all lists are empty
    /// Whether both may go to the same zones.
    [[nodiscard]] bool same_zones(const where_it_may& o) const {
        return firm_skin_only == o.firm_skin_only && always == o.always && clean == o.clean &&
               in_show == o.in_show && pattern == o.pattern &&
               nowhere.has_value() == o.nowhere.has_value() &&
               (!nowhere || nowhere->same_cause(*o.nowhere));
    }
};

/// What a length is nearest to on one coat.
struct nearest_row {
    coat_class coat = coat_class::wavy;  ///< on which
    std::vector<near_setup> best;        ///< nearest first
    std::optional<length> stops{};  ///< where this coat's hair stops, if the length asked is beyond
    std::optional<near_setup> out{};  ///< a blade that comes nearer, but is out for sharpening
};

/// The answer.
struct lookup_answer {
    question asked;                        ///< as it was understood
    std::optional<answered_no> never;      ///< none: it is done somewhere
    std::optional<figure<length>> stated;  ///< for blade and comb
    std::vector<coat_row> leaves;          ///< for blade and comb: what it leaves, by coat
    std::vector<nearest_row> nearest;      ///< for a length: by coat
    std::vector<blade> stated_so{};        ///< for a length: the usual blades that state about it
    std::vector<near_setup> replaces;      ///< the same result with the lay from something else
    std::vector<nearest_row>
        replaces_by_coat;  ///< the same where no coat is named, the fittest of each
    bool nothing_else_there =
        false;  ///< nothing else goes in the places asked about: a second one does
    std::vector<near_setup> reverse;  ///< what leaves with the lay what this leaves against it
    std::vector<nearest_row>
        reverse_by_coat;  ///< the same where no coat is named and the way matters
    coat_class judged_on = coat_class::smooth;  ///< coat of `replaces` and `reverse`
    std::vector<lookup_caution> cautions;       ///< what to mind
    std::optional<no_go> on_firm_skin;  ///< of a blade or comb, no place named: why not even there
    std::optional<where_it_may> only_there;  ///< then: where it may, though not there
    std::optional<use_there> there;          ///< of a blade or comb where places are named
    std::vector<known_figure> sure;          ///< how sure the figures are
};

/// Looks it up. Throws what read_question throws.
[[nodiscard]] lookup_answer look_up(const lookup_request& r);
/// The same of a question read before; the request's text isn't read.
[[nodiscard]] lookup_answer look_up(const lookup_request& r, question asked);

/// One setup of the ladder: a blade or a comb with a direction.
struct rung {
    setup how{};                       ///< what is held
    finished leaves{};                 ///< on the ladder's coat
    bool out = false;                  ///< out for sharpening, or otherwise not at hand
    std::optional<date> out_until{};   ///< where that is known
    bool whole_coat = false;           ///< may go wherever the coat is clipped
    std::optional<std::size_t> where;  ///< else where it may go: index into ladder::places
    std::optional<no_go> why_not;      ///< why it may not be used in the places asked about
};

/// A length that style sheets ask of clippers on one coat.
struct ladder_target {
    length wanted{};                  ///< to 0.01 mm
    std::vector<std::size_t> sheets;  ///< which of the sheets
    bool met = false;  ///< the kit leaves it, within what the sheets tolerate, wherever one asks it
};

/// Everything a kit can leave on one coat.
struct ladder {
    coat_class coat = coat_class::wavy;  ///< on which
    std::vector<rung> rungs;           ///< from shortest to longest; with the lay before against it
    std::vector<where_it_may> places;  ///< of setups that may not go everywhere, each once
    bool one_way = false;              ///< direction makes no difference on this coat
    std::vector<ladder_target>
        targets{};  ///< what sheets ask, where any were asked about; ascending
};

/// The whole ladder of the request's kit on its coat, which must be set; its text isn't read. `way`
/// limits the direction, `where` says of each setup whether it may be used there.
[[nodiscard]] ladder whole_ladder(const lookup_request& r);

/// The lengths that those of `sheets` which are for the request's coat ask of clippers there, with all of
/// the kit at hand; sheets that leave the coat open count.
[[nodiscard]] std::vector<ladder_target> targets_on(const lookup_request& r,
                                                    const std::vector<style>& sheets);

}  // namespace pelage
