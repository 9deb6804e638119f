// The nine classes of coat the models know.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace pelage {

/// What a groomer sees on the table.
enum class coat_class {
    smooth,
    double_short,
    double_long,
    feathered,  ///< short jacket; long ears, legs, skirt and tail: spaniels, setters
    wire,
    drop,
    shaggy,  ///< long all over with beard and brows, undercoat that stays in and mats
    wavy,
    curly
};
inline constexpr std::array<std::string_view, 9> coat_names{
    "smooth", "double-short", "double-long", "feathered", "wire",
    "drop",   "shaggy",       "wavy",        "curly"};
[[nodiscard]] constexpr std::string_view name(coat_class c) {
    return coat_names[static_cast<std::size_t>(c)];
}

/// A coat that sheds a dense undercoat: its jacket is carded, not clipped, unless the owner agrees.
[[nodiscard]] constexpr bool double_coated(coat_class c) {
    return c == coat_class::double_short || c == coat_class::double_long;
}

/// A coat whose jacket is stripped or carded by custom and comes back softer if clipped.
[[nodiscard]] constexpr bool stripped_by_custom(coat_class c) {
    return c == coat_class::wire || c == coat_class::feathered;
}

}  // namespace pelage
