// The outline of a dog for pictures: where each place lies, drawn by hand; nothing in it is measured.
#pragma once

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>
#include <pelage/base/units.hpp>
#include <pelage/trade/zone.hpp>

namespace pelage {

/// A point or a way on a drawing: x to the right, y down, in units of the drawing, of which a square dog is
/// 460 high at its withers.
struct drawn_point {
    double x = 0.0;  ///< to the right
    double y = 0.0;  ///< down
    friend bool operator==(const drawn_point&, const drawn_point&) = default;
};

/// The point as far below the line through the origin as it is above.
[[nodiscard]] inline drawn_point mirror_y(const drawn_point& p) {
    return {p.x, -p.y};
}

/// A piece of a smooth line: a cubic Bezier curve with its two inner points.
struct drawn_curve {
    drawn_point from;  ///< its beginning
    drawn_point out;   ///< towards which it leaves
    drawn_point in;    ///< from which it arrives
    drawn_point to;    ///< its end
    friend bool operator==(const drawn_curve&, const drawn_curve&) = default;
};

/// Curves each of which begins where the one before it ends; closed where the last ends at the first.
using drawn_path = std::vector<drawn_curve>;

// --- the data, as reference/outline.toml has it ------------------------------------------------------

/// A point with its name, by which lines and rings go through it.
struct outline_point {
    std::string name;  ///< as lines name it
    drawn_point at;    ///< where it is
};

/// A zone of a piece: from point to point along the lines, and from the last back to the first.
struct outline_zone {
    std::size_t zone = 0;           ///< index into body::zones
    std::vector<std::string> ring;  ///< names of points
    bool half = false;              ///< of the view from below: its mirror image closes it
    drawn_point stroke;             ///< which way the clipper goes with the lay; any length over 0
};

/// What makes the drawing a dog and is no place: an eye, a nose, the line of the mouth.
struct outline_mark {
    std::vector<std::string> points;  ///< one: a dot
    double size = 0.0;                ///< of a dot: half its width
    bool filled = false;              ///< else a line
    bool shape = false;               ///< of the view from below: its mirror image closes it
    std::optional<std::size_t>
        zone;          ///< shown only where that zone is enlarged: index into body::zones
    std::string says;  ///< what it is called there
};

/// A part of the drawing of which one is chosen.
enum class piece_of { trunk, head, ears, tail, below };
inline constexpr std::array<std::string_view, 5> piece_names{"trunk", "head", "ears", "tail",
                                                             "below"};
struct outline_piece {
    std::string id;                               ///< as looks name it
    piece_of of = piece_of::trunk;                ///< which part it is
    std::vector<outline_point> points;            ///< in its own frame; the trunk's are the build's
    std::vector<std::vector<std::string>> lines;  ///< smooth from the first point to the last
    std::vector<outline_zone> zones;              ///< drawn on it
    std::vector<outline_mark> marks;              ///< drawn on it
};

/// The proportions of a dog.
struct outline_build {
    std::string id;                     ///< as looks name it
    std::vector<outline_point> points;  ///< of the trunk
    drawn_point head_at;                ///< where the occiput is
    double head_size = 1.0;             ///< a factor
    double head_turn = 0.0;             ///< degrees, with the clock
    drawn_point below;                  ///< factors along and across, seen from below
    double far_fore = 0.0;  ///< how far the far forefoot stands to the right of the near one
    double far_hind = 0.0;  ///< likewise of the far hind foot
};

/// A dog as it is drawn: ids of a build, and of pieces for ears and tail.
struct dog_look {
    std::string build;  ///< id
    std::string ears;   ///< id of a piece
    std::string tail;   ///< id of a piece
    friend bool operator==(const dog_look&, const dog_look&) = default;
};

/// The dogs that look like it.
struct outline_look {
    dog_look is;                      ///< how they look
    std::vector<std::string> breeds;  ///< ids
    evidence why;                     ///< how it is known
};

/// A step of the scale of lengths.
struct shade {
    std::string colour;           ///< sRGB: "#75a587"
    std::optional<length> below;  ///< it ends there; none: it is the last
    evidence why;                 ///< how it is known
};
/// Everything a dog is drawn from.
struct outline {
    std::vector<outline_build> builds;  ///< proportions
    std::vector<outline_piece> pieces;  ///< of which dogs are put together
    std::vector<outline_look> looks;    ///< the first is any dog's of which no breed is known
    std::vector<shade> shades;          ///< from short to long
};

/// How a dog of that breed looks; of none, or of one that isn't listed, the first look.
[[nodiscard]] const dog_look& look_of(const outline& o, std::string_view breed);

/// The index of the shade of a length.
[[nodiscard]] std::size_t shade_of(const outline& o, const length& l);

/// The smooth line through points: a centripetal Catmull-Rom spline in Bezier form, so that it neither loops
/// nor overshoots between uneven points (Yuksel, Schaefer & Keyser 2011). With `mirrored`, a line that
/// begins or ends on the axis y = 0 meets its mirror image there without a corner.
[[nodiscard]] drawn_path smooth(const std::vector<drawn_point>& through, bool mirrored = false);
/// The same the other way round.
[[nodiscard]] drawn_path backwards(const drawn_path& p);
/// Its points, `each` of each curve, the end of the last left out.
[[nodiscard]] std::vector<drawn_point> flattened(const drawn_path& p, int each = 8);

// --- the drawing made of it ----------------------------------------------------------------------------

enum class drawn_side { left, right, below };

/// A place in a view.
struct drawn_area {
    place at;                          ///< which place
    bool home = true;                  ///< false: it is shown again, and at home in another view
    std::vector<drawn_path> rings;     ///< around it
    std::vector<drawn_point> strokes;  ///< of each ring
};

/// What is drawn besides places.
struct drawn_mark {
    drawn_path path;                    ///< empty: a dot
    drawn_point at;                     ///< of a dot
    double size = 0.0;                  ///< of a dot: half its width
    bool filled = false;                ///< else a line
    std::optional<std::size_t> zone{};  ///< shown only where that zone is enlarged
    std::string says{};                 ///< what it is called there
};

/// A dog from one side.
struct drawn_view {
    drawn_side from = drawn_side::left;  ///< seen from there
    std::vector<drawn_area> areas;       ///< in the order of the body's zones; left before right
    std::vector<drawn_path> far;         ///< the far legs, behind all
    std::vector<drawn_path> ground;      ///< from below: the dog on which the places lie
    std::vector<drawn_path> edge;        ///< its outer line, in pieces
    std::vector<drawn_mark> marks;       ///< eyes, nose, mouth
};

/// The dog from the left, the right and below. Every place of the body is at home in one of them, once.
/// Throws error(unknown) where the outline has no such build, ears or tail, error(internal) where a ring
/// can't be followed (the reader refuses both).
[[nodiscard]] std::vector<drawn_view> views_of(const outline& o, const dog_look& look,
                                               const body& b);

/// Where two areas of a view meet: the curves they share, as the first has them.
[[nodiscard]] std::vector<drawn_path> shared_edge(const drawn_area& a, const drawn_area& b);

}  // namespace pelage
