// Private to lib: that an outline can be drawn, whatever is chosen of it.
#pragma once

#include <vector>

#include <pelage/trade/outline.hpp>

#include "data/table_reader.hpp"

namespace pelage::io {

/// Names of points with where they stand: a line, a ring or a mark.
struct named_points {
    spot at;
    std::vector<word> points;
    bool open = false;  ///< of a ring: its mirror image closes it
};

/// A piece with where its names stand.
struct placed_piece {
    outline_piece piece;
    spot at;
    std::vector<named_points> lines;
    std::vector<named_points> rings;  ///< of piece.zones
    std::vector<named_points> marks;
};

struct outline_to_check {
    const outline& drawn;
    const std::vector<placed_piece>& pieces;
    const std::vector<spot>& builds;  ///< where they stand
    const body& whole;
    spot top;
};

/// Complains of builds that lack a point, of names that are no point in one of the combinations of
/// pieces, of rings between whose points no line goes, and of zones that are drawn in no view or in two.
void check_outline(const outline_to_check& c, faults& out);

}  // namespace pelage::io
