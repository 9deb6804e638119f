// Calendar days, as ISO 8601 writes them. The library never asks what day it is: today is an
// argument.
#pragma once

#include <chrono>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include <pelage/base/units.hpp>

namespace pelage {

/// A calendar day (proleptic Gregorian).
using date = std::chrono::sys_days;

/// The day written as YYYY-MM-DD, strictly (ISO 8601 calendar date); nothing for any other shape
/// or a day that doesn't exist, such as 2026-02-30 or 2026-1-5.
[[nodiscard]] inline std::optional<date> parse_date(std::string_view s) {
    if (s.size() != 10 || s[4] != '-' || s[7] != '-') {
        return std::nullopt;
    }
    const auto number = [&](std::size_t at, std::size_t n) {
        int v = 0;
        for (const char c : s.substr(at, n)) {
            if (c < '0' || c > '9') {
                return -1;
            }
            v = v * 10 + (c - '0');
        }
        return v;
    };
    const int y = number(0, 4);
    const int m = number(5, 2);
    const int d = number(8, 2);
    if (y < 0 || m < 0 || d < 0) {
        return std::nullopt;
    }
    const std::chrono::year_month_day ymd{std::chrono::year{y},
                                          std::chrono::month{static_cast<unsigned>(m)},
                                          std::chrono::day{static_cast<unsigned>(d)}};
    if (!ymd.ok()) {
        return std::nullopt;
    }
    return date{ymd};
}

/// Whether a day can be meant by a salon: from 1990 to 2199.
[[nodiscard]] inline bool is_near(const date& d) {
    using namespace std::chrono;
    return d >= sys_days{year{1990} / January / 1} && d < sys_days{year{2200} / January / 1};
}

/// `d` as YYYY-MM-DD; years 0 to 9999.
[[nodiscard]] inline std::string iso(const date& d) {
    const std::chrono::year_month_day ymd{d};
    std::string text = "0000-00-00";
    const auto put = [&](std::size_t last, unsigned v) {
        for (std::size_t i = last; v > 0; --i, v /= 10U) {
            text[i] = static_cast<char>('0' + v % 10U);
        }
    };
    put(3, static_cast<unsigned>(static_cast<int>(ymd.year())) % 10000U);
    put(6, static_cast<unsigned>(ymd.month()) % 100U);
    put(9, static_cast<unsigned>(ymd.day()) % 100U);
    return text;
}

/// `d` in words: "14 January 2027".
[[nodiscard]] inline std::string in_words(const date& d) {
    constexpr const char* months[] = {"January",   "February", "March",    "April",
                                      "May",       "June",     "July",     "August",
                                      "September", "October",  "November", "December"};
    const std::chrono::year_month_day ymd{d};
    return std::to_string(static_cast<unsigned>(ymd.day())) + " " +
           months[static_cast<unsigned>(ymd.month()) - 1] + " " +
           std::to_string(static_cast<int>(ymd.year()));
}

/// `from` plus whole days, a part of a day dropped: a coat due on day 33.8 is due by day 33.
[[nodiscard]] inline date plus(const date& from, const days& d) {
    constexpr double far = 1e6;  // days: beyond that, and at never, no calendar counts
    const double v = std::floor(in_days(d));
    const double whole = std::isnan(v) ? 0.0 : v > far ? far : v < -far ? -far : v;
    return from + std::chrono::days{static_cast<int>(whole)};
}

/// Days from `a` to `b`, negative if `b` is earlier.
[[nodiscard]] inline days between(const date& a, const date& b) {
    return day(static_cast<double>((b - a).count()));
}

}  // namespace pelage
