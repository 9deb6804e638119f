// Private to lib: what stands on a picture of the dog and beside it.
#pragma once

#include <string>

#include <pelage/answers/picture.hpp>

namespace pelage::io {

/// "ear", "edge of the ear", "second thigh": a place in a view, where nobody asks of which side.
[[nodiscard]] std::string short_title(const zone& z);
/// "13", "6.4", "5/8"; "leave", "not done": what is said of a place. Empty where nothing is.
[[nodiscard]] std::string figure_words(const pictured_place& p, length_unit u);
/// "pelt off", "mat: comb out"; empty where there is no mat.
[[nodiscard]] std::string mat_words(const pictured_place& p);
/// The same on a label, which stands beside its pattern: "comb out", "clip off", "pelt stays"; `p` has a mat.
[[nodiscard]] std::string mat_label(const pictured_place& p);
/// "round the lump"; empty where there is nothing to go around.
[[nodiscard]] std::string round_words(const pictured_place& p);
/// "from the left".
[[nodiscard]] std::string view_title(drawn_side s);
/// What the outline is worth.
[[nodiscard]] std::string map_words();
/// What a picture says, for who can't see it: "13 mm: neck, back. leave: muzzle."
[[nodiscard]] std::string view_words(const picture_request& p, const std::vector<place>& shown,
                                     const body& b);

}  // namespace pelage::io
