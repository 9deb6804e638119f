// The places a person means by a word: "all", "legs", "ear", "left ear", "topknot".
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include <pelage/zone.hpp>

namespace pelage {

/// How special a selector is; a more special one wins over a wider one.
enum class reach { all, group, zone, side };

/// What a selector means.
struct selection {
    reach how = reach::zone;
    std::vector<place> places;
};

namespace detail {

[[nodiscard]] inline std::string plain(std::string_view s) {
    std::string out;
    for (const char c : s) {
        if (c >= 'A' && c <= 'Z') {
            out += static_cast<char>(c + 32);
        } else {
            out += c == '_' || c == '-' ? ' ' : c;
        }
    }
    while (!out.empty() && out.back() == ' ') {
        out.pop_back();
    }
    return out.substr(std::min(out.find_first_not_of(' '), out.size()));
}

/// "left foreleg" with {side} filled in, lower case, hyphens as blanks.
[[nodiscard]] inline bool names_side(const zone& z, side s, const std::string& word) {
    const std::string which{name(s)};
    if (word == which + " " + plain(z.id)) {
        return true;
    }
    std::string text = z.one;
    const std::string mark = "{side}";
    if (const auto at = text.find(mark); at != std::string::npos) {
        text.replace(at, mark.size(), which);
    }
    return word == plain(text);
}

[[nodiscard]] inline bool names_zone(const zone& z, const std::string& word) {
    if (word == plain(z.id) || word == plain(z.title)) {
        return true;
    }
    return std::any_of(z.also.begin(), z.also.end(),
                       [&](const std::string& a) { return word == plain(a); });
}

}  // namespace detail

/// What `word` means on this body, or nothing if no zone, group or side is called that. "all" means
/// every zone but the prep zones, which have their own blades.
[[nodiscard]] inline std::optional<selection> select(const body& b, std::string_view text) {
    const std::string word = detail::plain(text);
    selection s;
    if (word == "all") {
        s.how = reach::all;
        for (std::size_t i = 0; i < b.zones.size(); ++i) {
            if (b.zones[i].where != group::prep) {
                s.places.push_back({i, side::both});
            }
        }
        return s;
    }
    for (std::size_t g = 0; g < group_names.size(); ++g) {
        if (word != group_names[g] || static_cast<group>(g) == group::feet) {
            continue;
        }
        s.how = reach::group;
        for (std::size_t i = 0; i < b.zones.size(); ++i) {
            if (b.zones[i].where == static_cast<group>(g)) {
                s.places.push_back({i, side::both});
            }
        }
        // a group may share its name with one of its zones ("tail"): the zone is the narrower word
        if (std::none_of(b.zones.begin(), b.zones.end(),
                         [&](const zone& z) { return detail::names_zone(z, word); })) {
            return s;
        }
        s.places.clear();
    }
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        const zone& z = b.zones[i];
        if (detail::names_zone(z, word)) {
            return selection{reach::zone, {{i, side::both}}};
        }
        for (const side one : {side::left, side::right}) {
            if (z.paired && detail::names_side(z, one, word)) {
                return selection{reach::side, {{i, one}}};
            }
        }
    }
    return std::nullopt;
}

/// Every word `select` understands, for suggestions.
[[nodiscard]] inline std::vector<std::string> selectors(const body& b) {
    std::vector<std::string> words{"all"};
    for (const std::string_view g : group_names) {
        words.emplace_back(g);
    }
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        const zone& z = b.zones[i];
        words.push_back(z.id);
        words.push_back(z.title);
        words.insert(words.end(), z.also.begin(), z.also.end());
        if (z.paired) {
            words.push_back(title(b, {i, side::left}));
            words.push_back(title(b, {i, side::right}));
        }
    }
    return words;
}

}  // namespace pelage
