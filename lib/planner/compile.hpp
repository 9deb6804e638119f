// Private to lib: the groom as a problem in integers, and the way back from its solution.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include <pelage/planner/plan.hpp>

#include "planner/targets.hpp"

namespace pelage {

/// A groom compiled: the zones as far as they are known before the choice, and the problem over them.
///
/// Rows of the problem are `rows`, indices into `zones`; zones left alone for their skin and zones for
/// which nothing is allowed have no row. Columns are the setups of the worktop; where a mat may be
/// combed out they stand a second time, after combing out. Costs are those of a medium dog, minutes of
/// combing out those of this one.
///
/// Where a mat stays in, the blade that goes under it is no choice (`under`): another setup in the first
/// half means that the place is clipped down by that blade before the bath and finished after it.
struct compiled_plan {
    std::vector<zone_plan> zones;
    std::vector<place> stop;
    std::vector<std::size_t> stuck;
    std::size_t setups = 0;  ///< of the worktop
    std::vector<std::size_t> rows;
    std::vector<work> combing;  ///< by zone: what combing its mat out takes; 0: can't be or no mat
    std::vector<std::size_t>
        under;  ///< by zone: the blade that goes under its mat, or takes it down with
                ///< its part; worktop::none where none does
    std::vector<bool> lifted;  ///< by zone: nothing leaves a length that the sheet allows
    std::vector<bool>
        undone;  ///< by zone: its mat may be combed out, and nothing is allowed then: it stays so
    std::vector<part> down;             ///< parts that come down whole
    std::vector<part_follower> follow;  ///< places whose wish is the length of their part
    problem choice;
    std::vector<std::size_t> tool_of;  ///< by tool of the problem: which of worktop::tools() it is

    [[nodiscard]] std::size_t setup_of(std::size_t column) const { return column % setups; }
    [[nodiscard]] bool combed(std::size_t column) const { return column >= setups; }
    /// The zone as a follower of its part; null: it is none.
    [[nodiscard]] const part_follower* follower(std::size_t zone) const {
        const auto at = std::find_if(follow.begin(), follow.end(),
                                     [&](const part_follower& f) { return f.zone == zone; });
        return at != follow.end() ? &*at : nullptr;
    }
    /// Whether a place comes down with its part, sound or not.
    [[nodiscard]] bool with_part(std::size_t zone) const {
        return under[zone] != kit_setups::none && taken_down[zone];
    }
    /// Whether it is clipped down before the bath and finished after it.
    [[nodiscard]] bool in_two_passes(std::size_t zone, std::size_t column) const {
        return under[zone] != kit_setups::none && !combed(column) &&
               (taken_down[zone] || setup_of(column) != under[zone]);
    }
    std::vector<bool> taken_down;  ///< by zone
};

/// Compiles the groom, the parts of `down` as ones that come down whole, the places of `follow` at the
/// length of their part; throws what make_plan throws.
[[nodiscard]] compiled_plan compile(const plan_request& r, const ready_kit& ready,
                                    std::vector<part> down = {},
                                    std::vector<part_follower> follow = {});
[[nodiscard]] compiled_plan compile(const plan_request& r);

/// Solves it. Where the sheet leaves directions open, one direction is taken for each connected group
/// of zones: flipping it zone by zone leaves tracks. The first optimum over all of them; its bound is
/// the least bound.
/// `of` is the compiled problem, or the same with other costs or with setups barred. `most_nodes`: of the
/// ways that open directions can go together, and a hundredth of it each beyond.
[[nodiscard]] solution choose(const plan_request& r, const ready_kit& ready, const compiled_plan& c,
                              const problem& of, std::int64_t most_nodes = usual_nodes);

/// A groom compiled and chosen, the parts of which mats take much coming down whole.
struct chosen_plan {
    compiled_plan compiled;
    solution choice;
};
/// `first` is the groom compiled with no part down.
[[nodiscard]] chosen_plan choose_whole(const plan_request& r, const ready_kit& ready,
                                       compiled_plan first);

/// The groom that a choice means, all but its cautions, consents and notes. The choice must be one of
/// the compiled problem, or empty where there is none.
[[nodiscard]] groom read_plan(const plan_request& r, const ready_kit& ready, compiled_plan c,
                              solution choice);

}  // namespace pelage
