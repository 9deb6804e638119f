// A view of a dog: what is left of its coat, in shades, with its mats, hurt skin and the lines between places.
#include <algorithm>

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

/// The lines on which neighbours, which mind it, meet hurt skin.
std::string edges_towards(const drawn_area& sore, const pictured_view& v) {
    std::string out;
    for (const drawn_area& a : v.view.areas) {
        const pictured_place* p = v.told(a.at);
        if (p != nullptr && p->beside_sore) {
            out += path_data(shared_edge(sore, a), false);
        }
    }
    return out;
}

void add_place(layers& to, const drawn_area& a, const pictured_view& v, signs_used& used) {
    const pictured_place* p = v.told(a.at);
    const std::string data = path_data(a.rings, true);
    const bool carded = p != nullptr && (p->as == shown_as::carded || p->as == shown_as::stripped);
    const bool bare = p == nullptr || p->as == shown_as::unsaid || carded;
    const bool sore = p != nullptr && (p->as == shown_as::skin || p->as == shown_as::vet);
    const bool cut = p != nullptr && p->as == shown_as::cut && p->leaves;
    to.places += path_of(cut            ? shade_class(shade_of(v.scale, *p->leaves))
                         : bare || sore ? "pd-z pd-p"
                                        : "pd-z pd-l",
                         data);
    used.left = used.left || (!cut && !bare && !sore);
    used.carded = used.carded || carded;
    used.sore = used.sore || sore;
    to.leather += v.names.zones[a.at.zone].id == "ear" ? data : "";
    if (sore) {
        to.sores += path_of("pd-w", data);
        to.bands += edges_towards(a, v);
    }
    used.round = used.round || (p != nullptr && p->round);
    if (p != nullptr && p->mat) {
        to.mats += path_of("pd-m", data);
        used.mat = true;
    }
}

const drawn_area* area_at(const place& at, const drawn_view& v) {
    const auto a = std::find_if(v.areas.begin(), v.areas.end(),
                                [&](const drawn_area& one) { return one.at == at; });
    return a == v.areas.end() ? nullptr : &*a;
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
        const std::vector<drawn_path> shared = shared_edge(*one, *other);
        if (!shared.empty()) {
            (s.blended ? blends : lines) += path_data(shared, false);
        }
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
           of.mats + seams_drawn(v, used) +
           (of.leather.empty() ? "" : path_of("pd-e", of.leather)) +
           (d.edge.empty() ? "" : path_of("pd-e", path_data(d.edge, false))) +
           (of.bands.empty() ? "" : path_of("pd-wb", of.bands)) + of.sores + face_drawn(d);
}

}  // namespace pelage::io
