// The outline of a dog: its builds, pieces, looks and the scale of lengths.
#include <algorithm>
#include <set>

#include <fmt/format.h>

#include <pelage/data/outline.hpp>

#include "data/read/outline_checks.hpp"
#include "data/read/readers.hpp"

namespace pelage::io {

namespace {

constexpr bounds on_paper{-3000.0, 3000.0, true};

/// Two numbers, x and y.
std::optional<drawn_point> point_at(const node& n, std::string_view key, faults& out) {
    if (n.kind != node_kind::list || n.items.size() != 2) {
        out.add(n.at, errc::type,
                fmt::format("{} is two numbers, to the right and down; found {}; write {}",
                            named(key), found(n), out.setting(key, "[120, -40]")));
        return std::nullopt;
    }
    const auto x = number_at(n.items[0], key, measure::number, on_paper, out);
    const auto y = number_at(n.items[1], key, measure::number, on_paper, out);
    return x && y ? std::optional{drawn_point{*x, *y}} : std::nullopt;
}

drawn_point get_point(record& r, std::string_view key) {
    const member* m = r.get(key, presence::must, "[120, -40]");
    return m == nullptr ? drawn_point{} : point_at(m->value, key, r.out()).value_or(drawn_point{});
}

std::vector<outline_point> get_points(record& r, presence there) {
    std::vector<outline_point> out;
    if (const node* n = r.get_table("points", there)) {
        for (const member& m : n->members) {
            if (const auto at = point_at(m.value, m.key, r.out())) {
                out.push_back({m.key, *at});
            }
        }
    }
    return out;
}

outline_build get_build(record& r, faults& out) {
    outline_build b;
    b.id = r.get_id("id");
    if (const node* n = r.get_table("head", presence::must)) {
        record head(*n, out, "head.");
        b.head_at = get_point(head, "at");
        b.head_size = head.get_number("size", presence::must, measure::number, over_zero(400.0))
                          .value_or(100.0) /
                      100.0;
        b.head_turn = head.get_number("turn", presence::must, measure::number, {-90.0, 90.0, true})
                          .value_or(0.0);
        head.done();
    }
    b.below = get_point(r, "below");
    b.below = {b.below.x / 100.0, b.below.y / 100.0};
    const drawn_point far = get_point(r, "far");
    b.far_fore = far.x;
    b.far_hind = far.y;
    b.points = get_points(r, presence::must);
    r.done();
    return b;
}

/// A list of lists of names.
std::vector<named_points> get_lines(record& r) {
    std::vector<named_points> out;
    const member* m = r.get("lines");
    if (m == nullptr) {
        return out;
    }
    for (const node& n : m->value.items) {
        named_points& line = out.emplace_back();
        line.at = n.at;
        for (const node& name : n.items) {
            if (name.kind == node_kind::text) {
                line.points.push_back({name.text, name.at});
            }
        }
        if (n.kind != node_kind::list || line.points.size() != n.items.size() ||
            line.points.size() < 2) {
            r.out().add(n.at, errc::type,
                        "a line is a list of two names of points or more; found " + found(n) +
                            "; write [\"withers-top\", \"back-top\"]");
        }
    }
    return out;
}

/// The index of the zone that a key names; nothing, and a fault, where there is none.
std::optional<std::size_t> zone_named(record& r, const body& b, presence must) {
    const std::string id = r.get_text("zone", must);
    if (const zone* at = find(b.zones, id)) {
        return static_cast<std::size_t>(at - b.zones.data());
    }
    if (!id.empty()) {
        r.out().add_unknown(r.at("zone"), "unknown zone", id, ids(b.zones));
    }
    return std::nullopt;
}

outline_mark get_mark(record& r, const body& b, std::vector<named_points>& named) {
    outline_mark m;
    const std::string dot = r.get_text("dot", presence::may);
    named_points through{r.at(), {}};
    if (!dot.empty()) {
        through.points = {{dot, r.at("dot")}};
        m.size =
            r.get_number("size", presence::must, measure::number, over_zero(200.0)).value_or(1.0);
    } else {
        m.shape = r.get("shape") != nullptr;
        // a line may end where it begins, so its names are read here
        const member* list =
            r.get(m.shape ? "shape" : "line", presence::must, "[\"lip\", \"mouth\"]");
        for (const node& n : list == nullptr ? std::vector<node>{} : list->value.items) {
            through.points.push_back({n.text, n.at});
        }
        m.filled = r.get_flag("filled");
    }
    m.points = texts_of(through.points);
    m.zone = zone_named(r, b, presence::may);
    m.says = m.zone ? r.get_text("says", presence::must) : "";
    named.push_back(std::move(through));
    r.done();
    return m;
}

outline_zone get_ring(record& r, const body& b, std::vector<named_points>& rings) {
    outline_zone z;
    z.zone = zone_named(r, b, presence::must).value_or(0);
    z.half = r.get("half") != nullptr;
    const std::vector<word> ring = r.get_words(z.half ? "half" : "ring", presence::must);
    z.ring = texts_of(ring);
    rings.push_back({r.at(z.half ? "half" : "ring"), ring, z.half});
    z.stroke = get_point(r, "stroke");
    if (z.stroke == drawn_point{}) {
        r.out().add(r.at("stroke"), errc::range,
                    "a stroke goes somewhere; found [0, 0]; write [1, 0] for to the right");
    }
    r.done();
    return z;
}

placed_piece get_piece(const node& n, faults& out, const body& b) {
    record r(n, out);
    placed_piece p;
    p.at = r.at();
    p.piece.id = r.get_id("id");
    p.piece.of = r.get_name<piece_of>("of", presence::must, piece_names).value_or(piece_of::trunk);
    p.lines = get_lines(r);
    for (const named_points& l : p.lines) {
        p.piece.lines.push_back(texts_of(l.points));
    }
    if (const member* m = r.get("marks")) {
        for (const node& one : m->value.items) {
            record mark(one, out);
            p.piece.marks.push_back(get_mark(mark, b, p.marks));
        }
    }
    for (const node* one : r.get_tables("zone", presence::must)) {
        record ring(*one, out);
        p.piece.zones.push_back(get_ring(ring, b, p.rings));
    }
    const bool trunk = p.piece.of == piece_of::trunk;
    if (!trunk) {
        p.piece.points = get_points(r, presence::must);
    }
    r.done();
    return p;
}

shade get_shade(record& r, page& p) {
    shade s;
    s.colour = r.get_text("colour", presence::must);
    if (s.colour.size() != 7 || s.colour[0] != '#' ||
        s.colour.find_first_not_of("0123456789abcdef", 1) != std::string::npos) {
        p.out.add(r.at("colour"), errc::syntax,
                  "a colour is # and six digits of 0-9 and a-f; found " + shown(s.colour) +
                      "; write \"#75a587\"");
        s.colour = "#000000";
    }
    s.below = r.get_length("below", presence::may);
    s.why = get_evidence(r, p, presence::must);
    r.done();
    return s;
}

class outline_reader {
  public:
    outline_reader(const node& root, page& p) : top_(root, p.out), p_(p) {}

    outline run() {
        check_format(top_);
        shades();
        looks();
        for (const node* n : top_.get_tables("build", presence::must)) {
            record r(*n, p_.out);
            build_at_.push_back(r.at());
            out_.builds.push_back(get_build(r, p_.out));
        }
        for (const node* n : top_.get_tables("piece", presence::must)) {
            pieces_.push_back(get_piece(*n, p_.out, p_.known.dog_body));
            out_.pieces.push_back(pieces_.back().piece);
        }
        top_.done();
        if (p_.out.none()) {
            check_looks();
            check_outline({out_, pieces_, build_at_, p_.known.dog_body, top_.at()}, p_.out);
        }
        return std::move(out_);
    }

  private:
    void shades() {
        for (const node* n : top_.get_tables("shade", presence::must)) {
            record r(*n, p_.out);
            out_.shades.push_back(get_shade(r, p_));
            const std::size_t i = out_.shades.size() - 1;
            if (i > 0 &&
                (!out_.shades[i - 1].below ||
                 (out_.shades[i].below && *out_.shades[i].below <= *out_.shades[i - 1].below))) {
                p_.out.add(r.at("below"), errc::conflict,
                           "shades stand from short to long, and all but the last say where they "
                           "end; found one that ends no later than the one before it; write them "
                           "in order");
            }
        }
    }
    void looks() {
        std::set<std::string, std::less<>> seen;
        for (const node* n : top_.get_tables("look", presence::must)) {
            record r(*n, p_.out);
            outline_look l;
            l.is = {r.get_id("build"), r.get_id("ears"), r.get_id("tail")};
            look_at_.push_back(r.at());
            for (const word& w : r.get_words("breeds", presence::may)) {
                const auto& known = p_.known.genes.breeds;
                if (std::none_of(known.begin(), known.end(),
                                 [&](const auto& b) { return b.id == w.text; })) {
                    std::vector<std::string> names;
                    for (const auto& b : known) {
                        names.push_back(b.id);
                    }
                    p_.out.add_unknown(w.at, "unknown breed", w.text, names);
                } else if (!seen.insert(w.text).second) {
                    p_.out.add(w.at, errc::conflict,
                               "a breed has one look; found " + shown(w.text) +
                                   " twice; leave it out of one");
                }
                l.breeds.push_back(w.text);
            }
            l.why = get_evidence(r, p_, presence::must);
            r.done();
            out_.looks.push_back(std::move(l));
        }
    }
    void check_looks() {
        const auto is = [&](piece_of of, const std::string& id) {
            return std::any_of(out_.pieces.begin(), out_.pieces.end(),
                               [&](const auto& p) { return p.of == of && p.id == id; });
        };
        for (std::size_t i = 0; i < out_.looks.size(); ++i) {
            const dog_look& l = out_.looks[i].is;
            const bool built = std::any_of(out_.builds.begin(), out_.builds.end(),
                                           [&](const auto& b) { return b.id == l.build; });
            if (!built || !is(piece_of::ears, l.ears) || !is(piece_of::tail, l.tail)) {
                p_.out.add(look_at_[i], errc::unknown,
                           fmt::format("a look is a build, ears and a tail that are drawn; found "
                                       "{}, {}, {}; write ids of this file",
                                       l.build, l.ears, l.tail));
            }
        }
    }

    record top_;
    page& p_;
    outline out_;
    std::vector<placed_piece> pieces_;
    std::vector<spot> build_at_;
    std::vector<spot> look_at_;
};

}  // namespace

outline get_outline(const node& root, page& p) {
    return outline_reader(root, p).run();
}

outline read_outline(const document_text& d, const reference_data& c) {
    outline out;
    diagnostics wrong;
    read_text(d, wrong, [&](const node& root, faults& f) {
        place_finder places(c.dog_body);
        page p{f, c, places, nullptr, nullptr, true};
        out = get_outline(root, p);
    });
    throw_if_any(std::move(wrong));
    return out;
}

}  // namespace pelage::io
