// What a dog weighs, as people write and read it: kept from visit to visit, since a dog that grows thin or
// fat is told of. No plan reckons with it.
#pragma once

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include <pelage/base/length_text.hpp>

namespace pelage {

/// A weight in whole grams, so that what is written and read again is the same.
struct weight {
    std::int32_t grams = 0;  ///< over 0
    friend bool operator==(const weight&, const weight&) = default;
};

/// "12.5 kg", "900 g", "27 lb": from 100 g to 200 kg, beyond which it is a slip (assumption). A pound is
/// 453.59237 g exactly (international pound, 1959; NIST SP 811). Nothing for anything else.
[[nodiscard]] inline std::optional<weight> parse_weight(std::string_view text) {
    std::string_view s = detail::trimmed(text);
    const auto number = detail::take_decimal(s);
    const std::string_view unit = detail::trimmed(s);
    const double gram = unit == "kg"                                        ? 1000.0
                        : unit == "g"                                       ? 1.0
                        : unit == "lb" || unit == "lbs" || unit == "pounds" ? 453.59237
                                                                            : 0.0;
    const double grams = number ? *number * gram : 0.0;
    if (!(grams >= 100.0 && grams <= 200'000.0)) {
        return std::nullopt;
    }
    return weight{static_cast<std::int32_t>(std::lround(grams))};
}

/// "12.5 kg", as a file holds it: to the gram, no zeros at its end.
[[nodiscard]] inline std::string title(const weight& w) {
    std::string kg = detail::fixed(static_cast<double>(w.grams) / 1000.0, 3);
    while (kg.back() == '0') {
        kg.pop_back();
    }
    if (kg.back() == '.') {
        kg.pop_back();
    }
    return kg + " kg";
}

/// What is wrong with a text that is no weight, and what would be right.
[[nodiscard]] inline std::string weight_complaint(const std::string& text) {
    return "no weight of a dog; found \"" + text +
           "\"; write it with its unit, as 12.5 kg or 27 lb";
}

}  // namespace pelage
