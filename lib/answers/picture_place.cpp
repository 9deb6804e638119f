// A place of the dog enlarged, with the way of the stroke; beside it where on the dog it is.
#include <algorithm>
#include <cmath>
#include <set>

#include <pelage/answers/illustrated.hpp>

#include "answers/chart.hpp"
#include "answers/picture_svg.hpp"
#include "answers/words/picture.hpp"

namespace pelage::io {

namespace {

constexpr double window_wide = 800.0;
constexpr double window_high = 600.0;

/// What of a polygon lies in a box: cut at each of its sides in turn (Sutherland & Hodgman 1974).
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

/// From the drawing of the dog to that of the window.
struct lens {
    double left = 0.0;
    double top = 0.0;
    double scale = 1.0;
    [[nodiscard]] drawn_point of(const drawn_point& p) const {
        return {(p.x - left) * scale, (p.y - top) * scale};
    }
    [[nodiscard]] drawn_path of(drawn_path p) const {
        for (drawn_curve& c : p) {
            c = {of(c.from), of(c.out), of(c.in), of(c.to)};
        }
        return p;
    }
    [[nodiscard]] std::vector<drawn_path> of(std::vector<drawn_path> all) const {
        for (drawn_path& p : all) {
            p = of(std::move(p));
        }
        return all;
    }
};

void add(extent& e, const std::vector<drawn_path>& all) {
    for (const drawn_path& p : all) {
        e.add(flattened(p));
    }
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

class place_drawing {
  public:
    place_drawing(const drawn_view& v, const std::set<std::size_t>& zones, const body& b)
        : view_(v), zones_(zones), body_(b) {}

    /// Nothing of them is at home here.
    [[nodiscard]] bool empty() const {
        return std::none_of(view_.areas.begin(), view_.areas.end(),
                            [&](const drawn_area& a) { return marked(a); });
    }

    [[nodiscard]] picture_part run() {
        near_ = near_lens();
        const text_box window{0.0, 0.0, window_wide, window_high, {}};
        sheet_.within(window, [&] {
            dog(near_, "pd-dm", "pd-mk", true);
            parts();
        });
        name_parts();
        for (const drawn_area& a : view_.areas) {
            if (marked(a) && zones_.size() > 1) {
                name(a);
            }
        }
        for (const drawn_area& a : view_.areas) {
            if (marked(a)) {
                arrows(a);
            }
        }
        for (const drawn_area& a : view_.areas) {
            if (!marked(a) && zones_.size() == 1) {
                name_inside(a);
            }
        }
        const double bottom = whole_dog();
        return sheet_.finish(view_title(view_.from), words_ + ".", bottom);
    }

  private:
    [[nodiscard]] bool marked(const drawn_area& a) const {
        return a.home && zones_.contains(a.at.zone);
    }

    [[nodiscard]] bool shown_here(const drawn_mark& m) const {
        return m.zone && zones_.size() == 1 && zones_.contains(*m.zone);
    }
    /// What is in the place: hatched where there is danger.
    void parts() {
        for (const drawn_mark& m : view_.marks) {
            if (!shown_here(m)) {
                continue;
            }
            if (m.path.empty()) {
                const drawn_point at = near_.of(m.at);
                sheet_.dot("pd-in", at.x, at.y, m.size * near_.scale);
            } else {
                sheet_.path(m.filled ? "pd-w pd-wt" : "pd-sg", path_data(near_.of(m.path), false));
            }
        }
    }
    void name_parts() {
        for (const drawn_mark& m : view_.marks) {
            if (!shown_here(m)) {
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
            beside(m.says, at, true);
        }
    }

    static extent of_first(const drawn_area& a) {
        extent e;
        e.add(flattened(a.rings.front()));
        return e;
    }

    /// On the places, with something of what is around them.
    [[nodiscard]] lens near_lens() {
        extent e;
        extent one;  // of several rings the first, where they lie far apart
        for (const drawn_area& a : view_.areas) {
            if (marked(a)) {
                add(e, a.rings);
                one = one.left < one.right ? one : of_first(a);
                words_ +=
                    (words_.empty() ? "marked: " : ", ") + short_title(body_.zones[a.at.zone]);
            }
        }
        const bool scattered =
            zones_.size() == 1 && one.right - one.left < 0.25 * (e.right - e.left);
        e = scattered ? one : e;
        for (const drawn_mark& m : view_.marks) {
            if (shown_here(m) && !m.path.empty()) {
                e.add(flattened(m.path));
            }
        }
        constexpr double least = 130.0;  // of the dog's drawing: no place fills the window
        const double around = 1.5;
        const double wide = std::max({least, around * (e.right - e.left),
                                      around * (e.bottom - e.top) * window_wide / window_high});
        const double scale = window_wide / wide;
        const extent dog = whole_of(view_);
        const auto placed = [](double low, double high, double first, double last, double size) {
            const double middle = (low + high - size) / 2.0;
            return last - first + 20.0 < size
                       ? (first + last - size) / 2.0
                       : std::clamp(middle, first - 10.0, last + 10.0 - size);
        };
        return {placed(e.left, e.right, dog.left, dog.right, wide),
                placed(e.top, e.bottom, dog.top, dog.bottom, window_high / scale), scale};
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
            (marked(a) ? mark : around) += path_data(l.of(a.rings), true);
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
            const polygon ring = in_window(a.rings[i]);
            std::size_t drawn = 0;
            for (const double size : {120.0, 84.0, 60.0, 42.0}) {
                const bool another = drawn == 0;  // all of one size
                while (another && ring.size() > 2 && drawn < 4) {
                    const auto at = room_in(ring, size, size, taken_);
                    if (!at) {
                        break;
                    }
                    taken_.push_back(around(*at, size, size));
                    const std::string data = arrow(*at, a.strokes[i], size);
                    sheet_.path("pd-aw", data);
                    sheet_.path("pd-a", data);
                    ++drawn;
                    arrows_ = true;
                }
            }
        }
    }

    static std::string arrow(const drawn_point& at, const drawn_point& stroke, double size) {
        const double norm = std::hypot(stroke.x, stroke.y);
        const drawn_point way{stroke.x / norm, stroke.y / norm};
        const double half = size * 0.42;
        const drawn_point tip{at.x + half * way.x, at.y + half * way.y};
        const double head = size * 0.22;
        const auto barb = [&](double turned) {
            return "L" + whole(tip.x - head * way.x - turned * head * 0.8 * way.y) + " " +
                   whole(tip.y - head * way.y + turned * head * 0.8 * way.x);
        };
        const std::string end = whole(tip.x) + " " + whole(tip.y);
        return "M" + whole(at.x - half * way.x) + " " + whole(at.y - half * way.y) + "L" + end +
               barb(1.0) + "M" + end + barb(-1.0);
    }

    [[nodiscard]] polygon in_window(const drawn_path& ring) const {
        return cut_to(flattened(near_.of(ring)),
                      {6.0, 6.0, window_wide - 12.0, window_high - 12.0, {}});
    }
    /// The largest of its rings that is seen.
    [[nodiscard]] polygon largest(const drawn_area& a) const {
        polygon out;
        double most = 0.0;
        for (const drawn_path& r : a.rings) {
            polygon p = in_window(r);
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

    [[nodiscard]] text_box box_for(const std::string& text) const {
        return chart::box_of(0.0, 0.0, text, stands::left, false);
    }
    bool name_inside(const drawn_area& a) {
        const std::string text = short_title(body_.zones[a.at.zone]);
        const polygon ring = largest(a);
        const text_box b = box_for(text);
        const auto at =
            ring.size() < 3 ? std::nullopt : room_in(ring, b.width + 12.0, b.height + 6.0, taken_);
        if (at) {
            write(text, *at);
        }
        return at.has_value();
    }
    void write(const std::string& text, const drawn_point& at) {
        text_box b = chart::box_of(at.x, at.y, text, stands::middle, false);
        taken_.push_back(b);
        b.left -= 4.0;
        b.width += 8.0;
        sheet_.rect("pd-cl", b, 6.0);
        sheet_.text(at.x, at.y, text, stands::middle);
    }
    /// Inside, or beside it at the end of a line.
    void name(const drawn_area& a) {
        const polygon ring = largest(a);
        if (ring.size() < 3 || name_inside(a)) {
            return;
        }
        beside(short_title(body_.zones[a.at.zone]), innermost(ring));
    }
    /// At the end of a line that leads there.
    void beside(const std::string& text, const drawn_point& anchor, bool off_the_dog = false) {
        const text_box b = box_for(text);
        std::optional<drawn_point> best;
        double least = 1e9;
        for (double y = b.height; y < window_high - b.height; y += 10.0) {
            for (double x = b.width / 2.0 + 12.0; x < window_wide - b.width / 2.0 - 12.0;
                 x += 10.0) {
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
    /// A leader over no text; of one that stands, no text comes on it.
    [[nodiscard]] bool leads_clear(const drawn_point& from, const drawn_point& anchor) const {
        return std::none_of(taken_.begin(), taken_.end(), [&](const text_box& t) {
            return !overlap(t, around(anchor, 4.0, 4.0)) && through(t, from, anchor);
        });
    }
    void keep_clear(const drawn_point& from, const drawn_point& anchor) {
        constexpr double each = 12.0;
        const double all = std::hypot(from.x - anchor.x, from.y - anchor.y);
        for (double at = each; at < all; at += each) {
            taken_.push_back(around({anchor.x + (from.x - anchor.x) * at / all,
                                     anchor.y + (from.y - anchor.y) * at / all},
                                    8.0, 8.0));
        }
    }
    /// Of texts, arrows and marked places, or of all the dog.
    [[nodiscard]] bool is_clear(const text_box& b, bool off_the_dog) const {
        if (std::any_of(taken_.begin(), taken_.end(),
                        [&](const text_box& t) { return overlap(t, b); })) {
            return false;
        }
        for (const drawn_area& a : view_.areas) {
            for (const drawn_path& r :
                 marked(a) || off_the_dog ? a.rings : std::vector<drawn_path>{}) {
                const polygon p = flattened(near_.of(r));
                const drawn_point middle{b.left + b.width / 2.0, b.top + b.height / 2.0};
                if (pelage::io::within(p, middle) ||
                    std::any_of(p.begin(), p.end(), [&](const drawn_point& q) {
                        return q.x > b.left && q.x < b.left + b.width && q.y > b.top &&
                               q.y < b.top + b.height;
                    })) {
                    return false;
                }
            }
        }
        return true;
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

    const drawn_view& view_;
    const std::set<std::size_t>& zones_;
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
             {std::pair{"Hold: ", z.hold}, {"Way: ", z.stroke}, {"Mind: ", z.hazard}}) {
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
