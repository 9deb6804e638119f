// Zones of the dog under a lens: how far and where to, so that all of them are seen.
#include "answers/picture_lens.hpp"

#include <algorithm>

namespace pelage::io {

namespace {

void add(extent& e, const std::vector<drawn_path>& all) {
    for (const drawn_path& p : all) {
        e.add(flattened(p));
    }
}

/// What the zones of a view take of it; of one of several rings that lie far apart, the first.
extent extent_of(const zones_in_view& v) {
    extent e;
    extent first;
    for (const drawn_area& a : v.view.areas) {
        if (v.marked(a)) {
            add(e, a.rings);
            if (first.left >= first.right) {
                first = {};
                first.add(flattened(a.rings.front()));
            }
        }
    }
    const bool scattered =
        v.zones.size() == 1 && first.right - first.left < 0.25 * (e.right - e.left);
    e = scattered ? first : e;
    for (const drawn_mark& m : v.view.marks) {
        if (v.shows(m) && !m.path.empty()) {
            e.add(flattened(m.path));
        }
    }
    return e;
}

}  // namespace

drawn_point lens::of(const drawn_point& p) const {
    return {(p.x - left) * scale, (p.y - top) * scale};
}

drawn_path lens::of(drawn_path p) const {
    for (drawn_curve& c : p) {
        c = {of(c.from), of(c.out), of(c.in), of(c.to)};
    }
    return p;
}

std::vector<drawn_path> lens::of(std::vector<drawn_path> all) const {
    for (drawn_path& p : all) {
        p = of(std::move(p));
    }
    return all;
}

extent whole_of(const drawn_view& v) {
    extent e;
    add(e, v.far);
    add(e, v.ground);
    for (const drawn_area& a : v.areas) {
        add(e, a.rings);
    }
    return e;
}

lens lens_on(const zones_in_view& v) {
    constexpr double least = 130.0;  // of the dog's drawing: no place fills the window
    constexpr double around = 1.5;
    const extent e = extent_of(v);
    const double wide = std::max({least, around * (e.right - e.left),
                                  around * (e.bottom - e.top) * window_wide / window_high});
    const double scale = window_wide / wide;
    const extent dog = whole_of(v.view);
    const auto placed = [](double low, double high, double first, double last, double size) {
        const double middle = (low + high - size) / 2.0;
        return last - first + 20.0 < size ? (first + last - size) / 2.0
                                          : std::clamp(middle, first - 10.0, last + 10.0 - size);
    };
    return {placed(e.left, e.right, dog.left, dog.right, wide),
            placed(e.top, e.bottom, dog.top, dog.bottom, window_high / scale), scale};
}

polygon in_window(const drawn_path& ring, const lens& l) {
    return cut_to(flattened(l.of(ring)), {6.0, 6.0, window_wide - 12.0, window_high - 12.0, {}});
}

}  // namespace pelage::io
