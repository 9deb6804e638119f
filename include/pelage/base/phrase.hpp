// Several words as one phrase.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace pelage {

namespace detail {

[[nodiscard]] inline std::string in_a_row(const std::vector<std::string>& words,
                                          std::string_view between, std::string_view last) {
    std::string out;
    for (std::size_t i = 0; i < words.size(); ++i) {
        out += i == 0 ? std::string_view{} : i + 1 == words.size() ? last : between;
        out += words[i];
    }
    return out;
}

}  // namespace detail

/// The words with `between` between them: "a; b; c".
[[nodiscard]] inline std::string joined(const std::vector<std::string>& words,
                                        std::string_view between) {
    return detail::in_a_row(words, between, between);
}

/// "a, b and c".
[[nodiscard]] inline std::string listed(const std::vector<std::string>& words) {
    return detail::in_a_row(words, ", ", " and ");
}

/// "a, b or c".
[[nodiscard]] inline std::string one_of(const std::vector<std::string>& words) {
    return detail::in_a_row(words, ", ", " or ");
}

}  // namespace pelage
