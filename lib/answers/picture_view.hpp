// Private to lib: a dog seen from one side, as it is drawn: its coat, its labels, the way of the clipper.
#pragma once

#include <string>
#include <vector>

#include "answers/picture_labels.hpp"
#include "answers/picture_svg.hpp"

namespace pelage::io {

/// A ring of an area, with what is asked of it again and again.
struct prepared_ring {
    polygon of;
    double size = 0.0;   ///< its area
    drawn_point inmost;  ///< furthest from its edge
    bool above = false;  ///< seen from a side, nothing of the dog is above the middle of it
};

/// A view of a dog, whatever is told on it.
struct prepared_view {
    drawn_view view;
    std::vector<std::vector<prepared_ring>> rings;  ///< of each area
    std::vector<polygon> solid;                     ///< all of the dog
    label_ground ground;                            ///< the same, for labels
    label_memory labels{};                          ///< layouts on it so far
};

/// The views of a look, made ready once for all that is drawn on them.
struct prepared_dog {
    prepared_dog(const outline& o, const dog_look& l, const body& b);
    dog_look look;
    std::vector<prepared_view> views;
};

/// The picture on views that are ready; its key explains all signs that are `used` then.
[[nodiscard]] dog_picture picture_of(const picture_request& p, const outline& o, const body& b,
                                     prepared_dog& ready, bool both_sides, signs_used& used);

/// A view and what is to be told on it. Borrows all it is made of.
struct pictured_view {
    const drawn_view& view;
    const prepared_view& ready;
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
/// Hurt skin is there, or what is gone around.
[[nodiscard]] bool warns(const pictured_place& p);
/// A label for each ring of those places; slivers have none beside a large one.
[[nodiscard]] std::vector<wanted_label> labels_of(const pictured_view& v);
/// Labels in their places, with their leaders.
[[nodiscard]] std::string labels_drawn(const std::vector<placed_label>& labels);
/// Whose left and right, seen from below: beside the head, where there is room.
[[nodiscard]] std::vector<text_box> names_of_sides(const std::vector<polygon>& solid,
                                                   const std::vector<placed_label>& labels);

/// The way of the clipper in a ring of an area.
struct stroke_arrow {
    std::size_t area = 0;
    std::size_t ring = 0;
    drawn_point middle;
    double size = 0.0;
};

/// A view with its labels in their places and what else has to have room among them.
struct laid_view {
    pictured_view of;
    std::vector<placed_label> labels;
    std::vector<text_box> taken{};        ///< by labels, their leaders and signs
    std::vector<drawn_point> warnings{};  ///< signs of hurt skin where no label has one
    std::vector<drawn_point> tender{};    ///< signs of places the dog hates to have touched
    std::vector<stroke_arrow> arrows{};
};
[[nodiscard]] laid_view laid_out(const pictured_view& v, label_memory& known);

/// Of one side of the dog no arrow is left whose place has none on the other, though it is clipped there, too.
void match_arrows(std::vector<laid_view>& all);

/// All of it, moved so that it lies right of and below 0.
[[nodiscard]] picture_part view_drawn(const laid_view& v, signs_used& used);

}  // namespace pelage::io
