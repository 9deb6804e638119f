// Private to lib: where labels stand on a drawing, so that none covers another. Nothing here knows a dog.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "answers/picture_shapes.hpp"

namespace pelage::io {

/// How large a name and a figure are written (units of the drawing); the style says the same.
inline constexpr double name_size = 26.0;
inline constexpr double figure_size = 32.0;

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
    bool above = false;                   ///< nothing is above it: its label isn't below
    bool warns = false;                   ///< its leader ends in a sign
    std::optional<drawn_point> inmost{};  ///< of `of`; empty: not known yet
};

/// What labels outside stand around.
struct label_ground {
    /// `eyes`: no leader goes over them where it can be helped.
    explicit label_ground(const std::vector<polygon>& all, std::vector<drawn_point> eyes = {});
    raster solid;
    extent edge{};
    std::vector<drawn_point> eyes;
};

/// A label in its place.
struct placed_label {
    text_box box;
    std::vector<label_line> lines;
    bool inside = false;
    drawn_point anchor;  ///< of one outside: where its leader ends in the polygon
    drawn_point from;    ///< and where it begins, on the box
    bool above = false;
    bool warns = false;
    std::size_t which = 0;  ///< of those wanted
};

/// Labels inside where they fit, the others around `solid`, the nearer the better; their leaders go over as
/// little of others' polygons and past as few of their ends as may be. They begin with those inside. The same question has the same answer.
[[nodiscard]] std::vector<placed_label> place_labels(const std::vector<wanted_label>& wanted,
                                                     const label_ground& solid);

/// Layouts on one ground: where labels stand hangs on how large they are, not on what they say.
class label_memory {
  public:
    /// As place_labels has them, which is asked once for labels of the same sizes.
    [[nodiscard]] std::vector<placed_label> place(const std::vector<wanted_label>& wanted,
                                                  const label_ground& solid);

  private:
    std::map<std::vector<double>, std::vector<placed_label>> known_;
};

}  // namespace pelage::io
