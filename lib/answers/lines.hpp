// Private to lib: lines of a document as its sections have them.
#pragma once

#include <string>
#include <utility>

#include <pelage/answers/document.hpp>

namespace pelage::io {

/// The first letter large.
[[nodiscard]] inline std::string sentence_case(std::string s) {
    if (!s.empty() && s.front() >= 'a' && s.front() <= 'z') {
        s.front() = static_cast<char>(s.front() - 32);
    }
    return s;
}

/// One of a list, behind a word where there is one; its further lines four columns in.
[[nodiscard]] inline line item(std::string text, std::string lead = {}, std::size_t hang = 4) {
    return {line_as::item, std::move(text), std::move(lead), 2, hang};
}
/// A sentence of a section.
[[nodiscard]] inline line sentence(std::string text) {
    return {line_as::paragraph, std::move(text), {}, 2, 2};
}
/// What more is said of a step.
[[nodiscard]] inline line step_detail(std::string text, std::string lead = {}) {
    return {line_as::detail, std::move(text), std::move(lead), 5, 7};
}

}  // namespace pelage::io
