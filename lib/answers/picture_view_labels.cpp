// A view of a dog: what its labels say, and how they are drawn once they have their places.
#include <algorithm>
#include <cmath>

#include "answers/picture_view.hpp"
#include "answers/words/picture.hpp"

namespace pelage::io {

namespace {

/// Words on one line, or on two where they are long: broken after a colon, else near the middle.
void add_words(const std::string& words, double size, bool bold, std::vector<label_line>& to) {
    const auto colon = words.find(": ");
    if (words.size() <= 12 || words.find(' ') == std::string::npos) {
        to.push_back({words, size, bold});
        return;
    }
    std::size_t at = colon == std::string::npos ? 0 : colon + 1;
    for (std::size_t i = words.find(' '); colon == std::string::npos && i != std::string::npos;
         i = words.find(' ', i + 1)) {
        const auto off = [&](std::size_t k) {
            return k > words.size() / 2 ? k - words.size() / 2 : words.size() / 2 - k;
        };
        at = at == 0 || off(i) < off(at) ? i : at;
    }
    to.push_back({words.substr(0, at), size, bold});
    to.push_back({words.substr(at + 1), size, bold});
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
    std::vector<label_line> lines;
    const std::string beside = p->differs ? "\u2260 " : p->alike ? "= " : "";
    add_words(beside + short_title(v.names.zones[a.at.zone]), name_size, false, lines);
    if (!figure.empty()) {
        add_words(figure + (p->later ? " later" : ""), figure_size, !p->later, lines);
    }
    if (p->noted) {
        lines.push_back({"see text", name_size, false});
    }
    if (p->round) {
        add_words(round_words(*p), name_size, true, lines);
    }
    if (p->mat) {
        add_words(mat_label(*p), name_size, false, lines);
    }
    return lines;
}

/// Of labels outside: their leaders, and what those end in.
std::string leaders_drawn(const std::vector<placed_label>& labels) {
    std::string leaders;
    std::string ends;
    std::string signs;
    for (const placed_label& l : labels) {
        if (l.inside) {
            continue;
        }
        leaders += "M" + whole(l.from.x) + " " + whole(l.from.y) + "L" + whole(l.anchor.x) + " " +
                   whole(l.anchor.y);
        signs += l.warns ? warning_at(l.anchor) : "";
        ends += l.warns ? "" : "M" + whole(l.anchor.x) + " " + whole(l.anchor.y) + "h0";
    }
    return (leaders.empty() ? "" : path_of("pd-rw", leaders) + path_of("pd-r", leaders)) +
           (ends.empty() ? "" : path_of("pd-dh", ends) + path_of("pd-d", ends)) + signs;
}

}  // namespace

bool warns(const pictured_place& p) {
    return p.as == shown_as::skin || p.as == shown_as::vet || p.round;
}

std::vector<place> labelled_places(const pictured_view& v) {
    std::vector<place> out;
    for (const drawn_area& a : v.view.areas) {
        if (!lines_of(a, v).empty()) {
            out.push_back(a.at);
        }
    }
    return out;
}

std::vector<wanted_label> labels_of(const pictured_view& v) {
    std::vector<wanted_label> out;
    for (std::size_t i = 0; i < v.view.areas.size(); ++i) {
        const drawn_area& a = v.view.areas[i];
        const std::vector<label_line> lines = lines_of(a, v);
        if (lines.empty()) {
            continue;
        }
        const std::vector<prepared_ring>& rings = v.ready.rings[i];
        double most = 0.0;
        for (const prepared_ring& r : rings) {
            most = std::max(most, r.size);
        }
        for (const prepared_ring& r : rings) {
            if (r.size > most / 3.0) {
                out.push_back({r.of, lines, r.above, warns(*v.told(a.at)), r.inmost});
            }
        }
    }
    return out;
}

std::string labels_drawn(const std::vector<placed_label>& labels) {
    std::string out = leaders_drawn(labels);
    for (const placed_label& l : labels) {
        const text_box& b = l.box;
        const bool bare =
            !l.inside && std::none_of(labels.begin(), labels.end(), [&](const auto& o) {
                return !o.inside && through(b, o.from, o.anchor);
            });
        out += bare ? ""
                    : "<rect class=\"" + std::string(l.inside ? "pd-t" : "pd-q") + "\" x=\"" +
                          whole(b.left) + "\" y=\"" + whole(b.top) + "\" width=\"" +
                          whole(b.width) + "\" height=\"" + whole(b.height) + "\" rx=\"6\"/>\n";
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
