// The ladder of a kit on one axis of lengths.
#include <algorithm>
#include <array>
#include <cmath>

#include <pelage/answers/illustrated.hpp>

#include "answers/chart.hpp"
#include "answers/ladder_rows.hpp"
#include "answers/picture_svg.hpp"

namespace pelage::io {

namespace {

constexpr double edge = 20.0;  ///< around the drawing
constexpr double row_high = 38.0;
constexpr double strip_top = 82.0;  ///< of the shades
constexpr double strip_high = 18.0;

std::string axis_figure(const length& l, length_unit u) {
    return u == length_unit::mm ? number(l) : fraction_of_inch(l);
}

class ladder_drawing {
  public:
    ladder_drawing(const ladder& l, const lookup_request& r, const outline& o, length_unit u)
        : ladder_(l),
          outline_(o),
          units_(u),
          rows_(ladder_rows_of(l, r, u)),
          single_(asks_one_way(r, l)),
          there_(!r.where.empty()) {}

    [[nodiscard]] picture_part run() {
        lay_columns();
        const double targets = strip_top + strip_high + 24.0;
        const double labels_end = target_labels(targets);
        const double together = labels_end + row_high / 2.0;
        const double first = together + row_high * 1.4;
        const double bottom = first + row_high * (static_cast<double>(rows_.size()) - 0.5);
        head(bottom);
        all_targets(targets, bottom);
        all_together(together);
        double y = first;
        for (const ladder_row& row : rows_) {
            add(row, y);
            y += row_high;
        }
        const double height = key(bottom + 14.0);
        return sheet_.finish("ladder", words_ + targets_words(ladder_, units_), height, width_);
    }

  private:
    /// Names on the left, figures on the right, the axis between them.
    void lay_columns() {
        double names = text_width("sheets ask", name_size, false);
        double high = 0.0;
        for (const ladder_row& row : rows_) {
            names = std::max(names, text_width(name_of(row), name_size, false));
            const double wide =
                text_width(axis_figure(row.one->leaves.best, units_), name_size, false);
            figures_ = std::max(figures_, wide + 22.0);
        }
        for (const rung& g : ladder_.rungs) {
            high = std::max(high, in_mm(g.leaves.high));
        }
        for (const ladder_target& t : ladder_.targets) {
            high = std::max(high, in_mm(t.wanted));
        }
        const double left = edge + names + 26.0;
        const double right = figures_ * (single_ ? 1.0 : 2.0) + edge;
        constexpr double least = 340.0;  // of the axis
        width_ = std::max(chart_width, left + least + right);
        axis_ = {left, width_ - left - right - 14.0, 0.0, high * 1.06, true};
    }

    [[nodiscard]] static std::string name_of(const ladder_row& row) {
        return row.what + (row.one->out ? ", out" : "");
    }

    void head(double bottom) {
        sheet_.text(axis_.at + axis_.reach / 2.0, 24.0,
                    units_ == length_unit::mm ? "length left, in mm" : "length left, in inches",
                    stands::middle);
        constexpr std::array<double, 18> round_mm{0.1, 0.2, 0.5, 1,  2,  3,   5,   7,   10,
                                                  15,  20,  30,  50, 70, 100, 150, 200, 300};
        constexpr std::array<double, 13> round_in{1.0 / 128, 1.0 / 64, 1.0 / 32, 1.0 / 16, 1.0 / 8,
                                                  1.0 / 4,   1.0 / 2,  1,        1.5,      2,
                                                  3,         5,        10};
        const auto tick = [&](const length& l) {
            if (in_mm(l) < axis_.from || in_mm(l) > axis_.to) {
                return;
            }
            const double x = axis_.of(l);
            sheet_.line("pd-gr", {x, strip_top + strip_high}, {x, bottom});
            const std::string text = axis_figure(l, units_);
            // a letter's room on either side, or two figures read as one
            if (!sheet_.covers(chart::box_of(x, 60.0, "0" + text + "0", stands::middle, false))) {
                sheet_.text(x, 60.0, text, stands::middle);
            }
        };
        for (const double v : round_mm) {
            if (units_ == length_unit::mm) {
                tick(mm(v));
            }
        }
        for (const double v : round_in) {
            if (units_ != length_unit::mm) {
                tick(mm(25.4 * v));
            }
        }
        add_shades(sheet_, outline_, axis_, strip_top, strip_high, false);
        if (!single_) {
            sheet_.dot("pd-in", width_ - edge - figures_ * 1.5 + 8.0, strip_top + 9.0, 9.0);
            diamond(width_ - edge - figures_ * 0.5 + 8.0, strip_top + 9.0);
        }
    }

    /// Where the figures of lengths that nothing leaves stand below their signs: one under another where
    /// they are near. The end of the last row.
    double target_labels(double y) {
        std::vector<text_box> taken;
        double end = ladder_.targets.empty() ? strip_top + strip_high : y + 18.0;
        for (const ladder_target& t : ladder_.targets) {
            if (t.met) {
                continue;
            }
            double at = y + 36.0;
            const auto box = [&] {
                text_box b = chart::box_of(axis_.of(t.wanted), at, axis_figure(t.wanted, units_),
                                           stands::middle, false);
                b.left -= 6.0;
                b.width += 12.0;
                return b;
            };
            while (std::any_of(taken.begin(), taken.end(),
                               [&](const text_box& other) { return overlap(other, box()); })) {
                at += 32.0;
            }
            taken.push_back(box());
            label_at_.push_back(at);
            end = std::max(end, at + 18.0);
        }
        return end;
    }

    void all_targets(double y, double bottom) {
        if (ladder_.targets.empty()) {
            return;
        }
        sheet_.text(edge, y, "sheets ask");
        std::size_t unmet = 0;
        for (const ladder_target& t : ladder_.targets) {
            if (!t.met) {
                const double x = axis_.of(t.wanted);
                sheet_.line("pd-da", {x, label_at_[unmet++] + 18.0}, {x, bottom});
            }
        }
        unmet = 0;
        for (const ladder_target& t : ladder_.targets) {
            const double x = axis_.of(t.wanted);
            pointer(t.met ? "pd-in" : "pd-ho", x, y);
            if (!t.met) {
                const double at = label_at_[unmet++];
                const text_box b =
                    chart::box_of(x, at, axis_figure(t.wanted, units_), stands::middle, false);
                sheet_.rect("pd-cl", b);
                sheet_.text(x, at, axis_figure(t.wanted, units_), stands::middle);
            }
        }
    }

    void pointer(const char* shown_by, double x, double y) {
        sheet_.path(shown_by, "M" + whole(x - 5.0) + " " + whole(y - 11.0) + "h10l-5 24Z");
    }
    void diamond(double x, double y) {
        sheet_.path("pd-ho", "M" + whole(x) + " " + whole(y - 10.0) + "l10 10l-10 10l-10 -10Z");
    }
    void cross_at(double x, double y) {
        sheet_.path("pd-ln", "M" + whole(x - 8.0) + " " + whole(y - 8.0) + "l16 16m-16 0l16 -16");
    }

    /// What of the axis the kit covers: what stays empty is a gap.
    void all_together(double y) {
        sheet_.text(edge, y, "all together");
        for (const rung& g : ladder_.rungs) {
            if (!g.out && !g.why_not) {
                const double from = axis_.of(g.leaves.low);
                const double to = axis_.of(g.leaves.high);
                sheet_.rect("pd-in", {from - 3.0, y - 11.0, to - from + 6.0, 22.0, {}});
            }
        }
        sheet_.line("pd-ru", {edge, y + row_high * 0.7}, {width_ - edge, y + row_high * 0.7});
    }

    void add(const ladder_row& row, double y) {
        sheet_.text(edge, y, name_of(row));
        const double off = row.against == nullptr || ladder_.one_way ? 0.0 : 8.0;
        add(*row.one, y - off, width_ - edge - (single_ ? 0.0 : figures_), y);
        if (row.against != nullptr && !ladder_.one_way) {
            add(*row.against, y + off, width_ - edge, y);
        }
        words_ += row.what + " " + show(row.one->leaves, units_) +
                  (off > 0.0 ? ", against the lay " + show(row.against->leaves, units_) : "") +
                  "; ";
    }

    void add(const rung& g, double y, double figure_at, double row) {
        const double at = axis_.of(g.leaves.best);
        sheet_.line(g.out ? "pd-da" : "pd-ru", {axis_.of(g.leaves.low), y},
                    {axis_.of(g.leaves.high), y});
        if (g.why_not) {
            cross_at(at, y);
        } else if (g.how.way == direction::against_lay && !ladder_.one_way) {
            diamond(at, y);
        } else {
            sheet_.dot("pd-in", at, y, 8.0);
        }
        sheet_.text(figure_at, row, axis_figure(g.leaves.best, units_), stands::right);
        no_ = no_ || g.why_not.has_value();
        with_ = with_ || g.how.way == direction::with_lay || ladder_.one_way;
        against_ = against_ || (g.how.way == direction::against_lay && !ladder_.one_way);
    }

    double key(double top) {
        sign_key k(sheet_, top, width_);
        if (with_) {
            k.add(ladder_.one_way ? "either way" : "with the lay",
                  [&](double x, double y) { sheet_.dot("pd-in", x + 30.0, y, 8.0); });
        }
        if (against_) {
            k.add("against the lay", [&](double x, double y) { diamond(x + 30.0, y); });
        }
        k.add("may lie between", [&](double x, double y) {
            sheet_.line("pd-ru", {x + 4.0, y}, {x + 56.0, y});
        });
        k.add("the kit leaves it", [&](double x, double y) {
            sheet_.rect("pd-in", {x + 4.0, y - 11.0, 52.0, 22.0, {}});
        });
        if (std::any_of(rows_.begin(), rows_.end(),
                        [](const ladder_row& row) { return row.one->out; })) {
            k.add("out of the kit", [&](double x, double y) {
                sheet_.line("pd-da", {x + 4.0, y}, {x + 56.0, y});
            });
        }
        if (no_) {
            k.add(there_ ? "not there" : "not at all",
                  [&](double x, double y) { cross_at(x + 30.0, y); });
        }
        const auto any = [&](bool met) {
            return std::any_of(ladder_.targets.begin(), ladder_.targets.end(),
                               [&](const ladder_target& t) { return t.met == met; });
        };
        if (any(true)) {
            k.add("a sheet asks it", [&](double x, double y) { pointer("pd-in", x + 30.0, y); });
        }
        if (any(false)) {
            k.add("asked, and not left everywhere",
                  [&](double x, double y) { pointer("pd-ho", x + 30.0, y); });
        }
        return k.bottom();
    }

    const ladder& ladder_;
    const outline& outline_;
    length_unit units_;
    std::vector<ladder_row> rows_;
    bool single_;
    bool there_;
    chart sheet_;
    length_axis axis_;
    double width_ = chart_width;
    double figures_ = 0.0;          ///< how wide a column of figures is
    std::vector<double> label_at_;  ///< of targets that aren't met, in their order
    std::string words_;
    bool no_ = false;
    bool with_ = false;
    bool against_ = false;
};

}  // namespace

std::optional<dog_picture> picture_of(const ladder& l, const lookup_request& r, const outline& o,
                                      length_unit u) {
    if (l.rungs.empty()) {
        return std::nullopt;
    }
    dog_picture out;
    out.title = "Ladder on a " + std::string(name(l.coat)) + " coat, " +
                (r.tools.title.empty() ? "the kit" : r.tools.title);
    if (const std::string beneath = one_beneath(l); !beneath.empty()) {
        out.title += ", combs over blade " + beneath;
    }
    out.style = picture_style(o) + chart_style();
    out.chart = true;
    out.parts.push_back(ladder_drawing(l, r, o, u).run());
    return out;
}

}  // namespace pelage::io
