// A kit checked: what no tool of it may do.
#include "kit/check_parts.hpp"

namespace pelage {

namespace {

void combs_on_wrong_blades(checked_kit& k) {
    for (const kit_comb& c : k.own().combs) {
        for (const std::string& id : c.fits) {
            const kit_blade* b = find_blade(k.own(), id);
            if (b == nullptr) {
                k.say(kit_matter::remark, comb_on_no_blade{c.spec.id, id});
            } else if (const auto no = k.refused(
                           combed(as_measured(c), as_measured(*b), direction::with_lay))) {
                k.say(kit_matter::unsafe, comb_on_wrong_blade{c.spec.id, id, *no});
            }
        }
    }
}

void surgical_blades(checked_kit& k) {
    for (const kit_blade& b : k.own().blades) {
        if (b.spec.etched == "50") {
            k.say(kit_matter::unsafe, surgical_blade{b.spec.id});
        }
    }
}

}  // namespace

void find_unsafe(checked_kit& k) {
    combs_on_wrong_blades(k);
    surgical_blades(k);
}

}  // namespace pelage
