// Whatever the dog, the sheet and the drawer: no plan may hurt.
//
// The hard rules are said here once more, from the words of the trade and on their own: nothing below
// calls the rules of the planner. Dogs, findings and drawers are drawn by a generator of fixed seed.
#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <string>
#include <tuple>
#include <vector>

#include <pelage/answers/owner_page.hpp>
#include <pelage/planner/alternatives.hpp>
#include <pelage/planner/appointment.hpp>
#include <pelage/planner/plan.hpp>

#include "catch.hpp"
#include "generate/dice.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using namespace on_the_table;
using generate::dice;

namespace {

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
        if (b.shape == edge::adjustable) {
            one.settings = {mm(0.7), mm(1.3), mm(1.6), mm(3)};
        } else if (d.luck(20)) {  // somewhere within what makers make
            one.measured = d.hair(in_mm(b.stated.low), in_mm(b.stated.high));
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
        i.target = d.hair(0.3, 60);
    } else if (d.luck(40)) {
        i.blade = d.one_of(io::reference().blades).id;
    } else if (d.luck(60)) {
        i.blade = d.one_of(std::vector<std::string>{"40", "30", "15", "10"});
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
        i.tolerance = d.hair(0.1, 5);
    }
    return i;
}

std::string any_word(dice& d) {
    const std::vector<std::string> words{"all",    "body",  "legs",   "head", "prep",
                                         "muzzle", "cheek", "throat", "feet", "ears"};
    return d.luck(50) ? d.one_of(words) : title(whole(), any_place(d));
}

mat_finding any_mat(dice& d) {
    mat_finding m;
    m.at = any_place(d);
    m.grade = static_cast<mat_grade>(d.roll(4));
    m.to_skin = d.luck(2);
    if (!m.to_skin) {
        m.comb_passes = d.luck(50);
        if (d.luck(75)) {
            m.free_hair = d.hair(0.3, 14);
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
    g.shedding = d.luck(10);
    if (d.luck(50)) {
        g.age = static_cast<life_stage>(d.roll(3));
    }
    if (d.luck(30)) {
        g.out = static_cast<outdoors>(d.roll(3));
    }
    g.health = d.luck(15) ? "a heart murmur" : "";
    if (d.luck(30)) {
        g.sensitive.push_back(d.luck(50) ? "feet" : title(whole(), any_place(d)));
    }
    if (d.luck(20)) {
        g.alerts.push_back({static_cast<alert_kind>(d.roll(6)), "oatmeal"});
    }
    if (d.luck(2)) {
        g.signs.push_back(static_cast<stop_sign>(d.roll(12)));
    }
    for (const char* id : {"clip-jacket", "clip-down", "show-blades"}) {
        if (d.luck(40)) {
            g.consents.emplace_back(id);
        }
    }
    if (d.luck(70)) {
        g.now.push_back({"all", d.hair(0.5, 80)});
    }
    for (int i = d.roll(3); i > 0; --i) {
        g.now.push_back({title(whole(), any_place(d)), d.hair(0.5, 80)});
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
        skin_finding f{any_place(d), static_cast<skin_state>(d.roll(6))};
        if (f.state == skin_state::lump) {
            f.size = d.luck(50) ? std::optional{d.hair(2, 60)} : std::nullopt;
            f.known = d.luck(50);
        }
        g.skin.push_back(f);
    }
    for (int i = d.roll(3); i > 0; --i) {
        g.departures.push_back({any_word(d), any_instruction(d)});
    }
    return g;
}

/// One plan, and what a careful groomer would ask of it: each rule that is broken, in words.
class inspection {
  public:
    inspection(const groom_table& t, const groom& g) : t_(t), g_(g) {}

    /// To look the sheet up for every place is most of the time this takes: `with_sheet` says whether
    /// to ask what hangs on its words.
    [[nodiscard]] std::vector<std::string> broken(bool with_sheet, bool owner_clips = false) {
        all_places_stand();
        fleas();
        bath();
        stops();
        combing();
        if (!owner_clips) {  // the owner may have mats clipped off that could be combed out
            time_left();
        }
        parts_down();
        for (const zone_plan& z : g_.zones) {
            z_ = &z;
            mats_ = mats_left();
            reasons();
            skin();
            mats();
            scissors_least();
            teeth();
            short_blades();
            against_the_lay();
            under_combs();
            jackets();
            today();
            tidied();
            edges();
            if (with_sheet && mats_.empty()) {
                wish_ = instruction_for(t_.request(), z.at);
                scissored();
                too_short();
            }
        }
        z_ = nullptr;
        order();
        blends();
        return std::move(broken_);
    }

  private:
    using names = std::set<std::string>;

    void must(bool holds, const char* rule) {
        if (!holds) {
            broken_.push_back(rule);
            if (z_ != nullptr) {
                broken_.back() += ": " + title(whole(), z_->at) + ", " + title(z_->how) + ", " +
                                  std::string(name(z_->came)) + " (" +
                                  std::string(name(z_->why.what)) + "), now " +
                                  (z_->now ? std::to_string(in_mm(*z_->now)) : "?") + ", wished " +
                                  (z_->target ? std::to_string(in_mm(*z_->target)) : "?");
                broken_.back() += ", " + std::string(name(z_->how_finished));
            }
        }
    }
    [[nodiscard]] const std::string& id() const { return whole().zones[z_->at.zone].id; }
    [[nodiscard]] bool in(const names& zones) const { return zones.count(id()) > 0; }
    [[nodiscard]] bool clips() const { return z_->how.kind == tool_kind::clip; }
    [[nodiscard]] bool left_alone() const { return z_->how.kind == tool_kind::none; }
    [[nodiscard]] bool bare_blade() const { return clips() && !z_->how.over; }
    [[nodiscard]] const blade& tool() const { return z_->how.tool; }
    [[nodiscard]] bool agreed(const char* what) const {
        const auto& c = t_.patient.consents;
        return std::find(c.begin(), c.end(), what) != c.end();
    }
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

    [[nodiscard]] bool old_or_thin() const {
        return t_.patient.thin_or_old || t_.patient.age == life_stage::old;
    }
    [[nodiscard]] bool ill() const {
        const auto& all = t_.patient.alerts;
        return !t_.patient.health.empty() ||
               std::any_of(all.begin(), all.end(), [](const alert& a) {
                   return title(a) == "faints" || title(a) == "seizures";
               });
    }
    [[nodiscard]] bool frail() const {
        return old_or_thin() || t_.patient.age == life_stage::young || ill();
    }
    /// Inflamed, open or wet skin; a scab that a mat hides.
    [[nodiscard]] bool hurts(const skin_finding& s) const {
        const names sore{"irritated", "broken", "wet"};
        const auto& mats = t_.patient.mats;
        const bool hidden = std::any_of(mats.begin(), mats.end(),
                                        [&](const mat_finding& m) { return meet(m.at, s.at); });
        const bool felted = std::any_of(mats.begin(), mats.end(), [&](const mat_finding& m) {
            return meet(m.at, s.at) && m.grade == mat_grade::pelt;
        });
        return sore.count(std::string(name(s.state))) == 1 ||
               (s.state == skin_state::scab && hidden) || (s.state == skin_state::lump && felted);
    }
    /// Whether `p` is the edge of an ear on which that is.
    [[nodiscard]] static bool on_its_ear(const skin_finding& s, const place& p) {
        return whole().zones[p.zone].id == "ear-edge" && whole().zones[s.at.zone].id == "ear" &&
               meet({s.at.zone, p.which}, s.at);
    }

    void all_places_stand() {
        for (std::size_t i = 0; i < whole().zones.size(); ++i) {
            std::multiset<side> sides;
            for (const zone_plan& z : g_.zones) {
                if (z.at.zone == i) {
                    sides.insert(z.at.which);
                }
            }
            must(sides == std::multiset<side>{side::both} ||
                     sides == std::multiset<side>{side::left, side::right},
                 "every place stands once in the plan");
        }
    }

    void fleas() {
        const auto& all = t_.patient.skin;
        const bool seen = std::any_of(
            all.begin(), all.end(), [](const skin_finding& s) { return name(s.state) == "fleas"; });
        must(g_.stopped() || seen == !g_.fleas.empty(), "a flea bath where fleas were seen");
    }

    /// Whatever is booked.
    void bath() {
        const auto& all = t_.patient.skin;
        const bool open = std::any_of(all.begin(), all.end(), [](const skin_finding& s) {
            return name(s.state) == "broken" || name(s.state) == "wet";
        });
        for (const service& booked : io::reference().services) {
            for (const appointment_step& s : appointment_of(t_.request(), g_, booked).steps) {
                must(!open || s.what != service_step::bath, "no bath over broken or wet skin");
            }
        }
    }

    void stops() {
        const bool felted = std::any_of(t_.patient.mats.begin(), t_.patient.mats.end(),
                                        [](const mat_finding& m) { return m.to_skin; });
        must(felted == !g_.stop.empty(), "felted to the skin is a stop, nothing else is");
        const dog& d = t_.patient;
        const bool wound = std::any_of(d.mats.begin(), d.mats.end(), [&](const mat_finding& m) {
            return m.grade != mat_grade::tangle &&
                   std::any_of(d.skin.begin(), d.skin.end(), [&](const skin_finding& s) {
                       return (s.state == skin_state::broken || s.state == skin_state::wet) &&
                              meet(s.at, m.at);
                   });
        });
        must((wound || !d.signs.empty()) == !g_.signs.empty(),
             "a sign of the stop list, or raw skin under a mat, is one, nothing else is");
        must(!(felted || wound || !d.signs.empty()) || (g_.blocks.empty() && g_.combed.empty()),
             "after a stop nothing is done");
    }

    void combing() {
        work sum{};
        for (const combing_out& c : g_.combed) {
            sum += c.takes;
            const zone_plan& z = g_.zones[c.zone];
            const std::string& where = whole().zones[z.at.zone].id;
            must(!may_bite() || names{"muzzle", "cheek", "throat"}.count(where) == 0,
                 "nobody combs out the face of a dog that may bite");
            must(names{"armpit", "groin", "belly", "under-tail"}.count(where) == 0,
                 "no combing out in armpit, groin, belly or under the tail");
            must(c.grade != mat_grade::pelt, "a pelt is never combed out");
            must(z.combed_out, "what is combed out is marked so");
            for (const mat_finding& m : t_.patient.mats) {
                must(!meet(m.at, z.at) || m.grade == mat_grade::tangle || m.comb_out ||
                         !m.free_hair || in_mm(*m.free_hair) >= 3.0 || others_are_worse(m, z.at),
                     "no combing out of a mat with too little hair beneath to hold");
            }
            for (const skin_finding& s : t_.patient.skin) {
                must(!meet(s.at, z.at) || !(hurts(s) || s.state == skin_state::scab),
                     "no combing out on hurt skin, nor at a scab");
                must(!hurts(s) || !on_its_ear(s, z.at), "nor at the edge of a hurt ear");
            }
        }
        must(sum <= minutes(15), "at most fifteen minutes of combing out");
        must(sum <= minutes(5) || !old_or_thin() || !ill(),
             "at most five for one that is old or thin-skinned, and ill");
        must(sum <= minutes(10) || !frail(),
             "at most ten for an old, ill, young or thin-skinned dog");
    }

    void reasons() {
        const bool wished = z_->came == outcome::as_wished;
        must(wished || bool(z_->why), "what isn't as wished has a reason");
        if (left_alone()) {
            must(!wished && z_->came != outcome::clipped_under, "what is left alone is told so");
        }
        must(z_->came != outcome::stuck || left_alone(),
             "where nothing is allowed nothing is done");
        if (wished && z_->target && z_->leaves) {
            must(std::abs(in_mm(z_->leaves->best) - in_mm(*z_->target)) <=
                     in_mm(z_->tolerated) + 0.0101,
                 "as wished means within the tolerance");
        }
    }

    void skin() {
        bool why = false;
        for (const skin_finding& s : t_.patient.skin) {
            const bool here = hurts(s) && meet(s.at, z_->at);
            const bool edge = hurts(s) && on_its_ear(s, z_->at);
            must(!here || left_alone(), "nothing on hurt skin");
            must(!edge || left_alone(), "nothing on the edge of a hurt ear");
            const bool foot = hurts(s) && whole().zones[s.at.zone].id == "feet" && in({"pads"}) &&
                              meet({z_->at.zone, s.at.which}, z_->at);
            must(!foot || left_alone(), "nothing on the pads of a hurt foot");
            const bool bump = s.state == skin_state::lump || s.state == skin_state::scab;
            must(!bump || !meet(s.at, z_->at) || !clips() || tool().cut == teeth::full,
                 "no skip teeth in a zone with a lump or a scab");
            why = why || here || edge || foot;
        }
        must(why || z_->came != outcome::skin_left,
             "a lump, a scab in the open or fleas leave no zone");
    }

    /// Whether that blade passes safely under a mat: full teeth, short enough for the free hair beneath.
    [[nodiscard]] bool passes(const setup& s, const mat_finding& m) const {
        const double h = in_mm(s.tool.stated.best);
        if (s.over || s.tool.cut != teeth::full || s.way != direction::with_lay) {
            return false;
        }
        const bool ten = s.tool.etched == "10" && h <= 2.0;
        if (m.free_hair) {
            const double hair = in_mm(*m.free_hair);
            // a blade leaves more where hair lies, and that much of it is in the mat
            const double lay =
                in_mm(cut_length(s, coat_of(io::reference(), *t_.patient.coat).lay_degrees.best,
                                 t_.rules.cut)
                          .best);
            if (lay > hair + 0.01 && h >= 1.75 && s.tool.etched != "10") {
                return false;
            }
            return (h <= 6.4 && h <= 0.75 * hair + 1e-9) ||
                   (m.comb_passes && h < hair && (ten || h <= 1.5));
        }
        return ten || (m.comb_passes && h <= 1.5);
    }

    /// At the very limit of the free hair where it lies, or longer than the hair is today: then it isn't missed.
    [[nodiscard]] bool leaves_too_much(const setup& s, const mat_finding& m) const {
        if (s.kind != tool_kind::clip || s.over) {
            return false;
        }
        const double lying = in_mm(
            cut_length(s, coat_of(io::reference(), *t_.patient.coat).lay_degrees.best, t_.rules.cut)
                .best);
        constexpr double read_as_one = 0.0101;  // lengths are told to a hundredth
        return (m.free_hair && std::abs(lying - in_mm(*m.free_hair)) <= read_as_one) ||
               (z_->now && lying > in_mm(*z_->now));
    }

    void mats() {
        const setup& under = z_->off_by ? *z_->off_by : z_->how;
        const bool cuts = under.kind == tool_kind::clip;
        if (!mats_.empty()) {
            must(cuts || left_alone(), "no hand tool where a mat is left in");
        }
        if (mats_.empty() || !cuts) {
            return;
        }
        const mat_finding& worst = *std::min_element(
            mats_.begin(), mats_.end(), [](const mat_finding& a, const mat_finding& b) {
                return std::tuple{-static_cast<int>(a.grade), a.free_hair.value_or(mm(0.0))} <
                       std::tuple{-static_cast<int>(b.grade), b.free_hair.value_or(mm(0.0))};
            });
        for (const skin_finding& s : t_.patient.skin) {
            must(s.state != skin_state::lump || !meet(s.at, z_->at),
                 "no mat is clipped off where a lump lies");
        }
        must(passes(under, worst), "under a mat only what passes safely, with the lay");
        must(z_->off_by || z_->when == list::before_bath, "mats come off before the bath");
        const double left = in_mm((z_->off_by ? z_->off_leaves : z_->leaves)->best);
        must(!z_->off_by || in_mm(z_->leaves->best) <= left + 0.0101,
             "what is finished after the bath is no longer than what was left before it");
        const zone& w = whole().zones[z_->at.zone];
        const bool whole_part =
            std::find(g_.down.begin(), g_.down.end(), part_of(w)) != g_.down.end();
        if (w.where == group::prep || whole_part) {
            return;
        }
        // the longest that passes, whatever the sheet wishes; at lids, edges of ears and pelted ears a 10 or shorter
        const bool thin_edge =
            in({"ear-edge", "eyebrow"}) || (in({"ear"}) && worst.grade == mat_grade::pelt);
        const auto wide = [&](const blade& b) {
            return thin_edge && b.etched != "10" && in_mm(b.stated.best) >= 1.75;
        };
        must(!wide(under.tool), "no blade longer than a 10 at lids, edges of ears and pelted ears");
        for (const setup& s : setups_of(t_.tools, t_.today, t_.rules.cut)) {
            // at the very limit of the free hair either may be
            const bool at_limit =
                worst.free_hair &&
                std::abs(in_mm(s.tool.stated.best) - 0.75 * in_mm(*worst.free_hair)) < 1e-6;
            const bool longer_one = s.kind == tool_kind::clip && passes(s, worst) && !at_limit &&
                                    !wide(s.tool) && !leaves_too_much(s, worst) &&
                                    s.tool.stated.best > under.tool.stated.best;
            must(!longer_one, "under a mat the longest blade that passes");
        }
    }

    [[nodiscard]] bool may_bite() const {
        const auto& told = t_.patient.alerts;
        return std::any_of(told.begin(), told.end(), [](const alert& a) {
            return a.what == alert_kind::bites || a.what == alert_kind::muzzle;
        });
    }

    /// What could be combed out is not clipped off while there is time for it.
    void time_left() {
        work spent{};
        for (const combing_out& c : g_.combed) {
            spent += c.takes;
        }
        const work limit =
            frail() ? old_or_thin() && ill() ? minutes(5) : minutes(10) : minutes(15);
        for (const zone_plan& z : g_.zones) {
            z_ = &z;
            const zone& w = whole().zones[z.at.zone];
            const bool down =
                std::find(g_.down.begin(), g_.down.end(), part_of(w)) != g_.down.end();
            const bool at_the_teeth = may_bite() && in({"muzzle", "cheek", "throat"});
            if (!mat_clipped_off(z) || z.mat == mat_grade::pelt || z.hurt || down || at_the_teeth ||
                w.where == group::prep) {
                continue;
            }
            // found on both sides, it is combed out on each in half the time
            const auto& mats = t_.patient.mats;
            const bool one_side = z.at.which != side::both &&
                                  std::none_of(mats.begin(), mats.end(), [&](const mat_finding& m) {
                                      return m.at.zone == z.at.zone && m.at.which != side::both;
                                  });
            const work takes = *comb_out_work(*z.mat, t_.patient.size, t_.rules.prices);
            // where the sheet goes as short all the same, combing first saves nothing
            const bool loses = !z.target || !z.leaves || z.leaves->best < *z.target;
            must(z.mat != mat_grade::tangle || !loses ||
                     spent + (one_side ? takes / std::int64_t{2} : takes) > limit,
                 "no tangle is clipped off while there is time to comb it out");
        }
        z_ = nullptr;
    }

    /// Scissors keep off the skin: 6 mm where it is thin or folds, 20 on the body, 3 elsewhere.
    void scissors_least() {
        if (z_->how.kind != tool_kind::scissors || !z_->leaves) {
            return;
        }
        const zone& w = whole().zones[z_->at.zone];
        const double least = in({"ear-edge"})         ? 3.0
                             : w.cover != skin::firm  ? 6.0
                             : in({"chest"})          ? 3.0
                             : w.where == group::body ? 20.0
                                                      : 3.0;
        must(in_mm(z_->leaves->best) >= least - 0.0101, "no scissors closer to the skin than that");
    }

    /// A part that comes down whole does so by one blade.
    void parts_down() {
        for (const part p : g_.down) {
            std::set<std::string> blades;
            for (const zone_plan& z : g_.zones) {
                if (z.came == outcome::taken_down && part_of(whole().zones[z.at.zone]) == p) {
                    blades.insert(title(z.how));
                    must(z.off_by && title(*z.off_by) == title(z.how),
                         "before the bath and after it");
                }
            }
            must(blades.size() <= 1, "a part comes down by one blade");
        }
    }

    void teeth() {
        if (clips() && tool().cut != teeth::full) {
            must(in({"neck", "collar-line", "withers", "shoulder", "back", "ribs", "loin", "rump",
                     "thigh"}),
                 "skip teeth only where skin is firm and flat");
            must(!old_or_thin(), "no skip teeth on an old or thin-skinned dog");
        }
    }

    /// One of those blades, or the adjustable one on a mark as short: from `low` to below `high` mm.
    [[nodiscard]] bool is_like(const names& etched, double low, double high) const {
        const double h = in_mm(tool().stated.best);
        return etched.count(tool().etched) == 1 ||
               (tool().shape == edge::adjustable && h >= low && h < high);
    }

    void short_blades() {
        if (!clips()) {
            return;
        }
        must(tool().etched != "50", "never a 50");
        const bool shown = clean() && t_.sheet.show && agreed("show-blades");
        const bool toe = tool().shape == edge::toe;
        if (bare_blade() && (is_like({"40", "30"}, 0.0, 1.15) || toe)) {
            must(in({"pads"}) || shown,
                 "bare 40, 30 and toe blades on pads or in agreed show finish");
        }
        if (bare_blade() && is_like({"15"}, 1.15, 1.45)) {
            must(clean() || in({"pads", "ear", "tail-base", "sanitary", "under-tail"}),
                 "a bare 15 only in its places");
        }
    }

    void against_the_lay() {
        if (!bare_blade() || z_->how.way == direction::with_lay) {
            return;
        }
        if (is_like({"10", "15"}, 1.15, 1.75)) {
            must(clean() || in({"ear", "tail-base", "cheek", "throat"}),
                 "15 and 10 against the lay only in their places");
        }
        if (is_like({"30", "40"}, 0.0, 1.15)) {
            must(in({"pads"}) || (clean() && in({"feet"})),
                 "40 and 30 against the lay only on pads and clean feet");
        }
    }

    void under_combs() {
        if (clips() && z_->how.over) {
            must(tool().cut == teeth::full, "no comb over skip teeth");
            must(names{"40", "30", "15", "10"}.count(tool().etched) == 1,
                 "no comb over a long blade");
        }
    }

    /// Of several mats in a place the worst is told and dealt with.
    [[nodiscard]] bool others_are_worse(const mat_finding& m, const place& at) const {
        const auto& all = t_.patient.mats;
        return std::any_of(all.begin(), all.end(), [&](const mat_finding& o) {
            return &o != &m && meet(o.at, at) &&
                   std::pair{o.grade, -o.free_hair.value_or(mm(0.0))} >=
                       std::pair{m.grade, -m.free_hair.value_or(mm(0.0))};
        });
    }

    void jackets() {
        if (double_coat() && !agreed("clip-jacket") && mats_.empty()) {
            const group where = whole().zones[z_->at.zone].where;
            must(!clips() || where == group::prep || where == group::feet,
                 "no double coat is clipped without consent, but for feet and hidden folds");
        }
    }

    void scissored() {
        if (z_->came == outcome::taken_down) {
            return;
        }
        must(z_->how.kind != tool_kind::fingers || !t_.patient.thin_or_old,
             "no plucking of thin skin");
        must(z_->how.kind != tool_kind::clip || z_->how_finished != finish::comb_then_scissor ||
                 in_mm(z_->leaves->best) >= 7.0 || in({"ear-edge", "eyebrow", "skirt", "feet"}),
             "no scissors over what a clipper leaves shorter than 7 mm");
        // but for a fringe and feet that are wished shorter than scissors leave: the blade runs over them
        const bool over = in({"skirt", "feet"}) && z_->target && in_mm(*z_->target) < 6.0 &&
                          z_->how.way == direction::with_lay;
        must(wish_.how != finish::scissor || !clips() || over, "what is scissored stays scissored");
        const bool asked = wish_.how == finish::clip || wish_.how == finish::comb_then_scissor ||
                           (!wish_.how && (wish_.blade || wish_.target));
        must(!clips() || asked || over || !in({"ear-edge", "eyebrow", "skirt"}),
             "edges, brows and skirt are clipped only where the sheet says so");
        must(wish_.how != finish::leave || left_alone(), "what the sheet leaves is left");
    }

    void today() {
        const bool cuts = clips() || z_->how.kind == tool_kind::scissors;
        if (z_->now && cuts && mats_.empty()) {
            must(z_->leaves && in_hundredths(z_->leaves->best) <= in_hundredths(*z_->now),
                 "nothing longer than today's hair");
        }
    }

    /// Face, feet and edges no longer than wished are gone over by scissors, and stay as long as they are.
    void tidied() {
        if (!z_->tidied) {
            return;
        }
        const group where = whole().zones[z_->at.zone].where;
        must(where == group::head || where == group::feet || in({"skirt"}),
             "only face, feet and edges are tidied");
        must(!in({"ear"}) && z_->how.kind == tool_kind::scissors, "tidied by scissors, no ear");
        must(z_->now && z_->leaves && z_->leaves->best == *z_->now && mats_.empty(),
             "what is tidied keeps its length");
    }

    void too_short() {
        const bool longer =
            wish_.between.value_or(side_of_target::longer) == side_of_target::longer;
        const bool named = bare_blade() && wish_.blade == tool().id;
        if (!longer || !wish_.target || named || !z_->leaves || z_->came == outcome::goes_along ||
            z_->came == outcome::taken_down || z_->tidied) {
            return;
        }
        if (z_->came == outcome::beyond_reach) {
            must(std::any_of(g_.consents.begin(), g_.consents.end(),
                             [](const consent& c) { return c.id == "other-length"; }) ||
                     g_.cautions.empty(),
                 "what lies beyond the sheet is asked");
            return;
        }
        const double t = in_mm(*wish_.target);
        const bool head = whole().zones[z_->at.zone].where == group::head;
        const double tol = wish_.tolerance
                               ? in_mm(*wish_.tolerance)
                               : std::max((head ? 0.10 : 0.15) * t, std::min(1.5, 0.3 * t));
        // a blade or comb is judged on the least it may leave; two roundings to 0.01 mm
        if (clips() || z_->how.kind == tool_kind::scissors) {
            const length least = clips() ? z_->leaves->low : z_->leaves->best;
            must(in_mm(least) >= t - tol - 0.0101,
                 "nothing shorter than the wish less its tolerance, unless for a mat or by name");
        }
    }

    /// The edge of an ear whose mats are clipped off goes with it; nothing else goes along.
    void edges() {
        if (z_->came != outcome::goes_along) {
            return;
        }
        const bool beneath = std::any_of(g_.zones.begin(), g_.zones.end(), [&](const zone_plan& e) {
            return whole().zones[e.at.zone].id == "ear" && meet({e.at.zone, z_->at.which}, e.at) &&
                   e.leaves && (e.came == outcome::clipped_under || e.off_by || e.beside_mat) &&
                   in_hundredths(longer(e.leaves->best, mm(3))) == in_hundredths(z_->leaves->best);
        });
        must(in({"ear-edge"}) && beneath, "only an ear's edge goes along, with its own ear");
        must(!clips(), "an edge is scissored");
    }

    /// A block that takes the undercoat out of what is clipped later.
    [[nodiscard]] bool carded_first(const block& b) const {
        return b.how.kind == tool_kind::carder &&
               std::all_of(b.zones.begin(), b.zones.end(),
                           [&](std::size_t i) { return g_.zones[i].how.kind == tool_kind::clip; });
    }

    /// A double coat whose jacket is clipped, but for mats: the undercoat comes out before any blade
    /// touches the clean coat, all over what is clipped of it but the head, and no other coat's does.
    [[nodiscard]] bool undercoat_first() {
        const names jacket{"neck", "withers", "back", "ribs", "loin", "rump"};
        std::set<std::size_t> clipped;
        bool of_jacket = false;
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            const zone& where = whole().zones[z.at.zone];
            if (z.how.kind == tool_kind::clip && z.when == list::after_bath &&
                where.where != group::head && where.where != group::feet) {
                clipped.insert(i);
                of_jacket = of_jacket || jacket.count(where.id) > 0;
            }
        }
        bool met = false;
        for (const block& b : g_.blocks) {
            if (carded_first(b)) {
                must(!met, "the undercoat comes out once");
                met = true;
                must(double_coat(), "only a double coat is carded before it is clipped");
                must(std::set<std::size_t>(b.zones.begin(), b.zones.end()) == clipped,
                     "the undercoat comes out of all that is clipped");
            } else {
                must(met || b.when == list::before_bath || !double_coat() || !of_jacket,
                     "the undercoat comes out before the blade");
            }
        }
        return met;
    }

    void order() {
        std::multiset<std::size_t> worked;
        const bool undercoat = undercoat_first();
        for (const block& b : g_.blocks) {
            if (undercoat && carded_first(b)) {
                continue;
            }
            for (const std::size_t i : b.zones) {
                worked.insert(i);
                const zone_plan& z = g_.zones[i];
                must(title(b.off ? *z.off_by : z.how) == title(b.how), "a block is one setup");
            }
        }
        for (std::size_t i = 0; i < g_.zones.size(); ++i) {
            const zone_plan& z = g_.zones[i];
            must(
                worked.count(i) == (z.how.kind == tool_kind::none ? 0U : 1U) + (z.off_by ? 1U : 0U),
                "what is worked stands once in the list, or once before the bath and once after");
        }
        must(g_.choice.sure.bound <= in_mmin(g_.choice.cost), "no bound above the cost");
    }

    /// What blends two zones comes near the skin of both: every rule of a setup holds in both.
    void blends() {
        for (const blend& b : g_.blends) {
            const zone_plan& from = g_.zones[b.from];
            const zone_plan& into = g_.zones[b.into];
            must(from.leaves && into.leaves && into.leaves->best < from.leaves->best,
                 "the longer one is blended into the shorter");
            must(in_mm(b.step) > 3.0, "a step up to 3 mm blends by itself");
            for (const zone_plan* side : {&from, &into}) {
                z_ = side;
                must(!left_alone(), "what is left alone is not blended");
                skin();
                must(!b.between || clips(), "what is scissored is blended by hand");
                if (b.between) {
                    zone_plan tried = *side;
                    tried.how = *b.between;
                    z_ = &tried;
                    mats_.clear();  // off before the bath; a blend comes after it
                    must(b.when == list::after_bath, "clippers blend a clean coat");
                    must(b.leaves->best < from.leaves->best && into.leaves->best < b.leaves->best,
                         "what stands between leaves a length between");
                    must(tool().cut == teeth::full, "skip teeth don't blend");
                    short_blades();
                    against_the_lay();
                    under_combs();
                    jackets();
                }
                z_ = nullptr;
            }
        }
        between_ = between_ || std::any_of(g_.blends.begin(), g_.blends.end(),
                                           [](const blend& b) { return b.between.has_value(); });
    }

  public:
    /// Whether a setup was put between two zones.
    [[nodiscard]] bool between() const { return between_; }

  private:
    bool between_ = false;
    const groom_table& t_;
    const groom& g_;
    const zone_plan* z_ = nullptr;
    instruction wish_;
    std::vector<mat_finding> mats_;
    std::vector<std::string> broken_;
};

/// What is offered beside a plan hurts no more than the plan. Two kinds depart from the sheet on purpose.
/// Gives how many of them aren't proven the cheapest of their kind, which is said beside them.
int inspect_beside(const groom_table& t, const groom& g) {
    const beside b = beside_plan(t.request(), g, true);
    int unproven = 0;
    for (const other_way& w : b.ways) {
        INFO("other way: " << name(w.what));
        const bool by_sheet =
            w.what == way_kind::fewer_tools || (w.what == way_kind::body_length && !w.beyond_sheet);
        const bool clips = w.what == way_kind::clip_mats;
        CHECK(inspection(t, w.plan).broken(by_sheet || clips, clips) == std::vector<std::string>{});
        // a plan with fewer tools is sought within a bound of work
        CHECK((w.cheapest || w.what == way_kind::fewer_tools));
        unproven += w.cheapest ? 0 : 1;
    }
    for (const without_tool& w : b.without) {
        INFO("without " << name(w.tool));
        groom_table rest = t;
        std::erase_if(rest.tools.blades, [&](const kit_blade& one) {
            return w.tool == held_tool{false, one.spec.id};
        });
        std::erase_if(rest.tools.combs, [&](const kit_comb& one) {
            return w.tool == held_tool{true, one.spec.id};
        });
        CHECK(inspection(rest, w.plan).broken(true) == std::vector<std::string>{});
    }
    for (const reason_why& why : b.why) {
        CHECK(why.dearer >= work{});
    }
    // nothing feasible: what is in the way by name, and what would free it or who decides
    CHECK(std::all_of(g.stuck.begin(), g.stuck.end(), [&](std::size_t i) {
        return g.stopped() ||
               std::any_of(b.stuck.begin(), b.stuck.end(), [&](const infeasible_zone& c) {
                   return c.zone == i && !c.rules.empty();
               });
    }));
    for (std::size_t i = 0; i < g.zones.size(); ++i) {
        const bool worked = g.zones[i].how.kind != tool_kind::none;
        const bool said = std::any_of(b.why.begin(), b.why.end(),
                                      [&](const reason_why& w) { return w.zone == i; });
        CHECK((said || !worked || g.zones[i].why));
    }
    // whatever was found, there is a page for the owner
    const io::owner_matter page{g, t.request(), std::nullopt, nullptr, &b.grow_back};
    CHECK_THAT(io::text_of(document_of(page, {})),
               match::ContainsSubstring(g.stopped() ? "Call a vet" : "vet"));
    CHECK(io::html_of(document_of(page, {})).ends_with("</html>\n"));
    for (const regrowth_option& w : b.grow_back) {
        INFO("to grow back: " << name(w.how));
        CHECK(inspection(t, w.plan).broken(false) == std::vector<std::string>{});
        CHECK(w.back_in[0] <= w.back_in[1]);
        CHECK(w.back_in[1] <= w.back_in[2]);
        CHECK(in_days(w.back_in[0]) > 0.0);
        CHECK(w.from < w.to);
    }
    return unproven;
}

void plan_and_inspect(int dogs, std::uint64_t seed) {
    dice d(seed);
    const auto& styles = io::reference().styles;
    const auto& coats = io::reference().coats;
    int planned = 0;
    int unproven = 0;
    int stopped = 0;
    int blended = 0;
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
                inspection careful(t, g);
                CHECK(careful.broken(planned % 3 == 0) == std::vector<std::string>{});
                blended += careful.between() ? 1 : 0;
                if (planned % 29 == 0) {
                    unproven += inspect_beside(t, g);
                }
                stopped += g.stopped() ? 1 : 0;
                ++planned;
            }
        }
    }
    // the generator reaches what it is for
    CHECK(unproven <= 1 + planned / 29 / 500);
    CHECK(stopped > 0);
    CHECK(stopped < planned / 2);
    CHECK(blended > planned / 20);
}

}  // namespace

TEST_CASE("no plan hurts: two thousand dogs, every coat on every sheet", "[safety]") {
    plan_and_inspect(2000, 20261125);
}

TEST_CASE("the size of a dog doesn't change its lengths", "[safety]") {
    // but for what there is time to comb out
    dice d(20261128);
    for (int n = 0; n < 300; ++n) {
        groom_table t;
        t.sheet = d.one_of(io::reference().styles);
        t.patient = any_dog(d, d.one_of(io::reference().coats).id);
        std::erase_if(t.patient.mats,
                      [](const mat_finding& m) { return m.grade != mat_grade::pelt; });
        t.tools = d.luck(25) ? io::demo_salon().tools : any_drawer(d);
        std::vector<std::vector<std::string>> seen;
        for (const dog_size size : {dog_size::toy, dog_size::medium, dog_size::giant}) {
            t.patient.size = size;
            seen.emplace_back();
            for (const zone_plan& z : t.plan().zones) {
                seen.back().push_back(title(z.how) + (z.off_by ? title(*z.off_by) : ""));
            }
        }
        INFO("dog " << n << ", sheet " << t.sheet.id);
        CHECK(seen[0] == seen[1]);
        CHECK(seen[2] == seen[1]);
    }
}

TEST_CASE("no plan hurts: a hundred thousand dogs more", "[.full]") {
    plan_and_inspect(100'000, 7);
}
