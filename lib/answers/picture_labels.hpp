// Private to lib: where labels stand on a drawing, so that none covers another. Nothing here knows a dog.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/answers/picture.hpp>
#include <pelage/trade/outline.hpp>

namespace pelage::io {

using polygon = std::vector<drawn_point>;

/// How large a name and a figure are written (units of the drawing); the style says the same.
inline constexpr double name_size = 26.0;
inline constexpr double figure_size = 32.0;

/// How wide a text is at most (units of the drawing) in an ordinary sans-serif font of that size.
[[nodiscard]] double text_width(std::string_view text, double size, bool bold);

/// A line of a label.
struct label_line {
    std::string text;
    double size = name_size;
    bool bold = false;
};

/// A label that a polygon wants.
struct wanted_label {
    polygon of;
    std::vector<label_line> lines;
};

/// A label in its place.
struct placed_label {
    text_box box;
    std::vector<label_line> lines;
    bool inside = false;
    drawn_point anchor;  ///< of one outside: where its leader ends in the polygon
    drawn_point from;    ///< and where it begins, on the box
};

/// Labels inside where they fit, the others around `solid`, the nearer the better, with as few crossings of
/// leaders as may be; they begin with those inside. The same question has the same answer.
[[nodiscard]] std::vector<placed_label> place_labels(const std::vector<wanted_label>& wanted,
                                                     const std::vector<polygon>& solid);

[[nodiscard]] bool within(const polygon& p, const drawn_point& at);
[[nodiscard]] bool overlap(const text_box& a, const text_box& b);
/// The middle of a box of that size within `p` and clear of `taken`, nearest to the middle of `p`; nothing if
/// it doesn't fit.
[[nodiscard]] std::optional<drawn_point> room_in(const polygon& p, double width, double height,
                                                 const std::vector<text_box>& taken);

}  // namespace pelage::io
