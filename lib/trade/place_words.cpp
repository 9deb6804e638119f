#include <algorithm>
#include <tuple>
#include <utility>

#include <pelage/base/phrase.hpp>
#include <pelage/base/suggest.hpp>
#include <pelage/trade/place_words.hpp>

namespace pelage {

namespace detail {

std::string plain(std::string_view s) {
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

heard_place heard(std::string_view text) {
    heard_place out;
    const std::string low = plain(text);
    std::size_t at = 0;
    while (at < low.size()) {
        const std::size_t end = std::min(low.find_first_of(" ,\t", at), low.size());
        const std::string_view token = std::string_view(low).substr(at, end - at);
        at = end + 1;
        if (token == "left" || token == "right") {
            const side one = token == "left" ? side::left : side::right;
            out.sound = out.sound && (out.which == side::both || out.which == one);
            out.which = one;
        } else if (token != "the" && token != "both") {
            const bool many = token.size() > 3 && token.ends_with('s') && !token.ends_with("ss");
            out.core += token.substr(0, token.size() - (many ? 1 : 0));
        }
    }
    return out;
}

}  // namespace detail

namespace {

std::vector<std::string> in_quotes(std::vector<std::string> words) {
    for (std::string& w : words) {
        w = '"' + w + '"';
    }
    return words;
}

/// "left front leg" of "front legs".
std::string with_side(side which, const std::string& word) {
    const bool many = word.ends_with('s') && !word.ends_with("ss") && !word.ends_with("ches");
    return which == side::both
               ? word
               : std::string(name(which)) + " " + word.substr(0, word.size() - (many ? 1 : 0));
}

/// The same first letter, or the first two the other way round.
bool begins_alike(std::string_view a, std::string_view b) {
    return a[0] == b[0] || (a.size() > 1 && b.size() > 1 && a[0] == b[1] && a[1] == b[0]);
}

std::vector<std::size_t> zones_of(const body& b, const std::optional<group>& only) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        if (only ? b.zones[i].where == *only : b.zones[i].where != group::prep) {
            out.push_back(i);
        }
    }
    return out;
}

}  // namespace

bool wider(const selection& a, const selection& b) {
    const auto zones = [](const selection& s) {
        return s.how == reach::part ? s.places.size() : 0;
    };
    return std::tuple(a.how, zones(b), a.sided) < std::tuple(b.how, zones(a), b.sided);
}

selection found_on(const body& b, selection whom) {
    if (whom.how == reach::all) {
        for (const std::size_t z : zones_of(b, group::prep)) {
            whom.places.push_back({z, side::both});
        }
    }
    return whom;
}

bool clash(const selection& a, const selection& b) {
    return !wider(a, b) && !wider(b, a) &&
           std::any_of(a.places.begin(), a.places.end(), [&](const place& p) {
               return std::any_of(b.places.begin(), b.places.end(),
                                  [&](const place& o) { return share_side(p, o); });
           });
}

part_index::part_index(const body& b) {
    add(of_zones(b, reach::all, zones_of(b, std::nullopt), false), {"all"});
    for (std::size_t i = 0; i < b.zones.size(); ++i) {
        add_zone(b, i);
    }
    for (std::size_t g = 0; g < group_names.size(); ++g) {
        if (static_cast<group>(g) != group::feet) {
            add_group(b, static_cast<group>(g));
        }
    }
    for (const place_word& w : b.words) {
        add_word(b, w);
    }
    for (const asked_place& a : b.asked) {
        for (const std::string& word : a.words) {
            asked_.insert({detail::heard(word).core, a.means});
            words_.push_back(word);
        }
    }
}

const part_index::meaning* part_index::meaning_of(const std::string& core) const {
    const auto at = meaning_.find(core);
    return at == meaning_.end() ? nullptr : &all_[at->second];
}

const selection* part_index::find(std::string_view word) const {
    const detail::heard_place h = detail::heard(word);
    const meaning* m = h.sound ? meaning_of(h.core) : nullptr;
    if (m == nullptr || (h.which != side::both && !m->sides)) {
        return nullptr;
    }
    return &m->by_side[static_cast<std::size_t>(h.which)];
}

std::vector<std::string> part_index::asked(std::string_view word) const {
    const detail::heard_place h = detail::heard(word);
    const auto at = asked_.find(h.core);
    if (at == asked_.end() || !h.sound) {
        return {};
    }
    std::vector<std::string> out;
    for (const std::string& one : at->second) {
        const std::string sided = with_side(h.which, one);
        out.push_back(find(sided) != nullptr ? sided : one);
    }
    return out;
}

part_index::stranger part_index::about(std::string_view word) const {
    const std::vector<std::string> several = asked(word);
    if (!several.empty()) {
        return {errc::ambiguous, "a word for more than one place",
                "; write " + one_of(in_quotes(several))};
    }
    const detail::heard_place h = detail::heard(word);
    if (!h.sound) {
        return {errc::conflict, "one place is left or right",
                "; write one of them, or neither for both"};
    }
    if (const meaning* m = meaning_of(h.core); m != nullptr) {
        return {errc::unknown, "no place with a left and a right",
                "; write \"" + words_[m->word] + "\""};
    }
    const std::vector<std::string> near = nearest(h);
    return {errc::unknown, "the dog has no such place",
            near.empty() ? "" : "; did you mean " + one_of(in_quotes(near)) + "?"};
}

/// The nearest words, at most two edits away (one for up to four letters), with the side that was said;
/// none where more than three are as near.
std::vector<std::string> part_index::nearest(const detail::heard_place& h) const {
    constexpr std::size_t longest = 40;  // no word is as long
    if (!h.sound || h.core.empty() || h.core.size() > longest) {
        return {};
    }
    std::size_t best = h.core.size() <= 4 ? 1 : 2;
    std::vector<std::string> out;
    std::vector<std::size_t> meant;
    for (const std::string& w : words_) {
        const std::string core = detail::heard(w).core;
        const std::size_t apart =
            core.size() > h.core.size() ? core.size() - h.core.size() : h.core.size() - core.size();
        if (apart > best || !begins_alike(core, h.core)) {
            continue;
        }
        const std::size_t e = edits(h.core, core);
        if (e > best) {
            continue;
        }
        if (e < best) {
            out.clear();
            meant.clear();
            best = e;
        }
        const auto at = meaning_.find(core);
        const std::size_t which = at == meaning_.end() ? all_.size() : at->second;
        if (std::find(meant.begin(), meant.end(), which) == meant.end()) {
            const bool sides = which < all_.size() && all_[which].sides;
            out.push_back(with_side(sides ? h.which : side::both, w));
            meant.push_back(which);
        }
    }
    return out.size() > 3 ? std::vector<std::string>{} : out;
}

void part_index::add(meaning m, const std::vector<std::string>& words) {
    m.word = words_.size();
    words_.insert(words_.end(), words.begin(), words.end());
    for (const std::string& w : words) {
        meaning_.insert({detail::heard(w).core, all_.size()});  // the first meaning stays
    }
    all_.push_back(std::move(m));
}

/// The zones with their sides, if every one has two or `sides_too`.
part_index::meaning part_index::of_zones(const body& b, reach how,
                                         const std::vector<std::size_t>& zones, bool sides_too) {
    meaning m;
    m.sides = sides_too || std::all_of(zones.begin(), zones.end(),
                                       [&](std::size_t z) { return b.zones[z].paired; });
    for (const side which : {side::both, side::left, side::right}) {
        selection& s = m.by_side[static_cast<std::size_t>(which)];
        s.how = how == reach::zone && which != side::both ? reach::side : how;
        s.sided = which != side::both;
        for (const std::size_t z : zones) {
            if (m.sides || which == side::both) {
                s.places.push_back({z, b.zones[z].paired ? which : side::both});
            }
        }
    }
    return m;
}

void part_index::add_zone(const body& b, std::size_t i) {
    const zone& z = b.zones[i];
    std::vector<std::string> words{z.title};
    if (detail::heard(z.id).core != detail::heard(z.title).core) {
        words.push_back(z.id);
    }
    add(of_zones(b, reach::zone, {i}, false), words);
}

void part_index::add_group(const body& b, group g) {
    const std::string called{name(g)};
    add(of_zones(b, reach::group, zones_of(b, g), false), {called, "whole " + called});
}

void part_index::add_word(const body& b, const place_word& w) {
    if (!w.whole_dog && !w.whole) {
        const reach how = w.zones.size() == 1 ? reach::zone : reach::part;
        add(of_zones(b, how, w.zones, w.sides), w.words);
        return;
    }
    const std::string whole = w.whole_dog ? "all" : "whole " + std::string(name(*w.whole));
    const auto at = meaning_.find(detail::heard(whole).core);
    for (const std::string& word : w.words) {
        words_.push_back(word);
        meaning_.insert({detail::heard(word).core, at->second});
    }
}

std::optional<selection> select(const body& b, std::string_view text) {
    const part_index parts(b);
    const selection* s = parts.find(text);
    return s == nullptr ? std::nullopt : std::optional{*s};
}

}  // namespace pelage
