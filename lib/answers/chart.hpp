// Private to lib: a drawing on which something is measured off, piece by piece; every text on it is kept with
// its box, so that a test can see that none covers another.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include <pelage/answers/picture.hpp>

#include "answers/picture_labels.hpp"

namespace pelage::io {

/// Style and pattern of charts, beside those of all pictures (picture_style).
[[nodiscard]] std::string chart_style();

/// How wide a chart is: on a telephone its names are then as large as any text.
inline constexpr double chart_width = 800.0;

/// On which side of its point a text stands.
enum class stands { left, middle, right };

/// A drawing that grows.
class chart {
  public:
    /// A text of name_size, bold ones of figure_size; `y` is its middle.
    void text(double x, double y, std::string_view text, stands how = stands::left,
              bool bold = false);
    /// Its box, not yet written.
    [[nodiscard]] static text_box box_of(double x, double y, std::string_view text, stands how,
                                         bool bold);
    /// Whether it would cover what stands there.
    [[nodiscard]] bool covers(const text_box& b) const;
    /// A path of a class of the style.
    void path(std::string_view shown_by, const std::string& data);
    /// Straight from one point to another.
    void line(std::string_view shown_by, drawn_point from, drawn_point to);
    /// A box, its corners rounded by so much.
    void rect(std::string_view shown_by, const text_box& b, double round = 0.0);
    void dot(std::string_view shown_by, double x, double y, double radius);
    /// What is drawn already, without a text.
    void add(const std::string& drawn) { out_ += drawn; }
    /// What `draw` draws is cut off at the edge of the box.
    template <class Draw>
    void within(const text_box& b, Draw draw) {
        open_window(b);
        draw();
        out_ += "</svg>\n";
    }

    /// All of it, so high. `words` say the same.
    [[nodiscard]] picture_part finish(std::string title, std::string words, double height,
                                      double width = chart_width);

  private:
    void open_window(const text_box& b);

    std::string out_;
    std::vector<text_box> texts_;
};

/// Lengths along a line, from `from` on the point `at`: as they are, or by their square roots, so that short ones
/// stand apart and long ones, too.
struct length_axis {
    double at = 0.0;
    double reach = 1.0;  ///< how far `to` is from there; below 0: to the left, or upward
    double from = 0.0;   ///< mm
    double to = 1.0;
    bool by_root = false;
    [[nodiscard]] double of(double mm) const;
    [[nodiscard]] double of(const length& l) const { return of(in_mm(l)); }
};

/// The scale of shades beside an axis that runs to the right (or upward): a strip so thick.
void add_shades(chart& to, const outline& o, const length_axis& a, double beside, double thick,
                bool upright);

/// What signs mean, in rows from the left, each behind a box of 56 by 36 about (x, y).
class sign_key {
  public:
    sign_key(chart& to, double top, double width = chart_width)
        : to_(to), y_(top + 20.0), width_(width) {}
    template <class Sign>
    void add(std::string_view text, Sign sign) {
        const double wide = 70.0 + text_width(text, name_size, false) + 30.0;
        if (x_ > first && x_ + wide > width_) {
            x_ = first;
            y_ += 44.0;
        }
        sign(x_, y_);
        to_.text(x_ + 68.0, y_, text);
        x_ += wide;
    }
    [[nodiscard]] double bottom() const { return y_ + 30.0; }

  private:
    static constexpr double first = 24.0;
    chart& to_;
    double x_ = first;
    double y_;
    double width_;
};

/// A text in lines no wider than `most`.
[[nodiscard]] std::vector<std::string> lines_within(std::string_view text, double most, double size,
                                                    bool bold);

}  // namespace pelage::io
