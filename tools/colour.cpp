#include "colour.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace pelage::cli {

namespace {

constexpr std::array<std::string_view, 5> stands_out{"ALERT: ", "HEALTH: ", "STOP",
                                                     "No: ", "Don't touch: "};

}  // namespace

std::string coloured(const std::string& text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string_view line = std::string_view(text).substr(at, end - at);
        const bool loud = std::any_of(stands_out.begin(), stands_out.end(),
                                      [&](std::string_view s) { return line.starts_with(s); });
        out += loud ? "\x1b[1;31m" : "";
        out += line;
        out += loud ? "\x1b[0m" : "";
        out += end < text.size() ? "\n" : "";
        at = end + 1;
    }
    return out;
}

}  // namespace pelage::cli
