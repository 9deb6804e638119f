// General solvers of Debian, run as programs.
#pragma once

#include <array>
#include <string_view>

#include "judges/integer_programme.hpp"
#include "judges/verdict.hpp"

namespace judges {

enum class program { cbc, glpsol, lp_solve, toulbar2 };
inline constexpr std::array<std::string_view, 4> program_names{"cbc", "glpsol", "lp_solve",
                                                               "toulbar2"};
[[nodiscard]] constexpr std::string_view name(program p) {
    return program_names[static_cast<std::size_t>(p)];
}

/// Hands the problem to the program, in that form (toulbar2 has its own), and reads its answer. The
/// time is the whole program's, its start and its reading of the file included. It is killed
/// after `most_seconds`; what it then had counts for nothing. Throws std::runtime_error, with the
/// Debian package to install, if the program isn't there.
[[nodiscard]] verdict by_program(program which, const pelage::problem& p, form f,
                                 double most_seconds);

}  // namespace judges
