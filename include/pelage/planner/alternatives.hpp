// What stands beside a plan: the next best plans a groomer would call different, the plan without each
// of its tools, why each setup was chosen, and what would free a zone for which nothing is allowed.
//
// Each is exact: another plan of the same problem with something barred, or of a dog, sheet or kit with
// something changed. "More" is against the plan beside which it stands; below zero means less.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/units.hpp>
#include <pelage/model/refusal.hpp>
#include <pelage/model/return_date.hpp>
#include <pelage/planner/grow_back.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/held_tool.hpp>
#include <pelage/trade/setup.hpp>

namespace pelage {

/// How another plan differs.
enum class way_kind {
    body_length,    ///< the body at another length, beyond the tolerance from the plan's
    fewer_tools,    ///< at least one blade or comb fewer, nothing scissored in its place
    no_scissoring,  ///< clipped, or left as the comb leaves it, where the sheet scissors
    sides_alike,    ///< a pair matted on one side left alike on both
    clip_mats,      ///< what is combed out clipped off in its place
    test_patch      ///< nearer the wish by what may leave less than the sheet allows: test it first
};
/// "body-length", "fewer-tools", "no-scissoring", "sides-alike", "clip-mats", "test-patch".
[[nodiscard]] std::string_view name(way_kind w);

/// Another way to groom the dog.
struct other_way {
    way_kind what = way_kind::body_length;  ///< which kind of way
    groom plan;     ///< without cautions, consents and notes; its places are those of the plan
    work more{};    ///< minutes of work
    work dearer{};  ///< cost as plans are compared: work, misses and steps
    std::vector<std::size_t> changed;  ///< places done otherwise, indices into groom::zones
    std::vector<std::size_t> about;    ///< of these, the places it is about
    std::vector<held_tool> dropped;    ///< tools no longer needed
    std::vector<held_tool> taken;      ///< tools needed in their place
    bool beyond_sheet = false;         ///< shorter than the sheet allows: the owner's to decide
    bool cheapest = true;              ///< proven the cheapest of its kind
    /// clip_mats: 1 in 10, 1 in 2 and 9 in 10 such dogs have the wished length back
    std::optional<std::array<days, 3>> back_in{};
    std::optional<return_date> when{};  ///< when the dog must be back then, where that was asked
};

/// The next best plans, at most one of each kind in the order of way_kind; those that are the plan
/// itself, bring nothing, or come to the same as one before are left out.
[[nodiscard]] std::vector<other_way> other_ways(const plan_request& r, const groom& g);

/// What the plan would be without one of its blades or combs.
struct without_tool {
    held_tool tool;                    ///< the one that isn't there
    int in_kit = 1;                    ///< how many of it the kit has; without them all
    groom plan;                        ///< without it
    work more{};                       ///< minutes more than the plan
    work dearer{};                     ///< cost more than the plan's
    std::vector<std::size_t> changed;  ///< places done otherwise
    std::vector<std::size_t> stuck;    ///< places that can't be done as asked any more
};

/// One for each blade and comb the plan uses, in working order.
[[nodiscard]] std::vector<without_tool> without_each_tool(const plan_request& r, const groom& g);

/// Why a place has its setup. "Here alone" means: without a thought to pick-ups, steps and directions.
enum class chosen_for {
    only_one,    ///< no other is allowed here
    customary,   ///< of the customary blades the first that is allowed
    under_mat,   ///< a mat is clipped off there, or the part comes down whole: no choice of setups
    wish,        ///< within the tolerance, cheapest here alone, and nothing allowed comes nearer
    enough,      ///< within the tolerance and cheapest here alone, though something comes nearer
    nearest,     ///< beyond the tolerance, cheapest here alone, and nothing allowed comes nearer
    cheapest,    ///< cheapest here alone, though something comes nearer
    in_hand,     ///< another is cheaper here alone; this tool is taken up elsewhere all the same
    spares,      ///< another is cheaper here alone, but there is more to take up for it
    neighbours,  ///< another would be cheaper here alone, but steps to its neighbours
    direction,   ///< another would be cheaper here alone, but against its neighbours' direction
    no_time,     ///< another would be cheaper here alone, after combing out there is no time for
    with_part    ///< the kit leaves its part at another length than wished, and it goes with it
};
/// "only-one", "customary", "clipped-off", "wish", "near-enough", "nearest", "cheapest", "in-hand",
/// "spares-pick-up", "neighbours", "direction", "no-time", "as-its-part".
[[nodiscard]] std::string_view name(chosen_for w);

/// Why a place has its setup and what the best plan with another one here would have cost.
struct reason_why {
    std::size_t zone = 0;               ///< index into groom::zones
    chosen_for why = chosen_for::wish;  ///< what decided
    std::optional<setup> alone;         ///< what would be cheaper in this place alone
    std::vector<std::size_t> with{};    ///< spares: the other places done with the tool
    std::optional<setup> next;  ///< what the next best plan does here; none: there is no other plan
    bool next_combed = false;   ///< and the mat is combed out before
    std::optional<finished> next_leaves;  ///< what the next best would leave
    work dearer{};                        ///< what the next best plan costs more
};

/// One for each place that is worked on, in reference order.
[[nodiscard]] std::vector<reason_why> reasons_why(const plan_request& r, const groom& g);

/// Something that would free a stuck place.
enum class remedy_kind {
    comb_out,      ///< the mat combed out at a visit that has the time for it
    measure_hair,  ///< the free hair under the mat measured, and enough
    comb_tip,      ///< a comb's tip found to pass beneath the mat
    consent,       ///< the owner's consent
    shorter,       ///< the owner agrees to shorter
    either_way,    ///< the direction left open
    blade,         ///< a blade that isn't at hand
    comb,          ///< a comb that isn't at hand
    measure_tool,  ///< a blade whose measured length isn't what it is made for, measured again
    heal           ///< what was found on the skin healed or treated
};
/// "comb-out", "measure-hair", "comb-tip", "consent", "shorter", "either-way", "blade", "comb",
/// "measure-tool", "heal".
[[nodiscard]] std::string_view name(remedy_kind f);

/// One thing to do about it.
struct remedy_step {
    remedy_kind how = remedy_kind::comb_out;  ///< what is to be done
    std::string id;                           ///< of the consent, blade or comb
    std::optional<length>
        least;                  ///< measure_hair: at least so much free hair; measure_tool: stated
    std::optional<work> takes;  ///< comb_out
};

/// Things which together free a place, and what is used there then: a tool that is named is used in that
/// very place, and a mat to be combed out is.
struct remedy_set {
    std::vector<remedy_step> by;  ///< all of it together
    std::optional<setup> then;    ///< none: the place is left, combed out
};

/// What is in the way of doing anything in a place.
enum class obstacle {
    refused,            ///< a hard rule
    none_short_enough,  ///< no blade is short enough for the free hair under the mat
    hair_unknown,       ///< nobody knows how much free hair lies under the mat
    none_passes,        ///< no blade passes under the mat as a comb's tip does
    pelt,               ///< a pelt is never combed out
    never_combed_out,   ///< a mat isn't combed out in this place
    over_limit,         ///< combing it out takes longer than this dog is combed out for
    no_time_left,       ///< it doesn't, but there is no time left for it today
    not_at_hand,        ///< the kit has nothing for it at hand
    odd_measure,        ///< the blade for it was measured at another length than it is made for
    too_short,          ///< the sheet goes no shorter
    other_direction,    ///< the sheet wants the other direction
    no_tool_allowed,    ///< no blade or comb may be used there
    not_held,           ///< too little hair beneath the mat to hold while it is combed out
    may_bite,           ///< nobody combs a mat out so near the teeth of a dog that may bite
    teats               ///< nothing comes near the teats of a bitch that is pregnant or nursing
};

/// A rule that bars a setup; what isn't named beside its obstacle is left empty.
struct broken_rule {
    obstacle what = obstacle::refused;  ///< what stands in the way
    refusal no = refusal::skin_found;   ///< refused
    bool at_hand =
        false;     ///< none_short_enough, none_passes: of those at hand; else of all there are
    work takes{};  ///< over_limit
    work most{};   ///< over_limit: what the dog is combed out for
};
/// Its id: that of the refusal, "under-mat-too-long", "free-hair-unknown", "not-in-kit",
/// "pelt-combed-out", "never-combed-out", "comb-out-limit", "odd-measure", "too-short", "direction".
[[nodiscard]] std::string_view name(const broken_rule& r);

/// A place for which nothing is allowed: the rules in the way and the smallest sets of things that
/// would free it, all of the same size, each planned again to see that it does.
struct infeasible_zone {
    std::size_t zone = 0;            ///< index into groom::zones
    std::vector<broken_rule> rules;  ///< all that stand in the way
    std::vector<remedy_set> frees;   ///< each by itself enough
    bool veterinarian = false;       ///< nothing frees it, and a mat or the skin is in the way
};

/// One for each stuck, felted or hurt place, in reference order. Of blades and combs that would do,
/// the first three are named, the usual before the rare.
[[nodiscard]] std::vector<infeasible_zone> infeasible_zones(const plan_request& r, const groom& g);

/// All of it, as an answer carries it.
struct beside {
    std::vector<other_way> ways;             ///< other ways to groom it
    std::vector<regrowth_option> grow_back;  ///< what it looks like until then
    std::vector<infeasible_zone> stuck;      ///< what frees each
    std::vector<without_tool> without;       ///< only if asked to explain
    std::vector<reason_why> why;             ///< only if asked to explain
};
[[nodiscard]] beside beside_plan(const plan_request& r, const groom& g, bool explain);

}  // namespace pelage
