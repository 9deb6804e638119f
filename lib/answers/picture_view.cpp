// A view of a dog, put together: its coat, the way of the clipper, its labels.
#include "answers/picture_view.hpp"

#include <algorithm>
#include <cmath>

#include "answers/words/picture.hpp"

namespace pelage::io {

namespace {

std::vector<polygon> solid_of(const drawn_view& v) {
    std::vector<polygon> out;
    const auto add = [&](const std::vector<drawn_path>& all) {
        for (const drawn_path& p : all) {
            out.push_back(flattened(p));
        }
    };
    add(v.far);
    add(v.ground);
    for (const drawn_area& a : v.areas) {
        add(a.rings);
    }
    return out;
}

/// An arrow where it has room in the ring.
std::string arrow_in(const polygon& ring, const drawn_point& way, std::vector<text_box>& taken) {
    for (const double size : {46.0, 32.0}) {
        if (const auto at = room_in(ring, size, size, taken)) {
            taken.push_back({at->x - size / 2.0, at->y - size / 2.0, size, size, {}});
            return arrow_data(*at, way, size, size * 0.26);
        }
    }
    return {};
}

/// Boxes along a leader, so close that no arrow lies across it.
void keep_off_leader(const placed_label& l, std::vector<text_box>& taken) {
    constexpr double each = 12.0;
    const double all = std::hypot(l.from.x - l.anchor.x, l.from.y - l.anchor.y);
    for (double at = each; at < all; at += each) {
        const drawn_point q{l.anchor.x + (l.from.x - l.anchor.x) * at / all,
                            l.anchor.y + (l.from.y - l.anchor.y) * at / all};
        taken.push_back(around(q, each, each));
    }
}

/// The way of the clipper, where labels leave room for it.
std::string strokes_drawn(const pictured_view& v, const std::vector<placed_label>& labels,
                          signs_used& used) {
    std::vector<text_box> taken;
    for (const placed_label& l : labels) {
        taken.push_back(l.box);
        if (!l.inside) {
            taken.push_back({l.anchor.x - 7.0, l.anchor.y - 7.0, 14.0, 14.0, {}});
            keep_off_leader(l, taken);
        }
    }
    std::string data;
    for (const drawn_area& a : v.view.areas) {
        const pictured_place* p = v.told(a.at);
        if (p == nullptr || !p->stroke) {
            continue;
        }
        const double way = *p->stroke == direction::against_lay ? -1.0 : 1.0;
        for (std::size_t i = 0; i < a.rings.size(); ++i) {
            data += arrow_in(flattened(a.rings[i]), {way * a.strokes[i].x, way * a.strokes[i].y},
                             taken);
        }
    }
    used.stroke = used.stroke || !data.empty();
    return data.empty() ? "" : path_of("pd-aw", data) + path_of("pd-a", data);
}

/// A drawing moved so that all of it lies right of and below 0, with air around it.
picture_part moved(const std::string& drawn, const std::vector<polygon>& solid,
                   std::vector<text_box> texts) {
    constexpr double air = 16.0;
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
    for (const polygon& p : solid) {
        for (const drawn_point& q : p) {
            add(q.x, q.y);
        }
    }
    for (const text_box& b : texts) {
        add(b.left, b.top);
        add(b.left + b.width, b.top + b.height);
    }
    left = std::floor(left);
    top = std::floor(top);
    picture_part out;
    out.texts = std::move(texts);
    for (text_box& t : out.texts) {
        t.left -= left;
        t.top -= top;
    }
    out.width = std::ceil(right - left);
    out.height = std::ceil(bottom - top);
    out.drawn = "<g transform=\"translate(" + whole(-left) + " " + whole(-top) + ")\">\n" + drawn +
                "</g>\n";
    return out;
}

}  // namespace

const pictured_place* pictured_view::told(const place& at) const {
    const auto p = std::find_if(asked.places.begin(), asked.places.end(),
                                [&](const pictured_place& one) { return one.at == at; });
    return p == asked.places.end() ? nullptr : &*p;
}

picture_part view_drawn(const pictured_view& v, signs_used& used) {
    const std::vector<polygon> solid = solid_of(v.view);
    const std::vector<placed_label> labels = place_labels(labels_of(v, solid), solid);
    std::vector<text_box> texts;
    for (const placed_label& l : labels) {
        texts.push_back(l.box);
    }
    std::string drawn = coat_drawn(v, used) + strokes_drawn(v, labels, used) + labels_drawn(labels);
    if (v.view.from == drawn_side::below) {
        for (text_box& b : names_of_sides(solid, labels)) {
            drawn += text_at("pd-n pd-o", b.left + b.width / 2.0, b.top + b.height * 0.78, b.text);
            texts.push_back(std::move(b));
        }
    }
    picture_part out = moved(drawn, solid, std::move(texts));
    out.title = view_title(v.view.from) +
                (v.view.from == drawn_side::right ? "; middle line: see from the left" : "");
    out.words = view_words(v.asked, labelled_places(v), v.names);
    return out;
}

}  // namespace pelage::io
