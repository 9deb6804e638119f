// Who works in the salon, and when.
#pragma once

#include <algorithm>
#include <array>
#include <chrono>
#include <string>
#include <vector>

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

/// Days on which none of them works, so that there is no visit; nothing where nobody is named. Of a holiday
/// longer than five years only these are counted.
[[nodiscard]] inline days_off nobody_there(const std::vector<groomer>& all) {
    days_off out;
    if (all.empty()) {
        return out;
    }
    for (std::size_t day = 0; day < out.weekdays.size(); ++day) {
        out.weekdays[day] = std::none_of(all.begin(), all.end(),
                                         [&](const groomer& g) { return g.hours[day] > work{}; });
    }
    constexpr int longest = 5 * 366;
    for (const groomer& g : all) {
        for (const span_of_days& s : g.away.spans) {
            date d = s.from;
            for (int i = 0; i < longest && d <= s.to; ++i, d += std::chrono::days{1}) {
                if (std::none_of(all.begin(), all.end(),
                                 [&](const groomer& one) { return one.on(d) > work{}; })) {
                    out.spans.push_back({d, d});
                }
            }
        }
    }
    return out;
}

}  // namespace pelage
