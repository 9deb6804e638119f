// Days on which no visit can be: the salon's closed days, the owner's dates. And days on which the
// dog should be freshly groomed.
#pragma once

#include <array>
#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/date.hpp>
#include <pelage/base/length_text.hpp>

namespace pelage {

/// Days of the week, Sunday first, as std::chrono::weekday counts them.
inline constexpr std::array<std::string_view, 7> weekday_names{
    "Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"};

/// The day of the week of a date: 0 Sunday to 6 Saturday.
[[nodiscard]] inline std::size_t weekday_of(const date& d) {
    return std::chrono::weekday{d}.c_encoding();
}

/// Days from `from` to `to`, both included.
struct span_of_days {
    date from{};  ///< the first
    date to{};    ///< the last, in it
    friend bool operator==(const span_of_days&, const span_of_days&) = default;
};

/// Days on which there is no visit.
struct days_off {
    std::array<bool, 7> weekdays{};   ///< every such day of the week, Sunday first
    std::vector<span_of_days> spans;  ///< may be empty

    /// Whether there is no visit on `d`.
    [[nodiscard]] bool cover(const date& d) const {
        bool off = weekdays[weekday_of(d)];
        for (const span_of_days& s : spans) {
            off = off || (s.from <= d && d <= s.to);
        }
        return off;
    }
    /// Adds other days.
    void add(const days_off& more) {
        for (std::size_t i = 0; i < weekdays.size(); ++i) {
            weekdays[i] = weekdays[i] || more.weekdays[i];
        }
        spans.insert(spans.end(), more.spans.begin(), more.spans.end());
    }
    friend bool operator==(const days_off&, const days_off&) = default;
};

/// The last day from `from` to `by` on which there may be a visit; nothing if there is none.
[[nodiscard]] inline std::optional<date> last_open(const days_off& off, const date& from,
                                                   const date& by) {
    for (date d = by; d >= from; d -= std::chrono::days{1}) {
        if (!off.cover(d)) {
            return d;
        }
    }
    return std::nullopt;
}

/// A day for which the dog should be freshly groomed: its full groom falls on one of the `within`
/// days before, and no visit on the day itself.
struct fresh_day {
    date on{};         ///< the day
    int within = 7;    ///< days, at least 1
    std::string name;  ///< "wedding"; may be empty
    friend bool operator==(const fresh_day&, const fresh_day&) = default;
};

/// "Monday", "Mondays", "2026-12-24", "2026-12-24 to 2027-01-03"; nothing for anything else, and
/// nothing for a span that ends before it begins.
[[nodiscard]] inline std::optional<days_off> parse_days_off(std::string_view text) {
    const std::string_view s = detail::trimmed(text);
    days_off off;
    for (std::size_t i = 0; i < weekday_names.size(); ++i) {
        if (s == weekday_names[i] || s == std::string(weekday_names[i]) + "s") {
            off.weekdays[i] = true;
            return off;
        }
    }
    const auto to = s.find(" to ");
    const auto first = parse_date(detail::trimmed(s.substr(0, to)));
    const auto last =
        to == std::string_view::npos ? first : parse_date(detail::trimmed(s.substr(to + 4)));
    if (!first || !last || *last < *first) {
        return std::nullopt;
    }
    off.spans.push_back({*first, *last});
    return off;
}

/// A span as people write it: "6w", "6 weeks", "42d", "42 days"; whole, from 1 day to 52 weeks.
[[nodiscard]] inline std::optional<int> parse_wait(std::string_view text) {
    std::string_view s = detail::trimmed(text);
    const auto n = detail::take_decimal(s);
    const std::string unit{detail::trimmed(s)};
    const bool weeks = unit == "w" || unit == "week" || unit == "weeks";
    if (!n || *n != std::floor(*n) || *n < 1.0 ||
        (!weeks && unit != "d" && unit != "day" && unit != "days")) {
        return std::nullopt;
    }
    const double total = *n * (weeks ? 7.0 : 1.0);
    return total > 364.0 ? std::nullopt : std::optional{static_cast<int>(total)};
}

}  // namespace pelage
