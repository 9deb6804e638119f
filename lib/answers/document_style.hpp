// Private to lib: how a page looks on a screen, on a telephone and on paper.
#pragma once

#include <string>

namespace pelage::io {

/// The style sheet of a page; `book`: for any paper, not for one sheet of A4.
[[nodiscard]] std::string page_style(bool book);

}  // namespace pelage::io
