// The dog drawn, with what is left of its coat: pictures as SVG.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/base/length_unit.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/trade/finding.hpp>
#include <pelage/trade/outline.hpp>

namespace pelage::io {

/// What is shown of a place.
enum class shown_as {
    unsaid,    ///< nothing: paper
    cut,       ///< a length
    left,      ///< it is left alone
    skin,      ///< it is left alone for its skin
    not_done,  ///< what was asked can't be done
    vet,       ///< a veterinarian's
    ask        ///< its owner is asked first
};

struct pictured_place {
    place at;  ///< one side of what is paired
    shown_as as = shown_as::unsaid;
    std::optional<length> leaves{};  ///< of `cut`
    std::optional<mat_grade> mat{};
    bool combed_out = false;            ///< the mat is combed out first
    bool clipped_off = false;           ///< the mat is clipped off
    std::optional<direction> stroke{};  ///< of clippers
};

/// A step between two neighbours.
struct pictured_seam {
    place one;
    place other;
    bool blended = true;  ///< otherwise the trade sets a line there
};

/// A picture before it is drawn; it refers to nothing.
struct picture_request {
    std::string title{};
    std::vector<std::string> alerts{};  ///< what must be known first
    dog_look look{};
    std::vector<pictured_place> places{};
    std::vector<pictured_seam> seams{};
    length_unit units = length_unit::mm;
};

/// What of a plan is pictured; its dog looks as its breed does, where it is of one.
[[nodiscard]] picture_request picture_of(const groom& g, const plan_request& r, const outline& o,
                                         length_unit u);

/// Where a text stands in a picture, in units of its drawing; reckoned wide.
struct text_box {
    double left = 0.0;
    double top = 0.0;
    double width = 0.0;
    double height = 0.0;
    std::string text{};
};

/// One view, or the key to the colours.
struct picture_part {
    std::string title{};  ///< "from the left"
    std::string words{};  ///< the same for who can't see it
    double width = 0.0;
    double height = 0.0;
    std::string drawn{};            ///< SVG without its outermost element
    std::vector<text_box> texts{};  ///< labels; none overlaps another
};

/// Of a dog, or of something measured.
struct dog_picture {
    std::vector<picture_part> parts{};
    std::string title{};
    std::vector<std::string> alerts{};
    std::string style{};  ///< SVG: style and patterns, once a page
    bool chart = false;   ///< on a page no wider than text reads well
};

[[nodiscard]] dog_picture picture_of(const picture_request& p, const outline& o, const body& b);

/// As one file: everything escaped, no script, nothing from elsewhere; dark where the screen is, hatched and
/// black on white where it is printed.
[[nodiscard]] std::string svg_of(const dog_picture& p);

/// As drawings of a page, one a view and one for the key.
[[nodiscard]] std::vector<drawing> drawings_of(const dog_picture& p);

}  // namespace pelage::io
