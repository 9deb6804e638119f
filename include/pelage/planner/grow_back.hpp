// After mats were clipped off: what the whole dog can look best as until the coat is back, what each
// way costs, and when the wished style is back.
//
// The long places are kept and the clipped ones grow into them; or the part of the dog with the mats is
// taken down evenly; or the whole coat is, so that it comes back in one length. Each is a plan of its
// own; its dates come from the growth of the coat, with the dog's own rate where it was measured.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

#include <pelage/base/units.hpp>
#include <pelage/planner/plan.hpp>

namespace pelage {

/// How far the rest goes down with what the mats left.
enum class grow_back {
    keep_long,  ///< not at all: the plan itself
    even_part,  ///< the parts of the dog with the mats (ears, head, body, legs, tail), evenly
    even_all    ///< body and legs and every part with mats, evenly
};
inline constexpr std::array<std::string_view, 3> grow_back_names{"keep-long", "even-part",
                                                                 "even-all"};
[[nodiscard]] constexpr std::string_view name(grow_back g) {
    return grow_back_names[static_cast<std::size_t>(g)];
}

/// One way to grow back.
struct regrowth_option {
    grow_back how = grow_back::keep_long;  ///< which of the ways
    groom plan;     ///< without cautions, consents and notes; its places are those of the plan
    work more{};    ///< minutes of work against the plan; below zero means less
    work dearer{};  ///< cost as plans are compared
    std::vector<std::size_t> down;  ///< places taken down with the mats, indices into groom::zones
    length even{};                  ///< what is left there, the shortest of it; 0 where nothing is
    length step{};                  ///< the greatest step left between neighbours
    std::size_t last = 0;           ///< the place that is back last, index into groom::zones
    length from{};                  ///< what is left there
    length to{};                    ///< what the sheet wishes there
    std::array<days, 3> back_in{};  ///< 1 in 10, 1 in 2 and 9 in 10 such dogs are back; never: not
};

/// The ways for a dog whose mats are clipped off in coat that the sheet wishes longer, the plan itself
/// first; ways that come to the same as one before are left out. Empty where nothing of the kind was
/// clipped, or the coat doesn't keep growing (smooth and double coats: lookup and cautions tell of
/// those). A place is back at the wished length itself, the length that is named with the date.
[[nodiscard]] std::vector<regrowth_option> ways_to_grow_back(const plan_request& r, const groom& g);

}  // namespace pelage
