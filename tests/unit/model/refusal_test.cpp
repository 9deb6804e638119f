// What must not be done to a dog's skin and coat.
#include <optional>
#include <set>
#include <string>

#include <pelage/model/refusal.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;
using on_the_table::blade_of;
using on_the_table::comb_of;

namespace {

const direction with = direction::with_lay;
const direction against = direction::against_lay;

setup blade_in_hand(const char* id, direction d = with) {
    return bare(blade_of(id), d);
}

/// A zone of the reference today, nothing found.
zone_today in(const char* zone) {
    zone_today t;
    t.where = &io::reference().dog_body.zones[on_the_table::at(zone).zone];
    return t;
}

std::optional<refusal> judged(const setup& s, const zone_today& t) {
    return refuse(s, t, io::reference().rules.refusal, io::reference().rules.cut);
}

bool allowed(const char* blade, const char* zone, direction d = with) {
    return !judged(blade_in_hand(blade, d), in(zone));
}

mat_finding mat(std::optional<length> free_hair, bool comb_passes = false) {
    mat_finding m;
    m.free_hair = free_hair;
    m.comb_passes = comb_passes;
    return m;
}

std::optional<refusal> under(const mat_finding& m, const setup& s, const char* zone = "back") {
    zone_today t = in(zone);
    t.mat = &m;
    return judged(s, t);
}

bool fits_under(const mat_finding& m, const char* blade) {
    return !under(m, blade_in_hand(blade));
}

}  // namespace

TEST_CASE("every refusal has one name", "[refusal]") {
    std::set<std::string_view> names;
    for (int i = 0; i <= static_cast<int>(refusal::thin_plucked); ++i) {
        CHECK(names.insert(name(static_cast<refusal>(i))).second);
    }
    CHECK(names.size() == 21);
    CHECK(name(refusal::comb_over_mat) == "comb-over-mat");
    CHECK(name(refusal::scissors_only) == "scissors-only");
}

TEST_CASE(
    "on sound skin a full-tooth blade of 10 to 5F goes with the lay anywhere, a longer one on no "
    "web",
    "[refusal]") {
    for (const zone& z : io::reference().dog_body.zones) {
        INFO(z.id);
        for (const char* b : {"10", "9", "7F", "5F"}) {
            CHECK_FALSE(judged(blade_in_hand(b), in(z.id.c_str())));
        }
        for (const char* b : {"4F", "3F"}) {
            const auto no = judged(blade_in_hand(b), in(z.id.c_str()));
            CHECK(no ==
                  (z.has(zone_use::web) ? std::optional{refusal::long_on_web} : std::nullopt));
        }
    }
}

TEST_CASE("skip teeth go only where skin is firm and flat", "[refusal]") {
    const std::set<std::string> listed{"neck", "collar-line", "withers", "shoulder", "back",
                                       "ribs", "loin",        "rump",    "thigh"};
    for (const zone& z : io::reference().dog_body.zones) {
        INFO(z.id);
        for (const char* b : {"7", "5", "4", "3", "8.5", "3.75", "5/8 long"}) {
            const auto no = judged(blade_in_hand(b), in(z.id.c_str()));
            CHECK(no.has_value() == (listed.count(z.id) == 0));
            CHECK((!no || *no == refusal::skip_teeth_here));
        }
    }
}

TEST_CASE("no skip teeth on an old or thin-skinned dog, full teeth as ever", "[refusal]") {
    zone_today t = in("back");
    t.thin_or_old = true;
    CHECK(judged(blade_in_hand("7"), t) == refusal::skip_teeth_here);
    CHECK_FALSE(judged(blade_in_hand("7F"), t));
}

TEST_CASE("a 50 never, neither bare nor under a comb", "[refusal]") {
    for (const char* z : {"back", "pads", "feet", "muzzle", "ear"}) {
        INFO(z);
        zone_today t = in(z);
        t.clean = true;
        t.show = true;
        CHECK(judged(blade_in_hand("50"), t) == refusal::never_50);
        CHECK(judged(combed(comb_of("13 mm"), blade_of("50"), with), t) == refusal::never_50);
    }
}

TEST_CASE("bare 40 and 30 go on pads, or on clean face and feet in agreed show finish",
          "[refusal]") {
    for (const char* b : {"40", "30", "30W", "5/8 toe", "7/8 toe"}) {
        INFO(b);
        CHECK(allowed(b, "pads"));
        for (const char* z : {"back", "feet", "muzzle", "cheek", "throat", "ear", "tail-base",
                              "sanitary", "under-tail", "belly", "groin"}) {
            INFO(z);
            CHECK(judged(blade_in_hand(b), in(z)) == refusal::bare_short);
        }
        for (const char* z : {"feet", "muzzle", "cheek", "throat"}) {
            INFO(z);
            zone_today t = in(z);
            t.clean = true;
            CHECK(judged(blade_in_hand(b), t) == refusal::bare_short);  // clean, but no show finish
            t.show = true;
            CHECK_FALSE(judged(blade_in_hand(b), t));
        }
        zone_today t = in("ear");  // show finish is for face and feet
        t.clean = true;
        t.show = true;
        CHECK(judged(blade_in_hand(b), t) == refusal::bare_short);
    }
}

TEST_CASE(
    "a 15 goes on clean face and feet, ear leather, tail band, sanitary, under the tail, pads",
    "[refusal]") {
    for (const char* z : {"ear", "tail-base", "sanitary", "under-tail", "pads"}) {
        INFO(z);
        CHECK(allowed("15", z));
    }
    for (const char* z : {"back", "feet", "muzzle", "cheek", "skull", "ear-edge", "behind-ear",
                          "belly", "groin", "armpit", "tail"}) {
        INFO(z);
        CHECK(judged(blade_in_hand("15"), in(z)) == refusal::bare_15);
    }
    for (const char* z : {"feet", "muzzle", "cheek", "throat"}) {
        INFO(z);
        zone_today t = in(z);
        t.clean = true;
        CHECK_FALSE(judged(blade_in_hand("15"), t));
    }
    zone_today t = in("back");  // the sheet's clean face is no leave for the back
    t.clean = true;
    CHECK(judged(blade_in_hand("15"), t) == refusal::bare_15);
}

TEST_CASE(
    "a 10 against the lay goes on ear leather and tail band, clean face and feet, and the "
    "cheeks and throat of pattern breeds",
    "[refusal]") {
    CHECK(allowed("10", "ear", against));
    CHECK(allowed("10", "tail-base", against));
    for (const char* z : {"back", "belly", "groin", "sanitary", "under-tail", "ear-edge", "pads",
                          "cheek", "throat", "muzzle", "feet", "skull"}) {
        INFO(z);
        CHECK(judged(blade_in_hand("10", against), in(z)) == refusal::against_lay_here);
    }
    for (const char* z : {"cheek", "throat"}) {
        INFO(z);
        zone_today t = in(z);
        t.pattern = true;
        CHECK_FALSE(judged(blade_in_hand("10", against), t));
    }
    zone_today back = in("back");
    back.pattern = true;
    CHECK(judged(blade_in_hand("10", against), back) == refusal::against_lay_here);
    for (const char* z : {"muzzle", "cheek", "throat", "feet"}) {
        INFO(z);
        zone_today t = in(z);
        t.clean = true;
        CHECK_FALSE(judged(blade_in_hand("10", against), t));
        CHECK_FALSE(judged(blade_in_hand("15", against), t));
    }
}

TEST_CASE("a 30 or 40 against the lay goes on pads and clean feet only", "[refusal]") {
    for (const char* b : {"30", "40"}) {
        INFO(b);
        CHECK(allowed(b, "pads", against));
        zone_today feet = in("feet");
        feet.clean = true;
        feet.show = true;
        CHECK_FALSE(judged(blade_in_hand(b, against), feet));
        zone_today face = in("muzzle");
        face.clean = true;
        face.show = true;
        CHECK_FALSE(judged(blade_in_hand(b), face));
        CHECK(judged(blade_in_hand(b, against), face) == refusal::against_lay_here);
    }
}

TEST_CASE("longer blades and combs may go against the lay", "[refusal]") {
    for (const char* z : {"back", "neck", "thigh"}) {
        INFO(z);
        CHECK(allowed("9", z, against));
        CHECK(allowed("7F", z, against));
        CHECK_FALSE(judged(combed(comb_of("3 mm"), blade_of("30"), against), in(z)));
    }
    // a longer blade's gaps take a lip or a fold of the throat
    for (const char* z : {"cheek", "muzzle", "throat"}) {
        INFO(z);
        CHECK(judged(blade_in_hand("7F", against), in(z)) == refusal::long_on_web);
        CHECK_FALSE(judged(combed(comb_of("3 mm"), blade_of("30"), against), in(z)));
    }
    zone_today toes = in("feet");
    CHECK_FALSE(judged(blade_in_hand("7F"), toes));
    CHECK(judged(blade_in_hand("7F", against), toes) == refusal::long_on_web);
    toes.clean = true;
    CHECK(judged(combed(comb_of("13 mm"), blade_of("30"), direction::with_lay), toes) ==
          refusal::comb_on_clean);
    CHECK(judged(blade_in_hand("7F"), toes) == refusal::long_on_web);
    CHECK_FALSE(judged(blade_in_hand("10"), toes));
}

TEST_CASE("a blade stays the blade etched on it, whatever a patch measured", "[refusal]") {
    const auto measured = [](const char* id, double as) {
        blade b = blade_of(id);
        b.stated = on_the_table::plain(mm(as));
        return b;
    };
    // a 10 that leaves 2 mm is at the long end of its makers' spread, and still a 10
    CHECK(judged(bare(measured("10", 2.0), against), in("back")) == refusal::against_lay_here);
    CHECK(judged(bare(measured("15", 1.5), with), in("back")) == refusal::bare_15);
    CHECK(judged(bare(measured("30", 1.3), with), in("ear")) == refusal::bare_short);
    // the other way about, what it leaves counts: a 10 ground down to a 15's length goes as a 15
    CHECK(judged(bare(measured("10", 1.2), with), in("back")) == refusal::bare_15);
    CHECK(judged(bare(measured("9", 1.5), against), in("back")) == refusal::against_lay_here);
}

TEST_CASE("a comb sits on a 30, a 40 or a 10, never on skip teeth or a long blade", "[refusal]") {
    const auto over = [](const char* b) {
        return judged(combed(comb_of("13 mm"), blade_of(b), with), in("back"));
    };
    for (const char* b : {"30", "40", "10", "15"}) {
        INFO(b);
        CHECK_FALSE(over(b));
    }
    // a 10 at the long end of its makers' spread is still a 10
    blade long_ten = blade_of("10");
    long_ten.stated = on_the_table::plain(mm(2.0));
    CHECK_FALSE(judged(combed(comb_of("13 mm"), long_ten, with), in("back")));
    for (const char* b : {"9", "7F", "7", "5F", "4", "8.5", "5/8 toe"}) {
        INFO(b);
        CHECK(over(b) == refusal::comb_on_wrong_blade);
    }
}

TEST_CASE("a comb never goes through or under a mat", "[refusal]") {
    const setup comb = combed(comb_of("3 mm"), blade_of("30"), with);
    CHECK(under(mat(mm(20), true), comb) == refusal::comb_over_mat);
    CHECK(under(mat({}), comb) == refusal::comb_over_mat);
}

TEST_CASE("under a mat: at most three quarters of the free hair", "[refusal]") {
    // 3.2 mm is 0.75 of 4.2667 mm (our guess; that it must be less than the free hair is plain)
    CHECK(fits_under(mat(mm(4.27)), "7F"));
    CHECK(under(mat(mm(4.26)), blade_in_hand("7F")) == refusal::under_mat_too_long);
    CHECK(fits_under(mat(mm(2.0)), "10"));
    CHECK_FALSE(fits_under(mat(mm(1.99)), "10"));
}

TEST_CASE("folds, webs and teats bar the lay to longer blades: they roll into the gaps",
          "[refusal]") {
    for (const char* z : {"flank", "stifle", "hock", "elbow", "ear", "belly", "groin"}) {
        INFO(z);
        CHECK(judged(blade_in_hand("7F", against), in(z)) == refusal::long_on_web);
    }
}

TEST_CASE("on hair that lies a blade reaches further into a mat than it states", "[refusal]") {
    const mat_finding m = mat(mm(3));
    const setup nine = blade_in_hand("9");
    CHECK(detail::refuse_under_lying_mat(nine, m, mm(4)) == refusal::under_mat_too_long);
    CHECK_FALSE(detail::refuse_under_lying_mat(nine, m, mm(3)));
    CHECK_FALSE(detail::refuse_under_lying_mat(nine, mat({}, true), mm(9)));
    CHECK_FALSE(detail::refuse_under_lying_mat(blade_in_hand("10"), m, mm(4)));
}

TEST_CASE("under a mat: never longer than 6.4 mm, however far it stands off", "[refusal]") {
    // a matted clip-down leaves 3.2 to 6.4 mm (common practice, no source)
    CHECK(fits_under(mat(mm(40)), "5F"));
    CHECK(under(mat(mm(40)), blade_in_hand("4F")) == refusal::under_mat_too_long);
}

TEST_CASE("under a mat: full teeth only, firm skin or not", "[refusal]") {
    for (const char* b : {"7", "5", "8.5"}) {
        INFO(b);
        CHECK(under(mat(mm(40)), blade_in_hand(b)) == refusal::under_mat_teeth);
    }
}

TEST_CASE("where free hair isn't known only a 10 goes under; what was measured wins", "[refusal]") {
    CHECK(fits_under(mat({}, true), "10"));
    CHECK_FALSE(fits_under(mat({}, true), "7F"));
    CHECK(fits_under(mat({}, false), "10"));  // tried flat under the edge first
    CHECK_FALSE(fits_under(mat({}, false), "9"));
    blade worn = blade_of("10");
    worn.stated = on_the_table::plain(mm(2.5));
    CHECK(under(mat({}, true), bare(worn, direction::with_lay)) == refusal::under_mat_too_long);
    // the tip of a comb passes: a 10 may, though three quarters of 1.6 mm is less than 1.5
    CHECK(fits_under(mat(mm(1.6), true), "10"));
    CHECK_FALSE(fits_under(mat(mm(1.6), false), "10"));
    // but not where less hair than it leaves was measured
    CHECK_FALSE(fits_under(mat(mm(1), true), "10"));
    CHECK_FALSE(fits_under(mat(mm(1.5), true), "10"));
}

TEST_CASE("a mat is no leave for blades that are too short for the place", "[refusal]") {
    CHECK(under(mat(mm(5)), blade_in_hand("30")) == refusal::bare_short);
    CHECK(under(mat(mm(5)), blade_in_hand("15")) == refusal::bare_15);
    CHECK_FALSE(under(mat(mm(5)), blade_in_hand("15"), "under-tail"));
}

TEST_CASE("no scissors, no carding, no stripping between mat and skin", "[refusal]") {
    for (const tool_kind k :
         {tool_kind::scissors, tool_kind::thinners, tool_kind::carder, tool_kind::fingers}) {
        CHECK(under(mat(mm(10), true), by_hand(k)) == refusal::hand_tool_at_mat);
        CHECK_FALSE(judged(by_hand(k), in("back")));
    }
}

TEST_CASE("felted to the skin nothing is done", "[refusal]") {
    mat_finding m = mat({});
    m.grade = mat_grade::pelt;
    m.to_skin = true;
    for (const char* b : {"40", "10", "7F"}) {
        CHECK(under(m, blade_in_hand(b)) == refusal::mat_to_skin);
    }
    CHECK(under(m, by_hand(tool_kind::scissors)) == refusal::mat_to_skin);
    CHECK_FALSE(under(m, by_hand(tool_kind::none)));
}

TEST_CASE("nothing on broken or irritated skin but to leave it", "[refusal]") {
    zone_today t = in("back");
    t.skin_hurt = true;
    CHECK(judged(blade_in_hand("7F"), t) == refusal::skin_found);
    CHECK(judged(combed(comb_of("13 mm"), blade_of("30"), with), t) == refusal::skin_found);
    CHECK(judged(by_hand(tool_kind::scissors), t) == refusal::skin_found);
    CHECK(judged(by_hand(tool_kind::carder), t) == refusal::skin_found);
    CHECK_FALSE(judged(by_hand(tool_kind::none), t));
}

TEST_CASE("no skip teeth in a zone with a lump or a scab", "[refusal]") {
    zone_today t = in("back");
    t.bump = true;
    CHECK(judged(blade_in_hand("7"), t) == refusal::skip_teeth_at_bump);
    CHECK_FALSE(judged(blade_in_hand("7F"), t));
    CHECK_FALSE(judged(combed(comb_of("13 mm"), blade_of("30"), with), t));
}

TEST_CASE("a double coat's jacket is clipped with consent, or where a mat must come off",
          "[refusal]") {
    zone_today t = in("back");
    t.double_jacket = true;
    CHECK(judged(blade_in_hand("7F"), t) == refusal::jacket_consent);
    CHECK(judged(combed(comb_of("25 mm"), blade_of("30"), with), t) == refusal::jacket_consent);
    CHECK_FALSE(judged(by_hand(tool_kind::carder), t));
    const mat_finding m = mat(mm(10));
    t.mat = &m;
    CHECK_FALSE(judged(blade_in_hand("7F"), t));
}

TEST_CASE("ear edges, eyebrows and skirt are clipped only where the sheet says so", "[refusal]") {
    for (const char* z : {"ear-edge", "eyebrow", "skirt"}) {
        INFO(z);
        zone_today t = in(z);
        CHECK_FALSE(judged(blade_in_hand("7F"), t));  // the sheet asks for it
        t.sheet_clips = false;
        CHECK(judged(blade_in_hand("7F"), t) == refusal::scissors_only);
        CHECK_FALSE(judged(by_hand(tool_kind::scissors), t));
        const mat_finding m = mat(mm(10));
        t.mat = &m;
        const bool edge = std::string(z) != "skirt";  // lids and ears: a 10 or shorter
        CHECK(judged(blade_in_hand("7F"), t) ==
              (edge ? std::optional{refusal::under_mat_too_long} : std::nullopt));
        CHECK_FALSE(judged(blade_in_hand("10"), t));
    }
}
