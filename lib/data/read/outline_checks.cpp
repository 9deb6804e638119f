#include "data/read/outline_checks.hpp"

#include <algorithm>
#include <map>
#include <set>
#include <utility>

#include <fmt/format.h>

namespace pelage::io {

namespace {

using name_set = std::set<std::string, std::less<>>;
using chosen = std::vector<const placed_piece*>;

class checker {
  public:
    checker(const outline_to_check& c, faults& out) : c_(c), out_(out) {}

    void run() {
        one_of_each();
        builds();
        if (!out_.none()) {
            return;
        }
        const chosen trunk = all(piece_of::trunk);
        const chosen head = all(piece_of::head);
        for (const placed_piece* ears : all(piece_of::ears)) {
            for (const placed_piece* tail : all(piece_of::tail)) {
                combination({trunk.front(), head.front(), ears, tail});
            }
        }
        combination(all(piece_of::below));
        zones();
    }

  private:
    [[nodiscard]] chosen all(piece_of of) const {
        chosen out;
        for (const placed_piece& p : c_.pieces) {
            if (p.piece.of == of) {
                out.push_back(&p);
            }
        }
        return out;
    }

    void one_of_each() {
        for (std::size_t i = 0; i < piece_names.size(); ++i) {
            const std::size_t n = all(static_cast<piece_of>(i)).size();
            const bool many = i == static_cast<std::size_t>(piece_of::ears) ||
                              i == static_cast<std::size_t>(piece_of::tail);
            if (n == 0 || (n > 1 && !many)) {
                out_.add(c_.top, n == 0 ? errc::missing : errc::conflict,
                         fmt::format("a dog has {} piece of = \"{}\"; found {}; write {}",
                                     many ? "at least one" : "one", piece_names[i], n,
                                     n == 0 ? "[[piece]] with it" : "one of them"));
            }
        }
    }

    void builds() {
        name_set first;
        for (const outline_point& p : c_.drawn.builds.front().points) {
            first.insert(p.name);
        }
        for (std::size_t i = 1; i < c_.drawn.builds.size(); ++i) {
            name_set here;
            for (const outline_point& p : c_.drawn.builds[i].points) {
                here.insert(p.name);
            }
            for (const name_set* one : {&first, &here}) {
                const name_set& other = one == &first ? here : first;
                for (const std::string& name : *one) {
                    if (!other.contains(name)) {
                        out_.add(c_.builds[i], errc::missing,
                                 fmt::format("all builds have the same points; found \"{}\" in one "
                                             "and not in another; write it in all",
                                             name));
                    }
                }
            }
        }
        trunk_points_ = std::move(first);
    }

    /// Pieces that are drawn together: their names are points, their rings follow lines.
    void combination(const chosen& pieces) {
        name_set known = pieces.size() > 1 ? trunk_points_ : name_set{};
        std::vector<const named_points*> lines;
        for (const placed_piece* p : pieces) {
            for (const outline_point& one : p->piece.points) {
                known.insert(one.name);
            }
            for (const named_points& l : p->lines) {
                lines.push_back(&l);
            }
        }
        for (const placed_piece* p : pieces) {
            for (const std::vector<named_points>* some : {&p->lines, &p->rings, &p->marks}) {
                for (const named_points& n : *some) {
                    name_points(n, known);
                }
            }
            for (const named_points& ring : p->rings) {
                follow(ring, lines);
            }
        }
    }

    void name_points(const named_points& n, const name_set& known) {
        for (const word& w : n.points) {
            if (!known.contains(w.text) && told_.insert({w.at.line, w.at.column}).second) {
                out_.add_unknown(w.at, "no point of the drawing is called so", w.text,
                                 {known.begin(), known.end()});
            }
        }
    }

    void follow(const named_points& ring, const std::vector<const named_points*>& lines) {
        const std::size_t n = ring.points.size();
        for (std::size_t i = 0; i < (ring.open ? n - 1 : n); ++i) {
            const word& from = ring.points[i];
            const word& to = ring.points[(i + 1) % n];
            const auto on = [](const named_points& l, const std::string& name) {
                return std::any_of(l.points.begin(), l.points.end(),
                                   [&](const word& w) { return w.text == name; });
            };
            const bool joined = std::any_of(lines.begin(), lines.end(), [&](const named_points* l) {
                return on(*l, from.text) && on(*l, to.text);
            });
            if (!joined && told_.insert({from.at.line, from.at.column}).second) {
                out_.add(from.at, errc::conflict,
                         fmt::format("a ring follows the lines; found no line that has both \"{}\" "
                                     "and \"{}\"; write the points between them",
                                     from.text, to.text));
            }
        }
    }

    /// Every zone is drawn in one view, whatever is chosen.
    void zones() {
        for (std::size_t z = 0; z < c_.whole.zones.size(); ++z) {
            const auto drawn_by = [z](const placed_piece* p) {
                return std::any_of(p->piece.zones.begin(), p->piece.zones.end(),
                                   [z](const outline_zone& one) { return one.zone == z; });
            };
            int ways = 0;
            for (const piece_of of : {piece_of::trunk, piece_of::head, piece_of::ears,
                                      piece_of::tail, piece_of::below}) {
                const chosen pieces = all(of);
                const auto n = std::count_if(pieces.begin(), pieces.end(), drawn_by);
                ways += n > 0 ? 1 : 0;
                ways += n > 0 && n < static_cast<std::ptrdiff_t>(pieces.size()) ? 1 : 0;
            }
            if (ways != 1) {
                out_.add(c_.top, ways == 0 ? errc::missing : errc::conflict,
                         fmt::format("every zone is drawn by one kind of piece, and by all of "
                                     "that kind; found \"{}\" {}; draw it once",
                                     c_.whole.zones[z].id,
                                     ways == 0 ? "nowhere" : "by several, or not by all"));
            }
        }
    }

    const outline_to_check& c_;
    faults& out_;
    name_set trunk_points_;
    std::set<std::pair<unsigned, unsigned>> told_;
};

}  // namespace

void check_outline(const outline_to_check& c, faults& out) {
    checker(c, out).run();
}

}  // namespace pelage::io
