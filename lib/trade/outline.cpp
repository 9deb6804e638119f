// The lines of the outline of a dog.
#include <algorithm>
#include <cmath>

#include <pelage/trade/outline.hpp>

namespace pelage {

namespace {

drawn_point plus(const drawn_point& a, const drawn_point& b, double times) {
    return {a.x + times * b.x, a.y + times * b.y};
}

/// Its inner point next to `b`, of the curve from `b` to `c`; `a` is the point before `b`.
drawn_point handle(const drawn_point& a, const drawn_point& b, const drawn_point& c) {
    const double before = std::hypot(b.x - a.x, b.y - a.y);
    const double after = std::hypot(c.x - b.x, c.y - b.y);
    const double d1 = std::sqrt(before);
    const double d2 = std::sqrt(after);
    const double under = 3.0 * d1 * (d1 + d2);
    const auto mixed = [&](double pa, double pb, double pc) {
        return (before * pc - after * pa + (2.0 * before + 3.0 * d1 * d2 + after) * pb) / under;
    };
    return {mixed(a.x, b.x, c.x), mixed(a.y, b.y, c.y)};
}

}  // namespace

const dog_look& look_of(const outline& o, std::string_view breed) {
    for (const outline_look& l : o.looks) {
        if (std::find(l.breeds.begin(), l.breeds.end(), breed) != l.breeds.end()) {
            return l.is;
        }
    }
    return o.looks.front().is;
}

std::size_t shade_of(const outline& o, const length& l) {
    std::size_t i = 0;
    while (i + 1 < o.shades.size() && o.shades[i].below && l >= *o.shades[i].below) {
        ++i;
    }
    return i;
}

drawn_path smooth(const std::vector<drawn_point>& through, bool mirrored) {
    std::vector<drawn_point> p = through;
    // the point beyond an end on the axis is the mirror image of the one before it
    const bool at_begin = mirrored && p.front().y == 0.0;
    const bool at_end = mirrored && p.back().y == 0.0;
    if (at_begin) {
        p.insert(p.begin(), mirror_y(p[1]));
    }
    if (at_end) {
        p.push_back(mirror_y(p[p.size() - 2]));
    }
    drawn_path out;
    const std::size_t first = at_begin ? 1 : 0;
    const std::size_t last = p.size() - (at_end ? 2 : 1);
    for (std::size_t i = first; i < last; ++i) {
        const drawn_point& a = p[i];
        const drawn_point& b = p[i + 1];
        const bool before = i > 0;
        const bool after = i + 2 < p.size();
        const drawn_point third = {(b.x - a.x) / 3.0, (b.y - a.y) / 3.0};
        drawn_point leave = before ? handle(p[i - 1], a, b) : plus(a, third, 1.0);
        drawn_point arrive = after ? handle(p[i + 2], b, a) : plus(b, third, -1.0);
        if (!before && after) {
            leave = {(a.x + arrive.x) / 2.0, (a.y + arrive.y) / 2.0};
        } else if (before && !after) {
            arrive = {(b.x + leave.x) / 2.0, (b.y + leave.y) / 2.0};
        }
        out.push_back({a, leave, arrive, b});
    }
    return out;
}

drawn_path backwards(const drawn_path& p) {
    drawn_path out;
    for (auto c = p.rbegin(); c != p.rend(); ++c) {
        out.push_back({c->to, c->in, c->out, c->from});
    }
    return out;
}

std::vector<drawn_point> flattened(const drawn_path& p, int each) {
    std::vector<drawn_point> out;
    for (const drawn_curve& c : p) {
        for (int k = 0; k < each; ++k) {
            const double t = static_cast<double>(k) / each;
            const double u = 1.0 - t;
            const auto mixed = [&](double a, double b, double d, double e) {
                return u * u * u * a + 3.0 * u * u * t * b + 3.0 * u * t * t * d + t * t * t * e;
            };
            out.push_back({mixed(c.from.x, c.out.x, c.in.x, c.to.x),
                           mixed(c.from.y, c.out.y, c.in.y, c.to.y)});
        }
    }
    return out;
}

std::vector<drawn_path> shared_edge(const drawn_area& a, const drawn_area& b) {
    std::vector<drawn_path> out;
    for (const drawn_path& ring : a.rings) {
        bool open = false;
        for (const drawn_curve& c : ring) {
            const drawn_curve back{c.to, c.in, c.out, c.from};
            const bool both = std::any_of(b.rings.begin(), b.rings.end(), [&](const auto& other) {
                return std::find(other.begin(), other.end(), back) != other.end() ||
                       std::find(other.begin(), other.end(), c) != other.end();
            });
            if (both && !open) {
                out.emplace_back();
            }
            if (both) {
                out.back().push_back(c);
            }
            open = both;
        }
    }
    return out;
}

}  // namespace pelage
