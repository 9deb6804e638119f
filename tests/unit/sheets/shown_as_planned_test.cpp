// One engine behind `sheet show`, `sheet compare` and `plan`: a place gets the same tool in all three.
#include <algorithm>
#include <map>
#include <sstream>

#include <nlohmann/json.hpp>

#include <pelage/data/reference.hpp>
#include <pelage/sheets/check.hpp>
#include <pelage/sheets/compare.hpp>
#include <pelage/trade/upkeep.hpp>

#include "catch.hpp"
#include "cli.hpp"

using namespace pelage;

namespace {

/// The clean dog that `plan --coat COAT --style SHEET` is asked about.
dog clean_dog(const style& s, coat_class c) {
    dog d;
    d.coat = c;
    d.style = s.id;
    d.brushed = parse_brushing(s.upkeep).value_or(d.brushed);
    return d;
}

/// What each zone is done with, as `sheet show` says it of a coat.
std::multimap<std::string, std::string> shown(const style& s, coat_class c) {
    std::ostringstream out;
    std::ostringstream err;
    const int code = cli::run({"sheet", "show", s.id, "--coat", std::string(name(c)), "--format",
                               "json", "--season", "none"},
                              {*parse_date("2026-11-28")}, out, err);
    INFO(err.str());
    REQUIRE(code == cli::done);
    std::multimap<std::string, std::string> tools;
    const nlohmann::json page = nlohmann::json::parse(out.str());
    for (const auto& z : page.at("zones")) {
        if (z.contains("with_this_kit")) {
            tools.emplace(z.at("zone"), z.at("with_this_kit").at("name"));
        }
    }
    return tools;
}

}  // namespace

TEST_CASE("every sheet on each of its coats is shown, planned and compared with the same tools",
          "[sheet]") {
    const salon_files& salon = io::demo_salon();
    const reference_data& known = io::reference();
    std::size_t places = 0;
    for (const style& s : salon.styles) {
        for (const coat_class c : coats_for(s, known)) {
            const dog d = clean_dog(s, c);
            const plan_request r{known, salon.rules, salon.tools, d, s, parse_date("2026-11-28")};
            const groom planned = make_plan(r);
            const auto on_the_wall = shown(s, c);
            const groom compared = compare_sheets(r, r, {}).of_first.plan;
            REQUIRE(compared.zones.size() == planned.zones.size());
            for (std::size_t i = 0; i < planned.zones.size(); ++i) {
                const zone_plan& z = planned.zones[i];
                const std::string& id = known.dog_body.zones[z.at.zone].id;
                INFO(s.id << " on a " << name(c) << " coat, " << id);
                CHECK(title(compared.zones[i].how) == title(z.how));
                const auto [first, last] = on_the_wall.equal_range(id);
                places += first == last ? 0 : 1;
                CHECK((first == last || std::any_of(first, last, [&](const auto& one) {
                           return one.second == title(z.how);
                       })));
            }
        }
    }
    CHECK(places > 1000);
}
