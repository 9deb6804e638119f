// Private to lib: text made safe inside an element or an attribute of HTML and SVG.
#pragma once

#include <string>
#include <string_view>

namespace pelage::io {

/// Without what turns the direction of text or drives a terminal; a line's end and a tab stay.
[[nodiscard]] std::string text_safe(std::string_view s);

/// Markup characters are escaped; control characters, and the marks that turn the direction of writing,
/// which could make a line read as another, are left out.
[[nodiscard]] std::string markup_safe(std::string_view s);

}  // namespace pelage::io
