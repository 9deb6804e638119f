#include "answers/picture_labels.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace pelage::io {

namespace {

constexpr double gap = 5.0;            ///< around a label
constexpr double cell = 8.0;           ///< of the raster of what is solid
constexpr double step = 6.0;           ///< of the search within a polygon
constexpr double reach = 1500.0;       ///< how far a label may be from its place
constexpr double over_text = 2000.0;   ///< what a leader across a label costs, in length of leader
constexpr double over_leader = 120.0;  ///< and one across another leader
constexpr double far_off = 220.0;      ///< a leader so long that others may give way

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

drawn_point middle_of(const polygon& p) {
    double area = 0.0;
    drawn_point sum;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const drawn_point& a = p[i];
        const drawn_point& b = p[(i + 1) % p.size()];
        const double cross = a.x * b.y - b.x * a.y;
        area += cross;
        sum.x += (a.x + b.x) * cross;
        sum.y += (a.y + b.y) * cross;
    }
    return area == 0.0 ? p.front() : drawn_point{sum.x / (3.0 * area), sum.y / (3.0 * area)};
}

text_box around(const drawn_point& middle, double width, double height) {
    return {middle.x - width / 2.0, middle.y - height / 2.0, width, height, {}};
}

/// The point of `p` furthest from its edge, on a grid.
drawn_point innermost(const polygon& p) {
    extent e;
    e.add(p);
    drawn_point best = p.front();
    double most = -1.0;
    for (double y = e.top + 2.0; y < e.bottom; y += step) {
        for (double x = e.left + 2.0; x < e.right; x += step) {
            if (!within(p, {x, y})) {
                continue;
            }
            double nearest = std::numeric_limits<double>::max();
            for (const drawn_point& q : p) {
                nearest = std::min(nearest, std::hypot(q.x - x, q.y - y));
            }
            if (nearest > most) {
                most = nearest;
                best = {x, y};
            }
        }
    }
    return best;
}

double turn(const drawn_point& a, const drawn_point& b, const drawn_point& c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool cross(const drawn_point& a, const drawn_point& b, const drawn_point& c, const drawn_point& d) {
    return turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0;
}

bool through(const text_box& b, const drawn_point& from, const drawn_point& to) {
    const drawn_point nw{b.left, b.top};
    const drawn_point ne{b.left + b.width, b.top};
    const drawn_point se{b.left + b.width, b.top + b.height};
    const drawn_point sw{b.left, b.top + b.height};
    const auto in = [&](const drawn_point& p) {
        return p.x > nw.x && p.x < se.x && p.y > nw.y && p.y < se.y;
    };
    return in(from) || in(to) || cross(from, to, nw, se) || cross(from, to, ne, sw);
}

/// What is solid, in cells, with sums so that a box is asked at once.
class raster {
  public:
    explicit raster(const std::vector<polygon>& solid) {
        extent e;
        for (const polygon& p : solid) {
            e.add(p);
        }
        left_ = e.left - cell;
        top_ = e.top - cell;
        columns_ = static_cast<int>((e.right - left_) / cell) + 3;
        rows_ = static_cast<int>((e.bottom - top_) / cell) + 3;
        std::vector<int> full(static_cast<std::size_t>(columns_ * rows_), 0);
        for (const polygon& p : solid) {
            fill(p, full);
        }
        sums_.assign(static_cast<std::size_t>((columns_ + 1) * (rows_ + 1)), 0);
        for (int y = 0; y < rows_; ++y) {
            for (int x = 0; x < columns_; ++x) {
                sum(x + 1, y + 1) = full[static_cast<std::size_t>(y * columns_ + x)] +
                                    sum(x, y + 1) + sum(x + 1, y) - sum(x, y);
            }
        }
    }

    [[nodiscard]] bool is_free(const text_box& b) const {
        const auto column = [&](double x) {
            return std::clamp(static_cast<int>(std::floor((x - left_) / cell)), 0, columns_);
        };
        const auto row = [&](double y) {
            return std::clamp(static_cast<int>(std::floor((y - top_) / cell)), 0, rows_);
        };
        const int x0 = column(b.left);
        const int x1 = std::min(column(b.left + b.width) + 1, columns_);
        const int y0 = row(b.top);
        const int y1 = std::min(row(b.top + b.height) + 1, rows_);
        return x0 >= x1 || y0 >= y1 || sum(x1, y1) - sum(x0, y1) - sum(x1, y0) + sum(x0, y0) == 0;
    }

  private:
    void fill(const polygon& p, std::vector<int>& full) const {
        const auto mark = [&](double x, double y) {
            const int c = static_cast<int>((x - left_) / cell);
            const int r = static_cast<int>((y - top_) / cell);
            full[static_cast<std::size_t>(r * columns_ + c)] = 1;
        };
        extent e;
        e.add(p);
        for (const drawn_point& q : p) {
            mark(q.x, q.y);
        }
        const double first = top_ + (std::floor((e.top - top_) / cell) + 0.5) * cell;
        for (double y = first; y <= e.bottom; y += cell) {
            std::vector<double> cuts;
            for (std::size_t i = 0; i < p.size(); ++i) {
                const drawn_point& a = p[i];
                const drawn_point& b = p[(i + 1) % p.size()];
                if ((a.y > y) != (b.y > y)) {
                    cuts.push_back(a.x + (y - a.y) * (b.x - a.x) / (b.y - a.y));
                }
            }
            std::sort(cuts.begin(), cuts.end());
            for (std::size_t k = 0; k + 1 < cuts.size(); k += 2) {
                for (double x = cuts[k]; x < cuts[k + 1]; x += cell / 2.0) {
                    mark(x, y);
                }
            }
        }
    }
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

/// How large a label is, with a little air.
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

/// Where a line from `to` meets the box.
drawn_point side_of(const text_box& b, const drawn_point& to) {
    return {std::clamp(to.x, b.left, b.left + b.width), std::clamp(to.y, b.top, b.top + b.height)};
}

/// Labels outside take the best places that are left, those near the edge first; then each in turn looks
/// for a better one.
class label_layout {
  public:
    explicit label_layout(const std::vector<polygon>& solid) : solid_(solid) {
        for (const polygon& p : solid) {
            edge_.add(p);
        }
    }

    [[nodiscard]] bool put_inside(const wanted_label& w) {
        const text_box size = size_of(w.lines);
        const auto middle = room_in(w.of, size.width, size.height, {});
        if (!middle) {
            return false;
        }
        text_box b = around(*middle, size.width, size.height);
        b.text = size.text;
        inside_.push_back({b, w.lines, true, {}, {}});
        return true;
    }

    void put_outside(const std::vector<const wanted_label*>& all) {
        std::vector<std::pair<double, placed_label>> todo;
        for (const wanted_label* w : all) {
            placed_label l{size_of(w->lines), w->lines, false, innermost(w->of), {}};
            todo.emplace_back(seek(l), l);
        }
        std::stable_sort(todo.begin(), todo.end(),
                         [](const auto& a, const auto& b) { return a.first < b.first; });
        for (auto& [cost, l] : todo) {
            (void)seek(l);
            outside_.push_back(l);
        }
        constexpr int rounds = 3;
        for (int i = 0; i < rounds; ++i) {
            for (std::size_t k = 0; k < outside_.size(); ++k) {
                (void)put_again({k});
            }
            give_way();
        }
    }

    [[nodiscard]] std::vector<placed_label> take() {
        inside_.insert(inside_.end(), outside_.begin(), outside_.end());
        return std::move(inside_);
    }

  private:
    static constexpr double never = std::numeric_limits<double>::max();

    /// Takes labels away and puts them again, in that order; gives what they cost together.
    double put_again(const std::vector<std::size_t>& which) {
        std::vector<placed_label> all = outside_;
        std::vector<placed_label> others;
        for (std::size_t k = 0; k < all.size(); ++k) {
            if (std::find(which.begin(), which.end(), k) == which.end()) {
                others.push_back(all[k]);
            }
        }
        outside_ = std::move(others);
        double cost = 0.0;
        for (const std::size_t k : which) {
            cost += seek(all[k]);
            outside_.push_back(all[k]);
        }
        outside_ = std::move(all);
        return cost;
    }

    /// The label that stands worst takes the place of another, where both together are better off.
    void give_way() {
        const auto worse = [](const placed_label& a, const placed_label& b) {
            return leader_of(a) < leader_of(b);
        };
        const auto worst = std::max_element(outside_.begin(), outside_.end(), worse);
        if (worst == outside_.end() || leader_of(*worst) < far_off) {
            return;
        }
        const auto k = static_cast<std::size_t>(worst - outside_.begin());
        std::vector<placed_label> best = outside_;
        double saved = 0.0;
        for (std::size_t m = 0; m < outside_.size(); ++m) {
            if (m != k) {
                const std::vector<placed_label> before = outside_;
                const double as_it_is = put_again({m, k});
                outside_ = before;
                const double other_way = put_again({k, m});
                if (as_it_is - other_way > saved) {
                    saved = as_it_is - other_way;
                    best = outside_;
                }
                outside_ = before;
            }
        }
        outside_ = std::move(best);
    }
    static double leader_of(const placed_label& l) {
        return std::hypot(l.from.x - l.anchor.x, l.from.y - l.anchor.y);
    }

    /// Puts it where it costs least among the others; gives the cost.
    double seek(placed_label& l) const {
        constexpr int ways = 40;
        double least = never;
        const text_box size = l.box;
        for (double r = 16.0; r < reach && r < least; r += 10.0) {
            for (int k = 0; k < ways; ++k) {
                const double angle = 2.0 * std::numbers::pi * k / ways;
                const drawn_point middle{l.anchor.x + (r + size.width / 2.0) * std::cos(angle),
                                         l.anchor.y + (r + size.height / 2.0) * std::sin(angle)};
                text_box b = around(middle, size.width, size.height);
                const drawn_point from = side_of(b, l.anchor);
                const double cost = cost_of(b, from, l.anchor);
                if (cost < least) {
                    least = cost;
                    b.text = size.text;
                    l.box = std::move(b);
                    l.from = from;
                }
            }
        }
        return least;
    }

    /// How long its leader is, how far it stands out over the sides, and what it crosses.
    [[nodiscard]] double cost_of(const text_box& b, const drawn_point& from,
                                 const drawn_point& anchor) const {
        const text_box wide{
            b.left - gap, b.top - gap, b.width + 2.0 * gap, b.height + 2.0 * gap, {}};
        if (!solid_.is_free(wide)) {
            return never;
        }
        double cost =
            std::hypot(from.x - anchor.x, from.y - anchor.y) + std::max(0.0, edge_.left - b.left) +
            std::max(0.0, b.left + b.width - edge_.right) + 0.3 * std::max(0.0, edge_.top - b.top) +
            0.3 * std::max(0.0, b.top + b.height - edge_.bottom);
        for (const placed_label& other : inside_) {
            if (overlap(wide, other.box)) {
                return never;
            }
            cost += through(other.box, from, anchor) ? over_text : 0.0;
        }
        for (const placed_label& other : outside_) {
            if (overlap(wide, other.box)) {
                return never;
            }
            cost += through(other.box, from, anchor) || through(wide, other.from, other.anchor)
                        ? over_text
                    : cross(from, anchor, other.from, other.anchor) ? over_leader
                                                                    : 0.0;
        }
        return cost;
    }

    raster solid_;
    extent edge_;
    std::vector<placed_label> inside_;
    std::vector<placed_label> outside_;
};

}  // namespace

double text_width(std::string_view text, double size, bool bold) {
    // no narrower than DejaVu Sans, the widest of the usual ones
    constexpr std::string_view narrowest = "ijl.,:;'|!";
    constexpr std::string_view narrow = "ftrI()[] /-";
    constexpr std::string_view wide = "mMW@%";
    double em = 0.0;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if ((byte & 0xC0U) == 0x80U) {
            continue;  // the rest of a character
        }
        const bool capital = (c >= 'A' && c <= 'Z') || c == 'w';
        em += byte >= 0x80U                                 ? 1.1
              : narrowest.find(c) != std::string_view::npos ? 0.34
              : narrow.find(c) != std::string_view::npos    ? 0.42
              : wide.find(c) != std::string_view::npos      ? 1.0
              : capital                                     ? 0.82
                                                            : 0.64;
    }
    return em * size * (bold ? 1.1 : 1.0);
}

bool within(const polygon& p, const drawn_point& at) {
    bool in = false;
    for (std::size_t i = 0, j = p.size() - 1; i < p.size(); j = i++) {
        if ((p[i].y > at.y) != (p[j].y > at.y) &&
            at.x < (p[j].x - p[i].x) * (at.y - p[i].y) / (p[j].y - p[i].y) + p[i].x) {
            in = !in;
        }
    }
    return in;
}

bool overlap(const text_box& a, const text_box& b) {
    return a.left < b.left + b.width && b.left < a.left + a.width && a.top < b.top + b.height &&
           b.top < a.top + a.height;
}

std::optional<drawn_point> room_in(const polygon& p, double width, double height,
                                   const std::vector<text_box>& taken) {
    extent e;
    e.add(p);
    const drawn_point middle = middle_of(p);
    std::optional<drawn_point> best;
    double least = std::numeric_limits<double>::max();
    const auto fits = [&](const text_box& b) {
        const double right = b.left + b.width;
        const double bottom = b.top + b.height;
        return within(p, {b.left, b.top}) && within(p, {right, b.top}) &&
               within(p, {b.left, bottom}) && within(p, {right, bottom}) &&
               std::none_of(p.begin(), p.end(),
                            [&](const drawn_point& q) {
                                return q.x > b.left && q.x < right && q.y > b.top && q.y < bottom;
                            }) &&
               std::none_of(taken.begin(), taken.end(),
                            [&](const text_box& t) { return overlap(b, t); });
    };
    for (double y = e.top + height / 2.0; y <= e.bottom - height / 2.0; y += step) {
        for (double x = e.left + width / 2.0; x <= e.right - width / 2.0; x += step) {
            const double off = std::hypot(x - middle.x, y - middle.y);
            if (off < least && fits(around({x, y}, width, height))) {
                least = off;
                best = drawn_point{x, y};
            }
        }
    }
    return best;
}

std::vector<placed_label> place_labels(const std::vector<wanted_label>& wanted,
                                       const std::vector<polygon>& solid) {
    label_layout out(solid);
    std::vector<const wanted_label*> others;
    for (const wanted_label& w : wanted) {
        if (!out.put_inside(w)) {
            others.push_back(&w);
        }
    }
    out.put_outside(others);
    return out.take();
}

}  // namespace pelage::io
