// The dog drawn, from random dogs, sheets and drawers: no label covers another, nothing a person wrote can
// break out of its place, and a picture stays small.
#include <set>

#include <pelage/answers/picture.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/data/reference.hpp>

#include "answers/picture_labels.hpp"
#include "checked.hpp"
#include "generate/real_problems.hpp"

using namespace pelage;

namespace {

using drawn::check_picture;
using drawn::cover;

/// Pictures of `n` plans, each of another look and in either unit.
void check_pictures(int n, std::uint64_t seed) {
    generate::dice d(seed);
    const outline& o = io::dog_outline();
    std::vector<std::string> ears;
    std::vector<std::string> tails;
    for (const outline_piece& p : o.pieces) {
        if (p.of == piece_of::ears) {
            ears.push_back(p.id);
        } else if (p.of == piece_of::tail) {
            tails.push_back(p.id);
        }
    }
    for (int i = 0; i < n; ++i) {
        const generate::table t = generate::any_table(d);
        const plan_request r = t.request();
        io::picture_request p =
            io::picture_of(make_plan(r), r, o, d.one_in(4) ? length_unit::inch : length_unit::mm);
        p.look = {d.one_of(o.builds).id, d.one_of(ears), d.one_of(tails)};
        INFO("plan " << i << " of seed " << seed);
        check_picture(io::picture_of(p, o, r.reference.dog_body));
    }
}

}  // namespace

TEST_CASE("labels of random plans never overlap") {
    check_pictures(300, 16);
}

TEST_CASE("labels of ten thousand random plans never overlap", "[.full]") {
    check_pictures(10'000, 2016);
}

TEST_CASE("a picture tells every place of the plan once") {
    generate::dice d(4);
    const generate::table t = generate::any_table(d);
    const plan_request r = t.request();
    const outline& o = io::dog_outline();
    const io::picture_request p = io::picture_of(make_plan(r), r, o, length_unit::mm);
    std::set<std::pair<std::size_t, side>> told;
    for (const io::pictured_place& one : p.places) {
        CHECK(told.emplace(one.at.zone, one.at.which).second);
    }
    std::size_t all = 0;
    for (const zone& z : r.reference.dog_body.zones) {
        all += z.paired ? 2 : 1;
    }
    CHECK(told.size() == all);
}

TEST_CASE("what a person wrote stays text, and the same question has the same answer") {
    io::picture_request p;
    p.title = "</svg><script>\"Rex\" & 'co'";
    p.alerts = {"allergic to <b>oats</b>"};
    p.look = io::dog_outline().looks.front().is;
    p.places.push_back({{0, side::both}, io::shown_as::cut, mm(13.0), {}, false, false, {}});
    const body& b = io::reference().dog_body;
    const std::string svg = svg_of(io::picture_of(p, io::dog_outline(), b));
    CHECK(svg.find("<script") == std::string::npos);
    CHECK(svg.find("<b>") == std::string::npos);
    CHECK(svg.find("&lt;script&gt;&quot;Rex&quot; &amp; &#39;co&#39;") != std::string::npos);
    CHECK(svg == svg_of(io::picture_of(p, io::dog_outline(), b)));
    for (const char* outside : {"http://www.w3.org/2000/svg"}) {
        const auto first = svg.find("http");
        CHECK(svg.find(outside) == first);
        CHECK(svg.find("http", first + 1) == std::string::npos);
    }
}

TEST_CASE("what has nothing above it isn't labelled below, and no leader goes past another's end") {
    // a back of four, ribs below it that fill the left, a label too wide for any of them
    std::vector<io::polygon> solid;
    std::vector<io::wanted_label> wanted;
    const auto add = [&](double x, double y, double width, double height, bool above) {
        solid.push_back({{x, y}, {x + width, y}, {x + width, y + height}, {x, y + height}});
        wanted.push_back({solid.back(), {{"a long name", 26.0, false}}, above, false});
    };
    for (const double x : {0.0, 60.0, 120.0, 180.0}) {
        add(x, 0.0, 60.0, 40.0, true);
    }
    add(0.0, 40.0, 120.0, 120.0, false);
    add(120.0, 40.0, 120.0, 120.0, false);
    const auto labels = io::place_labels(wanted, io::label_ground(solid));
    REQUIRE(labels.size() == 6);
    for (const io::placed_label& l : labels) {
        CHECK_FALSE(l.inside);
        if (l.above) {
            CHECK(l.box.top + l.box.height / 2.0 <= l.anchor.y);
        }
        for (const io::placed_label& other : labels) {
            if (!(other.anchor == l.anchor)) {
                CHECK(io::distance(other.anchor, l.from, l.anchor) > 8.0);
            }
        }
    }
}

TEST_CASE("a label stands inside where it fits, else beside, its leader ending in its place") {
    const io::polygon large{{0, 0}, {400, 0}, {400, 300}, {0, 300}};
    const io::polygon small{{500, 0}, {530, 0}, {530, 30}, {500, 30}};
    const std::vector<io::label_line> ribs{{"ribs", 22.0, false}, {"13", 27.0, true}};
    const auto labels =
        io::place_labels({{large, ribs}, {small, ribs}}, io::label_ground({large, small}));
    REQUIRE(labels.size() == 2);
    CHECK(labels[0].inside);
    CHECK_FALSE(labels[1].inside);
    CHECK(io::within(small, labels[1].anchor));
    CHECK_FALSE(cover(labels[0].box, labels[1].box));
}
