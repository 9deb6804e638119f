// What a picture must not lack: blends where a plan has them, signs of hurt skin in every view, arrows alike on
// both sides, ink on paper that grows with the length.
#include <algorithm>
#include <cmath>
#include <sstream>

#include <pelage/answers/picture.hpp>
#include <pelage/data/outline.hpp>
#include <pelage/data/reference.hpp>

#include "answers/picture_hatching.hpp"
#include "answers/picture_view.hpp"
#include "checked.hpp"
#include "generate/real_problems.hpp"
#include "planner/at_the_teeth.hpp"

using namespace pelage;

namespace {

const body& dog_body() {
    return io::reference().dog_body;
}

std::size_t zone_called(const std::string& id) {
    const auto& all = dog_body().zones;
    const auto z =
        std::find_if(all.begin(), all.end(), [&](const zone& one) { return one.id == id; });
    REQUIRE(z != all.end());
    return static_cast<std::size_t>(z - all.begin());
}

/// The data of all paths of that class.
std::string paths_of(const std::string& shown_by, const std::string& drawn) {
    const std::string begin = "<path class=\"" + shown_by + "\" d=\"";
    std::string out;
    for (auto at = drawn.find(begin); at != std::string::npos; at = drawn.find(begin, at + 1)) {
        const auto from = at + begin.size();
        out += drawn.substr(from, drawn.find('"', from) - from);
    }
    return out;
}

/// A place and its other side are one, where the plan says one thing of both.
bool is_at(const place& drawn, const place& said) {
    return drawn.zone == said.zone &&
           (drawn.which == said.which || said.which == side::both || drawn.which == side::both);
}

/// A dog of which a few places are told.
io::picture_request told(std::vector<io::pictured_place> places) {
    io::picture_request p;
    p.look = io::dog_outline().looks.front().is;
    p.places = std::move(places);
    return p;
}

}  // namespace

TEST_CASE("every border at which a clipper is blended is dashed in every view in which it shows") {
    generate::dice d(7);
    const outline& o = io::dog_outline();
    int seen = 0;
    for (int i = 0; i < 60; ++i) {
        const generate::table t = generate::any_table(d);
        const plan_request r = t.request();
        const groom g = make_plan(r);
        const io::picture_request p = io::picture_of(g, r, o, length_unit::mm);
        if (!g.planned() || !p.when.empty()) {
            continue;  // what is blended another day isn't drawn
        }
        const io::dog_picture drawn = io::picture_of(p, o, dog_body());
        const auto views = views_of(o, p.look, dog_body());
        for (std::size_t v = 0; v < views.size(); ++v) {
            const std::string dashed = paths_of("pd-b", drawn.parts[v].drawn);
            const auto clipped = [&](std::size_t one) {
                return g.zones[one].how.kind == tool_kind::clip;
            };
            const auto in_a_basket = [&](std::size_t one) {
                return may_bite(t.patient) && at_the_teeth(dog_body().zones[g.zones[one].at.zone]);
            };
            for (const blend& b : g.blends) {
                const bool told = (clipped(b.from) || clipped(b.into)) && !in_a_basket(b.from) &&
                                  !in_a_basket(b.into);
                for (const drawn_area& one : views[v].areas) {
                    for (const drawn_area& other : views[v].areas) {
                        const auto shared = shared_edge(one, other);
                        if (is_at(one.at, g.zones[b.from].at) &&
                            is_at(other.at, g.zones[b.into].at) && !shared.empty()) {
                            INFO("plan " << i << ", view " << v);
                            CHECK((dashed.find(io::path_data(shared, false)) !=
                                   std::string::npos) == told);
                            ++seen;
                        }
                    }
                }
            }
        }
    }
    CHECK(seen > 200);
}

TEST_CASE("a lump on the middle line warns from both sides, and is labelled once") {
    io::pictured_place loin{{zone_called("loin"), side::both}, io::shown_as::cut, mm(10.0)};
    loin.round = skin_state::lump;
    const auto p = io::picture_of(told({loin}), io::dog_outline(), dog_body());
    for (const std::size_t v : {0U, 1U}) {
        CHECK(p.parts[v].drawn.find("pd-wd") != std::string::npos);
    }
    CHECK(p.parts[0].texts.size() == 1);
    CHECK(p.parts[1].texts.empty());
}

TEST_CASE(
    "an edge towards hurt skin has teeth where another view shows the place, on its side of the "
    "dog") {
    const std::size_t flank = zone_called("flank");
    io::pictured_place belly{{zone_called("belly"), side::both}, io::shown_as::cut, mm(2.0)};
    belly.beside_sore = {{flank, side::left}};
    io::pictured_place ribs{{zone_called("ribs"), side::left}, io::shown_as::cut, mm(2.0)};
    ribs.beside_sore = {{flank, side::left}};
    const io::pictured_place sore{{flank, side::left}, io::shown_as::skin};
    const auto p = io::picture_of(told({belly, ribs, sore}), io::dog_outline(), dog_body());
    CHECK_FALSE(paths_of("pd-wb", p.parts[0].drawn).empty());
    CHECK(paths_of("pd-wb", p.parts[1].drawn).empty());
    const std::string below = paths_of("pd-wb", p.parts[2].drawn);
    REQUIRE_FALSE(below.empty());
    double x = 0.0;
    double y = 0.0;
    std::istringstream(below.substr(1)) >> x >> y;
    CHECK(y < 0.0);  // the dog's left
}

TEST_CASE("what is clipped on both sides has an arrow on both or on neither") {
    generate::dice d(8);
    const outline& o = io::dog_outline();
    std::size_t arrows = 0;
    for (int i = 0; i < 40; ++i) {
        const generate::table t = generate::any_table(d);
        const plan_request r = t.request();
        const io::picture_request p = io::picture_of(make_plan(r), r, o, length_unit::mm);
        io::prepared_dog ready(o, p.look, dog_body());
        std::vector<io::laid_view> all;
        for (io::prepared_view& v : ready.views) {
            all.push_back(io::laid_out({v.view, v, p, o, dog_body()}, v.labels));
        }
        io::match_arrows(all);
        const auto has = [&](const io::laid_view& v, std::size_t area) {
            return std::any_of(v.arrows.begin(), v.arrows.end(),
                               [&](const io::stroke_arrow& s) { return s.area == area; });
        };
        const auto stroked = [&](const place& at) {
            const auto one = std::find_if(p.places.begin(), p.places.end(),
                                          [&](const auto& q) { return q.at == at; });
            return one != p.places.end() && one->stroke.has_value();
        };
        for (std::size_t a = 0; a < ready.views[0].view.areas.size(); ++a) {
            const bool both = stroked(ready.views[0].view.areas[a].at) &&
                              stroked(ready.views[1].view.areas[a].at);
            INFO("plan " << i << ", area " << a);
            CHECK((!both || has(all[0], a) == has(all[1], a)));
        }
        arrows += all[0].arrows.size();
    }
    CHECK(arrows > 100);
}

TEST_CASE("on paper longer hair has more ink, and the shortest none") {
    const io::polygon box{{0, 0}, {300, 0}, {300, 300}, {0, 300}};
    const std::size_t shades = io::dog_outline().shades.size();
    const std::string style = io::hatching_style(shades);
    CHECK(io::hatched(0, shades, {box}).empty());
    double before = 0.0;
    for (std::size_t i = 1; i < shades; ++i) {
        const std::string drawn = io::hatched(i, shades, {box});
        const std::string data = paths_of("pd-hg pd-h" + std::to_string(i), drawn);
        double length = 0.0;
        for (std::size_t k = 0; k < data.size(); ++k) {
            if (data[k] == 'h' || data[k] == 'v') {
                length += std::abs(std::strtod(data.c_str() + k + 1, nullptr));
            } else if (data[k] == 'l') {
                char* rest = nullptr;
                const double x = std::strtod(data.c_str() + k + 1, &rest);
                length += std::hypot(x, std::strtod(rest, nullptr));
            }
        }
        const std::string wide = ".pd-h" + std::to_string(i) + "{stroke-width:";
        const double ink =
            length * std::strtod(style.c_str() + style.find(wide) + wide.size(), nullptr);
        INFO("shade " << i);
        CHECK(ink > 1.15 * before);
        before = ink;
    }
    CHECK(before < 0.8 * 300.0 * 300.0);
    // on a screen it isn't shown, and nothing else is of its class
    const std::string page = svg_of(io::picture_of(told({}), io::dog_outline(), dog_body()));
    CHECK(page.find(".pd-hg{display:none}") != std::string::npos);
    CHECK(page.find("<text class=\"pd-hg") == std::string::npos);
    CHECK(page.find("<text class=\"pd-h ") != std::string::npos);
}

TEST_CASE("a view on which another dog was drawn before is drawn as on a new one") {
    generate::dice d(9);
    const outline& o = io::dog_outline();
    io::prepared_dog used_before(o, o.looks.front().is, dog_body());
    for (int i = 0; i < 12; ++i) {
        const generate::table t = generate::any_table(d);
        const plan_request r = t.request();
        io::picture_request p = io::picture_of(make_plan(r), r, o, length_unit::mm);
        p.look = o.looks.front().is;
        for (int again = 0; again < 2; ++again) {
            io::signs_used used;
            INFO("plan " << i << ", " << again);
            CHECK(svg_of(io::picture_of(p, o, dog_body(), used_before, true, used)) ==
                  svg_of(io::picture_of(p, o, dog_body())));
        }
    }
}
