// Names on an enlarged place of the dog: inside, or at the end of a line, where they cover nothing.
#include "answers/picture_place_names.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "answers/words/picture.hpp"

namespace pelage::io {

namespace {

text_box box_for(const std::string& text) {
    return chart::box_of(0.0, 0.0, text, stands::left, false);
}

/// Whether a shape has a corner in a box, or the box its middle in the shape.
bool touch(const polygon& p, const text_box& b) {
    const drawn_point middle{b.left + b.width / 2.0, b.top + b.height / 2.0};
    return within(p, middle) || std::any_of(p.begin(), p.end(), [&](const drawn_point& q) {
               return q.x > b.left && q.x < b.left + b.width && q.y > b.top &&
                      q.y < b.top + b.height;
           });
}

}  // namespace

std::string names_on_place::name_of(const drawn_area& a) const {
    return short_title(body_.zones[a.at.zone]);
}

polygon names_on_place::largest(const drawn_area& a) const {
    polygon out;
    double most = 0.0;
    for (const drawn_path& r : a.rings) {
        polygon p = in_window(r, lens_);
        extent e;
        e.add(p);
        const double size = p.size() < 3 ? 0.0 : (e.right - e.left) * (e.bottom - e.top);
        if (size > most) {
            most = size;
            out = std::move(p);
        }
    }
    return out;
}

bool names_on_place::inside(const drawn_area& a) {
    const std::string text = name_of(a);
    const polygon ring = largest(a);
    const text_box b = box_for(text);
    const auto at =
        ring.size() < 3 ? std::nullopt : room_in(ring, b.width + 12.0, b.height + 6.0, taken_);
    if (at) {
        write(text, *at);
    }
    return at.has_value();
}

void names_on_place::write(const std::string& text, const drawn_point& at) {
    text_box b = chart::box_of(at.x, at.y, text, stands::middle, false);
    taken_.push_back(b);
    b.left -= 4.0;
    b.width += 8.0;
    sheet_.rect("pd-cl", b, 6.0);
    sheet_.text(at.x, at.y, text, stands::middle);
}

void names_on_place::inside_or_beside(const drawn_area& a) {
    const polygon ring = largest(a);
    if (ring.size() < 3 || inside(a)) {
        return;
    }
    beside(name_of(a), innermost(ring));
}

void names_on_place::beside(const std::string& text, const drawn_point& anchor, bool off_the_dog) {
    const text_box b = box_for(text);
    std::optional<drawn_point> best;
    double least = 1e9;
    for (double y = b.height; y < window_high - b.height; y += 10.0) {
        for (double x = b.width / 2.0 + 12.0; x < window_wide - b.width / 2.0 - 12.0; x += 10.0) {
            const text_box here = around({x, y}, b.width + 16.0, b.height + 8.0);
            const double off = std::hypot(x - anchor.x, y - anchor.y);
            if (off < least && is_clear(here, off_the_dog) && leads_clear({x, y}, anchor)) {
                least = off;
                best = drawn_point{x, y};
            }
        }
    }
    if (best) {
        sheet_.line("pd-r", *best, anchor);
        sheet_.dot("pd-d", anchor.x, anchor.y, 6.0);
        taken_.push_back(around(anchor, 20.0, 20.0));
        write(text, *best);
        keep_clear(*best, anchor);
    }
}

bool names_on_place::leads_clear(const drawn_point& from, const drawn_point& anchor) const {
    return std::none_of(taken_.begin(), taken_.end(), [&](const text_box& t) {
        return !overlap(t, around(anchor, 4.0, 4.0)) && through(t, from, anchor);
    });
}

void names_on_place::keep_clear(const drawn_point& from, const drawn_point& anchor) {
    constexpr double each = 12.0;
    const double all = std::hypot(from.x - anchor.x, from.y - anchor.y);
    for (double at = each; at < all; at += each) {
        taken_.push_back(around(
            {anchor.x + (from.x - anchor.x) * at / all, anchor.y + (from.y - anchor.y) * at / all},
            8.0, 8.0));
    }
}

bool names_on_place::is_clear(const text_box& b, bool off_the_dog) const {
    if (std::any_of(taken_.begin(), taken_.end(),
                    [&](const text_box& t) { return overlap(t, b); })) {
        return false;
    }
    return std::none_of(
        zones_.view.areas.begin(), zones_.view.areas.end(), [&](const drawn_area& a) {
            return (zones_.marked(a) || off_the_dog) &&
                   std::any_of(a.rings.begin(), a.rings.end(), [&](const drawn_path& r) {
                       return touch(flattened(lens_.of(r)), b);
                   });
        });
}

}  // namespace pelage::io
