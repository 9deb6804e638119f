// Problems made up to be like a groom of a stated size, and some made up to be hard.
//
// Nothing here is data: an invented body of 20 parts and 25 seams, invented wishes, and a drawer of 19
// blades and 11 combs over 4 blades each, in both directions, 126 setups. A setup holds one tool, its
// blade or its comb over a blade; with and against the lay it is the same tool, 63 in all.
#pragma once

#include <array>
#include <string_view>
#include <vector>

#include <pelage/solver/setup_problem.hpp>

#include "generate/dice.hpp"

namespace generate {

/// What makes a made-up problem easy or hard.
enum class made {
    plain,         ///< like a groom
    flat,          ///< misses cost little: an eighth of plain
    strong_seams,  ///< steps cost twelvefold and hardly any is allowed
    dear_tools,    ///< a tool costs seven times as much
    cheap_tools,   ///< a seventh
    ties,          ///< misses in few steps: many plans cost the same
    facility,      ///< any cost anywhere, no seams: tools as facilities to be located
    cover          ///< a setup suits a fifth of the zones and is ruinous elsewhere: covering sets
};
inline constexpr std::array<std::string_view, 8> made_names{
    "plain", "flat", "strong seams", "dear tools", "cheap tools", "ties", "facility", "cover"};
[[nodiscard]] constexpr std::string_view name(made m) {
    return made_names[static_cast<std::size_t>(m)];
}

/// A problem of so many zones (1 to most_zones) and setups (2 to 126). Facility and cover count a
/// setup's tools round from 64.
[[nodiscard]] pelage::problem made_problem(dice& d, made kind, int zones, int setups);

/// Makes setups need combing out first, up to a quarter of an hour, in one zone of four; a budget of a
/// quarter of an hour for all of them. Some of the setups there need none, so that there is a plan.
void add_combing_out(dice& d, pelage::problem& p);

/// `n` of them.
[[nodiscard]] std::vector<pelage::problem> made_problems(int n, std::uint64_t seed, made kind,
                                                         int zones, int setups);

}  // namespace generate
