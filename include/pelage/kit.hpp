// What lies in the drawer of one salon or one table.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/blade.hpp>
#include <pelage/comb.hpp>
#include <pelage/date.hpp>

namespace pelage {

/// A blade in the kit. `measured` is what a test patch gave and then wins over what is etched.
struct kit_blade {
    blade spec;
    int count = 1;
    std::optional<length> measured;
    bool out = false;  ///< out for sharpening as of the day asked about
    std::optional<date> out_until;
};

/// A comb in the kit.
struct kit_comb {
    comb spec;
    int count = 1;
    std::optional<length> measured;
    std::vector<std::string> fits;  ///< ids of the blades it fits over; empty: the one under combs
};

/// The kit: clippers, blades, combs and the one blade kept under the combs.
struct kit {
    std::string title;
    int clippers = 1;
    std::string under_comb = "30";
    std::vector<kit_blade> blades;
    std::vector<kit_comb> combs;
};

/// The kit's blade with that id, or null.
[[nodiscard]] inline const kit_blade* find_blade(const kit& k, std::string_view id) {
    const auto at = std::find_if(k.blades.begin(), k.blades.end(),
                                 [&](const kit_blade& b) { return b.spec.id == id; });
    return at == k.blades.end() ? nullptr : &*at;
}

/// Whether the blade can be used on `today`: there, and not out for sharpening.
[[nodiscard]] inline bool at_hand(const kit_blade& b, const std::optional<date>& today) {
    if (b.count < 1) {
        return false;
    }
    if (b.out_until && today) {
        return *today > *b.out_until;
    }
    return !b.out && !b.out_until;
}

}  // namespace pelage
