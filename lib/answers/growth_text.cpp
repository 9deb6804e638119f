#include "answers/growth_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "answers/layout.hpp"
#include "answers/words/dates.hpp"
#include "answers/words/growth.hpp"

namespace pelage::io {

namespace {

constexpr std::size_t chart_rows = 8;
constexpr std::size_t least_columns = 24;
constexpr std::size_t most_columns = 66;

/// How long the hair of a curve is on a day; as on its last if that is before.
double length_on(const std::vector<grown_to>& curve, double at) {
    for (std::size_t i = 1; i < curve.size(); ++i) {
        const double to = in_days(curve[i].at);
        if (to >= at) {
            const double from = in_days(curve[i - 1].at);
            const double share = to > from ? (at - from) / (to - from) : 1.0;
            return in_mm(curve[i - 1].is) + share * in_mm(curve[i].is - curve[i - 1].is);
        }
    }
    return in_mm(curve.back().is);
}

class plot {
  public:
    plot(const growth_course& c, const forecast& f, const print_options& o)
        : part_(c.parts.front()), shown_(in_days(c.shown)), print_(o) {
        highest_ = std::max(length_on(part_.curves.front(), shown_),
                            part_.prone ? in_mm(*part_.prone) : 0.0);
        for (std::size_t row = 0; row < chart_rows; ++row) {
            labels_[row] = label_of(row);
            label_wide_ = std::max(label_wide_, columns(labels_[row]));
        }
        const std::size_t beside = label_wide_ + 4;
        wide_ = o.width > beside ? std::min(most_columns, o.width - beside) : 0;
        back_ = column_of(in_days(come_by_day(f.when.next_visit, o)));
    }

    [[nodiscard]] bool fits() const { return wide_ >= least_columns; }

    [[nodiscard]] std::string drawn() const {
        std::vector<std::string> lines(chart_rows, std::string(wide_, ' '));
        const auto put = [&](std::size_t row, std::size_t column, char mark) {
            lines[row][column] = mark;
        };
        for (std::size_t x = 0; x < wide_; ++x) {
            const double at = (static_cast<double>(x) + 0.5) * shown_ / static_cast<double>(wide_);
            if (part_.prone) {
                put(row_of(in_mm(*part_.prone)), x, '-');
            }
            const std::size_t high = row_of(length_on(part_.curves.front(), at));
            for (std::size_t row = high; row <= row_of(length_on(part_.curves.back(), at)); ++row) {
                put(row, x, ':');
            }
            put(row_of(length_on(part_.curves[1], at)), x, 'o');
        }
        std::string out;
        for (std::size_t row = 0; row < chart_rows; ++row) {
            char& at_back = lines[row][back_];
            at_back = at_back == ' ' || at_back == '-' ? '|' : at_back;
            const std::string text =
                "  " + padded(labels_[row], label_wide_, true) + " |" + lines[row];
            out += text.substr(0, text.find_last_not_of(' ') + 1) + "\n";
        }
        return out + axis();
    }

  private:
    [[nodiscard]] std::size_t row_of(double mm) const {
        const double share = std::clamp(mm / highest_, 0.0, 1.0);
        return chart_rows - 1 - static_cast<std::size_t>(std::lround(share * (chart_rows - 1)));
    }
    [[nodiscard]] std::size_t column_of(double at) const {
        const double x = at / shown_ * static_cast<double>(wide_);
        return std::min(wide_ - 1, static_cast<std::size_t>(std::max(0.0, x)));
    }
    /// A length beside the rows of what is left and of where it mats, and at both ends.
    [[nodiscard]] std::string label_of(std::size_t row) const {
        const auto told = [&](const length& l) { return show(l, print_.units); };
        return part_.prone && row == row_of(in_mm(*part_.prone)) ? told(*part_.prone)
               : row == row_of(in_mm(part_.start))               ? told(part_.start)
               : row == 0                                        ? told(mm(highest_))
                                                                 : "";
    }
    [[nodiscard]] std::string axis() const {
        std::string rule(wide_, '-');
        std::string marks(wide_ + 8, ' ');
        const double step = shown_ > 400.0 ? 56.0 : shown_ > 150.0 ? 28.0 : 14.0;
        std::size_t taken = 0;
        for (double d = 0.0; d < shown_; d += step) {
            const std::size_t x = column_of(d);
            const std::string text = d == 0.0 ? "day 0" : detail::fixed(d, 0);
            if (x < taken || x + text.size() > wide_) {
                continue;
            }
            rule[x] = '+';
            marks.replace(x, text.size(), text);
            taken = x + text.size() + 2;
        }
        const std::string before(label_wide_ + 3, ' ');
        return before + "+" + rule + "\n" + before + " " +
               marks.substr(0, marks.find_last_not_of(' ') + 1) + "\n";
    }

    const growing_part& part_;
    double shown_;
    const print_options& print_;
    double highest_ = 0.0;  ///< mm
    std::array<std::string, chart_rows> labels_{};
    std::size_t label_wide_ = 0;
    std::size_t wide_ = 0;
    std::size_t back_ = 0;
};

}  // namespace

std::string growth_in_text(const growth_course& c, const forecast& f, const plan_request& r,
                           const print_options& o) {
    if (c.parts.empty()) {
        return {};
    }
    const plot p(c, f, o);
    if (!p.fits()) {
        return {};
    }
    const growing_part& part = c.parts.front();
    const std::string where =
        few_places(titles(r.reference.dog_body, part.places),
                   [](const std::string& text) { return columns(text) < 60; });
    return wrapped("", "How it grows: " + where + ", " + part_words(part, o.units), 2, o.width) +
           p.drawn() +
           wrapped("  ",
                   std::string("o 1 in 2, : 8 in 10 such dogs") +
                       (part.prone ? ", - mats from" : "") + ", | " + back_words(f, o),
                   4, o.width);
}

}  // namespace pelage::io
