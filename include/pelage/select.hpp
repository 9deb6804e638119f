// The places a person means by a word: "all", "legs", "ear", "left ear", "topknot".
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <utility>
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
}  // namespace detail

/// Every word for a part of the dog and what it means: "all" and the groups, a zone by its id, title or
/// other words, one side of a paired zone. Case, hyphens and underscores don't matter. "all" is
/// everything but the prep zones; a group that shares its name with one of its zones ("tail") means
/// the zone, the narrower word, and the group with "whole" before it ("whole tail").
class part_index {
  public:
    explicit part_index(const body& b) {
        selection all{reach::all, {}};
        for (std::size_t i = 0; i < b.zones.size(); ++i) {
            if (b.zones[i].where != group::prep) {
                all.places.push_back({i, side::both});
            }
        }
        add("all", std::move(all));
        for (std::size_t i = 0; i < b.zones.size(); ++i) {
            add_zone(b, i);
        }
        for (std::size_t g = 0; g < group_names.size(); ++g) {
            if (static_cast<group>(g) != group::feet) {
                add_group(b, static_cast<group>(g));
            }
        }
    }

    /// What the word means; null if nothing.
    [[nodiscard]] const selection* find(std::string_view word) const {
        const auto at = meaning_.find(detail::plain(word));
        return at == meaning_.end() ? nullptr : &at->second;
    }

  private:
    // the first meaning of a word stays
    void add(std::string_view word, selection s) {
        meaning_.insert({detail::plain(word), std::move(s)});
    }
    void add_zone(const body& b, std::size_t i) {
        const zone& z = b.zones[i];
        add(z.id, {reach::zone, {{i, side::both}}});
        add(z.title, {reach::zone, {{i, side::both}}});
        for (const std::string& word : z.also) {
            add(word, {reach::zone, {{i, side::both}}});
        }
        for (const side one : {side::left, side::right}) {
            if (z.paired) {
                add(std::string(name(one)) + " " + z.id, {reach::side, {{i, one}}});
                add(title(b, {i, one}), {reach::side, {{i, one}}});
            }
        }
    }
    void add_group(const body& b, group g) {
        selection s{reach::group, {}};
        for (std::size_t i = 0; i < b.zones.size(); ++i) {
            if (b.zones[i].where == g) {
                s.places.push_back({i, side::both});
            }
        }
        add("whole " + std::string(name(g)), s);
        add(name(g), std::move(s));
    }

    std::unordered_map<std::string, selection> meaning_;
};

/// What one word means; nothing if it means nothing. Who asks often keeps a part_index.
[[nodiscard]] inline std::optional<selection> select(const body& b, std::string_view text) {
    const part_index parts(b);
    const selection* s = parts.find(text);
    return s == nullptr ? std::nullopt : std::optional{*s};
}

/// Every word `select` understands, for suggestions.
[[nodiscard]] inline std::vector<std::string> selectors(const body& b) {
    std::vector<std::string> words{"all"};
    for (const std::string_view g : group_names) {
        words.emplace_back(g);
    }
    words.emplace_back("whole tail");
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
