#include "answers/markup.hpp"

namespace pelage::io {

std::string text_safe(std::string_view s) {
    std::string out;
    for (std::size_t i = 0; i < s.size(); ++i) {
        const char c = s[i];
        const std::string_view three = s.substr(i, 3);
        // U+202A to U+202E and U+2066 to U+2069 in UTF-8
        const bool turns =
            (three >= "\xE2\x80\xAA" && three <= "\xE2\x80\xAE" && three.size() == 3) ||
            (three >= "\xE2\x81\xA6" && three <= "\xE2\x81\xA9" && three.size() == 3);
        if (turns) {
            i += 2;
        } else if (static_cast<unsigned char>(c) >= 0x20U || c == '\t' || c == '\n') {
            out += c;
        }
    }
    return out;
}

std::string markup_safe(std::string_view s) {
    std::string out;
    for (const char c : text_safe(s)) {
        if (c == '&') {
            out += "&amp;";
        } else if (c == '<') {
            out += "&lt;";
        } else if (c == '>') {
            out += "&gt;";
        } else if (c == '"') {
            out += "&quot;";
        } else if (c == '\'') {
            out += "&#39;";
        } else {
            out += c;
        }
    }
    return out;
}

}  // namespace pelage::io
