// Private to lib: the groom as a problem in integers, and the way back from its solution.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/groom.hpp>

#include "groom_wish.hpp"

namespace pelage {

/// A groom compiled: the zones as far as they are known before the choice, and the problem over them.
///
/// Rows of the problem are `rows`, indices into `zones`; zones left alone for their skin and zones for
/// which nothing is allowed have no row. Columns are the setups of the worktop; where a mat may be
/// combed out they stand a second time, after combing out. Minutes of combing out are counted in
/// tenths (allowed_setup::spend, problem::budget).
struct compiled_groom {
    std::vector<zone_plan> zones;
    std::vector<std::string> stop;
    std::vector<std::size_t> stuck;
    std::size_t setups = 0;  ///< of the worktop
    std::vector<std::size_t> rows;
    std::vector<work> combing;  ///< by zone: what combing its mat out takes; 0: can't be or no mat
    problem choice;
    std::vector<std::size_t> tool_of;  ///< by tool of the problem: which of worktop::tools() it is

    [[nodiscard]] std::size_t setup_of(std::size_t column) const { return column % setups; }
    [[nodiscard]] bool combed(std::size_t column) const { return column >= setups; }
};

/// Compiles the groom; throws what plan_groom throws.
[[nodiscard]] compiled_groom compile(const groom_request& r, const made_ready& ready);
[[nodiscard]] compiled_groom compile(const groom_request& r);

/// Solves it. Where the sheet leaves directions open, one direction is taken for each connected group
/// of zones: flipping it zone by zone leaves tracks. The first optimum over all of them; its bound is
/// the least bound.
/// `of` is the compiled problem, or the same with other costs or with setups barred.
[[nodiscard]] solution choose(const groom_request& r, const made_ready& ready,
                              const compiled_groom& c, const problem& of);

/// The groom that a choice means, all but its cautions, consents and notes. The choice must be one of
/// the compiled problem, or empty where there is none.
[[nodiscard]] groom read_plan(const groom_request& r, const made_ready& ready, compiled_groom c,
                              solution choice);

}  // namespace pelage
