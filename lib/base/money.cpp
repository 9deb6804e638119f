#include <cmath>

#include <pelage/base/length_text.hpp>
#include <pelage/base/money.hpp>

namespace pelage {

std::optional<money> parse_money(std::string_view text) {
    constexpr double most = 1e7;
    constexpr std::size_t longest = 8;
    std::string_view rest = detail::trimmed(text);
    const auto amount = detail::take_decimal(rest);
    const std::string_view currency = detail::trimmed(rest);
    const bool word = currency.find_first_of("0123456789") == std::string_view::npos;
    if (!amount || *amount >= most || currency.size() > longest || !word) {
        return std::nullopt;
    }
    return money{std::llround(*amount * 100.0), std::string(currency)};
}

std::string show(const money& m) {
    std::string text = std::to_string(m.hundredths / 100);
    if (const std::int64_t rest = m.hundredths % 100; rest != 0) {
        text += (rest < 10 ? ".0" : ".") + std::to_string(rest);
    }
    return m.currency.empty() ? text : text + " " + m.currency;
}

}  // namespace pelage
