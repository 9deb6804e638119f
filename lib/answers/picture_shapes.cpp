#include "answers/picture_shapes.hpp"

#include <algorithm>
#include <cmath>

namespace pelage::io {

namespace {

constexpr double cell_size = 8.0;    ///< of the raster
constexpr double search_step = 6.0;  ///< of the search within a polygon

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

double turn(const drawn_point& a, const drawn_point& b, const drawn_point& c) {
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// Whether what lies between `a` and `b` has nothing in common with what lies between `c` and `d`.
bool apart(double a, double b, double c, double d) {
    return std::max(a, b) < std::min(c, d) || std::max(c, d) < std::min(a, b);
}

}  // namespace

text_box around(const drawn_point& middle, double width, double height) {
    return {middle.x - width / 2.0, middle.y - height / 2.0, width, height, {}};
}

drawn_point innermost(const polygon& p, const std::vector<drawn_point>& off) {
    polygon edge = p;
    edge.insert(edge.end(), off.begin(), off.end());
    extent e;
    e.add(p);
    drawn_point best = p.front();
    double most = -1.0;
    for (double y = e.top + 2.0; y < e.bottom; y += search_step) {
        for (double x = e.left + 2.0; x < e.right; x += search_step) {
            double nearest = std::numeric_limits<double>::max();  // squared
            for (std::size_t i = 0; i < edge.size() && nearest > most; ++i) {
                const drawn_point& q = edge[i];
                nearest = std::min(nearest, (q.x - x) * (q.x - x) + (q.y - y) * (q.y - y));
            }
            if (nearest > most && within(p, {x, y})) {
                most = nearest;
                best = {x, y};
            }
        }
    }
    return best;
}

bool cross(const drawn_point& a, const drawn_point& b, const drawn_point& c, const drawn_point& d) {
    if (apart(a.x, b.x, c.x, d.x) || apart(a.y, b.y, c.y, d.y)) {
        return false;  // most are: four products less
    }
    return turn(a, b, c) * turn(a, b, d) < 0.0 && turn(c, d, a) * turn(c, d, b) < 0.0;
}

double distance(const drawn_point& of, const drawn_point& from, const drawn_point& to) {
    const double dx = to.x - from.x;
    const double dy = to.y - from.y;
    const double along = dx * dx + dy * dy;
    const double t =
        along == 0.0 ? 0.0
                     : std::clamp(((of.x - from.x) * dx + (of.y - from.y) * dy) / along, 0.0, 1.0);
    return std::hypot(of.x - from.x - t * dx, of.y - from.y - t * dy);
}

bool through(const text_box& b, const drawn_point& from, const drawn_point& to) {
    if (apart(from.x, to.x, b.left, b.left + b.width) ||
        apart(from.y, to.y, b.top, b.top + b.height)) {
        return false;
    }
    const drawn_point nw{b.left, b.top};
    const drawn_point ne{b.left + b.width, b.top};
    const drawn_point se{b.left + b.width, b.top + b.height};
    const drawn_point sw{b.left, b.top + b.height};
    const auto in = [&](const drawn_point& p) {
        return p.x > nw.x && p.x < se.x && p.y > nw.y && p.y < se.y;
    };
    return in(from) || in(to) || cross(from, to, nw, se) || cross(from, to, ne, sw);
}

raster::raster(const std::vector<polygon>& solid) {
    extent e;
    for (const polygon& p : solid) {
        e.add(p);
    }
    left_ = e.left - cell_size;
    top_ = e.top - cell_size;
    columns_ = static_cast<int>((e.right - left_) / cell_size) + 3;
    rows_ = static_cast<int>((e.bottom - top_) / cell_size) + 3;
    std::vector<int> full(static_cast<std::size_t>(columns_ * rows_), 0);
    for (const polygon& p : solid) {
        fill(p, full);
    }
    sums_.assign(static_cast<std::size_t>((columns_ + 1) * (rows_ + 1)), 0);
    for (int y = 0; y < rows_; ++y) {
        for (int x = 0; x < columns_; ++x) {
            sum(x + 1, y + 1) = full[static_cast<std::size_t>(y * columns_ + x)] + sum(x, y + 1) +
                                sum(x + 1, y) - sum(x, y);
        }
    }
}

bool raster::is_free(const text_box& b) const {
    const auto column = [&](double x) {
        return std::clamp(static_cast<int>(std::floor((x - left_) / cell_size)), 0, columns_);
    };
    const auto row = [&](double y) {
        return std::clamp(static_cast<int>(std::floor((y - top_) / cell_size)), 0, rows_);
    };
    const int x0 = column(b.left);
    const int x1 = std::min(column(b.left + b.width) + 1, columns_);
    const int y0 = row(b.top);
    const int y1 = std::min(row(b.top + b.height) + 1, rows_);
    return x0 >= x1 || y0 >= y1 || sum(x1, y1) - sum(x0, y1) - sum(x1, y0) + sum(x0, y0) == 0;
}

void raster::fill(const polygon& p, std::vector<int>& full) const {
    const auto mark = [&](double x, double y) {
        const int c = static_cast<int>((x - left_) / cell_size);
        const int r = static_cast<int>((y - top_) / cell_size);
        full[static_cast<std::size_t>(r * columns_ + c)] = 1;
    };
    extent e;
    e.add(p);
    for (const drawn_point& q : p) {
        mark(q.x, q.y);
    }
    const double first = top_ + (std::floor((e.top - top_) / cell_size) + 0.5) * cell_size;
    for (double y = first; y <= e.bottom; y += cell_size) {
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
            for (double x = cuts[k]; x < cuts[k + 1]; x += cell_size / 2.0) {
                mark(x, y);
            }
        }
    }
}

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

polygon cut_to(polygon p, const text_box& b) {
    const auto cut = [&](auto inside, auto where) {
        polygon out;
        for (std::size_t i = 0; i < p.size(); ++i) {
            const drawn_point& a = p[i];
            const drawn_point& c = p[(i + 1) % p.size()];
            if (inside(a)) {
                out.push_back(a);
            }
            if (inside(a) != inside(c)) {
                const double t = where(a, c);
                out.push_back({a.x + t * (c.x - a.x), a.y + t * (c.y - a.y)});
            }
        }
        p = std::move(out);
    };
    const auto at_x = [](double x) {
        return [x](const drawn_point& a, const drawn_point& c) { return (x - a.x) / (c.x - a.x); };
    };
    const auto at_y = [](double y) {
        return [y](const drawn_point& a, const drawn_point& c) { return (y - a.y) / (c.y - a.y); };
    };
    const double right = b.left + b.width;
    const double bottom = b.top + b.height;
    cut([&](const drawn_point& q) { return q.x > b.left; }, at_x(b.left));
    cut([&](const drawn_point& q) { return q.x < right; }, at_x(right));
    cut([&](const drawn_point& q) { return q.y > b.top; }, at_y(b.top));
    cut([&](const drawn_point& q) { return q.y < bottom; }, at_y(bottom));
    return p;
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
    for (double y = e.top + height / 2.0; y <= e.bottom - height / 2.0; y += search_step) {
        for (double x = e.left + width / 2.0; x <= e.right - width / 2.0; x += search_step) {
            const double off = std::hypot(x - middle.x, y - middle.y);
            if (off < least && fits(around({x, y}, width, height))) {
                least = off;
                best = drawn_point{x, y};
            }
        }
    }
    return best;
}

}  // namespace pelage::io
