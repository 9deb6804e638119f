// A planned groom in working order: what goes first on a dog, and how long a blade runs.
#include <algorithm>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/planner/plan.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

/// What is held in each block of a list, in order.
std::vector<std::string> worked(const groom& g, list when) {
    std::vector<std::string> out;
    for (const block& b : g.blocks) {
        if (b.when == when) {
            out.push_back(held(b.how));
        }
    }
    return out;
}
std::vector<std::string> after_bath(const groom& g) {
    return worked(g, list::after_bath);
}

bool clips(const block& b) {
    return b.how.kind == tool_kind::clip;
}

const block& holding(const groom& g, std::string_view what, finish done, list when) {
    for (const block& b : g.blocks) {
        if (held(b.how) == what && b.done == done && b.when == when) {
            return b;
        }
    }
    throw std::logic_error("no such block: " + std::string(what));
}

/// Nothing is done but what the case then asks for; one clipper, and these tools.
groom_table bare_table(const std::vector<std::string>& blades,
                       const std::vector<std::string>& combs = {}) {
    groom_table t;
    t.patient.coat = coat_class::curly;
    t.sheet = sheet_of(finish_by(finish::leave));
    t.tools = drawer(blades, combs);
    return t;
}

using names = std::vector<std::string>;

}  // namespace

TEST_CASE(
    "on every sheet and coat: bath between the lists, clippers before hand tools, and a blade "
    "or comb taken up once a list",
    "[groom][order]") {
    for (const style& s : io::reference().styles) {
        for (const coat& c : io::reference().coats) {
            INFO(s.id << " on " << c.title);
            groom_table t;
            t.sheet = s;
            t.patient.coat = c.id;
            t.patient.mats = {mat_in("behind-ear", mat_grade::mat, mm(9))};
            const groom g = t.plan();
            bool after = false;
            bool hands = false;
            std::string blade;
            std::string comb;
            std::set<std::string> put_down;
            const auto takes_up = [&](std::string& now, const std::string& next) {
                if (now != next) {
                    put_down.insert(now);
                    now = next;
                    CHECK((next.empty() || put_down.count(next) == 0));
                }
            };
            for (const block& b : g.blocks) {
                CHECK_FALSE(b.zones.empty());
                CHECK(std::is_sorted(b.zones.begin(), b.zones.end()));
                CHECK((!after || b.when == list::after_bath));
                if (b.when == list::after_bath && !after) {
                    after = true;
                    hands = false;
                    blade.clear();
                    comb.clear();
                    put_down.clear();
                }
                CHECK((!hands || !clips(b)));
                hands = hands || !clips(b);
                if (clips(b)) {
                    takes_up(blade, "blade " + b.how.tool.id);
                    takes_up(comb, b.how.over ? "comb " + b.how.over->id : "");
                }
            }
            CHECK(g.order_before.proven);
            CHECK(g.order_after.proven);
        }
    }
}

TEST_CASE("body, legs, tail, feet, and the head last", "[groom][order]") {
    groom_table t = bare_table({"10", "7F", "5F", "4F", "9", "30"});
    t.says("skull", clip_with("10")).says("feet", clip_with("9"));
    t.says("tail", clip_with("7F")).says("foreleg", clip_with("4F")).says("back", clip_with("5F"));
    CHECK(after_bath(t.plan()) == names{"blade 5F", "blade 4F", "blade 7F", "blade 9", "blade 10"});
}

TEST_CASE("a tail is done before a setup that also does the head", "[groom][order]") {
    groom_table t = bare_table({"10", "7F", "5F"});
    t.says("foreleg", clip_with("5F")).says("skull", clip_with("5F")).says("tail", clip_with("7F"));
    CHECK(after_bath(t.plan()) == names{"blade 7F", "blade 5F"});
}

TEST_CASE("combs over one blade stand together, whatever lies between them on the dog",
          "[groom][order]") {
    groom_table t = bare_table({"30", "10", "7F"}, {"10 mm", "16 mm"});
    t.says("back", clip_to(mm(10))).says("foreleg", clip_with("7F")).says("tail", clip_to(mm(16)));
    CHECK(after_bath(t.plan()) ==
          names{"comb 10 mm over blade 30", "comb 16 mm over blade 30", "blade 7F"});
}

TEST_CASE("of equals the work goes on next door", "[groom][order]") {
    // chest and withers don't touch; the shoulders lie between them
    groom_table t = bare_table({"10"});
    t.says("withers", finish_by(finish::card)).says("chest", finish_by(finish::thin, mm(25)));
    t.says("shoulder", finish_by(finish::scissor, mm(25)));
    const groom g = t.plan();
    CHECK(after_bath(g) == names{"slicker brush", "scissors", "thinning scissors"});
    CHECK(g.order_after.cost.jumps == 0);
}

TEST_CASE("from one ear to the other is no jump, from an ear to the far cheek it is",
          "[groom][order]") {
    groom_table t = bare_table({"10"});
    t.says("left ear", finish_by(finish::card));
    groom_table other = t;
    t.says("right ear", finish_by(finish::thin, mm(25)));
    CHECK(t.plan().order_after.cost.jumps == 0);
    other.says("right cheek", finish_by(finish::thin, mm(25)));
    CHECK(other.plan().order_after.cost.jumps == 1);
    groom_table near = bare_table({"10"});
    near.says("right ear", finish_by(finish::card));
    near.says("right cheek", finish_by(finish::thin, mm(25)));
    CHECK(near.plan().order_after.cost.jumps == 0);
}

TEST_CASE("minutes of taking up: half for a blade, a quarter for a comb, little with two clippers",
          "[groom][order]") {
    groom_table t = bare_table({"30", "10", "7F"}, {"10 mm", "16 mm"});
    t.says("back", clip_to(mm(10))).says("foreleg", clip_with("7F")).says("tail", clip_to(mm(16)));
    CHECK(t.plan().order_after.cost.pick_ups == 500 + 250 + 250 + 500);
    t.tools.clippers = 2;
    CHECK(t.plan().order_after.cost.pick_ups == 100 + 250 + 250 + 100);
}

TEST_CASE("a blade's running adds up over blocks with the same blade", "[groom][order]") {
    groom_table t = bare_table({"30", "10", "7F"}, {"10 mm", "16 mm"});
    // clip times of the reference: back 2, ribs 2.5, forelegs 3, tail 2 minutes on a medium dog
    t.says("back", clip_to(mm(10))).says("ribs", clip_to(mm(10)));
    t.says("foreleg", clip_to(mm(16))).says("tail", clip_with("7F"));
    const groom g = t.plan();
    const auto run = [&](const char* what, list when) {
        return in_minutes(holding(g, what, finish::clip, when).running);
    };
    CHECK(run("comb 10 mm over blade 30", list::after_bath) == 4.5);
    CHECK(run("comb 16 mm over blade 30", list::after_bath) == 4.5 + 3.0);
    CHECK(run("blade 7F", list::after_bath) == 2.0);
}

TEST_CASE("a blade rests while scissors work, and through the bath", "[groom][order]") {
    groom_table t = bare_table({"10"});
    t.rules.refusal.scissor_finish.best = mm(1);  // a salon that scissors over a 10
    t.says("back", clip_with("10"));
    t.says("skull", finish_by(finish::comb_then_scissor, mm(1.5)));
    t.says("tail", finish_by(finish::scissor, mm(25)));
    const groom g = t.plan();
    const block& prep = holding(g, "blade 10", finish::clip, list::before_bath);
    CHECK(prep.running == prep.takes);
    CHECK(in_minutes(holding(g, "blade 10", finish::clip, list::after_bath).running) == 2.0);
    // the skull takes 2 minutes to clip; the scissoring after it is not the clipper's
    const block& skull = holding(g, "blade 10", finish::comb_then_scissor, list::after_bath);
    CHECK(in_minutes(skull.takes) == 5.0);
    CHECK(in_minutes(skull.running) == 4.0);
    CHECK(holding(g, "scissors", finish::scissor, list::after_bath).running == mmin(0));
}

TEST_CASE("a larger dog keeps a blade running longer", "[groom][order]") {
    groom_table t = bare_table({"10"});
    t.says("back", clip_with("10"));
    t.patient.size = dog_size::large;
    CHECK(in_minutes(holding(t.plan(), "blade 10", finish::clip, list::after_bath).running) == 3.0);
}

TEST_CASE("feel and oil after ten minutes is common practice and says so", "[groom][order]") {
    const figure<work>& f = io::reference().rules.refusal.oil_after;
    CHECK(f.best == minutes(10));
    CHECK(f.why.how == basis::practice);
}
