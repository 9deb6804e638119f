// A place of the dog as a card: what may be used there and what never, from the kit, by the rules that keep a
// dog safe.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

#include <pelage/kit/asked.hpp>

namespace pelage {

/// Setups that never go there, all for the same reason.
struct never_there {
    no_go why;                 ///< what forbids it
    std::vector<setup> tools;  ///< with the lay
};

/// One zone. All setups are the kit's, at hand or not; without a side.
struct zone_card {
    std::size_t zone = 0;                ///< index into body::zones
    const term* words = nullptr;         ///< borrows the reference; null only without a glossary
    std::vector<setup> with;             ///< may go there with the lay, shortest first
    std::vector<setup> clean;            ///< only where the style asks for clean face or feet
    std::vector<setup> in_show;          ///< only in show finish with the owner's consent
    std::vector<setup> against;          ///< may go there against the lay
    std::vector<setup> against_clean;    ///< against it only where the style asks for it clean
    std::vector<setup> against_pattern;  ///< against it only on pattern breeds
    std::vector<never_there> never;      ///< what never goes there
};

/// What is asked about there, and isn't done there.
struct not_there {
    /// Which kind of thing.
    enum class of { skip_teeth, de_mat, against } what = of::skip_teeth;  ///< which of them
    std::vector<place> where;  ///< of the places asked about
    bool anywhere = false;     ///< in some of the places asked about it is done
};

/// The card of a place: its zones in reference order.
struct place_card {
    place_asked asked;             ///< as it was understood
    std::vector<zone_card> zones;  ///< those of the place
    std::vector<not_there> no{};   ///< what was asked about and isn't done there
    /// Whether the answer is no: something asked about is done in none of the places, or skip teeth not in all.
    [[nodiscard]] bool is_no() const {
        return std::any_of(no.begin(), no.end(), [](const not_there& n) {
            return !n.anywhere || n.what == not_there::of::skip_teeth;
        });
    }
};

/// Makes it; of `r` the text isn't read.
[[nodiscard]] place_card card_of(const lookup_request& r, const place_asked& p);

}  // namespace pelage
