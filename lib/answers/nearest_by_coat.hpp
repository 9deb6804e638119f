// Private to lib: what comes nearest to a length, coats together where it is one tool.
#pragma once

#include <string>
#include <vector>

#include <pelage/answers/document.hpp>
#include <pelage/kit/lookup.hpp>

namespace pelage::io {

/// What a person must know of the teeth before taking this blade in place of another; may be empty.
[[nodiscard]] std::string teeth_warning(const near_setup& n);

/// A line a tool, with the coats on which it comes nearest and what it leaves on them.
void say_nearest_by_tool(document& d, const lookup_answer& a, const body& b, length_unit u);

/// A line a tool that does nearly the same, where asked how far it is off, and the coats on which it does.
void say_by_coat(document& d, const std::string& head, const std::vector<nearest_row>& rows,
                 const lookup_request& r, length_unit u, bool how_far = true);

/// "Blades 7 and 7F: stated length 3.2 mm"; nothing where none is.
void say_stated_so(document& d, const lookup_answer& a, length_unit u);

}  // namespace pelage::io
