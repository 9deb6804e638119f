// A roster: one line out for each line in, whatever the lines are.
#include <random>
#include <sstream>
#include <streambuf>
#include <string>
#include <vector>

#include <nlohmann/json.hpp>

#include <pelage/data/reference.hpp>
#include <pelage/forecast/forecast.hpp>
#include <pelage/planner/plan.hpp>
#include <pelage/roster/roster.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const std::string moss =
    R"({"id":"moss","name":"Moss","size":"small","coat":"curly","style":"lamb"})";

io::roster_request request(unsigned jobs = 1) {
    return {io::reference(),
            io::reference().rules,
            io::demo_salon().tools,
            io::reference().styles,
            parse_date("2026-11-25"),
            std::nullopt,
            jobs};
}

struct answered {
    std::string text;
    std::vector<nlohmann::json> lines;
    pelage::roster_count count;
};

/// The answer to a roster; every line of it must be JSON and say which line it answers.
answered answer(const std::string& roster, unsigned jobs = 1) {
    std::istringstream in(roster);
    std::ostringstream out;
    answered a;
    a.count = io::plan_roster(in, out, request(jobs));
    a.text = out.str();
    std::istringstream lines(a.text);
    for (std::string l; std::getline(lines, l);) {
        a.lines.push_back(nlohmann::json::parse(l, nullptr, false));
        REQUIRE(a.lines.back().is_object());
        REQUIRE(a.lines.back()["line"] == a.lines.size());
        REQUIRE(a.lines.back().contains("plan") != a.lines.back().contains("error"));
    }
    REQUIRE(a.count.lines == a.lines.size());
    REQUIRE((a.text.empty() || a.text.back() == '\n'));
    return a;
}

std::string first_error(const nlohmann::json& line) {
    return line["error"][0]["message"].get<std::string>();
}

}  // namespace

TEST_CASE("lines may end in CR LF, the last needs no end, a mark may stand in front", "[roster]") {
    const std::string plain = answer(moss + "\n" + moss + "\n").text;
    CHECK(answer(moss + "\r\n" + moss + "\r\n").text == plain);
    CHECK(answer(moss + "\n" + moss).text == plain);
    CHECK(answer("\xEF\xBB\xBF" + moss + "\n" + moss + "\n").text == plain);
    const answered second = answer(moss + "\n\xEF\xBB\xBF" + moss);
    CHECK(second.lines[0].contains("plan"));
}

TEST_CASE("every key of a dog's file may stand in a line", "[roster]") {
    const answered a = answer(
        R"({"format":1,"id":"tansy","name":"Tänsy","invented":true,"size":"small","coat":"drop",)"
        R"("mix":"maltese x shih tzu","style":"one-length","body_length":"16 mm",)"
        R"("brushing":"every 2 days to the skin","coat_change":true,"thin_or_old":true,)"
        R"("pink_skin":true,"consents":["clip-down"],"note":"Invented.\nTwo lines.",)"
        R"("now":{"all":"31 mm","tail":"53 mm"},"departures":{"ear":{"length":"19 mm",)"
        R"("direction":"with","finish":"comb-then-scissor","note":"they trail"}},)"
        R"("mat":[{"zone":"tail","grade":"tangle","free_hair":"12 mm","comb_passes":true,)"
        R"("comb_out":true}],"skin":[{"zone":"left flank","state":"irritated"}],)"
        R"("measured":[{"date":"2026-10-05","zone":"back","length":"23 mm","state":"combed dry"}],)"
        R"("visit":[{"date":"2026-08-03","kind":"full"}]})");
    REQUIRE(a.lines.size() == 1);
    INFO(a.text);
    REQUIRE(a.lines[0].contains("plan"));
    const auto& plan = a.lines[0]["plan"];
    CHECK(plan["comb_out"][0]["zone"] == "tail");
    CHECK(plan["consents"].is_array());
    CHECK(a.text.find("\"zone\":\"ear\"") != std::string::npos);
    CHECK(a.text.find("\"zone\":\"flank\",\"side\":\"left\"") == std::string::npos);
}

TEST_CASE("the plan of a line is the plan of the dog", "[roster]") {
    const auto all = request();
    std::string roster;
    std::vector<dog> dogs;
    for (const style& s : all.styles) {
        for (const coat& c : all.reference.coats) {
            dog d;
            d.id = s.id + "-" + std::string(name(c.id));
            d.name = "D";
            d.size = dog_size::small;
            d.coat = c.id;
            d.style = s.id;
            d.brushed = {habit::weekly, true};
            d.now = {{"all", mm(45)}};
            dogs.push_back(d);
            roster += R"({"id":")" + d.id + R"(","name":"D","size":"small","coat":")" +
                      std::string(name(c.id)) + R"(","style":")" + s.id +
                      R"(","brushing":"weekly to the skin","now":{"all":"45 mm"}})" + "\n";
        }
    }
    const answered a = answer(roster, 2);
    REQUIRE(a.lines.size() == dogs.size());
    for (std::size_t n = 0; n < dogs.size(); ++n) {
        INFO(dogs[n].id);
        const plan_request r{
            all.reference, all.rules, all.tools, dogs[n], *find(all.styles, dogs[n].style),
            all.today};
        const groom g = make_plan(r);
        REQUIRE(a.lines[n]["id"] == dogs[n].id);
        REQUIRE(a.lines[n].contains("plan"));
        const auto& plan = a.lines[n]["plan"];
        REQUIRE(plan.contains("ask_owner") == g.question.has_value());
        if (g.question) {
            CHECK(plan["ask_owner"]["instead"] == "double-tidy");
            CHECK_FALSE(plan.contains("back"));
            continue;
        }
        const return_date when = back_of(r, g);
        CHECK(plan["minutes_before_bath"] == in_minutes(g.before));
        CHECK(plan["minutes_after_bath"] == in_minutes(g.after));
        CHECK(plan["cautions"].size() == g.cautions.size());
        CHECK(plan["consents"].size() == g.consents.size());
        CHECK(plan["stuck"].size() == g.stuck.size());
        const bool order = g.order_before.proven && g.order_after.proven;
        CHECK(plan["proven"] == (g.choice.sure.optimal && order));
        CHECK(plan["back"]["back_in_days"] == in_days(when.next_visit));
        CHECK(plan["back"]["back_by"] == iso(plus(*r.today, when.next_visit)));
        CHECK(plan["back"]["even_odds_days"] == in_days(when.even_odds));
        CHECK(plan["back"]["full_groom_days"] == in_days(when.full_groom));
        REQUIRE(plan["blocks"].size() == g.blocks.size());
        for (std::size_t i = 0; i < g.blocks.size(); ++i) {
            const block& one = g.blocks[i];
            const auto& said = plan["blocks"][i];
            CHECK(said["minutes"] == in_minutes(one.takes));
            CHECK(said["setup"]["name"] == title(one.how));
            CHECK(said["setup"].value("blade", "") == one.how.tool.id);
            REQUIRE(said["zones"].size() == one.zones.size());
            for (std::size_t k = 0; k < one.zones.size(); ++k) {
                const zone_plan& z = g.zones[one.zones[k]];
                CHECK(said["zones"][k]["zone"] == all.reference.dog_body.zones[z.at.zone].id);
                CHECK(said["zones"][k].value("side", "both") == name(z.at.which));
                REQUIRE(said["zones"][k].contains("leaves_mm") == z.leaves.has_value());
                if (z.leaves) {
                    CHECK_THAT(said["zones"][k]["leaves_mm"].get<double>(),
                               match::WithinAbs(in_mm(z.leaves->best), 0.005001));
                }
            }
        }
    }
}

TEST_CASE("columns count characters", "[roster]") {
    const std::string line = R"({"id":"moss", "name": "Jürgiš", "coat":"wavy", "size" : 3 })";
    const answered a = answer(line);
    REQUIRE(a.lines[0]["error"].size() == 1);
    CHECK(first_error(a.lines[0]).find("found 3") != std::string::npos);
    // two letters of the name are two bytes each
    CHECK(a.lines[0]["error"][0]["column"] == line.find('3') + 1 - 2);
}

TEST_CASE("what is no text at all is a faulty line, and the others are planned", "[roster]") {
    const std::vector<std::string> odd{
        "",
        "   \t",
        std::string("{\"id\":\"a\0\"}", 11),
        moss + std::string("\0{}", 3),
        "{\"id\":\"\xFF\"}",
        "{\"name\":\"\xC3\"}",
        "{\"name\":\"\\ud800\"}",
        "{\"\\u0000\":1}",
        moss + moss,
        "{\"id\":\"a\",",
        "[[[[",
        std::string(100'000, '['),
        "{\"a\":" + std::string(100'000, '9') + "}",
        "{\"a\":-0.0e-999}",
        "{\"a\":[" + std::string(200'000, '0') + "]}",
        "{\"a\":[0" +
            [] {
                std::string zeros;
                for (int i = 0; i < 20'000; ++i) {
                    zeros += ",0";
                }
                return zeros;
            }() +
            "]}",
        std::string(1'000'001, ' '),
        std::string(3'000'000, 'x'),
        "nul",
        "{'id':'a'}",
        "{\"id\":\"a\"} // done",
    };
    std::string roster;
    for (const std::string& line : odd) {
        roster += moss + "\n" + line + "\n";
    }
    const answered a = answer(roster, 2);
    REQUIRE(a.lines.size() == 2 * odd.size());
    for (std::size_t i = 0; i < odd.size(); ++i) {
        INFO(odd[i].substr(0, 60));
        CHECK(a.lines[2 * i].contains("plan"));
        CHECK(a.lines[2 * i + 1].contains("error"));
    }
    CHECK(a.count.faulty == odd.size());
    CHECK(a.count.failed == 0);
}

TEST_CASE("a line of 1 MB is read, a longer one isn't", "[roster]") {
    const std::string filled = moss.substr(0, 1) + std::string(1'000'000 - moss.size(), ' ');
    CHECK(answer(filled + moss.substr(1)).lines[0].contains("plan"));
    const answered a = answer(filled + " " + moss.substr(1) + "\n" + moss);
    REQUIRE(a.lines.size() == 2);
    CHECK(first_error(a.lines[0]).find("longer than 1 MB") != std::string::npos);
    CHECK(a.lines[1].contains("plan"));
}

TEST_CASE("many faults in a line are told up to a number", "[roster]") {
    std::string line = "{";
    for (int i = 0; i < 500; ++i) {
        line += "\"key" + std::to_string(i) + "\":1,";
    }
    line.back() = '}';
    const answered a = answer(line);
    CHECK(a.lines[0]["error"].size() == 21);
    CHECK(a.text.size() < 10'000);
}

TEST_CASE("spoilt lines give one answer each, none of them our own fault", "[roster]") {
    std::mt19937 dice(7);
    const std::string good =
        R"({"id":"a","name":"A","size":"small","coat":"curly","style":"lamb","now":{"all":"4 mm"},)"
        R"("mat":[{"zone":"left ear","grade":"mat","free_hair":"5 mm"}],"consents":["x\u00e4"]})";
    std::string roster;
    std::size_t lines = 0;
    for (int i = 0; i < 1500; ++i) {
        std::string line = good;
        for (auto n = 1 + dice() % 3; n > 0; --n) {
            const std::size_t at = dice() % line.size();
            switch (dice() % 3) {
                case 0:
                    line[at] = static_cast<char>(dice() % 256);
                    break;
                case 1:
                    line.erase(at, 1 + dice() % 8);
                    break;
                default:
                    line.insert(at, line.substr(dice() % line.size(), 1 + dice() % 8));
                    break;
            }
        }
        roster += line + "\n";
    }
    for (const char c : roster) {
        lines += c == '\n' ? 1 : 0;
    }
    const answered a = answer(roster, 2);
    CHECK(a.lines.size() == lines);
    CHECK(a.count.failed == 0);
    CHECK(a.count.faulty > lines / 2);
}

TEST_CASE("any number of threads gives the same bytes", "[roster]") {
    std::string roster;
    constexpr const char* coats[] = {"wavy", "curly", "drop", "wire", "smooth", "wavvy"};
    constexpr const char* sheets[] = {"lamb", "one-length", "rounded", "low-upkeep"};
    for (int i = 0; i < 300; ++i) {
        roster += R"({"id":"d)" + std::to_string(i) + R"(","name":"D","size":"small","coat":")" +
                  coats[i % 6] + R"(","style":")" + sheets[i % 4] + R"(","now":{"all":")" +
                  std::to_string(12 + i % 60) + " mm\"}}\n";
    }
    const std::string one = answer(roster).text;
    CHECK(answer(roster, 2).text == one);
    CHECK(answer(roster, 8).text == one);
    CHECK(answer(roster, 256).text == one);
}

TEST_CASE("what can't be written is told", "[roster]") {
    struct full : std::streambuf {
    } nowhere;
    std::ostream out(&nowhere);
    std::istringstream in(moss + "\n" + moss);
    for (const unsigned jobs : {1U, 4U}) {
        std::istringstream again(in.str());
        try {
            (void)io::plan_roster(again, out, request(jobs));
            FAIL("it was written");
        } catch (const error& e) {
            CHECK(e.code() == errc::io);
        }
    }
}

TEST_CASE("reading a roster flushes no stream that another thread may be writing", "[roster]") {
    // standard input is tied to standard output: on Debian 13 lines came twice
    struct : std::streambuf {
        int flushed = 0;
        int sync() override {
            ++flushed;
            return 0;
        }
    } screen;
    std::ostream tied(&screen);
    std::istringstream in(moss + "\n" + moss + "\n");
    in.tie(&tied);
    std::ostringstream out;
    CHECK(io::plan_roster(in, out, request(2)).lines == 2);
    CHECK(screen.flushed == 0);
    CHECK(in.tie() == &tied);  // given back
}
