// The choice of setups as an integer programme, for solvers that know nothing of it.
//
// All coefficients are whole numbers. Two ways to write the same problem:
//   compact: one 0-1 column per zone and allowed setup and per tool, one column and two rows per seam;
//   tight:   steps over a seam counted length by length, so that the linear relaxation is nearly the
//            optimum. More rows, fewer nodes.
// In both, a tool is held if any setup that holds it is chosen; one row per zone and tool, which is
// tighter than one per setup.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <span>
#include <vector>

#include <pelage/solver/setup_problem.hpp>

namespace judges {

/// Which way it is written.
enum class form { compact, tight };

/// A factor times a column.
struct term {
    std::size_t column = 0;
    std::int64_t factor = 0;
};

enum class relation { at_least, at_most, equal };

/// sum of terms >=, <= or = right.
struct row {
    std::vector<term> terms;
    relation holds = relation::equal;
    std::int64_t right = 0;
};

/// A column from 0 to `most`; a whole one takes whole numbers only.
struct column {
    static constexpr std::int64_t no_limit = std::numeric_limits<std::int64_t>::max();
    std::int64_t cost = 0;
    std::int64_t most = 1;
    bool whole = false;
};

/// To be minimised: sum of cost times column.
struct integer_programme {
    static constexpr std::size_t none = static_cast<std::size_t>(-1);
    std::vector<column> columns;
    std::vector<row> rows;
    /// Like problem::zones: the column that says yes.
    std::vector<std::vector<std::size_t>> choice;
};

/// The problem written out.
[[nodiscard]] integer_programme written(const pelage::problem& p, form f);

/// The setups chosen where column c has `value[c]`; nothing unless every zone has exactly one.
[[nodiscard]] std::optional<std::vector<std::size_t>> chosen(const pelage::problem& p,
                                                             const integer_programme& ip,
                                                             std::span<const double> value);

}  // namespace judges
