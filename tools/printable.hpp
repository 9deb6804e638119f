// What strangers wrote, fit for a terminal.
#pragma once

#include <cstddef>
#include <string>

namespace pelage::cli {

/// What a stranger's text may hold, made fit for a terminal: control characters and what isn't UTF-8
/// as \\xNN, and no more than `most` bytes of a line.
[[nodiscard]] std::string printable(const std::string& text, std::size_t most = 700);

/// As a shell takes it for one word.
[[nodiscard]] std::string as_word(const std::string& text);

}  // namespace pelage::cli
