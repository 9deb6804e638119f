// How a dog is spared for its skin and its teats.
#include <pelage/model/care.hpp>

#include "catch.hpp"
#include "unit/on_the_table.hpp"

using namespace pelage;

namespace {

const zone& in(const char* zone) {
    return io::reference().dog_body.zones[on_the_table::at(zone).zone];
}

}  // namespace

TEST_CASE("what the skin shows: left alone, gone around, or bathed first", "[care]") {
    // inflamed, open and weeping skin: hands off, matted or not
    for (const skin_state s : {skin_state::irritated, skin_state::broken, skin_state::wet}) {
        INFO(name(s));
        CHECK(care_for(s, false) == skin_care::left_alone);
        CHECK(care_for(s, true) == skin_care::left_alone);
    }
    CHECK(care_for(skin_state::lump, false) == skin_care::gone_around);
    CHECK(care_for(skin_state::lump, true) == skin_care::left_alone);
    // nobody goes around a scab that a mat hides
    CHECK(care_for(skin_state::scab, false) == skin_care::gone_around);
    CHECK(care_for(skin_state::scab, true) == skin_care::left_alone);
    CHECK(care_for(skin_state::fleas, false) == skin_care::bathed_first);
    CHECK(care_for(skin_state::fleas, true) == skin_care::bathed_first);
}

TEST_CASE("one open place keeps the whole dog dry, a red one makes the bath mild", "[care]") {
    const auto seen = [](std::initializer_list<skin_state> all) {
        std::vector<skin_finding> out;
        for (const skin_state s : all) {
            out.push_back({{}, s, {}, false});
        }
        return bath_for(out);
    };
    CHECK(seen({}) == bath_care::usual);
    CHECK(seen({skin_state::lump, skin_state::scab, skin_state::fleas}) == bath_care::usual);
    CHECK(seen({skin_state::irritated, skin_state::fleas}) == bath_care::gently);
    CHECK(seen({skin_state::irritated, skin_state::broken}) == bath_care::none);
    CHECK(seen({skin_state::wet, skin_state::irritated}) == bath_care::none);
}

TEST_CASE("belly and groin of a nursing bitch are left", "[care]") {
    dog d;
    const zone& belly = in("belly");
    CHECK_FALSE(left_for_teats(d, belly));
    d.heard = health_told{};
    d.heard->known = {ailment_kind::young};
    CHECK(left_for_teats(d, belly));
    CHECK(left_for_teats(d, in("groin")));
    CHECK_FALSE(left_for_teats(d, in("back")));
}

TEST_CASE("an edge belongs to what it edges, side by side", "[care]") {
    const body& b = io::reference().dog_body;
    using on_the_table::at;
    const skin_finding right_ear{at("right ear"), skin_state::broken};
    CHECK(leaves_alone(b, right_ear, at("right ear"), false));
    CHECK(leaves_alone(b, right_ear, at("ears"), false));
    CHECK(leaves_alone(b, right_ear, at("edge of the right ear"), false));
    CHECK_FALSE(leaves_alone(b, right_ear, at("edge of the left ear"), false));
    CHECK_FALSE(leaves_alone(b, right_ear, at("behind the right ear"), false));
    // a hurt edge leaves the leather: that one is kept off, not left
    const skin_finding edge{at("edge of the right ear"), skin_state::broken};
    CHECK_FALSE(leaves_alone(b, edge, at("right ear"), false));
    const skin_finding lump{at("right ear"), skin_state::lump};
    CHECK_FALSE(leaves_alone(b, lump, at("edge of the right ear"), false));
}

TEST_CASE("over a lump the hair stays longer, and never shorter than over thin skin", "[care]") {
    const refusal_rules& r = io::reference().rules.refusal;
    CHECK(over_bump(mm(13), r) == mm(16));
    CHECK(over_bump(mm(1.5), r) == mm(6));
}

TEST_CASE("seven signs of the stop list can't wait an hour, the others not a day", "[care]") {
    int now = 0;
    for (std::size_t i = 0; i < stop_sign_names.size(); ++i) {
        now += at_once(static_cast<stop_sign>(i)) ? 1 : 0;
    }
    CHECK(now == 7);
    for (const stop_sign s :
         {stop_sign::collapse, stop_sign::breath, stop_sign::gums, stop_sign::overheated,
          stop_sign::bloat, stop_sign::seizure, stop_sign::bleeding}) {
        INFO(name(s));
        CHECK(at_once(s));
    }
}
