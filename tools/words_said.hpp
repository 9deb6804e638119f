// What an option says, word by word.
#pragma once

#include <algorithm>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/length_text.hpp>

namespace pelage::cli {

using strings = std::vector<std::string>;

/// The words of a text; colons and commas between them don't matter.
[[nodiscard]] inline strings split(const std::string& text) {
    strings out(1);
    for (const char c : text) {
        if (c == ' ' || c == '\t' || c == ':' || c == ',' || c == ';') {
            out.emplace_back();
        } else {
            out.back() += c;
        }
    }
    std::erase(out, "");
    return out;
}

/// The pieces between every `at`, but for a comma between two digits: that is somebody's decimal point.
[[nodiscard]] inline strings split_at(const std::string& text, char at) {
    strings out{{}};
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool decimal = at == ',' && i > 0 && i + 1 < text.size() &&
                             detail::is_digit(text[i - 1]) && detail::is_digit(text[i + 1]);
        if (text[i] == at && !decimal) {
            out.emplace_back();
        } else {
            out.back() += text[i];
        }
    }
    std::erase_if(out, [](const std::string& w) { return detail::trimmed(w).empty(); });
    return out;
}

/// Whether one of the words is one of these.
[[nodiscard]] inline bool any_of_these(const strings& words,
                                       std::initializer_list<std::string_view> these) {
    return std::any_of(words.begin(), words.end(), [&](const std::string& w) {
        return std::find(these.begin(), these.end(), w) != these.end();
    });
}

/// Words `from` to `to`, that one left out, as one text.
[[nodiscard]] inline std::string phrase(const strings& words, std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t i = from; i < to; ++i) {
        out += (out.empty() ? "" : " ") + words[i];
    }
    return out;
}

}  // namespace pelage::cli
