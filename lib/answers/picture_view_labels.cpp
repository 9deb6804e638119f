// A view of a dog: what its labels say, and how they are drawn once they have their places.
#include <algorithm>
#include <cmath>

#include "answers/picture_view.hpp"
#include "answers/words/picture.hpp"

namespace pelage::io {

namespace {

double area_of(const polygon& p) {
    double twice = 0.0;
    for (std::size_t i = 0; i < p.size(); ++i) {
        const drawn_point& a = p[i];
        const drawn_point& b = p[(i + 1) % p.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return std::abs(twice) / 2.0;
}

/// A name on one line, or on two where it is long.
std::vector<label_line> name_lines(const std::string& name) {
    constexpr double size = name_size;
    if (name.size() <= 12 || name.find(' ') == std::string::npos) {
        return {{name, size, false}};
    }
    std::size_t at = 0;
    for (std::size_t i = name.find(' '); i != std::string::npos; i = name.find(' ', i + 1)) {
        const auto off = [&](std::size_t k) {
            return k > name.size() / 2 ? k - name.size() / 2 : name.size() / 2 - k;
        };
        at = at == 0 || off(i) < off(at) ? i : at;
    }
    return {{name.substr(0, at), size, false}, {name.substr(at + 1), size, false}};
}

/// What a place has on its label; empty where it has none.
std::vector<label_line> lines_of(const drawn_area& a, const pictured_view& v) {
    const pictured_place* p = v.told(a.at);
    if (p == nullptr || !a.home) {
        return {};
    }
    const std::string figure = figure_words(*p, v.asked.units);
    if (figure.empty() && !p->mat && !p->round) {
        return {};
    }
    std::vector<label_line> lines = name_lines(short_title(v.names.zones[a.at.zone]));
    if (!figure.empty()) {
        lines.push_back({figure, figure_size, true});
    }
    if (p->round) {
        lines.push_back({round_words(*p), name_size, true});
    }
    if (p->mat) {
        lines.push_back({mat_words(*p), name_size, false});
    }
    return lines;
}

/// Seen from a side, nothing of the dog is above the middle of it.
bool under_the_sky(const polygon& ring, const drawn_view& v, const std::vector<polygon>& solid) {
    if (v.from == drawn_side::below) {
        return false;
    }
    drawn_point q = innermost(ring);
    while (within(ring, q)) {
        q.y -= 4.0;
    }
    q.y -= 8.0;
    return std::none_of(solid.begin(), solid.end(), [&](const polygon& p) {
        return std::any_of(p.begin(), p.end(),
                           [&](const drawn_point& one) {
                               return std::abs(one.x - q.x) < 12.0 && one.y < q.y - 12.0;
                           }) ||
               within(p, q);
    });
}

/// Of labels outside: their leaders, and what those end in.
std::string leaders_drawn(const std::vector<placed_label>& labels) {
    std::string leaders;
    std::string ends;
    for (const placed_label& l : labels) {
        if (l.inside) {
            continue;
        }
        leaders += "M" + whole(l.from.x) + " " + whole(l.from.y) + "L" + whole(l.anchor.x) + " " +
                   whole(l.anchor.y);
        ends += l.warns ? warning_at(l.anchor)
                        : "<circle class=\"pd-d\" cx=\"" + whole(l.anchor.x) + "\" cy=\"" +
                              whole(l.anchor.y) + "\" r=\"6\"/>\n";
    }
    return (leaders.empty() ? "" : path_of("pd-rw", leaders) + path_of("pd-r", leaders)) + ends;
}

}  // namespace

std::vector<place> labelled_places(const pictured_view& v) {
    std::vector<place> out;
    for (const drawn_area& a : v.view.areas) {
        if (!lines_of(a, v).empty()) {
            out.push_back(a.at);
        }
    }
    return out;
}

std::vector<wanted_label> labels_of(const pictured_view& v, const std::vector<polygon>& solid) {
    std::vector<wanted_label> out;
    for (const drawn_area& a : v.view.areas) {
        const std::vector<label_line> lines = lines_of(a, v);
        if (lines.empty()) {
            continue;
        }
        double most = 0.0;
        for (const drawn_path& r : a.rings) {
            most = std::max(most, area_of(flattened(r)));
        }
        for (const drawn_path& r : a.rings) {
            polygon ring = flattened(r);
            if (area_of(ring) > most / 3.0) {
                const bool above = under_the_sky(ring, v.view, solid);
                out.push_back(
                    {std::move(ring), lines, above,
                     v.told(a.at)->as == shown_as::skin || v.told(a.at)->round.has_value()});
            }
        }
    }
    return out;
}

std::string labels_drawn(const std::vector<placed_label>& labels) {
    std::string out = leaders_drawn(labels);
    for (const placed_label& l : labels) {
        const text_box& b = l.box;
        out += "<rect class=\"" + std::string(l.inside ? "pd-t" : "pd-q") + "\" x=\"" +
               whole(b.left) + "\" y=\"" + whole(b.top) + "\" width=\"" + whole(b.width) +
               "\" height=\"" + whole(b.height) + "\" rx=\"6\"/>\n";
        double y = b.top + 2.0;
        for (const label_line& line : l.lines) {
            const double high = std::ceil(line.size * 1.2);
            const std::string kind = line.bold ? "pd-x" : "pd-n";
            out += text_at(l.inside ? kind : kind + " pd-o", b.left + b.width / 2.0,
                           y + high * 0.78, line.text);
            y += high;
        }
    }
    return out;
}

std::vector<text_box> names_of_sides(const std::vector<polygon>& solid,
                                     const std::vector<placed_label>& labels) {
    std::vector<text_box> out;
    const raster full(solid);
    extent all;
    for (const polygon& p : solid) {
        all.add(p);
    }
    for (const double way : {-1.0, 1.0}) {
        const std::string text = way < 0.0 ? "dog's left" : "dog's right";
        const double wide = text_width(text, name_size, false);
        const double high = std::ceil(name_size * 1.2);
        const auto free = [&](const text_box& b) {
            return full.is_free(b) &&
                   std::none_of(labels.begin(), labels.end(), [&](const placed_label& l) {
                       return overlap(l.box, b) || (!l.inside && through(b, l.from, l.anchor));
                   });
        };
        text_box b;
        double y = way * 90.0;
        do {
            for (double x = all.left; x < all.left + 240.0; x += 12.0) {
                b = {x, y - high / 2.0, wide, high, text};
                if (free(b)) {
                    break;
                }
            }
            y += way * 10.0;
        } while (!free(b));
        out.push_back(std::move(b));
    }
    return out;
}

}  // namespace pelage::io
