// Private to lib: text laid out in columns of a terminal.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace pelage::io {

/// Columns a text takes on a terminal; combining marks take none, wide characters two.
[[nodiscard]] std::size_t columns(std::string_view s);

/// `s` filled with blanks to `n` columns, on its right (or its left for numbers).
[[nodiscard]] std::string padded(std::string_view s, std::size_t n, bool right_aligned = false);

/// A space at which no line is broken; on a terminal it is one as any other.
inline constexpr std::string_view no_break = "\u00a0";

/// A text that stays on one line where that is wide enough.
[[nodiscard]] std::string kept_together(std::string_view text);

/// `first` followed by `text` broken at blanks to `width` columns; further lines are indented by
/// `indent`. Ends in a newline. Words longer than a line stand alone.
[[nodiscard]] std::string wrapped(std::string_view first, std::string_view text, std::size_t indent,
                                  std::size_t width);

/// A table: a head, rows of as many cells; the last column is wrapped to `width`, the others take
/// what they need. Columns in `numbers` are right-aligned.
struct table {
    std::vector<std::string> head;
    std::vector<std::vector<std::string>> rows;
    std::vector<bool> numbers;
    std::size_t indent = 2;
};
[[nodiscard]] std::string laid_out(const table& t, std::size_t width);
/// Whether it reads well in so many columns: there is room for its last one.
[[nodiscard]] bool fits(const table& t, std::size_t width);

}  // namespace pelage::io
