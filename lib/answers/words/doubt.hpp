// Private to lib: what is doubtful about a sheet, in the order in which it is told.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/sheets.hpp>

namespace pelage::io {

/// A doubt and its words.
struct told_doubt {
    const sheet_warning* doubt = nullptr;
    std::string text;
};

/// A sheet's own doubts, then the limits of another that it breaks; each by position, then by its words.
[[nodiscard]] std::vector<told_doubt> told_doubts(const checked_sheet& s, const reference_data& c,
                                                  length_unit u);

}  // namespace pelage::io
