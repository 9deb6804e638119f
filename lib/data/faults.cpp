#include "data/faults.hpp"

#include <algorithm>
#include <cstdint>
#include <iterator>

#include <fmt/format.h>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>

namespace pelage::io {

namespace {

/// The code point at `at`, which is moved behind it. A byte that begins none stands for itself.
std::uint32_t next_point(std::string_view s, std::size_t& at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
    const std::uint32_t first = byte(at++);
    const std::size_t more = first >= 0xF0U ? 3 : first >= 0xE0U ? 2 : first >= 0xC0U ? 1 : 0;
    std::uint32_t point = more == 0 ? first : first & (0x3FU >> more);
    for (std::size_t i = 0; i < more && at < s.size() && (byte(at) & 0xC0U) == 0x80U; ++i) {
        point = point << 6U | (byte(at++) & 0x3FU);
    }
    return point;
}

bool is_control(std::uint32_t p) {
    return p < 0x20U || (p >= 0x7FU && p < 0xA0U) || p == 0x2028U || p == 0x2029U ||
           (p >= 0x202AU && p <= 0x202EU) || (p >= 0x2066U && p <= 0x2069U) ||
           (p & 0xFFFEU) == 0xFFFEU;  // no characters: nothing on the web may hold them
}

std::string escape(std::uint32_t p) {
    switch (p) {
        case '\n':
            return "\\n";
        case '\t':
            return "\\t";
        case '\r':
            return "\\r";
        default:
            return fmt::format("\\u{:04X}", p);
    }
}

}  // namespace

std::string escaped(std::string_view s, std::size_t most) {
    std::string out;
    std::size_t at = 0;
    for (std::size_t n = 0; at < s.size(); ++n) {
        if (n == most) {
            return out + "…";
        }
        const std::size_t from = at;
        const std::uint32_t p = next_point(s, at);
        if (is_control(p)) {
            out += escape(p);
        } else {
            out += s.substr(from, at - from);
        }
    }
    return out;
}

std::string shown(std::string_view s) {
    return '"' + escaped(s, 60) + '"';
}

std::size_t characters(std::string_view s) {
    return static_cast<std::size_t>(std::count_if(s.begin(), s.end(), [](char c) {
        return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U;
    }));
}

bool has_control(std::string_view s, bool lines) {
    if (std::all_of(s.begin(), s.end(), [](char c) { return c >= ' ' && c <= '~'; })) {
        return false;
    }
    for (std::size_t at = 0; at < s.size();) {
        const std::uint32_t p = next_point(s, at);
        if (is_control(p) && !(lines && (p == '\n' || p == '\t'))) {
            return true;
        }
    }
    return false;
}

std::string faults::setting(std::string_view key, std::string_view value) const {
    return how_ == notation::json_text ? fmt::format("\"{}\": {}", key, value)
                                       : fmt::format("{} = {}", key, value);
}

std::string faults::heading(std::string_view key) const {
    return how_ == notation::json_text ? fmt::format("\"{}\"", key) : fmt::format("[{}]", key);
}

std::string faults::table(std::string_view path, std::string_view key, bool many) const {
    if (how_ == notation::json_text) {
        return fmt::format("\"{}\": {}", key, many ? "[{...}]" : "{...}");
    }
    return fmt::format("{}{}{}{} with its keys below", many ? "[[" : "[", path, key,
                       many ? "]]" : "]");
}

std::string_view faults::day() const {
    return how_ == notation::json_text ? "\"2026-03-14\"" : "2026-03-14";
}

void faults::add(const spot& at, errc code, std::string text) {
    if (all_.size() < most) {
        all_.push_back({file_, at.line, at.column, code, std::move(text)});
    } else if (all_.size() == most) {
        all_.push_back({file_, at.line, at.column, code,
                        fmt::format("more than {} faults; the rest is not listed", most)});
    }
}

void faults::add_unknown(const spot& at, std::string_view what, std::string_view word,
                         const std::vector<std::string>& names) {
    constexpr std::size_t few = 16;
    constexpr std::size_t longest = 40;  // no name is as long
    std::string text = fmt::format("{}; found {}", what, shown(word));
    // looking for the nearest name takes time: a file full of faults gets fewer hints
    const std::string near =
        word.size() <= longest && ++looked_up_ <= 100 ? nearest_name(word, names) : "";
    if (!near.empty()) {
        text += "; did you mean \"" + near + "\"?";
    } else if (!names.empty() && names.size() <= few) {
        text += "; right would be " + one_of(names);
    }
    add(at, errc::unknown, std::move(text));
}

void faults::move_to(diagnostics& to) {
    std::stable_sort(all_.begin(), all_.end());
    std::move(all_.begin(), all_.end(), std::back_inserter(to));
    all_.clear();
}

}  // namespace pelage::io
