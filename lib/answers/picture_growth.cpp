// How a coat grows out: a band a part, on one axis of days, and what brushing changes on the same.
#include <algorithm>
#include <cmath>

#include <pelage/answers/illustrated.hpp>

#include "answers/chart.hpp"
#include "answers/picture_svg.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/growth.hpp"

namespace pelage::io {

namespace {

constexpr double plot_left = 122.0;
constexpr double plot_right = 776.0;
constexpr double plot_high = 144.0;
constexpr std::size_t most_parts = 3;

/// The first parts to mat, and of the others the first that was measured in the last one's place.
std::vector<const growing_part*> shown_parts(const growth_course& c) {
    std::vector<const growing_part*> out;
    for (const growing_part& p : c.parts) {
        if (out.size() < most_parts) {
            out.push_back(&p);
        } else if (!p.measured.empty() &&
                   std::none_of(out.begin(), out.end(),
                                [](const growing_part* one) { return !one->measured.empty(); })) {
            out.back() = &p;
        }
    }
    return out;
}

class growth_drawing {
  public:
    growth_drawing(const growth_course& c, const forecast& f, const plan_request& r,
                   const outline& o, const print_options& print)
        : course_(c),
          forecast_(f),
          request_(r),
          outline_(o),
          print_(print),
          parts_(shown_parts(c)) {
        for (const growing_part* p : parts_) {
            highest_ = std::max(highest_, p->prone ? in_mm(p->prone_high) : 0.0);
            highest_ = std::max(highest_, in_mm(at_end(p->curves.front())));
        }
        highest_ *= 1.04;
    }

    [[nodiscard]] picture_part run() {
        const double first_part = head();
        events(first_part + part_high * static_cast<double>(parts_.size()) - 14.0);
        double y = first_part;
        for (const growing_part* p : parts_) {
            add(*p, y);
            y += part_high;
        }
        days_axis(y + 17.0);
        y = later(y + 58.0 + (print_.today ? date_line : 0.0));
        y = forecast_.habits.empty() ? y : habits(y + 16.0);
        return sheet_.finish("growth", words_, key(y + 10.0));
    }

  private:
    static constexpr double line_high = 40.0;  ///< of what stands beside the day to be back by
    static constexpr double part_high = plot_high + 96.0;
    static constexpr double date_line = 36.0;  ///< from a day's number to its date

    [[nodiscard]] double x_of(const days& d) const {
        const double share = in_days(d) / in_days(course_.shown);
        return plot_left + (plot_right - plot_left) * std::clamp(share, 0.0, 1.0);
    }
    /// How long the hair of a curve is on the last day shown.
    [[nodiscard]] length at_end(const std::vector<grown_to>& curve) const {
        for (std::size_t i = 1; i < curve.size(); ++i) {
            if (curve[i].at >= course_.shown) {
                const double over = in_days(curve[i].at - curve[i - 1].at);
                const double share =
                    over > 0.0 ? in_days(course_.shown - curve[i - 1].at) / over : 0.0;
                return curve[i - 1].is + (curve[i].is - curve[i - 1].is) * share;
            }
        }
        return curve.back().is;
    }

    [[nodiscard]] std::vector<std::string> later_lines() const {
        std::vector<place> places;
        for (const growing_part& p : course_.parts) {
            if (std::find(parts_.begin(), parts_.end(), &p) == parts_.end()) {
                places.insert(places.end(), p.places.begin(), p.places.end());
            }
        }
        if (places.empty()) {
            return {};
        }
        const auto names = titles(request_.reference.dog_body, places);
        const bool in_order = parts_.back() == &course_.parts[parts_.size() - 1];
        const double room = 2.0 * (chart_width - 60.0);
        return lines_within((in_order ? "The others mat no sooner: " : "Other parts: ") +
                                few_places(names,
                                           [&](const std::string& text) {
                                               return text_width(text, name_size, false) <
                                                      room - 420.0;
                                           }) +
                                ".",
                            chart_width - 40.0, name_size, false);
    }
    double later(double y) {
        for (const std::string& line : later_lines()) {
            sheet_.text(24.0, y, line);
            y += 32.0;
        }
        return y;
    }

    /// What stands beside the line of the day to be back by: on its right where there is room, however many lines
    /// it needs; else on its left.
    [[nodiscard]] std::vector<std::string> back_lines() const {
        const double x = x_of(come_by_day(forecast_.when.next_visit, print_));
        const double room = std::max(chart_width - x, x) - 24.0;
        return lines_within(back_words(forecast_, print_), room, figure_size, true);
    }
    /// Where the first part begins: below what stands above all.
    [[nodiscard]] double head() const {
        return 62.0 + line_high * static_cast<double>(back_lines().size());
    }

    /// Lines down through all, and what they are above.
    void events(double bottom) {
        const double back = x_of(come_by_day(forecast_.when.next_visit, print_));
        const days full_day = come_by_day(forecast_.when.full_groom, print_);
        const double full = x_of(full_day);
        const bool apart = full - back > 4.0;
        if (apart) {
            sheet_.line("pd-da", {full, 32.0}, {full, bottom});
        }
        sheet_.line("pd-ln", {back, 44.0}, {back, bottom});
        const auto label = [&](double x, double y, const std::string& text, bool bold) {
            const double wide = text_width(text, bold ? figure_size : name_size, bold);
            // beside its line, on the side where there is room; else as far right as it goes
            const bool right_of = x + 10.0 + wide < chart_width - 10.0;
            const bool left_of = x - 10.0 - wide > 10.0;
            const stands how = right_of ? stands::left : stands::right;
            const double at = right_of ? x + 10.0 : left_of ? x - 10.0 : chart_width - 10.0;
            sheet_.rect("pd-cl", chart::box_of(at, y, text, how, bold));
            sheet_.text(at, y, text, how, bold);
        };
        if (apart) {
            label(full, 22.0, "full groom by day " + detail::fixed(in_days(full_day), 0), false);
        }
        double y = 58.0;
        for (const std::string& one : back_lines()) {
            label(back, y, one, true);
            y += line_high;
        }
        words_ += back_words(forecast_, print_) + ". ";
    }

    void add(const growing_part& p, double top) {
        const double bottom = top + 78.0 + plot_high;
        const length_axis y{bottom, -plot_high, 0.0, highest_, false};
        const std::string where =
            few_places(titles(request_.reference.dog_body, p.places), [](const std::string& text) {
                return text_width(text, figure_size, true) < chart_width - 40.0;
            });
        std::string what = part_words(p, print_.units);
        if (text_width(what, name_size, false) > chart_width - 40.0) {
            what = part_words(p, print_.units, false);  // the hatching shows it
        }
        const text_box clear{0.0, top - 4.0, chart_width, 76.0, {}};
        sheet_.rect("pd-cl", clear);
        sheet_.text(24.0, top + 18.0, where, stands::left, true);
        sheet_.text(24.0, top + 56.0, what);
        words_ += where + ": " + what + ". ";
        grid(y, bottom);
        const text_box plot{plot_left, bottom - plot_high, plot_right - plot_left, plot_high, {}};
        if (p.prone) {
            const double high = y.of(p.prone_high);
            sheet_.rect("pd-ba", {plot.left, high, plot.width, y.of(p.prone_low) - high, {}});
            sheet_.line("pd-ru", {plot.left, y.of(*p.prone)}, {plot_right, y.of(*p.prone)});
        }
        sheet_.within(plot, [&] {
            std::string band = "M";
            for (const grown_to& g : p.curves.front()) {
                band += point(g, y) + "L";
            }
            for (auto g = p.curves.back().rbegin(); g != p.curves.back().rend(); ++g) {
                band += point(*g, y) + (g + 1 == p.curves.back().rend() ? "Z" : "L");
            }
            sheet_.path("pd-bn", band);
            std::string middle;
            for (const grown_to& g : p.curves[1]) {
                middle += (middle.empty() ? "M" : "L") + point(g, y);
            }
            sheet_.path("pd-ln", middle);
            for (const measured_growth& m : p.measured) {
                sheet_.dot("pd-ho", x_of(m.after), y.of(m.is), 8.0);
                measured_ = true;
            }
        });
        add_shades(sheet_, outline_, y, plot_left - 12.0, 12.0, true);
        prone_ = prone_ || p.prone.has_value();
    }

    [[nodiscard]] std::string point(const grown_to& g, const length_axis& y) const {
        // beyond the plot, too, so that the last piece keeps its slope
        const double x =
            plot_left + (plot_right - plot_left) * in_days(g.at) / in_days(course_.shown);
        return whole(x) + " " + whole(y.at + y.reach * in_mm(g.is) / highest_);
    }

    void grid(const length_axis& y, double bottom) {
        const bool in_mm_units = print_.units == length_unit::mm;
        const double unit = in_mm_units ? 1.0 : 25.4;
        double step = 0.0;
        for (const double s : in_mm_units ? std::vector{2.0, 5.0, 10.0, 20.0, 50.0, 100.0}
                                          : std::vector{0.125, 0.25, 0.5, 1.0, 2.0, 4.0}) {
            if (step == 0.0 && s * unit > highest_ / 4.5) {
                step = s * unit;
            }
        }
        for (double v = 0.0; v < highest_ && step > 0.0; v += step) {
            sheet_.line("pd-gr", {plot_left, y.of(v)}, {plot_right, y.of(v)});
            const std::string text = v == 0.0      ? (in_mm_units ? "0 mm" : "0 in")
                                     : in_mm_units ? number(mm(v))
                                                   : fraction_of_inch(mm(v));
            const double x = plot_left - 20.0;
            if (!sheet_.covers(chart::box_of(x, y.of(v), text, stands::right, false))) {
                sheet_.text(x, y.of(v), text, stands::right);
            }
        }
        sheet_.line("pd-ru", {plot_left, bottom}, {plot_right, bottom});
    }

    /// Days below all parts.
    void days_axis(double y) {
        const double all = in_days(course_.shown);
        const double step = all > 400.0 ? 56.0 : all > 150.0 ? 28.0 : all > 75.0 ? 14.0 : 7.0;
        sheet_.text(plot_left, y, "today", stands::middle);
        // the day that counts first, with its date: others make way
        const days by = come_by_day(forecast_.when.next_visit, print_);
        day_at(in_days(by), y);
        for (double d = step; d < all; d += step) {
            day_at(d, y);
        }
    }
    /// A day's number and its date below, where there is room for them.
    void day_at(double d, double y) {
        const double x = x_of(day(d));
        const text_box b = chart::box_of(x, y, detail::fixed(d, 0), stands::middle, false);
        if (sheet_.covers(b) || b.left + b.width >= chart_width) {
            return;
        }
        sheet_.rect("pd-cl", b);
        sheet_.text(x, y, detail::fixed(d, 0), stands::middle);
        const std::string on = date_of(d);
        text_box under = chart::box_of(x, y + date_line, on, stands::middle, false);
        under.left -= 7.0;
        under.width += 14.0;
        if (!on.empty() && !sheet_.covers(under) && under.left > 0.0 &&
            under.left + under.width < chart_width) {
            sheet_.text(x, y + date_line, on, stands::middle);
        }
    }
    /// "9 Dec"; empty where no day is known.
    [[nodiscard]] std::string date_of(double d) const {
        if (!print_.today) {
            return {};
        }
        return day_and_month(plus(*print_.today, day(d)));
    }

    double habits(double y) {
        sheet_.text(24.0, y + 18.0, "Brushed to the skin, back by", stands::left, true);
        y += 60.0;
        for (const habit_forecast& h : forecast_.habits) {
            const bool now = counted(h.habit) == counted(request_.patient.brushed);
            const days by = come_by_day(h.when.next_visit, print_);
            const std::string text = habit_words(h.habit) + (now ? ", as now" : "") + ": day " +
                                     detail::fixed(in_days(by), 0);
            sheet_.text(plot_left, y, text);
            sheet_.rect(h.when.fine ? "pd-in" : "pd-ho",
                        {plot_left, y + 17.0, x_of(by) - plot_left, 14.0, {}});
            held_ = held_ || !h.when.fine;
            fine_ = fine_ || h.when.fine;
            words_ += text + "; ";
            y += 56.0;
        }
        return y;
    }

    double key(double top) {
        sign_key k(sheet_, top);
        k.add("1 in 2 such dogs", [&](double x, double y) {
            sheet_.line("pd-ln", {x, y}, {x + 56.0, y});
        });
        k.add("8 in 10 such dogs", [&](double x, double y) {
            sheet_.rect("pd-bn", {x, y - 16.0, 56.0, 32.0, {}});
        });
        if (prone_) {
            k.add("mats from here, 8 in 10 in the hatching", [&](double x, double y) {
                sheet_.rect("pd-ba", {x, y - 16.0, 56.0, 32.0, {}});
                sheet_.line("pd-ru", {x, y}, {x + 56.0, y});
            });
        }
        if (measured_) {
            k.add("measured after earlier grooms",
                  [&](double x, double y) { sheet_.dot("pd-ho", x + 28.0, y, 8.0); });
        }
        if (fine_) {
            k.add("short enough", [&](double x, double y) {
                sheet_.rect("pd-in", {x, y - 7.0, 56.0, 14.0, {}});
            });
        }
        if (held_) {
            k.add("held by brushing alone", [&](double x, double y) {
                sheet_.rect("pd-ho", {x, y - 7.0, 56.0, 14.0, {}});
            });
        }
        return k.bottom();
    }

    const growth_course& course_;
    const forecast& forecast_;
    const plan_request& request_;
    const outline& outline_;
    const print_options& print_;
    std::vector<const growing_part*> parts_;
    double highest_ = 0.0;  ///< mm
    chart sheet_;
    std::string words_;
    bool prone_ = false;
    bool measured_ = false;
    bool held_ = false;
    bool fine_ = false;
};

}  // namespace

std::optional<dog_picture> picture_of(const growth_course& c, const forecast& f,
                                      const plan_request& r, const outline& o,
                                      const print_options& print) {
    if (c.parts.empty()) {
        return std::nullopt;
    }
    dog_picture out;
    out.title = (r.patient.name.empty() ? "A dog" : r.patient.name) + ": how it grows out, in " +
                (print.units == length_unit::mm ? "mm" : "inches");
    out.alerts = titles(r.patient.alerts);
    out.style = picture_style(o) + chart_style();
    out.chart = true;
    out.parts.push_back(growth_drawing(c, f, r, o, print).run());
    return out;
}

}  // namespace pelage::io
