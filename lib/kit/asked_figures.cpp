// Words of a card with figures or days in them, asked about: which of the glossary's wordings they are.
#include <algorithm>
#include <array>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/base/phrase.hpp>

#include "kit/asked_card.hpp"

namespace pelage::asking {

namespace {

constexpr std::string_view a_figure = "n";
constexpr std::string_view a_day = "d";
constexpr std::string_view any_words = "w";

bool begins_with_figure(const std::string& low) {
    return !low.empty() && low.front() >= '0' && low.front() <= '9';
}

bool named_day(std::string_view low) {
    constexpr std::array<std::string_view, 7> days{"mon", "tue", "wed", "thu", "fri", "sat", "sun"};
    return std::find(days.begin(), days.end(), low) != days.end();
}

bool named_month(std::string_view low) {
    constexpr std::array<std::string_view, 12> months{"jan", "feb", "mar", "apr", "may", "jun",
                                                      "jul", "aug", "sep", "oct", "nov", "dec"};
    return std::find(months.begin(), months.end(), low) != months.end();
}

/// "Thu 17 Dec 2026", "17 Dec": how many words the day at `at` takes; 0 where none begins there.
std::size_t day_at(const std::vector<token>& all, std::size_t at) {
    std::size_t next = at;
    next += next < all.size() && named_day(all[next].low) ? 1 : 0;
    if (next + 1 >= all.size() || !begins_with_figure(all[next].low) ||
        !named_month(all[next + 1].low)) {
        return 0;
    }
    next += 2;
    next += next < all.size() && all[next].low.size() == 4 && begins_with_figure(all[next].low);
    return next - at;
}

/// The words with figures and days as such: "leaves n to n mm". A unit may stand right behind its figure.
std::vector<std::string> with_figures_as_such(const std::vector<token>& all) {
    std::vector<std::string> out;
    for (std::size_t at = 0; at < all.size();) {
        if (const std::size_t took = day_at(all, at); took > 0) {
            out.emplace_back(a_day);
            at += took;
            continue;
        }
        const std::string& low = all[at].low;
        if (begins_with_figure(low)) {
            out.emplace_back(a_figure);
            const auto behind = low.find_first_not_of("0123456789./");
            if (behind != std::string::npos) {
                out.push_back(low.substr(behind));
            }
        } else {
            out.push_back(low);
        }
        ++at;
    }
    return out;
}

using at = std::vector<std::string>::const_iterator;

/// Whether the words from `first` are those of the wording from `of`, "w" for one or more of any.
bool reads_as(at first, at last, at of, at end) {
    if (of == end) {
        return first == last;
    }
    if (first == last) {
        return false;
    }
    if (*of == any_words) {
        return reads_as(first + 1, last, of + 1, end) || reads_as(first + 1, last, of, end);
    }
    return *first == *of && reads_as(first + 1, last, of + 1, end);
}

}  // namespace

std::optional<card_asked> about_figures(const lookup_request& r) {
    const auto words = with_figures_as_such(tokens_of(r.text));
    for (const card_line& l : words_of(r).lines) {
        for (const std::string& said : l.said) {
            std::vector<std::string> wording;
            for (const token& t : tokens_of(said)) {
                wording.push_back(t.low);
            }
            if (reads_as(words.begin(), words.end(), wording.begin(), wording.end())) {
                return card_asked{std::string(detail::trimmed(r.text)), {}, {}, {&l}};
            }
        }
    }
    return std::nullopt;
}

}  // namespace pelage::asking
