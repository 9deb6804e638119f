#include "generate/trouble.hpp"

#include <algorithm>

#include <pelage/data/reference.hpp>

namespace generate {

using namespace pelage;

namespace {

bool meet(const place& a, const place& b) {
    return a.zone == b.zone &&
           (a.which == b.which || a.which == side::both || b.which == side::both);
}

/// A drawer with little in it, blades lent out, and patches that were measured badly.
void thin_out(dice& d, kit& tools) {
    const int kept = 15 + d.roll(75);
    std::erase_if(tools.blades, [&](const kit_blade&) { return !d.luck(kept); });
    std::erase_if(tools.combs, [&](const kit_comb&) { return !d.luck(kept); });
    for (kit_blade& b : tools.blades) {
        b.out = d.luck(10);
        if (d.luck(15) && b.spec.shape != edge::adjustable) {
            b.measured = d.hair(0.5, 9);
        }
    }
}

/// More mats than there is time for, few of them measured.
void mat(dice& d, dog& patient) {
    const auto& zones = io::reference().dog_body.zones;
    for (int n = d.roll(5); n > 0; --n) {
        mat_finding m;
        m.at.zone = static_cast<std::size_t>(d.roll(static_cast<int>(zones.size())));
        if (zones[m.at.zone].paired && d.luck(60)) {
            m.at.which = d.luck(50) ? side::left : side::right;
        }
        m.grade = static_cast<mat_grade>(d.roll(4));
        m.comb_passes = d.luck(25);
        if (d.luck(50)) {
            m.free_hair = d.hair(0.3, 9);
        }
        if (std::none_of(patient.mats.begin(), patient.mats.end(),
                         [&](const mat_finding& o) { return meet(o.at, m.at); })) {
            patient.mats.push_back(m);
        }
    }
}

}  // namespace

table any_trouble(dice& d) {
    table t = generate::any_table(d);
    if (d.luck(60)) {
        thin_out(d, t.tools);
    }
    mat(d, t.patient);
    t.patient.age = d.luck(20) ? std::optional{life_stage::old} : std::nullopt;
    t.patient.health = d.luck(15) ? "a heart murmur" : "";
    return t;
}

}  // namespace generate
