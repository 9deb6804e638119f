#include "answers/layout.hpp"

#include <algorithm>
#include <array>

#include <utf8proc.h>

namespace pelage::io {

std::size_t columns(std::string_view s) {
    std::size_t n = 0;
    const auto* at = reinterpret_cast<const utf8proc_uint8_t*>(s.data());
    auto left = static_cast<utf8proc_ssize_t>(s.size());
    while (left > 0) {
        utf8proc_int32_t c = 0;
        const utf8proc_ssize_t took = utf8proc_iterate(at, left, &c);
        if (took <= 0) {  // not UTF-8: a byte is shown as one mark
            ++at;
            --left;
            ++n;
            continue;
        }
        n += static_cast<std::size_t>(std::max(0, utf8proc_charwidth(c)));
        at += took;
        left -= took;
    }
    return n;
}

std::string padded(std::string_view s, std::size_t n, bool right_aligned) {
    const std::size_t has = columns(s);
    const std::string blank(has < n ? n - has : 0, ' ');
    return right_aligned ? blank + std::string(s) : std::string(s) + blank;
}

namespace {

bool only(std::string_view s, std::string_view of) {
    return !s.empty() && s.find_first_not_of(of) == std::string_view::npos;
}

/// Whether two words are parts of one measure or one name: "1" and "1/4", "1/4" and "in,", "10" and "min",
/// "blade" and "9:", "over" and "30,", "day" and "24)", "25" and "Dec".
bool one_piece(std::string_view a, std::string_view b) {
    a.remove_prefix(std::min(a.find_first_not_of('('), a.size()));
    b = b.substr(0, b.find_last_not_of(".,;:)") + 1);
    const bool fraction = only(b, "0123456789/") && b.find('/') != std::string_view::npos;
    constexpr std::string_view digits = "0123456789";
    constexpr std::array<std::string_view, 12> months{"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                                      "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    const bool month_before = std::find(months.begin(), months.end(), a) != months.end();
    const bool month = std::find(months.begin(), months.end(), b) != months.end();
    const bool named = b.size() <= 4 && b.find_first_of(digits) == 0;
    return (only(a, digits) && (fraction || month)) || (month_before && only(b, digits)) ||
           (only(a, "0123456789./") && (b == "in" || b == "mm" || b == "min")) ||
           ((a == "blade" || a == "comb" || a == "over" || a == "day") && named);
}

/// The words of a text; a measure with its unit is one, so that no line ends within it.
std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> out;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t from = text.find_first_not_of(' ', at);
        if (from == std::string_view::npos) {
            break;
        }
        at = std::min(text.find(' ', from), text.size());
        const std::string_view word = text.substr(from, at - from);
        const std::string_view before =
            out.empty() ? std::string_view{}
                        : std::string_view(out.back()).substr(out.back().rfind(' ') + 1);
        if (one_piece(before, word)) {
            out.back() += ' ' + std::string(word);
        } else {
            out.emplace_back(word);
        }
    }
    return out;
}

/// A word in pieces no wider than `room`, none cut inside a character.
std::vector<std::string> pieces_of(const std::string& word, std::size_t room) {
    if (columns(word) <= room) {
        return {word};
    }
    std::vector<std::string> out{""};
    for (std::size_t at = 0; at < word.size();) {
        std::size_t end = at + 1;
        while (end < word.size() && (static_cast<unsigned char>(word[end]) & 0xC0U) == 0x80U) {
            ++end;
        }
        const std::string one = word.substr(at, end - at);
        if (!out.back().empty() && columns(out.back() + one) > room) {
            out.emplace_back();
        }
        out.back() += one;
        at = end;
    }
    return out;
}

std::vector<std::string> broken(std::string_view text, std::size_t first_room, std::size_t room) {
    std::vector<std::string> lines{""};
    std::size_t left = first_room;
    std::vector<std::string> words;
    for (const std::string& w : words_of(text)) {
        const auto pieces = pieces_of(w, room);
        words.insert(words.end(), pieces.begin(), pieces.end());
    }
    for (const std::string& w : words) {
        const std::size_t need = columns(w) + (lines.back().empty() ? 0 : 1);
        // a word that doesn't fit behind what stands first has the next line, where that is longer
        const bool too_long_there = lines.size() == 1 && need > left && room > first_room;
        if (need > left && (!lines.back().empty() || too_long_there)) {
            lines.emplace_back(w);
            left = room - std::min(room, columns(w));
            continue;
        }
        lines.back() += (lines.back().empty() ? "" : " ") + w;
        left -= std::min(left, need);
    }
    return lines;
}

}  // namespace

std::string kept_together(std::string_view text) {
    std::string out;
    for (const char c : text) {
        out += c == ' ' ? std::string(no_break) : std::string(1, c);
    }
    return out;
}

namespace {

/// Once lines are broken, a space that doesn't break is one as any other.
std::string plain_spaces(std::string text) {
    for (std::size_t at = 0; (at = text.find(no_break, at)) != std::string::npos; ++at) {
        text.replace(at, no_break.size(), " ");
    }
    return text;
}

}  // namespace

std::string wrapped(std::string_view first, std::string_view text, std::size_t indent,
                    std::size_t width) {
    const std::size_t used = columns(first);
    const auto lines =
        broken(text, width > used ? width - used : 1, width > indent ? width - indent : 1);
    std::string out{first};
    if (lines.front().empty()) {
        out.erase(out.find_last_not_of(' ') + 1);  // of blanks alone nothing is left
        out += out.empty() ? "" : "\n";
    }
    for (std::size_t i = lines.front().empty() ? 1 : 0; i < lines.size(); ++i) {
        out += (i == 0 ? "" : std::string(indent, ' ')) + plain_spaces(lines[i]) + "\n";
    }
    return out;
}

namespace {

/// How wide each column is at its widest.
std::vector<std::size_t> widths(const table& t) {
    std::vector<std::size_t> wide(t.head.size(), 0);
    const auto measure = [&](const std::vector<std::string>& row) {
        for (std::size_t i = 0; i < row.size() && i < wide.size(); ++i) {
            wide[i] = std::max(wide[i], columns(row[i]));
        }
    };
    measure(t.head);
    std::for_each(t.rows.begin(), t.rows.end(), measure);
    return wide;
}

}  // namespace

bool fits(const table& t, std::size_t width) {
    constexpr std::size_t least = 12;  // of the last column, which is wrapped
    const std::vector<std::size_t> wide = widths(t);
    std::size_t needs = t.indent;
    for (std::size_t i = 0; i + 1 < wide.size(); ++i) {
        needs += wide[i] + 2;
    }
    return wide.empty() || needs + std::min(wide.back(), least) <= width;
}

std::string laid_out(const table& t, std::size_t width) {
    const std::vector<std::size_t> wide = widths(t);
    std::string out;
    const auto line = [&](const std::vector<std::string>& row) {
        std::string first(t.indent, ' ');
        for (std::size_t i = 0; i + 1 < row.size(); ++i) {
            const bool right = i < t.numbers.size() && t.numbers[i];
            first += padded(row[i], wide[i], right) + "  ";
        }
        const bool right = row.size() <= t.numbers.size() && t.numbers[row.size() - 1];
        const std::string last = right ? padded(row.back(), wide.back(), true) : row.back();
        std::string text =
            right ? first + last + "\n" : wrapped(first, last, columns(first), width);
        // a row that ends in an empty cell should not end in blanks
        const auto end = text.find_last_not_of(" \n");
        text.erase(end == std::string::npos ? 0 : end + 1);
        out += text + "\n";
    };
    line(t.head);
    std::for_each(t.rows.begin(), t.rows.end(), line);
    return out;
}

}  // namespace pelage::io
