// What everyone who touches the dog must know before anything else: the first line of whatever is
// printed about it.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/suggest.hpp>

namespace pelage {

/// The closed list, in the order in which it is told.
enum class alert_kind { bites, faints, seizures, allergic, muzzle, two_people };
/// As a file and an option write them; `allergic to` goes on with what.
inline constexpr std::array<std::string_view, 6> alert_names{"bites",       "faints", "seizures",
                                                             "allergic to", "muzzle", "two people"};

/// One alert.
struct alert {
    alert_kind what = alert_kind::bites;  ///< which
    std::string to{};                     ///< of an allergy: what it can't bear, as told
    friend bool operator==(const alert&, const alert&) = default;
};

/// "bites", "allergic to oatmeal shampoo": as it is written and told.
[[nodiscard]] inline std::string title(const alert& a) {
    const std::string word{alert_names[static_cast<std::size_t>(a.what)]};
    return a.what == alert_kind::allergic ? word + " " + a.to : word;
}

/// Their titles in the order of the list.
[[nodiscard]] inline std::vector<std::string> titles(const std::vector<alert>& all) {
    std::vector<std::string> out;
    for (std::size_t k = 0; k < alert_names.size(); ++k) {
        for (const alert& a : all) {
            if (static_cast<std::size_t>(a.what) == k) {
                out.push_back(title(a));
            }
        }
    }
    return out;
}

/// The alert a person writes: a word of the list, or "allergic to ..." with something behind it. Lower
/// case; nothing if it is none.
[[nodiscard]] inline std::optional<alert> parse_alert(std::string_view text) {
    for (std::size_t k = 0; k < alert_names.size(); ++k) {
        const std::string_view word = alert_names[k];
        if (static_cast<alert_kind>(k) != alert_kind::allergic) {
            if (text == word) {
                return alert{static_cast<alert_kind>(k), {}};
            }
        } else if (text.substr(0, word.size()) == word && text.size() > word.size() + 1 &&
                   text[word.size()] == ' ') {
            const std::size_t from = text.find_first_not_of(' ', word.size());
            if (from != std::string_view::npos) {
                return alert{alert_kind::allergic, std::string(text.substr(from))};
            }
        }
    }
    return std::nullopt;
}

/// What is wrong with a text that is no alert, and what would be right.
[[nodiscard]] inline std::string alert_complaint(const std::string& text) {
    const std::vector<std::string> known{alert_names.begin(), alert_names.end()};
    const bool to_nothing = text.starts_with("allergic");
    return "no alert is written so; found \"" + text + "\"" +
           (to_nothing ? "" : did_you_mean(text, known)) +
           "; write bites, faints, seizures, muzzle, two people, or allergic to and what it can't "
           "bear";
}

/// Adds `a` unless it is there already.
inline void add_alert(std::vector<alert>& all, const alert& a) {
    for (const alert& one : all) {
        if (one == a) {
            return;
        }
    }
    all.push_back(a);
}

}  // namespace pelage
