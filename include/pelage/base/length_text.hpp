// Lengths as people write and read them. Pure text: no files, no locale.
#pragma once

#include <charconv>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/length_unit.hpp>
#include <pelage/base/units.hpp>

namespace pelage {

/// What became of a text that should be a length.
enum class length_fault { none, not_a_number, no_unit, unknown_unit, out_of_range };

/// A length as a person writes it, or what is wrong with it.
struct parsed_length {
    length value{};                                                        ///< where it is one
    length_fault fault = length_fault::none;                               ///< none where it is one
    std::string unit;                                                      ///< the unit as found
    [[nodiscard]] bool ok() const { return fault == length_fault::none; }  ///< it is a length
};

namespace detail {

[[nodiscard]] constexpr bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

[[nodiscard]] inline std::string_view trimmed(std::string_view s, std::string_view blanks = " \t") {
    const auto first = s.find_first_not_of(blanks);
    if (first == std::string_view::npos) {
        return {};
    }
    return s.substr(first, s.find_last_not_of(blanks) - first + 1);
}

/// A plain decimal at the start of `s`: digits with one point, no sign, exponent, hex or nan.
[[nodiscard]] inline std::optional<double> take_decimal(std::string_view& s) {
    std::size_t n = 0;
    bool digits = false;
    bool point = false;
    while (n < s.size() && (is_digit(s[n]) || (s[n] == '.' && !point))) {
        digits = digits || is_digit(s[n]);
        point = point || s[n] == '.';
        ++n;
    }
    if (!digits || n > 18) {
        return std::nullopt;
    }
    double v = 0.0;
    const std::string_view number = s.substr(0, n);
    const auto r = std::from_chars(number.data(), number.data() + number.size(), v);
    if (r.ec != std::errc{}) {
        return std::nullopt;
    }
    s.remove_prefix(static_cast<std::size_t>(r.ptr - number.data()));
    return v;
}

/// "1/2", "1 1/4", "9.5": a number with the trade's fractions at the start of `s`, as n/d.
struct fraction {
    double whole = 0.0;
    int n = 0;
    int d = 1;
};
[[nodiscard]] inline std::optional<fraction> take_fraction(std::string_view& s) {
    const auto whole = take_decimal(s);
    if (!whole) {
        return std::nullopt;
    }
    const auto small = [](double v) { return v == std::floor(v) && v <= 999.0; };
    if (!s.empty() && s.front() == '/') {
        std::string_view rest = s.substr(1);
        const auto d = take_decimal(rest);
        if (!d || !small(*whole) || !small(*d) || *d < 1.0) {
            return std::nullopt;
        }
        s = rest;
        return fraction{0.0, static_cast<int>(*whole), static_cast<int>(*d)};
    }
    std::string_view rest = trimmed(s);
    if (small(*whole) && !rest.empty() && is_digit(rest.front()) && rest.size() != s.size()) {
        auto part = take_fraction(rest);
        if (part && part->whole == 0.0 && part->d > 1) {
            s = rest;
            part->whole = *whole;
            return part;
        }
    }
    return fraction{*whole, 0, 1};
}

[[nodiscard]] inline std::string fixed(double v, int digits) {
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", digits, v);
    return text;
}

/// Minutes without a part of one: "45".
[[nodiscard]] inline std::string whole_minutes(const work& w) {
    return fixed(in_minutes(w), 0);
}

}  // namespace detail

/// A length with its unit: "13 mm", "9.5mm", "1.3 cm", "3/8 in", "1 1/4 inch", "1/2\"". From 0 (not
/// included) to 1000 mm. Decimal point, not comma; no sign.
[[nodiscard]] inline parsed_length parse_length(std::string_view text) {
    std::string_view s = detail::trimmed(text);
    // no length is that long, and a fraction is read by recursion
    const auto f = s.size() <= 64 ? detail::take_fraction(s) : std::nullopt;
    if (!f) {
        return {{}, length_fault::not_a_number, {}};
    }
    const std::string unit{detail::trimmed(s)};
    const bool inches = unit == "in" || unit == "inch" || unit == "inches" || unit == "\"";
    const double plain = f->whole + static_cast<double>(f->n) / f->d;
    length value = mm(plain);
    if (unit.empty()) {
        return {value, length_fault::no_unit, {}};
    }
    if (inches) {
        value = mm(127.0 * (f->whole * f->d + f->n) / (5.0 * f->d));
    } else if (unit == "cm") {
        value = mm(plain * 10.0);
    } else if (unit != "mm") {
        return {value, length_fault::unknown_unit, unit};
    }
    if (!(in_mm(value) >= 0.01 && in_mm(value) <= 1000.0)) {  // plans compare at 0.01 mm
        return {value, length_fault::out_of_range, unit};
    }
    return {value, length_fault::none, unit};
}

/// What is wrong with a length, in words; empty if nothing is.
[[nodiscard]] inline std::string complaint(const parsed_length& p, std::string_view text) {
    const std::string found{text};
    switch (p.fault) {
        case length_fault::none:
            return {};
        case length_fault::no_unit:
            return "a length needs its unit; found \"" + found + "\"; write \"" + found +
                   " mm\" or \"" + found + " in\"";
        case length_fault::unknown_unit:
            if (p.unit.front() == ',') {
                std::string right = found;
                right[right.find(',')] = '.';
                return "a decimal point is a point; found \"" + found + "\"; write \"" + right +
                       "\"";
            }
            return "unknown unit of length \"" + p.unit + "\"; found \"" + found +
                   "\"; write mm, cm or in";
        case length_fault::out_of_range:
            return "a length must be from 0.01 to 1000 mm; found \"" + found + "\"";
        case length_fault::not_a_number:
            break;
    }
    return "not a length; found \"" + found + "\"; write it like \"13 mm\" or \"1/2 in\"";
}

/// A number of millimetres for the screen: to 0.01 under 1, 0.1 under 10, whole above; zeros that
/// say nothing dropped ("13", "3.2", "0.25").
[[nodiscard]] inline std::string number(const length& l) {
    const double v = in_mm(l);
    std::string s = v < 0.995  ? detail::fixed(v, 2)
                    : v < 9.95 ? detail::fixed(v, 1)
                               : detail::fixed(v, 0);
    if (s.find('.') != std::string::npos) {
        s.erase(s.find_last_not_of('0') + 1);
        if (s.back() == '.') {
            s.pop_back();
        }
    }
    return s;
}

/// Inches as the trade's fraction: sixteenths from 1/8 up, thirty-seconds and sixty-fourths below
/// ("1/2", "1 1/4", "7/64"); under 1/32 the nearest whole part ("1/50").
[[nodiscard]] inline std::string fraction_of_inch(const length& l) {
    const double inches = in_mm(l) / 25.4;
    if (inches < 0.98 / 32.0) {
        return inches > 0.0 ? "1/" + detail::fixed(1.0 / inches, 0) : "0";
    }
    int d = inches >= 7.5 / 64.0 ? 16 : 64;
    auto n = static_cast<int>(std::lround(inches * d));
    while (d > 1 && n % 2 == 0) {
        n /= 2;
        d /= 2;
    }
    const int whole = n / d;
    std::string part = d == 1 || n % d == 0 ? "" : std::to_string(n % d) + "/" + std::to_string(d);
    if (whole == 0) {
        return part;
    }
    return part.empty() ? std::to_string(whole) : std::to_string(whole) + " " + part;
}

/// "13 mm" or "1/2 in".
[[nodiscard]] inline std::string show(const length& l, length_unit u = length_unit::mm) {
    return u == length_unit::mm ? number(l) + " mm" : fraction_of_inch(l) + " in";
}

}  // namespace pelage
