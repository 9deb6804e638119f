#include "printable.hpp"

#include <utf8proc.h>

namespace pelage::cli {

namespace {

/// How many bytes at `at` are one character that may be shown; none for a control character, a change of
/// the direction of writing, and what isn't UTF-8.
std::size_t printable_bytes(const std::string& text, std::size_t at) {
    utf8proc_int32_t c = 0;
    const auto took = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()) + at,
                                       static_cast<utf8proc_ssize_t>(text.size() - at), &c);
    if (took <= 0) {
        return 0;
    }
    const utf8proc_category_t kind = utf8proc_category(c);
    const bool hidden = kind == UTF8PROC_CATEGORY_CC || kind == UTF8PROC_CATEGORY_CF;
    return hidden ? 0 : static_cast<std::size_t>(took);
}

}  // namespace

std::string printable(const std::string& text, std::size_t most) {
    std::string out;
    std::size_t in_line = 0;
    std::size_t shown_up_to = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const auto byte = static_cast<unsigned char>(c);
        in_line = c == '\n' ? 0 : in_line + 1;
        if (in_line > most) {
            out += in_line == most + 1 ? "..." : "";
        } else if (c == '\n' || shown_up_to > i) {
            out += c;
        } else if (const std::size_t n = printable_bytes(text, i); n > 0) {
            shown_up_to = i + n;
            out += c;
        } else {
            constexpr const char* digits = "0123456789abcdef";
            out += std::string("\\x") + digits[byte >> 4U] + digits[byte & 15U];
        }
    }
    return out;
}

std::string as_word(const std::string& text) {
    if (!text.empty() && text.find_first_of(" \t'\"\\$`&|;<>()*?[]#~!") == std::string::npos) {
        return text;
    }
    std::string out = "'";
    for (const char c : text) {
        out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    }
    return out + "'";
}

}  // namespace pelage::cli
