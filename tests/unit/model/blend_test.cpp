// Blending: how wide, and what stands between.
#include <pelage/data/reference.hpp>
#include <pelage/model/blend.hpp>

#include "catch.hpp"

using namespace pelage;

namespace {

const price_rules& prices() {
    return io::reference().rules.prices;
}
double width_mm(double step, double along, dog_size s = dog_size::medium) {
    return in_mm(blend_width(mm(step), mm(along), s, prices()));
}

}  // namespace

TEST_CASE("a step up to 3 mm blends by itself", "[blend]") {
    CHECK_FALSE(shows(mm(0), prices()));
    CHECK_FALSE(shows(mm(3), prices()));
    CHECK_FALSE(shows(mm(3.004), prices()));
    CHECK(shows(mm(3.01), prices()));
}

TEST_CASE("a blend is a centimetre wide for each 3 mm of step", "[blend]") {
    CHECK(width_mm(3, 1000) == 10.0);
    CHECK(width_mm(6, 1000) == 20.0);
    CHECK(width_mm(15, 1000) == 50.0);
}

TEST_CASE("and no wider than a quarter of its seam, on a dog of that size", "[blend]") {
    CHECK(width_mm(30, 200) == 50.0);
    CHECK(width_mm(30, 60) == 15.0);
    // twice the minutes are twice the coat: lengths go as the square root
    CHECK_THAT(width_mm(30, 200, dog_size::giant), match::WithinAbs(70.71, 0.01));
    CHECK_THAT(width_mm(30, 200, dog_size::toy), match::WithinAbs(38.73, 0.01));
    CHECK(width_mm(6, 200, dog_size::giant) == 20.0);
}

TEST_CASE("a setup breaks a step if what it leaves is near the middle", "[blend]") {
    const auto breaks = [](double leaves) {
        return breaks_step(mm(leaves), mm(16), mm(8), prices());
    };
    CHECK(breaks(12));
    CHECK(breaks(10));
    CHECK(breaks(14));
    CHECK_FALSE(breaks(9.98));
    CHECK_FALSE(breaks(14.02));
    CHECK_FALSE(breaks(8));
    CHECK_FALSE(breaks(16));
    CHECK(off_middle(mm(10), mm(16), mm(8)) == mm(2));
    CHECK(off_middle(mm(10), mm(8), mm(16)) == mm(2));
}

TEST_CASE("how blends are worked is our guess and says so", "[blend]") {
    for (const figure<double>& f :
         {prices().blend_slope, prices().blend_room, prices().blend_middle}) {
        CHECK(f.why.how == basis::assumption);
    }
}
