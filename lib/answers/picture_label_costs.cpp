#include "answers/picture_label_costs.hpp"

#include <algorithm>
#include <cmath>

namespace pelage::io {

namespace {

constexpr double label_gap = 5.0;     ///< around a label
constexpr double too_long = 260.0;    ///< a leader so long costs twice its length
constexpr double over_others = 1.5;   ///< a leader over other polygons, of its length there
constexpr double over_end = 2000.0;   ///< and one past the end of another
constexpr double end_size = 13.0;     ///< how near that is
constexpr double over_eye = 900.0;    ///< and one over an eye
constexpr double eye_size = 8.0;      ///< beyond its edge
constexpr double aside = 0.5;         ///< a leader that doesn't go straight up from there
constexpr double not_above = 5000.0;  ///< a label below what has nothing above it

/// Where a line from `to` meets the label's words.
drawn_point side_of(const text_box& b, const std::vector<text_box>& rows, const drawn_point& to) {
    drawn_point best{};
    double least = never;
    for (const text_box& row : rows) {
        const double left = b.left + b.width / 2.0 + row.left;
        const double top = b.top + row.top;
        const drawn_point p{std::clamp(to.x, left, left + row.width),
                            std::clamp(to.y, top, top + row.height)};
        const double far = std::hypot(p.x - to.x, p.y - to.y);
        if (far < least) {
            least = far;
            best = p;
        }
    }
    return best;
}

}  // namespace

text_box size_of(const std::vector<label_line>& lines) {
    text_box b;
    for (const label_line& l : lines) {
        b.width = std::max(b.width, text_width(l.text, l.size, l.bold));
        b.height += std::ceil(l.size * 1.2);
        b.text += (b.text.empty() ? "" : " ") + l.text;
    }
    b.width += 8.0;
    b.height += 4.0;
    return b;
}

std::vector<text_box> rows_of(const std::vector<label_line>& lines) {
    std::vector<text_box> out;
    double top = 0.0;
    for (const label_line& l : lines) {
        const double wide = text_width(l.text, l.size, l.bold) + 8.0;
        const double high = std::ceil(l.size * 1.2) + (&l == &lines.back() ? 4.0 : 2.0);
        out.push_back({-wide / 2.0, top, wide, high, {}});
        top += std::ceil(l.size * 1.2);
    }
    return out;
}

text_box with_gap(const text_box& b) {
    return {b.left - label_gap,
            b.top - label_gap,
            b.width + 2.0 * label_gap,
            b.height + 2.0 * label_gap,
            {}};
}

stand label_costs::stand_at(const asked_label& a, double r, const drawn_point& way) const {
    const drawn_point middle{a.anchor.x + (r + a.size.width / 2.0) * way.x,
                             a.anchor.y + (r + a.size.height / 2.0) * way.y};
    stand s;
    s.box = around(middle, a.size.width, a.size.height);
    s.from = side_of(s.box, a.rows, a.anchor);
    s.alone = alone_at(s.box, s.from, a.anchor);
    s.aside = !a.wanted->above ? 0.0
                               : aside * std::abs(s.from.x - a.anchor.x) +
                                     (middle.y > a.anchor.y ? not_above : 0.0);
    return s;
}

/// How long its leader is, how far it stands out over the sides, and which labels inside it crosses; `never`
/// where it would cover something.
double label_costs::alone_at(const text_box& b, const drawn_point& from,
                             const drawn_point& anchor) const {
    const text_box wide = with_gap(b);
    if (!ground_.solid.is_free(wide)) {
        return never;
    }
    const double leader = std::hypot(from.x - anchor.x, from.y - anchor.y);
    double cost = leader + leader * leader / too_long +
                  1.5 * std::max(0.0, ground_.edge.left - b.left) +
                  1.5 * std::max(0.0, b.left + b.width - ground_.edge.right) +
                  0.3 * std::max(0.0, ground_.edge.top - b.top) +
                  0.3 * std::max(0.0, b.top + b.height - ground_.edge.bottom);
    for (const placed_label& other : inside_) {
        if (overlap(wide, other.box)) {
            return never;
        }
        cost += through(other.box, from, anchor) ? over_text : 0.0;
    }
    return cost;
}

double label_costs::past(const drawn_point& from, const drawn_point& anchor) const {
    double cost = 0.0;
    const polygon* own = nullptr;
    for (const leader_end& e : ends_) {
        if (e.at == anchor) {
            own = e.of;
        } else if (distance(e.at, from, anchor) < end_size) {
            cost += over_end;
        }
    }
    if (std::any_of(ground_.eyes.begin(), ground_.eyes.end(), [&](const drawn_point& eye) {
            return distance(eye, from, anchor) < eye_size;
        })) {
        cost += over_eye;
    }
    constexpr double each = 8.0;
    const double all = std::hypot(from.x - anchor.x, from.y - anchor.y);
    double over = 0.0;
    bool left_own = false;
    for (double at = each; at < all; at += each) {
        const drawn_point q{anchor.x + (from.x - anchor.x) * at / all,
                            anchor.y + (from.y - anchor.y) * at / all};
        left_own = left_own || own == nullptr || !within(*own, q);
        over += left_own && !ground_.solid.is_free({q.x, q.y, 0.0, 0.0, {}}) ? each : 0.0;
    }
    return cost + over_others * over;
}

}  // namespace pelage::io
