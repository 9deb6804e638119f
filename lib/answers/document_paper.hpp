// Private to lib: how much of a page about one dog a sheet of paper holds.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/document.hpp>

namespace pelage::io {

/// A drawing's own width and height, in units of the drawing; 1 each where it says none.
struct drawn_size {
    double width = 1.0;
    double height = 1.0;
};
[[nodiscard]] drawn_size size_of(const drawing& d);

/// The views of a section in rows of two, as they stand on a page.
[[nodiscard]] std::vector<std::vector<const drawing*>> rows_of(const section& s);
/// The same on a sheet of their own: the first two, of the sides, one below the other.
[[nodiscard]] std::vector<std::vector<const drawing*>> rows_apart(const section& s);
/// How wide the widest of some rows is.
[[nodiscard]] double widest_of(const std::vector<std::vector<const drawing*>>& rows);
/// How wide a row is, in units of the drawing.
[[nodiscard]] double width_of(const std::vector<const drawing*>& row);

/// Whether a section is nothing but drawings.
[[nodiscard]] bool only_drawings(const section& s);

/// How a page is printed, so that it goes over the end of its sheet only where nothing helps.
struct paper_size {
    std::string called;        ///< classes of the style, "" for letters at ease
    double views_share = 1.0;  ///< how much of the sheet's width its views have
    bool own_sheet =
        false;  ///< the views have a sheet of their own, the two sides one below the other
};
/// Reckoned from the letters that stand in a line at most; Letter is the lower sheet, A4 the narrower.
[[nodiscard]] paper_size on_paper_of(const document& d);

}  // namespace pelage::io
