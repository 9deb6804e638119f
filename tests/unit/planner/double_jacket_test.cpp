// The jacket of a double coat, feathering, and what the trade calls its hand tools. Common practice,
// no source: a double coat is carded and not clipped unless its owner agrees in writing.
#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

const style& sheet_called(const char* id) {
    return *find(io::reference().styles, id);
}

groom_table husky(const char* sheet) {
    groom_table t;
    t.patient.coat = coat_class::double_long;
    t.sheet = sheet_called(sheet);
    return t;
}

const zone& zone_called(const char* id) {
    return io::reference().dog_body.zones[at(id).zone];
}

}  // namespace

TEST_CASE("a clip of a double coat is a question to its owner, not a plan", "[jacket]") {
    const groom g = husky("kennel").plan();
    REQUIRE(g.question);
    CHECK_FALSE(g.planned());
    CHECK_FALSE(g.stopped());
    CHECK(g.blocks.empty());
    CHECK(g.question->instead == "double-tidy");
    REQUIRE(g.consents.size() == 1);
    CHECK(g.consents[0].id == "clip-jacket");
    CHECK_FALSE(g.consents[0].given);
    // the head too: a shaved head on a coat left standing is no groom
    const auto asked = [&](const char* word) {
        return std::any_of(g.question->asked.begin(), g.question->asked.end(),
                           [&](std::size_t i) { return g.zones[i].at == at(word); });
    };
    CHECK(asked("skull"));
    CHECK(asked("ear"));
    CHECK(asked("back"));
    CHECK_FALSE(asked("pads"));
}

TEST_CASE("what fits in its place is planned without what belongs to the clip", "[jacket]") {
    groom_table t = husky("one-length");
    t.patient.body_length = mm(9);
    t.says("head", clip_to(mm(9)));
    t.patient.departures = {{"legs", clip_to(mm(9))}};
    const groom g = t.plan();
    const auto instead = instead_of(t.request(), g);
    REQUIRE(instead);
    CHECK(instead->sheet->id == "double-tidy");
    CHECK(instead->patient.departures.empty());
    CHECK_FALSE(instead->patient.body_length);
    t.patient = instead->patient;
    t.sheet = *instead->sheet;
    const groom tidy = t.plan();
    CHECK(tidy.planned());
    CHECK(of(tidy, "back").how.kind == tool_kind::carder);
    CHECK(of(tidy, "hock").how.kind == tool_kind::scissors);
    CHECK(held(of(tidy, "pads").how) == "blade 10");
    CHECK_FALSE(instead_of(t.request(), tidy));
}

TEST_CASE("a sheet that only tidies a double coat stays a plan; its head isn't clipped beside it",
          "[jacket]") {
    groom_table t = husky("double-tidy");
    CHECK(t.plan().planned());
    t.patient.departures = {{"head", clip_to(mm(6))}};
    groom g = t.plan();
    REQUIRE(g.planned());
    CHECK(of(g, "skull").how.kind == tool_kind::none);
    CHECK(of(g, "skull").withheld);
    CHECK(of(g, "skull").why.what == cause::head_unsigned);
    REQUIRE(g.consents.size() == 1);
    t.patient.consents = {"clip-jacket"};
    g = t.plan();
    CHECK(of(g, "skull").how.kind == tool_kind::clip);
    // a jacket clipped by a departure is the same question
    t.patient.consents.clear();
    t.patient.departures = {{"back", clip_to(mm(13))}};
    CHECK(t.plan().question);
}

TEST_CASE("mats come off a double coat without that consent, on its head too", "[jacket]") {
    groom_table t = husky("double-tidy");
    t.patient.mats = {mat_in("loin", mat_grade::pelt, mm(9)),
                      mat_in("left ear", mat_grade::pelt, mm(9))};
    const groom g = t.plan();
    REQUIRE(g.planned());
    CHECK(of(g, "loin").came == outcome::clipped_under);
    CHECK(of(g, "left ear").came == outcome::clipped_under);
    CHECK(of(g, "back").how.kind == tool_kind::carder);
}

TEST_CASE("with consent the undercoat comes out before a blade goes in", "[jacket]") {
    groom_table t = husky("kennel");
    t.patient.consents = {"clip-jacket"};
    const groom g = t.plan();
    REQUIRE(g.planned());
    const auto first = std::find_if(g.blocks.begin(), g.blocks.end(),
                                    [](const block& b) { return b.when == list::after_bath; });
    REQUIRE(first != g.blocks.end());
    CHECK(held(first->how) == "undercoat rake");
    CHECK(first->done == finish::card);
    CHECK(first->takes > work{});
    const auto carded = [&](const char* word) {
        return std::any_of(first->zones.begin(), first->zones.end(),
                           [&](std::size_t i) { return g.zones[i].at == at(word); });
    };
    CHECK(carded("back"));
    CHECK(carded("thigh"));
    CHECK_FALSE(carded("skull"));
    work sum = mmin(g.order_after.cost.pick_ups);
    for (const block& b : g.blocks) {
        sum += b.when == list::after_bath ? b.takes : work{};
    }
    CHECK(g.after == sum);
    // no other coat is carded before it is clipped
    t.patient.coat = coat_class::curly;
    for (const block& b : t.plan().blocks) {
        CHECK(b.how.kind != tool_kind::carder);
    }
}

TEST_CASE("dead hair is taken out with the tool the trade has for the coat", "[jacket]") {
    groom_table t;
    t.sheet = sheet_of(finish_by(finish::card));
    for (const auto& [coat, tool] : std::vector<std::pair<coat_class, std::string>>{
             {coat_class::double_long, "undercoat rake"},
             {coat_class::double_short, "undercoat rake"},
             {coat_class::wire, "carding knife"},
             {coat_class::feathered, "carding knife"},
             {coat_class::smooth, "rubber curry"},
             {coat_class::shaggy, "undercoat comb"}}) {
        INFO(tool);
        t.patient.coat = coat;
        CHECK(held(of(t.plan(), "back").how) == tool);
    }
}

TEST_CASE("between the pads hair has no lay: a blade leaves what is etched on it", "[jacket]") {
    groom_table t;
    t.patient.coat = coat_class::drop;
    groom g = t.plan();
    REQUIRE(held(of(g, "pads").how) == "blade 10");
    CHECK(of(g, "pads").leaves->best == mm(1.5));
    CHECK(of(g, "groin").leaves->best == mm(3));  // hair that lies keeps more
    // 2 mm there is worth scooping, though the same blade leaves 3 mm where hair lies
    t.patient.now = {{"all", mm(2)}};
    g = t.plan();
    CHECK(held(of(g, "pads").how) == "blade 10");
    CHECK(of(g, "groin").how.kind == tool_kind::none);
}

TEST_CASE("a feathered coat mats where it is feathered, its jacket stays short", "[jacket]") {
    const coat& c = coat_of(io::reference(), coat_class::feathered);
    const auto prone = [&](const char* id) {
        return matting_prone_length(c, zone_called(id), {habit::two_or_three, true}, false,
                                    io::reference().rules.matting);
    };
    for (const char* id : {"ear", "ear-edge", "chest", "foreleg", "thigh", "skirt", "tail"}) {
        INFO(id);
        CHECK(prone(id));
        CHECK(feathered_at(c, id));
        CHECK(terminal_at(c, id).best > mm(100));
    }
    for (const char* id : {"neck", "back", "ribs", "loin", "rump", "skull", "muzzle"}) {
        INFO(id);
        CHECK_FALSE(prone(id));
        CHECK(terminal_at(c, id).best < mm(51));
    }
    CHECK(mats_by_length(c));
    CHECK_FALSE(c.matting_prone);
}

TEST_CASE("the one question whether a coat is double", "[jacket]") {
    for (std::size_t i = 0; i < coat_names.size(); ++i) {
        CHECK(double_coated(static_cast<coat_class>(i)) == coat_names[i].starts_with("double"));
    }
}

TEST_CASE("long coats with beard and brows mat; smooth and double ones don't by length",
          "[jacket]") {
    for (const char* breed :
         {"old english sheepdog", "bearded collie", "tibetan terrier", "briard"}) {
        INFO(breed);
        const auto& all = io::reference().genes.breeds;
        const auto b =
            std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.id == breed; });
        REQUIRE(b != all.end());
        CHECK(b->coat == coat_class::shaggy);
        CHECK(mats_by_length(coat_of(io::reference(), b->coat)));
    }
}

TEST_CASE("no sheet of the reference shaves a double coat anywhere without consent", "[jacket]") {
    for (const style& s : io::reference().styles) {
        for (const coat_class k : {coat_class::double_short, coat_class::double_long}) {
            groom_table t;
            t.patient.coat = k;
            t.sheet = s;
            const groom g = t.plan();
            INFO(s.id << " on " << name(k));
            for (const zone_plan& z : g.zones) {
                const group where = io::reference().dog_body.zones[z.at.zone].where;
                CHECK((z.how.kind != tool_kind::clip || where == group::prep ||
                       where == group::feet));
            }
        }
    }
}
