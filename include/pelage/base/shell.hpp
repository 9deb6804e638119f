// A word of a command as a shell takes it.
#pragma once

#include <algorithm>
#include <string>
#include <string_view>

namespace pelage {

/// The text as one word of a POSIX shell (IEEE Std 1003.1, 2.2.2): as it is where no character means more to a shell
/// than itself, else between single quotes. Any text; throws nothing but what memory may.
[[nodiscard]] inline std::string shell_word(const std::string& text) {
    const auto plain = [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               std::string_view("-_./:,@%+").find(c) != std::string_view::npos;
    };
    if (!text.empty() && std::all_of(text.begin(), text.end(), plain)) {
        return text;
    }
    std::string out = "'";
    for (const char c : text) {
        out += c == '\'' ? "'\\''" : std::string(1, c);
    }
    return out + "'";
}

}  // namespace pelage
