// What a case wants, what the library gives, and whether the two agree.
#pragma once

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <limits>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "chk.hpp"

namespace chk {

/// A case that asks for what its quantity does not have, or in another unit: a fault of the case.
class bad_case : public std::runtime_error {
  public:
    using std::runtime_error::runtime_error;
};

/// A number with its unit: mm, d, mm/d, min, deg, or none.
struct measure {
    double v = 0.0;
    std::string unit;
};

/// What the library answers: a number with its unit, or a word such as "never".
using answer = std::variant<measure, std::string>;

/// What a case wants: a number (low == high), a band with both ends included, or a word.
struct wish {
    double low = 0.0;
    double high = 0.0;
    std::string unit;
    std::optional<std::string> word;
};

[[nodiscard]] inline bool known_unit(std::string_view u) {
    return u.empty() || u == "mm" || u == "d" || u == "mm/d" || u == "min" || u == "deg";
}

/// "9.5mm", "0.9", "45deg". Throws bad_case for anything else.
[[nodiscard]] inline measure parse_measure(std::string_view text) {
    double v = 0.0;
    const auto r = std::from_chars(text.data(), text.data() + text.size(), v);
    const std::string unit(r.ptr, text.data() + text.size());
    if (r.ec != std::errc{} || !std::isfinite(v) || !known_unit(unit)) {
        throw bad_case("not a number with a unit (mm, d, mm/d, min, deg): '" + std::string(text) +
                       "'");
    }
    return {v, unit};
}

/// "9.5mm", "28d..35d" or a word. A text that begins like a number must be one.
[[nodiscard]] inline wish parse_wish(std::string_view text) {
    const bool numeric = (text.front() >= '0' && text.front() <= '9') || text.front() == '-';
    if (!numeric) {
        return {0.0, 0.0, {}, std::string(text)};
    }
    const auto dots = text.find("..");
    const measure low = parse_measure(text.substr(0, dots));
    const measure high =
        dots == std::string_view::npos ? low : parse_measure(text.substr(dots + 2));
    if (low.unit != high.unit || low.v > high.v) {
        throw bad_case("a band runs from low to high in one unit: '" + std::string(text) + "'");
    }
    return {low.v, high.v, low.unit, std::nullopt};
}

[[nodiscard]] inline std::string show(double v) {
    char text[40];
    std::snprintf(text, sizeof text, "%.12g", v);
    return text;
}
[[nodiscard]] inline std::string show(double v, const std::string& unit) {
    return unit.empty() ? show(v) : show(v) + " " + unit;
}
[[nodiscard]] inline std::string show(const answer& a) {
    const auto* m = std::get_if<measure>(&a);
    return m != nullptr ? show(m->v, m->unit) : std::get<std::string>(a);
}
[[nodiscard]] inline std::string show(const wish& w) {
    if (w.word) {
        return *w.word;
    }
    return w.low == w.high ? show(w.low, w.unit) : show(w.low) + " to " + show(w.high, w.unit);
}

/// How far `v` lies outside the wish, in its unit or as a share of what is wanted.
[[nodiscard]] inline double off_by(const wish& w, double v, const tolerance& t) {
    if (v >= w.low && v <= w.high) {
        return 0.0;
    }
    const double end = v < w.low ? w.low : w.high;
    const double off = std::abs(v - end);  // not a number for what is not a number
    return t.relative() ? off / std::abs(end) : off;
}

/// What is wrong with the answer; nothing if it is what was wanted. Throws bad_case where the units
/// of wish, answer and tolerance don't go together.
[[nodiscard]] inline std::optional<std::string> complaint(const wish& w, const answer& got,
                                                          const tolerance& t) {
    const auto* m = std::get_if<measure>(&got);
    const std::string both = "want " + show(w) + ", got " + show(got);
    if (w.word || m == nullptr) {
        const bool same = w.word && m == nullptr && *w.word == std::get<std::string>(got);
        return same ? std::nullopt : std::optional{both};
    }
    if (w.unit != m->unit) {
        throw bad_case(both + ": another unit");
    }
    if (!t.exact() && !t.relative() && t.unit != (w.unit.empty() ? "1" : w.unit)) {
        throw bad_case("a tolerance in " + t.unit + " for " + show(w));
    }
    const double off = off_by(w, m->v, t);
    if (off <= t.most) {
        return std::nullopt;
    }
    return both + ", off by " + show(off) + " (tolerance " +
           show(t.most, t.exact() ? w.unit : t.unit) + ")";
}

/// The wish moved just out of reach, up and down: a number by three tolerances (the next double
/// where it must be exact), a band past its own ends, a word to another. Whatever fulfils the wish
/// fulfils none of these, if the checking is any good.
[[nodiscard]] inline std::vector<wish> nudged(const wish& w, const tolerance& t) {
    if (w.word) {
        return {{0.0, 0.0, {}, "not-" + *w.word}};
    }
    const double scale = std::max(std::abs(w.low), std::abs(w.high));
    const double step = 3.0 * (t.relative() ? t.most * scale : t.most);
    const double width = w.high - w.low;
    constexpr double up = std::numeric_limits<double>::infinity();
    const double above = t.exact() ? std::nextafter(w.high, up) : w.high + step;
    const double below = t.exact() ? std::nextafter(w.low, -up) : w.low - step;
    return {{above, above + width, w.unit, std::nullopt},
            {below - width, below, w.unit, std::nullopt}};
}

}  // namespace chk
