// Private to lib: a dog seen from one side, as it is drawn: its coat, its labels, the way of the clipper.
#pragma once

#include <string>
#include <vector>

#include "answers/picture_labels.hpp"
#include "answers/picture_svg.hpp"

namespace pelage::io {

/// A view and what is to be told on it. Borrows all it is made of.
struct pictured_view {
    const drawn_view& view;
    const picture_request& asked;
    const outline& scale;
    const body& names;

    /// What is to be told of a place; null: nothing.
    [[nodiscard]] const pictured_place* told(const place& at) const;
};

/// The dog with what is left of its coat, and the lines between its places. Notes the signs it has `used`.
[[nodiscard]] std::string coat_drawn(const pictured_view& v, signs_used& used);

/// The places at home in the view of which something is told: each has a label.
[[nodiscard]] std::vector<place> labelled_places(const pictured_view& v);
/// A label for each ring of those places; slivers have none beside a large one. `solid`: all of the dog.
[[nodiscard]] std::vector<wanted_label> labels_of(const pictured_view& v,
                                                  const std::vector<polygon>& solid);
/// Labels in their places, with their leaders.
[[nodiscard]] std::string labels_drawn(const std::vector<placed_label>& labels);
/// Whose left and right, seen from below: beside the head, where there is room.
[[nodiscard]] std::vector<text_box> names_of_sides(const std::vector<polygon>& solid,
                                                   const std::vector<placed_label>& labels);

/// All of it, moved so that it lies right of and below 0.
[[nodiscard]] picture_part view_drawn(const pictured_view& v, signs_used& used);

}  // namespace pelage::io
