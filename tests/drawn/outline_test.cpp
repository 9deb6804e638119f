// The outline of the dog, judged by Boost.Geometry: whichever build, ears and tail are chosen, a place is a
// simple closed path, two never overlap, and neighbours touch.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>

#include <boost/geometry.hpp>
#include <boost/geometry/geometries/point_xy.hpp>
#include <boost/geometry/geometries/polygon.hpp>

#include <pelage/data/embedded.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/data/reference.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

namespace bg = boost::geometry;
using point = bg::model::d2::point_xy<double>;
using polygon = bg::model::polygon<point>;

const body& whole_dog() {
    return io::reference().dog_body;
}

std::vector<dog_look> all_looks() {
    std::vector<dog_look> out;
    const outline& o = io::dog_outline();
    for (const outline_build& b : o.builds) {
        for (const outline_piece& ears : o.pieces) {
            for (const outline_piece& tail : o.pieces) {
                if (ears.of == piece_of::ears && tail.of == piece_of::tail) {
                    out.push_back({b.id, ears.id, tail.id});
                }
            }
        }
    }
    return out;
}

/// On a grid of 1/1024, so that what two share is shared to the last bit.
polygon polygon_of(const drawn_path& path) {
    polygon out;
    for (const drawn_point& p : flattened(path)) {
        bg::append(out,
                   point(std::round(p.x * 1024.0) / 1024.0, std::round(p.y * 1024.0) / 1024.0));
    }
    bg::append(out, point(bg::get<0>(out.outer().front()), bg::get<1>(out.outer().front())));
    if (bg::area(out) < 0.0) {
        bg::reverse(out);
    }
    return out;
}

struct ring {
    place at;
    polygon of;
};

std::vector<ring> rings_of(const drawn_view& v) {
    std::vector<ring> out;
    for (const drawn_area& a : v.areas) {
        for (const drawn_path& r : a.rings) {
            out.push_back({a.at, polygon_of(r)});
        }
    }
    return out;
}

std::string named(const dog_look& l, const drawn_view& v, const place& p) {
    return l.build + ", " + l.ears + ", " + l.tail + ", view " +
           std::to_string(static_cast<int>(v.from)) + ": " + title(whole_dog(), p);
}

const drawn_area* area_of(const drawn_view& v, std::size_t zone, side which) {
    for (const drawn_area& a : v.areas) {
        if (a.at.zone == zone && (a.at.which == which || a.at.which == side::both)) {
            return &a;
        }
    }
    return nullptr;
}

point middle(const drawn_view& v, std::string_view id) {
    const std::vector<zone>& zones = whole_dog().zones;
    const auto z =
        std::find_if(zones.begin(), zones.end(), [&](const zone& one) { return one.id == id; });
    const drawn_area* a = area_of(v, static_cast<std::size_t>(z - zones.begin()), side::left);
    REQUIRE(a != nullptr);
    point out;
    bg::centroid(polygon_of(a->rings.back()), out);
    return out;
}

std::string embedded_outline() {
    for (const io::embedded_file& f : io::embedded_reference()) {
        if (f.path == "reference/outline.toml") {
            return std::string(f.text);
        }
    }
    return {};
}

/// What is wrong with the outline, once `from` in it reads `to`.
std::string faults_with(const std::string& from, const std::string& to) {
    io::document_text d{"reference/outline.toml", embedded_outline()};
    const auto at = d.text.find(from);
    REQUIRE(at != std::string::npos);
    d.text.replace(at, from.size(), to);
    try {
        (void)io::read_outline(d, io::reference());
    } catch (const bad_input& wrong) {
        std::ostringstream out;
        for (const diagnostic& one : wrong.all()) {
            out << one.line << ':' << one.column << ": " << one.text << '\n';
        }
        return out.str();
    }
    return {};
}

}  // namespace

TEST_CASE("every place of the dog is at home in one view, once") {
    for (const dog_look& look : all_looks()) {
        std::multiset<std::pair<std::size_t, side>> homes;
        for (const drawn_view& v : views_of(io::dog_outline(), look, whole_dog())) {
            for (const drawn_area& a : v.areas) {
                if (a.home) {
                    homes.emplace(a.at.zone, a.at.which);
                }
            }
        }
        std::multiset<std::pair<std::size_t, side>> all;
        for (std::size_t z = 0; z < whole_dog().zones.size(); ++z) {
            if (whole_dog().zones[z].paired) {
                all.emplace(z, side::left);
                all.emplace(z, side::right);
            } else {
                all.emplace(z, side::both);
            }
        }
        CHECK(homes == all);
    }
}

TEST_CASE("a place is drawn as simple closed paths that no other place overlaps") {
    for (const dog_look& look : all_looks()) {
        for (const drawn_view& v : views_of(io::dog_outline(), look, whole_dog())) {
            const std::vector<ring> rings = rings_of(v);
            for (std::size_t i = 0; i < rings.size(); ++i) {
                INFO(named(look, v, rings[i].at));
                std::string why;
                CHECK(bg::is_valid(rings[i].of, why));
                CHECK(why == "Geometry is valid");
                CHECK(bg::area(rings[i].of) > 100.0);
                for (std::size_t k = 0; k < i; ++k) {
                    std::vector<polygon> both;
                    bg::intersection(rings[i].of, rings[k].of, both);
                    double shared = 0.0;
                    for (const polygon& p : both) {
                        shared += bg::area(p);
                    }
                    INFO("and " << title(whole_dog(), rings[k].at));
                    CHECK(shared < 1e-3);
                }
            }
            for (const drawn_area& a : v.areas) {
                for (const drawn_path& r : a.rings) {
                    CHECK(r.front().from == r.back().to);
                    for (std::size_t i = 1; i < r.size(); ++i) {
                        CHECK(r[i - 1].to == r[i].from);
                    }
                }
            }
        }
    }
}

TEST_CASE("neighbours of the body that are drawn in one view touch along a line") {
    for (const dog_look& look : all_looks()) {
        int seen = 0;
        for (const drawn_view& v : views_of(io::dog_outline(), look, whole_dog())) {
            for (const seam& s : whole_dog().seams) {
                for (const side which : {side::left, side::right}) {
                    const drawn_area* a = area_of(v, s.a, which);
                    const drawn_area* b = area_of(v, s.b, which);
                    if (a == nullptr || b == nullptr) {
                        continue;
                    }
                    ++seen;
                    INFO(named(look, v, a->at) << " and " << title(whole_dog(), b->at));
                    CHECK_FALSE(shared_edge(*a, *b).empty());
                    bool touch = false;
                    for (const drawn_path& p : a->rings) {
                        for (const drawn_path& q : b->rings) {
                            touch = touch || bg::touches(polygon_of(p), polygon_of(q));
                        }
                    }
                    CHECK(touch);
                }
            }
        }
        CHECK(seen > 2 * 40);
    }
}

TEST_CASE("the right side of the dog is the mirror image of the left") {
    for (const dog_look& look : all_looks()) {
        const auto views = views_of(io::dog_outline(), look, whole_dog());
        REQUIRE(views[0].areas.size() == views[1].areas.size());
        for (std::size_t i = 0; i < views[0].areas.size(); ++i) {
            const drawn_area& left = views[0].areas[i];
            const drawn_area& right = views[1].areas[i];
            CHECK(left.at.zone == right.at.zone);
            CHECK((left.at.which == side::left) == (right.at.which == side::right));
            for (std::size_t r = 0; r < left.rings.size(); ++r) {
                for (std::size_t c = 0; c < left.rings[r].size(); ++c) {
                    CHECK(std::abs(left.rings[r][c].out.x + right.rings[r][c].out.x - 1000.0) <
                          1e-9);
                    CHECK(left.rings[r][c].out.y == right.rings[r][c].out.y);
                }
            }
        }
        for (const drawn_area& a : views[2].areas) {
            if (a.at.which == side::left) {
                const drawn_area* other = area_of(views[2], a.at.zone, side::right);
                REQUIRE(other != nullptr);
                CHECK(a.rings[0][0].out.y == -other->rings[0][0].out.y);
            }
        }
    }
}

TEST_CASE("a groomer finds the places where they are on a dog") {
    for (const dog_look& look : all_looks()) {
        INFO(look.build << ", " << look.ears << ", " << look.tail);
        const drawn_view v = views_of(io::dog_outline(), look, whole_dog())[0];
        const auto x = [&](std::string_view id) { return bg::get<0>(middle(v, id)); };
        const auto y = [&](std::string_view id) { return bg::get<1>(middle(v, id)); };
        // from nose to tail along the top
        CHECK(x("muzzle") < x("cheek"));
        CHECK(x("cheek") < x("neck"));
        CHECK(x("neck") < x("collar-line"));
        CHECK(x("collar-line") < x("withers"));
        CHECK(x("withers") < x("back"));
        CHECK(x("back") < x("loin"));
        CHECK(x("loin") < x("rump"));
        CHECK(x("rump") < x("tail-base"));
        // down the hind leg: hip, knee, hock, foot, the knee in front and the hock behind
        CHECK(y("rump") < y("thigh"));
        CHECK(y("thigh") < y("stifle"));
        CHECK(y("stifle") < y("second-thigh"));
        CHECK(y("second-thigh") < y("hock"));
        CHECK(y("hock") < y("feet"));
        CHECK(x("stifle") < x("thigh"));
        CHECK(x("stifle") < x("second-thigh"));
        CHECK(x("second-thigh") < x("hock"));
        // down the foreleg: withers, shoulder, elbow behind the leg
        CHECK(y("withers") < y("shoulder"));
        CHECK(y("shoulder") < y("elbow"));
        CHECK(x("foreleg") < x("elbow"));
        CHECK(y("elbow") < y("foreleg"));
        // the flank is behind the ribs, before the thigh; the skirt hangs below the ribs
        CHECK(x("ribs") < x("flank"));
        CHECK(x("flank") < x("thigh"));
        CHECK(y("ribs") < y("skirt"));
        CHECK(y("skull") < y("throat"));
        CHECK(x("chest") < x("shoulder"));
    }
}

TEST_CASE("no side of the trunk is stored twice: builds share their points") {
    const outline& o = io::dog_outline();
    REQUIRE(o.builds.size() == 3);
    CHECK(o.builds[0].id == "square");
    CHECK(look_of(o, "smooth dachshund").build == "long-and-low");
    CHECK(look_of(o, "poodle").build == "leggy");
    CHECK(look_of(o, "") == o.looks.front().is);
}

TEST_CASE("a slip in the outline is told where it is") {
    CHECK(faults_with("\"strap-top\", \"withers-top\"", "\"strap-top\", \"wither-top\"")
              .find("no point of the drawing is called so; found \"wither-top\"") !=
          std::string::npos);
    CHECK(faults_with("ring = [\"brisket\", \"skirt-end\", \"rib-low\"]",
                      "ring = [\"brisket\", \"hip\", \"rib-low\"]")
              .find("found no line that has both \"brisket\" and \"hip\"") != std::string::npos);
    CHECK(faults_with("zone = \"skirt\"", "zone = \"skrit\"").find("unknown zone") !=
          std::string::npos);
    CHECK(faults_with("zone = \"skirt\"", "zone = \"belly\"").find("\"skirt\" nowhere") !=
          std::string::npos);
    CHECK(faults_with("zone = \"skirt\"", "zone = \"belly\"").find("\"belly\" by several") !=
          std::string::npos);
    CHECK(faults_with("below = \"4 mm\"", "below = \"1 mm\"").find("from short to long") !=
          std::string::npos);
    CHECK(faults_with("colour = \"#fef6c7\"", "colour = \"straw\"").find("six digits") !=
          std::string::npos);
    CHECK(faults_with("tail = \"curled\"", "tail = \"corkscrew\"").find("\"corkscrew\"") ==
          std::string::npos);
    CHECK(faults_with("tail = \"curled\"", "tail = \"corkscrew\"").find("corkscrew") !=
          std::string::npos);
    CHECK(faults_with("\"bichon frise\"", "\"bichon friese\"").find("unknown breed") !=
          std::string::npos);
    CHECK(faults_with("stroke = [0, 1]", "stroke = [0, 0]").find("a stroke goes somewhere") !=
          std::string::npos);
}
