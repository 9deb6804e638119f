// What lies in the drawer: clippers and what they take, adjustable blades, sets of combs, tables.
#include <algorithm>
#include <string>

#include <pelage/base/length_text.hpp>
#include <pelage/data/read.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

io::document_text salon_file(const std::string& rest) {
    return {"salon.toml", "format = 1\ntitle = \"Corner salon\"\n" + rest};
}

kit kit_of(const std::string& text) {
    return io::read_kit(salon_file("[kit]\n" + text), io::reference());
}

const kit_comb& comb_in(const kit& k, const std::string& id) {
    const auto at = std::find_if(k.combs.begin(), k.combs.end(),
                                 [&](const kit_comb& c) { return c.spec.id == id; });
    REQUIRE(at != k.combs.end());
    return *at;
}

bool offers(const kit& k, const std::string& name) {
    const auto all = setups_of(k, {}, io::reference().rules.cut);
    return std::any_of(all.begin(), all.end(), [&](const setup& s) { return held(s) == name; });
}

const std::string lever = "[[kit.blade]]\nid = \"adjustable\"\nsettings = [\"3 mm\", \"1.5 mm\"]\n";
const std::string ten = "[[kit.blade]]\nid = \"10\"\n";
const std::string thirty = "[[kit.blade]]\nid = \"30\"\n";

}  // namespace

TEST_CASE("an adjustable blade is offered on the marks of its lever", "[kit]") {
    const kit k = kit_of(lever);
    CHECK(offers(k, "blade adjustable at 1.5 mm"));
    CHECK(offers(k, "blade adjustable at 3 mm"));
    CHECK_FALSE(offers(k, "blade adjustable"));
}

TEST_CASE("without marks an adjustable blade is not planned with", "[kit]") {
    const kit k = kit_of("[[kit.blade]]\nid = \"adjustable\"\n");
    const auto all = setups_of(k, {}, io::reference().rules.cut);
    CHECK(std::none_of(all.begin(), all.end(),
                       [](const setup& s) { return s.kind == tool_kind::clip; }));
}

TEST_CASE("an adjustable blade leaves what its mark says, and is as short as that", "[kit]") {
    const kit k = kit_of(lever);
    const setup s = bare(set_to(k.blades.front().spec, mm(1.5)), direction::with_lay);
    CHECK(cut_length(s, 90.0, io::reference().rules.cut).best == mm(1.5));
    const kit own = kit_of(
        "[[kit.blade]]\nid = \"adjustable\"\nstated = \"0.5 mm\"\nreach = \"4 mm\"\n"
        "settings = [\"4 mm\"]\n");
    CHECK(own.blades.front().spec.stated.best == mm(0.5));
    CHECK(own.blades.front().spec.reach == mm(4));
}

TEST_CASE("a blade is offered only if a clipper takes it", "[kit]") {
    const std::string big = "[[kit.clipper]]\ntitle = \"big\"\ncount = 2\n";
    const std::string small = "[[kit.clipper]]\ntitle = \"small\"\ntakes = [\"adjustable\"]\n";
    const kit k = kit_of(ten + lever + big + small);
    CHECK(k.clippers == 2);
    CHECK(offers(k, "blade 10"));
    CHECK(offers(k, "blade adjustable at 3 mm"));
    CHECK_THROWS_AS(kit_of(ten + lever + big), bad_input);
    CHECK_THROWS_AS(kit_of(ten + lever + small), bad_input);
}

TEST_CASE("a set of combs brings its combs, by what is printed on them or by length", "[kit]") {
    const kit k =
        kit_of(thirty +
               "[[kit.comb_set]]\ntitle = \"long set\"\n"
               "combs = { \"2\" = \"10 mm\", \"1\" = \"1/2 in\" }\n"
               "[[kit.comb_set]]\ntitle = \"short set\"\ncombs = [\"6 mm\", \"13 mm\"]\n");
    REQUIRE(k.combs.size() == 3);
    CHECK(comb_in(k, "10 mm").labels.front().label == "2");
    CHECK(comb_in(k, "13 mm").count == 2);
    CHECK(comb_in(k, "13 mm").labels.size() == 2);
    CHECK(offers(k, "comb 6 mm over blade 30"));
}

TEST_CASE("what is said of one comb wins over its set", "[kit]") {
    const kit k = kit_of(thirty + ten +
                         "[[kit.comb_set]]\ntitle = \"set\"\ncombs = [\"6 mm\", \"13 mm\"]\n"
                         "[[kit.comb]]\nid = \"13 mm\"\nmeasured = \"14 mm\"\nfits = [\"10\"]\n");
    REQUIRE(k.combs.size() == 2);
    CHECK(comb_in(k, "13 mm").measured == mm(14));
    CHECK(comb_in(k, "13 mm").count == 1);
    CHECK(offers(k, "comb 13 mm over blade 10"));
    CHECK_FALSE(offers(k, "comb 13 mm over blade 30"));
}

TEST_CASE("at a table lies what is listed there and what no table lists", "[kit]") {
    const kit k =
        kit_of(thirty + ten + "[[kit.blade]]\nid = \"7F\"\n[[kit.comb]]\nid = \"13 mm\"\n" +
               "[[kit.table]]\nid = \"window\"\nblades = [\"10\", \"30\"]\n"
               "[[kit.table]]\nid = \"door\"\nblades = [\"30\"]\ncombs = [\"13 mm\"]\n");
    const kit window = at_table(k, "window");
    CHECK(find_blade(window, "10") != nullptr);
    CHECK(find_blade(window, "7F") != nullptr);
    CHECK(window.combs.empty());
    const kit door = at_table(k, "door");
    CHECK(find_blade(door, "10") == nullptr);
    CHECK(door.combs.size() == 1);
}

TEST_CASE("a salon's own angle of the lay takes the place of the reference's", "[kit]") {
    const salon_files s =
        io::read_salon(salon_file("[kit]\n" + ten +
                                  "[override.coats.wavy]\nlay = { best = \"52 deg\", "
                                  "basis = \"measured\", note = \"back, blade 7F\" }\n"),
                       io::reference());
    CHECK(lay_of(io::reference(), s.rules, coat_class::wavy).best == 52.0);
    CHECK(lay_of(io::reference(), s.rules, coat_class::wavy).why.how == basis::measured);
    CHECK(lay_of(io::reference(), s.rules, coat_class::drop).best ==
          coat_of(io::reference(), coat_class::drop).lay_degrees.best);
}
