// A place of the dog enlarged, with the way of the stroke; beside it where on the dog it is.
#include <algorithm>
#include <set>

#include <pelage/answers/illustrated.hpp>

#include "answers/chart.hpp"
#include "answers/picture_hatching.hpp"
#include "answers/picture_lens.hpp"
#include "answers/picture_place_names.hpp"
#include "answers/picture_svg.hpp"
#include "answers/words/picture.hpp"

namespace pelage::io {

namespace {

/// Enlarged, with what is in it; below, the dog it is of.
class place_drawing {
  public:
    place_drawing(const drawn_view& v, const std::set<std::size_t>& zones, const body& b)
        : zones_{v, zones}, view_(v), body_(b) {}

    /// Nothing of them is at home here.
    [[nodiscard]] bool empty() const {
        return std::none_of(view_.areas.begin(), view_.areas.end(),
                            [&](const drawn_area& a) { return zones_.marked(a); });
    }

    [[nodiscard]] picture_part run() {
        near_ = lens_on(zones_);
        say_marked();
        const text_box window{0.0, 0.0, window_wide, window_high, {}};
        sheet_.within(window, [&] {
            dog(near_, "pd-dm", "pd-mk", true);
            parts();
        });
        names_on_place names(zones_, near_, body_, sheet_, taken_);
        name_parts(names);
        const bool alone = zones_.zones.size() == 1;
        for (const drawn_area& a : view_.areas) {
            if (zones_.marked(a) && !alone) {
                names.inside_or_beside(a);
            }
        }
        keep_off_marks();
        for (const drawn_area& a : view_.areas) {
            if (zones_.marked(a)) {
                arrows(a);
            }
        }
        for (const drawn_area& a : view_.areas) {
            if (!zones_.marked(a) && alone) {
                names.inside(a);
            }
        }
        const double bottom = whole_dog();
        return sheet_.finish(view_title(view_.from), words_ + ".", bottom);
    }

  private:
    void say_marked() {
        for (const drawn_area& a : view_.areas) {
            if (zones_.marked(a)) {
                words_ +=
                    (words_.empty() ? "marked: " : ", ") + short_title(body_.zones[a.at.zone]);
            }
        }
    }

    /// What is in the place: hatched where there is danger.
    void parts() {
        for (const drawn_mark& m : view_.marks) {
            if (!zones_.shows(m)) {
                continue;
            }
            if (m.path.empty()) {
                const drawn_point at = near_.of(m.at);
                sheet_.dot("pd-in", at.x, at.y, m.size * near_.scale);
            } else {
                const drawn_path near_by = near_.of(m.path);
                sheet_.path(m.filled ? "pd-w pd-wt" : "pd-sg", path_data(near_by, false));
                sheet_.add(m.filled ? filled(filled_with::net, {flattened(near_by)}) : "");
            }
        }
    }

    void name_parts(names_on_place& names) {
        for (const drawn_mark& m : view_.marks) {
            if (!zones_.shows(m)) {
                continue;
            }
            const polygon p =
                m.path.empty() ? polygon{near_.of(m.at)} : flattened(near_.of(m.path));
            // a line is pointed at where it begins: what lies at its end has a name of its own
            const drawn_point at = m.path.empty() ? p.front()
                                   : m.filled     ? innermost(p)
                                                  : p[p.size() / 4];
            taken_.push_back(around(at, 24.0, 24.0));
            words_ += ", " + m.says;
            names.beside(m.says, at, true);
        }
    }

    /// No arrow lies on an eye, on the nose, or on what is hatched as a danger.
    void keep_off_marks() {
        constexpr double air = 8.0;
        for (const drawn_mark& m : view_.marks) {
            if (!m.filled && !m.path.empty()) {
                continue;
            }
            extent e;
            if (m.path.empty()) {
                const drawn_point at = near_.of(m.at);
                const double half = m.size * near_.scale;
                e.add({{at.x - half, at.y - half}, {at.x + half, at.y + half}});
            } else {
                e.add(flattened(near_.of(m.path)));
            }
            taken_.push_back({e.left - air,
                              e.top - air,
                              e.right - e.left + 2.0 * air,
                              e.bottom - e.top + 2.0 * air,
                              {}});
        }
    }

    void dog(const lens& l, const char* others, const char* these, bool face) {
        if (!view_.far.empty()) {
            sheet_.path("pd-f", path_data(l.of(view_.far), true));
        }
        if (!view_.ground.empty()) {
            sheet_.path("pd-dm", path_data(l.of(view_.ground), true));
        }
        std::string around;
        std::string mark;
        for (const drawn_area& a : view_.areas) {
            (zones_.marked(a) ? mark : around) += path_data(l.of(a.rings), true);
        }
        sheet_.path(others, around);
        if (!view_.edge.empty() && face) {
            sheet_.path("pd-e", path_data(l.of(view_.edge), false));
        }
        sheet_.path(these, mark);
        for (const drawn_mark& m : view_.marks) {
            if (m.zone) {
                continue;
            }
            if (face && !m.path.empty()) {
                sheet_.path(m.filled ? "pd-k" : "pd-y", path_data(l.of(m.path), false));
            } else if (face) {
                const drawn_point at = l.of(m.at);
                sheet_.dot("pd-k", at.x, at.y, m.size * l.scale);
            }
        }
    }

    /// As many large arrows as there is room for, at most four in a ring.
    void arrows(const drawn_area& a) {
        for (std::size_t i = 0; i < a.rings.size(); ++i) {
            const polygon ring = in_window(a.rings[i], near_);
            std::size_t drawn = 0;
            for (const double size : {120.0, 84.0, 60.0, 42.0}) {
                const bool another = drawn == 0;  // all of one size
                while (another && ring.size() > 2 && drawn < 4) {
                    const auto at = room_in(ring, size, size, taken_);
                    if (!at) {
                        break;
                    }
                    taken_.push_back(around(*at, size, size));
                    const std::string data = arrow_data(*at, a.strokes[i], size, size * 0.22);
                    sheet_.path("pd-aw", data);
                    sheet_.path("pd-a", data);
                    ++drawn;
                    arrows_ = true;
                }
            }
        }
    }

    /// The dog small, with the place in it. Where it ends.
    double whole_dog() {
        const extent e = whole_of(view_);
        constexpr double high = 150.0;
        const double scale = std::min(high / (e.bottom - e.top), 230.0 / (e.right - e.left));
        const double top = window_high + 16.0;
        const lens l{e.left - 20.0 / scale, e.top - top / scale, scale};
        dog(l, "pd-f", "pd-in", false);
        sheet_.text(280.0, top + 44.0, "on the dog, " + view_title(view_.from));
        if (arrows_) {
            sheet_.path("pd-ln", "M282 " + whole(top + 96.0) + "h56m-12 -10l12 10l-12 10");
            sheet_.text(352.0, top + 96.0, "way of the stroke, with the lay");
        }
        return top + high + 16.0;
    }

    zones_in_view zones_;
    const drawn_view& view_;
    const body& body_;
    lens near_;
    chart sheet_;
    std::vector<text_box> taken_;
    bool arrows_ = false;
    std::string words_;
};

/// What a trainee needs with the picture, where no page says it.
picture_part words_of(const place_card& c, const body& b) {
    chart sheet;
    double y = 10.0;
    std::string all;
    for (const zone_card& one : c.zones) {
        const zone& z = b.zones[one.zone];
        const std::string lead = c.zones.size() > 1 ? z.title + ": " : "";
        for (const auto& [what, text] :
             {std::pair{"Hold: ", z.hold},
              {"Hold an old, ailing, pregnant or nursing dog: ", z.hold_frail},
              {"Way: ", z.stroke},
              {"Mind: ", z.hazard}}) {
            if (text.empty()) {
                continue;
            }
            const std::string said = lead + what + text + ".";
            all += (all.empty() ? "" : " ") + said;
            for (const std::string& line :
                 lines_within(said, chart_width - 48.0, name_size, false)) {
                y += 34.0;
                sheet.text(24.0, y, line);
            }
            y += 8.0;
        }
    }
    return sheet.finish("words", all, y + 30.0);
}

}  // namespace

std::optional<dog_picture> picture_of(const place_card& c, const lookup_request& r,
                                      const outline& o, bool alone) {
    const body& b = r.reference.dog_body;
    std::set<std::size_t> zones;
    for (const zone_card& one : c.zones) {
        zones.insert(one.zone);
    }
    const auto& where = c.asked.places;
    const bool right =
        !where.empty() && std::all_of(where.begin(), where.end(),
                                      [](const place& p) { return p.which == side::right; });
    dog_picture out;
    out.title = c.asked.word;
    out.style = picture_style(o) + chart_style();
    out.chart = true;
    for (const drawn_view& v : views_of(o, look_of(o, r.breed), b)) {
        place_drawing drawing(v, zones, b);
        const bool other_side = v.from == (right ? drawn_side::left : drawn_side::right);
        if (!other_side && !drawing.empty()) {
            out.parts.push_back(drawing.run());
        }
    }
    if (out.parts.empty()) {
        return std::nullopt;
    }
    constexpr std::size_t most_told = 3;  // of more zones the page tells more
    if (alone && c.zones.size() <= most_told) {
        out.parts.push_back(words_of(c, b));
    }
    return out;
}

}  // namespace pelage::io
