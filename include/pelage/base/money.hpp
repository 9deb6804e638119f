// An amount of money as a salon writes it: "60", "24.50 EUR". Nothing is converted.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace pelage {

/// An amount in hundredths, not below 0, with its currency if somebody said it.
struct money {
    std::int64_t hundredths = 0;  ///< of the currency's unit
    std::string currency{};       ///< at most 8 characters, no digits; empty: not said
    friend bool operator==(const money&, const money&) = default;
};

/// The amount written in `text`, rounded to hundredths and below 10 000 000; none if it isn't one.
[[nodiscard]] std::optional<money> parse_money(std::string_view text);

/// "24.50 EUR"; "60" where nothing is behind the point.
[[nodiscard]] std::string show(const money& m);

}  // namespace pelage
