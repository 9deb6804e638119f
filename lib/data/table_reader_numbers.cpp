// Numbers with and without their units, as files write them.
#include <array>
#include <cmath>

#include <fmt/format.h>

#include <pelage/base/length_text.hpp>

#include "data/table_reader.hpp"

namespace pelage::io {

namespace {

struct measure_words {
    std::string_view what;     ///< as a sentence begins
    std::string_view unit;     ///< as it is written and printed
    std::string_view also;     ///< another way to write it
    std::string_view example;  ///< where the number found is no help
};

constexpr std::array<measure_words, 6> words_of{{
    {"a length", "mm", "mm", "13"},
    {"a time", "days", "day", "56"},
    {"a time at the table", "min", "minutes", "2"},
    {"a rate of growth", "mm/day", "mm per day", "0.34"},
    {"an angle", "deg", "degrees", "60"},
    {"a number", "", "", "1"},
}};

const measure_words& words(measure m) {
    return words_of[static_cast<std::size_t>(m)];
}

/// What would be right, in quotes where the measure has a unit.
std::string right(measure m, std::string_view digits) {
    return m == measure::number ? std::string(digits)
                                : fmt::format("\"{} {}\"", digits, words(m).unit);
}

std::string plain(double v) {
    return fmt::format("{}", v);
}

std::optional<double> bare_number(const node& n, std::string_view key, measure m, faults& out) {
    const double v = n.kind == node_kind::whole ? static_cast<double>(n.whole) : n.real;
    if (m == measure::number) {
        return v;
    }
    const bool sound = std::isfinite(v) && v > 0.0 && v < 1e6;
    out.add(
        n.at, errc::unit,
        fmt::format("{} needs its unit; found {}; write {}", words(m).what, found(n),
                    out.setting(key, right(m, sound ? plain(v) : std::string(words(m).example)))));
    return std::nullopt;
}

/// "4F" and "10W" are no lengths but what is etched on blades.
std::string blade_hint(const parsed_length& p, const std::string& text) {
    const bool etched = p.fault == length_fault::unknown_unit &&
                        p.unit.find_first_not_of("FCWSfcws") == std::string::npos;
    return etched ? ", or name a blade: blade = \"" + text + "\"" : "";
}

std::optional<double> length_in(const node& n, faults& out) {
    parsed_length p = parse_length(n.text);
    if (p.ok()) {
        return in_mm(p.value);
    }
    p.unit = escaped(p.unit, 20);
    const errc code = p.fault == length_fault::no_unit        ? errc::unit
                      : p.fault == length_fault::unknown_unit ? errc::unit
                      : p.fault == length_fault::out_of_range ? errc::range
                                                              : errc::syntax;
    out.add(n.at, code, complaint(p, escaped(n.text, 60)) + blade_hint(p, n.text));
    return std::nullopt;
}

std::optional<double> with_unit_in(const node& n, measure m, faults& out) {
    std::string_view rest = detail::trimmed(n.text);
    const auto v = detail::take_decimal(rest);
    rest = detail::trimmed(rest);
    if (v && (rest == words(m).unit || rest == words(m).also)) {
        return v;
    }
    if (v && rest.empty()) {
        out.add(n.at, errc::unit,
                fmt::format("{} needs its unit; found {}; write {}", words(m).what, shown(n.text),
                            right(m, plain(*v))));
    } else {
        out.add(n.at, v ? errc::unit : errc::syntax,
                fmt::format("not {}; found {}; write it like {}", words(m).what, shown(n.text),
                            right(m, words(m).example)));
    }
    return std::nullopt;
}

std::optional<double> number_in_quotes(const node& n, std::string_view key, faults& out) {
    std::string_view rest = n.text;
    const auto v = detail::take_decimal(rest);
    out.add(n.at, errc::type,
            fmt::format("a number stands without quotes and unit; found {}; write {}",
                        shown(n.text), out.setting(key, v && rest.empty() ? plain(*v) : "1.0")));
    return std::nullopt;
}

std::optional<double> any_number(const node& n, std::string_view key, measure m, faults& out) {
    if (n.kind == node_kind::whole || n.kind == node_kind::real) {
        return bare_number(n, key, m, out);
    }
    if (n.kind != node_kind::text) {
        out.add(n.at, errc::type,
                fmt::format("\"{}\" must be {}; found {}; write {}", key, words(m).what, found(n),
                            out.setting(key, right(m, words(m).example))));
        return std::nullopt;
    }
    switch (m) {
        case measure::length:
            return length_in(n, out);
        case measure::number:
            return number_in_quotes(n, key, out);
        default:
            return with_unit_in(n, m, out);
    }
}

}  // namespace

std::string found(const node& n) {
    switch (n.kind) {
        case node_kind::table:
            return "a table";
        case node_kind::list:
            return "a list";
        case node_kind::text:
            return shown(n.text);
        case node_kind::whole:
            return fmt::format("{}", n.whole);
        case node_kind::real:
            return plain(n.real);
        case node_kind::truth:
            return n.truth ? "true" : "false";
        case node_kind::day:
            return "the day " + iso(n.day);
        case node_kind::other:
            break;
    }
    return n.text;
}

std::string with_unit(double value, measure m) {
    return m == measure::number ? plain(value) : fmt::format("{} {}", value, words(m).unit);
}

std::optional<double> number_at(const node& n, std::string_view key, measure m, const bounds& b,
                                faults& out) {
    const auto v = any_number(n, key, m, out);
    if (!v) {
        return std::nullopt;
    }
    // written so that nan fails
    if (!((b.low_too ? *v >= b.low : *v > b.low) && *v <= b.high)) {
        out.add(n.at, errc::range,
                fmt::format("\"{}\" is out of range; found {}; right is {} {} {} {}", key, found(n),
                            b.low_too ? "from" : "over", plain(b.low),
                            b.low_too ? "to" : "and at most", with_unit(b.high, m)));
        return std::nullopt;
    }
    return v;
}

}  // namespace pelage::io
