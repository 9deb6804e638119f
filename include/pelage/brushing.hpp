// How often the owner brushes, and whether the brush reaches the skin.
#pragma once

#include <array>
#include <string>
#include <string_view>

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
    habit how_often = habit::none;
    bool to_skin = true;
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

}  // namespace pelage
