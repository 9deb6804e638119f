// Who works in the salon, and when.
#pragma once

#include <array>
#include <string>

#include <pelage/base/units.hpp>
#include <pelage/trade/days_off.hpp>

namespace pelage {

/// A groomer of the salon (salon.toml, [[groomer]]).
struct groomer {
    std::string name;             ///< as people call them
    std::array<work, 7> hours{};  ///< with dogs, by day of the week, Sunday first; 0: not there
    days_off away;                ///< holidays

    /// What it can give on a day the salon is open.
    [[nodiscard]] work on(const date& d) const {
        return away.cover(d) ? work{} : hours[weekday_of(d)];
    }
};

}  // namespace pelage
