// Private to lib: elements of a picture as SVG text, and what all its views are styled with.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/answers/picture.hpp>
#include <pelage/trade/outline.hpp>

namespace pelage::io {

/// A number of the drawing, whole.
[[nodiscard]] std::string whole(double v);
/// "M12 40C...": closed with Z if asked.
[[nodiscard]] std::string path_data(const drawn_path& p, bool closed);
[[nodiscard]] std::string path_data(const std::vector<drawn_path>& all, bool closed);
/// A path of a class of the style.
[[nodiscard]] std::string path_of(std::string_view shown_by, const std::string& data);
/// A text with its middle there.
[[nodiscard]] std::string text_at(std::string_view shown_by, double x, double y,
                                  std::string_view text);

/// An arrow about its middle, over most of `size`: along `way`, which may have any length over 0. `head`: how
/// long that is.
[[nodiscard]] std::string arrow_data(const drawn_point& middle, const drawn_point& way, double size,
                                     double head);

/// Style and patterns; once a page. Lengths have the colours of the scale on a screen and its hatchings on
/// paper; nothing else has a colour.
[[nodiscard]] std::string picture_style(const outline& o);
/// The class of a shade.
[[nodiscard]] std::string shade_class(std::size_t shade);

/// Which signs a picture has, so that its key explains those.
struct signs_used {
    bool length = false;   ///< of the scale
    bool left = false;     ///< left alone
    bool ask = false;      ///< its owner is asked first
    bool sore = false;     ///< not touched
    bool beside = false;   ///< an edge towards that
    bool carded = false;   ///< dead hair taken out
    bool combed = false;   ///< a mat combed out
    bool clipped = false;  ///< a mat clipped off
    bool mat = false;      ///< a mat with which nothing is done
    bool blended = false;  ///< a blend
    bool line = false;     ///< a set line
    bool stroke = false;   ///< the way of the clipper
    bool round = false;    ///< a lump or a scab
    bool tender = false;   ///< a sensitive place
    bool differs = false;  ///< otherwise on the picture beside
    bool alike = false;    ///< the same there
    bool later = false;    ///< another day's

    /// All of them.
    [[nodiscard]] static signs_used all() {
        return {true, true, true, true, true, true, true,  true,
                true, true, true, true, true, true, false, false};
    }
};

/// The sign of hurt skin about a point.
[[nodiscard]] std::string warning_at(const drawn_point& p);

/// The sign of a place that the dog hates to have touched.
[[nodiscard]] std::string tender_at(const drawn_point& p);

/// The key to the colours; `note` stands below it.
[[nodiscard]] picture_part key_of(const outline& o, const signs_used& used, length_unit u,
                                  const std::string& note);

}  // namespace pelage::io
