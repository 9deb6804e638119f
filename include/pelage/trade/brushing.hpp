// How often the owner brushes, and whether the brush reaches the skin.
#pragma once

#include <array>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include <pelage/base/length_text.hpp>

namespace pelage {

/// Brushing at home, from none to daily.
enum class habit { none, weekly, two_or_three, every_other_day, daily };
inline constexpr std::array<std::string_view, 5> habit_names{
    "none", "weekly", "two or three times a week", "every other day", "daily"};
[[nodiscard]] constexpr std::string_view name(habit h) {
    return habit_names[static_cast<std::size_t>(h)];
}

/// What the owner does. Brushing that doesn't reach the skin counts as none (common practice).
struct brushing {
    habit how_often = habit::none;  ///< at home
    bool to_skin = true;            ///< else the surface alone, which counts as none
    friend bool operator==(const brushing&, const brushing&) = default;
};

/// The habit that counts: surface brushing equals none.
[[nodiscard]] constexpr habit counted(const brushing& b) {
    return b.to_skin ? b.how_often : habit::none;
}

/// Every `n` days as a habit: 1 daily, 2 every other day, 3 two or three a week, 4-7 weekly, above
/// that none. `n` >= 1.
[[nodiscard]] constexpr habit every(int n) {
    if (n <= 1) {
        return habit::daily;
    }
    if (n == 2) {
        return habit::every_other_day;
    }
    if (n == 3) {
        return habit::two_or_three;
    }
    return n <= 7 ? habit::weekly : habit::none;
}

/// "two or three times a week to the skin".
[[nodiscard]] inline std::string title(const brushing& b) {
    if (b.how_often == habit::none) {
        return "no brushing at home";
    }
    const std::string often = b.how_often == habit::daily    ? "brushed daily"
                              : b.how_often == habit::weekly ? "brushed weekly"
                              : b.how_often == habit::two_or_three
                                  ? "brushed two or three times a week"
                                  : "brushed every other day";
    return often + (b.to_skin ? " to the skin" : " on the surface only");
}

/// "none", "daily to the skin", "every 3 days to the skin", "weekly on the surface", "2-3 times a
/// week to the skin": how an owner's brushing is written. Nothing for anything else, and nothing
/// where it isn't said how far the brush reaches.
[[nodiscard]] inline std::optional<brushing> parse_brushing(std::string_view text) {
    std::string_view s = detail::trimmed(text);
    if (s == "none" || s == "never") {
        return brushing{habit::none, false};
    }
    const auto ends = [&](std::string_view tail) {
        if (s.size() > tail.size() && s.substr(s.size() - tail.size()) == tail) {
            s = detail::trimmed(s.substr(0, s.size() - tail.size()));
            return true;
        }
        return false;
    };
    const bool skin = ends("to the skin");
    if (!skin && !ends("on the surface")) {
        return std::nullopt;
    }
    if (s == "daily" || s == "every day") {
        return brushing{habit::daily, skin};
    }
    if (s == "every other day") {
        return brushing{habit::every_other_day, skin};
    }
    if (s == "weekly" || s == "every week" || s == "once a week") {
        return brushing{habit::weekly, skin};
    }
    if (s == "two or three times a week" || s == "twice a week" || s == "three times a week" ||
        s == "2-3 times a week") {
        return brushing{habit::two_or_three, skin};
    }
    if (s.substr(0, 6) == "every " && s.size() > 11 && s.substr(s.size() - 5) == " days") {
        std::string_view number = s.substr(6, s.size() - 11);
        const auto n = detail::take_decimal(number);
        if (n && number.empty() && *n >= 1.0 && *n <= 365.0 && *n == std::floor(*n)) {
            return brushing{every(static_cast<int>(*n)), skin};
        }
    }
    return std::nullopt;
}

}  // namespace pelage
