// What a dog is booked for: a full groom, a tidy, a bath and brush, nails and ears.
#pragma once

#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/evidence.hpp>

namespace pelage {

/// The services there are; reference/services.toml says what each holds, in this order.
enum class service_kind { full, tidy, bath, deshed, prep, nails, puppy, hand_strip, rolling };
inline constexpr std::array<std::string_view, 9> service_names{
    "full", "tidy", "bath", "de-shed", "prep", "nails", "puppy", "hand-strip", "rolling"};
[[nodiscard]] constexpr std::string_view name(service_kind s) {
    return service_names[static_cast<std::size_t>(s)];
}

/// What an appointment is made of, in the order in which it is done.
enum class service_step {
    look,         ///< taken in, looked over, handed back
    before_bath,  ///< what the plan does before the bath: mats, prep
    brush,        ///< brushed and combed to the skin, without a bath
    bath,         ///< washed, dried straight and combed out
    deshed,       ///< the undercoat that is letting go taken out
    after_bath,   ///< what the plan does after it: clip, finish
    roll,         ///< a stripped jacket rolled: what is ripe pulled
    nails,
    ears
};
inline constexpr std::array<std::string_view, 9> service_step_names{
    "look", "before-bath", "brush", "bath", "deshed", "after-bath", "roll", "nails", "ears"};
[[nodiscard]] constexpr std::string_view name(service_step s) {
    return service_step_names[static_cast<std::size_t>(s)];
}

/// Which clocks a visit stops (solver/visit_schedule.hpp).
enum class service_clock { full, brush, tidy };
inline constexpr std::array<std::string_view, 3> service_clock_names{"full", "brush", "tidy"};

/// A service (reference/services.toml).
struct service {
    service_kind kind = service_kind::full;  ///< which
    std::string title;                       ///< "bath and brush"
    std::vector<std::string> words;          ///< what else it is called
    std::string text;                        ///< what it is, for the front desk
    bool whole = false;                      ///< the sheet on the whole dog
    std::vector<std::size_t> zones;          ///< else the zones the sheet is done on; may be none
    std::vector<service_step> steps;         ///< in their order, none twice
    std::vector<service_clock> stops;        ///< clocks that it begins anew
    evidence why;                            ///< how it is known
    /// Whether the step is part of it.
    [[nodiscard]] bool has(service_step s) const {
        return std::find(steps.begin(), steps.end(), s) != steps.end();
    }
    [[nodiscard]] bool stops_clock(service_clock c) const {
        return std::find(stops.begin(), stops.end(), c) != stops.end();
    }
    [[nodiscard]] bool does(std::size_t zone) const {
        return whole || std::find(zones.begin(), zones.end(), zone) != zones.end();
    }
};

}  // namespace pelage
