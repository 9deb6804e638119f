// Private to lib: what fills a place besides its colour, as strokes: a pattern of SVG is printed blurred.
#pragma once

#include <string>
#include <vector>

#include "answers/picture_shapes.hpp"

namespace pelage::io {

/// What is drawn all over a place.
enum class filled_with {
    crosses,    ///< a mat that is clipped off
    rings,      ///< a mat that is combed out
    lozenges,   ///< a mat with which nothing is done
    dots,       ///< left alone
    questions,  ///< its owner is asked first
    rakes,      ///< dead hair comes out, no length is cut
    net         ///< hurt skin
};

/// The hatching on paper of the `shade`th of so many: the longer the hair, the more ink, and no two in a row
/// slant alike. It ends short of the edge, so that this stays to be seen. Empty of the shortest.
[[nodiscard]] std::string hatched(std::size_t shade, std::size_t of,
                                  const std::vector<polygon>& all);
/// How that is drawn; on paper alone.
[[nodiscard]] std::string hatching_style(std::size_t shades);

/// Signs over all of it that has room for them.
[[nodiscard]] std::string filled(filled_with what, const std::vector<polygon>& all);

}  // namespace pelage::io
