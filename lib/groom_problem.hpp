// Private to lib: the groom as a problem in integers, and the way back from its solution.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/groom.hpp>

namespace pelage {

/// A groom compiled: the zones as far as they are known before the choice, the setups that may be
/// chosen (columns), what each would leave in each zone, and the problem over them. Rows of the
/// problem are `rows`, indices into `zones`; zones that are left alone have no row.
struct compiled_groom {
    std::vector<zone_plan> zones;
    std::vector<combing_out> combed;
    std::vector<std::string> stop;
    std::vector<std::size_t> stuck;
    std::vector<setup> columns;
    std::vector<std::size_t> rows;
    std::vector<finished> leaves;  ///< like problem::cost
    problem choice;
};

/// What is asked of a zone today, as far as the hard rules care. Borrows from `r`.
[[nodiscard]] zone_today today_in(const groom_request& r, const zone_plan& z);

/// Compiles the groom; throws what plan_groom throws.
[[nodiscard]] compiled_groom compile(const groom_request& r);

}  // namespace pelage
