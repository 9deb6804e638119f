// What to buy: the exact choice of items, and what sheets ask of blades and combs.
#include <algorithm>
#include <string>
#include <tuple>
#include <vector>

#include <pelage/base/error.hpp>
#include <pelage/kit/buy.hpp>
#include <pelage/planner/kit_setups.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

constexpr item_set a = 1;
constexpr item_set b = 2;
constexpr item_set c = 4;

/// The reference's blades and combs of those names, as wares.
std::vector<ware> sheet_resolver(const std::vector<std::string>& blades,
                                 const std::vector<std::string>& combs = {}) {
    std::vector<ware> out;
    for (const std::string& id : blades) {
        out.push_back({blade_of(id), {}, {}});
    }
    for (const std::string& id : combs) {
        out.push_back({{}, comb_of(id), {}});
    }
    return out;
}

/// A curly dog's sheet: direction makes no difference, so that lengths are as etched.
style curly_sheet(instruction all) {
    style s = sheet_of(std::move(all));
    s.coats = {coat_class::curly};
    return s;
}

struct shop {
    kit own = drawer({});
    std::vector<style> sheets;
    std::vector<ware> wares;
    std::size_t most = 5;

    [[nodiscard]] shopping buy() const {
        return what_to_buy({io::reference(), io::reference().rules, own, sheets, wares, most, {}});
    }
    /// The last purchase, by title.
    [[nodiscard]] std::vector<std::string> bought() const {
        std::vector<std::string> out;
        const shopping all = buy();
        for (const std::size_t i : all.curve.back().bought) {
            out.push_back(wares[i].title());
        }
        return out;
    }
};

using names = std::vector<std::string>;

}  // namespace

TEST_CASE("nothing to choose from meets what is there", "[stock]") {
    const cover_problem p{0, {{5, {0}}, {3, {}}}};
    const auto all = best_stock(p, 0);
    REQUIRE(all.size() == 1);
    CHECK(all[0].met == 5);
    CHECK(all[0].proven());
}

TEST_CASE("the best pair isn't the best single one and another", "[stock]") {
    // a alone meets most; b and c together meet everything
    const cover_problem p{3, {{3, {a, b}}, {3, {a, c}}, {2, {b}}, {2, {c}}}};
    const auto all = best_stock(p, 3);
    CHECK(all[1].items == a);
    CHECK(all[1].met == 6);
    CHECK(all[2].items == (b | c));
    CHECK(all[2].met == 10);
    CHECK(all[3].items == (b | c));  // a third adds nothing, and isn't bought
}

TEST_CASE("a way of two items counts only with both", "[stock]") {
    const cover_problem p{3, {{9, {a | b}}, {1, {c}}}};
    const auto all = best_stock(p, 2);
    CHECK(all[1].items == c);
    CHECK(all[1].met == 1);
    CHECK(all[2].items == (a | b));
    CHECK(all[2].met == 9);
}

TEST_CASE("of equals the first in the catalogue", "[stock]") {
    const cover_problem p{3, {{1, {b, c}}, {1, {a, c}}, {1, {a, b}}}};
    CHECK(best_stock(p, 1)[1].items == a);
    CHECK(best_stock(p, 2)[2].items == (a | b));
}

TEST_CASE("a search that is stopped says how much better it might be", "[stock]") {
    cover_problem p{30, {}};
    for (std::size_t i = 0; i < 30; ++i) {
        for (std::size_t j = i + 1; j < 30; ++j) {
            p.targets.push_back({1 + static_cast<std::int64_t>((i * 7 + j * 3) % 5),
                                 {item_set{1} << i | item_set{1} << j}});
        }
    }
    const auto stopped = best_stock(p, 10, 3);
    CHECK_FALSE(stopped.back().proven());
    CHECK(stopped.back().bound > stopped.back().met);
    CHECK(stopped.back().met == met_by(p, stopped.back().items));
}

TEST_CASE("too many things to choose from are refused", "[stock]") {
    CHECK_THROWS_AS(best_stock({most_items + 1, {}}, 1), error);
}

TEST_CASE(
    "to cut half an inch on a curly coat you buy the comb with its blade, or a full blade that "
    "goes on no web",
    "[stock]") {
    shop s;
    s.own = drawer({"10"});  // for the prep zones
    s.sheets = {curly_sheet(clip_to(mm(13)))};
    s.wares = sheet_resolver({"30", "4F"}, {"13 mm"});
    s.most = 2;
    CHECK(s.bought() == names{"blade 30", "comb 13 mm"});
    s.wares = sheet_resolver({"30", "3F"}, {"13 mm"});
    CHECK(s.buy().curve[1].choice.met < s.buy().curve[2].choice.met);
    s.most = 1;
    CHECK(s.bought() == names{"blade 3F"});
}

TEST_CASE("a blade that is there carries combs for nothing", "[stock]") {
    shop s;
    s.own = drawer({"30"});
    s.sheets = {curly_sheet(clip_to(mm(16)))};
    s.wares = sheet_resolver({"4F"}, {"16 mm", "32 mm"});
    s.most = 1;
    CHECK(s.bought() == names{"comb 16 mm"});
}

TEST_CASE("what is out for sharpening isn't bought again", "[stock]") {
    shop s;
    s.own = drawer({"5F", "10"});
    s.own.blades.front().out = true;
    s.sheets = {curly_sheet(clip_to(mm(6.3)))};
    s.wares = sheet_resolver({"30"}, {"6 mm"});
    CHECK(s.bought().empty());
}

TEST_CASE("skip teeth don't serve where skin is thin, so they are worth less", "[stock]") {
    shop s;
    s.sheets = {curly_sheet(clip_to(mm(6.3)))};
    s.wares = sheet_resolver({"5", "5F"});
    s.most = 1;
    CHECK(s.bought() == names{"blade 5F"});
}

TEST_CASE("prep zones want one of their customary blades", "[stock]") {
    shop s;
    s.sheets = {curly_sheet(finish_by(finish::leave))};
    s.wares = sheet_resolver({"9", "10", "40"});
    s.most = 1;
    CHECK(s.bought() == names{"blade 10"});
    const shopping all = s.buy();
    CHECK(all.curve.back().choice.met == all.whole);
}

TEST_CASE("scissored zones need nothing from the drawer", "[stock]") {
    const style s = curly_sheet(finish_by(finish::scissor, mm(30)));
    const auto targets =
        judge_targets(io::reference(), io::reference().rules, kit{}, {s}, std::vector<setup>{});
    for (const judged_target& t : targets) {
        CHECK(io::reference().dog_body.zones[t.what.zone].where == group::prep);
    }
}

TEST_CASE("the sheet's direction decides what meets it", "[stock]") {
    style with = sheet_of(clip_to(mm(6.4)));
    with.coats = {coat_class::drop};
    with.rules.front().what.between = side_of_target::nearest;
    style against = with;
    against.rules.front().what.way = lay_choice::against_lay;
    const kit k = drawer({"7F", "5F"});
    const auto setups = setups_of(k, {}, io::reference().rules.cut);
    const auto meets = [&](const style& s, const std::string& blade) {
        const auto all = judge_targets(io::reference(), io::reference().rules, k, {s}, setups);
        const std::size_t back = at("back").zone;
        return std::any_of(all.begin(), all.end(), [&](const judged_target& t) {
            return t.what.zone == back &&
                   std::any_of(t.met_by.begin(), t.met_by.end(),
                               [&](std::size_t i) { return setups[i].tool.id == blade; });
        });
    };
    CHECK(meets(with, "7F"));
    CHECK_FALSE(meets(with, "5F"));
    CHECK(meets(against, "5F"));
    CHECK_FALSE(meets(against, "7F"));
}

TEST_CASE("what meets a target is what a plan takes, and nothing it refuses", "[stock]") {
    const salon_files& shop = io::demo_salon();
    const auto setups = setups_of(shop.tools, {}, io::reference().rules.cut);
    const auto& styles = shop.styles;
    std::size_t looked_at = 0;
    groom g;
    std::tuple<std::size_t, coat_class, std::string> planned{styles.size(), {}, {}};
    for (const judged_target& t :
         judge_targets(io::reference(), io::reference().rules, shop.tools, styles, setups)) {
        const style& s = styles[t.what.sheet];
        if (planned != std::tuple{t.what.sheet, t.what.coat, t.what.season}) {
            groom_table table;
            table.sheet = s;
            for (const season& one : s.seasons) {
                table.sheet = one.name == t.what.season ? in_season(s, one) : table.sheet;
            }
            table.patient.coat = t.what.coat;
            table.patient.consents = s.consent;
            g = table.plan();
            planned = {t.what.sheet, t.what.coat, t.what.season};
        }
        const auto z = std::find_if(g.zones.begin(), g.zones.end(), [&](const zone_plan& one) {
            return one.at.zone == t.what.zone;
        });
        REQUIRE(z != g.zones.end());
        INFO(s.id << ", " << name(t.what.coat) << " coat, zone " << t.what.zone);
        if (z->came == outcome::as_wished && z->how.kind == tool_kind::clip) {
            ++looked_at;
            CHECK(std::any_of(t.met_by.begin(), t.met_by.end(),
                              [&](std::size_t k) { return title(setups[k]) == title(z->how); }));
        }
        CHECK(std::none_of(t.met_by.begin(), t.met_by.end(), [&](std::size_t k) {
            return std::any_of(z->refused.begin(), z->refused.end(), [&](const refused_setup& r) {
                return title(r.tool) == title(setups[k]) && r.no.rule != refusal::long_on_web;
            });
        }));
    }
    CHECK(looked_at > 100);
}

TEST_CASE("what is offered is in use and not there yet", "[stock]") {
    const auto all = usual_wares(io::reference(), drawer({"10"}, {"13 mm"}));
    const auto has = [&](const std::string& title) {
        return std::any_of(all.begin(), all.end(),
                           [&](const ware& w) { return w.title() == title; });
    };
    CHECK(has("blade 30"));
    CHECK(has("comb 16 mm"));
    CHECK_FALSE(has("blade 10"));
    CHECK_FALSE(has("comb 13 mm"));
    CHECK_FALSE(has("blade 50"));
    CHECK_FALSE(has("blade 5/8 toe"));
}
