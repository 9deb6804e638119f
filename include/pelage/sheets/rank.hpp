// Which of many sheets a dog can carry today: its coat, its mats, its hair, this kit and the owner's
// brushing, each asked of the plan and the forecast.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/forecast/forecast.hpp>
#include <pelage/model/mix.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage {

/// What speaks against a sheet.
enum class objection { coat, skin_or_rules, mats, hair, kit, brushing };
inline constexpr std::array<std::string_view, 6> objection_names{"coat", "rules", "mats",
                                                                 "hair", "kit",   "brushing"};
[[nodiscard]] constexpr std::string_view name(objection o) {
    return objection_names[static_cast<std::size_t>(o)];
}

/// What it is in particular.
enum class objected {
    other_coat,       ///< the sheet is for other coats
    unsigned_jacket,  ///< a double coat clipped all over without its owner's consent
    felted,           ///< felted to the skin: at groom::stop
    nothing_allowed,  ///< nothing may be done at `where`, alike by zone_plan::why
    carded,           ///< clipped by the sheet, but carded without consent: `where`
    clipped_under,    ///< mats come off under the wish: `where`
    below_standard,   ///< hair that the sheet leaves is below `least`, or nobody knows it: `where`
    hair_shorter,  ///< today's hair is below the wish: `where`, alike by zone_plan::why and lengths
    no_tool,       ///< nothing at hand comes near enough: `where`
    brushing_ends  ///< brushed as it is, the whole dog is fine for `holds` only, not `wait`
};
/// Which objection it is.
[[nodiscard]] constexpr objection kind_of(objected o) {
    constexpr std::array<objection, 10> kinds{objection::coat,          objection::skin_or_rules,
                                              objection::mats,          objection::skin_or_rules,
                                              objection::skin_or_rules, objection::mats,
                                              objection::hair,          objection::hair,
                                              objection::kit,           objection::brushing};
    return kinds[static_cast<std::size_t>(o)];
}

/// A place that a reason speaks of.
struct objected_place {
    std::size_t zone = 0;  ///< index into groom::zones of the trial's plan
    std::optional<length>
        wished{};  ///< clipped_under and no_tool: the length; none: its own is left
};

/// One reason; what isn't named beside its kind is left empty.
struct sheet_objection {
    objected why = objected::other_coat;  ///< which reason
    std::vector<objected_place> where{};  ///< may be empty
    std::optional<length> now{};          ///< below_standard: today's hair, if it is known
    std::optional<length> least{};        ///< below_standard: the limit of the sheet's standard
    days holds{};                         ///< brushing_ends
    days wait{};                          ///< brushing_ends
    bool in_vain = false;  ///< brushing_ends: brushed, but not to the skin: as if never

    /// Of which kind.
    [[nodiscard]] objection what() const { return kind_of(why); }
};

/// A blade that isn't at hand, and what does its work.
struct tool_instead {
    std::string out;                 ///< id of the blade
    setup instead{};                 ///< what does its work
    std::vector<std::size_t> where;  ///< indices into groom::zones of the trial's plan
    finished would_leave{};          ///< in the first of them
    finished leaves{};               ///< what that leaves there
};

/// One sheet tried on the dog.
struct ranked_sheet {
    const style* sheet = nullptr;          ///< never none
    groom plan;                            ///< by that sheet
    std::optional<return_date> when;       ///< none: nothing is planned
    std::vector<sheet_objection> against;  ///< none: the dog can carry it
    std::vector<tool_instead> instead;     ///< for blades that aren't at hand
    bool own = false;                      ///< it is the dog's own sheet
    bool for_mix = false;                  ///< it names the dog's mix
    std::optional<length>
        away;  ///< mean difference from the dog's own sheet, where both give lengths

    /// The dog can carry it: nothing speaks against it.
    [[nodiscard]] bool carried() const { return against.empty(); }
    /// Nothing against it but mats clipped off and hair below the wish, which grows out. Hair that the sheet
    /// leaves and its standard wants longer is none of it: the dog isn't of that sheet yet.
    [[nodiscard]] bool carried_but_for_hair() const;
    /// The sheet is made for other coats.
    [[nodiscard]] bool wrong_coat() const;
    /// To clip and finish, before the bath and after.
    [[nodiscard]] work takes() const { return plan.before + plan.after; }
};

/// The shortest rota in common use, 3 weeks (common practice, no source): a sheet must wait so long.
inline constexpr days shortest_rota = day(21);

/// Tries every sheet on the dog of `r`, whose own sheet is r.sheet where the dog names it. A sheet is
/// carried if it is for such a coat; everything is allowed; every zone ends within its tolerance of the
/// wish, mats clipped off and today's hair included; and the whole dog is fine, at the chance asked,
/// until its full groom for `wait` at least.
///
/// First those carried, then those with nothing against them but mats and today's hair, last those for
/// other coats, those between by how many reasons there are against them; of equals the dog's own sheet, then those nearest to it by the mean difference
/// in length over the zones, or, where the dog has none, those that name its mix, then those that wait
/// longest, then those that take the fewest minutes, then by id.
[[nodiscard]] std::vector<ranked_sheet> rank_sheets(const plan_request& r,
                                                    const std::vector<style>& sheets,
                                                    const days& wait = shortest_rota);

/// Whether a sheet names the mix, however it is written.
[[nodiscard]] bool names_mix(const style& s, const std::string& mix, const heredity& h);

}  // namespace pelage
