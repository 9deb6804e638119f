// How a place is done: the kind of tool, its direction, the finish, and what is left standing.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

#include <pelage/base/units.hpp>

namespace pelage {

/// Which way the clipper moves over the coat.
enum class direction { with_lay, against_lay };
/// The direction in words: "with the lay", "against the lay".
[[nodiscard]] constexpr std::string_view name(direction d) {
    return d == direction::with_lay ? "with the lay" : "against the lay";
}

/// What is in the hand. `clip` is a blade, alone or under a comb.
enum class tool_kind { clip, scissors, thinners, carder, fingers, none };

/// How a zone is finished, as the sheet says.
enum class finish { clip, comb_then_scissor, scissor, thin, card, hand_strip, leave };
inline constexpr std::array<std::string_view, 7> finish_names{
    "clip", "comb-then-scissor", "scissor", "thin", "card", "hand-strip", "leave"};
[[nodiscard]] constexpr std::string_view name(finish f) {
    return finish_names[static_cast<std::size_t>(f)];
}

/// A clipper takes the hair, whether or not scissors go over it then.
[[nodiscard]] constexpr bool clips(finish f) {
    return f == finish::clip || f == finish::comb_then_scissor;
}
/// The hair is cut to a length, by a clipper or by scissors.
[[nodiscard]] constexpr bool cuts(finish f) {
    return clips(f) || f == finish::scissor;
}
/// Scissors give it its shape at last.
[[nodiscard]] constexpr bool scissors_last(finish f) {
    return f == finish::scissor || f == finish::comb_then_scissor;
}

/// Finished length: combed-out hair left standing (mm), low <= best <= high.
struct finished {
    length low{};   ///< the least it may come to
    length best{};  ///< what is reckoned with
    length high{};  ///< the most it may come to
    friend bool operator==(const finished& a, const finished& b) {
        return a.low == b.low && a.best == b.best && a.high == b.high;
    }
};

}  // namespace pelage
