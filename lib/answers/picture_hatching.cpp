#include "answers/picture_hatching.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include <pelage/base/length_text.hpp>

#include "answers/picture_svg.hpp"

namespace pelage::io {

namespace {

/// How the strokes of a shade lie. Drawn by eye; tests/drawn holds that ink only grows.
struct ink {
    int slant = 0;        ///< degrees
    bool across = false;  ///< and once more, at a right angle
    double apart = 1.0;   ///< from stroke to stroke
    double wide = 0.0;    ///< of a stroke
};
constexpr std::array<ink, 8> inks{{{0, false, 1.0, 0.0},
                                   {45, false, 26.0, 1.6},
                                   {135, false, 18.0, 2.2},
                                   {0, false, 13.0, 2.6},
                                   {90, false, 12.0, 3.4},
                                   {0, true, 22.0, 4.2},
                                   {45, true, 17.0, 4.8},
                                   {0, true, 14.0, 5.2}}};

const ink& ink_of(std::size_t shade, std::size_t of) {
    return inks[of < 2 ? 0 : shade * (inks.size() - 1) / (of - 1)];
}

/// A number after another.
std::string apart_from(double v) {
    const std::string n = whole(v);
    return (n.front() == '-' ? "" : " ") + n;
}

/// Straight strokes through a polygon, so far apart; none where it is too narrow.
std::string strokes(const polygon& p, double degrees, double apart) {
    constexpr double short_of = 4.0;  // of the edge
    constexpr double least = 3.0;
    const double angle = degrees * std::numbers::pi / 180.0;
    const double c = std::cos(angle);
    const double s = std::sin(angle);
    polygon turned;
    for (const drawn_point& q : p) {
        turned.push_back({q.x * c + q.y * s, q.y * c - q.x * s});
    }
    extent e;
    e.add(turned);
    std::string out;
    drawn_point at;  // where the last one ended, whole
    const auto add = [&](const drawn_point& from, const drawn_point& to) {
        const drawn_point off{std::round(to.x - from.x), std::round(to.y - from.y)};
        out += (out.empty() ? "M" : "m") + whole(from.x - at.x) + apart_from(from.y - at.y) +
               (off.y == 0.0   ? "h" + whole(off.x)
                : off.x == 0.0 ? "v" + whole(off.y)
                               : "l" + whole(off.x) + apart_from(off.y));
        at = {at.x + std::round(from.x - at.x) + off.x, at.y + std::round(from.y - at.y) + off.y};
    };
    for (double y = std::ceil(e.top / apart) * apart; y < e.bottom; y += apart) {
        std::vector<double> cuts;
        for (std::size_t i = 0; i < turned.size(); ++i) {
            const drawn_point& a = turned[i];
            const drawn_point& b = turned[(i + 1) % turned.size()];
            if ((a.y > y) != (b.y > y)) {
                cuts.push_back(a.x + (y - a.y) * (b.x - a.x) / (b.y - a.y));
            }
        }
        std::sort(cuts.begin(), cuts.end());
        for (std::size_t k = 0; k + 1 < cuts.size(); k += 2) {
            const double from = cuts[k] + short_of;
            const double to = cuts[k + 1] - short_of;
            if (to - from >= least) {
                add({from * c - y * s, from * s + y * c}, {to * c - y * s, to * s + y * c});
            }
        }
    }
    return out;
}

/// How much room a sign takes about its middle, how far apart they are, and how one is drawn there.
struct sign {
    double half = 0.0;
    double apart = 0.0;
    std::string_view after_its_place;  ///< of path data, from the middle
    std::string_view shown_by;
};

sign sign_of(filled_with w) {
    switch (w) {
        case filled_with::crosses:
            return {6.0, 20.0, "m-5-5l10 10m0-10l-10 10", "pd-mx"};
        case filled_with::rings:
            return {6.0, 20.0, "m-5 0a5 5 0 1 0 10 0a5 5 0 1 0-10 0", "pd-mx"};
        case filled_with::lozenges:
            return {6.0, 22.0, "m0-6l6 6l-6 6l-6-6z", "pd-my"};
        case filled_with::questions:
            return {8.0, 30.0, "m-5-5c0-6 10-6 10 0c0 4-5 4-5 8m0 6h0", "pd-mx"};
        case filled_with::rakes:
            return {7.0, 24.0, "m-4-5v10m4-10v10m4-10v10", "pd-l2"};
        case filled_with::dots:
        case filled_with::net:
            break;
    }
    return {3.0, 17.0, "h0", "pd-l1"};
}

}  // namespace

std::string hatched(std::size_t shade, std::size_t of, const std::vector<polygon>& all) {
    const ink& i = ink_of(shade, of);
    std::string data;
    for (const polygon& p : all) {
        data += i.wide == 0.0 ? "" : strokes(p, i.slant, i.apart);
        data += i.across ? strokes(p, i.slant + 90.0, i.apart) : "";
    }
    return data.empty() ? "" : path_of("pd-hg pd-h" + std::to_string(shade), data);
}

std::string hatching_style(std::size_t shades) {
    std::string out = ".pd-hg{fill:none;stroke:#000;display:inline}";
    for (std::size_t i = 0; i < shades; ++i) {
        out += ".pd-h" + std::to_string(i) +
               "{stroke-width:" + detail::fixed(ink_of(i, shades).wide, 1) + "}";
    }
    return out;
}

std::string filled(filled_with what, const std::vector<polygon>& all) {
    std::string data;
    if (what == filled_with::net) {
        constexpr double mesh = 22.0;
        for (const polygon& p : all) {
            data += strokes(p, 45.0, mesh) + strokes(p, 135.0, mesh);
        }
        return data.empty() ? "" : path_of("pd-w1", data);
    }
    const sign s = sign_of(what);
    for (const polygon& p : all) {
        extent e;
        e.add(p);
        const auto has_room = [&](double x, double y) {
            return within(p, {x - s.half, y - s.half}) && within(p, {x + s.half, y - s.half}) &&
                   within(p, {x - s.half, y + s.half}) && within(p, {x + s.half, y + s.half});
        };
        bool odd = false;
        for (double y = std::ceil(e.top / s.apart) * s.apart; y < e.bottom; y += s.apart) {
            odd = !odd;
            const double first =
                std::floor(e.left / s.apart) * s.apart + (odd ? 0.0 : s.apart / 2.0);
            for (double x = first; x < e.right; x += s.apart) {
                if (has_room(x, y)) {
                    data += "M" + whole(x) + apart_from(y) + std::string(s.after_its_place);
                }
            }
        }
    }
    return data.empty() ? "" : path_of(s.shown_by, data);
}

}  // namespace pelage::io
