// Whatever the dog, the sheet and the drawer: no plan may hurt.
//
// The hard rules are said here once more, from the words of the trade and on their own: nothing below
// calls the rules of the planner. Dogs, findings and drawers are drawn by a generator of fixed seed.
#include <algorithm>
#include <cmath>
#include <optional>
#include <random>
#include <set>
#include <string>

#include <pelage/groom.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;

namespace {

class dice {
  public:
    explicit dice(std::uint64_t seed) : engine_(seed) {}
    /// 0 to n - 1.
    int roll(int n) { return static_cast<int>(engine_() % static_cast<std::uint64_t>(n)); }
    /// True in `per_cent` of 100.
    bool luck(int per_cent) { return roll(100) < per_cent; }
    /// Between two lengths, at 0.01 mm.
    length between(double low, double high) {
        const int steps = static_cast<int>(std::lround((high - low) * 100.0));
        return mm(low + roll(steps + 1) / 100.0);
    }
    template <class T>
    const T& one_of(const std::vector<T>& all) {
        return all[static_cast<std::size_t>(roll(static_cast<int>(all.size())))];
    }

  private:
    std::mt19937_64 engine_;
};

const body& whole() {
    return io::reference().dog_body;
}

place any_place(dice& d) {
    place p;
    p.zone = static_cast<std::size_t>(d.roll(static_cast<int>(whole().zones.size())));
    if (whole().zones[p.zone].paired && d.luck(50)) {
        p.which = d.luck(50) ? side::left : side::right;
    }
    return p;
}

bool meet(const place& a, const place& b) {
    return a.zone == b.zone &&
           (a.which == b.which || a.which == side::both || b.which == side::both);
}

kit any_drawer(dice& d) {
    kit k;
    k.clippers = 1 + d.roll(2);
    k.under_comb =
        d.one_of(std::vector<std::string>{"30", "30", "40", "10", "15", "50", "7F", "7"});
    for (const blade& b : io::reference().blades) {
        if (!d.luck(60)) {
            continue;
        }
        kit_blade one{b, 1, {}, d.luck(10), {}};
        if (d.luck(20)) {  // somewhere within what makers make
            one.measured = d.between(in_mm(b.stated.low), in_mm(b.stated.high));
        }
        k.blades.push_back(one);
    }
    for (const comb& c : io::reference().combs) {
        if (d.luck(60)) {
            kit_comb one{c, 1, {}, {}};
            if (d.luck(20)) {
                one.fits = {"10", "40", "5F"};
            }
            k.combs.push_back(one);
        }
    }
    return k;
}

instruction any_instruction(dice& d) {
    instruction i;
    if (d.luck(60)) {
        i.target = d.between(0.3, 60);
    } else if (d.luck(60)) {
        i.blade = d.one_of(io::reference().blades).id;
    }
    if (d.luck(70)) {
        i.how = static_cast<finish>(d.roll(static_cast<int>(finish_names.size())));
    }
    if (d.luck(60)) {
        i.way = static_cast<lay_choice>(d.roll(3));
    }
    if (d.luck(40)) {
        i.between = static_cast<side_of_target>(d.roll(3));
    }
    if (d.luck(20)) {
        i.tolerance = d.between(0.1, 5);
    }
    return i;
}

std::string any_word(dice& d) {
    const std::vector<std::string> words{"all", "body", "legs", "head", "prep"};
    return d.luck(30) ? d.one_of(words) : title(whole(), any_place(d));
}

mat_finding any_mat(dice& d) {
    mat_finding m;
    m.at = any_place(d);
    m.grade = static_cast<mat_grade>(d.roll(4));
    m.to_skin = d.luck(2);
    if (!m.to_skin) {
        m.comb_passes = d.luck(50);
        if (d.luck(75)) {
            m.free_hair = d.between(0.3, 14);
        }
        m.comb_out = m.grade != mat_grade::pelt && d.luck(40);
    }
    return m;
}

dog any_dog(dice& d, coat_class c) {
    dog g;
    g.id = "any";
    g.coat = c;
    g.size = static_cast<dog_size>(d.roll(5));
    g.brushed = {static_cast<habit>(d.roll(5)), d.luck(70)};
    g.thin_or_old = d.luck(20);
    g.coat_change = d.luck(10);
    g.pink_skin = d.luck(20);
    for (const char* id : {"clip-jacket", "clip-down", "show-blades"}) {
        if (d.luck(40)) {
            g.consents.emplace_back(id);
        }
    }
    if (d.luck(70)) {
        g.now.push_back({"all", d.between(0.5, 80)});
    }
    for (int i = d.roll(3); i > 0; --i) {
        g.now.push_back({title(whole(), any_place(d)), d.between(0.5, 80)});
    }
    for (int i = d.roll(4); i > 0; --i) {
        const mat_finding m = any_mat(d);
        // one finding in a place: the worse one, as the groomer is asked to write it
        if (std::none_of(g.mats.begin(), g.mats.end(),
                         [&](const mat_finding& o) { return meet(o.at, m.at); })) {
            g.mats.push_back(m);
        }
    }
    for (int i = d.luck(40) ? 1 + d.roll(2) : 0; i > 0; --i) {
        g.skin.push_back({any_place(d), static_cast<skin_state>(d.roll(5))});
    }
    for (int i = d.roll(3); i > 0; --i) {
        g.departures.push_back({any_word(d), any_instruction(d)});
    }
    return g;
}

/// One plan, and what a careful groomer would ask of it.
class inspection {
  public:
    inspection(const groom_table& t, const groom& g) : t_(t), g_(g) {}

    void look() {
        all_places_stand();
        stops();
        combing();
        for (const zone_plan& z : g_.zones) {
            z_ = &z;
            const std::string where = title(whole(), z.at) + ": " + title(z.how) + ", " +
                                      std::string(name(z.came)) + " (" + z.why + ")";
            INFO(where);
            reasons();
            skin();
            mats();
            teeth();
            short_blades();
            against_the_lay();
            under_combs();
            jackets();
            scissored();
            today();
            too_short();
        }
        order();
    }

  private:
    using names = std::set<std::string>;

    [[nodiscard]] const std::string& id() const { return whole().zones[z_->at.zone].id; }
    [[nodiscard]] bool in(const names& zones) const { return zones.count(id()) > 0; }
    [[nodiscard]] bool clips() const { return z_->how.kind == tool_kind::clip; }
    [[nodiscard]] bool bare_blade() const { return clips() && !z_->how.over; }
    [[nodiscard]] const blade& tool() const { return z_->how.tool; }
    [[nodiscard]] bool agreed(const char* what) const {
        const auto& c = t_.patient.consents;
        return std::find(c.begin(), c.end(), what) != c.end();
    }
    [[nodiscard]] instruction wish() const { return instruction_for(t_.request(), z_->at); }
    /// The mats that are still in when a tool comes.
    [[nodiscard]] std::vector<mat_finding> mats_left() const {
        std::vector<mat_finding> out;
        for (const mat_finding& m : t_.patient.mats) {
            if (meet(m.at, z_->at) && !z_->combed_out) {
                out.push_back(m);
            }
        }
        return out;
    }
    [[nodiscard]] bool clean() const {
        return (t_.sheet.face == "clean" && in({"cheek", "muzzle", "throat"})) ||
               (t_.sheet.feet == "clean" && in({"feet"}));
    }
    [[nodiscard]] bool double_coat() const {
        return t_.patient.coat == coat_class::double_short ||
               t_.patient.coat == coat_class::double_long;
    }

    void all_places_stand() const {
        for (std::size_t i = 0; i < whole().zones.size(); ++i) {
            std::multiset<side> sides;
            for (const zone_plan& z : g_.zones) {
                if (z.at.zone == i) {
                    sides.insert(z.at.which);
                }
            }
            CHECK((sides == std::multiset<side>{side::both} ||
                   sides == std::multiset<side>{side::left, side::right}));
        }
    }

    // felted to the skin: nothing at all is done
    void stops() const {
        const bool felted = std::any_of(t_.patient.mats.begin(), t_.patient.mats.end(),
                                        [](const mat_finding& m) { return m.to_skin; });
        CHECK(felted == !g_.stop.empty());
        if (felted) {
            CHECK(g_.blocks.empty());
            CHECK(g_.combed.empty());
        }
    }

    // fifteen minutes in all, never in armpit, groin, belly or under the tail, never a pelt
    void combing() const {
        work sum{};
        for (const combing_out& c : g_.combed) {
            sum += c.takes;
            const zone_plan& z = g_.zones[c.zone];
            const std::string& where = whole().zones[z.at.zone].id;
            CHECK(names{"armpit", "groin", "belly", "under-tail"}.count(where) == 0);
            CHECK(c.grade != mat_grade::pelt);
            CHECK(z.combed_out);
            for (const skin_finding& s : t_.patient.skin) {
                CHECK_FALSE(meet(s.at, z.at));
            }
        }
        CHECK(sum <= minutes(15));
    }

    // every zone has a reason or is as wished
    void reasons() const {
        CHECK((z_->came == outcome::as_wished || !z_->why.empty()));
        if (z_->how.kind == tool_kind::none) {
            CHECK(z_->came != outcome::as_wished);
            CHECK(z_->came != outcome::clipped_under);
        }
        if (z_->came == outcome::stuck) {
            CHECK(z_->how.kind == tool_kind::none);
        }
        if (z_->came == outcome::as_wished && z_->target && z_->leaves) {
            CHECK(std::abs(in_mm(z_->leaves->best) - in_mm(*z_->target)) <=
                  in_mm(z_->tolerated) + 0.005001);
        }
    }

    // nothing on hurt skin
    void skin() const {
        for (const skin_finding& s : t_.patient.skin) {
            if (meet(s.at, z_->at)) {
                CHECK(z_->how.kind == tool_kind::none);
            }
        }
    }

    // no comb and no hand tool where a mat is left in; under it full teeth, at most three quarters of
    // the free hair and never above 6.4 mm, or a 10 where a comb's tip passes
    void mats() const {
        for (const mat_finding& m : mats_left()) {
            CHECK((clips() || z_->how.kind == tool_kind::none));
            if (!clips()) {
                continue;
            }
            CHECK_FALSE(z_->how.over);
            CHECK(tool().cut == teeth::full);
            CHECK(z_->how.way == direction::with_lay);
            if (!(m.comb_passes && tool().etched == "10")) {
                REQUIRE(m.free_hair);
                CHECK(in_mm(tool().stated.best) <= 0.75 * in_mm(*m.free_hair) + 1e-9);
                CHECK(in_mm(tool().stated.best) <= 6.4);
            }
        }
    }

    // skip teeth, and teeth nobody knows, only where skin is firm and flat, on no old or thin dog
    void teeth() const {
        if (clips() && tool().cut != teeth::full) {
            CHECK(in({"neck", "shoulder", "back", "ribs", "loin", "rump", "thigh"}));
            CHECK_FALSE(t_.patient.thin_or_old);
        }
    }

    void short_blades() const {
        if (!clips()) {
            return;
        }
        CHECK(tool().etched != "50");
        const bool shown = clean() && t_.sheet.show && agreed("show-blades");
        const bool toe = tool().shape == edge::toe;
        if (bare_blade() && (tool().etched == "40" || tool().etched == "30" || toe)) {
            CHECK((in({"pads"}) || shown));
        }
        if (bare_blade() && tool().etched == "15") {
            CHECK((clean() || in({"pads", "ear", "tail-base", "sanitary", "under-tail"})));
        }
    }

    void against_the_lay() const {
        if (!bare_blade() || z_->how.way == direction::with_lay) {
            return;
        }
        if (tool().etched == "10" || tool().etched == "15") {
            CHECK((clean() || in({"ear", "tail-base", "cheek", "throat"})));
        }
        if (tool().etched == "30" || tool().etched == "40") {
            CHECK((in({"pads"}) || (clean() && in({"feet"}))));
        }
    }

    // a comb sits on a 30 or 40, or on a 10 or what lies between them
    void under_combs() const {
        if (clips() && z_->how.over) {
            CHECK(tool().cut == teeth::full);
            CHECK(names{"40", "30", "15", "10"}.count(tool().etched) == 1);
        }
    }

    void jackets() const {
        if (double_coat() && !agreed("clip-jacket") && mats_left().empty() &&
            in({"neck", "withers", "back", "ribs", "loin", "rump"})) {
            CHECK_FALSE(clips());
        }
    }

    // scissored zones stay scissored; edges, brows and skirt unless the sheet itself clips them
    void scissored() const {
        if (!mats_left().empty()) {
            return;
        }
        const instruction w = wish();
        if (w.how == finish::scissor) {
            CHECK_FALSE(clips());
        }
        const bool asked = w.how == finish::clip || w.how == finish::comb_then_scissor ||
                           (!w.how && (w.blade || w.target));
        if (in({"ear-edge", "eyebrow", "skirt"}) && !asked) {
            CHECK_FALSE(clips());
        }
        if (w.how == finish::leave) {
            CHECK(z_->how.kind == tool_kind::none);
        }
    }

    // nothing longer than today's hair
    void today() const {
        const auto hair = hair_today(t_.request(), z_->at);
        const bool cuts = clips() || z_->how.kind == tool_kind::scissors;
        if (hair && cuts && mats_left().empty()) {
            REQUIRE(z_->leaves);
            CHECK(in_hundredths(z_->leaves->best) <= in_hundredths(*hair));
        }
    }

    // nothing shorter than the wish less its tolerance, unless for a mat or by a named blade
    void too_short() const {
        const instruction w = wish();
        const bool longer = w.between.value_or(side_of_target::longer) == side_of_target::longer;
        const bool named = bare_blade() && w.blade == tool().id;
        if (!longer || !w.target || named || !mats_left().empty() || !z_->leaves) {
            return;
        }
        const double t = in_mm(*w.target);
        const bool head = whole().zones[z_->at.zone].where == group::head;
        const double tol = w.tolerance ? in_mm(*w.tolerance)
                                       : std::max((head ? 0.10 : 0.15) * t, std::min(1.5, 0.3 * t));
        if (clips()) {
            CHECK(in_mm(z_->leaves->low) >= t - tol - 0.0101);  // two roundings to 0.01 mm
        } else if (z_->how.kind == tool_kind::scissors) {
            CHECK(in_mm(z_->leaves->best) >= t - tol - 0.0101);
        }
    }

    // what is worked stands once in the list; mats and prep before the bath
    void order() const {
        std::multiset<std::size_t> worked;
        for (const block& b : g_.blocks) {
            for (const std::size_t i : b.zones) {
                worked.insert(i);
                CHECK(title(g_.zones[i].how) == title(b.how));
            }
        }
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            CHECK(worked.count(i) == (z.how.kind == tool_kind::none ? 0U : 1U));
            if (z.came == outcome::clipped_under) {
                CHECK(z.when == list::before_bath);
            }
        }
        CHECK(g_.choice.sure.bound <= in_mmin(g_.choice.cost));
    }

    const groom_table& t_;
    const groom& g_;
    const zone_plan* z_ = nullptr;
};

void plan_and_inspect(int dogs, std::uint64_t seed) {
    dice d(seed);
    const auto& styles = io::reference().styles;
    const auto& coats = io::reference().coats;
    int planned = 0;
    int stopped = 0;
    while (planned < dogs) {
        for (const style& s : styles) {
            for (const coat& c : coats) {
                groom_table t;
                t.patient = any_dog(d, c.id);
                t.sheet = s;
                t.sheet.show = d.luck(30);
                if (d.luck(30)) {
                    t.sheet.face = d.luck(50) ? "clean" : "round";
                    t.sheet.feet = d.luck(50) ? "clean" : "round";
                }
                t.tools = d.luck(25) ? io::demo_salon().tools : any_drawer(d);
                t.both_ways = d.luck(25);
                INFO("dog " << planned << ", sheet " << s.id << ", " << c.title);
                const groom g = t.plan();
                inspection(t, g).look();
                stopped += g.stop.empty() ? 0 : 1;
                ++planned;
            }
        }
    }
    // the generator reaches what it is for
    CHECK(stopped > 0);
    CHECK(stopped < planned / 2);
}

}  // namespace

TEST_CASE("no plan hurts: two thousand dogs, every coat on every sheet", "[safety]") {
    plan_and_inspect(2000, 20261125);
}

TEST_CASE("no plan hurts: forty thousand dogs more", "[.full]") {
    plan_and_inspect(40'000, 7);
}
