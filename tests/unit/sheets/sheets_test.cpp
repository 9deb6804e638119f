// Style sheets judged: the salon's own, breed standards as limits, two beside one another, and many
// tried on one dog.
#include <algorithm>
#include <set>

#include <pelage/answers/sheets.hpp>
#include <pelage/data/embedded.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/sheets/compare.hpp>
#include <pelage/sheets/rank.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::at;

namespace {

const reference_data& ref() {
    return io::reference();
}

const style& sheet(std::string_view id) {
    const style* s = find(io::demo_salon().styles, id);
    INFO(id);
    REQUIRE(s != nullptr);
    return *s;
}

/// A sheet of ours that extends another.
style inherited_sheet(const std::string& parent, const std::string& more) {
    const auto read = io::read_sheet_files(
        {{"heir.toml",
          "format = 1\nid = \"heir\"\ntitle = \"Heir\"\nextends = \"" + parent + "\"\n" + more}},
        {}, ref(), ref().styles);
    std::string told;
    for (const diagnostic& d : read.front().faults) {
        told += d.text + "\n";
    }
    INFO(told);
    REQUIRE(read.front().sheet.has_value());
    return *read.front().sheet;
}

std::string in_lines(const std::vector<sheet_warning>& all) {
    std::string text;
    for (const sheet_warning& w : all) {
        text += std::to_string(w.at.line) + ": " + io::doubt_words(w, ref()) + "\n";
    }
    return text;
}

/// Whether a sheet with the place left at a length keeps the limits of a standard.
bool keeps(const std::string& standard, const std::string& place, const std::string& length) {
    const style s =
        inherited_sheet(standard, "drop_limits = true\n[zones]\n\"" + place + "\" = { length = \"" +
                                      length + "\", finish = \"scissor\" }\n");
    return broken_limits(s, sheet(standard), ref()).empty();
}

dog plain_dog(coat_class k) {
    dog d;
    d.coat = k;
    d.brushed = {habit::two_or_three, true};
    return d;
}

std::vector<std::string> carried(const std::vector<ranked_sheet>& all) {
    std::vector<std::string> out;
    for (const ranked_sheet& t : all) {
        if (t.carried()) {
            out.push_back(t.sheet->id);
        }
    }
    return out;
}

const ranked_sheet& trial(const std::vector<ranked_sheet>& all, const std::string& id) {
    const auto found = std::find_if(all.begin(), all.end(),
                                    [&](const ranked_sheet& t) { return t.sheet->id == id; });
    REQUIRE(found != all.end());
    return *found;
}

bool objects(const ranked_sheet& t, objection what) {
    return std::any_of(t.against.begin(), t.against.end(),
                       [&](const sheet_objection& o) { return o.what() == what; });
}

}  // namespace

TEST_CASE("the demo salon has eight sheets for eight breed mixes, all clean", "[sheet]") {
    std::set<std::string> mixes;
    std::set<std::string> extended;
    std::size_t n = 0;
    for (const io::embedded_file& f : io::embedded_reference()) {
        if (!f.path.starts_with("reference/demo/styles/")) {
            continue;
        }
        ++n;
        CHECK(f.text.starts_with("# Invented sheet of an invented salon."));
        std::string id{f.path.substr(22)};
        id.resize(id.size() - 5);
        const style& s = sheet(id);
        const auto doubts = doubts_about(s, ref(), ref().rules);
        INFO(id << "\n" << in_lines(doubts));
        CHECK(doubts.empty());
        CHECK(s.approved_by.find("invented") != std::string::npos);
        REQUIRE(s.mixes.size() == 1);
        mixes.insert(s.mixes.front());
        extended.insert(s.extends);
    }
    CHECK(n == 8);
    CHECK(mixes.size() == 8);
    CHECK(extended.size() > 4);
}

TEST_CASE("the reference's own sheets check clean", "[sheet]") {
    for (const style& s : ref().styles) {
        const auto doubts = doubts_about(s, ref(), ref().rules);
        INFO(s.id << "\n" << in_lines(doubts));
        CHECK(doubts.empty());
    }
}

TEST_CASE("as a limit: a retriever clip", "[sheet][trade]") {
    // trade check T2: AKC breed standard, Portuguese Water Dog
    for (const char* place : {"back", "tail", "tail base", "muzzle", "left ear", "feet"}) {
        INFO(place);
        CHECK(keeps("retriever-clip", place, "1 in"));
        CHECK_FALSE(keeps("retriever-clip", place, "25.5 mm"));
    }
    CHECK(broken_limits(sheet("retriever-clip"), sheet("retriever-clip"), ref()).empty());
}

TEST_CASE("as a limit: a Lagotto, but for its head", "[sheet][trade]") {
    // trade check T3: AKC breed standard, Lagotto Romagnolo
    for (const char* place : {"back", "tail", "tail base", "foreleg", "feet"}) {
        INFO(place);
        CHECK(keeps("lagotto", place, "1 1/2 in"));
        CHECK_FALSE(keeps("lagotto", place, "38.2 mm"));
    }
    CHECK(keeps("lagotto", "skull", "3 in"));
}

TEST_CASE("as a limit: a Standard Schnauzer's back", "[sheet][trade]") {
    // trade check T4: AKC breed standard, Standard Schnauzer
    CHECK(keeps("standard-schnauzer", "back", "3/4 in"));
    CHECK(keeps("standard-schnauzer", "back", "2 in"));
    CHECK_FALSE(keeps("standard-schnauzer", "back", "19 mm"));
    CHECK_FALSE(keeps("standard-schnauzer", "back", "51 mm"));
    CHECK(keeps("standard-schnauzer", "loin", "51 mm"));
}

TEST_CASE("as a limit: a poodle's sporting clip", "[sheet][trade]") {
    // trade check T5: AKC breed standard, Poodle (from memory)
    CHECK_FALSE(keeps("poodle-sporting", "back", "1 in"));  // legs of 16 mm would be shorter
    CHECK_FALSE(keeps("poodle-sporting", "back", "26 mm"));
    CHECK(keeps("poodle-sporting", "second thigh", "10 mm"));
    CHECK_FALSE(keeps("poodle-sporting", "second-thigh", "9 mm"));
    CHECK_FALSE(keeps("poodle-sporting", "muzzle", "2 mm"));  // shaved
    // legs may be slightly longer than the blanket: never shorter, whatever the blanket's length
    const auto broken = [](const std::string& zones) {
        return in_lines(doubts_about(inherited_sheet("poodle-sporting", "[zones]\n" + zones), ref(),
                                     ref().rules));
    };
    CHECK_THAT(broken("body = { length = \"22 mm\" }\n"),
               match::ContainsSubstring("breaks the clause"));
    for (const char* fits : {"body = { length = \"6 mm\" }\nskirt = { length = \"6 mm\" }\n"
                             "legs = { length = \"9 mm\" }\n",
                             "body = { length = \"1 in\" }\nlegs = { length = \"1 in\" }\n"}) {
        CHECK_THAT(broken(fits), !match::ContainsSubstring("breaks"));
    }
}

TEST_CASE("as a limit: the other clips whose lengths a standard states", "[sheet][trade]") {
    // AKC breed standards (seen second-hand) and FCI standard 172 (the modern clip from memory)
    CHECK(keeps("bedlington-show", "back", "1 in"));
    CHECK_FALSE(keeps("bedlington-show", "back", "26 mm"));
    CHECK(keeps("bichon-show", "foreleg", "2 in"));
    CHECK_FALSE(keeps("bichon-show", "foreleg", "50 mm"));
    CHECK(keeps("poodle-corded", "back", "200 mm"));
    CHECK_FALSE(keeps("poodle-corded", "back", "199 mm"));
    CHECK(keeps("poodle-modern", "back", "10 mm"));
    CHECK_FALSE(keeps("poodle-modern", "back", "9 mm"));
    CHECK_FALSE(keeps("poodle-modern", "shoulder", "71 mm"));
    CHECK_FALSE(keeps("poodle-modern", "thigh", "39 mm"));
    CHECK(keeps("west-highland", "back", "2 in"));
    CHECK_FALSE(keeps("west-highland", "back", "45 mm"));
    CHECK_FALSE(keeps("west-highland", "back", "56 mm"));
}

TEST_CASE("a broken limit names the standard's source and clause", "[sheet]") {
    const style s = inherited_sheet("one-length", "[zones]\nback = { length = \"30 mm\" }\n");
    const auto broken = broken_limits(s, sheet("retriever-clip"), ref());
    REQUIRE(broken.size() == 1);
    CHECK(broken.front().what == sheet_doubt::limit);
    CHECK(broken.front().at.line == 6);
    const auto& found = std::get<broken_limit>(broken.front().found);
    CHECK(found.standard == "retriever-clip");
    CHECK(found.found.target == mm(30));
    CHECK_FALSE(found.right.low);
    CHECK(in_hundredths(*found.right.high) == 2540);
    CHECK(found.right.why.from == "akc-portuguese-water-dog");
    const std::string text = io::doubt_words(broken.front(), ref());
    CHECK_THAT(text, match::ContainsSubstring("published: akc-portuguese-water-dog; the whole coat "
                                              "at most 1 in"));
    CHECK_THAT(text, match::ContainsSubstring("found 30 mm; right is at most 25 mm"));
    CHECK_THAT(io::doubt_words(broken.front(), ref(), length_unit::inch),
               match::ContainsSubstring("found 1 3/16 in; right is at most 1 in"));
}

TEST_CASE("a limit is broken by a season, too, and told once", "[sheet]") {
    const style s =
        inherited_sheet("one-length",
                        "[season.winter]\nmonths = [\"January\"]\nscale = 2.0\n"
                        "[season.cold]\nmonths = [\"February\"]\nlongest_interval = \"50 days\"\n");
    const auto broken = broken_limits(s, sheet("retriever-clip"), ref());
    REQUIRE_FALSE(broken.empty());
    for (const sheet_warning& w : broken) {
        CHECK(w.at.line == 5);
        CHECK(std::get<broken_limit>(w.found).found.season == "winter");
        CHECK_THAT(io::doubt_words(w, ref()), match::ContainsSubstring(" in \"winter\" breaks"));
    }
}

TEST_CASE("every sheet to begin with checks clean", "[sheet]") {
    const auto i = GENERATE(range(std::size_t{0}, coat_names.size()));
    const auto k = static_cast<coat_class>(i);
    const bool by_mix = GENERATE(false, true);
    const std::string text = io::new_sheet("begun", by_mix ? std::nullopt : std::optional{k}, k,
                                           by_mix ? "poodle" : "", parse_date("2026-11-26"));
    const auto read = io::read_sheet_files({{"begun.toml", text}}, {}, ref(), ref().styles);
    INFO(text);
    REQUIRE(read.front().sheet.has_value());
    CHECK(read.front().sheet->dated == parse_date("2026-11-26"));
    if (!by_mix) {
        const auto doubts = doubts_about(*read.front().sheet, ref(), ref().rules);
        INFO(in_lines(doubts));
        CHECK(doubts.empty());
    }
}

TEST_CASE("sheets for a mix: those made for it first, then by the chance of its coat", "[sheet]") {
    // a backcross to a poodle: curly or wavy, half and half by the three loci
    const expected_coat mix =
        expect_coat("F1b poodle x golden retriever to poodle", ref().genes, ref().coats);
    REQUIRE(mix.may_be.coats.size() > 1);
    const auto all = io::sheets_for(io::demo_salon().styles, mix, ref());
    for (std::size_t i = 1; i < all.size(); ++i) {
        CHECK((all[i - 1].for_mix || !all[i].for_mix));
        CHECK((all[i - 1].for_mix != all[i].for_mix || all[i - 1].chance >= all[i].chance));
    }
    for (const io::listed_sheet& one : all) {
        double sum = 0.0;
        for (const coat_chance& c : mix.may_be.coats) {
            const auto coats = coats_for(*one.sheet, ref());
            sum += std::count(coats.begin(), coats.end(), c.coat) > 0 ? c.chance : 0.0;
        }
        INFO(one.sheet->id);
        CHECK_THAT(one.chance, match::WithinAbs(sum, 1e-12));
    }
}

TEST_CASE("a mix is the same however it is written", "[sheet]") {
    const style& s = sheet("cockapoo-round");
    for (const char* mix : {"poodle x cocker spaniel", "cocker spaniel x poodle",
                            "miniature poodle x cocker spaniel", "cockapoo"}) {
        INFO(mix);
        CHECK(names_mix(s, mix, ref().genes));
    }
    for (const char* mix : {"poodle", "F1b poodle x cocker spaniel to poodle", "poodle x beagle",
                            "no such dog", ""}) {
        INFO(mix);
        CHECK_FALSE(names_mix(s, mix, ref().genes));
    }
}

TEST_CASE("compared: a sheet with itself costs nothing more", "[sheet]") {
    const dog d = plain_dog(coat_class::wavy);
    const style& s = sheet("low-upkeep");
    const plan_request r{ref(), ref().rules, io::demo_salon().tools,
                         d,     s,           parse_date("2026-11-26")};
    const sheet_comparison c = compare_sheets(r, r, {});
    CHECK(c.differ.empty());
    CHECK(c.alike == ref().dog_body.zones.size());
    CHECK(c.of_first.takes() == c.of_second.takes());
    CHECK(c.of_first.setups == c.of_second.setups);
    REQUIRE(c.of_first.visits);
    CHECK(c.of_first.visits->sum.number() == c.of_second.visits->sum.number());
}

TEST_CASE("compared: zone by zone, each counted once", "[sheet]") {
    const dog d = plain_dog(coat_class::wavy);
    const kit& tools = io::demo_salon().tools;
    const plan_request a{ref(), ref().rules, tools, d, sheet("one-length"), std::nullopt};
    const plan_request b{ref(), ref().rules, tools, d, sheet("low-upkeep"), std::nullopt};
    const sheet_comparison c = compare_sheets(a, b, {});
    CHECK(c.alike + c.differ.size() == ref().dog_body.zones.size());
    CHECK_FALSE(c.of_first.visits);  // nobody said what day it is
    const auto back = std::find_if(c.differ.begin(), c.differ.end(),
                                   [](const sheet_difference& x) { return x.at == at("back"); });
    REQUIRE(back != c.differ.end());
    CHECK(back->first.target == mm(13));
    CHECK(back->second.target == mm(9.5));
    const groom plan = make_plan(b);
    CHECK(c.of_second.takes() == plan.before + plan.after);
    const sheet_comparison turned = compare_sheets(b, a, {});
    CHECK(turned.of_first.takes() == c.of_second.takes());
    CHECK(turned.differ.size() == c.differ.size());
}

TEST_CASE("any sheet: what is carried holds, and what isn't has its reason", "[sheet]") {
    const kit& tools = io::demo_salon().tools;
    for (const dog& patient : io::demo_salon().dogs) {
        dog d = patient;
        const style& own = sheet(d.style);
        const plan_request r{ref(), ref().rules, tools, d, own, parse_date("2026-11-26")};
        const auto all = rank_sheets(r, io::demo_salon().styles);
        CHECK(all.size() == io::demo_salon().styles.size());
        bool wrong_coats = false;
        bool others = false;
        for (const ranked_sheet& t : all) {
            INFO(d.id << " " << t.sheet->id);
            const auto coats = coats_for(*t.sheet, ref());
            const bool fits = std::count(coats.begin(), coats.end(), *d.coat) > 0;
            CHECK(objects(t, objection::coat) != fits);
            if (t.carried()) {
                CHECK_FALSE(others);  // carried ones stand first
                CHECK(t.plan.stuck.empty());
                REQUIRE(t.when);
                CHECK(t.when->full_groom >= shortest_rota);
            }
            others = others || !t.carried();
            CHECK_FALSE((wrong_coats && fits));  // those for other coats stand last
            wrong_coats = wrong_coats || !fits;
        }
    }
}

TEST_CASE("any sheet: mats, hair and brushing speak against what they forbid", "[sheet]") {
    const kit& tools = io::demo_salon().tools;
    const style& own = sheet("low-upkeep");
    const auto tried = [&](const dog& d) {
        return rank_sheets({ref(), ref().rules, tools, d, own, parse_date("2026-11-26")},
                           io::demo_salon().styles);
    };
    dog d = plain_dog(coat_class::curly);
    d.style = "low-upkeep";
    const auto sound = tried(d);
    CHECK(sound.front().sheet->id == "low-upkeep");  // its own first
    CHECK(sound.front().carried());

    dog matted = d;
    mat_finding m;
    m.at = at("left ear");
    m.grade = mat_grade::pelt;
    m.free_hair = mm(5);
    matted.mats.push_back(m);
    CHECK(objects(trial(tried(matted), "lagotto"), objection::mats));

    dog shorn = d;
    shorn.now = {{"all", mm(12)}};
    const auto of_shorn = tried(shorn);
    CHECK(objects(trial(of_shorn, "lagotto"), objection::hair));
    CHECK_FALSE(objects(trial(of_shorn, "kennel"), objection::hair));

    dog unbrushed = d;
    unbrushed.brushed = {habit::none, false};
    const auto of_unbrushed = tried(unbrushed);
    CHECK(objects(trial(of_unbrushed, "rounded"), objection::brushing));
    CHECK_FALSE(objects(trial(of_unbrushed, "kennel"), objection::brushing));
    CHECK(carried(of_unbrushed).size() < carried(sound).size());
}

TEST_CASE("any sheet: a longer wait carries fewer sheets", "[sheet]") {
    const dog d = plain_dog(coat_class::wavy);
    const style& any = sheet("one-length");
    const plan_request r{ref(), ref().rules, io::demo_salon().tools, d, any, std::nullopt};
    std::size_t before = io::demo_salon().styles.size();
    for (const double wait : {7.0, 21.0, 30.0, 40.0, 56.0}) {
        const auto now = carried(rank_sheets(r, io::demo_salon().styles, day(wait))).size();
        CHECK(now <= before);
        before = now;
    }
}

TEST_CASE("any sheet: where a blade is out its substitute is named", "[sheet]") {
    const dog d = plain_dog(coat_class::wavy);
    const style& own = sheet("low-upkeep");
    kit tools = io::demo_salon().tools;
    tools.combs.clear();  // with combs the body of 9.5 mm is combed, whether the 4F is there or not
    const auto tried = [&](const kit& k) {
        return rank_sheets({ref(), ref().rules, k, d, own, parse_date("2026-11-26")}, {own});
    };
    const auto out = tried(tools);  // the 4F is out for sharpening
    REQUIRE_FALSE(out.front().instead.empty());
    CHECK(out.front().instead.front().out == "4F");
    CHECK(out.front().instead.front().instead.tool.id != "4F");
    for (kit_blade& b : tools.blades) {
        b.out = false;
    }
    CHECK(tried(tools).front().instead.empty());
}
