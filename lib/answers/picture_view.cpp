// A view of a dog, put together: its coat, the way of the clipper, its labels.
#include "answers/picture_view.hpp"

#include <algorithm>
#include <cmath>

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

/// Seen from a side, nothing of the dog is above the middle of it.
bool under_the_sky(const prepared_ring& r, const std::vector<polygon>& solid) {
    drawn_point q = r.inmost;
    while (within(r.of, q)) {
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

/// Boxes along a leader, so close that nothing lies across it.
void keep_off_leader(const placed_label& l, std::vector<text_box>& taken) {
    constexpr double each = 12.0;
    const double all = std::hypot(l.from.x - l.anchor.x, l.from.y - l.anchor.y);
    for (double at = each; at < all; at += each) {
        const drawn_point q{l.anchor.x + (l.from.x - l.anchor.x) * at / all,
                            l.anchor.y + (l.from.y - l.anchor.y) * at / all};
        taken.push_back(around(q, each, each));
    }
}

std::vector<text_box> taken_by(const std::vector<placed_label>& labels) {
    std::vector<text_box> out;
    for (const placed_label& l : labels) {
        out.push_back(l.box);
        if (!l.inside) {
            const double end = l.warns ? 40.0 : 14.0;
            out.push_back(around(l.anchor, end, end));
            keep_off_leader(l, out);
        }
    }
    return out;
}

/// The ring of an area in which a sign is seen best.
const prepared_ring& largest(const std::vector<prepared_ring>& rings) {
    return *std::max_element(rings.begin(), rings.end(),
                             [](const auto& a, const auto& b) { return a.size < b.size; });
}

/// Whether a label of that ring warns.
bool is_warned(const prepared_ring& r, const std::vector<placed_label>& labels) {
    return std::any_of(labels.begin(), labels.end(), [&](const placed_label& l) {
        return !l.inside && l.warns && l.anchor == r.inmost;
    });
}

/// Where a sign has room in the ring, at worst on what is there already.
drawn_point sign_in(const prepared_ring& r, double size, laid_view& v) {
    const drawn_point at = room_in(r.of, size, size, v.taken).value_or(r.inmost);
    v.taken.push_back(around(at, size, size));
    return at;
}

/// Signs of hurt skin where no label has one, and of places it hates to have touched.
void add_signs(laid_view& v) {
    for (std::size_t i = 0; i < v.of.view.areas.size(); ++i) {
        const pictured_place* p = v.of.told(v.of.view.areas[i].at);
        if (p == nullptr) {
            continue;
        }
        const prepared_ring& r = largest(v.of.ready.rings[i]);
        if (warns(*p) && !is_warned(r, v.labels)) {
            v.warnings.push_back(sign_in(r, 40.0, v));
        }
        for (const prepared_ring& each : v.of.ready.rings[i]) {
            // both feet, and no strand of one beside it
            if (p->tender && 2.0 * each.size >= r.size) {
                v.tender.push_back(sign_in(each, 26.0, v));
            }
        }
    }
}

/// The way of the clipper, where labels leave room for it.
void add_arrows(laid_view& v) {
    for (std::size_t i = 0; i < v.of.view.areas.size(); ++i) {
        const pictured_place* p = v.of.told(v.of.view.areas[i].at);
        if (p == nullptr || !p->stroke) {
            continue;
        }
        const std::vector<prepared_ring>& rings = v.of.ready.rings[i];
        for (std::size_t k = 0; k < rings.size(); ++k) {
            for (const double size : {46.0, 32.0, 24.0}) {
                if (const auto at = room_in(rings[k].of, size, size, v.taken)) {
                    v.taken.push_back(around(*at, size, size));
                    v.arrows.push_back({i, k, *at, size});
                    break;
                }
            }
        }
    }
}

std::string strokes_drawn(const laid_view& v, signs_used& used) {
    std::string data;
    for (const stroke_arrow& s : v.arrows) {
        const drawn_area& a = v.of.view.areas[s.area];
        const double way = *v.of.told(a.at)->stroke == direction::against_lay ? -1.0 : 1.0;
        const drawn_point& lay = a.strokes[s.ring];
        data += arrow_data(s.middle, {way * lay.x, way * lay.y}, s.size, s.size * 0.26);
    }
    used.stroke = used.stroke || !data.empty();
    return data.empty() ? "" : path_of("pd-aw", data) + path_of("pd-a", data);
}

/// The area of the same zone on the other side of the dog; null: in another view, or there is none.
const drawn_area* across(const drawn_area& a, const drawn_view& v) {
    const side other = a.at.which == side::left ? side::right : side::left;
    const auto one = std::find_if(v.areas.begin(), v.areas.end(), [&](const drawn_area& b) {
        return b.at.zone == a.at.zone && b.at.which == other;
    });
    return a.at.which == side::both || one == v.areas.end() ? nullptr : &*one;
}

bool has_arrow(const laid_view& v, std::size_t area, std::size_t ring) {
    return std::any_of(v.arrows.begin(), v.arrows.end(),
                       [&](const stroke_arrow& s) { return s.area == area && s.ring == ring; });
}

/// Arrows that another view, which has its areas in the same order, lacks though it is clipped there.
void drop_unmatched(laid_view& v, const laid_view& other, bool within_view) {
    std::erase_if(v.arrows, [&](const stroke_arrow& s) {
        const drawn_area& a = v.of.view.areas[s.area];
        const drawn_area* b = within_view ? across(a, v.of.view) : &other.of.view.areas[s.area];
        if (b == nullptr) {
            return false;
        }
        const pictured_place* p = other.of.told(b->at);
        const auto at = static_cast<std::size_t>(b - other.of.view.areas.data());
        return p != nullptr && p->stroke && !has_arrow(other, at, s.ring);
    });
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

/// Where eyes are drawn: a dot beside one would be a second.
std::vector<drawn_point> eyes_of(const drawn_view& v) {
    std::vector<drawn_point> out;
    for (const drawn_mark& m : v.marks) {
        if (!m.zone && m.path.empty()) {
            for (const double d : {-m.size, m.size}) {
                out.push_back({m.at.x + d, m.at.y});
                out.push_back({m.at.x, m.at.y + d});
            }
        }
    }
    return out;
}

}  // namespace

prepared_dog::prepared_dog(const outline& o, const dog_look& l, const body& b) : look(l) {
    for (drawn_view& v : views_of(o, l, b)) {
        std::vector<polygon> solid = solid_of(v);
        std::vector<std::vector<prepared_ring>> rings;
        for (const drawn_area& a : v.areas) {
            rings.emplace_back();
            for (const drawn_path& p : a.rings) {
                prepared_ring r{flattened(p), 0.0, {}};
                r.size = area_of(r.of);
                r.inmost = innermost(r.of, eyes_of(v));
                r.above = v.from != drawn_side::below && under_the_sky(r, solid);
                rings.back().push_back(std::move(r));
            }
        }
        label_ground ground(solid, eyes_of(v));
        views.push_back({std::move(v), std::move(rings), std::move(solid), std::move(ground), {}});
    }
}

const pictured_place* pictured_view::told(const place& at) const {
    const auto p = std::find_if(asked.places.begin(), asked.places.end(),
                                [&](const pictured_place& one) { return one.at == at; });
    return p == asked.places.end() ? nullptr : &*p;
}

laid_view laid_out(const pictured_view& v, label_memory& known) {
    laid_view out{v, known.place(labels_of(v), v.ready.ground)};
    out.taken = taken_by(out.labels);
    add_signs(out);
    add_arrows(out);
    return out;
}

void match_arrows(std::vector<laid_view>& all) {
    const std::vector<laid_view> before = all;
    for (laid_view& v : all) {
        for (const laid_view& other : before) {
            const bool below = v.of.view.from == drawn_side::below;
            const bool same = v.of.view.from == other.of.view.from;
            if (below ? same : !same && other.of.view.from != drawn_side::below) {
                drop_unmatched(v, other, below);
            }
        }
    }
}

picture_part view_drawn(const laid_view& v, signs_used& used) {
    const std::vector<polygon>& solid = v.of.ready.solid;
    std::vector<text_box> texts;
    for (const placed_label& l : v.labels) {
        texts.push_back(l.box);
    }
    std::string drawn = coat_drawn(v.of, used) + strokes_drawn(v, used) + labels_drawn(v.labels);
    for (const drawn_point& p : v.tender) {
        drawn += tender_at(p);
    }
    for (const drawn_point& p : v.warnings) {
        drawn += warning_at(p);
    }
    if (v.of.view.from == drawn_side::below) {
        for (text_box& b : names_of_sides(solid, v.labels)) {
            drawn += text_at("pd-n pd-o", b.left + b.width / 2.0, b.top + b.height * 0.78, b.text);
            texts.push_back(std::move(b));
        }
    }
    picture_part out = moved(drawn, solid, std::move(texts));
    out.title = view_title(v.of.view.from) +
                (v.of.view.from == drawn_side::right
                     ? "; neck to tail, skull, muzzle, throat: see from the left"
                     : "");
    out.words = view_words(v.of.asked, labelled_places(v.of), v.of.names);
    return out;
}

}  // namespace pelage::io
