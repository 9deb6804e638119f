// From points, lines and rings to the views of a dog.
#include <algorithm>
#include <cmath>
#include <map>
#include <numbers>
#include <utility>

#include <pelage/base/error.hpp>
#include <pelage/trade/outline.hpp>

namespace pelage {

namespace {

drawn_point plus(const drawn_point& a, const drawn_point& b) {
    return {a.x + b.x, a.y + b.y};
}

drawn_point mirror_x(const drawn_point& p) {
    return {1000.0 - p.x, p.y};
}

template <class Move>
drawn_path moved(const drawn_path& p, Move move) {
    drawn_path out;
    for (const drawn_curve& c : p) {
        out.push_back({move(c.from), move(c.out), move(c.in), move(c.to)});
    }
    return out;
}

using points_by_name = std::map<std::string, drawn_point, std::less<>>;

const drawn_point& called(const points_by_name& all, const std::string& name) {
    const auto at = all.find(name);
    if (at == all.end()) {
        throw error(errc::internal, "the outline of the dog has no point " + name);
    }
    return at->second;
}

std::vector<drawn_point> called(const points_by_name& all, const std::vector<std::string>& names) {
    std::vector<drawn_point> out;
    for (const std::string& name : names) {
        out.push_back(called(all, name));
    }
    return out;
}

/// Lines made smooth, and how often a ring goes along each of their pieces.
class line_book {
  public:
    line_book(const points_by_name& points, bool mirrored) : points_(points), mirrored_(mirrored) {}

    void add(const outline_piece& p) {
        for (const std::vector<std::string>& l : p.lines) {
            names_.push_back(&l);
            curves_.push_back(smooth(called(points_, l), mirrored_));
            used_.emplace_back(l.size() - 1, 0);
        }
    }

    /// From point to point along the lines; `closed`: and back to the first.
    drawn_path along(const std::vector<std::string>& ring, bool closed) {
        drawn_path out;
        const std::size_t steps = closed ? ring.size() : ring.size() - 1;
        for (std::size_t i = 0; i < steps; ++i) {
            append(ring[i], ring[(i + 1) % ring.size()], out);
        }
        return out;
    }

    /// Runs of pieces along which only one ring goes.
    [[nodiscard]] std::vector<drawn_path> edge() const {
        std::vector<drawn_path> out;
        for (std::size_t l = 0; l < curves_.size(); ++l) {
            bool open = false;
            for (std::size_t k = 0; k < curves_[l].size(); ++k) {
                if (used_[l][k] == 1) {
                    if (!open) {
                        out.emplace_back();
                    }
                    out.back().push_back(curves_[l][k]);
                }
                open = used_[l][k] == 1;
            }
        }
        return out;
    }

  private:
    void append(const std::string& from, const std::string& to, drawn_path& out) {
        std::size_t line = names_.size();
        std::size_t a = 0;
        std::size_t b = 0;
        for (std::size_t l = 0; l < names_.size(); ++l) {
            const auto i = std::find(names_[l]->begin(), names_[l]->end(), from);
            const auto j = std::find(names_[l]->begin(), names_[l]->end(), to);
            if (i == names_[l]->end() || j == names_[l]->end()) {
                continue;
            }
            const auto first = static_cast<std::size_t>(i - names_[l]->begin());
            const auto last = static_cast<std::size_t>(j - names_[l]->begin());
            const auto apart = [](std::size_t x, std::size_t y) { return x < y ? y - x : x - y; };
            if (line == names_.size() || apart(first, last) < apart(a, b)) {
                line = l;
                a = first;
                b = last;
            }
        }
        if (line == names_.size()) {
            throw error(errc::internal,
                        "the outline of the dog has no line from " + from + " to " + to);
        }
        const auto at = [&](std::size_t k) {
            return curves_[line].begin() + static_cast<std::ptrdiff_t>(k);
        };
        const drawn_path run(at(std::min(a, b)), at(std::max(a, b)));
        for (std::size_t k = std::min(a, b); k < std::max(a, b); ++k) {
            ++used_[line][k];
        }
        const drawn_path way = a < b ? run : backwards(run);
        out.insert(out.end(), way.begin(), way.end());
    }

    const points_by_name& points_;
    bool mirrored_;
    std::vector<const std::vector<std::string>*> names_;
    std::vector<drawn_path> curves_;
    std::vector<std::vector<int>> used_;
};

/// A ring of a zone as it was drawn.
struct ring_of_zone {
    std::size_t zone = 0;
    drawn_path path;
    drawn_point stroke;
};

const outline_build& build_called(const outline& o, const std::string& id) {
    for (const outline_build& b : o.builds) {
        if (b.id == id) {
            return b;
        }
    }
    throw error(errc::unknown, "no such build of a dog is drawn: " + id);
}

/// The piece with that id; with an empty one, the only one.
const outline_piece& piece_called(const outline& o, piece_of of, const std::string& id = {}) {
    for (const outline_piece& p : o.pieces) {
        if (p.of == of && (id.empty() || p.id == id)) {
            return p;
        }
    }
    throw error(errc::unknown, "no such " + std::string(piece_names[static_cast<std::size_t>(of)]) +
                                   " of a dog is drawn: " + id);
}

void put(const outline_piece& p, const outline_build& b, points_by_name& to) {
    const double turn = b.head_turn * std::numbers::pi / 180.0;
    const double c = b.head_size * std::cos(turn);
    const double s = b.head_size * std::sin(turn);
    for (const outline_point& one : p.points) {
        const drawn_point& at = one.at;
        to[one.name] = plus(b.head_at, {c * at.x - s * at.y, s * at.x + c * at.y});
    }
}

/// A tail between the two points of its root.
struct tail_frame {
    drawn_point top;
    drawn_point down;  ///< of a unit
    [[nodiscard]] drawn_point way(const drawn_point& p) const {
        return {p.x * down.y + p.y * down.x, p.y * down.y - p.x * down.x};
    }
    [[nodiscard]] drawn_point at(const drawn_point& p) const { return plus(top, way(p)); }
};

/// The near legs once more, sheared so that their feet stand apart.
drawn_path sheared(const drawn_path& p, double top, double ground, double by) {
    return moved(p, [&](const drawn_point& q) {
        const double down = (q.y - top) / (ground - top);
        return drawn_point{q.x + by * down, q.y - 6.0 * down};
    });
}

class side_view {
  public:
    side_view(const outline& o, const dog_look& look, const body& b)
        : body_(b), build_(build_called(o, look.build)) {
        for (const outline_point& p : build_.points) {
            points_[p.name] = p.at;
        }
        const outline_piece& head = piece_called(o, piece_of::head);
        const outline_piece& ears = piece_called(o, piece_of::ears, look.ears);
        const outline_piece& tail = piece_called(o, piece_of::tail, look.tail);
        put(head, build_, points_);
        put(ears, build_, points_);
        const drawn_point& top = called(points_, std::string("tail-top"));
        const drawn_point& under = called(points_, std::string("tail-under"));
        root_ = {top, {(under.x - top.x) / 100.0, (under.y - top.y) / 100.0}};
        for (const outline_point& p : tail.points) {
            points_[p.name] = root_.at(p.at);
        }
        const outline_piece& trunk = piece_called(o, piece_of::trunk);
        line_book lines(points_, false);
        for (const outline_piece* p : {&trunk, &head, &ears, &tail}) {
            lines.add(*p);
        }
        for (const outline_piece* p : {&trunk, &head, &ears, &tail}) {
            for (const outline_zone& z : p->zones) {
                rings_.push_back({z.zone, lines.along(z.ring, true),
                                  p == &tail ? root_.way(z.stroke) : z.stroke});
            }
            for (const outline_mark& m : p->marks) {
                add(m);
            }
        }
        edge_ = lines.edge();
    }

    [[nodiscard]] drawn_view from_left() const {
        drawn_view v;
        v.edge = edge_;
        v.marks = marks_;
        v.far = far_legs();
        for (std::size_t z = 0; z < body_.zones.size(); ++z) {
            const side which = body_.zones[z].paired ? side::left : side::both;
            drawn_area a{{z, which}, true, {}, {}};
            for (const ring_of_zone& r : rings_) {
                if (r.zone == z) {
                    a.rings.push_back(r.path);
                    a.strokes.push_back(r.stroke);
                }
            }
            if (!a.rings.empty()) {
                v.areas.push_back(std::move(a));
            }
        }
        return v;
    }

  private:
    void add(const outline_mark& m) {
        const double size = m.size * build_.head_size;
        if (m.points.size() == 1) {
            marks_.push_back({{}, called(points_, m.points.front()), size, true, m.zone, m.says});
        } else {
            marks_.push_back(
                {smooth(called(points_, m.points)), {}, 0.0, m.filled, m.zone, m.says});
        }
    }
    /// Fore: what lies before the middle of the back; hind: the rest. Of legs and feet only.
    [[nodiscard]] std::vector<drawn_path> far_legs() const {
        const double middle = called(points_, std::string("back-end")).x;
        const double ground = called(points_, std::string("toe-under")).y;
        std::vector<drawn_path> out;
        for (const ring_of_zone& r : rings_) {
            const group g = body_.zones[r.zone].where;
            if (g == group::legs || g == group::feet) {
                const bool fore = r.path.front().from.x < middle;
                const double top = called(points_, std::string(fore ? "foreleg-top" : "hip")).y;
                out.push_back(
                    sheared(r.path, top, ground, fore ? build_.far_fore : build_.far_hind));
            }
        }
        return out;
    }

    const body& body_;
    const outline_build& build_;
    points_by_name points_;
    tail_frame root_;
    std::vector<ring_of_zone> rings_;
    std::vector<drawn_mark> marks_;
    std::vector<drawn_path> edge_;
};

drawn_view mirrored(const drawn_view& left) {
    drawn_view v = left;
    v.from = drawn_side::right;
    const auto turn = [](std::vector<drawn_path>& all) {
        for (drawn_path& p : all) {
            p = moved(p, mirror_x);
        }
    };
    for (drawn_area& a : v.areas) {
        a.home = a.at.which == side::left;
        a.at.which = a.home ? side::right : side::both;
        turn(a.rings);
        for (drawn_point& s : a.strokes) {
            s.x = -s.x;
        }
    }
    turn(v.far);
    turn(v.edge);
    for (drawn_mark& m : v.marks) {
        m.path = moved(m.path, mirror_x);
        m.at = mirror_x(m.at);
    }
    return v;
}

/// A half and its mirror image, as one.
drawn_path whole_of(const drawn_path& half) {
    drawn_path out = half;
    const drawn_path other = backwards(moved(half, mirror_y));
    out.insert(out.end(), other.begin(), other.end());
    return out;
}

drawn_view from_below(const outline& o, const dog_look& look, const body& b) {
    const outline_build& build = build_called(o, look.build);
    const outline_piece& piece = piece_called(o, piece_of::below);
    points_by_name points;
    for (const outline_point& p : piece.points) {
        points[p.name] = {p.at.x * build.below.x, p.at.y * build.below.y};
    }
    line_book lines(points, true);
    lines.add(piece);
    drawn_view v;
    v.from = drawn_side::below;
    for (std::size_t z = 0; z < b.zones.size(); ++z) {
        drawn_area left{{z, b.zones[z].paired ? side::left : side::both}, true, {}, {}};
        drawn_area right{{z, side::right}, true, {}, {}};
        for (const outline_zone& one : piece.zones) {
            if (one.zone == z) {
                const drawn_path p = lines.along(one.ring, !one.half);
                left.rings.push_back(one.half ? whole_of(p) : p);
                left.strokes.push_back(one.stroke);
                right.rings.push_back(moved(p, mirror_y));
                right.strokes.push_back(mirror_y(one.stroke));
            }
        }
        if (!left.rings.empty()) {
            v.areas.push_back(std::move(left));
            if (b.zones[z].paired) {
                v.areas.push_back(std::move(right));
            }
        }
    }
    for (const outline_mark& m : piece.marks) {
        const drawn_path p = whole_of(smooth(called(points, m.points), true));
        if (m.filled) {
            v.marks.push_back({p, {}, 0.0, true});
        } else {
            v.ground.push_back(p);
        }
    }
    return v;
}

}  // namespace

std::vector<drawn_view> views_of(const outline& o, const dog_look& look, const body& b) {
    const drawn_view left = side_view(o, look, b).from_left();
    return {left, mirrored(left), from_below(o, look, b)};
}

}  // namespace pelage
