// Private to lib: zones on the drawing of a dog, and the window that shows them enlarged.
#pragma once

#include <cstddef>
#include <set>
#include <vector>

#include <pelage/trade/outline.hpp>

#include "answers/picture_shapes.hpp"

namespace pelage::io {

/// How large the window is (units of its drawing).
inline constexpr double window_wide = 800.0;
inline constexpr double window_high = 600.0;

/// From the drawing of the dog to that of the window.
struct lens {
    double left = 0.0;
    double top = 0.0;
    double scale = 1.0;

    [[nodiscard]] drawn_point of(const drawn_point& p) const;
    [[nodiscard]] drawn_path of(drawn_path p) const;
    [[nodiscard]] std::vector<drawn_path> of(std::vector<drawn_path> all) const;
};

/// Zones that are looked at in a view. Borrows both.
struct zones_in_view {
    const drawn_view& view;
    const std::set<std::size_t>& zones;

    /// One of them, and at home here.
    [[nodiscard]] bool marked(const drawn_area& a) const {
        return a.home && zones.contains(a.at.zone);
    }
    /// Drawn only where a zone is looked at alone.
    [[nodiscard]] bool shows(const drawn_mark& m) const {
        return m.zone && zones.size() == 1 && zones.contains(*m.zone);
    }
};

/// All of the dog in a view.
[[nodiscard]] extent whole_of(const drawn_view& v);

/// On the zones, with something of what is around them.
[[nodiscard]] lens lens_on(const zones_in_view& v);

/// What of a ring is seen in the window, off its edge.
[[nodiscard]] polygon in_window(const drawn_path& ring, const lens& l);

}  // namespace pelage::io
