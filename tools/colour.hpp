// What stands out in a terminal: alerts and refusals, by line, and nothing else.
#pragma once

#include <string>

namespace pelage::cli {

/// The text with lines that begin with an alert, a stop or a no in bold red (ECMA-48), all else as it was. Words
/// are never told by colour alone.
[[nodiscard]] std::string coloured(const std::string& text);

}  // namespace pelage::cli
