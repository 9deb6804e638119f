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
    carded,    ///< dead hair is taken out by a tool, and no length is cut
    stripped,  ///< likewise by hand
    left,      ///< it is left alone
    skin,      ///< it is left alone for its skin
    not_done,  ///< what was asked can't be done
    vet,       ///< a veterinarian's
    ask        ///< its owner is asked first
};

/// A place of the dog as it is drawn.
struct pictured_place {
    place at;                           ///< one side of what is paired
    shown_as as = shown_as::unsaid;     ///< what is done there
    std::optional<length> leaves{};     ///< of `cut`
    std::optional<mat_grade> mat{};     ///< found there
    bool combed_out = false;            ///< the mat is combed out first
    bool clipped_off = false;           ///< the mat is clipped off
    std::optional<direction> stroke{};  ///< of clippers
    std::vector<place> beside_sore{};  ///< hurt places: its edge towards them isn't touched, either
    std::optional<skin_state> round{};  ///< a lump or a scab there, gone around
    std::string carded_with{};          ///< of `carded`: the tool; empty: not known
    bool tender = false;                ///< the dog hates to have it touched
    bool differs = false;               ///< another picture beside it has it otherwise
    bool alike = false;                 ///< ... or, where nearly all differ, the same
    bool later = false;                 ///< another day's: nothing is done to it today
    bool noted = false;                 ///< the sheet says more of it, which the text tells
};

/// A step between two neighbours.
struct pictured_seam {
    place one;            ///< a place
    place other;          ///< its neighbour
    bool blended = true;  ///< otherwise the trade sets a line there
};

/// A picture before it is drawn; it refers to nothing.
struct picture_request {
    std::string title{};                   ///< stands above
    std::vector<std::string> alerts{};     ///< what must be known first
    std::string stop{};                    ///< above even those; empty: nothing stops it
    std::string when{};                    ///< "white: another day"; empty: all of it is today's
    dog_look look{};                       ///< which dog is drawn
    std::vector<pictured_place> places{};  ///< each once
    std::vector<pictured_seam> seams{};    ///< where neighbours end at different lengths
    length_unit units = length_unit::mm;   ///< in which lengths are told
};

/// What of a plan is pictured; its dog looks as its breed does, where it is of one.
[[nodiscard]] picture_request picture_of(const groom& g, const plan_request& r, const outline& o,
                                         length_unit u);

/// Where a text stands in a picture, in units of its drawing; reckoned wide.
struct text_box {
    double left = 0.0;    ///< from the left edge
    double top = 0.0;     ///< from the upper edge
    double width = 0.0;   ///< in units of the drawing
    double height = 0.0;  ///< in units of the drawing
    std::string text{};   ///< the words
};

/// One view, or the key to the colours.
struct picture_part {
    std::string title{};            ///< "from the left"
    std::string words{};            ///< the same for who can't see it
    double width = 0.0;             ///< in units of the drawing
    double height = 0.0;            ///< in units of the drawing
    std::string drawn{};            ///< SVG without its outermost element
    std::vector<text_box> texts{};  ///< labels; none overlaps another
};

/// A picture, drawn: of a dog, or of something measured.
struct dog_picture {
    std::vector<picture_part> parts{};  ///< in their order
    std::string title{};                ///< stands above
    std::vector<std::string> alerts{};  ///< what must be known first
    std::string stop{};                 ///< above even those; empty: nothing stops it
    std::string when{};                 ///< below each view; empty: all of it is today's
    std::string style{};                ///< SVG: style and patterns, once a page
    bool chart = false;                 ///< on a page no wider than text reads well
};

/// `both_sides`: otherwise from the left and from below alone.
[[nodiscard]] dog_picture picture_of(const picture_request& p, const outline& o, const body& b,
                                     bool both_sides = true);

/// As one file: everything escaped, no script, nothing from elsewhere; dark where the screen is, hatched and
/// black on white where it is printed.
/// `card` stands below the views, a line a line, as it stands in text.
[[nodiscard]] std::string svg_of(const dog_picture& p, const std::vector<std::string>& card = {});

/// As drawings of a page, one a view and one for the key; the style is in the first.
[[nodiscard]] std::vector<drawing> drawings_of(const dog_picture& p);
/// Those of a dog seen from the left and from below alone, without style and key, which another on the page has.
[[nodiscard]] std::vector<drawing> more_drawings_of(const dog_picture& p);
/// What the colours and signs of pictures mean, all of them, with the style.
[[nodiscard]] drawing key_drawing(const outline& o, length_unit u);

}  // namespace pelage::io
