// One of a row of names, from an option.
#pragma once

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>

#include "resolve_arguments.hpp"

namespace pelage::cli {

template <std::size_t size>
[[nodiscard]] std::vector<std::string> words_of(const std::array<std::string_view, size>& names) {
    return {names.begin(), names.end()};
}

/// The enumerator that `text` names, `names` being theirs in order; a fault of `option` if none.
template <class Enum, std::size_t size>
[[nodiscard]] std::optional<Enum> named(const std::string& option, const std::string& text,
                                        const std::array<std::string_view, size>& names,
                                        faults& f) {
    const auto at = std::find(names.begin(), names.end(), text);
    if (at != names.end()) {
        return static_cast<Enum>(at - names.begin());
    }
    f.say(errc::unknown, option + ": unknown; found \"" + text + "\"" +
                             did_you_mean(text, words_of(names)) + "; write one of " +
                             joined(words_of(names), ", "));
    return std::nullopt;
}

}  // namespace pelage::cli
