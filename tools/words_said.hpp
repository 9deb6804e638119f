// What an option says, word by word.
#pragma once

#include <string>
#include <vector>

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

/// Words `from` to `to`, that one left out, as one text.
[[nodiscard]] inline std::string phrase(const strings& words, std::size_t from, std::size_t to) {
    std::string out;
    for (std::size_t i = from; i < to; ++i) {
        out += (out.empty() ? "" : " ") + words[i];
    }
    return out;
}

}  // namespace pelage::cli
