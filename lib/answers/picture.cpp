// The views of a dog with what is left of its coat.
#include "answers/words/picture.hpp"

#include <algorithm>
#include <cmath>

#include <pelage/answers/picture.hpp>

#include "answers/chart.hpp"
#include "answers/markup.hpp"
#include "answers/picture_labels.hpp"
#include "answers/picture_svg.hpp"

namespace pelage::io {

namespace {

constexpr double air = 16.0;  ///< around a view

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

class view_drawing {
  public:
    view_drawing(const drawn_view& v, const picture_request& p, const outline& o, const body& b,
                 signs_used& used)
        : view_(v), request_(p), outline_(o), body_(b), used_(used) {}

    [[nodiscard]] picture_part run() {
        for (const drawn_path& p : view_.far) {
            solid_.push_back(flattened(p));
        }
        for (const drawn_path& p : view_.ground) {
            solid_.push_back(flattened(p));
        }
        for (const drawn_area& a : view_.areas) {
            for (const drawn_path& r : a.rings) {
                solid_.push_back(flattened(r));
            }
        }
        dog();
        const std::vector<placed_label> labels = place_labels(wanted_labels(), solid_);
        arrows(labels);
        write(labels);
        if (view_.from == drawn_side::below) {
            name_sides(labels);
        }
        return finish(labels);
    }

  private:
    [[nodiscard]] const pictured_place* told(const place& at) const {
        const auto p = std::find_if(request_.places.begin(), request_.places.end(),
                                    [&](const pictured_place& one) { return one.at == at; });
        return p == request_.places.end() ? nullptr : &*p;
    }

    void dog() {
        out_ += view_.far.empty() ? "" : path_of("pd-f", path_data(view_.far, true));
        out_ += view_.ground.empty() ? "" : path_of("pd-g", path_data(view_.ground, true));
        std::string mats;
        std::string sores;
        std::string bands;
        std::string leather;
        for (const drawn_area& a : view_.areas) {
            const pictured_place* p = told(a.at);
            const std::string data = path_data(a.rings, true);
            const bool carded =
                p != nullptr && (p->as == shown_as::carded || p->as == shown_as::stripped);
            const bool bare = p == nullptr || p->as == shown_as::unsaid || carded;
            const bool sore = p != nullptr && p->as == shown_as::skin;
            const bool cut = p != nullptr && p->as == shown_as::cut && p->leaves;
            out_ += path_of(cut            ? shade_class(shade_of(outline_, *p->leaves))
                            : bare || sore ? "pd-z pd-p"
                                           : "pd-z pd-l",
                            data);
            used_.left = used_.left || (!cut && !bare && !sore);
            used_.carded = used_.carded || carded;
            used_.sore = used_.sore || sore;
            leather += body_.zones[a.at.zone].id == "ear" ? data : "";
            if (sore) {
                sores += path_of("pd-w", data);
                bands += edges_towards(a);
            }
            if (p != nullptr && p->mat) {
                mats += path_of("pd-m", data);
                used_.mat = true;
            }
        }
        out_ += mats + seams();
        out_ += leather.empty() ? "" : path_of("pd-e", leather);
        out_ += view_.edge.empty() ? "" : path_of("pd-e", path_data(view_.edge, false));
        out_ += (bands.empty() ? "" : path_of("pd-wb", bands)) + sores;
        for (const drawn_mark& m : view_.marks) {
            if (m.zone) {
                continue;
            }
            out_ += m.path.empty() ? "<circle class=\"pd-k\" cx=\"" + whole(m.at.x) + "\" cy=\"" +
                                         whole(m.at.y) + "\" r=\"" + whole(m.size) + "\"/>\n"
                                   : path_of(m.filled ? "pd-k" : "pd-y", path_data(m.path, false));
        }
    }

    /// The lines on which neighbours, which mind it, meet hurt skin.
    [[nodiscard]] std::string edges_towards(const drawn_area& sore) const {
        std::string out;
        for (const drawn_area& a : view_.areas) {
            const pictured_place* p = told(a.at);
            if (p != nullptr && p->beside_sore) {
                out += path_data(shared_edge(sore, a), false);
            }
        }
        return out;
    }

    [[nodiscard]] const drawn_area* area_at(const place& at) const {
        const auto a = std::find_if(view_.areas.begin(), view_.areas.end(),
                                    [&](const drawn_area& one) { return one.at == at; });
        return a == view_.areas.end() ? nullptr : &*a;
    }

    [[nodiscard]] std::string seams() {
        std::string lines;
        std::string blends;
        for (const pictured_seam& s : request_.seams) {
            const drawn_area* one = area_at(s.one);
            const drawn_area* other = area_at(s.other);
            if (one == nullptr || other == nullptr) {
                continue;
            }
            const std::vector<drawn_path> shared = shared_edge(*one, *other);
            if (!shared.empty()) {
                (s.blended ? blends : lines) += path_data(shared, false);
            }
        }
        used_.line = used_.line || !lines.empty();
        used_.blended = used_.blended || !blends.empty();
        return (lines.empty() && blends.empty() ? "" : path_of("pd-bw", lines + blends)) +
               (lines.empty() ? "" : path_of("pd-s", lines)) +
               (blends.empty() ? "" : path_of("pd-b", blends));
    }

    /// A label for each ring of the places at home here; slivers have none beside a large one.
    [[nodiscard]] std::vector<wanted_label> wanted_labels() {
        std::vector<wanted_label> out;
        for (const drawn_area& a : view_.areas) {
            const pictured_place* p = told(a.at);
            const std::string figure = p == nullptr ? "" : figure_words(*p, request_.units);
            if (!a.home || figure.empty()) {
                continue;
            }
            home_.push_back(a.at);
            std::vector<label_line> lines = name_lines(short_title(body_.zones[a.at.zone]));
            lines.push_back({figure, figure_size, true});
            if (p->mat) {
                lines.push_back({mat_words(*p), name_size, false});
            }
            double most = 0.0;
            for (const drawn_path& r : a.rings) {
                most = std::max(most, area_of(flattened(r)));
            }
            for (const drawn_path& r : a.rings) {
                polygon ring = flattened(r);
                if (area_of(ring) > most / 3.0) {
                    const bool above = under_the_sky(ring);
                    out.push_back({std::move(ring), lines, above, p->as == shown_as::skin});
                }
            }
        }
        return out;
    }

    /// Seen from a side, nothing of the dog is above the middle of it.
    [[nodiscard]] bool under_the_sky(const polygon& ring) const {
        if (view_.from == drawn_side::below) {
            return false;
        }
        drawn_point q = innermost(ring);
        while (within(ring, q)) {
            q.y -= 4.0;
        }
        q.y -= 8.0;
        return std::none_of(solid_.begin(), solid_.end(), [&](const polygon& p) {
            return std::any_of(p.begin(), p.end(),
                               [&](const drawn_point& one) {
                                   return std::abs(one.x - q.x) < 12.0 && one.y < q.y - 12.0;
                               }) ||
                   within(p, q);
        });
    }

    void arrows(const std::vector<placed_label>& labels) {
        std::vector<text_box> taken;
        for (const placed_label& l : labels) {
            taken.push_back(l.box);
            if (!l.inside) {
                taken.push_back({l.anchor.x - 7.0, l.anchor.y - 7.0, 14.0, 14.0, {}});
            }
        }
        std::string data;
        for (const drawn_area& a : view_.areas) {
            const pictured_place* p = told(a.at);
            if (p == nullptr || !p->stroke) {
                continue;
            }
            for (std::size_t i = 0; i < a.rings.size(); ++i) {
                data += arrow(flattened(a.rings[i]), a.strokes[i],
                              *p->stroke == direction::against_lay, taken);
            }
        }
        used_.stroke = used_.stroke || !data.empty();
        out_ += data.empty() ? "" : path_of("pd-aw", data) + path_of("pd-a", data);
    }

    /// An arrow where it has room in the ring.
    static std::string arrow(const polygon& ring, const drawn_point& stroke, bool back,
                             std::vector<text_box>& taken) {
        for (const double size : {46.0, 32.0}) {
            const auto at = room_in(ring, size, size, taken);
            if (!at) {
                continue;
            }
            taken.push_back({at->x - size / 2.0, at->y - size / 2.0, size, size, {}});
            const double norm = std::hypot(stroke.x, stroke.y) * (back ? -1.0 : 1.0);
            const drawn_point way{stroke.x / norm, stroke.y / norm};
            const double half = size * 0.42;
            const drawn_point tip{at->x + half * way.x, at->y + half * way.y};
            const double head = size * 0.26;
            const auto barb = [&](double turned) {
                return "L" + whole(tip.x - head * way.x - turned * head * 0.8 * way.y) + " " +
                       whole(tip.y - head * way.y + turned * head * 0.8 * way.x);
            };
            const std::string end = whole(tip.x) + " " + whole(tip.y);
            return "M" + whole(at->x - half * way.x) + " " + whole(at->y - half * way.y) + "L" +
                   end + barb(1.0) + "M" + end + barb(-1.0);
        }
        return {};
    }

    void write(const std::vector<placed_label>& labels) {
        std::string leaders;
        for (const placed_label& l : labels) {
            leaders += l.inside ? ""
                                : "M" + whole(l.from.x) + " " + whole(l.from.y) + "L" +
                                      whole(l.anchor.x) + " " + whole(l.anchor.y);
        }
        out_ += leaders.empty() ? "" : path_of("pd-rw", leaders) + path_of("pd-r", leaders);
        for (const placed_label& l : labels) {
            if (!l.inside && l.warns) {
                out_ += warning_at(l.anchor);
            } else if (!l.inside) {
                out_ += "<circle class=\"pd-d\" cx=\"" + whole(l.anchor.x) + "\" cy=\"" +
                        whole(l.anchor.y) + "\" r=\"6\"/>\n";
            }
        }
        for (const placed_label& l : labels) {
            const text_box& b = l.box;
            out_ += "<rect class=\"" + std::string(l.inside ? "pd-t" : "pd-q") + "\" x=\"" +
                    whole(b.left) + "\" y=\"" + whole(b.top) + "\" width=\"" + whole(b.width) +
                    "\" height=\"" + whole(b.height) + "\" rx=\"6\"/>\n";
            double y = b.top + 2.0;
            for (const label_line& line : l.lines) {
                const double high = std::ceil(line.size * 1.2);
                const std::string kind = line.bold ? "pd-x" : "pd-n";
                out_ += text_at(l.inside ? kind : kind + " pd-o", b.left + b.width / 2.0,
                                y + high * 0.78, line.text);
                y += high;
            }
        }
    }

    /// Whose left and right: beside the head, where there is room.
    void name_sides(const std::vector<placed_label>& labels) {
        const raster solid(solid_);
        extent all;
        for (const polygon& p : solid_) {
            all.add(p);
        }
        for (const double way : {-1.0, 1.0}) {
            const std::string text = way < 0.0 ? "dog's left" : "dog's right";
            const double wide = text_width(text, name_size, false);
            const double high = std::ceil(name_size * 1.2);
            const auto free = [&](const text_box& b) {
                return solid.is_free(b) &&
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
            out_ += text_at("pd-n pd-o", b.left + wide / 2.0, b.top + high * 0.78, text);
            sides_.push_back(std::move(b));
        }
    }

    /// Moved so that all of it lies right of and below 0.
    [[nodiscard]] picture_part finish(const std::vector<placed_label>& labels) {
        double left = 1e9;
        double top = 1e9;
        double right = -1e9;
        double bottom = -1e9;
        const auto add = [&](double x, double y) {
            left = std::min(left, x - air);
            top = std::min(top, y - air);
            right = std::max(right, x + air);
            bottom = std::max(bottom, y + air);
        };
        for (const polygon& p : solid_) {
            for (const drawn_point& q : p) {
                add(q.x, q.y);
            }
        }
        picture_part out;
        for (const placed_label& l : labels) {
            add(l.box.left, l.box.top);
            add(l.box.left + l.box.width, l.box.top + l.box.height);
            out.texts.push_back(l.box);
        }
        for (const text_box& b : sides_) {
            add(b.left, b.top);
            add(b.left + b.width, b.top + b.height);
            out.texts.push_back(b);
        }
        left = std::floor(left);
        top = std::floor(top);
        for (text_box& t : out.texts) {
            t.left -= left;
            t.top -= top;
        }
        out.title = view_title(view_.from) +
                    (view_.from == drawn_side::right ? "; middle line: see from the left" : "");
        out.words = view_words(request_, home_, body_);
        out.width = std::ceil(right - left);
        out.height = std::ceil(bottom - top);
        out.drawn = "<g transform=\"translate(" + whole(-left) + " " + whole(-top) + ")\">\n" +
                    out_ + "</g>\n";
        return out;
    }

    const drawn_view& view_;
    const picture_request& request_;
    const outline& outline_;
    const body& body_;
    signs_used& used_;
    std::vector<polygon> solid_;
    std::vector<place> home_;
    std::vector<text_box> sides_;  ///< names of them
    std::string out_;
};

/// The two sides get one width, so that a page shows them on one scale.
void make_alike(picture_part& a, picture_part& b) {
    const double width = std::max(a.width, b.width);
    for (picture_part* p : {&a, &b}) {
        const double right = std::floor((width - p->width) / 2.0);
        p->drawn = "<g transform=\"translate(" + whole(right) + " 0)\">\n" + p->drawn + "</g>\n";
        for (text_box& t : p->texts) {
            t.left += right;
        }
        p->width = width;
    }
}

std::string opened(double width, double height, const std::string& title, const std::string& words,
                   bool file) {
    const std::string size = whole(width) + " " + whole(height);
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"pd\" role=\"img\" viewBox=\"0 0 " +
           size + "\"" +
           (file ? " width=\"" + whole(width) + "\" height=\"" + whole(height) + "\"" : "") +
           "><title>" + markup_safe(title) + "</title>" +
           (words.empty() ? "" : "<desc>" + markup_safe(words) + "</desc>") + "\n";
}

}  // namespace

dog_picture picture_of(const picture_request& p, const outline& o, const body& b) {
    dog_picture out;
    out.title = p.title;
    out.alerts = p.alerts;
    out.style = picture_style(o);
    signs_used used;
    for (const drawn_view& v : views_of(o, p.look, b)) {
        out.parts.push_back(view_drawing(v, p, o, b, used).run());
    }
    make_alike(out.parts[0], out.parts[1]);
    out.parts.push_back(key_of(o, used, p.units, map_words(p.of_breed)));
    return out;
}

std::string svg_of(const dog_picture& p, const std::vector<std::string>& card) {
    constexpr double head_size = 34.0;
    constexpr double between = 20.0;
    double width = 0.0;
    for (const picture_part& one : p.parts) {
        width = std::max(width, one.width);
    }
    std::string body;
    double y = 2.0;
    for (const std::string& one : lines_within(p.title, width - 20.0, head_size, true)) {
        y += 40.0;
        body += text_at("pd-h pd-o", width / 2.0, y, one);
    }
    y += 18.0;
    if (!p.alerts.empty()) {
        std::string text;
        for (const std::string& a : p.alerts) {
            text += (text.empty() ? "! " : "; ") + a;
        }
        for (const std::string& line : lines_within(text, width - 20.0, figure_size, true)) {
            body += text_at("pd-x pd-o", width / 2.0, y + 24.0, line);
            y += 40.0;
        }
        y += 10.0;
    }
    std::string words;
    for (const picture_part& one : p.parts) {
        const bool key = p.chart || &one == &p.parts.back();  // it says itself what it is
        body += key ? "" : text_at("pd-n pd-o", width / 2.0, y + 20.0, one.title);
        y += key ? 0.0 : 30.0;
        body += "<g transform=\"translate(" + whole((width - one.width) / 2.0) + " " + whole(y) +
                ")\">\n" + one.drawn + "</g>\n";
        y += one.height + between;
        words += (words.empty() ? "" : " ") + one.title + ": " + one.words;
    }
    for (const std::string& l : card) {
        y += 32.0;
        body += text_at("pd-c pd-o", 20.0, y, l);
    }
    y += card.empty() ? 0.0 : 30.0;
    return opened(width, y, p.title, words, true) + p.style +
           "<rect class=\"pd-q\" width=\"100%\" height=\"100%\"/>\n" + body + "</svg>\n";
}

namespace {

drawing drawing_of(const dog_picture& p, const picture_part& one, const std::string& style) {
    const bool alone = p.parts.size() == 1;  // the page is headed as it is
    const std::string title = p.title + (alone ? "" : ", " + one.title);
    return {opened(one.width, one.height, title, one.words, false) + style + one.drawn + "</svg>\n",
            alone ? "" : one.title,
            {},
            p.chart};
}

}  // namespace

std::vector<drawing> drawings_of(const dog_picture& p) {
    std::vector<drawing> out;
    for (const picture_part& one : p.parts) {
        out.push_back(drawing_of(p, one, out.empty() ? p.style : ""));
    }
    return out;
}

std::vector<drawing> more_drawings_of(const dog_picture& p) {
    // the sides, below, the key
    return {drawing_of(p, p.parts[0], ""), drawing_of(p, p.parts[2], "")};
}

drawing key_drawing(const outline& o, length_unit u) {
    const signs_used all{true, true, true, true, true, true, true};
    const dog_picture page{{key_of(o, all, u, "The outline is only a map.")},
                           "Key to the dogs drawn"};
    return drawing_of(page, page.parts.front(), picture_style(o));
}

}  // namespace pelage::io
