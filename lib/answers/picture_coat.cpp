// A view of a dog: what is left of its coat, in shades, with its mats, hurt skin and the lines between places.
#include <algorithm>
#include <cmath>

#include "answers/picture_hatching.hpp"
#include "answers/picture_view.hpp"

namespace pelage::io {

namespace {

/// The places of a view in layers, the later over the earlier.
struct layers {
    std::string places;
    std::string mats;
    std::string sores;
    std::string bands;  ///< edges towards hurt skin
    std::string leather;
};

const drawn_area* area_at(const place& at, const drawn_view& v) {
    const auto a = std::find_if(v.areas.begin(), v.areas.end(),
                                [&](const drawn_area& one) { return one.at == at; });
    return a == v.areas.end() ? nullptr : &*a;
}

bool same_place(const place& one, const place& other) {
    return one.zone == other.zone &&
           (one.which == other.which || one.which == side::both || other.which == side::both);
}

/// The runs of its rings that no other area has.
std::vector<drawn_path> own_edge(const drawn_area& a, const drawn_view& v) {
    std::vector<drawn_path> out;
    for (const drawn_path& ring : a.rings) {
        bool open = false;
        for (const drawn_curve& c : ring) {
            const drawn_area alone{a.at, true, {{c}}, {}};
            const bool own = std::none_of(v.areas.begin(), v.areas.end(), [&](const drawn_area& b) {
                return &b != &a && !shared_edge(alone, b).empty();
            });
            if (own && !open) {
                out.emplace_back();
            }
            if (own) {
                out.back().push_back(c);
            }
            open = own;
        }
    }
    return out;
}

double length_of(const drawn_path& p) {
    double out = 0.0;
    for (const drawn_curve& c : p) {
        out += std::hypot(c.to.x - c.from.x, c.to.y - c.from.y);
    }
    return out;
}

/// The pieces of a run for which that holds, in runs.
template <class Keep>
void add_runs(const drawn_path& p, Keep keep, std::vector<drawn_path>& to) {
    bool open = false;
    for (const drawn_curve& c : p) {
        const bool kept = keep(c);
        if (kept && !open) {
            to.emplace_back();
        }
        if (kept) {
            to.back().push_back(c);
        }
        open = kept;
    }
}

/// By and large level, with the area above it.
bool turns_under(const drawn_curve& c, const drawn_area& a) {
    const drawn_point above{(c.from.x + c.to.x) / 2.0, (c.from.y + c.to.y) / 2.0 - 8.0};
    return std::abs(c.to.x - c.from.x) > std::abs(c.to.y - c.from.y) &&
           std::any_of(a.rings.begin(), a.rings.end(),
                       [&](const drawn_path& r) { return within(flattened(r), above); });
}

/// Where an area ends towards hurt skin that another view shows: from below on its side of the dog, else where
/// it turns under.
std::vector<drawn_path> edge_out_of_view(const drawn_area& a, const place& hurt,
                                         const drawn_view& v) {
    std::vector<drawn_path> runs;
    for (const drawn_path& p : own_edge(a, v)) {
        if (v.from != drawn_side::below) {
            add_runs(
                p, [&](const drawn_curve& c) { return turns_under(c, a); }, runs);
            continue;
        }
        for (const double way : {-1.0, 1.0}) {
            const bool there =
                hurt.which == side::both || (hurt.which == side::left) == (way < 0.0);
            if (there) {
                add_runs(
                    p, [&](const drawn_curve& c) { return way * (c.from.y + c.to.y) > 0.0; }, runs);
            }
        }
    }
    if (hurt.which == side::both || runs.size() < 2) {
        return runs;
    }
    return {*std::max_element(runs.begin(), runs.end(), [](const auto& one, const auto& other) {
        return length_of(one) < length_of(other);
    })};
}

/// The lines on which a place, which minds it, meets hurt skin.
std::string edges_of(const drawn_area& a, const pictured_place& p, const pictured_view& v) {
    std::string out;
    for (const place& hurt : p.beside_sore) {
        bool shown = false;
        for (const drawn_area& b : v.view.areas) {
            if (same_place(b.at, hurt)) {
                shown = true;
                out += path_data(shared_edge(b, a), false);
            }
        }
        const bool other_side =
            a.at.which != side::both && hurt.which != side::both && a.at.which != hurt.which;
        if (!shown && !other_side) {
            out += path_data(edge_out_of_view(a, hurt, v.view), false);
        }
    }
    return out;
}

std::vector<polygon> flat(const drawn_area& a) {
    std::vector<polygon> out;
    for (const drawn_path& r : a.rings) {
        out.push_back(flattened(r));
    }
    return out;
}

bool is_sore(const pictured_place& p) {
    return p.as == shown_as::skin || p.as == shown_as::vet;
}

void add_mat(const pictured_place& p, const drawn_area& a, const std::string& data, layers& to,
             signs_used& used) {
    const filled_with sign = p.combed_out    ? filled_with::rings
                             : p.clipped_off ? filled_with::crosses
                                             : filled_with::lozenges;
    to.mats += path_of("pd-m", data) + filled(sign, flat(a));
    used.combed = used.combed || p.combed_out;
    used.clipped = used.clipped || (!p.combed_out && p.clipped_off);
    used.mat = used.mat || (!p.combed_out && !p.clipped_off);
}

/// What stands in a place for its length, or for why it has none.
void add_cover(const pictured_place& p, const drawn_area& a, const std::string& data,
               const pictured_view& v, layers& to, signs_used& used) {
    if (p.later) {
        to.places += path_of("pd-z pd-p", data);
        used.later = true;
        return;
    }
    if (p.as == shown_as::cut && p.leaves) {
        const std::size_t shade = shade_of(v.scale, *p.leaves);
        to.places += path_of(shade_class(shade), data);
        to.places += p.mat ? "" : hatched(shade, v.scale.shades.size(), flat(a));
        used.length = true;
        return;
    }
    to.places += path_of("pd-z pd-p", data);
    const bool bare = p.as == shown_as::unsaid || is_sore(p);
    const bool ask = p.as == shown_as::ask;
    const bool carded = p.as == shown_as::carded || p.as == shown_as::stripped;
    if (!bare && !p.mat) {
        to.places += filled(ask      ? filled_with::questions
                            : carded ? filled_with::rakes
                                     : filled_with::dots,
                            flat(a));
    }
    used.ask = used.ask || ask;
    used.left = used.left || (!bare && !ask && !carded);
    used.carded = used.carded || carded;
}

void add_place(layers& to, const drawn_area& a, const pictured_view& v, signs_used& used) {
    const pictured_place* p = v.told(a.at);
    const std::string data = path_data(a.rings, true);
    to.leather += v.names.zones[a.at.zone].id == "ear" ? data : "";
    if (p == nullptr) {
        to.places += path_of("pd-z pd-p", data);
        return;
    }
    add_cover(*p, a, data, v, to, used);
    if (is_sore(*p)) {
        to.sores += path_of("pd-w", data) + filled(filled_with::net, flat(a));
        used.sore = true;
    }
    const std::string edges = edges_of(a, *p, v);
    to.bands += edges;
    used.beside = used.beside || !edges.empty();
    used.round = used.round || p->round;
    used.tender = used.tender || p->tender;
    used.differs = used.differs || p->differs;
    used.alike = used.alike || p->alike;
    if (p->mat && !is_sore(*p)) {
        add_mat(*p, a, data, to, used);
    }
}

std::string seams_drawn(const pictured_view& v, signs_used& used) {
    std::string lines;
    std::string blends;
    for (const pictured_seam& s : v.asked.seams) {
        const drawn_area* one = area_at(s.one, v.view);
        const drawn_area* other = area_at(s.other, v.view);
        if (one == nullptr || other == nullptr) {
            continue;
        }
        std::string& to = s.blended ? blends : lines;
        const std::string edge = path_data(shared_edge(*one, *other), false);
        // two that aren't paired are said for either side
        to += to.find(edge) == std::string::npos ? edge : "";
    }
    used.line = used.line || !lines.empty();
    used.blended = used.blended || !blends.empty();
    return (lines.empty() && blends.empty() ? "" : path_of("pd-bw", lines + blends)) +
           (lines.empty() ? "" : path_of("pd-s", lines)) +
           (blends.empty() ? "" : path_of("pd-b", blends));
}

/// Eyes, nose, mouth.
std::string face_drawn(const drawn_view& v) {
    std::string out;
    for (const drawn_mark& m : v.marks) {
        if (m.zone) {
            continue;
        }
        out += m.path.empty() ? "<circle class=\"pd-k\" cx=\"" + whole(m.at.x) + "\" cy=\"" +
                                    whole(m.at.y) + "\" r=\"" + whole(m.size) + "\"/>\n"
                              : path_of(m.filled ? "pd-k" : "pd-y", path_data(m.path, false));
    }
    return out;
}

}  // namespace

std::string coat_drawn(const pictured_view& v, signs_used& used) {
    layers of;
    for (const drawn_area& a : v.view.areas) {
        add_place(of, a, v, used);
    }
    const drawn_view& d = v.view;
    return (d.far.empty() ? "" : path_of("pd-f", path_data(d.far, true))) +
           (d.ground.empty() ? "" : path_of("pd-g", path_data(d.ground, true))) + of.places +
           seams_drawn(v, used) + of.mats +
           (of.leather.empty() ? "" : path_of("pd-e", of.leather)) +
           (d.edge.empty() ? "" : path_of("pd-e", path_data(d.edge, false))) +
           (of.bands.empty() ? "" : path_of("pd-wb", of.bands)) + of.sores + face_drawn(d);
}

}  // namespace pelage::io
