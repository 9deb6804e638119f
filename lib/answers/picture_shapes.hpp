// Private to lib: shapes on a drawing, and what has room among them.
#pragma once

#include <limits>
#include <optional>
#include <string_view>
#include <vector>

#include <pelage/answers/picture.hpp>
#include <pelage/trade/outline.hpp>

namespace pelage::io {

using polygon = std::vector<drawn_point>;

struct extent {
    double left = std::numeric_limits<double>::max();
    double top = std::numeric_limits<double>::max();
    double right = std::numeric_limits<double>::lowest();
    double bottom = std::numeric_limits<double>::lowest();

    void add(const polygon& p) {
        for (const drawn_point& q : p) {
            left = std::min(left, q.x);
            top = std::min(top, q.y);
            right = std::max(right, q.x);
            bottom = std::max(bottom, q.y);
        }
    }
};

/// How wide a text is at most (units of the drawing) in an ordinary sans-serif font of that size.
[[nodiscard]] double text_width(std::string_view text, double size, bool bold);

[[nodiscard]] bool within(const polygon& p, const drawn_point& at);
[[nodiscard]] bool overlap(const text_box& a, const text_box& b);
[[nodiscard]] text_box around(const drawn_point& middle, double width, double height);
/// The middle of a box of that size within `p` and clear of `taken`, nearest to the middle of `p`; nothing if
/// it doesn't fit.
[[nodiscard]] std::optional<drawn_point> room_in(const polygon& p, double width, double height,
                                                 const std::vector<text_box>& taken);
/// What of a polygon lies in a box: cut at each of its sides in turn (Sutherland & Hodgman 1974).
[[nodiscard]] polygon cut_to(polygon p, const text_box& b);
/// The point of `p` furthest from its edge, on a grid.
/// `off`: points it keeps away from, too.
[[nodiscard]] drawn_point innermost(const polygon& p, const std::vector<drawn_point>& off = {});
/// Whether two straight lines cross; whether one goes through a box.
[[nodiscard]] bool cross(const drawn_point& a, const drawn_point& b, const drawn_point& c,
                         const drawn_point& d);
/// How far a point is from a straight line between two.
[[nodiscard]] double distance(const drawn_point& of, const drawn_point& from,
                              const drawn_point& to);
[[nodiscard]] bool through(const text_box& b, const drawn_point& from, const drawn_point& to);

/// What is solid, in cells, with sums so that a box is asked at once.
class raster {
  public:
    explicit raster(const std::vector<polygon>& solid);
    [[nodiscard]] bool is_free(const text_box& b) const;

  private:
    void fill(const polygon& p, std::vector<int>& full) const;
    [[nodiscard]] int& sum(int x, int y) {
        return sums_[static_cast<std::size_t>(y * (columns_ + 1) + x)];
    }
    [[nodiscard]] int sum(int x, int y) const {
        return sums_[static_cast<std::size_t>(y * (columns_ + 1) + x)];
    }

    double left_ = 0.0;
    double top_ = 0.0;
    int columns_ = 0;
    int rows_ = 0;
    std::vector<int> sums_;
};

}  // namespace pelage::io
