// Words, ids and days, as files write them.
#include <algorithm>

#include <fmt/format.h>

#include "data/table_reader.hpp"

namespace pelage::io {

namespace {

/// What a value that isn't text should look like.
std::string right_text(const node& n, std::string_view key, const faults& out) {
    const bool number = n.kind == node_kind::whole || n.kind == node_kind::real;
    return number ? out.setting(key, '"' + found(n) + '"') : std::string("it in quotes");
}

}  // namespace

std::string named(std::string_view key) {
    return fmt::format("\"{}\"", escaped(key, 60));
}

std::string id_like(std::string_view s) {
    std::string out;
    for (const char c : s.substr(0, 64)) {
        const char low = c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c;
        const bool letter = low >= 'a' && low <= 'z';
        const bool digit = low >= '0' && low <= '9';
        if (letter || digit) {
            out += low;
        } else if (!out.empty() && out.back() != '-') {
            out += '-';
        }
    }
    while (!out.empty() && out.back() == '-') {
        out.pop_back();
    }
    if (out.empty()) {
        return "bella";
    }
    const bool digit_first = out.front() >= '0' && out.front() <= '9';
    return digit_first ? "x-" + out : out;
}

bool is_id(std::string_view s) {
    return !s.empty() && s.size() <= 64 && s.front() >= 'a' && s.front() <= 'z' &&
           std::all_of(s.begin(), s.end(), [](char c) {
               return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
           });
}

std::optional<std::string> text_at(const node& n, std::string_view key, text_kind k, faults& out) {
    constexpr std::size_t longest = 2000;
    if (n.kind != node_kind::text) {
        out.add(n.at, errc::type,
                fmt::format("{} must be text; found {}; write {}", named(key), found(n),
                            right_text(n, key, out)));
        return std::nullopt;
    }
    if (n.text.find_first_not_of(" \t\n") == std::string::npos) {
        out.add(n.at, errc::missing,
                fmt::format("{} is empty; found {}; write something or leave the key out",
                            named(key), found(n)));
        return std::nullopt;
    }
    // no text has more characters than bytes
    if (n.text.size() > longest && characters(n.text) > longest) {
        out.add(n.at, errc::range,
                fmt::format("{} is too long; found {} characters; right are at most {}", named(key),
                            characters(n.text), longest));
        return std::nullopt;
    }
    if (has_control(n.text, k == text_kind::prose)) {
        out.add(n.at, errc::syntax,
                fmt::format("{} holds control characters; found {}; write plain text", named(key),
                            found(n)));
        return std::nullopt;
    }
    std::string text = n.text;
    // prose is laid out anew wherever it is printed
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == '\n' || c == '\t'; }, ' ');
    return text;
}

std::optional<date> day_at(const node& n, std::string_view key, faults& out) {
    std::optional<date> d;
    if (n.kind == node_kind::day) {
        d = n.day;
    } else if (n.kind == node_kind::text) {
        d = parse_date(n.text);
    } else {
        out.add(n.at, errc::type,
                fmt::format("{} must be a day; found {}; write it like {}", named(key), found(n),
                            out.day()));
        return std::nullopt;
    }
    if (!d) {
        out.add(n.at, errc::range,
                fmt::format("{} is no day of the calendar; found {}; write it like {}", named(key),
                            found(n), out.day()));
        return std::nullopt;
    }
    if (!is_near(*d)) {
        out.add(n.at, errc::range,
                fmt::format("{} is too far away; found {}; right is a day from 1990 to 2199",
                            named(key), found(n)));
        return std::nullopt;
    }
    return d;
}

int index_of(const word& w, std::string_view what, names_view names, faults& out) {
    const auto at = std::find(names.begin(), names.end(), w.text);
    if (at != names.end()) {
        return static_cast<int>(at - names.begin());
    }
    out.add_unknown(w.at, fmt::format("unknown {}", what), w.text, {names.begin(), names.end()});
    return -1;
}

}  // namespace pelage::io
